//! Lid and base: two trays; the lid is sized from the base's real outside and goes over it.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{Matted, Tray, clearance_input, length, remark_loose, size_choice, sized, snapped};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Room, Size, Stand, Turn};

/// The form.
pub const FORM: Form =
    Form { number: 11, key: "lid-base", name: "Lid and base", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(1, "width", "Width", "Of the base, left to right", (20, 400), Default::Is(Native::lengths(4, 1, 1_000))),
    length(2, "depth", "Depth", "Of the base, front to back", (20, 400), Default::Is(Native::lengths(3, 1, 750))),
    length(3, "height", "Height", "Of the base", (10, 300), Default::Is(Native::lengths(3, 2, 400))),
    size_choice(4),
    length(
        5,
        "lid-height",
        "Lid height",
        "How far the lid's walls reach down; as high as the base hides it",
        (8, 300),
        Default::Worked("half the base"),
    ),
    clearance_input(6, "In total each way between base and lid"),
];

fn shape(mut ask: Ask) -> Shaped {
    let width = sized(&mut ask, "width", Layers::WALLS);
    let depth = sized(&mut ask, "depth", Layers::WALLS);
    let height = sized(&mut ask, "height", Layers::OPEN);
    let base = Tray { name: "base", width, depth, height, mats: Matted::None, notch: None };
    base.check(&mut ask, "depth", "height");
    let half = ask.setting.score.up(height.half().max(Length::mm(8)));
    let lid_height = ask.scored("lid-height", half.min(height));
    lidded(ask, base, lid_height, "lid-height")
}

/// A base with a lid whose walls are `lid_height`.
pub fn lidded(mut ask: Ask, base: Tray, lid_height: Length, lid_key: &'static str) -> Shaped {
    let t = ask.setting.thickness;
    let clearance = ask.clearance(Length::ZERO);
    let lid = over(&base, lid_height, clearance, &ask);
    if lid_height > base.height {
        ask.stop(lid_key, What::LidTooHigh { most: base.height });
    }
    lid.check(&mut ask, "depth", lid_key);
    if ask.stopped() {
        return ask.shaped;
    }
    loose(&mut ask, &base, &lid, clearance);
    let mut parts = vec![base.part(&ask), lid.part(&ask)];
    parts[1].stands = vec![on(&base, &lid, t)];
    let room = snapped(clearance, &ask);
    let joins = vec![Join {
        name: JoinName::LidOver,
        inner: vec![0],
        outer: 1,
        from: From::Below,
        room: Room { width: Some(room), depth: Some(room), height: None, round: None },
    }];
    let finished = Size { width: base.width, depth: base.depth, height: base.height };
    let inside = base.inside(t);
    let outside = Size { height: Layers::LIDDED.outside(base.height, t), ..lid.outside(t) };
    ask.answer(Assembly { joins, ..Assembly::of(parts, finished, inside, outside) })
}

/// The lid that leaves `clearance` round `base`: inside it the corner tabs lie along the side walls.
#[must_use]
pub fn over(base: &Tray, height: Length, clearance: Length, ask: &Ask) -> Tray {
    let (score, t) = (ask.setting.score, ask.setting.thickness);
    let outside = base.outside(t);
    Tray {
        name: "lid",
        width: score.up(Layers::TABBED_WALLS.score_for(outside.width + clearance, t)),
        depth: score.up(Layers::WALLS.score_for(outside.depth + clearance, t)),
        height,
        mats: Matted::All,
        notch: None,
    }
}

/// Says so where the lid is looser than asked.
pub fn loose(ask: &mut Ask, base: &Tray, lid: &Tray, clearance: Length) {
    let t = ask.setting.thickness;
    let outside = base.outside(t);
    let across = Layers::TABBED_WALLS.inside(lid.width, t) - outside.width;
    let along = Layers::WALLS.inside(lid.depth, t) - outside.depth;
    remark_loose(ask, across.max(along), clearance);
}

/// The lid upside down on the base's upper edge, in the middle.
#[must_use]
pub fn on(base: &Tray, lid: &Tray, t: Length) -> Stand {
    Stand {
        turn: Turn::UpsideDown,
        at: Offset {
            right: (base.width + lid.width).half(),
            back: (base.depth - lid.depth).half(),
            up: base.height + t.half(),
        },
    }
}
