//! The space that flat panels close in, whichever way they lean, and the largest upright block in it.
//!
//! The model. What lies behind the inner faces of all panels at once: right where no panel bulges inward. Where nothing
//! closes the top, the lowest upper edge of a wall does.

use crate::measure::length::Length;
use crate::net::flat::Duty;

use super::room::{Leaf, Measured};
use super::space::V3;

/// Closer than this, in mm, a place lies on a face.
const NEAR: f64 = 1e-6;

/// A space between faces.
#[derive(Clone, Debug, PartialEq)]
pub struct Hollow {
    /// The way out of each face, and how far out it stands from the origin.
    faces: Vec<(V3, f64)>,
}

/// Whether a panel leans.
#[must_use]
pub fn leans(leaf: &Leaf) -> bool {
    let out = leaf.at.axes[2];
    out.x.abs().max(out.y.abs()).max(out.z.abs()) < 0.999_999
}

/// How high the corners of a panel stand that are in its upper half.
fn upper(leaf: &Leaf) -> Vec<f64> {
    let all = || leaf.outline.iter().map(|&p| leaf.at.apply(p).z);
    let middle = f64::midpoint(all().fold(f64::MAX, f64::min), all().fold(f64::MIN, f64::max));
    all().filter(|&z| z > middle).collect()
}

impl Hollow {
    /// What `leaves` of card of thickness `t` close in.
    #[must_use]
    pub fn of(leaves: &[Leaf], t: Length) -> Self {
        let centre = |l: &Leaf| mean(&l.outline.iter().map(|&p| l.at.apply(p)).collect::<Vec<_>>());
        let middle = mean(&leaves.iter().map(centre).collect::<Vec<_>>());
        let face = |l: &Leaf| {
            // A panel that is folded back on another one shows its outside to the space.
            let out = if l.at.axes[2].dot(centre(l) - middle) < 0.0 { -l.at.axes[2] } else { l.at.axes[2] };
            (out, l.at.origin.dot(out) - t.as_mm() / 2.0)
        };
        let mut faces: Vec<(V3, f64)> = Vec::new();
        for (out, at) in leaves.iter().map(face) {
            match faces.iter_mut().find(|f| f.0.dot(out) > 1.0 - 1e-9) {
                Some(same) => same.1 = same.1.min(at),
                None => faces.push((out, at)),
            }
        }
        if faces.iter().all(|f| f.0.z < 0.5) {
            let walls = leaves.iter().filter(|l| l.duty == Duty::Wall);
            let rim = walls.flat_map(upper).fold(f64::MAX, f64::min);
            faces.push((V3::new(0.0, 0.0, 1.0), rim));
        }
        Self { faces }
    }

    /// For each direction the most that an upright block can measure there while it keeps its other two sides.
    #[must_use]
    pub fn room(&self, block: [f64; 3]) -> Measured {
        Measured { width: self.most(block, 0), depth: self.most(block, 1), height: self.most(block, 2) }
    }

    /// Of all places and sizes at which four faces are touched, the largest size that is behind all faces.
    fn most(&self, block: [f64; 3], axis: usize) -> Option<f64> {
        let mut fixed = block;
        if let Some(own) = fixed.get_mut(axis) {
            *own = 0.0;
        }
        let rows: Vec<[f64; 5]> = self
            .faces
            .iter()
            .map(|&(n, d)| {
                let reach = [n.x.abs(), n.y.abs(), n.z.abs()];
                let half: f64 = reach.iter().zip(fixed).map(|(n, b)| n * b / 2.0).sum();
                [n.x, n.y, n.z, reach.get(axis).copied().unwrap_or_default() / 2.0, d - half]
            })
            .collect();
        let behind = |x: &[f64; 4]| rows.iter().all(|r| r.iter().zip(x).map(|(a, x)| a * x).sum::<f64>() < r[4] + NEAR);
        let mut best: Option<f64> = None;
        choose(rows.len(), 4, &mut |some| {
            let four: Vec<[f64; 5]> = some.iter().map(|&i| rows[i]).collect();
            if let Some(x) = solved(four).filter(behind) {
                best = Some(best.map_or(x[3], |b| b.max(x[3])));
            }
        });
        best
    }

