//! Cutting a rectangle's corners and edges: wedges, rounds, notches; the panel and the waste share every point.

use crate::measure::length::Length;
use crate::measure::outline::{ARC_TOLERANCE, Outline, Rect};
use crate::measure::point::{Point, Vector};

use super::flat::Taken;

/// An edge of an upright rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// The upper edge.
    Top,
    /// The right edge.
    Right,
    /// The lower edge.
    Bottom,
    /// The left edge.
    Left,
}

/// A corner of an upright rectangle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Corner {
    /// Upper left.
    TopLeft,
    /// Upper right.
    TopRight,
    /// Lower right.
    BottomRight,
    /// Lower left.
    BottomLeft,
}

impl Corner {
    /// All four, clockwise from the upper left.
    pub const ALL: [Self; 4] = [Self::TopLeft, Self::TopRight, Self::BottomRight, Self::BottomLeft];
}

/// What is done to a corner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shape {
    /// Left square.
    #[default]
    Square,
    /// A straight cut that takes `across` off the horizontal edge and `down` off the vertical one.
    Wedge {
        /// Along the horizontal edge.
        across: Length,
        /// Along the vertical edge.
        down: Length,
    },
    /// A quarter circle.
    Round(Length),
}

/// A half-round thumb notch in the middle of an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Notch {
    /// The edge it is in.
    pub side: Side,
    /// Its radius.
    pub radius: Length,
}

/// A slot cut into an edge, square to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// The edge it is in.
    pub side: Side,
    /// From the rectangle's left or upper end of that edge to the slot.
    pub at: Length,
    /// Along the edge.
    pub width: Length,
    /// Into the panel.
    pub depth: Length,
}

/// A rectangle with its corners and edges cut.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Trimmed {
    /// Before the corners are cut.
    pub rect: Rect,
    /// Clockwise from the upper left.
    pub corners: [Shape; 4],
    /// A notch, where there is one.
    pub notch: Option<Notch>,
    /// Slots, apart from each other, in the order of their places.
    pub slots: Vec<Slot>,
}

impl Trimmed {
    /// The outline that is left, and each piece that is cut off.
    #[must_use]
    pub fn cut(&self) -> (Outline, Vec<(Outline, Taken)>) {
        let mut left = Vec::new();
        let mut off = Vec::new();
        for (i, corner) in Corner::ALL.into_iter().enumerate() {
            let (run, taken) = corner_run(self.rect, corner, self.corners[i]);
            if let Some(taken) = taken {
                let mut piece = vec![corner_point(self.rect, corner)];
                piece.extend(run.iter().rev());
                off.push((Outline::new(piece), taken));
            }
            left.extend(run);
            if let Some(notch) = self.notch
                && notch.side == side_after(corner)
            {
                let run = notch_run(self.rect, notch);
                off.push((Outline::new(run.iter().rev().copied().collect()), Taken::Notch));
                left.extend(run);
            }
            let side = side_after(corner);
            let mut slots: Vec<Slot> = self.slots.iter().copied().filter(|s| s.side == side).collect();
            if matches!(side, Side::Bottom | Side::Left) {
                slots.reverse();
            }
            for slot in slots {
                let run = slot_run(self.rect, slot);
                off.push((Outline::new(run.iter().rev().copied().collect()), Taken::Slot));
                left.extend(run);
            }
        }
        left.dedup();
        if left.first() == left.last() {
            left.pop();
        }
        (Outline::new(left), off)
    }
}

const fn side_after(corner: Corner) -> Side {
    match corner {
        Corner::TopLeft => Side::Top,
        Corner::TopRight => Side::Right,
        Corner::BottomRight => Side::Bottom,
        Corner::BottomLeft => Side::Left,
    }
}

const fn corner_point(r: Rect, corner: Corner) -> Point {
    match corner {
        Corner::TopLeft => r.min,
        Corner::TopRight => Point::new(r.max.x, r.min.y),
        Corner::BottomRight => r.max,
        Corner::BottomLeft => Point::new(r.min.x, r.max.y),
    }
}

/// The ways along the two edges at a corner, inward: (back along the edge before it, on along the edge after it).
fn ways(corner: Corner, across: Length, down: Length) -> (Vector, Vector) {
    let z = Length::ZERO;
    let (right, left) = (Vector::new(across, z), Vector::new(-across, z));
    let (below, above) = (Vector::new(z, down), Vector::new(z, -down));
    match corner {
        Corner::TopLeft => (below, right),
        Corner::TopRight => (left, below),
        Corner::BottomRight => (above, left),
        Corner::BottomLeft => (right, above),
    }
}

fn corner_run(r: Rect, corner: Corner, shape: Shape) -> (Vec<Point>, Option<Taken>) {
    let at = corner_point(r, corner);
    match shape {
        Shape::Square => (vec![at], None),
        Shape::Wedge { across, down } if !across.is_positive() || !down.is_positive() => (vec![at], None),
        Shape::Round(radius) if !radius.is_positive() => (vec![at], None),
        Shape::Wedge { across, down } => {
            let (before, after) = ways(corner, across, down);
            (vec![at + before, at + after], Some(Taken::Wedge))
        }
        Shape::Round(radius) => {
            let (before, after) = ways(corner, radius, radius);
            let centre = at + before + after;
            // From the end of the edge before to the start of the edge after, bulging towards the corner.
            (arc(centre, at + before, at + after), Some(Taken::Round))
        }
    }
}

