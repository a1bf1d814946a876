//! `Tag`: the one kind of element that the page is made of.
//!
//! The library's own markup gives every element a type of its own, and the program then holds the code of each: for this
//! page that was a third of all there is to download. Here all elements are of one type, with what moves boxed; the
//! library still keeps track of what follows from what, draws texts and lists, and mounts.

use leptos::prelude::*;
use leptos::tachys::html::attribute::Attribute;
use leptos::tachys::html::attribute::any_attribute::AnyAttribute;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::renderer::dom::{Element, Node};
use leptos::tachys::view::add_attr::AddAnyAttr;
use leptos::tachys::view::any_view::AnyViewState;
use leptos::tachys::view::{Mountable, Position, PositionState};
use wasm_bindgen::prelude::*;
use web_sys::Event;

use super::child::Child;

/// What may change of an element, and what it is then; nothing takes an attribute off.
type Live<T> = Box<dyn Fn() -> T + Send>;

/// An element to be: its name, what is set on it, and what is inside.
pub struct Tag {
    name: &'static str,
    class: &'static str,
    sets: Vec<Set>,
    inside: Vec<AnyView>,
}

/// One thing that is set on an element.
enum Set {
    Fixed(&'static str, String),
    Follows(&'static str, Live<Option<String>>),
    /// What a field holds, as against what it held first.
    Value(Live<String>),
    Checked(Live<bool>),
    Class(&'static str, Live<bool>),
    Painted(Live<String>),
    On(&'static str, Box<dyn Fn(Event) + Send>),
}

/// An element with this name.
#[must_use]
pub fn tag(name: &'static str) -> Tag {
    Tag { name, class: "", sets: Vec::new(), inside: Vec::new() }
}

/// An element with this name and class.
#[must_use]
pub fn classed(name: &'static str, class: &'static str) -> Tag {
    Tag { class, ..tag(name) }
}

/// A button that says this and does that.
#[must_use]
pub fn button(says: impl Child, does: impl Fn() + Send + 'static) -> Tag {
    tag("button").is("type", "button").on("click", move |_| does()).with(says)
}

impl Tag {
    /// Gives it a class.
    #[must_use]
    pub fn class(mut self, class: &'static str) -> Self {
        self.class = class;
        self
    }

    /// Sets an attribute once and for all.
    #[must_use]
    pub fn is(mut self, key: &'static str, value: impl Into<String>) -> Self {
        self.sets.push(Set::Fixed(key, value.into()));
        self
    }

    /// Sets an attribute to what follows; it is off where there is nothing.
    #[must_use]
    pub fn follows(mut self, key: &'static str, value: impl Fn() -> Option<String> + Send + 'static) -> Self {
        self.sets.push(Set::Follows(key, Box::new(value)));
        self
    }

    /// Sets an attribute without a value, such as `disabled`, while this holds.
    #[must_use]
    pub fn while_so(self, key: &'static str, so: impl Fn() -> bool + Send + 'static) -> Self {
        self.follows(key, move || so().then(String::new))
    }

    /// Says of an attribute for those who hear the page whether this holds.
    #[must_use]
    pub fn says(self, key: &'static str, so: impl Fn() -> bool + Send + 'static) -> Self {
        self.follows(key, move || Some(if so() { "true" } else { "false" }.to_owned()))
    }

    /// Adds a class while this holds.
    #[must_use]
    pub fn class_while(mut self, class: &'static str, so: impl Fn() -> bool + Send + 'static) -> Self {
        self.sets.push(Set::Class(class, Box::new(so)));
        self
    }

    /// Keeps a field at this text.
    #[must_use]
    pub fn value(mut self, value: impl Fn() -> String + Send + 'static) -> Self {
        self.sets.push(Set::Value(Box::new(value)));
        self
    }

    /// Keeps a box to tick at this.
    #[must_use]
    pub fn checked(mut self, so: impl Fn() -> bool + Send + 'static) -> Self {
        self.sets.push(Set::Checked(Box::new(so)));
        self
    }

    /// Fills it with what a painter of ours painted.
    #[must_use]
    pub fn painted(mut self, painted: impl Fn() -> String + Send + 'static) -> Self {
        self.sets.push(Set::Painted(Box::new(painted)));
        self
    }

    /// Does something when that happens.
    #[must_use]
    pub fn on(mut self, event: &'static str, does: impl Fn(Event) + Send + 'static) -> Self {
        self.sets.push(Set::On(event, Box::new(does)));
        self
    }

    /// Puts something inside, after what is there.
    #[must_use]
    pub fn with(mut self, child: impl Child) -> Self {
        self.inside.push(child.view());
        self
    }

    /// Whether an element that stands could be made into this one by changing what is set.
    fn fits(&self, there: &Standing) -> bool {
        self.name == there.name
            && self.inside.len() == there.inside.len()
            && self.sets.iter().map(Set::key).eq(there.keys.iter().copied())
    }
}

impl Set {
    const fn key(&self) -> &'static str {
        match self {
            Self::Fixed(key, _) | Self::Follows(key, _) | Self::Class(key, _) | Self::On(key, _) => key,
            Self::Value(_) => "value",
            Self::Checked(_) => "checked",
            Self::Painted(_) => "painted",
        }
    }

    fn put_on(self, element: &Element) -> Held {
        let element = element.clone();
        let follow: Box<dyn Fn()> = match self {
            Self::Fixed(key, value) => {
                set(&element, key, Some(&value));
                return Held::Fixed(value);
            }
            Self::On(event, does) => return Held::Listener(event, listen(&element, event, does)),
            Self::Follows(key, value) => Box::new(move || set(&element, key, value().as_deref())),
            Self::Value(value) => Box::new(move || put(&element, "value", &value().into())),
            Self::Checked(so) => Box::new(move || put(&element, "checked", &so().into())),
            Self::Class(class, so) => Box::new(move || {
                let so = so();
                // A class of ours is no empty word and has no spaces.
                let _ = if so { element.class_list().add_1(class) } else { element.class_list().remove_1(class) };
            }),
            Self::Painted(painted) => Box::new(move || element.set_inner_html(&painted())),
        };
        Held::Follows(RenderEffect::new(move |_| follow()))
    }
}

/// Sets an attribute or takes it off, where it is not so already.
fn set(element: &Element, key: &str, value: Option<&str>) {
    if element.get_attribute(key).as_deref() == value {
        return;
    }
    // Names of attributes are ours, and none is refused.
    let _ = match value {
        Some(value) => element.set_attribute(key, value),
        None => element.remove_attribute(key),
    };
}

/// Sets a property where it is not so already: a field that is set to what it holds would lose the cursor's place.
fn put(element: &Element, key: &str, value: &JsValue) {
    let key = key.into();
    if js_sys::Reflect::get(element, &key).ok().as_ref() != Some(value) {
        let _ = js_sys::Reflect::set(element, &key, value);
    }
}

fn listen(element: &Element, event: &str, does: Box<dyn Fn(Event) + Send>) -> js_sys::Function {
    let owner = Owner::current();
    let does = move |event: Event| match &owner {
        Some(owner) => owner.with(|| does(event)),
        None => does(event),
    };
    // The element keeps it: some events come when the element has been taken off the page.
    let listener: js_sys::Function = Closure::<dyn Fn(Event)>::new(does).into_js_value().unchecked_into();
    let _ = element.add_event_listener_with_callback(event, &listener);
    listener
}

/// What an element holds on to for one thing that is set on it.
enum Held {
    Fixed(String),
    Follows(#[expect(dead_code, reason = "it follows for as long as it is held")] RenderEffect<()>),
    Listener(&'static str, js_sys::Function),
}

/// An element on the page.
pub struct Standing {
    name: &'static str,
    element: Element,
    keys: Vec<&'static str>,
    held: Vec<Held>,
    inside: Vec<AnyViewState>,
}

impl Render for Tag {
    type State = Standing;

    fn build(self) -> Standing {
        let element = leptos::tachys::renderer::Rndr::create_element(self.name, None);
        if !self.class.is_empty() {
            set(&element, "class", Some(self.class));
        }
        let keys = self.sets.iter().map(Set::key).collect();
        let held = self.sets.into_iter().map(|s| s.put_on(&element)).collect();
        let mut inside: Vec<_> = self.inside.into_iter().map(Render::build).collect();
        for child in &mut inside {
            child.mount(&element, None);
        }
        Standing { name: self.name, element, keys, held, inside }
    }

    /// Changes what stands where that is possible: what is open stays open, and what has the focus keeps it.
    fn rebuild(self, there: &mut Standing) {
        if !self.fits(there) {
            let mut new = self.build();
            there.insert_before_this(&mut new);
            there.unmount();
            *there = new;
            return;
        }
        set(&there.element, "class", (!self.class.is_empty()).then_some(self.class));
        for (new, old) in self.sets.into_iter().zip(&mut there.held) {
            match (&new, &*old) {
                // The maker may have changed it since, such as opened what was closed at first.
                (Set::Fixed(_, new), Held::Fixed(old)) if new == old => continue,
                (_, Held::Listener(event, listener)) => {
                    let _ = there.element.remove_event_listener_with_callback(event, listener);
                }
                _ => {}
            }
            *old = new.put_on(&there.element);
        }
        for (child, old) in self.inside.into_iter().zip(&mut there.inside) {
            child.rebuild(old);
        }
    }
}

impl Mountable for Standing {
    fn unmount(&mut self) {
        self.element.unmount();
    }

    fn mount(&mut self, parent: &Element, marker: Option<&Node>) {
        self.element.mount(parent, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        self.element.insert_before_this(child)
    }

    fn elements(&self) -> Vec<Element> {
        vec![self.element.clone()]
    }
}

impl AddAnyAttr for Tag {
    type Output<A: Attribute> = Self;

    fn add_any_attr<A: Attribute>(self, _: A) -> Self {
        self
    }
}

/// The page is drawn in the browser only: there is no markup to be sent, and none to be taken up.
impl RenderHtml for Tag {
    type AsyncOutput = Self;
    type Owned = Self;
    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Self {
        self
    }

    fn to_html_with_buf(self, _: &mut String, _: &mut Position, _: bool, _: bool, _: Vec<AnyAttribute>) {}

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Standing {
        self.build()
    }

    fn into_owned(self) -> Self {
        self
    }
}
