//! `Figure`: a length as it is shown in one system, ready for stacked fractions.

use std::fmt;

use super::length::Length;
use super::system::System;

/// A length split for showing: `−`, `4`, `1/4`, `in`. Words and layout are the reader's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Figure {
    /// True below zero.
    pub minus: bool,
    /// The whole part, or the whole decimal number; empty where there is only a fraction.
    pub whole: String,
    /// Numerator and denominator, reduced.
    pub fraction: Option<(i64, i64)>,
    /// `in` or `mm`.
    pub unit: &'static str,
}

impl Figure {
    /// `length` in `system`: sixty-fourths of an inch as a fraction, other inches to three places;
    /// millimetres to two places.
    ///
    /// ```
    /// use snugfold::measure::{length::Length, show::Figure, system::System};
    /// assert_eq!(Figure::of(Length::inches(17, 4), System::Inch).to_string(), "4 1/4 in");
    /// assert_eq!(Figure::of(Length::um(76_500), System::Metric).to_string(), "76.5 mm");
    /// assert_eq!(Figure::of(Length::um(300), System::Inch).to_string(), "0.012 in");
    /// ```
    #[must_use]
    pub fn of(length: Length, system: System) -> Self {
        let nm = length.nm().abs();
        let minus = length.nm() < 0;
        match system {
            System::Inch if nm % SIXTY_FOURTH == 0 => {
                let parts = nm / SIXTY_FOURTH;
                let (whole, part) = (parts / 64, parts % 64);
                let shared = 1 << part.trailing_zeros().min(6);
                Self {
                    minus,
                    whole: if whole == 0 && part != 0 { String::new() } else { whole.to_string() },
                    fraction: (part != 0).then_some((part / shared, 64 / shared)),
                    unit: "in",
                }
            }
            System::Inch => Self::decimal(minus, nm, Length::INCH.nm(), 3, "in"),
            System::Metric => Self::decimal(minus, nm, Length::MM.nm(), 2, "mm"),
        }
    }

    /// `nm ÷ unit_nm` rounded to so many places, without idle noughts.
    fn decimal(minus: bool, nm: i64, unit_nm: i64, places: usize, unit: &'static str) -> Self {
        let scale = if places == 2 { 100 } else { 1_000 };
        let parts = (nm * scale + unit_nm / 2) / unit_nm;
        let (whole, part) = (parts / scale, parts % scale);
        let digits = format!("{part:0places$}");
        let digits = digits.trim_end_matches('0');
        Self {
            minus: minus && parts != 0,
            whole: if digits.is_empty() { whole.to_string() } else { format!("{whole}.{digits}") },
            fraction: None,
            unit,
        }
    }

    /// Without its unit, as in a list that names the unit once.
    #[must_use]
    pub fn bare(&self) -> String {
        let minus = if self.minus { "−" } else { "" };
        match self.fraction {
            None => format!("{minus}{}", self.whole),
            Some((n, d)) if self.whole.is_empty() => format!("{minus}{n}/{d}"),
            Some((n, d)) => format!("{minus}{} {n}/{d}", self.whole),
        }
    }
}

const SIXTY_FOURTH: i64 = 396_875;

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.bare(), self.unit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(length: Length, system: System, expected: &str) {
        assert_eq!(Figure::of(length, system).to_string(), expected);
    }

    #[test]
    fn figures_read_as_a_ruler_does() {
        check(Length::ZERO, System::Inch, "0 in");
        check(Length::inches(3, 8), System::Inch, "3/8 in");
        check(Length::inches(-3, 8), System::Inch, "−3/8 in");
        check(Length::inches(12, 1), System::Inch, "12 in");
        check(Length::inches(63, 64), System::Inch, "63/64 in");
        check(Length::INCH - Length::um(300), System::Inch, "0.988 in");
        check(Length::mm(108), System::Metric, "108 mm");
        check(Length::um(300), System::Metric, "0.3 mm");
        check(Length::um(-500), System::Metric, "−0.5 mm");
        check(Length::from_nm(1), System::Metric, "0 mm");
        check(Length::um(1_005), System::Metric, "1.01 mm");
    }
}
