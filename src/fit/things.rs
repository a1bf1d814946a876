//! Things of a standard size that a maker can choose as a gift instead of measuring them.
//!
//! Sizes are the largest that the standard allows, where it says so (cells), else the nominal ones. What has no
//! standard thickness is offered without one: the maker types how thick the packet is. The values were read in the
//! second-hand sources named beside them, not in the standards themselves.

use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::fitting::{Gift, Shape, Turns, Wrap};

/// What a thing looks like, in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Looks {
    /// Something flat that stands upright: width, height, and thickness where it has one.
    Flat(i64, i64, Option<i64>),
    /// A cylinder or disc: diameter and height.
    Round(i64, i64),
}

/// A thing of a standard size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thing {
    /// What it is called.
    pub name: &'static str,
    /// Its size.
    pub looks: Looks,
    /// The standard that sets it.
    pub standard: &'static str,
}

const fn flat(name: &'static str, standard: &'static str, width: i64, height: i64, thick: Option<i64>) -> Thing {
    Thing { name, looks: Looks::Flat(width, height, thick), standard }
}

const fn round(name: &'static str, standard: &'static str, across: i64, height: i64) -> Thing {
    Thing { name, looks: Looks::Round(across, height), standard }
}

const CELL: &str = "IEC 60086-2";
const ENVELOPE: &str = "ISO 269";
const COIN: &str = "Council Regulation (EC) 975/98";

/// The things, in the order in which they are offered.
///
/// Sources: cards, an encyclopaedia's article on ISO/IEC 7810; cells, Linden's Handbook of Batteries, table 4.9a;
/// envelopes, tables of ISO 269; coins, the EUR-Lex summary (diameters) and coin catalogues (thicknesses); A6, ISO 216.
/// The disc's 120 mm is from the ECMA-130 page; its 1.2 mm is from memory.
pub const THINGS: &[Thing] = &[
    flat("Bank or gift card", "ISO/IEC 7810 ID-1", 85_600, 53_980, Some(840)),
    flat("Passport", "ISO/IEC 7810 ID-3", 125_000, 88_000, None),
    round("Compact disc", "ECMA-130", 120_000, 1_200),
    round("AA cell", CELL, 14_500, 50_500),
    round("AAA cell", CELL, 10_500, 44_500),
    round("C cell", CELL, 26_200, 50_000),
    round("D cell", CELL, 34_200, 61_500),
    flat("A6 postcard", "ISO 216", 148_000, 105_000, None),
    flat("DL envelope", ENVELOPE, 220_000, 110_000, None),
    flat("C6 envelope", ENVELOPE, 162_000, 114_000, None),
    flat("C6/C5 envelope", ENVELOPE, 229_000, 114_000, None),
    flat("C5 envelope", ENVELOPE, 229_000, 162_000, None),
    flat("B6 envelope", ENVELOPE, 176_000, 125_000, None),
    round("2 euro coin", COIN, 25_750, 2_200),
    round("1 euro coin", COIN, 23_250, 2_330),
];

impl Thing {
    /// The thing as a gift; `thickness` is asked for where it has none of its own. Nothing where it is missing.
    #[must_use]
    pub fn gift(&self, thickness: Option<Length>) -> Option<Gift> {
        let um = |n| Given::exactly(Length::um(n));
        let shape = match self.looks {
            Looks::Round(across, height) => Shape::Cylinder { across: um(across)?, height: um(height)? },
            Looks::Flat(width, height, thick) => {
                let depth = Given::exactly(thick.map(Length::um).or(thickness)?)?;
                Shape::Block { width: um(width)?, depth, height: um(height)? }
            }
        };
        let name = self.name.to_owned();
        Some(Gift { name, shape, count: 1, wrap: Wrap::Bare, turns: Turns::Any, grams: None })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(name: &str, thickness: Option<Length>, expected: &[&str]) {
        let thing = THINGS.iter().find(|t| t.name == name).expect("it is offered");
        let sides: Option<Vec<String>> = thing.gift(thickness).map(|gift| match gift.shape {
            Shape::Cylinder { across, height } => [across, height].map(|g| g.text().to_owned()).to_vec(),
            Shape::Block { width, depth, height } | Shape::Soft { width, depth, height } => {
                [width, depth, height].map(|g| g.text().to_owned()).to_vec()
            }
        });
        assert_eq!(sides.unwrap_or_default(), expected, "{name}");
    }

    #[test]
    fn a_thing_is_a_gift_with_sizes_as_they_are_typed() {
        check("Bank or gift card", None, &["85.6 mm", "0.84 mm", "53.98 mm"]);
        check("AA cell", None, &["14.5 mm", "50.5 mm"]);
        check("DL envelope", None, &[]);
        check("DL envelope", Some(Length::mm(2)), &["220 mm", "2 mm", "110 mm"]);
    }
}
