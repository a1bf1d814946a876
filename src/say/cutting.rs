//! Sheets and cuts in words.

use std::collections::BTreeMap;

use super::measured::{length, sides};
use super::phrase::Phrase;
use crate::cut::layout::{Node, Pattern, Proof, Way};
use crate::cut::order::{Comes, CutStep, Edge, Quarter, Setting};
use crate::cut::sheet::{Sheet, Stock};
use crate::make::sheets::CardSheets;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::phrase;
use crate::stock::currency::Currency;

/// How many sheets a card needs, and whether it could be fewer.
#[must_use]
pub fn need(sheets: &CardSheets) -> Phrase {
    let proof = match sheets.layout.proof() {
        Proof::Fewest => "fewer are impossible".to_owned(),
        Proof::AtLeast(n) => format!("fewer than {n} are impossible"),
    };
    let several = sheets.job.sheets.len() > 1;
    let each = sheets.used().map(|(n, sheet)| {
        let word = if n == 1 { "sheet" } else { "sheets" };
        let from = match sheet.stock {
            Stock::Have(_) => " from the drawer",
            Stock::Buy if several => " to buy",
            Stock::Buy => "",
        };
        let size = sides(sheet.width, sheet.height, sheet.typed);
        phrase![format!("{n} {word} of "), size, from]
    });
    Phrase::list(each, ", ", " and ").with(format!("; {proof}."))
}

/// What to buy of one card and what comes out of the drawer; with what it costs where that may be told.
#[must_use]
pub fn buy(sheets: &CardSheets, name: &str, money: Option<&Currency>) -> Phrase {
    let bought = sheets.used().filter(|u| u.1.stock == Stock::Buy).map(|(n, sheet)| {
        let size = sides(sheet.width, sheet.height, sheet.typed);
        phrase![format!("{n} {} of ", if n == 1 { "sheet" } else { "sheets" }), size]
    });
    let bought: Vec<Phrase> = bought.collect();
    let drawer: u32 = sheets.used().filter(|u| u.1.stock != Stock::Buy).map(|u| u.0).sum();
    let mut said = phrase![format!("{name}: ")];
    said = if bought.is_empty() { said.with("nothing") } else { said.with(Phrase::list(bought, ", ", " and ")) };
    let priced = sheets.price().filter(|p| *p > 0);
    if let (Some(price), Some(money)) = (priced, money) {
        said = said.with(format!(", {} in all", money.show(price)));
        match sheets.layout.price_bound {
            Some(least) if least >= price => said = said.with(" (no layout costs less)"),
            Some(least) => said = said.with(format!(" (less than {} is impossible)", money.show(least))),
            None => {}
        }
    }
    match drawer {
        0 => said,
        1 => said.with("; besides, 1 sheet that is in the drawer"),
        n => said.with(format!("; besides, {n} sheets that are in the drawer")),
    }
}

/// For how many sets the drawer is enough.
#[must_use]
pub fn enough(name: &str, sets: u32) -> String {
    let word = if sets == 1 { "set" } else { "sets" };
    format!("{name}: what is in the drawer is enough for {sets} {word}")
}

/// How often a sheet is cut so.
#[must_use]
pub fn copies(copies: u32) -> String {
    if copies == 1 { "Cut 1 sheet like this".to_owned() } else { format!("Cut {copies} sheets like this") }
}

/// What one sheet gives: `Each sheet gives 2 × A and 4 × B.`
#[must_use]
pub fn gives(pattern: &Pattern, sheet: &Sheet, letter: &dyn Fn(u32) -> String) -> Phrase {
    let mut counts: BTreeMap<u32, u32> = BTreeMap::new();
    for (id, _) in pattern.tree.pieces() {
        *counts.entry(id).or_default() += 1;
    }
    let all = counts.iter().map(|(id, n)| Phrase::words(format!("{n} × {}", letter(*id))));
    let from = if matches!(sheet.stock, Stock::Have(_)) { " It comes from the drawer." } else { "" };
    let whole = if matches!(pattern.tree, Node::Cut { .. }) { "" } else { " Nothing to cut: the sheet is the piece." };
    phrase!["Each sheet gives ", Phrase::list(all, ", ", " and "), ".", from, whole]
}

