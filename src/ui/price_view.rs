//! How long it takes and what to ask for it.

use leptos::prelude::Callback;

use super::child::live;
use super::class_view::class;
use super::desk::{Desk, desk};
use super::figure::{Figure, figure};
use super::money_field::{MoneyField, money};
use super::opened::opened;
use super::tag::{Tag, button, classed, tag};
use super::text_field::text_field;
use super::value::{Fact, State, fact};
use crate::draw::teacher::Prices;
use crate::make::clock::Clock;
use crate::make::pace::Pace;
use crate::make::price;
use crate::plan::Taught;
use crate::project::bound::Range;
use crate::project::class::Ready;
use crate::project::request::Project;
use crate::project::trade::Trade;
use crate::say::{names, teach, trade as say};
use crate::stock::currency::Currency;
use crate::web::here;

/// The most coins that may be typed.
const AMOUNT: u32 = 1_000_000_000;
/// What may be typed as a percentage.
const PERCENT: Range<u32> = Range::new(0, 1_000);

/// One figure that the maker reckons with.
type One = (&'static str, &'static str, fn(&mut Trade) -> &mut u32);

/// Amounts of money.
const AMOUNTS: [One; 4] = [
    ("trade-hour", say::HOUR, |t| &mut t.hour),
    ("trade-trims", say::TRIMS, |t| &mut t.trims),
    ("trade-stall", say::STALL, |t| &mut t.stall),
    ("trade-fee", say::FEE, |t| &mut t.fee),
];

/// How many times the material.
const TIMES: Range<u32> = Range::new(0, 100);
/// Percentages and factors.
const SHARES: [Figure; 5] = [
    figure("trade-expenses", say::EXPENSES, PERCENT, |p| p.trade.expenses, |p, n| p.trade.expenses = n),
    figure("trade-profit", say::PROFIT, PERCENT, |p| p.trade.profit, |p, n| p.trade.profit = n),
    figure("trade-shelf", say::SHELF, PERCENT, |p| p.trade.shelf, |p, n| p.trade.shelf = n),
    figure("trade-with-hours", say::WITH_HOURS, TIMES, |p| p.trade.with_hours, |p, n| p.trade.with_hours = n),
    figure("trade-material", say::BY_MATERIAL, TIMES, |p| p.trade.material, |p, n| p.trade.material = n),
];

/// The reckoning, while it is open.
#[must_use]
pub fn price_view() -> Tag {
    let desk = desk();
    let open = State::new(false);
    let inside = live(move || {
        open.get().then(|| {
            let fields = std::iter::once(currency(desk)).chain(AMOUNTS.map(|one| amount(desk, one)));
            let fields = fields.chain(SHARES.map(Figure::view));
            classed("div", "fields").with(fields.collect::<Vec<_>>())
        })
    });
    let hints = live(move || {
        let hints = [say::HINT, if desk.pace.with(Pace::is_learned) { say::LEARNED } else { say::RULES }];
        hints.map(|hint| classed("p", "hint").with(hint)).into_iter().collect::<Vec<_>>()
    });
    let body = classed("div", "class").with(inside).with(hints).with(forget(desk)).with(live(move || answer(desk)));
    classed("section", "sheet-of-paper").with(opened("part trade", say::TITLE, open).with(body))
}

fn currency(desk: Desk) -> Tag {
    let value = fact(move || desk.project.with(|p| p.trade.currency.clone()));
    let write = move |text: String| {
        desk.edit("currency", |p| {
            let decimals = |typed: &str| Currency::of(typed).unwrap_or_default().decimals;
            p.recount(decimals(&p.trade.currency), decimals(&text));
            p.trade.currency = text;
        });
    };
    let id = "trade-currency".to_owned();
    let wrong = move || {
        let why = value.with(|typed| Currency::of(typed).err());
        why.map(|why| classed("p", "note caution").is("role", "alert").with(say::unknown(why)))
    };
    text_field(id, say::CURRENCY, Fact::fixed(String::new()), value, write).with(live(wrong))
}

fn amount(desk: Desk, (id, label, figure): One) -> Tag {
    MoneyField {
        id: id.to_owned(),
        label,
        hint: "",
        most: AMOUNT,
        value: fact(move || *figure(&mut desk.project.with(|p| p.trade.clone()))),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |n| desk.edit(id, |p| *figure(&mut p.trade) = n)),
    }
    .view()
}

fn forget(desk: Desk) -> Tag {
    let forget = move || {
        desk.pace.set(Pace::default());
        here::keep_pace(&Pace::default());
    };
    classed("p", "actions").with(live(move || desk.pace.with(Pace::is_learned).then(|| button(say::FORGET, forget))))
}

/// What a set and a place in the class cost by the plan of this moment, and what should be known about it.
#[must_use]
pub fn reckoned(desk: Desk) -> Prices {
    let pace = desk.pace.get();
    let taught = (desk.project.with(|p| p.trade.fee) > 0).then(|| class(desk)).flatten();
    desk.good.with(|plan| {
        let clock = Clock { sheets: &plan.sheets, pieces: &plan.pieces, pace };
        desk.project.with(|p| {
            let trade = Trade {
                expenses: p.trade.expenses.min(PERCENT.most),
                profit: p.trade.profit.min(PERCENT.most),
                shelf: p.trade.shelf.min(PERCENT.most),
                with_hours: p.trade.with_hours.min(TIMES.most),
                material: p.trade.material.min(TIMES.most),
                ..p.trade.clone()
            };
            let (card, unknown) = price::card(&plan.sheets, p);
            let price = price::price(&trade, card, clock.all(&plan.steps), p.sets);
            let place = taught.map(|taught| price::place(&trade, kit(&taught, p), taught.class.makers));
            let unknown: Vec<String> = unknown.iter().map(|card| names::card(p, *card)).collect();
            let notes = [
                (!unknown.is_empty()).then(|| say::unpriced(&unknown)),
                (p.trade.hour == 0).then(|| say::NO_HOUR.to_owned()),
                say::loss(&price),
                (trade != p.trade).then(|| teach::BROUGHT.to_owned()),
            ];
            Prices { lines: say::price(&price, place, &trade, &money()), notes: notes.into_iter().flatten().collect() }
        })
    })
}

/// The material of one maker in a class: a share of all the card, or the sheets in the bag, and what else goes in.
fn kit(taught: &Taught, project: &Project) -> u64 {
    let class = &taught.class;
    let (card, _) = price::card(&taught.all.sheets, project);
    let card = match class.ready {
        Ready::Sheets => card.saturating_mul(u64::from(100 + class.spares)).div_ceil(100),
        _ => card.div_ceil(u64::from(class.makers)),
    };
    card.saturating_add(u64::from(project.trade.trims).saturating_mul(u64::from(class.each)))
}

fn answer(desk: Desk) -> Vec<Tag> {
    let Prices { lines, notes } = reckoned(desk);
    let pace = desk.pace.get();
    let lines = lines.into_iter().map(|(what, sum)| tag("li").with(tag("span").with(what)).with(tag("span").with(sum)));
    let lines = classed("ul", "pieces sums").with(lines.collect::<Vec<_>>());
    let notes = notes.into_iter().map(|note| classed("p", "note caution").with(note)).collect::<Vec<_>>();
    let seconds = desk.good.with(|plan| Clock { sheets: &plan.sheets, pieces: &plan.pieces, pace }.all(&plan.steps));
    let work = tag("p").with(say::work(seconds, desk.project.with(|p| p.sets)));
    vec![work, tag("div").with(notes), tag("h2").with(say::ONE_SET), lines]
}
