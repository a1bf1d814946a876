//! `Planning`: a plan on its way, one counted step after the other, so that a page can draw and hear keys between two.
//!
//! The steps are those of [`super::plan`], which takes them all at once: what comes out is the same however many are
//! taken at a time. A box that was planned before, asked for in the very same way, is taken over from there ([`Known`]).

use super::checks::{Usable, cards, check_counts, check_trimmer, marks, usable};
use super::largest::Curing;
use super::{Maker, Plan};
use crate::cut::build::LayingOut;
use crate::form::own;
use crate::form::resolve::Wants;
use crate::make::part::Planned;
use crate::make::pieces::pieces;
use crate::make::sheets::{CardSheets, Job, findings as left_out, job};
use crate::make::steps::steps;
use crate::make::weave::woven;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::finding::Finding;
use crate::project::request::{Card, Part, Project};

/// What surrounds every part: tools and cards, as far as they can be planned with.
#[derive(Clone, PartialEq)]
pub struct Around {
    /// The system that is planned in.
    pub system: System,
    /// The board's grooves and the trimmer's marks.
    pub marks: (Grid, Grid),
    /// The cards that can be planned with.
    pub cards: Vec<Usable>,
    /// The numbers of all cards.
    numbers: Vec<u16>,
}

impl Around {
    /// What surrounds the parts of `project`, and what is to be said of it.
    pub fn of(project: &Project, system: System, findings: &mut Vec<Finding>) -> Self {
        let marks = marks(project, system, findings);
        check_counts(project, findings);
        check_trimmer(project, findings);
        let cards = cards(project, findings);
        Self { system, marks, cards, numbers: project.cards.iter().map(|c| c.id).collect() }
    }
}

/// A box as it was planned before, and what was said of it.
struct Before {
    part: Part,
    wants: Wants,
    heights: Vec<Length>,
    planned: Option<Planned>,
    findings: Vec<Finding>,
}

impl Before {
    /// Whether it was asked for in the very same way.
    fn is(&self, part: &Part, wants: Wants, heights: &[Length]) -> bool {
        // Only forms that their makers draw are proved apart, and only what follows its gifts looks at other boxes.
        self.part == *part
            && (self.wants == wants || part.form != own::FORM.key)
            && (self.heights == heights || part.gifts.kinds.is_empty())
    }
}

/// Boxes that were planned before, in what surrounded them.
#[derive(Default)]
pub struct Known {
    around: Option<Around>,
    boxes: Vec<Before>,
}

/// As many boxes are known at most: each kind that a set may have, proved and not, and some that were taken away.
const MOST: usize = 150;

impl Known {
    /// Forgets all where anything that surrounds the parts is another.
    fn stand_in(&mut self, around: &Around) {
        if self.around.as_ref() != Some(around) {
            *self = Self { around: Some(around.clone()), boxes: Vec::new() };
        }
    }

    /// Keeps a box in the place of the one that it was before.
    fn keep(&mut self, now: Before) {
        self.boxes.retain(|b| b.part.id != now.part.id || b.wants != now.wants);
        if self.boxes.len() >= MOST {
            self.boxes.remove(0);
        }
        self.boxes.push(now);
    }
}

/// How far a plan has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// There is more to do.
    More,
    /// Boxes and holder stand; pieces, sheets and steps are to come.
    Shaped,
    /// All is planned.
    Done,
}

/// Counted work on the quick layout in one step: some two milliseconds.
const QUICK: u64 = 200_000;

/// What is planned next.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stage {
    /// The heights of the boxes that do not follow their gifts, from this box on.
    Heights(usize),
    /// This box.
    Box(usize),
    Holder,
    Pieces,
    /// The sheets of this card.
    Sheets(usize),
    Steps,
    Left,
    Cures,
    Done,
}

/// A plan on its way.
pub struct Planning {
    project: Project,
    wants: Wants,
    around: Around,
    heights: Vec<Length>,
    plan: Plan,
    stage: Stage,
    /// The sheets of a card, on their way.
    laying: Option<(Job, LayingOut)>,
    curing: Option<Box<Curing>>,
}

impl Planning {
    /// Begins to plan `project` in `system`.
    #[must_use]
    pub fn begin(mut project: Project, system: System, wants: Wants) -> Self {
        let mut plan = Plan::nothing(system);
        let around = Around::of(&project, system, &mut plan.findings);
        // That there are more is said; they are not planned.
        project.boxes.truncate(bound::BOX_KINDS.most as usize);
        // A box that follows its gifts looks at the heights of those that do not.
        let follows = project.boxes.iter().any(|b| !b.gifts.kinds.is_empty());
        let stage = if follows { Stage::Heights(0) } else { Stage::Box(0) };
        Self { project, wants, around, heights: Vec::new(), plan, stage, laying: None, curing: None }
    }

    /// What is asked for, as far as it is planned.
    pub(super) const fn project(&self) -> &Project {
        &self.project
    }

    /// What is planned by now.
    #[must_use]
    pub const fn plan(&self) -> &Plan {
        &self.plan
    }

    /// What was planned, once it is done.
    #[must_use]
    pub fn into_plan(self) -> Plan {
        self.plan
    }

