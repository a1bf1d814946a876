//! What boxes round a regular floor share: a floor of 3 to 8 equal sides, and on each side a wall that is as wide at its
//! rim as the maker says: upright, leaning outward, or leaning in until the walls meet in a point.
//!
//! Regular polygon of n sides a: from its middle to a side a / (2 tan 180°/n), to a corner a / (2 sin 180°/n)
//! (elementary geometry).

use std::f64::consts::PI;

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::point::{Point, Vector};
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Face, Frame, PanelId};
use crate::project::finding::What;

use super::input::{Choice, Default, Input};
use super::joined::{LEAST_TAB, Matted, TAB as USUAL_TAB, length, word};
use super::resolve::Ask;
use crate::assembly::moves::{Move, MoveName, Way};
use crate::assembly::parts::{Meet, Part, Root, Size};

/// A floor and its walls, from score to score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Star {
    /// How many sides the floor has, 3 to 8.
    pub sides: u8,
    /// Each of them.
    pub foot: Length,
    /// How wide each wall is at its rim; nothing where walls meet in a point.
    pub rim: Length,
    /// From the floor to the rim, upright.
    pub height: Length,
    /// How walls hold together.
    pub held: Held,
    /// Which panels take mats.
    pub mats: Matted,
}

/// How walls hold together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// A tab of this width on each, glued inside the next.
    Tabs(Length),
    /// A tab of this width on each, slid inside the next.
    Tucks(Length),
    /// A ribbon through a hole of this radius near each point, so far below it.
    Tied {
        /// The hole's radius.
        radius: Length,
        /// From the point to its middle, down the wall.
        below: Length,
    },
}

const WALLS: [&str; 8] = ["front wall", "wall 2", "wall 3", "wall 4", "wall 5", "wall 6", "wall 7", "wall 8"];
const TABS: [&str; 8] = ["tab 1", "tab 2", "tab 3", "tab 4", "tab 5", "tab 6", "tab 7", "tab 8"];

/// What petals leave free in the middle, so that they close without pushing each other up (common practice, no source).
pub const PETAL_FREE: Length = Length::um(500);

/// Right and up from the middle of the floor, in mm, as the front is above.
type Spot = [f64; 2];

/// From the middle of a polygon of `sides` sides of `side` to each of them.
#[must_use]
pub fn apothem(sides: u8, side: f64) -> f64 {
    side / 2.0 / libm::tan(PI / f64::from(sides))
}

/// The way out of side `k` of a polygon of `sides` sides, clockwise from the front.
fn way(sides: u8, k: u8) -> Spot {
    let angle = PI / 2.0 - 2.0 * PI * f64::from(k) / f64::from(sides);
    [libm::cos(angle), libm::sin(angle)]
}

/// From its middle to the sides of the least polygon of this kind round a square of 2 by 2, that lies where it
/// pleases between front and back.
#[must_use]
pub fn square(sides: u8) -> f64 {
    let faces: Vec<[f64; 2]> = (0..sides).map(|k| way(sides, k)).map(|[x, y]| [y, x.abs() + y.abs()]).collect();
    let reached = |shift: f64| faces.iter().map(|f| f[0] * shift + f[1]).fold(0.0, f64::max);
    // The least of the greatest of straight lines is where two of them cross.
    let crossings = faces.iter().flat_map(|a| faces.iter().map(move |b| (b[1] - a[1]) / (a[0] - b[0])));
    crossings.filter(|s| s.is_finite()).chain([0.0]).map(reached).fold(f64::MAX, f64::min)
}

/// So far out from the middle of a polygon and along side `k` of it, clockwise.
fn place(sides: u8, k: u8, out: f64, along: f64) -> Spot {
    let [x, y] = way(sides, k);
    [x * out + y * along, y * out - x * along]
}

/// How far walls turn on each other, of which each leans with this sine and cosine from the floor: the angle between
/// the ways out of two neighbours.
#[must_use]
pub fn turn(sides: u8, [sine, cosine]: [f64; 2]) -> Angle {
    let between = sine * sine * libm::cos(2.0 * PI / f64::from(sides)) + cosine * cosine;
    Angle::of((1.0 - between * between).max(0.0).sqrt(), between)
}

