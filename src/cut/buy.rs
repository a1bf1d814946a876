//! What to buy for a layout, with spares, and for how many sets the sheets in the drawer are enough.

use super::build::lay_out;
use super::layout::Layout;
use super::piece::Piece;
use super::sheet::{Rules, Sheet, Stock};

/// Sheets of one size that a layout takes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Purchase {
    /// The sheet's number.
    pub sheet: u32,
    /// How many come out of the drawer.
    pub have: u32,
    /// How many are bought.
    pub buy: u32,
    /// What those cost, in the smallest coin; none where the price is not known.
    pub price: Option<u64>,
}

/// What a layout takes of each sheet, in the order of the sheets; sizes that it does not use are not listed.
#[must_use]
pub fn purchases(layout: &Layout, sheets: &[Sheet]) -> Vec<Purchase> {
    let mut all = Vec::new();
    for sheet in sheets {
        let count = layout.sheets_of(sheet.id);
        let known = all.iter().any(|p: &Purchase| p.sheet == sheet.id);
        if count == 0 || known {
            continue;
        }
        let (have, buy) = match sheet.stock {
            Stock::Have(_) => (count, 0),
            Stock::Buy => (0, count),
        };
        let price = if buy == 0 { Some(0) } else { sheet.price.map(|p| u64::from(p) * u64::from(buy)) };
        all.push(Purchase { sheet: sheet.id, have, buy, price });
    }
    all
}

/// The pieces with spares: so many per cent more of each, rounded up. Makers plan 10 to 15.
#[must_use]
pub fn with_spares(pieces: &[Piece], per_cent: u32) -> Vec<Piece> {
    let more = |count: u32| {
        let spare = (u64::from(count) * u64::from(per_cent)).div_ceil(100);
        u32::try_from(u64::from(count) + spare).unwrap_or(u32::MAX)
    };
    pieces.iter().map(|p| Piece { count: more(p.count), ..p.clone() }).collect()
}

/// For how many sets the sheets that are there are enough, up to `most`: "what you have is enough for 7 sets".
///
/// `set` is what one set takes. Counts what the quick layout can place, so it may be too careful, never too hopeful:
/// the sets that it promises can be cut.
#[must_use]
pub fn enough_for(set: &[Piece], sheets: &[Sheet], rules: &Rules, most: u32) -> u32 {
    let there: Vec<Sheet> = sheets.iter().filter(|s| s.stock != Stock::Buy).cloned().collect();
    let holds = |sets: u32| {
        let pieces: Vec<Piece> =
            set.iter().map(|p| Piece { count: p.count.saturating_mul(sets), ..p.clone() }).collect();
        lay_out(&pieces, &there, rules).left_out.is_empty()
    };
    if set.iter().all(|p| p.count == 0) {
        return most;
    }
    // Doubles until it no longer holds, then halves the gap.
    let (mut enough, mut short) = (0_u32, 1_u32);
    while short <= most && holds(short) {
        enough = short;
        short = short.saturating_mul(2);
        if short == u32::MAX {
            break;
        }
    }
    short = short.min(most.saturating_add(1));
    while short - enough > 1 {
        let middle = enough + (short - enough) / 2;
        if holds(middle) {
            enough = middle;
        } else {
            short = middle;
        }
    }
    enough
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cut::piece::Turn;
    use crate::measure::length::Length;
    use crate::measure::system::System;

    #[test]
    fn seven_squares_are_enough_for_seven_blanks() {
        let blank =
            Piece { id: 1, width: Length::inches(9, 1), height: Length::inches(8, 1), count: 1, turn: Turn::Free };
        let square = |stock| Sheet {
            id: 3,
            width: Length::inches(12, 1),
            height: Length::inches(12, 1),
            typed: System::Inch,
            stock,
            price: Some(45),
        };
        let there = [square(Stock::Have(7))];
        let rules = Rules::default();
        let enough = |most| enough_for(std::slice::from_ref(&blank), &there, &rules, most);
        assert_eq!((enough(100), enough(5), enough(0)), (7, 5, 0));
        assert_eq!(enough_for(std::slice::from_ref(&blank), &[square(Stock::Buy)], &rules, 9), 0);

        let ten = with_spares(&[Piece { count: 10, ..blank }], 15);
        assert_eq!(ten[0].count, 12);
        let shop = [square(Stock::Buy)];
        let bought = purchases(&lay_out(&ten, &shop, &rules), &shop);
        assert_eq!(bought, [Purchase { sheet: 3, have: 0, buy: 12, price: Some(540) }]);
    }
}
