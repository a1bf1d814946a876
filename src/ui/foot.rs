//! The foot of the page: what was said about keeping, newer versions, and whether it works without a network.

use super::child::{live, shown, words};
use super::desk::desk;
use super::either::either;
use super::guest::{closed_link_note, guest_note};
use super::set_aside::{discarded, set_aside_actions};
use super::share::save_file;
use super::shelf::shelf;
use super::tag::{Tag, button, classed, tag};
use crate::say::spelling::Spelling;
use crate::say::{kept, page};
use crate::web::here;
use crate::web::offline::{self, Offline};

/// Notices that belong to the page as a whole.
#[must_use]
pub fn notices() -> Tag {
    let shelf = shelf();
    let note = |class, text: &str, button: Tag| classed("p", class).with(format!("{text} ")).with(button);
    let closed = move || {
        let id = shelf.left_closed.get()?;
        Some(note("note caution", page::BROKE, button(page::OPEN_ANYWAY, move || shelf.open_guarded(id))))
    };
    let said = move || {
        let text = shelf.said.get()?;
        Some(note("note caution", &text, button(page::UNDERSTOOD, move || shelf.said.set(None))))
    };
    let unreadable = move || {
        let each = shelf.unreadable.get().into_iter().map(|aside| {
            classed("div", "note caution")
                .with(tag("p").with(format!("{} {}", kept::UNREADABLE, aside.why)))
                .with(set_aside_actions(&aside))
        });
        each.collect::<Vec<_>>()
    };
    let unsaved = move || {
        let text = format!("{} {}", kept::NOT_SAVED, shelf.unsaved.get()?);
        Some(note("note stop", &text, button(page::SAVE_FILE, move || save_file(shelf.desk()))))
    };
    let waiting = move || {
        let each = shelf.waiting.get().into_iter().map(|(number, name)| {
            let name = if name.trim().is_empty() { page::UNNAMED } else { &name };
            note("note caution", &kept::waits(name), button(kept::GO_BACK, move || shelf.take_up(number)))
        });
        each.collect::<Vec<_>>()
    };
    classed("div", "notices")
        .is("aria-live", "polite")
        .with(live(closed))
        .with(live(move || closed_link_note(shelf)))
        .with(live(move || guest_note(shelf)))
        .with(live(unreadable))
        .with(discarded())
        .with(live(unsaved))
        .with(live(waiting))
        .with(live(said))
        .with(shown(offline::update_ready, move || {
            note("note", page::NEWER, button(page::USE_NEWER, offline::apply_update))
        }))
}

/// One line at the end of the page.
#[must_use]
pub fn foot() -> Tag {
    let desk = desk();
    let offline = move || match offline::state() {
        Offline::Ready => page::OFFLINE_READY,
        Offline::Preparing => page::OFFLINE_PREPARING,
        Offline::Never => page::OFFLINE_NEVER,
    };
    classed("footer", "foot")
        .while_so("inert", move || desk.large.get())
        .with(tag("p").is("role", "status").with(words(move || offline().to_owned())))
        .with(spelling_choice())
        .with(tag("p").with(page::CAUTIONS))
}

/// British or American spelling.
fn spelling_choice() -> Tag {
    let desk = desk();
    let one = move |spelling: Spelling, name: &'static str| {
        let choose = move || {
            desk.spelling.set(spelling);
            here::keep_spelling(spelling);
        };
        button(name, choose).says("aria-pressed", move || desk.spelling.get() == spelling)
    };
    either(page::SPELLING, vec![one(Spelling::Uk, page::BRITISH), one(Spelling::Us, page::AMERICAN)])
}
