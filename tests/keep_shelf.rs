//! Saved sets: whatever fails, and wherever, what was saved is there.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use std::collections::BTreeSet;

use common::dice::Dice;
use common::shelves::{FAULTS, Failing, Fault, Shared};
use snugfold::keep::file::Kept;
use snugfold::keep::notebook::Notebook;
use snugfold::keep::notebook::said::{KeepError, Saved};
use snugfold::keep::record::SetId;
use snugfold::keep::shelf::{MemoryShelf, Refused, Shelf};
use snugfold::project::example::example;
use snugfold::project::request::Project;
use snugfold::project::ticks::Ticks;

fn named(name: &str) -> Project {
    Project { name: name.to_owned(), ..example().expect("the example is a project") }
}

fn ticks(keys: &[&str]) -> Ticks {
    keys.iter().map(|&k| k.to_owned()).collect()
}

/// A shelf with two sets, each with ticks, one of them saved several times.
fn two_sets() -> (MemoryShelf, SetId, SetId) {
    let mut notebook = Notebook::new(MemoryShelf::default(), 1);
    let mut old = notebook.create(&named("first"), 100).expect("memory keeps it");
    let other = notebook.create(&named("other"), 100).expect("memory keeps it");
    notebook.save(&mut old, &named("old"), 101).expect("memory keeps it");
    for id in [old.id, other.id] {
        notebook.save_ticks(id, &ticks(&["a", "b"]), 102).expect("memory keeps it");
    }
    (notebook.shelf().clone(), old.id, other.id)
}

/// What a page that starts now finds: names, and ticks of each.
fn found(shelf: &MemoryShelf) -> Vec<(String, Ticks)> {
    let notebook = Notebook::new(shelf.clone(), 9);
    let entries = notebook.list().expect("memory can be read").entries;
    let mut all: Vec<_> =
        entries.into_iter().map(|e| (e.name, notebook.ticks(e.id).expect("memory can be read"))).collect();
    all.sort_by(|a, b| (&a.0, a.1.iter().collect::<Vec<_>>()).cmp(&(&b.0, b.1.iter().collect::<Vec<_>>())));
    all
}

type Work = fn(&mut Notebook<Failing>, SetId) -> Result<(), KeepError>;

/// Everything that writes, with the names that may be found behind it beside “other”.
const WORKS: [(&str, Work, &[&[&str]]); 9] = [
    (
        "save",
        |n, id| {
            let mut open = n.open(id, 200)?.open;
            n.save(&mut open, &named("new"), 201).map(drop)
        },
        &[&["old"], &["new"]],
    ),
    ("rename", |n, id| n.rename(id, "new", 200).map(drop), &[&["old"], &["new"]]),
    ("create", |n, _| n.create(&named("new"), 200).map(drop), &[&["old"], &["new", "old"]]),
    ("duplicate", |n, id| n.duplicate(id, 200).map(drop), &[&["old"], &["old", "old (copy)"]]),
    ("delete", |n, id| n.delete(id).map(drop), &[&["old"], &[]]),
    (
        "delete and restore",
        |n, id| {
            let deleted = n.delete(id)?;
            n.restore(&deleted, 200).map(drop)
        },
        &[&["old"], &[]],
    ),
    ("tick", |n, id| n.save_ticks(id, &ticks(&["a", "b", "c"]), 200), &[&["old"]]),
    ("bring in", |n, _| n.bring_in(&[Kept::new(named("new"))], 200).map(drop), &[&["old"], &["new", "old"]]),
    (
        "save from behind",
        |n, id| {
            let mut late = n.open(id, 200)?.open;
            late.state.revision -= 1;
            n.save(&mut late, &named("late"), 202).map(drop)
        },
        &[&["old"], &["late (other copy)", "old"]],
    ),
];

