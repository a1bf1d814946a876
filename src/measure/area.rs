//! `Area`: exact, in halves of a square nanometre.

use std::iter::Sum;
use std::ops::{Add, Mul, Sub};

use super::length::Length;

/// An area, held as whole halves of a square nanometre, so that any polygon with whole corners is exact.
/// An `i64` would overflow at about a hundred large sheets, so this is an `i128`.
///
/// ```
/// use snugfold::measure::{area::Area, length::Length};
/// assert_eq!(Area::of(Length::mm(210), Length::mm(297)).as_mm2(), 62_370.0);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i128);

impl Area {
    /// No area.
    pub const ZERO: Self = Self(0);

    /// Width times height.
    #[must_use]
    pub const fn of(width: Length, height: Length) -> Self {
        Self(2 * width.nm() as i128 * height.nm() as i128)
    }

    /// From a sum of cross products, which is twice the area, in square nanometres.
    #[must_use]
    pub const fn from_doubled(doubled: i128) -> Self {
        Self(doubled)
    }

    /// True above nothing.
    #[must_use]
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// Square millimetres, for showing.
    #[must_use]
    pub const fn as_mm2(self) -> f64 {
        self.0 as f64 / 2e12
    }

    /// `self ÷ whole` in thousandths, for showing shares; nothing of nothing is nothing.
    #[must_use]
    pub const fn per_mille(self, whole: Self) -> i64 {
        if whole.0 == 0 { 0 } else { (self.0 * 1_000 / whole.0) as i64 }
    }
}

impl Add for Area {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Area {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl Mul<i64> for Area {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0 * i128::from(times))
    }
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Add::add)
    }
}
