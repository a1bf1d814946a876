//! What needs the font of papers.

use super::tag::{Tag, button, classed};
use crate::draw::font::Font;
use crate::draw::lacking::Lacking;
use crate::say::pages as say;
use crate::web::font::{Fetched, fetch_again, fetched};

/// Shows something once the font is there: until then a word, and where it did not come a way to try again. Follows how
/// far it has come.
pub fn with_font(then: impl FnOnce(&'static Font) -> Vec<Tag>) -> Vec<Tag> {
    match fetched() {
        Fetched::Here(font) => then(font),
        Fetched::Coming => vec![classed("p", "hint").is("role", "status").with(say::FONT_COMING)],
        Fetched::Missing => vec![
            classed("p", "note caution").is("role", "status").with(say::FONT_MISSING),
            classed("p", "actions").with(button(say::FONT_AGAIN, fetch_again)),
        ],
    }
}

/// So many words with missing letters are named one by one.
const NAMED: usize = 6;

/// What is said of letters that the font lacks, and what helps `instead`.
#[must_use]
pub fn told(all: &[Lacking], instead: &str) -> Vec<String> {
    let named = all.iter().take(NAMED).map(|one| say::lacking(&one.words, &one.letters, one.page, instead));
    let more = all.len().saturating_sub(NAMED);
    named.chain((more > 0).then(|| say::lacking_more(more))).collect()
}
