//! Small plane geometry for drawings: hatching inside a shape, and edges without the stretches that are folds.

use super::drawing::Spot;
use crate::measure::outline::Outline;
use crate::measure::point::Point;

/// A point of the net in millimetres.
#[must_use]
pub const fn spot(p: Point) -> Spot {
    [p.x.as_mm(), p.y.as_mm()]
}

/// The corners of an outline in millimetres.
#[must_use]
pub fn corners(outline: &Outline) -> Vec<Spot> {
    outline.corners.iter().map(|&p| spot(p)).collect()
}

/// Lines at 45° rising to the right, `gap` apart, where they lie inside the shape.
#[must_use]
pub fn hatch(shape: &[Spot], gap: f64) -> Vec<[Spot; 2]> {
    // Along a hatch line x + y is constant: walk that sum, and sort the crossings by x.
    let sums = shape.iter().map(|p| p[0] + p[1]);
    let (low, high) = (sums.clone().fold(f64::MAX, f64::min), sums.fold(f64::MIN, f64::max));
    let mut lines = Vec::new();
    if !(gap > 0.0 && high > low) {
        return lines;
    }
    let mut at = (low / gap).floor() * gap + gap / 2.0;
    while at < high && lines.len() < 2_000 {
        let mut xs: Vec<f64> = Vec::new();
        for (i, a) in shape.iter().enumerate() {
            let b = shape[(i + 1) % shape.len()];
            let (sa, sb) = (a[0] + a[1], b[0] + b[1]);
            if (sa < at) != (sb < at) {
                xs.push(a[0] + (b[0] - a[0]) * (at - sa) / (sb - sa));
            }
        }
        xs.sort_by(f64::total_cmp);
        lines.extend(xs.chunks_exact(2).map(|x| [[x[0], at - x[0]], [x[1], at - x[1]]]));
        at += gap;
    }
    lines
}

/// The stretches of the edge from `a` to `b` that none of `folds` covers.
#[must_use]
pub fn uncovered(a: Point, b: Point, folds: &[(Point, Point)]) -> Vec<[Spot; 2]> {
    let way = b - a;
    let whole = way.dot(way);
    if whole == 0 {
        return Vec::new();
    }
    // Places along the edge, from 0 at `a` to 1 at `b`.
    let along = |p: Point| ((p - a).dot(way) as f64 / whole as f64).clamp(0.0, 1.0);
    let mut covered: Vec<(f64, f64)> = folds
        .iter()
        .filter(|(c, d)| way.cross(*c - a) == 0 && way.cross(*d - a) == 0)
        .map(|&(c, d)| (along(c), along(d)))
        .map(|(s, e)| (s.min(e), s.max(e)))
        .filter(|(s, e)| e > s)
        .collect();
    covered.sort_by(|x, y| x.0.total_cmp(&y.0));
    let (from, to) = (spot(a), spot(b));
    let place = |t: f64| [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t];
    let mut free = Vec::new();
    let mut at = 0.0;
    for (s, e) in covered {
        if s > at {
            free.push([place(at), place(s)]);
        }
        at = e.max(at);
    }
    if at < 1.0 {
        free.push([place(at), to]);
    }
    free
}

/// The middle of the rectangle round a shape, its width and its height.
#[must_use]
pub fn middle(shape: &[Spot]) -> (Spot, f64, f64) {
    let (min, max) = round(shape);
    ([f64::midpoint(min[0], max[0]), f64::midpoint(min[1], max[1])], max[0] - min[0], max[1] - min[1])
}

/// The rectangle round a shape: upper left and lower right corner.
#[must_use]
pub fn round(shape: &[Spot]) -> (Spot, Spot) {
    shape.iter().fold(([f64::MAX; 2], [f64::MIN; 2]), |(min, max), p| {
        ([min[0].min(p[0]), min[1].min(p[1])], [max[0].max(p[0]), max[1].max(p[1])])
    })
}

/// The corners of an upright rectangle.
#[must_use]
pub fn block(min: Spot, max: Spot) -> Vec<Spot> {
    vec![min, [max[0], min[1]], max, [min[0], max[1]]]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::length::Length;

    #[test]
    fn an_edge_is_cut_where_no_fold_lies() {
        let p = |x, y| Point::new(Length::mm(x), Length::mm(y));
        let free = uncovered(p(0, 0), p(10, 0), &[(p(8, 0), p(2, 0)), (p(0, 0), p(0, 9))]);
        assert_eq!(free, [[[0.0, 0.0], [2.0, 0.0]], [[8.0, 0.0], [10.0, 0.0]]]);
        assert_eq!(uncovered(p(0, 0), p(10, 0), &[(p(0, 0), p(10, 0))]), [] as [[Spot; 2]; 0]);
    }

    #[test]
    fn hatching_stays_inside() {
        let square = block([0.0, 0.0], [10.0, 10.0]);
        let lines = hatch(&square, 4.0);
        assert_eq!(lines.len(), 5);
        assert!(lines.iter().flatten().all(|p| p.iter().all(|v| (-1e-9..=10.000_001).contains(v))));
        assert_eq!(hatch(&[], 1.0).len(), 0);
    }
}
