//! `Planner`: plans the design on the desk in short slices, so that a large one holds up neither frames nor keys.
//!
//! An edit breaks off what was being planned. The clock says when a slice ends, never what comes out.

use std::time::Duration;

use leptos::prelude::*;

use super::alive::Alive;
use super::shared::Shared;
use super::value::{State, effect};
use crate::form::resolve::Wants;
use crate::measure::system::System;
use crate::plan::{Known, Plan, Planning, Progress, at_hand};
use crate::project::finding::Place;
use crate::project::request::Project;
use crate::web::motion::now;

/// The longest slice, in milliseconds; a step that takes longer is one by itself.
const SLICE: f64 = 8.0;

/// What is planned of the design on the desk.
#[derive(Clone, Copy)]
pub struct Planner {
    /// Boxes and holder.
    pub shapes: State<Shared>,
    /// Everything.
    pub plan: State<Shared>,
    /// Whether the plan is that of an earlier state of the design.
    pub behind: State<bool>,
    project: State<Project>,
    known: StoredValue<Known, LocalStorage>,
    /// Counts up, so that what was begun before ends.
    run: StoredValue<u32>,
    alive: Alive,
}

impl Planner {
    /// Plans `project` whenever it changes, one frame later.
    #[must_use]
    pub fn begin(project: State<Project>) -> Self {
        let nothing = Shared::new(Plan::nothing(project.with_untracked(|p| p.system)));
        let planner = Self {
            shapes: State::new(nothing.clone()),
            plan: State::new(nothing),
            behind: State::new(true),
            project,
            known: StoredValue::new_local(Known::default()),
            run: StoredValue::new(0),
            alive: Alive::here(),
        };
        effect(move || {
            project.track();
            let mine = planner.next_run();
            if !planner.behind.get_untracked() {
                planner.behind.set(true);
            }
            planner.alive.after_next_frame(move || planner.start(mine));
        });
        planner
    }

    /// Another design lies on the desk: nothing of the one before is shown any more.
    pub fn clear(self, system: System) {
        let nothing = Shared::new(Plan::nothing(system));
        self.next_run();
        self.known.update_value(|known| *known = Known::default());
        self.shapes.set(nothing.clone());
        self.plan.set(nothing);
    }

    /// The box or holder at `place`, at once; of the others there may be nothing.
    #[must_use]
    pub fn at_hand(self, project: &Project, place: Place) -> Plan {
        let mut plan = None;
        self.known.update_value(|known| plan = Some(at_hand(project, project.system, place, known)));
        plan.unwrap_or_else(|| Plan::nothing(project.system))
    }

    fn next_run(self) -> u32 {
        let mut run = 0;
        self.run.update_value(|r| {
            *r = r.wrapping_add(1);
            run = *r;
        });
        run
    }

    fn start(self, mine: u32) {
        let project = self.project.get_untracked();
        let system = project.system;
        self.slice(mine, Planning::begin(project, system, Wants::Unproved));
    }

    /// Takes steps for as long as a slice lasts, and then the next slice.
    fn slice(self, mine: u32, mut planning: Planning) {
        let until = now() + SLICE;
        while self.run.get_value() == mine {
            let mut progress = Progress::More;
            self.known.update_value(|known| progress = planning.step(known));
            match progress {
                Progress::More => {}
                Progress::Shaped => {
                    let shaped = Shared::new(planning.plan().clone());
                    self.shapes.set(shaped.clone());
                    // Of a design that has just been laid here, boxes and holder are better than nothing.
                    if self.plan.with_untracked(|p| p.boxes.is_empty() && p.holder.is_none()) {
                        self.plan.set(shaped);
                    }
                    if !planning.is_proved() {
                        let (project, system) = (self.project.get_untracked(), planning.plan().system);
                        planning = Planning::begin(project, system, Wants::Everything);
                    }
                }
                Progress::Done => {
                    self.plan.set(Shared::new(planning.into_plan()));
                    self.behind.set(false);
                    return;
                }
            }
            if now() >= until {
                self.alive.after(Duration::ZERO, move || self.slice(mine, planning));
                return;
            }
        }
    }
}
