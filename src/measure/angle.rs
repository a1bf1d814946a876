//! `Angle`: how far a crease is folded, in whole millionths of a degree, so that equal folds are equal.

/// An angle. At 300 mm from a crease a millionth of a degree is 5 nm.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Angle(i32);

impl Angle {
    /// No angle at all.
    pub const ZERO: Self = Self(0);

    /// Whole degrees, from −180 to 180.
    #[must_use]
    pub const fn degrees(degrees: i16) -> Self {
        Self(degrees as i32 * 1_000_000)
    }

    /// The angle whose tangent is `rise` over `run`, from −180 to 180 degrees.
    ///
    /// ```
    /// use snugfold::measure::angle::Angle;
    /// assert_eq!(Angle::of(3_f64.sqrt(), 1.0), Angle::degrees(60)); // a regular triangle: height √3 over half a side
    /// ```
    #[must_use]
    pub fn of(rise: f64, run: f64) -> Self {
        Self((libm::atan2(rise, run).to_degrees() * 1e6).round() as i32)
    }

    /// Whole millionths of a degree.
    #[must_use]
    pub const fn of_millionths(millionths: i32) -> Self {
        Self(millionths)
    }

    /// In whole millionths of a degree.
    #[must_use]
    pub const fn millionths(self) -> i32 {
        self.0
    }

    /// In degrees.
    #[must_use]
    pub fn as_degrees(self) -> f64 {
        f64::from(self.0) / 1e6
    }

    /// What is missing to a half turn.
    #[must_use]
    pub const fn rest(self) -> Self {
        Self(180_000_000 - self.0)
    }

    /// Twice as much.
    #[must_use]
    pub const fn twice(self) -> Self {
        Self(self.0 * 2)
    }
}

impl std::ops::Neg for Angle {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl From<i16> for Angle {
    fn from(degrees: i16) -> Self {
        Self::degrees(degrees)
    }
}
