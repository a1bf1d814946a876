//! What can stand inside an element: words, elements, and what follows from signals.

use std::sync::Arc;

use leptos::prelude::*;

use super::tag::Tag;
use super::value::fact;

/// Something that can stand inside an element.
pub trait Child {
    /// As the library draws it.
    fn view(self) -> AnyView;
}

impl Child for AnyView {
    fn view(self) -> AnyView {
        self
    }
}

impl Child for Tag {
    fn view(self) -> AnyView {
        self.into_any()
    }
}

impl Child for Vec<Tag> {
    fn view(self) -> AnyView {
        self.into_any()
    }
}

impl Child for Vec<AnyView> {
    fn view(self) -> AnyView {
        self.into_any()
    }
}

impl<C: Child> Child for Option<C> {
    fn view(self) -> AnyView {
        self.map_or_else(|| Vec::<Tag>::new().into_any(), Child::view)
    }
}

impl Child for String {
    fn view(self) -> AnyView {
        self.into_any()
    }
}

impl Child for &str {
    fn view(self) -> AnyView {
        self.to_owned().into_any()
    }
}

/// Something that is drawn anew when what it looks at changes.
pub fn live<C: Child>(what: impl Fn() -> C + Send + 'static) -> AnyView {
    let what: Box<dyn Fn() -> AnyView + Send> = Box::new(move || what().view());
    what.into_any()
}

/// Words that are written anew when what they look at changes.
pub fn words(what: impl Fn() -> String + Send + 'static) -> AnyView {
    let what: Box<dyn Fn() -> String + Send> = Box::new(what);
    what.into_any()
}

/// Something that is there while this holds.
pub fn shown<C: Child>(
    when: impl Fn() -> bool + Send + Sync + 'static,
    what: impl Fn() -> C + Send + 'static,
) -> AnyView {
    let when = fact(when);
    live(move || when.get().then(&what))
}

/// One for each key, kept while its key is there, in the order of the keys.
pub fn each<K: Clone + Send + Sync + ToString + 'static>(
    keys: impl Fn() -> Vec<K> + Send + 'static,
    row: impl Fn(K) -> Tag + Send + Sync + 'static,
) -> AnyView {
    let row = Arc::new(row);
    let rows: Box<dyn Fn() -> Vec<Row> + Send> = Box::new(move || {
        let named = keys().into_iter().map(|key| {
            let (name, row) = (key.to_string(), row.clone());
            let tag: Arc<dyn Fn() -> Tag + Send + Sync> = Arc::new(move || row(key.clone()));
            (name, tag)
        });
        named.collect()
    });
    let rows = ForProps::builder().each(rows).key(|row: &Row| row.0.clone()).children(|row: Row| (row.1)());
    For(rows.build()).into_any()
}

/// A row by its key.
type Row = (String, Arc<dyn Fn() -> Tag + Send + Sync>);
