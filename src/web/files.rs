//! Files: given to the maker to keep, and taken from the maker.

use js_sys::{Array, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, HtmlInputElement, Url};

/// What a file of ours that can be opened again is, for the browser.
pub const JSON: &str = "application/json";

/// Lets the browser save what is given, of this kind, as a file called `name`.
pub fn give(name: &str, kind: &str, given: &[u8]) -> Option<()> {
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let given = Array::of1(&Uint8Array::from(given));
    let blob = Blob::new_with_u8_array_sequence_and_options(&given, &options).ok()?;
    let address = Url::create_object_url_with_blob(&blob).ok()?;
    let link: HtmlAnchorElement = document().create_element("a").ok()?.dyn_into().ok()?;
    link.set_href(&address);
    link.set_download(name);
    document().body()?.append_child(&link).ok()?;
    link.click();
    link.remove();
    // The browser has begun to read it by then; a failure only keeps its memory a little longer.
    let _ = Url::revoke_object_url(&address);
    Some(())
}

/// Reads the file that was chosen in an input, and calls `then` with its bytes; with nothing where it cannot be read.
pub fn take(event: &web_sys::Event, most: f64, then: impl FnOnce(Option<Vec<u8>>) + 'static) {
    let input: Option<HtmlInputElement> = event.target().and_then(|t| t.dyn_into().ok());
    let Some(input) = input else { return };
    let Some(file) = input.files().and_then(|f| f.get(0)) else {
        return;
    };
    if file.size() > most {
        then(None);
        return;
    }
    let reading = file.array_buffer();
    leptos::task::spawn_local(async move {
        let bytes = JsFuture::from(reading).await.ok();
        then(bytes.map(|b| Uint8Array::new(&b).to_vec()));
        // The same file can be chosen again.
        input.set_value("");
    });
}
