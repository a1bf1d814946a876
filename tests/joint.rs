//! A wrap in two pieces with a joint: the pieces are the one blank again, and fold and fit as it does.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use serde_json::json;
use snugfold::assembly::parts::Assembly;
use snugfold::fold::prove::{Fault, faults};
use snugfold::make::step::Action;
use snugfold::measure::area::Area;
use snugfold::measure::length::Length;
use snugfold::measure::outline::{Outline, Rect};
use snugfold::measure::point::Vector;
use snugfold::measure::system::System;
use snugfold::net::flat::{CreaseId, Duty, Net, Taken, Waste};
use snugfold::plan::{Plan, plan};
use snugfold::project::finding::{Weight, What};
use snugfold::project::request::Project;

fn project(form: &str, sizes: [i64; 3], sheet: [i64; 2], blank: &str) -> Project {
    let mm = |l: i64| format!("{l} mm");
    let [width, depth, height] = sizes.map(mm);
    serde_json::from_value(json!({
        "system": "metric",
        "cards": [{ "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": mm(sheet[0]), "sheet_height": mm(sheet[1]) }],
        "boxes": [{ "id": 1, "form": form, "card": 1, "count": 2, "blank": blank,
            "inputs": { "width": width, "depth": depth, "height": height } }],
        "holder": { "form": "row-holder", "card": 1 }
    }))
    .expect("it is a project")
}

fn joined(plan: &Plan) -> Option<(&Net, &[Net; 2], CreaseId)> {
    let part = &plan.boxes[0];
    let joint = &part.joined(0)?.joint;
    Some((&part.assembly.as_ref()?.parts[0].net, &joint.halves, joint.crease))
}

fn forms() -> impl Strategy<Value = &'static str> {
    prop::sample::select(vec!["tuck-box", "tuck-ends"])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, ..ProptestConfig::default() })]

    #[test]
    fn two_pieces_are_the_one_blank_again(
        form in forms(), w in 20_i64..=160, d in 20_i64..=160, h in 30_i64..=200, inch in any::<bool>(),
    ) {
        let system = if inch { System::Inch } else { System::Metric };
        let plan = plan(&project(form, [w, d, h], [1_200, 1_200], "joined"), system);
        prop_assume!(!plan.stopped());
        let (whole, halves, crease) = joined(&plan).expect("it is a wrap");
        let at = whole.creases[crease.0].from.x;
        let mut panels = Vec::new();
        for (half, way) in halves.iter().zip([Length::ZERO, at]) {
            // Nothing is lost or counted twice.
            prop_assert_eq!(half.accounted(), half.blank.area());
            for p in half.panels.iter().filter(|p| p.name != "joint tab") {
                panels.push((p.name, p.outline.moved(Vector::new(way, Length::ZERO)), p.duty));
            }
        }
        let mut expected: Vec<(&str, Outline, Duty)> =
            whole.panels.iter().map(|p| (p.name, p.outline.clone(), p.duty)).collect();
        panels.sort_by_key(|p| p.0);
        expected.sort_by_key(|p| p.0);
        prop_assert_eq!(panels, expected);
        prop_assert_eq!(halves[0].creases.len() + halves[1].creases.len(), whole.creases.len());

        // The tab lies behind the first wall of the right piece, and nowhere else.
        let tab = halves[0].panels.iter().find(|p| p.name == "joint tab").expect("it has one");
        let wall = &halves[1].panels.iter().find(|p| p.cell.min.x == Length::ZERO && p.duty == Duty::Wall);
        let wall = wall.expect("a wall begins there").cell;
        prop_assert!(tab.cell.width() < wall.width());
        prop_assert_eq!((tab.cell.min.y, tab.cell.max.y), (wall.min.y, wall.max.y));
        prop_assert!(halves.iter().all(|half| half.blank.width() < whole.blank.width()));
    }

    /// With the tab behind that wall, the box folds as it did, nothing crosses, and inside and outside are as promised.
    #[test]
    fn it_folds_with_the_second_tab(form in forms(), w in 30_i64..=120, d in 30_i64..=120, h in 40_i64..=160) {
        let plan = plan(&project(form, [w, d, h], [1_200, 1_200], "joined"), System::Metric);
        prop_assume!(!plan.stopped());
        let assembly = plan.boxes[0].assembly.as_ref().expect("it is planned");
        let (whole, halves, crease) = joined(&plan).expect("it is a wrap");
        prop_assert_eq!(faults(assembly, plan.boxes[0].thickness), vec![]);
        let mut with: Assembly = assembly.clone();
        let net = &mut with.parts[0].net;
        let tab = halves[0].panels.iter().find(|p| p.name == "joint tab").expect("it has one").clone();
        let near = halves[0].creases.iter().find(|c| halves[0].panels[c.far.0].name == "joint tab").expect("it hangs");
        let near = whole.named(halves[0].panels[near.near.0].name).expect("it is there");
        // The blank is as much wider as the flat tab would lie on the wall, so that all else is proved.
        let at = whole.creases[crease.0].from.x;
        net.blank.max.x += tab.cell.width();
        let beside = halves[0].waste.iter().filter(|w| w.outline.bounds().min.x >= at);
        net.waste.extend(beside.map(|w| Waste { from: None, ..w.clone() }));
        net.panels.push(tab);
        let far = snugfold::net::flat::PanelId(net.panels.len() - 1);
        let score = whole.creases[crease.0].clone();
        net.creases.push(snugfold::net::flat::Crease { near, far, ..score });
        let moved = CreaseId(net.creases.len() - 1);
        for m in &mut with.parts[0].moves {
            if let snugfold::assembly::moves::Way::Even(all) = &mut m.way
                && all.contains(&crease)
            {
                all.push(moved);
            }
        }
        prop_assert_eq!(faults(&with, plan.boxes[0].thickness), vec![]);
        // A tab that is longer than the wall it hides behind goes through the next one: that is seen.
        let onto = plan.boxes[0].joined(0).expect("it is joined").joint.onto;
        let wide = whole.panel(onto).cell.width() + Length::mm(20);
        let net = &mut with.parts[0].net;
        let tab = net.panels.last_mut().expect("it was put there");
        let Rect { min, max } = tab.cell;
        let long = Rect::between(min.x, min.y, min.x + wide, max.y);
        // Without its wedges, and the blank as much larger as it is.
                tab.outline = long.outline();
        net.waste.retain(|w| w.taken != Taken::Wedge || w.from.is_some());
        let above = Rect::between(min.x, Length::ZERO, min.x + wide - (max.x - min.x), net.blank.height() - max.y + min.y);
        net.blank.max.x += above.width();
        net.waste.push(Waste { outline: above.outline(), taken: Taken::Cell, from: None });
        let found = faults(&with, plan.boxes[0].thickness);
        prop_assert!(!found.is_empty() && !found.contains(&Fault::AreaLost), "{:?}", found);
    }
}