    /// Whether it goes all the way to what [`super::plan`] gives: drawn forms are proved only where that is wanted.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.wants == Wants::Everything || self.project.boxes.iter().all(|b| b.form != own::FORM.key)
    }

    /// Takes one step; boxes that are `known` are taken over, and the others are known from then on.
    pub fn step(&mut self, known: &mut Known) -> Progress {
        known.stand_in(&self.around);
        self.stage = match self.stage {
            Stage::Heights(nth) => self.height(nth, known),
            Stage::Box(nth) => self.next_box(nth, known),
            Stage::Holder => self.holder(),
            Stage::Pieces => {
                self.plan.pieces = pieces(&self.plan.parts().collect::<Vec<_>>(), self.sets());
                Stage::Sheets(0)
            }
            Stage::Sheets(nth) => self.card(nth),
            Stage::Steps => {
                let Plan { boxes, holder, pieces, sheets, .. } = &self.plan;
                let steps = steps(boxes, holder.as_ref(), pieces, sheets, self.sets());
                self.plan.steps = woven(steps, &self.project.own.notes);
                Stage::Left
            }
            Stage::Left => {
                let left = self.plan.sheets.iter().flat_map(|s| left_out(s, &self.plan.pieces));
                let left: Vec<Finding> = left.collect();
                self.plan.findings.extend(left);
                self.curing = Some(Box::new(Curing::begin(&self.plan)));
                Stage::Cures
            }
            Stage::Cures => match self.curing.as_mut().and_then(|c| c.step(&self.project, &self.plan)) {
                None => Stage::Cures,
                Some(cures) => {
                    self.plan.findings.extend(cures);
                    self.plan.findings.sort_by_key(|f| f.weight);
                    Stage::Done
                }
            },
            Stage::Done => Stage::Done,
        };
        match self.stage {
            Stage::Pieces => Progress::Shaped,
            Stage::Done => Progress::Done,
            _ => Progress::More,
        }
    }

    /// Takes all steps.
    #[must_use]
    pub fn to_the_end(mut self) -> Plan {
        let known = &mut Known::default();
        while self.step(known) != Progress::Done {}
        self.plan
    }

    /// Takes all steps to boxes and holder.
    #[must_use]
    pub fn to_the_shapes(mut self, known: &mut Known) -> Plan {
        while self.step(known) != Progress::Shaped {}
        self.plan
    }

    fn sets(&self) -> u32 {
        self.project.sets.clamp(bound::SETS.least, bound::SETS.most)
    }

    /// A box as it is planned and what is said of it, from before where it was asked for in the same way.
    fn planned(&self, part: &Part, known: &mut Known) -> (Option<Planned>, Vec<Finding>) {
        if let Some(before) = known.boxes.iter().find(|b| b.is(part, self.wants, &self.heights)) {
            return (before.planned.clone(), before.findings.clone());
        }
        let mut findings = Vec::new();
        let planned = self.maker().boxed(part, &mut findings);
        let (part, heights) = (part.clone(), self.heights.clone());
        let all = (planned.clone(), findings.clone());
        known.keep(Before { part, wants: self.wants, heights, planned, findings });
        all
    }

    fn maker(&self) -> Maker<'_> {
        Maker { project: &self.project, around: &self.around, wants: self.wants, heights: &self.heights }
    }

    fn height(&mut self, nth: usize, known: &mut Known) -> Stage {
        let Some(part) = self.project.boxes.get(nth) else {
            return Stage::Box(0);
        };
        if part.gifts.kinds.is_empty() {
            let planned = self.planned(part, known).0;
            self.heights.extend(planned.map(|b| b.outside.height));
        }
        Stage::Heights(nth + 1)
    }

    fn next_box(&mut self, nth: usize, known: &mut Known) -> Stage {
        let Some(part) = self.project.boxes.get(nth) else {
            return Stage::Holder;
        };
        let (planned, findings) = self.planned(part, known);
        self.plan.boxes.extend(planned);
        self.plan.findings.extend(findings);
        Stage::Box(nth + 1)
    }

    fn holder(&mut self) -> Stage {
        let mut findings = Vec::new();
        let held = self.project.holder.as_ref();
        self.plan.holder = held.and_then(|h| self.maker().held(h, &self.plan.boxes, &mut findings));
        self.plan.findings.extend(findings);
        self.plan.findings.sort_by_key(|f| f.weight);
        Stage::Pieces
    }

    fn card(&mut self, nth: usize) -> Stage {
        if let Some((job, mut laying)) = self.laying.take() {
            match laying.step(QUICK) {
                Some(layout) => self.plan.sheets.push(CardSheets { job, layout }),
                None => {
                    self.laying = Some((job, laying));
                    return Stage::Sheets(nth);
                }
            }
            return Stage::Sheets(nth + 1);
        }
        let cards = self.project.cards.get(..bound::CARDS.most as usize).unwrap_or(&self.project.cards);
        let Some(card) = cards.get(nth) else {
            return Stage::Steps;
        };
        // What was said of a card that cannot be planned with stands in the findings already.
        let can = |card: &&Card| usable(card, &mut Vec::new()).is_some();
        let asked = Some(card).filter(can).and_then(|c| job(&self.project, c, &self.plan.pieces));
        self.laying = asked.map(|job| {
            let laying = LayingOut::begin(&job.wanted, &job.sheets, &job.rules);
            (job, laying)
        });
        if self.laying.is_some() { Stage::Sheets(nth) } else { Stage::Sheets(nth + 1) }
    }
}
