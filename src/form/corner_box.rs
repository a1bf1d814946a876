//! Box folded from one square, without a cut and without glue: the corners of the square come to its middle, the walls
//! stand up and the ends fold over the corners. A lid is the same from a larger square.
//!
//! Its floor's side is the square's side ÷ (2√2), its walls are half as high (elementary geometry). On the square every
//! corner of a panel lies on a lattice of eighths, and every score runs from quarter to quarter of its edges.

use std::f64::consts::SQRT_2;

use crate::measure::angle::Angle;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Frame, Net, PanelId};
use crate::project::bound::Range;

use super::input::{Default, Input};
use super::joined::{Matted, choice, clearance_input, length, size_choice, word};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use crate::assembly::moves::{Gives, Move, MoveName};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Part, Room, Root, Size, Stand, Turn};

/// The form.
pub const FORM: Form =
    Form { number: 28, key: "corner-box", name: "Corner-folded box", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "side",
        "Side",
        "Of the floor, at least: the square's quarters are marks of a ruler. Walls are half as high",
        (40, 250),
        Default::Is(Native::lengths(3, 1, 750)),
    ),
    size_choice(2),
    choice(
        3,
        "lid",
        "Lid",
        "The same from a larger square; it covers the box whole",
        &[word("yes", "yes"), word("no", "no")],
    ),
    clearance_input(4, "In total each way between box and lid"),
];

/// At both ends lie five layers inside the wall: the corner folded double, its two edges turned over it, and the end.
const ENDS: i64 = 5;

/// One box, from a square whose quarters are marks of a ruler.
#[derive(Clone, Copy)]
struct Fold {
    name: &'static str,
    square: Length,
    mats: Matted,
}

impl Fold {
    /// The least whose floor's side is `side`.
    fn of(name: &'static str, side: Length, cut: Grid, mats: Matted) -> Self {
        let quarters = Grid::every(cut.step() * 4);
        Self { name, square: quarters.up(Length::round_mm(side.as_mm() * 2.0 * SQRT_2)), mats }
    }

    fn side(&self) -> Length {
        Length::round_mm(self.square.as_mm() / (2.0 * SQRT_2))
    }

    fn height(&self) -> Length {
        Length::round_mm(self.square.as_mm() / (4.0 * SQRT_2))
    }

    /// What is free in it: points on the floor, one layer inside front and back, five at the ends.
    fn inside(&self, t: Length) -> Size {
        let side = self.side();
        Size { width: side - t * (2 * ENDS + 1), depth: side - t * 3, height: self.height() - t - t.half() }
    }

