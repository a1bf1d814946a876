//! A drawing on the page.

use wasm_bindgen::JsCast;

use super::tag::{Tag, classed};
use crate::draw::drawing::Touch;

/// A drawing, painted; empty where there is nothing.
#[must_use]
pub fn picture(svg: impl Fn() -> String + Send + 'static) -> Tag {
    classed("div", "picture").painted(svg)
}

/// A drawing of which a touch on one of its panels is called up.
#[must_use]
pub fn touchable(svg: impl Fn() -> String + Send + 'static, touched: impl Fn(Touch) + Send + 'static) -> Tag {
    picture(svg).class("picture touchable").on("click", move |event| {
        if let Some(touch) = touch(&event) {
            touched(touch);
        }
    })
}

/// The panel under a click, as the painter noted it.
fn touch(event: &web_sys::Event) -> Option<Touch> {
    let target: web_sys::Element = event.target()?.dyn_into().ok()?;
    let number = |name| target.get_attribute(name)?.parse().ok();
    Some(Touch { part: number("data-part")?, panel: number("data-panel")? })
}
