//! `Given`: a length as the maker typed it, with its unit, never converted.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::digits;
use super::json::value::text;
use super::length::Length;
use super::show::Figure;
use super::system::System;

/// A length kept as typed. Where no unit was typed, the unit of the system at that moment is written behind it.
///
/// ```
/// use snugfold::measure::{given::Given, length::Length, system::System};
/// let g = Given::read("4¼", System::Inch).unwrap();
/// assert_eq!((g.text(), g.length()), ("4¼ in", Length::inches(17, 4)));
/// assert_eq!(Given::read("10,8 cm", System::Inch).unwrap().length(), Length::mm(108));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Given {
    text: String,
    length: Length,
    system: System,
}

/// Why a typed length cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Nothing was typed.
    Empty,
    /// No number where one is needed.
    NoNumber,
    /// A unit that is neither inches, millimetres nor centimetres.
    UnknownUnit,
    /// A fraction over nought.
    OverNought,
    /// More than the 40 characters that any length needs.
    TooLong,
}

/// The longest text that is read at all.
const LONGEST: usize = 40;

impl Given {
    /// `length` as the maker would type it in `system`, or to the nanometre where no ruler has it. Nothing below zero.
    #[must_use]
    pub fn of(length: Length, system: System) -> Option<Self> {
        let shown = Self::read(&Figure::of(length, system).to_string(), system).ok();
        shown.filter(|g| g.length() == length).or_else(|| Self::exactly(length))
    }

    /// `length` to the nanometre. Nothing below zero.
    #[must_use]
    pub fn exactly(length: Length) -> Option<Self> {
        let nm = u64::try_from(length.nm()).ok()?;
        let number = format!("{}.{:06}", nm / 1_000_000, nm % 1_000_000);
        let number = number.trim_end_matches('0').trim_end_matches('.');
        Self::read(&format!("{number} mm"), System::Metric).ok()
    }

    /// Reads what a maker types: `4 1/4`, `4¼`, `4-1/4`, `4.25"`, `108 mm`, `10,8 cm`. A bare number is in the unit of
    /// `bare` (inches, or millimetres). Digits of other scripts are kept as plain ones.
    ///
    /// # Errors
    /// [`Unreadable`] says what is wrong with the text.
    pub fn read(typed: &str, bare: System) -> Result<Self, Unreadable> {
        let typed = &*digits::plain(typed.trim());
        if typed.is_empty() {
            return Err(Unreadable::Empty);
        }
        if typed.chars().count() > LONGEST {
            return Err(Unreadable::TooLong);
        }
        let (number, unit) = split_unit(typed);
        if number.is_empty() {
            return Err(Unreadable::NoNumber);
        }
        let (text, unit) = match unit {
            "" => match bare {
                System::Inch => (format!("{number} in"), Unit::Inch),
                System::Metric => (format!("{number} mm"), Unit::Millimetre),
            },
            name => (typed.to_owned(), Unit::named(name).ok_or(Unreadable::UnknownUnit)?),
        };
        // The unit that is written behind a bare number counts too: what is kept must be readable again.
        if text.chars().count() > LONGEST {
            return Err(Unreadable::TooLong);
        }
        let (numerator, denominator) = ratio(number)?;
        let nm = i128::from(unit.nm()) * numerator;
        let rounded = (nm.abs() + denominator / 2) / denominator * nm.signum();
        Ok(Self { text, length: Length::from_nm(i64::try_from(rounded).unwrap_or(i64::MAX)), system: unit.system() })
    }

    /// As typed, always with a unit.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// How long that is.
    #[must_use]
    pub const fn length(&self) -> Length {
        self.length
    }

    /// The system of the unit that was typed.
    #[must_use]
    pub const fn system(&self) -> System {
        self.system
    }
}

impl fmt::Display for Given {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}

impl Serialize for Given {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.text)
    }
}

/// A text without a unit in a file is in millimetres.
impl<'de> Deserialize<'de> for Given {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        text(from, |typed| {
            Self::read(typed, System::Metric)
                .map_err(|_| format!("“{typed}” is no length such as “4 1/4 in” or “108 mm”"))
        })
    }
}

/// What may be typed behind a number.
#[derive(Clone, Copy)]
enum Unit {
    Inch,
    Millimetre,
    Centimetre,
}

impl Unit {
    fn named(name: &str) -> Option<Self> {
        Some(match name.to_ascii_lowercase().trim_end_matches('.') {
            "in" | "ins" | "inch" | "inches" | "\"" | "″" | "”" | "''" => Self::Inch,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Self::Millimetre,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Self::Centimetre,
            _ => return None,
        })
    }

    const fn nm(self) -> i64 {
        match self {
            Self::Inch => Length::INCH.nm(),
            Self::Millimetre => Length::MM.nm(),
            Self::Centimetre => 10 * Length::MM.nm(),
        }
    }

    const fn system(self) -> System {
        match self {
            Self::Inch => System::Inch,
            Self::Millimetre | Self::Centimetre => System::Metric,
        }
    }
}

/// Single characters that stand for a fraction, as Unicode names them.
const VULGAR: [(char, i128, i128); 18] = [
    ('¼', 1, 4),
    ('½', 1, 2),
    ('¾', 3, 4),
    ('⅐', 1, 7),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
];

fn vulgar(c: char) -> Option<(i128, i128)> {
    VULGAR.iter().find(|v| v.0 == c).map(|v| (v.1, v.2))
}

