//! How sure a fit is: published stack-ups, the table of the normal distribution, and chains thrown out by dice.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::dice::Dice;
use snugfold::fit::odds::{Accuracy, Chain, Kind, Link, On, below};
use snugfold::make::slides::{Cure, Way, joins, odds, seated};
use snugfold::measure::given::Given;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::finding::{Place, Weight, What};
use snugfold::project::request::{Entry, Project};

fn link(times: u32, tolerance: Length) -> Link {
    Link { kind: Kind::Score, on: On::Inner, times, tolerance }
}

/// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, from memory, to six places.
#[test]
fn the_normal_distribution_is_the_handbooks() {
    let table = [(0.0, 0.5), (0.5, 0.691_462), (1.0, 0.841_345), (2.0, 0.977_250), (3.0, 0.998_650)];
    for (z, expected) in table {
        assert!((below(z) - expected).abs() < 6e-7, "{z}: {}", below(z));
        assert!((below(-z) - (1.0 - expected)).abs() < 6e-7, "-{z}: {}", below(-z));
    }
}

/// The rows of one published example: term, nominal and plus-minus in mm, sense.
fn published(example: &str) -> Vec<(String, f64, f64, String)> {
    let text = include_str!("data/stackup.csv");
    let rows = text.lines().filter(|l| l.split(',').next() == Some(example));
    rows.map(|l| {
        let f: Vec<&str> = l.split(',').collect();
        (f[1].to_owned(), f[2].parse().unwrap_or(0.0), f[3].parse().unwrap_or(0.0), f[4].to_owned())
    })
    .collect()
}

/// The chain of an example's terms, and what is published of the whole: (row, nominal, plus-minus).
fn chained(example: &str) -> (Chain, Vec<(String, f64, f64)>) {
    let (terms, whole): (Vec<_>, Vec<_>) = published(example).into_iter().partition(|r| r.3 != "=");
    let signed = |r: &(String, f64, f64, String)| Length::round_mm(if r.3 == "-" { -r.1 } else { r.1 });
    let chain = Chain {
        gap: terms.iter().map(signed).sum(),
        links: terms.iter().map(|r| link(1, Length::round_mm(r.2))).collect(),
    };
    (chain, whole.into_iter().map(|(term, nominal, pm, _)| (term, nominal, pm)).collect())
}

#[test]
fn published_stack_ups_come_out() {
    let mut checked = 0;
    for example in ["ring_gap_mm", "housing"] {
        let (chain, whole) = chained(example);
        for (term, nominal, pm) in whole {
            // The printed figures are rounded to their last place.
            let close = |is: Length, to: f64, within: f64| {
                assert!((is.as_mm() - to).abs() <= within, "{example}, {term}: {is:?} is not {to}");
            };
            if term.starts_with("gap") {
                close(chain.gap, nominal, 1e-9);
            }
            if term.contains("worst case") {
                close(chain.worst(), pm, 1e-9);
            } else if term.starts_with("stack root sum square") {
                // The parts without the housing that they go into.
                let parts = Chain { links: chain.links[..3].to_vec(), ..chain.clone() };
                close(parts.spread(), pm, 6e-6);
            } else if term.contains("root sum square") {
                close(chain.spread(), pm, if example == "housing" { 6e-6 } else { 6e-5 });
            } else {
                continue;
            }
            checked += 1;
        }
    }
    assert_eq!(checked, 5, "all published results are checked");
    let (_, _, each, note) = published("ten_equal").remove(0);
    assert!(note.is_empty() && include_str!("data/stackup.csv").contains("worst case 1.0, root sum square 0.316"));
    let ten = Chain { links: vec![link(10, Length::round_mm(each))], gap: Length::ZERO };
    assert_eq!((ten.worst(), ten.spread().as_um()), (Length::mm(1), 316));
}

