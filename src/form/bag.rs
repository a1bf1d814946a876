//! Gusseted bag, one piece, open at the top: four walls and a tab, sides scored down their middle, a base of flaps that
//! overlap, and the upper edges of front and back turned in where the handles pull.
//!
//! The blank is that of paper carriers: 2 (width + depth) + tab across; hem + height + half the depth + overlap down
//! (bag makers' formula, with 10 mm of overlap). The middle score of a side lets the top be pressed together. Above a
//! glued base card bends there and does not fold flat, so the proof is that of the open bag; pressed together it is
//! drawn nowhere.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{Duty, Face, PanelId};
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{LEAST_TAB, choice, length, meet, size_choice, sized, word};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Part, Root, Size};

/// The form.
pub const FORM: Form = Form { number: 8, key: "bag", name: "Gusseted bag", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Left to right, looking at the front",
        (30, 300),
        Default::Is(Native::lengths(7, 2, 850)),
    ),
    length(
        2,
        "depth",
        "Depth",
        "Front to back; each side is scored in its middle",
        (16, 200),
        Default::Is(Native::lengths(2, 1, 500)),
    ),
    length(3, "height", "Height", "Base to upper edge", (40, 450), Default::Is(Native::lengths(5, 1, 1_250))),
    size_choice(4),
    length(
        5,
        "tab",
        "Glue tab",
        "Glued inside the left side, short of its middle",
        (6, 30),
        Default::Is(Native::lengths(1, 2, 120)),
    ),
    length(
        6,
        "turn-up",
        "Base flaps",
        "How far front and back turn under; they overlap in the middle",
        (10, 150),
        Default::Worked("half the depth and 10 mm, up to the next groove"),
    ),
    choice(
        7,
        "hem",
        "Upper edges",
        "Turned in at front and back they are double where the handles pull",
        &[word("yes", "turned in"), word("no", "as cut")],
    ),
    length(
        8,
        "hem-height",
        "Turned in by",
        "How far the upper edges of front and back reach down inside",
        (10, 80),
        Default::Worked("1 in or 25 mm, at most a third of the height"),
    ),
    choice(
        9,
        "handles",
        "Handles",
        "Two holes each in front and back for ribbon or cord",
        &[word("holes", "ribbon through holes"), word("no", "none")],
    ),
];

/// What the base flaps overlap by (bag makers' formula: half the depth and 10 mm).
const OVERLAP: Length = Length::mm(10);
/// How much wider than the tab the half of a side that hides it must be.
const TAB_ROOM: Length = Length::mm(2);

/// A hole of the usual punch, by its radius (common practice, no source).
const HOLE: Length = Length::um(2_500);
/// How far holes stand below an edge that is single (common practice, no source).
const BELOW_EDGE: Length = Length::mm(12);

/// What the net is drawn from, all score to score.
struct Sizes {
    width: Length,
    /// Half the depth.
    half: Length,
    height: Length,
    tab: Length,
    turn_up: Length,
    /// Nothing where the upper edges stay as cut.
    hem: Length,
    holes: Holes,
}

/// Whether holes for a ribbon are punched.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Holes {
    None,
    Two,
}

impl Sizes {
    fn depth(&self) -> Length {
        self.half * 2
    }

