//! The steps alone make the blank into the pattern: a program that knows nothing but what each step says scores, cuts and
//! takes away on a fine grid, and what is left is held against the net, panel for panel and score for score.
//!
//! It reads: a score runs right across, or from mark to mark; a cut runs along its line; of what is cut apart the
//! piece with most of the scores stays in the hand; of what is trimmed, the step's rectangle goes, or the part of it beyond the slanted
//! or round cut, on the side away from the middle of its panel.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::likely_project;
use proptest::prelude::*;
use snugfold::form::registry::{FORMS, Form, Holds};
use snugfold::make::part::Planned;
use snugfold::make::step::Action;
use snugfold::measure::outline::Rect;
use snugfold::measure::point::Point;
use snugfold::measure::system::System;
use snugfold::net::arc::Line;
use snugfold::net::flat::{Net, Taken};
use snugfold::net::marks::{MarkedArc, Marks};
use snugfold::net::recipe::{CutLine, Scores, TakeOff, Turned};
use snugfold::plan::{Plan, plan};
use snugfold::project::example::example;
use snugfold::project::fresh::fresh;

/// The grid, in mm.
const FINE: f64 = 0.4;

type Spot = [f64; 2];

fn spot(p: Point) -> Spot {
    [p.x.as_mm(), p.y.as_mm()]
}

/// A blank on the table.
struct Table {
    wide: usize,
    high: usize,
    /// There is card.
    card: Vec<bool>,
    /// A cut runs here.
    cut: Vec<bool>,
    scores: Vec<[Spot; 2]>,
    size: Spot,
}

impl Table {
    fn new(size: Spot) -> Self {
        let [wide, high] = size.map(|s| (s / FINE).ceil() as usize);
        let n = wide * high;
        Self { wide, high, card: vec![true; n], cut: vec![false; n], scores: Vec::new(), size }
    }