    /// Its corners.
    #[must_use]
    pub fn corners(&self) -> Vec<V3> {
        let mut found: Vec<V3> = Vec::new();
        choose(self.faces.len(), 3, &mut |some| {
            let mut three: Vec<[f64; 5]> =
                some.iter().map(|&i| self.faces[i]).map(|(n, d)| [n.x, n.y, n.z, 0.0, d]).collect();
            three.push([0.0, 0.0, 0.0, 1.0, 0.0]);
            if let Some([x, y, z, _]) = solved(three) {
                let p = V3::new(x, y, z);
                let within = self.faces.iter().all(|(n, d)| n.dot(p) < d + NEAR);
                if within && found.iter().all(|q| (*q - p).norm() > NEAR) {
                    found.push(p);
                }
            }
        });
        found
    }

    /// Its volume in cubic millimetres: pyramids from its middle onto each face.
    #[must_use]
    pub fn volume(&self) -> f64 {
        let corners = self.corners();
        let middle = mean(&corners);
        let pyramid = |&(out, at): &(V3, f64)| {
            let mut on: Vec<V3> = corners.iter().copied().filter(|p| (out.dot(*p) - at).abs() < NEAR * 10.0).collect();
            let centre = mean(&on);
            let Some(first) = on.first().map(|p| (*p - centre).unit()) else {
                return 0.0;
            };
            let second = out.cross(first);
            on.sort_by(|a, b| {
                let round = |p: &V3| libm::atan2((*p - centre).dot(second), (*p - centre).dot(first));
                round(a).total_cmp(&round(b))
            });
            let doubled = (0..on.len()).map(|i| out.dot((on[i] - centre).cross(on[(i + 1) % on.len()] - centre)));
            doubled.sum::<f64>() / 2.0 * (at - out.dot(middle)) / 3.0
        };
        self.faces.iter().map(pyramid).sum()
    }
}

/// The middle of some places.
fn mean(of: &[V3]) -> V3 {
    of.iter().fold(V3::default(), |sum, &p| sum + p) * (1.0 / of.len().max(1) as f64)
}

/// Calls `each` with every choice of `count` of the numbers below `n`, in order.
fn choose(n: usize, count: usize, each: &mut dyn FnMut(&[usize])) {
    let mut some: Vec<usize> = (0..count).collect();
    if count > n {
        return;
    }
    loop {
        each(&some);
        let Some(i) = (0..count).rev().find(|&i| some[i] < n - count + i) else {
            return;
        };
        some[i] += 1;
        for j in i + 1..count {
            some[j] = some[j - 1] + 1;
        }
    }
}

/// Four equations in four unknowns (elimination with pivots); nothing where they do not meet in one place.
fn solved(mut rows: Vec<[f64; 5]>) -> Option<[f64; 4]> {
    for i in 0..4 {
        let pivot = (i..4).max_by(|&a, &b| rows[a][i].abs().total_cmp(&rows[b][i].abs()))?;
        rows.swap(i, pivot);
        if rows[i][i].abs() < 1e-9 {
            return None;
        }
        let by = rows[i];
        for (_, row) in rows.iter_mut().enumerate().filter(|(j, _)| *j != i) {
            let share = row[i] / by[i];
            row.iter_mut().zip(by).for_each(|(a, b)| *a -= share * b);
        }
    }
    Some([0, 1, 2, 3].map(|i| rows[i][4] / rows[i][i]))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Faces of a wedge: 30 wide and 20 deep at its foot, leaning to an edge over the middle of its depth, 40 up.
    fn tent() -> Hollow {
        let lean = V3::new(0.0, 40.0, 10.0).unit();
        let other = V3::new(0.0, -lean.y, lean.z);
        let at = lean.dot(V3::new(0.0, 10.0, 0.0));
        let v = V3::new;
        let faces = vec![
            (lean, at),
            (other, at),
            (v(1.0, 0.0, 0.0), 15.0),
            (v(-1.0, 0.0, 0.0), 15.0),
            (v(0.0, 0.0, -1.0), 0.0),
        ];
        Hollow { faces }
    }

    #[test]
    fn a_tent_has_half_the_volume_of_its_block() {
        assert_eq!(tent().corners().len(), 6);
        assert!((tent().volume() - 30.0 * 20.0 * 40.0 / 2.0).abs() < 1e-6);
    }

    /// Half way up a tent is half as deep.
    #[test]
    fn a_block_grows_until_it_touches() {
        let room = tent().room([30.0, 10.0, 20.0]);
        for (is, expected) in [(room.width, 30.0), (room.depth, 10.0), (room.height, 20.0)] {
            assert!(is.is_some_and(|is| (is - expected).abs() < 1e-9), "{is:?} {expected}");
        }
    }
}
