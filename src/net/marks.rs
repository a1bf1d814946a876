//! Marking by hand what no groove gives: places to mark from two edges, and the lines to score and to cut between them.

use crate::measure::length::Length;
use crate::measure::point::{Point, Vector};

use super::arc::{Arc, Line};
use super::flat::{Frame, Net, Panel};

/// Places on the blank, numbered as they stand here, and what is done between them.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Marks {
    /// From the blank's upper left corner, from above down and then from the left.
    pub places: Vec<Point>,
    /// Scores, each from a place to another.
    pub scores: Vec<(usize, usize)>,
    /// Cuts, each through its places in order.
    pub cuts: Vec<Vec<usize>>,
    /// Arcs to score or cut.
    pub arcs: Vec<MarkedArc>,
}

/// An arc between places.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct MarkedArc {
    /// What is done along it.
    pub line: Line,
    /// One end, the place farthest from both, the other end.
    pub places: [usize; 3],
    /// Its radius.
    pub radius: Length,
    /// From the place in its middle to the middle of its circle.
    pub way: Vector,
}

impl Marks {
    /// The arcs along which this is done.
    pub fn along(&self, line: Line) -> impl Iterator<Item = &MarkedArc> {
        self.arcs.iter().filter(move |a| a.line == line)
    }

    /// Whether this is done between marks.
    #[must_use]
    pub fn has(&self, line: Line) -> bool {
        let straight = match line {
            Line::Score => self.scores.is_empty(),
            Line::Cut => self.cuts.is_empty(),
        };
        !straight || self.along(line).next().is_some()
    }
}

impl Marks {
    /// Reads the marks off `net`: none where all its panels are cells of a grid.
    #[must_use]
    pub fn of(net: &Net) -> Self {
        let aslant: Vec<&Panel> = net.panels.iter().filter(|p| p.frame != Frame::Upright).collect();
        let creased = |a: Point, b: Point| net.folds().any(|c| [(a, b), (b, a)].contains(&(c.from, c.to)));
        let on_lines = |a: Point, b: Point| {
            (a.x == b.x && net.lines.across.contains(&a.x)) || (a.y == b.y && net.lines.down.contains(&a.y))
        };
        let scored = net
            .folds()
            .filter(|c| net.panel(c.far).frame != Frame::Upright && c.through.is_empty() && !on_lines(c.from, c.to))
            .map(|c| (c.from, c.to));
        let mut scores: Vec<(Point, Point)> = Vec::new();
        scored.for_each(|s| join(&mut scores, s));
        let mut cuts: Vec<(Point, Point)> = Vec::new();
        for (a, b) in aslant.iter().flat_map(|p| p.outline.edges()) {
            let arc = net.arcs.iter().any(|arc| arc.holds(a, b));
            if !arc && !creased(a, b) && !at_edge(net, a, b) && !cuts.contains(&(b, a)) {
                cuts.push((a, b));
            }
        }
        let mut places: Vec<Point> = scores.iter().chain(&cuts).flat_map(|&(a, b)| [a, b]).collect();
        places.extend(net.arcs.iter().flat_map(Arc::marks));
        places.sort_by_key(|p| (p.y, p.x));
        places.dedup();
        let number = |p: Point| places.iter().position(|q| *q == p).unwrap_or_default();
        let ends = |&(a, b): &(Point, Point)| (number(a).min(number(b)), number(a).max(number(b)));
        let scores = scores.iter().map(ends).collect();
        let mut runs: Vec<Vec<usize>> = Vec::new();
        for (a, b) in cuts.iter().map(|&(a, b)| (number(a), number(b))) {
            match runs.iter_mut().find(|r| r.last() == Some(&a)) {
                Some(run) => run.push(b),
                None => runs.push(vec![a, b]),
            }
        }
        let arcs = net.arcs.iter().map(|a| {
            let way = a.centre - a.deepest;
            MarkedArc { line: a.line, places: a.marks().map(number), radius: a.radius, way }
        });
        let arcs = arcs.collect();
        Self { places, scores, cuts: runs, arcs }
    }

    /// True where there is nothing to mark.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.places.is_empty()
    }

    /// The largest distance of a place from where it comes to when both its measures are read off marks `step` apart.
    ///
    /// ```
    /// use snugfold::{measure::{length::Length, point::Point}, net::marks::Marks};
    /// let at = Point::new(Length::um(10_300), Length::um(20_600)); // marked at 10.5 and 20.5
    /// let marks = Marks { places: vec![at], ..Marks::default() };
    /// assert_eq!(marks.error(Length::um(500)), Length::round_mm(0.2_f64.hypot(0.1)));
    /// ```
    #[must_use]
    pub fn error(&self, step: Length) -> Length {
        let off = |l: Length| (l - step * ((l + step.half()) / step)).as_mm();
        let each = self.places.iter().map(|p| Length::round_mm(libm::hypot(off(p.x), off(p.y))));
        each.max().unwrap_or_default()
    }
}

/// Adds a line to others, made one with those that it goes on from: a score is drawn through.
fn join(lines: &mut Vec<(Point, Point)>, (a, b): (Point, Point)) {
    let goes_on = |&(c, d): &(Point, Point)| {
        let way = b - a;
        let same = way.cross(c - a) == 0 && way.cross(d - a) == 0;
        (same && [c, d].iter().any(|end| [a, b].contains(end))).then(|| {
            let mut ends = [a, b, c, d];
            ends.sort_unstable_by_key(|p| (*p - a).dot(way));
            (ends[0], ends[3])
        })
    };
    match lines.iter().enumerate().find_map(|(i, line)| goes_on(line).map(|whole| (i, whole))) {
        Some((i, whole)) => {
            lines.swap_remove(i);
            join(lines, whole);
        }
        None => lines.push((a, b)),
    }
}

/// Whether an edge runs along the edge of the blank.
fn at_edge(net: &Net, a: Point, b: Point) -> bool {
    let r = net.blank;
    let both = |of: fn(Point) -> Length, at: Length| of(a) == at && of(b) == at;
    both(|p| p.x, r.min.x) || both(|p| p.x, r.max.x) || both(|p| p.y, r.min.y) || both(|p| p.y, r.max.y)
}
