//! The two spellings of English.

use serde::{Deserialize, Serialize};

/// Which English is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spelling {
    /// As in Britain.
    #[default]
    Uk,
    /// As in the United States.
    Us,
}

impl Spelling {
    /// One of two words.
    #[must_use]
    pub const fn pick(self, uk: &'static str, us: &'static str) -> &'static str {
        match self {
            Self::Uk => uk,
            Self::Us => us,
        }
    }

    /// As the page names its language.
    #[must_use]
    pub const fn language(self) -> &'static str {
        self.pick("en-GB", "en-US")
    }

    /// The spelling for a language that a browser names.
    #[must_use]
    pub fn of_language(language: &str) -> Self {
        if language.to_ascii_lowercase().starts_with("en-us") { Self::Us } else { Self::Uk }
    }
}
