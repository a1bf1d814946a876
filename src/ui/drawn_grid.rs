//! The cells of a drawn form and the lines between them, as buttons: the first touch picks, the next one changes.

use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, KeyboardEvent};

use super::child::live;
use super::drawn::{Picked, Sheet};
use super::tag::{Tag, button, classed, tag};
use crate::form::own::drawn::{At, Between, Drawn, Line};
use crate::form::own::edit::{State, next_line, set_cell};
use crate::form::own::words::{Half, cell, panel};
use crate::net::corner::Side;
use crate::say::drawing;
use crate::web::here;

/// The grid.
#[must_use]
pub fn grid(sheet: Sheet) -> Tag {
    let rows = move || {
        let drawn = sheet.drawn.get();
        let mut rows = Vec::new();
        for row in 0..drawn.height() {
            let mut cells = vec![head(&format!("{}", row + 1))];
            let mut below = vec![tag("td")];
            for column in 0..drawn.width() {
                let at = At::new(column, row);
                cells.push(tag("td").with(of_cell(sheet, &drawn, at)));
                cells.push(tag("td").with(of_line(sheet, &drawn, at, Side::Right)));
                below.push(tag("td").with(of_line(sheet, &drawn, at, Side::Bottom)));
                below.push(tag("td"));
            }
            rows.push(tag("tr").with(cells));
            rows.push(tag("tr").with(below));
        }
        let letters = (0..drawn.width()).flat_map(|c| {
            let name = cell(At::new(c, 0), Half::Whole);
            [head(name.trim_end_matches('1')), tag("td")]
        });
        let first = tag("tr").with(std::iter::once(tag("td")).chain(letters).collect::<Vec<Tag>>());
        tag("tbody").with(std::iter::once(first).chain(rows).collect::<Vec<Tag>>())
    };
    let table = classed("table", "cells").is("role", "presentation").with(live(rows));
    classed("div", "cells-frame")
        .is("role", "group")
        .is("aria-label", drawing::TITLE)
        .on("keydown", move |event| walk(sheet, &event))
        .with(table)
}

fn head(name: &str) -> Tag {
    classed("td", "cells-head").is("aria-hidden", "true").with(name)
}

/// Where a button is: cells have even numbers, lines stand between them.
fn id(sheet: Sheet, x: usize, y: usize) -> String {
    sheet.id(&format!("at-{x}-{y}"))
}

fn of_cell(sheet: Sheet, drawn: &Drawn, at: At) -> Tag {
    let state = State::of(drawn, at);
    let there = drawn.cell(at);
    let mine = Picked::Cell(at);
    let name = cell(at, Half::Whole);
    let word = there.and_then(|c| c.name).map_or("", |n| panel(n).0);
    let shown = if word.is_empty() { drawing::state(state) } else { word };
    let does = move || {
        if sheet.picked.get_untracked() == mine {
            sheet.change("", |d| {
                // What has a name is not changed by a touch too many: the buttons do that.
                if d.cell(at).is_none_or(|c| c.name.is_none()) {
                    let next = State::of(d, at).next();
                    set_cell(d, at, next);
                }
            });
        } else {
            sheet.picked.set(mine);
        }
    };
    let class = match state {
        State::Panel => "cell",
        State::Tab => "cell tab",
        State::Away => "cell away",
    };
    let still = drawn.still == Some(at);
    // What is heard begins with what is seen.
    let heard =
        if word.is_empty() { format!("{name} {shown}") } else { format!("{name} {shown}: {}", drawing::state(state)) };
    button(tag("strong").with(name), does)
        .class(class)
        .with(" ")
        .with(tag("span").with(shown))
        .with(still.then(|| classed("span", "cell-still").is("aria-hidden", "true").with("•")))
        .is("id", id(sheet, usize::from(at.column) * 2, usize::from(at.row) * 2))
        .is("aria-label", heard)
        .says("aria-pressed", move || sheet.picked.get() == mine)
        .follows("tabindex", move || Some(turn(sheet, mine, at == At::default())))
}

fn of_line(sheet: Sheet, drawn: &Drawn, at: At, side: Side) -> Option<Tag> {
    let between = Between::of(at, side)?;
    drawn.cell(at)?;
    drawn.cell(between.other())?;
    let line = drawn.line(between);
    let mine = Picked::Line(between);
    let does = move || {
        if sheet.picked.get_untracked() == mine {
            sheet.change("", |d| d.draw(between, next_line(d.line(between))));
        } else {
            sheet.picked.set(mine);
        }
    };
    let upright = side == Side::Right;
    let class = match (line, upright) {
        (Line::Score(_), true) => "line upright score",
        (Line::Score(_), false) => "line score",
        (Line::Cut, true) => "line upright cut",
        (Line::Cut, false) => "line cut",
        (Line::Whole, true) => "line upright",
        (Line::Whole, false) => "line",
    };
    let (x, y) = (usize::from(at.column) * 2 + usize::from(upright), usize::from(at.row) * 2 + usize::from(!upright));
    Some(
        button(tag("span"), does)
            .class(class)
            .is("id", id(sheet, x, y))
            .is("aria-label", format!("{}: {}", drawing::between(between), drawing::line(line)))
            .says("aria-pressed", move || sheet.picked.get() == mine)
            .follows("tabindex", move || Some(turn(sheet, mine, false))),
    )
}

/// One button of the grid is reached by the tab key; arrows lead to the others.
fn turn(sheet: Sheet, mine: Picked, first: bool) -> String {
    let picked = sheet.picked.get();
    let here = picked == mine || (picked == Picked::Nothing && first);
    if here { "0" } else { "-1" }.to_owned()
}

/// Arrows lead from cell to line to cell.
fn walk(sheet: Sheet, event: &web_sys::Event) {
    let Some(key) = event.dyn_ref::<KeyboardEvent>() else {
        return;
    };
    let (dx, dy): (i32, i32) = match key.key().as_str() {
        "ArrowLeft" => (-1, 0),
        "ArrowRight" => (1, 0),
        "ArrowUp" => (0, -1),
        "ArrowDown" => (0, 1),
        _ => return,
    };
    let target = event.target().and_then(|t| t.dyn_into::<HtmlElement>().ok());
    let start = sheet.id("at-");
    let Some(place) = target.map(|t| t.id()).and_then(|id| {
        let (x, y) = id.strip_prefix(&start)?.split_once('-')?;
        Some((x.parse::<i32>().ok()?, y.parse::<i32>().ok()?))
    }) else {
        return;
    };
    event.prevent_default();
    // Beside a cell that is away there is no line: then on to the next cell.
    for step in [1, 2] {
        let (x, y) = (place.0 + dx * step, place.1 + dy * step);
        if let (Ok(x), Ok(y)) = (usize::try_from(x), usize::try_from(y))
            && here::focus_now(&id(sheet, x, y))
        {
            return;
        }
    }
}
