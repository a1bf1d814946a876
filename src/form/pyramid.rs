//! Pyramid on a floor of 3 to 6 sides, tied at its point with a ribbon or held by tabs that slide in: no glue.

use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{Matted, choice, length, word};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped, Wants};
use super::star::{Held, Star, apothem, sides, tab, word_for};
use crate::assembly::parts::{Assembly, Size};

/// The form.
pub const FORM: Form = Form { number: 22, key: "pyramid", name: "Pyramid", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    choice(
        1,
        "sides",
        "Sides of the floor",
        "How many walls it has",
        &[word_for(4), word_for(3), word_for(5), word_for(6)],
    ),
    length(2, "foot", "Side of the floor", "Each of them", (30, 300), Default::Is(Native::lengths(3, 1, 750))),
    length(
        3,
        "height",
        "Height",
        "Upright, from the floor to the point",
        (30, 400),
        Default::Is(Native::lengths(4, 1, 1_000)),
    ),
    length(4, "hole", "Hole", "Across, for the ribbon", (2, 8), Default::Is(Native::lengths(1, 8, 30))),
    choice(
        5,
        "closed",
        "Closed",
        "By a ribbon through all points, or by a tab on each wall",
        &[word("ribbon", "tied with a ribbon"), word("tabs", "with tabs, tucked in")],
    ),
    length(
        6,
        "tab",
        "Tabs",
        "On one edge of each wall, slid inside the next",
        (6, 25),
        Default::Worked("½ in or 12 mm, less where walls are low or narrow"),
    ),
];

/// The least height with tabs, to the way from the floor's middle to a wall: on flatter walls tabs that bend in do not
/// come past the next wall (tried with the proof).
const STEEP: f64 = 0.8;
/// What stays between a hole and the edges of its wall.
const RIM: Length = Length::mm(4);

fn shape(mut ask: Ask) -> Shaped {
    let sides = sides(&ask);
    let foot = ask.scored("foot", Length::ZERO);
    let height = ask.scored("height", Length::ZERO);
    let star = |held| Star { sides, foot, rim: Length::ZERO, height, held, mats: Matted::All };
    let held = if ask.choice("closed") == "tabs" {
        let least = ask.setting.score.up(Length::round_mm(apothem(sides, foot.as_mm()) * STEEP));
        if height < least {
            ask.stop("height", What::LengthOutside { is: height, least, most: Length::mm(400) });
        }
        Held::Tucks(tab(&mut ask, |width| star(Held::Tucks(width)), "foot"))
    } else {
        tied(&mut ask, star)
    };
    if ask.stopped() {
        return ask.shaped;
    }
    let star = star(held);
    let t = ask.setting.thickness;
    let across = Length::round_mm(2.0 * apothem(sides, foot.as_mm()));
    let finished = Size { width: across, depth: across, height };
    let (inside, outside) = (star.inside(t), star.outside(t));
    if ask.wants == Wants::Sizes {
        return ask.sizes(finished, inside, outside);
    }
    let part = star.part("pyramid", &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

/// The hole, so far down that the wall is broad enough round it: its edges run together at half its angle at the point.
fn tied(ask: &mut Ask, star: impl Fn(Held) -> Star) -> Held {
    let radius = ask.length("hole", Length::ZERO).half();
    let bare = star(Held::Tied { radius, below: Length::ZERO });
    let sine = bare.foot.as_mm() / 2.0 / bare.edge();
    let below = Length::round_mm((radius + RIM).as_mm() / sine);
    let most = Length::round_mm(bare.slant() / 2.0);
    if below > most {
        let wide = Length::round_mm(most.as_mm() * sine) - RIM;
        let most = (wide * 2).at_least_zero();
        ask.stop("hole", What::LengthOutside { is: radius * 2, least: Length::mm(2), most });
    }
    Held::Tied { radius, below }
}
