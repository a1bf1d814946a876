//! A picture that the maker chose, made small.

use leptos::prelude::document;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, HtmlImageElement, HtmlInputElement, Url};

/// The longer side of what is kept, in dots.
const SIDE: f64 = 640.0;

/// Makes the picture that was chosen in an input small, and calls `then` with its address; with nothing where the
/// browser cannot draw it.
pub fn take(event: &web_sys::Event, then: impl FnOnce(Option<String>) + 'static) {
    let input: Option<HtmlInputElement> = event.target().and_then(|t| t.dyn_into().ok());
    let Some(input) = input else { return };
    let Some(file) = input.files().and_then(|f| f.get(0)) else {
        return;
    };
    leptos::task::spawn_local(async move {
        let address = Url::create_object_url_with_blob(&file).unwrap_or_default();
        then(small(&address).await);
        let _ = Url::revoke_object_url(&address);
        // The same file can be chosen again.
        input.set_value("");
    });
}

async fn small(address: &str) -> Option<String> {
    let image = HtmlImageElement::new().ok()?;
    image.set_src(address);
    JsFuture::from(image.decode()).await.ok()?;
    let (w, h) = (f64::from(image.natural_width()), f64::from(image.natural_height()));
    let share = (SIDE / w.max(h).max(1.0)).min(1.0);
    let canvas: HtmlCanvasElement = document().create_element("canvas").ok()?.dyn_into().ok()?;
    let [w, h] = [w, h].map(|side| (side * share).round().max(1.0));
    canvas.set_width(w as u32);
    canvas.set_height(h as u32);
    let on: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    // Where it is see-through there is paper behind it.
    on.set_fill_style_str("#fff");
    on.fill_rect(0.0, 0.0, w, h);
    on.draw_image_with_html_image_element_and_dw_and_dh(&image, 0.0, 0.0, w, h).ok()?;
    canvas.to_data_url_with_type_and_encoder_options("image/jpeg", &0.75.into()).ok()
}
