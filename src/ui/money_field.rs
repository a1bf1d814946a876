//! A field for an amount of money.

use leptos::prelude::{Callable, Callback};

use super::desk::desk;
use super::tag::Tag;
use super::typed_field::TypedField;
use super::value::{Fact, fact};
use crate::project::finding::Finding;
use crate::say::trade;
use crate::stock::currency::Currency;

/// An amount in the smallest coin of the maker's currency.
pub struct MoneyField {
    /// Unique on the page.
    pub id: String,
    /// What it is called.
    pub label: &'static str,
    /// What it is, in one line.
    pub hint: &'static str,
    /// The most that may be typed.
    pub most: u32,
    /// What it is now.
    pub value: Fact<u32>,
    /// What should be known about it.
    pub findings: Fact<Vec<Finding>>,
    /// Takes a new amount.
    pub commit: Callback<u32>,
}

/// What the maker counts in.
#[must_use]
pub fn money() -> Currency {
    desk().project.with(|p| Currency::of(&p.trade.currency).unwrap_or_default())
}

impl MoneyField {
    /// The field.
    #[must_use]
    pub fn view(self) -> Tag {
        let Self { id, label, hint, most, value, findings, commit } = self;
        let desk = desk();
        let money = fact(move || desk.project.with(|p| Currency::of(&p.trade.currency).unwrap_or_default()));
        let read = move |text: &str| match text.trim() {
            "" => Some(0),
            text => money.with_untracked(|m| m.read(text)).filter(|n| *n <= most),
        };
        TypedField {
            id,
            label,
            hint: hint.to_owned(),
            keys: "decimal",
            value: fact(move || money.with(|m| m.number(u64::from(value.get())))),
            usual: None,
            findings,
            read: Callback::new(move |text: String| {
                read(&text).map(drop).ok_or_else(|| money.with_untracked(|m| trade::refused(m, u64::from(most))))
            }),
            commit: Callback::new(move |text: String| {
                if let Some(coins) = read(&text) {
                    commit.run(coins);
                }
            }),
        }
        .view(|place| place)
    }
}
