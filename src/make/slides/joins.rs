//! How sure it is that one part goes into another.

use std::slice::from_ref;

use super::{Goes, Tally, Way, spans};
use crate::assembly::parts::{Join, Size};
use crate::fit::odds::Accuracy;
use crate::fold::room::{Measured, free, leaves, outside_of};
use crate::make::part::Planned;
use crate::measure::length::Length;
use crate::measure::system::System;

/// How sure it is that the parts of one box or holder go into each other, join by join: the lid over its base, a drawer
/// into its sleeve. What is free is measured on the folded parts, tabs counted.
#[must_use]
pub fn joins(planned: &Planned, system: System, accuracy: &Accuracy) -> Vec<Goes> {
    let accuracy = accuracy.within();
    let Some(assembly) = &planned.assembly else {
        return Vec::new();
    };
    let one = |join: &Join| {
        let &[inner] = join.inner.as_slice() else {
            return None;
        };
        let (inner, outer) = (assembly.parts.get(inner)?, assembly.parts.get(join.outer)?);
        let t = planned.thickness;
        let (around, within) = (free(&leaves(outer, t), t), outside_of(inner, t));
        let ways = [
            (Way::Along, join.room.width.is_some(), around.width, within.width),
            (Way::Across, join.room.depth.is_some(), around.depth, within.depth),
            (Way::Up, join.room.height.is_some(), around.height, within.height),
        ];
        let length = |l: Option<f64>| l.map_or(Length::ZERO, Length::round_mm);
        let size = |m: Measured| Size { width: length(m.width), depth: length(m.depth), height: length(m.height) };
        let (own, its) = (spans(from_ref(outer), size(around)), spans(from_ref(inner), size(within)));
        let mut chains = Vec::new();
        for (way, slides, around, within) in ways {
            let (own, its) = (&own[way as usize], &its[way as usize]);
            if let (true, Some(around), Some(within)) = (slides, around, within) {
                let (around, within) = (Length::round_mm(around), Length::round_mm(within));
                let mut tally = Tally { gap: around - within, ..Tally::default() };
                tally.add(1, 1, own, (planned.card, own.length - around));
                tally.add(0, 1, its, (planned.card, within - its.length));
                chains.push((way, tally.chain(&accuracy)));
            }
        }
        Goes::of(Some(join.name), &chains, planned.used.get("clearance").copied(), system)
    };
    assembly.joins.iter().filter_map(one).collect()
}
