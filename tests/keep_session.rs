//! What one window works on: nothing that could not be saved is let go of.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::shelves::{Narrow, Shared};
use snugfold::keep::notebook::Notebook;
use snugfold::keep::notebook::said::{KeepError, Saved};
use snugfold::keep::record::SetId;
use snugfold::keep::session::{Session, Work};
use snugfold::keep::shelf::Refused;
use snugfold::keep::trail::Trail;
use snugfold::project::example::example;
use snugfold::project::request::Project;
use snugfold::project::ticks::Ticks;

const FULL: KeepError = KeepError::Refused(Refused::Full);

fn named(name: &str) -> Project {
    Project { name: name.to_owned(), ..example().expect("the example is a project") }
}

fn work(name: &str) -> Work {
    Work { project: named(name), ..Work::default() }
}

fn ticks(keys: &[&str]) -> Ticks {
    keys.iter().map(|&k| k.to_owned()).collect()
}

/// A session with “first” saved and open, and the way to its room.
fn begun() -> (Session<Narrow>, SetId) {
    let shelf = Narrow::default();
    shelf.make_room();
    let mut session = Session::new(Notebook::new(shelf, 1));
    session.save(&mut work("first"), 1).expect("there is room");
    let first = session.current().expect("it is open");
    (session, first)
}

/// The names and ticks of what is saved.
fn saved(session: &Session<Narrow>) -> Vec<(String, Ticks)> {
    let entries = session.notebook().list().expect("memory can be read").entries;
    let mut all: Vec<_> =
        entries.into_iter().map(|e| (e.name, session.notebook().ticks(e.id).expect("memory can be read"))).collect();
    all.sort_by(|a, b| a.0.cmp(&b.0));
    all
}

fn names(session: &Session<Narrow>) -> Vec<String> {
    saved(session).into_iter().map(|s| s.0).collect()
}

#[test]
fn what_could_not_be_saved_is_not_saved() {
    let (mut session, _) = begun();
    let mut long = work("first, and a longer name than there is room for");
    session.notebook().shelf().fill();
    assert_eq!(session.save(&mut long, 2), Err(FULL));
    assert!(!session.is_saved(&long.project, &long.ticks));
    session.notebook().shelf().make_room();
    assert_eq!(session.save(&mut long, 3), Ok(Saved::Here));
    assert!(session.is_saved(&long.project, &long.ticks));
    assert_eq!(names(&session), [long.project.name]);
}

#[test]
fn ticks_that_could_not_be_saved_are_not_saved() {
    let (mut session, _) = begun();
    let mut ticked = Work { ticks: ticks(&["a", "b"]), ..work("first") };
    session.notebook().shelf().fill();
    assert_eq!(session.save(&mut ticked, 2), Err(FULL));
    assert!(!session.is_saved(&ticked.project, &ticked.ticks));
    session.notebook().shelf().make_room();
    assert_eq!(session.save(&mut ticked, 3), Ok(Saved::Here));
    assert_eq!(saved(&session), [("first".to_owned(), ticks(&["a", "b"]))]);
}

/// Work that waits is saved to its own set once there is room, wherever the maker is by then.
#[test]
fn what_waits_is_saved_to_its_own_set() {
    let (mut session, first) = begun();
    session.start(None);
    session.save(&mut work("second"), 2).expect("there is room");
    let second = session.current().expect("it is open");
    session.open(first, None, 3).expect("it is there");
    session.notebook().shelf().fill();
    let late = Work { ticks: ticks(&["a"]), ..work("first, with more of a name than fits") };
    let opened = session.open(second, Some(late.clone()), 4).expect("it is there");
    assert_eq!(opened.project, named("second"));
    assert_eq!(session.waiting(), [(1, late.project.name.clone())]);
    assert_eq!(session.try_waiting(5), 0, "there is no room yet");
    assert_eq!(session.waiting().len(), 1);
    session.notebook().shelf().make_room();
    assert_eq!(session.try_waiting(6), 1);
    assert_eq!(session.waiting(), []);
    assert_eq!(saved(&session), [(late.project.name.clone(), late.ticks), ("second".to_owned(), ticks(&[]))]);
    assert_eq!(session.current(), Some(second));
    assert_eq!(session.notebook().last(), Ok(Some(second)), "what is on the screen is opened next time");
}