    /// What lies about front and back: hems take one layer each.
    const fn depths(&self) -> Layers {
        if self.hem.is_positive() { Layers::TABBED_WALLS } else { Layers::WALLS }
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let s = sizes(&mut ask);
    if ask.stopped() {
        return ask.shaped;
    }
    let t = ask.setting.thickness;
    let size = |of: fn(Layers, Length, Length) -> Length| Size {
        width: of(Layers::WALLS, s.width, t),
        depth: of(s.depths(), s.depth(), t),
        height: of(Layers::BASE_FLAPS, s.height, t),
    };
    let (inside, outside) = (size(Layers::inside), size(Layers::outside));
    let finished = Size { width: s.width, depth: s.depth(), height: s.height };
    let part = draw(&s, &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

fn sizes(ask: &mut Ask) -> Sizes {
    let score = ask.setting.score;
    let hemmed = ask.choice("hem") == "yes";
    let width = sized(ask, "width", Layers::WALLS);
    let height = sized(ask, "height", Layers::BASE_FLAPS);
    let half = half_depth(ask, if hemmed { Layers::TABBED_WALLS } else { Layers::WALLS });
    let depth = half * 2;

    let tab = ask.scored("tab", Length::ZERO);
    let most = score.down(half - TAB_ROOM);
    if tab > most {
        ask.stop("tab", What::TabTooWide { most });
    }

    let (least, most) = (score.up(half + LEAST_TAB), score.down(depth - ask.setting.clear()));
    let turn_up = ask.scored("turn-up", score.up(half + OVERLAP).min(most));
    if least > most {
        ask.stop("depth", What::PanelTooSmall { panel: "base", is: depth, least: least + LEAST_TAB });
    } else if turn_up < least || turn_up > most {
        ask.stop("turn-up", What::FlapsOverlap { least, most });
    }

    let third = score.down(height.scaled(1, 3));
    let hem = if hemmed {
        let hem = ask.scored("hem-height", score.up(Native::lengths(1, 1, 250).of(ask.setting.system)).min(third));
        if hem > third || hem < ask.setting.least_panel() {
            ask.stop("hem-height", What::HemTooHigh { most: third });
        }
        hem
    } else {
        Length::ZERO
    };

    let least = ask.setting.least_panel();
    for (key, panel, is) in [("width", "front", width), ("depth", "half of a side", half), ("height", "front", height)]
    {
        if is < least {
            ask.stop(key, What::PanelTooSmall { panel, is, least });
        }
    }
    if depth > width {
        ask.remark(Some("depth"), Weight::Caution, What::GussetsMeet { most: width });
    }
    let holes = if ask.choice("handles") == "holes" { Holes::Two } else { Holes::None };
    Sizes { width, half, height, tab, turn_up, hem, holes }
}

/// Half the depth, on a groove, since the middle of a side is scored too.
fn half_depth(ask: &mut Ask, layers: Layers) -> Length {
    let asked = ask.length("depth", Length::ZERO);
    let score = ask.setting.score;
    if ask.choice("size") == "inside" {
        let half = score.up(layers.score_for(asked, ask.setting.thickness).half());
        ask.shaped.used.insert("depth", half * 2);
        half
    } else {
        let half = score.up(asked.half());
        ask.moved("depth", half * 2);
        half
    }
}

// Columns: left side in halves, front, right side in halves, back, tab.
const FRONT: usize = 2;
const BACK: usize = 5;
const TAB: usize = 6;

/// The halves of both sides with their flaps, front ones first.
struct Halves {
    walls: [PanelId; 4],
    flaps: [PanelId; 4],
}

fn draw(s: &Sizes, ask: &Ask) -> Part {
    let clear = ask.setting.clear();
    let columns = [s.half, s.half, s.width, s.half, s.half, s.width, s.tab];
    let hemmed = s.hem.is_positive();
    let rows: &[Length] = if hemmed { &[s.hem, s.height, s.turn_up] } else { &[s.height, s.turn_up] };
    let wall = usize::from(hemmed);
    let base = wall + 1;
    let mut c = Cells::new(&columns, rows);

    let front = c.panel(FRONT, wall, "front", Duty::Wall);
    let sides = halves(&mut c, front, wall);
    let [_, left_back, _, right_back] = sides;
    let back = c.hung(right_back, 90, (BACK, wall), "back", Duty::Wall);
    let tab = c.hung(back, 90, (TAB, wall), "glue tab", Duty::Tab);
    c.level(tab, -2);
    let wedge = Shape::Wedge { across: s.tab, down: s.tab.half().min(s.height.scaled(1, 6)) };
    c.corner(tab, Corner::TopRight, wedge);
    c.corner(tab, Corner::BottomRight, wedge);
    c.glue(tab, Face::Outside, &[left_back]);
    c.mat(front);
    c.mat(back);

    let inner = c.hung(back, 90, (BACK, base), "inner base", Duty::Floor);
    c.level(inner, -1);
    let flaps = base_flaps(&mut c, s, ask, sides, base);
    let sides = Halves { walls: sides, flaps };
    let outer = c.hung(front, 90, (FRONT, base), "outer base", Duty::BaseFlap);
    c.level(outer, 3);
    for (flap, front_half) in sides.flaps.into_iter().zip([true, false, true, false]) {
        if front_half {
            c.glue_within(flap, Face::Outside, clear * 2, &[outer]);
        } else {
            c.glue_within(flap, Face::Inside, clear * 2, &[inner]);
        }
    }
    c.glue_along(outer, Face::Inside, (Side::Bottom, s.turn_up * 2 - s.depth()), clear * 2, &[inner]);

    let hems = if hemmed { hems(&mut c, (front, back), clear) } else { Vec::new() };
    if s.holes == Holes::Two {
        // In the middle of what is double, so that they do not tear out.
        let down = if hemmed { s.hem.half() } else { BELOW_EDGE };
        let right = ask.setting.cut.down(s.width.scaled(1, 4));
        for wall in [front, back] {
            c.hole(wall, (right, down), HOLE);
            c.hole(wall, (s.width - right, down), HOLE);
        }
    }
    let net = c.finish();
    let mut moves = Vec::new();
    if hemmed {
        moves.push(Move::even(&net, MoveName::Hem, &hems));
    }
    let [left_front, left_back, right_front, right_back] = sides.walls;
    moves.extend([
        Move::even(&net, MoveName::Tab, &[tab]),
        Move::even(&net, MoveName::Walls, &[right_front, right_back, back]),
        Move::even(&net, MoveName::Seam, &[left_front, left_back]),
        Move::even(&net, MoveName::BaseInner, &[inner]),
        Move::even(&net, MoveName::BaseHalves, &sides.flaps),
        Move::even(&net, MoveName::BaseOver, &[outer]),
    ]);
    let z = Length::ZERO;
    let overlap = s.depth() - s.turn_up;
    let [left_flap, _, right_flap, _] = sides.flaps;
    let mut meets = vec![
        meet((left_back, Side::Left), (back, Side::Right), z),
        meet((outer, Side::Bottom), (back, Side::Bottom), overlap),
        meet((inner, Side::Bottom), (front, Side::Bottom), overlap),
        meet((left_flap, Side::Right), (front, Side::Bottom), z),
        meet((right_flap, Side::Left), (front, Side::Bottom), z),
    ];
    meets.extend(hems.iter().zip([front, back]).map(|(&h, w)| meet((h, Side::Top), (w, Side::Top), s.hem)));
    Part::alone("bag", net, Root::Front, meets, moves)
}

/// Both sides in halves: left front, left back, right front, right back.
fn halves(c: &mut Cells, front: PanelId, wall: usize) -> [PanelId; 4] {
    let left_front = c.hung(front, 90, (1, wall), "left side, front half", Duty::Wall);
    let left_back = c.hung(left_front, 0, (0, wall), "left side, back half", Duty::Wall);
    let right_front = c.hung(front, 90, (3, wall), "right side, front half", Duty::Wall);
    let right_back = c.hung(right_front, 0, (4, wall), "right side, back half", Duty::Wall);
    [left_front, left_back, right_front, right_back]
}

/// A flap under each half of a side, as far as it does not meet the one opposite.
fn base_flaps(c: &mut Cells, s: &Sizes, ask: &Ask, sides: [PanelId; 4], row: usize) -> [PanelId; 4] {
    let clear = ask.setting.clear();
    let reach = ask.setting.cut.down(s.width.half() - clear).min(s.turn_up);
    let flaps = [
        (1, "left front base flap", Corner::BottomRight),
        (0, "left back base flap", Corner::BottomLeft),
        (3, "right front base flap", Corner::BottomLeft),
        (4, "right back base flap", Corner::BottomRight),
    ];
    std::array::from_fn(|i| {
        let (column, name, corner) = flaps[i];
        let flap = c.hung(sides[i], 90, (column, row), name, Duty::BaseFlap);
        c.level(flap, 1);
        c.strip(flap, Side::Bottom, s.turn_up - reach);
        c.corner(flap, corner, Shape::Wedge { across: clear, down: reach });
        flap
    })
}

/// The upper edges of front and back, turned right over.
fn hems(c: &mut Cells, (front, back): (PanelId, PanelId), clear: Length) -> Vec<PanelId> {
    [(front, FRONT, "front hem"), (back, BACK, "back hem")]
        .map(|(wall, column, name)| {
            let hem = c.hung(wall, 180, (column, 0), name, Duty::Hem);
            // Turned over, its outside looks inward.
            c.level(hem, 2);
            c.strip(hem, Side::Left, clear);
            c.strip(hem, Side::Right, clear);
            c.glue_within(hem, Face::Inside, clear * 2, &[wall]);
            hem
        })
        .to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The worked example of a bag machine's maker (a = 200, b = 80, h = 250 mm: gawangmachine.com): the flat sheet is
    /// 2 (a + b) + 20 of side seam across and 50 of top fold + h + b/2 + 10 down, 580 by 350 mm.
    #[test]
    fn the_blank_is_that_of_a_paper_carrier() {
        let mm = Length::mm;
        let s = Sizes {
            width: mm(200),
            half: mm(40),
            height: mm(250),
            tab: mm(20),
            turn_up: mm(50),
            hem: mm(50),
            holes: Holes::None,
        };
        assert_eq!(s.half + OVERLAP, s.turn_up);
        let setting = super::super::resolve::Setting {
            system: crate::measure::system::System::Metric,
            score: crate::measure::grid::Grid::every(mm(1)),
            cut: crate::measure::grid::Grid::every(mm(1)),
            thickness: Length::um(300),
            mat_thickness: Length::ZERO,
            learned: Length::ZERO,
            contents: Vec::new(),
        };
        let request = crate::project::fresh::fresh(None, "bag", "").boxes.remove(0);
        let blank = draw(&s, &Ask::new(INPUTS, &request, &setting)).net.blank;
        assert_eq!((blank.width(), blank.height()), (mm(580), mm(350)));
    }
}
