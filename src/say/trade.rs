//! Words about time and money.

use crate::make::price::Price;
use crate::phrase;
use crate::project::trade::Trade;
use crate::say::phrase::Phrase;
use crate::stock::currency::{Currency, Unknown};

/// All of it.
pub const TITLE: &str = "Time and price";
/// Which money.
pub const CURRENCY: &str = "Currency";
/// An hour.
pub const HOUR: &str = "An hour of your work";
/// What else goes in.
pub const TRIMS: &str = "Ribbon, glue and the like, a set";
/// On top.
pub const EXPENSES: &str = "Expenses on top, %";
/// On top of that.
pub const PROFIT: &str = "Profit on top, %";
/// What the shelf asks.
pub const SHELF: &str = "Price on the shelf, % of a shop’s";
/// What the lines are for.
pub const ONE_SET: &str = "For one set";
/// The hour is worth nothing.
pub const NO_HOUR: &str = "You have not said what an hour of your work is worth.";
/// By a rule of thumb.
pub const WITH_HOURS: &str = "Rule of thumb: times the material, with hours";
/// By another.
pub const BY_MATERIAL: &str = "Rule of thumb: times the material alone";
/// The stall.
pub const STALL: &str = "The stall or room";
/// Teaching.
pub const FEE: &str = "Your fee for a class";
/// What is reckoned.
pub const HINT: &str = "Money is rounded up to whole coins. No link holds any of it.";
/// Where the times come from.
pub const RULES: &str = "Times are rules of thumb: time a few of your own steps, and they follow your hands.";
/// Where the maker timed.
pub const LEARNED: &str = "Times follow the steps that you timed.";
/// Forgets that.
pub const FORGET: &str = "Forget what was timed";
/// Begins.
pub const TIME_ONE: &str = "Time it once";
/// Begins, where several are done in one go.
pub const TIME_FIRST: &str = "Time one of them";
/// Ends.
pub const STOP: &str = "Stop the clock";
/// It cannot have taken so long.
pub const NOT_TIMED: &str = "Not counted: under two seconds or over two hours.";

/// What a step took.
#[must_use]
pub fn timed(seconds: u64) -> String {
    format!("Counted: {}. Your times count for classes, evenings and prices.", clock(seconds))
}

/// `2:40`, minutes and seconds.
#[must_use]
pub fn clock(seconds: u64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// `2 h 40 min`: minutes that are begun count.
#[must_use]
pub fn time(seconds: u64) -> String {
    let minutes = seconds.div_ceil(60);
    if minutes < 60 { format!("{minutes} min") } else { format!("{} h {:02} min", minutes / 60, minutes % 60) }
}

/// How long all sets take, and each.
#[must_use]
pub fn work(seconds: u64, sets: u32) -> String {
    match sets {
        0 | 1 => format!("About {} of work.", time(seconds)),
        _ => format!("About {} of work for all, {} a set.", time(seconds), time(seconds / u64::from(sets))),
    }
}

/// The reckoning, line by line; `place` is that of a place in a class.
#[must_use]
pub fn price(price: &Price, place: Option<u64>, trade: &Trade, money: &Currency) -> Vec<(String, String)> {
    // Nothing said is no price.
    let show = |coins: u64| if coins == 0 { "–".to_owned() } else { money.show(coins) };
    let mut lines = vec![
        ("Material".to_owned(), show(price.material)),
        ("Work".to_owned(), show(price.work)),
        ("What it costs you".to_owned(), show(price.floor)),
        ("Price to a shop".to_owned(), show(price.wholesale)),
        ("Price on the shelf".to_owned(), show(price.retail)),
        (format!("Rule of thumb: {} × the material, and your hours", trade.with_hours), show(price.with_hours)),
        (format!("Rule of thumb: {} × the material", trade.material), show(price.by_material)),
    ];
    lines.extend(price.even.map(|sets| ("Sold until the stall is paid".to_owned(), sets.to_string())));
    lines.extend(place.map(|place| ("A place in the class".to_owned(), money.show(place))));
    lines
}

/// Cards of which the price is not known.
#[must_use]
pub fn unpriced(names: &[String]) -> String {
    format!(
        "Not counted, for nobody said what a sheet costs: {}. Write the price of a sheet under “The set”, at the card.",
        names.join(", ")
    )
}

/// The shelf asks less than it costs.
#[must_use]
pub fn loss(price: &Price) -> Option<String> {
    if price.retail >= price.floor || price.wholesale == 0 {
        return None;
    }
    let least = price.floor.saturating_mul(100).div_ceil(price.wholesale);
    Some(format!("On the shelf it would cost you more than it brings: ask at least {least} % of a shop’s price."))
}

/// Why a currency cannot be one.
#[must_use]
pub const fn unknown(why: Unknown) -> &'static str {
    match why {
        Unknown::Code => {
            "No currency has this code in ISO 4217: check its three letters, or type a sign. Until then money has no mark."
        }
        Unknown::Long => {
            "A currency is a code of three letters, such as EUR, or a sign of up to four characters. Until then money has no mark."
        }
    }
}

/// Why an amount cannot be taken.
#[must_use]
pub fn refused(money: &Currency, most: u64) -> Phrase {
    phrase![format!("Type an amount such as {}, up to {}.", money.number(1_250), money.show(most))]
}
