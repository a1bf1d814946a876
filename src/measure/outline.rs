//! `Outline`: a closed run of straight edges, clockwise as seen on the card, and rectangles.

use super::area::Area;
use super::length::Length;
use super::point::{Point, Vector};

/// How far an arc drawn as straight edges may stray from the true arc.
pub const ARC_TOLERANCE: Length = Length::um(20);

/// A simple polygon, clockwise as seen on the card (y runs downward), without a closing repeat of its first corner.
/// Arcs are runs of straight edges within [`ARC_TOLERANCE`].
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Outline {
    /// Its corners in order.
    pub corners: Vec<Point>,
}

impl Outline {
    /// The corners given, in order.
    #[must_use]
    pub const fn new(corners: Vec<Point>) -> Self {
        Self { corners }
    }

    /// Each edge as its two ends.
    pub fn edges(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        let n = self.corners.len();
        (0..n).map(move |i| (self.corners[i], self.corners[(i + 1) % n]))
    }

    /// The enclosed area, positive for outlines that run clockwise on the card.
    ///
    /// ```
    /// use snugfold::measure::{length::Length, outline::Rect};
    /// let r = Rect::sized(Length::mm(3), Length::mm(4));
    /// assert_eq!(r.outline().area().as_mm2(), 12.0);
    /// ```
    #[must_use]
    pub fn area(&self) -> Area {
        let origin = Point::default();
        Area::from_doubled(self.edges().map(|(a, b)| (a - origin).cross(b - origin)).sum())
    }

    /// The smallest upright rectangle round it.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        let mut all = self.corners.iter();
        let Some(&first) = all.next() else {
            return Rect::default();
        };
        let mut r = Rect { min: first, max: first };
        for p in all {
            r.min = Point::new(r.min.x.min(p.x), r.min.y.min(p.y));
            r.max = Point::new(r.max.x.max(p.x), r.max.y.max(p.y));
        }
        r
    }

    /// Smaller by `edge` all round; nothing where nothing is left.
    ///
    /// ```
    /// use snugfold::measure::{length::Length, outline::Rect};
    /// let card = Rect::sized(Length::mm(30), Length::mm(20));
    /// assert_eq!(card.outline().inset(Length::mm(3)), Some(card.inset(Length::mm(3)).outline()));
    /// assert_eq!(card.outline().inset(Length::mm(10)), None);
    /// ```
    #[must_use]
    pub fn inset(&self, edge: Length) -> Option<Self> {
        let ways: Vec<Vector> = self.edges().map(|(a, b)| b - a).collect();
        if ways.iter().zip(ways.iter().cycle().skip(1)).any(|(a, b)| a.cross(*b) < 0) {
            return self.mitred(edge);
        }
        let mut left: Vec<[f64; 2]> = self.corners.iter().map(|p| [p.x.as_mm(), p.y.as_mm()]).collect();
        for (a, b) in self.edges() {
            let (dx, dy) = ((b - a).x.as_mm(), (b - a).y.as_mm());
            let long = libm::hypot(dx, dy);
            if long == 0.0 {
                continue;
            }
            // Outlines run clockwise on the card: inward is to the right.
            let within = |p: [f64; 2]| ((p[1] - a.y.as_mm()) * dx - (p[0] - a.x.as_mm()) * dy) / long - edge.as_mm();
            left = kept(&left, within);
        }
        let near = |a: Point, b: Point| (a - b).dot(a - b) < 1_000_000;
        let mut corners: Vec<Point> =
            left.into_iter().map(|[x, y]| Point::new(Length::round_mm(x), Length::round_mm(y))).collect();
        corners.dedup_by(|a, b| near(*a, *b));
        if corners.first().zip(corners.last()).is_some_and(|(a, b)| near(*a, *b)) {
            corners.pop();
        }
        let inset = Self::new(corners);
        (inset.corners.len() > 2 && inset.area().is_positive()).then_some(inset)
    }

    /// The same for outlines with inward corners: each edge moved inward, those left out that turn round on the way.
    fn mitred(&self, edge: Length) -> Option<Self> {
        type Line = ([f64; 2], [f64; 2]);
        let line = |(a, b): (Point, Point)| {
            let (dx, dy) = ((b - a).x.as_mm(), (b - a).y.as_mm());
            let long = libm::hypot(dx, dy).max(1e-9);
            let (x, y) = (dx / long, dy / long);
            ([a.x.as_mm() - y * edge.as_mm(), a.y.as_mm() + x * edge.as_mm()], [x, y])
        };
        let mut lines: Vec<Line> = self.edges().map(line).collect();
        let meet = |(p, u): Line, (q, v): Line| {
            let cross = u[0] * v[1] - u[1] * v[0];
            let along = if cross.abs() < 1e-6 {
                // One line: where the second edge begins.
                (q[0] - p[0]) * u[0] + (q[1] - p[1]) * u[1]
            } else {
                ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / cross
            };
            [p[0] + u[0] * along, p[1] + u[1] * along]
        };
        while lines.len() > 2 {
            let n = lines.len();
            let corners: Vec<[f64; 2]> = (0..n).map(|i| meet(lines[(i + n - 1) % n], lines[i])).collect();
            let long = |i: usize| {
                let (a, b, way) = (corners[i], corners[(i + 1) % n], lines[i].1);
                (b[0] - a[0]) * way[0] + (b[1] - a[1]) * way[1]
            };
            match (0..n).filter(|&i| long(i) <= 0.0).min_by(|&a, &b| long(a).total_cmp(&long(b))) {
                Some(turned) => {
                    lines.remove(turned);
                }
                None => {
                    let point = |[x, y]: [f64; 2]| Point::new(Length::round_mm(x), Length::round_mm(y));
                    let inset = Self::new(corners.into_iter().map(point).collect());
                    return inset.area().is_positive().then_some(inset);
                }
            }
        }
        None
    }

    /// What of it lies between two upright lines.
    #[must_use]
    pub fn between(&self, left: Length, right: Length) -> Self {
        let cut = |corners: &[Point], at: Length, keeps: fn(Length, Length) -> bool| {
            let next = corners.iter().cycle().skip(1);
            let mut kept = Vec::new();
            for (&a, &b) in corners.iter().zip(next) {
                if keeps(a.x, at) {
                    kept.push(a);
                }
                if keeps(a.x, at) != keeps(b.x, at) {
                    let share = (at - a.x).as_mm() / (b.x - a.x).as_mm();
                    kept.push(Point::new(at, a.y + Length::round_mm((b.y - a.y).as_mm() * share)));
                }
            }
            kept
        };
        let from_left = cut(&self.corners, left, |x, at| x >= at);
        Self::new(cut(&from_left, right, |x, at| x <= at))
    }

    /// Moved by `way`.
    #[must_use]
    pub fn moved(&self, way: Vector) -> Self {
        Self::new(self.corners.iter().map(|&p| p + way).collect())
    }
}

