//! Reading a file into plain data, field by field, with one reader for all types: code that is derived for each type
//! knows more than is asked here, and was a tenth of what a visitor downloads.
//!
//! The same tables say what is written ([`tree`]): then there is one writer too.
//!
//! A type says what it takes (text, number, an object with these fields, a list); [`reader::Into`] walks the file and hands
//! each value to its place. What is wrong is said as the library says it.

pub mod plain;
pub mod reader;
pub mod tree;

use tree::Tree;

/// What a place takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// A text, or a number, or either: the place itself says no.
    Value,
    /// An object with the fields named.
    Object,
    /// An object of any keys.
    Map,
    /// An object with these fields, among others that are passed over.
    SomeOf,
    /// An object with one of the fields named.
    OneOf,
    /// A list.
    List,
}

/// A place that a value of a file goes to.
pub trait Slot {
    /// What it takes.
    fn takes(&self) -> Takes {
        Takes::Value
    }

    /// Whether anything at all may stand here, and is passed over.
    fn passes(&mut self) -> bool {
        false
    }

    /// What it takes, in words, for errors.
    fn expects(&self) -> &'static str;

    /// Takes a text; says what is wrong with it, or nothing where no text is due.
    ///
    /// # Errors
    /// Where it cannot.
    fn text(&mut self, _text: &str) -> Result<(), Option<String>> {
        Err(None)
    }

    /// Takes a whole number.
    ///
    /// # Errors
    /// As [`Self::text`].
    fn number(&mut self, _number: u64) -> Result<(), Option<String>> {
        Err(None)
    }

    /// Takes that there is none; false where something must be there.
    fn none(&mut self) -> bool {
        false
    }

    /// The names of its fields; the first so many must be in the file.
    fn names(&self) -> (&'static [&'static str], usize) {
        (&[], 0)
    }

    /// The place of the field with this number among the names.
    fn field(&mut self, _at: usize) -> Option<Place<'_>> {
        None
    }

    /// The place for a key of its own choice.
    fn entry(&mut self, _key: &str) -> Option<&mut dyn Slot> {
        None
    }

    /// A new place at the end of a list; nothing where it takes no more.
    fn item(&mut self) -> Option<&mut dyn Slot> {
        None
    }

    /// Takes the last place of a list away again.
    fn drop_item(&mut self) {}

    /// What it is now, to be written.
    fn tree(&self) -> Tree {
        Tree::None
    }
}

/// Where the value of a field goes.
pub enum Place<'a> {
    /// Into this.
    Here(&'a mut dyn Slot),
    /// Into these, by their names, all of which must be there.
    Among(&'static [&'static str], Vec<&'a mut dyn Slot>),
}

impl Slot for Place<'_> {
    fn takes(&self) -> Takes {
        Takes::Object
    }
    fn expects(&self) -> &'static str {
        "an object"
    }
    fn names(&self) -> (&'static [&'static str], usize) {
        match self {
            Self::Here(slot) => slot.names(),
            Self::Among(names, _) => (names, names.len()),
        }
    }
    fn field(&mut self, at: usize) -> Option<Place<'_>> {
        match self {
            Self::Here(slot) => slot.field(at),
            Self::Among(_, all) => all.get_mut(at).map(|slot| Place::Here(*slot)),
        }
    }
}

/// What stands where nothing was read yet, and stays where a file leaves a field out.
pub trait Empty: Slot + Sized {
    /// The value.
    fn empty() -> Self;
}

/// Reads and writes a struct of plain fields: `fields!(Board, Self::default(), must {}, may { inch_step, metric_step });`.
/// Those under `told` are written even where they are as usual.
#[macro_export]
macro_rules! fields {
    (
        $name:ident, $empty:expr, must { $($must:ident),* }, $(told { $($told:ident),* },)? may { $($may:ident),* $(,)? }
    ) => {
        $crate::places!($name, Object, $empty, must { $($must),* }, $(told { $($told),* },)? may { $($may),* });
        $crate::read_by_slot!($name);
    };
}

/// As [`fields!`], for what is read by [`reader::read`] alone; `SomeOf` passes over what is not named.
#[macro_export]
macro_rules! places {
    (
        $name:ident, $takes:ident, $empty:expr,
        must { $($must:ident),* }, $(told { $($told:ident),* },)? may { $($may:ident),* $(,)? }
    ) => {
        impl $crate::measure::slot::Slot for $name {
            fn takes(&self) -> $crate::measure::slot::Takes {
                $crate::measure::slot::Takes::$takes
            }
            fn expects(&self) -> &'static str {
                concat!("struct ", stringify!($name))
            }
            fn names(&self) -> (&'static [&'static str], usize) {
                const MUST: &[&str] = &[$(stringify!($must)),*];
                (&[$(stringify!($must),)* $($(stringify!($told),)*)? $(stringify!($may),)*], MUST.len())
            }
            fn field(&mut self, at: usize) -> Option<$crate::measure::slot::Place<'_>> {
                let all: Vec<&mut dyn $crate::measure::slot::Slot> = vec![$(&mut self.$must,)* $($(&mut self.$told,)*)? $(&mut self.$may,)*];
                all.into_iter().nth(at).map($crate::measure::slot::Place::Here)
            }
            fn tree(&self) -> $crate::measure::slot::tree::Tree {
                const ALWAYS: &[&str] = &[$(stringify!($must),)* $($(stringify!($told),)*)?];
                let trees = |it: &Self| vec![
                    $($crate::measure::slot::Slot::tree(&it.$must),)*
                    $($($crate::measure::slot::Slot::tree(&it.$told),)*)?
                    $($crate::measure::slot::Slot::tree(&it.$may),)*
                ];
                let usual = trees(&<Self as $crate::measure::slot::Empty>::empty());
                let names = $crate::measure::slot::Slot::names(self).0;
                $crate::measure::slot::tree::Tree::fields(names, ALWAYS.len(), trees(self), &usual)
            }
        }

        impl $crate::measure::slot::Empty for $name {
            fn empty() -> Self {
                $empty
            }
        }
    };
}

/// Reads and writes a type by its [`Slot`].
#[macro_export]
macro_rules! read_by_slot {
    ($name:ident) => {
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let mut value = <Self as $crate::measure::slot::Empty>::empty();
                let place = $crate::measure::slot::reader::Into(&mut value);
                serde::de::DeserializeSeed::deserialize(place, from)?;
                Ok(value)
            }
        }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                $crate::measure::slot::Slot::tree(self).serialize(to)
            }
        }
    };
}
