//! Money: currencies against a list that others keep, and prices by hand.
#![cfg(not(target_arch = "wasm32"))]

use iso_currency::{Currency as Theirs, IntoEnumIterator};
use proptest::prelude::*;
use snugfold::make::price::{place, price};
use snugfold::project::trade::Trade;
use snugfold::stock::currency::{Currency, Unknown, decimals};

/// `iso_currency` (crates.io) has ISO 4217 as a table: of each code that both know, as many decimals; and of theirs that
/// are money to be paid with, none is unknown here.
#[test]
fn currencies_are_those_of_the_standard() {
    let mut known = 0;
    for theirs in Theirs::iter() {
        let code = theirs.code();
        // Metals, funds and what is for tests are in the standard, but nobody is paid in them.
        let no_money = code.starts_with('X') && !["XAF", "XCD", "XCG", "XOF", "XPF"].contains(&code)
            || ["BOV", "CHE", "CHW", "CLF", "COU", "MXV", "USN", "UYI", "UYW"].contains(&code);
        // Replaced since: by EUR, XCG, CUP, EUR, SLE, ZWG.
        let no_more = ["BGN", "ANG", "CUC", "HRK", "SLL", "ZWL"].contains(&code);
        if no_money || no_more {
            continue;
        }
        match (decimals(code), theirs.exponent()) {
            (Some(ours), Some(exponent)) => {
                assert_eq!(ours, usize::from(exponent), "{code}");
                known += 1;
            }
            (ours, theirs) => panic!("{code}: {ours:?} here, {theirs:?} there"),
        }
    }
    assert!(known > 150, "{known}");
}

#[test]
fn what_is_no_currency_is_said() {
    for (typed, why) in [("XQZ", Unknown::Code), ("Doubloons", Unknown::Long), ("12", Unknown::Long)] {
        assert_eq!(Currency::of(typed), Err(why), "{typed}");
    }
    for typed in ["", "€", "kr", "R$", "zł", "usd"] {
        assert!(Currency::of(typed).is_ok(), "{typed}");
    }
}

/// Five sets from 12.40 of card in 3 h 20 min at 15.00 an hour, 0.85 of ribbon each, 15 % expenses, 25 % profit, the
/// shelf at 2.2 times the shop's, a stall at 45.00. By hand: card 2.48, material 3.33; work 50.00 / 5 = 10.00; 13.33 +
/// 15 % (2.00) = 15.33; + 25 % (3.84) = 19.17 for a shop; 42.18 (of 42.174) on the shelf, which leaves 26.85 each: two
/// pay the stall. By the rules of thumb 2 × 3.33 + 10.00 = 16.66 and 4 × 3.33 = 13.32.
#[test]
fn a_price_comes_out_as_by_hand() {
    let trade =
        Trade { hour: 1_500, trims: 85, expenses: 15, profit: 25, shelf: 220, stall: 4_500, ..Trade::default() };
    let p = price(&trade, 1_240, 12_000, 5);
    assert_eq!((p.material, p.work, p.floor, p.wholesale, p.retail), (333, 1_000, 1_533, 1_917, 4_218));
    assert_eq!((p.even, p.with_hours, p.by_material), (Some(2), 1_666, 1_332));
}

/// (90.00 + 7 × 6.25 + 20.00) / 7 = 21.964…: 21.97.
#[test]
fn a_place_in_a_class_comes_out_as_by_hand() {
    assert_eq!(place(&Trade { fee: 9_000, stall: 2_000, ..Trade::default() }, 625, 7), 2_197);
}

proptest! {
    /// Whatever is shown without its mark is read as the same amount, in every number of decimals.
    #[test]
    fn what_is_shown_is_read_as_the_same(coins in any::<u32>(), code in prop::sample::select(vec!["JPY", "EUR", "KWD", "£", ""])) {
        let money = Currency::of(code).expect("it is one");
        let number = money.number(u64::from(coins));
        prop_assert_eq!(money.read(&number), Some(coins));
        prop_assert_eq!(money.read(&money.show(u64::from(coins))), Some(coins));
    }

    /// Nothing that is typed panics; all that is taken is shown again as that amount.
    #[test]
    fn whatever_is_typed_is_taken_or_refused(typed in "\\PC{0,12}", mark in "\\PC{0,5}") {
        let money = Currency::of(&mark).unwrap_or_default();
        if let Some(coins) = money.read(&typed) {
            prop_assert_eq!(money.read(&money.number(u64::from(coins))), Some(coins));
        }
    }

    /// No maker loses by rounding: the place pays for everything, and one coin less would not.
    #[test]
    fn a_place_pays_for_all_and_no_coin_more(fee in 0_u32..10_000_000, stall in 0_u32..10_000_000, kit in 0_u64..100_000, makers in 1_u32..500) {
        let one = place(&Trade { fee, stall, ..Trade::default() }, kit, makers);
        let (makers, all) = (u64::from(makers), u64::from(fee) + u64::from(stall) + kit * u64::from(makers));
        prop_assert!(one * makers >= all && one.saturating_sub(1) * makers < all.max(1));
    }
}
