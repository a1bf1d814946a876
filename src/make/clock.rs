//! How long the steps take: each action by what is done in it, for hands that have done it before (rules of thumb, common
//! practice, no source), and at the pace of the maker's own hands where that was timed.

use super::extras::Made;
use super::pace::{Kind, Pace};
use super::pieces::{Becomes, Piece};
use super::sheets::CardSheets;
use super::step::{Action, Step};
use crate::cut::order::order;

/// Seconds for a step once at no pace but the usual; `sheets` are those that it may cut, `pieces` those that it may glue on.
#[must_use]
pub fn usual(step: &Step, sheets: &[CardSheets], pieces: &[Piece]) -> u64 {
    let each = |count: usize, seconds: u64| seconds.saturating_mul(count as u64);
    match &step.action {
        Action::MakeOne => 0,
        Action::CutSheets { card, pattern } => {
            let sheets = sheets.iter().find(|s| s.job.card == *card);
            let found = sheets.and_then(|s| s.layout.patterns.get(*pattern).map(|p| (s, p)));
            let cuts = found.and_then(|(s, p)| Some((order(p, s.sheet(p.sheet)?).len(), p.copies)));
            cuts.map_or(0, |(cuts, copies)| each(cuts, 12).saturating_add(10).saturating_mul(u64::from(copies)))
        }
        Action::CutPieces { card, pieces } => {
            let left_out = sheets.iter().filter(|s| s.job.card == *card).flat_map(|s| &s.layout.left_out);
            let counts = left_out.filter(|l| pieces.contains(&l.piece)).map(|l| u64::from(l.count));
            counts.fold(0, u64::saturating_add).saturating_mul(60)
        }
        Action::Score(scores) => 10 + each(scores.at.len(), 8),
        Action::Mark(marks) => 20 + each(marks.places.len(), 12),
        Action::ScoreMarks(marks) => each(marks.scores.len() + marks.arcs.len(), 15),
        Action::CutMarks(marks) => each(marks.cuts.len() + marks.arcs.len(), 20),
        Action::Cut(cuts) | Action::ScoreShort(cuts) => each(cuts.len(), 8),
        Action::TakeCells(cells) => each(cells.len(), 3),
        Action::TakeOff(off) => each(off.len(), 12),
        Action::FoldAndBurnish => 60,
        Action::GlueMats(mats) => {
            let panels = |p: &Piece| if let Becomes::Mat(_, panels) = &p.becomes { panels.len() } else { 0 };
            each(pieces.iter().filter(|p| mats.contains(&p.id)).map(panels).sum(), 40)
        }
        Action::Notch(_) => 15,
        Action::Punch(holes) => each(holes.len(), 10),
        Action::Fold { glued: true, .. } | Action::GlueJoint => 60,
        Action::Fold { .. } => 15,
        Action::TryBoxesIn { .. } | Action::Straps(_) | Action::Own(_) => 60,
        Action::Extra { made: Made::Window { .. }, .. } => 180,
        Action::Extra { .. } => 60,
        Action::Join(_) => 30,
        Action::Fill => 30,
        Action::SlideIn => 10,
    }
}

/// How many alike things a step does in one go: sheets of one pattern, or pieces that are cut one by one.
#[must_use]
pub fn alike(step: &Step, sheets: &[CardSheets]) -> u64 {
    let of = |card: u16| sheets.iter().find(|s| s.job.card == card);
    let count = match &step.action {
        Action::CutSheets { card, pattern } => {
            of(*card).and_then(|s| s.layout.patterns.get(*pattern)).map(|p| u64::from(p.copies))
        }
        Action::CutPieces { card, pieces } => {
            let left_out = of(*card).into_iter().flat_map(|s| &s.layout.left_out);
            Some(left_out.filter(|l| pieces.contains(&l.piece)).map(|l| u64::from(l.count)).sum())
        }
        _ => None,
    };
    count.unwrap_or(1).max(1)
}

/// What a step is timed with.
#[derive(Clone, Copy)]
pub struct Clock<'a> {
    /// The sheets that steps cut.
    pub sheets: &'a [CardSheets],
    /// The pieces that steps glue on.
    pub pieces: &'a [Piece],
    /// The maker's own pace.
    pub pace: Pace,
}

impl Clock<'_> {
    /// Seconds for a step, once.
    #[must_use]
    pub fn once(&self, step: &Step) -> u64 {
        let usual = usual(step, self.sheets, self.pieces);
        Kind::of(&step.action).map_or(usual, |kind| self.pace.of(kind, usual))
    }

    /// Seconds for a step, as often as it is done.
    #[must_use]
    pub fn step(&self, step: &Step) -> u64 {
        self.once(step).saturating_mul(step.times)
    }

    /// Seconds for all these steps, as often as they are done.
    pub fn all<'s>(&self, steps: impl IntoIterator<Item = &'s Step>) -> u64 {
        steps.into_iter().map(|s| self.step(s)).fold(0, u64::saturating_add)
    }
}
