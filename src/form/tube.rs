//! The tube that tuck boxes share: four walls and a glue tab, and an end closed by a lid with a tuck and two dust flaps.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Notch, Shape, Side};
use crate::net::flat::{CreaseId, Duty, Face, Net, PanelId};
use crate::project::bound::HAIR;
use crate::project::finding::What;

use super::input::{Choice, Default, Input, Kind};
use super::joined::length;
use super::resolve::Ask;
use crate::assembly::moves::{Move, MoveName, Way};
use crate::assembly::parts::{Meet, Size};

/// The tab that closes a ring of walls.
pub const fn ring_tab(number: u8) -> Input {
    length(
        number,
        "tab",
        "Glue tab",
        "Glued inside the first wall to close the ring",
        (6, 30),
        Default::Is(Native::lengths(1, 2, 120)),
    )
}

/// What a tuck box asks.
pub const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Left to right, looking at the front",
        (15, 400),
        Default::Is(Native::lengths(3, 1, 750)),
    ),
    length(2, "depth", "Depth", "Front to back", (8, 300), Default::Is(Native::lengths(5, 4, 320))),
    length(3, "height", "Height", "Base to lid", (15, 500), Default::Is(Native::lengths(5, 1, 1_250))),
    Input {
        number: 4,
        key: "size",
        name: "These sizes are",
        hint: "Finished: from score to score. Inside: what must be free within",
        kind: Kind::Choice(&[
            Choice { key: "finished", name: "finished, score to score" },
            Choice { key: "inside", name: "inside, at least" },
        ]),
    },
    ring_tab(5),
    length(
        6,
        "tuck",
        "Tuck",
        "The flap on the lid that slides in behind the front",
        (6, 60),
        Default::Worked("½ in or 12 mm, less where the box is shallow or low"),
    ),
    Input {
        number: 7,
        key: "notch",
        name: "Thumb notch",
        hint: "A half-round at the top of the front, to get hold of the tuck",
        kind: Kind::Choice(&[Choice { key: "no", name: "no" }, Choice { key: "yes", name: "yes" }]),
    },
    length(
        8,
        "notch-radius",
        "Notch radius",
        "Half of the punch's width",
        (3, 30),
        Default::Worked("⅜ in or 10 mm, less on a small front"),
    ),
];

/// How much wider than the tab the wall behind it must be.
const TAB_ROOM: Length = Length::mm(2);

/// What the net is drawn from, all score to score.
pub struct Tube {
    /// Left to right.
    pub width: Length,
    /// Front to back.
    pub depth: Length,
    /// Base to lid.
    pub height: Length,
    /// The glue tab.
    pub tab: Length,
    /// The flap on a lid.
    pub tuck: Length,
    /// The radius of a thumb notch.
    pub notch: Option<Length>,
}

impl Tube {
    /// Its sizes by a rule for walls and one for the ends.
    pub fn size(&self, ask: &Ask, ends: Layers, of: fn(Layers, Length, Length) -> Length) -> Size {
        let t = ask.setting.thickness;
        Size {
            width: of(Layers::WALLS, self.width, t),
            depth: of(Layers::WALLS, self.depth, t),
            height: of(ends, self.height, t),
        }
    }

    /// Score to score.
    pub const fn finished(&self) -> Size {
        Size { width: self.width, depth: self.depth, height: self.height }
    }
}

