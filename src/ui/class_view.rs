//! A class: who comes, when what is done, what is prepared and bought.

use super::child::live;
use super::desk::{Desk, desk};
use super::either::either;
use super::figure::{Figure, figure};
use super::money_field::money;
use super::opened::opened;
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::value::State;
use crate::plan::{Taught, taught};
use crate::project::bound::SPARES;
use crate::project::class::{BREAKS, EACH, MAKERS, MINUTES, Ready, SLOW};
use crate::say::phrase::Phrase;
use crate::say::teach as say;

const FIGURES: [Figure; 6] = [
    figure("class-makers", say::MAKERS, MAKERS, |p| p.class.makers, |p, n| p.class.makers = n),
    figure("class-each", say::EACH, EACH, |p| p.class.each, |p, n| p.class.each = n),
    figure("class-minutes", say::MINUTES, MINUTES, |p| p.class.minutes, |p, n| p.class.minutes = n),
    figure("class-breaks", say::BREAKS, BREAKS, |p| p.class.breaks, |p, n| p.class.breaks = n),
    figure("class-slow", say::SLOW, SLOW, |p| p.class.slow, |p, n| p.class.slow = n),
    figure("class-spares", say::SPARES, SPARES, |p| p.class.spares, |p, n| p.class.spares = n),
];

/// What follows from the class as it is asked for; nothing where something stops the plan.
#[must_use]
pub fn class(desk: Desk) -> Option<Taught> {
    let pace = desk.pace.get();
    let stopped = desk.plan.with(|plan| plan.stopped() || plan.steps.is_empty());
    (!stopped).then(|| desk.project.with(|p| taught(p, p.system, pace)))
}

/// The class.
#[must_use]
pub fn class_view() -> Tag {
    let desk = desk();
    let ready = move |ready: Ready| {
        let now = move || desk.project.with(|p| p.class.ready) == ready;
        button(say::ready(ready), move || desk.edit("", |p| p.class.ready = ready)).says("aria-pressed", now)
    };
    let inside = classed("div", "class")
        .with(classed("div", "fields").with(FIGURES.map(Figure::view).into_iter().collect::<Vec<_>>()))
        .with(either(say::READY, Ready::ALL.map(ready).into_iter().collect()))
        .with(live(move || answer(desk)));
    classed("section", "sheet-of-paper").with(opened("part", say::TITLE, State::new(true)).with(inside))
}

fn answer(desk: Desk) -> Vec<Tag> {
    let Some(taught) = class(desk) else {
        return vec![classed("p", "note caution").with(say::NOTHING)];
    };
    desk.project.with(|project| {
        let hours = &taught.hours;
        let late = hours.needs > hours.has;
        let row = |row: &crate::make::class::Row| {
            tag("li").with(tag("span").with(say::clock(row.from))).with(tag("span").with(say::doing(
                row.doing,
                &taught.one,
                project,
            )))
        };
        let rows = classed("ol", "clock").with(hours.rows.iter().map(row).collect::<Vec<_>>());
        let cures = hours.cures.iter().map(|cure| tag("li").with(say::cure(cure))).collect::<Vec<_>>();
        let fits = classed("p", if late { "note caution" } else { "lead" }).is("role", "status");
        let list = |lines: Vec<Phrase>| {
            classed("ul", "pieces").with(lines.into_iter().map(|line| tag("li").with(said(line))).collect::<Vec<_>>())
        };
        let stops = say::stops(&taught).into_iter().map(|stop| classed("p", "note caution").with(said(stop)));
        let stops = stops.collect::<Vec<_>>();
        let brought = (taught.class != project.class).then(|| classed("p", "note caution").with(say::BROUGHT));
        vec![
            tag("div").with(brought).with(stops),
            fits.with(say::fits(hours)),
            classed("ul", "pieces").with(cures),
            tag("h2").with(say::CLOCK),
            classed("p", "hint").with(say::TOOLS),
            rows,
            tag("h2").with(say::HOME),
            tag("p").with(say::home(&taught)),
            tag("h2").with(say::BUY),
            list(say::buy(&taught, project, Some(&money()))),
            tag("h2").with(say::BAG),
            list(say::bag(&taught.one, project, taught.class.ready)),
        ]
    })
}
