//! Saved and shared: the sets on this device, the link, the files.

use leptos::prelude::*;

use super::app::new_set;
use super::child::{each, live, shown};
use super::either::either;
use super::kept_row::kept_row;
use super::labelled::labelled;
use super::set_aside::set_aside_actions;
use super::share::share;
use super::shelf::{Shelf, shelf};
use super::tag::{Tag, button, classed, tag};
use super::value::{State, fact};
use crate::keep::notebook::said::Entry;
use crate::keep::record::SetId;
use crate::project::example::example;
use crate::say::{kept, page};
use crate::web::here::lower;

/// Everything that is kept.
#[must_use]
pub fn kept_view() -> Tag {
    let shelf = shelf();
    let listing = fact(move || shelf.list());
    let (wanted, order, most) = (State::new(String::new()), State::new(Order::Date), State::new(PAGE));
    let found = fact(move || listing.with(|l| found(&l.entries, &wanted.get(), order.get())));
    let ids = move || found.with(|f| f.iter().take(most.get()).map(|id| id.0).collect::<Vec<_>>());
    let count = fact(move || listing.with(|l| l.entries.len()));
    let undo = move || {
        shelf.deleted.get().map(|d| {
            let name = d.kept.project.name;
            let name = if name.trim().is_empty() { page::UNNAMED.to_owned() } else { name };
            classed("p", "note")
                .is("role", "status")
                .with(format!("{} ", kept::deleted(&name)))
                .with(button(kept::BRING_BACK, move || shelf.restore()))
        })
    };
    let fresh = move || shelf.lay_new(new_set(Some(&shelf.desk().project.get_untracked())));
    let example = move || {
        if let Some(project) = example() {
            shelf.lay_new(project);
        }
    };
    let none = || classed("p", "empty").with(kept::NONE_YET);
    let no_such = || classed("p", "empty").is("role", "status").with(kept::NO_SUCH);
    let more = move || button(kept::SHOW_MORE, move || most.update(|m| *m += PAGE));
    let actions = classed("p", "actions")
        .with(button(page::NEW_SET, fresh).class("add"))
        .with(button(page::EXAMPLE, example).class("add"));
    let saved = classed("section", "sheet-of-paper")
        .with(tag("h2").with(kept::SAVED_SETS))
        .with(classed("p", "hint").with(kept::BY_ITSELF))
        .with(live(undo))
        .with(shown(move || count.get() == 0, none))
        .with(shown(move || count.get() >= FEW, move || finder(wanted, order)))
        .with(shown(move || count.get() > 0 && found.with(Vec::is_empty), no_such))
        .with(classed("ul", "rows").with(each(ids, move |id| kept_row(SetId(id), listing))))
        .with(shown(move || found.with(Vec::len) > most.get(), more))
        .with(classed("ul", "rows").with(live(move || set_aside(shelf))))
        .with(actions);
    classed("div", "kept").with(saved).with(share())
}

/// As many sets are shown at once: each has its drawing.
const PAGE: usize = 24;
/// From so many sets on they are searched and put in order.
const FEW: usize = 4;

/// What cannot be read.
fn set_aside(shelf: Shelf) -> Vec<Tag> {
    let each = shelf.list().set_aside.into_iter().map(|a| {
        classed("li", "note caution")
            .with(tag("p").with(format!("{}: {}", kept::SET_ASIDE, a.why)))
            .with(set_aside_actions(&a))
    });
    each.collect()
}

/// The order of saved sets.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Order {
    Date,
    Name,
}

/// The sets whose name holds what is wanted, in order; they come by date.
fn found(entries: &[Entry], wanted: &str, order: Order) -> Vec<SetId> {
    let wanted = lower(wanted.trim());
    let mut fit: Vec<_> = entries.iter().filter(|e| lower(&e.name).contains(&wanted)).collect();
    if order == Order::Name {
        fit.sort_by_key(|e| lower(&e.name));
    }
    fit.into_iter().map(|e| e.id).collect()
}

/// What is looked for, and the order.
fn finder(wanted: State<String>, order: State<Order>) -> Tag {
    let one = move |which: Order, name: &'static str| {
        button(name, move || order.set(which)).says("aria-pressed", move || order.get() == which)
    };
    let find = tag("input")
        .is("type", "search")
        .value(move || wanted.get())
        .on("input", move |event| wanted.set(event_target_value(&event)));
    let field = labelled("find-set", kept::FIND, find);
    let orders = vec![one(Order::Date, kept::BY_DATE), one(Order::Name, kept::BY_NAME)];
    classed("div", "fields").with(field).with(either(kept::ORDER, orders))
}
