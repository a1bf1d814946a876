//! Flat shapes standing in space, drawn from far to near.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use super::drawing::{Area, Drawing, Ends, Fill, Ink, Line, Mark, Meaning, Spot, Touch};
use crate::fold::cross::inside;
use crate::fold::space::V3;
use crate::project::request::Tint;

/// Where the reader stands: in front, a little to the side and above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Turned about the upright, in degrees; above zero the right side comes to the front.
    pub turn: f64,
    /// From above, in degrees.
    pub tilt: f64,
}

impl Default for View {
    fn default() -> Self {
        Self { turn: 32.0, tilt: 28.0 }
    }
}

impl View {
    /// Where a place is seen, in millimetres, and how far away it is.
    #[must_use]
    pub fn seen(&self, p: V3) -> (Spot, f64) {
        let (s, c) = sin_cos(self.turn);
        // The set turns, the reader stays.
        let (x, y) = (p.x * c + p.y * s, p.y * c - p.x * s);
        let (up, along) = sin_cos(self.tilt);
        ([x, -(p.z * along + y * up)], y * along - p.z * up)
    }

    /// Whether a way points towards the reader, and how straight.
    fn facing(&self, way: V3) -> f64 {
        -self.seen(way).1
    }
}

fn sin_cos(degrees: f64) -> (f64, f64) {
    let a = degrees.to_radians();
    (libm::sin(a), libm::cos(a))
}

/// A flat shape of card in space, with shapes of other card lying on its outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    /// Its corners.
    pub corners: Vec<V3>,
    /// The way out of its outside.
    pub out: V3,
    /// Its card.
    pub card: Tint,
    /// The panel that a touch on it means.
    pub touch: Option<Touch>,
    /// Whether it is spoken of.
    pub chosen: Chosen,
    /// Its edges, by the corner that they begin at, where it goes on in the next leaf without a fold.
    pub bends: Vec<usize>,
    /// What lies on its outside.
    pub mats: Vec<(Vec<V3>, Tint)>,
}

/// Whether a leaf is spoken of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Chosen {
    /// It is part of the rest.
    #[default]
    No,
    /// It was touched, or the step is about it.
    Yes,
}

/// One leaf as it is seen.
struct Seen {
    shape: Vec<Spot>,
    /// The same a little smaller: where layers lie on each other, edges reach past each other by their thickness.
    core: Vec<Spot>,
    flat: Vec<V3>,
    /// From where to where it reaches, across and down.
    reach: [[f64; 2]; 2],
    /// Distance at the page's origin and its slopes across the page; none where it is seen edge on.
    distance: Option<[f64; 3]>,
    middle: f64,
}

/// Draws `leaves` from far to near.
pub fn paint(d: &mut Drawing, leaves: &[Leaf], view: View) {
    let seen: Vec<Seen> = leaves.iter().map(|l| look(l, view)).collect();
    for i in far_to_near(&seen) {
        let (leaf, seen) = (&leaves[i], &seen[i]);
        let facing = view.facing(leaf.out);
        let fill = match leaf.chosen {
            Chosen::Yes => Fill::Chosen,
            Chosen::No => Fill::Card(leaf.card, light(leaf.out, facing)),
        };
        d.marks.push(Mark::Area(Area { corners: seen.shape.clone(), fill, panel: leaf.touch }));
        edge(d, &seen.shape, &leaf.bends, leaf.card);
        if facing > 0.0 {
            for (corners, tint) in &leaf.mats {
                let shape: Vec<Spot> = corners.iter().map(|&p| view.seen(p).0).collect();
                if leaf.chosen == Chosen::No {
                    d.marks.push(Mark::Area(Area {
                        corners: shape.clone(),
                        fill: Fill::Card(*tint, light(leaf.out, facing)),
                        panel: leaf.touch,
                    }));
                }
                if leaf.bends.is_empty() {
                    edge(d, &shape, &[], *tint);
                }
            }
        }
    }
}

