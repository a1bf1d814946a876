//! What the maker writes to a step: a note, or a step of its own after it.

use leptos::prelude::event_target_value;

use super::child::live;
use super::desk::{Desk, desk};
use super::labelled::labelled;
use super::tag::{Tag, button, classed, tag};
use super::value::State;
use crate::make::step::{Action, Step};
use crate::plan::Plan;
use crate::project::own::{Note, NoteKind};
use crate::say::making;

/// What is being written, whatever is planned anew meanwhile.
#[derive(Clone, Copy)]
pub struct Writing {
    /// The step that is written to, by its site.
    at: State<Option<String>>,
    text: State<String>,
}

impl Writing {
    /// Nothing yet.
    #[must_use]
    pub fn begin() -> Self {
        Self { at: State::new(None), text: State::new(String::new()) }
    }
}

/// Opens the field under a step, or for a step of the maker's own takes it away.
#[must_use]
pub fn pen(step: &Step) -> Tag {
    let desk = desk();
    let writing = desk.writing;
    if let Action::Own(own) = &step.action {
        return classed("p", "actions").with(take_away(desk, own.clone()));
    }
    let (site, same) = (step.site.clone(), step.site.clone());
    let open = move || writing.at.set(Some(site.clone()));
    let field = live(move || {
        let here = writing.at.with(|w| w.as_ref() == Some(&same));
        if here {
            field(desk, same.clone(), writing)
        } else {
            classed("p", "actions").with(button(making::WRITE, open.clone()))
        }
    });
    tag("div").with(field)
}

fn field(desk: Desk, site: String, writing: Writing) -> Tag {
    let keep = move |kind: NoteKind, says: &'static str| {
        let site = site.clone();
        let keep = move || {
            let note = Note { at: site.clone(), kind, text: writing.text.get_untracked().trim().to_owned() };
            writing.at.set(None);
            writing.text.set(String::new());
            if !note.text.is_empty() {
                desk.edit("", |p| p.own.notes.push(note));
            }
        };
        button(says, keep)
    };
    let input = tag("textarea")
        .is("rows", "2")
        .is("maxlength", "2000")
        .value(move || writing.text.get())
        // What is taken back here is letters, not the design.
        .on("keydown", |event| event.stop_propagation())
        .on("input", move |event| writing.text.set(event_target_value(&event)));
    labelled("own-words", making::TEXT, input).with(
        classed("p", "actions").with(keep(NoteKind::Note, making::AS_NOTE)).with(keep(NoteKind::Step, making::AS_STEP)),
    )
}

fn take_away(desk: Desk, note: Note) -> Tag {
    button(making::TAKE_AWAY, move || {
        desk.edit("", |p| {
            if let Some(at) = p.own.notes.iter().position(|n| *n == note) {
                p.own.notes.remove(at);
            }
        });
    })
}

/// The notes at a step, each with a way to take it away.
#[must_use]
pub fn notes_at(step: &Step) -> Vec<Tag> {
    notes(desk(), &|n| n.at == step.site)
}

/// The notes whose step is no more, so that nothing that was written is lost.
#[must_use]
pub fn homeless(plan: &Plan) -> Option<Tag> {
    let rows = notes(desk(), &|n| plan.steps.iter().all(|s| s.site != n.at));
    let head = tag("h2").with(making::HOMELESS);
    (!rows.is_empty()).then(|| classed("section", "sheet-of-paper").with(head).with(rows))
}

fn notes(desk: Desk, which: &dyn Fn(&Note) -> bool) -> Vec<Tag> {
    let note = |n: &Note| classed("p", "note own").with(n.text.clone()).with(take_away(desk, n.clone()));
    desk.project.with(|p| p.own.notes.iter().filter(|n| n.kind == NoteKind::Note && which(n)).map(note).collect())
}
