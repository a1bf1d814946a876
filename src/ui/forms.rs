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

/// Counts up when the shelf changes.
#[derive(Clone, Copy)]
struct Changed(State<u32>);

/// Sets the shelf up.
pub fn begin() {
    provide_context(Changed(State::new(0)));
}

fn changed() -> State<u32> {
    expect_context::<Changed>().0
}

/// Every form on the shelf, by name.
#[must_use]
pub fn kept() -> Fact<Vec<Kept>> {
    let changed = changed();
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

/// Keeps a form as it was changed: in the place of what it was before, where that is what is kept there; else beside it.
pub fn keep(before: &Drawn, form: &mut Drawn) {
    let there = form.number.and_then(forms::one);
    let mine = there.as_ref().is_none_or(|kept| *kept == text(before) || *kept == text(form));
    if form.number.is_none() || !mine {
        form.number = Some(forms::fresh());
    }
    if let Some(number) = form.number {
        forms::keep(number, &text(form));
        changed().update(|c| *c = c.wrapping_add(1));
    }
}

/// Takes a form off the shelf.
pub fn delete(number: u32) {
    forms::delete(number);
    changed().update(|c| *c = c.wrapping_add(1));
}

/// Puts a form back that was taken off.
pub fn restore(kept: &Kept) {
    forms::keep(kept.number, &kept.text);
    changed().update(|c| *c = c.wrapping_add(1));
}
