//! A class: when what is done, what the teacher does before, and what helps where the time is too short.

use super::clock::Clock;
use super::stage::{Stage, stages};
use super::step::{Action, Step};
use crate::project::class::{Class, Ready};
use crate::project::finding::Place;

/// The hours of a class.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hours {
    /// What is done, from the beginning.
    pub rows: Vec<Row>,
    /// Seconds that it takes, with breaks.
    pub needs: u64,
    /// Seconds that there are.
    pub has: u64,
    /// What would help where it takes longer.
    pub cures: Vec<Cure>,
}

/// One stretch of a class.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Seconds from the beginning.
    pub from: u64,
    /// Seconds that it takes.
    pub seconds: u64,
    /// What is done.
    pub doing: Doing,
}

/// What is done in a stretch of a class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// All arrive and get their bags.
    Welcome,
    /// Work of one kind on one part.
    Work {
        /// On what.
        place: Place,
        /// Which part of it.
        part: usize,
        /// The kind.
        stage: Stage,
    },
    /// A break.
    Break,
    /// The tables are cleared.
    TidyUp,
}

/// What would help, and the seconds that the class takes then.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cure {
    /// What is changed.
    pub change: Change,
    /// Seconds with it.
    pub needs: u64,
}

/// What may be changed where the time is too short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// More is prepared at home.
    Prepare(Ready),
    /// Mats are left out.
    NoMats,
    /// Each makes fewer sets.
    Fewer(u32),
    /// Everything is cut out at home, and mats are left out.
    Both,
    /// The class lasts longer: so many minutes.
    Longer(u64),
}

/// To arrive, to hand out, to say what comes; and to clear up at the end (common practice, no source).
const WELCOME: u64 = 5 * 60;
/// To pack a bag (common practice, no source).
const BAG: u64 = 2 * 60;

/// The hours of a class whose makers each do `steps`.
#[must_use]
pub fn hours(class: &Class, steps: &[Step], clock: &Clock) -> Hours {
    let stages = stages(steps);
    let has = u64::from(class.minutes) * 60;
    let needs = |ready: Ready, mats: bool| total(class, steps, &stages, clock, ready, mats);
    let now = needs(class.ready, true);
    let rows = rows(class, steps, &stages, clock);
    let cures = if now > has { cures(class, has, now, &needs) } else { Vec::new() };
    Hours { rows, needs: now, has, cures }
}

/// Whether the teacher does it before.
#[must_use]
pub fn at_home(stage: Stage, ready: Ready) -> bool {
    stage
        <= match ready {
            Ready::Sheets => Stage::First,
            Ready::Pieces => Stage::Pieces,
            Ready::Scored => Stage::Mark,
            Ready::CutOut => Stage::CutAway,
        }
}

/// Seconds that the teacher works at home: what is prepared of `steps`, which are those for all, and the bags.
#[must_use]
pub fn home(class: &Class, steps: &[Step], clock: &Clock) -> u64 {
    let stages = stages(steps);
    let before = steps.iter().zip(stages).filter(|(_, stage)| at_home(*stage, class.ready)).map(|(step, _)| step);
    clock.all(before).saturating_add(BAG * u64::from(class.makers))
}

/// With the margin for slow hands.
fn slowed(class: &Class, seconds: u64) -> u64 {
    seconds.saturating_mul(100 + u64::from(class.slow)).div_ceil(100)
}

/// So many of so many equal parts.
fn share(all: u64, some: u64, parts: u64) -> u64 {
    (u128::from(all) * u128::from(some) / u128::from(parts)) as u64
}

fn total(class: &Class, steps: &[Step], stages: &[Stage], clock: &Clock, ready: Ready, mats: bool) -> u64 {
    let in_class = steps.iter().zip(stages).filter(|(_, stage)| !at_home(**stage, ready)).map(|(step, _)| step);
    let in_class = in_class.filter(|step| mats || !matches!(step.action, Action::GlueMats(_)));
    // Where there is nothing to do there is nothing to rest from.
    let work = clock.all(in_class);
    let breaks = if work > 0 { u64::from(class.breaks * Class::BREAK) * 60 } else { 0 };
    slowed(class, work).saturating_add(breaks + 2 * WELCOME)
}

fn rows(class: &Class, steps: &[Step], stages: &[Stage], clock: &Clock) -> Vec<Row> {
    let mut work: Vec<(Doing, u64)> = Vec::new();
    for (step, &stage) in steps.iter().zip(stages).filter(|(_, stage)| !at_home(**stage, class.ready)) {
        let doing = Doing::Work { place: step.place, part: step.part, stage };
        match work.last_mut() {
            Some((last, seconds)) if *last == doing => *seconds = seconds.saturating_add(clock.step(step)),
            _ => work.push((doing, clock.step(step))),
        }
    }
    let all: u64 = work.iter().map(|(_, seconds)| *seconds).fold(0, u64::saturating_add);
    let mut rows = vec![Row { from: 0, seconds: WELCOME, doing: Doing::Welcome }];
    let add = |rows: &mut Vec<Row>, doing: Doing, from: u64, to: u64| {
        rows.push(Row { from, seconds: to - from, doing });
    };
    let (mut done, mut breaks, mut rest) = (0_u64, 0_u64, 0_u64);
    let parts = u64::from(class.breaks) + 1;
    for (doing, seconds) in work {
        let end = done.saturating_add(seconds);
        while done < end {
            // Evenly among the work: where its share is reached, whatever is being done goes on after the break.
            let due = if breaks + 1 < parts { share(all, breaks + 1, parts) } else { u64::MAX };
            let stop = end.min(due.max(done));
            // From the sums, so that what is rounded up is rounded up once.
            let at = |done: u64| WELCOME.saturating_add(slowed(class, done)).saturating_add(rest);
            if stop > done {
                add(&mut rows, doing, at(done), at(stop));
            }
            done = stop;
            if stop == due {
                let long = u64::from(Class::BREAK) * 60;
                add(&mut rows, Doing::Break, at(done), at(done).saturating_add(long));
                rest += long;
                breaks += 1;
            }
        }
    }
    let end = rows.last().map_or(0, |row| row.from.saturating_add(row.seconds));
    add(&mut rows, Doing::TidyUp, end, end.saturating_add(WELCOME));
    rows
}

/// Each change that is enough by itself, else what comes nearest.
fn cures(class: &Class, has: u64, now: u64, needs: &dyn Fn(Ready, bool) -> u64) -> Vec<Cure> {
    let mut all: Vec<Cure> = Vec::new();
    let more = Ready::ALL.into_iter().filter(|r| *r > class.ready);
    all.extend(more.map(|r| Cure { change: Change::Prepare(r), needs: needs(r, true) }));
    let no_mats = needs(class.ready, false);
    if no_mats < now {
        all.push(Cure { change: Change::NoMats, needs: no_mats });
    }
    // Work grows with the sets that each makes; breaks and the welcome do not.
    let fixed = u64::from(class.breaks * Class::BREAK) * 60 + 2 * WELCOME;
    let fewer = |each: u32| (now - fixed).saturating_mul(u64::from(each)).div_ceil(u64::from(class.each)) + fixed;
    if let Some(each) = (1..class.each).rev().find(|&each| fewer(each) <= has) {
        all.push(Cure { change: Change::Fewer(each), needs: fewer(each) });
    }
    all.retain(|cure| cure.needs <= has);
    if all.is_empty() {
        let both = needs(Ready::CutOut, false);
        if both <= has {
            all.push(Cure { change: Change::Both, needs: both });
        }
    }
    all.push(Cure { change: Change::Longer((now - has).div_ceil(60)), needs: now });
    all
}
