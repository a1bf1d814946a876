//! Worked examples that others have published, and rules of thumb of the trade, against what is planned.
#![cfg(not(target_arch = "wasm32"))]

use serde_json::{Value, json};
use snugfold::allow::Layers;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::net::recipe::Recipe;
use snugfold::plan::{Plan, plan};
use snugfold::project::bound;
use snugfold::project::request::Project;

/// A set of `boxes` in `holder`, in metric card of thickness `um`, on a board of half millimetres or sixteenths.
fn planned(boxes: &Value, holder: &Value, um: i64, system: System) -> Plan {
    let thickness = format!("{}.{:03} mm", um / 1_000, um % 1_000);
    let mut project = json!({
        "cards": [{ "id": 1, "grammage": 270, "thickness": thickness, "sheet_width": "1500 mm", "sheet_height": "1500 mm" }],
        "board": { "metric_step": "0.5 mm", "inch_step": "1/16 in" },
        "boxes": boxes
    });
    if !holder.is_null() {
        project["holder"] = holder.clone();
    }
    let project: Project = serde_json::from_value(project).expect("it is a project");
    let plan = plan(&project, system);
    assert!(!plan.stopped(), "{:?}", plan.findings);
    plan
}

fn one(form: &str, inputs: Value, um: i64, system: System) -> Plan {
    planned(&json!([{ "id": 1, "form": form, "card": 1, "inputs": inputs }]), &Value::Null, um, system)
}

fn recipes(plan: &Plan) -> &[Recipe] {
    &plan.boxes[0].recipes
}

/// Outside 400 × 260 × 260 mm from board of 7 mm is scored 393 × 253 × 253 (box-maker articles naliyin.com 12810 and
/// zxpkg.com 1287, which also say that thick corrugated board comes out 5 mm short of it: the rule's limit).
#[test]
fn the_simple_rule() {
    for (outside, score) in [(400, 393), (260, 253)] {
        assert_eq!(Layers::WALLS.outside(Length::mm(score), Length::mm(7)), Length::mm(outside));
    }
}

/// 12 × 9 × 6 in score to score with allowances of 3/16, 3/16 and 3/8 in is 11 13/16 × 8 13/16 × 5 5/8 in inside
/// (allowances from packageit.com, box 101): a depth closed by flaps at both ends loses twice as much.
#[test]
fn a_closed_depth_loses_twice_as_much() {
    let t = Length::inches(3, 16);
    let inside = |layers: Layers, n| layers.inside(Length::inches(n, 1), t);
    assert_eq!(inside(Layers::WALLS, 12), Length::inches(189, 16));
    assert_eq!(inside(Layers::WALLS, 9), Length::inches(141, 16));
    assert_eq!(inside(Layers::DOUBLE_ENDS, 6), Length::inches(45, 8));
}

/// A base of 4 1/2 × 5 3/4 × 1 in is cut 6 1/2 × 7 3/4 in and scored at 1 in on all sides
/// (cathyscraftroom.blogspot.com, 2010-02-11).
#[test]
fn a_tray_of_a_craft_page() {
    let plan = one("tray", json!({ "width": "5 3/4 in", "depth": "4 1/2 in", "height": "1 in" }), 300, System::Inch);
    let recipe = &recipes(&plan)[0];
    assert_eq!((recipe.width, recipe.height), (Length::inches(31, 4), Length::inches(13, 2)));
    assert_eq!(recipe.scores[0].at, [Length::inches(1, 1), Length::inches(27, 4)]);
    assert_eq!(recipe.scores[1].at, [Length::inches(1, 1), Length::inches(11, 2)]);
}

/// A bag of 200 × 80 × 250 mm is 2 (200 + 80) + 20 = 580 mm by 50 + 250 + 40 + 10 = 350 mm flat
/// (gawangmachine.com 1580: side seam 20 mm, top fold 50 mm, half the depth and 10 mm below).
#[test]
fn a_bag_of_a_machine_maker() {
    let inputs =
        json!({ "width": "200 mm", "depth": "80 mm", "height": "250 mm", "tab": "20 mm", "hem-height": "50 mm" });
    let plan = one("bag", inputs, 120, System::Metric);
    let recipe = &recipes(&plan)[0];
    assert_eq!((recipe.width, recipe.height), (Length::mm(580), Length::mm(350)));
}

/// Inside = n X + d (n − 1) + k: X a carton's outside, d between two of them, k over all (a course on carton design,
/// renrendoc.com 200156629). Here k is the clearance, and d a divider or nothing. What is over is the next groove.
#[test]
fn the_carrier_formula() {
    let inputs = json!({ "width": "60 mm", "depth": "40 mm", "height": "90 mm" });
    for k in [3, 4, 5] {
        for n in [2_i64, 4, 6] {
            let boxes = json!([{ "id": 1, "form": "tuck-box", "card": 1, "count": n, "inputs": inputs }]);
            let clearance = format!("{k} mm");
            let holder = json!({ "form": "row-holder", "card": 1, "inputs": { "clearance": clearance } });
            let plan = planned(&boxes, &holder, 300, System::Metric);
            let holder = plan.holder.as_ref().and_then(|h| h.assembly.as_ref()).expect("it is planned");
            let formula = plan.boxes[0].outside.width * n + Length::mm(k);
            let over = holder.inside.width - formula;
            assert!(over >= Length::ZERO && over < Length::um(500), "{n} {k}: {over:?}");
        }
    }
}

/// Rules of thumb of independent makers: a lid larger by 1/16 to 1/8 in or 2.5 mm at the same score depth, or by up to
/// 1/4 in; a sleeve with 1.5 to 2 mm; a border of 1/8 in or 3 mm round a mat (common practice, no source).
#[test]
fn usual_values_lie_where_makers_have_them() {
    let size = |system| match system {
        System::Inch => json!({ "width": "4 in", "depth": "3 in", "height": "2 in" }),
        System::Metric => json!({ "width": "100 mm", "depth": "75 mm", "height": "50 mm" }),
    };
    for system in System::ALL {
        for um in [250, 300, 350] {
            let lid = one("lid-base", size(system), um, system);
            let assembly = lid.boxes[0].assembly.as_ref().expect("it is planned");
            let floor = |part: usize| assembly.parts[part].net.panels[0].cell;
            let wider = [floor(1).width() - floor(0).width(), floor(1).height() - floor(0).height()];
            let (least, most) = (Length::inches(1, 16), Length::inches(1, 8));
            assert!(wider.iter().all(|w| *w >= least && *w <= most), "{system:?} {um}: {wider:?}");

            let drawer = one("drawer", size(system), um, system);
            let assembly = drawer.boxes[0].assembly.as_ref().expect("it is planned");
            let drawer = assembly.parts[0].outside.expect("it is measured");
            let sleeve = assembly.parts[1].inside.expect("it is measured");
            // A sleeve is scored on grooves, so up to one more; beside a tab glued into it there is a layer less.
            let groove = if system == System::Inch { Length::inches(1, 16) } else { Length::um(500) };
            for free in [sleeve.width - drawer.width, sleeve.height - drawer.height] {
                let (least, most) = (Length::um(1_500), Length::um(2_000) + groove + Length::um(um));
                assert!(free >= least && free <= most, "{system:?} {um}: {free:?}");
            }
        }
        let reveal = bound::DEFAULT_REVEAL.of(system);
        assert!(reveal == Length::inches(1, 8) || reveal == Length::mm(3), "{reveal:?}");
    }
}
