//! Pillow box, one piece: two panels and a glue tab between straight scores, and at both ends of each a flap behind a
//! curved score. Pressed at its long edges it opens, and the flaps close its ends, one over the other.
//!
//! The construction. A sheet that runs on straight beyond a curve in a plane is folded along it by being mirrored in
//! that plane. Here the plane rises as it goes in, at 45°, so that the panel bulges by as much as its curved score is
//! deep, and the flap, mirrored, stands square across the end and reaches as far as the other panel's score: its free
//! edge is the same curve turned over. Of a curve with slope m at a place the panel lies there at an angle of sine m to
//! the middle (the length along the bulge is the width on the flat card); so m stays under 1. The curve is an arc: by
//! its chord w and depth s its slope at the ends is w/2 ÷ √(R² − w²/4), with R = (w²/4 + s²) / (2 s), and s < w/5 keeps
//! it under 1.

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::measure::system::Native;
use crate::net::arc::{Arc, Line};
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Face, Frame, Net, PanelId};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::length;
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use crate::assembly::moves::{Gives, Move, MoveName};
use crate::assembly::parts::Meet;
use crate::assembly::parts::{Assembly, Part, Root, Size};

/// The form.
pub const FORM: Form =
    Form { number: 29, key: "pillow", name: "Pillow box", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Of the flat box, from side to side",
        (40, 300),
        Default::Is(Native::lengths(4, 1, 1_000)),
    ),
    length(
        2,
        "length",
        "Length",
        "From end to end, at the sides, up to the trimmer's next mark",
        (40, 400),
        Default::Is(Native::lengths(5, 1, 1_300)),
    ),
    length(
        3,
        "curve",
        "Depth of the curves",
        "In their middle, at each end; the box becomes twice as thick",
        (4, 60),
        Default::Worked("a sixth of the width"),
    ),
    length(
        4,
        "tab",
        "Glue tab",
        "Glued inside the front along one side",
        (6, 30),
        Default::Is(Native::lengths(1, 2, 120)),
    ),
];

/// Strips of a panel: an odd number, so that one lies in the middle.
const STRIPS: usize = 11;
/// The middle one.
const MIDDLE: usize = STRIPS / 2;
/// The largest upright block is as wide as so many strips: with wider ones it soon becomes flat.
const BLOCK: usize = 5;