#[test]
fn what_waits_is_what_is_opened() {
    let (mut session, first) = begun();
    session.notebook().shelf().fill();
    let trail = Trail { past: vec![named("first")], future: Vec::new() };
    let late = Work { trail, ..work("first, with more of a name than fits") };
    session.start(Some(late.clone()));
    let fresh = work("fresh, which has no room either");
    assert_eq!(session.save(&mut fresh.clone(), 2), Err(FULL));
    assert_eq!(session.open(first, Some(fresh.clone()), 3), Ok(late.clone()));
    assert_eq!(session.current(), Some(first));
    assert_eq!(session.take_up(2, Some(late.clone())), Some(fresh));
    assert_eq!(session.take_up(2, None), None, "it is taken up already");
    assert_eq!(session.current(), None, "it never was saved");
    assert_eq!(session.waiting(), [(3, late.project.name)]);
}

#[test]
fn where_another_cannot_be_opened_the_work_stays() {
    let (mut session, first) = begun();
    session.notebook().shelf().fill();
    let mut late = work("first, with more of a name than fits");
    assert_eq!(session.open(SetId(99), Some(late.clone()), 2), Err(KeepError::Gone));
    assert_eq!((session.current(), session.waiting()), (Some(first), Vec::new()));
    session.notebook().shelf().make_room();
    session.save(&mut late, 3).expect("there is room");
    assert_eq!(names(&session), [late.project.name]);
}

#[test]
fn a_set_is_deleted_with_what_waits_for_it_and_comes_back_with_it() {
    let (mut session, first) = begun();
    session.notebook().shelf().fill();
    let late = Work { ticks: ticks(&["a"]), ..work("first, with more of a name than fits") };
    session.start(Some(late.clone()));
    let deleted = session.delete(first, &work("another")).expect("it is there");
    session.notebook().shelf().make_room();
    assert_eq!((session.try_waiting(2), names(&session)), (0, Vec::new()), "nothing brings it back by itself");
    session.notebook_mut().restore(&deleted, 3).expect("there is room");
    assert_eq!(saved(&session), [(late.project.name, late.ticks)]);
}

#[test]
fn the_open_set_is_deleted_with_what_is_not_saved_of_it() {
    let (mut session, first) = begun();
    session.notebook().shelf().fill();
    let late = work("first, with more of a name than fits");
    assert_eq!(session.save(&mut late.clone(), 2), Err(FULL));
    let deleted = session.delete(first, &late).expect("it is there");
    assert!(session.is_saved(&late.project, &late.ticks), "it is not saved anew before it is changed");
    assert_eq!((session.current(), deleted.kept.project), (None, late.project));
}

#[test]
fn a_set_is_renamed_with_what_waits_for_it() {
    let (mut session, first) = begun();
    session.notebook().shelf().fill();
    session.start(Some(work("first, with more of a name than fits")));
    session.notebook().shelf().make_room();
    session.rename(first, "third", 2).expect("there is room");
    assert_eq!(session.try_waiting(3), 1);
    assert_eq!(names(&session), ["third"]);
}

#[test]
fn all_has_what_is_not_saved_too() {
    let (mut session, _) = begun();
    session.notebook().shelf().fill();
    session.start(Some(work("waits, for there is no room")));
    let all = session.all(&work("on the screen")).expect("memory can be read");
    let names: Vec<String> = all.into_iter().map(|kept| kept.project.name).collect();
    assert_eq!(names, ["first", "waits, for there is no room", "on the screen"]);
}

/// Two windows on one set: the one that comes later has a set of its own from then on, whatever is saved or taken back.
#[test]
fn a_copy_keeps_its_name() {
    let shared = Shared::default();
    let mut one = Session::new(Notebook::new(shared.clone(), 1));
    let mut two = Session::new(Notebook::new(shared, 2));
    one.save(&mut work("Tea"), 1).expect("memory keeps it");
    let id = one.current().expect("it is open");
    let mut there = two.open(id, None, 2).expect("it is there");
    let with = |sets| Project { sets, ..named("Tea") };
    one.save(&mut Work { project: with(5), ..Work::default() }, 3).expect("memory keeps it");
    there.trail.past.push(there.project.clone());
    there.project.sets = 4;
    assert_eq!(two.save(&mut there, 4), Ok(Saved::AsCopyOf(id)));
    assert_eq!(there.project.name, "Tea (other copy)");
    assert!(two.is_saved(&there.project, &there.ticks));
    let own = two.current().expect("it is open");
    assert_eq!(two.notebook().trail(own, &there.project), there.trail, "its way back is kept with it");
    there.project = there.trail.past.pop().expect("a step back");
    assert_eq!(two.save(&mut there, 5), Ok(Saved::Here));
    let all = two.notebook().list().expect("memory can be read").entries;
    let all: Vec<_> = all.into_iter().map(|e| (e.name, e.project.sets)).collect();
    assert_eq!(all, [("Tea (other copy)".to_owned(), 3), ("Tea".to_owned(), 5)]);
    assert_eq!((one.current(), two.current()), (Some(id), Some(own)));
}