/// Left to right and front to back over polygons of so many sides, each so far out and with sides so long, whose walls
/// stand out by `thick` square to themselves; at the first of them, tabs lie so far inside the wall before their own.
#[must_use]
pub fn spread(sides: u8, rings: &[(f64, f64)], thick: f64, tab: f64) -> [Length; 2] {
    let mut most = [0.0_f64; 4];
    let mut reach = |[x, y]: Spot, way: Spot| {
        let stands = way.map(|w| w.abs() * thick);
        let far = [x + stands[0], stands[0] - x, y + stands[1], stands[1] - y];
        most = [0, 1, 2, 3].map(|i| most[i].max(far[i]));
    };
    for k in 0..sides {
        let before = way(sides, (k + sides - 1) % sides);
        for (i, &(out, side)) in rings.iter().enumerate() {
            let ends = [-side / 2.0, side / 2.0].map(|along| place(sides, k, out, along));
            ends.into_iter().for_each(|end| reach(end, way(sides, k)));
            if i == 0 {
                reach([ends[0][0] - before[0] * tab, ends[0][1] - before[1] * tab], before);
            }
        }
    }
    [Length::round_mm(most[0] + most[1]), Length::round_mm(most[2] + most[3])]
}

impl Star {
    /// From the middle of the floor to each side, in mm.
    #[must_use]
    pub fn reach(&self) -> f64 {
        apothem(self.sides, self.foot.as_mm())
    }

    /// How far the rim stands out over the floor's side, in mm; below zero it leans in.
    fn out(&self) -> f64 {
        apothem(self.sides, self.rim.as_mm()) - self.reach()
    }

    /// From foot to rim along the wall, in mm.
    #[must_use]
    pub fn slant(&self) -> f64 {
        libm::hypot(self.height.as_mm(), self.out())
    }

    /// How far walls fold up.
    fn fold(&self) -> Angle {
        Angle::of(self.height.as_mm(), self.out())
    }

    /// Sine and cosine of that.
    fn lean(&self) -> [f64; 2] {
        [self.height.as_mm() / self.slant(), self.out() / self.slant()]
    }

    /// The flat angle between neighbouring walls, in degrees: what a full turn has left beside the floor's corner and
    /// the foot of both walls.
    #[must_use]
    pub fn gap(&self) -> f64 {
        180.0 + 360.0 / f64::from(self.sides) - 2.0 * self.corner()
    }

    /// Between a wall's foot and its edge, in degrees.
    fn corner(&self) -> f64 {
        libm::atan2(self.slant(), (self.foot - self.rim).as_mm() / 2.0).to_degrees()
    }

    /// How much of a wall's edge a tab leaves free at the foot, so that it stays off the next wall while flat, and off
    /// the floor while it slides in.
    fn free(&self, tab: Length) -> f64 {
        tab.as_mm() / libm::tan((self.gap() * 0.85).min(60.0).min(self.corner() * 0.7).to_radians()) + 1.0
    }

    /// How much a tab narrows towards the rim: with the rim of the next wall, which it must not stand over.
    fn back(&self, tab: Length) -> f64 {
        let along = tab.as_mm() * (self.rim - self.foot).as_mm() / 2.0 / self.slant() + 0.5;
        // In a point, half of the wall's angle is its own, the other half that of the next tab.
        let point = libm::atan2(self.foot.as_mm() / 2.0, self.slant()) * 0.9;
        let half = if self.rim == Length::ZERO { tab.as_mm() / libm::tan(point) } else { tab.as_mm() / 2.0 };
        along.max(half)
    }

    /// The least edge that a tab of this width needs.
    #[must_use]
    pub fn least_edge(&self, tab: Length) -> f64 {
        self.free(tab) + self.back(tab) + tab.as_mm() / 2.0
    }

    /// From foot to rim along a wall's edge, in mm.
    #[must_use]
    pub fn edge(&self) -> f64 {
        libm::hypot(self.slant(), (self.foot - self.rim).as_mm() / 2.0)
    }

    /// The largest upright block on a square foot that stands on the floor, in card of thickness `t`, where nothing
    /// closes the top or all walls meet above.
    #[must_use]
    pub fn inside(&self, t: Length) -> Size {
        let [sine, cosine] = self.lean();
        let half = t.as_mm() / 2.0;
        // Where the inner face of a wall meets that of the floor.
        let floor = self.reach() - half * (1.0 - cosine) / sine;
        let (share, height) = if self.rim == Length::ZERO {
            // In a point: of all blocks the one with most volume is a third as high and two thirds as broad.
            (2.0 / 3.0, floor * sine / -cosine / 3.0)
        } else {
            (1.0, self.height.as_mm() - half)
        };
        let side = Length::round_mm(2.0 * floor * share / square(self.sides));
        Size { width: side, depth: side, height: Length::round_mm(height) }
    }

