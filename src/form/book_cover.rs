//! Wrap-round cover: a tray for the boxes, glued into a cover that closes round it like a book.

use crate::allow::{Layers, clearance};
use crate::measure::length::Length;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::Duty;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{CLEARANCE, Matted, Tray, length, meet, remark_loose, snapped};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{ROWS, Rows, seats};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Offset, Part, Room, Root, Size, Stand};

/// The form.
pub const FORM: Form =
    Form { number: 18, key: "book-cover", name: "Cover like a book", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    ROWS,
    length(
        2,
        "room",
        "Room for the boxes",
        "In total each way between the boxes and the tray",
        (1, 20),
        Default::Is(clearance::DEFAULT),
    ),
    length(
        3,
        "clearance",
        "Clearance of the cover",
        "In total each way between the tray and the cover",
        (1, 8),
        Default::Is(CLEARANCE),
    ),
];

/// The cover: flap, front board, spine and back board, all score to score.
struct Cover {
    width: Length,
    height: Length,
    length: Length,
}

fn shape(mut ask: Ask) -> Shaped {
    let Some(rows) = Rows::of(&ask) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    let (score, cut, t) = (ask.setting.score, ask.setting.cut, ask.setting.thickness);
    let play = ask.length("room", Length::ZERO);
    let clearance = ask.clearance(Length::ZERO);
    let block = rows.block(Length::ZERO);
    let tray = Tray {
        name: "tray",
        width: score.up(Layers::TABBED_WALLS.score_for(block.width + play, t)),
        depth: score.up(Layers::WALLS.score_for(block.depth + play, t)),
        // As high as the highest box, so that the cover lies on nothing else.
        height: score.up(Layers::OPEN.score_for(block.height + Length::mm(1), t)),
        mats: Matted::None,
        notch: None,
    };
    tray.check(&mut ask, "rows", "rows");
    let inner = tray.outside(t);
    let cover = Cover {
        width: score.up(Layers::WALLS.score_for(inner.width + clearance, t)),
        height: score.up(Layers::WALLS.score_for(inner.height + clearance, t)),
        length: cut.up(inner.depth),
    };
    if ask.stopped() {
        return ask.shaped;
    }
    let free = cover.inside(t);
    remark_loose(&mut ask, (free.width - inner.width).max(free.height - inner.height), clearance);
    let mut parts = vec![tray.part(&ask), cover.part(&ask)];
    // The tray lies on the back board, in the middle.
    let at = Offset { right: (tray.width - cover.width).half(), back: (tray.depth - cover.length).half(), up: -t };
    parts[1].stands = vec![Stand { at, ..Stand::default() }];
    let room = Some(snapped(clearance, &ask));
    let joins = vec![Join {
        name: JoinName::TrayIn,
        inner: vec![0],
        outer: 1,
        from: From::Front,
        room: Room { width: room, depth: None, height: room, round: None },
    }];
    let corner =
        Offset { right: (tray.width - block.width).half(), back: (tray.depth - block.depth).half(), up: t.half() };
    let seats = seats(&rows, corner, Length::ZERO, play);
    let finished = Size { width: cover.width, depth: cover.length, height: cover.height };
    let inside = Size { height: free.height - t, ..tray.inside(t) };
    ask.answer(Assembly { joins, seats, ..Assembly::of(parts, finished, inside, cover.outside(t)) })
}

impl Cover {
    const fn inside(&self, t: Length) -> Size {
        let (width, height) = (Layers::WALLS.inside(self.width, t), Layers::WALLS.inside(self.height, t));
        Size { width, depth: self.length, height }
    }

    const fn outside(&self, t: Length) -> Size {
        let (width, height) = (Layers::WALLS.outside(self.width, t), Layers::WALLS.outside(self.height, t));
        Size { width, depth: self.length, height }
    }

    fn part(&self, ask: &Ask) -> Part {
        let (t, clear) = (ask.setting.thickness, ask.setting.clear());
        // The flap ends clear of the table.
        let flap = self.height - clear;
        let mut c = Cells::new(&[flap, self.width, self.height, self.width], &[self.length]);
        let back = c.panel(3, 0, "back board", Duty::Floor);
        let spine = c.hung(back, 90, (2, 0), "spine", Duty::Wall);
        let front = c.hung(spine, 90, (1, 0), "front board", Duty::Lid);
        let flap = c.hung(front, 90, (0, 0), "flap", Duty::Wall);
        for panel in [front, spine, flap, back] {
            c.mat(panel);
        }
        let net = c.finish();
        let moves =
            vec![Move::even(&net, MoveName::Cover, &[spine]), Move::even(&net, MoveName::CoverClose, &[front, flap])];
        let meets = vec![meet((flap, Side::Left), (back, Side::Right), clear)];
        Part {
            inside: Some(self.inside(t)),
            outside: Some(self.outside(t)),
            strips: None,
            ..Part::alone("cover", net, Root::Base, meets, moves)
        }
    }
}