fn edge(d: &mut Drawing, shape: &[Spot], bends: &[usize], card: Tint) {
    let mut line = |run: Vec<Spot>, ends| {
        d.marks.push(Mark::Line(Line { meaning: Meaning::Edge, run, ends, ink: Ink::Card(card) }));
    };
    if bends.is_empty() {
        line(shape.to_vec(), Ends::Closed);
        return;
    }
    for (i, &from) in shape.iter().enumerate().filter(|(i, _)| !bends.contains(i)) {
        line(vec![from, shape[(i + 1) % shape.len()]], Ends::Open);
    }
}

/// Light falls from above on the left; insides are a little paler, as the core of card is.
fn light(out: V3, facing: f64) -> f64 {
    let lamp = V3::new(-0.45, -0.55, 0.70).unit();
    if facing >= 0.0 { out.dot(lamp) * 0.22 - 0.06 } else { (-out).dot(lamp) * 0.16 + 0.18 }
}

/// How much of a leaf is left aside, towards its middle, where it is asked which of two is behind.
const CORE: f64 = 0.06;

fn look(leaf: &Leaf, view: View) -> Seen {
    let all: Vec<(Spot, f64)> = leaf.corners.iter().map(|&p| view.seen(p)).collect();
    let n = all.len().max(1) as f64;
    let middle = all.iter().map(|a| a.1).sum::<f64>() / n;
    let shape: Vec<Spot> = all.iter().map(|a| a.0).collect();
    let [x, y] = shape.iter().fold([0.0, 0.0], |sum, s| [sum[0] + s[0] / n, sum[1] + s[1] / n]);
    let core: Vec<Spot> = shape.iter().map(|s| [s[0] + (x - s[0]) * CORE, s[1] + (y - s[1]) * CORE]).collect();
    let flat = core.iter().map(|s| V3::new(s[0], s[1], 0.0)).collect();
    let reach = [0, 1].map(|k| core.iter().fold([f64::MAX, f64::MIN], |r, s| [r[0].min(s[k]), r[1].max(s[k])]));
    Seen { distance: plane(&all), shape, core, flat, reach, middle }
}

/// Distance as a plane over the page, from the two widest-apart edges.
fn plane(all: &[(Spot, f64)]) -> Option<[f64; 3]> {
    let (o, od) = *all.first()?;
    let ways = || all.iter().map(|(s, d)| ([s[0] - o[0], s[1] - o[1]], d - od));
    let long = |v: &[f64; 2]| v[0] * v[0] + v[1] * v[1];
    let (u, ud) = ways().max_by(|a, b| long(&a.0).total_cmp(&long(&b.0)))?;
    let cross = |v: &[f64; 2]| u[0] * v[1] - u[1] * v[0];
    let (v, vd) = ways().max_by(|a, b| cross(&a.0).abs().total_cmp(&cross(&b.0).abs()))?;
    let c = cross(&v);
    if c.abs() < 1e-3 * long(&u).max(1e-9) {
        return None;
    }
    let slope_x = (ud * v[1] - vd * u[1]) / c;
    let slope_y = (vd * u[0] - ud * v[0]) / c;
    Some([od - slope_x * o[0] - slope_y * o[1], slope_x, slope_y])
}

