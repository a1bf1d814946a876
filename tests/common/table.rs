//! A blank on the table, on a fine grid, as the steps of the making change it.

use snugfold::measure::outline::Rect;
use snugfold::measure::point::Point;
use snugfold::net::arc::Line;
use snugfold::net::flat::{Net, Taken};
use snugfold::net::marks::{MarkedArc, Marks};
use snugfold::net::recipe::{CutLine, Scores, TakeOff, Turned};

/// The grid, in mm.
pub const FINE: f64 = 0.4;

/// Right and down from the blank's corner, in mm.
pub type Spot = [f64; 2];

/// A place of the net.
pub fn spot(p: Point) -> Spot {
    [p.x.as_mm(), p.y.as_mm()]
}

/// A blank on the table.
pub struct Table {
    pub wide: usize,
    pub high: usize,
    /// There is card.
    pub card: Vec<bool>,
    /// A cut runs here.
    pub cut: Vec<bool>,
    pub scores: Vec<[Spot; 2]>,
    size: Spot,
}

impl Table {
    pub fn new(size: Spot) -> Self {
        let [wide, high] = size.map(|s| (s / FINE).ceil() as usize);
        let n = wide * high;
        Self { wide, high, card: vec![true; n], cut: vec![false; n], scores: Vec::new(), size }
    }

    pub fn middle(&self, i: usize) -> Spot {
        [((i % self.wide) as f64 + 0.5) * FINE, ((i / self.wide) as f64 + 0.5) * FINE]
    }

    fn cut(&mut self, from: Spot, to: Spot) {
        let long = libm::hypot(to[0] - from[0], to[1] - from[1]);
        let steps = (long / FINE * 4.0).ceil().max(1.0) as usize;
        for s in 0..=steps {
            let share = s as f64 / steps as f64;
            let at = [0, 1].map(|k| from[k] + (to[k] - from[k]) * share);
            let [x, y] = at.map(|a| (a / FINE).floor().max(0.0) as usize);
            // Two wide, so that nothing slips through at a corner.
            for (x, y) in [(x, y), (x + 1, y), (x, y + 1)] {
                if x < self.wide && y < self.high {
                    self.cut[y * self.wide + x] = true;
                }
            }
        }
    }

    fn run(&mut self, run: &[Spot], line: Line) {
        for pair in run.windows(2) {
            match line {
                Line::Score => self.scores.push([pair[0], pair[1]]),
                Line::Cut => self.cut(pair[0], pair[1]),
            }
        }
    }

    pub fn score(&mut self, scores: &Scores) {
        let [w, h] = self.size;
        for at in scores.at.iter().map(|a| a.as_mm()) {
            self.scores.push(match scores.turned {
                Turned::AsItLies => [[at, 0.0], [at, h]],
                Turned::Quarter => [[0.0, at], [w, at]],
            });
        }
    }

    /// A score that goes no further.
    pub fn score_line(&mut self, c: &CutLine) {
        let [at, from, to] = [c.at, c.from, c.to].map(|l| l.as_mm());
        self.scores.push(match c.measured {
            Turned::AsItLies => [[at, from], [at, to]],
            Turned::Quarter => [[from, at], [to, at]],
        });
    }

    pub fn between(&mut self, marks: &Marks, line: Line) {
        let at = |n: usize| spot(marks.places[n]);
        match line {
            Line::Score => self.scores.extend(marks.scores.iter().map(|&(a, b)| [at(a), at(b)])),
            Line::Cut => marks.cuts.iter().for_each(|r| self.run(&r.iter().map(|&n| at(n)).collect::<Vec<_>>(), line)),
        }
        for arc in marks.along(line) {
            self.run(&along(arc, marks), line);
        }
    }

    pub fn cut_line(&mut self, c: &CutLine) {
        let [at, from, to] = [c.at, c.from, c.to].map(|l| l.as_mm());
        match c.measured {
            Turned::AsItLies => self.cut([at, from], [at, to]),
            Turned::Quarter => self.cut([from, at], [to, at]),
        }
    }

    pub fn take(&mut self, rect: Rect, goes: impl Fn(Spot) -> bool) {
        let ([x0, y0], [x1, y1]) = (spot(rect.min), spot(rect.max));
        for i in 0..self.card.len() {
            let [x, y] = self.middle(i);
            if x > x0 && x < x1 && y > y0 && y < y1 && goes([x, y]) {
                self.card[i] = false;
            }
        }
    }

