//! `Hand`: for which hand the work is told and drawn. For the left one everything is mirrored.

use super::phrase::{Bit, Phrase};

/// The hand that holds the knife.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hand {
    /// The fence and the first measure are at the left.
    #[default]
    Right,
    /// They are at the right: the whole table mirrored.
    Left,
}

/// What is said instead in a mirror, both ways.
const MIRRORED: [(&str, &str); 3] =
    [("left", "right"), ("clockwise", "anticlockwise"), ("clockwise", "counterclockwise")];

impl Hand {
    /// Words as this hand needs them.
    ///
    /// ```
    /// use snugfold::say::hand::Hand;
    /// let words = "Left edge at the right fence, a quarter anticlockwise; just right.";
    /// assert_eq!(Hand::Right.words(words), words);
    /// assert_eq!(Hand::Left.words(words), "Right edge at the left fence, a quarter clockwise; just right.");
    /// ```
    #[must_use]
    pub fn words(self, words: &str) -> String {
        if self == Self::Right {
            return words.to_owned();
        }
        let mut told = String::with_capacity(words.len() + 8);
        for piece in words.split_inclusive(|c: char| !c.is_ascii_alphabetic()) {
            let end = piece.trim_end_matches(|c: char| c.is_ascii_alphabetic());
            let (word, end) = match end.chars().next_back() {
                Some(mark) => piece.split_at(piece.len() - mark.len_utf8()),
                None => (piece, ""),
            };
            // No side is meant.
            let just = told.ends_with("just ") || told.ends_with("Just ");
            match MIRRORED.iter().find_map(|(a, b)| other(word, a, b)).filter(|_| !just) {
                Some(other) if word.starts_with(|c: char| c.is_ascii_uppercase()) => {
                    told.push_str(&other[..1].to_ascii_uppercase());
                    told.push_str(&other[1..]);
                }
                Some(other) => told.push_str(other),
                None => told.push_str(word),
            }
            told.push_str(end);
        }
        told
    }

    /// A phrase as this hand needs it.
    #[must_use]
    pub fn phrase(self, mut phrase: Phrase) -> Phrase {
        for bit in &mut phrase.bits {
            if let Bit::Words(words) = bit {
                *words = self.words(words);
            }
        }
        phrase
    }
}

/// The other of two words, where `word` is one of them.
fn other<'a>(word: &str, a: &'a str, b: &'a str) -> Option<&'a str> {
    if word.eq_ignore_ascii_case(a) {
        Some(b)
    } else if word.eq_ignore_ascii_case(b) {
        Some(a)
    } else {
        None
    }
}
