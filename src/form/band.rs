//! Sleeve or belly band round boxes that stand in a row or on each other.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{CLEARANCE, Matted, Tube, choice, length, remark_loose, word};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{One, each};
use crate::assembly::parts::{Assembly, From, Offset, Seat, Size};

/// The form.
pub const FORM: Form =
    Form { number: 14, key: "band", name: "Sleeve or belly band", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    choice(
        1,
        "stand",
        "The boxes stand",
        "In the order of the set: from the left, or from below",
        &[word("row", "side by side"), word("stack", "one on another")],
    ),
    length(
        2,
        "breadth",
        "Breadth",
        "Of the band, from front to back; as deep as the boxes makes it a sleeve",
        (10, 400),
        Default::Worked("half the shallowest box"),
    ),
    length(3, "clearance", "Clearance", "In total each way round the boxes", (1, 20), Default::Is(CLEARANCE)),
];

fn shape(mut ask: Ask) -> Shaped {
    let boxes = each(&ask);
    let (Some(deepest), Some(shallowest)) =
        (boxes.iter().map(|b| b.size.depth).max(), boxes.iter().map(|b| b.size.depth).min())
    else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let t = ask.setting.thickness;
    let clearance = ask.clearance(Length::ZERO);
    let breadth = ask.length("breadth", ask.setting.cut.up(shallowest.half().max(Length::mm(10))));
    let block = block(&boxes, ask.choice("stand"), deepest);
    let tube = Tube { mats: Matted::Walls, ..Tube::round("band", block, breadth, clearance, &ask) };
    tube.check(&mut ask, "clearance");
    if ask.stopped() {
        return ask.shaped;
    }
    let loose = Layers::ONE_TAB.inside(tube.width, t) - block.width;
    remark_loose(&mut ask, loose.max(tube.inside(t).height - block.height), clearance);
    // The tab lies against the left side.
    let corner =
        Offset { right: (tube.width + t - block.width).half(), back: (breadth - deepest).half(), up: t.half() };
    let seats = seats(&boxes, ask.choice("stand"), (corner, block), clearance);
    let finished = Size { width: tube.width, depth: breadth, height: tube.height };
    let mut part = tube.part(&ask);
    (part.inside, part.outside) = (None, None);
    let assembly = Assembly::alone(part, finished, tube.inside(t), tube.outside(t));
    ask.answer(Assembly { seats, ..assembly })
}

/// What the boxes take up together.
fn block(boxes: &[One], stand: &str, depth: Length) -> Size {
    let most = |of: fn(&Size) -> Length| boxes.iter().map(|b| of(&b.size)).max().unwrap_or_default();
    let sum = |of: fn(&Size) -> Length| boxes.iter().map(|b| of(&b.size)).sum::<Length>();
    if stand == "stack" {
        Size { width: most(|s| s.width), depth, height: sum(|s| s.height) }
    } else {
        Size { width: sum(|s| s.width), depth, height: most(|s| s.height) }
    }
}

/// Side by side, or each in the middle of the one below.
fn seats(boxes: &[One], stand: &str, (corner, block): (Offset, Size), play: Length) -> Vec<Seat> {
    let mut done = Length::ZERO;
    let seat = |one: &One| {
        let middle = corner.back + (block.depth - one.size.depth).half();
        let at = if stand == "stack" {
            let right = corner.right + (block.width - one.size.width).half();
            Offset { right, back: middle, up: corner.up + done }
        } else {
            Offset { right: corner.right + done, back: middle, up: corner.up }
        };
        done += if stand == "stack" { one.size.height } else { one.size.width };
        Seat::of((one.kind, one.size), at, play, From::Front)
    };
    boxes.iter().map(seat).collect()
}
