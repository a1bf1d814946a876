//! Double tray, one piece: a tray whose four walls are rolled over, so that an inner wall hides the corner tabs.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Face, PanelId};
use crate::project::bound::HAIR;
use crate::project::finding::What;

use super::input::Input;
use super::joined::meet;
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::tray::{SIZES, Shell, Sizes, WALLS, beside};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Part, Root};

/// The form.
pub const FORM: Form =
    Form { number: 5, key: "double-tray", name: "Double-wall tray", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &SIZES;

/// Where the base lies, counted from the left and from the top.
const BASE: usize = 2;

/// The inner walls in the order of [`WALLS`], and the move that rolls each over.
const INNER: [(&str, MoveName); 4] = [
    ("inner front", MoveName::RollFront),
    ("inner back", MoveName::RollBack),
    ("inner left side", MoveName::RollLeft),
    ("inner right side", MoveName::RollRight),
];

fn shape(mut ask: Ask) -> Shaped {
    let s = Sizes::read(&mut ask, Layers::ROLLED, Layers::ROLLED_OVER_TABS);
    let (cut, clear, t) = (ask.setting.cut, ask.setting.clear(), ask.setting.thickness);
    // A wall swings over whole: no higher than the way to the wall opposite.
    let most = ask.setting.score.down(Layers::ROLLED_OVER_TABS.inside(s.width.min(s.depth), t) - clear);
    if s.height > most {
        ask.stop("height", What::WallTooHigh { most });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let h = s.height;
    let mut c = Cells::new(&[h, h, s.width, h, h], &[h, h, s.depth, h, h]);
    let mut shell = Shell::draw(&mut c, &s, BASE, clear);
    // The free edge stands on the floor; the ends pass the walls, or the inner walls that were rolled over before.
    let foot = HAIR.of(ask.setting.system).max(cut.up(t));
    let inner = |c: &mut Cells, shell: &mut Shell, wall: usize, level: i8, end: Length| -> PanelId {
        let free = WALLS[wall].1;
        let ends = if wall < 2 { [Side::Left, Side::Right] } else { [Side::Top, Side::Bottom] };
        let panel = c.hung(shell.walls[wall], 180, beside(BASE, free, 2), INNER[wall].0, Duty::Wall);
        c.level(panel, level);
        c.strip(panel, free, foot);
        ends.into_iter().for_each(|side| c.strip(panel, side, end));
        c.glue(panel, Face::Inside, &[shell.walls[wall]]);
        shell.meets.push(meet((panel, free), (shell.base, free), foot));
        panel
    };
    let over_tabs = s.hide.map(|i| (i, inner(&mut c, &mut shell, i, 4, clear)));
    let beside = cut.up(clear + t.scaled(5, 2));
    let last = s.carry.map(|i| (i, inner(&mut c, &mut shell, i, 2, beside)));
    let net = c.finish();
    let mut moves = shell.moves(&s, &net);
    moves.extend(over_tabs.into_iter().chain(last).map(|(i, panel)| Move::even(&net, INNER[i].1, &[panel])));
    let part = Part::alone("tray", net, Root::Base, shell.meets, moves);
    let assembly = s.assembly(part, t);
    ask.answer(assembly)
}
