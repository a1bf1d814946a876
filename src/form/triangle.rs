//! Triangular tube, one piece: three walls and a glue tab, and at each end a lid on the front with a tuck on each of its
//! other two sides. Front and sides are on the board's grooves, so the net closes; the depth follows from them.

use crate::allow::Layers;
use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{CreaseId, Duty, Face, Frame, Net, PanelId};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{length, size_choice};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use super::tube::ring_tab;
use crate::assembly::moves::{Move, MoveName, Way};
use crate::assembly::parts::{Assembly, Meet, Part, Root, Size};

/// The form.
pub const FORM: Form =
    Form { number: 9, key: "triangle", name: "Triangular tube", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Of the front; inside: of what lies along it",
        (30, 400),
        Default::Is(Native::lengths(5, 2, 600)),
    ),
    length(
        2,
        "depth",
        "Depth",
        "From the front to the edge behind it, half the width to twice the width",
        (15, 400),
        Default::Worked("three equal sides"),
    ),
    length(3, "height", "Height", "From end to end", (40, 500), Default::Is(Native::lengths(7, 1, 1_800))),
    size_choice(4),
    ring_tab(5),
    length(
        6,
        "tuck",
        "Tucks",
        "The flaps on both sides of a lid that hold it",
        (5, 40),
        Default::Worked("½ in or 12 mm, less where the tube is slim or low"),
    ),
];

/// A triangle with two equal sides, score to score.
struct Triangle {
    width: Length,
    side: Length,
    /// From the front to the edge behind it, in mm.
    deep: f64,
    height: Length,
    tab: Length,
    tuck: Length,
}

impl Triangle {
    fn depth(&self) -> Length {
        Length::round_mm(self.deep)
    }

    /// The share that is left of the triangle when half a thickness is lost at each side: it is similar, and its
    /// inscribed circle is smaller by that much.
    fn left(&self, t: Length) -> f64 {
        1.0 - t.as_mm() / 2.0 / radius(self.width.as_mm(), self.deep)
    }

    /// The largest upright block: half as wide and half as deep as the triangle.
    fn inside(&self, t: Length) -> Size {
        let half = |mm: f64| Length::round_mm(mm * self.left(t) / 2.0);
        Size { width: half(self.width.as_mm()), depth: half(self.deep), height: Layers::WALLS.inside(self.height, t) }
    }

    /// Half a thickness stands out square to each side.
    fn outside(&self, t: Length) -> Size {
        let (w, s, t_mm) = (self.width.as_mm(), self.side.as_mm(), t.as_mm());
        Size {
            width: Length::round_mm(w + t_mm * self.deep / s),
            depth: Length::round_mm(self.deep + t_mm / 2.0 + t_mm / 2.0 * (w / 2.0) / s),
            height: Layers::WALLS.outside(self.height, t),
        }
    }
}

/// How much further than square tucks bend in, so that they pass the sides as the lid closes. A place on a lid that
/// stands `y` from its crease and `k` below it swings out by k²/2y, and a tuck that starts over the front is no deeper
/// there than y tan h / cos h, for half the angle h at the edge behind: bent in by an angle whose sine is tan²h/2 it
/// just passes.
fn over(s: &Triangle) -> Angle {
    let tan = s.width.as_mm() / 2.0 / s.deep;
    let sine = tan * tan / 2.0 + 0.1;
    Angle::of(sine, (1.0 - sine * sine).max(0.0).sqrt())
}

/// The radius of the circle in a triangle with a base and two equal sides: twice its area over its girth.
fn radius(base: f64, deep: f64) -> f64 {
    base * deep / (base + 2.0 * libm::hypot(base / 2.0, deep))
}

