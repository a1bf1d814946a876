//! The widths of the columns and the heights of the rows of a drawn form.

use leptos::prelude::*;

use super::child::each;
use super::drawn::Sheet;
use super::tag::{Tag, button, classed, tag};
use super::typed_field::TypedField;
use super::value::{Fact, fact};
use crate::fit::own::Rank;
use crate::form::own::drawn::Span;
use crate::form::own::edit::{Along, complete, insert, remove};
use crate::form::own::read::sum;
use crate::form::own::write::span;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::{Native, System};
use crate::say::{drawing, own};

/// What a new column or row measures.
const FRESH: Native<Length> = Native::lengths(1, 1, 250);

/// A field for a sum; empty where it may be nothing.
#[must_use]
pub fn sum_field(
    sheet: Sheet,
    key: String,
    label: &'static str,
    value: Fact<Option<Span>>,
    needed: bool,
    commit: impl Fn(Option<Span>) + Send + Sync + 'static,
) -> Tag {
    let system = sheet.desk.system();
    let read = move |text: &str| -> Result<Option<Span>, _> {
        if text.trim().is_empty() && !needed { Ok(None) } else { sum(text, system.get()).map(Some) }
    };
    TypedField {
        id: key,
        label,
        hint: String::new(),
        keys: "text",
        value: fact(move || value.with(|v| v.as_ref().map_or_else(String::new, span))),
        usual: None,
        findings: Fact::fixed(Vec::new()),
        read: Callback::new(move |text: String| {
            read(&text).map(drop).map_err(|why| format!("This {}.", own::unread(why)).into())
        }),
        commit: Callback::new(move |text: String| {
            if let Ok(taken) = read(&text) {
                commit(taken);
            }
        }),
    }
    .view(|place| place)
}

/// A length to start with, in the system that is worked in.
#[must_use]
pub fn usual(system: System, length: Native<Length>) -> Option<Span> {
    Given::of(length.of(system), system).map(Span::typed)
}

/// All columns and rows.
#[must_use]
pub fn measures(sheet: Sheet) -> Tag {
    let add = move |along: Along| {
        let fresh = usual(sheet.desk.system().get_untracked(), FRESH);
        sheet.change("", |d| {
            let at = if along == Along::Columns { d.width() } else { d.height() };
            if let Some(fresh) = fresh {
                insert(d, along, at, fresh);
            }
        });
    };
    let count = move |along: Along| sheet.drawn.with(|d| if along == Along::Columns { d.width() } else { d.height() });
    let list = move |along: Along| {
        classed("div", "fields").with(each(move || (0..count(along)).collect(), move |n: u8| one(sheet, along, n)))
    };
    tag("fieldset")
        .class("group")
        .with(tag("legend").with(drawing::MEASURES))
        .with(classed("p", "hint").with(drawing::MEASURES_HINT))
        .with(list(Along::Columns))
        .with(list(Along::Rows))
        .with(
            classed("p", "actions")
                .with(button(drawing::ADD_COLUMN, move || add(Along::Columns)))
                .with(button(drawing::ADD_ROW, move || add(Along::Rows))),
        )
}

fn one(sheet: Sheet, along: Along, n: u8) -> Tag {
    let rank = if along == Along::Columns { Rank::Column(usize::from(n)) } else { Rank::Row(usize::from(n)) };
    let key = sheet.id(&match along {
        Along::Columns => format!("column-{n}"),
        Along::Rows => format!("row-{n}"),
    });
    let tag_of = key.clone();
    let value = fact(move || sheet.drawn.with(|d| rank.span(d).cloned()));
    let label: &'static str = label(along, n);
    let field = sum_field(sheet, key, label, value, true, move |span| {
        let system = sheet.desk.system().get_untracked();
        sheet.change(&tag_of, |d| {
            let before = rank.span(d).and_then(Span::only_typed).cloned();
            if let (Some(place), Some(span)) = (rank.span_mut(d), span) {
                *place = span;
            }
            // A size that is named for the first time is as long as what stood there.
            if let Some(length) = before.or_else(|| usual(system, FRESH).and_then(|s| s.only_typed().cloned())) {
                complete(d, &length);
            }
        });
    });
    let before = move || {
        let fresh = usual(sheet.desk.system().get_untracked(), FRESH);
        sheet.change("", |d| {
            if let Some(fresh) = fresh {
                insert(d, along, n, fresh);
            }
        });
    };
    let out = move || {
        sheet.change("", |d| {
            remove(d, along, n);
        });
    };
    let said = |what: &str| format!("{what}: {}", drawing::rank(rank));
    classed("div", "measure").with(field).with(
        classed("p", "actions")
            .with(button("+", before).is("aria-label", said(drawing::SCORE_BEFORE)))
            .with(button("−", out).is("aria-label", said(drawing::TAKE_OUT))),
    )
}

/// `Column A`, `Row 1`.
fn label(along: Along, n: u8) -> &'static str {
    const COLUMNS: [&str; 12] = [
        "Column A", "Column B", "Column C", "Column D", "Column E", "Column F", "Column G", "Column H", "Column I",
        "Column J", "Column K", "Column L",
    ];
    const ROWS: [&str; 12] =
        ["Row 1", "Row 2", "Row 3", "Row 4", "Row 5", "Row 6", "Row 7", "Row 8", "Row 9", "Row 10", "Row 11", "Row 12"];
    let names = if along == Along::Columns { &COLUMNS } else { &ROWS };
    names.get(usize::from(n)).copied().unwrap_or_default()
}
