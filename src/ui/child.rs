//! What can stand inside an element: words, elements, and what follows from signals.

use std::rc::Rc;

use super::tag::Tag;
use super::value::fact;

/// Something to stand on the page, by the place of what it is made of.
pub struct Inside(pub(super) Box<Kind>);

/// What can stand there.
pub(super) enum Kind {
    One(Tag),
    Text(String),
    Many(Vec<Inside>),
    /// What is drawn anew when what it looks at changes.
    Live(Box<dyn Fn() -> Inside>),
    /// Rows by their keys.
    Each(Box<dyn Fn() -> Vec<Row>>),
}

/// A row by its key.
pub(super) type Row = (String, Box<dyn FnOnce() -> Tag>);

/// Something that can stand inside an element.
pub trait Child {
    /// As it is drawn.
    fn view(self) -> Inside;
}

impl Child for Inside {
    fn view(self) -> Inside {
        self
    }
}

impl Child for Tag {
    fn view(self) -> Inside {
        Inside(Box::new(Kind::One(self)))
    }
}

impl Child for Vec<Inside> {
    fn view(self) -> Inside {
        Inside(Box::new(Kind::Many(self)))
    }
}

impl Child for Vec<Tag> {
    fn view(self) -> Inside {
        self.into_iter().map(Child::view).collect::<Vec<Inside>>().view()
    }
}

impl<C: Child> Child for Option<C> {
    fn view(self) -> Inside {
        self.map_or_else(|| Vec::<Inside>::new().view(), Child::view)
    }
}

impl Child for String {
    fn view(self) -> Inside {
        Inside(Box::new(Kind::Text(self)))
    }
}

impl Child for &str {
    fn view(self) -> Inside {
        self.to_owned().view()
    }
}

/// Something that is drawn anew when what it looks at changes.
pub fn live<C: Child>(what: impl Fn() -> C + 'static) -> Inside {
    Inside(Box::new(Kind::Live(Box::new(move || what().view()))))
}

/// Words that are written anew when what they look at changes.
pub fn words(what: impl Fn() -> String + 'static) -> Inside {
    live(what)
}

/// Something that is there while this holds.
pub fn shown<C: Child>(when: impl Fn() -> bool + Send + Sync + 'static, what: impl Fn() -> C + 'static) -> Inside {
    let when = fact(when);
    live(move || when.get().then(&what))
}

/// One for each key, kept while its key is there, in the order of the keys.
pub fn each<K: ToString + 'static>(keys: impl Fn() -> Vec<K> + 'static, row: impl Fn(K) -> Tag + 'static) -> Inside {
    let row = Rc::new(row);
    let rows = move || {
        let named = keys().into_iter().map(|key| {
            let (name, row) = (key.to_string(), row.clone());
            let tag: Box<dyn FnOnce() -> Tag> = Box::new(move || row(key));
            (name, tag)
        });
        named.collect()
    };
    Inside(Box::new(Kind::Each(Box::new(rows))))
}
