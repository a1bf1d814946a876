//! Files: every request comes back, every stranger's bytes are answered.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::dice::Dice;
use common::projects::any_project;
use common::tries;
use proptest::collection::{btree_set, vec};
use proptest::option;
use proptest::prelude::*;
use snugfold::keep::file::{self, FileError, Kept, MOST_BYTES, MOST_SETS, MOST_WRITTEN, Reading};
use snugfold::keep::limits::Excess;
use snugfold::project::example::example;
use snugfold::project::request::Entry;

fn kept() -> impl Strategy<Value = Kept> {
    (any_project(), btree_set("[0-9a-f]{16}", 0..5), option::of(any::<u64>()))
        .prop_map(|(project, ticks, saved_at)| Kept { project, ticks: ticks.into_iter().collect(), saved_at })
}

fn config(cases: u32) -> ProptestConfig {
    ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(config(500))]

    #[test]
    fn a_set_comes_back(kept in kept()) {
        prop_assert_eq!(file::read(file::write(&kept).as_bytes()), Ok(vec![kept]));
    }

    #[test]
    fn a_bare_request_is_read_too(project in any_project()) {
        let text = serde_json::to_string(&project).expect("it is plain data");
        prop_assert_eq!(file::read(text.as_bytes()), Ok(vec![Kept::new(project)]));
    }

    #[test]
    fn any_bytes_are_answered(bytes in vec(any::<u8>(), 0..300), text in ".{0,100}") {
        prop_assert!(file::read(&bytes).is_err());
        prop_assert!(file::read(text.as_bytes()).is_err());
    }
}

proptest! {
    #![proptest_config(config(50))]

    #[test]
    fn a_bundle_comes_back(sets in vec(kept(), 0..6)) {
        prop_assert_eq!(file::read(file::write_all(&sets)[0].as_bytes()), Ok(sets));
    }
}

fn example_text() -> String {
    file::write(&Kept::new(example().expect("the example")))
}

fn fault(text: &str) -> FileError {
    file::read(text.as_bytes()).expect_err("it cannot be read")
}

#[test]
fn each_fault_has_its_name_and_says_how_to_mend_it() {
    let good = example_text();
    for text in ["", " \n", "\u{feff}"] {
        assert_eq!(fault(text), FileError::Empty);
    }
    assert_eq!(file::read(b"\xff\xfe{}"), Err(FileError::NotText));
    assert_eq!(fault("a shopping list"), FileError::NotJson { line: 1 });
    assert_eq!(fault(&good.replacen("\"sets\":", "\"sets\"", 1)), FileError::NotJson { line: 1 });
    for other in ["{}", "[]", "3", "null", "\"snugfold\"", "{\"snugfold\": 1}", "{\"snugfold\": 0, \"project\": {}}"] {
        assert_eq!(fault(other), FileError::NotOurs, "{other}");
    }
    assert_eq!(fault("{\"snugfold\": \"one\", \"project\": {}}"), FileError::NotOurs);
    let newer = good.replacen("\"snugfold\":1", "\"snugfold\":2", 1).replacen("\"sets\"", "\"heaps\"", 1);
    assert_eq!(fault(&newer), FileError::Newer { version: 2 });
    for cut in (good.find('{').unwrap_or(0) + 1..good.trim_end().len()).filter(|&i| good.is_char_boundary(i)) {
        assert_eq!(fault(&good[..cut]), FileError::Cut, "{cut}");
    }
    let wrong = fault(&good.replacen("12 in", "twelve", 1)).to_string();
    assert!(wrong.starts_with("Line ") && wrong.contains("“twelve” is no length"), "{wrong}");
    let wrong = fault(&good.replacen("\"grammage\"", "\"weight\"", 1)).to_string();
    assert!(wrong.contains("card 1: “weight” is not known here"), "{wrong}");
    let wrong = fault(&good.replacen("\"id\":1", "\"id\":\"one\"", 1)).to_string();
    assert!(wrong.contains("card 1, “id”: a whole number from 0 to 65,535 belongs here, not “one”"), "{wrong}");
    assert!(wrong.ends_with("open another copy of the file"), "{wrong}");
}

