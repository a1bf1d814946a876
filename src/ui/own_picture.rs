//! The maker's picture of the set: chosen, shown, taken away.

use super::child::live;
use super::desk::desk;
use super::labelled::labelled;
use super::tag::{Tag, button, classed, tag};
use super::value::{State, fact};
use crate::project::picture::Picture;
use crate::say::making;
use crate::web::picture;

/// The field for it.
#[must_use]
pub fn own_picture() -> Tag {
    let desk = desk();
    let not = State::new(false);
    let chosen = move |event: web_sys::Event| {
        picture::take(&event, move |address| {
            let read = address.as_deref().and_then(Picture::read);
            not.set(read.is_none());
            if let Some(picture) = read {
                desk.edit("", |p| p.own.picture = picture);
            }
        });
    };
    let input = tag("input").is("type", "file").is("accept", "image/*").on("change", chosen);
    let address = fact(move || desk.project.with(|p| p.own.picture.address().to_owned()));
    let shown = live(move || {
        let address = address.get();
        let away = move || desk.edit("", |p| p.own.picture = Picture::default());
        (!address.is_empty()).then(|| {
            let name = desk.project.with(|p| p.name.clone());
            classed("p", "own-picture")
                .with(tag("img").is("src", address).is("alt", making::picture_of(&name)))
                .with(button(making::TAKE_AWAY, away))
        })
    });
    let wrong = live(move || not.get().then(|| classed("p", "note stop").is("role", "alert").with(making::NO_PICTURE)));
    labelled("picture", making::PICTURE, input).with(wrong).with(shown)
}
