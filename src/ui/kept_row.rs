//! One saved set in the list.

use leptos::prelude::*;

use super::child::{shown, words};
use super::labelled::labelled;
use super::picture::picture;
use super::shelf::shelf;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State, fact};
use crate::draw::folded::set;
use crate::draw::solid::View;
use crate::draw::svg::paint;
use crate::keep::notebook::said::Listing;
use crate::keep::record::SetId;
use crate::plan::shapes;
use crate::project::request::{Project, Tint};
use crate::say::{kept, page};
use crate::web::last;

/// The name of one of the listed sets, and what can be done with it.
#[must_use]
pub fn kept_row(id: SetId, listing: Fact<Listing>) -> Tag {
    let shelf = shelf();
    let entry = move || listing.with(|l| l.entries.iter().find(|e| e.id == id).cloned());
    let name = fact(move || entry().map_or(String::new(), |e| e.name));
    let called = move || {
        let name = name.get();
        if name.trim().is_empty() { page::UNNAMED.to_owned() } else { name }
    };
    let svg = fact(move || entry().map_or_else(String::new, |e| small(&e.project)));
    let saved = move || entry().map_or_else(String::new, |e| kept::saved(last::date(e.saved_at).as_deref(), e.size));
    let current = fact(move || shelf.current() == Some(id));
    let renaming = State::new(false);
    let field = format!("rename-{}", id.0);
    let new_name = move || {
        let take = move |event| {
            shelf.rename(id, &event_target_value(&event));
            renaming.set(false);
        };
        let input = tag("input")
            .is("type", "text")
            .is("maxlength", "120")
            .is("autocomplete", "off")
            .is("value", name.get_untracked())
            .on("change", take);
        labelled(field.clone(), page::SET_NAME, input)
    };
    // Who hears the page hears which set each button is for.
    let of_it = |button: Tag| button.with(classed("span", "heard").with(" ").with(words(called)));
    let open = button(kept::OPEN, move || shelf.open(id)).while_so("disabled", move || current.get());
    let rename = button(kept::RENAME, move || renaming.update(|r| *r = !*r));
    let actions = classed("p", "actions")
        .with(of_it(open))
        .with(of_it(rename.says("aria-expanded", move || renaming.get())))
        .with(of_it(button(page::DUPLICATE, move || shelf.duplicate(id))))
        .with(of_it(button(kept::DELETE, move || shelf.delete(id))));
    let title = classed("p", "title")
        .with(words(called))
        .with(" ")
        .with(shown(move || current.get(), || classed("span", "flag").with(kept::OPEN_NOW)));
    let about = classed("div", "about")
        .with(title)
        .with(classed("p", "hint").with(words(saved)))
        .with(shown(move || renaming.get(), new_name))
        .with(actions);
    classed("li", "row")
        .class_while("open", move || current.get())
        .with(classed("div", "small").is("aria-hidden", "true").with(picture(move || svg.get())))
        .with(about)
}

/// The finished set, small.
fn small(project: &Project) -> String {
    let plan = shapes(project, project.system);
    let tint = |c| project.card(c).map_or_else(Tint::default, |c| c.tint);
    paint(&set(&plan.boxes, plan.holder.as_ref(), &tint, 0.3, View::default()))
}
