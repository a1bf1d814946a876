//! A batch: what is done on which evening, how far it is, and the names.

use leptos::prelude::{Callback, event_target_value};

use super::child::live;
use super::count_field::CountField;
use super::desk::{Desk, desk};
use super::opened::opened;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, State, fact};
use crate::make::clock::Clock;
use crate::make::evenings::evenings;
use crate::project::batch::{Batch, EVENING, HELPERS};
use crate::project::bound::{Range, SETS};
use crate::project::request::Project;
use crate::say::batch as say;
use crate::say::page;

/// One figure of a batch.
type One = (&'static str, &'static str, Range<u32>, fn(&mut Project) -> &mut u32);

const FIGURES: [One; 3] = [
    ("batch-sets", page::SETS, SETS, |p| &mut p.sets),
    ("batch-helpers", say::HELPERS, HELPERS, |p| &mut p.batch.helpers),
    ("batch-evening", say::EVENING, EVENING, |p| &mut p.batch.evening),
];

/// The batch.
#[must_use]
pub fn batch_view() -> Tag {
    let desk = desk();
    let field = move |(id, label, range, figure): One| {
        CountField {
            id: id.to_owned(),
            label,
            hint: "",
            range,
            value: fact(move || desk.project.with(|p| *figure(&mut p.clone()))),
            findings: Fact::fixed(Vec::new()),
            commit: Callback::new(move |n| desk.edit(id, |p| *figure(p) = n)),
        }
        .view()
    };
    let names = fact(move || desk.project.with(|p| p.batch.names.clone()));
    let area = tag("textarea")
        .is("id", "batch-names")
        .is("rows", "5")
        .is("maxlength", "80000")
        .is("autocomplete", "off")
        .value(move || names.get())
        .on("input", move |event| desk.edit("names", |p| p.batch.names = event_target_value(&event)))
        .on("blur", move |_| desk.settle());
    let count = move || desk.project.with(|p| say::count(p.batch.names().count(), p.sets));
    let area = classed("div", "field")
        .with(tag("label").is("for", "batch-names").with(say::NAMES))
        .with(area)
        .with(classed("p", "hint").with(say::NAMES_HINT))
        .with(live(move || count().map(|words| classed("p", "hint").is("role", "status").with(words))));
    let open = State::new(false);
    let inside = classed("div", "class")
        .with(classed("div", "fields").with(FIGURES.map(field).into_iter().collect::<Vec<_>>()))
        .with(live(move || open.get().then(|| answer(desk))))
        .with(area);
    classed("section", "sheet-of-paper").with(opened("part", say::TITLE, open).with(inside))
}

fn answer(desk: Desk) -> Vec<Tag> {
    let pace = desk.pace.get();
    let ticks = desk.ticks.get();
    desk.good.with(|plan| {
        desk.project.with(|p| {
            let clock = Clock { sheets: &plan.sheets, pieces: &plan.pieces, pace };
            let within = |range: Range<u32>, n: u32| n.clamp(range.least, range.most);
            let batch = Batch {
                helpers: within(HELPERS, p.batch.helpers),
                evening: within(EVENING, p.batch.evening),
                names: String::new(),
            };
            let (all, more) = evenings(&batch, &plan.steps, &clock);
            let done = plan.steps.iter().map(|s| clock.once(s).saturating_mul(ticks.tally(&s.key).min(s.times)));
            let done = done.fold(0, u64::saturating_add);
            let mut said: Vec<Tag> = Vec::new();
            if done > 0 {
                said.push(tag("p").is("role", "status").with(say::done(done, clock.all(&plan.steps))));
            }
            for (nth, evening) in all.iter().enumerate() {
                let lines = evening.iter().map(|one| tag("li").with(say::stretch(one, plan, p)));
                let lines = classed("ul", "pieces").with(lines.collect::<Vec<_>>());
                said.push(tag("details").with(tag("summary").with(say::evening(nth + 1))).with(lines));
            }
            if more {
                said.push(classed("p", "note caution").with(say::MORE));
            }
            said
        })
    })
}
