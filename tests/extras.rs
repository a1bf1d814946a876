//! What is added to a box: it lies where it is said to lie, it is cut, it counts in the fit, and what cannot be is said.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::likely_project;
use common::tries;
use geo::Contains as _;
use proptest::prelude::*;
use snugfold::assembly::parts::Size;
use snugfold::make::extras::{Laid, Made, faces};
use snugfold::make::layers::{DEEP, MOST, thickest};
use snugfold::make::part::Planned;
use snugfold::make::pieces::Becomes;
use snugfold::make::step::Action;
use snugfold::measure::length::Length;
use snugfold::measure::outline::Outline;
use snugfold::measure::system::System;
use snugfold::net::flat::Matting;
use snugfold::plan::{Plan, plan};
use snugfold::project::bound;
use snugfold::project::extra::{Extra, ExtraKind};
use snugfold::project::finding::{Place, What};
use snugfold::project::request::Project;

/// One box of 80 × 60 × 120 mm with mats, and what is added to it.
fn project(extras: &str, mats: &str) -> Project {
    let text = format!(
        r##"{{
            "system": "metric",
            "cards": [
                {{"id": 1, "grammage": 240, "thickness": "0.3 mm", "sheet_width": "500 mm", "sheet_height": "700 mm"}},
                {{"id": 2, "grammage": 120, "thickness": "0.2 mm", "sheet_width": "305 mm", "sheet_height": "305 mm"}}
            ],
            "boxes": [{{
                "id": 1, "form": "tuck-ends", "card": 1, {mats}
                "inputs": {{"width": "80 mm", "depth": "60 mm", "height": "120 mm"}},
                "extras": [{extras}]
            }}]
        }}"##
    );
    serde_json::from_str(&text).expect("it is a design")
}

const MATS: &str = r#""mats": {"card": 2, "reveal": "3 mm"},"#;

fn planned(extras: &str) -> Plan {
    plan(&project(extras, MATS), System::Metric)
}

fn said(plan: &Plan) -> Vec<&What> {
    plan.findings.iter().filter(|f| f.input == Some("extras")).map(|f| &f.what).collect()
}

fn mm(n: i64) -> Length {
    Length::mm(n)
}

