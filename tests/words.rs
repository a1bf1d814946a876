//! Words that were once wrong, held to what the net says.

use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::example::example;
use snugfold::say::recipe::take_offs;

/// Wings are narrower than they are tall, and yet the strip comes off their free end, not off their side.
#[test]
fn a_strip_is_named_by_the_edge_that_it_runs_along() {
    let plan = plan(&example().expect("the example is a project"), System::Inch);
    let holder = plan.holder.as_ref().expect("it has a holder");
    let net = &holder.assembly.as_ref().expect("it can be made").parts[0].net;
    let said: Vec<String> =
        take_offs(net, &holder.recipes[0].off, System::Inch).iter().map(ToString::to_string).collect();
    // The front is 2 in high and the end margin 5/8 in; the back is 3 in high.
    assert!(
        said.contains(&"front left wing and front right wing: a strip of 1 3/8 in off the upper edge".to_owned()),
        "{said:#?}"
    );
    assert!(
        said.contains(&"back left wing and back right wing: a strip of 2 3/8 in off the lower edge".to_owned()),
        "{said:#?}"
    );
}
