//! Thickness arithmetic: what card takes from the inside and adds to the outside, counted in layers.
//!
//! The model. Panels are drawn score to score. A score sits in the middle of the card when folded, so each fold takes
//! half a thickness t from the inside and adds half a thickness to the outside: between two walls inside = score − t and
//! outside = score + t (the simple rule of box makers for length and width; it holds for thin card and overstates thick
//! corrugated board). An end closed by an inner and an outer flap has two layers about its score: inside − t and
//! outside + t at that end (the same rule for a box with inner and outer flaps at both ends: − 2 t, + 2 t). Each further
//! layer glued on outside adds one t there.

use crate::measure::length::Length;

/// Thicknesses of card lost inside and added outside along one direction, in halves of a thickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Layers {
    /// Half thicknesses lost from score to inside.
    pub lost: i64,
    /// Half thicknesses added from score to outside.
    pub added: i64,
}

impl Layers {
    /// Between two single walls: inside − t, outside + t.
    pub const WALLS: Self = Self { lost: 2, added: 2 };
    /// Two ends of an inner and an outer flap each: inside − 2 t, outside + 2 t.
    pub const DOUBLE_ENDS: Self = Self { lost: 4, added: 4 };
    /// A tuck top (dust flaps and lid) over a base of three layers (inner panel, side flaps, outer panel):
    /// inside − 2 t, outside + 3 t.
    pub const TUCK_AND_BASE: Self = Self { lost: 4, added: 6 };
    /// Two walls, a lid's lip inside each: inside − 3 t, outside + t.
    pub const LIPPED_WALLS: Self = Self { lost: 6, added: 2 };
    /// Two walls, a lid's lip inside one of them: inside − 2 t, outside + t.
    pub const LIPPED_FRONT: Self = Self { lost: 4, added: 2 };
    /// A floor below an open edge: inside − t/2, outside + t/2.
    pub const OPEN: Self = Self { lost: 1, added: 1 };

    /// Two walls, a tab glued inside each: what slides between them has − 3 t.
    pub const TABBED_WALLS: Self = Self { lost: 6, added: 2 };
    /// Two walls, a tab glued inside one of them: what slides between them has − 2 t.
    pub const ONE_TAB: Self = Self { lost: 4, added: 2 };
    /// Two walls, each rolled over onto its own inside: inside − 3 t, outside + t.
    pub const ROLLED: Self = Self { lost: 6, added: 2 };
    /// Two walls, each rolled over a tab glued inside it, three layers: inside − 5 t, outside + t.
    pub const ROLLED_OVER_TABS: Self = Self { lost: 10, added: 2 };
    /// A floor below and a lid's top on the open edge above: inside − t/2, outside + 3 t/2.
    pub const LIDDED: Self = Self { lost: 1, added: 3 };

    /// An open top over a base of three layers that overlap (inner, sides, outer): inside − t, outside + 2 t.
    pub const BASE_FLAPS: Self = Self { lost: 2, added: 4 };

    /// Two walls with a flap outside one of them: inside − t, outside + 2 t.
    pub const FLAP_OVER: Self = Self { lost: 2, added: 4 };

    /// The true inside of `score`, in card of thickness `t`.
    ///
    /// ```
    /// use snugfold::{allow::Layers, measure::length::Length};
    /// let (score, t) = (Length::mm(100), Length::um(300));
    /// assert_eq!(Layers::TUCK_AND_BASE.inside(score, t), Length::um(99_400)); // 100 − 2 × 0.3
    /// assert_eq!(Layers::TUCK_AND_BASE.outside(score, t), Length::um(100_900)); // 100 + 3 × 0.3
    /// ```
    #[must_use]
    pub const fn inside(self, score: Length, t: Length) -> Length {
        Length::from_nm(score.nm() - t.scaled(self.lost, 2).nm())
    }

    /// The true outside of `score`, in card of thickness `t`.
    #[must_use]
    pub const fn outside(self, score: Length, t: Length) -> Length {
        Length::from_nm(score.nm() + t.scaled(self.added, 2).nm())
    }

    /// The least score-to-score size that leaves `inside` free.
    #[must_use]
    pub const fn score_for(self, inside: Length, t: Length) -> Length {
        Length::from_nm(inside.nm() + t.scaled(self.lost, 2).nm())
    }
}

/// What must stay between boxes and the holder that they slide into.
pub mod clearance {
    use crate::measure::length::Length;
    use crate::measure::system::Native;

    /// In total each way, where the maker says nothing: 1/16 in, 1.5 mm (a slip-case takes 1 to 2 mm: common practice).
    pub const DEFAULT: Native<Length> = Native::lengths(1, 16, 15);
    /// The least that slides: below it, boxes stick.
    pub const LEAST: Length = Length::mm(1);
    /// The most that is advised: above it, boxes lean (common practice, no source).
    pub const LOOSE: Length = Length::mm(4);
    /// The least that may be asked for: a press fit (common practice, no source).
    pub const PRESS: Length = Length::um(-500);
    /// What a hand needs to grip a box that stands in a holder (common practice, no source).
    pub const GRIP: Length = Length::mm(20);
}