/// A throw of a normal distribution (Box and Muller 1958), of which ± `two` is two standard deviations.
fn thrown(dice: &mut Dice, two: f64) -> f64 {
    let mut even = || ((dice.bits() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64;
    let (u, v) = (even(), even());
    two / 2.0 * (-2.0 * libm::log(u)).sqrt() * libm::cos(std::f64::consts::TAU * v)
}

#[test]
fn the_chance_is_what_dice_throw() {
    const THROWS: u32 = 200_000;
    let mut dice = Dice(20);
    for gap in [-500, 0, 400, 800, 1_200, 1_600] {
        let links = vec![link(6, Length::um(400)), link(2, Length::um(500)), link(1, Length::um(300))];
        let chain = Chain { links, gap: Length::um(gap) };
        let mut free = 0_u32;
        for _ in 0..THROWS {
            let mut left = chain.gap.as_mm();
            for l in &chain.links {
                for _ in 0..l.times {
                    left += thrown(&mut dice, l.tolerance.as_mm());
                }
            }
            free += u32::from(left > 0.0);
        }
        let share = f64::from(free) / f64::from(THROWS);
        assert!((share - chain.chance()).abs() < 0.005, "{gap}: {share} thrown, {} said", chain.chance());
    }
}

#[test]
fn without_errors_it_fits_or_it_does_not() {
    let bare = |um| Chain { links: Vec::new(), gap: Length::um(um) };
    assert_eq!([-1, 0, 1].map(|um| bare(um).chance()), [0.0, 0.0, 1.0]);
    assert_eq!(bare(0).tightest(), None);
}

/// Three boxes of 80 × 40 mm in card of 0.3 mm with mats of 0.25 mm on all walls.
const THREE: &str = r#"{ "system": "metric",
    "cards": [ { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "600 mm", "sheet_height": "600 mm" },
               { "id": 2, "grammage": 220, "thickness": "0.25 mm", "sheet_width": "600 mm", "sheet_height": "600 mm" } ],
    "boxes": [ { "id": 1, "form": "tuck-box", "count": 3, "card": 1, "mats": { "card": 2 },
        "inputs": { "width": "80 mm", "depth": "40 mm", "height": "120 mm" } } ],
    "holder": { "id": 0, "form": "row-holder", "card": 1 } }"#;

fn three() -> Project {
    serde_json::from_str(THREE).expect("it is a project")
}

/// Counted by hand on a box and a holder.
#[test]
fn the_chains_of_a_set_are_as_counted() {
    let plan = plan(&three(), System::Metric);
    let holder = plan.holder.as_ref().expect("it has one");
    let odds = odds(&plan.boxes, holder, System::Metric, &Accuracy::usual(System::Metric)).expect("it is planned");
    let um = Length::um;
    let link = |kind, on, times, um| Link { kind, on, times, tolerance: Length::um(um) };
    // 3 × (80 + 0.3 + 2 × 0.25) = 242.4 stands in 244.6 − 0.6: the first millimetre from 242.4 + 1.5 + 0.6 on is 245.
    assert_eq!(odds.along.gap, um(245_000 - 600 - 242_400));
    assert_eq!(
        odds.along.links,
        [
            link(Kind::Score, On::Inner, 6, 400),
            link(Kind::Score, On::Outer, 2, 400),
            link(Kind::Card, On::Both, 1, 75), // 5 % of 3 boxes and the two double ends of the holder: 3 t + 2 t
            link(Kind::Card, On::Both, 1, 75), // 5 % of 6 mats
        ]
    );
    // From front to back, the side with the seam: one score, one cut edge, one joint; the holder's end flaps are cut
    // and glued at both edges.
    let (across, n) = &odds.across[0];
    assert_eq!((across.gap, *n), (um(43_000 - 300 - 40_800), 3));
    assert_eq!(
        across.links,
        [
            link(Kind::Score, On::Inner, 1, 400),
            link(Kind::Cut, On::Inner, 1, 500),
            link(Kind::Glue, On::Inner, 1, 300),
            link(Kind::Cut, On::Outer, 2, 500),
            link(Kind::Glue, On::Outer, 2, 300),
            link(Kind::Card, On::Both, 1, 30),
            link(Kind::Card, On::Both, 1, 25),
        ]
    );
    assert_eq!(odds.along.worst(), um(8 * 400 + 150));
}

/// Whole sets made by dice: every box and the holder with its own errors, the card with one. What is said of each
/// chain is what is thrown, and what is said of the set is no more than that, and hardly less.
#[test]
fn the_chance_of_a_set_is_what_dice_make() {
    const THROWS: u32 = 200_000;
    let plan = plan(&three(), System::Metric);
    let holder = plan.holder.as_ref().expect("it has one");
    for worse in [1, 2] {
        let usual = Accuracy::usual(System::Metric);
        let a = Accuracy { score: usual.score * worse, cut: usual.cut * worse, ..usual };
        let said = odds(&plan.boxes, holder, System::Metric, &a).expect("it is planned");
        let mut dice = Dice(5);
        let (mut along, mut all) = (0_u32, 0_u32);
        let [score, cut, glue] = [a.score, a.cut, a.glue].map(Length::as_mm);
        for _ in 0..THROWS {
            let mut t = |two: f64| thrown(&mut dice, two);
            let (card, mat) = (0.3 * (1.0 + t(0.05)), 0.25 * (1.0 + t(0.05)));
            let inside_length = 245.0 + t(score) + t(score) - 2.0 * card;
            let inside_depth = 43.0 + t(cut) + t(cut) + t(glue) + t(glue) - card;
            let (mut row, mut deepest) = (0.0, 0.0_f64);
            for _ in 0..3 {
                row += 80.0 + t(score) + t(score) + card + 2.0 * mat;
                deepest = deepest.max(40.0 + t(score) + t(cut) + t(glue) + card + 2.0 * mat);
            }
            along += u32::from(row < inside_length);
            all += u32::from(row < inside_length && deepest < inside_depth);
        }
        let share = |n: u32| f64::from(n) / f64::from(THROWS);
        let all_said = f64::from(said.per_mille) / 1_000.0;
        assert!((share(along) - said.along.chance()).abs() < 0.005, "{} {}", share(along), said.along.chance());
        println!("set: {} thrown, {all_said} said", share(all));
        assert!(all_said < share(all) + 0.005 && all_said > share(all) - 0.08, "{} {all_said}", share(all));
    }
}

#[test]
fn a_sure_hand_needs_nothing_and_a_shaky_one_measures_first() {
    let plan = plan(&three(), System::Metric);
    let holder = plan.holder.as_ref().expect("it has one");
    let with = |um| {
        let a = Accuracy { score: Length::um(um), cut: Length::um(um), glue: Length::um(um), thickness: 50 };
        let o = odds(&plan.boxes, holder, System::Metric, &a).expect("it is planned");
        (o.per_mille, o.cure, o.way)
    };
    assert_eq!(with(0).0, 1_000);
    assert_eq!(with(100).1, Cure::None);
    let (now, cure, _) = with(600);
    assert!(now < 990 && matches!(cure, Cure::Clearance(_)), "{now} {cure:?}");
    assert_eq!(with(2_000).1, Cure::MeasureFirst);
    assert_eq!(with(-5).0, 1_000, "below its range counts as nothing");
    assert!([Way::Along, Way::Across].contains(&with(600).2));
    assert!(odds(&[], holder, System::Metric, &Accuracy::usual(System::Metric)).is_none());
    assert!(odds(&plan.boxes, &plan.boxes[0], System::Metric, &Accuracy::usual(System::Metric)).is_none());
}

/// A press fit and a loose row are made with a caution; beyond the range nothing is planned.
#[test]
fn unusual_clearances_are_said() {
    let said = |typed: &str| {
        let mut project = three();
        let given = Given::read(typed, System::Metric).expect("it is a length");
        project.holder.as_mut().expect("it has one").inputs.insert("clearance".to_owned(), Entry::Length(given));
        let plan = plan(&project, System::Metric);
        let on = |f: &&snugfold::project::finding::Finding| f.place == Place::Holder && f.input == Some("clearance");
        let made = plan.holder.as_ref().is_some_and(|h| h.assembly.is_some());
        (made, plan.findings.iter().find(on).map(|f| (f.weight, f.what.clone())))
    };
    let tight = |um| Some((Weight::Caution, What::TightRow { is: Length::um(um), least: Length::mm(1) }));
    assert_eq!(said("-0.5 mm"), (true, tight(-500)));
    assert_eq!(said("0 mm"), (true, tight(0)));
    assert_eq!(said("0.99 mm"), (true, tight(990)));
    assert_eq!(said("1 mm"), (true, None));
    assert_eq!(said("4 mm"), (true, None));
    assert_eq!(said("4.01 mm"), (true, Some((Weight::Caution, What::LooseRow { most: Length::mm(4) }))));
    assert!(matches!(said("-0.51 mm"), (false, Some((Weight::Stop, What::LengthOutside { .. })))));
}

/// Every form whose parts go into each other says how sure that is; a clearance that is advised makes it sure.
#[test]
fn parts_that_go_into_each_other_are_as_sure_as_said() {
    let steady = Accuracy::usual(System::Metric);
    let shaky = Accuracy { score: Length::um(900), cut: Length::um(1_000), ..steady };
    let planned = |form: &str, clearance: Option<Length>, hand: &Accuracy| {
        let mut inputs = serde_json::json!({});
        if let Some(clearance) = clearance {
            inputs["clearance"] = format!("{} mm", clearance.as_mm()).into();
        }
        let project: Project = serde_json::from_value(serde_json::json!({
            "system": "metric",
            "cards": [ { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "600 mm", "sheet_height": "600 mm" } ],
            "boxes": [ { "id": 1, "form": form, "card": 1, "inputs": inputs } ]
        }))
        .expect("it is a project");
        let plan = plan(&project, System::Metric);
        assert!(!plan.stopped(), "{form}: {:?}", plan.findings);
        let mut all = joins(&plan.boxes[0], System::Metric, hand);
        assert_eq!(all.len(), 1, "{form}");
        all.remove(0)
    };
    for form in ["lid-base", "drawer"] {
        let usual = planned(form, None, &steady);
        assert_eq!((usual.cure, usual.per_mille >= 990), (Cure::None, true), "{form}: {usual:?}");
        assert!(planned(form, Some(Length::MM), &steady).per_mille <= usual.per_mille, "{form}: asked for less");
        let before = planned(form, Some(Length::MM), &shaky);
        assert!(before.per_mille < 990, "{form}: {before:?}");
        let Cure::Clearance(asked) = before.cure else {
            panic!("{form}: {before:?}");
        };
        let after = planned(form, Some(asked), &shaky);
        assert!(after.per_mille >= 990, "{form}: {before:?} {after:?}");
    }
}

/// Boxes in every holder that seats them: no surer than a steady hand makes it, surer with the clearance advised.
#[test]
fn boxes_go_to_their_seats_as_surely_as_said() {
    let planned = |form: &str, clearance: Option<Length>, hand: &Accuracy| {
        let mut inputs = serde_json::json!({});
        if let Some(clearance) = clearance {
            let key = match form {
                "set-tray" | "book-cover" => "room",
                "tower" => "play",
                _ => "clearance",
            };
            inputs[key] = format!("{} mm", clearance.as_mm()).into();
        }
        let boxed = |id: u16, width: &str| {
            serde_json::json!({ "id": id, "form": "tuck-box", "card": 1, "count": 2,
                "inputs": { "width": width, "depth": "30 mm", "height": "70 mm" } })
        };
        let project: Project = serde_json::from_value(serde_json::json!({
            "system": "metric",
            "cards": [ { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "900 mm", "sheet_height": "900 mm" } ],
            "boxes": [ boxed(1, "40 mm"), boxed(2, "55 mm") ],
            "holder": { "form": form, "card": 1, "inputs": inputs }
        }))
        .expect("it is a project");
        let plan = plan(&project, System::Metric);
        assert!(!plan.stopped(), "{form}: {:?}", plan.findings);
        seated(&plan.boxes, plan.holder.as_ref().expect("it has one"), System::Metric, hand)
    };
    let steady = Accuracy::usual(System::Metric);
    let shaky = Accuracy { score: Length::um(700), cut: Length::um(900), ..steady };
    for form in ["grid-holder", "carrier", "set-tray", "tower", "book-cover", "band"] {
        let usual = planned(form, None, &steady).expect("something is round them");
        assert_eq!((usual.cure, usual.per_mille >= 990), (Cure::None, true), "{form}: {usual:?}");
        let before = planned(form, None, &shaky).expect("something is round them");
        assert!(before.per_mille < 990, "{form}: {before:?}");
        let Cure::Clearance(asked) = before.cure else {
            panic!("{form}: {before:?}");
        };
        let after = planned(form, Some(asked), &shaky).expect("something is round them");
        assert!(after.per_mille >= 990, "{form}: {before:?} {after:?}");
    }
    // On steps they stand free.
    assert!(planned("step-stand", None, &steady).is_none());
}
