//! What is cut off a cell of a drawn form: corners, strips, a thumb notch; and its score from corner to corner.

use leptos::prelude::*;

use super::child::live;
use super::choice_field::ChoiceField;
use super::drawn::Sheet;
use super::drawn_measures::{sum_field, usual};
use super::opened::opened;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, fact};
use crate::form::own::drawn::{At, Cell, Diagonal, Runs, Span, Trim};
use crate::form::own::edit::{corner, notch, set_corner, set_notch, set_strip, strip};
use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::corner::{Corner, Side};
use crate::say::drawing;

/// A wedge or round to start with.
const SMALL: Native<Length> = Native::lengths(1, 8, 30);
/// A notch to start with.
const THUMB: Native<Length> = Native::lengths(3, 8, 100);
/// The four sides, in the order of `say::drawing::SIDES`.
const SIDES: [Side; 4] = [Side::Top, Side::Right, Side::Bottom, Side::Left];

/// The fields.
#[must_use]
pub fn trims(sheet: Sheet, at: At, there: Fact<Option<Cell>>) -> Tag {
    let corners = Corner::ALL.into_iter().map(|c| at_corner(sheet, at, c, there));
    let strips = SIDES.into_iter().map(|s| at_side(sheet, at, s, there));
    let group = |title: &'static str, fields: Vec<Tag>| {
        classed("fieldset", "group").with(tag("legend").with(title)).with(classed("div", "fields").with(fields))
    };
    opened("group", drawing::CUT_OFF, sheet.trims)
        .with(group(drawing::CORNERS, corners.collect()))
        .with(group(drawing::STRIPS, strips.collect()))
        .with(group(drawing::NOTCH, vec![thumb(sheet, at, there), diagonal(sheet, at, there)]))
}

fn change(sheet: Sheet, at: At, tag: &str, with: impl FnOnce(&mut Cell)) {
    sheet.change(tag, |d| {
        if let Some(cell) = d.cell_mut(at) {
            with(cell);
        }
    });
}

fn start(sheet: Sheet, length: Native<Length>) -> Span {
    usual(sheet.desk.system().get_untracked(), length).unwrap_or_default()
}

/// Square, a wedge or round, and how large.
fn at_corner(sheet: Sheet, at: At, which: Corner, there: Fact<Option<Cell>>) -> Tag {
    let nth = which as usize;
    let trim = fact(move || there.with(|c| c.as_ref().and_then(|c| corner(c, which).cloned())));
    let kind = fact(move || {
        trim.with(|t| match t {
            Some(Trim::Wedge(..)) => drawing::WEDGE,
            Some(_) => drawing::ROUND,
            None => drawing::SQUARE,
        })
    });
    let words = [drawing::SQUARE, drawing::WEDGE, drawing::ROUND];
    let choice = ChoiceField {
        id: sheet.id(&format!("corner-{nth}")),
        label: drawing::CORNER_NAMES[nth],
        hint: String::new(),
        choices: Fact::fixed(words.map(|w| (w.to_owned(), w.to_owned())).to_vec()),
        value: fact(move || kind.get().to_owned()),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |word: String| {
            let small = start(sheet, SMALL);
            let to = match word.as_str() {
                drawing::WEDGE => Some(Trim::Wedge(which, small.clone(), small)),
                drawing::ROUND => Some(Trim::Round(which, small)),
                _ => None,
            };
            change(sheet, at, "", |cell| set_corner(cell, which, to));
        }),
    };
    let part = move |name: &'static str,
                     label: &'static str,
                     of: fn(&Trim) -> Option<&Span>,
                     with: fn(&Trim, Span) -> Trim| {
        let key = sheet.id(&format!("corner-{nth}-{name}"));
        let edited = key.clone();
        let value = fact(move || trim.with(|t| t.as_ref().and_then(of).cloned()));
        sum_field(sheet, key, label, value, true, move |span| {
            if let (Some(now), Some(span)) = (trim.get_untracked(), span) {
                change(sheet, at, &edited, |cell| set_corner(cell, which, Some(with(&now, span))));
            }
        })
    };
    let across = move || {
        part(
            "across",
            drawing::ACROSS,
            |t| if let Trim::Wedge(_, a, _) = t { Some(a) } else { None },
            |t, s| match t {
                Trim::Wedge(c, _, d) => Trim::Wedge(*c, s, d.clone()),
                other => other.clone(),
            },
        )
    };
    let down = move || {
        part(
            "down",
            drawing::DOWN,
            |t| if let Trim::Wedge(_, _, d) = t { Some(d) } else { None },
            |t, s| match t {
                Trim::Wedge(c, a, _) => Trim::Wedge(*c, a.clone(), s),
                other => other.clone(),
            },
        )
    };
    let radius = move || {
        part(
            "radius",
            drawing::RADIUS,
            |t| if let Trim::Round(_, r) = t { Some(r) } else { None },
            |t, s| match t {
                Trim::Round(c, _) => Trim::Round(*c, s),
                other => other.clone(),
            },
        )
    };
    classed("div", "trim").with(choice.view()).with(live(move || match kind.get() {
        drawing::WEDGE => vec![across(), down()],
        drawing::ROUND => vec![radius()],
        _ => Vec::new(),
    }))
}

