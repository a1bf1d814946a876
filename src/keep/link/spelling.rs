//! A typed length as a number that brings back every character of it.
//!
//! The number is `32 × value + style`. Styles 1 to 30 are `1 + 5 × unit + shape`; style 0 is a text that is spelled out
//! (the value is how many bytes of UTF-8 follow); style 31 is left for what is no length.
//!
//! | shape | looks like | value |
//! | --- | --- | --- |
//! | 0 | `12` | the whole number |
//! | 1 | `4 1/4`, `1/4` | sixty-fourths |
//! | 2 | `4¼`, `¼` | eighths |
//! | 3 | `4.25` | `4 × digits + places − 1`, so `4 × 425 + 1` |
//! | 4 | `4,25` | the same |
//!
//! Units 0 to 5 are ` in`, ` mm`, ` cm`, `"`, `mm`, `cm`. Whatever does not come back exactly like this is spelled out.

use crate::measure::given::Given;
use crate::measure::system::System;

use super::wire::{Fault, Reader, Writer};

/// How many styles there are.
pub const STYLES: u64 = 32;
/// The style of what is no length.
pub const OTHER: u64 = 31;

const UNITS: [&str; 6] = [" in", " mm", " cm", "\"", "mm", "cm"];
const SHAPES: [Shape; 5] = [Shape::Whole, Shape::Fraction, Shape::Glyph, Shape::Point, Shape::Comma];
const EIGHTHS: [&str; 7] = ["⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];

/// What a number looks like.
#[derive(Clone, Copy)]
enum Shape {
    Whole,
    Fraction,
    Glyph,
    Point,
    Comma,
}

impl Shape {
    /// The value behind the text of a number, where it may have this shape.
    fn value(self, text: &str) -> Option<u64> {
        match self {
            Self::Whole => text.parse().ok(),
            Self::Fraction => {
                let (whole, part) = text.split_once(' ').unwrap_or(("0", text));
                let (n, d) = part.split_once('/')?;
                let (whole, n, d): (u64, u64, u64) = (whole.parse().ok()?, n.parse().ok()?, d.parse().ok()?);
                let unit = 64_u64.checked_div(d)?;
                whole.checked_mul(64)?.checked_add(n.checked_mul(unit)?)
            }
            Self::Glyph => {
                let eighths = EIGHTHS.iter().position(|g| text.ends_with(g))?;
                let whole = text.strip_suffix(EIGHTHS[eighths])?;
                let whole: u64 = if whole.is_empty() { 0 } else { whole.parse().ok()? };
                whole.checked_mul(8)?.checked_add(eighths as u64 + 1)
            }
            Self::Point => decimal(text, '.'),
            Self::Comma => decimal(text, ','),
        }
    }

    /// The text of a number with this value.
    fn text(self, value: u64) -> Option<String> {
        let with = |whole: u64, part: &str, gap| {
            if whole == 0 { part.to_owned() } else { format!("{whole}{gap}{part}") }
        };
        match self {
            Self::Whole => Some(value.to_string()),
            Self::Fraction => {
                let (whole, part) = (value / 64, value % 64);
                let shared = 1 << part.trailing_zeros().min(6);
                (part != 0).then(|| with(whole, &format!("{}/{}", part / shared, 64 / shared), " "))
            }
            Self::Glyph => {
                let glyph = EIGHTHS.get(usize::try_from(value % 8).ok()?.checked_sub(1)?)?;
                Some(with(value / 8, glyph, ""))
            }
            Self::Point => Some(show_decimal(value, '.')),
            Self::Comma => Some(show_decimal(value, ',')),
        }
    }
}

fn decimal(text: &str, mark: char) -> Option<u64> {
    let (whole, part) = text.split_once(mark)?;
    if !(1..=4).contains(&part.len()) || !part.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    let digits: u64 = format!("{whole}{part}").parse().ok()?;
    digits.checked_mul(4)?.checked_add(part.len() as u64 - 1)
}

fn show_decimal(value: u64, mark: char) -> String {
    let (digits, places) = (value / 4, (value % 4) as u32 + 1);
    let scale = 10_u64.pow(places);
    format!("{}{mark}{:0width$}", digits / scale, digits % scale, width = places as usize)
}

/// Writes a length.
pub fn write(to: &mut Writer, given: &Given) {
    let text = given.text();
    match short(text) {
        Some(number) => to.number(number),
        None => {
            to.number(STYLES * text.len() as u64);
            to.bytes.extend_from_slice(text.as_bytes());
        }
    }
}

/// The number of a text that has one.
fn short(text: &str) -> Option<u64> {
    (0..).zip(UNITS).find_map(|(u, unit)| {
        let number = text.strip_suffix(unit)?;
        (0..).zip(SHAPES).find_map(|(s, shape)| {
            let value = shape.value(number).filter(|&v| shape.text(v).as_deref() == Some(number))?;
            value.checked_mul(STYLES)?.checked_add(1 + 5 * u + s)
        })
    })
}

/// Reads the next length.
///
/// # Errors
/// [`Fault::Broken`] where none is next.
pub fn next(from: &mut Reader) -> Result<Given, Fault> {
    let number = from.number()?;
    read(number, from)
}

/// Reads the length whose number is `number`.
///
/// # Errors
/// [`Fault::Broken`] where it stands for no length.
pub fn read(number: u64, from: &mut Reader) -> Result<Given, Fault> {
    let (value, style) = (number / STYLES, number % STYLES);
    let text = if style == 0 {
        let bytes = from.take(usize::try_from(value).map_err(|_| Fault::Broken)?)?;
        std::str::from_utf8(bytes).map_err(|_| Fault::Broken)?.to_owned()
    } else {
        let (unit, shape) = ((style as usize - 1) / 5, (style as usize - 1) % 5);
        let unit = UNITS.get(unit).ok_or(Fault::Broken)?;
        SHAPES[shape].text(value).ok_or(Fault::Broken)? + *unit
    };
    Given::read(&text, System::Metric).map_err(|_| Fault::Broken)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(typed: &str, bytes: usize) {
        let given = Given::read(typed, System::Inch).expect("it is a length");
        let mut writer = Writer::default();
        write(&mut writer, &given);
        let mut reader = Reader::new(&writer.bytes);
        let read = reader.number().and_then(|n| read(n, &mut reader));
        assert_eq!((read, reader.end()), (Ok(given), Ok(())), "{typed}");
        assert_eq!(writer.bytes.len(), bytes, "{typed}");
    }

    #[test]
    fn common_spellings_are_short() {
        check("3", 1);
        check("12", 2);
        check("4 1/4", 2);
        check("3/8", 2);
        check("4¼", 2);
        check("½\"", 2);
        check("0.3 mm", 2);
        check("0,18 mm", 2);
        check("108 mm", 2);
        check("10,8 cm", 2);
        check("25.4mm", 3);
        check("11 63/64", 3);
    }

    #[test]
    fn odd_spellings_come_back_too() {
        for typed in
            ["4 2/8", "0 1/4 in", "17/4 in", "03 in", "-1 mm", ".5 in", "4. in", "+4.25 INCHES", "1/3 in", "8/8 in"]
        {
            let spelled_out =
                if typed.ends_with(char::is_alphabetic) { typed.len() } else { typed.len() + " in".len() };
            check(typed, 2 + spelled_out);
        }
        check("4 1⁄4″", 2 + 10);
        check("0.12345 in", 2 + 10);
    }

    #[test]
    fn what_stands_for_no_length_is_said() {
        for number in [2, 3 + 32 * 8, 4 + 32 * 64, 1 + 32 * 9_999_999_999, u64::MAX - 1, u64::MAX - 31] {
            let _ = read(number, &mut Reader::new(b"x"));
        }
        // Nought sixty-fourths, nought eighths, ten digits, a text that is not there.
        assert_eq!(read(2, &mut Reader::new(&[])), Err(Fault::Broken));
        assert_eq!(read(3, &mut Reader::new(&[])), Err(Fault::Broken));
        assert_eq!(read(1 + 32 * 9_999_999_999, &mut Reader::new(&[])), Err(Fault::Broken));
        assert_eq!(read(32 * 5, &mut Reader::new(b"3 in")), Err(Fault::Broken));
    }
}
