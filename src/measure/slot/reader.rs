//! The one reader: it walks a file and hands each value to its place.

use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Unexpected, Visitor};

use super::{Empty, Place, Slot, Takes};

/// Reads `text` as a `T`.
///
/// # Errors
/// Where and why it is none.
pub fn read<T: Empty>(text: &str) -> Result<T, serde_json::Error> {
    let mut value = T::empty();
    read_into(text, &mut value)?;
    Ok(value)
}

fn read_into(text: &str, place: &mut dyn Slot) -> Result<(), serde_json::Error> {
    let mut from = serde_json::Deserializer::from_str(text);
    Into(place).deserialize(&mut from)?;
    from.end()
}

/// Hands what is read to a place.
pub struct Into<'a>(pub &'a mut dyn Slot);

impl<'de> DeserializeSeed<'de> for Into<'_> {
    type Value = ();
    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        if self.0.passes() {
            return from.deserialize_ignored_any(IgnoredAny).map(drop);
        }
        from.deserialize_any(self)
    }
}

impl Into<'_> {
    fn wrong<E: Error>(&self, is: Unexpected, said: Option<String>) -> E {
        said.map_or_else(|| E::invalid_type(is, self), E::custom)
    }
}

impl<'de> Visitor<'de> for Into<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str(self.0.expects())
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<(), E> {
        self.0.text(text).map_err(|said| self.wrong(Unexpected::Str(text), said))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<(), E> {
        self.0.number(number).map_err(|said| self.wrong(Unexpected::Unsigned(number), said))
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        if self.0.none() { Ok(()) } else { Err(self.wrong(Unexpected::Unit, None)) }
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut from: A) -> Result<(), A::Error> {
        if self.0.takes() != Takes::List {
            return Err(self.wrong(Unexpected::Seq, None));
        }
        while let Some(item) = self.0.item() {
            if from.next_element_seed(Into(item))?.is_none() {
                self.0.drop_item();
                return Ok(());
            }
        }
        // It takes no more: the rest is passed over.
        while from.next_element::<IgnoredAny>()?.is_some() {}
        Ok(())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut from: A) -> Result<(), A::Error> {
        let takes = self.0.takes();
        let (names, must) = self.0.names();
        let mut seen = 0_u64;
        while let Some(key) = from.next_key::<String>()? {
            let place = match takes {
                Takes::Map => self.0.entry(&key).map(Place::Here),
                Takes::Object | Takes::SomeOf | Takes::OneOf => match names.iter().position(|n| *n == key) {
                    Some(at) if seen >> at & 1 == 1 => return Err(Error::duplicate_field(names[at])),
                    Some(at) => {
                        seen |= 1 << at;
                        self.0.field(at)
                    }
                    None if takes == Takes::SomeOf => {
                        from.next_value::<IgnoredAny>()?;
                        continue;
                    }
                    None => return Err(Error::unknown_field(&key, names)),
                },
                Takes::Value | Takes::List => None,
            };
            match place {
                Some(Place::Here(slot)) => from.next_value_seed(Into(slot))?,
                Some(mut among) => from.next_value_seed(Into(&mut among))?,
                None => return Err(self.wrong(Unexpected::Map, None)),
            }
        }
        let whole = match takes {
            Takes::OneOf => seen.count_ones() == 1,
            Takes::Value | Takes::List => false,
            Takes::Object | Takes::SomeOf | Takes::Map => true,
        };
        match names.iter().take(must).enumerate().find(|(at, _)| seen >> at & 1 == 0) {
            Some((_, name)) => Err(Error::missing_field(name)),
            None if whole => Ok(()),
            None => Err(self.wrong(Unexpected::Map, None)),
        }
    }
}