/// Reads the sizes of a tube whose two ends are closed by `ends`; says what cannot be.
pub fn sizes(ask: &mut Ask, ends: Layers) -> Tube {
    let (score, t) = (ask.setting.score, ask.setting.thickness);
    let inside = ask.choice("size") == "inside";
    let mut size = |key, layers: Layers| {
        let asked = ask.length(key, Length::ZERO);
        if inside {
            // An inside size is met, not moved: what it came to is the score-to-score size.
            let to = score.up(layers.score_for(asked, t));
            ask.shaped.used.insert(key, to);
            to
        } else {
            let to = score.up(asked);
            ask.moved(key, to);
            to
        }
    };
    let width = size("width", Layers::WALLS);
    let depth = size("depth", Layers::WALLS);
    let height = size("height", ends);

    let tab = ask.scored("tab", Length::ZERO);
    let tab_most = score.down(width.max(depth) - TAB_ROOM);
    if tab > tab_most {
        ask.stop("tab", What::TabTooWide { most: tab_most });
    }

    let usual = Native::lengths(1, 2, 120).of(ask.setting.system);
    let high = height.scaled(3, 4);
    let tuck = ask.scored("tuck", score.down(usual.min(depth).min(high)));
    if tuck > high {
        ask.stop("tuck", What::TuckTooLong { is: tuck, most: high });
    } else if tuck > depth {
        ask.stop("tuck", What::TuckHits { most: depth });
    }

    let least = ask.setting.least_panel();
    for (key, name, is) in [("width", "front", width), ("depth", "lid", depth), ("tuck", "tuck", tuck)] {
        if is < least {
            ask.stop(key, What::PanelTooSmall { panel: name, is, least });
        }
    }

    let notch_most = ask.setting.cut.down(width.min(height).scaled(1, 3));
    let notch = (ask.choice("notch") == "yes").then(|| {
        let usual = Native::lengths(3, 8, 100).of(ask.setting.system);
        let radius = ask.length("notch-radius", usual.min(notch_most));
        if radius > notch_most {
            ask.stop("notch-radius", What::NotchTooLarge { most: notch_most });
        }
        radius
    });
    Tube { width, depth, height, tab, tuck, notch }
}

/// The columns in which the walls stand on the blank.
pub struct Columns {
    /// Of the left side.
    pub left: usize,
    /// Of the front.
    pub front: usize,
    /// Of the right side.
    pub right: usize,
    /// Of the back.
    pub back: usize,
    /// Their widths, the tab's last.
    pub sizes: [Length; 5],
}

/// Left, front, right, back, tab; where the side is too narrow to hide the tab: back, left, front, right, tab.
pub fn columns(s: &Tube) -> Columns {
    let (w, d) = (s.width, s.depth);
    if d < s.tab + TAB_ROOM {
        Columns { back: 0, left: 1, front: 2, right: 3, sizes: [w, d, w, d, s.tab] }
    } else {
        Columns { left: 0, front: 1, right: 2, back: 3, sizes: [d, w, d, w, s.tab] }
    }
}

/// The column of the tab.
const TAB: usize = 4;

/// The walls of a tube and its tab.
pub struct Walls {
    /// The columns that they stand in.
    pub at: Columns,
    /// The row that they stand in.
    pub row: usize,
    /// The front.
    pub front: PanelId,
    /// The left side.
    pub left: PanelId,
    /// The right side.
    pub right: PanelId,
    /// The back.
    pub back: PanelId,
    tab: PanelId,
}

/// Draws the walls in `row`, with the tab that closes the ring.
pub fn walls(c: &mut Cells, s: &Tube, at: Columns, row: usize) -> Walls {
    let front = c.panel(at.front, row, "front", Duty::Wall);
    let left = c.hung(front, 90, (at.left, row), "left side", Duty::Wall);
    let right = c.hung(front, 90, (at.right, row), "right side", Duty::Wall);
    let seam_first = at.back == 0;
    let back = c.hung(if seam_first { left } else { right }, 90, (at.back, row), "back", Duty::Wall);
    let tab = c.hung(if seam_first { right } else { back }, 90, (TAB, row), "glue tab", Duty::Tab);
    let wedge = Shape::Wedge { across: s.tab, down: s.tab.half().min(s.height.scaled(1, 6)) };
    c.corner(tab, Corner::TopRight, wedge);
    c.corner(tab, Corner::BottomRight, wedge);
    c.level(tab, -2);
    for panel in [front, left, right, back] {
        c.mat(panel);
    }
    c.glue(tab, Face::Outside, &[if seam_first { back } else { left }]);
    Walls { at, row, front, left, right, back, tab }
}

impl Walls {
    const fn seam_first(&self) -> bool {
        self.at.back == 0
    }

    /// The ring closes.
    pub fn moves(&self, net: &Net) -> Vec<Move> {
        let (walls, seam) = if self.seam_first() {
            (vec![self.right], vec![self.left, self.back])
        } else {
            (vec![self.right, self.back], vec![self.left])
        };
        vec![
            Move::even(net, MoveName::Tab, &[self.tab]),
            Move::even(net, MoveName::Walls, &walls),
            Move::even(net, MoveName::Seam, &seam),
        ]
    }

    /// The edges that the ring closes with.
    pub const fn meet(&self) -> Meet {
        let (edge, along) = if self.seam_first() {
            ((self.back, Side::Left), (self.right, Side::Right))
        } else {
            ((self.left, Side::Left), (self.back, Side::Right))
        };
        Meet { edge, along, gap: Length::ZERO }
    }
}

