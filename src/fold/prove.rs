//! The proof of a part: that its flat pattern adds up, and that folded it closes, meets, clears and holds what is
//! promised.

use crate::assembly::moves::{MoveName, Way};
use crate::assembly::parts::{Assembly, JoinName, Meet, Part, Size};
use crate::measure::area::Area;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::net::corner::Side;
use crate::net::flat::{Crease, Face, Glue, Net, PanelId};

use super::cross::{Shrunk, inside};
use super::hollow::{Hollow, leans};
use super::join;
use super::motion::{bends, folded};
use super::pose::{Pose, bent, flat};
use super::room::{Leaf, Measured, assembled, free, leaves, outside_of, taken, without_tabs};
use super::space::V3;
use super::tuck::Passage;

/// What is wrong with a part.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// Panels and waste do not make up the blank, or a panel lies beyond it.
    AreaLost,
    /// A hole that leaves no rim round it.
    HoleAtEdge(PanelId),
    /// A panel hangs on no crease, or on one that comes later.
    Loose(PanelId),
    /// Two edges that should lie along each other do not: how far they are apart, in mm, beyond what is trimmed.
    Apart {
        /// What should meet.
        meet: Meet,
        /// The distance, in mm.
        by: f64,
    },
    /// A crease that closes a loop does not come out as it must when all is folded.
    LoopOpen {
        /// The panels that it joins.
        panels: (PanelId, PanelId),
        /// How far its ends on both are apart at most, in mm.
        by: f64,
        /// How far the fold is from its own, in degrees.
        degrees: f64,
    },
    /// Glue that lies on none of its partners, or on the wrong side of them.
    GlueMisses {
        /// The panel with the glue.
        on: PanelId,
        /// The share of places tried that miss, in percent.
        percent: u32,
    },
    /// Two panels pass through each other.
    Crossing {
        /// The move in which they do.
        during: MoveName,
        /// One panel.
        a: PanelId,
        /// The other panel.
        b: PanelId,
    },
    /// A tuck that cannot pass between the wall and the dust flaps.
    TuckStuck {
        /// How far it has to bow, in mm.
        bow: f64,
    },
    /// The inside is not what was promised: measured, promised, in mm.
    Inside(f64, f64),
    /// The outside is not what was promised: measured, promised, in mm.
    Outside(f64, f64),
    /// Between parts is not what was allowed: left free in mm, and the least and the most.
    Clearance {
        /// Which joint.
        join: JoinName,
        /// What is free, in mm; nothing where the outer part does not close.
        free: Option<f64>,
        /// The least and the most allowed, in mm.
        allowed: (f64, f64),
    },
    /// A part does not get to its place: panels cross, while it slides by this share of its way, 1 at rest.
    Blocked {
        /// The parts.
        parts: (usize, usize),
        /// Their panels.
        panels: (PanelId, PanelId),
        /// How far it is in.
        at: f64,
    },
    /// A mat on a face that slides along another part.
    MatSlides {
        /// The part.
        part: usize,
        /// The panel.
        panel: PanelId,
    },
    /// A box does not stand free at its seat, or cannot get there: the seat's number.
    Seat(usize),
}

/// Edges that meet lie this near, in mm.
pub const MEETING: f64 = 0.05;
/// Measured and promised sizes agree within this, in mm.
pub const SIZE: f64 = 0.01;
/// Folds agree within this, in degrees.
const TURNED: f64 = 0.05;
/// Poses tried in each move.
const FRAMES: u32 = 24;
/// A tuck bows by at most this share of its length.
const MOST_BOW: f64 = 0.125;

/// Every fault of `assembly` in card of thickness `t`; none is the proof.
#[must_use]
pub fn faults(assembly: &Assembly, t: Length) -> Vec<Fault> {
    let mut found = Vec::new();
    for part in &assembly.parts {
        let before = found.len();
        found.extend(part_faults(part, t));
        if found[before..].iter().any(Fault::is_flat) {
            return found;
        }
    }
    found.extend(promises(assembly, t));
    found.extend(join::faults(assembly, t));
    found
}

impl Fault {
    /// Whether the flat pattern itself is wrong, so that it is not worth folding.
    const fn is_flat(&self) -> bool {
        matches!(self, Self::AreaLost | Self::HoleAtEdge(_) | Self::Loose(_))
    }
}

/// Every fault of `part` by itself, but for the sizes that it promises.
#[must_use]
pub fn part_faults(part: &Part, t: Length) -> Vec<Fault> {
    let mut found = flat_faults(part);
    if let Some(strips) = &part.strips {
        found.extend(flat_faults(strips));
        found.extend(other_strips(part, strips));
    }
    if !found.is_empty() {
        return found;
    }
    let part = part.rigid();
    found.extend(part.meets.iter().filter_map(|m| apart(part, m)));
    found.extend(open_loops(part));
    found.extend(part.net.glue.iter().filter_map(|g| glue_misses(part, g, t)));
    found.extend(crossings(part, t));
    found
}

