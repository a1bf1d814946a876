//! What is picked of a drawn form: a cell or a line, and what can be made of it.

use leptos::prelude::*;

use super::child::{Inside, live, shown};
use super::choice_field::ChoiceField;
use super::drawn::{Picked, Sheet};
use super::drawn_trims::trims;
use super::either::either;
use super::tag::{Tag, button, classed, tag};
use super::typed_field::TypedField;
use super::value::{Fact, fact};
use crate::form::own::build::{duty, stance};
use crate::form::own::drawn::{At, Between, Cell, Line, Stance};
use crate::form::own::edit::{State, set_cell};
use crate::form::own::statements::angle as degrees;
use crate::form::own::words::DUTIES;
use crate::form::own::write::angle;
use crate::measure::angle::Angle;
use crate::net::flat::Duty;
use crate::say::{drawing, own};

/// What can be made of what is picked.
#[must_use]
pub fn picked(sheet: Sheet) -> Inside {
    // Fields stay while they are typed into: they are built anew only where something else is picked.
    let there = fact(move || {
        let picked = sheet.picked.get();
        let holds = |at| sheet.drawn.with(|d| d.holds(at));
        match picked {
            Picked::Cell(at) if holds(at) => picked,
            Picked::Line(line) if sheet.drawn.with(|d| d.inner().contains(&line)) => picked,
            _ => Picked::Nothing,
        }
    });
    live(move || match there.get() {
        Picked::Nothing => None,
        Picked::Cell(at) => Some(of_cell(sheet, at)),
        Picked::Line(line) => Some(of_line(sheet, line)),
    })
}

fn of_cell(sheet: Sheet, at: At) -> Tag {
    let there = fact(move || sheet.drawn.with(|d| d.cell(at).cloned()));
    let title = fact(move || there.with(|c| drawing::cell_name(c.as_ref().unwrap_or(&Cell::panel(at)))));
    let state = fact(move || sheet.drawn.with(|d| State::of(d, at)));
    let states = State::ALL.into_iter().map(|to| {
        button(drawing::state(to), move || sheet.change("", |d| set_cell(d, at, to)))
            .says("aria-pressed", move || state.get() == to)
    });
    classed("div", "picked")
        .with(tag("h4").with(super::child::words(move || title.get())))
        .with(either(drawing::IT_IS, states.collect()))
        .with(shown(
            move || state.get() != State::Away,
            move || vec![words(sheet, at, there), still(sheet, at), trims(sheet, at, there)],
        ))
}

/// What a cell does and what it is called.
fn words(sheet: Sheet, at: At, there: Fact<Option<Cell>>) -> Tag {
    let change = move |with: &dyn Fn(&mut Cell)| {
        sheet.change("", |d| {
            if let Some(cell) = d.cell_mut(at) {
                with(cell);
            }
        });
    };
    let all = DUTIES.iter().map(|(word, _)| ((*word).to_owned(), (*word).to_owned()));
    let does = ChoiceField {
        id: sheet.id("does"),
        label: drawing::DOES,
        hint: String::new(),
        choices: Fact::fixed(std::iter::once((String::new(), drawing::FOUND.to_owned())).chain(all).collect()),
        value: fact(move || {
            there.with(|c| c.as_ref().and_then(duty).map_or_else(String::new, |d| drawing::duty(d).to_owned()))
        }),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |word: String| {
            let to: Option<Duty> = DUTIES.iter().find(|d| d.0 == word).map(|d| d.1);
            change(&|cell| cell.duty = to);
        }),
    };
    let names = std::iter::once((String::new(), drawing::UNNAMED.to_owned())).chain(drawing::panel_names());
    let name = ChoiceField {
        id: sheet.id("name"),
        label: drawing::NAME,
        hint: String::new(),
        choices: Fact::fixed(names.collect()),
        value: fact(move || {
            there.with(|c| c.as_ref().and_then(|c| c.name).map_or_else(String::new, |n| n.0.to_string()))
        }),
        findings: Fact::fixed(Vec::new()),
        commit: Callback::new(move |number: String| {
            let name = drawing::numbered(&number);
            // What it is called says what it does.
            change(&|cell| (cell.name, cell.duty) = (name, if name.is_some() { None } else { cell.duty }));
        }),
    };
    classed("div", "fields").with(does.view()).with(name.view())
}

/// Whether the cell lies still, and as what.
fn still(sheet: Sheet, at: At) -> Tag {
    let is = fact(move || sheet.drawn.with(|d| d.still == Some(at)));
    let stands = fact(move || sheet.drawn.with(|d| stance(d, at)));
    let one = move |to: Stance, name: &'static str| {
        button(name, move || sheet.change("", |d| d.stance = Some(to))).says("aria-pressed", move || stands.get() == to)
    };
    let parts = move || {
        if is.get() {
            let ways = vec![one(Stance::Front, drawing::AS_FRONT), one(Stance::Base, drawing::AS_BASE)];
            vec![classed("p", "hint").with(drawing::STILL), either(drawing::STANDS_AS, ways)]
        } else {
            let take = move || sheet.change("", |d| (d.still, d.stance) = (Some(at), None));
            vec![classed("p", "actions").with(button(drawing::LIES_STILL, take))]
        }
    };
    tag("div").with(live(parts))
}

fn of_line(sheet: Sheet, between: Between) -> Tag {
    let line = fact(move || sheet.drawn.with(|d| d.line(between)));
    let fold = move || match line.get() {
        Line::Score(fold) => Some(fold),
        Line::Cut | Line::Whole => None,
    };
    let kinds = [Line::USUAL, Line::Cut, Line::Whole].into_iter().map(|to| {
        let take = move || {
            // A score that is one already keeps its angle.
            if drawing::line(line.get_untracked()) != drawing::line(to) {
                sheet.change("", |d| d.draw(between, to));
            }
        };
        button(drawing::line(to), take).says("aria-pressed", move || drawing::line(line.get()) == drawing::line(to))
    });
    let key = sheet.id("fold");
    let edited = key.clone();
    let field = move || {
        let edited = edited.clone();
        let field = TypedField {
            id: key.clone(),
            label: drawing::FOLDED_BY,
            hint: drawing::FOLDED_HINT.to_owned(),
            keys: "text",
            value: fact(move || fold().map_or_else(String::new, angle)),
            usual: None,
            findings: Fact::fixed(Vec::new()),
            read: Callback::new(|text: String| {
                degrees(&text).map(drop).map_err(|why| format!("This {}.", own::unread(why)).into())
            }),
            commit: Callback::new(move |text: String| {
                if let Ok(to) = degrees(&text) {
                    sheet.change(&edited, |d| d.draw(between, Line::Score(to)));
                }
            }),
        };
        let other = move || {
            let to: Angle = -fold().unwrap_or_default();
            sheet.change("", |d| d.draw(between, Line::Score(to)));
        };
        classed("div", "fields")
            .with(field.view(|place| place))
            .with(classed("p", "actions").with(button(drawing::OTHER_WAY, other)))
    };
    let scored = fact(move || fold().is_some());
    classed("div", "picked")
        .with(tag("h4").with(drawing::between(between)))
        .with(either(drawing::IT_IS, kinds.collect()))
        .with(live(move || scored.get().then(&field)))
}
