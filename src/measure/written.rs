//! How words stand in a file. The derived code for such types is four times as large, and a
//! visitor downloads it.

/// Reads and writes an enum of plain words: `words!(Wrap { Bare = "bare", Wrapped = "wrapped" });`.
#[macro_export]
macro_rules! words {
    ($name:ident { $($variant:ident = $word:literal),+ $(,)? }) => {
        impl $crate::measure::slot::Slot for $name {
            fn expects(&self) -> &'static str {
                "a string"
            }
            fn text(&mut self, text: &str) -> Result<(), Option<String>> {
                const WORDS: &[(&str, $name)] = &[$(($word, $name::$variant)),+];
                match WORDS.iter().find(|w| w.0 == text) {
                    Some(known) => *self = known.1,
                    None => {
                        let words: Vec<&str> = WORDS.iter().map(|w| w.0).collect();
                        return Err(Some($crate::measure::written::unknown(text, &words)));
                    }
                }
                Ok(())
            }
            fn tree(&self) -> $crate::measure::slot::tree::Tree {
                $crate::measure::slot::tree::Tree::Text(match self { $(Self::$variant => $word),+ }.to_owned())
            }
        }

        impl $crate::measure::slot::Empty for $name {
            fn empty() -> Self {
                const ALL: &[$name] = &[$($name::$variant),+];
                ALL[0]
            }
        }

        $crate::read_by_slot!($name);
    };
}

/// What is said of a word that is none of these.
#[must_use]
pub fn unknown(text: &str, words: &[&str]) -> String {
    format!("“{text}” is none of {}", words.join(", "))
}

#[cfg(test)]
mod tests {
    use crate::measure::system::System;

    #[test]
    fn words_are_read_and_others_said() {
        assert_eq!(serde_json::from_str::<System>("\"metric\"").ok(), Some(System::Metric));
        let said = serde_json::from_str::<System>("\"feet\"").map_err(|e| e.to_string());
        assert!(said.is_err_and(|s| s.starts_with("“feet” is none of inch, metric")));
    }
}
