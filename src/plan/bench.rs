//! What a drawn form is tried in: the board and the card of its box.

use super::shapes;
use super::stages::Around;
use crate::fit::own::Bench;
use crate::form::registry;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Part, Project};

/// The bench for `part` in `system`; where its card cannot be used, for card of 0.3 mm.
#[must_use]
pub fn bench(project: &Project, part: &Part, system: System) -> Bench {
    let around = Around::of(project, system, &mut Vec::new());
    let thickness = around.cards.iter().find(|c| c.id == part.card).map_or(THIN, |c| c.thickness);
    Bench { system, score: around.marks.0, clear: bound::CLEAR.of(system), thickness }
}

/// The first part of a form of the catalogue as it comes out with what is typed for the box at `place`, and its name;
/// nothing where something stops it.
#[must_use]
pub fn copied(project: &Project, place: Place, form: &str) -> Option<(crate::assembly::parts::Part, String)> {
    let mut project = project.clone();
    let found = match place {
        Place::Box(id) => project.boxes.iter_mut().find(|b| b.id == id),
        _ => project.holder.as_mut(),
    }?;
    let known = registry::named(form)?;
    found.form = known.key.to_owned();
    found.inputs.retain(|key, _| known.inputs.iter().any(|i| i.key == key));
    let plan = shapes(&project, project.system);
    let part = plan.part(place)?.assembly.as_ref()?.parts.first()?.clone();
    Some((part, known.name.to_owned()))
}

/// Common card.
const THIN: crate::measure::length::Length = crate::measure::length::Length::um(300);
