//! The order in which a drawn form folds.

use super::child::live;
use super::drawn::Sheet;
use super::opened::opened;
use super::tag::{Tag, button, classed, tag};
use super::value::{State, fact};
use crate::assembly::parts::Part;
use crate::form::own::edit::{earlier, spell_order};
use crate::form::own::shape::{Made, make};
use crate::say::drawing;
use crate::say::folding::together;

/// All folds, one after the other; each but the first can come earlier.
#[must_use]
pub fn order(sheet: Sheet) -> Tag {
    let open = State::new(false);
    let folds = fact(move || {
        sheet.desk.shapes.with(|plan| {
            let made = plan.part(sheet.place).and_then(|p| p.assembly.as_ref());
            made.and_then(|a| a.parts.first()).map_or_else(Vec::new, said)
        })
    });
    let own = fact(move || sheet.drawn.with(|d| !d.order.is_empty()));
    let row = move |(n, said): (usize, String)| {
        let up = move || {
            let spelled = made(sheet);
            sheet.change("", |d| {
                if let (true, Some(made)) = (d.order.is_empty(), spelled) {
                    spell_order(d, &made);
                }
                earlier(d, n);
            });
        };
        let says = format!("{}: {said}", drawing::EARLIER);
        let earlier = (n > 0).then(|| button(drawing::EARLIER, up).is("aria-label", says));
        tag("li").with(tag("span").with(said)).with(earlier)
    };
    let list = move || classed("ol", "folds").with(folds.get().into_iter().enumerate().map(row).collect::<Vec<Tag>>());
    let by_itself = move || sheet.change("", |d| d.order.clear());
    let free = move || own.get().then(|| classed("p", "actions").with(button(drawing::BY_ITSELF, by_itself)));
    opened("group", drawing::ORDER, open).with(live(list)).with(live(free))
}

fn made(sheet: Sheet) -> Option<Made> {
    let bench = sheet.bench.get()?;
    let drawn = sheet.as_typed();
    let sizes = bench.sizes(&drawn, &[]);
    make(&drawn, &bench.measures(&sizes), bench.clear).ok()
}

fn said(part: &Part) -> Vec<String> {
    (0..part.moves.len()).map(|i| together(part, i, false).0.to_string()).collect()
}
