//! How long it takes and what to ask for it.

use leptos::prelude::Callback;

use super::child::live;
use super::count_field::CountField;
use super::desk::desk;
use super::opened::opened;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, State, fact};
use crate::make::{clock, price};
use crate::project::bound::Range;
use crate::project::trade::Trade;
use crate::say::{names, trade as say};

/// What may be typed: an amount, and percents.
const AMOUNT: Range<u32> = Range::new(0, 100_000_000);
const PERCENT: Range<u32> = Range::new(0, 1_000);

/// One figure that the maker reckons with.
type One = (&'static str, &'static str, Range<u32>, fn(&mut Trade) -> &mut u32);

/// All of them.
const FIGURES: [One; 5] = [
    ("trade-hour", say::HOUR, AMOUNT, |t| &mut t.hour),
    ("trade-trims", say::TRIMS, AMOUNT, |t| &mut t.trims),
    ("trade-expenses", say::EXPENSES, PERCENT, |t| &mut t.expenses),
    ("trade-profit", say::PROFIT, PERCENT, |t| &mut t.profit),
    ("trade-stall", say::STALL, AMOUNT, |t| &mut t.stall),
];

/// The reckoning, while it is open.
#[must_use]
pub fn price_view() -> Tag {
    let desk = desk();
    let open = State::new(false);
    let field = move |(id, label, range, figure): One| {
        CountField {
            id: id.to_owned(),
            label,
            hint: if range == AMOUNT { say::COINS } else { "" },
            range,
            value: fact(move || *figure(&mut desk.project.with(|p| p.trade))),
            findings: Fact::fixed(Vec::new()),
            commit: Callback::new(move |n| desk.edit(id, |p| *figure(&mut p.trade) = n)),
        }
        .view()
    };
    let answer = live(move || {
        desk.good.with(|plan| {
            let seconds = clock::all(&plan.steps, &plan.sheets, &plan.pieces);
            desk.project.with(|p| {
                let (card, unknown) = price::card(&plan.sheets, p);
                let lines = say::price(&price::price(&p.trade, card, seconds, p.sets));
                let lines = lines
                    .into_iter()
                    .map(|(what, sum)| tag("li").with(tag("span").with(what)).with(tag("span").with(sum)));
                let unknown: Vec<String> = unknown.iter().map(|card| names::card(p, *card)).collect();
                let note = (!unknown.is_empty()).then(|| classed("p", "note caution").with(say::unpriced(&unknown)));
                vec![
                    tag("p").with(say::time(seconds, p.sets)),
                    classed("ul", "pieces sums").with(lines.collect::<Vec<_>>()),
                    tag("div").with(note),
                ]
            })
        })
    });
    let inside = live(move || {
        open.get().then(|| classed("div", "fields").with(FIGURES.map(field).into_iter().collect::<Vec<_>>()))
    });
    let body = tag("div").with(inside).with(classed("p", "hint").with(say::HINT)).with(answer);
    classed("section", "sheet-of-paper").with(opened("trade", say::TITLE, open).with(body))
}
