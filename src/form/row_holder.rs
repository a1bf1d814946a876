//! Open-top holder, one piece: boxes stand in a row; wings fold in at the ends and end flaps are glued over them.

use crate::allow::{Layers, clearance};
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{Duty, Face};
use crate::project::bound::Range;
use crate::project::finding::{Weight, What};

use super::input::{Choice, Default, Input, Kind};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Content, Shaped};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Meet, Part, Root, Size, Trim};

/// The form.
pub const FORM: Form =
    Form { number: 2, key: "row-holder", name: "Open-top holder", holds: Holds::Boxes, inputs: INPUTS, shape };

const fn length(
    number: u8,
    key: &'static str,
    name: &'static str,
    hint: &'static str,
    (least, most): (Length, Length),
    default: Default,
) -> Input {
    Input { number, key, name, hint, kind: Kind::Length { range: Range::new(least, most), default } }
}

/// A box more than so many times as high as it is thin topples (common practice, no source).
const TOPPLES: i64 = 8;

const WALL: (Length, Length) = (Length::mm(20), Length::mm(400));

const INPUTS: &[Input] = &[
    length(
        1,
        "front-height",
        "Front height",
        "Base to the front's upper edge",
        WALL,
        Default::Worked("half the shortest box"),
    ),
    length(
        2,
        "back-height",
        "Back height",
        "Base to the back's upper edge",
        WALL,
        Default::Worked("three quarters of the shortest box, leaving 20 mm to grip"),
    ),
    length(
        3,
        "clearance",
        "Clearance",
        "In total each way between the boxes and the holder",
        (clearance::PRESS, Length::mm(20)),
        Default::Is(clearance::DEFAULT),
    ),
    length(
        4,
        "margin",
        "End margin",
        "Height of the end flaps and reach of the wings",
        (Length::mm(10), Length::mm(200)),
        Default::Worked("half the depth less a hair, at least 15 mm, never above the lower wall"),
    ),
    length(
        5,
        "corner-radius",
        "Rounded corners",
        "At the free upper corners of front and back; 0 leaves them square",
        (Length::ZERO, Length::mm(60)),
        Default::Worked("¼ in or 6 mm, as far as the walls stand free"),
    ),
    Input {
        number: 6,
        key: "straps",
        name: "Straps",
        hint: "A band of card across each end, turned onto front and back",
        kind: Kind::Choice(&[Choice { key: "yes", name: "yes" }, Choice { key: "no", name: "no" }]),
    },
    length(
        7,
        "strap-width",
        "Strap width",
        "How broad the band is",
        (Length::mm(6), Length::mm(60)),
        Default::Worked("½ in or 12 mm, at most the end margin"),
    ),
];

/// The least end margin (issue of the hand: less does not hold while the glue dries; common practice, no source).
const LEAST_MARGIN: Length = Length::mm(15);
/// How far a strap turns onto front and back: ½ in, 12 mm.
const STRAP_TURN: Native<Length> = Native::lengths(1, 2, 120);

/// What the net is drawn from, all score to score.
struct Sizes {
    length: Length,
    depth: Length,
    front: Length,
    back: Length,
    margin: Length,
    radius: Length,
    /// How far a wing reaches: the margin, or less where two would meet.
    reach: Length,
}

/// Seen from the front: what the row of boxes takes up.
struct Row {
    length: Length,
    depth: Length,
    shallowest: Length,
    shortest: Length,
}

fn row(ask: &Ask) -> Option<Row> {
    let all = || ask.setting.contents.iter().filter(|c| c.count > 0);
    Some(Row {
        length: all().map(|c| c.outside.width * i64::from(c.count)).sum(),
        depth: all().map(|c| c.outside.depth).max()?,
        shallowest: all().map(|c| c.outside.depth).min()?,
        shortest: all().map(|c| c.outside.height).min()?,
    })
}

fn shape(mut ask: Ask) -> Shaped {
    let Some(row) = row(&ask) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let s = sizes(&mut ask, &row);
    let trims = straps(&mut ask, &s);
    if ask.stopped() {
        return ask.shaped;
    }
    let t = ask.setting.thickness;
    let part = draw(&s, &ask);
    let size = |of: fn(Layers, Length, Length) -> Length, wall| Size {
        width: of(Layers::DOUBLE_ENDS, s.length, t),
        depth: of(Layers::WALLS, s.depth, t),
        height: of(Layers::OPEN, wall, t),
    };
    let finished = Size { width: s.length, depth: s.depth, height: s.front.max(s.back) };
    let inside = size(Layers::inside, s.front.min(s.back));
    let outside = size(Layers::outside, s.front.max(s.back));
    ask.answer(Assembly { trims, ..Assembly::alone(part, finished, inside, outside) })
}

