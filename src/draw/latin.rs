//! What the typeface that every reader of PDF has can show, by its places in it.

/// The characters of places 128 to 159 (ISO 32000-1, annex D.2, `WinAnsiEncoding`); what is `\0` has no character.
const UPPER: &str = "€\0‚ƒ„…†‡ˆ‰Š‹Œ\0Ž\0\0‘’“”•–—˜™š›œ\0žŸ";

/// The place of a character, where it has one.
///
/// ```
/// use snugfold::draw::latin::place;
/// assert_eq!([place('A'), place('é'), place('–'), place('礼')], [Some(65), Some(0xe9), Some(0x96), None]);
/// ```
#[must_use]
pub fn place(c: char) -> Option<u8> {
    match c {
        // A minus is drawn as a dash of its width.
        '−' => place('–'),
        '\0' => None,
        ' '..='~' | '\u{a0}'..='\u{ff}' => u8::try_from(u32::from(c)).ok(),
        c => UPPER.chars().zip(128..).find(|(upper, _)| *upper == c).map(|(_, place)| place),
    }
}

/// How wide a character is in the face's own height, as its makers publish it (Adobe, Core 14 AFM, Helvetica, written
/// here from memory; `tests/patterns.rs` measures lettering on the page). Others than these are nearly all 0.556.
const WIDTHS: [(&str, f64); 10] = [
    ("ijl‘’‚", 0.222),
    (" !,./:;ftI\u{a0}·", 0.278),
    ("()-r“”„", 0.333),
    ("¼½¾", 0.834),
    ("…—‰", 1.0),
    ("cksvxyzJ", 0.5),
    ("+<=>×−", 0.584),
    ("ABEKPSVXY", 0.667),
    ("CDHNRUw", 0.722),
    ("mMGOQ%W@", 0.833),
];

/// How wide a run is, in the height of its lettering.
#[must_use]
pub fn width(words: &str) -> f64 {
    let one = |c: char| WIDTHS.iter().find(|(all, _)| all.contains(c)).map_or(0.556, |(_, width)| *width);
    words.chars().map(one).sum()
}

/// Words as the places of their characters; a question mark where there is none.
#[must_use]
pub fn places(words: &str) -> Vec<u8> {
    words.chars().map(|c| place(c).unwrap_or(b'?')).collect()
}

/// Whether all of it can be shown.
#[must_use]
pub fn shows(words: &str) -> bool {
    words.chars().all(|c| place(c).is_some())
}
