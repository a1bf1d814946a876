//! Cone closed by petals: a fan of 5 to 8 equal slim triangles from one sector, closed by a petal on each that folds over
//! the opening until all meet in the middle. A label or a ribbon holds them.
//!
//! The fan lies in a sector of radius L; a triangle of base a has 2 asin(a / 2L) of it. Folded, its bases are a regular
//! polygon of n sides a, and its point lies √(L² − R²) below, with R = a / (2 sin 180°/n) (elementary geometry).

use std::f64::consts::PI;

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::point::{Point, Vector};
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Face, PanelId};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{choice, length};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use super::star::{PETAL_FREE, apothem, sides, spread, square, turn, word_for};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Meet, Part, Root, Size};

/// The form.
pub const FORM: Form =
    Form { number: 25, key: "favour", name: "Cone closed by petals", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    choice(
        1,
        "sides",
        "Sides",
        "How many slim triangles it has",
        &[word_for(6), word_for(5), word_for(7), word_for(8)],
    ),
    length(2, "edge", "Edge", "From the point to the opening", (60, 400), Default::Is(Native::lengths(6, 1, 1_500))),
    length(3, "rim", "Side at the opening", "Each of them", (20, 150), Default::Is(Native::lengths(2, 1, 500))),
    length(
        4,
        "tab",
        "Glue tab",
        "Glued inside the first triangle to close the ring",
        (6, 20),
        Default::Is(Native::lengths(3, 8, 100)),
    ),
];

/// The longest edge that can be typed.
const MOST_EDGE: Length = Length::mm(400);

struct Fan {
    sides: u8,
    edge: f64,
    rim: f64,
    tab: f64,
}

impl Fan {
    /// From the middle of the opening to each side.
    fn reach(&self) -> f64 {
        apothem(self.sides, self.rim)
    }

    /// From the point up to the opening; below zero squared where the edge is too short.
    fn height_squared(&self) -> f64 {
        let corner = self.rim / 2.0 / libm::sin(PI / f64::from(self.sides));
        self.edge * self.edge - corner * corner
    }

    /// Up, out and along the middle of a triangle.
    fn rise(&self) -> [f64; 3] {
        let (up, out) = (self.height_squared().max(0.0).sqrt(), self.reach());
        [up, out, libm::hypot(up, out)]
    }

    /// What each triangle has of the sector, in radians.
    fn each(&self) -> f64 {
        2.0 * libm::asin((self.rim / 2.0 / self.edge).min(1.0))
    }

    /// How far triangles fold on each other.
    fn fold(&self) -> Angle {
        let [up, out, slant] = self.rise();
        turn(self.sides, [up / slant, out / slant])
    }

    fn inside(&self, t: Length) -> Size {
        let [up, out, slant] = self.rise();
        let (sine, cosine, half) = (up / slant, out / slant, t.as_mm() / 2.0);
        // Below the petals: similar to the whole, and of all blocks in it the one with most volume is a third as high
        // and two thirds as broad.
        let broad = ((up - half) * cosine - half) / sine;
        let high = up - half - half / cosine;
        let side = Length::round_mm(2.0 * broad * 2.0 / 3.0 / square(self.sides));
        Size { width: side, depth: side, height: Length::round_mm(high / 3.0) }
    }

