//! `Strict`: reads as what it stands before does, but for one thing: where an object belongs, a list of its values in a
//! row is no object. What serde derives takes both, and a list says nothing of what its values are.

use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, EnumAccess, Error, MapAccess, SeqAccess, VariantAccess, Visitor};
use serde::forward_to_deserialize_any;

/// Stands before a reader, a visitor, a seed or what gives access to parts, so that all that is within is read so too.
pub struct Strict<T>(pub T);

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Strict<D> {
    type Error = D::Error;

    fn deserialize_any<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_any(Strict(to))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        to: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_map(Strict(to))
    }

    fn deserialize_option<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_option(Strict(to))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, Strict(to))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        words: &'static [&'static str],
        to: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_enum(name, words, Strict(to))
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, to: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_ignored_any(to)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string
        bytes byte_buf unit unit_struct seq tuple tuple_struct map identifier
    }
}

/// Hands on what is no list and no object.
macro_rules! hand_on {
    ($($visit:ident: $value:ty,)*) => {$(
        fn $visit<E: Error>(self, value: $value) -> Result<V::Value, E> {
            self.0.$visit(value)
        }
    )*};
}

impl<'de, V: Visitor<'de>> Visitor<'de> for Strict<V> {
    type Value = V::Value;

    hand_on!(visit_bool: bool, visit_i64: i64, visit_u64: u64, visit_f64: f64, visit_str: &str, visit_string: String,);

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        self.0.expecting(f)
    }

    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_unit()
    }

    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.0.visit_none()
    }

    fn visit_some<D: Deserializer<'de>>(self, from: D) -> Result<V::Value, D::Error> {
        self.0.visit_some(Strict(from))
    }

    fn visit_newtype_struct<D: Deserializer<'de>>(self, from: D) -> Result<V::Value, D::Error> {
        self.0.visit_newtype_struct(Strict(from))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, from: A) -> Result<V::Value, A::Error> {
        self.0.visit_seq(Strict(from))
    }

    fn visit_map<A: MapAccess<'de>>(self, from: A) -> Result<V::Value, A::Error> {
        self.0.visit_map(Strict(from))
    }

    fn visit_enum<A: EnumAccess<'de>>(self, from: A) -> Result<V::Value, A::Error> {
        self.0.visit_enum(Strict(from))
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Strict<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(Strict(from))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_element_seed(Strict(seed))
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_key_seed(seed)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.0.next_value_seed(Strict(seed))
    }
}

impl<'de, A: EnumAccess<'de>> EnumAccess<'de> for Strict<A> {
    type Error = A::Error;
    type Variant = Strict<A::Variant>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), A::Error> {
        let (word, rest) = self.0.variant_seed(seed)?;
        Ok((word, Strict(rest)))
    }
}

/// Reads the fields of a word that has some.
struct Fields<V>(V);

impl<'de, V: Visitor<'de>> DeserializeSeed<'de> for Fields<V> {
    type Value = V::Value;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<V::Value, D::Error> {
        from.deserialize_map(Strict(self.0))
    }
}

impl<'de, A: VariantAccess<'de>> VariantAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn unit_variant(self) -> Result<(), A::Error> {
        self.0.unit_variant()
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, A::Error> {
        self.0.newtype_variant_seed(Strict(seed))
    }

    fn tuple_variant<V: Visitor<'de>>(self, len: usize, to: V) -> Result<V::Value, A::Error> {
        self.0.tuple_variant(len, Strict(to))
    }

    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], to: V) -> Result<V::Value, A::Error> {
        self.0.newtype_variant_seed(Fields(to))
    }
}
