//! Box with 5 to 8 sides, and a lid that goes over it: two stars with upright walls.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::project::bound::Range;
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{Matted, choice, clearance_input, length, remark_loose};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use super::star::{Held, Star, apothem, sides, tab, tab_input, word_for};
use crate::assembly::parts::{Assembly, Footprint, From, Join, JoinName, Offset, Room, Size, Stand, Turn};

/// The form.
pub const FORM: Form =
    Form { number: 21, key: "prism", name: "Many-sided box with lid", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    choice(1, "sides", "Sides", "How many walls it has", &[word_for(6), word_for(5), word_for(7), word_for(8)]),
    length(2, "foot", "Side", "Each side of the base", (20, 200), Default::Is(Native::lengths(2, 1, 500))),
    length(3, "height", "Height", "Of the base", (20, 300), Default::Is(Native::lengths(5, 2, 600))),
    length(
        4,
        "lid-height",
        "Lid height",
        "How far the lid's walls reach down; as high as the base hides it",
        (15, 300),
        Default::Worked("half the base"),
    ),
    clearance_input(5, "In total from wall to wall between base and lid"),
    tab_input(6),
];

fn shape(mut ask: Ask) -> Shaped {
    let (score, cut, t) = (ask.setting.score, ask.setting.cut, ask.setting.thickness);
    let sides = sides(&ask);
    let foot = ask.scored("foot", Length::ZERO);
    let height = ask.scored("height", Length::ZERO);
    let half = score.up(height.half().max(Length::mm(15)));
    let lid_height = ask.scored("lid-height", half.min(height));
    if lid_height > height {
        ask.stop("lid-height", What::LidTooHigh { most: height });
    }
    let clearance = ask.clearance(Length::ZERO);
    let star = |foot, height, mats| move |tab| Star { sides, foot, rim: foot, height, held: Held::Tabs(tab), mats };
    // The lower of base and lid says how wide tabs can be.
    let tab = tab(&mut ask, star(foot, lid_height.min(height), Matted::None), "lid-height");
    let base = star(foot, height, Matted::None)(tab);
    // The lid's walls and the tabs inside them lie outside the base's walls: 2 t on each side, besides the clearance.
    let across = clearance.as_mm() / 2.0 + t.as_mm() * 2.0;
    let per_side = apothem(sides, 1.0);
    // Marked by hand, the lid needs no groove, only a ruler's mark.
    let lid_foot = cut.up(Length::round_mm(foot.as_mm() + across / per_side));
    let lid = star(lid_foot, lid_height, Matted::All)(tab);
    if ask.stopped() {
        return ask.shaped;
    }
    let free = Length::round_mm((lid.reach() - base.reach() - t.as_mm() * 2.0) * 2.0);
    remark_loose(&mut ask, free, clearance);
    let inside = base.inside(t);
    let across = Length::round_mm(2.0 * base.reach());
    let finished = Size { width: across, depth: across, height };
    let outside = Size { height: Layers::LIDDED.outside(height, t), ..lid.outside(t) };
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    let mut parts = vec![base.part("base", &ask), lid.part("lid", &ask)];
    parts[0].inside = Some(inside);
    let ([right, back], [lid_right, lid_back]) = (base.middle(), lid.middle());
    let at = Offset { right: right + lid_right, back: back - lid_back, up: height + t.half() };
    parts[1].stands = vec![Stand { turn: Turn::UpsideDown, at }];
    let most = clearance + Length::round_mm(cut.step().as_mm() * per_side * 2.0);
    let joins = vec![Join {
        name: JoinName::LidOver,
        inner: vec![0],
        outer: 1,
        from: From::Below,
        room: Room { round: Some(Range::new(clearance, most)), ..Room::default() },
    }];
    ask.answer(Assembly { joins, footprint: Footprint::Sides(sides), ..Assembly::of(parts, finished, inside, outside) })
}
