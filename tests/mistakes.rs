//! The proof of a form sees what is wrong: every measurement made a millimetre wrong in turn, bad joints, torn holes.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::typical::{form, mapped, typical};
use snugfold::assembly::parts::{Assembly, Part};
use snugfold::fold::prove::{Fault, faults};
use snugfold::form::registry::Form;
use snugfold::measure::length::Length;
use snugfold::measure::point::Point;
use snugfold::net::flat::{Duty, Net, PanelId};
use snugfold::net::marks::Marks;

/// A hole so near the edge that it tears out.
#[test]
fn a_hole_at_the_edge_is_caught() {
    let (mut bag, t) = typical(form("bag"));
    let net = &mut bag.parts[0].net;
    net.holes[0].at.y = net.panels[net.holes[0].panel.0].cell.min.y + Length::mm(4);
    assert!(faults(&bag, t).iter().any(|f| matches!(f, Fault::HoleAtEdge(_))));
}

/// Each column, each row and each edge of each panel made 1 mm larger in turn: which of them the proof does not catch.
fn survivors(form: &Form) -> Vec<String> {
    let (whole, t) = typical(form);
    assert_eq!(faults(&whole, t), Vec::<Fault>::new(), "sound before anything is changed");
    (0..whole.parts.len()).flat_map(|part| survivors_of(&whole, t, part)).collect()
}

/// Whether a wall, a floor or a lid turns at this place: tabs, tucks and flaps of any shape do their work.
fn counts(net: &Net, place: Point) -> bool {
    net.panels.iter().filter(|p| !matches!(p.duty, Duty::Tab | Duty::Tuck | Duty::DustFlap)).any(|p| {
        let all = &p.outline.corners;
        all.iter().position(|c| *c == place).is_some_and(|i| {
            let (before, after) = (all[(i + all.len() - 1) % all.len()], all[(i + 1) % all.len()]);
            let turn = (place - before).cross(after - place) as f64 / ((after - before).dot(after - before) as f64);
            turn.abs() > 1e-6
        })
    })
}

/// The same for one part; names of further parts stand in front of what is theirs.
fn survivors_of(whole: &Assembly, t: Length, part: usize) -> Vec<String> {
    let mm = Length::mm(1);
    let mut alive = Vec::new();
    let mut try_part = |name: String, changed: Part| {
        let mut wrong = whole.clone();
        wrong.parts[part] = changed;
        if faults(&wrong, t).is_empty() {
            alive.push(whole.face(part, &name));
        }
    };
    // Where card bends, its strips are as wrong as its panels.
    let moved = |to: &dyn Fn(Point) -> Point| {
        let mut changed = whole.parts[part].clone();
        changed.net = mapped(&changed.net, to);
        if let Some(strips) = &mut changed.strips {
            strips.net = mapped(&strips.net, to);
        }
        changed
    };
    let net = &whole.parts[part].net;
    for (i, pair) in net.lines.across.windows(2).enumerate() {
        let beyond = pair[0];
        let wider = moved(&|mut p| {
            p.x += if p.x > beyond { mm } else { Length::ZERO };
            p
        });
        try_part(format!("column {}", i + 1), wider);
    }
    for (i, pair) in net.lines.down.windows(2).enumerate() {
        let beyond = pair[0];
        let taller = moved(&|mut p| {
            p.y += if p.y > beyond { mm } else { Length::ZERO };
            p
        });
        try_part(format!("row {}", i + 1), taller);
    }
    // A place marked by hand a millimetre beside where it belongs.
    for (i, place) in Marks::of(net).places.into_iter().enumerate().filter(|(_, p)| counts(net, *p)) {
        for (way, x, y) in [("right", mm, Length::ZERO), ("down", Length::ZERO, mm)] {
            let beside = snugfold::measure::point::Vector::new(x, y);
            try_part(format!("mark {} {way}", i + 1), moved(&|p| if p == place { p + beside } else { p }));
        }
    }
    for (i, panel) in net.panels.iter().enumerate() {
        let b = panel.outline.bounds();
        for side in ["top", "right", "bottom", "left"] {
            let mut longer = net.clone();
            for p in &mut longer.panels[i].outline.corners {
                match side {
                    "top" if p.y == b.min.y => p.y -= mm,
                    "right" if p.x == b.max.x => p.x += mm,
                    "bottom" if p.y == b.max.y => p.y += mm,
                    "left" if p.x == b.min.x => p.x -= mm,
                    _ => {}
                }
            }
            let changed = Part { net: longer, ..whole.parts[part].clone() };
            try_part(format!("{} {side}", net.panel(PanelId(i)).name), changed);
        }
    }
    alive
}

