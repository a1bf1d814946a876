//! `Tag`: the one kind of element that the page is made of.
//!
//! The library's own markup gives every element a type of its own, and the program then holds the code of each: for this
//! page that was a third of all there is to download. Here all elements are of one type, with what moves boxed; the
//! library still keeps track of what follows from what.

use web_sys::Event;

use super::child::{Child, Inside};

/// What may change of an element, and what it is then; nothing takes an attribute off.
type Live<T> = Box<dyn Fn() -> T>;

/// An element to be.
///
/// Passed on as the place of what it is made of: a page is built by passing elements on, and each would be copied.
pub struct Tag(pub(super) Box<Element>);

/// What an element is made of: its name, what is set on it, and what is inside.
pub(super) struct Element {
    pub(super) name: &'static str,
    pub(super) class: &'static str,
    pub(super) sets: Vec<Set>,
    pub(super) inside: Vec<Inside>,
}

/// One thing that is set on an element.
pub(super) enum Set {
    Fixed(&'static str, String),
    Follows(&'static str, Live<Option<String>>),
    /// What a field holds, as against what it held first.
    Value(Live<String>),
    Checked(Live<bool>),
    Class(&'static str, Live<bool>),
    Painted(Live<String>),
    On(&'static str, Box<dyn Fn(Event)>),
}

/// An element with this name.
#[must_use]
pub fn tag(name: &'static str) -> Tag {
    classed(name, "")
}

/// An element with this name and class.
#[must_use]
pub fn classed(name: &'static str, class: &'static str) -> Tag {
    Tag(Box::new(Element { name, class, sets: Vec::new(), inside: Vec::new() }))
}

/// A button that says this and does that.
#[must_use]
pub fn button(says: impl Child, does: impl Fn() + 'static) -> Tag {
    tag("button").is("type", "button").on("click", move |_| does()).with(says)
}

impl Tag {
    fn set(mut self, set: Set) -> Self {
        self.0.sets.push(set);
        self
    }

    /// Gives it a class.
    #[must_use]
    pub fn class(mut self, class: &'static str) -> Self {
        self.0.class = class;
        self
    }

    /// Sets an attribute once and for all.
    #[must_use]
    pub fn is(self, key: &'static str, value: impl Into<String>) -> Self {
        self.set(Set::Fixed(key, value.into()))
    }

    /// Sets an attribute to what follows; it is off where there is nothing.
    #[must_use]
    pub fn follows(self, key: &'static str, value: impl Fn() -> Option<String> + 'static) -> Self {
        self.set(Set::Follows(key, Box::new(value)))
    }

    /// Sets an attribute without a value, such as `disabled`, while this holds.
    #[must_use]
    pub fn while_so(self, key: &'static str, so: impl Fn() -> bool + 'static) -> Self {
        self.follows(key, move || so().then(String::new))
    }

    /// Says of an attribute for those who hear the page whether this holds.
    #[must_use]
    pub fn says(self, key: &'static str, so: impl Fn() -> bool + 'static) -> Self {
        self.follows(key, move || Some(if so() { "true" } else { "false" }.to_owned()))
    }

    /// Adds a class while this holds.
    #[must_use]
    pub fn class_while(self, class: &'static str, so: impl Fn() -> bool + 'static) -> Self {
        self.set(Set::Class(class, Box::new(so)))
    }

    /// Keeps a field at this text.
    #[must_use]
    pub fn value(self, value: impl Fn() -> String + 'static) -> Self {
        self.set(Set::Value(Box::new(value)))
    }

    /// Keeps a box to tick at this.
    #[must_use]
    pub fn checked(self, so: impl Fn() -> bool + 'static) -> Self {
        self.set(Set::Checked(Box::new(so)))
    }

    /// Fills it with what a painter of ours painted.
    #[must_use]
    pub fn painted(self, painted: impl Fn() -> String + 'static) -> Self {
        self.set(Set::Painted(Box::new(painted)))
    }

    /// Does something when that happens.
    #[must_use]
    pub fn on(self, event: &'static str, does: impl Fn(Event) + 'static) -> Self {
        self.set(Set::On(event, Box::new(does)))
    }

    /// Puts something inside, after what is there.
    #[must_use]
    pub fn with(mut self, child: impl Child) -> Self {
        self.0.inside.push(child.view());
        self
    }
}

impl Set {
    /// What tells it from other things that are set.
    pub(super) const fn key(&self) -> &'static str {
        match self {
            Self::Fixed(key, _) | Self::Follows(key, _) | Self::Class(key, _) | Self::On(key, _) => key,
            Self::Value(_) => "value",
            Self::Checked(_) => "checked",
            Self::Painted(_) => "painted",
        }
    }
}
