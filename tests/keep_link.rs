//! Links: every request comes back, every stranger's bytes are answered.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::dice::Dice;
use common::odd::odd_project;
use common::projects::{any_project, likely_project, system};
use common::tries;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use snugfold::keep::link::{self, LinkError, body, seal};
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::example::example;
use snugfold::project::request::Project;

fn config(usual: u32) -> ProptestConfig {
    ProptestConfig { cases: tries(usual), failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(config(2_000))]

    #[test]
    fn a_request_comes_back(project in any_project()) {
        let fragment = link::write(&project).expect("it is not too long");
        prop_assert!(fragment.bytes().all(|b| b.is_ascii_alphanumeric() || b"-_.".contains(&b)));
        prop_assert_eq!(link::read(&fragment), Ok(project));
    }

    #[test]
    fn any_text_is_answered(text in ".{0,300}", code in "[A-Za-z0-9_-]{0,300}") {
        prop_assert!(link::read(&text).is_err());
        let _ = link::read(&format!("snug1.{code}"));
    }
}

proptest! {
    #![proptest_config(config(20_000))]

    /// What a field accepts can be written down and read again as the same.
    #[test]
    fn what_is_typed_can_be_kept(
        typed in "[ +−-]?[0-9]{0,3}[ ]{0,36}[0-9¼½⅓]{0,2}[./,⁄∕ ]{0,2}[0-9]{0,3}[ .]{0,2}(in|IN\\.|mm|cm|\"|″|'')?",
        system in system(),
    ) {
        if let Ok(given) = Given::read(&typed, system) {
            prop_assert_eq!(Given::read(given.text(), System::Metric), Ok(given.clone()));
            prop_assert_eq!(Given::read(given.text(), System::Inch), Ok(given));
        }
    }
}

proptest! {
    #![proptest_config(config(150))]

    #[test]
    fn what_comes_back_is_planned(project in any_project()) {
        let again = link::read(&link::write(&project).expect("it is not too long")).expect("it comes back");
        for system in System::ALL {
            let _ = plan(&again, system);
        }
    }
}

#[test]
fn the_example_makes_a_short_link() {
    let fragment = link::write(&example().expect("the example")).expect("it is not too long");
    println!("{} characters: {fragment}", fragment.len());
    assert!(fragment.len() < 250, "{}", fragment.len());
}

/// Links of version 1 that were made when it was: they open for ever, and are still made the same.
#[test]
fn old_links_open() {
    let mut count = 0;
    for entry in std::fs::read_dir("tests/data/link-1").expect("golden links are there") {
        let path = entry.expect("it can be listed").path();
        if path.extension().is_none_or(|e| e != "link") {
            continue;
        }
        let golden = std::fs::read_to_string(&path).expect("it can be read");
        let wanted = std::fs::read_to_string(path.with_extension("json")).expect("its design is beside it");
        let wanted: Project = serde_json::from_str(&wanted).expect("it is a design");
        assert_eq!(link::read(&golden).as_ref(), Ok(&wanted), "{}", path.display());
        assert_eq!(link::write(&wanted).as_deref(), Ok(golden.trim()), "{}", path.display());
        count += 1;
    }
    assert!(count >= 4, "{count} golden links");
}

/// Requests to start changing from, and their links.
fn seeds() -> Vec<Vec<u8>> {
    let mut runner = TestRunner::deterministic();
    let mut some = |project: BoxedStrategy<Project>, count| -> Vec<Project> {
        (0..count).map(|_| project.new_tree(&mut runner).expect("there is one").current()).collect()
    };
    let mut seeds = some(likely_project().boxed(), 40);
    seeds.extend(some(odd_project().boxed(), 20));
    seeds.extend(example());
    seeds.iter().map(body::write::design).collect()
}

/// Changed below the checksum and sealed again: the bytes of the body mean something else or nothing.
#[test]
fn changed_bodies_are_answered_and_planned() {
    let seeds = seeds();
    let mut dice = Dice(1);
    let (mut read, mut planned) = (0, 0);
    for turn in 0..tries(200_000) {
        let one = &seeds[dice.below(seeds.len())];
        let other = &seeds[dice.below(seeds.len())];
        let Ok(sealed) = seal::close(&dice.changed(one, other)) else {
            continue;
        };
        match link::read(&sealed) {
            Ok(project) => {
                read += 1;
                // Planning takes a thousand times as long as reading.
                if turn % 16 == 0 {
                    planned += 1;
                    for system in System::ALL {
                        let _ = plan(&project, system);
                    }
                }
                let again = link::write(&project).expect("what was read can be written");
                assert_eq!(link::read(&again), Ok(project));
            }
            Err(LinkError::NotALink | LinkError::Cut | LinkError::Damaged) => {
                panic!("it was sealed: {sealed}")
            }
            Err(_) => {}
        }
    }
    println!("changed below the checksum: {} tried, {read} designs, {planned} planned", tries(200_000));
    assert!(read > 1_000 && planned > 100);
}

/// Changed above the checksum: what comes is not what was sent, and is refused.
#[test]
fn changed_links_are_refused() {
    let links: Vec<String> = seeds().iter().filter_map(|b| seal::close(b).ok()).collect();
    let mut dice = Dice(2);
    let mut through = 0;
    for _ in 0..tries(200_000) {
        let (one, other) = (&links[dice.below(links.len())], &links[dice.below(links.len())]);
        let changed = String::from_utf8_lossy(&dice.changed(one.as_bytes(), other.as_bytes())).into_owned();
        if let Ok(project) = link::read(&changed) {
            // Nothing changed that counts: a full stop behind it, or one character put back.
            let same = links.iter().any(|l| link::read(l).as_ref() == Ok(&project));
            assert!(same, "a changed link became another design: {changed}");
            through += 1;
        }
    }
    println!("changed above the checksum: {} tried, {through} still the same design", tries(200_000));
}

#[test]
fn noise_and_endless_text_are_answered_at_once() {
    let mut dice = Dice(3);
    let noise: String = (0..1 << 20).map(|_| char::from(b' ' + dice.below(95) as u8)).collect();
    assert_eq!(link::read(&noise), Err(LinkError::NotALink));
    assert_eq!(link::read(&format!("snug1.{}", "A".repeat(1 << 20))), Err(LinkError::NotALink));
    assert!(link::read(&format!("snug1.{}", "A".repeat(60_000))).is_err());
    assert!(link::read(&"#".repeat(60_000)).is_err());
}
