//! `Sheet`: the form of one box as its maker draws it, and what of it is picked.

use super::desk::{Desk, desk};
use super::forms::{follow, number};
use super::value::{Fact, State, effect, fact, fact_after};
use crate::fit::own::Bench;
use crate::form::own::drawn::{At, Between, Drawn};
use crate::form::own::shape::{drawn, make};
use crate::form::own::write::text;
use crate::plan::bench;
use crate::project::finding::Place;
use crate::project::request::{Entry, Part};

/// What is picked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Picked {
    /// Nothing yet.
    Nothing,
    /// A cell.
    Cell(At),
    /// The line between two.
    Line(Between),
}

/// The form of one box on the desk.
#[derive(Clone, Copy)]
pub struct Sheet {
    /// The desk.
    pub desk: Desk,
    /// Which box.
    pub place: Place,
    /// The form; while its text cannot be read, as it was before.
    pub drawn: Fact<Drawn>,
    /// What it is tried in.
    pub bench: Fact<Option<Bench>>,
    /// What is picked.
    pub picked: State<Picked>,
    /// Whether what is cut off is looked at.
    pub trims: State<bool>,
}

impl Sheet {
    /// The form of the box at `place`.
    #[must_use]
    pub fn of(place: Place) -> Self {
        let desk = desk();
        let part = desk.part(place);
        let system = desk.system();
        let read = fact(move || part.with(|p| p.as_ref().map(|p| drawn(&p.drawn, system.get()))));
        let form = fact_after(move |last: Option<&Drawn>| match read.get() {
            Some(Ok(drawn)) => drawn,
            _ => last.cloned().unwrap_or_default(),
        });
        // Also what is undone is kept so.
        effect(move || form.with(follow));
        let project = desk.project;
        let bench =
            fact(move || part.with(|p| p.as_ref().map(|part| project.with(|all| bench(all, part, all.system)))));
        Self { desk, place, drawn: form, bench, picked: State::new(Picked::Nothing), trims: State::new(false) }
    }

    /// The form with the sizes that are typed for this box.
    #[must_use]
    pub fn as_typed(self) -> Drawn {
        let typed = self.desk.part(self.place);
        let mut form = self.drawn.get();
        typed.with(|p| {
            for (name, given) in &mut form.sizes {
                let entry = p.as_ref().and_then(|p: &Part| p.inputs.get(crate::form::own::words::size(*name)));
                if let Some(Entry::Length(now)) = entry {
                    given.clone_from(now);
                }
            }
        });
        form
    }

    /// Changes the form; edits with one `tag` after another are taken back together.
    pub fn change(self, tag: &str, change: impl FnOnce(&mut Drawn)) {
        let mut form = self.drawn.get_untracked();
        let before = form.clone();
        change(&mut form);
        self.lay(tag, before, form);
    }

    /// Puts another form in its place.
    pub fn lay(self, tag: &str, before: Drawn, mut form: Drawn) {
        // What lies still stays the same panel when sizes change.
        if form.still.is_none()
            && let Some(bench) = self.bench.get_untracked()
        {
            let sizes = bench.sizes(&form, &[]);
            let made = make(&form, &bench.measures(&sizes), bench.clear).ok();
            let still = made.and_then(|m| m.built.pieces.first().map(|p| p.at));
            drop(sizes);
            form.still = still;
        }
        if form == before {
            return;
        }
        number(&before, &mut form);
        let text = text(&form);
        // What was typed for a size of another form is no size of this one.
        let fresh = form.sizes.iter().map(|s| s.0).filter(|name| before.drawn_size(*name).is_none());
        let fresh: Vec<&str> = fresh.map(crate::form::own::words::size).collect();
        self.desk.edit_part(self.place, tag, |p| {
            p.drawn = text;
            p.inputs.retain(|key, _| !fresh.contains(&key.as_str()));
        });
        if tag.is_empty() {
            self.desk.settle();
        }
    }

    /// A name for a field that is unique on the page.
    #[must_use]
    pub fn id(self, key: &str) -> String {
        super::part_fields::id(self.place, &format!("drawn-{key}"))
    }
}
