//! `Looking`: the search for better sheets, in slices between frames, begun once the design has stood still.

use std::time::Duration;

use leptos::prelude::*;

use super::alive::Alive;
use super::planner::Planner;
use super::shared::Shared;
use super::steps_view::Ticked;
use super::value::{Fact, State, effect};
use crate::make::better::{Better, loses_ticks};
use crate::make::enough::Enough;
use crate::make::sheets::{CardSheets, Job};
use crate::plan::{Plan, relaid};
use crate::project::request::Project;
use crate::web::motion::{Again, now};

/// The design has to stand still for so long.
const IDLE: Duration = Duration::from_millis(600);

/// The longest slice in a frame, in milliseconds, and the counted work after which the clock is looked at. The clock
/// says when a slice ends, never what comes out.
const SLICE: f64 = 2.0;
const LOOK: u64 = 500;

/// How the search stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Not begun since the last edit.
    Waiting,
    /// At work: how far, 0 to 100.
    Working(u32),
    /// Stopped by hand, after so much counted work.
    Stopped(u64),
    /// Every card was searched to the end.
    Finished,
}

/// What is left to do.
#[derive(Default)]
struct Task {
    jobs: Vec<Job>,
    better: Option<Better>,
    enough: Vec<(u16, Enough)>,
}

/// The search of this page.
#[derive(Clone, Copy)]
pub struct Looking {
    /// How it stands.
    pub standing: State<Standing>,
    /// For how many sets each card in the drawer is enough.
    pub enough: State<Vec<(u16, u32)>>,
    found: State<Vec<CardSheets>>,
    quick: Fact<Shared>,
    ticks: Ticked,
    task: StoredValue<Task>,
    /// Counts up, so that what was begun before ends.
    run: State<u32>,
    alive: Alive,
}

impl Looking {
    /// Looks whenever `project` is planned and has stood still, for better layouts than those of `planner`. Sheets that
    /// `ticks` call cut stay as they are.
    pub fn begin(project: State<Project>, planner: Planner, ticks: Ticked) -> Self {
        let quick = Fact::from(planner.plan);
        let looking = Self {
            standing: State::new(Standing::Waiting),
            enough: State::new(Vec::new()),
            found: State::new(Vec::new()),
            quick,
            ticks,
            task: StoredValue::new(Task::default()),
            run: State::new(0),
            alive: Alive::here(),
        };
        effect(move || {
            project.track();
            let behind = planner.behind.get();
            let mine = looking.next_run();
            if looking.standing.get_untracked() == Standing::Finished {
                looking.standing.set(Standing::Waiting);
            }
            if behind {
                return;
            }
            looking.alive.after(IDLE, move || {
                if looking.run.get_untracked() == mine {
                    looking.take(&quick.get_untracked(), project.with_untracked(|p| p.spares));
                }
            });
        });
        looking
    }

    /// The plan with what was found.
    #[must_use]
    pub fn into_plan(self, quick: &Shared) -> Shared {
        self.found.with(|found| {
            let better = |s: &CardSheets| found.iter().any(|f| f.job == s.job && f.layout != s.layout);
            if quick.sheets.iter().any(better) { Shared::new(relaid(quick, found)) } else { quick.clone() }
        })
    }

    /// Ends it here; what was found so far stands.
    pub fn stop(self) {
        self.next_run();
        let so_far = self.task.with_value(|t| t.better.as_ref().map(|b| (b.so_far(), b.work())));
        let (sheets, work) = so_far.unwrap_or_default();
        if let Some(sheets) = sheets {
            self.keep(sheets);
        }
        self.standing.set(Standing::Stopped(work));
    }

    /// Goes on where it was stopped.
    pub fn go_on(self) {
        let mine = self.next_run();
        self.alive.each_frame(move |_| {
            if self.run.get_untracked() != mine {
                return Again::No;
            }
            let until = now() + SLICE;
            loop {
                if let Some(end) = self.slice() {
                    return end;
                }
                if now() >= until {
                    return Again::Yes;
                }
            }
        });
    }

    fn next_run(self) -> u32 {
        self.run.update(|r| *r = r.wrapping_add(1));
        self.run.get_untracked()
    }

    fn take(self, plan: &Plan, spares: u32) {
        let jobs: Vec<Job> =
            if plan.stopped() { Vec::new() } else { plan.sheets.iter().map(|s| s.job.clone()).collect() };
        if self.task.with_value(|t| t.jobs != jobs) {
            self.found.update(|f| f.retain(|f| jobs.contains(&f.job)));
            let enough = |s: &CardSheets| Some((s.job.card, Enough::new(&s.job, &plan.pieces, spares)?));
            let enough = if jobs.is_empty() { Vec::new() } else { plan.sheets.iter().filter_map(enough).collect() };
            self.enough.set(Vec::new());
            self.standing.set(Standing::Waiting);
            let better = (!jobs.is_empty()).then(|| Better::new(jobs.clone()));
            self.task.set_value(Task { jobs, better, enough });
        }
        if !matches!(self.standing.get_untracked(), Standing::Stopped(_)) {
            self.go_on();
        }
    }

    /// A little work; how it ends, where it does.
    fn slice(self) -> Option<Again> {
        let mut sheets = None;
        let mut answer = None;
        let standing = self.task.try_update_value(|t| {
            let better = t.better.as_mut()?;
            if !better.done() {
                sheets = better.step(LOOK);
            } else if let Some((card, enough)) = t.enough.last_mut() {
                answer = enough.step(LOOK).map(|n| (*card, n));
                if answer.is_some() {
                    t.enough.pop();
                }
            } else {
                return Some(Standing::Finished);
            }
            Some(Standing::Working(better.percent()))
        });
        if let Some(sheets) = sheets {
            // To draw them anew takes as long as an edit: not in the same turn as the search.
            self.alive.after(Duration::ZERO, move || self.keep(sheets));
        }
        if let Some(answer) = answer {
            self.enough.update(|e| e.push(answer));
        }
        // Nothing to look for.
        let Some(standing) = standing.flatten() else {
            return Some(Again::No);
        };
        if self.standing.get_untracked() != standing {
            self.standing.set(standing);
        }
        (standing == Standing::Finished).then_some(Again::No)
    }

    fn keep(self, sheets: CardSheets) {
        let quick = self.quick.get_untracked();
        let now = untrack(|| self.into_plan(&quick));
        if self.ticks.with_untracked(|t| loses_ticks(&now.steps, &sheets, t)) {
            return;
        }
        self.found.update(|found| {
            found.retain(|f| f.job != sheets.job);
            found.push(sheets);
        });
    }
}
