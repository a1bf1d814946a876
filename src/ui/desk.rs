//! `Desk`: what lies on the table: the design as it is edited, what follows from it, and the way back.

use std::ops::Deref;

use leptos::prelude::*;

use super::looking::Looking;
use super::own_notes::Writing;
use super::planner::Planner;
use super::shared::Shared;
use super::turn::{Turn, turns};
use super::value::{Fact, State, fact, fact_after};
use crate::keep::trail::Trail;
use crate::make::pace::Pace;
use crate::measure::system::System;
use crate::net::flat::PanelId;
use crate::project::finding::{Finding, Place};
use crate::project::request::{Part, Project};
use crate::project::ticks::Ticks;
use crate::say::hand::Hand;
use crate::say::spelling::Spelling;
use crate::web::here;

/// How many edits can be taken back.
const KEPT: usize = 200;

/// What was before and after the design on the table.
#[derive(Default)]
struct History {
    trail: Trail,
    /// What is being edited: further edits of it are one step back.
    tag: String,
    /// The ticks before each change of them since the last edit, and what was taken back of that.
    ticks: [Vec<Ticks>; 2],
}

/// The one context of the page, by its place: nearly everything on the page holds on to it.
#[derive(Clone, Copy)]
pub struct Desk(&'static Lying);

impl Deref for Desk {
    type Target = Lying;

    fn deref(&self) -> &Lying {
        self.0
    }
}

/// What lies on the desk.
pub struct Lying {
    /// The design as it is asked for.
    pub project: State<Project>,
    /// The panel of a drawing that was touched last.
    pub touched: State<Option<(Place, PanelId)>>,
    /// What has been put on the page since the visit began.
    pub turn: State<Turn>,
    /// Plans it, slice by slice.
    pub planner: Planner,
    /// Its boxes and holder, one frame later or some ([`Desk::at_hand`] at once); pieces, sheets and steps are in the
    /// plan.
    pub shapes: Fact<Shared>,
    /// What follows from it, as far as it goes: later too.
    pub plan: Fact<Shared>,
    /// The search for better sheets, whose layouts stand in the plan.
    pub better: Looking,
    /// The last plan that nothing stopped.
    pub good: Fact<Shared>,
    /// What is being edited or looked at.
    pub place: State<Place>,
    /// The keys of the steps that are done.
    pub ticks: State<Ticks>,
    /// Whether one step is shown large, over everything else.
    pub large: State<bool>,
    /// What is half written to a step.
    pub writing: Writing,
    /// Which English is written.
    pub spelling: State<Spelling>,
    /// For which hand the work is told and drawn.
    pub hand: State<Hand>,
    /// How quick the maker's own hands are.
    pub pace: State<Pace>,
    /// The step that is being timed, by its key, and since when.
    pub timing: State<Option<(String, f64)>>,
    /// Counts up whenever the design is exchanged from outside a field, so that half-typed text goes.
    pub epoch: State<u32>,
    /// How far back and forward one can go.
    pub ways: State<(usize, usize)>,
    /// The boxes and holder before the last edit, where there was one since the design was laid here.
    pub was: State<Option<Shared>>,
    history: StoredValue<History>,
}

impl Desk {
    /// A desk with this design on it.
    #[must_use]
    pub fn new(project: Project, spelling: Spelling, hand: Hand) -> Self {
        let place = project.boxes.first().map_or(Place::Set, |b| Place::Box(b.id));
        let project = State::new(project);
        let planner = Planner::begin(project);
        let quick = Fact::from(planner.plan);
        let turn = turns();
        let ticks = State::new(Ticks::default());
        let better = Looking::begin(project, planner, ticks);
        let plan = fact(move || better.into_plan(&quick.get()));
        let good = fact_after(move |last: Option<&Shared>| {
            let now = plan.get();
            match last {
                Some(last) if now.stopped() => last.clone(),
                _ => now,
            }
        });
        // There is one, for as long as the page is there.
        Self(Box::leak(Box::new(Lying {
            was: State::new(None),
            turn,
            touched: State::new(None),
            project,
            shapes: planner.shapes.into(),
            planner,
            plan,
            better,
            good,
            place: State::new(place),
            ticks,
            large: State::new(false),
            writing: Writing::begin(),
            spelling: State::new(spelling),
            hand: State::new(hand),
            pace: State::new(here::pace()),
            timing: State::new(None),
            epoch: State::new(0),
            ways: State::new((0, 0)),
            history: StoredValue::new(History::default()),
        })))
    }

    /// The system that is worked in.
    #[must_use]
    pub fn system(self) -> Fact<System> {
        let project = self.project;
        fact(move || project.with(|p| p.system))
    }

    /// Changes the design; edits with one `tag` after another are taken back together.
    pub fn edit(self, tag: &str, change: impl FnOnce(&mut Project)) {
        let mut change = Some(change);
        self.change(tag, &mut |p| {
            if let Some(change) = change.take() {
                change(p);
            }
        });
    }

    /// The same, once for all edits: each would be a copy of it.
    #[inline(never)]
    fn change(self, tag: &str, change: &mut dyn FnMut(&mut Project)) {
        let before = self.project.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        if after == before {
            return;
        }
        let begun = self.history.try_update_value(|h| {
            h.trail.future.clear();
            h.ticks = Default::default();
            let begun = tag.is_empty() || h.tag != tag;
            if begun {
                h.trail.past.push(before.clone());
                let over = h.trail.past.len().saturating_sub(KEPT);
                h.trail.past.drain(..over);
            }
            tag.clone_into(&mut h.tag);
            begun
        });
        if begun == Some(true) {
            self.was.set(Some(self.shapes.get_untracked()));
        }
        self.project.set(after);
        self.count_ways();
    }

    /// Ends the run of edits that are taken back together.
    pub fn settle(self) {
        self.history.update_value(|h| h.tag.clear());
    }

    /// What was before and after the design, to be kept.
    #[must_use]
    pub fn trail(self) -> Trail {
        self.history.with_value(|h| h.trail.clone())
    }

    /// Gives the design the name that it was saved under, on its way back too: that is no edit.
    pub fn call(self, name: &str) {
        let before = self.project.with_untracked(|p| p.name.clone());
        self.history.update_value(|h| h.trail.rename(&before, name));
        self.project.update(|p| name.clone_into(&mut p.name));
    }

    /// Lays another design on the desk, with its own way back: it must not lead into another set.
    pub fn lay(self, project: Project, ticks: Ticks, trail: Trail) {
        self.history.update_value(|h| *h = History { trail, ..History::default() });
        self.ticks.set(ticks);
        self.was.set(None);
        let first = project.boxes.first().map_or(Place::Set, |b| Place::Box(b.id));
        self.planner.clear(project.system);
        self.project.set(project);
        self.place.set(first);
        self.epoch.update(|e| *e = e.wrapping_add(1));
        self.count_ways();
    }

    /// Changes the ticks; each change can be taken back until the design itself is changed.
    pub fn tick(self, change: impl FnOnce(&mut Ticks)) {
        let before = self.ticks.get_untracked();
        let mut after = before.clone();
        change(&mut after);
        if after == before {
            return;
        }
        self.ticks.set(after);
        self.history.update_value(|h| {
            let [past, future] = &mut h.ticks;
            past.push(before);
            let over = past.len().saturating_sub(KEPT);
            past.drain(..over);
            future.clear();
        });
        self.count_ways();
    }

    /// Takes the last change of the ticks from one list back, and keeps what was there in the other.
    fn tick_again(self, from: usize) -> bool {
        let now = self.ticks.get_untracked();
        let there = self.history.try_update_value(|h| {
            let there = h.ticks[from].pop()?;
            h.ticks[1 - from].push(now);
            Some(there)
        });
        let Some(there) = there.flatten() else {
            return false;
        };
        self.ticks.set(there);
        self.count_ways();
        true
    }

    /// Takes the last edit back, or the last tick where one was set since.
    pub fn undo(self) {
        if self.tick_again(0) {
            return;
        }
        self.walk(|h, now| {
            let before = h.trail.past.pop()?;
            h.trail.future.push(now);
            Some(before)
        });
    }

    /// Does again what was taken back last.
    pub fn redo(self) {
        if self.tick_again(1) {
            return;
        }
        self.walk(|h, now| {
            let after = h.trail.future.pop()?;
            h.trail.past.push(now);
            Some(after)
        });
    }

    fn walk(self, step: impl FnOnce(&mut History, Project) -> Option<Project>) {
        let now = self.project.get_untracked();
        let there = self.history.try_update_value(|h| {
            h.tag.clear();
            h.ticks = Default::default();
            step(h, now)
        });
        if let Some(there) = there.flatten() {
            self.was.set(None);
            self.project.set(there);
            self.stay_on_something();
            self.epoch.update(|e| *e = e.wrapping_add(1));
        }
        self.count_ways();
    }

    fn count_ways(self) {
        self.ways.set(
            self.history
                .with_value(|h| (h.trail.past.len() + h.ticks[0].len(), h.trail.future.len() + h.ticks[1].len())),
        );
    }

    /// Where what was being edited is gone, goes on with the first box.
    fn stay_on_something(self) {
        let there = self.project.with_untracked(|p| match self.place.get_untracked() {
            Place::Box(id) => p.boxes.iter().any(|b| b.id == id),
            Place::Card(id) => p.cards.iter().any(|c| c.id == id),
            Place::Holder => p.holder.is_some(),
            Place::Set | Place::Board => true,
        });
        if !there {
            let first = self.project.with_untracked(|p| p.boxes.first().map_or(Place::Set, |b| Place::Box(b.id)));
            self.place.set(first);
        }
    }

    /// The box or holder that is drawn, at once; of the others there may be nothing.
    #[must_use]
    pub fn at_hand(self, place: Fact<Place>) -> Fact<Shared> {
        fact(move || self.project.with(|p| Shared::new(self.planner.at_hand(p, place.get()))))
    }

    /// The box or holder at `place`, as it is asked for.
    #[must_use]
    pub fn part(self, place: Place) -> Fact<Option<Part>> {
        let project = self.project;
        fact(move || project.with(|p| part(p, place).cloned()))
    }

    /// Changes the box or holder at `place`.
    pub fn edit_part(self, place: Place, tag: &str, change: impl FnOnce(&mut Part)) {
        let mut change = Some(change);
        self.change_part(place, tag, &mut |part| {
            if let Some(change) = change.take() {
                change(part);
            }
        });
    }

    #[inline(never)]
    fn change_part(self, place: Place, tag: &str, change: &mut dyn FnMut(&mut Part)) {
        self.change(tag, &mut |p| {
            let found = match place {
                Place::Box(id) => p.boxes.iter_mut().find(|b| b.id == id),
                Place::Holder => p.holder.as_mut(),
                _ => None,
            };
            if let Some(part) = found {
                change(part);
            }
        });
    }

    /// What should be known at `place` about anything but the inputs of `shown`, which say it themselves.
    #[must_use]
    pub fn findings_besides(self, place: Place, shown: &'static [&'static str]) -> Fact<Vec<Finding>> {
        let plan = self.plan;
        fact(move || {
            let said = |f: &&Finding| f.input.is_some_and(|i| shown.contains(&i));
            plan.with(|p| {
                let here = p.findings.iter().filter(|f| f.place == place);
                here.filter(|f| !said(f)).cloned().collect()
            })
        })
    }

    /// What should be known about `input` at `place`.
    #[must_use]
    pub fn findings(self, place: Place, input: Option<&'static str>) -> Fact<Vec<Finding>> {
        let plan = self.plan;
        fact(move || {
            plan.with(|p| p.findings.iter().filter(|f| f.place == place && f.input == input).cloned().collect())
        })
    }
}

/// The box or holder at `place`.
#[must_use]
pub fn part(project: &Project, place: Place) -> Option<&Part> {
    match place {
        Place::Box(id) => project.boxes.iter().find(|b| b.id == id),
        Place::Holder => project.holder.as_ref(),
        _ => None,
    }
}

/// The desk of this page.
#[must_use]
pub fn desk() -> Desk {
    expect_context::<Desk>()
}
