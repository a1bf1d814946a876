//! What is drawn in the frame of a key is what the whole set comes to, and so is what was planned step by step with
//! boxes that were planned before.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::{any_project, likely_project, system};
use common::tries;
use proptest::prelude::*;
use snugfold::fit::gifts::own;
use snugfold::fit::grown::SIZES;
use snugfold::form::resolve::Wants;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::{Known, Plan, Planning, Progress, at_hand, plan, shapes};
use snugfold::project::example::example;
use snugfold::project::finding::{Finding, Place, Weight};
use snugfold::project::fitting::Turns;
use snugfold::project::request::{Entry, Part, Project};

fn alike(project: &Project, system: System) {
    let whole = shapes(project, system);
    let places = project.boxes.iter().map(|b| Place::Box(b.id)).chain([Place::Holder]);
    let mut known = Known::default();
    for place in places {
        let alone = at_hand(project, system, place, &mut known);
        assert!(alone.part(place) == whole.part(place), "{place:?} by itself is another");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(tries(200)))]

    #[test]
    fn a_likely_set(project in likely_project(), system in system()) {
        alike(&project, system);
    }

    #[test]
    fn any_set(project in any_project(), system in system()) {
        alike(&project, system);
    }
}

/// Planned step by step, as the page does it: first as far as what can be drawn, then the rest, or all of it with proofs
/// where a maker drew a form.
fn stepwise(project: &Project, system: System, known: &mut Known) -> (Plan, Plan) {
    let mut planning = Planning::begin(project.clone(), system, Wants::Unproved);
    while planning.step(known) != Progress::Shaped {}
    let shaped = planning.plan().clone();
    if !planning.is_proved() {
        planning = Planning::begin(project.clone(), system, Wants::Everything);
    }
    while planning.step(known) != Progress::Done {}
    (shaped, planning.plan().clone())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(tries(100)))]

    /// One design after the other, as edits are: every other one has boxes of the one before, in another order and with
    /// one changed.
    #[test]
    fn what_was_planned_before_changes_nothing(
        designs in proptest::collection::vec(prop_oneof![likely_project(), any_project()], 2..4),
        system in system(),
        dice in 0_usize..1_000,
    ) {
        let mut known = Known::default();
        for design in designs {
            let mut edited = design.clone();
            edited.boxes.rotate_left(dice % design.boxes.len().max(1));
            if let Some(part) = edited.boxes.first_mut() {
                part.count = part.count.wrapping_add(1);
                part.mats = None;
            }
            let mut recarded = edited.clone();
            recarded.cards.iter_mut().take(1).for_each(|card| card.thickness = None);
            for project in [design, edited, recarded] {
                let (shaped, whole) = stepwise(&project, system, &mut known);
                prop_assert!(shaped == shapes(&project, system));
                prop_assert!(whole == plan(&project, system));
            }
        }
    }
}

/// More kinds than a set may have are said, and not planned.
#[test]
fn kinds_beyond_the_allowed_are_not_planned() {
    let mut project = example().expect("the example is a project");
    let one = project.boxes[0].clone();
    project.boxes = (1..=200).map(|id| Part { id, count: 99, ..one.clone() }).collect();
    project.sets = 1_000;
    let plan = plan(&project, System::Inch);
    assert_eq!(plan.boxes.len(), 60);
    let said = |f: &&Finding| f.place == Place::Set && f.input == Some("boxes") && f.weight == Weight::Stop;
    assert_eq!(plan.findings.iter().filter(said).count(), 1);
    let beyond = at_hand(&project, System::Inch, Place::Box(61), &mut Known::default());
    assert!(beyond.part(Place::Box(61)).is_none());
}

/// A box that takes its size from what goes in looks at the heights of the others, and so is not planned alone.
#[test]
fn a_box_that_follows_its_gifts() {
    for system in System::ALL {
        let mut project = example().expect("the example is a project");
        let last = project.boxes.len() - 1;
        project.boxes[last].gifts.kinds.extend(own(system));
        project.boxes[last].inputs.retain(|key, _| !SIZES.contains(&key.as_str()));
        project.boxes[last].gifts.kinds.iter_mut().for_each(|gift| gift.turns = Turns::Any);
        let mut seen = Vec::new();
        for height in ["25 mm", "40 mm", "52 mm", "60 mm", "77 mm", "90 mm"] {
            for other in &mut project.boxes[..last] {
                let given = Given::read(height, system).expect("it is a length");
                other.inputs.insert("height".to_owned(), Entry::Length(given));
            }
            alike(&project, system);
            let size = shapes(&project, system).boxes[last].outside;
            if !seen.contains(&size) {
                seen.push(size);
            }
        }
        assert!(seen.len() > 1, "the heights of the others count: {seen:?}");
    }
}
