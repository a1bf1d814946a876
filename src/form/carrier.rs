//! Carrier: an open tray with a doubled wall down its middle, higher than the boxes, to carry it by.

use crate::allow::{Layers, clearance};
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::Duty;
use crate::project::bound::Range;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{Matted, Tray, length, meet};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{Rows, walls};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Part, Room, Root, Seat, Size, Stand};

/// The form.
pub const FORM: Form = Form { number: 16, key: "carrier", name: "Carrier", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "height",
        "Height",
        "Base to the upper edge of the tray",
        (15, 400),
        Default::Worked("three quarters of the lowest box, leaving 20 mm to grip"),
    ),
    length(
        2,
        "handle",
        "Handle",
        "How far the middle wall stands above the highest box",
        (20, 150),
        Default::Is(Native::lengths(3, 2, 400)),
    ),
    length(
        3,
        "flange",
        "Flanges",
        "The feet of the middle wall, glued to the base",
        (8, 40),
        Default::Is(Native::lengths(1, 2, 120)),
    ),
    length(
        4,
        "clearance",
        "Clearance",
        "In total each way between the boxes and the walls",
        (1, 20),
        Default::Is(clearance::DEFAULT),
    ),
];

/// The doubled wall.
struct Handle {
    /// Left to right.
    long: Length,
    /// From its flanges to its folded upper edge.
    high: Length,
    flange: Length,
}

fn shape(mut ask: Ask) -> Shaped {
    let Some(rows) = Rows::halved(&ask) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let (score, cut, t) = (ask.setting.score, ask.setting.cut, ask.setting.thickness);
    let play = ask.clearance(Length::ZERO);
    let height = walls(&mut ask, "height", &rows);
    let above = ask.length("handle", Length::ZERO);
    let flange = ask.scored("flange", Length::ZERO);
    // One row before the wall and one behind it; both as deep as the deeper, so that it stands in the middle.
    let side = rows.rows.iter().copied().max().unwrap_or_default() + play;
    let tray = Tray {
        name: "tray",
        width: score.up(Layers::TABBED_WALLS.score_for(rows.block(Length::ZERO).width + play, t)),
        depth: score.up(Layers::WALLS.score_for(side * 2 + t * 2, t)),
        height,
        mats: Matted::Walls,
        notch: None,
    };
    tray.check(&mut ask, "clearance", "height");
    let clear = ask.setting.clear();
    let handle = Handle { long: cut.down(tray.width - t * 3 - clear), high: score.up(rows.high + above), flange };
    let most = score.down(side);
    if flange > most {
        ask.stop("flange", What::TabTooWide { most });
    }
    if handle.high < height {
        ask.remark(Some("height"), Weight::Caution, What::WallAboveBoxes { wall: height, shortest: rows.low });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let mut parts = vec![tray.part(&ask), handle.part(t)];
    let middle = tray.depth.half();
    // Its flanges lie on the base.
    let at = Offset { right: (tray.width - handle.long).half(), back: middle, up: t };
    parts[1].stands = vec![Stand { at, ..Stand::default() }];
    let ends = Range::new(clear, clear + cut.step());
    let joins = vec![Join {
        name: JoinName::HandleIn,
        inner: vec![1],
        outer: 0,
        from: From::Above,
        room: Room { width: Some(ends), depth: None, height: None, round: None },
    }];
    let seats = seats(&rows, &tray, (play, t));
    let high = t.scaled(3, 2) + handle.high;
    let finished = Size { width: tray.width, depth: tray.depth, height: high };
    let outside = Size { height: high.max(tray.outside(t).height), ..tray.outside(t) };
    ask.answer(Assembly { joins, seats, ..Assembly::of(parts, finished, tray.inside(t), outside) })
}

impl Handle {
    /// Flange, wall, wall and flange in one strip, folded back on itself at the upper edge.
    fn part(&self, t: Length) -> Part {
        let mut c = Cells::new(&[self.long], &[self.flange, self.high, self.high, self.flange]);
        let front = c.panel(0, 2, "front of the handle", Duty::Divider);
        let back = c.hung(front, 180, (0, 1), "back of the handle", Duty::Divider);
        let front_flange = c.hung(front, -90, (0, 3), "front flange", Duty::Flange);
        let back_flange = c.hung(back, -90, (0, 0), "back flange", Duty::Flange);
        c.level(front, 1);
        c.level(back, 1);
        c.glue(back, crate::net::flat::Face::Inside, &[front]);
        let net = c.finish();
        let moves = vec![
            Move::even(&net, MoveName::Flanges, &[front_flange, back_flange]),
            Move::even(&net, MoveName::Doubled, &[back]),
        ];
        let meets = vec![
            meet((back, Side::Top), (front, Side::Bottom), Length::ZERO),
            meet((front_flange, Side::Top), (back_flange, Side::Bottom), Length::ZERO),
        ];
        let outside = Size { width: self.long, depth: self.flange * 2, height: self.high + t.half() };
        let name = "handle";
        Part { outside: Some(outside), ..Part::alone(name, net, Root::Front, meets, moves) }
    }
}

/// Half of the boxes before the handle and half behind it, each in the middle of its field.
fn seats(rows: &Rows, tray: &Tray, (play, t): (Length, Length)) -> Vec<Seat> {
    let count = rows.columns.len().max(1);
    let block = rows.block(Length::ZERO);
    let left = (tray.width - block.width).half();
    // From the wall's face to the handle's.
    let (front, middle) = (t.half(), tray.depth.half());
    let boxes = rows.boxes.iter().enumerate();
    boxes
        .filter_map(|(i, one)| {
            let wide = *rows.columns.get(i % count)?;
            let before: Length = rows.columns.iter().take(i % count).copied().sum();
            let (low, high) = if i < count { (front, middle - t) } else { (middle + t, tray.depth - t.half()) };
            let at = Offset {
                right: left + before + (wide - one.size.width).half(),
                back: (low + high - one.size.depth).half(),
                // On the flanges.
                up: t.scaled(3, 2),
            };
            Some(Seat::of((one.kind, one.size), at, play, From::Above))
        })
        .collect()
}
