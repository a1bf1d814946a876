//! Tray, one piece: base, four single walls, and a tab at each corner glued inside the longer walls; open at the top.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Notch, Shape, Side};
use crate::net::flat::{Duty, Face, Net, PanelId};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{LEAST_TAB, TAB, choice, length, meet, size_choice, sized, word};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Meet, Part, Root, Size};

/// The form.
pub const FORM: Form = Form { number: 4, key: "tray", name: "Tray", holds: Holds::Gifts, inputs: INPUTS, shape };

/// What every tray asks.
pub const SIZES: [Input; 5] = [
    length(
        1,
        "width",
        "Width",
        "Left to right, looking at the front",
        (20, 400),
        Default::Is(Native::lengths(4, 1, 1_000)),
    ),
    length(2, "depth", "Depth", "Front to back", (20, 400), Default::Is(Native::lengths(3, 1, 750))),
    length(3, "height", "Height", "Base to upper edge", (10, 200), Default::Is(Native::lengths(1, 1, 250))),
    size_choice(4),
    length(
        5,
        "tab",
        "Corner tabs",
        "How far they reach along the longer walls",
        (6, 60),
        Default::Worked("½ in or 12 mm, less on a low or short wall"),
    ),
];

const INPUTS: &[Input] = &[
    SIZES[0],
    SIZES[1],
    SIZES[2],
    SIZES[3],
    SIZES[4],
    choice(
        6,
        "notch",
        "Thumb notch",
        "A half-round at the top of the front, to get hold of what is in it",
        &[word("no", "no"), word("yes", "yes")],
    ),
    length(
        7,
        "notch-radius",
        "Notch radius",
        "Half of the punch's width",
        (3, 30),
        Default::Worked("⅜ in or 10 mm, less on a small front"),
    ),
];

/// The walls in the order of every list here: front, back, left, right; each with the side of the base that it is on,
/// which is also the side of its own upper edge.
pub const WALLS: [(&str, Side); 4] =
    [("front", Side::Top), ("back", Side::Bottom), ("left side", Side::Left), ("right side", Side::Right)];

/// What the net of a tray is drawn from, all score to score.
pub struct Sizes {
    /// Left to right.
    pub width: Length,
    /// Front to back.
    pub depth: Length,
    /// Base to upper edge.
    pub height: Length,
    /// How far a corner tab reaches.
    pub tab: Length,
    /// The walls that carry the tabs: the shorter ones.
    pub carry: [usize; 2],
    /// The walls that the tabs are glued inside.
    pub hide: [usize; 2],
    /// What card takes along width, depth and height.
    layers: [Layers; 3],
}

impl Sizes {
    /// Reads them; `carry` is what card takes between the walls that carry the tabs, `hide` between the others.
    #[must_use]
    pub fn read(ask: &mut Ask, carry: Layers, hide: Layers) -> Self {
        let wide = ask.length("width", Length::ZERO) >= ask.length("depth", Length::ZERO);
        let [across, along] = if wide { [carry, hide] } else { [hide, carry] };
        let width = sized(ask, "width", across);
        let depth = sized(ask, "depth", along);
        let height = sized(ask, "height", Layers::OPEN);
        let long = if wide { width } else { depth };
        let most = ask.setting.cut.down(long.half() - ask.setting.clear()).min(height);
        let tab = ask.length("tab", TAB.of(ask.setting.system).min(most));
        if most < LEAST_TAB {
            let least = ask.setting.score.up((LEAST_TAB + ask.setting.clear()) * 2);
            ask.stop(if wide { "width" } else { "depth" }, What::TooShortForTabs { least });
        } else if tab > most {
            ask.stop("tab", What::CornerTabTooLong { most });
        }
        let [carry, hide] = if wide { [[2, 3], [0, 1]] } else { [[0, 1], [2, 3]] };
        Self { width, depth, height, tab, carry, hide, layers: [across, along, Layers::OPEN] }
    }

    /// The tray of this one part.
    #[must_use]
    pub fn assembly(&self, part: Part, t: Length) -> Assembly {
        let finished = Size { width: self.width, depth: self.depth, height: self.height };
        let [w, d, h] = self.layers;
        let each = |of: fn(Layers, Length, Length) -> Length| Size {
            width: of(w, self.width, t),
            depth: of(d, self.depth, t),
            height: of(h, self.height, t),
        };
        Assembly::alone(part, finished, each(Layers::inside), each(Layers::outside))
    }
}

/// The panels that every tray has, and the edges of theirs that meet.
pub struct Shell {
    /// The floor.
    pub base: PanelId,
    /// Front, back, left, right.
    pub walls: [PanelId; 4],
    /// At the corners.
    pub tabs: [PanelId; 4],
    /// Walls at their corners, and tabs level with the walls that hide them.
    pub meets: Vec<Meet>,
}

