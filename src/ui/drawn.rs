//! `Sheet`: the form of one box as its maker draws it, and what of it is picked.

use super::desk::{Desk, desk};
use super::forms::{follow, number};
use super::value::{Fact, State, effect, fact, fact_after};
use crate::fit::own::Bench;
use crate::form::own::drawn::{At, Between, Drawn, SizeName};
use crate::form::own::edit::cell_of;
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

/// What stays of the sizes that are typed for a box when its form changes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Typed {
    /// All of it.
    All,
    /// Those of sizes that the form had before.
    OfItsOwn,
    /// Nothing: it is another form.
    Nothing,
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
        let picked = State::new(Picked::Nothing);
        // A touch on the drawing picks the cell.
        effect(move || {
            let Some((at, panel)) = desk.touched.get().filter(|t| t.0 == place) else {
                return;
            };
            let cell = desk.shapes.with_untracked(|plan| {
                let made = plan.part(at).and_then(|p| p.assembly.as_ref());
                made.and_then(|a| a.parts.first()).and_then(|p| cell_of(&p.net, panel))
            });
            if let Some(cell) = cell {
                picked.set(Picked::Cell(cell));
            }
        });
        // Also what is undone is kept so.
        let last = State::new(form.get_untracked());
        effect(move || {
            let now = form.get();
            follow(&last.get_untracked(), &now);
            last.set(now);
        });
        let project = desk.project;
        let bench =
            fact(move || part.with(|p| p.as_ref().map(|part| project.with(|all| bench(all, part, all.system)))));
        Self { desk, place, drawn: form, bench, picked, trims: State::new(false) }
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
        change(&mut form);
        self.lay(tag, form, Typed::OfItsOwn);
    }

    /// Puts another form in its place; of what is typed for its sizes this stays.
    pub fn lay(self, tag: &str, mut form: Drawn, typed: Typed) {
        let before = self.drawn.get_untracked();
        // What lies still stays the same panel when sizes change.
        if form.still.is_none()
            && let Some(bench) = self.bench.get_untracked()
        {
            let still = {
                let sizes = bench.sizes(&form, &[]);
                let made = make(&form, &bench.measures(&sizes), bench.clear).ok();
                made.and_then(|m| m.built.pieces.first().map(|p| p.at))
            };
            form.still = still;
        }
        if form == before {
            return;
        }
        number(&before, &mut form);
        let text = text(&form);
        let goes = |name: SizeName| match typed {
            Typed::All => false,
            // What was typed for a size of another form is no size of this one.
            Typed::OfItsOwn => before.drawn_size(name).is_none(),
            Typed::Nothing => true,
        };
        let fresh = form.sizes.iter().map(|s| s.0).filter(|name| goes(*name));
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
