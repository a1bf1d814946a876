//! Drawer and sleeve: an open tray that slides into a tube, with a thumb notch or a ribbon to pull it by.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{
    Matted, Tray, Tube, choice, clearance_input, length, remark_loose, size_choice, sized, snapped, word,
};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use crate::assembly::parts::{Assembly, From, Join, JoinName, Room, Size};

/// The form.
pub const FORM: Form =
    Form { number: 12, key: "drawer", name: "Drawer and sleeve", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Of the drawer, left to right, looking at its front",
        (20, 400),
        Default::Is(Native::lengths(3, 1, 750)),
    ),
    length(2, "depth", "Depth", "Of the drawer, front to back", (20, 400), Default::Is(Native::lengths(4, 1, 1_000))),
    length(3, "height", "Height", "Of the drawer", (10, 200), Default::Is(Native::lengths(5, 4, 320))),
    size_choice(4),
    choice(
        5,
        "pull",
        "To pull it by",
        "A half-round in the sleeve's front edge, or a ribbon under the drawer",
        &[word("notch", "thumb notch"), word("ribbon", "ribbon"), word("none", "nothing: push it from behind")],
    ),
    length(
        6,
        "notch-radius",
        "Notch radius",
        "Half of the punch's width",
        (3, 30),
        Default::Worked("⅜ in or 10 mm, less on a small sleeve"),
    ),
    clearance_input(7, "In total each way between drawer and sleeve"),
];

fn shape(mut ask: Ask) -> Shaped {
    let t = ask.setting.thickness;
    let width = sized(&mut ask, "width", Layers::WALLS);
    let depth = sized(&mut ask, "depth", Layers::WALLS);
    let height = sized(&mut ask, "height", Layers::OPEN);
    let drawer = Tray { name: "drawer", width, depth, height, mats: Matted::Front, notch: None };
    drawer.check(&mut ask, "depth", "height");
    let clearance = ask.clearance(Length::ZERO);
    let mut sleeve = sleeve(&drawer, clearance, &ask);
    sleeve.notch = pull(&mut ask, &drawer);
    sleeve.check(&mut ask, "height");
    if ask.stopped() {
        return ask.shaped;
    }
    let (inner, outer) = (drawer.outside(t), sleeve.outside(t));
    let across = Layers::ONE_TAB.inside(sleeve.width, t) - inner.width;
    let up = sleeve.inside(t).height - inner.height;
    remark_loose(&mut ask, across.max(up), clearance);
    let mut parts = vec![drawer.part(&ask), sleeve.part(&ask)];
    let lower_left = (-t.half(), -t.half());
    parts[1].stands = vec![sleeve.stand(lower_left, inner, (depth - sleeve.length).half(), t)];
    let room = snapped(clearance, &ask);
    let joins = vec![Join {
        name: JoinName::DrawerIn,
        inner: vec![0],
        outer: 1,
        from: From::Front,
        room: Room { width: Some(room), depth: None, height: Some(room), round: None },
    }];
    // From the drawer's floor, which lies on the sleeve's, to the sleeve's top.
    let inside = Size { height: sleeve.inside(t).height - t, ..drawer.inside(t) };
    let finished = Size { width, depth, height };
    ask.answer(Assembly { joins, ..Assembly::of(parts, finished, inside, outer) })
}

/// The sleeve that leaves `clearance` round `drawer`, as long as it.
fn sleeve(drawer: &Tray, clearance: Length, ask: &Ask) -> Tube {
    let outside = drawer.outside(ask.setting.thickness);
    let long = ask.setting.cut.up(outside.depth);
    Tube { mats: Matted::Walls, ..Tube::round("sleeve", outside, long, clearance, ask) }
}

/// The notch's radius, where there is one.
fn pull(ask: &mut Ask, drawer: &Tray) -> Option<Length> {
    match ask.choice("pull") {
        "notch" => {
            let most = ask.setting.cut.down(drawer.width.min(drawer.depth).scaled(1, 3));
            let usual = Native::lengths(3, 8, 100).of(ask.setting.system);
            let radius = ask.length("notch-radius", usual.min(most));
            if radius > most {
                ask.stop("notch-radius", What::NotchTooLarge { most });
            }
            Some(radius)
        }
        "ribbon" => {
            // Under the whole floor, and a hand's breadth to hold.
            let hold = Native::lengths(5, 2, 600).of(ask.setting.system);
            let length = ask.setting.cut.up(drawer.depth + hold);
            ask.remark(Some("pull"), Weight::Note, What::Ribbon { length });
            None
        }
        _ => None,
    }
}
