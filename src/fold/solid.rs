//! Convex bodies in space: panels as thick as their card and boxes at their seats, and whether two of them meet.

use crate::assembly::parts::{Footprint, From, Seat};
use crate::measure::length::Length;

use super::prove::SIZE;
use super::room::Leaf;
use super::space::V3;

/// A convex body: its corners, and the ways square to its faces.
pub struct Solid {
    corners: Vec<V3>,
    ways: Vec<V3>,
}

const UP: V3 = V3::new(0.0, 0.0, 1.0);

impl Solid {
    /// A panel in card of thickness `t`, its outline filled up to a convex one.
    #[must_use]
    pub fn of(leaf: &Leaf, t: Length) -> Self {
        let out = leaf.at.axes[2];
        let half = out * (t.as_mm() / 2.0);
        let flat: Vec<V3> = leaf.outline.iter().map(|&p| leaf.at.apply(p)).collect();
        let corners = flat.iter().flat_map(|&p| [p + half, p - half]).collect();
        let next = flat.iter().cycle().skip(1);
        let edges = flat.iter().zip(next).map(|(&a, &b)| out.cross((b - a).unit()));
        Self { corners, ways: edges.chain([out]).collect() }
    }

    /// A box at its seat.
    #[must_use]
    pub fn seated(seat: &Seat) -> Self {
        Self::upright(seat, 0.0, [0.0; 3], [0.0; 3])
    }

    /// A box with its play, from where it comes to where it stands.
    #[must_use]
    pub fn swept(seat: &Seat) -> Self {
        /// Beyond every holder, in mm.
        const FAR: f64 = 1e4;
        let play = seat.play.as_mm();
        match seat.from {
            // It slides on the floor: what is free is above it.
            From::Front => Self::upright(seat, 0.0, [play / 2.0, FAR, 0.0], [play / 2.0, 0.0, play]),
            From::Above => Self::upright(seat, play / 2.0, [0.0; 3], [0.0, 0.0, FAR]),
            From::Below => Self::upright(seat, play / 2.0, [0.0, 0.0, FAR], [0.0; 3]),
        }
    }

    /// Larger by `around` on all its sides, and so much to the left, front and below, and to the right, back and above.
    fn upright(seat: &Seat, around: f64, less: [f64; 3], more: [f64; 3]) -> Self {
        let (size, at) = (seat.size, seat.at);
        let low = [at.right.as_mm() - less[0], at.back.as_mm() - less[1], at.up.as_mm() - less[2]];
        let high = [
            (at.right + size.width).as_mm() + more[0],
            (at.back + size.depth).as_mm() + more[1],
            (at.up + size.height).as_mm() + more[2],
        ];
        let middle = [f64::midpoint(low[0], high[0]), f64::midpoint(low[1], high[1])];
        let (round, ways): (Vec<[f64; 2]>, Vec<V3>) = match seat.footprint {
            Footprint::Block => {
                let half = [(high[0] - low[0]) / 2.0 + around, (high[1] - low[1]) / 2.0 + around];
                let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
                (
                    corners.map(|(x, y)| [x * half[0], y * half[1]]).to_vec(),
                    vec![V3::new(1.0, 0.0, 0.0), V3::new(0.0, 1.0, 0.0)],
                )
            }
            Footprint::Sides(n) => {
                let turn = std::f64::consts::TAU / f64::from(n.max(3));
                // From the front side on.
                let way = |k: f64| {
                    let angle = k * turn - std::f64::consts::FRAC_PI_2;
                    [libm::cos(angle), libm::sin(angle)]
                };
                let reach = ((high[1] - low[1]) / 2.0 + around) / libm::cos(turn / 2.0);
                (0..n)
                    .map(|k| {
                        let [corner, side] = [way(f64::from(k) + 0.5), way(f64::from(k))];
                        (corner.map(|c| c * reach), V3::new(side[0], side[1], 0.0))
                    })
                    .unzip()
            }
        };
        let corners = round
            .iter()
            .flat_map(|[x, y]| [low[2], high[2]].map(|z| V3::new(middle[0] + x, middle[1] + y, z)))
            .collect();
        Self { corners, ways: ways.into_iter().chain([UP]).collect() }
    }

    /// Whether two bodies share more than a hair: no way square to a face of either parts them.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        let span = |of: &Self, way: V3| {
            let along = of.corners.iter().map(|c| c.dot(way));
            along.fold((f64::MAX, f64::MIN), |(low, high), d| (low.min(d), high.max(d)))
        };
        self.ways.iter().chain(&other.ways).filter(|w| w.norm() > 0.5).all(|&way| {
            let (a, b) = (span(self, way), span(other, way));
            a.1.min(b.1) - a.0.max(b.0) > SIZE
        })
    }
}