/// Every kind of work, failing at every single step in every way.
#[test]
fn cut_off_anywhere_the_old_or_the_new_is_whole() {
    let (shelf, old, _) = two_sets();
    let mut tried = 0;
    for (name, work, allowed) in WORKS {
        for fault in FAULTS {
            for steps in 0.. {
                let mut notebook = Notebook::new(Failing::after(shelf.clone(), steps, fault), 2);
                let result = work(&mut notebook, old);
                if !notebook.shelf().failed() {
                    assert_eq!(result, Ok(()), "{name}");
                    break;
                }
                tried += 1;
                check(&notebook.shelf().inner, &result, allowed, &format!("{name}, {fault:?} at step {steps}"));
            }
        }
    }
    println!("cut off at {tried} steps");
    assert!(tried > 250, "{tried}");
}

fn check(shelf: &MemoryShelf, result: &Result<(), KeepError>, allowed: &[&[&str]], case: &str) {
    let all = found(shelf);
    let (other, rest): (Vec<_>, Vec<_>) = all.into_iter().partition(|f| f.0 == "other");
    assert_eq!(other, [("other".to_owned(), ticks(&["a", "b"]))], "{case}");
    let names: Vec<&str> = rest.iter().map(|f| f.0.as_str()).collect();
    assert!(allowed.contains(&&names[..]), "{case}: {names:?}");
    if result.is_ok() {
        let last = allowed.last().is_some_and(|a| *a == names);
        assert!(last || case.starts_with("delete and restore"), "{case} went well and left {names:?}");
    }
    for (name, kept) in &rest {
        if name == "old" && !case.starts_with("tick") && !case.starts_with("delete") {
            assert_eq!(kept, &ticks(&["a", "b"]), "{case}");
        }
        if case.starts_with("tick") {
            assert!(kept == &ticks(&["a", "b"]) || kept == &ticks(&["a", "b", "c"]), "{case}: {kept:?}");
        }
    }
    // The next page works on: it saves, and what was torn is set aside and not written over.
    let mut next = Notebook::new(shelf.clone(), 3);
    let aside = next.list().expect("memory can be read").set_aside;
    for entry in next.list().expect("memory can be read").entries {
        let mut open = next.open(entry.id, 300).expect("it can be read").open;
        assert_eq!(next.save(&mut open, &named("later"), 301), Ok(Saved::Here), "{case}");
        assert_eq!(next.open(entry.id, 302).expect("it can be read").project.name, "later", "{case}");
    }
    let listing = next.list().expect("memory can be read");
    assert!(listing.entries.iter().all(|e| e.name == "later"), "{case}");
    assert_eq!(listing.set_aside, aside, "{case}");
    for torn in aside {
        assert_eq!(next.set_aside_text(&torn.key).ok().flatten().as_ref(), shelf.texts.get(&torn.key), "{case}");
    }
}

#[test]
fn full_storage_is_said_and_loses_nothing() {
    let (shelf, old, _) = two_sets();
    let before = found(&shelf);
    for steps in 0..20 {
        let mut notebook = Notebook::new(Failing::after(shelf.clone(), steps, Fault::Full), 2);
        if notebook.rename(old, "new", 200) == Err(KeepError::Refused(Refused::Full)) {
            assert_eq!(found(&notebook.shelf().inner), before, "{steps}");
        }
    }
}

/// Fifty ways in which a text on a shelf can be spoilt.
fn spoilt(text: &str, way: usize) -> String {
    let fields =
        ["snugfold", "after", "saved_at", "project", "cards", "boxes", "grammage", "form", "card", "sheet_width"];
    match way {
        0 => String::new(),
        1 => "null".to_owned(),
        2 => "[]".to_owned(),
        3 => "{}".to_owned(),
        4 => "\u{0}\u{0}\u{0}".to_owned(),
        5 => "undefined".to_owned(),
        6 => text.replacen("\"snugfold\":1", "\"snugfold\":2", 1),
        7 => text.replacen("\"snugfold\":1", "\"snugfold\":\"1\"", 1),
        8 => text.replacen("\"snugfold\":1", "\"snugfold\":-1", 1),
        9 => format!("{text}{text}"),
        10 => text.replace('"', "'"),
        11 => text.replace("12 in", "twelve"),
        12 => text.replace("270", "-270"),
        13 => text.replace("270", "1e99"),
        14 => text.replace("#c9a878", "brown"),
        15 => text.replace(":", ""),
        16 => text.replacen("\"saved_at\":", "\"saved_at\":-", 1),
        17 => text.replacen("\"after\":[", "\"after\":[\"x\",", 1),
        18 => text.replacen("\"sets\":", "\"heaps\":", 1),
        19 => text.replacen("\"name\":\"", &format!("\"name\":\"{}", "x".repeat(201)), 1),
        20..30 => text.replacen(&format!("\"{}\"", fields[way - 20]), "\"mould\"", 1),
        _ => {
            let characters = text.chars().count();
            text.chars().take(characters * (way - 29) / 21 - 1).collect()
        }
    }
}

