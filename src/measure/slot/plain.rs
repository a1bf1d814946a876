//! Texts, numbers, lists and what may be missing, as places.

use crate::measure::few::Few;

use super::tree::Tree;
use super::{Empty, Place, Slot, Takes};

/// Whether something is there, whatever it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Seen(pub bool);

impl Slot for Seen {
    fn passes(&mut self) -> bool {
        self.0 = true;
        true
    }
    fn expects(&self) -> &'static str {
        "anything"
    }
}

impl Empty for Seen {
    fn empty() -> Self {
        Self(false)
    }
}

impl Slot for String {
    fn expects(&self) -> &'static str {
        "a string"
    }
    fn text(&mut self, text: &str) -> Result<(), Option<String>> {
        text.clone_into(self);
        Ok(())
    }
    fn tree(&self) -> Tree {
        Tree::Text(self.clone())
    }
}

impl Empty for String {
    fn empty() -> Self {
        Self::new()
    }
}

/// Whole numbers of a width.
macro_rules! numbers {
    ($($number:ident)*) => {$(
        impl Slot for $number {
            fn expects(&self) -> &'static str {
                stringify!($number)
            }
            fn number(&mut self, number: u64) -> Result<(), Option<String>> {
                *self = $number::try_from(number).map_err(|_| Some("that number is too large".to_owned()))?;
                Ok(())
            }
            fn tree(&self) -> Tree {
                Tree::Number(u64::from(*self))
            }
        }

        impl Empty for $number {
            fn empty() -> Self {
                0
            }
        }
    )*};
}

numbers!(u16 u32 u64);

impl<T: Empty> Slot for Option<T> {
    fn takes(&self) -> Takes {
        self.as_ref().map_or_else(|| T::empty().takes(), Slot::takes)
    }
    fn expects(&self) -> &'static str {
        self.as_ref().map_or_else(|| T::empty().expects(), Slot::expects)
    }
    fn text(&mut self, text: &str) -> Result<(), Option<String>> {
        self.get_or_insert_with(T::empty).text(text)
    }
    fn number(&mut self, number: u64) -> Result<(), Option<String>> {
        self.get_or_insert_with(T::empty).number(number)
    }
    fn none(&mut self) -> bool {
        *self = None;
        true
    }
    fn names(&self) -> (&'static [&'static str], usize) {
        self.as_ref().map_or_else(|| T::empty().names(), Slot::names)
    }
    fn field(&mut self, at: usize) -> Option<Place<'_>> {
        self.get_or_insert_with(T::empty).field(at)
    }
    fn tree(&self) -> Tree {
        self.as_ref().map_or(Tree::None, Slot::tree)
    }
}

/// As many as any list holds that is kept (`keep::limits`): of a longer one, one more is read, so that it is refused, and
/// the rest takes no memory.
const MOST: usize = 20_000;

impl<T: Empty> Slot for Vec<T> {
    fn takes(&self) -> Takes {
        Takes::List
    }
    fn expects(&self) -> &'static str {
        "a sequence"
    }
    fn item(&mut self) -> Option<&mut dyn Slot> {
        if self.len() > MOST {
            return None;
        }
        self.push(T::empty());
        self.last_mut().map(|last| last as &mut dyn Slot)
    }
    fn drop_item(&mut self) {
        self.pop();
    }
    fn tree(&self) -> Tree {
        Tree::List(self.iter().map(Slot::tree).collect())
    }
}

impl<T: Empty> Slot for Few<String, T> {
    fn takes(&self) -> Takes {
        Takes::Map
    }
    fn expects(&self) -> &'static str {
        "a map"
    }
    fn entry(&mut self, key: &str) -> Option<&mut dyn Slot> {
        self.insert(key.to_owned(), T::empty());
        self.get_mut(key).map(|value| value as &mut dyn Slot)
    }
    fn tree(&self) -> Tree {
        Tree::Object(self.iter().map(|(key, value)| (key.clone(), value.tree())).collect())
    }
}
