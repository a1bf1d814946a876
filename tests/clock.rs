//! How long a make takes, held against sums done by hand.
#![cfg(not(target_arch = "wasm32"))]

use snugfold::make::clock::{Clock, usual};
use snugfold::make::pace::Pace;
use snugfold::make::step::Action;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::example::example;

/// Four scores are 10 + 4 × 8 seconds; mats on front, back, two sides and lid are 5 × 40, whatever the number of sizes
/// that they are cut in; and for six sets each is done six times.
#[test]
fn what_is_done_is_counted() {
    let mut project = example().expect("the example reads");
    project.sets = 6;
    let plan = plan(&project, System::Inch);
    let first = |is: &dyn Fn(&Action) -> bool| {
        let step = plan.steps.iter().find(|s| is(&s.action)).expect("there is one");
        (usual(step, &plan.sheets, &plan.pieces), step.times)
    };
    assert_eq!(first(&|a| matches!(a, Action::Score(_))), (42, 6));
    assert_eq!(first(&|a| matches!(a, Action::GlueMats(_))), (200, 6));
    let six = Clock { sheets: &plan.sheets, pieces: &plan.pieces, pace: Pace::default() }.all(&plan.steps);
    let scores = plan.steps.iter().filter(|s| matches!(s.action, Action::Score(_)));
    let scored: u64 = scores.map(|s| usual(s, &plan.sheets, &plan.pieces) * s.times).sum();
    // Two rounds of scores on each of three boxes and the holder.
    assert!(scored > 8 * 6 * 10 && scored < six, "{scored} of {six}");
}
