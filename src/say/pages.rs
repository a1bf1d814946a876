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

/// The font of papers is on its way.
pub const FONT_COMING: &str = "Fetching the letters for your papers …";
/// It did not come.
pub const FONT_MISSING: &str =
    "The letters for papers didn’t load. Your design is safe: check your connection and try again.";
/// Fetches it again.
pub const FONT_AGAIN: &str = "Try again";

/// Words with letters that the PDF lacks: which, on which page, and what helps.
#[must_use]
pub fn lacking(words: &str, letters: &[char], page: Option<usize>, instead: &str) -> String {
    let each: Vec<String> = letters.iter().take(8).map(|letter| named(*letter)).collect();
    let more = if letters.len() > 8 { " and more" } else { "" };
    let page = page.map_or(String::new(), |page| format!(" (page {page})"));
    format!("“{}”{page}: the PDF has no {}{more}. A ? stands there. {instead}", short(words), each.join(", "))
}

/// Further words with such letters.
#[must_use]
pub fn lacking_more(count: usize) -> String {
    let lines = if count == 1 { "line" } else { "lines" };
    format!("The same goes for {count} more {lines}.")
}

/// A letter as it looks and by its number; what has no look of its own by its number alone.
fn named(letter: char) -> String {
    let number = format!("U+{:04X}", u32::from(letter));
    let unseen = letter.is_control()
        || letter.is_whitespace()
        || matches!(u32::from(letter), 0xad | 0x300..=0x36f | 0x200b..=0x200f | 0x202a..=0x202e | 0x2060..=0x206f
            | 0xfe00..=0xfe0f | 0xfeff | 0xe0000..=0xe0fff);
    if unseen { number } else { format!("{letter} ({number})") }
}

/// What helps where pages can be printed by the browser.
pub const PRINT_INSTEAD: &str = "“Print” has it, or write it another way.";
/// What helps with patterns.
pub const DRAW_INSTEAD: &str = "The drawings (SVG) have it, or write it another way.";

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
