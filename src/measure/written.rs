//! How words, and numbers beside words, stand in a file. The derived code for such types is four times as large, and a
//! visitor downloads it.

use std::fmt;

use serde::de::{Deserialize, Deserializer, Error, Visitor};

/// Reads and writes an enum of plain words: `words!(Wrap { Bare = "bare", Wrapped = "wrapped" });`.
#[macro_export]
macro_rules! words {
    ($name:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(match self { $(Self::$variant => $word),+ })
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                const WORDS: &[(&str, $name)] = &[$(($word, $name::$variant)),+];
                let text = String::deserialize(from)?;
                let known = WORDS.iter().find(|w| w.0 == text);
                known.map(|w| w.1).ok_or_else(|| {
                    let words: Vec<&str> = WORDS.iter().map(|w| w.0).collect();
                    serde::de::Error::custom($crate::measure::written::unknown(&text, &words))
                })
            }
        }
    };
}

/// What is said of a word that is none of these.
#[must_use]
pub fn unknown(text: &str, words: &[&str]) -> String {
    format!("“{text}” is none of {}", words.join(", "))
}

/// A number or a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberOrText {
    /// A whole number.
    Number(u32),
    /// A text.
    Text(String),
}

impl<'de> Deserialize<'de> for NumberOrText {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Either;
        impl Visitor<'_> for Either {
            type Value = NumberOrText;
            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a whole number or a text")
            }
            fn visit_u64<E: Error>(self, n: u64) -> Result<NumberOrText, E> {
                u32::try_from(n).map(NumberOrText::Number).map_err(|_| E::custom("that number is too large"))
            }
            fn visit_str<E: Error>(self, text: &str) -> Result<NumberOrText, E> {
                Ok(NumberOrText::Text(text.to_owned()))
            }
        }
        from.deserialize_any(Either)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::system::System;

    #[test]
    fn words_and_numbers_are_read_and_others_said() {
        let read = |text| serde_json::from_str::<NumberOrText>(text).ok();
        assert_eq!(read("7"), Some(NumberOrText::Number(7)));
        assert_eq!(read("\"7 in\""), Some(NumberOrText::Text("7 in".to_owned())));
        for wrong in ["-1", "4294967296", "1.5", "null", "[]"] {
            assert_eq!(read(wrong), None, "{wrong}");
        }
        assert_eq!(serde_json::from_str::<System>("\"metric\"").ok(), Some(System::Metric));
        let said = serde_json::from_str::<System>("\"feet\"").map_err(|e| e.to_string());
        assert!(said.is_err_and(|s| s.starts_with("“feet” is none of inch, metric")));
    }
}
