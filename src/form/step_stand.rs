//! Stand with steps: one strip folds into base, back, treads and risers; a row of boxes stands on each tread.

use crate::allow::clearance;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Face, PanelId};
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{TAB, length, meet};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{ROWS, Rows};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, From, Offset, Part, Root, Seat, Size};

/// The form.
pub const FORM: Form =
    Form { number: 19, key: "step-stand", name: "Stand with steps", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    ROWS,
    length(
        2,
        "step",
        "Step",
        "How much higher each row stands than the one before it, the first above the table",
        (12, 150),
        Default::Is(Native::lengths(3, 2, 400)),
    ),
    length(
        3,
        "clearance",
        "Clearance",
        "In total each way between the boxes and the next riser",
        (1, 20),
        Default::Is(clearance::DEFAULT),
    ),
];

/// Treads and risers by name, from the front.
const STEPS: [(&str, &str); 6] = [
    ("first tread", "first riser"),
    ("second tread", "second riser"),
    ("third tread", "third riser"),
    ("fourth tread", "fourth riser"),
    ("fifth tread", "fifth riser"),
    ("sixth tread", "sixth riser"),
];

/// What the strip is made of, score to score.
struct Stairs {
    width: Length,
    /// From the front.
    treads: Vec<Length>,
    step: Length,
    flange: Length,
}

impl Stairs {
    fn depth(&self) -> Length {
        self.treads.iter().copied().sum()
    }

    fn high(&self, treads: usize) -> Length {
        self.step * i64::try_from(treads).unwrap_or(i64::MAX)
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let Some(rows) = Rows::of(&ask) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let (score, t) = (ask.setting.score, ask.setting.thickness);
    let play = ask.clearance(Length::ZERO);
    let step = ask.scored("step", Length::ZERO);
    let block = rows.block(Length::ZERO);
    // A tread is free from its own front edge to the next riser, which stands half a card before its score.
    let treads: Vec<Length> = rows.rows.iter().map(|&d| score.up(d + play)).collect();
    let shallow = treads.first().copied().unwrap_or_default();
    let flange = score.down(TAB.of(ask.setting.system)).min(shallow);
    let least = ask.setting.least_panel();
    if flange < least {
        ask.stop("clearance", What::PanelTooSmall { panel: "flange", is: flange, least });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let stairs = Stairs { width: ask.setting.cut.up(block.width + play), treads, step, flange };
    let part = draw(&stairs);
    let count = stairs.treads.len();
    let seats = seats(&rows, &stairs, play, t);
    let (deep, high) = (stairs.depth(), stairs.high(count));
    let finished = Size { width: stairs.width, depth: deep, height: high };
    let outside = Size { width: stairs.width, depth: deep + t, height: high + t };
    ask.answer(Assembly { seats, ..Assembly::alone(part, finished, Size::default(), outside) })
}

fn draw(s: &Stairs) -> Part {
    let count = s.treads.len();
    let mut rows = vec![s.depth(), s.high(count)];
    for &tread in s.treads.iter().rev() {
        rows.extend([tread, s.step]);
    }
    rows.push(s.flange);
    let mut c = Cells::new(&[s.width], &rows);
    let base = c.panel(0, 0, "base", Duty::Floor);
    let back = c.hung(base, 90, (0, 1), "back", Duty::Wall);
    let (mut last, mut row, mut zigzag) = (back, 2, Vec::<PanelId>::new());
    for (i, (tread, riser)) in STEPS.into_iter().enumerate().take(count).rev() {
        // At the front of a tread away from the reader, at its back towards the reader; the last one closes the back.
        let fold = if i + 1 == count { 90 } else { -90 };
        let tread = c.hung(last, fold, (0, row), tread, Duty::Lid);
        let riser = c.hung(tread, 90, (0, row + 1), riser, Duty::Wall);
        c.mat(riser);
        zigzag.extend([tread, riser]);
        (last, row) = (riser, row + 2);
    }
    let flange = c.hung(last, 90, (0, row), "flange", Duty::Tab);
    c.level(flange, -2);
    c.glue(flange, Face::Outside, &[base]);
    let net = c.finish();
    let moves = vec![
        Move::even(&net, MoveName::Tab, &[flange]),
        Move::even(&net, MoveName::Steps, &zigzag),
        Move::even(&net, MoveName::StandUp, &[back]),
    ];
    let meets = vec![meet((last, Side::Bottom), (base, Side::Top), Length::ZERO)];
    Part::alone("stand", net, Root::Base, meets, moves)
}

/// Each row on its tread, in the middle of it.
fn seats(rows: &Rows, s: &Stairs, play: Length, t: Length) -> Vec<Seat> {
    let count = rows.columns.len().max(1);
    let block = rows.block(Length::ZERO);
    let boxes = rows.boxes.iter().enumerate();
    boxes
        .filter_map(|(i, one)| {
            let (column, row) = (i % count, i / count);
            let (wide, deep) = (*rows.columns.get(column)?, *s.treads.get(row)?);
            let left: Length = rows.columns.iter().take(column).copied().sum();
            let front: Length = s.treads.iter().take(row).copied().sum();
            let at = Offset {
                right: (s.width - block.width).half() + left + (wide - one.size.width).half(),
                // Riser and next riser both stand half a card before their scores.
                back: front - t.half() + (deep - one.size.depth).half(),
                up: s.high(row + 1) + t.half(),
            };
            Some(Seat::of((one.kind, one.size), at, play, From::Above))
        })
        .collect()
}
