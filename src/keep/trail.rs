//! `Trail`: the way back and forward of a design, kept as small differences, so that undo survives a reload.
//!
//! Each step is what turns one design's text into the next one's: how many bytes stay at its head, how many at its end,
//! and what stands between. The first step starts from the design as it is saved, whose text is told again by a
//! fingerprint: a trail that belongs to another state is no trail.
//!
//! ```
//! use snugfold::{keep::trail::Trail, project::example::example};
//! let (mut before, now) = (example().unwrap(), example().unwrap());
//! before.sets = 12;
//! let trail = Trail { past: vec![before], future: Vec::new() };
//! let text = trail.text(&now);
//! assert!(text.len() < 100, "a difference is small");
//! assert_eq!(Trail::read(&text, &now), Some(trail));
//! ```

use serde::{Deserialize, Serialize};

use crate::measure::json::value::list;
use crate::project::picture::Picture;
use crate::project::request::Project;

/// The most steps that are kept each way.
pub const STEPS: usize = 60;
/// The most bytes of text that all steps of one way take.
pub const BYTES: usize = 48 * 1024;
/// The longest text of one design that a step may lead to, in bytes.
const LONGEST: usize = 2 << 20;

/// What a design was before, and what it was before the last steps back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trail {
    /// The way back, the latest last.
    pub past: Vec<Project>,
    /// The way forward, the next one last.
    pub future: Vec<Project>,
}

/// From one text to another: bytes kept at the head, bytes kept at the end, and what stands between.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Change {
    head: u32,
    tail: u32,
    text: String,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    trail: u32,
    of: String,
    #[serde(deserialize_with = "list")]
    back: Vec<Change>,
    #[serde(deserialize_with = "list")]
    on: Vec<Change>,
}

impl Change {
    fn between(from: &str, to: &str) -> Self {
        let whole = |n: usize| from.is_char_boundary(n) && to.is_char_boundary(n);
        let mut head = from.bytes().zip(to.bytes()).take_while(|(a, b)| a == b).count();
        while !whole(head) {
            head -= 1;
        }
        let (rest_from, rest_to) = (&from[head..], &to[head..]);
        let mut tail = rest_from.bytes().rev().zip(rest_to.bytes().rev()).take_while(|(a, b)| a == b).count();
        while !to.is_char_boundary(to.len() - tail) {
            tail -= 1;
        }
        // A text is far shorter than that counts.
        let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        Self { head: count(head), tail: count(tail), text: to[head..to.len() - tail].to_owned() }
    }

    /// The other text; nothing where this is no change of `from`.
    fn apply(&self, from: &str) -> Option<String> {
        let (head, tail, middle) = (self.head as usize, self.tail as usize, &self.text);
        let end = from.len().checked_sub(tail).filter(|end| *end >= head)?;
        let (head, tail) = (from.get(..head)?, from.get(end..)?);
        (head.len() + middle.len() + tail.len() <= LONGEST).then(|| format!("{head}{middle}{tail}"))
    }
}

/// One way from `now`: the differences, as many as are kept.
fn written(now: &str, way: &[Project]) -> Vec<Change> {
    let (mut from, mut bytes, mut changes) = (now.to_owned(), 0, Vec::new());
    for project in way.iter().rev().take(STEPS) {
        let to = text(project);
        let change = Change::between(&from, &to);
        bytes += change.text.len();
        if bytes > BYTES {
            break;
        }
        changes.push(change);
        from = to;
    }
    changes
}

/// The designs of one way from `now`, as far as they can be read.
fn walked(now: &str, changes: &[Change], picture: &Picture) -> Vec<Project> {
    let (mut from, mut way) = (now.to_owned(), Vec::new());
    for change in changes.iter().take(STEPS) {
        let Some(to) = change.apply(&from) else { break };
        let Ok(mut project) = serde_json::from_str::<Project>(&to) else { break };
        project.own.picture.clone_from(picture);
        way.push(project);
        from = to;
    }
    way.reverse();
    way
}

/// A design without its picture, which would fill what is kept: it stays what it is now.
fn text(project: &Project) -> String {
    let mut bare = project.clone();
    bare.own.picture = Picture::default();
    json(&bare)
}

/// Plain data as text: there is nothing in it that JSON lacks.
fn json(of: &impl Serialize) -> String {
    serde_json::to_string(of).unwrap_or_default()
}

