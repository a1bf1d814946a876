//! Boxes that follow their gifts: sizes of standards, ties, wishes that contradict each other, bad input.
#![cfg(not(target_arch = "wasm32"))]

use serde_json::{Value, json};
use snugfold::assembly::parts::Size;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan};
use snugfold::project::finding::{Weight, What};
use snugfold::project::request::Project;

/// A box with `gifts`, and `inputs`, beside a box 100 mm high.
fn asked(gifts: &Value, inputs: &Value) -> Project {
    serde_json::from_value(json!({
        "system": "metric",
        "cards": [{ "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "500 mm", "sheet_height": "700 mm" }],
        "boxes": [
            { "id": 1, "form": "tuck-box", "card": 1, "gifts": { "kinds": gifts }, "inputs": inputs },
            { "id": 2, "form": "tuck-box", "card": 1, "inputs": { "height": "100 mm" } }
        ]
    }))
    .expect("it is a project")
}

fn planned(gifts: &Value, system: System) -> Plan {
    plan(&asked(gifts, &json!({})), system)
}

fn inside(plan: &Plan) -> Size {
    plan.boxes[0].assembly.as_ref().unwrap_or_else(|| panic!("{:?}", plan.findings)).inside
}

fn block(w: &str, d: &str, h: &str) -> Value {
    json!([{ "shape": { "block": { "width": w, "depth": d, "height": h } } }])
}

/// Sides from the smallest.
fn sorted(size: Size) -> [Length; 3] {
    let mut all = [size.width, size.depth, size.height];
    all.sort();
    all
}

/// The inside has the room asked for and less than a groove (and what the form must have at least) more.
#[test]
fn standard_things_go_in_and_no_box_is_a_groove_too_large() {
    let um = Length::um;
    let cases = [
        // ISO/IEC 7810 ID-1: 85.60 × 53.98 × 0.76 mm.
        (block("85.60 mm", "53.98 mm", "0.76 mm"), [760, 53_980, 85_600]),
        // ECMA-130: a disc 120 mm across; 1.2 mm thick from memory.
        (json!([{ "shape": { "cylinder": { "across": "120 mm", "height": "1.2 mm" } } }]), [1_200, 120_000, 120_000]),
        // IEC 60086-2 R6: at most 14.5 mm across and 50.5 mm high.
        (json!([{ "shape": { "cylinder": { "across": "14.5 mm", "height": "50.5 mm" } } }]), [14_500, 14_500, 50_500]),
        // ISO 216 A6, as a card 2 mm thick.
        (block("148 mm", "105 mm", "2 mm"), [2_000, 105_000, 148_000]),
        // ISO 269 DL, as an envelope 2 mm thick.
        (block("220 mm", "110 mm", "2 mm"), [2_000, 110_000, 220_000]),
    ];
    for (gift, sides) in cases {
        for (system, room, groove) in
            [(System::Metric, Length::mm(3), Length::MM), (System::Inch, Length::inches(1, 8), Length::inches(1, 8))]
        {
            let found = sorted(inside(&planned(&gift, system)));
            for (is, side) in found.into_iter().zip(sides) {
                // The least of the form's three sizes, its depth, is 8 mm; its others are 15 mm.
                let least = (um(side) + room).max(if side == sides[0] { Length::mm(8) } else { Length::mm(15) });
                assert!(is >= least && is < least + groove, "{gift} {system:?}: {is:?} for {least:?}");
            }
        }
    }
}

/// Of the turns with the same volume the one as high as the other box wins: 95 mm inside comes to 96 mm finished beside
/// 100 mm; the other turns would be 33 or 53 mm high inside.
#[test]
fn ties_go_to_the_height_of_the_other_box() {
    let found = inside(&planned(&block("30 mm", "92 mm", "50 mm"), System::Metric));
    assert!(found.height >= Length::mm(95) && found.height < Length::mm(96), "{found:?}");
    let upright = json!([{ "turns": "upright",
        "shape": { "block": { "width": "30 mm", "depth": "92 mm", "height": "50 mm" } } }]);
    let found = inside(&planned(&upright, System::Metric));
    assert!(found.height >= Length::mm(53) && found.height < Length::mm(54), "{found:?}");
}

#[test]
fn what_is_soft_or_wrapped_has_the_larger_room() {
    let wrapped = json!([{ "wrap": "wrapped",
        "shape": { "block": { "width": "40 mm", "depth": "40 mm", "height": "40 mm" } } }]);
    let found = inside(&planned(&wrapped, System::Metric));
    assert!(sorted(found)[0] >= Length::mm(46) && sorted(found)[2] < Length::mm(47), "{found:?}");
}

fn says(plan: &Plan, weight: Weight, what: fn(&What) -> bool) {
    assert!(plan.findings.iter().any(|f| f.weight == weight && what(&f.what)), "{:?}", plan.findings);
}

#[test]
fn typed_sizes_stay_and_the_contradiction_is_said() {
    let gift = block("40 mm", "40 mm", "40 mm");
    for (typed, weight) in [("60 mm", Weight::Note), ("30 mm", Weight::Caution)] {
        let inputs = json!({ "width": typed, "depth": typed, "height": typed });
        let plan = plan(&asked(&gift, &inputs), System::Metric);
        let finished = plan.boxes[0].assembly.as_ref().expect("it is planned").finished;
        let side = if weight == Weight::Note { Length::mm(60) } else { Length::mm(30) };
        assert_eq!(sorted(finished), [side; 3]);
        let what = |w: &What| matches!(w, What::SizesTypedToo { .. } | What::GiftsDoNotFit { .. });
        says(&plan, weight, what);
    }
}

#[test]
fn bad_gifts_are_found_and_nothing_is_made_of_them() {
    let outside = |w: &What| matches!(w, What::LengthOutside { .. });
    for typed in ["0 mm", "-5 mm", "5000 mm"] {
        let plan = planned(&block(typed, "40 mm", "40 mm"), System::Metric);
        says(&plan, Weight::Stop, outside);
        assert!(plan.boxes[0].assembly.is_none());
    }
    // Larger than any sheet and any form.
    says(&planned(&block("900 mm", "900 mm", "900 mm"), System::Metric), Weight::Stop, |w| {
        matches!(w, What::GiftsTooLarge { .. })
    });
    let many = |count: u32| json!([{ "count": count, "shape": { "block": { "width": "20 mm", "depth": "20 mm", "height": "20 mm" } } }]);
    says(&planned(&many(51), System::Metric), Weight::Stop, |w| matches!(w, What::TooManyGifts { .. }));
    says(&planned(&many(0), System::Metric), Weight::Stop, |w| matches!(w, What::CountOutside { .. }));
    assert!(planned(&many(50), System::Metric).boxes[0].assembly.is_some());
}

/// A jar of 80 mm across: the walls carry 331 g by the sum beside `strength::carries`, less where the box lies with a side of 120 mm.
#[test]
fn heavy_gifts_are_cautioned_about() {
    let jar = |grams: u32| {
        let shape = json!({ "block": { "width": "80 mm", "depth": "80 mm", "height": "120 mm" } });
        planned(&json!([{ "grams": grams, "shape": shape }]), System::Metric)
    };
    says(&jar(500), Weight::Caution, |w| matches!(w, What::WallsBuckle { carries: 250..331, grams: 500 }));
    says(&jar(500), Weight::Caution, |w| matches!(w, What::BaseSags { .. }));
    let light = jar(30);
    assert!(light.findings.iter().all(|f| f.weight != Weight::Caution), "{:?}", light.findings);
}

/// Every box takes its size from what goes in, those off the grid by trial: the gifts go in with their room, and not one
/// of the sizes tried could be a groove smaller.
#[test]
fn every_box_follows_its_gifts() {
    use snugfold::fit::grown::SIZES;
    use snugfold::form::registry::{FORMS, Holds};
    let gift = block("60 mm", "40 mm", "25 mm");
    for form in FORMS.iter().filter(|f| f.holds == Holds::Gifts) {
        let of = |inputs: Value| {
            let mut project = asked(&gift, &inputs);
            form.key.clone_into(&mut project.boxes[0].form);
            plan(&project, System::Metric)
        };
        let made = of(json!({}));
        let inside = inside(&made);
        for (is, needed) in sorted(inside).into_iter().zip([28, 43, 63]) {
            assert!(is >= Length::mm(needed), "{}: {inside:?}", form.key);
        }
        let by_trial = form.inputs.iter().all(|i| i.key != "depth") || form.inputs.iter().all(|i| i.key != "size");
        for input in form.inputs.iter().filter(|i| by_trial && SIZES.contains(&i.key)) {
            let at = |key: &str| made.boxes[0].used.get(key).copied().expect("it was used");
            let mut sizes = serde_json::Map::new();
            for other in form.inputs.iter().filter(|i| SIZES.contains(&i.key)) {
                let less = if other.key == input.key { Length::mm(5) } else { Length::ZERO };
                sizes.insert(other.key.to_owned(), json!(format!("{} mm", (at(other.key) - less).as_mm())));
            }
            let smaller = of(Value::Object(sizes));
            let goes = smaller.findings.iter().any(|f| matches!(f.what, What::SizesTypedToo(_)));
            assert!(!goes, "{}: {} could be smaller: {inside:?}", form.key, input.key);
        }
    }
}
