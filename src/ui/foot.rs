//! The foot of the page: what was said about keeping, newer versions, and whether it works without a network.

use leptos::prelude::*;

use super::desk::desk;
use super::shelf::Shelf;
use crate::say::page;
use crate::say::spelling::Spelling;
use crate::web::here;
use crate::web::offline::{self, Offline};

/// Notices that belong to the page as a whole.
#[component]
pub fn Notices() -> impl IntoView {
    let shelf = expect_context::<Shelf>();
    let newer = offline::update_ready();
    view! {
        <div class="notices" aria-live="polite">
            {move || shelf.left_closed.get().map(|id| view! {
                <p class="note caution">
                    {page::BROKE}" "
                    <button type="button" on:click=move |_| shelf.open(id)>{page::OPEN_ANYWAY}</button>
                </p>
            })}
            {move || shelf.said.get().map(|text| view! {
                <p class="note caution">
                    {text}" "
                    <button type="button" on:click=move |_| shelf.said.set(None)>{page::UNDERSTOOD}</button>
                </p>
            })}
            <Show when=move || newer.get()>
                <p class="note">
                    {page::NEWER}" "
                    <button type="button" on:click=move |_| offline::apply_update()>{page::USE_NEWER}</button>
                </p>
            </Show>
        </div>
    }
}

/// One line at the end of the page.
#[component]
pub fn Foot() -> impl IntoView {
    let state = offline::state();
    view! {
        <footer class="foot" inert=move || desk().large.get()>
            <p role="status">{move || match state.get() {
                Offline::Ready => page::OFFLINE_READY,
                Offline::Preparing => page::OFFLINE_PREPARING,
                Offline::Never => page::OFFLINE_NEVER,
            }}</p>
            <SpellingChoice />
            <p>{page::CAUTIONS}</p>
        </footer>
    }
}

/// British or American spelling.
#[component]
fn SpellingChoice() -> impl IntoView {
    let desk = desk();
    let one = move |spelling: Spelling, name: &'static str| {
        let choose = move |_| {
            desk.spelling.set(spelling);
            here::keep_spelling(spelling);
        };
        view! {
            <button
                type="button"
                aria-pressed=move || if desk.spelling.get() == spelling { "true" } else { "false" }
                on:click=choose
            >{name}</button>
        }
    };
    view! {
        <fieldset class="field">
            <legend>{page::SPELLING}</legend>
            <div class="either">{one(Spelling::Uk, page::BRITISH)}{one(Spelling::Us, page::AMERICAN)}</div>
        </fieldset>
    }
}
