//! How a tuck goes in: its tip slides down inside the wall while the lid comes down, so it is bent over further than at
//! the end, and bows a little where the gap is narrow.
//!
//! In the plane across the lid's crease, with the wall at 0 and the top of the wall at height 0: a lid of depth `d` that
//! still stands open by δ has its tuck's crease at y = d (1 − cos δ), z = d sin δ. A tuck of length `u` whose tip is held
//! at y = g is then at height z − √(u² − (y − g)²).

use crate::net::flat::{CreaseId, Net};

/// The measurements of a tuck on its lid, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passage {
    /// The lid, from its crease to the tuck's crease.
    pub lid: f64,
    /// The tuck, from its crease to its tip.
    pub tuck: f64,
    /// How far open, in degrees, the lid stands as the tip meets the top of the wall.
    entry: f64,
}

/// Where the tip is held while it slides, from the middle of the wall: just inside thin card.
const SLIDE: f64 = 0.4;

impl Passage {
    /// Reads lid and tuck off the net; `tuck` is the tuck's crease.
    #[must_use]
    pub fn of(net: &Net, tuck: CreaseId) -> Self {
        let (lid, tuck) = net.creases.get(tuck.0).map_or((1.0, 1.0), |c| {
            let (near, far) = (net.panel(c.near).cell, net.panel(c.far).cell);
            if c.from.y == c.to.y {
                (near.height().as_mm(), far.height().as_mm())
            } else {
                (near.width().as_mm(), far.width().as_mm())
            }
        });
        Self::new(lid, tuck)
    }

    fn new(lid: f64, tuck: f64) -> Self {
        let mut p = Self { lid, tuck, entry: 0.0 };
        // The tip comes down as the lid closes: the first opening at which it is above the wall.
        let (mut closed, mut open) = (0.0, 90.0);
        while open < 178.0 && p.tip_height(open) < 0.0 {
            open += 2.0;
        }
        for _ in 0..40 {
            let half = f64::midpoint(closed, open);
            if p.tip_height(half) < 0.0 {
                closed = half;
            } else {
                open = half;
            }
        }
        p.entry = open;
        p
    }

    /// The tuck's crease, from the wall and above its top, with the lid open by `degrees`.
    fn crease(&self, degrees: f64) -> (f64, f64) {
        let a = degrees.to_radians();
        (self.lid * (1.0 - libm::cos(a)), self.lid * libm::sin(a))
    }

    fn tip_height(&self, degrees: f64) -> f64 {
        let (y, z) = self.crease(degrees);
        let across = y - SLIDE;
        let down = (self.tuck * self.tuck - across * across).max(0.0).sqrt();
        z - down
    }

    /// The tuck's bend, in degrees, that holds its tip at the wall with the lid open by `degrees`.
    fn holding(&self, degrees: f64) -> f64 {
        let (y, _) = self.crease(degrees);
        let lean = libm::asin(((y - SLIDE) / self.tuck).clamp(-1.0, 1.0));
        // Upright, it would be bent by 90° and the lid's opening; it leans towards the wall by `lean`.
        90.0 + degrees - lean.to_degrees()
    }

    /// Bends of the lid and of the tuck, in degrees, `done` from 0 to 1 through the move.
    #[must_use]
    pub fn at(&self, done: f64) -> (f64, f64) {
        let half = 0.5;
        if done < half {
            let f = done / half;
            ((90.0 - self.entry) * f, self.holding(self.entry) * f)
        } else if done < 1.0 {
            let open = self.entry * (1.0 - (done - half) / half);
            (90.0 - open, self.holding(open))
        } else {
            (90.0, 90.0)
        }
    }

    /// How far, in millimetres, the tuck reaches into the box at the top of the wall while it slides in, at most:
    /// what is more than the gap there is taken up by bowing.
    #[must_use]
    pub fn widest(&self) -> f64 {
        let mut widest: f64 = 0.0;
        for i in 0..=180 {
            let open = self.entry * f64::from(i) / 180.0;
            let (y, z) = self.crease(open);
            let tip = self.tip_height(open);
            if tip < 0.0 && z > tip {
                // The straight tuck at height 0, between its tip and its crease.
                widest = widest.max(SLIDE + (y - SLIDE) * (-tip) / (z - tip));
            }
        }
        widest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tip_slides_down_the_wall() {
        let p = Passage::new(31.75, 12.7);
        assert!(p.tip_height(p.entry).abs() < 1e-6);
        let mut last = f64::INFINITY;
        for i in 0..=50 {
            let height = p.tip_height(p.entry * (1.0 - f64::from(i) / 50.0));
            assert!(height <= last, "it never comes up again");
            last = height;
        }
        assert_eq!(p.at(1.0), (90.0, 90.0));
        assert!(p.at(0.75).1 > 90.0, "bent over on the way");
    }

    #[test]
    fn it_reaches_in_as_small_angles_say() {
        // For small openings δ, the crease is at d δ²/2 from the wall and the tip hangs s = u − d δ below the wall's top;
        // the straight tuck passes the top of the wall at SLIDE + (d δ²/2 − SLIDE) s / u.
        let (d, u) = (200.0, 40.0);
        let passes = |s: f64| ((u - s) * (u - s) / (2.0 * d) - SLIDE) * s / u;
        let expected = (0..=400).map(|i| passes(f64::from(i) * 0.1)).fold(0.0, f64::max);
        let reach = Passage::new(d, u).widest() - SLIDE;
        assert!((reach / expected - 1.0).abs() < 0.05, "{reach} {expected}");
    }
}
