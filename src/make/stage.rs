//! `Stage`: what of a make belongs together when many are made: all scoring, then all cutting, and so on.

use super::step::{Action, Step};
use crate::project::finding::Place;

/// A stretch of the work in which the same tools lie on the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// One before all the others.
    First,
    /// Sheets become pieces.
    Pieces,
    /// At the scoring board.
    Score,
    /// Pencil and ruler.
    Mark,
    /// Knife and scissors.
    CutAway,
    /// Every score, folded and rubbed.
    Fold,
    /// What is done on the flat: joints, mats, what is added.
    Flat,
    /// Glued and closed.
    Close,
    /// Parts go together, and what hangs on them is put on.
    Together,
    /// Gifts go in.
    Fill,
}

impl Stage {
    /// Where an action belongs.
    fn of(action: &Action) -> Self {
        match action {
            Action::MakeOne => Self::First,
            Action::CutSheets { .. } | Action::CutPieces { .. } => Self::Pieces,
            Action::Score(_) | Action::ScoreShort(_) => Self::Score,
            Action::Mark(_) | Action::ScoreMarks(_) => Self::Mark,
            Action::CutMarks(_) | Action::Cut(_) | Action::TakeCells(_) | Action::TakeOff(_) => Self::CutAway,
            Action::FoldAndBurnish => Self::Fold,
            // A tag or a liner is on no face: it comes when all is together.
            Action::Extra { made, .. } if made.on().is_empty() => Self::Together,
            Action::GlueJoint | Action::GlueMats(_) | Action::Notch(_) | Action::Extra { .. } | Action::Punch(_) => {
                Self::Flat
            }
            Action::Fold { .. } | Action::TryBoxesIn { .. } => Self::Close,
            Action::Join(_) | Action::Straps(_) => Self::Together,
            Action::Fill | Action::SlideIn => Self::Fill,
            // It goes with the step that it hangs on.
            Action::Own(_) => Self::First,
        }
    }
}

/// The stage of each step. What is done to one blank keeps its order: a hole through an edge that was folded belongs to
/// the folding.
#[must_use]
pub fn stages(steps: &[Step]) -> Vec<Stage> {
    let mut all: Vec<Stage> = Vec::new();
    for (nth, step) in steps.iter().enumerate() {
        let same = |s: &Step| (s.place, s.part, s.half) == (step.place, step.part, step.half);
        let before = match step.action {
            Action::Own(_) => nth.checked_sub(1),
            // What cuts sheets and what fills is no work on one blank.
            _ if matches!(step.place, Place::Set | Place::Card(_)) => None,
            _ => (0..nth).rev().find(|&b| same(&steps[b])),
        };
        let before = before.map_or(Stage::First, |b| all[b]);
        let own = match Stage::of(&step.action) {
            // The boxes are tried in it before its glue has set: they have to be whole by then.
            Stage::Close if step.place == Place::Holder => Stage::Together,
            own => own,
        };
        all.push(before.max(own));
    }
    all
}

/// The steps with alike work together, each stage box by box.
#[must_use]
pub fn by_stage(steps: Vec<Step>) -> Vec<Step> {
    let mut staged: Vec<(Stage, Step)> = stages(&steps).into_iter().zip(steps).collect();
    staged.sort_by_key(|(stage, _)| *stage);
    staged.into_iter().map(|(_, step)| step).collect()
}
