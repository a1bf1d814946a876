//! Letters that papers cannot show: which, in which words, and on which page. Nothing is left out in silence.

use super::drawing::{Drawing, Mark};
use super::font::Font;
use super::pattern::Pattern;

/// Words with letters that the font lacks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lacking {
    /// The letters.
    pub letters: Vec<char>,
    /// The words in which they stand.
    pub words: String,
    /// The first page that has them, counted from 1; none for what stands on many.
    pub page: Option<usize>,
}

/// What pages to be read lack.
#[must_use]
pub fn on_pages(pages: &[Drawing], font: &Font) -> Vec<Lacking> {
    let all = pages.iter().zip(1..).flat_map(|(page, nth)| said(page).map(move |words| (words, Some(nth))));
    found(all, font)
}

/// What pages of patterns lack.
#[must_use]
pub fn on_patterns(patterns: &[Pattern], credit: &str, font: &Font) -> Vec<Lacking> {
    let names = patterns.iter().map(|pattern| pattern.name.clone()).chain([credit.to_owned()]);
    let drawn = patterns.iter().flat_map(|pattern| said(&pattern.drawing));
    found(names.chain(drawn).map(|words| (words, None)), font)
}

fn said(drawing: &Drawing) -> impl Iterator<Item = String> {
    drawing
        .marks
        .iter()
        .filter_map(|mark| if let Mark::Label(label) = mark { Some(label.words.to_string()) } else { None })
}

fn found(all: impl Iterator<Item = (String, Option<usize>)>, font: &Font) -> Vec<Lacking> {
    let mut found: Vec<Lacking> = Vec::new();
    for (words, page) in all {
        let letters = font.lacks(&words);
        if !letters.is_empty() && found.iter().all(|one| one.words != words) {
            found.push(Lacking { letters, words, page });
        }
    }
    found
}