/// Which end of a tube.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// The upper one.
    Top,
    /// The lower one.
    Bottom,
}

/// An end that is closed by a lid with a tuck.
pub struct Tucked {
    end: End,
    /// The lid.
    pub lid: PanelId,
    tuck: PanelId,
    dust: [PanelId; 2],
    gap: Length,
    hair: Length,
}

/// Draws lid, tuck and dust flaps at an end: the lid hangs on the back, its tuck goes in behind the front, which is
/// trimmed a hair.
pub fn tucked(c: &mut Cells, s: &Tube, w: &Walls, end: End, ask: &Ask) -> Tucked {
    let clear = ask.setting.clear();
    let (row, beyond) = match end {
        End::Top => (w.row - 1, w.row.wrapping_sub(2)),
        End::Bottom => (w.row + 1, w.row + 2),
    };
    let [lid_name, tuck_name, left_name, right_name] = match end {
        End::Top => ["lid", "tuck", "left dust flap", "right dust flap"],
        End::Bottom => ["lower lid", "lower tuck", "lower left dust flap", "lower right dust flap"],
    };
    let (free, left_corner, right_corner) = match end {
        End::Top => (Side::Top, Corner::TopLeft, Corner::TopRight),
        End::Bottom => (Side::Bottom, Corner::BottomLeft, Corner::BottomRight),
    };
    let lid = c.hung(w.back, 90, (w.at.back, row), lid_name, Duty::Lid);
    c.level(lid, 1);
    c.mat(lid);
    let tuck = c.hung(lid, 90, (w.at.back, beyond), tuck_name, Duty::Tuck);
    c.level(tuck, -2);
    // Narrower towards its free edge, so that it finds its way in.
    let wedge = Shape::Wedge { across: clear * 2, down: s.tuck };
    c.corner(tuck, left_corner, wedge);
    c.corner(tuck, right_corner, wedge);
    let short = s.depth - reach(s, ask);
    // The front lies right of the left side and left of the right side; the tuck passes there.
    let dust = [
        (w.left, w.at.left, left_name, Side::Right, left_corner),
        (w.right, w.at.right, right_name, Side::Left, right_corner),
    ]
    .map(|(wall, column, name, front_side, back_corner)| {
        let flap = c.hung(wall, 90, (column, row), name, Duty::DustFlap);
        c.level(flap, -1);
        c.strip(flap, free, short);
        c.strip(flap, front_side, clear);
        c.corner(flap, back_corner, Shape::Wedge { across: clear, down: s.depth - short });
        flap
    });
    let hair = HAIR.of(ask.setting.system);
    c.strip(w.front, free, hair);
    if let (Some(radius), End::Top) = (s.notch, end) {
        c.notch(w.front, Notch { side: free, radius });
    }
    Tucked { end, lid, tuck, dust, gap: clear, hair }
}

impl Tucked {
    /// Dust flaps, then the lid.
    pub fn moves(&self, net: &Net, w: &Walls) -> [Move; 2] {
        let crease = |panel: PanelId| net.carrier(panel).unwrap_or(CreaseId(0));
        let (flaps, close) = match self.end {
            End::Top => (MoveName::DustFlaps, MoveName::Close),
            End::Bottom => (MoveName::LowerDustFlaps, MoveName::CloseBelow),
        };
        let way = Way::TuckIn { lid: crease(self.lid), tuck: crease(self.tuck), behind: w.front, gap: self.gap };
        [Move::even(net, flaps, &self.dust), Move { name: close, way }]
    }

    /// The edges that come together.
    pub const fn meets(&self, w: &Walls) -> [Meet; 3] {
        let free = match self.end {
            End::Top => Side::Top,
            End::Bottom => Side::Bottom,
        };
        [
            Meet { edge: (self.lid, free), along: (w.front, free), gap: self.hair },
            Meet { edge: (self.dust[0], Side::Right), along: (self.lid, free), gap: self.gap },
            Meet { edge: (self.dust[1], Side::Left), along: (self.lid, free), gap: self.gap },
        ]
    }
}

/// How far a flap on a side wall may reach without meeting the one opposite, at most the cell's depth.
pub fn reach(s: &Tube, ask: &Ask) -> Length {
    ask.setting.cut.down(s.width.half() - ask.setting.clear()).min(s.depth)
}
