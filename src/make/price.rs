//! What a set costs, and what to ask for it. Money is whole smallest coins; what does not come out even is rounded up,
//! against the maker's loss.
//!
//! Material, work, expenses and profit together are the price for a shop that sells on; twice that is the price on the
//! shelf (seen with two independent makers; the percentages are the maker's own). Two rules of thumb stand beside it:
//! twice the material and the hours, and four times the material (seen with one maker). A place in a class is the
//! teacher's fee, the room and all kits, shared by those who come (seen with one teacher).

use crate::make::sheets::CardSheets;
use crate::project::request::Project;
use crate::project::trade::Trade;

/// The reckoning for one set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Price {
    /// Card and what else goes in.
    pub material: u64,
    /// The maker's time.
    pub work: u64,
    /// What it costs with expenses: under this the maker pays for being bought from.
    pub floor: u64,
    /// With profit: what a shop pays.
    pub wholesale: u64,
    /// What is asked on the shelf or at the stall.
    pub retail: u64,
    /// How many sets have to be sold at that price before the stall is paid.
    pub even: Option<u64>,
    /// By a rule of thumb: so many times the material (twice, as one maker does), and the hours.
    pub with_hours: u64,
    /// By another: so many times the material alone (four times, as one maker does).
    pub by_material: u64,
}

/// What all the card of these sheets is worth, in the smallest coin, and the cards of which a price is not known. A sheet
/// out of the drawer is worth what one like it costs.
#[must_use]
pub fn card(sheets: &[CardSheets], project: &Project) -> (u64, Vec<u16>) {
    let (mut sum, mut unknown) = (0_u64, Vec::new());
    for of in sheets {
        let card = project.card(of.job.card);
        let sizes = card.into_iter().flat_map(|c| {
            let first = (&c.sheet_width, &c.sheet_height, c.supply);
            std::iter::once(first).chain(c.more_sheets.iter().map(|m| (&m.width, &m.height, m.supply)))
        });
        let sizes: Vec<_> = sizes.collect();
        let worth = of.used().map(|(count, sheet)| {
            let like = sizes.iter().find(|(w, h, _)| (w.length(), h.length()) == (sheet.width, sheet.height));
            like.and_then(|(.., supply)| supply.price).map(|p| u64::from(p) * u64::from(count))
        });
        match worth.sum::<Option<u64>>() {
            Some(coins) => sum = sum.saturating_add(coins),
            None => unknown.push(of.job.card),
        }
    }
    (sum, unknown)
}

/// The price of a set of which `sets` are made from card worth `card` in `seconds`.
///
/// 4 sets from card worth 10.00 in 2 hours at 12.00 an hour, 0.50 of ribbon each, 10 % expenses, 20 % profit, a stall
/// at 40.00: material 2.50 + 0.50, work 6.00, floor 9.00 + 0.90, for a shop 9.90 + 1.98, on the shelf 23.76, each
/// leaves 13.86, so 3 pay the stall:
///
/// ```
/// use snugfold::{make::price::price, project::trade::Trade};
/// let trade = Trade { hour: 1_200, trims: 50, expenses: 10, profit: 20, stall: 4_000, ..Trade::default() };
/// let p = price(&trade, 1_000, 7_200, 4);
/// assert_eq!((p.material, p.work, p.floor), (300, 600, 990));
/// assert_eq!((p.wholesale, p.retail, p.even), (1_188, 2_376, Some(3)));
/// assert_eq!((p.with_hours, p.by_material), (2 * 300 + 600, 4 * 300));
/// ```
#[must_use]
pub fn price(trade: &Trade, card: u64, seconds: u64, sets: u32) -> Price {
    let sets = u64::from(sets.max(1));
    let with = |sum: u64, percent: u32| sum.saturating_add(share(sum, percent));
    let material = card.div_ceil(sets).saturating_add(u64::from(trade.trims));
    let work = seconds.saturating_mul(u64::from(trade.hour)).div_ceil(3_600 * sets);
    let floor = with(material.saturating_add(work), trade.expenses);
    let wholesale = with(floor, trade.profit);
    let retail = share(wholesale, trade.shelf);
    let leaves = retail.saturating_sub(floor);
    let even = (trade.stall > 0 && leaves > 0).then(|| u64::from(trade.stall).div_ceil(leaves));
    let with_hours = material.saturating_mul(u64::from(trade.with_hours)).saturating_add(work);
    let by_material = material.saturating_mul(u64::from(trade.material));
    Price { material, work, floor, wholesale, retail, even, with_hours, by_material }
}

/// So many percent of a sum.
const fn share(sum: u64, percent: u32) -> u64 {
    sum.saturating_mul(percent as u64).div_ceil(100)
}

/// What a place in a class costs: `kit` is the material that one maker gets.
///
/// A fee of 120.00, a room of 30.00, kits of 7.50 for 8 makers: (120 + 30 + 60) / 8 = 26.25:
///
/// ```
/// use snugfold::{make::price::place, project::trade::Trade};
/// assert_eq!(place(&Trade { fee: 12_000, stall: 3_000, ..Trade::default() }, 750, 8), 2_625);
/// ```
#[must_use]
pub fn place(trade: &Trade, kit: u64, makers: u32) -> u64 {
    let makers = u64::from(makers.max(1));
    let all = u64::from(trade.fee).saturating_add(u64::from(trade.stall)).saturating_add(kit.saturating_mul(makers));
    all.div_ceil(makers)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever is typed or kept in a file: sums that are too large stay the largest, and nothing is divided by nothing.
    #[test]
    fn extremes_are_reckoned() {
        for n in [0, 1, u32::MAX] {
            for (card, seconds, sets) in [(0, 0, 0), (u64::MAX, u64::MAX, 1), (1, 1, u32::MAX)] {
                let trade = Trade {
                    hour: n,
                    trims: n,
                    expenses: n,
                    profit: n,
                    stall: n,
                    shelf: n,
                    with_hours: n,
                    material: n,
                    fee: n,
                    ..Trade::default()
                };
                let p = price(&trade, card, seconds, sets);
                assert!(p.material.max(p.work) <= p.floor && p.floor <= p.wholesale);
                assert_eq!(p.even.is_some(), n > 0 && p.retail > p.floor);
                assert!(place(&trade, card, sets) >= card.min(u64::MAX / u64::from(sets.max(1))));
            }
        }
    }

    /// What does not come out even is rounded up: 10 coins of card for 3 sets are 4 a set.
    #[test]
    fn a_coin_is_not_split() {
        let p = price(&Trade { hour: 1, ..Trade::default() }, 10, 1, 3);
        assert_eq!((p.material, p.work, p.floor), (4, 1, 5));
    }
}
