//! Tower of drawers: each box slides into a sleeve of its own; the sleeves stand on each other, and one wrap holds them.

use crate::measure::length::Length;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{CLEARANCE, Matted, Tube, length, remark_loose, snapped};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Part, Room, Seat, Size, Stand};

/// The form.
pub const FORM: Form =
    Form { number: 15, key: "tower", name: "Tower of drawers", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "play",
        "Clearance of the boxes",
        "In total each way between a box and its sleeve",
        (1, 20),
        Default::Is(CLEARANCE),
    ),
    length(
        2,
        "clearance",
        "Clearance of the wrap",
        "In total each way between the sleeves and the wrap",
        (1, 8),
        Default::Worked("1 mm or 1/32 in more, so that it slides on and is glued there"),
    ),
];

/// The sleeves by name: one for each kind of box.
const NAMES: [&str; 12] = [
    "first sleeve",
    "second sleeve",
    "third sleeve",
    "fourth sleeve",
    "fifth sleeve",
    "sixth sleeve",
    "seventh sleeve",
    "eighth sleeve",
    "ninth sleeve",
    "tenth sleeve",
    "eleventh sleeve",
    "twelfth sleeve",
];

fn shape(mut ask: Ask) -> Shaped {
    let contents: Vec<_> = ask.setting.contents.clone();
    let most = |of: fn(&Size) -> Length| contents.iter().map(|c| of(&c.outside)).max();
    let (Some(width), Some(depth)) = (most(|s| s.width), most(|s| s.depth)) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let kinds = u32::try_from(contents.len()).unwrap_or(u32::MAX);
    if kinds > 12 {
        ask.remark(None, Weight::Stop, What::CountOutside { is: kinds, least: 1, most: 12 });
    }
    let t = ask.setting.thickness;
    let play = ask.length("play", Length::ZERO);
    let clearance = ask.clearance(Length::mm(1));
    let long = ask.setting.cut.up(depth);
    let tubes: Vec<Tube> = contents
        .iter()
        .zip(NAMES)
        .map(|(c, name)| {
            let inner = Size { width, depth: long, height: c.outside.height };
            Tube::round(name, inner, long, play, &ask)
        })
        .collect();
    for tube in &tubes {
        tube.check(&mut ask, "play");
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let (mut parts, mut seats, mut up) = (Vec::new(), Vec::new(), Length::ZERO);
    for ((kind, content), tube) in contents.iter().enumerate().zip(&tubes) {
        let mut stands = Vec::new();
        for _ in 0..content.count {
            stands.push(Stand { at: Offset { up, ..Offset::default() }, ..Stand::default() });
            let size = content.outside;
            // The tab lies against the left side.
            let right = (tube.width + t - size.width).half();
            let at = Offset { right, back: Length::ZERO, up: up + t.half() };
            seats.push(Seat::of((kind, size), at, play, From::Front));
            up += tube.height + t;
        }
        // Which sleeve is in the middle of the tower is no measure of it: the wrap's inside is.
        parts.push(Part { stands, inside: None, ..tube.part(&ask) });
    }
    let Some(first) = tubes.first() else {
        return ask.shaped;
    };
    let pile = Size { width: first.outside(t).width, depth: long, height: up };
    let wrap = Tube { mats: Matted::Walls, ..Tube::round("wrap", pile, long, clearance, &ask) };
    remark_loose(&mut ask, wrap.inside(t).height - pile.height, clearance);
    let lower_left = (-t.half(), -t.half());
    parts.push(Part { stands: vec![wrap.stand(lower_left, pile, Length::ZERO, t)], ..wrap.part(&ask) });
    let room = Some(snapped(clearance, &ask));
    let joins = vec![Join {
        name: JoinName::BandRound,
        inner: (0..tubes.len()).collect(),
        outer: tubes.len(),
        from: From::Front,
        room: Room { width: room, depth: None, height: room, round: None },
    }];
    let finished = Size { width: wrap.width, depth: long, height: wrap.height };
    let (inside, outside) = (wrap.inside(t), wrap.outside(t));
    ask.answer(Assembly { joins, seats, ..Assembly::of(parts, finished, inside, outside) })
}
