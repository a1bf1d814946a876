//! What is free inside a folded part and what it takes up, measured on the panels in space.

use crate::form::assembly::{Part, Size};
use crate::measure::length::Length;
use crate::net::flat::{Duty, PanelId};

use super::cross::inside;
use super::motion::folded;
use super::pose::{Pose, flat};
use super::space::V3;

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

/// The free inside of `part`, folded from card of thickness `t`: the shortest way between opposite faces over a field
/// of rays through the middle. A tab or tuck glued or slid against one wall is left aside: it takes one more thickness
/// in its own place.
#[must_use]
pub fn inside_of(part: &Part, t: Length) -> Measured {
    let pose = Pose::of(part, &folded(part), t);
    let walls: Vec<usize> =
        (0..part.net.panels.len()).filter(|&i| !matches!(part.net.panels[i].duty, Duty::Tab | Duty::Tuck)).collect();
    let (low, high) = extent(part, &pose, &walls);
    let middle = (low + high) * 0.5;
    let half = (high - low) * 0.5;
    let unit = [V3::new(1.0, 0.0, 0.0), V3::new(0.0, 1.0, 0.0), V3::new(0.0, 0.0, 1.0)];
    let measure = |axis: usize| {
        let (u, v) = (unit[(axis + 1) % 3], unit[(axis + 2) % 3]);
        let mut least: Option<f64> = None;
        for i in RAYS {
            for j in RAYS {
                let from = middle + u * (half.dot(u) * i) + v * (half.dot(v) * j);
                let ways = [unit[axis], -unit[axis]].map(|way| reach(part, &pose, &walls, from, way));
                if let [Some(a), Some(b)] = ways {
                    let free = a + b - t.as_mm();
                    least = Some(least.map_or(free, |l| l.min(free)));
                }
            }
        }
        least
    };
    Measured {
        width: measure(0),
        depth: measure(1),
        height: measure(2).or_else(|| open_height(part, &pose, &walls, middle, t)),
    }
}

/// Where nothing closes the top: from the floor to the lowest upper edge of a wall.
fn open_height(part: &Part, pose: &Pose, panels: &[usize], middle: V3, t: Length) -> Option<f64> {
    let top = |i: usize| {
        let outline = &part.net.panels[i].outline;
        pose.outline(PanelId(i), outline).iter().map(|p| p.z).fold(f64::MIN, f64::max)
    };
    let rims = panels.iter().filter(|&&i| part.net.panels[i].duty == Duty::Wall).map(|&i| top(i));
    let rim = rims.reduce(f64::min)?;
    let floor = reach(part, pose, panels, middle, V3::new(0.0, 0.0, -1.0))?;
    Some(rim - (middle.z - floor) - t.as_mm() / 2.0)
}

/// What `part` takes up, folded from card of thickness `t`.
#[must_use]
pub fn outside_of(part: &Part, t: Length) -> Measured {
    let pose = Pose::of(part, &folded(part), t);
    let all: Vec<usize> = (0..part.net.panels.len()).collect();
    let half = t.as_mm() / 2.0;
    let (mut low, mut high) = (V3::new(f64::MAX, f64::MAX, f64::MAX), V3::new(f64::MIN, f64::MIN, f64::MIN));
    for &i in &all {
        let panel = &part.net.panels[i];
        let out = pose.panels[i].axes[2];
        // Card has thickness across itself; its edges end where they are cut.
        let thick = V3::new(out.x.abs(), out.y.abs(), out.z.abs()) * half;
        for p in &panel.outline.corners {
            let p = pose.panels[i].apply(flat(*p));
            low = V3::new(low.x.min(p.x - thick.x), low.y.min(p.y - thick.y), low.z.min(p.z - thick.z));
            high = V3::new(high.x.max(p.x + thick.x), high.y.max(p.y + thick.y), high.z.max(p.z + thick.z));
        }
    }
    Measured { width: Some(high.x - low.x), depth: Some(high.y - low.y), height: Some(high.z - low.z) }
}

/// How much mats of thickness `mat` on these panels add to the outside: one layer on each face that carries one.
#[must_use]
pub fn mats_add(part: &Part, panels: &[PanelId], mat: Length) -> Size {
    let pose = Pose::of(part, &folded(part), Length::ZERO);
    let mut faces: Vec<V3> = Vec::new();
    for &panel in panels {
        let out = pose.out(panel);
        // Panels that look the same way lie side by side on one face.
        if !faces.iter().any(|f| f.dot(out) > 0.99) {
            faces.push(out);
        }
    }
    let along = |axis: fn(V3) -> f64| mat * faces.iter().map(|&f| i64::from(axis(f).abs() > 0.9)).sum::<i64>();
    Size { width: along(|f| f.x), depth: along(|f| f.y), height: along(|f| f.z) }
}

fn extent(part: &Part, pose: &Pose, panels: &[usize]) -> (V3, V3) {
    let (mut low, mut high) = (V3::new(f64::MAX, f64::MAX, f64::MAX), V3::new(f64::MIN, f64::MIN, f64::MIN));
    for &i in panels {
        for p in &part.net.panels[i].outline.corners {
            let p = pose.panels[i].apply(flat(*p));
            low = V3::new(low.x.min(p.x), low.y.min(p.y), low.z.min(p.z));
            high = V3::new(high.x.max(p.x), high.y.max(p.y), high.z.max(p.z));
        }
    }
    (low, high)
}

/// How far from `from` the nearest panel is, along `way`.
fn reach(part: &Part, pose: &Pose, panels: &[usize], from: V3, way: V3) -> Option<f64> {
    let mut nearest: Option<f64> = None;
    for &i in panels {
        let at = &pose.panels[i];
        let slope = at.axes[2].dot(way);
        if slope.abs() < 1e-9 {
            continue;
        }
        let far = (at.origin - from).dot(at.axes[2]) / slope;
        if far <= 0.0 {
            continue;
        }
        let hit = at.back(from + way * far);
        let outline: Vec<V3> = part.net.panels[i].outline.corners.iter().map(|&p| flat(p)).collect();
        if inside(&outline, hit) {
            nearest = Some(nearest.map_or(far, |n| n.min(far)));
        }
    }
    nearest
}
