//! What is free inside a folded part and what it takes up, measured on the panels in space.

use crate::assembly::parts::{Assembly, Part, Size};
use crate::measure::length::Length;
use crate::net::flat::{Duty, PanelId};

use super::cross::inside;
use super::motion::folded;
use super::pose::{Pose, flat, standing};
use super::space::{Rigid, V3};

/// Width, depth and height in millimetres; a direction in which nothing closes is not there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// Left to right.
    pub width: Option<f64>,
    /// Front to back.
    pub depth: Option<f64>,
    /// Bottom to top.
    pub height: Option<f64>,
}

/// Where rays start, from the middle, as a share of the way to the walls: near them too, where flaps are short.
const RAYS: [f64; 7] = [-0.98, -0.7, -0.35, 0.0, 0.35, 0.7, 0.98];

/// A panel in space.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    /// What it does.
    pub duty: Duty,
    /// Where it stands; its third axis points out of its outside.
    pub at: Rigid,
    /// Its outline in its own plane.
    pub outline: Vec<V3>,
}

impl Leaf {
    /// Lowest and highest place of the card of thickness `t`, along each axis: card has thickness across itself, and
    /// its edges end where they are cut.
    #[must_use]
    pub fn bounds(&self, t: Length) -> (V3, V3) {
        let (low, high) = corners(std::slice::from_ref(self));
        let out = self.at.axes[2];
        let thick = V3::new(out.x.abs(), out.y.abs(), out.z.abs()) * (t.as_mm() / 2.0);
        (low - thick, high + thick)
    }
}

/// The panels of `part`, folded from card of thickness `t`, in its own space.
#[must_use]
pub fn leaves(part: &Part, t: Length) -> Vec<Leaf> {
    leaves_at(part, t, &Rigid::STAY)
}

/// The panels of `part` in their order, folded from card of thickness `t`, where it stands.
#[must_use]
pub fn leaves_at(part: &Part, t: Length, at: &Rigid) -> Vec<Leaf> {
    let part = part.rigid();
    let pose = Pose::of(part, &folded(part), t).placed(at);
    let panels = part.net.panels.iter().zip(pose.panels);
    panels
        .map(|(p, at)| Leaf { duty: p.duty, at, outline: p.outline.corners.iter().map(|&c| flat(c)).collect() })
        .collect()
}

/// The panels of those parts of `assembly` that `which` takes, as they stand when all is put together.
#[must_use]
pub fn assembled(assembly: &Assembly, t: Length, which: impl Fn(&Part) -> bool) -> Vec<Leaf> {
    let parts = assembly.parts.iter().filter(|p| which(p));
    parts.flat_map(|p| p.stands.iter().flat_map(move |s| leaves_at(p, t, &standing(s)))).collect()
}

/// The free inside of `part`, folded from card of thickness `t`: see [`free`]. A tab or tuck glued or slid against one
/// wall is left aside: it takes one more thickness in its own place.
#[must_use]
pub fn inside_of(part: &Part, t: Length) -> Measured {
    free(&without_tabs(leaves(part, t)), t)
}

/// Panels without the tabs and tucks that lie against a wall, and without ridges.
#[must_use]
pub fn without_tabs(mut leaves: Vec<Leaf>) -> Vec<Leaf> {
    leaves.retain(|l| !matches!(l.duty, Duty::Tab | Duty::Tuck | Duty::Ridge));
    leaves
}

/// The free inside of panels in card of thickness `t`: the shortest way between opposite faces over a field of rays
/// through the middle.
#[must_use]
pub fn free(leaves: &[Leaf], t: Length) -> Measured {
    let (low, high) = corners(leaves);
    let middle = (low + high) * 0.5;
    let half = (high - low) * 0.5;
    let unit = [V3::new(1.0, 0.0, 0.0), V3::new(0.0, 1.0, 0.0), V3::new(0.0, 0.0, 1.0)];
    // A tab is narrow: a field of rays can miss it.
    let narrow = leaves.iter().filter(|l| l.duty == Duty::Tab);
    let tabs: Vec<V3> = narrow
        .map(|l| {
            let (low, high) = corners(std::slice::from_ref(l));
            (low + high) * 0.5
        })
        .collect();
    let measure = |axis: usize| {
        let (u, v) = (unit[(axis + 1) % 3], unit[(axis + 2) % 3]);
        let mut least: Option<f64> = None;
        let field = RAYS.iter().flat_map(|i| RAYS.iter().map(move |j| (*i, *j)));
        let field = field.map(|(i, j)| middle + u * (half.dot(u) * i) + v * (half.dot(v) * j));
        let past_tabs = tabs.iter().map(|&tab| tab + unit[axis] * (middle - tab).dot(unit[axis]));
        for from in field.chain(past_tabs) {
            let ways = [unit[axis], -unit[axis]].map(|way| reach(leaves, from, way));
            if let [Some(a), Some(b)] = ways {
                let free = a + b - t.as_mm();
                least = Some(least.map_or(free, |l| l.min(free)));
            }
        }
        least
    };
    Measured { width: measure(0), depth: measure(1), height: measure(2).or_else(|| open_height(leaves, middle, t)) }
}