    fn outside(&self, t: Length) -> Size {
        Size { width: self.side() + t, depth: self.side() + t, height: self.height() + t.half() }
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let (cut, t) = (ask.setting.cut, ask.setting.thickness);
    let asked = ask.length("side", Length::ZERO);
    let most_lost = t * (2 * ENDS + 1);
    let least = if ask.choice("size") == "inside" { asked + most_lost } else { asked };
    let lidded = ask.choice("lid") == "yes";
    let base = Fold::of("box", least, cut, if lidded { Matted::None } else { Matted::All });
    ask.shaped.used.insert("side", base.side());
    let clearance = ask.clearance(Length::ZERO);
    if ask.stopped() {
        return ask.shaped;
    }
    let (inside, outside) = (base.inside(t), base.outside(t));
    let finished = Size { width: base.side(), depth: base.side(), height: base.height() };
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    if !lidded {
        return ask.answer(Assembly::alone(base.part(), finished, inside, outside));
    }
    let lid = Fold::of("lid", outside.width + clearance + most_lost, cut, Matted::All);
    let mut parts = vec![base.part(), lid.part()];
    parts[0].inside = Some(inside);
    // It stands round the box on the table.
    let up = lid.height() - t.half();
    let at = Offset { right: (base.side() + lid.side()).half(), back: (base.side() - lid.side()).half(), up };
    parts[1].stands = vec![Stand { turn: Turn::UpsideDown, at }];
    let room = |over: Length| Some(Range::new(clearance + over, clearance + over + cut.step() * 2));
    let joins = vec![Join {
        name: JoinName::LidOver,
        inner: vec![0],
        outer: 1,
        from: From::Below,
        room: Room { width: room(Length::ZERO), depth: room(t * (2 * ENDS - 2)), height: None, round: None },
    }];
    let outside = Size { height: up + t, ..lid.outside(t) };
    ask.answer(Assembly { joins, ..Assembly::of(parts, finished, inside, outside) })
}

/// A place in halves of the floor's side from its middle: to the right and to the front.
type Spot = (i64, i64);

/// What hangs on one side of the floor.
struct Flank {
    names: Names,
    /// A place to the right and out, as the side sees it, seen by the floor.
    seen: fn(Spot) -> Spot,
    kind: Kind,
}

/// The wall, its inner half, its point, what folds in at its left and right corner, and what hangs beside the inner
/// half.
type Names = [&'static str; 7];

/// How a side is folded.
struct Kind {
    fold: i16,
    wing: i16,
    /// Between fold and wing.
    between: i16,
    /// The levels of inner half, fold and wing.
    levels: [i8; 3],
}

/// Front and back: their corners go round along the ends, their edges are turned over first.
const LONG: Kind = Kind { fold: 90, wing: -90, between: 180, levels: [2, -4, 6] };
/// The ends: their corners lie against them, and they fold over all of it last.
const END: Kind = Kind { fold: 180, wing: 180, between: -180, levels: [2 * ENDS as i8, 2, -8] };

const FLANKS: [Flank; 4] = [
    Flank {
        names: [
            "front",
            "inner front",
            "front point",
            "front left fold",
            "front right fold",
            "front left wing",
            "front right wing",
        ],
        seen: |(right, out)| (right, out),
        kind: LONG,
    },
    Flank {
        names: [
            "back",
            "inner back",
            "back point",
            "back right fold",
            "back left fold",
            "back right wing",
            "back left wing",
        ],
        seen: |(right, out)| (-right, -out),
        kind: LONG,
    },
    Flank {
        names: [
            "left end",
            "inner left end",
            "left point",
            "left back fold",
            "left front fold",
            "left back wing",
            "left front wing",
        ],
        seen: |(right, out)| (-out, right),
        kind: END,
    },
    Flank {
        names: [
            "right end",
            "inner right end",
            "right point",
            "right front fold",
            "right back fold",
            "right front wing",
            "right back wing",
        ],
        seen: |(right, out)| (out, -right),
        kind: END,
    },
];

/// What was made of one side; left and right as it stands.
struct Made {
    wall: PanelId,
    inner: PanelId,
    point: PanelId,
    folds: [PanelId; 2],
    wings: [PanelId; 2],
}

impl Fold {
    fn part(&self) -> Part {
        let eighth = self.square.scaled(1, 8);
        // The floor lies on its corner: its right is down to the right on the square, its front up to the right.
        let at = |(right, front): Spot| Point::new(eighth * (4 + right + front), eighth * (4 + right - front));
        let mut c = Cells::new(&[self.square], &[self.square]);
        let floor = [(-1, 1), (1, 1), (1, -1), (-1, -1)].map(at).to_vec();
        let floor = c.aslant(floor, [(0, 1), (1, 2), (2, 3), (3, 0)], "base", Duty::Floor);
        let made = FLANKS.map(|flank| {
            let corners = |all: &[Spot]| all.iter().map(|&p| at((flank.seen)(p))).collect::<Vec<_>>();
            hang(&mut c, floor, &flank, &corners)
        });
        let [front, back, left, right] = &made;
        for (long, i, end, j) in [(front, 0, left, 1), (front, 1, right, 0), (back, 0, right, 1), (back, 1, left, 0)] {
            c.join(long.folds[i], (end.folds[j], [Side::Left, Side::Right][j]), Angle::degrees(-180));
        }
        if self.mats == Matted::All {
            [floor, front.wall, back.wall, left.wall, right.wall].into_iter().for_each(|p| c.mat(p));
        }
        let net = c.finish();
        let moves = moves(&net, &made);
        Part::alone(self.name, net, Root::OnCorner, Vec::new(), moves)
    }
}

/// Hangs all that belongs to one side on the floor. Places of panels run from their crease, right to left, and round.
fn hang(c: &mut Cells, floor: PanelId, flank: &Flank, at: &dyn Fn(&[Spot]) -> Vec<Point>) -> Made {
    let Flank { names: [wall, inner, point, left_fold, right_fold, left_wing, right_wing], kind, .. } = flank;
    let degrees = Angle::degrees;
    let four = |low: i64| (at(&[(1, low), (-1, low), (-1, low + 1), (1, low + 1)]), Frame::FOUR);
    let wall = c.hung_aslant(floor, degrees(90), four(1), wall, Duty::Wall);
    let inner = c.hung_aslant(wall, degrees(180), four(2), inner, Duty::Wall);
    let point =
        c.hung_aslant(inner, degrees(-90), (at(&[(1, 3), (-1, 3), (0, 4)]), Frame::THREE), point, Duty::DustFlap);
    let [inner_level, fold_level, wing_level] = kind.levels;
    c.level(inner, inner_level);
    c.level(point, 2);
    let places = [
        ([(-1, 2), (-1, 1), (-2, 2)], [(-1, 3), (-1, 2), (-2, 2)], [left_fold, left_wing], Side::Left),
        ([(1, 1), (1, 2), (2, 2)], [(1, 2), (1, 3), (2, 2)], [right_fold, right_wing], Side::Right),
    ];
    let [left, right] = places.map(|(fold, wing, [fold_name, wing_name], side)| {
        let fold = c.hung_aslant(wall, degrees(kind.fold), (at(&fold), Frame::THREE), fold_name, Duty::Wing);
        c.level(fold, fold_level);
        let wing = c.hung_aslant(inner, degrees(kind.wing), (at(&wing), Frame::THREE), wing_name, Duty::Wing);
        c.level(wing, wing_level);
        c.join(fold, (wing, side), degrees(kind.between));
        [fold, wing]
    });
    Made { wall, inner, point, folds: [left[0], right[0]], wings: [left[1], right[1]] }
}

fn moves(net: &Net, made: &[Made; 4]) -> Vec<Move> {
    let [front, back, left, right] = made;
    let corners = made.iter().flat_map(|m| [m.wall, m.folds[0], m.folds[1], m.wings[0], m.wings[1]]);
    let corners: Vec<PanelId> = corners.chain([front.point, back.point]).collect();
    vec![
        Move::even(net, MoveName::EdgesIn, &[front.inner, back.inner]),
        Move::end_only(net, MoveName::CornersIn, &corners, Gives::Corners),
        Move::even(net, MoveName::LeftOver, &[left.inner, left.point]),
        Move::even(net, MoveName::RightOver, &[right.inner, right.point]),
    ]
}