    fn middle(&self, i: usize) -> Spot {
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

    fn score(&mut self, scores: &Scores) {
        let [w, h] = self.size;
        for at in scores.at.iter().map(|a| a.as_mm()) {
            self.scores.push(match scores.turned {
                Turned::AsItLies => [[at, 0.0], [at, h]],
                Turned::Quarter => [[0.0, at], [w, at]],
            });
        }
    }

    fn between(&mut self, marks: &Marks, line: Line) {
        let at = |n: usize| spot(marks.places[n]);
        match line {
            Line::Score => self.scores.extend(marks.scores.iter().map(|&(a, b)| [at(a), at(b)])),
            Line::Cut => marks.cuts.iter().for_each(|r| self.run(&r.iter().map(|&n| at(n)).collect::<Vec<_>>(), line)),
        }
        for arc in marks.along(line) {
            self.run(&along(arc, marks), line);
        }
    }

    fn cut_line(&mut self, c: &CutLine) {
        let [at, from, to] = [c.at, c.from, c.to].map(|l| l.as_mm());
        match c.measured {
            Turned::AsItLies => self.cut([at, from], [at, to]),
            Turned::Quarter => self.cut([from, at], [to, at]),
        }
    }

    fn take(&mut self, rect: Rect, goes: impl Fn(Spot) -> bool) {
        let ([x0, y0], [x1, y1]) = (spot(rect.min), spot(rect.max));
        for i in 0..self.card.len() {
            let [x, y] = self.middle(i);
            if x > x0 && x < x1 && y > y0 && y < y1 && goes([x, y]) {
                self.card[i] = false;
            }
        }
    }

    /// What is trimmed off a panel of the drawing that the step shows.
    fn trim(&mut self, off: &TakeOff, net: &Net) {
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
    fn let_fall(&mut self) {
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

fn apart(p: Spot, [a, b]: [Spot; 2]) -> f64 {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let share = (((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy).max(1e-12)).clamp(0.0, 1.0);
    libm::hypot(p[0] - a[0] - dx * share, p[1] - a[1] - dy * share)
}

fn within(outline: &[Spot], p: Spot) -> bool {
    let mut inside = false;
    for (i, a) in outline.iter().enumerate() {
        let b = outline[(i + 1) % outline.len()];
        if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) {
            inside = !inside;
        }
    }
    inside
}

fn points([a, b]: [Spot; 2]) -> impl Iterator<Item = Spot> {
    let steps = libm::hypot(b[0] - a[0], b[1] - a[1]).ceil().max(1.0) as usize;
    (0..=steps).map(move |i| [0, 1].map(|k| a[k] + (b[k] - a[k]) * i as f64 / steps as f64))
}

/// What differs between the table and the net, in words.
fn differences(table: &Table, net: &Net) -> Vec<String> {
    let mut found = Vec::new();
    let panels: Vec<Vec<Spot>> =
        net.panels.iter().map(|p| p.outline.corners.iter().map(|&c| spot(c)).collect()).collect();
    let round: Vec<(Spot, Spot)> =
        net.panels.iter().map(|p| p.outline.bounds()).map(|b| (spot(b.min), spot(b.max))).collect();
    let near = |i: usize, p: Spot| (0..2).all(|k| p[k] >= round[i].0[k] && p[k] <= round[i].1[k]);
    let panel_at = |p: Spot| (0..panels.len()).find(|&i| near(i, p) && within(&panels[i], p));
    let wanted: Vec<bool> = (0..table.card.len()).map(|i| panel_at(table.middle(i)).is_some()).collect();
    let (w, h) = (table.wide, table.high);
    for y in 2..h.saturating_sub(2) {
        for x in 2..w.saturating_sub(2) {
            let i = y * w + x;
            let around = || (y - 2..=y + 2).flat_map(move |y| (x - 2..=x + 2).map(move |x| y * w + x));
            // At an edge a grid this coarse cannot tell.
            if table.card[i] == wanted[i] {
                continue;
            }
            let plain = around().all(|j| wanted[j] == wanted[i] && table.card[j] == table.card[i] && !table.cut[j]);
            if plain {
                let what = if wanted[i] { "is missing at" } else { "is left at" };
                found.push(format!("card {what} {:?}", table.middle(i)));
            }
        }
    }
    let folds: Vec<[Spot; 2]> = net.folds().flat_map(|c| c.stretches()).map(|(a, b)| [spot(a), spot(b)]).collect();
    // An arc of the net is drawn in straight stretches.
    let slack = if net.arcs.is_empty() { 0.05 } else { 0.5 };
    for &fold in &folds {
        let unscored = points(fold).find(|&p| table.scores.iter().all(|&s| apart(p, s) > slack));
        found.extend(unscored.map(|p| format!("no score at {p:?}")));
    }
    for &score in &table.scores {
        let through = points(score).find(|&p| {
            panel_at(p).is_some_and(|panel| {
                let own = &panels[panel];
                let edges = (0..own.len()).map(|i| [own[i], own[(i + 1) % own.len()]]);
                edges.chain(folds.iter().copied()).all(|e| apart(p, e) > 1.0)
            })
        });
        found.extend(through.map(|p| format!("a score through a panel at {p:?}")));
    }
    // Neighbours without a fold between them have to be cut apart.
    for (i, a) in panels.iter().enumerate() {
        for k in 0..a.len() {
            let edge = [a[k], a[(k + 1) % a.len()]];
            let (dx, dy) = (edge[1][0] - edge[0][0], edge[1][1] - edge[0][1]);
            let long = libm::hypot(dx, dy);
            for p in points(edge) {
                let beside = [p[0] + dy / long * 2.0, p[1] - dx / long * 2.0];
                let other = panel_at(beside).is_some_and(|j| j != i);
                let folded = folds.iter().any(|&f| apart(p, f) < 0.6);
                let end = edge.iter().any(|e| libm::hypot(e[0] - p[0], e[1] - p[1]) < 2.5);
                let at = [(p[0] / FINE) as usize, (p[1] / FINE) as usize];
                let cut = (at[1].saturating_sub(2)..=at[1] + 2).any(|y| {
                    (at[0].saturating_sub(2)..=at[0] + 2)
                        .any(|x| x < w && y < h && (table.cut[y * w + x] || !table.card[y * w + x]))
                });
                if other && !folded && !end && !cut {
                    found.push(format!("not cut apart at {p:?}"));
                }
            }
        }
    }
    found
}

/// Makes every part of a box or holder by its steps, without the one at `left_out`, and tells what is wrong.
fn wrong(plan: &Plan, planned: &Planned, left_out: Option<usize>) -> Vec<String> {
    let mut wrong = Vec::new();
    let parts = planned.assembly.iter().flat_map(|a| &a.parts).enumerate();
    for (i, part) in parts.filter(|(i, _)| planned.joined(*i).is_none()) {
        let net = &part.net;
        let mut table = Table::new(spot(net.blank.max));
        let mut holes = Vec::new();
        let steps = plan.steps.iter().enumerate().filter(|(nth, _)| Some(*nth) != left_out).map(|(_, s)| s);
        for step in steps.filter(|s| s.place == planned.place && s.part == i) {
            match &step.action {
                Action::Score(scores) => table.score(scores),
                Action::ScoreMarks(marks) => table.between(marks, Line::Score),
                Action::CutMarks(marks) => table.between(marks, Line::Cut),
                Action::Cut(cuts) => cuts.iter().for_each(|c| table.cut_line(c)),
                Action::TakeCells(cells) => cells.iter().for_each(|&c| table.take(c, |_| true)),
                Action::TakeOff(off) => off.iter().for_each(|o| table.trim(o, net)),
                Action::Notch(off) => table.trim(off, net),
                Action::Punch(some) => holes.extend(some.iter().copied()),
                _ => {}
            }
        }
        table.let_fall();
        let name = |d| format!("{} {}: {d}", planned.form.key, part.name);
        wrong.extend(differences(&table, net).into_iter().map(name));
        if holes != net.holes {
            wrong.push(name("other holes".to_owned()));
        }
    }
    wrong
}

/// A set with `form` as it is when nothing is typed.
fn usual(form: &Form, system: System) -> Plan {
    let mut project = fresh(example().as_ref(), form.shown_by(), form.key);
    if form.holds == Holds::Gifts {
        project.holder = None;
    } else {
        project.boxes[0].count = 3;
    }
    plan(&project, system)
}

fn of<'a>(plan: &'a Plan, form: &Form) -> &'a Planned {
    plan.parts().find(|p| p.form.key == form.key).expect("it is planned")
}

#[test]
fn the_steps_make_every_form() {
    for form in FORMS {
        for system in System::ALL {
            let plan = usual(form, system);
            let planned = of(&plan, form);
            assert!(planned.assembly.is_some(), "{} can be made", form.key);
            let wrong = wrong(&plan, planned, None);
            assert!(wrong.is_empty(), "{system:?}: {} wrong, such as {:#?}", wrong.len(), &wrong[..wrong.len().min(5)]);
        }
    }
}

/// No step on the blank is for nothing: without it something is wrong. (Cells that go are cut free by the step before.)
#[test]
fn without_a_step_something_is_wrong() {
    let (mut tried, mut unseen) = (0, Vec::new());
    for form in FORMS {
        let plan = usual(form, System::Metric);
        let planned = of(&plan, form);
        let works = |a: &Action| {
            matches!(
                a,
                Action::Score(_)
                    | Action::ScoreMarks(_)
                    | Action::CutMarks(_)
                    | Action::Cut(_)
                    | Action::TakeOff(_)
                    | Action::Notch(_)
                    | Action::Punch(_)
            )
        };
        let steps = plan.steps.iter().enumerate().filter(|(_, s)| s.place == planned.place && works(&s.action));
        for (nth, step) in steps {
            if wrong(&plan, planned, Some(nth)).is_empty() {
                let what = format!("{:?}", step.action);
                unseen.push(format!("{} {}", form.key, what.split('(').next().unwrap_or_default()));
            }
            tried += 1;
        }
    }
    // A strip that is trimmed off beside a cut parts the same panels, and a wedge may be finer than the grid.
    let fine = |u: &String| u.ends_with(" Cut") || u.ends_with(" TakeOff");
    assert!(unseen.iter().all(fine) && unseen.len() * 8 < tried, "{unseen:?} of {tried}");
    assert!(tried > 100, "only {tried} steps were left out");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 30, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever sizes are typed.
    #[test]
    fn the_steps_make_every_likely_set(project in likely_project(), system in prop::sample::select(System::ALL.to_vec())) {
        let plan = plan(&project, system);
        for planned in plan.parts() {
            let wrong = wrong(&plan, planned, None);
            prop_assert!(wrong.is_empty(), "{} wrong, such as {:#?}", wrong.len(), &wrong[..wrong.len().min(5)]);
        }
    }
}