/// A column or row is free where nothing else must equal it; these are, for the reasons given.
#[test]
fn a_millimetre_wrong_is_caught() {
    // A tab or tuck of any width does its work: its size is the maker's choice, within its range.
    assert_eq!(survivors(form("tuck-box")), ["column 5", "row 1"]);
    // The tab; and the first row begins with what lies round the lid.
    assert_eq!(survivors(form("triangle")), ["column 4", "row 1"]);
    assert_eq!(survivors(form("slice")), ["column 4", "row 1"]);
    // These lie at the left and top of a blank that may be larger: where no edge runs along its first column or row,
    // more of that is more of what lies round them.
    assert_eq!(survivors(form("prism")), ["column 1", "lid: column 1", "lid: row 1"]);
    assert_eq!(survivors(form("pyramid")), Vec::<String>::new());
    assert_eq!(survivors(form("frustum")), Vec::<String>::new());
    assert_eq!(survivors(form("favour")), ["column 1", "row 1"]);
    // The tab; and what is trimmed off above the petals.
    assert_eq!(survivors(form("petal-box")), ["column 5", "row 1"]);
    assert_eq!(survivors(form("carton")), ["column 5"]);
    assert_eq!(survivors(form("corner-box")), Vec::<String>::new());
    // A taller blank is more card round the same curves.
    assert_eq!(survivors(form("pillow")), ["row 1"]);
    assert_eq!(survivors(form("honeycomb")), Vec::<String>::new());
    assert_eq!(survivors(form("row-holder")), Vec::<String>::new());
    assert_eq!(survivors(form("lid-base")), Vec::<String>::new());
    assert_eq!(survivors(form("tray")), Vec::<String>::new());
    // A wider first column or row makes only the strip wider that comes off the free edge of an inner wall.
    assert_eq!(survivors(form("double-tray")), ["column 1", "row 1"]);
    assert_eq!(survivors(form("tuck-ends")), ["column 5", "row 1", "row 5"]);
    assert_eq!(survivors(form("bag")), ["column 7"]);
    // A wallet's tabs, and a flap that may end anywhere on the front.
    assert_eq!(survivors(form("wallet")), ["column 1", "column 5", "row 5"]);
    // The same for the sleeve's tab.
    assert_eq!(survivors(form("drawer")), ["sleeve: column 5"]);
    assert_eq!(survivors(form("set-tray")), Vec::<String>::new());
    assert_eq!(survivors(form("grid-holder")), Vec::<String>::new());
    assert_eq!(survivors(form("band")), ["column 5"]);
    // A front lip of any depth does its work. The first column and row begin with what is trimmed off: more of that
    // leaves every panel as it was.
    assert_eq!(survivors(form("hinged-box")), ["column 1", "row 1", "row 5"]);
    assert_eq!(survivors(form("tower")), ["column 5", "wrap: column 5"]);
    assert_eq!(survivors(form("carrier")), Vec::<String>::new());
    assert_eq!(survivors(form("book-cover")), Vec::<String>::new());
    // The flange is glued over as much as there is.
    assert_eq!(survivors(form("step-stand")), ["row 9"]);
    assert_eq!(survivors(form("layered-box")), Vec::<String>::new());
}

/// The proof of joins and seats sees what it is there for.
#[test]
fn a_bad_joint_is_caught() {
    let (whole, t) = typical(form("lid-base"));
    let caught = |wrong: &Assembly, fault: fn(&Fault) -> bool| faults(wrong, t).iter().any(fault);
    let mm = Length::mm(1);
    // A lid two millimetres narrower that promises what it has: only the clearance is wrong.
    let mut tight = whole.clone();
    let lid = &mut tight.parts[1];
    let beyond = lid.net.lines.across[1];
    lid.net = mapped(&lid.net, |mut p| {
        p.x -= if p.x > beyond { mm * 2 } else { Length::ZERO };
        p
    });
    (lid.inside, lid.outside) = (None, None);
    assert!(caught(&tight, |f| matches!(f, Fault::Clearance { .. })));

    let mut matted = whole;
    matted.parts[0].net.panels[1].mat = snugfold::net::flat::Matting::Usual;
    assert!(caught(&matted, |f| matches!(f, Fault::MatSlides { .. })));

    let (mut blocked, _) = typical(form("drawer"));
    blocked.joins[0].from = snugfold::assembly::parts::From::Above;
    assert!(caught(&blocked, |f| matches!(f, Fault::Blocked { .. })));

    let (mut shifted, _) = typical(form("set-tray"));
    shifted.seats[0].at.right += mm * 2;
    assert!(caught(&shifted, |f| matches!(f, Fault::Seat(_))));
}