fn sizes(ask: &mut Ask, row: &Row) -> Sizes {
    let (score, cut, t) = (ask.setting.score, ask.setting.cut, ask.setting.thickness);
    let room = ask.clearance(Length::ZERO);
    if room < clearance::LEAST {
        let least = clearance::LEAST;
        ask.remark(Some("clearance"), Weight::Caution, What::TightRow { is: room, least });
    } else if room > clearance::LOOSE {
        ask.remark(Some("clearance"), Weight::Caution, What::LooseRow { most: clearance::LOOSE });
    }
    let length = score.up(Layers::DOUBLE_ENDS.score_for(row.length + room, t));
    let depth = score.up(Layers::WALLS.score_for(row.depth + room, t));
    let play = Layers::WALLS.inside(depth, t) - row.shallowest;
    if play >= Length::mm(3) && row.shallowest < row.depth {
        ask.remark(None, Weight::Caution, What::UnevenDepths { play });
    }

    let thin = |c: &Content| c.outside.width.min(c.outside.depth);
    if let Some(c) = ask.setting.contents.iter().find(|c| c.count > 0 && c.outside.height > thin(c) * TOPPLES) {
        let (height, thin) = (c.outside.height, thin(c));
        ask.remark(None, Weight::Caution, What::Topples { height, thin });
    }

    let least_wall = score.up(WALL.0);
    let front = ask.scored("front-height", score.down(row.shortest.half()).max(least_wall));
    let gripped = score.down(row.shortest.scaled(3, 4).min(row.shortest - clearance::GRIP));
    let back = ask.scored("back-height", gripped.max(front));
    for (key, wall) in [("front-height", front), ("back-height", back)] {
        if wall > row.shortest {
            let shortest = row.shortest;
            ask.remark(Some(key), Weight::Caution, What::WallAboveBoxes { wall, shortest });
        }
    }
    let grip = row.shortest - front;
    if grip < clearance::GRIP && front <= row.shortest {
        let least = clearance::GRIP;
        ask.remark(Some("front-height"), Weight::Caution, What::LittleToGrip { is: grip, least });
    }

    let lower = front.min(back);
    let half = score.down(depth.half() - ask.setting.clear());
    let margin = ask.scored("margin", half.max(score.up(LEAST_MARGIN)).min(lower));
    if margin > lower || margin < ask.setting.least_panel() {
        let least = ask.setting.least_panel();
        ask.stop("margin", What::MarginOutside { least, most: lower });
    }
    let free = lower - margin;
    let usual = Native::lengths(1, 4, 60).of(ask.setting.system);
    let most = free.min(length.half());
    let radius = ask.length("corner-radius", usual.min(most));
    if radius > most {
        ask.stop("corner-radius", What::RoundTooLarge { most });
    }
    Sizes {
        length,
        depth,
        front,
        back,
        margin,
        radius,
        reach: margin.min(cut.down(depth.half() - ask.setting.clear())),
    }
}

fn straps(ask: &mut Ask, s: &Sizes) -> Vec<Trim> {
    if ask.choice("straps") != "yes" {
        return Vec::new();
    }
    let usual = STRAP_TURN.of(ask.setting.system);
    let width = ask.length("strap-width", usual.min(s.margin));
    if width > s.margin {
        ask.stop("strap-width", What::StrapTooWide { most: s.margin });
    }
    let across = Layers::WALLS.outside(s.depth, ask.setting.thickness) + ask.setting.mat_thickness * 2;
    vec![Trim {
        name: "strap",
        length: ask.setting.cut.up(across + STRAP_TURN.of(ask.setting.system) * 2),
        width,
        count: 2,
    }]
}

fn draw(s: &Sizes, ask: &Ask) -> Part {
    let mut c = Cells::new(&[s.margin, s.length, s.margin], &[s.front, s.depth, s.back]);
    let base = c.panel(1, 1, "base", Duty::Floor);
    let front = c.hung(base, 90, (1, 0), "front", Duty::Wall);
    let back = c.hung(base, 90, (1, 2), "back", Duty::Wall);
    for (wall, corners) in
        [(front, [Corner::TopLeft, Corner::TopRight]), (back, [Corner::BottomLeft, Corner::BottomRight])]
    {
        c.mat(wall);
        corners.into_iter().for_each(|k| c.corner(wall, k, Shape::Round(s.radius)));
    }
    let wings = [
        (front, (0, 0), "front left wing", Side::Top, Side::Left, Corner::BottomLeft, s.front),
        (front, (2, 0), "front right wing", Side::Top, Side::Right, Corner::BottomRight, s.front),
        (back, (0, 2), "back left wing", Side::Bottom, Side::Left, Corner::TopLeft, s.back),
        (back, (2, 2), "back right wing", Side::Bottom, Side::Right, Corner::TopRight, s.back),
    ]
    .map(|(wall, cell, name, free, tip, low_tip, height)| {
        let wing = c.hung(wall, 90, cell, name, Duty::Wing);
        c.level(wing, -1);
        c.strip(wing, free, height - s.margin);
        c.strip(wing, tip, s.margin - s.reach);
        let (across, down) = (s.reach, ask.setting.clear());
        c.corner(wing, low_tip, Shape::Wedge { across, down });
        wing
    });
    let ends = [((0, 1), "left end flap"), ((2, 1), "right end flap")].map(|(cell, name)| {
        let end = c.hung(base, 90, cell, name, Duty::EndFlap);
        c.level(end, 1);
        end
    });
    for (wing, end) in [(0, 0), (1, 1), (2, 0), (3, 1)] {
        c.glue(wings[wing], Face::Outside, &[ends[end]]);
    }
    let net = c.finish();
    let moves = vec![
        Move::even(&net, MoveName::Uprights, &[front, back]),
        Move::even(&net, MoveName::Wings, &wings),
        Move::even(&net, MoveName::Ends, &ends),
    ];
    let meet = |edge, along| Meet { edge, along, gap: Length::ZERO };
    let meets = vec![
        meet((wings[0], Side::Top), (ends[0], Side::Left)),
        meet((wings[1], Side::Top), (ends[1], Side::Right)),
        meet((wings[2], Side::Bottom), (ends[0], Side::Left)),
        meet((wings[3], Side::Bottom), (ends[1], Side::Right)),
        meet((ends[0], Side::Top), (front, Side::Left)),
        meet((ends[0], Side::Bottom), (back, Side::Left)),
        meet((ends[1], Side::Top), (front, Side::Right)),
        meet((ends[1], Side::Bottom), (back, Side::Right)),
    ];
    Part::alone("holder", net, Root::Base, meets, moves)
}