/// The four corners of a slot, as the outline runs.
fn slot_run(r: Rect, slot: Slot) -> [Point; 4] {
    let (near, far) = (slot.at, slot.at + slot.width);
    let p = Point::new;
    match slot.side {
        Side::Top => {
            let (a, b, deep) = (r.min.x + near, r.min.x + far, r.min.y + slot.depth);
            [p(a, r.min.y), p(a, deep), p(b, deep), p(b, r.min.y)]
        }
        Side::Bottom => {
            let (a, b, deep) = (r.min.x + near, r.min.x + far, r.max.y - slot.depth);
            [p(b, r.max.y), p(b, deep), p(a, deep), p(a, r.max.y)]
        }
        Side::Right => {
            let (a, b, deep) = (r.min.y + near, r.min.y + far, r.max.x - slot.depth);
            [p(r.max.x, a), p(deep, a), p(deep, b), p(r.max.x, b)]
        }
        Side::Left => {
            let (a, b, deep) = (r.min.y + near, r.min.y + far, r.min.x + slot.depth);
            [p(r.min.x, b), p(deep, b), p(deep, a), p(r.min.x, a)]
        }
    }
}

/// The middle of the notched edge, and the ways along it (as the outline runs) and inward, as unit signs.
fn notch_run(r: Rect, notch: Notch) -> Vec<Point> {
    let half = |a: Length, b: Length| Length::from_nm(i64::midpoint(a.nm(), b.nm()));
    let (x, y) = (half(r.min.x, r.max.x), half(r.min.y, r.max.y));
    let n = notch.radius;
    let z = Length::ZERO;
    let (middle, along, inward) = match notch.side {
        Side::Top => (Point::new(x, r.min.y), Vector::new(n, z), Vector::new(z, n)),
        Side::Right => (Point::new(r.max.x, y), Vector::new(z, n), Vector::new(-n, z)),
        Side::Bottom => (Point::new(x, r.max.y), Vector::new(-n, z), Vector::new(z, -n)),
        Side::Left => (Point::new(r.min.x, y), Vector::new(z, -n), Vector::new(n, z)),
    };
    let mut run = arc(middle, middle - along, middle + inward);
    run.extend(arc(middle, middle + inward, middle + along).into_iter().skip(1));
    run
}

/// A quarter circle round `centre`, as straight edges within [`ARC_TOLERANCE`], both ends exact.
fn arc(centre: Point, from: Point, to: Point) -> Vec<Point> {
    let (u, v) = (from - centre, to - centre);
    let radius = u.x.abs().max(u.y.abs());
    // The sagitta of an edge over the angle 2a is r (1 − cos a).
    let flat = (1.0 - ARC_TOLERANCE.as_mm() / radius.as_mm().max(0.05)).clamp(0.0, 1.0);
    let step = 2.0 * libm::acos(flat);
    let quarter = std::f64::consts::FRAC_PI_2;
    let count = (quarter / step).ceil().clamp(2.0, 64.0);
    let mut run = vec![from];
    let mut i = 1.0;
    while i < count {
        let (s, c) = (libm::sin(quarter * i / count), libm::cos(quarter * i / count));
        let mix = |a: Length, b: Length| Length::round_mm(a.as_mm() * c + b.as_mm() * s);
        run.push(centre + Vector::new(mix(u.x, v.x), mix(u.y, v.y)));
        i += 1.0;
    }
    run.push(to);
    run
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_and_what_is_cut_off_make_the_rectangle() {
        let mm = Length::mm;
        let card = Trimmed {
            rect: Rect::between(mm(10), mm(20), mm(90), mm(60)),
            corners: [
                Shape::Round(mm(6)),
                Shape::Wedge { across: mm(5), down: mm(12) },
                Shape::Square,
                Shape::Round(mm(3)),
            ],
            notch: Some(Notch { side: Side::Top, radius: mm(9) }),
            slots: Vec::new(),
        };
        let (left, off) = card.cut();
        let off_area: crate::measure::area::Area = off.iter().map(|o| o.0.area()).sum();
        assert_eq!(left.area() + off_area, card.rect.area());
        assert!(off.iter().all(|o| o.0.area().is_positive()), "each piece runs clockwise");
        // A half circle of 9 mm is 127.23 mm²; straight edges within 20 µm lose at most 28.3 × 0.02 mm².
        let notch = off.iter().find(|o| o.1 == Taken::Notch).map_or(0.0, |o| o.0.area().as_mm2());
        assert!((notch - 127.23).abs() < 0.57, "{notch}");
    }

    #[test]
    fn every_side_takes_a_notch() {
        for side in [Side::Top, Side::Right, Side::Bottom, Side::Left] {
            let card = Trimmed {
                rect: Rect::sized(Length::mm(40), Length::mm(30)),
                notch: Some(Notch { side, radius: Length::mm(8) }),
                ..Trimmed::default()
            };
            let (left, off) = card.cut();
            assert_eq!(left.area() + off[0].0.area(), card.rect.area(), "{side:?}");
            assert!(off[0].0.area().is_positive(), "{side:?}");
        }
    }
}