#[test]
fn what_is_too_large_is_refused() {
    let mut kept = Kept::new(example().expect("the example"));
    kept.project.boxes[0].name = "x".repeat(201);
    let excess = Excess::Long { what: "the name of a box or holder", is: 201, most: 200 };
    assert_eq!(fault(&file::write(&kept)), FileError::Excess(excess));
    let part = kept.project.boxes[1].clone();
    kept.project.boxes = vec![part; 201];
    assert!(matches!(fault(&file::write(&kept)), FileError::Excess(Excess::Many { is: 201, .. })));
    assert_eq!(fault(&" ".repeat(MOST_BYTES + 1)), FileError::TooLarge);
    let set = "{\"project\":{\"cards\":[],\"boxes\":[]}},".repeat(MOST_SETS + 1);
    let sets = format!("{{\"snugfold\":1,\"sets\":[{}]}}", set.trim_end_matches(','));
    assert_eq!(fault(&sets), FileError::TooLarge);
    for deep in ["[", "{\"project\":"] {
        assert!(file::read(deep.repeat(100_000).as_bytes()).is_err());
    }
}

/// More than one file holds is written as several.
#[test]
fn years_of_sets_can_be_read_back() {
    let mut sets = Vec::new();
    for i in 0..5_000 {
        let mut kept = Kept::new(example().expect("the example"));
        kept.project.name = format!("{i}");
        sets.push(kept);
    }
    let files = file::write_all(&sets);
    assert!(files.len() > 2 && files.iter().all(|f| f.len() <= MOST_WRITTEN));
    let read: Vec<Kept> = files.iter().flat_map(|f| file::read(f.as_bytes()).expect("it can be read")).collect();
    assert_eq!(read, sets);
    assert_eq!(file::write_all(&[]).len(), 1);
}

/// Earlier builds wrote files of up to 4 MB.
#[test]
fn a_large_backup_of_an_earlier_build_can_be_read() {
    let mut sets = Vec::new();
    for i in 0..MOST_SETS {
        let mut kept = Kept::new(example().expect("the example"));
        kept.project.name = format!("{i} {}", "x".repeat(190));
        kept.project.own.credit = "y".repeat(200);
        kept.project.batch.names = "Ada Lovelace\n".repeat(50);
        sets.push(kept);
    }
    let rows: Vec<String> =
        sets.iter().map(|kept| file::write(kept).trim_end().replacen("\"snugfold\":1,", "", 1)).collect();
    let text = format!("{{\"snugfold\":1,\"sets\":[{}]}}\n", rows.join(","));
    println!("{} bytes", text.len());
    assert!(text.len() > 3_800_000 && text.len() <= MOST_BYTES, "{}", text.len());
    assert_eq!(file::read(text.as_bytes()), Ok(sets));
}

/// A file is read set by set, and what is wrong in it is said to be where it is.
#[test]
fn a_bundle_is_read_set_by_set() {
    let kept = Kept::new(example().expect("the example"));
    let text = file::write_all(&[kept.clone(), kept.clone(), kept.clone()]).concat();
    let mut reading = Reading::begin(text.as_bytes()).expect("it is a bundle");
    assert_eq!((reading.total(), reading.next()), (3, Some(Ok(kept))));
    assert_eq!(reading.total(), 3);
    let text = text.replace("},{\"project\"", "},\n{\"project\"");
    let (head, tail) = text.split_at(text.rfind("\"12 in\"").expect("it is there"));
    let broken = format!("{head}{}", tail.replacen("\"12 in\"", "\"twelve\"", 1));
    let said = fault(&broken).to_string();
    assert!(said.starts_with("Line 3 of this file, set 3, card 2, “sheet_height”: “twelve” is no length"), "{said}");
}

