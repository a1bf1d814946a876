//! Holder of rows and columns: an open tray with dividers that lap each other at slots.

use crate::allow::{Layers, clearance};
use crate::measure::length::Length;
use crate::net::cells::Cells;
use crate::net::corner::{Side, Slot};
use crate::net::flat::Duty;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{Matted, Tray, length};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{ROWS, Rows, walls};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Part, Room, Root, Seat, Size, Stand, Turn};
use crate::project::bound::Range;

/// The form.
pub const FORM: Form =
    Form { number: 13, key: "grid-holder", name: "Tray with dividers", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    ROWS,
    length(
        2,
        "height",
        "Height",
        "Base to the upper edge; the dividers are a little lower",
        (15, 400),
        Default::Worked("three quarters of the lowest box, leaving 20 mm to grip"),
    ),
    length(3, "clearance", "Clearance", "In total each way round each box", (1, 20), Default::Is(clearance::DEFAULT)),
];

/// What a slot is wider than the card that goes into it, at least.
const SLOT_ROOM: Length = Length::um(100);

/// Fields along one direction, with the slots between them, from the end of the divider that runs that way.
struct Along {
    /// Its length.
    divider: Length,
    /// Where it starts, from the tray's score.
    start: Length,
    /// Where each slot starts, from the divider's end.
    slots: Vec<Length>,
    /// From the tray's score, each field's start and end.
    fields: Vec<(Length, Length)>,
}

/// What the fields along one direction are made of.
struct Span<'a> {
    /// The largest box of each.
    sizes: &'a [Length],
    /// What stays free round each.
    play: Length,
    /// How broad a slot is.
    slot: Length,
    /// From the score to where boxes can stand.
    wall: Length,
}

impl Span<'_> {
    /// What must be free between the walls: each slot may move on to the next mark.
    fn needs(&self, ask: &Ask) -> Length {
        let between = i64::try_from(self.sizes.len().saturating_sub(1)).unwrap_or(i64::MAX);
        let fields: Length = self.sizes.iter().map(|&s| s + self.play).sum();
        fields + (self.slot + ask.setting.cut.step()) * between
    }

    /// Lays the fields out between scores `side` apart.
    fn lay(&self, side: Length, ask: &Ask) -> Along {
        let cut = ask.setting.cut;
        let divider = cut.down(side - self.wall * 2 - ask.setting.clear());
        let start = (side - divider).half();
        let mut from = self.wall;
        let (mut slots, mut fields) = (Vec::new(), Vec::new());
        for (i, &size) in self.sizes.iter().enumerate() {
            if i + 1 == self.sizes.len() {
                fields.push((from, side - self.wall));
            } else {
                let slot = cut.up(from + size + self.play - start);
                fields.push((from, start + slot));
                slots.push(slot);
                from = start + slot + self.slot;
            }
        }
        Along { divider, start, slots, fields }
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let Some(rows) = Rows::of(&ask) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let (score, cut, t) = (ask.setting.score, ask.setting.cut, ask.setting.thickness);
    let play = ask.clearance(Length::ZERO);
    let slot = cut.up(t + SLOT_ROOM);
    let height = walls(&mut ask, "height", &rows);
    // Wall and tab at the sides, the wall alone at front and back.
    let across = Span { sizes: &rows.columns, play, slot, wall: t.scaled(3, 2) };
    let deep = Span { sizes: &rows.rows, play, slot, wall: t.half() };
    let tray = Tray {
        name: "tray",
        width: score.up(Layers::TABBED_WALLS.score_for(across.needs(&ask), t)),
        depth: score.up(Layers::WALLS.score_for(deep.needs(&ask), t)),
        height,
        mats: Matted::Walls,
        notch: None,
    };
    tray.check(&mut ask, "rows", "height");
    if ask.stopped() {
        return ask.shaped;
    }
    let (across, deep) = (across.lay(tray.width, &ask), deep.lay(tray.depth, &ask));
    let high = cut.down(height - t.half() - ask.setting.clear());
    let middle = |a: &Along, i: usize| a.slots.get(i).map_or(a.start, |&s| a.start + s + slot.half());
    let mut parts = vec![tray.part(&ask)];
    if !deep.slots.is_empty() {
        let mut part = divider("cross divider", &across, Side::Top, (high, slot), &ask);
        let stand = |i| Stand {
            turn: Turn::AsFolded,
            at: Offset { right: across.start, back: middle(&deep, i), up: t.half() },
        };
        part.stands = (0..deep.slots.len()).map(stand).collect();
        parts.push(part);
    }
    if !across.slots.is_empty() {
        let mut part = divider("long divider", &deep, Side::Bottom, (high, slot), &ask);
        let stand =
            |i| Stand { turn: Turn::Quarter, at: Offset { right: middle(&across, i), back: deep.start, up: t.half() } };
        part.stands = (0..across.slots.len()).map(stand).collect();
        parts.push(part);
    }
    let joins = joins(&deep, &across, parts.len(), &ask);
    let seats = seats(&rows, (&across, &deep), t.half(), play);
    let finished = Size { width: tray.width, depth: tray.depth, height };
    let (inside, outside) = (tray.inside(t), tray.outside(t));
    ask.answer(Assembly { joins, seats, ..Assembly::of(parts, finished, inside, outside) })
}

fn joins(deep: &Along, across: &Along, parts: usize, ask: &Ask) -> Vec<Join> {
    let mut joins = Vec::new();
    if parts == 3 {
        joins.push(Join {
            name: JoinName::DividersLap,
            inner: vec![1],
            outer: 2,
            from: From::Below,
            room: Room::default(),
        });
    }
    if parts > 1 {
        let clear = ask.setting.clear();
        let ends = Range::new(clear, clear + ask.setting.cut.step());
        let runs = |there: &[Length]| (!there.is_empty()).then_some(ends);
        joins.push(Join {
            name: JoinName::DividerIn,
            inner: (1..parts).collect(),
            outer: 0,
            from: From::Above,
            room: Room { width: runs(&deep.slots), depth: runs(&across.slots), height: None, round: None },
        });
    }
    joins
}

/// A divider as long as `along` says, with its slots in `side`, half its height deep.
fn divider(name: &'static str, along: &Along, side: Side, (high, slot): (Length, Length), ask: &Ask) -> Part {
    let mut c = Cells::new(&[along.divider], &[high]);
    let body = c.panel(0, 0, name, Duty::Divider);
    let depth = ask.setting.cut.up(high.half());
    let slots: Vec<Slot> = along.slots.iter().map(|&at| Slot { side, at, width: slot, depth }).collect();
    c.slots(body, &slots);
    let outside = Size { width: along.divider, depth: ask.setting.thickness, height: high };
    Part { outside: Some(outside), ..Part::alone(name, c.finish(), Root::Front, Vec::new(), Vec::new()) }
}

/// Each box in the middle of its field.
fn seats(rows: &Rows, (across, deep): (&Along, &Along), floor: Length, play: Length) -> Vec<Seat> {
    let count = rows.columns.len().max(1);
    let boxes = rows.boxes.iter().enumerate();
    boxes
        .filter_map(|(i, one)| {
            let (&(left, right), &(front, back)) = (across.fields.get(i % count)?, deep.fields.get(i / count)?);
            let at = Offset {
                right: (left + right - one.size.width).half(),
                back: (front + back - one.size.depth).half(),
                up: floor,
            };
            Some(Seat::of((one.kind, one.size), at, play, From::Above))
        })
        .collect()
}
