//! `Chain`: the errors between two surfaces that must clear each other, added up.
//!
//! The model. Each score, cut and glued joint between the two surfaces errs by itself, evenly to both sides; ± means two
//! standard deviations. Thickness errs once for all layers of one card, since they come from one stack. The worst case
//! adds all errors; the root sum of squares is two standard deviations of the gap, which is taken as normally
//! distributed. What errs the same way each time (a fence that is out) is not in it: it moves the gap, not its spread.

use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::tools::Trimmer;

/// What the maker's hands and tools keep to: ± two standard deviations each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Accuracy {
    /// Of a score.
    pub score: Length,
    /// Of a cut.
    pub cut: Length,
    /// Of a glued joint, along its seam.
    pub glue: Length,
    /// Of the card's thickness, in thousandths of it.
    pub thickness: u32,
}

impl Accuracy {
    /// Where the maker says nothing.
    #[must_use]
    pub const fn usual(system: System) -> Self {
        Self {
            score: bound::DEFAULT_SCORE_ERROR.of(system),
            cut: bound::DEFAULT_CUT_ERROR.of(system),
            glue: bound::DEFAULT_GLUE_ERROR.of(system),
            thickness: bound::DEFAULT_THICKNESS_ERROR,
        }
    }

    /// What the maker says of the hand, and the usual where nothing is said.
    #[must_use]
    pub fn of(hand: &Trimmer, system: System) -> Self {
        let usual = Self::usual(system);
        let said = |typed: &Option<Given>, usual| typed.as_ref().map_or(usual, Given::length);
        let (score, cut) = (said(&hand.score_error, usual.score), said(&hand.cut_error, usual.cut));
        Self { score, cut, ..usual }.within()
    }

    /// Each within its range.
    #[must_use]
    pub fn within(self) -> Self {
        let hand = |l: Length| l.clamp(bound::HAND_ERROR.least, bound::HAND_ERROR.most);
        let most = bound::THICKNESS_ERROR.most;
        Self {
            score: hand(self.score),
            cut: hand(self.cut),
            glue: hand(self.glue),
            thickness: self.thickness.min(most),
        }
    }
}

/// What errs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Scores.
    Score,
    /// Cut edges.
    Cut,
    /// Glued joints.
    Glue,
    /// The thickness of one card.
    Card,
}

/// On what it errs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum On {
    /// On what goes in.
    Inner,
    /// On what it goes into.
    Outer,
    /// On both together.
    Both,
}

/// Alike errors in a chain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// What errs.
    pub kind: Kind,
    /// On what.
    pub on: On,
    /// How many times, each by itself.
    pub times: u32,
    /// By how much each time: ± two standard deviations.
    pub tolerance: Length,
}

impl Link {
    /// Its share in the square of the spread, in mm².
    fn square(&self) -> f64 {
        let each = self.tolerance.as_mm();
        f64::from(self.times) * each * each
    }
}

/// Everything that errs between two surfaces, and what is planned to be free between them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Chain {
    /// What errs.
    pub links: Vec<Link>,
    /// What is free where nothing errs.
    pub gap: Length,
}

impl Chain {
    /// ± where all errors go the same way.
    ///
    /// ```
    /// use snugfold::{fit::odds::{Chain, Kind, Link, On}, measure::length::Length};
    /// let ten = Link { kind: Kind::Score, on: On::Inner, times: 10, tolerance: Length::um(100) };
    /// let chain = Chain { links: vec![ten], gap: Length::ZERO };
    /// assert_eq!((chain.worst(), chain.spread().as_um()), (Length::mm(1), 316)); // √10 × 0.1
    /// ```
    #[must_use]
    pub fn worst(&self) -> Length {
        self.links.iter().map(|l| l.tolerance * i64::from(l.times)).sum()
    }

    /// ± by the root sum of squares: two standard deviations of the gap.
    #[must_use]
    pub fn spread(&self) -> Length {
        Length::round_mm(self.links.iter().map(Link::square).sum::<f64>().sqrt())
    }

    /// The chance, from 0 to 1, that anything is left of the gap.
    #[must_use]
    pub fn chance(&self) -> f64 {
        self.chance_with(self.gap)
    }

    /// As [`Self::chance`], were `gap` planned.
    #[must_use]
    pub fn chance_with(&self, gap: Length) -> f64 {
        let spread = self.spread().as_mm();
        if spread > 0.0 { below(gap.as_mm() * 2.0 / spread) } else { f64::from(u8::from(gap.is_positive())) }
    }

    /// The link that adds most to the spread.
    #[must_use]
    pub fn tightest(&self) -> Option<Link> {
        self.links.iter().copied().reduce(|a, b| if b.square() > a.square() { b } else { a })
    }
}

/// The chance that a normally distributed value lies less than `z` standard deviations above its mean.
///
/// ```
/// use snugfold::fit::odds::below;
/// assert!((below(1.0) - 0.841_345).abs() < 5e-7); // Abramowitz and Stegun, table 26.1
/// ```
#[must_use]
pub fn below(z: f64) -> f64 {
    0.5 * libm::erfc(-z * std::f64::consts::FRAC_1_SQRT_2)
}