fn at_side(sheet: Sheet, at: At, side: Side, there: Fact<Option<Cell>>) -> Tag {
    let key = sheet.id(&format!("strip-{}", side as usize));
    let edited = key.clone();
    let value = fact(move || there.with(|c| c.as_ref().and_then(|c| strip(c, side).cloned())));
    sum_field(sheet, key, drawing::SIDES[side as usize], value, false, move |span| {
        change(sheet, at, &edited, |cell| set_strip(cell, side, span));
    })
}

fn thumb(sheet: Sheet, at: At, there: Fact<Option<Cell>>) -> Tag {
    let now = fact(move || there.with(|c| c.as_ref().and_then(|c| notch(c).map(|(s, r)| (s, r.clone())))));
    let none = std::iter::once((String::new(), drawing::NO_NOTCH.to_owned()));
    let sides = drawing::SIDES.iter().enumerate().map(|(i, s)| (i.to_string(), (*s).to_owned()));
    let choice = ChoiceField {
        id: sheet.id("notch"),
        label: drawing::NOTCH,
        hint: String::new(),
        choices: Fact::fixed(none.chain(sides).collect()),
        value: fact(move || now.with(|n| n.as_ref().map_or_else(String::new, |n| (n.0 as usize).to_string()))),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |word: String| {
            let side = word.parse().ok().and_then(|i: usize| SIDES.get(i).copied());
            let radius = now.get_untracked().map_or_else(|| start(sheet, THUMB), |n| n.1);
            change(sheet, at, "", |cell| set_notch(cell, side.map(|s| (s, radius))));
        }),
    };
    let is = fact(move || now.with(Option::is_some));
    let radius = move || {
        let key = sheet.id("notch-radius");
        let edited = key.clone();
        let value = fact(move || now.with(|n| n.as_ref().map(|n| n.1.clone())));
        sum_field(sheet, key, drawing::RADIUS, value, true, move |span| {
            if let (Some((side, _)), Some(radius)) = (now.get_untracked(), span) {
                change(sheet, at, &edited, |cell| set_notch(cell, Some((side, radius))));
            }
        })
    };
    classed("div", "trim").with(choice.view()).with(live(move || is.get().then(radius)))
}

fn diagonal(sheet: Sheet, at: At, there: Fact<Option<Cell>>) -> Tag {
    let value = move || {
        there.with(|c| match c.as_ref().and_then(|c| c.diagonal) {
            None => 0,
            Some(Diagonal { runs: Runs::Falling, .. }) => 1,
            Some(Diagonal { runs: Runs::Rising, .. }) => 2,
        })
    };
    let choices = drawing::DIAGONALS.iter().enumerate().map(|(i, d)| (i.to_string(), (*d).to_owned()));
    ChoiceField {
        id: sheet.id("diagonal"),
        label: drawing::DIAGONAL,
        hint: String::new(),
        choices: Fact::fixed(choices.collect()),
        value: fact(move || value().to_string()),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |word: String| {
            let runs = match word.as_str() {
                "1" => Some(Runs::Falling),
                "2" => Some(Runs::Rising),
                _ => None,
            };
            let fold = Angle::degrees(90);
            change(sheet, at, "", |cell| cell.diagonal = runs.map(|runs| Diagonal { runs, fold }));
        }),
    }
    .view()
}
