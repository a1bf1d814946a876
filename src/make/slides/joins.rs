//! How sure it is that one part goes into another.

use std::slice::from_ref;

use super::{Goes, STEP, Tally, Way, spans, surest};
use crate::fit::odds::Accuracy;
use crate::fold::room::{Measured, free, leaves, outside_of};
use crate::form::assembly::{Join, Size};
use crate::make::part::Planned;
use crate::measure::grid::Grid;
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
        let (way, least) = chains.iter().min_by(|a, b| a.1.chance().total_cmp(&b.1.chance()))?;
        let now: f64 = chains.iter().map(|(_, c)| c.chance()).product();
        // Asked for, a clearance is what each gap has at least; grooves may leave more, as they do now.
        let chance = |asked: Length| chains.iter().fold(1.0, |all, (_, c)| all * c.chance_with(c.gap.max(asked)));
        let step = STEP.of(system);
        let used = planned.used.get("clearance").copied().unwrap_or_default();
        let cure = surest(now, Grid::every(step).down(used) + step, step, chance);
        let per_mille = (now * 1_000.0) as u32;
        Some(Goes { join: Some(join.name), per_mille, way: *way, tightest: least.tightest()?, cure })
    };
    assembly.joins.iter().filter_map(one).collect()
}
