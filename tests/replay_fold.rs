//! The steps alone fold what they made into the form: a program that knows the scores of a net, and of each step which
//! of them it turns, folds with a linear-algebra library that others wrote (nalgebra), and the corners come out where
//! the model has them; for the left hand on the mirrored card, and then they are the model's in a mirror.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::drawn::{DRAWN, set_of_drawn};
use common::typical::set_of;
use nalgebra::{Isometry3, Point3, Translation3, Unit, UnitQuaternion, Vector3};
use snugfold::assembly::moves::Way;
use snugfold::assembly::parts::Part;
use snugfold::draw::drawing::{Drawing, Mark};
use snugfold::draw::step::step as drawn;
use snugfold::fold::motion::folded;
use snugfold::fold::pose::Pose;
use snugfold::form::registry::FORMS;
use snugfold::make::step::{Action, Step};
use snugfold::measure::length::Length;
use snugfold::measure::point::Point;
use snugfold::measure::system::System;
use snugfold::net::flat::{CreaseId, PanelId};
use snugfold::plan::plan;
use snugfold::project::request::Tint;
use snugfold::say::hand::Hand;
use snugfold::say::spelling::Spelling;
use snugfold::say::step::step as said;

/// The scores that a move turns.
fn turned(way: &Way) -> Vec<CreaseId> {
    match way {
        Way::Even(all) | Way::EndOnly { creases: all, .. } => all.clone(),
        Way::TuckIn { lid, tuck, .. } => vec![*lid, *tuck],
        Way::Sprung { closing, tucks, .. } => [&closing[..], tucks].concat(),
    }
}

/// A place on the card for this hand: the left one's table is mirrored.
fn place(p: Point, hand: Hand) -> Point3<f64> {
    let x = p.x.as_mm();
    Point3::new(if hand == Hand::Left { -x } else { x }, -p.y.as_mm(), 0.0)
}

/// Every corner of a part after these steps, folded from its first panel, which lies flat on the table.
fn by_hand<'a>(part: &Part, index: usize, steps: impl Iterator<Item = &'a Step>, hand: Hand) -> Vec<Point3<f64>> {
    let rigid = part.rigid();
    let net = &rigid.net;
    let mut is_turned = vec![false; net.creases.len()];
    for step in steps.filter(|s| s.part == index) {
        if let Action::Fold { index, .. } = step.action {
            turned(&rigid.moves[index].way).iter().for_each(|c| is_turned[c.0] = true);
        }
    }
    let mut at = vec![Isometry3::identity(); net.panels.len()];
    for (crease, turned) in net.creases.iter().zip(is_turned) {
        let (from, to) = (place(crease.from, hand), place(crease.to, hand));
        let corners = &net.panel(crease.far).outline.corners;
        let sum: Vector3<f64> = corners.iter().map(|&c| place(c, hand).coords).sum();
        let middle = Point3::from(sum / corners.len() as f64);
        let line = Unit::new_normalize(to - from);
        let turn = |angle: f64| Isometry3::rotation_wrt_point(UnitQuaternion::from_axis_angle(&line, angle), from);
        let angle = if turned { crease.fold.as_degrees().to_radians() } else { 0.0 };
        // Away from whoever looks at the outside.
        let away = if (turn(0.1) * middle).z < 0.0 { turn(angle) } else { turn(-angle) };
        at[crease.far.0] = at[crease.near.0] * away;
    }
    let corners = net.panels.iter().zip(&at);
    corners.flat_map(|(p, at)| p.outline.corners.iter().map(move |&c| at * place(c, hand))).collect()
}

/// The model's corners, brought to where the first panel lies flat on the table.
fn by_model(part: &Part) -> Vec<Point3<f64>> {
    let rigid = part.rigid();
    let pose = Pose::of(rigid, &folded(rigid), Length::ZERO);
    let axis = |v: snugfold::fold::space::V3| Vector3::new(v.x, v.y, v.z);
    let root = &pose.panels[0];
    let turn = nalgebra::Rotation3::from_basis_unchecked(&root.axes.map(axis));
    let first =
        Isometry3::from_parts(Translation3::from(axis(root.origin)), UnitQuaternion::from_rotation_matrix(&turn));
    let back = first.inverse();
    let panels = rigid.net.panels.iter().enumerate();
    let corners = panels.flat_map(|(i, p)| p.outline.corners.iter().map(move |&c| (PanelId(i), c)));
    corners.map(|(i, c)| back * Point3::from(axis(pose.point(i, c)))).collect()
}

fn apart(a: &[Point3<f64>], b: &[Point3<f64>]) -> f64 {
    assert_eq!(a.len(), b.len());
    a.iter().zip(b).map(|(a, b)| (a - b).norm()).fold(0.0, f64::max)
}

