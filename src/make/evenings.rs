//! A batch shared out: what is done on which evening, by so many hands.

use super::clock::Clock;
use super::stage::{Stage, stages};
use super::step::Step;
use crate::project::batch::Batch;
use crate::project::finding::Place;

/// A stretch of work on one evening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// Of which kind.
    pub stage: Stage,
    /// On what.
    pub place: Place,
    /// Which part of it.
    pub part: usize,
    /// How often it is done in all.
    pub times: u64,
    /// How often it has been done when this evening begins and when it ends, as far as whole ones go.
    pub from: u64,
    /// As `from`.
    pub to: u64,
    /// Seconds of work on this evening.
    pub seconds: u64,
}

/// More evenings than these are not listed: nobody plans so far.
pub const MOST: usize = 200;

/// What is done on each evening, and whether there are more than [`MOST`]. Each evening but the last is full: what is
/// begun goes on the next time.
#[must_use]
pub fn evenings(batch: &Batch, steps: &[Step], clock: &Clock) -> (Vec<Vec<Stretch>>, bool) {
    let room = (u64::from(batch.evening) * 60).saturating_mul(u64::from(batch.helpers) + 1).max(60);
    let mut all: Vec<Vec<Stretch>> = Vec::new();
    let mut left = 0_u64;
    for work in stretches(steps, clock) {
        let mut done = 0_u64;
        while done < work.seconds {
            if left == 0 {
                if all.len() == MOST {
                    return (all, true);
                }
                all.push(Vec::new());
                left = room;
            }
            let now = left.min(work.seconds - done);
            let so_far =
                |seconds: u64| (u128::from(work.times) * u128::from(seconds) / u128::from(work.seconds)) as u64;
            let (from, to) = (so_far(done), so_far(done + now));
            if let Some(evening) = all.last_mut() {
                evening.push(Stretch { from, to, seconds: now, ..work.clone() });
            }
            done += now;
            left -= now;
        }
    }
    (all, false)
}

/// The whole work, in the order of the steps: what follows one another on the same part in the same stage is one.
fn stretches(steps: &[Step], clock: &Clock) -> Vec<Stretch> {
    let mut all: Vec<Stretch> = Vec::new();
    for (step, stage) in steps.iter().zip(stages(steps)) {
        let seconds = clock.step(step);
        match all.last_mut() {
            Some(last) if (last.stage, last.place, last.part) == (stage, step.place, step.part) => {
                last.seconds = last.seconds.saturating_add(seconds);
                last.times = last.times.max(step.times);
            }
            _ => {
                let (place, part, times) = (step.place, step.part, step.times);
                all.push(Stretch { stage, place, part, times, from: 0, to: 0, seconds });
            }
        }
    }
    all
}
