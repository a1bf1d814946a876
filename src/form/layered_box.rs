//! Layered box: open crosses one in the other, whose walls stand while the lid is on and fall open when it lifts.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::Duty;
use crate::project::bound::Range;
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{
    LEAST_TAB, Matted, Tray, choice, clearance_input, length, meet, size_choice, sized, snapped, word,
};
use super::lid_base::{loose, on, over};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Part, Room, Root, Size, Stand};

/// The form.
pub const FORM: Form =
    Form { number: 20, key: "layered-box", name: "Layered box", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "side",
        "Side",
        "Of the outermost layer, left to right and front to back",
        (40, 300),
        Default::Is(Native::lengths(4, 1, 1_000)),
    ),
    length(2, "height", "Height", "Of all layers", (20, 300), Default::Is(Native::lengths(4, 1, 1_000))),
    size_choice(3),
    choice(
        4,
        "layers",
        "Layers",
        "One in the other",
        &[word("three", "3"), word("one", "1"), word("two", "2"), word("four", "4")],
    ),
    length(
        5,
        "shrink",
        "Each layer smaller by",
        "Of the side, from one layer to the next one in",
        (6, 50),
        Default::Is(Native::lengths(1, 2, 120)),
    ),
    length(
        6,
        "lid-height",
        "Lid height",
        "How far the lid's walls reach down; it holds the walls up",
        (8, 300),
        Default::Worked("1 in or 25 mm, at most the height"),
    ),
    clearance_input(7, "In total each way between the outermost layer and the lid"),
];

/// The layers by name, from outside.
const NAMES: [&str; 4] = ["outer layer", "second layer", "third layer", "fourth layer"];

fn shape(mut ask: Ask) -> Shaped {
    let t = ask.setting.thickness;
    let side = sized(&mut ask, "side", Layers::WALLS);
    let height = sized(&mut ask, "height", Layers::OPEN);
    let count: i64 = match ask.choice("layers") {
        "one" => 1,
        "two" => 2,
        "four" => 4,
        _ => 3,
    };
    let shrink = ask.scored("shrink", Length::ZERO);
    let usual = ask.setting.score.up(Native::lengths(1, 1, 250).of(ask.setting.system));
    let lid_height = ask.scored("lid-height", usual.min(height));
    let clearance = ask.clearance(Length::ZERO);
    let layer = |i: i64| Tray {
        name: "layer",
        width: side - shrink * i,
        depth: side - shrink * i,
        height,
        mats: Matted::None,
        notch: None,
    };
    let least = ask.setting.least_panel().max(LEAST_TAB * 3);
    let innermost = layer(count - 1);
    if innermost.width < least {
        ask.stop("shrink", What::PanelTooSmall { panel: "innermost layer", is: innermost.width, least });
    }
    let base = layer(0);
    let lid = over(&base, lid_height, clearance, &ask);
    lid.check(&mut ask, "side", "lid-height");
    if lid_height > height {
        ask.stop("lid-height", What::LidTooHigh { most: height });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    loose(&mut ask, &base, &lid, clearance);
    let mut parts: Vec<Part> = (0..count)
        .zip(NAMES)
        .map(|(i, name)| {
            let tray = layer(i);
            let off = (side - tray.width).half();
            let at = Offset { right: off, back: off, up: t * i };
            Part { stands: vec![Stand { at, ..Stand::default() }], ..cross(name, &tray, t) }
        })
        .collect();
    // The lid lies on the innermost layer, which stands highest.
    let mut stand = on(&base, &lid, t);
    stand.at.up += t * (count - 1);
    let last = parts.len();
    parts.push(Part { stands: vec![stand], ..lid.part(&ask) });
    let joins = joins(last, (shrink, t), Some(snapped(clearance, &ask)));
    let finished = Size { width: side, depth: side, height };
    let high = Layers::LIDDED.outside(height, t) + t * (count - 1);
    let outside = Size { height: high, ..lid.outside(t) };
    ask.answer(Assembly { joins, ..Assembly::of(parts, finished, innermost.inside(t), outside) })
}

/// Each layer into the one round it, then the lid over all.
fn joins(layers: usize, (shrink, t): (Length, Length), room: Option<Range<Length>>) -> Vec<Join> {
    // Walls of the same card: inside one and outside the other take two thicknesses of what it is smaller by.
    let free = Some(Range::new(shrink - t * 2, shrink - t * 2));
    let mut all: Vec<Join> = (1..layers)
        .map(|i| Join {
            name: JoinName::LayerIn,
            inner: vec![i],
            outer: i - 1,
            from: From::Above,
            room: Room { width: free, depth: free, height: None, round: None },
        })
        .collect();
    all.push(Join {
        name: JoinName::LidOver,
        inner: (0..layers).collect(),
        outer: layers,
        from: From::Below,
        room: Room { width: room, depth: room, height: None, round: None },
    });
    all
}

/// A floor and four free walls.
fn cross(name: &'static str, tray: &Tray, t: Length) -> Part {
    let h = tray.height;
    let mut c = Cells::new(&[h, tray.width, h], &[h, tray.depth, h]);
    let base = c.panel(1, 1, "base", Duty::Floor);
    let front = c.hung(base, 90, (1, 0), "front", Duty::Wall);
    let back = c.hung(base, 90, (1, 2), "back", Duty::Wall);
    let left = c.hung(base, 90, (0, 1), "left side", Duty::Wall);
    let right = c.hung(base, 90, (2, 1), "right side", Duty::Wall);
    let net = c.finish();
    let moves = vec![Move::even(&net, MoveName::FreeWalls, &[front, back, left, right])];
    let z = Length::ZERO;
    let meets = vec![
        meet((left, Side::Top), (front, Side::Left), z),
        meet((left, Side::Bottom), (back, Side::Left), z),
        meet((right, Side::Top), (front, Side::Right), z),
        meet((right, Side::Bottom), (back, Side::Right), z),
    ];
    Part {
        inside: Some(tray.inside(t)),
        outside: Some(tray.outside(t)),
        strips: None,
        ..Part::alone(name, net, Root::Base, meets, moves)
    }
}
