//! What is left of a blank round panels that are no cells of a grid.
//!
//! The edge of what is left runs along the blank and, the other way round, along every panel; where panels meet each
//! other or the blank's edge, the two runs cancel. Panels that meet share the corners at which they do.

use crate::measure::length::Length;
use crate::measure::outline::Outline;
use crate::measure::point::Point;

type Edge = (Point, Point);

/// The pieces that are left of `blank` when every outline in `taken`, none over another, is gone.
#[must_use]
pub fn around(blank: &Outline, taken: &[Outline]) -> Vec<Outline> {
    let inner = taken.iter().flat_map(|o| o.edges().map(|(a, b)| (b, a)));
    let all: Vec<Edge> = blank.edges().chain(inner).collect();
    let corners: Vec<Point> = all.iter().map(|e| e.0).collect();
    let mut open: Vec<Edge> = Vec::new();
    for edge in all.into_iter().flat_map(|e| parted(e, &corners)) {
        match open.iter().position(|&(a, b)| (b, a) == edge) {
            Some(back) => {
                open.swap_remove(back);
            }
            None => open.push(edge),
        }
    }
    let mut pieces = Vec::new();
    while let Some((start, mut here)) = open.pop() {
        let (mut run, mut before) = (vec![start], start);
        // Every corner has as many edges out of it as into it, so a run comes back to its start.
        while here != start {
            let out = open.iter().enumerate().filter(|(_, e)| e.0 == here);
            let Some((next, _)) = out.min_by(|a, b| sweep(before, here, a.1.1).total_cmp(&sweep(before, here, b.1.1)))
            else {
                break;
            };
            run.push(here);
            (before, here) = open.swap_remove(next);
        }
        pieces.push(Outline::new(run));
    }
    pieces
}

/// An edge, parted at every corner that lies on it.
fn parted((a, b): Edge, corners: &[Point]) -> Vec<Edge> {
    let way = b - a;
    let on = |p: &&Point| {
        // Most lie far off: that is cheaper to see.
        let beside = |p: Length, a: Length, b: Length| p < a.min(b) || p > a.max(b);
        if beside(p.x, a.x, b.x) || beside(p.y, a.y, b.y) {
            return false;
        }
        let off = **p - a;
        way.cross(off) == 0 && off.dot(way) > 0 && off.dot(way) < way.dot(way)
    };
    let mut stops: Vec<Point> = corners.iter().filter(on).copied().collect();
    stops.extend([a, b]);
    stops.sort_by_key(|p| (*p - a).dot(way));
    stops.dedup();
    stops.windows(2).map(|w| (w[0], w[1])).collect()
}

/// How far the way out of `here` lies round from the way back, on the side of what is left.
fn sweep(before: Point, here: Point, next: Point) -> f64 {
    let angle = |to: Point| libm::atan2(-(to - here).y.as_mm(), (to - here).x.as_mm());
    let turn = angle(next) - angle(before);
    if turn > 1e-12 { turn } else { turn + std::f64::consts::TAU }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::area::Area;
    use crate::measure::length::Length;
    use crate::measure::outline::Rect;

    fn p(x: i64, y: i64) -> Point {
        Point::new(Length::mm(x), Length::mm(y))
    }

    #[test]
    fn a_diamond_leaves_four_corners() {
        let blank = Rect::sized(Length::mm(20), Length::mm(10));
        let diamond = Outline::new(vec![p(10, 0), p(20, 5), p(10, 10), p(0, 5)]);
        let left = around(&blank.outline(), std::slice::from_ref(&diamond));
        assert_eq!(left.len(), 4);
        assert!(left.iter().all(|o| o.area().as_mm2() == 25.0 && o.corners.len() == 3), "{left:?}");
        let sum: Area = left.iter().map(Outline::area).sum();
        assert_eq!(sum + diamond.area(), blank.area());
    }

    #[test]
    fn panels_that_meet_leave_nothing_between_them() {
        let blank = Rect::sized(Length::mm(20), Length::mm(10));
        let left_half = Outline::new(vec![p(0, 0), p(10, 0), p(10, 5), p(10, 10), p(0, 10)]);
        let right_part = Outline::new(vec![p(10, 5), p(20, 5), p(20, 10), p(10, 10)]);
        let left = around(&blank.outline(), &[left_half, right_part]);
        assert_eq!(left, [Outline::new(vec![p(10, 0), p(20, 0), p(20, 5), p(10, 5)])].map(|o| rotated(&o, &left[0])));
    }

    /// The same outline from the corner at which `like` begins.
    fn rotated(o: &Outline, like: &Outline) -> Outline {
        let mut corners = o.corners.clone();
        let by = corners.iter().position(|c| Some(c) == like.corners.first()).expect("the same corner");
        corners.rotate_left(by);
        Outline::new(corners)
    }
}
