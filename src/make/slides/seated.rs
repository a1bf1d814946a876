//! How sure it is that boxes go to their seats in a holder that has one for each.
//!
//! Boxes that stand between the same two panels share what is free there. The panels are found on the folded holder;
//! every score on the way through the net from one to the other counts, and where they belong to different parts, two
//! cuts: where a divider is slotted. Some of those scores move nothing along the gap, so the chance is a bound from
//! below.

use super::{Goes, Row, Span, Tally, Way};
use crate::assembly::parts::{Assembly, Footprint, From, Seat};
use crate::fit::odds::{Accuracy, Chain};
use crate::fold::pose::standing;
use crate::fold::room::leaves_at;
use crate::fold::space::V3;
use crate::make::part::Planned;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::flat::{CreaseId, PanelId};

/// What the room round boxes is called in holders that have a clearance between their own parts besides, or have none.
const ROOM: [&str; 3] = ["room", "play", "clearance"];

/// How sure it is that `boxes` go to their seats in `holder`; nothing where it has none, or where nothing is round them.
#[must_use]
pub fn seated(boxes: &[Planned], holder: &Planned, system: System, accuracy: &Accuracy) -> Option<Goes> {
    let accuracy = accuracy.within();
    let assembly = holder.assembly.as_ref()?;
    // Between slanted walls no straight way from wall to wall is measured.
    if assembly.seats.iter().any(|s| s.footprint != Footprint::Block) {
        return None;
    }
    let shaped = boxes.iter().filter_map(|b| b.assembly.as_ref().map(|a| (b, a)));
    let kinds: Vec<Option<Row>> = shaped.map(|(b, a)| Row::of(b, a)).collect();
    let walls = walls(assembly, holder.thickness);
    let mut chains: Vec<(Way, Chain)> = Vec::new();
    let mut seen: Vec<(Way, Vec<usize>)> = Vec::new();
    for seat in &assembly.seats {
        let ways = match seat.from {
            From::Above | From::Below => [Way::Along, Way::Across],
            From::Front => [Way::Along, Way::Up],
        };
        for way in ways {
            let Some((left, right)) = beside(&walls, seat, way) else {
                continue;
            };
            let between: Vec<usize> = (0..assembly.seats.len())
                .filter(|i| {
                    lies_between(&assembly.seats[*i], seat, way, left.high[way as usize], right.low[way as usize])
                })
                .collect();
            if seen.contains(&(way, between.clone())) {
                continue;
            }
            let free = Length::round_mm(right.low[way as usize] - left.high[way as usize]);
            let mut tally = Tally { gap: free, ..Tally::default() };
            let (scores, cuts) = left.way_to(right, assembly);
            tally.add(1, 1, &Span { length: free, scores, joints: cuts }, (holder.card, Length::ZERO));
            for i in &between {
                let row = kinds.get(assembly.seats[*i].kind)?.as_ref()?;
                let (own, bare) = (&row.spans[way as usize], way.of(row.bare));
                tally.add(0, 1, own, (row.planned.card, bare - own.length));
                tally.card(row.planned.mat_card.unwrap_or_default(), way.of(row.planned.stood()) - bare);
                tally.gap -= way.of(row.planned.stood());
            }
            chains.push((way, tally.chain(&accuracy)));
            seen.push((way, between));
        }
    }
    Goes::of(None, &chains, ROOM.iter().find_map(|key| holder.used.get(*key)).copied(), system)
}

/// A panel of the folded holder: what it takes up, in millimetres.
struct Wall {
    part: usize,
    panel: PanelId,
    low: [f64; 3],
    high: [f64; 3],
}

impl Wall {
    /// Scores and cuts on the way to another.
    fn way_to(&self, other: &Self, assembly: &Assembly) -> (u32, u32) {
        let up = |wall: &Self| assembly.parts.get(wall.part).map_or_else(Vec::new, |p| p.net.carriers(wall.panel));
        let (a, b) = (up(self), up(other));
        if self.part != other.part {
            return ((a.len() + b.len()) as u32, 2);
        }
        let apart = |a: &[CreaseId], b: &[CreaseId]| a.iter().filter(|c| !b.contains(c)).count() as u32;
        (apart(&a, &b) + apart(&b, &a), 0)
    }
}

fn walls(assembly: &Assembly, t: Length) -> Vec<Wall> {
    let mut all = Vec::new();
    for (part, shape) in assembly.parts.iter().enumerate() {
        for stand in &shape.stands {
            let leaves = leaves_at(shape, t, &standing(stand));
            all.extend(leaves.iter().enumerate().map(|(i, leaf)| {
                let (low, high) = leaf.bounds(t);
                Wall { part, panel: PanelId(i), low: axes(low), high: axes(high) }
            }));
        }
    }
    all
}

const fn axes(p: V3) -> [f64; 3] {
    [p.x, p.y, p.z]
}

/// What a seated box takes up.
fn block(seat: &Seat) -> ([f64; 3], [f64; 3]) {
    let low = [seat.at.right, seat.at.back, seat.at.up];
    let size = [seat.size.width, seat.size.depth, seat.size.height];
    (low.map(Length::as_mm), [0, 1, 2].map(|i| (low[i] + size[i]).as_mm()))
}

/// Less than this is an edge that touches.
const TOUCH: f64 = 0.5;

fn overlaps(a: ([f64; 3], [f64; 3]), b: ([f64; 3], [f64; 3]), way: Way) -> bool {
    (0..3).filter(|&i| i != way as usize).all(|i| a.0[i] + TOUCH < b.1[i] && b.0[i] + TOUCH < a.1[i])
}

/// The nearest panels before and behind a seat, along `way`.
fn beside<'a>(walls: &'a [Wall], seat: &Seat, way: Way) -> Option<(&'a Wall, &'a Wall)> {
    let (low, high) = block(seat);
    let at = way as usize;
    let near = || walls.iter().filter(|w| overlaps((low, high), (w.low, w.high), way));
    let before = near().filter(|w| w.high[at] <= low[at] + TOUCH).max_by(|a, b| a.high[at].total_cmp(&b.high[at]))?;
    let behind = near().filter(|w| w.low[at] >= high[at] - TOUCH).min_by(|a, b| a.low[at].total_cmp(&b.low[at]))?;
    Some((before, behind))
}

/// Whether a seat lies between two places along `way`, in line with another.
fn lies_between(seat: &Seat, with: &Seat, way: Way, from: f64, to: f64) -> bool {
    let (low, high) = block(seat);
    let at = way as usize;
    overlaps((low, high), block(with), way) && low[at] >= from - TOUCH && high[at] <= to + TOUCH
}