fn shape(mut ask: Ask) -> Shaped {
    let (score, t) = (ask.setting.score, ask.setting.thickness);
    let inside = ask.choice("size") == "inside";
    let mut width = ask.length("width", Length::ZERO);
    let mut asked = ask.typed("depth");
    let mut height = ask.length("height", Length::ZERO);
    if inside {
        // What lies within is half as wide and half as deep as the free triangle round it.
        let (w, d) = (width.as_mm() * 2.0, asked.map_or(width.as_mm() * 3_f64.sqrt(), |d| d.as_mm() * 2.0));
        let grown = 1.0 + t.as_mm() / 2.0 / radius(w, d);
        width = Length::round_mm(w * grown);
        asked = asked.map(|_| Length::round_mm(d * grown));
        height = Layers::WALLS.score_for(height, t);
    }
    let (width, height) = (score.up(width), score.up(height));
    let half = width.as_mm() / 2.0;
    let side = score.up(asked.map_or(width, |d| Length::round_mm(libm::hypot(half, d.as_mm()))));
    // The depth follows from the sides: it is on no groove.
    let depth = deep(width, side).1;
    ask.shaped.used.insert("depth", depth);
    let (least, most) = (width.half(), width * 2);
    if depth < least || depth > most {
        ask.stop("depth", What::LengthOutside { is: depth, least, most });
    }
    for (key, to) in [("width", width), ("height", height)] {
        if inside {
            ask.shaped.used.insert(key, to);
        } else {
            ask.moved(key, to);
        }
    }
    tube(ask, "depth", width, side, height)
}

/// From the front to the edge behind it, in mm and as it is said.
fn deep(width: Length, side: Length) -> (f64, Length) {
    let half = width.as_mm() / 2.0;
    let mm = (side.as_mm() * side.as_mm() - half * half).max(1.0).sqrt();
    (mm, Length::round_mm(mm))
}

