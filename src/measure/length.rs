//! `Length`: a signed distance, exact to the nanometre.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// A signed distance, held as whole nanometres, so that both systems are exact and equality means equality.
///
/// One sixty-fourth of an inch is 396 875 nm, because the inch is 25.4 mm exactly
/// (International yard and pound agreement, 1959; NIST SP 811).
///
/// ```
/// use snugfold::measure::length::Length;
/// assert_eq!(Length::inches(1, 64).nm(), 396_875);
/// assert_eq!(Length::inches(1, 4) + Length::inches(3, 4), Length::um(25_400));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

/// The furthest that a length can be from zero: a million kilometres short of overflow in any sum the plan makes.
const LIMIT: i64 = 1 << 52;

impl Length {
    /// No distance.
    pub const ZERO: Self = Self(0);
    /// One inch: 25.4 mm exactly.
    pub const INCH: Self = Self(25_400_000);
    /// One millimetre.
    pub const MM: Self = Self(1_000_000);

    /// Whole nanometres; anything beyond ± 4 500 km is cut off there.
    #[must_use]
    pub const fn from_nm(nm: i64) -> Self {
        if nm > LIMIT {
            Self(LIMIT)
        } else if nm < -LIMIT {
            Self(-LIMIT)
        } else {
            Self(nm)
        }
    }

    /// Whole micrometres.
    #[must_use]
    pub const fn um(um: i64) -> Self {
        Self::from_nm(um.saturating_mul(1_000))
    }

    /// Whole millimetres.
    #[must_use]
    pub const fn mm(mm: i64) -> Self {
        Self::from_nm(mm.saturating_mul(1_000_000))
    }

    /// `numerator / denominator` inches, rounded to the nanometre (exact for denominators up to 64 that are powers
    /// of two). A denominator of nothing counts as one.
    #[must_use]
    pub const fn inches(numerator: i64, denominator: i64) -> Self {
        let d = if denominator == 0 { 1 } else { denominator };
        Self::from_nm(round_div(25_400_000 * numerator as i128, d as i128))
    }

    /// The one door for irrational lengths (diagonals, arcs): rounds to the nearest nanometre; not-a-number is zero.
    #[must_use]
    pub fn round_mm(mm: f64) -> Self {
        let nm = (mm * 1e6).round();
        if nm.is_nan() {
            Self::ZERO
        } else {
            // Both ends fit an i64 after the clamp.
            Self::from_nm(nm.clamp(-(LIMIT as f64), LIMIT as f64) as i64)
        }
    }

    /// Whole nanometres.
    #[must_use]
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// Millimetres, for drawing and folding only.
    #[must_use]
    pub const fn as_mm(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// Whole micrometres, rounded half away from zero.
    #[must_use]
    pub const fn as_um(self) -> i64 {
        round_div(self.0 as i128, 1_000)
    }

    /// Half of it, rounded to the nanometre.
    #[must_use]
    pub const fn half(self) -> Self {
        Self(round_div(self.0 as i128, 2))
    }

    /// Its distance from zero.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// True above zero.
    #[must_use]
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// Not below zero.
    #[must_use]
    pub const fn at_least_zero(self) -> Self {
        if self.0 < 0 { Self::ZERO } else { self }
    }

    /// `self × numerator ÷ denominator`, rounded to the nanometre.
    #[must_use]
    pub const fn scaled(self, numerator: i64, denominator: i64) -> Self {
        let d = if denominator == 0 { 1 } else { denominator };
        Self::from_nm(round_div(self.0 as i128 * numerator as i128, d as i128))
    }
}

/// Nearest whole quotient, halves away from zero, cut off at the ends of an `i64`.
const fn round_div(n: i128, d: i128) -> i64 {
    let (n, d) = if d < 0 { (-n, -d) } else { (n, d) };
    let q = if n >= 0 { (n + d / 2) / d } else { (n - d / 2) / d };
    if q > i64::MAX as i128 {
        i64::MAX
    } else if q < i64::MIN as i128 {
        i64::MIN
    } else {
        q as i64
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::from_nm(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::from_nm(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self::from_nm(self.0.saturating_mul(times))
    }
}

/// How many whole times `other` goes into `self`; none where `other` is not above zero.
impl Div for Length {
    type Output = i64;
    fn div(self, other: Self) -> i64 {
        if other.0 > 0 { self.0.div_euclid(other.0) } else { 0 }
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sixty_fourths_are_exact() {
        for n in 0..=64 {
            assert_eq!(Length::inches(n, 64).nm() * 64, 25_400_000 * n);
        }
    }

    #[test]
    fn halves_round_away_from_zero() {
        assert_eq!(Length::from_nm(3).half().nm(), 2);
        assert_eq!(Length::from_nm(-3).half().nm(), -2);
    }

    #[test]
    fn nothing_overflows() {
        let far = Length::from_nm(i64::MAX);
        assert_eq!(far + far, far);
        assert_eq!(far * i64::MAX, far);
        assert_eq!(Length::round_mm(f64::NAN), Length::ZERO);
        assert_eq!(Length::round_mm(f64::INFINITY), far);
    }
}
