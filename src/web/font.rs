//! The font of papers: fetched in the background once the page is ready, kept with it for when there is no network, and
//! fetched again when the maker asks for it.

use super::heard::Heard;
use crate::draw::font::Font;
use js_sys::Uint8Array;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{RequestCache, RequestInit, Response};

/// The file, beside the page (`index.html` and `style/page.css` name it too).
const FILE: &str = "papers.ttf";

/// How far the font has come.
#[derive(Clone, Copy)]
pub enum Fetched {
    /// It is on its way.
    Coming,
    /// Papers can be set. There is one font, for as long as the page is there.
    Here(&'static Font),
    /// It did not come, or what came is no font.
    Missing,
}

thread_local! {
    static STATE: Heard<Fetched> = Heard::new(Fetched::Coming);
}

/// How far it has come; followed.
#[must_use]
pub fn fetched() -> Fetched {
    STATE.with(Heard::get)
}

/// Fetches it. To be called once the page is drawn, so as not to compete with it.
pub fn fetch() {
    ask(RequestCache::Default);
}

/// Fetches it again, past what the browser may have kept of the first time.
pub fn fetch_again() {
    set(Fetched::Coming);
    ask(RequestCache::Reload);
}

fn ask(cache: RequestCache) {
    leptos::task::spawn_local(async move {
        set(read(cache).await.map_or(Fetched::Missing, |font| Fetched::Here(Box::leak(Box::new(font)))));
    });
}

async fn read(cache: RequestCache) -> Option<Font> {
    let how = RequestInit::new();
    how.set_cache(cache);
    let answer: Response = JsFuture::from(window().fetch_with_str_and_init(FILE, &how)).await.ok()?.dyn_into().ok()?;
    if !answer.ok() {
        return None;
    }
    let bytes = JsFuture::from(answer.array_buffer().ok()?).await.ok()?;
    Font::read(Uint8Array::new(&bytes).to_vec()).ok()
}

fn set(to: Fetched) {
    STATE.with(|state| state.set(to));
}
