//! `Placed`: what has its place on the page, and how it is changed into something else.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use web_sys::{Event, Node};

use super::alive::while_alive;
use super::child::{Child, Inside, Kind, Row};
use super::tag::{Element, Set, Tag};

/// What stands on the page.
pub enum Placed {
    /// An element.
    One(Built),
    /// Words, and what they say.
    Text(web_sys::Text, String),
    /// Several, and the mark behind them, before which more can be put.
    Many(Vec<Self>, Node),
    /// What is drawn anew when what it looks at changes.
    Live(Rc<RefCell<Option<Self>>>, Follow),
    /// Rows by their keys.
    Each(Rc<RefCell<Rows>>, Follow),
}

/// Follows for as long as it is held.
type Follow = RenderEffect<()>;

/// Does something now, and again when what it looks at changes, until what it belongs to is taken off the page: a change
/// may be under way by then, and the signals that it looks at are gone.
fn follow(does: Box<dyn Fn()>) -> Follow {
    let does = while_alive(move |()| does());
    RenderEffect::new(move |_| does(()))
}

/// An element on the page.
pub struct Built {
    name: &'static str,
    element: web_sys::Element,
    keys: Vec<&'static str>,
    held: Vec<Held>,
    inside: Vec<Placed>,
}

/// What an element holds on to for one thing that is set on it.
enum Held {
    Fixed(String),
    Follows(#[expect(dead_code, reason = "it follows for as long as it is held")] Follow),
    Listener(&'static str, js_sys::Function),
}

/// Rows by their keys, each with what its signals belong to, and the mark behind them.
pub struct Rows {
    rows: Vec<(String, Built, Owner)>,
    end: Node,
}

fn page() -> web_sys::Document {
    document()
}

/// Puts a node before another, or last.
fn put_in(parent: &Node, node: &Node, before: Option<&Node>) {
    // Both are ours and stand where they are said to stand: nothing is refused.
    let _ = parent.insert_before(node, before);
}

fn take_off(node: &Node) {
    if let Some(parent) = node.parent_node() {
        let _ = parent.remove_child(node);
    }
}

/// Nothing to be seen: a place on the page.
fn mark() -> Node {
    page().create_text_node("").into()
}

impl Inside {
    /// Makes it, not yet on the page.
    #[must_use]
    pub fn build(self) -> Placed {
        match *self.0 {
            Kind::One(tag) => Placed::One(Built::new(tag)),
            Kind::Text(words) => Placed::Text(page().create_text_node(&words), words),
            Kind::Many(all) => Placed::Many(all.into_iter().map(Self::build).collect(), mark()),
            Kind::Live(what) => live(what, None),
            Kind::Each(rows) => each(rows),
        }
    }

    /// Changes what stands where that is possible: what is open stays open, and what has the focus keeps it.
    fn rebuild(self, there: &mut Placed) {
        match (*self.0, there) {
            (Kind::One(tag), Placed::One(old)) if old.fits(&tag.0) => old.change(*tag.0),
            (Kind::Text(words), Placed::Text(text, old)) => {
                if words != *old {
                    text.set_data(&words);
                    *old = words;
                }
            }
            (Kind::Many(all), Placed::Many(old, end)) => {
                let gone = old.len().min(all.len());
                old.drain(gone..).for_each(|one| one.unmount());
                for (nth, new) in all.into_iter().enumerate() {
                    if let Some(old) = old.get_mut(nth) {
                        new.rebuild(old);
                        continue;
                    }
                    let new = new.build();
                    if let Some(parent) = end.parent_node() {
                        new.mount(&parent, Some(end));
                    }
                    old.push(new);
                }
            }
            // What it drew last is changed into what the new one draws first.
            (Kind::Live(what), there @ Placed::Live(..)) => {
                let old = if let Placed::Live(inner, _) = there { inner.take() } else { None };
                *there = live(what, old);
            }
            (new, there) => {
                let new = Self(Box::new(new)).build();
                let first = there.first();
                if let Some(parent) = first.parent_node() {
                    new.mount(&parent, Some(&first));
                }
                there.unmount();
                *there = new;
            }
        }
    }
}

fn live(what: Box<dyn Fn() -> Inside>, old: Option<Placed>) -> Placed {
    let there = Rc::new(RefCell::new(old));
    let held = there.clone();
    let draw = Box::new(move || {
        let new = what();
        let old = there.take();
        let now = match old {
            Some(mut old) => {
                new.rebuild(&mut old);
                old
            }
            None => new.build(),
        };
        there.replace(Some(now));
    });
    Placed::Live(held, follow(draw))
}

fn each(keyed: Box<dyn Fn() -> Vec<Row>>) -> Placed {
    let there = Rc::new(RefCell::new(Rows { rows: Vec::new(), end: mark() }));
    let held = there.clone();
    // Signals of a row belong to the row, not to this run over the keys.
    let parent = Owner::current().unwrap_or_default();
    let draw = Box::new(move || {
        let keyed = keyed();
        untrack(|| there.borrow_mut().turn_into(keyed, &parent));
    });
    Placed::Each(held, follow(draw))
}

impl Rows {
    fn turn_into(&mut self, keyed: Vec<Row>, parent: &Owner) {
        let mut old = std::mem::take(&mut self.rows);
        for (name, row) in keyed {
            let kept = old.iter().position(|o| o.0 == name).map(|at| old.remove(at));
            self.rows.push(kept.unwrap_or_else(|| {
                let owner = parent.with(Owner::new);
                let built = owner.with(|| Built::new(row()));
                (name, built, owner)
            }));
        }
        for (_, built, owner) in old {
            take_off(&built.element);
            // Listeners hold on to it too.
            owner.cleanup();
        }
        if let Some(parent) = self.end.parent_node() {
            self.place(&parent);
        }
    }

    /// Puts each row before the next; one that stands there already is not touched, for it would lose the focus.
    fn place(&self, parent: &Node) {
        let mut next = self.end.clone();
        for (_, built, _) in self.rows.iter().rev() {
            if built.element.next_sibling().as_ref() != Some(&next) {
                put_in(parent, &built.element, Some(&next));
            }
            next = built.element.clone().into();
        }
    }
}

impl Placed {
    /// Puts it on the page, before another node or last.
    pub fn mount(&self, parent: &Node, before: Option<&Node>) {
        match self {
            Self::One(built) => put_in(parent, &built.element, before),
            Self::Text(text, _) => put_in(parent, text, before),
            Self::Many(all, end) => {
                all.iter().for_each(|one| one.mount(parent, before));
                put_in(parent, end, before);
            }
            Self::Live(inner, _) => inner.borrow().iter().for_each(|one| one.mount(parent, before)),
            Self::Each(rows, _) => {
                let rows = rows.borrow();
                put_in(parent, &rows.end, before);
                rows.place(parent);
            }
        }
    }

    fn unmount(&self) {
        match self {
            Self::One(built) => take_off(&built.element),
            Self::Text(text, _) => take_off(text),
            Self::Many(all, end) => {
                all.iter().for_each(Self::unmount);
                take_off(end);
            }
            Self::Live(inner, _) => inner.borrow().iter().for_each(Self::unmount),
            Self::Each(rows, _) => {
                let rows = rows.borrow();
                rows.rows.iter().for_each(|(_, built, _)| take_off(&built.element));
                take_off(&rows.end);
            }
        }
    }

    /// Its first node.
    fn first(&self) -> Node {
        match self {
            Self::One(built) => built.element.clone().into(),
            Self::Text(text, _) => text.clone().into(),
            Self::Many(all, end) => all.first().map_or_else(|| end.clone(), Self::first),
            Self::Live(inner, _) => inner.borrow().as_ref().map_or_else(mark, Self::first),
            Self::Each(rows, _) => {
                let rows = rows.borrow();
                rows.rows.first().map_or_else(|| rows.end.clone(), |(_, built, _)| built.element.clone().into())
            }
        }
    }
}

impl Built {
    fn new(tag: Tag) -> Self {
        let Element { name, class, sets, inside } = *tag.0;
        // A name of ours is a name of an element: where one were not, there would be no page to show.
        let element = page().create_element(name).unwrap_or_else(|_| std::process::abort());
        if !class.is_empty() {
            set(&element, "class", Some(class));
        }
        let keys = sets.iter().map(Set::key).collect();
        let inside: Vec<_> = inside.into_iter().map(Inside::build).collect();
        inside.iter().for_each(|child| child.mount(&element, None));
        // After what is inside: a list can only hold one of its entries.
        let held = sets.into_iter().map(|s| s.put_on(&element)).collect();
        Self { name, element, keys, held, inside }
    }

    /// Whether it could be made into another element by changing what is set.
    fn fits(&self, new: &Element) -> bool {
        self.name == new.name
            && self.inside.len() == new.inside.len()
            && new.sets.iter().map(Set::key).eq(self.keys.iter().copied())
    }

    fn change(&mut self, new: Element) {
        set(&self.element, "class", (!new.class.is_empty()).then_some(new.class));
        for (child, old) in new.inside.into_iter().zip(&mut self.inside) {
            child.rebuild(old);
        }
        for (new, old) in new.sets.into_iter().zip(&mut self.held) {
            match (&new, &*old) {
                // The maker may have changed it since, such as opened what was closed at first.
                (Set::Fixed(_, new), Held::Fixed(old)) if new == old => continue,
                (_, Held::Listener(event, listener)) => {
                    let _ = self.element.remove_event_listener_with_callback(event, listener);
                }
                _ => {}
            }
            *old = new.put_on(&self.element);
        }
    }
}

impl Set {
    fn put_on(self, element: &web_sys::Element) -> Held {
        let element = element.clone();
        let does: Box<dyn Fn()> = match self {
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
        Held::Follows(follow(does))
    }
}

/// Sets an attribute or takes it off, where it is not so already.
fn set(element: &web_sys::Element, key: &str, value: Option<&str>) {
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
fn put(element: &web_sys::Element, key: &str, value: &JsValue) {
    let key = key.into();
    if js_sys::Reflect::get(element, &key).ok().as_ref() != Some(value) {
        let _ = js_sys::Reflect::set(element, &key, value);
    }
}

fn listen(element: &web_sys::Element, event: &str, does: Box<dyn Fn(Event)>) -> js_sys::Function {
    let owner = Owner::current();
    // The element keeps it, and a field that is taken off the page with the focus is left by that: nobody hears it then.
    let does = while_alive(move |event: Event| match &owner {
        Some(owner) => owner.with(|| does(event)),
        None => does(event),
    });
    let listener: js_sys::Function = Closure::<dyn Fn(Event)>::new(does).into_js_value().unchecked_into();
    let _ = element.add_event_listener_with_callback(event, &listener);
    listener
}

/// Puts a view on the page, last in `place`, for as long as the page is there.
pub fn place(view: impl Child, place: &Node) {
    let placed = view.view().build();
    placed.mount(place, None);
    std::mem::forget(placed);
}
