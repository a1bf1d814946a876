//! Sheets and cuts in words.

use super::measured::{length, sides};
use super::phrase::Phrase;
use crate::cut::layout::{Proof, Way};
use crate::cut::order::{Comes, CutStep, Edge, Quarter, Setting};
use crate::cut::sheet::Stock;
use crate::make::sheets::CardSheets;
use crate::measure::system::System;
use crate::phrase;

/// How many sheets a card needs, and whether it could be fewer.
#[must_use]
pub fn need(sheets: &CardSheets, system: System) -> Phrase {
    let count = sheets.layout.sheets();
    let proof = match sheets.layout.proof() {
        Proof::Fewest => format!("no layout needs fewer than {count}"),
        Proof::AtLeast(n) => format!("fewer than {n} is impossible"),
    };
    let several = sheets.job.sheets.len() > 1;
    let each = sheets.used().map(|(n, sheet)| {
        let word = if n == 1 { "sheet" } else { "sheets" };
        let from = match sheet.stock {
            Stock::Have(_) => " from the drawer",
            Stock::Buy if several => " to buy",
            Stock::Buy => "",
        };
        let size = sides(sheet.width, sheet.height, system);
        phrase![format!("{n} {word} of "), size, from]
    });
    Phrase::list(each, ", ", " and ").with(format!("; {proof}."))
}

/// How often a sheet is cut so.
#[must_use]
pub fn copies(copies: u32) -> String {
    if copies == 1 { "Cut 1 sheet like this".to_owned() } else { format!("Cut {copies} sheets like this") }
}

/// One cut at the trimmer.
#[must_use]
pub fn cut(step: &CutStep, system: System, letter: &dyn Fn(u32) -> String) -> Phrase {
    let turn = if step.quarter == Quarter::Turn { "Turn the card a quarter. " } else { "" };
    let fence = length(step.fence, system);
    let set = match step.setting {
        Setting::Set => phrase!["Set the fence to ", fence, ". "],
        Setting::Leave => phrase!["Leave the fence at ", fence, ". "],
    };
    let edge = match (step.way, step.edge) {
        (Way::Upright, Edge::Near) => "left",
        (Way::Upright, Edge::Far) => "right",
        (Way::Level, Edge::Near) => "lower",
        (Way::Level, Edge::Far) => "upper",
    };
    let hand = if step.part == 0 { "the whole sheet".to_owned() } else { format!("part {}", step.part) };
    let comes = |c: Comes| match c {
        Comes::Piece { id, .. } => format!("piece {}", letter(id)),
        Comes::Part(n) => format!("part {n}"),
        Comes::Offcut => "an offcut".to_owned(),
    };
    let (low, high) = (comes(step.low), comes(step.high));
    phrase![turn, set, format!("Cut {hand} with its {edge} edge (as drawn) at the fence: gives {low} and {high}.")]
}
