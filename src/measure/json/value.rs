//! How values stand in JSON where deriving does not say it: texts that are read by rules of their own, a number or a
//! text, and lists that are bounded, so that no file fills the memory.

use std::fmt;
use std::marker::PhantomData;

use serde::de::{Deserialize, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Visitor};

/// As many as any list holds that is kept (`keep::limits`): of a longer one, one more is read, so that it is refused,
/// and the rest takes no memory.
pub const MOST: usize = 20_000;

/// What is read from a text, or from a whole number too.
struct Read<T, R, N> {
    /// What belongs here, in words.
    expects: &'static str,
    text: R,
    number: Option<N>,
    of: PhantomData<T>,
}

impl<T, R, N> Visitor<'_> for Read<T, R, N>
where
    R: FnOnce(&str) -> Result<T, String>,
    N: FnOnce(u32) -> T,
{
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str(self.expects)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        (self.text)(text).map_err(E::custom)
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<T, E> {
        use serde::de::Unexpected::Unsigned;
        match (self.number, u32::try_from(number)) {
            (Some(of), Ok(number)) => Ok(of(number)),
            (Some(_), Err(_)) => Err(E::invalid_value(Unsigned(number), &"u32")),
            (None, _) => Err(E::invalid_type(Unsigned(number), &self.expects)),
        }
    }
}

/// Reads a text by a rule of its own, which says what is wrong with it.
///
/// # Errors
/// Where there is no text, or the rule does not take it.
pub fn text<'de, D: Deserializer<'de>, T>(
    from: D,
    rule: impl FnOnce(&str) -> Result<T, String>,
) -> Result<T, D::Error> {
    from.deserialize_str(Read { expects: "a text", text: rule, number: None::<fn(u32) -> T>, of: PhantomData })
}

/// Reads what is a whole number or a text.
///
/// # Errors
/// Where it is neither, or the rule does not take the text.
pub fn number_or_text<'de, D: Deserializer<'de>, T>(
    from: D,
    number: impl FnOnce(u32) -> T,
    rule: impl FnOnce(&str) -> Result<T, String>,
) -> Result<T, D::Error> {
    let read = Read { expects: "a whole number or a text", text: rule, number: Some(number), of: PhantomData };
    from.deserialize_any(read)
}

/// A collection that entries are put into one by one.
struct Bounded<C, E>(PhantomData<(C, E)>);

impl<'de, T, C> Visitor<'de> for Bounded<C, T>
where
    T: Deserialize<'de>,
    C: Default + Extend<T>,
{
    type Value = C;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a sequence")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<C, A::Error> {
        let mut all = C::default();
        for _ in 0..=MOST {
            let Some(one) = from.next_element()? else { return Ok(all) };
            all.extend([one]);
        }
        // It takes no more: the rest is passed over.
        while from.next_element::<IgnoredAny>()?.is_some() {}
        Ok(all)
    }
}

/// Reads a list, at most one more than [`MOST`] of it.
///
/// # Errors
/// Where it is no list, or one of it cannot be read.
pub fn list<'de, D, T, C>(from: D) -> Result<C, D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de>,
    C: Default + Extend<T> + IntoIterator<Item = T>,
{
    from.deserialize_seq(Bounded::<C, T>(PhantomData))
}

/// Named entries, put in one by one.
struct Named<C, T>(PhantomData<(C, T)>);

impl<'de, T, C> Visitor<'de> for Named<C, T>
where
    T: Deserialize<'de>,
    C: Default + Extend<(String, T)>,
{
    type Value = C;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a map")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<C, A::Error> {
        let mut all = C::default();
        for _ in 0..=MOST {
            let Some(entry) = from.next_entry::<String, T>()? else { return Ok(all) };
            all.extend([entry]);
        }
        while from.next_entry::<IgnoredAny, IgnoredAny>()?.is_some() {}
        Ok(all)
    }
}

/// Reads named entries, at most one more than [`MOST`] of them.
///
/// # Errors
/// Where there are none, or one of them cannot be read.
pub fn named<'de, D, T, C>(from: D) -> Result<C, D::Error>
where
    D: Deserializer<'de>,
    T: Deserialize<'de>,
    C: Default + Extend<(String, T)> + IntoIterator<Item = (String, T)>,
{
    from.deserialize_map(Named::<C, T>(PhantomData))
}

/// Whether a value is as usual, and so is not written down.
pub fn is_usual<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// Whether a number is this one, and so is not written down.
#[must_use]
pub const fn is<const N: u32>(number: &u32) -> bool {
    *number == N
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::Deserializer as Json;

    fn numbers(text: &str) -> Result<Vec<u32>, String> {
        list(&mut Json::from_str(text)).map_err(|e| e.to_string())
    }

    #[test]
    fn a_list_is_read_up_to_one_too_many() {
        let text = |n: usize| format!("[{}]", vec!["1"; n].join(","));
        for (n, read) in [(0, 0), (3, 3), (MOST, MOST), (MOST + 1, MOST + 1), (MOST + 9, MOST + 1)] {
            assert_eq!(numbers(&text(n)).map(|all| all.len()), Ok(read));
        }
        assert!(numbers("7").is_err_and(|e| e.contains("expected a sequence")));
        assert!(numbers("[1,\"a\"]").is_err());
    }

    #[test]
    fn a_number_or_a_text() {
        let read = |text: &str| {
            let rule = |t: &str| t.len().try_into().map_err(|_| "too long".to_owned());
            number_or_text(&mut Json::from_str(text), |n| n, rule).map_err(|e| e.to_string())
        };
        assert_eq!((read("7"), read("\"seven\"")), (Ok(7), Ok(5)));
        assert!(read("4294967296").is_err_and(|e| e.contains("integer `4294967296`, expected u32")));
        assert!(read("-1").is_err_and(|e| e.contains("expected a whole number or a text")));
    }
}
