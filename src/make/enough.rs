//! For how many sets the sheets in the drawer are enough: bisection over the number of sets, with a search for each.

use super::pieces::Piece;
use super::sheets::{Job, with_spares};
use crate::cut::layout::Why;
use crate::cut::piece::Piece as Wanted;
use crate::cut::search::{Aim, Search, Status};
use crate::cut::sheet::{Sheet, Stock};
use crate::measure::length::Length;
use crate::project::bound;

/// Work that one number of sets may take.
const TRY: u64 = 2_000_000;

/// The question for one card, a slice of work at a time. The answer may be too careful, never too hopeful: the sets that
/// it promises were laid out.
#[derive(Clone, Debug)]
pub struct Enough {
    set: Vec<Wanted>,
    each: Vec<u64>,
    spares: u32,
    there: Job,
    /// Enough for so many; not shown to be enough for so many.
    enough: u32,
    short: u32,
    trying: Option<Search>,
}

impl Enough {
    /// Asks for how many sets of `pieces` the drawer holds sheets; nothing where it holds none of this card.
    #[must_use]
    pub fn new(job: &Job, pieces: &[Piece], spares: u32) -> Option<Self> {
        let there: Vec<Sheet> = job.sheets.iter().filter(|s| s.stock != Stock::Buy).cloned().collect();
        let each: Vec<u64> =
            job.wanted.iter().map(|w| pieces.iter().find(|p| p.id == w.id).map_or(0, |p| u64::from(p.each))).collect();
        if there.is_empty() || each.iter().all(|n| *n == 0) {
            return None;
        }
        // No layout has more than all the card there is.
        let area = |w: Length, h: Length, n: u64| i128::from(w.nm()) * i128::from(h.nm()) * i128::from(n);
        let count = |s: &Sheet| if let Stock::Have(n) = s.stock { u64::from(n) } else { 0 };
        let room: i128 = there.iter().map(|s| area(s.width, s.height, count(s))).sum();
        let set: i128 = job.wanted.iter().zip(&each).map(|(w, n)| area(w.width, w.height, *n)).sum();
        let most = i128::from(bound::SETS.most).min(room / set.max(1));
        let there = Job { sheets: there, ..job.clone() };
        Some(Self {
            set: job.wanted.clone(),
            each,
            spares,
            there,
            enough: 0,
            short: u32::try_from(most).unwrap_or(0).saturating_add(1),
            trying: None,
        })
    }

    /// Goes on for about so much work; the number of sets, once it is known.
    pub fn step(&mut self, work: u64) -> Option<u32> {
        if self.short - self.enough <= 1 {
            return Some(self.enough);
        }
        let sets = self.enough + (self.short - self.enough) / 2;
        let Some(search) = &mut self.trying else {
            let wanted = self.set.iter().zip(&self.each);
            let wanted: Vec<Wanted> = wanted
                .map(|(w, each)| Wanted { count: with_spares(each * u64::from(sets), self.spares), ..w.clone() })
                .collect();
            let search = Search::new(&wanted, &self.there.sheets, &self.there.rules);
            self.trying = Some(search.aim(Aim::Sheets).most(TRY));
            return None;
        };
        // What is too thin for the trimmer is cut from offcuts by hand.
        if search.missing().all(|why| why == Why::TooThin) {
            self.enough = sets;
            self.trying = None;
        } else if search.step(work) == Status::Done && !search.missing().all(|why| why == Why::TooThin) {
            self.short = sets;
            self.trying = None;
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cut::piece::Turn;
    use crate::cut::sheet::Rules;
    use crate::make::pieces::Becomes;
    use crate::measure::system::System;
    use crate::project::finding::Place;

    /// `each` blanks of `w` × `h` in a set, `have` sheets of 12 × 12 in the drawer.
    fn check(w: i64, h: i64, each: u32, have: u32, spares: u32, expected: Option<u32>) {
        let (width, height) = (Length::inches(w, 1), Length::inches(h, 1));
        let becomes = Becomes::Blank(0);
        let piece = Piece {
            id: 0,
            place: Place::Box(1),
            becomes,
            card: 1,
            width,
            height,
            scores: None,
            each,
            count: u64::from(each),
        };
        let side = Length::inches(12, 1);
        let mut sheets =
            vec![Sheet { id: 1, width: side, height: side, typed: System::Inch, stock: Stock::Buy, price: None }];
        if have > 0 {
            sheets.push(Sheet {
                id: 0,
                width: side,
                height: side,
                typed: System::Inch,
                stock: Stock::Have(have),
                price: None,
            });
        }
        let wanted = vec![Wanted { id: 0, width, height, count: each, turn: Turn::Free }];
        let job = Job { card: 1, wanted, sheets, rules: Rules::default(), grain: None };
        let answer = Enough::new(&job, &[piece], spares).map(|mut e| {
            loop {
                if let Some(sets) = e.step(100_000) {
                    return sets;
                }
            }
        });
        assert_eq!(answer, expected);
    }

    /// Numbers that can be counted with the fingers.
    #[test]
    fn the_drawer_is_enough_for_so_many_sets() {
        // One blank of 9 × 8 from a sheet.
        check(9, 8, 1, 7, 0, Some(7));
        check(9, 8, 2, 7, 0, Some(3));
        // Four of 6 × 6 from a sheet: twelve, and a spare tenth of ten is one.
        check(6, 6, 1, 3, 0, Some(12));
        check(6, 6, 1, 3, 10, Some(10));
        check(13, 13, 1, 3, 0, Some(0));
        check(9, 8, 1, 0, 0, None);
    }
}
