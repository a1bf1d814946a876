//! Words on pages of patterns, and about them.

use super::finding::short;
use super::kept::plain;
use crate::stock::paper::Paper;

/// All patterns.
pub const PATTERNS: &str = "Patterns at true scale";
/// What they are for.
pub const HINT: &str = "Every blank in its own size, to trace or cut by. Print at 100 % and measure both bars first.";
/// What is printed on.
pub const PAPER: &str = "Printed on";
/// Gives the pages.
pub const SAVE: &str = "Save the pages (PDF)";
/// Gives one pattern.
pub const SAVE_ONE: &str = "Save its drawing (SVG)";

/// What paper is called.
#[must_use]
pub const fn paper(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "A4",
        Paper::Letter => "Letter",
    }
}

/// How many pages.
#[must_use]
pub fn count(pages: usize) -> String {
    if pages == 1 { "1 page".to_owned() } else { format!("{pages} pages") }
}

/// A pattern that is not on the pages.
#[must_use]
pub fn left_out(name: &str, most: usize) -> String {
    format!(
        "{} would take more than {most} pages: it is left out. Save its drawing, or choose smaller sizes.",
        short(name)
    )
}

/// A name of which letters are missing on the pages.
#[must_use]
pub fn unshown(name: &str) -> String {
    format!(
        "“{}” has letters that the pages cannot show: a question mark stands for each. The drawings have them, and so has \
         this page, printed by the browser.",
        short(name)
    )
}

/// What a file is called.
#[must_use]
pub fn file(name: &str, ending: &str) -> String {
    format!("{}.{ending}", plain(name))
}

/// What a page shows, and which of how many it is.
#[must_use]
pub fn title(name: &str, times: u64, nth: usize, count: usize) -> String {
    let times = if times == 1 { "cut once".to_owned() } else { format!("cut {times} times") };
    let page = if count == 1 { String::new() } else { format!(", page {nth} of {count}") };
    format!("{name}: {times}{page}")
}

/// How it is printed.
pub const HOW: &str = "Print at 100 %, not fitted to the page, and measure both bars.";

/// The name of a place where two pages meet: the same on both. Pages beside each other by letters, pages below each
/// other by numbers, with the row or column behind.
#[must_use]
pub fn join(axis: usize, seam: usize, across: usize) -> String {
    let letter = |n: usize| char::from(b'A' + u8::try_from(n % 26).unwrap_or(0));
    if axis == 0 { format!("{}{}", letter(seam), across + 1) } else { format!("{}{}", seam + 1, letter(across)) }
}
