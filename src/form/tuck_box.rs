//! Tuck-top box, one piece: four walls and a tab, a lid with a tuck, dust flaps, and a glued base of three layers.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Notch, Shape, Side};
use crate::net::flat::{CreaseId, Duty, Face, PanelId};
use crate::project::bound::{HAIR, Range};
use crate::project::finding::What;

use super::assembly::{Assembly, Meet, Move, MoveName, Part, Root, Size, Way};
use super::input::{Choice, Default, Input, Kind};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};

/// The form.
pub const FORM: Form =
    Form { number: 1, key: "tuck-box", name: "Tuck-top box", holds: Holds::Gifts, inputs: INPUTS, shape };

const fn length(
    number: u8,
    key: &'static str,
    name: &'static str,
    hint: &'static str,
    mm: (i64, i64),
    default: Default,
) -> Input {
    let range = Range::new(Length::mm(mm.0), Length::mm(mm.1));
    Input { number, key, name, hint, kind: Kind::Length { range, default } }
}

const INPUTS: &[Input] = &[
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
    length(
        5,
        "tab",
        "Glue tab",
        "Glued inside the first wall to close the ring",
        (6, 30),
        Default::Is(Native::lengths(1, 2, 120)),
    ),
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
struct Sizes {
    width: Length,
    depth: Length,
    height: Length,
    tab: Length,
    tuck: Length,
    notch: Option<Length>,
}

fn shape(mut ask: Ask) -> Shaped {
    let sizes = sizes(&mut ask);
    if ask.stopped() {
        return ask.shaped;
    }
    let setting = ask.setting.clone();
    let t = setting.thickness;
    let part = draw(&sizes, &ask);
    let finished = Size { width: sizes.width, depth: sizes.depth, height: sizes.height };
    let each = |walls: fn(Layers, Length, Length) -> Length| Size {
        width: walls(Layers::WALLS, sizes.width, t),
        depth: walls(Layers::WALLS, sizes.depth, t),
        height: walls(Layers::TUCK_AND_BASE, sizes.height, t),
    };
    let (inside, outside) = (each(Layers::inside), each(Layers::outside));
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

fn sizes(ask: &mut Ask) -> Sizes {
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
    let height = size("height", Layers::TUCK_AND_BASE);

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
    Sizes { width, depth, height, tab, tuck, notch }
}

/// The columns in which the walls stand on the blank.
struct Columns {
    left: usize,
    front: usize,
    right: usize,
    back: usize,
    sizes: [Length; 5],
}

/// Left, front, right, back, tab; where the side is too narrow to hide the tab: back, left, front, right, tab.
fn columns(s: &Sizes) -> Columns {
    let (w, d) = (s.width, s.depth);
    if d < s.tab + TAB_ROOM {
        Columns { back: 0, left: 1, front: 2, right: 3, sizes: [w, d, w, d, s.tab] }
    } else {
        Columns { left: 0, front: 1, right: 2, back: 3, sizes: [d, w, d, w, s.tab] }
    }
}

const TUCK: usize = 0;
const LID: usize = 1;
const WALL: usize = 2;
const BASE: usize = 3;
const TAB: usize = 4;

fn draw(s: &Sizes, ask: &Ask) -> Part {
    let clear = ask.setting.clear();
    let at = columns(s);
    let mut c = Cells::new(&at.sizes, &[s.tuck, s.depth, s.height, s.depth]);

    let front = c.panel(at.front, WALL, "front", Duty::Wall);
    let left = c.hung(front, 90, (at.left, WALL), "left side", Duty::Wall);
    let right = c.hung(front, 90, (at.right, WALL), "right side", Duty::Wall);
    let seam_first = at.back == 0;
    let back = c.hung(if seam_first { left } else { right }, 90, (at.back, WALL), "back", Duty::Wall);
    let tab = c.hung(if seam_first { right } else { back }, 90, (TAB, WALL), "glue tab", Duty::Tab);
    let (lid, tuck) = top(&mut c, s, &at, back, clear);
    let dust = dust_flaps(&mut c, s, &at, (left, right), ask);
    let base = base(&mut c, s, &at, (front, back, left, right), ask);

    c.strip(front, Side::Top, HAIR.of(ask.setting.system));
    if let Some(radius) = s.notch {
        c.notch(front, Notch { side: Side::Top, radius });
    }
    let wedge = Shape::Wedge { across: s.tab, down: s.tab.half().min(s.height.scaled(1, 6)) };
    c.corner(tab, Corner::TopRight, wedge);
    c.corner(tab, Corner::BottomRight, wedge);
    c.level(tab, -2);
    for panel in [front, left, right, back, lid] {
        c.mat(panel);
    }
    c.glue(tab, Face::Outside, &[if seam_first { back } else { left }]);

    let net = c.finish();
    let crease = |panel: PanelId| net.carrier(panel).unwrap_or(CreaseId(0));
    let even = |name, panels: &[PanelId]| Move { name, way: Way::Even(panels.iter().map(|&p| crease(p)).collect()) };
    let (walls, seam) = if seam_first { (&[right][..], &[left, back][..]) } else { (&[right, back][..], &[left][..]) };
    let moves = vec![
        even(MoveName::Tab, &[tab]),
        even(MoveName::Walls, walls),
        even(MoveName::Seam, seam),
        even(MoveName::BaseInner, &[base.inner]),
        even(MoveName::BaseSides, &[base.left, base.right]),
        even(MoveName::BaseOuter, &[base.outer]),
        even(MoveName::DustFlaps, &dust),
        Move {
            name: MoveName::Close,
            way: Way::TuckIn { lid: crease(lid), tuck: crease(tuck), behind: front, gap: clear },
        },
    ];
    let meet = |edge, along, gap| Meet { edge, along, gap };
    let z = Length::ZERO;
    let hair = HAIR.of(ask.setting.system);
    let seam = if seam_first {
        meet((back, Side::Left), (right, Side::Right), z)
    } else {
        meet((left, Side::Left), (back, Side::Right), z)
    };
    let meets = vec![
        seam,
        meet((lid, Side::Top), (front, Side::Top), hair),
        meet((base.outer, Side::Bottom), (back, Side::Bottom), z),
        meet((base.inner, Side::Bottom), (front, Side::Bottom), clear),
        meet((dust[0], Side::Right), (lid, Side::Top), clear),
        meet((dust[1], Side::Left), (lid, Side::Top), clear),
    ];
    Part::alone("box", net, Root::Front, meets, moves)
}

fn top(c: &mut Cells, s: &Sizes, at: &Columns, back: PanelId, clear: Length) -> (PanelId, PanelId) {
    let lid = c.hung(back, 90, (at.back, LID), "lid", Duty::Lid);
    c.level(lid, 1);
    let tuck = c.hung(lid, 90, (at.back, TUCK), "tuck", Duty::Tuck);
    c.level(tuck, -2);
    // Narrower towards its free edge, so that it finds its way in.
    let wedge = Shape::Wedge { across: clear * 2, down: s.tuck };
    c.corner(tuck, Corner::TopLeft, wedge);
    c.corner(tuck, Corner::TopRight, wedge);
    (lid, tuck)
}

/// How far a flap on a side wall may reach without meeting the one opposite, at most the cell's depth.
fn reach(s: &Sizes, ask: &Ask) -> Length {
    ask.setting.cut.down(s.width.half() - ask.setting.clear()).min(s.depth)
}

fn dust_flaps(c: &mut Cells, s: &Sizes, at: &Columns, (left, right): (PanelId, PanelId), ask: &Ask) -> [PanelId; 2] {
    let clear = ask.setting.clear();
    let short = s.depth - reach(s, ask);
    // The front lies right of the left side and left of the right side; the tuck passes there.
    [
        (left, at.left, "left dust flap", Side::Right, Corner::TopLeft),
        (right, at.right, "right dust flap", Side::Left, Corner::TopRight),
    ]
    .map(|(wall, column, name, front_side, back_corner)| {
        let flap = c.hung(wall, 90, (column, LID), name, Duty::DustFlap);
        c.level(flap, -1);
        c.strip(flap, Side::Top, short);
        c.strip(flap, front_side, clear);
        c.corner(flap, back_corner, Shape::Wedge { across: clear, down: s.depth - short });
        flap
    })
}

/// The panels of the base.
struct Base {
    inner: PanelId,
    left: PanelId,
    right: PanelId,
    outer: PanelId,
}

fn base(
    c: &mut Cells,
    s: &Sizes,
    at: &Columns,
    (front, back, left, right): (PanelId, PanelId, PanelId, PanelId),
    ask: &Ask,
) -> Base {
    let clear = ask.setting.clear();
    let inner = c.hung(back, 90, (at.back, BASE), "inner base", Duty::Floor);
    c.level(inner, -1);
    c.strip(inner, Side::Bottom, clear);
    let reach = reach(s, ask);
    let [left, right] =
        [(left, at.left, "left base flap"), (right, at.right, "right base flap")].map(|(wall, column, name)| {
            let flap = c.hung(wall, 90, (column, BASE), name, Duty::BaseFlap);
            c.level(flap, 1);
            c.strip(flap, Side::Bottom, s.depth - reach);
            let wedge = Shape::Wedge { across: clear, down: reach };
            c.corner(flap, Corner::BottomLeft, wedge);
            c.corner(flap, Corner::BottomRight, wedge);
            c.glue_within(flap, Face::Inside, clear * 2, &[inner]);
            flap
        });
    let outer = c.hung(front, 90, (at.front, BASE), "outer base", Duty::BaseFlap);
    c.level(outer, 3);
    c.glue_within(outer, Face::Inside, clear * 2, &[left, right, inner]);
    Base { inner, left, right, outer }
}