#[test]
fn fifty_spoilt_records_are_set_aside_untouched() {
    let (shelf, old, other) = two_sets();
    let (key, good) = shelf
        .texts
        .iter()
        .find(|(k, _)| k.starts_with(&format!("set/{}/", old.0)))
        .map(|(k, t)| (k.clone(), t.clone()))
        .expect("it is there");
    for way in 0..50 {
        let mut shelf = shelf.clone();
        let text = spoilt(&good, way);
        assert_ne!(text, good, "way {way}");
        shelf.texts.insert(key.clone(), text.clone());
        let mut notebook = Notebook::new(shelf, 2);
        let listing = notebook.list().expect("memory can be read");
        assert_eq!(listing.set_aside.iter().map(|a| &a.key).collect::<Vec<_>>(), [&key], "way {way}");
        assert!(!listing.set_aside[0].why.is_empty(), "way {way}");
        assert_eq!(listing.entries.iter().map(|e| e.id).collect::<Vec<_>>(), [other], "way {way}");
        assert!(matches!(notebook.open(old, 200), Err(KeepError::Unreadable(_))), "way {way}");
        assert!(notebook.delete(old).is_err() && notebook.rename(old, "x", 200).is_err(), "way {way}");
        // A page that still has the set open saves beside what it cannot read.
        let mut open = notebook.open(other, 200).expect("it can be read").open;
        open.id = old;
        assert_eq!(notebook.save(&mut open, &named("new"), 201), Ok(Saved::Here), "way {way}");
        assert_eq!(notebook.set_aside_text(&key), Ok(Some(text)), "way {way}");
        assert_eq!(notebook.open(old, 202).map(|o| o.project.name), Ok("new".to_owned()), "way {way}");
        assert_eq!(notebook.discard("last"), Err(KeepError::Gone));
        let discarded = notebook.discard(&key).expect("it is set aside");
        assert!(notebook.list().is_ok_and(|l| l.set_aside.is_empty()), "way {way}");
        assert_eq!(notebook.put_back(&discarded), Ok(()), "way {way}");
        assert_eq!(notebook.set_aside_text(&key), Ok(Some(discarded.text)), "way {way}");
        assert!(notebook.discard(&key).is_ok(), "way {way}");
        assert!(notebook.list().is_ok_and(|l| l.set_aside.is_empty()), "way {way}");
    }
}

#[test]
fn keys_of_others_are_left_alone() {
    let mut shelf = MemoryShelf::default();
    for key in ["current", "theme", "setting", "set/x", "ticks/7/-"] {
        shelf.texts.insert(key.to_owned(), "theirs".to_owned());
    }
    let before = shelf.clone();
    let notebook = Notebook::new(shelf, 1);
    let listing = notebook.list().expect("memory can be read");
    assert_eq!(listing.set_aside.iter().map(|a| a.key.as_str()).collect::<Vec<_>>(), ["set/x", "ticks/7/-"]);
    assert_eq!(notebook.last(), Ok(None));
    assert_eq!(notebook.shelf(), &before);
}