/// The largest design that is kept, with texts that JSON has to spell out.
#[test]
fn the_largest_design_can_be_read_back() {
    let mut project = example().expect("the example");
    let part = project.boxes[0].clone();
    project.boxes = (0..200).map(|_| part.clone()).collect();
    for (i, part) in project.boxes.iter_mut().enumerate() {
        part.name = "\0".repeat(200);
        for j in 0..17 {
            let key = format!("{j:02}{}", "\u{1}".repeat(58));
            part.inputs.insert(key, Entry::Count(i as u32));
        }
    }
    let kept = Kept::new(project);
    let text = file::write(&kept);
    println!("{} bytes", text.len());
    assert_eq!(file::read(text.as_bytes()), Ok(vec![kept.clone()]));
    let mut more = kept;
    for part in &mut more.project.boxes {
        part.inputs.extend((50..52).map(|j| (format!("{j}{}", "\u{1}".repeat(58)), Entry::Count(1))));
    }
    assert!(matches!(fault(&file::write(&more)), FileError::Excess(Excess::Many { what: "bytes of text", .. })));
}

#[test]
fn changed_files_are_answered() {
    let good = example_text();
    let other = file::write_all(&[Kept::new(example().expect("the example"))]).concat();
    let mut dice = Dice(4);
    let mut read = 0;
    for _ in 0..tries(20_000) {
        let changed = dice.changed(good.as_bytes(), other.as_bytes());
        match file::read(&changed) {
            Ok(sets) => {
                read += 1;
                assert_eq!(file::read(file::write_all(&sets)[0].as_bytes()), Ok(sets));
            }
            Err(why) => assert!(!why.to_string().is_empty()),
        }
    }
    println!("changed files: {} tried, {read} read", tries(20_000));
}

/// A picture and what the maker reckons with are in the file, not in the link; what is no picture is refused, whatever
/// it is.
#[test]
fn a_picture_and_the_reckoning_are_in_the_file_alone() {
    use snugfold::project::batch::Batch;
    use snugfold::project::class::Class;
    use snugfold::project::picture::{MOST, Picture};
    use snugfold::project::trade::Trade;
    let mut project = example().expect("the example reads");
    let begin = "data:image/jpeg;base64,";
    project.own.picture = Picture::read(&format!("{begin}/9j/4AAQSkZJRgABAQ==")).expect("a picture");
    let currency = "EUR".into();
    project.trade = Trade {
        currency,
        hour: 1_500,
        trims: 80,
        expenses: 10,
        profit: 25,
        shelf: 180,
        with_hours: 3,
        material: 5,
        stall: 3_000,
        fee: 9_000,
    };
    let ready = snugfold::project::class::Ready::CutOut;
    project.class = Class { makers: 11, each: 2, spares: 15, minutes: 150, slow: 40, breaks: 1, ready };
    project.batch = Batch { helpers: 3, evening: 90, names: "Ada\n礼\n".into() };
    let text = file::write(&Kept::new(project.clone()));
    assert_eq!(file::read(text.as_bytes()).expect("it reads")[0].project, project);
    let linked =
        snugfold::keep::link::read(&snugfold::keep::link::write(&project).expect("it is short")).expect("it reads");
    assert!(linked.own.picture.is_empty() && linked.trade == Trade::default());
    assert!(linked.class == Class::default() && linked.batch == Batch::default());
    let long = format!("{begin}{}", "A".repeat(MOST));
    for bad in
        ["data:image/png;base64,AAAA", "data:image/jpeg;base64,A\\\"><script>", "https://example.org/a.jpg", "", &long]
    {
        let changed = text.replace(project.own.picture.address(), bad);
        assert!(file::read(changed.as_bytes()).is_err(), "{bad:.40}");
    }
}
