//! What lies on what, and which edges come together, found by folding.

use crate::assembly::parts::{Meet, Part, Root};
use crate::fold::cross::inside;
use crate::fold::pose::{Bend, Pose, flat};
use crate::fold::space::V3;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Frame, Net, PanelId};

/// What comes within this is meant to meet, in mm: about ¼ in.
pub const NEAR: f64 = 6.4;
/// What meets is this near, in mm.
pub const MET: f64 = 0.05;
/// How nearly panels are parallel that lie on each other: the cosine of two degrees.
const PARALLEL: f64 = 0.999_39;
/// Places tried along each side of a panel.
const PLACES: i32 = 6;

/// A net with every crease folded to its end, on its scores.
pub struct Folded {
    /// Where each panel is.
    pub pose: Pose,
}

/// A panel on another one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// What lies on the other.
    pub on: PanelId,
    /// What it lies on.
    pub onto: PanelId,
    /// How far it is from its plane, in mm.
    pub off: f64,
    /// How far the score of the first is from the nearest edge of the other, in mm.
    pub edge: f64,
    /// How much of it lies on the other, from 0 to 1.
    pub share: f64,
    /// True where both outsides look the same way.
    pub same: bool,
}

impl Contact {
    /// Whether it lies there as it should.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.off <= MET && (self.edge <= MET || self.edge > NEAR) && self.share > 0.95
    }

    /// How far it misses.
    #[must_use]
    pub fn by(&self) -> f64 {
        let edge = if self.edge > NEAR { 0.0 } else { self.edge };
        self.off.max(edge)
    }
}

/// Both ends of a side as it is scored, before anything is cut off.
#[must_use]
pub fn scored(net: &Net, panel: PanelId, side: Side) -> (Point, Point) {
    let p = net.panel(panel);
    if p.frame != Frame::Upright {
        return p.side(side);
    }
    let (a, b) = (p.cell.min, p.cell.max);
    let (right, left) = (Point::new(b.x, a.y), Point::new(a.x, b.y));
    match side {
        Side::Top => (a, right),
        Side::Right => (right, b),
        Side::Bottom => (left, b),
        Side::Left => (a, left),
    }
}

const SIDES: [Side; 4] = [Side::Top, Side::Right, Side::Bottom, Side::Left];

impl Folded {
    /// Folds `net`, whose first panel stands as `root`.
    #[must_use]
    pub fn of(net: &Net, root: Root) -> Self {
        let bends: Vec<Bend> =
            net.creases.iter().map(|c| Bend { degrees: c.fold.as_degrees(), settled: 1.0 }).collect();
        let part = Part::alone("box", net.clone(), root, Vec::new(), Vec::new());
        Self { pose: Pose::of(&part, &bends, Length::ZERO) }
    }

    /// Places spread over a panel, in space.
    fn places(&self, net: &Net, panel: PanelId) -> Vec<V3> {
        let p = net.panel(panel);
        let outline: Vec<V3> = p.outline.corners.iter().map(|&c| flat(c)).collect();
        let bounds = p.outline.bounds();
        let (low, wide, high) = (flat(bounds.min), bounds.width().as_mm(), bounds.height().as_mm());
        let share = |i: i32| f64::from(2 * i + 1) / f64::from(2 * PLACES);
        let all = (0..PLACES).flat_map(|i| (0..PLACES).map(move |j| (i, j)));
        let places = all.map(|(i, j)| low + V3::new(wide * share(i), -high * share(j), 0.0));
        places.filter(|p| inside(&outline, *p)).map(|p| self.pose.panels[panel.0].apply(p)).collect()
    }

    /// How `on` lies on `onto`; nothing where it does not, nor nearly.
    #[must_use]
    pub fn contact(&self, net: &Net, on: PanelId, onto: PanelId) -> Option<Contact> {
        let (a, b) = (self.pose.out(on), self.pose.out(onto));
        let along = a.dot(b);
        if along.abs() < PARALLEL {
            return None;
        }
        let at = &self.pose.panels[onto.0];
        let off = (self.pose.point(on, net.panel(on).middle()) - at.origin).dot(b).abs();
        if off > NEAR {
            return None;
        }
        let outline: Vec<V3> = net.panel(onto).outline.corners.iter().map(|&c| flat(c)).collect();
        let places = self.places(net, on);
        let hits = places.iter().filter(|p| inside(&outline, at.back(**p))).count();
        let share = hits as f64 / places.len().max(1) as f64;
        if share < 0.3 {
            return None;
        }
        let edge = net.carrier(on).and_then(|c| net.creases.get(c.0)).map_or(0.0, |c| {
            let line = [c.from, c.to].map(|p| at.back(self.pose.point(on, p)));
            let (from, way) = (line[0], V3::new(line[1].x - line[0].x, line[1].y - line[0].y, 0.0).unit());
            let off = |p: Point| {
                let to = flat(p) - from;
                (to.x * way.y - to.y * way.x).abs()
            };
            let sides = SIDES.map(|s| scored(net, onto, s));
            let far = |s: &(Point, Point)| off(s.0).max(off(s.1));
            sides.iter().filter(|s| s.0 != s.1).map(far).fold(f64::INFINITY, f64::min)
        });
        Some(Contact { on, onto, off, edge, share, same: along > 0.0 })
    }

