//! Words about a batch: what is done on which evening, and the tags.

use super::step::place as at;
use super::trade::time;
use super::{names, teach};
use crate::make::evenings::Stretch;
use crate::plan::Plan;
use crate::project::request::Project;

/// All of it.
pub const TITLE: &str = "Many sets over some evenings";
/// What a choice of card does.
pub const COLOURS: &str = "Another card here changes the set itself.";
/// Who helps.
pub const HELPERS: &str = "Helpers besides you";
/// How long an evening is.
pub const EVENING: &str = "Minutes of work an evening";
/// For whom.
pub const NAMES: &str = "For whom: a name on each line";
/// There are too many evenings.
pub const MORE: &str = "And so on: it takes more evenings than are listed. Find helpers, or make fewer sets.";

/// How many evenings it takes.
#[must_use]
pub fn evenings(count: usize, seconds: u64) -> String {
    format!("{}: {} of work.", many(count, "evening"), time(seconds))
}

/// The heading of an evening, which lasts so long.
#[must_use]
pub fn evening(nth: usize, seconds: u64) -> String {
    format!("Evening {nth} · {}", time(seconds))
}

/// A stretch of work, and how much of it is done then.
#[must_use]
pub fn stretch(stretch: &Stretch, plan: &Plan, project: &Project, people: u64) -> String {
    let step = plan.steps.iter().find(|s| (s.place, s.part) == (stretch.place, stretch.part));
    let name = step.map_or_else(|| names::place(project, stretch.place), |step| at(step, plan, project));
    let (from, to, times) = (stretch.from, stretch.to, stretch.times);
    let how = match (from, to) {
        (0, to) if to == times => String::new(),
        _ if times == 1 => ", a part of it".to_owned(),
        (from, to) if from == to => ", a part of it".to_owned(),
        (from, to) => format!(", {} to {to} of {times}", from + 1),
    };
    let each = time(stretch.seconds.div_ceil(people.max(1)));
    let who = if people > 1 { format!("{each} for each of {people}") } else { each };
    format!("{name}: {}{how} ({who})", teach::work(stretch.stage))
}

/// How much of the work is done, by the ticks.
#[must_use]
pub fn done(seconds: u64, all: u64) -> String {
    format!("Done so far, by your ticks: {} of {}.", time(seconds), time(all))
}

fn many(count: usize, what: &str) -> String {
    if count == 1 { format!("1 {what}") } else { format!("{count} {what}s") }
}

/// Names and sets, where they are not as many.
#[must_use]
pub fn count(names: usize, sets: u32) -> Option<String> {
    let sets = sets as usize;
    match names {
        0 => None,
        _ if names == sets => Some(format!("{}: one for each set.", many(names, "name"))),
        _ if names < sets => {
            let (named, left) = (many(names, "name"), sets - names);
            let have = if left == 1 { "has" } else { "have" };
            Some(format!("{named} for {}: {left} {have} none.", many(sets, "set")))
        }
        _ => {
            let (named, made) = (many(names, "name"), many(sets, "set"));
            Some(format!("{named} for {made}: make {} more, or take some names off.", names - sets))
        }
    }
}
