//! The form of a box or holder, picked from small drawings of all forms.

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::notes::Notes;
use super::part_fields::id;
use super::picture::Picture;
use crate::draw::sample::sample;
use crate::draw::svg::paint;
use crate::form::registry::{self, FORMS, Form, Holds};
use crate::project::finding::Place;
use crate::project::request::Tint;
use crate::say::page;
use crate::web::here;

/// The form there is; opened, all others.
#[component]
pub fn FormPicker(
    /// Of which box or holder.
    place: Place,
) -> impl IntoView {
    let desk = desk();
    let part = desk.part(place);
    let key = Memo::new(move |_| part.with(|p| p.as_ref().map_or(String::new(), |p| p.form.clone())));
    let tint = Memo::new(move |_| {
        let card = part.with(|p| p.as_ref().map(|p| p.card));
        desk.project.with(|p| card.and_then(|c| p.card(c)).map_or_else(Tint::default, |c| c.tint))
    });
    let open = RwSignal::new(false);
    let name = move || key.with(|k| registry::named(k).map_or_else(|| k.clone(), |f| f.name.to_owned()));
    let holds = if place == Place::Holder { Holds::Boxes } else { Holds::Gifts };
    // Drawn only while it is looked at.
    let all = move || {
        let forms = FORMS.iter().filter(|f| f.holds == holds);
        forms.map(|f| choice(desk, place, f, key, tint, open)).collect_view()
    };
    let grid = id(place, "forms");
    view! {
        <div class="form-picker">
            <p class="form-now">
                <span class="form-label">{page::FORM}</span>
                <strong>{name}</strong>
                <button
                    id=id(place, "form")
                    type="button"
                    aria-expanded=move || if open.get() { "true" } else { "false" }
                    aria-controls=grid.clone()
                    on:click=move |_| open.update(|o| *o = !*o)
                >
                    {page::OTHER_FORM}
                </button>
            </p>
            <Notes findings=desk.findings(place, Some("form")) />
            <div id=grid.clone() class="forms" role="group" aria-label=page::FORMS>
                <Show when=move || open.get()>{all}</Show>
            </div>
        </div>
    }
}

/// One form by its drawing.
fn choice(
    desk: Desk,
    place: Place,
    form: &'static Form,
    key: Memo<String>,
    tint: Memo<Tint>,
    open: RwSignal<bool>,
) -> impl IntoView {
    let svg = Memo::new(move |_| {
        let drawing = sample(form, desk.project.with_untracked(|p| p.system), tint.get());
        drawing.as_ref().map(paint).unwrap_or_default()
    });
    let pick = move |_| {
        set(desk, place, form);
        open.set(false);
        here::focus(id(place, "form"));
    };
    view! {
        <button
            type="button"
            class="form-choice"
            aria-pressed=move || if key.with(|k| k == form.key) { "true" } else { "false" }
            on:click=pick
        >
            <span aria-hidden="true"><Picture svg=svg /></span>
            <span>{form.name}</span>
        </button>
    }
}

/// Gives a box or holder another form; what is typed stays where the other form asks the same.
fn set(desk: Desk, place: Place, form: &'static Form) {
    desk.edit_part(place, "", |p| {
        p.inputs.retain(|k, _| form.inputs.iter().any(|i| i.key == k));
        form.key.clone_into(&mut p.form);
    });
}
