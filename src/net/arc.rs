//! `Arc`: a part of a circle along which card is scored or cut, as places on it that panels share.

use crate::measure::length::Length;
use crate::measure::point::{Point, Vector};

/// What is done along an arc.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Line {
    /// It is scored.
    Score,
    /// It is cut.
    Cut,
}

/// A part of a circle.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Arc {
    /// What is done along it.
    pub line: Line,
    /// The circle's middle, which may lie beyond the blank.
    pub centre: Point,
    /// The circle's radius.
    pub radius: Length,
    /// The place on it that is farthest from its ends.
    pub deepest: Point,
    /// Places on it from end to end, evenly apart along the straight line between the ends.
    pub run: Vec<Point>,
}

impl Arc {
    /// The arc over a level line from `from` to the right by `wide`, in its middle lower than that line by `deep`, above
    /// zero or below; `count` stretches. With half the width h and depth s the radius is (h² + s²) / (2 s) (any handbook:
    /// the radius of a segment of a circle by its chord and rise).
    ///
    /// ```
    /// use snugfold::{measure::{length::Length, point::Point}, net::arc::{Arc, Line}};
    /// let arc = Arc::level(Line::Score, Point::default(), Length::mm(80), Length::mm(20), 10);
    /// assert_eq!(arc.radius, Length::mm(50)); // (40² + 20²) / (2 × 20)
    /// assert_eq!(arc.run[5], Point::new(Length::mm(40), Length::mm(20)));
    /// ```
    #[must_use]
    pub fn level(line: Line, from: Point, wide: Length, deep: Length, count: i64) -> Self {
        let (half, rise) = (wide.as_mm() / 2.0, deep.as_mm().abs());
        let radius = (half * half + rise * rise) / (2.0 * rise).max(1e-6);
        let way = if deep.is_positive() { 1.0 } else { -1.0 };
        let place = |i: i64| {
            let along = wide.scaled(i, count);
            // Both halves alike, and the ends on the line itself.
            let off = (along + along - wide).as_mm() / 2.0;
            let down = if i == 0 || i == count { 0.0 } else { (radius * radius - off * off).sqrt() - (radius - rise) };
            from + Vector::new(along, Length::round_mm(down * way))
        };
        let centre = from + Vector::new(wide.half(), Length::round_mm((rise - radius) * way));
        let deepest = from + Vector::new(wide.half(), deep);
        Self { line, centre, deepest, radius: Length::round_mm(radius), run: (0..=count).map(place).collect() }
    }

    /// One end, the place farthest from both, the other end.
    #[must_use]
    pub fn marks(&self) -> [Point; 3] {
        let end = |p: Option<&Point>| p.copied().unwrap_or_default();
        [end(self.run.first()), self.deepest, end(self.run.last())]
    }

    /// Whether a stretch of an outline lies along it.
    #[must_use]
    pub fn holds(&self, a: Point, b: Point) -> bool {
        self.run.windows(2).any(|w| [(w[0], w[1]), (w[1], w[0])].contains(&(a, b)))
    }
}