/// The cell `by` steps from the base at `(at, at)`.
#[must_use]
pub const fn beside(at: usize, side: Side, by: usize) -> (usize, usize) {
    match side {
        Side::Top => (at, at - by),
        Side::Bottom => (at, at + by),
        Side::Left => (at - by, at),
        Side::Right => (at + by, at),
    }
}

/// The corners at both ends of a side, and whether the side runs across.
const fn ends(side: Side) -> ([Corner; 2], bool) {
    match side {
        Side::Top => ([Corner::TopLeft, Corner::TopRight], true),
        Side::Bottom => ([Corner::BottomLeft, Corner::BottomRight], true),
        Side::Left => ([Corner::TopLeft, Corner::BottomLeft], false),
        Side::Right => ([Corner::TopRight, Corner::BottomRight], false),
    }
}

impl Shell {
    /// Draws it, the base in the cell `(at, at)`.
    #[must_use]
    pub fn draw(c: &mut Cells, s: &Sizes, at: usize, clear: Length) -> Self {
        let base = c.panel(at, at, "base", Duty::Floor);
        let walls = WALLS.map(|(name, side)| c.hung(base, 90, beside(at, side, 1), name, Duty::Wall));
        walls.iter().for_each(|&w| c.mat(w));
        let mut meets = Vec::new();
        let corners =
            [(0, 2, "front left tab"), (0, 3, "front right tab"), (1, 2, "back left tab"), (1, 3, "back right tab")];
        let tabs = corners.map(|(v, h, name)| {
            let (carry, hide) = if s.carry[0] == 2 { (h, v) } else { (v, h) };
            let (rim, tip) = (WALLS[carry].1, WALLS[hide].1);
            let cell = (beside(at, WALLS[h].1, 1).0, beside(at, WALLS[v].1, 1).1);
            let tab = c.hung(walls[carry], 90, cell, name, Duty::Tab);
            c.level(tab, -2);
            c.strip(tab, tip, s.height - s.tab);
            // Narrower towards its end, so that it clears the floor and the upper edge.
            let (both, across) = ends(tip);
            let (across, down) = if across { (clear, s.tab) } else { (s.tab, clear) };
            both.into_iter().for_each(|k| c.corner(tab, k, Shape::Wedge { across, down }));
            c.glue(tab, Face::Outside, &[walls[hide]]);
            meets.push(meet((walls[carry], tip), (walls[hide], rim), Length::ZERO));
            meets.push(meet((tab, rim), (walls[hide], tip), Length::ZERO));
            tab
        });
        Self { base, walls, tabs, meets }
    }

    /// The walls that carry the tabs come up, the tabs turn in, the others are glued to them.
    #[must_use]
    pub fn moves(&self, s: &Sizes, net: &Net) -> Vec<Move> {
        let (up, over) = if s.carry[0] == 2 {
            (MoveName::UprightSides, MoveName::FrontAndBack)
        } else {
            (MoveName::Uprights, MoveName::SideWalls)
        };
        vec![
            Move::even(net, up, &s.carry.map(|i| self.walls[i])),
            Move::even(net, MoveName::CornerTabs, &self.tabs),
            Move::even(net, over, &s.hide.map(|i| self.walls[i])),
        ]
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let s = Sizes::read(&mut ask, Layers::WALLS, Layers::WALLS);
    let radius = notch(&mut ask, &s);
    if ask.stopped() {
        return ask.shaped;
    }
    let h = s.height;
    let mut c = Cells::new(&[h, s.width, h], &[h, s.depth, h]);
    let shell = Shell::draw(&mut c, &s, 1, ask.setting.clear());
    if let Some(radius) = radius {
        c.notch(shell.walls[0], Notch { side: Side::Top, radius });
    }
    let net = c.finish();
    let moves = shell.moves(&s, &net);
    let part = Part::alone("tray", net, Root::Base, shell.meets, moves);
    let assembly = s.assembly(part, ask.setting.thickness);
    ask.answer(assembly)
}

/// The notch's radius: at most a third of the front either way, and beside the tabs where they lie behind the front.
fn notch(ask: &mut Ask, s: &Sizes) -> Option<Length> {
    if ask.choice("notch") != "yes" {
        return None;
    }
    let third = s.width.min(s.height).scaled(1, 3);
    let beside = if s.hide[0] == 0 { s.width.half() - s.tab } else { third };
    let most = ask.setting.cut.down(third.min(beside));
    let radius = ask.length("notch-radius", Native::lengths(3, 8, 100).of(ask.setting.system).min(most));
    if radius > most {
        ask.stop("notch-radius", What::NotchTooLarge { most });
    }
    Some(radius)
}