/// What is measured and is not as promised: of each part that promises, and of the whole.
fn promises(assembly: &Assembly, t: Length) -> Vec<Fault> {
    let mut found = Vec::new();
    for part in &assembly.parts {
        if let Some(inside) = part.inside {
            compare(&mut found, room(&without_tabs(leaves(part, t)), inside, t), inside, Fault::Inside);
        }
        if let Some(outside) = part.outside {
            compare(&mut found, outside_of(part, t), outside, Fault::Outside);
        }
    }
    // Dividers and the like promise no inside, and take no part in the inside of the whole.
    let none = assembly.parts.iter().all(|p| p.inside.is_none());
    let rooms = without_tabs(assembled(assembly, t, |p| none || p.inside.is_some()));
    if assembly.inside != Size::default() {
        compare(&mut found, room(&rooms, assembly.inside, t), assembly.inside, Fault::Inside);
    }
    compare(&mut found, taken(&assembled(assembly, t, |_| true), t), assembly.outside, Fault::Outside);
    found
}

/// What is free between `rooms`: where panels lean, the most that a block of the promised size can grow each way.
fn room(rooms: &[Leaf], promised: Size, t: Length) -> Measured {
    if rooms.iter().any(leans) {
        let block = [promised.width, promised.depth, promised.height].map(Length::as_mm);
        Hollow::of(rooms, t).room(block)
    } else {
        free(rooms, t)
    }
}

fn compare(found: &mut Vec<Fault>, m: Measured, promised: Size, fault: fn(f64, f64) -> Fault) {
    let promised = [promised.width, promised.depth, promised.height].map(Length::as_mm);
    let pairs = [m.width, m.depth, m.height].into_iter().zip(promised);
    found.extend(pairs.filter_map(|(m, p)| m.filter(|m| (m - p).abs() > SIZE).map(|m| fault(m, p))));
}

/// What must be left between a hole and an edge, in mm.
const RIM: f64 = 2.0;

fn flat_faults(part: &Part) -> Vec<Fault> {
    let net = &part.net;
    let mut found = Vec::new();
    for hole in &net.holes {
        let outline: Vec<V3> = net.panel(hole.panel).outline.corners.iter().map(|&c| flat(c)).collect();
        let reach = hole.radius.as_mm() + RIM;
        let ways = [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)];
        if ways.iter().any(|w| !inside(&outline, flat(hole.at) + V3::new(w.0, w.1, 0.0) * reach)) {
            found.push(Fault::HoleAtEdge(hole.panel));
        }
    }
    let whole = net.blank;
    let beyond = |p: &Point| p.x < whole.min.x || p.x > whole.max.x || p.y < whole.min.y || p.y > whole.max.y;
    if net.accounted() != whole.area() || net.panels.iter().any(|p| p.outline.corners.iter().any(beyond)) {
        found.push(Fault::AreaLost);
    }
    let mut reached = vec![false; net.panels.len()];
    if let Some(root) = reached.first_mut() {
        *root = true;
    }
    for crease in &net.creases {
        if !reached[crease.near.0] {
            found.push(Fault::Loose(crease.near));
        }
        reached[crease.far.0] = true;
    }
    found.extend(reached.iter().enumerate().filter(|(_, r)| !**r).map(|(i, _)| Fault::Loose(PanelId(i))));
    found
}

/// Whether strips make up each panel.
fn other_strips(part: &Part, strips: &Part) -> Option<Fault> {
    let area = |net: &Net, name: &str| -> Area {
        net.panels.iter().filter(|p| p.name == name).map(|p| p.outline.area()).sum()
    };
    let mut names = part.net.panels.iter().chain(&strips.net.panels).map(|p| p.name);
    names.any(|n| area(&part.net, n) != area(&strips.net, n)).then_some(Fault::AreaLost)
}

/// Whether creases that close a loop are at the same place on both their panels, and fold as they say.
fn open_loops(part: &Part) -> Vec<Fault> {
    let pose = Pose::of(part, &folded(part), Length::ZERO);
    let open = |c: &Crease| {
        let by = [c.from, c.to].map(|p| (pose.point(c.near, p) - pose.point(c.far, p)).norm()).into_iter();
        let by = by.fold(0.0, f64::max);
        // As the tree of creases would turn it.
        let turned = pose.panels[c.near.0].after(&bent(&part.net, c, c.fold.as_degrees())).axes[2];
        let degrees = libm::acos(turned.dot(pose.out(c.far)).clamp(-1.0, 1.0)).to_degrees();
        let fault = Fault::LoopOpen { panels: (c.near, c.far), by, degrees };
        (by > MEETING || degrees > TURNED).then_some(fault)
    };
    part.net.loops.iter().filter_map(open).collect()
}