/// What of a polygon lies where `within` is not below zero, for a straight edge of that (Sutherland and Hodgman 1974).
fn kept(corners: &[[f64; 2]], within: impl Fn([f64; 2]) -> f64) -> Vec<[f64; 2]> {
    let mut left = Vec::new();
    for (i, &a) in corners.iter().enumerate() {
        let b = corners[(i + 1) % corners.len()];
        let (at_a, at_b) = (within(a), within(b));
        if at_a >= 0.0 {
            left.push(a);
        }
        if (at_a < 0.0) != (at_b < 0.0) {
            let t = at_a / (at_a - at_b);
            left.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
        }
    }
    left
}

/// An upright rectangle.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Rect {
    /// Upper left corner.
    pub min: Point,
    /// Lower right corner.
    pub max: Point,
}

impl Rect {
    /// From the origin, `width` by `height`.
    #[must_use]
    pub const fn sized(width: Length, height: Length) -> Self {
        Self { min: Point::new(Length::ZERO, Length::ZERO), max: Point::new(width, height) }
    }

    /// Between the columns `x0`..`x1` and the rows `y0`..`y1`.
    #[must_use]
    pub const fn between(x0: Length, y0: Length, x1: Length, y1: Length) -> Self {
        Self { min: Point::new(x0, y0), max: Point::new(x1, y1) }
    }

    /// From left to right.
    #[must_use]
    pub fn width(self) -> Length {
        self.max.x - self.min.x
    }

    /// From top to bottom.
    #[must_use]
    pub fn height(self) -> Length {
        self.max.y - self.min.y
    }

    /// Smaller by `edge` on each side.
    #[must_use]
    pub fn inset(self, edge: Length) -> Self {
        let way = Vector::new(edge, edge);
        Self { min: self.min + way, max: self.max - way }
    }

    /// Its four corners, clockwise on the card from the upper left.
    #[must_use]
    pub fn outline(self) -> Outline {
        Outline::new(vec![self.min, Point::new(self.max.x, self.min.y), self.max, Point::new(self.min.x, self.max.y)])
    }

    /// Its area.
    #[must_use]
    pub fn area(self) -> Area {
        Area::of(self.width(), self.height())
    }
}
