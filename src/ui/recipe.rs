//! The score-and-cut recipe; on request in both systems, in two columns.

use super::child::live;
use super::desk::{Desk, desk};
use super::late::after_the_drawing;
use super::said::said;
use super::shared::Shared;
use super::system_choice::name;
use super::tag::{Tag, classed, tag};
use super::tick::tick;
use super::value::{Fact, State, fact};
use crate::make::part::Joined;
use crate::measure::system::System;
use crate::net::flat::Net;
use crate::net::recipe::Recipe;
use crate::plan::{Known, Plan, at_hand};
use crate::project::finding::Place;
use crate::say::page;
use crate::say::phrase::Phrase;
use crate::say::recipe::recipe;
use crate::web::here;

/// The recipe of the box or holder at `place`, as it is in `shown`.
#[must_use]
pub fn recipe_text(place: Fact<Place>, shown: Fact<Shared>) -> Tag {
    let desk = desk();
    let both = State::new(false);
    let now = fact(move || (shown.get(), place.get()));
    let late = after_the_drawing(now);
    let mine = fact(move || late.with(|(p, at)| words(p, *at, desk)));
    // Planned only while it is looked at.
    let other = fact(move || {
        both.get().then(|| {
            desk.project.with(|p| Shared::new(at_hand(p, p.system.other(), place.get(), &mut Known::default())))
        })
    });
    let system = desk.system();
    let column = move |system: System, lines: &[PartLines]| {
        let title = format!("{}{}", page::RECIPE_IN, name(system, desk.spelling.get()));
        let mut column = list(lines);
        column.insert(0, tag("h3").with(title));
        classed("section", "column").with(column)
    };
    let text = move || {
        if !both.get() {
            return mine.with(|m| list(m));
        }
        let mut columns = vec![mine.with(|m| column(system.get(), m))];
        columns.extend(other.get().map(|o| column(o.system, &words(&o, place.get(), desk))));
        vec![classed("p", "hint").with(page::BOTH_HINT), classed("div", "columns").with(columns)]
    };
    let details = classed("details", "recipe");
    let details = if here::is_wide() { details.is("open", "") } else { details };
    details.with(tag("summary").with(page::RECIPE)).with(live(text)).with(tick(
        page::BOTH_RECIPES,
        move || both.get(),
        move |on| both.set(on),
    ))
}

fn words(plan: &Plan, place: Place, desk: Desk) -> Vec<PartLines> {
    let Some(part) = plan.part(place) else {
        return Vec::new();
    };
    let parts = part.assembly.iter().flat_map(|a| &a.parts);
    let several = part.recipes.len() > 1;
    let said = |net: &Net, r: &Recipe| recipe(net, r, plan.system, desk.spelling.get());
    let mut all = Vec::new();
    for (i, (p, r)) in parts.zip(&part.recipes).enumerate() {
        match part.joined(i) {
            Some(Joined { joint, recipes }) => {
                let halves = page::HALVES.into_iter().zip(joint.halves.iter().zip(recipes));
                all.extend(halves.map(|(name, (net, r))| (Some(name), said(net, r))));
            }
            None => all.push((several.then_some(p.name), said(&p.net, r))),
        }
    }
    all
}

/// What is said of one part, under its name where there are several.
type PartLines = (Option<&'static str>, Vec<Phrase>);

fn list(parts: &[PartLines]) -> Vec<Tag> {
    let each = parts.iter().flat_map(|(name, lines)| {
        let name = name.map(|n| classed("h3", "part-name").with(n));
        name.into_iter().chain([sentences(lines)])
    });
    each.collect()
}

/// Sentences; those that begin with a dash belong to the one before.
fn sentences(lines: &[Phrase]) -> Tag {
    let each = lines.iter().map(|line| {
        let under = line.to_string().starts_with('—');
        classed("li", if under { "under" } else { "" }).with(said(line.clone()))
    });
    classed("ol", "sentences").with(each.collect::<Vec<_>>())
}
