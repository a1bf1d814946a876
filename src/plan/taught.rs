//! A class as it is planned: what one maker does, and what is cut and bought for all.

use super::{Plan, plan, relaid};
use crate::make::better::Better;
use crate::make::class::{Hours, home, hours};
use crate::make::clock::Clock;
use crate::make::pace::Pace;
use crate::measure::system::System;
use crate::project::bound::{self, Range};
use crate::project::class::{BREAKS, EACH, MAKERS, MINUTES, SLOW};
use crate::project::class::{Class, Ready};
use crate::project::request::{Project, Shop};

/// Counted work that better layouts for all are looked for with: 2.3 ms natively for a class of 77 sets.
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

/// The class that is asked for, with whatever was written in a file brought into its range.
fn within(asked: Class) -> Class {
    let bring = |n: u32, range: Range<u32>| n.clamp(range.least, range.most);
    Class {
        makers: bring(asked.makers, MAKERS),
        each: bring(asked.each, EACH),
        spares: bring(asked.spares, bound::SPARES),
        minutes: bring(asked.minutes, MINUTES),
        slow: bring(asked.slow, SLOW),
        breaks: bring(asked.breaks, BREAKS),
        ready: asked.ready,
    }
}

/// What one maker makes in the class of `project`. What lies in the drawer is for all: a bag is planned from new sheets.
#[must_use]
pub fn for_one(project: &Project, system: System) -> Plan {
    let mut single = Project { sets: within(project.class).each, spares: 0, ..project.clone() };
    single.supplies().for_each(|supply| (supply.have, supply.shop) = (0, Shop::Open));
    plan(&single, system)
}

/// Plans the class of `project`.
#[must_use]
pub fn taught(project: &Project, system: System, pace: Pace) -> Taught {
    let class = within(project.class);
    let one = for_one(project, system);
    let sets = (class.makers * class.each).min(bound::SETS.most);
    let whole = Project { sets, spares: class.spares, ..project.clone() };
    let all = if class.ready == Ready::Sheets { one.clone() } else { looked(plan(&whole, system)) };
    let home = home(&class, &all.steps, &Clock { sheets: &all.sheets, pieces: &all.pieces, pace });
    let hours = hours(&class, &one.steps, &Clock { sheets: &one.sheets, pieces: &one.pieces, pace });
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
