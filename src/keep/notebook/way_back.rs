//! The way back of each set: kept beside it, and the first thing to go where there is no room.

use crate::keep::record::SetId;
use crate::keep::shelf::Shelf;
use crate::keep::trail::Trail;
use crate::project::request::Project;

use super::Notebook;

/// What the key of a trail begins with; the set's number follows.
const TRAIL: &str = "trail/";

fn key(id: SetId) -> String {
    format!("{TRAIL}{}", id.0)
}

impl<S: Shelf> Notebook<S> {
    /// Keeps the way back of a set whose design is `now`, where there is room: nothing hangs on it.
    pub fn save_trail(&mut self, id: SetId, now: &Project, trail: &Trail) {
        if self.shelf.write(&key(id), &trail.text(now)).is_err() {
            self.forget_trail(id);
        }
    }

    /// The way back of a set whose design is `now`; none where it was not kept, or belongs to another state.
    #[must_use]
    pub fn trail(&self, id: SetId, now: &Project) -> Trail {
        let text = self.shelf.read(&key(id)).ok().flatten();
        text.and_then(|t| Trail::read(&t, now)).unwrap_or_default()
    }

    /// Takes the way back of one set away.
    pub(super) fn forget_trail(&mut self, id: SetId) {
        let _ = self.shelf.remove(&key(id));
    }

    /// Takes the ways back of all sets away; how many there were.
    pub(super) fn forget_trails(&mut self) -> usize {
        let keys = self.shelf.keys().unwrap_or_default();
        let trails: Vec<_> = keys.into_iter().filter(|k| k.starts_with(TRAIL)).collect();
        trails.iter().filter(|k| self.shelf.remove(k).is_ok()).count()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::keep::shelf::{MemoryShelf, Refused};
    use crate::project::example::example;

    /// A shelf with room for so many bytes.
    struct Narrow(MemoryShelf, usize);

    impl Shelf for Narrow {
        fn read(&self, key: &str) -> Result<Option<String>, Refused> {
            self.0.read(key)
        }
        fn write(&mut self, key: &str, text: &str) -> Result<(), Refused> {
            let others: usize = self.0.texts.iter().filter(|(k, _)| *k != key).map(|(_, t)| t.len()).sum();
            if others + text.len() > self.1 { Err(Refused::Full) } else { self.0.write(key, text) }
        }
        fn remove(&mut self, key: &str) -> Result<(), Refused> {
            self.0.remove(key)
        }
        fn keys(&self) -> Result<Vec<String>, Refused> {
            self.0.keys()
        }
    }

    fn designs() -> (Project, Project) {
        let now = example().expect("there is one");
        (Project { sets: 7, ..now.clone() }, now)
    }

    #[test]
    fn it_comes_back_with_its_set_and_goes_with_it() {
        let (before, now) = designs();
        let mut book = Notebook::new(MemoryShelf::default(), 1);
        let open = book.create(&now, 1).expect("there is room");
        let trail = Trail { past: vec![before.clone()], future: Vec::new() };
        book.save_trail(open.id, &now, &trail);
        assert_eq!(book.trail(open.id, &now), trail);
        assert_eq!(book.trail(open.id, &before), Trail::default(), "another state has another way back");
        book.delete(open.id).expect("it is there");
        assert_eq!(book.shelf().keys(), Ok(vec!["last".to_owned()]));
    }

    #[test]
    fn it_is_the_first_thing_to_go() {
        let (before, now) = designs();
        let size = crate::keep::file::write(&crate::keep::file::Kept::new(now.clone())).len() + 200;
        let mut book = Notebook::new(Narrow(MemoryShelf::default(), 2 * size + 10), 1);
        let mut open = book.create(&now, 1).expect("there is room");
        let long = Project { name: "x".repeat(size - 200), ..before.clone() };
        book.save_trail(open.id, &now, &Trail { past: vec![long], future: Vec::new() });
        assert_ne!(book.trail(open.id, &now), Trail::default(), "it fits as yet");
        book.save(&mut open, &before, 2).expect("the way back made room");
        assert_eq!(book.trail(open.id, &before), Trail::default());
        assert_eq!(book.open(open.id, 3).expect("it is there").project, before);
    }
}
