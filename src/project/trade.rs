//! What the maker reckons with: the hour, what goes into a set besides card, and the stall. Kept and in files, never in
//! a link.

use serde::{Deserialize, Serialize};

use crate::measure::json::value::{is, is_usual};

use super::request::{Project, Supply};

/// Money in the smallest coin of one currency; no conversion. Left out, nothing, and the shelf at twice the shop's.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Trade {
    /// Which money it is: a code of ISO 4217, such as `EUR`, or a sign.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub currency: String,
    /// An hour of the maker's work.
    #[serde(skip_serializing_if = "is_usual")]
    pub hour: u32,
    /// Ribbon, glue, tissue and the like, for one set.
    #[serde(skip_serializing_if = "is_usual")]
    pub trims: u32,
    /// Expenses on top of material and work, in percent.
    #[serde(skip_serializing_if = "is_usual")]
    pub expenses: u32,
    /// Profit on top of all that, in percent.
    #[serde(skip_serializing_if = "is_usual")]
    pub profit: u32,
    /// What the shelf asks, in percent of what a shop pays.
    #[serde(skip_serializing_if = "is::<200>")]
    pub shelf: u32,
    /// By a rule of thumb: so many times the material, and the hours.
    #[serde(skip_serializing_if = "is::<2>")]
    pub with_hours: u32,
    /// By another: so many times the material alone.
    #[serde(skip_serializing_if = "is::<4>")]
    pub material: u32,
    /// The stall, the table or the room.
    #[serde(skip_serializing_if = "is_usual")]
    pub stall: u32,
    /// What the maker asks for teaching a class.
    #[serde(skip_serializing_if = "is_usual")]
    pub fee: u32,
}

impl Default for Trade {
    fn default() -> Self {
        let nothing = String::new();
        Self {
            currency: nothing,
            hour: 0,
            trims: 0,
            expenses: 0,
            profit: 0,
            shelf: 200,
            with_hours: 2,
            material: 4,
            stall: 0,
            fee: 0,
        }
    }
}

impl Project {
    /// The design as others get it, in a link or on paper: without prices, names and what else only the maker reckons with.
    #[must_use]
    pub fn for_others(&self) -> Self {
        let (trade, class, batch) = Default::default();
        let mut shared = Self { trade, class, batch, ..self.clone() };
        shared.supplies().for_each(|supply| supply.price = None);
        shared
    }

    /// Where the sheets of every card come from.
    pub fn supplies(&mut self) -> impl Iterator<Item = &mut Supply> {
        self.cards.iter_mut().flat_map(|card| {
            std::iter::once(&mut card.supply).chain(card.more_sheets.iter_mut().map(|more| &mut more.supply))
        })
    }

    /// Every amount of money in it, for when the coins of another currency are counted: what was typed keeps its number,
    /// as far as there are coins for it.
    pub fn recount(&mut self, from: usize, to: usize) {
        let ten = |by: usize| 10_u32.saturating_pow(u32::try_from(by).unwrap_or(u32::MAX));
        let count = |coins: &mut u32| {
            *coins = if to >= from { coins.saturating_mul(ten(to - from)) } else { coins.div_ceil(ten(from - to)) };
        };
        let trade = &mut self.trade;
        [&mut trade.hour, &mut trade.trims, &mut trade.stall, &mut trade.fee].into_iter().for_each(count);
        self.supplies().filter_map(|supply| supply.price.as_mut()).for_each(count);
    }
}