/// The offcut that is worth keeping; none under 25 mm either way (a choice of ours).
#[must_use]
pub fn keep(pattern: &Pattern, sheet: &Sheet, system: System) -> Option<Phrase> {
    let (w, h) = pattern.tree.largest_offcut(sheet.width, sheet.height)?;
    (w.min(h) >= Length::mm(25)).then(|| phrase!["Keep the largest offcut, ", sides(w, h, system), "."])
}

/// The cuts in words, one line for each setting of the fence and edge at it, numbered as in the drawing. Parts that are
/// cut again and again are said once.
#[must_use]
pub fn lines(cuts: &[CutStep], system: System, letter: &dyn Fn(u32) -> String) -> Vec<Phrase> {
    let alike = |a: &CutStep, b: &CutStep| {
        a.fence == b.fence && a.way == b.way && a.edge == b.edge && b.quarter == Quarter::Keep
    };
    let mut first = 1;
    let mut said = Vec::new();
    for group in cuts.chunk_by(alike) {
        let last = first + group.len() - 1;
        let number = if first == last { format!("{first} · ") } else { format!("{first} to {last} · ") };
        said.push(phrase![number, setting(&group[0], system), clauses(group, letter)]);
        first = last + 1;
    }
    said
}

/// `Turn the card a quarter. Set the fence to 4 1/4 in; left edge (as drawn) at the fence: `
fn setting(step: &CutStep, system: System) -> Phrase {
    let turn = if step.quarter == Quarter::Turn { "Turn the card a quarter. " } else { "" };
    let set = if step.setting == Setting::Set { "Set the fence to " } else { "Leave the fence at " };
    let edge = match (step.way, step.edge) {
        (Way::Upright, Edge::Near) => "left",
        (Way::Upright, Edge::Far) => "right",
        (Way::Level, Edge::Near) => "lower",
        (Way::Level, Edge::Far) => "upper",
    };
    phrase![turn, set, length(step.fence, system), format!("; {edge} edge (as drawn) at the fence: ")]
}

/// What comes off on the fence's side, and what is left over.
fn off_and_left(step: &CutStep) -> (Comes, Comes) {
    if step.edge == Edge::Near { (step.low, step.high) } else { (step.high, step.low) }
}

fn clauses(group: &[CutStep], letter: &dyn Fn(u32) -> String) -> String {
    let mut open: Vec<&CutStep> = group.iter().collect();
    let mut said = Vec::new();
    while !open.is_empty() {
        let head = open.remove(0);
        let (first, mut left) = off_and_left(head);
        let mut off = vec![first];
        // What is left goes back to the fence for as long as it is cut at this setting.
        while let Comes::Part(part) = left
            && let Some(at) = open.iter().position(|c| c.part == part)
        {
            let (next, rest) = off_and_left(open.remove(at));
            off.push(next);
            left = rest;
        }
        let hand = if head.part == 0 { "the whole sheet".to_owned() } else { format!("part {}", head.part) };
        let times = if off.len() == 1 { String::new() } else { format!(", {} times,", off.len()) };
        off.push(left);
        said.push(format!("{hand}{times} gives {}", listed(&off, letter)));
    }
    format!("{}.", said.join("; "))
}

/// Alike pieces together, then parts, then offcuts.
fn listed(all: &[Comes], letter: &dyn Fn(u32) -> String) -> String {
    let mut pieces: BTreeMap<u32, u32> = BTreeMap::new();
    let mut parts = Vec::new();
    let mut offcuts = 0;
    for comes in all {
        match comes {
            Comes::Piece { id, .. } => *pieces.entry(*id).or_default() += 1,
            Comes::Part(n) => parts.push(Phrase::words(n.to_string())),
            Comes::Offcut => offcuts += 1,
        }
    }
    let mut words: Vec<Phrase> = Vec::new();
    for (id, n) in &pieces {
        let letter = letter(*id);
        words.push(if *n == 1 { format!("piece {letter}") } else { format!("{n} pieces {letter}") }.into());
    }
    if !parts.is_empty() {
        let word = if parts.len() == 1 { "part " } else { "parts " };
        words.push(phrase![word, Phrase::list(parts, ", ", " and ")]);
    }
    if offcuts > 0 {
        words.push(if offcuts == 1 { "an offcut".into() } else { format!("{offcuts} offcuts").into() });
    }
    Phrase::list(words, ", ", " and ").to_string()
}
