//! The link that holds the whole design, and files.

use leptos::prelude::*;

use super::desk::desk;
use super::picture::Picture;
use super::shelf::Shelf;
use crate::draw::code::code;
use crate::draw::svg::paint;
use crate::keep::file::{self, Kept, MOST_BYTES};
use crate::say::{kept, page};
use crate::web::share::{Copied, copy};
use crate::web::{files, last, link};

/// Sharing and files.
#[component]
pub fn Share() -> impl IntoView {
    let desk = desk();
    let shelf = expect_context::<Shelf>();
    let address = Memo::new(move |_| desk.project.with(|p| link::address(p).map_err(|why| format!("{why}."))));
    let shown = move || address.get().unwrap_or_default();
    let wrong = move || address.get().err();
    let told = RwSignal::new("");
    // Drawn only while it is looked at.
    let (open, details) = (RwSignal::new(false), NodeRef::<leptos::html::Details>::new());
    let code = Memo::new(move |_| {
        let address = open.get().then(|| address.get().ok()).flatten();
        let drawing = address.and_then(|a| code(&a, kept::CODE));
        drawing.as_ref().map(paint).unwrap_or_default()
    });
    let copy_link = move |_| {
        if let Ok(address) = address.get_untracked() {
            copy(&address, move |copied| {
                told.set(match copied {
                    Copied::Yes => page::LINK_COPIED,
                    Copied::No => page::LINK_NOT_COPIED,
                });
            });
        }
    };
    let save_file = move |_| {
        let project = desk.project.get_untracked();
        let name = kept::file_name(&project.name);
        let ticks = desk.ticks.get_untracked();
        let _ = files::give(&name, &file::write(&Kept { project, ticks, saved_at: None }));
    };
    let backup = RwSignal::new(last::wants_backup(shelf.list().entries.len()));
    let save_all = move |_| {
        if let Some(all) = shelf.all() {
            // A large backup is several files, so that each can be read again.
            for (i, text) in file::write_all(&all).iter().enumerate() {
                let _ = files::give(&format!("all-sets-{}.snugfold.json", i + 1), text);
            }
            last::note_backup();
            backup.set(false);
        }
    };
    let open_file = move |event: web_sys::Event| {
        files::take(&event, MOST_BYTES as f64, move |bytes| match bytes.as_deref().map(file::read) {
            Some(Ok(sets)) => shelf.bring_in(&sets),
            Some(Err(why)) => shelf.said.set(Some(format!("{why}."))),
            None => shelf.said.set(Some(kept::FILE_NOT_READ.to_owned())),
        });
    };
    view! {
        <section class="sheet-of-paper">
            <h2>{kept::SHARE}</h2>
            <div class="field">
                <label for="link">{kept::LINK}</label>
                <input id="link" type="text" readonly prop:value=shown on:focus=move |_| told.set("") />
                <p class="hint">{kept::LINK_HINT}</p>
                {move || wrong().map(|why| view! { <p class="note stop" role="alert">{why}</p> })}
            </div>
            <p class="actions">
                <button type="button" class="main" on:click=copy_link>{page::COPY_LINK}</button>
            </p>
            <p role="status">{told}</p>
            <details class="code" on:toggle=move |_| open.set(details.get().is_some_and(|d| d.open())) node_ref=details>
                <summary>{kept::CODE}</summary>
                <Show
                    when=move || !code.with(String::is_empty)
                    fallback=move || open.get().then(|| view! { <p class="note caution">{kept::CODE_TOO_LONG}</p> })
                >
                    <Picture svg=code />
                    <p class="hint">{kept::CODE_HINT}</p>
                </Show>
            </details>
            <h2>{kept::FILES}</h2>
            <Show when=move || backup.get()><p class="note caution" role="status">{kept::BACKUP}</p></Show>
            <p class="actions">
                <button type="button" on:click=save_file>{page::SAVE_FILE}</button>
                <button type="button" on:click=save_all>{kept::SAVE_ALL}</button>
            </p>
            <div class="field">
                <label for="open-file">{page::OPEN_FILE}</label>
                <input id="open-file" type="file" accept=".json,application/json" on:change=open_file />
            </div>
        </section>
    }
}
