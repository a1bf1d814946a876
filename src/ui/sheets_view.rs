//! The sheets of each card: what to cut from how many, and the cuts in order.

use leptos::prelude::*;

use super::before::before;
use super::child::live;
use super::desk::{Desk, desk};
use super::notes::notes;
use super::picture::picture;
use super::said::said;
use super::tag::{Tag, classed, tag};
use crate::cut::order::order;
use crate::draw::sheet::{Cutting, sheet};
use crate::draw::svg::paint;
use crate::make::pieces::Piece;
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
    classed("div", "sheets").with(before()).with(live(cards))
}

fn one_card(desk: Desk, plan: &Plan, sheets: &CardSheets) -> Tag {
    let card = sheets.job.card;
    let (name, tint) =
        desk.project.with(|p| (names::card(p, card), p.card(card).map_or_else(Tint::default, |c| c.tint)));
    let pieces = plan.pieces.iter().filter(|p| p.card == card);
    let pieces = pieces.map(|p| tag("li").with(said(names::piece(plan, p, plan.system)))).collect::<Vec<_>>();
    let letter = |id: u32| plan.pieces.iter().find(|p| p.id == id).map_or(String::new(), Piece::letter);
    let patterns = sheets.layout.patterns.iter().filter_map(|pattern| {
        let bare = sheets.sheet(pattern.sheet)?;
        let cuts = order(pattern, bare);
        let c = Cutting { sheet: bare, pattern, cuts: &cuts, tint, system: plan.system, letter: &letter };
        let svg = paint(&sheet(&c));
        let lines = cuts.iter().map(|c| tag("li").with(said(cutting::cut(c, plan.system, &letter))));
        let lines = classed("ol", "cuts").with(lines.collect::<Vec<_>>());
        let pattern = classed("article", "pattern")
            .with(tag("h3").with(cutting::copies(pattern.copies)))
            .with(picture(move || svg.clone()))
            .with(tag("details").is("open", "").with(tag("summary").with(page::CUTS)).with(lines));
        Some(pattern)
    });
    let patterns = patterns.collect::<Vec<_>>();
    let list = tag("details").with(tag("summary").with(page::PIECES)).with(classed("ul", "pieces").with(pieces));
    classed("section", "sheet-of-paper")
        .with(tag("h2").with(name))
        .with(classed("p", "lead").with(said(cutting::need(sheets, plan.system))))
        .with(notes(desk.findings(Place::Card(card), Some("sheet-width")).into()))
        .with(list)
        .with(classed("div", "patterns").with(patterns))
}
