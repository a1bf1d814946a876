//! Tuck-top box, one piece: four walls and a tab, a lid with a tuck, dust flaps, and a glued base of three layers.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{Duty, Face, Net, PanelId};

use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::tube::{self, End, Tube, Walls, columns, reach, sizes, tucked, walls};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Meet, Part, Root};

/// The form.
pub const FORM: Form =
    Form { number: 1, key: "tuck-box", name: "Tuck-top box", holds: Holds::Gifts, inputs: tube::INPUTS, shape };

const ENDS: Layers = Layers::TUCK_AND_BASE;

fn shape(mut ask: Ask) -> Shaped {
    let sizes = sizes(&mut ask, ENDS);
    if ask.stopped() {
        return ask.shaped;
    }
    let (inside, outside) = (sizes.size(&ask, ENDS, Layers::inside), sizes.size(&ask, ENDS, Layers::outside));
    let part = draw(&sizes, &ask);
    ask.answer(Assembly::alone(part, sizes.finished(), inside, outside))
}

const WALL: usize = 2;
const BASE: usize = 3;

fn draw(s: &Tube, ask: &Ask) -> Part {
    let at = columns(s);
    let mut c = Cells::new(&at.sizes, &[s.tuck, s.depth, s.height, s.depth]);
    let w = walls(&mut c, s, at, WALL);
    let top = tucked(&mut c, s, &w, End::Top, ask);
    let base = base(&mut c, s, &w, BASE, ask);

    let net = c.finish();
    let mut moves = w.moves(&net);
    moves.extend(base.moves(&net));
    moves.extend(top.moves(&net, &w));
    let mut meets = vec![w.meet()];
    meets.extend(base.meets(&w, ask));
    meets.extend(top.meets(&w));
    Part::alone("box", net, Root::Front, meets, moves)
}

/// The panels of a glued base.
pub struct Base {
    inner: PanelId,
    left: PanelId,
    right: PanelId,
    outer: PanelId,
}

impl Base {
    /// Inner panel, side flaps, outer panel.
    pub fn moves(&self, net: &Net) -> [Move; 3] {
        [
            Move::even(net, MoveName::BaseInner, &[self.inner]),
            Move::even(net, MoveName::BaseSides, &[self.left, self.right]),
            Move::even(net, MoveName::BaseOuter, &[self.outer]),
        ]
    }

    /// The edges that come together.
    pub const fn meets(&self, w: &Walls, ask: &Ask) -> [Meet; 2] {
        [
            Meet { edge: (self.outer, Side::Bottom), along: (w.back, Side::Bottom), gap: Length::ZERO },
            Meet { edge: (self.inner, Side::Bottom), along: (w.front, Side::Bottom), gap: ask.setting.clear() },
        ]
    }
}

/// Draws a base of three layers in `row`, below the walls: it hangs on all four.
pub fn base(c: &mut Cells, s: &Tube, w: &Walls, row: usize, ask: &Ask) -> Base {
    let clear = ask.setting.clear();
    let inner = c.hung(w.back, 90, (w.at.back, row), "inner base", Duty::Floor);
    c.level(inner, -1);
    c.strip(inner, Side::Bottom, clear);
    let reach = reach(s, ask);
    let [left, right] = [(w.left, w.at.left, "left base flap"), (w.right, w.at.right, "right base flap")].map(
        |(wall, column, name)| {
            let flap = c.hung(wall, 90, (column, row), name, Duty::BaseFlap);
            c.level(flap, 1);
            c.strip(flap, Side::Bottom, s.depth - reach);
            let wedge = Shape::Wedge { across: clear, down: reach };
            c.corner(flap, Corner::BottomLeft, wedge);
            c.corner(flap, Corner::BottomRight, wedge);
            c.glue_within(flap, Face::Inside, clear * 2, &[inner]);
            flap
        },
    );
    let outer = c.hung(w.front, 90, (w.at.front, row), "outer base", Duty::BaseFlap);
    c.level(outer, 3);
    c.glue_within(outer, Face::Inside, clear * 2, &[left, right, inner]);
    Base { inner, left, right, outer }
}
