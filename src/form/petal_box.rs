//! Square box closed by petals, one piece: four walls and a tab, a glued base, and on each wall a triangle that folds
//! over the top until all meet in the middle. A label or a ribbon holds them.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{Duty, PanelId};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{length, size_choice, sized};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use super::star::PETAL_FREE;
use super::tube::{Tube, columns, ring_tab, walls};
use super::tuck_box::base;
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Part, Root};

/// The form.
pub const FORM: Form =
    Form { number: 26, key: "petal-box", name: "Box closed by petals", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Of all four walls: the box is square",
        (30, 250),
        Default::Is(Native::lengths(5, 2, 600)),
    ),
    length(2, "height", "Height", "Base to top", (20, 400), Default::Is(Native::lengths(4, 1, 1_000))),
    size_choice(3),
    ring_tab(4),
];

/// One layer of petals above, three layers of base below: inside − 3 t/2, outside + 5 t/2.
const ENDS: Layers = Layers { lost: 3, added: 5 };
const NAMES: [&str; 4] = ["front petal", "left petal", "right petal", "back petal"];

fn shape(mut ask: Ask) -> Shaped {
    let side = sized(&mut ask, "width", Layers::WALLS);
    let height = sized(&mut ask, "height", ENDS);
    let tab = ask.scored("tab", Length::ZERO);
    let most = ask.setting.score.down(side - Length::mm(2));
    if tab > most {
        ask.stop("tab", What::TabTooWide { most });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let s = Tube { width: side, depth: side, height, tab, tuck: Length::ZERO, notch: None };
    let (inside, outside) = (s.size(&ask, ENDS, Layers::inside), s.size(&ask, ENDS, Layers::outside));
    let finished = s.finished();
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    let part = draw(&s, &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

const PETALS: usize = 0;
const WALL: usize = 1;
const BASE: usize = 2;

fn draw(s: &Tube, ask: &Ask) -> Part {
    let at = columns(s);
    let half = s.width.half();
    let row = ask.setting.score.up(half);
    let mut c = Cells::new(&at.sizes, &[row, s.height, s.depth]);
    let w = walls(&mut c, s, at, WALL);
    let columns = [(w.front, w.at.front), (w.left, w.at.left), (w.right, w.at.right), (w.back, w.at.back)];
    let petals: Vec<PanelId> = columns
        .into_iter()
        .zip(NAMES)
        .map(|((wall, column), name)| {
            let petal = c.hung(wall, 90, (column, PETALS), name, Duty::DustFlap);
            let high = half - PETAL_FREE;
            c.strip(petal, Side::Top, row - high);
            c.corner(petal, Corner::TopLeft, Shape::Wedge { across: half, down: high });
            c.corner(petal, Corner::TopRight, Shape::Wedge { across: s.width - half, down: high });
            petal
        })
        .collect();
    let base = base(&mut c, s, &w, BASE, ask);
    let net = c.finish();
    let mut moves = w.moves(&net);
    moves.extend(base.moves(&net));
    moves.push(Move::even(&net, MoveName::Petals, &petals));
    let mut meets = vec![w.meet()];
    meets.extend(base.meets(&w, ask));
    Part::alone("box", net, Root::Front, meets, moves)
}
