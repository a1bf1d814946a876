//! Hinged-lid box, one piece: a tray whose back wall carries a lid; the lid's three lips go inside the walls.
//!
//! Layers: the lid's side lips lie one inside each side wall (width − 3 t), its front lip lies inside the front
//! (depth − 2 t). Corner tabs end below the lips, so that nothing piles up in the corners.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{CreaseId, Duty, Face};
use crate::project::bound::HAIR;
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{LEAST_TAB, TAB, length, meet, size_choice, sized};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::moves::{Move, MoveName, Way};
use crate::assembly::parts::{Assembly, Part, Root, Size};

/// The form.
pub const FORM: Form =
    Form { number: 6, key: "hinged-box", name: "Hinged-lid box", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Left to right, looking at the front",
        (20, 300),
        Default::Is(Native::lengths(4, 1, 1_000)),
    ),
    length(2, "depth", "Depth", "Front to back", (25, 300), Default::Is(Native::lengths(3, 1, 750))),
    length(3, "height", "Height", "Base to lid", (20, 200), Default::Is(Native::lengths(3, 2, 400))),
    size_choice(4),
    length(
        5,
        "tab",
        "Corner tabs",
        "How far they reach along the side walls that they are glued in",
        (6, 60),
        Default::Worked("½ in or 12 mm, less on a low or shallow box"),
    ),
    length(
        6,
        "lip",
        "Lid's lips",
        "How far they go down inside the walls",
        (6, 60),
        Default::Worked("½ in or 12 mm, less on a low or shallow box"),
    ),
];

/// What the net is drawn from, all score to score.
struct Sizes {
    width: Length,
    depth: Length,
    height: Length,
    tab: Length,
    lip: Length,
}

fn shape(mut ask: Ask) -> Shaped {
    let s = sizes(&mut ask);
    if ask.stopped() {
        return ask.shaped;
    }
    let t = ask.setting.thickness;
    let part = draw(&s, &ask);
    let each = |of: fn(Layers, Length, Length) -> Length| Size {
        width: of(Layers::LIPPED_WALLS, s.width, t),
        depth: of(Layers::LIPPED_FRONT, s.depth, t),
        height: of(Layers::WALLS, s.height, t),
    };
    let finished = Size { width: s.width, depth: s.depth, height: s.height };
    ask.answer(Assembly::alone(part, finished, each(Layers::inside), each(Layers::outside)))
}

fn sizes(ask: &mut Ask) -> Sizes {
    let width = sized(ask, "width", Layers::LIPPED_WALLS);
    let depth = sized(ask, "depth", Layers::LIPPED_FRONT);
    let height = sized(ask, "height", Layers::WALLS);
    let (score, cut, clear) = (ask.setting.score, ask.setting.cut, ask.setting.clear());
    let usual = TAB.of(ask.setting.system);

    // Half the wall is left to the tabs below the lips, and half the depth to what a lip's corner loses.
    let lip_most = score.down(height.min(depth).half() - clear);
    let lip = ask.scored("lip", score.down(usual).min(lip_most));
    if lip_most < LEAST_TAB {
        let least = score.up((LEAST_TAB + clear) * 2);
        let key = if height < depth { "height" } else { "depth" };
        ask.stop(key, What::PanelTooSmall { panel: "wall", is: height.min(depth), least });
    } else if lip > lip_most {
        ask.stop("lip", What::LipTooLong { most: lip_most });
    }

    let tab_most = cut.down(depth.half() - clear).min(height);
    let tab = ask.length("tab", usual.min(tab_most));
    if tab > tab_most {
        ask.stop("tab", What::TabTooWide { most: tab_most });
    }
    Sizes { width, depth, height, tab, lip }
}

