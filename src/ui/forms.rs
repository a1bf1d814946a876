//! The maker's own shelf of forms: kept by itself in the browser as they are drawn, each under a number of its own.

use super::value::{Fact, State, fact};
use crate::form::own::drawn::Drawn;
use crate::form::own::write::text;
use crate::say::drawing;
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
struct Shelf(State<u32>);

impl Kept {
    /// What it is called on the page.
    #[must_use]
    pub fn name(&self) -> String {
        if self.called.trim().is_empty() { drawing::NO_NAME.to_owned() } else { self.called.clone() }
    }
}

/// Sets the shelf up.
pub fn begin() {
    provide_context(Shelf(State::new(0)));
}

fn changed() -> State<u32> {
    expect_context::<Shelf>().0
}

fn write(number: u32, text: &str) {
    if forms::one(number).as_deref() != Some(text) {
        forms::keep(number, text);
        changed().update(|c| *c = c.wrapping_add(1));
    }
}

/// Every form on the shelf, by name.
#[must_use]
pub fn kept() -> Fact<Vec<Kept>> {
    let changed = changed();
    fact(move || {
        changed.track();
        let all = forms::all().into_iter().map(|(number, text)| {
            let called = text.lines().find_map(|l| l.strip_prefix("called ")).unwrap_or_default().to_owned();
            Kept { number, called, text }
        });
        let mut all: Vec<Kept> = all.collect();
        all.sort_by_key(|k| (k.called.to_lowercase(), k.number));
        all
    })
}

/// Gives a form that is changed its number: its own where the shelf has it as it was before, or else a new one, so that
/// it is kept beside the other.
pub fn number(before: &Drawn, form: &mut Drawn) {
    let mine = |number: u32| forms::one(number).is_none_or(|kept| kept == text(before) || kept == text(form));
    form.number = Some(form.number.filter(|n| mine(*n)).unwrap_or_else(forms::fresh));
}

/// Keeps a form as it is now, in the place of what it was before, where that is what the shelf has.
pub fn follow(before: &Drawn, now: &Drawn) {
    if let (Some(number), true) = (now.number, before != now)
        && forms::one(number).is_none_or(|kept| kept == text(before))
    {
        write(number, &text(now));
    }
}

/// Takes a form off the shelf.
pub fn delete(number: u32) {
    forms::delete(number);
    changed().update(|c| *c = c.wrapping_add(1));
}

/// Puts a form back that was taken off.
pub fn restore(kept: &Kept) {
    write(kept.number, &kept.text);
}
