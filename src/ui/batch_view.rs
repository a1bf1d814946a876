//! A batch: what is done on which evening, how far it is, and the names.

use leptos::prelude::event_target_value;

use super::card_choice::card_choice;
use super::child::{each, live, words};
use super::desk::{Desk, desk};
use super::figure::{Figure, figure};
use super::labelled::labelled;
use super::opened::opened;
use super::sheets_view::to_buy;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, State, fact};
use crate::make::clock::Clock;
use crate::make::evenings::evenings;
use crate::project::batch::{Batch, EVENING, HELPERS};
use crate::project::bound::{Range, SETS};
use crate::project::finding::Place;
use crate::project::request::Project;
use crate::say::batch as say;
use crate::say::{names, page, teach};

const FIGURES: [Figure; 3] = [
    figure("batch-sets", page::SETS, SETS, |p| p.sets, |p, n| p.sets = n),
    figure("batch-helpers", say::HELPERS, HELPERS, |p| p.batch.helpers, |p, n| p.batch.helpers = n),
    figure("batch-evening", say::EVENING, EVENING, |p| p.batch.evening, |p, n| p.batch.evening = n),
];

/// The batch.
#[must_use]
pub fn batch_view() -> Tag {
    let desk = desk();
    let names = fact(move || desk.project.with(|p| p.batch.names.clone()));
    let area = tag("textarea")
        .is("rows", "5")
        .is("maxlength", "80000")
        .is("autocomplete", "off")
        .value(move || names.get())
        .on("input", move |event| desk.edit("names", |p| p.batch.names = event_target_value(&event)))
        .on("blur", move |_| desk.settle());
    let count = move || desk.project.with(|p| say::count(p.batch.names().count(), p.sets));
    let area = labelled("batch-names", say::NAMES, area)
        .with(live(move || count().map(|words| classed("p", "hint").is("role", "status").with(words))));
    let open = State::new(false);
    let inside = classed("div", "class")
        .with(classed("div", "fields").with(FIGURES.map(Figure::view).into_iter().collect::<Vec<_>>()))
        .with(live(move || open.get().then(|| colours(desk))))
        .with(live(move || open.get().then(|| answer(desk))))
        .with(live(move || open.get().then(to_buy)))
        .with(area);
    classed("section", "sheet-of-paper").with(opened("part", say::TITLE, open).with(inside))
}

/// The card of each box and of the holder: whose colour each has.
fn colours(desk: Desk) -> Tag {
    let kinds = move || {
        desk.project.with(|p| {
            let places = p.boxes.iter().map(|b| b.id.to_string()).chain(p.holder.iter().map(|_| HOLDER.to_owned()));
            places.collect::<Vec<_>>()
        })
    };
    let row = move |id: String| {
        let place = id.parse().map_or(Place::Holder, Place::Box);
        let part = move |p: &Project| match place {
            Place::Box(id) => p.boxes.iter().find(|b| b.id == id).map(|b| b.card),
            _ => p.holder.as_ref().map(|h| h.card),
        };
        let card = fact(move || desk.project.with(part).unwrap_or_default());
        let change = move |n| desk.edit_part(place, "", |p| p.card = n);
        let name = words(move || desk.project.with(|p| names::place(p, place)));
        let field = card_choice(format!("batch-card-{id}"), page::CARD, card, Fact::fixed(Vec::new()), change);
        tag("div").with(tag("h2").with(name)).with(field)
    };
    tag("div").with(classed("div", "fields").with(each(kinds, row))).with(classed("p", "hint").with(say::COLOURS))
}

/// Stands for the holder among the numbers of boxes.
const HOLDER: &str = "holder";

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
            if (batch.helpers, batch.evening) != (p.batch.helpers, p.batch.evening) {
                said.push(classed("p", "note caution").with(teach::BROUGHT));
            }
            if done > 0 {
                said.push(tag("p").is("role", "status").with(say::done(done, clock.all(&plan.steps))));
            }
            let people = u64::from(batch.helpers) + 1;
            if !more && !all.is_empty() {
                said.push(classed("p", "lead").with(say::evenings(all.len(), clock.all(&plan.steps))));
            }
            for (nth, evening) in all.iter().enumerate() {
                let lines = evening.iter().map(|one| tag("li").with(say::stretch(one, plan, p, people)));
                let lines = classed("ul", "pieces").with(lines.collect::<Vec<_>>());
                said.push(
                    tag("details")
                        .with(
                            tag("summary").with(say::evening(
                                nth + 1,
                                evening.iter().map(|one| one.seconds).sum::<u64>() / people,
                            )),
                        )
                        .with(lines),
                );
            }
            if more {
                said.push(classed("p", "note caution").with(say::MORE));
            }
            said
        })
    })
}
