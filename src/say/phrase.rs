//! `Phrase`: words with lengths among them, so that a reader can stack the fractions.

use std::fmt;

use crate::measure::show::Figure;

/// One run of words or one length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Bit {
    /// Plain words, never markup.
    Words(String),
    /// A length with its unit.
    Figure(Figure),
    /// A length whose unit stands elsewhere.
    Bare(Figure),
}

/// A sentence or a label: words and lengths in order.
///
/// ```
/// use snugfold::measure::{length::Length, show::Figure, system::System};
/// use snugfold::say::phrase::Phrase;
/// let at = Figure::of(Length::inches(17, 4), System::Inch);
/// let phrase = Phrase::words("Score at ").with(at).with(".");
/// assert_eq!(phrase.to_string(), "Score at 4 1/4 in.");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Phrase {
    /// What is said, in order.
    pub bits: Vec<Bit>,
}

impl Phrase {
    /// Only words.
    #[must_use]
    pub fn words(words: impl Into<String>) -> Self {
        Self { bits: vec![Bit::Words(words.into())] }
    }

    /// With more behind it.
    #[must_use]
    pub fn with(mut self, more: impl Into<Self>) -> Self {
        self.bits.extend(more.into().bits);
        self
    }

    /// Several phrases with `between` among them, and `last` before the last.
    #[must_use]
    pub fn list(all: impl IntoIterator<Item = Self>, between: &str, last: &str) -> Self {
        let all: Vec<Self> = all.into_iter().collect();
        let count = all.len();
        let mut joined = Self::default();
        for (i, one) in all.into_iter().enumerate() {
            if i > 0 {
                joined = joined.with(if i + 1 == count { last } else { between });
            }
            joined = joined.with(one);
        }
        joined
    }

    /// A length without its unit.
    #[must_use]
    pub fn bare(figure: Figure) -> Self {
        Self { bits: vec![Bit::Bare(figure)] }
    }
}

impl From<&str> for Phrase {
    fn from(words: &str) -> Self {
        Self::words(words)
    }
}

impl From<String> for Phrase {
    fn from(words: String) -> Self {
        Self::words(words)
    }
}

impl From<Figure> for Phrase {
    fn from(figure: Figure) -> Self {
        Self { bits: vec![Bit::Figure(figure)] }
    }
}

impl fmt::Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.bits.iter().try_for_each(|bit| match bit {
            Bit::Words(words) => f.write_str(words),
            Bit::Figure(figure) => write!(f, "{figure}"),
            Bit::Bare(figure) => f.write_str(&figure.bare()),
        })
    }
}

/// Puts words and lengths together: `phrase!["Score at ", figure, "."]`.
#[macro_export]
macro_rules! phrase {
    ($($bit:expr),* $(,)?) => {
        $crate::say::phrase::Phrase::default()$(.with($bit))*
    };
}
