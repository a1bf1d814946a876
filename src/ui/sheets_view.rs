//! The sheets of each card: what to cut from how many, and the cuts in order.

use super::before::before;
use super::child::live;
use super::desk::{Desk, desk};
use super::explained::explained;
use super::look_bar::look_bar;
use super::money_field::money;
use super::notes::notes;
use super::picture::picture;
use super::said::said;
use super::tag::{Tag, classed, tag};
use crate::cut::order::order;
use crate::draw::sheet::{Cutting, sheet};
use crate::draw::svg::paint;
use crate::make::sheets::CardSheets;
use crate::plan::Plan;
use crate::project::finding::Place;
use crate::project::request::Tint;
use crate::say::{cutting, names, page};

/// All sheets.
#[must_use]
pub fn sheets_view() -> Tag {
    let desk = desk();
    let cards = move || {
        let plan = desk.good.get();
        plan.sheets.iter().map(|s| one_card(desk, &plan, s)).collect::<Vec<_>>()
    };
    classed("div", "sheets").with(before()).with(to_buy()).with(look_bar()).with(explained()).with(live(cards))
}

/// What to buy for all sets, and how far the drawer goes.
#[must_use]
pub fn to_buy() -> Tag {
    let desk = desk();
    let name = move |card: u16| desk.project.with(|p| names::card(p, card));
    let lines = move || {
        desk.good.with(|plan| {
            let buy = |s: &CardSheets| tag("li").with(said(cutting::buy(s, &name(s.job.card), Some(&money()))));
            plan.sheets.iter().map(buy).collect::<Vec<_>>()
        })
    };
    let enough = move || {
        let all = desk.better.enough.get().into_iter();
        all.map(|(card, sets)| tag("li").with(cutting::enough(&name(card), sets))).collect::<Vec<_>>()
    };
    classed("section", "sheet-of-paper")
        .with(tag("h2").with(page::TO_BUY))
        .with(classed("ul", "pieces").with(live(lines)).with(live(enough)))
}

fn one_card(desk: Desk, plan: &Plan, sheets: &CardSheets) -> Tag {
    let card = sheets.job.card;
    let (name, tint) =
        desk.project.with(|p| (names::card(p, card), p.card(card).map_or_else(Tint::default, |c| c.tint)));
    let pieces = plan.pieces.iter().filter(|p| p.card == card);
    let pieces = pieces.map(|p| tag("li").with(said(names::piece(plan, p, plan.system)))).collect::<Vec<_>>();
    let letter = |id: u32| names::letter(plan, id);
    let patterns = sheets.layout.patterns.iter().filter_map(|pattern| {
        let bare = sheets.sheet(pattern.sheet)?;
        let cuts = order(pattern, bare);
        let c = Cutting { sheet: bare, pattern, cuts: &cuts, tint, system: plan.system, letter: &letter };
        let svg = paint(&sheet(&c));
        let lines = cutting::lines(&cuts, plan.system, &letter).into_iter().map(|l| tag("li").with(said(l)));
        let lines = classed("ul", "cuts").with(lines.collect::<Vec<_>>());
        let keep = cutting::keep(pattern, bare, plan.system).map(|k| tag("p").with(said(k)));
        let pattern = classed("article", "pattern")
            .with(tag("h3").with(cutting::copies(pattern.copies)))
            .with(tag("p").with(said(cutting::gives(pattern, bare, &letter))))
            .with(picture(move || svg.clone()))
            .with(tag("details").is("open", "").with(tag("summary").with(page::CUTS)).with(lines))
            .with(keep);
        Some(pattern)
    });
    let patterns = patterns.collect::<Vec<_>>();
    let list = tag("details")
        .is("open", "")
        .with(tag("summary").with(page::PIECES))
        .with(classed("ul", "pieces").with(pieces));
    classed("section", "sheet-of-paper")
        .with(tag("h2").with(name))
        .with(classed("p", "lead").with(said(cutting::need(sheets))))
        .with(notes(desk.findings(Place::Card(card), Some("sheet-width"))))
        .with(list)
        .with(classed("div", "patterns").with(patterns))
}
