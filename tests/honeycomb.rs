//! A honeycomb of six-sided boxes: how many, of which kind, and how long the sleeve round them is.
#![cfg(not(target_arch = "wasm32"))]

use serde_json::json;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan};
use snugfold::project::finding::What;
use snugfold::project::request::Project;

fn planned(boxes: serde_json::Value) -> Plan {
    let card = json!({ "id": 1, "grammage": 240, "sheet_width": "1400 mm", "sheet_height": "1000 mm" });
    let project = json!({ "cards": [card], "boxes": boxes, "holder": { "form": "honeycomb", "card": 1 } });
    let project: Project = serde_json::from_value(project).expect("it is a project");
    plan(&project, System::Metric)
}

fn prisms(sides: &str, count: u32) -> serde_json::Value {
    json!([{ "id": 1, "form": "prism", "card": 1, "count": count, "inputs": { "sides": sides } }])
}

/// The sleeve is as long as the line round the boxes: six sides of a cell, and for each side of what joins the outer
/// middles one more between neighbours: 2, 3, 4, 5, 5 + 1 and 6 of them.
#[test]
fn two_to_seven_boxes_stand_in_it() {
    for (count, between) in [(2, 2), (3, 3), (4, 4), (5, 5), (6, 6), (7, 6)] {
        let plan = planned(prisms("six", count));
        let holder = plan.holder.as_ref().and_then(|h| h.assembly.as_ref()).expect("it is planned");
        assert_eq!(holder.seats.len(), count as usize);
        let net = &holder.parts[0].net;
        let wide = |name: &str| net.panel(net.named(name).expect("it is there")).outline.bounds().width();
        let (side, apart) = (wide("front"), plan.boxes[0].outside.depth);
        let round: Length =
            net.panels.iter().filter(|p| p.name != "glue tab").map(|p| p.outline.bounds().width()).sum();
        let rest = round - side * 6;
        // Neighbours stand as far apart as a box is deep, moved up to the next half millimetre.
        assert!(rest >= apart * between && rest < (apart + Length::um(500)) * between, "{count}: {rest:?}");
    }
}

#[test]
fn what_cannot_stand_in_it_is_said() {
    let said = |boxes| planned(boxes).findings.into_iter().map(|f| f.what).collect::<Vec<_>>();
    assert!(said(prisms("five", 3)).contains(&What::NotSixSided));
    assert!(said(json!([{ "id": 1, "form": "tuck-box", "card": 1, "count": 3 }])).contains(&What::NotSixSided));
    let turned = json!([{ "id": 1, "form": "prism", "card": 1, "count": 3, "facing": "lid" }]);
    assert!(said(turned).contains(&What::NotSixSided), "lying down it covers something else");
    assert!(said(prisms("six", 1)).contains(&What::BoxesOutside { is: 1, most: 7 }));
    assert!(said(prisms("six", 8)).contains(&What::BoxesOutside { is: 8, most: 7 }));
}
