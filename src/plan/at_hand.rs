//! The one box or holder at hand, with no more than it hangs on: what is drawn in the frame of a key.

use super::{Known, Plan, Planning};
use crate::form::resolve::Wants;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Part, Project};

/// As [`super::shapes`], but for the part at `place` and what it hangs on alone: a box that follows its gifts looks at
/// the heights of those that do not, a holder at all boxes. What is said of that part is the same.
#[must_use]
pub fn at_hand(project: &Project, system: System, place: Place, known: &mut Known) -> Plan {
    let mine = |part: &Part| place == Place::Box(part.id);
    let follows = |part: &Part| !part.gifts.kinds.is_empty();
    let all = || project.boxes.iter().take(bound::BOX_KINDS.most as usize);
    let Some(part) = all().find(|part| mine(part)) else {
        return Planning::begin(project.clone(), system, Wants::Unproved).to_the_shapes(known);
    };
    let needed = |b: &&Part| mine(b) || (follows(part) && !follows(b));
    let boxes = all().filter(needed).cloned().collect();
    let project = Project { boxes, holder: None, ..project.clone() };
    Planning::begin(project, system, Wants::Unproved).to_the_shapes(known)
}