    /// What is trimmed off a panel of the drawing that the step shows.
    pub fn trim(&mut self, off: &TakeOff, net: &Net) {
        let own = net.panel(off.panel).outline.bounds();
        let panel =
            [f64::midpoint(own.min.x.as_mm(), own.max.x.as_mm()), f64::midpoint(own.min.y.as_mm(), own.max.y.as_mm())];
        // Where its fold is: a cut as long as a side is slanted towards the free edge.
        let fold = net.carrier(off.panel).map_or(panel, |c| {
            let c = &net.creases[c.0];
            let (a, b) = (spot(c.from), spot(c.to));
            [f64::midpoint(a[0], b[0]), f64::midpoint(a[1], b[1])]
        });
        let ([x0, y0], [x1, y1]) = (spot(off.size.min), spot(off.size.max));
        let middle = [f64::midpoint(x0, x1), f64::midpoint(y0, y1)];
        // The corner of the rectangle that lies away from the panel.
        let far = |k: usize, low: f64, high: f64| {
            let from = if (middle[k] - panel[k]).abs() < 1.0 { fold[k] } else { panel[k] };
            if middle[k] < from { low } else { high }
        };
        let out = [far(0, x0, x1), far(1, y0, y1)];
        let (w, h) = (x1 - x0, y1 - y0);
        let from_out = move |[x, y]: Spot| [(x - out[0]).abs() / w, (y - out[1]).abs() / h];
        match off.taken {
            Taken::Wedge => self.take(off.size, move |p| from_out(p).iter().sum::<f64>() < 1.0),
            Taken::Round => self.take(off.size, move |p| {
                let [x, y] = from_out(p).map(|s| 1.0 - s);
                libm::hypot(x, y) > 1.0
            }),
            Taken::Notch => {
                // A half round in the middle of an edge: its straight side is the longer one, on the edge.
                let across = w > h;
                self.take(off.size, move |[x, y]| {
                    let (along, deep) = if across { ((x - middle[0]) / w, y) } else { ((y - middle[1]) / h, x) };
                    let edge = if across { out[1] } else { out[0] };
                    let radius = if across { h } else { w };
                    libm::hypot(along * 2.0, (deep - edge).abs() / radius) < 1.0
                });
            }
            _ => self.take(off.size, |_| true),
        }
    }

    /// Leaves the piece with most of the scores on it.
    pub fn let_fall(&mut self) {
        let mut piece = vec![0_usize; self.card.len()];
        let mut sizes = vec![0_usize];
        for start in 0..piece.len() {
            if piece[start] > 0 || !self.card[start] || self.cut[start] {
                continue;
            }
            let name = sizes.len();
            let mut size = 0;
            let mut open = vec![start];
            piece[start] = name;
            while let Some(i) = open.pop() {
                size += 1;
                let (x, y) = (i % self.wide, i / self.wide);
                let beside = [
                    (x > 0).then(|| i - 1),
                    (x + 1 < self.wide).then(|| i + 1),
                    (y > 0).then(|| i - self.wide),
                    (y + 1 < self.high).then(|| i + self.wide),
                ];
                for j in beside.into_iter().flatten() {
                    if piece[j] == 0 && self.card[j] && !self.cut[j] {
                        piece[j] = name;
                        open.push(j);
                    }
                }
            }
            sizes.push(size);
        }
        let mut scored = vec![0_usize; sizes.len()];
        for p in self.scores.iter().flat_map(|s| points(*s)) {
            let [x, y] = p.map(|a| (a / FINE) as usize);
            if x < self.wide && y < self.high {
                scored[piece[y * self.wide + x]] += 1;
            }
        }
        let kept = (1..sizes.len()).max_by_key(|&n| (scored[n], sizes[n])).unwrap_or(0);
        self.card.iter_mut().zip(&piece).for_each(|(card, &p)| *card = p == kept);
    }
}

/// Places along an arc, worked out from what the step says: ends, the place in its middle, and where its centre is.
fn along(arc: &MarkedArc, marks: &Marks) -> Vec<Spot> {
    let [from, over, to] = arc.places.map(|n| spot(marks.places[n]));
    let centre = [over[0] + arc.way.x.as_mm(), over[1] + arc.way.y.as_mm()];
    let angle = |p: Spot| libm::atan2(p[1] - centre[1], p[0] - centre[0]);
    let (a, b, c) = (angle(from), angle(over), angle(to));
    // The way round that goes over its middle.
    let near = |x: f64| {
        let full = std::f64::consts::TAU;
        x - ((x - b) / full).round() * full
    };
    let (a, c, radius) = (near(a), near(c), arc.radius.as_mm());
    let place = |i: u32| {
        let at = a + (c - a) * f64::from(i) / 200.0;
        [centre[0] + radius * libm::cos(at), centre[1] + radius * libm::sin(at)]
    };
    (0..=200).map(place).collect()
}

/// How far a place is from a line.
pub fn apart(p: Spot, [a, b]: [Spot; 2]) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let share = (((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy).max(1e-12)).clamp(0.0, 1.0);
    libm::hypot(p[0] - a[0] - dx * share, p[1] - a[1] - dy * share)
}

/// Places along a line, a millimetre apart.
pub fn points([a, b]: [Spot; 2]) -> impl Iterator<Item = Spot> {
    let steps = libm::hypot(b[0] - a[0], b[1] - a[1]).ceil().max(1.0) as usize;
    (0..=steps).map(move |i| [0, 1].map(|k| a[k] + (b[k] - a[k]) * i as f64 / steps as f64))
}
