//! The link that holds the whole design, and files.

use super::bringing::opening;
use super::child::{live, shown, words};
use super::desk::{Desk, desk};
use super::labelled::labelled;
use super::opened::opened;
use super::own_picture::own_picture;
use super::picture::picture;
use super::shelf::shelf;
use super::tag::{Tag, button, classed, tag};
use super::value::{State, fact};
use crate::draw::code::{Spare, code};
use crate::draw::svg::paint;
use crate::keep::file::{self, Kept, MOST_BYTES};
use crate::say::{kept, page};
use crate::web::share::{Copied, copy};
use crate::web::{files, last, link};

/// Saves the design on the desk as a file.
pub fn save_file(desk: Desk) {
    let project = desk.project.get_untracked();
    let name = kept::file_name(&project.name);
    let ticks = desk.ticks.get_untracked();
    let _ = files::give(&name, files::JSON, file::write(&Kept { project, ticks, saved_at: None }).as_bytes());
}

/// Sharing and files.
#[must_use]
pub fn share() -> Tag {
    let desk = desk();
    let shelf = shelf();
    let opening = opening();
    let address = fact(move || desk.project.with(|p| link::address(p).map_err(|why| format!("{why}."))));
    let shown_link = move || address.get().unwrap_or_default();
    let wrong = move || address.get().err();
    let told = State::new("");
    // Drawn only while it is looked at.
    let open = State::new(false);
    let code = fact(move || {
        let address = open.get().then(|| address.get().ok()).flatten();
        let drawing = address.and_then(|a| code(&a, kept::CODE, Spare::Seventh));
        drawing.as_ref().map(paint).unwrap_or_default()
    });
    let copy_link = move || {
        if let Ok(address) = address.get_untracked() {
            copy(&address, move |copied| {
                told.set(match copied {
                    Copied::Yes => page::LINK_COPIED,
                    Copied::No => page::LINK_NOT_COPIED,
                });
            });
        }
    };
    let backup = State::new(last::wants_backup(shelf.list().entries.len()));
    let save_all = move || {
        if let Some(all) = shelf.all() {
            // A large backup is several files, so that each can be read again.
            for (i, text) in file::write_all(&all).iter().enumerate() {
                let _ = files::give(&format!("all-sets-{}.snugfold.json", i + 1), files::JSON, text.as_bytes());
            }
            last::note_backup();
            backup.set(false);
        }
    };
    let open_file = move |event: web_sys::Event| {
        files::take(&event, MOST_BYTES as f64, move |bytes| match bytes {
            Some(bytes) => opening.open(&bytes),
            None => shelf.said.set(Some(kept::FILE_NOT_READ.to_owned())),
        });
    };
    let link = tag("input").is("type", "text").is("readonly", "").value(shown_link).on("focus", move |_| told.set(""));
    let link = labelled("link", kept::LINK, link)
        .with(live(move || wrong().map(|why| classed("p", "note stop").is("role", "alert").with(why))));
    let code = live(move || {
        if code.with(String::is_empty) {
            return open.get().then(|| vec![classed("p", "note caution").with(kept::CODE_TOO_LONG)]);
        }
        Some(vec![picture(move || code.get()), classed("p", "hint").with(kept::CODE_HINT)])
    });
    let reminder = || classed("p", "note caution").is("role", "status").with(kept::BACKUP);
    let open_one = tag("input").is("type", "file").is("accept", ".json,application/json").on("change", open_file);
    let open_one = labelled("open-file", page::OPEN_FILE, open_one);
    let save = classed("p", "actions")
        .with(button(page::SAVE_FILE, move || save_file(desk)))
        .with(button(kept::SAVE_ALL, save_all));
    classed("section", "sheet-of-paper")
        .with(tag("h2").with(kept::SHARE))
        .with(link)
        .with(classed("p", "actions").with(button(page::COPY_LINK, copy_link).class("main")))
        .with(tag("p").is("role", "status").with(words(move || told.get().to_owned())))
        .with(opened("code", kept::CODE, open).with(code))
        .with(tag("h2").with(kept::FILES))
        .with(shown(move || backup.get(), reminder))
        .with(save)
        .with(open_one)
        .with(opening.bar())
        .with(own_picture())
}