fn apart(part: &Part, meet: &Meet) -> Option<Fault> {
    // On the scores themselves: layers are no part of what must meet.
    let pose = Pose::of(part, &folded(part), Length::ZERO);
    let in_space = |at: (PanelId, Side)| {
        let (a, b) = part.net.panel(at.0).side(at.1);
        (pose.point(at.0, a), pose.point(at.0, b))
    };
    let (a, b) = in_space(meet.edge);
    let (c, d) = in_space(meet.along);
    let line = (d - c).unit();
    let off = |p: V3| {
        let way = p - c;
        (way - line * way.dot(line)).norm()
    };
    let wrong = [a, b].map(|p| (off(p) - meet.gap.as_mm()).abs());
    let by = wrong[0].max(wrong[1]);
    (by > MEETING).then_some(Fault::Apart { meet: *meet, by })
}

fn glue_misses(part: &Part, glue: &Glue, t: Length) -> Option<Fault> {
    let pose = Pose::of(part, &folded(part), t);
    let outlines: Vec<Vec<V3>> =
        glue.onto.iter().map(|p| part.net.panel(*p).outline.corners.iter().map(|&c| flat(c)).collect()).collect();
    // Its edge lies on that of its partner, where a hair decides: places a hair within are tried.
    let within = glue.area.inset(Length::round_mm(MEETING)).unwrap_or_else(|| glue.area.clone());
    let area: Vec<V3> = within.corners.iter().map(|&c| flat(c)).collect();
    let bounds = within.bounds();
    let out = pose.out(glue.on) * if glue.face == Face::Outside { 1.0 } else { -1.0 };
    let (mut tried, mut missed) = (0_u32, 0_u32);
    for i in 0..=20 {
        for j in 0..=20 {
            let p =
                Point::new(bounds.min.x + bounds.width().scaled(i, 20), bounds.min.y + bounds.height().scaled(j, 20));
            let p = flat(p);
            if !inside(&area, p) {
                continue;
            }
            tried += 1;
            let here = pose.panels[glue.on.0].apply(p);
            let lands = glue.onto.iter().zip(&outlines).any(|(partner, outline)| {
                let at = pose.panels[partner.0];
                let hit = at.back(here);
                // One or two layers away, on the side that was glued.
                let away = (at.apply(V3::new(hit.x, hit.y, 0.0)) - here).dot(out);
                inside(outline, hit) && away > 0.0 && away < 2.0 * t.as_mm() + MEETING
            });
            missed += u32::from(!lands);
        }
    }
    (missed > 0 || tried == 0).then(|| Fault::GlueMisses {
        on: glue.on,
        percent: if tried == 0 { 100 } else { (missed * 100).div_ceil(tried) },
    })
}

/// Panels that a move carries along together, by a number each.
fn groups(net: &Net, way: &Way) -> Vec<usize> {
    let turns = |i: usize| match way {
        Way::Even(all) | Way::EndOnly { creases: all, .. } => all.iter().any(|c| c.0 == i),
        Way::TuckIn { lid, tuck, .. } => lid.0 == i || tuck.0 == i,
        Way::Sprung { closing, tucks, .. } => closing.iter().chain(tucks).any(|c| c.0 == i),
    };
    let mut group = vec![0; net.panels.len()];
    for (i, crease) in net.creases.iter().enumerate() {
        group[crease.far.0] = if turns(i) { i + 1 } else { group[crease.near.0] };
    }
    group
}

fn crossings(part: &Part, t: Length) -> Vec<Fault> {
    let shrunk = Shrunk::of(part, t);
    let mut found: Vec<Fault> = Vec::new();
    for (i, m) in part.moves.iter().enumerate() {
        let mut slides: Option<PanelId> = None;
        if let Way::TuckIn { tuck, gap, .. } = &m.way {
            let room = gap.as_mm() - t.as_mm() / 2.0;
            let passage = Passage::of(&part.net, *tuck);
            let bow = passage.widest() - room;
            if room < t.as_mm() || bow > passage.tuck * MOST_BOW {
                found.push(Fault::TuckStuck { bow });
            }
            slides = part.net.creases.get(tuck.0).map(|c| c.far);
        }
        let first = if matches!(m.way, Way::EndOnly { .. }) { FRAMES } else { 1 };
        let group = groups(&part.net, &m.way);
        for frame in first..=FRAMES {
            let progress = i as f64 + f64::from(frame) / f64::from(FRAMES);
            let pose = Pose::of(part, &bends(part, progress), t);
            for (a, b) in shrunk.crossings(&pose, &group) {
                // On its way in a tuck bows: there its passage is proved above; at rest it is held like any panel.
                let bowing = frame < FRAMES && slides.is_some_and(|s| s == a || s == b);
                let known = found.iter().any(|f| matches!(f, Fault::Crossing { a: x, b: y, .. } if (*x, *y) == (a, b)));
                if !bowing && !known {
                    found.push(Fault::Crossing { during: m.name, a, b });
                }
            }
        }
    }
    found
}
