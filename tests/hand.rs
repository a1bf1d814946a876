//! What the maker measures and tells of card and hand: a stack of sheets, errors, and what a first make taught.
#![cfg(not(target_arch = "wasm32"))]

use serde_json::{Value, json};
use snugfold::fit::lesson::{Heard, learned, lesson};
use snugfold::fit::odds::Accuracy;
use snugfold::make::slides::odds;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan};
use snugfold::project::finding::{Weight, What};
use snugfold::project::request::Project;

/// Three boxes in a row, from a card with `more` said of it.
fn asked(more: &Value, trimmer: &Value) -> Project {
    let mut card =
        json!({ "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "500 mm", "sheet_height": "700 mm" });
    for (key, value) in more.as_object().expect("it is an object") {
        card[key] = value.clone();
    }
    serde_json::from_value(json!({
        "system": "metric", "cards": [card], "trimmer": trimmer,
        "boxes": [{ "id": 1, "form": "tuck-box", "card": 1, "count": 3,
            "inputs": { "width": "60 mm", "depth": "30 mm", "height": "90 mm" } }],
        "holder": { "form": "row-holder", "card": 1 }
    }))
    .expect("it is a project")
}

fn planned(more: &Value) -> Plan {
    plan(&asked(more, &json!({})), System::Metric)
}

fn inside(plan: &Plan) -> Length {
    let holder = plan.holder.as_ref().and_then(|h| h.assembly.as_ref());
    holder.unwrap_or_else(|| panic!("{:?}", plan.findings)).inside.width
}

#[test]
fn a_stack_is_shared_out_over_its_sheets() {
    let one = planned(&json!({}));
    let ten = planned(&json!({ "thickness": "3 mm", "stack": 10 }));
    assert_eq!(one.boxes[0].thickness, ten.boxes[0].thickness);
    assert_eq!(inside(&one), inside(&ten));
    let none = planned(&json!({ "stack": 0 }));
    assert!(
        none.findings.iter().any(|f| f.input == Some("stack") && matches!(f.what, What::CountOutside { is: 0, .. }))
    );
    // A stack typed as one sheet is thicker than any card.
    let forgotten = planned(&json!({ "thickness": "3 mm" }));
    assert!(forgotten.findings.iter().any(|f| f.input == Some("thickness") && f.weight == Weight::Stop));
}

#[test]
fn a_lesson_moves_the_clearance_and_forgetting_moves_it_back() {
    let now = inside(&planned(&json!({})));
    for um in [-3_000, -1_200, 1_000, 2_300] {
        let learned = Length::um(um);
        let kept = lesson(learned, System::Metric).expect("it is one");
        assert_eq!(kept.wider(), learned);
        let after = inside(&planned(&json!({ "lesson": kept })));
        // Down to the tightest press fit, 0.5 mm under nothing. Grooves are 1 mm apart: what was asked for is met, and
        // less than a groove more.
        let learned = learned.max(Length::um(-2_000));
        assert!(after >= now + learned - Length::MM && after < now + learned + Length::MM, "{um}: {now:?} {after:?}");
    }
    assert_eq!(lesson(Length::ZERO, System::Metric), None);
    let far = planned(&json!({ "lesson": { "wider": "4 mm" } }));
    assert!(far.findings.iter().any(|f| f.input == Some("lesson") && f.weight == Weight::Stop));
}

#[test]
fn what_is_felt_adds_up_and_what_is_measured_stands_alone() {
    for system in System::ALL {
        let once = learned(Length::ZERO, Heard::Tight, system);
        assert_eq!(learned(once, Heard::Tight, system), once * 2);
        assert_eq!(learned(once, Heard::Loose, system), Length::ZERO);
        let measured = Heard::Measured { planned: Length::mm(2), gap: Length::mm(1) };
        assert_eq!(learned(once, measured, system), Length::MM);
        let mut most = Length::ZERO;
        for _ in 0..20 {
            most = learned(most, Heard::Loose, system);
        }
        assert_eq!(most, -Length::mm(3));
    }
}

#[test]
fn a_less_steady_hand_is_less_sure() {
    let sure = |trimmer: &Value| {
        let project = asked(&json!({}), trimmer);
        let plan = plan(&project, System::Metric);
        let hand = Accuracy::of(&project.trimmer, System::Metric);
        odds(&plan.boxes, plan.holder.as_ref().expect("a holder"), System::Metric, &hand).expect("planned").per_mille
    };
    let usual = sure(&json!({}));
    assert_eq!(usual, sure(&json!({ "score_error": "0.4 mm", "cut_error": "0.5 mm" })));
    assert!(sure(&json!({ "score_error": "0.2 mm" })) > usual || usual == 1_000);
    assert!(sure(&json!({ "score_error": "0.8 mm" })) < usual);
    assert!(sure(&json!({ "cut_error": "1.5 mm" })) < usual);
}