/// Where nothing closes the top: from the floor to the lowest upper edge of a wall.
fn open_height(leaves: &[Leaf], middle: V3, t: Length) -> Option<f64> {
    let walls = leaves.iter().filter(|l| l.duty == Duty::Wall);
    let rim = walls.map(|l| corners(std::slice::from_ref(l)).1.z).reduce(f64::min)?;
    // The middle may be where several panels meet: beside it there is one.
    let beside = [0.0, 1.0].map(|x| middle + V3::new(x, x * 0.5, 0.0));
    let floor = beside.into_iter().filter_map(|p| reach(leaves, p, V3::new(0.0, 0.0, -1.0))).reduce(f64::min)?;
    Some(rim - (middle.z - floor) - t.as_mm() / 2.0)
}

/// What `part` takes up, folded from card of thickness `t`.
#[must_use]
pub fn outside_of(part: &Part, t: Length) -> Measured {
    taken(&leaves(part, t), t)
}

/// The lowest and the highest place that panels in card of thickness `t` reach, along each axis.
#[must_use]
pub fn bounds(leaves: &[Leaf], t: Length) -> (V3, V3) {
    span(leaves.iter().map(|l| l.bounds(t)))
}

/// What panels in card of thickness `t` take up.
#[must_use]
pub fn taken(leaves: &[Leaf], t: Length) -> Measured {
    let (low, high) = bounds(leaves, t);
    Measured { width: Some(high.x - low.x), depth: Some(high.y - low.y), height: Some(high.z - low.z) }
}

/// How much mats of thickness `mat` on these panels, each by its part, add to the outside: one layer on each face that
/// carries one.
#[must_use]
pub fn mats_add(assembly: &Assembly, panels: &[(usize, PanelId)], mat: Length) -> Size {
    let mut faces: Vec<V3> = Vec::new();
    for (i, part) in assembly.parts.iter().enumerate() {
        let rigid = part.rigid();
        let pose = Pose::of(rigid, &folded(rigid), Length::ZERO);
        let faces_of = |whole: PanelId| {
            let strips = (0..rigid.net.panels.len()).map(PanelId).filter(|&p| part.whole(p) == whole);
            strips.fold(V3::default(), |sum, p| sum + pose.out(p)).unit()
        };
        for stand in &part.stands {
            let at = standing(stand);
            for &(_, panel) in panels.iter().filter(|p| p.0 == i) {
                let out = at.turn(faces_of(panel));
                // Panels that look the same way lie side by side on one face.
                if !faces.iter().any(|f| f.dot(out) > 0.99) {
                    faces.push(out);
                }
            }
        }
    }
    let along = |axis: fn(V3) -> f64| mat * faces.iter().map(|&f| i64::from(axis(f).abs() > 0.9)).sum::<i64>();
    Size { width: along(|f| f.x), depth: along(|f| f.y), height: along(|f| f.z) }
}

/// The lowest and the highest corner of all.
fn corners(leaves: &[Leaf]) -> (V3, V3) {
    span(leaves.iter().flat_map(|l| l.outline.iter().map(|&p| l.at.apply(p))).map(|p| (p, p)))
}

fn span(all: impl Iterator<Item = (V3, V3)>) -> (V3, V3) {
    let start = (V3::new(f64::MAX, f64::MAX, f64::MAX), V3::new(f64::MIN, f64::MIN, f64::MIN));
    all.fold(start, |(low, high), (a, b)| {
        (
            V3::new(low.x.min(a.x), low.y.min(a.y), low.z.min(a.z)),
            V3::new(high.x.max(b.x), high.y.max(b.y), high.z.max(b.z)),
        )
    })
}

/// How far from `from` the nearest panel is, along `way`.
fn reach(leaves: &[Leaf], from: V3, way: V3) -> Option<f64> {
    let mut nearest: Option<f64> = None;
    for leaf in leaves {
        let slope = leaf.at.axes[2].dot(way);
        if slope.abs() < 1e-9 {
            continue;
        }
        let far = (leaf.at.origin - from).dot(leaf.at.axes[2]) / slope;
        if far > 0.0 && inside(&leaf.outline, leaf.at.back(from + way * far)) {
            nearest = Some(nearest.map_or(far, |n| n.min(far)));
        }
    }
    nearest
}
