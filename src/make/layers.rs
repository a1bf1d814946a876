//! What card and hand do not carry: walls too large for their thickness, and too many layers at one place.

use crate::fold::cross::inside;
use crate::fold::room::leaves;
use crate::fold::space::V3;
use crate::measure::length::Length;
use crate::net::flat::{Duty, PanelId};
use crate::project::finding::What;

use super::part::Planned;

/// A wall stays flat under a hand up to so many times its thickness, where it is that large both ways: 180 mm of card
/// of 0.3 mm (common practice, no source).
pub const FLAT: i64 = 600;
/// More layers than these fold and press badly (common practice, no source).
pub const MOST: u32 = 5;
/// Thinner than this it is paper, folded without a score (seen with two makers), and carries twice as many layers
/// (common practice, no source).
const PAPER: Length = Length::um(150);

/// How many layers a card of this thickness carries when it is only folded.
#[must_use]
pub fn most(thickness: Length) -> u32 {
    if thickness < PAPER { MOST * 2 } else { MOST }
}

/// What of `planned` is too large or too thick.
#[must_use]
pub fn worn(planned: &Planned) -> Vec<What> {
    let mut found = Vec::new();
    let t = planned.thickness;
    for (i, part) in planned.assembly.iter().flat_map(|a| &a.parts).enumerate() {
        let matted = |id: PanelId| planned.mats_on(i).any(|m| m.panel == id);
        let walls = part.net.panels.iter().enumerate().filter(|(_, p)| p.duty == Duty::Wall);
        let large = walls.filter_map(|(at, p)| {
            let thick = if matted(PanelId(at)) { t + planned.mat_thickness } else { t };
            let (is, most) = (p.cell.width().min(p.cell.height()), thick * FLAT);
            (is > most).then_some(What::WallTooTall { panel: p.name, is, most })
        });
        found.extend(large.max_by_key(|w| match w {
            What::WallTooTall { is, .. } => *is,
            _ => Length::ZERO,
        }));
        // Forms whose panels lie no deeper do not pile up more by themselves, with mats or without (tests/extras.rs).
        let raised = planned.extras.iter().any(|m| m.raises().is_some());
        let deep = part.net.panels.iter().any(|p| p.level.abs() >= DEEP);
        let (layers, panel) = if raised || deep { thickest(planned, i) } else { (0, PanelId(0)) };
        // What is glued on makes five the most, whatever the card.
        if layers > if raised { MOST } else { most(t) } {
            found.push(What::LayersPileUp { panel: part.net.panel(panel).name, layers });
        }
    }
    found
}

/// How many layers lie at the place of a part where most do, and the panel there: card, mats, and what is put on them.
#[must_use]
pub fn thickest(planned: &Planned, part: usize) -> (u32, PanelId) {
    let Some(shape) = planned.assembly.as_ref().and_then(|a| a.parts.get(part)) else {
        return (0, PanelId(0));
    };
    let leaves = leaves(shape, planned.thickness);
    let added = |id: PanelId| {
        let raised = planned.extras.iter().filter(|m| m.raises().is_some());
        let extras = raised.filter(|m| m.on().contains(&(part, id))).count();
        planned.mats_on(part).filter(|m| m.panel == id).count() + extras
    };
    // All that lies within some thicknesses of a face lies on it.
    let near = planned.thickness.as_mm() * 8.0;
    let mut most = (0, PanelId(0));
    for (i, leaf) in leaves.iter().enumerate() {
        let n = leaf.outline.len().max(1) as f64;
        let middle = leaf.outline.iter().fold(V3::default(), |sum, &p| sum + p) * (1.0 / n);
        let corners = leaf.outline.iter().map(|&p| p + (middle - p).unit() * INWARD);
        // Panels may meet right in the middle.
        let beside = corners.clone().next().map(|p| middle + (p - middle).unit() * INWARD);
        for place in corners.chain(beside).map(|p| leaf.at.apply(p)) {
            let there = leaves.iter().enumerate().filter(|(_, other)| {
                let at = other.at.back(place);
                let flush = other.at.axes[2].dot(leaf.at.axes[2]).abs() > 0.999;
                flush && at.z.abs() < near && inside(&other.outline, at)
            });
            let layers: usize = there.map(|(j, _)| 1 + added(shape.whole(PanelId(j)))).sum();
            let layers = u32::try_from(layers).unwrap_or(u32::MAX);
            if layers > most.0 {
                most = (layers, shape.whole(PanelId(i)));
            }
        }
    }
    most
}

/// Levels from which on a form by itself may have too many layers, in halves of a thickness.
pub const DEEP: i8 = 8;
/// Places are looked at so far within a panel's corners, in mm.
const INWARD: f64 = 2.0;