#[test]
fn the_steps_fold_every_form_for_both_hands() {
    let mut folds = 0;
    for form in FORMS {
        for system in System::ALL {
            let plan = plan(&set_of(form), system);
            let planned = plan.parts().find(|p| p.form.key == form.key).expect("it is planned");
            let steps = || plan.steps.iter().filter(|s| s.place == planned.place);
            for (i, part) in planned.assembly.iter().flat_map(|a| &a.parts).enumerate() {
                let model = by_model(part);
                let off = apart(&by_hand(part, i, steps(), Hand::Right), &model);
                assert!(off < 1e-6, "{} {}: {off} mm", form.key, part.name);
                let mirrored: Vec<_> = model.iter().map(|p| Point3::new(-p.x, p.y, p.z)).collect();
                let off = apart(&by_hand(part, i, steps(), Hand::Left), &mirrored);
                assert!(off < 1e-6, "{} {}, left hand: {off} mm", form.key, part.name);
                // Without one of the folds it is another form, unless the same scores are turned once more later.
                let mine = || steps().filter(|s| s.part == i && matches!(s.action, Action::Fold { .. }));
                for left_out in mine() {
                    let without = by_hand(part, i, steps().filter(|s| s.key != left_out.key), Hand::Right);
                    let Action::Fold { index, .. } = left_out.action else { continue };
                    let others = || mine().filter(|s| s.key != left_out.key);
                    let again = |c: &CreaseId| {
                        let turns = |s: &Step| matches!(s.action, Action::Fold { index, .. } if turned(&part.rigid().moves[index].way).contains(c));
                        others().any(turns)
                    };
                    if !turned(&part.rigid().moves[index].way).iter().all(again) {
                        assert!(apart(&without, &model) > 0.5, "{} {}: nothing is missed", form.key, part.name);
                        folds += 1;
                    }
                }
            }
        }
    }
    assert!(folds > 200, "only {folds} folds were left out");
}

/// Forms that their makers drew, folded by their steps alone.
#[test]
fn the_steps_fold_drawn_forms() {
    for (name, text) in DRAWN {
        for system in System::ALL {
            let plan = plan(&set_of_drawn(text), system);
            let planned = &plan.boxes[0];
            let part = &planned.assembly.as_ref().unwrap_or_else(|| panic!("{name}: {:?}", plan.findings)).parts[0];
            let steps = || plan.steps.iter().filter(|s| s.place == planned.place);
            let off = apart(&by_hand(part, 0, steps(), Hand::Right), &by_model(part));
            assert!(off < 1e-6, "{name}: {off} mm");
        }
    }
}

/// What a drawing says and where, left and right.
fn sides(d: &Drawing) -> Vec<(String, f64)> {
    let labels = d.marks.iter().filter_map(|m| match m {
        Mark::Label(l) => Some((l.words.to_string(), l.at[0])),
        _ => None,
    });
    labels.collect()
}

/// For the left hand each drawing is its mirror image, and what was left is called right, in drawings and in words.
#[test]
fn the_left_hand_has_the_table_mirrored() {
    let mut named = 0;
    for form in FORMS {
        let project = set_of(form);
        let plan = plan(&project, System::Inch);
        for step in &plan.steps {
            let words = said(step, &plan, &project, Spelling::Uk);
            for phrase in words.lines.iter().chain([&words.title]) {
                let (right, left) = (phrase.to_string(), Hand::Left.phrase(phrase.clone()).to_string());
                assert_eq!(Hand::Left.words(&left), right, "a mirror of the mirror is what was there");
                let has = |text: &str, word: &str| {
                    text.split(|c: char| !c.is_alphanumeric()).any(|w| w.eq_ignore_ascii_case(word))
                };
                if has(&right, "left") || has(&right, "anticlockwise") {
                    assert_ne!(left, right);
                    named += 1;
                }
                assert_eq!((has(&right, "left"), has(&right, "right")), (has(&left, "right"), has(&left, "left")));
            }
            let Some(before) = drawn(step, &plan, &|_| Tint::default()) else { continue };
            let mut after = before.clone();
            after.mirror();
            assert_eq!((after.min[0], after.max[0]), (-before.max[0], -before.min[0]));
            for ((words, x), (told, mirrored)) in sides(&before).into_iter().zip(sides(&after)) {
                assert_eq!((Hand::Left.words(&words), -x), (told, mirrored));
            }
            after.mirror();
            assert_eq!(after, before);
        }
    }
    assert!(named > 500, "only {named} lines name a side");
}
