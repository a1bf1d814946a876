//! Ways to begin a form: said as at the table, copied from the catalogue, empty, from the shelf or from a file.

use leptos::prelude::*;

use super::child::live;
use super::choice_field::ChoiceField;
use super::drawn::{Sheet, Typed};
use super::drawn_measures::usual;
use super::drawn_text::FormText;
use super::forms::{Kept, delete, kept, restore};
use super::opened::opened;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State};
use crate::fit::own::equal::named;
use crate::form::own::copy::copy;
use crate::form::own::drawn::Drawn;
use crate::form::own::read::{LONGEST, read};
use crate::form::registry::FORMS;
use crate::form::registry::Holds;
use crate::measure::system::Native;
use crate::plan::copied;
use crate::say::drawing;
use crate::web::files;

/// What an empty blank measures.
const BLANK: [Native<crate::measure::length::Length>; 2] = [Native::lengths(8, 1, 2_000), Native::lengths(6, 1, 1_500)];

/// Every way to begin.
#[must_use]
pub fn begin(sheet: Sheet) -> Tag {
    let open = State::new(sheet.drawn.with_untracked(|d| d.number.is_none()));
    opened("group begin", drawing::BEGIN, open).with(spoken(sheet)).with(copies(sheet, open)).with(shelf(sheet))
}

/// Lays a form on the sheet that is not the one that was there: it gets a number of its own.
fn lay(sheet: Sheet, mut form: Drawn) {
    // What has no name yet was a try: the next one takes its place on the shelf.
    let there = sheet.drawn.get_untracked();
    form.number = there.number.filter(|_| there.called.trim().is_empty());
    sheet.lay("", form, Typed::Nothing);
}

fn spoken(sheet: Sheet) -> Tag {
    let field = FormText {
        key: "spoken",
        label: drawing::SPOKEN,
        hint: drawing::SPOKEN_HINT,
        take: drawing::LAY_OUT,
        rows: "3",
    };
    field.view(sheet, Fact::fixed(String::new()), move |form| lay(sheet, form))
}

fn copies(sheet: Sheet, open: State<bool>) -> Tag {
    let forms = move || FORMS.iter().filter(|f| f.holds == Holds::Gifts);
    let chosen = State::new(forms().next().map_or_else(String::new, |f| f.key.to_owned()));
    let none = State::new(false);
    let choice = ChoiceField {
        id: sheet.id("copy"),
        label: drawing::COPY_OF,
        hint: String::new(),
        choices: Fact::fixed(forms().map(|f| (f.key.to_owned(), f.name.to_owned())).collect()),
        value: chosen.into(),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |key| chosen.set(key)),
    };
    let take = move || {
        let key = chosen.get_untracked();
        let made = sheet.desk.project.with_untracked(|p| copied(p, sheet.place, &key));
        let form = made.zip(sheet.bench.get()).and_then(|((part, called), bench)| {
            let mut form = copy(&part, bench.system, bench.score, bench.clear)?;
            form.called = called;
            Some(named(&form, &bench).map_or_else(|| form.clone(), |n| n.drawn))
        });
        none.set(form.is_none());
        if let Some(form) = form {
            lay(sheet, form);
            open.set(false);
        }
    };
    let empty = move || {
        let system = sheet.desk.system().get_untracked();
        let [width, height] = BLANK.map(|l| usual(system, l).into_iter().collect::<Vec<_>>());
        lay(sheet, Drawn::blank(width, height));
        open.set(false);
    };
    tag("div")
        .with(classed("div", "fields").with(choice.view()))
        .with(live(move || {
            none.get().then(|| classed("p", "note caution").is("role", "status").with(drawing::NO_COPY))
        }))
        .with(classed("p", "actions").with(button(drawing::COPY, take)).with(button(drawing::EMPTY, empty)))
}

fn shelf(sheet: Sheet) -> Tag {
    let all = kept();
    let gone = State::new(None::<Kept>);
    let system = sheet.desk.system();
    let refused = State::new(false);
    let row = move |kept: Kept| {
        let name = kept.name();
        let (text, saved, whole) = (kept.text.clone(), kept.clone(), kept.clone());
        let take = move || {
            if let Ok(form) = read(&text, system.get_untracked()) {
                sheet.lay("", form, Typed::All);
            }
        };
        let save = move || {
            let _ = files::give(&format!("{}.form.txt", saved.called.trim()), "text/plain", saved.text.as_bytes());
        };
        let delete = move || {
            delete(whole.number);
            gone.set(Some(whole.clone()));
        };
        let said = |what: &str| format!("{what}: {name}");
        let actions = classed("span", "actions")
            .with(button(drawing::TAKE_IT, take).is("aria-label", said(drawing::TAKE_IT)))
            .with(button(drawing::SAVE, save).is("aria-label", said(drawing::SAVE)))
            .with(button(drawing::DELETE, delete).is("aria-label", said(drawing::DELETE)));
        classed("li", "kept-form").with(tag("strong").with(name.clone())).with(actions)
    };
    let list = move || {
        let all = all.get();
        if all.is_empty() {
            return tag("p").class("hint").with(drawing::SHELF_EMPTY);
        }
        classed("ul", "rows").with(all.into_iter().map(row).collect::<Vec<Tag>>())
    };
    let back = move || {
        gone.get().map(|kept| {
            let again = move || {
                restore(&kept);
                gone.set(None);
            };
            classed("p", "note").is("role", "status").with(button(drawing::BRING_BACK, again))
        })
    };
    let opened_file = move |bytes: Option<Vec<u8>>| {
        let text = bytes.and_then(|b| String::from_utf8(b).ok());
        let form = text.and_then(|t| read(&t, system.get_untracked()).ok());
        refused.set(form.is_none());
        if let Some(form) = form {
            lay(sheet, form);
        }
    };
    let input = tag("input")
        .is("id", sheet.id("file"))
        .is("type", "file")
        .is("accept", ".txt,text/plain")
        .on("change", move |event| files::take(&event, LONGEST as f64, opened_file));
    tag("div")
        .with(tag("h4").with(drawing::SHELF))
        .with(live(list))
        .with(live(back))
        .with(
            classed("div", "field").with(tag("label").is("for", sheet.id("file")).with(drawing::OPEN_FILE)).with(input),
        )
        .with(live(move || refused.get().then(|| classed("p", "note stop").is("role", "alert").with(drawing::NO_FORM))))
        .with(classed("p", "hint").with(drawing::IN_LINK))
}
