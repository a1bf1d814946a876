//! The clock at a step: how long the maker's own hands take for it once.

use super::alive::Alive;
use super::child::live;
use super::desk::{Desk, desk};
use super::tag::{Tag, button, classed};
use super::value::State;
use crate::make::clock::{alike, usual};
use crate::make::pace::Kind;
use crate::make::step::Step;
use crate::say::trade as say;
use crate::web::here;
use crate::web::motion::{Again, now};

/// Begins and ends the clock; nothing where there is nothing to time.
#[must_use]
pub fn timing(step: &Step) -> Option<Tag> {
    let desk = desk();
    let kind = Kind::of(&step.action)?;
    let (usual, alike) = desk.good.with(|plan| (usual(step, &plan.sheets, &plan.pieces), alike(step, &plan.sheets)));
    let reckoned = usual / alike;
    let begin = if alike > 1 { say::TIME_FIRST } else { say::TIME_ONE };
    let since = desk.timing;
    let (key, same) = (step.key.clone(), step.key.clone());
    let told = State::new(None::<String>);
    let (elapsed, alive) = (State::new(0_u64), Alive::here());
    let tap = move || {
        let at = now();
        match since.get_untracked() {
            Some((running, from)) if running == key => {
                since.set(None);
                let took = ((at - from) / 1_000.0) as u64;
                told.set(Some(if learned(desk, kind, took, reckoned) {
                    say::timed(took)
                } else {
                    say::NOT_TIMED.to_owned()
                }));
            }
            // One clock: whatever ran elsewhere begins anew here.
            _ => {
                since.set(Some((key.clone(), at)));
                let key = key.clone();
                alive.each_frame(move |_| match since.get_untracked() {
                    Some((running, from)) if running == key && from == at => {
                        let seconds = ((now() - from) / 1_000.0) as u64;
                        if elapsed.get_untracked() != seconds {
                            elapsed.set(seconds);
                        }
                        Again::Yes
                    }
                    _ => Again::No,
                });
            }
        }
    };
    let again = step.key.clone();
    let here = move || since.with(|s| s.as_ref().is_some_and(|s| s.0 == again));
    let runs = move || since.with(|s| s.as_ref().is_some_and(|s| s.0 == same));
    let words = super::child::words(move || if runs() { say::STOP } else { begin }.to_owned());
    Some(
        classed("p", "actions")
            .with(button(words, tap))
            .with(live(move || here().then(|| classed("strong", "running").with(say::clock(elapsed.get())))))
            .with(live(move || told.get().map(|words| classed("span", "hint").is("role", "status").with(words)))),
    )
}

fn learned(desk: Desk, kind: Kind, took: u64, reckoned: u64) -> bool {
    let mut pace = desk.pace.get_untracked();
    let learned = pace.learn(kind, took, reckoned);
    if learned {
        here::keep_pace(&pace);
        desk.pace.set(pace);
    }
    learned
}