/// A box of 90 × 70 × 110 mm is wrapped in 2 × (90 + 70) + 12 = 332 mm: more than A4 is long.
#[test]
fn the_cure_is_said_and_does() {
    let sizes = [90, 70, 110];
    let whole = plan(&project("tuck-box", sizes, [297, 420], "whole"), System::Metric);
    assert!(whole.findings.iter().all(|f| f.what != What::FitsJoined), "A3 holds it: {:?}", whole.findings);
    let short = [270, 270];
    let whole = plan(&project("tuck-box", sizes, short, "whole"), System::Metric);
    assert!(whole.findings.iter().any(|f| matches!(f.what, What::PieceTooLarge { .. })), "{:?}", whole.findings);
    assert!(whole.findings.iter().any(|f| f.what == What::FitsJoined), "{:?}", whole.findings);
    let joined = plan(&project("tuck-box", sizes, short, "joined"), System::Metric);
    let of_box = |f: &&snugfold::project::finding::Finding| {
        f.weight == Weight::Stop && matches!(&f.what, What::PieceTooLarge { piece, .. } if piece == "A" || piece == "B")
    };
    assert!(joined.findings.iter().find(of_box).is_none(), "{:?}", joined.findings);
    // Each piece is scored by itself, then they are glued, then folded.
    let steps: Vec<_> = joined.steps.iter().filter(|s| s.place == joined.boxes[0].place).collect();
    let glued = steps.iter().position(|s| s.action == Action::GlueJoint).expect("they are glued");
    assert!(steps[..glued].iter().all(|s| s.half.is_some()) && steps[glued..].iter().all(|s| s.half.is_none()));
    let scored = |half| steps[..glued].iter().any(|s| s.half == Some(half) && matches!(s.action, Action::Score(_)));
    assert!(scored(0) && scored(1));
    let area = |p: &Plan| -> Area {
        p.pieces.iter().filter(|x| x.place == p.boxes[0].place).map(|x| Area::of(x.width, x.height)).sum()
    };
    assert!(area(&joined) > area(&whole));
}

/// A tray has nothing to part; the finding says so, and it is cut in one piece.
#[test]
fn what_is_no_wrap_is_left_whole() {
    let plan = plan(&project("tray", [90, 70, 40], [400, 400], "joined"), System::Metric);
    assert!(plan.findings.iter().any(|f| f.what == What::NoJoint));
    assert!(joined(&plan).is_none());
}
