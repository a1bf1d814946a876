//! Words about time and money.

use super::cutting::coins;
use crate::make::price::Price;

/// All of it.
pub const TITLE: &str = "Time and price";
/// An hour.
pub const HOUR: &str = "An hour of your work";
/// What else goes in.
pub const TRIMS: &str = "Ribbon, glue and the like, a set";
/// On top.
pub const EXPENSES: &str = "Expenses on top, %";
/// On top of that.
pub const PROFIT: &str = "Profit on top, %";
/// The stall.
pub const STALL: &str = "The stall or room";
/// How money is typed.
pub const COINS: &str = "In pence or cents";
/// What is reckoned.
pub const HINT: &str = "Times are rules of thumb. Money is rounded up to whole coins, and is in no link.";

/// `2 h 40 min`, for all sets.
#[must_use]
pub fn time(seconds: u64, sets: u32) -> String {
    let of = |seconds: u64| {
        let minutes = seconds.div_ceil(60);
        if minutes < 60 { format!("{minutes} min") } else { format!("{} h {:02} min", minutes / 60, minutes % 60) }
    };
    match sets {
        0 | 1 => format!("About {} of work.", of(seconds)),
        _ => format!("About {} of work for all, {} a set.", of(seconds), of(seconds / u64::from(sets))),
    }
}

/// The reckoning, line by line.
#[must_use]
pub fn price(price: &Price) -> Vec<(&'static str, String)> {
    let mut lines = vec![
        ("Material", coins(price.material)),
        ("Work", coins(price.work)),
        ("What it costs you", coins(price.floor)),
        ("To a shop", coins(price.wholesale)),
        ("On the shelf", coins(price.retail)),
    ];
    lines.extend(price.even.map(|sets| ("Sold until the stall is paid", sets.to_string())));
    lines
}

/// Cards of which the price is not known.
#[must_use]
pub fn unpriced(names: &[String]) -> String {
    format!("Not counted, for nobody said what a sheet costs: {}. Say it at the card.", names.join(", "))
}
