//! A drawing on the page.

use leptos::ev::MouseEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::draw::drawing::Touch;

/// A drawing; a touch on one of its panels is called up.
#[component]
pub fn Picture(
    /// What is drawn, painted; empty where there is nothing.
    #[prop(into)]
    svg: Signal<String>,
    /// What a touch on a panel does.
    #[prop(optional, into)]
    touched: Option<Callback<Touch>>,
) -> impl IntoView {
    let click = move |event: MouseEvent| {
        if let (Some(touched), Some(touch)) = (touched, touch(&event)) {
            touched.run(touch);
        }
    };
    view! { <div class="picture" class:touchable=touched.is_some() on:click=click inner_html=svg></div> }
}

/// The panel under a click, as the painter noted it.
fn touch(event: &MouseEvent) -> Option<Touch> {
    let target: web_sys::Element = event.target()?.dyn_into().ok()?;
    let number = |name| target.get_attribute(name)?.parse().ok();
    Some(Touch { part: number("data-part")?, panel: number("data-panel")? })
}
