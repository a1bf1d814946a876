//! The sheets of a card: how many, what lies where on them, and the cuts in order.

use serde::Serialize;
use snugfold::cut::layout::{Pattern, Way};
use snugfold::cut::order::{Comes, CutStep, Edge, order};
use snugfold::cut::piece::Pose;
use snugfold::cut::place::{Placed, place};
use snugfold::cut::sheet::{Sheet, Stock};
use snugfold::make::sheets::CardSheets;
use snugfold::plan::Plan;

use super::frame::{Measure, Sides, measure, sides};

/// The sheets of one card.
#[derive(Serialize)]
pub struct Card {
    card: u16,
    count: u32,
    /// No layout needs fewer sheets than this.
    at_least: u32,
    used: Vec<Used>,
    patterns: Vec<Alike>,
    left_out: Vec<LeftOut>,
}

/// Sheets of one size and source.
#[derive(Serialize)]
struct Used {
    size: Sides,
    count: u32,
    /// `drawer` or `shop`.
    from: &'static str,
}

/// Sheets that are cut alike.
#[derive(Serialize)]
struct Alike {
    sheet: Sides,
    copies: u32,
    pieces: Vec<Lies>,
    cuts: Vec<Cut>,
}

/// A piece or an offcut, from the sheet's lower left corner.
#[derive(Serialize)]
struct Lies {
    /// None for an offcut.
    piece: Option<String>,
    turned: bool,
    x: Measure,
    y: Measure,
    width: Measure,
    height: Measure,
}

#[derive(Serialize)]
struct Cut {
    /// The part in hand: 0 is the whole sheet, others are numbered as they come off.
    part: u32,
    sides: Sides,
    /// From bottom to top, or from left to right.
    way: &'static str,
    fence: Measure,
    /// The edge at the fence.
    edge: &'static str,
    /// Left of the cut or below it.
    low: String,
    /// Right of the cut or above it.
    high: String,
}

#[derive(Serialize)]
struct LeftOut {
    piece: String,
    count: u32,
}

impl Card {
    /// The sheets of one card of `plan`.
    pub fn of(sheets: &CardSheets, plan: &Plan) -> Self {
        let patterns = sheets.layout.patterns.iter();
        let left_out = sheets.layout.left_out.iter();
        Self {
            card: sheets.job.card,
            count: sheets.layout.sheets(),
            at_least: sheets.layout.bound,
            used: sheets
                .used()
                .map(|(count, sheet)| Used {
                    size: size(sheet, plan),
                    count,
                    from: match sheet.stock {
                        Stock::Have(_) => "drawer",
                        Stock::Buy => "shop",
                    },
                })
                .collect(),
            patterns: patterns.filter_map(|p| Some(alike(p, sheets.sheet(p.sheet)?, plan))).collect(),
            left_out: left_out.map(|l| LeftOut { piece: letter(plan, l.piece), count: l.count }).collect(),
        }
    }
}

fn size(sheet: &Sheet, plan: &Plan) -> Sides {
    sides(sheet.width, sheet.height, plan.system)
}

fn letter(plan: &Plan, id: u32) -> String {
    let piece = plan.pieces.iter().find(|p| p.id == id);
    piece.map_or_else(String::new, snugfold::make::pieces::Piece::letter)
}

fn alike(pattern: &Pattern, sheet: &Sheet, plan: &Plan) -> Alike {
    Alike {
        sheet: size(sheet, plan),
        copies: pattern.copies,
        pieces: place(pattern, sheet).iter().map(|p| lies(p, plan)).collect(),
        cuts: order(pattern, sheet).iter().map(|c| cut(c, plan)).collect(),
    }
}

fn lies(placed: &Placed, plan: &Plan) -> Lies {
    let l = |length| measure(length, plan.system);
    Lies {
        piece: placed.piece.map(|(id, _)| letter(plan, id)),
        turned: placed.piece.is_some_and(|(_, pose)| pose == Pose::Turned),
        x: l(placed.x),
        y: l(placed.y),
        width: l(placed.width),
        height: l(placed.height),
    }
}

fn cut(step: &CutStep, plan: &Plan) -> Cut {
    let comes = |comes| match comes {
        Comes::Piece { id, .. } => format!("piece {}", letter(plan, id)),
        Comes::Part(part) => format!("part {part}"),
        Comes::Offcut => "offcut".to_owned(),
    };
    Cut {
        part: step.part,
        sides: sides(step.sides.0, step.sides.1, plan.system),
        way: match step.way {
            Way::Upright => "upright",
            Way::Level => "level",
        },
        fence: measure(step.fence, plan.system),
        edge: match (step.way, step.edge) {
            (Way::Upright, Edge::Near) => "left",
            (Way::Upright, Edge::Far) => "right",
            (Way::Level, Edge::Near) => "lower",
            (Way::Level, Edge::Far) => "upper",
        },
        low: comes(step.low),
        high: comes(step.high),
    }
}