/// Fowler, Noll and Vo's hash, 64 bits, variant 1a.
fn fingerprint(text: &str) -> String {
    let sum = text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |h, b| (h ^ u64::from(b)).wrapping_mul(0x0100_0000_01b3));
    format!("{sum:016x}")
}

impl Trail {
    /// Calls every step that was called `before` by another name.
    pub fn rename(&mut self, before: &str, name: &str) {
        for step in self.past.iter_mut().chain(&mut self.future).filter(|p| p.name == before) {
            name.clone_into(&mut step.name);
        }
    }

    /// Its text, where the design is `now`: at most [`STEPS`] steps and [`BYTES`] bytes each way, the nearest first.
    #[must_use]
    pub fn text(&self, now: &Project) -> String {
        let now = text(now);
        let all = Written {
            trail: 1,
            of: fingerprint(&now),
            back: written(&now, &self.past),
            on: written(&now, &self.future),
        };
        json(&all)
    }

    /// Reads it back; nothing where it is none, or that of another design than `now`.
    #[must_use]
    pub fn read(text_: &str, now: &Project) -> Option<Self> {
        if text_.len() > LONGEST {
            return None;
        }
        let all: Written = serde_json::from_str(text_).ok()?;
        let (picture, now) = (&now.own.picture, text(now));
        let mine = all.trail == 1 && all.of == fingerprint(&now);
        mine.then(|| Self { past: walked(&now, &all.back, picture), future: walked(&now, &all.on, picture) })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::example::example;

    fn named(name: &str) -> Project {
        Project { name: name.to_owned(), ..example().expect("there is one") }
    }

    #[test]
    fn letters_of_several_bytes_are_not_cut() {
        for (a, b) in [("é", "è"), ("日本", "日木"), ("", "é"), ("aé", "é"), ("ab", "ab"), ("😀😁", "😁😁")]
        {
            let change = Change::between(a, b);
            assert_eq!(change.apply(a).as_deref(), Some(b), "{a} {b}");
            let trail = Trail { past: vec![named(b)], future: vec![named("x"), named(a)] };
            assert_eq!(Trail::read(&trail.text(&named(a)), &named(a)), Some(trail));
        }
    }

    /// A picture is not among the steps back: it stays what it is, and they are all there.
    #[test]
    fn a_picture_does_not_fill_the_way_back() {
        let large = format!("data:image/jpeg;base64,{}", "A".repeat(2 * BYTES));
        let with = |name: &str| {
            let mut project = named(name);
            project.own.picture = Picture::read(&large).expect("a picture");
            project
        };
        let trail = Trail { past: vec![with("a"), with("b")], future: Vec::new() };
        assert_eq!(Trail::read(&trail.text(&with("c")), &with("c")), Some(trail.clone()));
        let gone = Trail { past: vec![named("a"), named("b")], future: Vec::new() };
        assert_eq!(Trail::read(&trail.text(&named("c")), &named("c")), Some(gone));
    }

    #[test]
    fn it_is_bounded_and_keeps_the_nearest() {
        let past: Vec<Project> = (0..500).map(|i| named(&format!("{i}"))).collect();
        let trail = Trail { past, future: Vec::new() };
        let back = Trail::read(&trail.text(&named("now")), &named("now")).expect("it is its own");
        assert_eq!(back.past.len(), STEPS);
        assert_eq!(back.past.last(), trail.past.last());
        let long = "x".repeat(BYTES / 3);
        let past = (0..9).map(|i| named(&format!("{i}{long}{i}"))).collect();
        assert!(Trail { past, future: Vec::new() }.text(&named("")).len() < 2 * BYTES);
    }

    #[test]
    fn a_trail_of_something_else_is_none() {
        let trail = Trail { past: vec![named("a")], future: Vec::new() };
        let text = trail.text(&named("b"));
        assert_eq!(Trail::read(&text, &named("c")), None);
        for bad in ["", "{}", "[]", &text.replace("\"head\":1", "\"head\":4294967295"), &text.replacen('[', "[[", 1)] {
            let read = Trail::read(bad, &named("b"));
            assert!(read.is_none_or(|t| t.past.len() <= 1), "{bad}");
        }
        let silly = r#"{"trail":1,"of":"","back":[{"head":4294967295,"tail":4294967295,"text":""}],"on":[]}"#;
        assert_eq!(Trail::read(silly, &named("b")), None);
        let change = Change { head: u32::MAX, tail: u32::MAX, text: String::new() };
        assert_eq!(change.apply("abc"), None);
        assert_eq!(Change { head: 2, tail: 2, text: String::new() }.apply("abc"), None);
    }
}
