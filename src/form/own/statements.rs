//! How the text of a drawn form falls into statements, their details, and what stands between commas.

use super::drawn::At;
use super::words::cell_named;
use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::project::finding::OwnText;

/// Something read, or what is wrong with it.
pub type Answer<T> = Result<T, OwnText>;

/// The first statement, with the details behind it, and the rest. A piece between semicolons that begins like a detail
/// belongs to the statement before it.
#[must_use]
pub fn next(text: &str) -> (&str, &str) {
    let mut end = 0;
    loop {
        let cut = text[end..].find(';').map(|i| end + i);
        match cut {
            None => return (text, ""),
            Some(at) if is_detail(&text[at + 1..]) && !text[..at].trim().is_empty() => end = at + 1,
            Some(at) => return (&text[..at], &text[at + 1..]),
        }
    }
}

/// Whether this goes on about what stands before it.
fn is_detail(text: &str) -> bool {
    const DETAILS: [&str; 16] = [
        "strip ",
        "wedge ",
        "round ",
        "notch ",
        "slot ",
        "hole",
        "score falling",
        "score rising",
        "level ",
        "mat",
        "no mat",
        "border ",
        "along ",
        "as ",
        "tuck ",
        "gap ",
    ];
    let text = text.split(';').next().unwrap_or_default().trim();
    DETAILS.iter().any(|d| text.starts_with(d)) && !matches!(text, "as front" | "as base")
}

/// The cells that a text begins with, and what follows them: `A1, B1 and C1 away`, `between A4 and B4`, `A4|B4 90`.
#[must_use]
pub fn cells(text: &str) -> (Vec<At>, &str) {
    let mut found = Vec::new();
    let mut rest = text.trim_start();
    while !rest.is_empty() {
        let end = rest.find([' ', ',', '|']).unwrap_or(rest.len());
        let word = &rest[..end];
        match cell_named(word) {
            Some(at) => found.push(at),
            None if word.is_empty() || matches!(word, "and" | "from" | "between" | "to" | "&") => {}
            None => break,
        }
        rest = rest[end..].trim_start_matches([' ', ',', '|']);
    }
    (found, rest)
}

/// A length above nothing.
///
/// # Errors
/// Where it is not.
pub fn positive(length: Length) -> Answer<Length> {
    if length.is_positive() { Ok(length) } else { Err(OwnText::Length) }
}

/// What stands between commas; a comma between digits is part of a number: `2,5 cm`.
pub fn items(text: &str) -> impl Iterator<Item = &str> {
    let bytes = text.as_bytes();
    let digit = |at: Option<usize>| at.and_then(|i| bytes.get(i)).is_some_and(u8::is_ascii_digit);
    let mut cuts: Vec<usize> = Vec::new();
    for (i, b) in bytes.iter().enumerate() {
        if *b == b',' && !(digit(i.checked_sub(1)) && digit(Some(i + 1))) {
            cuts.push(i);
        }
    }
    cuts.push(text.len());
    let mut from = 0;
    let cut = move |end: usize| {
        let one = &text[from..end];
        from = end + 1;
        one.trim()
    };
    cuts.into_iter().map(cut).filter(|one| !one.is_empty())
}

/// Degrees, to the millionth, from −180 to 180.
///
/// # Errors
/// Where it is none.
pub fn angle(text: &str) -> Answer<Angle> {
    let text = text.trim().trim_end_matches('°').trim();
    let (minus, digits) = text.strip_prefix(['-', '−']).map_or((false, text), |d| (true, d));
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let good = |s: &str, most: usize| s.len() <= most && s.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() || !good(whole, 3) || !good(part, 6) {
        return Err(OwnText::Angle);
    }
    let whole: i32 = whole.parse().map_err(|_| OwnText::Angle)?;
    let part: i32 = format!("{part:0<6}").parse().map_err(|_| OwnText::Angle)?;
    let all = whole * 1_000_000 + part;
    if all > 180_000_000 {
        return Err(OwnText::Angle);
    }
    Ok(Angle::of_millionths(if minus { -all } else { all }))
}
