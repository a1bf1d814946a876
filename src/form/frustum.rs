//! Box whose walls lean outward, open at the top: a floor of 4 to 8 sides and a wider rim.

use crate::measure::length::Length;
use crate::measure::system::Native;

use super::input::{Default, Input};
use super::joined::{LEAST_TAB, Matted, choice, length};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use super::star::{Held, Star, sides, tab, tab_input, word_for};
use crate::assembly::parts::{Assembly, Size};
use crate::project::finding::What;

/// The form.
pub const FORM: Form =
    Form { number: 23, key: "frustum", name: "Box with leaning walls", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    choice(
        1,
        "sides",
        "Sides of the floor",
        "How many walls it has",
        &[word_for(4), word_for(5), word_for(6), word_for(8)],
    ),
    length(
        2,
        "foot",
        "Side at the floor",
        "Each side of the floor",
        (20, 250),
        Default::Is(Native::lengths(2, 1, 500)),
    ),
    length(
        3,
        "rim",
        "Side at the rim",
        "Each wall at its upper edge, more than at the floor",
        (20, 300),
        Default::Is(Native::lengths(3, 1, 750)),
    ),
    length(4, "height", "Height", "Upright, from floor to rim", (20, 300), Default::Is(Native::lengths(4, 1, 1_000))),
    tab_input(5),
];

fn shape(mut ask: Ask) -> Shaped {
    let sides = sides(&ask);
    let foot = ask.scored("foot", Length::ZERO);
    let rim = ask.scored("rim", Length::ZERO);
    let height = ask.scored("height", Length::ZERO);
    if rim < foot {
        ask.stop("rim", What::LengthOutside { is: rim, least: foot, most: Length::mm(300) });
    }
    let star = |tab| Star { sides, foot, rim, height, held: Held::Tabs(tab), mats: Matted::All };
    let tab = tab(&mut ask, star, "rim");
    let star = star(tab);
    // Flatter than this, walls leave no room between them for their tabs.
    const LEAST_GAP: f64 = 25.0;
    if star.gap() < LEAST_GAP && tab >= LEAST_TAB {
        ask.stop("rim", What::LeansTooFar { most: upright(&star, LEAST_GAP) });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let t = ask.setting.thickness;
    // Across the rim, as far as a hand can see: twice the way from the middle to a wall.
    let across = Length::round_mm(2.0 * super::star::apothem(sides, rim.as_mm()));
    let finished = Size { width: across, depth: across, height };
    let (inside, outside) = (star.inside(t), star.outside(t));
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    let part = star.part("box", &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

/// The widest rim that leaves a gap of so many degrees between flat walls, found by halving.
fn upright(star: &Star, gap: f64) -> Length {
    let (mut low, mut high) = (star.foot, star.rim);
    for _ in 0..30 {
        let rim = (low + high).half();
        if (Star { rim, ..*star }).gap() < gap { high = rim } else { low = rim }
    }
    low
}
