//! Whether panels pass through each other.

use crate::assembly::parts::Part;
use crate::measure::length::Length;
use crate::measure::outline::Outline;
use crate::net::flat::PanelId;

use super::pose::{Pose, flat};
use super::space::V3;

/// How much panels are shrunk before they are held against each other: 0.3 mm or two thicknesses, whichever is more.
/// Folds are round and card gives; layers that lie on each other may touch.
#[must_use]
pub fn shrink(t: Length) -> f64 {
    (2.0 * t.as_mm()).max(0.3)
}

/// The panels of a part, shrunk, in their flat coordinates.
pub struct Shrunk {
    outlines: Vec<Vec<V3>>,
}

impl Shrunk {
    /// Shrinks every panel of `part` for card of thickness `t`.
    #[must_use]
    pub fn of(part: &Part, t: Length) -> Self {
        let by = shrink(t);
        let outlines = part.net.panels.iter().map(|p| inset(&p.outline, by)).collect();
        Self { outlines }
    }

    /// The pairs of panels that cross in `pose`, of those that do not move with each other: panels of one `group` lie to
    /// each other as they did before.
    #[must_use]
    pub fn crossings(&self, pose: &Pose, group: &[usize]) -> Vec<(PanelId, PanelId)> {
        let n = self.outlines.len();
        let placed: Vec<Vec<V3>> =
            self.outlines.iter().zip(&pose.panels).map(|(o, at)| o.iter().map(|&p| at.apply(p)).collect()).collect();
        let round: Vec<(V3, f64)> = placed.iter().map(|o| ball(o)).collect();
        let mut found = Vec::new();
        for a in 0..n {
            for b in (a + 1..n).filter(|b| group[a] != group[*b]) {
                // Most lie far from each other: that is cheaper to see.
                let (ball, other) = (round[a], round[b]);
                if (ball.0 - other.0).norm() > ball.1 + other.1 {
                    continue;
                }
                if self.pierces(&placed[a], b, pose) || self.pierces(&placed[b], a, pose) {
                    found.push((PanelId(a), PanelId(b)));
                }
            }
        }
        found
    }

    /// A panel of `self` and one of `other` that cross, each part in its own pose.
    #[must_use]
    pub fn crosses(&self, pose: &Pose, other: &Self, theirs: &Pose) -> Option<(PanelId, PanelId)> {
        let placed = |s: &Self, pose: &Pose| -> Vec<Vec<V3>> {
            s.outlines.iter().zip(&pose.panels).map(|(o, at)| o.iter().map(|&p| at.apply(p)).collect()).collect()
        };
        let (a, b) = (placed(self, pose), placed(other, theirs));
        let pairs = (0..a.len()).flat_map(|i| (0..b.len()).map(move |j| (i, j)));
        pairs
            .filter(|&(i, j)| self.pierces(&b[j], i, pose) || other.pierces(&a[i], j, theirs))
            .map(|(i, j)| (PanelId(i), PanelId(j)))
            .next()
    }

    /// True where an edge of `edges` goes through the inside of `panel`.
    fn pierces(&self, edges: &[V3], panel: usize, pose: &Pose) -> bool {
        let at = &pose.panels[panel];
        let out = at.axes[2];
        let height = |p: V3| (p - at.origin).dot(out);
        (0..edges.len()).any(|i| {
            let (p, q) = (edges[i], edges[(i + 1) % edges.len()]);
            let (hp, hq) = (height(p), height(q));
            if hp * hq >= 0.0 || hp.abs().min(hq.abs()) < TOUCH {
                return false;
            }
            let hit = at.back(p + (q - p) * (hp / (hp - hq)));
            inside(&self.outlines[panel], hit)
        })
    }
}

/// A ball round all these places: its middle and radius.
fn ball(places: &[V3]) -> (V3, f64) {
    let middle = places.iter().fold(V3::default(), |sum, p| sum + *p) * (1.0 / (places.len().max(1) as f64));
    (middle, places.iter().map(|p| (*p - middle).norm()).fold(0.0, f64::max))
}

/// Nearer than this, in millimetres, panels touch and do not cross.
const TOUCH: f64 = 1e-6;

/// True where `p`, in the plane of `outline`, is within it (crossing-number rule).
#[must_use]
pub fn inside(outline: &[V3], p: V3) -> bool {
    let mut within = false;
    for i in 0..outline.len() {
        let (a, b) = (outline[i], outline[(i + 1) % outline.len()]);
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y) {
            within = !within;
        }
    }
    within
}

/// The outline moved inward by `by`, in flat coordinates; empty where nothing is left.
fn inset(outline: &Outline, by: f64) -> Vec<V3> {
    let corners: Vec<V3> = outline.corners.iter().map(|&p| flat(p)).collect();
    let n = corners.len();
    let size = outline.bounds();
    if size.width().as_mm().min(size.height().as_mm()) <= 2.0 * by {
        return Vec::new();
    }
    // Outlines run clockwise on the card, which is clockwise in flat coordinates too: inward is to the right.
    let inward = |a: V3, b: V3| {
        let d = (b - a).unit();
        V3::new(d.y, -d.x, 0.0)
    };
    (0..n)
        .map(|i| {
            let (before, here, after) = (corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]);
            let (u, v) = (inward(before, here), inward(here, after));
            here + (u + v) * (by / (1.0 + u.dot(v)).max(0.004))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::outline::Rect;

    #[test]
    fn an_inset_rectangle_is_smaller_by_twice_the_inset() {
        let r = Rect::sized(Length::mm(40), Length::mm(20)).outline();
        let small = inset(&r, 1.0);
        assert_eq!(small[0], V3::new(1.0, -1.0, 0.0));
        assert_eq!(small[2], V3::new(39.0, -19.0, 0.0));
    }
}
