//! A class as it is planned: what one maker does, and what is cut and bought for all.

use super::{Plan, plan, relaid};
use crate::make::better::Better;
use crate::make::class::{Hours, home, hours};
use crate::make::clock::Clock;
use crate::make::pace::Pace;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::class::{BREAKS, EACH, MAKERS, MINUTES, PERCENT};
use crate::project::class::{Class, Ready};
use crate::project::request::{Project, Shop};

/// Counted work that better layouts for all are looked for with: what a slow tablet does in two frames or three.
const LOOK: u64 = 200_000;

/// Everything that follows from a class.
pub struct Taught {
    /// The class that was planned: what was asked, within the ranges.
    pub class: Class,
    /// What one maker makes.
    pub one: Plan,
    /// What is cut for all, spares included; where everyone gets whole sheets, what is cut for one.
    pub all: Plan,
    /// When what is done.
    pub hours: Hours,
    /// Seconds that the teacher works before.
    pub home: u64,
}

/// Plans the class of `project`: whatever was written in a file is brought into its range.
#[must_use]
pub fn taught(project: &Project, system: System, pace: Pace) -> Taught {
    let asked = project.class;
    let class = Class {
        makers: asked.makers.clamp(MAKERS.least, MAKERS.most),
        each: asked.each.clamp(EACH.least, EACH.most),
        spares: asked.spares.clamp(PERCENT.least, PERCENT.most),
        minutes: asked.minutes.clamp(MINUTES.least, MINUTES.most),
        slow: asked.slow.clamp(PERCENT.least, PERCENT.most),
        breaks: asked.breaks.clamp(BREAKS.least, BREAKS.most),
        ready: asked.ready,
    };
    let mut single = Project { sets: class.each, spares: 0, ..project.clone() };
    // What lies in the drawer is for all: a bag is planned from new sheets.
    for card in &mut single.cards {
        for supply in std::iter::once(&mut card.supply).chain(card.more_sheets.iter_mut().map(|m| &mut m.supply)) {
            (supply.have, supply.shop) = (0, Shop::Open);
        }
    }
    let one = plan(&single, system);
    let sets = (class.makers * class.each).min(bound::SETS.most);
    let whole = Project { sets, spares: class.spares, ..project.clone() };
    let all = if class.ready == Ready::Sheets { one.clone() } else { looked(plan(&whole, system)) };
    let clock = |plan: &Plan| -> (u64, Hours) {
        let clock = Clock { sheets: &plan.sheets, pieces: &plan.pieces, pace };
        (home(&class, &plan.steps, &clock), hours(&class, &plan.steps, &clock))
    };
    let (home, hours) = (clock(&all).0, clock(&one).1);
    Taught { class, one, all, hours, home }
}

/// The plan with the best layouts that are found with [`LOOK`].
fn looked(plan: Plan) -> Plan {
    let mut better = Better::new(plan.sheets.iter().map(|s| s.job.clone()).collect());
    let mut found = Vec::new();
    while !better.done() && better.work() < LOOK {
        found.extend(better.step(LOOK / 8));
    }
    found.extend(better.so_far());
    relaid(&plan, &found)
}