/// The tube with a front of `width` and both its `side`s on grooves, from half to twice as deep as it is wide; `key` is
/// the input that says how deep it is.
pub fn tube(mut ask: Ask, key: &'static str, width: Length, side: Length, height: Length) -> Shaped {
    let t = ask.setting.thickness;
    let (deep, depth) = deep(width, side);
    let tab = ask.scored("tab", Length::ZERO);
    let tab_most = ask.setting.score.down(side.scaled(1, 3));
    if tab > tab_most {
        ask.stop("tab", What::TabTooWide { most: tab_most });
    }
    let (clear, least) = (ask.setting.clear(), ask.setting.least_panel());
    let along = side - tab - clear * 2 - least;
    let most = Length::round_mm(along.as_mm() / (1.0 + deep / width.as_mm() * 2.0)).min(height.scaled(3, 8));
    let most = ask.setting.cut.down(most);
    let usual = Native::lengths(1, 2, 120).of(ask.setting.system);
    let tuck = ask.length("tuck", usual.min(most));
    if tuck > most {
        ask.stop("tuck", What::TuckTooLong { is: tuck, most });
    }
    if most < least {
        ask.stop(key, What::PanelTooSmall { panel: "tuck", is: most.at_least_zero(), least });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let s = Triangle { width, side, deep, height, tab, tuck };
    let finished = Size { width, depth, height };
    let (inside, outside) = (s.inside(t), s.outside(t));
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    let part = draw(&s, &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

/// A lid's corners and those of its tucks, as at the upper end: the lid from its crease on, then each tuck.
struct End {
    lid: Vec<Point>,
    tucks: [Vec<Point>; 2],
}

impl End {
    /// On the front's upper edge, which begins at `at`.
    fn above(s: &Triangle, at: Point, clear: Length) -> Self {
        let (half, long) = (s.width.as_mm() / 2.0, s.side.as_mm());
        // Along the left side, from the front, and out of it.
        let place = |along: f64, out: f64| {
            let (right, up) = ((along * half - out * s.deep) / long, (along * s.deep + out * half) / long);
            Point::new(at.x + Length::round_mm(right), at.y - Length::round_mm(up))
        };
        let tuck = s.tuck.as_mm();
        // No further out than over the front, and clear of the glue tab.
        let near = tuck * s.deep / half + clear.as_mm();
        let far = long - (s.tab + clear).as_mm();
        let crease = [place(near - tuck, 0.0), place(far, 0.0)];
        let free = [place(near, tuck), place(far - tuck, tuck)];
        let mirrored = |p: Point| Point::new(at.x * 2 + s.width - p.x, p.y);
        let apex = Point::new(at.x + s.width.half(), at.y - s.depth());
        let right = Point::new(at.x + s.width, at.y);
        let lid = vec![right, at, crease[0], crease[1], apex, mirrored(crease[1]), mirrored(crease[0])];
        let left = vec![crease[1], crease[0], free[0], free[1]];
        let other = [crease[0], crease[1], free[1], free[0]].map(mirrored).to_vec();
        Self { lid, tucks: [left, other] }
    }

    /// The same end turned half round about the middle of the front.
    fn turned(&self, to: impl Fn(Point) -> Point) -> Self {
        let each = |all: &Vec<Point>| all.iter().map(|p| to(*p)).collect();
        Self { lid: each(&self.lid), tucks: self.tucks.each_ref().map(each) }
    }
}

/// Sides of a lid: its two free ones from the crease to the edge behind, with the tucks' corners between.
const LID: [(usize, usize); 4] = [(4, 4), (4, 0), (0, 1), (1, 4)];
fn draw(s: &Triangle, ask: &Ask) -> Part {
    let clear = ask.setting.clear();
    let end = ask.setting.score.up(s.depth());
    let mut c = Cells::new(&[s.side, s.width, s.side, s.tab], &[end, s.height, end]);
    // Between the front and a side, and between the sides.
    let foot = Angle::of(s.deep, s.width.as_mm() / 2.0);
    let front = c.panel(1, 1, "front", Duty::Wall);
    let left = c.hung(front, foot.rest(), (0, 1), "left side", Duty::Wall);
    let right = c.hung(front, foot.rest(), (2, 1), "right side", Duty::Wall);
    let tab = c.hung(right, foot.twice(), (3, 1), "glue tab", Duty::Tab);
    let wedge = Shape::Wedge { across: s.tab, down: s.tab.half().min(s.height.scaled(1, 6)) };
    c.corner(tab, Corner::TopRight, wedge);
    c.corner(tab, Corner::BottomRight, wedge);
    c.level(tab, -2);
    c.glue(tab, Face::Outside, &[left]);
    let above = End::above(s, c.corner_of(1, 1), clear);
    let (across, down) = (s.side * 2 + s.width, end * 2 + s.height);
    let below = above.turned(|p| Point::new(across - p.x, down - p.y));
    let upper = lidded(&mut c, front, above, ["lid", "left tuck", "right tuck"]);
    let lower = lidded(&mut c, front, below, ["lower lid", "lower right tuck", "lower left tuck"]);
    for panel in [front, left, right, upper[0], lower[0]] {
        c.mat(panel);
    }
    let net = c.finish();
    let moves = vec![
        Move::even(&net, MoveName::Tab, &[tab]),
        Move::even(&net, MoveName::Walls, &[right]),
        Move::even(&net, MoveName::Seam, &[left]),
        tucked(&net, MoveName::LowerTucksIn, over(s), lower),
        tucked(&net, MoveName::TucksIn, over(s), upper),
    ];
    let meet = |edge, along| Meet { edge, along, gap: Length::ZERO };
    let meets = vec![
        meet((left, Side::Left), (right, Side::Right)),
        meet((upper[0], Side::Left), (left, Side::Top)),
        meet((upper[0], Side::Right), (right, Side::Top)),
        meet((lower[0], Side::Left), (right, Side::Bottom)),
        meet((lower[0], Side::Right), (left, Side::Bottom)),
    ];
    Part::alone("tube", net, Root::Front, meets, moves)
}

/// A lid and its tucks.
fn lidded(c: &mut Cells, front: PanelId, end: End, names: [&'static str; 3]) -> [PanelId; 3] {
    let square = Angle::degrees(90);
    let lid = c.hung_aslant(front, square, (end.lid, LID), names[0], Duty::Lid);
    let [left, right] = end.tucks;
    let tucks = [(left, names[1]), (right, names[2])].map(|(corners, name)| {
        let tuck = c.hung_aslant(lid, square, (corners, Frame::FOUR), name, Duty::Tuck);
        c.level(tuck, -2);
        tuck
    });
    [lid, tucks[0], tucks[1]]
}

fn tucked(net: &Net, name: MoveName, over: Angle, [lid, left, right]: [PanelId; 3]) -> Move {
    let crease = |panel: PanelId| net.carrier(panel).unwrap_or(CreaseId(0));
    Move { name, way: Way::Sprung { closing: vec![crease(lid)], tucks: vec![crease(left), crease(right)], over } }
}