#[test]
fn a_window_and_its_pane() {
    let plan = planned(r#"{"kind": "window", "face": "back", "width": "40 mm", "height": "60 mm", "card": 2}"#);
    let Made::Window { pane, rect, on } = &plan.boxes[0].extras[0] else { panic!("it is a window") };
    let cell = plan.boxes[0].assembly.as_ref().expect("planned").parts[on.0].net.panel(on.1).cell;
    // By hand: (80 − 40) / 2 and (120 − 60) / 2 from the scores.
    assert_eq!((rect.min.x - cell.min.x, cell.max.x - rect.max.x), (mm(20), mm(20)));
    assert_eq!((rect.min.y - cell.min.y, cell.max.y - rect.max.y), (mm(30), mm(30)));
    // A lap of 6 mm all round.
    assert_eq!(*pane, Some((2, [mm(52), mm(72)])));
    let pieces: Vec<_> = plan.pieces.iter().filter(|p| matches!(p.becomes, Becomes::Extra(..))).collect();
    assert_eq!((pieces.len(), pieces[0].card, pieces[0].width, pieces[0].height), (1, 2, mm(52), mm(72)));
    assert!(plan.steps.iter().any(|s| matches!(&s.action, Action::Extra { made: Made::Window { .. }, .. })));
    assert!(said(&plan).is_empty(), "{:?}", said(&plan));
}

/// The front is trimmed 1 mm at both ends; with a notch of 10 mm radius 118 − 2 × (8 + 10) mm are left of its height.
#[test]
fn a_window_stays_off_the_thumb_notch() {
    let mut project = project(r#"{"kind": "window", "height": "82 mm"}"#, MATS);
    project.boxes[0].inputs.insert("notch".to_owned(), serde_json::from_str(r#""yes""#).expect("a word"));
    project.boxes[0].inputs.insert("notch-radius".to_owned(), serde_json::from_str(r#""10 mm""#).expect("a length"));
    let fits = plan(&project, System::Metric);
    assert_eq!(said(&fits), [] as [&What; 0]);
    assert!(is_well_placed(&fits.boxes[0]).is_ok());
    project.boxes[0].extras[0].height = serde_json::from_str(r#""83 mm""#).ok();
    let none = plan(&project, System::Metric);
    assert_eq!(said(&none), [&What::ExtraTooLarge([mm(64), mm(82)])]);
}

#[test]
fn layers_and_labels_count_in_what_a_box_takes_up() {
    let outside = |extras: &str| planned(extras).boxes[0].outside;
    let bare = outside("");
    let um = Length::um;
    // A second layer of 0.3 mm on all six faces: front and back, left and right, both lids.
    let layered = outside(r#"{"kind": "layer", "card": 1}"#);
    assert_eq!(layered, bare + Size { width: um(600), depth: um(600), height: um(600) });
    let labelled = outside(r#"{"kind": "label", "face": "front", "card": 2}"#);
    assert_eq!(labelled, bare + Size { depth: um(200), ..Size::default() });
    // What goes through the card adds nothing.
    assert_eq!(outside(r#"{"kind": "window"}, {"kind": "ribbon-holes"}, {"kind": "tag"}, {"kind": "liner"}"#), bare);
}

#[test]
fn second_layers_show_an_even_border() {
    let plan = planned(r#"{"kind": "layer", "width": "5 mm", "card": 1}"#);
    let part = &plan.boxes[0];
    let Made::Layer { on, border, .. } = &part.extras[0] else { panic!("it is a layer") };
    assert_eq!((*border, on.len()), (mm(5), part.mats.len()));
    for ((of, panel), rect) in on {
        let mat = part.mats.iter().find(|m| (m.part, m.panel) == (*of, *panel)).expect("it lies on a mat");
        assert_eq!(*rect, mat.rect.inset(mm(5)));
    }
    // Front and back are 80 × 120 less 3 and 5 all round; sides 60 × 120; lids 80 × 60.
    let mut sizes: Vec<_> = plan
        .pieces
        .iter()
        .filter(|p| matches!(p.becomes, Becomes::Extra(..)))
        .map(|p| (p.width, p.height, p.count))
        .collect();
    sizes.sort();
    assert_eq!(sizes, [(mm(44), mm(104), 2), (mm(64), mm(44), 2), (mm(64), mm(104), 2)]);
}

/// A liner lies within the inside, and gifts get that much more height.
#[test]
fn a_liner_leaves_the_gift_its_room() {
    let mut project = project(r#"{"kind": "liner", "card": 1}"#, "");
    project.boxes[0].inputs.clear();
    let gifts = r#"{"kinds": [{"shape": {"block": {"width": "50 mm", "depth": "30 mm", "height": "90 mm"}}, "turns": "upright"}]}"#;
    project.boxes[0].gifts = serde_json::from_str(gifts).expect("they are gifts");
    project.board.metric_step = Some(serde_json::from_str("\"0.5 mm\"").expect("a length"));
    let plan = plan(&project, System::Metric);
    let part = &plan.boxes[0];
    let inside = part.assembly.as_ref().expect("planned").inside;
    assert!(inside.less(part.lining).height >= mm(93), "3 mm of room above the gift, liner in: {inside:?}");
    assert_eq!(part.lining.height, Length::um(300));
    let Made::Liner { sides, .. } = part.extras[0] else { panic!("it is a liner") };
    assert!(sides[0] < inside.width && sides[1] < inside.depth);
}

#[test]
fn what_cannot_be_added_is_said_and_left_out() {
    for (extras, wanted) in [
        (r#"{"kind": "window", "width": "70 mm"}"#, What::ExtraTooLarge([mm(64), mm(102)])),
        (r#"{"kind": "label", "face": "tuck"}"#, What::NoSuchFace { face: "tuck".to_owned() }),
        (r#"{"kind": "label", "card": 7}"#, What::UnknownCard { card: 7 }),
        (r#"{"kind": "layer", "width": "25 mm"}"#, What::RevealTooWide { reveal: mm(25) }),
        (
            r#"{"kind": "tag", "width": "500 mm"}"#,
            What::LengthOutside { is: mm(500), least: bound::EXTRA_SIDE.least, most: bound::EXTRA_SIDE.most },
        ),
    ] {
        let plan = planned(extras);
        assert_eq!(said(&plan), [&wanted], "{extras}");
        assert!(plan.boxes[0].extras.is_empty() && !plan.stopped());
    }
    let bare = plan(&project(r#"{"kind": "layer"}"#, ""), System::Metric);
    assert_eq!(said(&bare), [&What::LayerNeedsMats]);
}

/// By hand: behind the lid of a box with tucks lie two dust flaps that do not meet: 2 layers. With mat, second layer and
/// three labels there are 7.
#[test]
fn layers_at_one_place_are_counted() {
    let most = |extras: &str, mats: &str| {
        let plan = plan(&project(extras, mats), System::Metric);
        let found = plan.findings.iter().find_map(|f| match f.what {
            What::LayersPileUp { layers, .. } => Some(layers),
            _ => None,
        });
        (thickest(&plan.boxes[0], 0).0, found)
    };
    assert_eq!(most("", ""), (2, None));
    assert_eq!(most("", MATS), (3, None));
    let label = r#"{"kind": "label", "face": "lid"}"#;
    assert_eq!(most(&format!(r#"{{"kind": "layer"}}, {label}"#), MATS), (5, None));
    let all = format!(r#"{{"kind": "layer"}}, {label}, {label}, {label}"#);
    assert_eq!(most(&all, MATS), (7, Some(7)));
    assert_eq!(MOST, 5);
}

/// The ends of a corner-folded box are six layers: too many for card, not for paper.
#[test]
fn a_corner_folded_box_wants_paper() {
    let said = |thickness: &str| {
        let mut project = project("", "");
        project.boxes[0].form = "corner-box".to_owned();
        project.boxes[0].inputs.clear();
        project.cards[0].thickness = serde_json::from_str(&format!("\"{thickness}\"")).ok();
        let plan = plan(&project, System::Metric);
        let piled = |w: &What| matches!(w, What::LayersPileUp { layers: 6, .. });
        assert!(plan.boxes[0].assembly.is_some());
        plan.findings.iter().filter(|f| piled(&f.what)).count()
    };
    assert_eq!((said("0.25 mm"), said("0.12 mm")), (2, 0), "box and lid");
}

/// A wall is too tall for its card where it is that large both ways: 600 × 0.3 mm is 180 mm.
#[test]
fn a_wall_too_tall_for_its_card_is_said() {
    let found = |width: &str, height: &str, thickness: &str| {
        let mut project = project("", "");
        let given = |text: &str| serde_json::from_str(&format!("\"{text}\"")).expect("a length");
        project.boxes[0].inputs.insert("width".to_owned(), given(width));
        project.boxes[0].inputs.insert("height".to_owned(), given(height));
        project.cards[0].thickness = serde_json::from_str(&format!("\"{thickness}\"")).ok();
        let plan = plan(&project, System::Metric);
        plan.findings.iter().any(|f| matches!(f.what, What::WallTooTall { .. }))
    };
    assert!(!found("180 mm", "300 mm", "0.3 mm"), "tall and slim is a tube");
    assert!(found("181 mm", "300 mm", "0.3 mm"));
    assert!(found("300 mm", "181 mm", "0.3 mm"));
    assert!(!found("181 mm", "300 mm", "0.4 mm"), "thicker card carries it");
}

fn polygon(outline: &Outline) -> geo::Polygon<f64> {
    let ring: Vec<(f64, f64)> = outline.corners.iter().map(|p| (p.x.as_mm(), p.y.as_mm())).collect();
    geo::Polygon::new(ring.into(), Vec::new())
}

/// What lies on a face, by the general-purpose geometry library `geo`: within it, off its thumb notch, and never on a face that slides.
fn is_well_placed(part: &Planned) -> Result<(), TestCaseError> {
    let Some(assembly) = &part.assembly else { return Ok(()) };
    for made in &part.extras {
        for (i, shape) in assembly.parts.iter().enumerate() {
            for ((panel, outline), laid) in made.shapes(i) {
                let face = shape.net.panel(panel);
                prop_assert_eq!(face.mat, Matting::Usual);
                let (inner, outer) = (outline.bounds(), face.cell);
                prop_assert!(inner.min.x >= outer.min.x && inner.max.x <= outer.max.x, "{:?}", made);
                prop_assert!(inner.min.y >= outer.min.y && inner.max.y <= outer.max.y, "{:?}", made);
                if laid == Laid::Through || matches!(made, Made::Label { .. }) {
                    let whole = polygon(&face.outline);
                    prop_assert!(whole.contains(&polygon(&outline)), "{:?} leaves the {}", made, face.name);
                }
            }
        }
        for (_, sides, count) in made.pieces() {
            prop_assert!(count > 0 && sides.iter().all(|s| s.is_positive()), "{:?}", made);
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: tries(1_000), failure_persistence: None, ..ProptestConfig::default() })]

    /// Every extra of every likely set in every form: made and well placed, or said why not.
    #[test]
    fn extras_lie_within_their_faces(project in likely_project(), system in prop::sample::select(System::ALL.to_vec())) {
        let plan = plan(&project, system);
        for part in plan.parts() {
            is_well_placed(part)?;
            // Where nothing is glued on besides mats, no form piles up more than the most.
            if part.extras.iter().all(|m| m.raises().is_none()) {
                let shapes = part.assembly.iter().flat_map(|a| &a.parts).enumerate();
                for (i, _) in shapes.filter(|(_, s)| s.net.panels.iter().all(|p| p.level.abs() < DEEP)) {
                    prop_assert!(thickest(part, i).0 <= MOST, "{:?}: {:?}", part.form.key, thickest(part, i));
                }
            }
            let asked = match part.place {
                Place::Box(id) => project.boxes.iter().find(|b| b.id == id),
                _ => project.holder.as_ref(),
            };
            let asked = asked.map_or(0, |p| p.extras.len());
            let refused = plan.findings.iter().filter(|f| f.place == part.place && f.input == Some("extras")).count();
            if part.assembly.is_some() {
                prop_assert_eq!(part.extras.len() + refused, asked, "{:?}", part.name);
            }
        }
    }
}

/// Every form that shows a face takes one of each on it.
#[test]
fn every_kind_goes_onto_every_form_that_shows_a_face() {
    use snugfold::form::registry::{FORMS, Holds};
    use snugfold::project::example::example;
    use snugfold::project::fresh::fresh;
    use snugfold::project::request::Mats;
    let mut made = 0;
    for form in FORMS {
        let mut project = fresh(example().as_ref(), form.shown_by(), form.key);
        project.boxes[0].count = 2;
        let card = project.boxes[0].card;
        let part = if form.holds == Holds::Gifts { Some(&mut project.boxes[0]) } else { project.holder.as_mut() };
        let part = part.expect("it is there");
        part.mats = Some(Mats { card, reveal: None, off: Vec::new() });
        part.extras = ExtraKind::ALL.map(Extra::of).to_vec();
        let plan = plan(&project, System::Metric);
        let part = plan.parts().find(|p| p.form.key == form.key).expect("it is planned");
        let shown = !faces(part.assembly.as_ref().expect("as usual")).is_empty();
        let kinds = part.extras.iter().filter(|m| !m.on().is_empty()).count();
        println!("{}: {} of 6, {:?}", form.key, part.extras.len(), said(&plan));
        if shown && kinds == 4 {
            made += 1;
        }
    }
    assert!(made >= 12, "only {made} forms take all that lies on a face");
}
