//! `Pace`: how long this maker's own hands take, against what is reckoned with, learned by timing steps.

use super::step::Action;

/// What is alike in time: whoever is quick at one of these is quick at all of its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Cutting sheets into pieces.
    Sheets,
    /// Scoring and marking.
    Scoring,
    /// Cutting out.
    Cutting,
    /// Folding.
    Folding,
    /// Glueing, mats, and what is added.
    Glueing,
}

impl Kind {
    /// How many kinds there are.
    pub const COUNT: usize = 5;

    /// What an action is; nothing where there is nothing to time.
    #[must_use]
    pub const fn of(action: &Action) -> Option<Self> {
        match action {
            Action::CutSheets { .. } | Action::CutPieces { .. } => Some(Self::Sheets),
            Action::Score(_) | Action::ScoreShort(_) | Action::Mark(_) | Action::ScoreMarks(_) => Some(Self::Scoring),
            Action::CutMarks(_)
            | Action::Cut(_)
            | Action::TakeCells(_)
            | Action::TakeOff(_)
            | Action::Notch(_)
            | Action::Punch(_) => Some(Self::Cutting),
            Action::FoldAndBurnish | Action::Fold { glued: false, .. } => Some(Self::Folding),
            Action::GlueMats(_)
            | Action::GlueJoint
            | Action::Fold { .. }
            | Action::Extra { .. }
            | Action::Straps(_)
            | Action::Join(_) => Some(Self::Glueing),
            Action::MakeOne | Action::TryBoxesIn { .. } | Action::Fill | Action::SlideIn | Action::Own(_) => None,
        }
    }
}

/// Of each kind, the seconds that timed steps took and the seconds that were reckoned for them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Pace([(u32, u32); Kind::COUNT]);

/// Nobody's step takes less, and whoever left the clock running over night did not take that long.
const TAKES: std::ops::RangeInclusive<u64> = 2..=7_200;

impl Pace {
    /// Learns that a step of this kind took `took` seconds where `reckoned` were reckoned; false where that cannot be.
    pub fn learn(&mut self, kind: Kind, took: u64, reckoned: u64) -> bool {
        let (Ok(t), Ok(r)) = (u32::try_from(took), u32::try_from(reckoned)) else {
            return false;
        };
        let there = TAKES.contains(&took) && reckoned > 0;
        if there {
            let (all, of) = &mut self.0[kind as usize];
            (*all, *of) = (all.saturating_add(t), of.saturating_add(r));
        }
        there
    }

    /// What `reckoned` seconds of a kind come to at this pace, never less than a fifth and never more than five times.
    ///
    /// Two steps were reckoned with 60 s and 40 s and took 90 s and 60 s: half as long again.
    ///
    /// ```
    /// use snugfold::make::pace::{Kind, Pace};
    /// let mut pace = Pace::default();
    /// assert!(pace.learn(Kind::Folding, 90, 60) && pace.learn(Kind::Folding, 60, 40));
    /// assert_eq!((pace.of(Kind::Folding, 30), pace.of(Kind::Scoring, 30)), (45, 30));
    /// ```
    #[must_use]
    pub fn of(&self, kind: Kind, reckoned: u64) -> u64 {
        match self.0[kind as usize] {
            (_, 0) => reckoned,
            (took, of) => {
                let (took, of) = (u64::from(took), u64::from(of));
                let took = took.clamp(of.div_ceil(5), of.saturating_mul(5));
                reckoned.saturating_mul(took).div_ceil(of)
            }
        }
    }

    /// Whether anything was learned.
    #[must_use]
    pub fn is_learned(&self) -> bool {
        self.0.iter().any(|(_, of)| *of > 0)
    }

    /// As it is kept on the device.
    #[must_use]
    pub fn write(&self) -> String {
        self.0.iter().map(|(took, of)| format!("{took}/{of} ")).collect()
    }

    /// From what was kept; what cannot be read is as if nothing was learned.
    ///
    /// ```
    /// use snugfold::make::pace::Pace;
    /// let pace = Pace::read("0/0 12/10 0/0 7/9 0/0 ");
    /// assert!(pace.is_learned() && Pace::read(&pace.write()) == pace);
    /// assert!(!Pace::read("hello").is_learned());
    /// ```
    #[must_use]
    pub fn read(kept: &str) -> Self {
        let mut pace = Self::default();
        for (place, one) in pace.0.iter_mut().zip(kept.split_whitespace()) {
            let read = one.split_once('/').and_then(|(took, of)| Some((took.parse().ok()?, of.parse().ok()?)));
            *place = read.unwrap_or_default();
        }
        pace
    }
}