    /// What it takes up in card of thickness `t`: half a thickness stands out square to each wall.
    #[must_use]
    pub fn outside(&self, t: Length) -> Size {
        let [sine, cosine] = self.lean();
        let half = t.as_mm() / 2.0;
        let rings = [(self.reach(), self.foot.as_mm()), (self.reach() + self.out(), self.rim.as_mm())];
        let tucked = matches!(self.held, Held::Tucks(_));
        let inward = if tucked { 2.0 * half * sine } else { 0.0 };
        let [width, depth] = spread(self.sides, &rings, sine * half, inward);
        // A tab inside a wall that leans in starts lower by as much as the wall leans over it.
        let below = if tucked { half.max(3.0 * half * cosine.abs()) } else { half };
        Size {
            width,
            depth,
            // A tab inside a wall that leans outward stands higher by as much as the wall leans over it.
            height: Length::round_mm(self.height.as_mm() + below + half * cosine.abs() + t.as_mm() * cosine.max(0.0)),
        }
    }

    /// Where the middle of the floor is, from the origin of the folded part: to the right and to the back.
    #[must_use]
    pub fn middle(&self) -> [Length; 2] {
        let corners = (0..self.sides).map(|k| place(self.sides, k, self.reach(), self.foot.as_mm() / 2.0));
        let right = corners.map(|c| c[0]).fold(0.0, f64::max);
        [Length::round_mm(right), Length::round_mm(self.reach())]
    }

    /// The part.
    #[must_use]
    pub fn part(&self, name: &'static str, ask: &Ask) -> Part {
        let flat = self.flat();
        let all = || flat.iter().flat_map(|w| w.wall.iter().chain(&w.tab)).copied();
        let far = |of: fn(Point) -> Length| {
            (all().map(of).min().unwrap_or_default(), all().map(of).max().unwrap_or_default())
        };
        let (x, y) = (far(|p| p.x), far(|p| p.y));
        let cut = ask.setting.cut;
        let blank = [cut.up(x.1 - x.0), cut.up(y.1 - y.0)];
        let shift = Vector::new(-x.0, -y.0);
        let shifted = |corners: &[Point]| corners.iter().map(|&p| p + shift).collect::<Vec<_>>();

        let mut c = Cells::new(&blank[..1], &blank[1..]);
        // Clockwise: each wall's foot runs the other way.
        let floor: Vec<Point> = flat.iter().map(|w| w.wall[1]).collect();
        let floor = c.aslant(shifted(&floor), [(0, 1), (1, 2), (2, 0), (0, 0)], "base", Duty::Floor);
        if self.mats == Matted::All {
            c.mat(floor);
        }
        let mut walls: Vec<PanelId> = Vec::new();
        let mut tabs: Vec<PanelId> = Vec::new();
        for (w, (&wall, &tab)) in flat.iter().zip(WALLS.iter().zip(&TABS)) {
            let id = c.hung_aslant(floor, self.fold(), (shifted(&w.wall), w.sides()), wall, Duty::Wall);
            if self.mats != Matted::None {
                c.mat(id);
            }
            if let Held::Tabs(_) | Held::Tucks(_) = self.held {
                let tab =
                    c.hung_aslant(id, turn(self.sides, self.lean()), (shifted(&w.tab), Frame::FOUR), tab, Duty::Tab);
                c.level(tab, -2);
                tabs.push(tab);
            }
            if let (Held::Tied { radius, .. }, Some(hole)) = (self.held, w.hole) {
                c.hole_at(id, hole + shift, radius);
            }
            walls.push(id);
        }
        let before = |k: usize| walls[(k + walls.len() - 1) % walls.len()];
        for (k, &tab) in tabs.iter().enumerate().filter(|_| matches!(self.held, Held::Tabs(_))) {
            c.glue(tab, Face::Outside, &[before(k)]);
        }
        let net = c.finish();
        let meet = |k: usize| Meet { edge: (walls[k], Side::Left), along: (before(k), Side::Right), gap: Length::ZERO };
        let meets = (0..walls.len()).map(meet).collect();
        let moves = match self.held {
            Held::Tabs(_) => {
                vec![Move::even(&net, MoveName::TabsIn, &tabs), Move::even(&net, MoveName::WallsUp, &walls)]
            }
            Held::Tucks(_) => {
                let creases = |all: &[PanelId]| all.iter().filter_map(|p| net.carrier(*p)).collect();
                let way = Way::Sprung { closing: creases(&walls), tucks: creases(&tabs), over: Angle::degrees(15) };
                vec![Move { name: MoveName::WallsTucked, way }]
            }
            Held::Tied { .. } => vec![Move::even(&net, MoveName::WallsTied, &walls)],
        };
        Part::alone(name, net, Root::Base, meets, moves)
    }