fn split_unit(text: &str) -> (&str, &str) {
    let end = text
        .char_indices()
        .rev()
        .take_while(|&(_, c)| !(c.is_ascii_digit() || vulgar(c).is_some()))
        .last()
        .map_or(text.len(), |(at, _)| at);
    // A trailing point or comma belongs to the number, as in "4."
    let (number, rest) = text.split_at(end);
    (number, rest.trim_start_matches(['.', ',']).trim())
}

/// Reads a whole number, a decimal, a fraction or a whole number and a fraction, as an exact ratio.
fn ratio(text: &str) -> Result<(i128, i128), Unreadable> {
    let (sign, text) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1, rest.trim_start()),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    if !text.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',') || vulgar(c).is_some()) {
        return Err(Unreadable::NoNumber);
    }
    let spaced: String = text
        .chars()
        .map(|c| match c {
            '⁄' | '∕' => '/',
            '-' | '–' => ' ',
            c if c.is_whitespace() => ' ',
            c => c,
        })
        .collect();
    // "1 / 4" is one fraction.
    let tidy = spaced.split_whitespace().collect::<Vec<_>>().join(" ").replace(" /", "/").replace("/ ", "/");
    let (n, d) = match tidy.split_once(' ') {
        Some((whole, part)) => sum(whole_number(whole)?, fraction(part)?),
        None if tidy.contains('/') => fraction(&tidy)?,
        None => match tidy.chars().last().and_then(vulgar) {
            Some(part) => {
                let whole = &tidy[..tidy.len() - tidy.chars().last().map_or(0, char::len_utf8)];
                if whole.is_empty() { part } else { sum(whole_number(whole)?, part) }
            }
            None => decimal(&tidy)?,
        },
    };
    Ok((sign * n, d))
}

const fn sum(whole: i128, (n, d): (i128, i128)) -> (i128, i128) {
    (whole * d + n, d)
}

fn whole_number(text: &str) -> Result<i128, Unreadable> {
    if text.is_empty() || text.len() > 9 || !text.bytes().all(|b| b.is_ascii_digit()) {
        return Err(Unreadable::NoNumber);
    }
    text.parse().map_err(|_| Unreadable::NoNumber)
}

fn fraction(text: &str) -> Result<(i128, i128), Unreadable> {
    let mut chars = text.chars();
    if let (Some(c), None) = (chars.next(), chars.next()) {
        return vulgar(c).ok_or(Unreadable::NoNumber);
    }
    let (n, d) = text.split_once('/').ok_or(Unreadable::NoNumber)?;
    let (n, d) = (whole_number(n)?, whole_number(d)?);
    if d == 0 { Err(Unreadable::OverNought) } else { Ok((n, d)) }
}

fn decimal(text: &str) -> Result<(i128, i128), Unreadable> {
    let (whole, part) = text.split_once(['.', ',']).unwrap_or((text, ""));
    if whole.is_empty() && part.is_empty() {
        return Err(Unreadable::NoNumber);
    }
    let whole = if whole.is_empty() { 0 } else { whole_number(whole)? };
    let part_value = if part.is_empty() { 0 } else { whole_number(part)? };
    let scale = 10_i128.pow(u32::try_from(part.len()).unwrap_or(0));
    Ok((whole * scale + part_value, scale))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(typed: &str, expected: Length) {
        let read = Given::read(typed, System::Inch);
        assert_eq!(read.as_ref().map(Given::length), Ok(expected), "{typed}");
        let text = read.map(|g| g.text).unwrap_or_default();
        assert_eq!(Given::read(&text, System::Metric).map(|g| g.length), Ok(expected), "{text} read again");
    }

    #[test]
    fn what_makers_type() {
        let four_and_a_quarter = Length::inches(17, 4);
        for typed in [
            "4 1/4",
            "4¼",
            "4.25\"",
            "4,25 in",
            "4-1/4 inches",
            "4 1⁄4″",
            " 4  1 / 4 ",
            "17/4",
            "4 ¼ in",
            "4.250 in.",
            "+4.25",
            "107.95mm",
            "10,795 cm",
        ] {
            check(typed, four_and_a_quarter);
        }
        check("108 mm", Length::mm(108));
        check("10,8 cm", Length::mm(108));
        check("½", Length::inches(1, 2));
        check(".5", Length::inches(1, 2));
        check("4.", Length::inches(4, 1));
        check("-0.5 mm", -Length::um(500));
        check("1/3", Length::from_nm(8_466_667));
        check("١٠٨ mm", Length::mm(108));
        check("４．２５", four_and_a_quarter);
        check("۴ ۱/۴", four_and_a_quarter);
    }

    #[test]
    fn what_cannot_be_read_says_why() {
        for (typed, why) in [
            ("", Unreadable::Empty),
            ("  ", Unreadable::Empty),
            ("abc", Unreadable::NoNumber),
            ("mm", Unreadable::NoNumber),
            ("4 furlongs", Unreadable::UnknownUnit),
            ("1/0", Unreadable::OverNought),
            ("4 1", Unreadable::NoNumber),
            ("1.2.3", Unreadable::NoNumber),
            ("9999999999", Unreadable::NoNumber),
            ("--4", Unreadable::NoNumber),
        ] {
            assert_eq!(Given::read(typed, System::Inch).err(), Some(why), "{typed}");
        }
        for long in ["1".repeat(50), format!("4{}1/4", " ".repeat(35))] {
            assert_eq!(Given::read(&long, System::Inch).err(), Some(Unreadable::TooLong));
        }
    }
}
