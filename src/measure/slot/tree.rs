//! `Tree`: what is written to a file, by the same tables by which it is read.

use serde::ser::{Serialize, SerializeMap, SerializeSeq, Serializer};

/// A value of a file.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Tree {
    /// There is none.
    #[default]
    None,
    /// A text.
    Text(String),
    /// A whole number.
    Number(u64),
    /// A list.
    List(Vec<Self>),
    /// An object.
    Object(Vec<(String, Self)>),
}

impl Tree {
    /// An object with these fields: the first `always` of them whatever they are, the others where they are not `usual`.
    #[must_use]
    pub fn fields(names: &[&str], always: usize, all: Vec<Self>, usual: &[Self]) -> Self {
        let named = names.iter().zip(all).zip(usual).enumerate();
        let written = named.filter(|(at, ((_, is), usual))| *at < always || is != *usual);
        Self::Object(written.map(|(_, ((name, is), _))| ((*name).to_owned(), is)).collect())
    }

    /// The same object with one more field behind the others, where there is anything to say.
    #[must_use]
    pub fn with(mut self, name: &str, value: Self) -> Self {
        if let (Self::Object(fields), false) = (&mut self, matches!(value, Self::None)) {
            fields.push((name.to_owned(), value));
        }
        self
    }

    /// Its text, on one line: to set it out as well would be a second writer to download.
    ///
    /// ```
    /// use snugfold::measure::slot::tree::Tree;
    /// let file = Tree::Object(Vec::new()).with("a", Tree::Number(1)).with("b", Tree::None);
    /// assert_eq!(file.text(), r#"{"a":1}"#);
    /// ```
    #[must_use]
    pub fn text(&self) -> String {
        // Texts for keys, and nothing in it that JSON lacks.
        serde_json::to_string(self).unwrap_or_default()
    }
}

impl Serialize for Tree {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::None => to.serialize_unit(),
            Self::Text(text) => to.serialize_str(text),
            Self::Number(number) => to.serialize_u64(*number),
            Self::List(all) => {
                let mut list = to.serialize_seq(None)?;
                all.iter().try_for_each(|one| list.serialize_element(one))?;
                list.end()
            }
            Self::Object(fields) => {
                let mut map = to.serialize_map(None)?;
                fields.iter().try_for_each(|(name, value)| map.serialize_entry(name, value))?;
                map.end()
            }
        }
    }
}
