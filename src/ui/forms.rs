//! The maker's own shelf of forms: kept by itself in the browser as they are drawn, each under a number of its own.

use super::value::{Fact, State, fact};
use crate::form::own::drawn::Drawn;
use crate::form::own::read::read;
use crate::form::own::write::text;
use crate::measure::sort::sort_by_key;
use crate::measure::system::System;
use crate::web::forms;
use leptos::prelude::{expect_context, provide_context};

/// A form on the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// Its number.
    pub number: u32,
    /// What its maker calls it.
    pub called: String,
    /// Its text.
    pub text: String,
}

/// The shelf as this page knows it.
#[derive(Clone, Copy)]
struct Shelf {
    /// Counts up when it changes.
    changed: State<u32>,
    /// The forms that this page writes: nobody else's work is lost by it.
    ours: State<Vec<u32>>,
}

/// Sets the shelf up.
pub fn begin() {
    provide_context(Shelf { changed: State::new(0), ours: State::new(Vec::new()) });
}

fn shelf() -> Shelf {
    expect_context::<Shelf>()
}

impl Shelf {
    fn write(self, number: u32, text: &str) {
        if forms::one(number).as_deref() != Some(text) {
            forms::keep(number, text);
            self.changed.update(|c| *c = c.wrapping_add(1));
        }
    }

    fn writes(self, number: u32) -> bool {
        self.ours.with_untracked(|ours| ours.contains(&number))
    }
}

/// Every form on the shelf, by name.
#[must_use]
pub fn kept() -> Fact<Vec<Kept>> {
    let changed = shelf().changed;
    fact(move || {
        changed.track();
        let all = forms::all().into_iter().map(|(number, text)| {
            let called = read(&text, System::Inch).map_or_else(|_| String::new(), |d| d.called);
            Kept { number, called, text }
        });
        let mut all: Vec<Kept> = all.collect();
        sort_by_key(&mut all, |k| (k.called.to_lowercase(), k.number));
        all
    })
}

/// Gives a form that is changed its number: its own where the shelf has it as it was before or this page wrote it, or
/// else a new one, so that it is kept beside the other.
pub fn number(before: &Drawn, form: &mut Drawn) {
    let shelf = shelf();
    let mine = |number: u32| {
        shelf.writes(number) || forms::one(number).is_none_or(|kept| kept == text(before) || kept == text(form))
    };
    let number = form.number.filter(|n| mine(*n)).unwrap_or_else(forms::fresh);
    form.number = Some(number);
    if !shelf.writes(number) {
        shelf.ours.update(|ours| ours.push(number));
    }
}

/// Keeps a form as it is now, where this page changed it.
pub fn follow(form: &Drawn) {
    let shelf = shelf();
    if let Some(number) = form.number.filter(|n| shelf.writes(*n)) {
        shelf.write(number, &text(form));
    }
}

/// Takes a form off the shelf.
pub fn delete(number: u32) {
    forms::delete(number);
    let shelf = shelf();
    // What goes is not written again by a box that still has it, unless it is changed there.
    shelf.ours.update(|ours| ours.retain(|n| *n != number));
    shelf.changed.update(|c| *c = c.wrapping_add(1));
}

/// Puts a form back that was taken off.
pub fn restore(kept: &Kept) {
    shelf().write(kept.number, &kept.text);
}
