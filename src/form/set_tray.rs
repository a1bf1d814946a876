//! Tray with a lid over the whole set: boxes stand in rows in a base as high as the highest, and a lid goes over it.

use crate::allow::{Layers, clearance};
use crate::measure::length::Length;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{Matted, Tray, clearance_input, length};
use super::lid_base::lidded;
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{ROWS, Rows, seats};
use crate::assembly::parts::Offset;

/// The form.
pub const FORM: Form =
    Form { number: 17, key: "set-tray", name: "Tray with lid", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    ROWS,
    length(
        2,
        "lid-height",
        "Lid height",
        "How far the lid's walls reach down",
        (8, 400),
        Default::Worked("a third of the base, at least ½ in or 12 mm"),
    ),
    clearance_input(3, "In total each way between base and lid"),
    length(
        4,
        "room",
        "Room for the boxes",
        "In total each way between the boxes and the base",
        (1, 20),
        Default::Is(clearance::DEFAULT),
    ),
];

fn shape(mut ask: Ask) -> Shaped {
    let Some(rows) = Rows::of(&ask) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let (score, t) = (ask.setting.score, ask.setting.thickness);
    let room = ask.length("room", Length::ZERO);
    let block = rows.block(Length::ZERO);
    let base = Tray {
        name: "base",
        width: score.up(Layers::TABBED_WALLS.score_for(block.width + room, t)),
        depth: score.up(Layers::WALLS.score_for(block.depth + room, t)),
        height: score.up(Layers::OPEN.score_for(block.height + Length::mm(1), t)),
        mats: Matted::None,
        notch: None,
    };
    base.check(&mut ask, "rows", "rows");
    let low = ask.setting.least_panel() * 2;
    let usual = score.up(base.height.scaled(1, 3).max(low).max(Length::mm(8)));
    let lid_height = ask.scored("lid-height", usual.min(base.height));
    // The middle of what is free between the tabs: that of the base itself.
    let corner =
        Offset { right: (base.width - block.width).half(), back: (base.depth - block.depth).half(), up: t.half() };
    let placed = seats(&rows, corner, Length::ZERO, room);
    let mut shaped = lidded(ask, base, lid_height, "lid-height");
    if let Some(assembly) = &mut shaped.assembly {
        // A seat is free from above before the lid is on; what closes it is proved as the lid's own joint.
        assembly.seats = placed;
    }
    shaped
}
