//! The maker's own steps among those of the plan, each after the step that it hangs on.

use super::key::key;
use super::step::{Action, Step};
use crate::project::finding::Place;
use crate::project::own::{Note, NoteKind};

/// Names each step's site, and puts the maker's own steps where they belong. One whose step is gone stands at the end:
/// nothing that was written is lost.
#[must_use]
pub fn woven(mut steps: Vec<Step>, notes: &[Note]) -> Vec<Step> {
    name_sites(&mut steps);
    for note in notes.iter().filter(|n| n.kind == NoteKind::Step) {
        let hangs = |s: &Step| s.site == note.at || matches!(&s.action, Action::Own(own) if own.at == note.at);
        let after = steps.iter().rposition(hangs);
        let host = after.and_then(|at| steps.get(at));
        let (place, part, times) = host.map_or((Place::Set, 0, 1), |s| (s.place, s.part, s.times));
        let name = key(note);
        let own =
            Step { key: name.clone(), site: name, place, part, half: None, times, action: Action::Own(note.clone()) };
        steps.insert(after.map_or(steps.len(), |at| at + 1), own);
    }
    steps
}

/// The steps of the plan alone, and the maker's own that stood among them.
#[must_use]
pub fn unwoven(steps: Vec<Step>) -> (Vec<Step>, Vec<Note>) {
    let mut notes = Vec::new();
    let of_plan = |step: Step| match step.action {
        Action::Own(note) => {
            notes.push(note);
            None
        }
        _ => Some(step),
    };
    (steps.into_iter().filter_map(of_plan).collect(), notes)
}

/// A site says what is done to what and how often it was done before, but no measurement: so it is found again when the
/// sizes change.
fn name_sites(steps: &mut [Step]) {
    let plain = |s: &Step| {
        let name = match s.action {
            Action::Fold { name, .. } => Some(name),
            _ => None,
        };
        (s.place, s.part, s.half, std::mem::discriminant(&s.action), name)
    };
    // Steps of one place are found among few, however long the list is.
    let mut done: Vec<(Place, Vec<_>)> = Vec::new();
    for step in steps {
        let own = plain(step);
        let there = done.iter().position(|(place, _)| *place == step.place).unwrap_or_else(|| {
            done.push((step.place, Vec::new()));
            done.len() - 1
        });
        let before = &mut done[there].1;
        let times = before.iter().filter(|b| **b == own).count();
        before.push(own);
        step.site = key(&(own, times));
    }
}