    /// Every wall with its tab as they lie round the middle of the floor.
    fn flat(&self) -> Vec<Wall> {
        let (foot, rim) = (self.foot.as_mm() / 2.0, self.rim.as_mm() / 2.0);
        let (near, far) = (self.reach(), self.reach() + self.slant());
        let spot = |[x, y]: Spot| Point::new(Length::round_mm(x), Length::round_mm(-y));
        let corner = |k: u8| spot(place(self.sides, k, near, -foot));
        (0..self.sides)
            .map(|k| {
                // From the crease, right to left as it stands on it, then round.
                let mut wall = vec![corner((k + 1) % self.sides), corner(k), spot(place(self.sides, k, far, -rim))];
                if self.rim.is_positive() {
                    wall.push(spot(place(self.sides, k, far, rim)));
                }
                let (mut tab, mut hole) = (Vec::new(), None);
                match self.held {
                    Held::Tabs(width) | Held::Tucks(width) => {
                        // Along the wall's left edge from its foot, and out of it.
                        let long = self.edge();
                        let (up, aside) = (self.slant() / long, (foot - rim) / long);
                        let at = |along: f64, out: f64| {
                            place(self.sides, k, near + along * up + out * aside, -foot + along * aside - out * up)
                        };
                        let w = width.as_mm();
                        let free = self.free(width);
                        tab = vec![wall[2], wall[1], spot(at(free, w)), spot(at(long - self.back(width), w))];
                    }
                    Held::Tied { below, .. } => hole = Some(spot(place(self.sides, k, far - below.as_mm(), 0.0))),
                }
                Wall { wall, tab, hole }
            })
            .collect()
    }
}

/// A wall and its tab, flat, each from its crease on.
struct Wall {
    wall: Vec<Point>,
    tab: Vec<Point>,
    hole: Option<Point>,
}

impl Wall {
    /// Four sides, or three where it ends in a point.
    fn sides(&self) -> [(usize, usize); 4] {
        if self.wall.len() > 3 { Frame::FOUR } else { Frame::THREE }
    }
}

/// A number of sides, to choose.
pub const fn word_for(sides: u8) -> Choice {
    match sides {
        3 => word("three", "three"),
        4 => word("four", "four"),
        5 => word("five", "five"),
        6 => word("six", "six"),
        7 => word("seven", "seven"),
        _ => word("eight", "eight"),
    }
}

/// The number of sides that is chosen.
pub fn sides(ask: &Ask) -> u8 {
    let chosen = ask.choice("sides");
    (3..8).find(|n| word_for(*n).key == chosen).unwrap_or(8)
}

/// The width of the tabs.
pub const fn tab_input(number: u8) -> Input {
    length(
        number,
        "tab",
        "Glue tabs",
        "On one edge of each wall, glued inside the next",
        (6, 25),
        Default::Worked("½ in or 12 mm, less where walls are low or narrow"),
    )
}

/// The tabs of a star, as wide as its walls allow; `key` is the size that leaves too little.
pub fn tab(ask: &mut Ask, star: impl Fn(Length) -> Star, key: &'static str) -> Length {
    // On the next wall a tab lies beside that wall's own; and it needs edge for its slanted ends.
    let fits = |w: Length| {
        let s = star(w);
        let narrow = if s.rim == Length::ZERO { s.foot } else { s.foot.min(s.rim) };
        w <= narrow.half() - Length::mm(1) && s.least_edge(w) + LEAST_TAB.as_mm() / 2.0 <= s.edge()
    };
    let half = Length::um(500);
    let mut most = Length::mm(25);
    while most > LEAST_TAB && !fits(most) {
        most -= half;
    }
    if !fits(most) {
        ask.stop(key, What::NoRoomForTabs);
    }
    let tab = ask.length("tab", USUAL_TAB.of(ask.setting.system).min(most));
    if tab > most {
        ask.stop("tab", What::TabTooWide { most });
    }
    tab
}
