//! The sheets of each card, laid out for all sets.

use crate::cut::build::lay_out;
use crate::cut::layout::{Layout, Why};
use crate::cut::piece::{Piece as Wanted, Turn};
use crate::cut::sheet::{Rules, Sheet, Stock};
use crate::project::finding::{Finding, Place, Weight, What};
use crate::project::request::Card;

use super::pieces::Piece;

/// The sheets of one card.
#[derive(Clone, Debug, PartialEq)]
pub struct CardSheets {
    /// The card.
    pub card: u16,
    /// The sheet, as it really is.
    pub sheet: Sheet,
    /// What is cut from how many of them; pieces go by their place in the piece list.
    pub layout: Layout,
}

/// Lays the pieces of each card out on its sheets; `cards` are those that can be planned with.
#[must_use]
pub fn sheets(cards: &[&Card], pieces: &[Piece], findings: &mut Vec<Finding>) -> Vec<CardSheets> {
    let mut all = Vec::new();
    for card in cards {
        let wanted: Vec<Wanted> = pieces
            .iter()
            .filter(|p| p.card == card.id)
            .map(|p| Wanted {
                id: p.id,
                width: p.width,
                height: p.height,
                count: u32::try_from(p.count).unwrap_or(u32::MAX),
                turn: Turn::Free,
            })
            .collect();
        if wanted.is_empty() {
            continue;
        }
        let sheet = Sheet {
            id: u32::from(card.id),
            width: card.sheet_width.length(),
            height: card.sheet_height.length(),
            stock: Stock::Buy,
            price: None,
        };
        let layout = lay_out(&wanted, std::slice::from_ref(&sheet), &Rules::default());
        findings.extend(layout.left_out.iter().filter_map(|left| {
            let piece = pieces.iter().find(|p| p.id == left.piece)?;
            Some(left_out(piece, left.count, left.why, &sheet))
        }));
        all.push(CardSheets {
            card: card.id,
            sheet,
            layout,
        });
    }
    all
}

fn left_out(piece: &Piece, count: u32, why: Why, sheet: &Sheet) -> Finding {
    let what = match why {
        Why::TooLarge => What::PieceTooLarge {
            piece: piece.letter(),
            width: piece.width,
            height: piece.height,
            sheet_width: sheet.width,
            sheet_height: sheet.height,
        },
        Why::TooThin => What::PieceTooThin {
            piece: piece.letter(),
            is: piece.width.min(piece.height),
            least: Rules::default().least_strip,
        },
        _ => What::PieceLeftOut {
            piece: piece.letter(),
            count,
        },
    };
    let weight = if why == Why::TooThin {
        Weight::Caution
    } else {
        Weight::Stop
    };
    Finding {
        place: Place::Card(piece.card),
        input: Some("sheet-width"),
        weight,
        what,
    }
}
