//! The one box or holder at hand, by itself: what is drawn in the frame of a key.

use super::{Plan, shapes};
use crate::measure::system::System;
use crate::project::finding::Place;
use crate::project::request::{Part, Project};

/// As [`shapes`], but for the part at `place` alone where it hangs on no other: a box that looks at no other box's
/// height. What is said of that part is the same; nothing else is there.
#[must_use]
pub fn at_hand(project: &Project, system: System, place: Place) -> Plan {
    let alone = |part: &&Part| place == Place::Box(part.id) && part.gifts.kinds.is_empty();
    let Some(part) = project.boxes.iter().find(alone) else {
        return shapes(project, system);
    };
    let boxes = vec![part.clone()];
    shapes(&Project { boxes, holder: None, ..project.clone() }, system)
}
