//! `State` and `Fact`: what the page looks at: what is set by hand, and what follows from it.
//!
//! The library's signals are made anew for each type of value, and the program then holds the code of each: a tenth of
//! all there is to download. Here the library keeps values of one type, which these two give back as what they are.

use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

use leptos::prelude::*;

use super::alive::while_alive;

/// A value of any type, with the way to tell whether two are alike.
#[derive(Clone)]
pub struct Kept {
    value: Arc<dyn Any + Send + Sync>,
    alike: fn(&dyn Any, &dyn Any) -> bool,
}

impl Kept {
    /// A value that follows from others.
    fn fact<T: PartialEq + Send + Sync + 'static>(value: T) -> Self {
        let alike = |a: &dyn Any, b: &dyn Any| a.downcast_ref::<T>() == b.downcast_ref::<T>();
        Self { value: Arc::new(value), alike }
    }

    /// A value that is set; each counts as another.
    fn state<T: Send + Sync + 'static>(value: T) -> Self {
        Self { value: Arc::new(value), alike: |_, _| false }
    }

    fn as_is<T: 'static>(&self) -> &T {
        // Nothing else is ever put where a `T` is looked for: the two types below see to it.
        self.value.downcast_ref().unwrap_or_else(|| std::process::abort())
    }
}

impl PartialEq for Kept {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.value, &other.value) || (self.alike)(&*self.value, &*other.value)
    }
}

/// A value that can be looked at and followed; `S` is the library's own, of the one type.
pub struct Value<S, T>(S, PhantomData<fn() -> T>);

/// A value that is set by hand, and that others follow.
pub type State<T> = Value<RwSignal<Kept>, T>;

/// A value that follows from others, worked out once for all who look at it.
pub type Fact<T> = Value<Memo<Kept>, T>;

/// Works out a value from others, and anew when they change.
pub fn fact<T: PartialEq + Send + Sync + 'static>(what: impl Fn() -> T + Send + Sync + 'static) -> Fact<T> {
    fact_after(move |_| what())
}

/// The same, from what it was before as well.
pub fn fact_after<T: PartialEq + Send + Sync + 'static>(
    what: impl Fn(Option<&T>) -> T + Send + Sync + 'static,
) -> Fact<T> {
    let what: Follow = Box::new(move |last| Kept::fact(what(last.map(Kept::as_is))));
    Value(Memo::new(what), PhantomData)
}

/// How a value follows from others and from what it was before.
type Follow = Box<dyn Fn(Option<&Kept>) -> Kept + Send + Sync>;

/// Does something now, and again when what it looks at changes, for as long as what it belongs to is there.
pub fn effect(what: impl Fn() + 'static) {
    let what: Box<dyn Fn(())> = Box::new(while_alive(move |()| what()));
    Effect::new(move |_| what(()));
}

impl<S, T> Value<S, T>
where
    S: Get<Value = Kept> + GetUntracked<Value = Kept> + Track + Copy,
    T: 'static,
{
    /// Follows it without looking.
    pub fn track(self) {
        self.0.track();
    }

    /// Looks at it, and follows it.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(self.0.get().as_is())
    }

    /// Looks at it once.
    pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(self.0.get_untracked().as_is())
    }

    /// A copy of it, followed.
    #[must_use]
    pub fn get(self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of it.
    #[must_use]
    pub fn get_untracked(self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }

    /// A copy of it, unless what it belonged to is gone.
    fn try_get_untracked(self) -> Option<T>
    where
        T: Clone,
    {
        Some(self.0.try_get_untracked()?.as_is::<T>().clone())
    }
}

impl<T: Send + Sync + 'static> State<T> {
    /// A value to begin with.
    #[must_use]
    pub fn new(value: T) -> Self {
        Self(RwSignal::new(Kept::state(value)), PhantomData)
    }

    /// Puts another in its place; nothing where what it belonged to is gone.
    pub fn set(self, value: T) {
        self.0.try_set(Kept::state(value));
    }

    /// Changes it.
    pub fn update(self, change: impl FnOnce(&mut T))
    where
        T: Clone,
    {
        if let Some(mut value) = self.try_get_untracked() {
            change(&mut value);
            self.set(value);
        }
    }
}

impl<T: Clone + PartialEq + Send + Sync + 'static> Fact<T> {
    /// A value that never changes.
    #[must_use]
    pub fn fixed(value: T) -> Self {
        fact(move || value.clone())
    }
}

impl<T: Clone + PartialEq + Send + Sync + 'static> From<State<T>> for Fact<T> {
    fn from(state: State<T>) -> Self {
        fact(move || state.get())
    }
}

impl<S: Copy, T> Clone for Value<S, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<S: Copy, T> Copy for Value<S, T> {}