#[test]
fn two_pages_in_turns_keep_both() {
    let shared = Shared::default();
    let (mut one, mut two) = (Notebook::new(shared.clone(), 1), Notebook::new(shared.clone(), 2));
    let mut at_one = one.create(&named("start"), 1).expect("memory keeps it");
    let mut at_two = two.open(at_one.id, 2).expect("it is there").open;
    assert_eq!(one.save(&mut at_one, &named("one"), 3), Ok(Saved::Here));
    assert_eq!(two.save(&mut at_two, &named("two"), 4), Ok(Saved::AsCopyOf(at_one.id)));
    assert_ne!(at_one.id, at_two.id);
    assert_eq!(two.save(&mut at_two, &named("two again"), 5), Ok(Saved::Here));
    assert_eq!(one.save(&mut at_one, &named("one again"), 6), Ok(Saved::Here));
    let names: Vec<String> = one.list().expect("memory can be read").entries.into_iter().map(|e| e.name).collect();
    assert_eq!(names, ["one again", "two again"]);
    // One deletes what the other has open: the next save brings it back.
    two.delete(at_one.id).expect("it is there");
    assert_eq!(one.save(&mut at_one, &named("still here"), 7), Ok(Saved::Here));
    assert_eq!(one.open(at_one.id, 8).map(|o| o.project.name), Ok("still here".to_owned()));
}

/// A browser may show one page's writes to another late: both then save on top of the same state.
#[test]
fn two_pages_at_once_keep_both() {
    let (shelf, old, other) = two_sets();
    let saved = |writer, name| {
        let mut notebook = Notebook::new(shelf.clone(), writer);
        let mut open = notebook.open(old, 200).expect("it is there").open;
        notebook.save(&mut open, &named(name), 201).expect("memory keeps it");
        notebook.save_ticks(old, &ticks(&["a", "b", name]), 202).expect("memory keeps it");
        notebook.shelf().clone()
    };
    let mut both = saved(5, "five");
    for (key, text) in &saved(6, "six").texts {
        both.texts.insert(key.clone(), text.clone());
    }
    let mut notebook = Notebook::new(both, 7);
    let opened = notebook.open(old, 300).expect("it is there");
    assert_eq!(opened.project.name, "six");
    assert_eq!(opened.ticks, ticks(&["a", "b", "five", "six"]));
    let listing = notebook.list().expect("memory can be read");
    let names: BTreeSet<String> = listing.entries.into_iter().map(|e| e.name).collect();
    assert_eq!(names, ["five (other copy)".to_owned(), "other".to_owned(), "six".to_owned()].into());
    assert!(notebook.open(other, 301).is_ok() && listing.set_aside.is_empty());
    assert_eq!(notebook.last(), Ok(Some(other)));
}

/// Pages that come, open, save and end anywhere: what was saved last is there until a page that has read it saves over
/// it.
#[test]
fn a_thousand_careless_pages_lose_nothing() {
    let mut dice = Dice(5);
    let mut shelf = MemoryShelf::default();
    let mut first = Notebook::new(shelf.clone(), 0);
    let id = first.create(&named("0"), 1).expect("memory keeps it").id;
    shelf.clone_from(first.shelf());
    let mut current = BTreeSet::from(["0".to_owned()]);
    for page in 1..1_000_u32 {
        let fault = FAULTS[dice.below(FAULTS.len())];
        let steps = dice.below(40);
        let mut notebook = Notebook::new(Failing::after(shelf.clone(), steps, fault), page);
        let name = page.to_string();
        let now = u64::from(page) * 10;
        let opened = notebook.open(id, now).ok();
        let over = opened.as_ref().map(|o| o.project.name.clone());
        let saved = opened.map(|o| notebook.save(&mut { o.open }, &named(&name), now + 1));
        shelf.clone_from(&notebook.shelf().inner);
        let there: BTreeSet<String> =
            found(&shelf).into_iter().map(|f| f.0.trim_end_matches(" (other copy)").to_owned()).collect();
        assert!(there.contains(&name) || !matches!(saved, Some(Ok(_))), "{page}");
        // It may be there though the page ended before it was told so.
        if there.contains(&name) {
            current.remove(&over.expect("it was opened"));
            current.insert(name);
        }
        assert!(current.is_subset(&there), "{page} lost of {current:?}: {there:?}");
    }
    assert!(found(&shelf).len() < 20);
}

#[test]
fn the_shelf_of_a_page_is_read_by_key() {
    let mut shelf = MemoryShelf::default();
    assert_eq!(shelf.write("a", "b").and_then(|()| shelf.read("a")), Ok(Some("b".to_owned())));
    assert_eq!(shelf.remove("a").and_then(|()| shelf.keys()), Ok(vec![]));
}