    /// How much of a panel lies over another one as that was scored, before anything is cut off it: from 0 to 1.
    #[must_use]
    pub fn over(&self, net: &Net, on: PanelId, onto: PanelId) -> f64 {
        let cell: Vec<V3> = net.panel(onto).cell.outline().corners.iter().map(|&c| flat(c)).collect();
        let places = self.places(net, on);
        let hits = places.iter().filter(|p| inside(&cell, self.pose.panels[onto.0].back(**p))).count();
        hits as f64 / places.len().max(1) as f64
    }

    /// What a tab lies on best.
    #[must_use]
    pub fn partner(&self, net: &Net, tab: PanelId) -> Option<Contact> {
        let near = net.carrier(tab).and_then(|c| net.creases.get(c.0)).map(|c| c.near);
        let others = (0..net.panels.len()).map(PanelId).filter(|q| *q != tab && Some(*q) != near);
        let walls = others.filter(|q| !matches!(net.panel(*q).duty, Duty::Tab | Duty::Tuck | Duty::DustFlap));
        let good = |c: &Contact| c.share - c.by() / NEAR;
        walls.filter_map(|q| self.contact(net, tab, q)).max_by(|a, b| good(a).total_cmp(&good(b)))
    }

    /// All pairs of panels of which one lies on the other, exactly.
    #[must_use]
    pub fn layers(&self, net: &Net) -> Vec<Contact> {
        let n = net.panels.len();
        let pairs = (0..n).flat_map(|a| (0..n).map(move |b| (PanelId(a), PanelId(b)))).filter(|(a, b)| a != b);
        let apart = |a: PanelId, b: PanelId| {
            let far = |p: PanelId| {
                let size = net.panel(p).outline.bounds();
                V3::new(size.width().as_mm(), size.height().as_mm(), 0.0).norm() / 2.0
            };
            let middle = |p: PanelId| {
                let size = net.panel(p).outline.bounds();
                self.pose.point(p, Point::new((size.min.x + size.max.x).half(), (size.min.y + size.max.y).half()))
            };
            (middle(a) - middle(b)).norm() > far(a) + far(b)
        };
        let near = pairs.filter(|&(a, b)| !apart(a, b));
        near.filter_map(|(a, b)| self.contact(net, a, b)).filter(|c| c.off <= MET).collect()
    }

    /// Free edges that lie along an edge or score of another panel.
    #[must_use]
    pub fn meets(&self, net: &Net) -> Vec<Meet> {
        let mut found = Vec::new();
        let creased = |panel: PanelId, side: Side| {
            let (a, b) = scored(net, panel, side);
            let on = |p: Point| (b - a).cross(p - a) == 0;
            net.folds().any(|c| (c.near == panel || c.far == panel) && on(c.from) && on(c.to))
        };
        // Every side in space, once.
        let all = (0..net.panels.len()).map(PanelId).flat_map(|p| SIDES.map(|s| (p, s)));
        let sides: Vec<Edge> = all
            .filter_map(|(panel, side)| {
                let (a, b) = scored(net, panel, side);
                let ends = (self.pose.point(panel, a), self.pose.point(panel, b));
                (a != b).then(|| Edge { panel, side, ends, creased: creased(panel, side) })
            })
            .collect();
        for edge in sides.iter().filter(|e| !e.creased) {
            let (p, side) = (edge.panel, edge.side);
            // A pair is found once.
            let others = sides.iter().filter(|o| o.panel != p && (o.creased || o.panel > p));
            let along = others.filter(|o| lies_along(edge.ends, o.ends)).map(|o| (o.panel, o.side)).next();
            // What was cut off both edges stays between them.
            let cut = |panel: PanelId, side: Side| {
                let (a, b) = net.panel(panel).side(side);
                (self.pose.point(panel, a), self.pose.point(panel, b))
            };
            found.extend(along.filter(|_| net.panel(p).frame == Frame::Upright).map(|along| {
                let ((a, _), (c, d)) = (cut(p, side), cut(along.0, along.1));
                Meet { edge: (p, side), along, gap: Length::round_mm(from_line(a, c, d)) }
            }));
        }
        found
    }
}

/// A side of a panel in space.
struct Edge {
    panel: PanelId,
    side: Side,
    ends: (V3, V3),
    creased: bool,
}

/// Whether the first lies along the second for more than half of its length.
fn lies_along((a, b): (V3, V3), (c, d): (V3, V3)) -> bool {
    let (long, way) = ((d - c).norm(), (d - c).unit());
    if from_line(a, c, d) > MET || from_line(b, c, d) > MET {
        return false;
    }
    let (from, to) = ((a - c).dot(way), (b - c).dot(way));
    let shared = from.max(to).min(long) - from.min(to).max(0.0);
    shared > (b - a).norm() * 0.5
}

/// How far a place is from the line through two others.
fn from_line(p: V3, c: V3, d: V3) -> f64 {
    let (to, way) = (p - c, (d - c).unit());
    (to - way * to.dot(way)).norm()
}
