//! Reading JSON into plain data. An object is read where an object is due, and nothing else: the library would take an
//! array of its values as well, which nobody writes, and the code for that was an eighth of all that reads files.

use std::fmt;

use serde::de::{
    Deserialize, DeserializeSeed, Deserializer, EnumAccess, Error, MapAccess, SeqAccess, VariantAccess, Visitor,
};

/// Reads `text` as a `T`.
///
/// # Errors
/// Where and why it is none.
pub fn read<'a, T: Deserialize<'a>>(text: &'a str) -> Result<T, serde_json::Error> {
    let mut from = serde_json::Deserializer::from_str(text);
    let value = T::deserialize(Objects(&mut from))?;
    from.end()?;
    Ok(value)
}

/// A reader that asks for maps where structures are asked for, all the way down.
struct Objects<D>(D);

/// Passes on what holds nothing further.
macro_rules! leaves {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
            self.0.$method(to)
        }
    )*};
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Objects<D> {
    type Error = D::Error;

    leaves! {
        deserialize_any deserialize_bool deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8
        deserialize_u16 deserialize_u32 deserialize_u64 deserialize_f32 deserialize_f64 deserialize_char
        deserialize_str deserialize_string deserialize_bytes deserialize_byte_buf deserialize_unit
        deserialize_identifier deserialize_ignored_any
    }

    fn deserialize_option<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_option(Within(to))
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, name: &'static str, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_unit_struct(name, to)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, Within(to))
    }

    fn deserialize_seq<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_seq(Within(to))
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, len: usize, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple(len, Within(to))
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        len: usize,
        to: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple_struct(name, len, Within(to))
    }

    fn deserialize_map<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(Within(to))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _fields: &'static [&'static str],
        to: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(Within(to))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        to: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_enum(name, variants, Within(to))
    }
}

/// What is read into, or where from, with [`Objects`] for all that is within.
struct Within<T>(T);

impl<'de, V: Visitor<'de>> Visitor<'de> for Within<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_none()
    }

    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_unit()
    }

    fn visit_some<D: Deserializer<'de>>(self, from: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(Objects(from))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, from: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(Objects(from))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, from: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(Within(from))
    }

    fn visit_map<A: MapAccess<'de>>(self, from: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(Within(from))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, from: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(Within(from))
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Within<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(Objects(from))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Within<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_element_seed(Within(seed))
    }

    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Within<A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_key_seed(seed)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.0.next_value_seed(Within(seed))
    }
}

impl<'de, A: EnumAccess<'de>> EnumAccess<'de> for Within<A> {
    type Error = A::Error;
    type Variant = Within<A::Variant>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), A::Error> {
        self.0.variant_seed(seed).map(|(value, rest)| (value, Within(rest)))
    }
}

impl<'de, A: VariantAccess<'de>> VariantAccess<'de> for Within<A> {
    type Error = A::Error;

    fn unit_variant(self) -> Result<(), A::Error> {
        self.0.unit_variant()
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, A::Error> {
        self.0.newtype_variant_seed(Within(seed))
    }

    fn tuple_variant<V: Visitor<'de>>(self, len: usize, to: V) -> Result<V::Value, A::Error> {
        self.0.tuple_variant(len, Within(to))
    }

    fn struct_variant<V: Visitor<'de>>(self, _fields: &'static [&'static str], to: V) -> Result<V::Value, A::Error> {
        self.0.newtype_variant_seed(Fields(to))
    }
}

/// The fields of a variant.
struct Fields<V>(V);

impl<'de, V: Visitor<'de>> DeserializeSeed<'de> for Fields<V> {
    type Value = V::Value;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<V::Value, D::Error> {
        from.deserialize_map(Within(self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::example::example;
    use crate::project::fitting::Shape;
    use crate::project::request::{Board, Project};

    #[test]
    fn objects_are_read_and_arrays_in_their_place_are_not() {
        let project = example().expect("it is a project");
        let text = serde_json::to_string(&project).expect("it is written");
        assert_eq!(read::<Project>(&text).ok(), Some(project));
        assert!(read::<Project>(&format!("{text} 1")).is_err(), "something follows");
        let shape = r#"{"cylinder": {"across": "40 mm", "height": "50 mm"}}"#;
        assert!(matches!(read::<Shape>(shape), Ok(Shape::Cylinder { .. })));
        for wrong in [r#"{"cylinder": ["40 mm", "50 mm"]}"#, r#"{"ball": {}}"#, r#"{"cylinder": {"across": "4 mm"}}"#] {
            assert!(read::<Shape>(wrong).is_err(), "{wrong}");
        }
        assert!(read::<Board>("[null, null]").is_err() && read::<Board>("{}").is_ok());
    }
}
