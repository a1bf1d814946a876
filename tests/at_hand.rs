//! What is drawn in the frame of a key is what the whole set comes to.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::{any_project, likely_project, system};
use common::tries;
use proptest::prelude::*;
use snugfold::fit::gifts::own;
use snugfold::fit::grown::SIZES;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::{at_hand, shapes};
use snugfold::project::example::example;
use snugfold::project::finding::Place;
use snugfold::project::fitting::Turns;
use snugfold::project::request::{Entry, Project};

fn alike(project: &Project, system: System) {
    let whole = shapes(project, system);
    let places = project.boxes.iter().map(|b| Place::Box(b.id)).chain([Place::Holder]);
    for place in places {
        let alone = at_hand(project, system, place);
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