fn draw(s: &Sizes, ask: &Ask) -> Part {
    let (clear, hair) = (ask.setting.clear(), HAIR.of(ask.setting.system));
    let (h, under_lip) = (s.height, s.lip + clear);
    let mut c = Cells::new(&[h, s.width, h], &[h, s.depth, h, s.depth, s.lip]);
    let base = c.panel(1, 1, "base", Duty::Floor);
    let front = c.hung(base, 90, (1, 0), "front", Duty::Wall);
    let back = c.hung(base, 90, (1, 2), "back", Duty::Wall);
    let lid = c.hung(back, 90, (1, 3), "lid", Duty::Lid);
    c.strip(front, Side::Top, hair);
    let [left, right] = [(0, "left side", Side::Left), (2, "right side", Side::Right)].map(|(column, name, free)| {
        let side = c.hung(base, 90, (column, 1), name, Duty::Wall);
        c.strip(side, free, hair);
        side
    });
    let tabs = [
        (front, (0, 0), "front left tab", Side::Top, Side::Left, Corner::BottomLeft, left),
        (front, (2, 0), "front right tab", Side::Top, Side::Right, Corner::BottomRight, right),
        (back, (0, 2), "back left tab", Side::Bottom, Side::Left, Corner::TopLeft, left),
        (back, (2, 2), "back right tab", Side::Bottom, Side::Right, Corner::TopRight, right),
    ]
    .map(|(wall, cell, name, free, tip, low_tip, side)| {
        let tab = c.hung(wall, 90, cell, name, Duty::Tab);
        c.level(tab, -2);
        c.strip(tab, free, under_lip);
        c.strip(tab, tip, h - s.tab);
        c.corner(tab, low_tip, Shape::Wedge { across: s.tab, down: clear });
        c.glue(tab, Face::Outside, &[side]);
        tab
    });
    // The corner that swings past the front is cut at 45°: then no point of it is farther from the hinge than its root.
    let lips = [(0, "left lip", Side::Left, Corner::BottomLeft), (2, "right lip", Side::Right, Corner::BottomRight)]
        .map(|(column, name, tip, swings)| {
            let lip = c.hung(lid, 90, (column, 3), name, Duty::DustFlap);
            c.level(lip, -2);
            c.strip(lip, tip, h - s.lip);
            c.strip(lip, Side::Top, clear);
            c.strip(lip, Side::Bottom, clear);
            c.corner(lip, swings, Shape::Wedge { across: s.lip, down: s.lip });
            lip
        });
    let lip = c.hung(lid, 90, (1, 4), "front lip", Duty::DustFlap);
    c.level(lip, -2);
    let wedge = Shape::Wedge { across: clear * 2, down: s.lip };
    c.corner(lip, Corner::BottomLeft, wedge);
    c.corner(lip, Corner::BottomRight, wedge);
    for panel in [front, left, right, back, lid] {
        c.mat(panel);
    }

    let net = c.finish();
    let crease = |panel| net.carrier(panel).unwrap_or(CreaseId(0));
    let close = Way::TuckIn { lid: crease(lid), tuck: crease(lip), behind: front, gap: clear };
    let moves = vec![
        Move::even(&net, MoveName::Uprights, &[front, back]),
        Move::even(&net, MoveName::CornerTabs, &tabs),
        Move::even(&net, MoveName::SideWalls, &[left, right]),
        Move::even(&net, MoveName::SideLips, &lips),
        Move { name: MoveName::CloseHinged, way: close },
    ];
    let (z, below) = (Length::ZERO, under_lip - hair);
    let meets = vec![
        meet((tabs[0], Side::Top), (left, Side::Left), below),
        meet((tabs[1], Side::Top), (right, Side::Right), below),
        meet((tabs[2], Side::Bottom), (left, Side::Left), below),
        meet((tabs[3], Side::Bottom), (right, Side::Right), below),
        meet((left, Side::Top), (front, Side::Left), z),
        meet((left, Side::Bottom), (back, Side::Left), z),
        meet((right, Side::Top), (front, Side::Right), z),
        meet((right, Side::Bottom), (back, Side::Right), z),
        meet((left, Side::Left), (lid, Side::Left), hair),
        meet((right, Side::Right), (lid, Side::Right), hair),
        meet((front, Side::Top), (lid, Side::Bottom), hair),
        meet((lips[0], Side::Bottom), (front, Side::Left), clear),
        meet((lips[1], Side::Bottom), (front, Side::Right), clear),
        meet((lips[0], Side::Left), (left, Side::Left), s.lip - hair),
        meet((lips[1], Side::Right), (right, Side::Right), s.lip - hair),
    ];
    Part::alone("box", net, Root::Base, meets, moves)
}
