//! Box with a tuck at both ends, one piece: four walls and a tab, and at each end a lid with a tuck and dust flaps.
//! Nothing but the tab is glued, so it stores and travels flat.

use crate::allow::Layers;
use crate::net::cells::Cells;

use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::tube::{self, End, Tube, columns, sizes, tucked, walls};
use crate::assembly::parts::{Assembly, Part, Root};

/// The form.
pub const FORM: Form = Form {
    number: 3,
    key: "tuck-ends",
    name: "Box, tuck at both ends",
    holds: Holds::Gifts,
    inputs: tube::INPUTS,
    shape,
};

/// Dust flaps and a lid at each end: inside − 2 t, outside + 2 t.
const ENDS: Layers = Layers::DOUBLE_ENDS;
const WALL: usize = 2;

fn shape(mut ask: Ask) -> Shaped {
    let sizes = sizes(&mut ask, ENDS);
    if ask.stopped() {
        return ask.shaped;
    }
    let (inside, outside) = (sizes.size(&ask, ENDS, Layers::inside), sizes.size(&ask, ENDS, Layers::outside));
    let part = draw(&sizes, &ask);
    ask.answer(Assembly::alone(part, sizes.finished(), inside, outside))
}

fn draw(s: &Tube, ask: &Ask) -> Part {
    let at = columns(s);
    let mut c = Cells::new(&at.sizes, &[s.tuck, s.depth, s.height, s.depth, s.tuck]);
    let w = walls(&mut c, s, at, WALL);
    let (top, bottom) = (tucked(&mut c, s, &w, End::Top, ask), tucked(&mut c, s, &w, End::Bottom, ask));
    let net = c.finish();
    let mut moves = w.moves(&net);
    moves.extend(bottom.moves(&net, &w));
    moves.extend(top.moves(&net, &w));
    let mut meets = vec![w.meet()];
    meets.extend(bottom.meets(&w));
    meets.extend(top.meets(&w));
    Part::alone("box", net, Root::Front, meets, moves)
}
