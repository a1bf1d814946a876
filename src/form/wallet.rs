//! Card wallet, one piece: a shallow pocket whose sides are glued inside the front by their tabs, and a flap that goes
//! over the top and down outside the front. As it comes it takes a card of the ID-1 size (ISO/IEC 7810).

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Shape, Side};
use crate::net::flat::{Duty, Face};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{length, meet, size_choice, sized};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Part, Root, Size};

/// The form.
pub const FORM: Form =
    Form { number: 7, key: "wallet", name: "Card wallet", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Left to right, looking at the front",
        (25, 300),
        Default::Is(Native::lengths(7, 2, 900)),
    ),
    length(2, "depth", "Depth", "Front to back: how much it holds", (5, 60), Default::Is(Native::lengths(1, 4, 60))),
    length(3, "height", "Height", "Bottom to top", (25, 300), Default::Is(Native::lengths(9, 4, 600))),
    size_choice(4),
    length(
        5,
        "tab",
        "Glue tabs",
        "Glued inside the front at both sides",
        (6, 30),
        Default::Is(Native::lengths(1, 2, 120)),
    ),
    length(
        6,
        "flap",
        "Flap",
        "How far it reaches down over the front",
        (10, 300),
        Default::Worked("two thirds of the height"),
    ),
    length(
        7,
        "corner-radius",
        "Rounded corners",
        "At the flap's free corners; 0 leaves them square",
        (0, 60),
        Default::Worked("¼ in or 6 mm, at most half the flap"),
    ),
];

/// What the net is drawn from, all score to score.
struct Sizes {
    width: Length,
    depth: Length,
    height: Length,
    tab: Length,
    flap: Length,
    radius: Length,
}

fn shape(mut ask: Ask) -> Shaped {
    let s = sizes(&mut ask);
    if ask.stopped() {
        return ask.shaped;
    }
    let t = ask.setting.thickness;
    let size = |of: fn(Layers, Length, Length) -> Length| Size {
        width: of(Layers::WALLS, s.width, t),
        depth: of(Layers::FLAP_OVER, s.depth, t),
        height: of(Layers::LIDDED, s.height, t),
    };
    let (inside, outside) = (size(Layers::inside), size(Layers::outside));
    let finished = Size { width: s.width, depth: s.depth, height: s.height };
    let part = draw(&s, &ask);
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

fn sizes(ask: &mut Ask) -> Sizes {
    let (score, cut) = (ask.setting.score, ask.setting.cut);
    let width = sized(ask, "width", Layers::WALLS);
    let depth = sized(ask, "depth", Layers::FLAP_OVER);
    let height = sized(ask, "height", Layers::LIDDED);
    let least = ask.setting.least_panel();
    for (key, panel, is) in [("width", "front", width), ("depth", "side", depth), ("height", "front", height)] {
        if is < least {
            ask.stop(key, What::PanelTooSmall { panel, is, least });
        }
    }
    let tab = ask.scored("tab", Length::ZERO);
    let most = score.down(width.half() - ask.setting.clear());
    if tab > most {
        ask.stop("tab", What::TabTooWide { most });
    }
    let flap = ask.length("flap", cut.down(height.scaled(2, 3)));
    if flap > height {
        ask.stop("flap", What::FlapTooLong { most: height });
    }
    let most = flap.min(width).half();
    let radius = ask.length("corner-radius", Native::lengths(1, 4, 60).of(ask.setting.system).min(most));
    if radius > most {
        ask.stop("corner-radius", What::RoundTooLarge { most });
    }
    Sizes { width, depth, height, tab, flap, radius }
}

fn draw(s: &Sizes, ask: &Ask) -> Part {
    let clear = ask.setting.clear();
    let mut c = Cells::new(&[s.tab, s.depth, s.width, s.depth, s.tab], &[s.height, s.depth, s.height, s.depth, s.flap]);
    let front = c.panel(2, 0, "front", Duty::Wall);
    let bottom = c.hung(front, 90, (2, 1), "bottom", Duty::Floor);
    let back = c.hung(bottom, 90, (2, 2), "back", Duty::Wall);
    let left = c.hung(back, 90, (1, 2), "left side", Duty::Wall);
    let right = c.hung(back, 90, (3, 2), "right side", Duty::Wall);
    let tabs = [
        (left, 0, "left tab", Corner::TopLeft, Corner::BottomLeft),
        (right, 4, "right tab", Corner::TopRight, Corner::BottomRight),
    ]
    .map(|(side, column, name, upper, lower)| {
        let tab = c.hung(side, 90, (column, 2), name, Duty::Tab);
        c.level(tab, -2);
        c.strip(tab, Side::Top, clear);
        c.strip(tab, Side::Bottom, clear);
        let wedge = Shape::Wedge { across: s.tab, down: s.tab.half().min(s.height.scaled(1, 6)) };
        c.corner(tab, upper, wedge);
        c.corner(tab, lower, wedge);
        c.glue(tab, Face::Outside, &[front]);
        tab
    });
    let top = c.hung(back, 90, (2, 3), "top", Duty::Lid);
    c.level(top, 1);
    let flap = c.hung(top, 90, (2, 4), "flap", Duty::Lid);
    c.level(flap, 2);
    c.corner(flap, Corner::BottomLeft, Shape::Round(s.radius));
    c.corner(flap, Corner::BottomRight, Shape::Round(s.radius));
    c.mat(back);
    c.mat(flap);
    let net = c.finish();
    let moves = vec![
        Move::even(&net, MoveName::TabbedSides, &[tabs[0], tabs[1], left, right]),
        Move::even(&net, MoveName::OverTabs, &[bottom, back]),
        Move::even(&net, MoveName::Flap, &[top, flap]),
    ];
    let z = Length::ZERO;
    let meets = vec![
        meet((left, Side::Left), (front, Side::Left), z),
        meet((right, Side::Right), (front, Side::Right), z),
        meet((left, Side::Top), (bottom, Side::Left), z),
        meet((right, Side::Top), (bottom, Side::Right), z),
        meet((left, Side::Bottom), (top, Side::Left), z),
        meet((right, Side::Bottom), (top, Side::Right), z),
        meet((flap, Side::Top), (front, Side::Top), z),
    ];
    Part::alone("wallet", net, Root::Front, meets, moves)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::resolve::Setting;
    use crate::measure::grid::Grid;
    use crate::measure::system::System;
    use crate::project::bound::{CUT_STEP, DEFAULT_SCORE_STEP};

    /// ISO/IEC 7810, ID-1: 85.60 by 53.98 mm.
    #[test]
    fn as_it_comes_it_takes_an_id_1_card() {
        let request = crate::project::fresh::fresh(None, "wallet", "").boxes.remove(0);
        for system in System::ALL {
            let setting = Setting {
                system,
                score: Grid::every(DEFAULT_SCORE_STEP.of(system)),
                cut: Grid::every(CUT_STEP.of(system)),
                thickness: Length::um(400),
                mat_thickness: Length::ZERO,
                learned: Length::ZERO,
                contents: Vec::new(),
            };
            let made = FORM.shaped(&request, &setting).assembly.expect("the default can be made");
            assert!(made.inside.width > Length::um(85_600) && made.inside.height > Length::um(53_980), "{system:?}");
        }
    }
}
