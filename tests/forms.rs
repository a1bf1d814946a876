//! Every form proved over its whole range.
use snugfold::fold::prove::faults;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::example::example;

#[test]
fn the_example_folds_in_both_systems() {
    let project = example().expect("the example is a project");
    for system in System::ALL {
        let plan = plan(&project, system);
        assert_eq!(plan.findings.iter().filter(|f| f.weight == snugfold::project::finding::Weight::Stop).count(), 0, "{:?}", plan.findings);
        for part in plan.parts() {
            let assembly = part.assembly.as_ref().expect("nothing stops it");
            let f = faults(assembly, part.thickness);
            assert!(f.is_empty(), "{} {system:?} {:#?}\n{:?}", part.name, f, assembly.parts[0].net.panels.iter().map(|p| p.name).enumerate().collect::<Vec<_>>());
        }
    }
}
