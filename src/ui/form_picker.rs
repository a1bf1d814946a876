//! The form of a box or holder, picked from small drawings of all forms.

use super::child::{shown, words};
use super::desk::{Desk, desk};
use super::forms::{Kept, kept};
use super::notes::notes;
use super::part_fields::id;
use super::picture::picture;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State, fact};
use crate::draw::sample::sample;
use crate::draw::svg::paint;
use crate::form::own;
use crate::form::registry::{self, FORMS, Form, Holds};
use crate::project::finding::Place;
use crate::project::request::{Part, Tint};
use crate::say::page;
use crate::web::here;

/// The form there is; opened, all others.
#[must_use]
pub fn form_picker(place: Place) -> Tag {
    let desk = desk();
    let part = desk.part(place);
    let key = fact(move || part.with(|p| p.as_ref().map_or(String::new(), |p| p.form.clone())));
    let tint = fact(move || {
        let card = part.with(|p| p.as_ref().map(|p| p.card));
        desk.project.with(|p| card.and_then(|c| p.card(c)).map_or_else(Tint::default, |c| c.tint))
    });
    let drawn = fact(move || part.with(|p| p.as_ref().map_or(String::new(), |p| p.drawn.clone())));
    let shelf = kept();
    let open = State::new(false);
    let name = move || {
        let drawn = part.with(|p| p.as_ref().and_then(Part::form_called).map(str::to_owned));
        drawn.unwrap_or_else(|| key.with(|k| registry::named(k).map_or_else(|| k.clone(), |f| f.name.to_owned())))
    };
    let holds = if place == Place::Holder { Holds::Boxes } else { Holds::Gifts };
    // Drawn only while it is looked at.
    let all = move || {
        // The maker's own stand first.
        let mine = shelf.with(|all| {
            all.iter().filter(|_| holds == Holds::Gifts).map(|k| (&own::FORM, Some(k.clone()))).collect::<Vec<_>>()
        });
        let forms = FORMS.iter().chain([&own::FORM]).filter(|f| f.holds == holds).map(|f| (f, None));
        let all: Vec<(&'static Form, Option<Kept>)> = mine.into_iter().chain(forms).collect();
        all.into_iter().map(|(f, kept)| choice(desk, place, (f, kept), (key, drawn), tint, open)).collect::<Vec<_>>()
    };
    let other = button(page::OTHER_FORM, move || open.update(|o| *o = !*o))
        .is("id", id(place, "form"))
        .says("aria-expanded", move || open.get())
        .is("aria-controls", id(place, "forms"));
    let now = classed("p", "form-now")
        .with(classed("span", "form-label").with(page::FORM))
        .with(tag("strong").with(words(name)))
        .with(other);
    let forms = classed("div", "forms")
        .is("id", id(place, "forms"))
        .is("role", "group")
        .is("aria-label", page::FORMS)
        .with(shown(move || open.get(), all));
    classed("div", "form-picker").with(now).with(notes(desk.findings(place, Some("form")))).with(forms)
}

/// One form by its drawing.
fn choice(
    desk: Desk,
    place: Place,
    (form, kept): (&'static Form, Option<Kept>),
    (key, drawn): (Fact<String>, Fact<String>),
    tint: Fact<Tint>,
    open: State<bool>,
) -> Tag {
    let own = kept.as_ref().map(|k| k.text.clone());
    let text = own.clone().unwrap_or_default();
    let name = kept.map_or_else(|| form.name.to_owned(), |k| k.name());
    let svg = move || {
        let drawing = sample(form, &text, desk.project.with_untracked(|p| p.system), tint.get());
        drawing.as_ref().map(paint).unwrap_or_default()
    };
    let taken = own.clone();
    let pick = move || {
        set(desk, place, form, taken.as_deref());
        open.set(false);
        here::focus(id(place, "form"));
    };
    let is = move || {
        let mine = own.as_ref().is_none_or(|own| drawn.with(|d| d == own));
        mine && key.with(|k| k == form.key)
    };
    button(tag("span").is("aria-hidden", "true").with(picture(svg)), pick)
        .class("form-choice")
        .says("aria-pressed", is)
        .with(tag("span").with(name))
}

/// Gives a box or holder another form; what is typed stays where the other form asks the same.
fn set(desk: Desk, place: Place, form: &'static Form, drawn: Option<&str>) {
    desk.edit_part(place, "", |p| {
        p.inputs.retain(|k, _| form.inputs.iter().any(|i| i.key == k));
        form.key.clone_into(&mut p.form);
        if let Some(drawn) = drawn {
            drawn.clone_into(&mut p.drawn);
        }
    });
}
