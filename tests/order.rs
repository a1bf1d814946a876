//! The order of the making: what is done to one blank keeps its order in a batch, and what the maker writes is never
//! lost.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::{any_project, likely_project, system};
use proptest::prelude::*;
use snugfold::make::better::Better;
use snugfold::make::stage::stages;
use snugfold::make::step::{Action, Step};
use snugfold::plan::{plan, relaid};
use snugfold::project::example::example;
use snugfold::project::finding::Place;
use snugfold::project::own::{Note, NoteKind};
use snugfold::project::request::Project;

/// What is done to one blank, without how often.
fn done_to(steps: &[Step], place: Place, part: usize, half: Option<usize>) -> Vec<&Action> {
    let mine = steps.iter().filter(|s| (s.place, s.part, s.half) == (place, part, half));
    mine.map(|s| &s.action).collect()
}

fn own(plan: &snugfold::plan::Plan) -> Vec<&Note> {
    let own = plan.steps.iter().filter_map(|s| match &s.action {
        Action::Own(note) => Some(note),
        _ => None,
    });
    own.collect()
}

fn example_of(sets: u32) -> Project {
    Project { sets, ..example().expect("the example reads") }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn a_batch_groups_alike_work_and_keeps_each_blank_in_order(project in likely_project(), system in system()) {
        let few = plan(&Project { sets: 5, ..project.clone() }, system);
        let many = plan(&Project { sets: 6, ..project }, system);
        let staged = stages(&many.steps);
        prop_assert!(staged.is_sorted(), "{staged:?}");
        // Boxes are whole before they are tried in their holder.
        let tried = many.steps.iter().position(|s| matches!(s.action, Action::TryBoxesIn { .. }));
        let joined = many.steps.iter().rposition(|s| s.place != Place::Holder && matches!(s.action, Action::Join(_)));
        prop_assert!(tried.is_none() || joined < tried, "{joined:?} {tried:?}");
        for step in few.steps.iter().filter(|s| !matches!(s.place, Place::Card(_) | Place::Set)) {
            let blank = |steps: &[Step]| format!("{:?}", done_to(steps, step.place, step.part, step.half));
            prop_assert_eq!(blank(&few.steps), blank(&many.steps));
        }
    }

    /// Whatever is written, hung on whatever: each own step is there once, before and after better sheets are found.
    #[test]
    fn nothing_that_was_written_is_lost(mut project in any_project(), system in system(), at in 0_usize..60) {
        project.boxes.truncate(3);
        let bare = plan(&project, system);
        if let Some(step) = bare.steps.get(at) {
            let note = |text: &str| Note { at: step.site.clone(), kind: NoteKind::Step, text: text.into() };
            project.own.notes.extend([note("first"), note("second")]);
        }
        let written: Vec<Note> = project.own.notes.iter().filter(|n| n.kind == NoteKind::Step).cloned().collect();
        let planned = plan(&project, system);
        let count = |n: &Note, all: &[&Note]| all.iter().filter(|o| **o == n).count();
        for one in [&planned, &relaid(&planned, &[])] {
            let found = own(one);
            prop_assert_eq!(found.len(), written.len());
            prop_assert!(written.iter().all(|n| count(n, &found) == count(n, &written.iter().collect::<Vec<_>>())));
            if let Some(step) = bare.steps.get(at) {
                let host = one.steps.iter().position(|s| s.site == step.site && !matches!(s.action, Action::Own(_)));
                let first = one.steps.iter().position(|s| matches!(&s.action, Action::Own(n) if n.text == "first"));
                let second = one.steps.iter().position(|s| matches!(&s.action, Action::Own(n) if n.text == "second"));
                prop_assert!(host < first && first < second, "{:?} {:?} {:?}", host, first, second);
            }
        }
    }
}

/// Sites are told apart, and the same after other sizes were typed; keys are others then.
#[test]
fn a_note_stays_where_it_was_written_when_sizes_change() {
    let project = example_of(1);
    let system = project.system;
    let before = plan(&project, system);
    let mut sites: Vec<&str> = before.steps.iter().map(|s| s.site.as_str()).collect();
    sites.sort_unstable();
    assert!(sites.windows(2).all(|s| s[0] != s[1]), "no two steps share a site");
    let mut wider = project;
    let width = snugfold::measure::given::Given::read("3 1/2 in", system).expect("a length");
    let entry = snugfold::project::request::Entry::Length(width);
    wider.boxes[0].inputs.insert("width".to_owned(), entry);
    let after = plan(&wider, system);
    let scored = |s: &&Step| s.place == Place::Box(wider.boxes[0].id) && matches!(s.action, Action::Score(_));
    let (old, new) = (before.steps.iter().find(scored), after.steps.iter().find(scored));
    let (old, new) = (old.expect("it is scored"), new.expect("it is scored"));
    assert_eq!(old.site, new.site);
    assert_ne!(old.key, new.key);
}

/// Steps of the maker's own that hang on the cutting stay there when better sheets are found.
#[test]
fn own_steps_stay_at_the_cutting() {
    let mut project = example_of(4);
    let system = project.system;
    let bare = plan(&project, system);
    let cutting = bare.steps.iter().find(|s| matches!(s.action, Action::CutSheets { .. })).expect("sheets are cut");
    project.own.notes.push(Note { at: cutting.site.clone(), kind: NoteKind::Step, text: "sharpen".into() });
    let planned = plan(&project, system);
    let jobs = planned.sheets.iter().map(|s| s.job.clone()).collect();
    let mut search = Better::new(jobs);
    let mut found = Vec::new();
    while !search.done() {
        found.extend(search.step(100_000));
    }
    let better = relaid(&planned, &found);
    let keys = |p: &snugfold::plan::Plan| p.steps.iter().map(|s| s.key.clone()).collect::<Vec<_>>();
    assert_ne!(keys(&better), keys(&planned), "other sheets were found");
    let at = better.steps.iter().position(|s| matches!(&s.action, Action::Own(n) if n.text == "sharpen"));
    let before = at.and_then(|at| better.steps.get(at.checked_sub(1)?)).expect("it is not the first");
    assert!(matches!(before.action, Action::CutSheets { .. }), "{before:?}");
}
