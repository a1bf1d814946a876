//! The two systems of measurement, and pairs of values native to each.

use serde::{Deserialize, Serialize};

use super::length::Length;

/// A system of measurement. A plan follows one of them throughout.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// Inches and fractions of them.
    #[default]
    Inch,
    /// Millimetres.
    Metric,
}

impl System {
    /// Both, in the order in which they are shown.
    pub const ALL: [Self; 2] = [Self::Inch, Self::Metric];

    /// The other one.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Inch => Self::Metric,
            Self::Metric => Self::Inch,
        }
    }
}

/// One value for each system, neither converted from the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Native<T> {
    /// For the inch recipe.
    pub inch: T,
    /// For the metric recipe.
    pub metric: T,
}

impl<T: Copy> Native<T> {
    /// The value for `system`.
    pub const fn of(&self, system: System) -> T {
        match system {
            System::Inch => self.inch,
            System::Metric => self.metric,
        }
    }
}

impl Native<Length> {
    /// `numerator/denominator` inches, or `tenths` tenths of a millimetre.
    #[must_use]
    pub const fn lengths(numerator: i64, denominator: i64, tenths: i64) -> Self {
        Self { inch: Length::inches(numerator, denominator), metric: Length::um(tenths * 100) }
    }
}