/// The order of painting: a leaf that is behind another where they overlap comes before it.
fn far_to_near(seen: &[Seen]) -> Vec<usize> {
    let n = seen.len();
    // Who comes after each, and for how many each still waits.
    let mut after: Vec<Vec<usize>> = vec![Vec::new(); n];
    let mut waits = vec![0_usize; n];
    // From left to right: what begins where a leaf has ended does not overlap it.
    let mut across: Vec<usize> = (0..n).collect();
    across.sort_by(|&a, &b| seen[a].reach[0][0].total_cmp(&seen[b].reach[0][0]));
    for (nth, &left) in across.iter().enumerate() {
        let ends = seen[left].reach[0][1];
        for &right in across.iter().skip(nth + 1).take_while(|&&i| seen[i].reach[0][0] <= ends) {
            let (a, b) = (left.min(right), left.max(right));
            let (first, then) = match behind(&seen[a], &seen[b]) {
                Some(true) => (a, b),
                Some(false) => (b, a),
                None => continue,
            };
            after[first].push(then);
            waits[then] += 1;
        }
    }
    // Of those with the fewest behind them, the farthest: none at all, but where leaves lie in a ring.
    let next = |leaf: usize, waits: usize| Next { waits, middle: seen[leaf].middle, leaf };
    let mut left: BinaryHeap<Next> = (0..n).map(|leaf| next(leaf, waits[leaf])).collect();
    let mut drawn = vec![false; n];
    let mut order = Vec::with_capacity(n);
    while let Some(Next { leaf, waits: then, .. }) = left.pop() {
        // It has waited for fewer since, and stands there as such.
        if drawn[leaf] || then != waits[leaf] {
            continue;
        }
        drawn[leaf] = true;
        for &then in &after[leaf] {
            waits[then] -= 1;
            if !drawn[then] {
                left.push(next(then, waits[then]));
            }
        }
        order.push(leaf);
    }
    order
}

/// A leaf that is still to be painted; the greatest comes next.
struct Next {
    waits: usize,
    middle: f64,
    leaf: usize,
}

impl Ord for Next {
    fn cmp(&self, other: &Self) -> Ordering {
        let fewer = other.waits.cmp(&self.waits);
        fewer.then(self.middle.total_cmp(&other.middle)).then(self.leaf.cmp(&other.leaf))
    }
}

impl PartialOrd for Next {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Next {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Next {}

/// Whether `a` is behind `b` where they overlap; nothing where they do not, or lie in one plane.
fn behind(a: &Seen, b: &Seen) -> Option<bool> {
    let (pa, pb) = (a.distance?, b.distance?);
    let common = overlap(a, b)?;
    let at = |p: [f64; 3]| p[0] + p[1] * common[0] + p[2] * common[1];
    let ahead = at(pa) - at(pb);
    (ahead.abs() > 1e-4).then_some(ahead > 0.0)
}

/// A place inside both shapes; nothing where they share less than a line.
fn overlap(a: &Seen, b: &Seen) -> Option<Spot> {
    if (0..2).any(|k| a.reach[k][1] < b.reach[k][0] || b.reach[k][1] < a.reach[k][0]) {
        return None;
    }
    let mut shared: Vec<Spot> = Vec::new();
    shared.extend(a.core.iter().filter(|s| inside(&b.flat, V3::new(s[0], s[1], 0.0))));
    shared.extend(b.core.iter().filter(|s| inside(&a.flat, V3::new(s[0], s[1], 0.0))));
    for i in 0..a.core.len() {
        for j in 0..b.core.len() {
            let (p, q) = (a.core[i], a.core[(i + 1) % a.core.len()]);
            let (r, s) = (b.core[j], b.core[(j + 1) % b.core.len()]);
            shared.extend(crossing(p, q, r, s));
        }
    }
    let size = |k: usize| {
        let all = shared.iter().map(|s| s[k]);
        all.clone().fold(f64::MIN, f64::max) - all.fold(f64::MAX, f64::min)
    };
    if shared.len() < 3 || size(0) < 0.2 || size(1) < 0.2 {
        return None;
    }
    let n = shared.len() as f64;
    let sum = shared.iter().fold([0.0, 0.0], |t, s| [t[0] + s[0], t[1] + s[1]]);
    Some([sum[0] / n, sum[1] / n])
}

fn crossing(p: Spot, q: Spot, r: Spot, s: Spot) -> Option<Spot> {
    let (u, v) = ([q[0] - p[0], q[1] - p[1]], [s[0] - r[0], s[1] - r[1]]);
    let c = u[0] * v[1] - u[1] * v[0];
    if c.abs() < 1e-9 {
        return None;
    }
    let w = [r[0] - p[0], r[1] - p[1]];
    let (t, k) = ((w[0] * v[1] - w[1] * v[0]) / c, (w[0] * u[1] - w[1] * u[0]) / c);
    ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&k)).then(|| [p[0] + u[0] * t, p[1] + u[1] * t])
}
