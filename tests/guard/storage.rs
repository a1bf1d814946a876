//! A dump of storage as the page leaves it: records, ticks, ways back. It opens, and the same work writes it again.

use std::collections::BTreeMap;

use snugfold::keep::notebook::Notebook;
use snugfold::keep::record::SetId;
use snugfold::keep::shelf::{MemoryShelf, Shelf};
use snugfold::keep::trail::Trail;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::project::example::example;
use snugfold::project::own::{Note, NoteKind};
use snugfold::project::picture::Picture;
use snugfold::project::request::{Entry, Project};
use snugfold::project::ticks::Ticks;

use super::common::typical::{form, set_of};
use super::compare;

fn named(name: &str) -> Project {
    Project { name: name.to_owned(), ..example().expect("there is one") }
}

/// A design edited five times, the first first.
fn edits() -> Vec<Project> {
    let mut all = vec![named("Für Änne")];
    for n in 0..5_u32 {
        let mut next = all.last().expect("there is one").clone();
        match n {
            0 => next.sets = 12,
            1 => {
                let width = Given::read("3 1/2 in", System::Inch).expect("a length");
                next.boxes[0].inputs.insert("width".to_owned(), Entry::Length(width));
            }
            2 => next.own.picture = Picture::read("data:image/jpeg;base64,/9j/4AAQ").expect("a picture"),
            3 => next.boxes.push(set_of(form("pillow")).boxes.remove(0)),
            _ => next.own.notes.push(Note {
                at: "0123456789abcdef".to_owned(),
                kind: NoteKind::Note,
                text: "press for a minute".to_owned(),
            }),
        }
        all.push(next);
    }
    all
}

/// Everything that is done to the shelf, and what it must give back.
fn worked() -> (MemoryShelf, Vec<(SetId, Project, Trail, Ticks)>) {
    let mut book = Notebook::new(MemoryShelf::default(), 0x0bad_cafe);
    let all = edits();
    let mut open = book.create(&all[0], 1_790_000_000_000).expect("memory keeps it");
    for (n, project) in (1..).zip(&all[1..4]) {
        book.save(&mut open, project, 1_790_000_000_000 + n).expect("memory keeps it");
    }
    let trail = Trail { past: all[..3].to_vec(), future: vec![all[5].clone(), all[4].clone()] };
    book.save_trail(open.id, &all[3], &trail);
    let ticks: Ticks = ["0123456789abcdef", "2/", "2/0f0f*37"].map(str::to_owned).into_iter().collect();
    book.save_ticks(open.id, &ticks, 1_790_000_000_009).expect("memory keeps it");
    let other = book.create(&named("other"), 1_790_000_000_010).expect("memory keeps it");
    let without = |picture: &Picture, project: &Project| {
        let mut project = project.clone();
        project.own.picture.clone_from(picture);
        project
    };
    // A way back has the picture of now.
    let picture = &all[3].own.picture;
    let past = trail.past.iter().map(|p| without(picture, p)).collect();
    let trail = Trail { past, future: trail.future };
    let wanted =
        vec![(open.id, all[3].clone(), trail, ticks), (other.id, named("other"), Trail::default(), Ticks::default())];
    (book.shelf().clone(), wanted)
}

fn dump(shelf: &MemoryShelf) -> String {
    let keys = shelf.keys().expect("memory can be read");
    let text = |key: &String| shelf.read(key).expect("memory can be read").unwrap_or_default();
    let all: BTreeMap<String, String> = keys.iter().map(|key| (key.clone(), text(key))).collect();
    serde_json::to_string_pretty(&all).expect("it is plain data") + "\n"
}

#[test]
fn the_same_work_leaves_the_same_storage() {
    compare("storage.json", &dump(&worked().0));
}

#[test]
fn recorded_storage_opens_with_its_ways_back_and_ticks() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/guard/storage.json");
    let recorded = std::fs::read_to_string(path).expect("it is recorded");
    let all: BTreeMap<String, String> = serde_json::from_str(&recorded).expect("it is a dump");
    let mut shelf = MemoryShelf::default();
    for (key, text) in &all {
        shelf.write(key, text).expect("memory keeps it");
    }
    let mut book = Notebook::new(shelf, 1);
    let listing = book.list().expect("memory can be read");
    assert!(listing.set_aside.is_empty(), "{:?}", listing.set_aside);
    for (id, project, trail, ticks) in worked().1 {
        let opened = book.open(id, 1_790_000_000_100).expect("it is there");
        assert_eq!((&opened.project, &opened.ticks), (&project, &ticks));
        assert_eq!(book.trail(id, &project), trail);
    }
}
