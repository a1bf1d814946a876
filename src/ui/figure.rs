//! A whole number of the design, in a field.

use leptos::prelude::Callback;

use super::count_field::CountField;
use super::desk::desk;
use super::tag::Tag;
use super::value::{Fact, fact};
use crate::project::bound::Range;
use crate::project::request::Project;

/// One number that the maker plans with.
#[derive(Clone, Copy)]
pub struct Figure {
    /// Unique on the page; edits of it are one step back.
    pub id: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// What may be typed.
    pub range: Range<u32>,
    /// What it is.
    pub read: fn(&Project) -> u32,
    /// What it becomes.
    pub write: fn(&mut Project, u32),
}

/// A figure in a line.
#[must_use]
pub const fn figure(
    id: &'static str,
    label: &'static str,
    range: Range<u32>,
    read: fn(&Project) -> u32,
    write: fn(&mut Project, u32),
) -> Figure {
    Figure { id, label, range, read, write }
}

impl Figure {
    /// Its field.
    #[must_use]
    pub fn view(self) -> Tag {
        let desk = desk();
        let Self { id, label, range, read, write } = self;
        CountField {
            id: id.to_owned(),
            label,
            hint: "",
            range,
            value: fact(move || desk.project.with(read)),
            findings: Fact::fixed(Vec::new()),
            commit: Callback::new(move |n| desk.edit(id, |p| write(p, n))),
        }
        .view()
    }
}
