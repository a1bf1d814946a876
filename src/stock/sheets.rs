//! Sheets by their standard or trade size.

use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::System;

/// A size in which card is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StandardSheet {
    /// What it is called.
    pub name: &'static str,
    /// Short side.
    pub width: Length,
    /// Long side.
    pub height: Length,
    /// The system in which it is defined.
    pub system: System,
    /// Who says so.
    pub source: &'static str,
}

const ISO: &str = "ISO 216";
const ASME: &str = "ASME Y14.1";
const TRADE: &str = "common practice, no source";

const fn mm(name: &'static str, width: i64, height: i64) -> StandardSheet {
    StandardSheet { name, width: Length::mm(width), height: Length::mm(height), system: System::Metric, source: ISO }
}

const fn half_inches(name: &'static str, width: i64, height: i64, source: &'static str) -> StandardSheet {
    StandardSheet {
        name,
        width: Length::inches(width, 2),
        height: Length::inches(height, 2),
        system: System::Inch,
        source,
    }
}

/// The sizes offered; the maker's real sheet may differ and is the maker's to type.
pub const STANDARD: [StandardSheet; 9] = [
    half_inches("12 × 12 in", 24, 24, TRADE),
    half_inches("8½ × 11 in", 17, 22, ASME),
    half_inches("11 × 17 in", 22, 34, ASME),
    half_inches("9 × 12 in", 18, 24, ASME),
    half_inches("12 × 18 in", 24, 36, ASME),
    mm("A4", 210, 297),
    mm("A3", 297, 420),
    mm("A2", 420, 594),
    mm("A5", 148, 210),
];

/// The place in [`STANDARD`] of the sheet with just these sides.
#[must_use]
pub fn standard(width: Length, height: Length) -> Option<usize> {
    STANDARD.iter().position(|s| (s.width, s.height) == (width, height))
}

impl StandardSheet {
    /// Width and height as a maker would type them.
    #[must_use]
    pub fn given(&self) -> Option<(Given, Given)> {
        let read = |length: Length| {
            let text = crate::measure::show::Figure::of(length, self.system).to_string();
            Given::read(&text, self.system).ok()
        };
        Some((read(self.width)?, read(self.height)?))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_size_can_be_typed() {
        for sheet in STANDARD {
            let read = sheet.given().map(|(w, h)| (w.length(), h.length()));
            assert_eq!(read, Some((sheet.width, sheet.height)), "{}", sheet.name);
        }
    }
}
