//! Parts that go together, in words.

use super::phrase::Phrase;
use crate::assembly::parts::{Join, JoinName};
use crate::make::part::Planned;

/// What to do for `join` of `planned`, and how.
#[must_use]
pub fn join(join: &Join, planned: &Planned) -> (Phrase, Vec<Phrase>) {
    let part = |i: usize| {
        let found = planned.assembly.as_ref().and_then(|a| a.parts.get(i));
        found.map_or("part", |p| p.name)
    };
    let (inner, outer) = (join.inner.first().map_or("part", |&i| part(i)), part(join.outer));
    let (title, line) = match join.name {
        JoinName::LidOver => (
            format!("Try the {outer} over the {inner}"),
            "It should sink of itself; if it sticks, rub its folds once more.",
        ),
        JoinName::DrawerIn => {
            (format!("Try the {inner} in the {outer}"), "From the front, floor down. It should glide, not fall.")
        }
        JoinName::DividersLap => (
            "Lap the dividers".to_owned(),
            "Slots into slots, square to each other, until upper and lower edges are level.",
        ),
        JoinName::DividerIn => {
            (format!("Set the dividers into the {outer}"), "Down to the floor, the same room at both ends.")
        }
        JoinName::BandRound => (
            format!("Slide the {outer} over the sleeves"),
            "Stand the sleeves on each other, the first at the bottom, glued tabs to the left; glue it to them at the back.",
        ),
        JoinName::TrayIn => (
            format!("Glue the {inner} into the {outer}"),
            "Open the cover again. Floor on the back board, its side against the spine; press and hold.",
        ),
        JoinName::LayerIn => (
            format!("Glue the {inner} into the {outer}"),
            "In the middle of the floor, the same room all round; its walls stay free.",
        ),
        JoinName::HandleIn => (
            format!("Glue the {inner} into the {outer}"),
            "Down the middle, flanges flat on the floor; press and hold.",
        ),
    };
    (title.into(), vec![line.into()])
}