    /// Half a thickness stands out square to each triangle, and above the petals.
    fn outside(&self, t: Length) -> Size {
        let [up, out, slant] = self.rise();
        let half = t.as_mm() / 2.0;
        let [width, depth] = spread(self.sides, &[(out, self.rim)], half * up / slant, 0.0);
        Size {
            width,
            depth,
            // The tab inside a leaning triangle stands higher by as much as that leans over it.
            height: Length::round_mm(up + half.max(3.0 * half * out / slant) + half * out / slant),
        }
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let sides = sides(&ask);
    let edge = ask.scored("edge", Length::ZERO);
    let rim = ask.scored("rim", Length::ZERO);
    let tab = ask.length("tab", Length::ZERO);
    let fan = Fan { sides, edge: edge.as_mm(), rim: rim.as_mm(), tab: tab.as_mm() };
    // As high as its opening is across at least: flatter, the fan is nearly a full round.
    let [up, out, _] = fan.rise();
    if up < out * 2.0 {
        let corner = out / libm::cos(PI / f64::from(sides));
        let least = Length::round_mm(libm::hypot(out * 2.0, corner));
        ask.stop("edge", What::LengthOutside { is: edge, least: ask.setting.score.up(least), most: MOST_EDGE });
    }
    if tab > rim.half() {
        ask.stop("tab", What::TabTooWide { most: rim.half() });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let t = ask.setting.thickness;
    let across = Length::round_mm(2.0 * fan.reach());
    let finished = Size { width: across, depth: across, height: Length::round_mm(up) };
    let (inside, outside) = (fan.inside(t), fan.outside(t));
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    let part = draw(&fan, &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

const WALLS: [&str; 8] = ["front", "side 2", "side 3", "side 4", "side 5", "side 6", "side 7", "side 8"];
const PETALS: [&str; 8] = ["petal 1", "petal 2", "petal 3", "petal 4", "petal 5", "petal 6", "petal 7", "petal 8"];
/// Sides of a triangle that hangs on its left edge, with its point first: its rim is its right side.
const WALL: [(usize, usize); 4] = [(2, 0), (1, 2), (0, 1), (2, 0)];

fn draw(fan: &Fan, ask: &Ask) -> Part {
    let n = usize::from(fan.sides);
    let each = fan.each();
    // The point of the fan is the origin; the front goes straight up from it. Places by angle from the left, and distance.
    let middle = (n - 1) / 2;
    let first = -each * (middle as f64 + 0.5);
    let place = |angle: f64, far: f64| {
        Point::new(Length::round_mm(libm::sin(angle) * far), Length::round_mm(-libm::cos(angle) * far))
    };
    let rim: Vec<Point> = (0..=n).map(|k| place(first + each * k as f64, fan.edge)).collect();
    let [_, out, slant] = fan.rise();
    let petal = |k: usize| place(first + each * (k as f64 + 0.5), slant + out - PETAL_FREE.as_mm());
    let point = place(0.0, 0.0);
    // Beyond the last edge: broad at the rim, slim at the point.
    let last = first + each * n as f64;
    let beside = |along: f64, wide: f64| {
        let (x, y) = (libm::sin(last), libm::cos(last));
        Point::new(Length::round_mm(x * along + y * wide), Length::round_mm(-y * along + x * wide))
    };
    // At the point there is no room to glue: the tab begins a fifth up the edge.
    let foot = beside(fan.edge * 0.2, 0.0);
    let tab =
        vec![foot, rim[n], beside(fan.edge - fan.tab, fan.tab), beside(fan.edge * 0.35, fan.tab.min(fan.rim * 0.2))];

    let petals: Vec<Point> = (0..n).map(petal).collect();
    let all = || rim.iter().chain(&petals).chain(&tab).copied().chain([point]);
    let span =
        |of: fn(Point) -> Length| (all().map(of).min().unwrap_or_default(), all().map(of).max().unwrap_or_default());
    let ((left, right), (top, bottom)) = (span(|p| p.x), span(|p| p.y));
    let cut = ask.setting.cut;
    let blank = [cut.up(right - left), cut.up(bottom - top)];
    let shift = Vector::new(-left, -top);
    let at = |p: Point| p + shift;

    let mut c = Cells::new(&blank[..1], &blank[1..]);
    let mut walls: Vec<(usize, PanelId)> = Vec::new();
    let corners = |k: usize| [at(point), at(rim[k]), at(rim[k + 1])];
    // From the middle outward, each on the one before it.
    let front = c.aslant(corners(middle).to_vec(), [(1, 2), (2, 0), (0, 0), (0, 1)], WALLS[0], Duty::Wall);
    c.mat(front);
    walls.push((middle, front));
    let mut name = 1;
    for k in middle + 1..n {
        let [p, a, b] = corners(k);
        let near = walls.iter().find(|w| w.0 + 1 == k).map_or(front, |w| w.1);
        // On its left edge; the last one's right edge has a corner where the tab begins.
        let mut corners = vec![p, a, b];
        corners.extend((k + 1 == n).then(|| at(foot)));
        let id = c.hung_aslant(near, fan.fold(), (corners, WALL), WALLS[name], Duty::Wall);
        c.mat(id);
        walls.push((k, id));
        name += 1;
    }
    for k in (0..middle).rev() {
        let [p, a, b] = corners(k);
        let near = walls.iter().find(|w| w.0 == k + 1).map_or(front, |w| w.1);
        // On its right edge, from the point up to the rim.
        let id =
            c.hung_aslant(near, fan.fold(), (vec![b, p, a], [(2, 0), (0, 1), (0, 1), (1, 2)]), WALLS[name], Duty::Wall);
        c.mat(id);
        walls.push((k, id));
        name += 1;
    }
    let wall = |k: usize| walls.iter().find(|w| w.0 == k).map_or(front, |w| w.1);
    let tab_corners: Vec<Point> = tab.iter().map(|&p| at(p)).collect();
    let tab =
        c.hung_aslant(wall(n - 1), fan.fold(), (tab_corners, [(2, 3), (3, 0), (0, 1), (1, 2)]), "glue tab", Duty::Tab);
    c.level(tab, -2);
    c.glue(tab, Face::Outside, &[wall(0)]);
    let inward = Angle::of(fan.rise()[0], -out);
    let closing: Vec<PanelId> = (0..n)
        .map(|k| {
            let corners = vec![at(rim[k + 1]), at(rim[k]), at(petals[k])];
            c.hung_aslant(wall(k), inward, (corners, [(2, 2), (2, 0), (0, 1), (1, 2)]), PETALS[k], Duty::DustFlap)
        })
        .collect();
    let net = c.finish();
    let ring: Vec<PanelId> = walls.iter().map(|w| w.1).filter(|w| *w != front).collect();
    // The seam: the free edge of the first triangle along that of the last.
    let meets = vec![Meet { edge: (wall(0), Side::Left), along: (tab, Side::Bottom), gap: Length::ZERO }];
    let moves = vec![
        Move::even(&net, MoveName::Tab, &[tab]),
        Move::even(&net, MoveName::Seam, &ring),
        Move::even(&net, MoveName::Petals, &closing),
    ];
    Part::alone("cone", net, Root::Leaning(Angle::of(out, fan.rise()[0])), meets, moves)
}