fn shape(mut ask: Ask) -> Shaped {
    let (score, cut, t) = (ask.setting.score, ask.setting.cut, ask.setting.thickness);
    let width = ask.scored("width", Length::ZERO);
    let asked = ask.length("length", Length::ZERO);
    let length = cut.up(asked);
    ask.shaped.used.insert("length", length);
    let (least, most) = (cut.up(width.scaled(1, 12)), cut.down(width.scaled(1, 5)));
    let curve = ask.length("curve", cut.nearest(width.scaled(1, 6)).min(most));
    if curve < least || curve > most {
        ask.stop("curve", What::LengthOutside { is: curve, least, most });
    }
    let tab = ask.scored("tab", Length::ZERO);
    let widest = score.down(width.half());
    if tab > widest || tab * 3 > length {
        ask.stop("tab", What::TabTooWide { most: widest.min(length.scaled(1, 3)) });
    }
    let pillow = Pillow { width, length, curve, tab };
    if length <= curve * 3 {
        ask.stop("length", What::LengthOutside { is: length, least: curve * 3, most: Length::mm(400) });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let bulge = Bulge::of(&pillow);
    let finished = Size { width: bulge.across(), depth: bulge.high() * 2, height: length };
    let (inside, outside) = (bulge.inside(length, t), bulge.outside(length, t));
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    ask.answer(Assembly::alone(pillow.part(&bulge), finished, inside, outside))
}

/// Flat sizes.
struct Pillow {
    width: Length,
    length: Length,
    curve: Length,
    tab: Length,
}

/// The panel as it bulges, strip by strip from the left.
struct Bulge {
    /// How far it rises over each strip.
    rises: Vec<f64>,
    /// How wide each strip is flat.
    wide: Vec<f64>,
}

impl Bulge {
    fn of(pillow: &Pillow) -> Self {
        let arc = pillow.score(Point::default(), 1);
        let pairs = || arc.run.windows(2);
        Self {
            rises: pairs().map(|p| (p[1].y - p[0].y).as_mm()).collect(),
            wide: pairs().map(|p| (p[1].x - p[0].x).as_mm()).collect(),
        }
    }

    /// Sine and cosine of the angle at which a strip rises.
    fn slope(&self, strip: usize) -> [f64; 2] {
        let sine = self.rises[strip] / self.wide[strip];
        [sine, (1.0 - sine * sine).max(0.0).sqrt()]
    }

    fn angle(&self, strip: usize) -> f64 {
        let [sine, cosine] = self.slope(strip);
        libm::atan2(sine, cosine)
    }

    /// How far a panel turns on its way from a strip to the next.
    fn bend(&self, strip: usize) -> Angle {
        let by = self.angle(strip) - self.angle(strip + 1);
        Angle::of(libm::sin(by), libm::cos(by))
    }

    /// How far the back turns on the front: what both slopes leave of a half turn.
    fn side(&self) -> Angle {
        Angle::of(libm::sin(2.0 * self.angle(0)), -libm::cos(2.0 * self.angle(0)))
    }

    /// How far a flap turns on its strip: mirrored at 45°, its way out stands to the strip's at a cosine of − sine².
    fn end(&self, strip: usize) -> Angle {
        let [sine, _] = self.slope(strip);
        let cosine = -sine * sine;
        Angle::of((1.0 - cosine * cosine).sqrt(), cosine)
    }

    /// From side to side of the open box.
    fn across(&self) -> Length {
        Length::round_mm((0..STRIPS).map(|i| self.wide[i] * self.slope(i)[1]).sum())
    }

    /// How far the middle strip bulges.
    fn high(&self) -> Length {
        Length::round_mm(self.rises.iter().take(MIDDLE).sum())
    }

    /// The largest upright block as wide as the strips in the middle; a flap of two layers closes each end.
    fn inside(&self, length: Length, t: Length) -> Size {
        let half: f64 =
            (MIDDLE - BLOCK / 2..=MIDDLE + BLOCK / 2).map(|i| self.wide[i] * self.slope(i)[1]).sum::<f64>() / 2.0;
        // Below each strip, at the block's edge: its own line, lowered by half a thickness square to it.
        let mut at = [-self.across().as_mm() / 2.0, 0.0];
        let mut high = f64::MAX;
        for i in 0..STRIPS {
            let [sine, cosine] = self.slope(i);
            let line = at[1] + (-half - at[0]) * sine / cosine - t.as_mm() / 2.0 / cosine;
            high = high.min(line);
            at = [at[0] + self.wide[i] * cosine, at[1] + self.rises[i]];
        }
        Size {
            width: Length::round_mm(half * 2.0),
            depth: Length::round_mm(high * 2.0),
            height: length - self.high() * 2 - t * 2,
        }
    }

    /// What it takes up: half a thickness about its strips, a whole one beyond its sides and ends where the two layers
    /// of flaps begin.
    fn outside(&self, length: Length, t: Length) -> Size {
        let [sine, cosine] = self.slope(0);
        Size {
            width: Length::round_mm(self.across().as_mm() + t.as_mm() * 2.0 * sine),
            depth: self.high() * 2 + t,
            height: length + Length::round_mm(t.as_mm() * 2.0 * cosine),
        }
    }
}

/// Front and back: the panel, its flap at the upper and at the lower end.
const NAMES: [[&str; 3]; 2] =
    [["front", "front upper flap", "front lower flap"], ["back", "back upper flap", "back lower flap"]];
/// Which of the two flaps at an end lies inside: levels of the front's and of the back's.
const LEVELS: [i8; 2] = [-1, 1];

impl Pillow {
    /// The curved score at an end, from the left: `way` is 1 where it is deeper to lower, at the upper end, and −1.
    fn score(&self, from: Point, way: i64) -> Arc {
        Arc::level(Line::Score, from, self.width, self.curve * way, STRIPS as i64)
    }

    /// The free edge of the flap behind it.
    fn edge(&self, from: Point, way: i64) -> Arc {
        Arc::level(Line::Cut, from, self.width, self.curve * -way, STRIPS as i64)
    }

    /// Where the left upper and lower corner of front or back is.
    fn corners(&self, panel: usize) -> [Point; 2] {
        let left = self.width * panel as i64;
        [Point::new(left, self.curve), Point::new(left, self.curve + self.length)]
    }

    fn blank(&self) -> Cells {
        Cells::new(&[self.width, self.width, self.tab], &[self.length + self.curve * 2])
    }

    fn part(&self, bulge: &Bulge) -> Part {
        let mut c = self.blank();
        let mut flaps = Vec::new();
        let mut front = None;
        for (panel, names) in NAMES.iter().enumerate() {
            let [upper, lower] = self.corners(panel);
            let arcs = [self.score(upper, 1), self.edge(upper, 1), self.score(lower, -1), self.edge(lower, -1)];
            let back = |arc: &Arc| arc.run.iter().rev().copied().collect::<Vec<_>>();
            // From the lower left corner up, along the upper score, down, and back along the lower one.
            let mut corners = vec![lower];
            corners.extend(&arcs[0].run);
            corners.extend(back(&arcs[2]).into_iter().take(STRIPS));
            let sides = [(1, STRIPS + 1), (STRIPS + 1, STRIPS + 2), (0, 1), (STRIPS + 2, 0)];
            let id = match front {
                None => c.aslant(corners, sides, names[0], Duty::Wall),
                Some(front) => c.hung_aslant(front, bulge.side(), (corners, sides), names[0], Duty::Wall),
            };
            c.mat(id);
            front.get_or_insert(id);
            for (end, name) in names[1..].iter().enumerate() {
                let (score, edge) = (&arcs[2 * end], &arcs[2 * end + 1]);
                let (near, far) =
                    if end == 0 { (back(score), edge.run.clone()) } else { (score.run.clone(), back(edge)) };
                let inner = far.get(1..STRIPS).unwrap_or_default().to_vec();
                let ring = near.into_iter().chain(inner).collect();
                let sides = [(STRIPS, 0), (0, 0), (0, STRIPS), (STRIPS, STRIPS)];
                let flap = c.hung_aslant(id, bulge.end(MIDDLE), (ring, sides), name, Duty::EndFlap);
                c.level(flap, LEVELS[panel]);
                flaps.push(flap);
            }
            flaps.push(id);
            arcs.into_iter().for_each(|a| c.arc(a));
        }
        let front = front.unwrap_or(PanelId(0));
        let back = flaps.last().copied().unwrap_or(front);
        let [upper, lower] = self.corners(2);
        let tab = self.slice(upper, lower, 0.0, self.tab);
        let tab = c.hung_aslant(back, bulge.side(), (tab, Frame::FOUR), "glue tab", Duty::Tab);
        c.level(tab, -2);
        c.glue(tab, Face::Outside, &[front]);
        flaps.retain(|&p| p != front);
        let net = c.finish();
        let moves = moves(&net, tab, &flaps);
        let strips = Some(Box::new(self.strips(bulge)));
        Part { strips, ..Part::alone("pillow", net, Root::Front, Vec::new(), moves) }
    }

    /// A piece of the tab between two distances from its score, its ends cut at 45° so that they stay clear of the
    /// curves.
    fn slice(&self, upper: Point, lower: Point, from: f64, to: Length) -> Vec<Point> {
        let from = Length::round_mm(from);
        let at = |p: Point, along: Length, way: i64| Point::new(p.x + along, p.y + along * way);
        vec![at(lower, from, -1), at(upper, from, 1), at(upper, to, 1), at(lower, to, -1)]
    }

    /// The same in flat strips.
    fn strips(&self, bulge: &Bulge) -> Part {
        let mut c = self.blank();
        // From the middle of the front, which lies still, to both sides, then on round the back.
        let quad = |panel: usize, i: usize| {
            let [upper, lower] = self.corners(panel);
            let (up, down) = (self.score(upper, 1).run, self.score(lower, -1).run);
            [down[i], up[i], up[i + 1], down[i + 1]]
        };
        let turned = |q: [Point; 4], by: usize| (0..4).map(|k| q[(k + by) % 4]).collect::<Vec<_>>();
        let middle = c.aslant(turned(quad(0, MIDDLE), 3), Frame::FOUR, NAMES[0][0], Duty::Wall);
        let mut front = [middle; STRIPS];
        for i in (0..MIDDLE).rev() {
            let (near, fold) = (front[i + 1], bulge.bend(i));
            front[i] = c.hung_aslant(near, fold, (turned(quad(0, i), 2), Frame::FOUR), NAMES[0][0], Duty::Wall);
        }
        for i in MIDDLE + 1..STRIPS {
            let (near, fold) = (front[i - 1], bulge.bend(i - 1));
            front[i] = c.hung_aslant(near, fold, (turned(quad(0, i), 0), Frame::FOUR), NAMES[0][0], Duty::Wall);
        }
        let mut back = [middle; STRIPS];
        for i in 0..STRIPS {
            let (near, fold) =
                if i == 0 { (front[STRIPS - 1], bulge.side()) } else { (back[i - 1], bulge.bend(i - 1)) };
            back[i] = c.hung_aslant(near, fold, (turned(quad(1, i), 0), Frame::FOUR), NAMES[1][0], Duty::Wall);
        }
        for (panel, strips) in [&front, &back].into_iter().enumerate() {
            for end in 0..2 {
                self.flap(&mut c, bulge, (panel, end), strips);
            }
        }
        let tabs = self.tabs(&mut c, bulge, back[STRIPS - 1], &front);
        let net = c.finish();
        let bent: Vec<PanelId> = (1..net.panels.len()).map(PanelId).filter(|p| *p != tabs).collect();
        let moves = moves(&net, tabs, &bent);
        let meets = vec![Meet { edge: (front[0], Side::Top), along: (back[STRIPS - 1], Side::Top), gap: Length::ZERO }];
        Part::alone("pillow", net, Root::Front, meets, moves)
    }

    /// A flap in strips, each behind its own strip of the panel and beside the next.
    fn flap(&self, c: &mut Cells, bulge: &Bulge, (panel, end): (usize, usize), on: &[PanelId; STRIPS]) {
        let way = [1, -1][end];
        let from = self.corners(panel)[end];
        let (near, far) = (self.score(from, way).run, self.edge(from, way).run);
        let mut before = None;
        for i in 0..STRIPS {
            let mut ring = if end == 0 {
                vec![near[i + 1], near[i], far[i], far[i + 1]]
            } else {
                vec![near[i], near[i + 1], far[i + 1], far[i]]
            };
            ring.dedup();
            let sides = if ring.len() == 3 || ring[0] == ring[ring.len() - 1] { Frame::THREE } else { Frame::FOUR };
            ring.truncate(if sides == Frame::THREE { 3 } else { 4 });
            // In the middle it reaches farthest in; only there it bounds the space within.
            let duty = if i == MIDDLE { Duty::EndFlap } else { Duty::Tab };
            let flap = c.hung_aslant(on[i], bulge.end(i), (ring, sides), NAMES[panel][1 + end], duty);
            c.level(flap, LEVELS[panel]);
            if let Some(before) = before {
                let side = if end == 0 { Side::Right } else { Side::Left };
                c.join(flap, (before, side), -bulge.bend(i - 1));
            }
            before = Some(flap);
        }
    }

    /// The tab in strips that bend as the front does; the first of them.
    fn tabs(&self, c: &mut Cells, bulge: &Bulge, back: PanelId, front: &[PanelId; STRIPS]) -> PanelId {
        let [upper, lower] = self.corners(2);
        let mut near = back;
        let mut first = None;
        let mut from = 0.0;
        for i in 0..STRIPS {
            let left = self.tab - Length::round_mm(from);
            if !left.is_positive() {
                break;
            }
            let to = Length::round_mm(from + bulge.wide[i]).min(self.tab);
            let fold = if i == 0 { bulge.side() } else { bulge.bend(i - 1) };
            let strip =
                c.hung_aslant(near, fold, (self.slice(upper, lower, from, to), Frame::FOUR), "glue tab", Duty::Tab);
            c.level(strip, -2);
            c.glue(strip, Face::Outside, front);
            first.get_or_insert(strip);
            (near, from) = (strip, to.as_mm());
        }
        first.unwrap_or(back)
    }
}

/// The tab, then all the rest at once.
fn moves(net: &Net, tab: PanelId, rest: &[PanelId]) -> Vec<Move> {
    vec![Move::even(net, MoveName::Tab, &[tab]), Move::end_only(net, MoveName::CurvesIn, rest, Gives::Curves)]
}
