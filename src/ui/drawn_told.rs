//! What does not meet in a drawn form and how to mend it; sizes that belong together; how far they go.

use super::child::{Inside, live, shown};
use super::drawn::{Sheet, Typed};
use super::late::{LONG_REST, after_a_rest};
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, State, fact};
use crate::fit::own::cure::{Cure, cures};
use crate::fit::own::equal::named;
use crate::fit::own::reach::reach;
use crate::form::own::drawn::Drawn;
use crate::measure::system::System;
use crate::project::finding::{Finding, OwnFault, Weight, What};
use crate::say::finding::weight;
use crate::say::{drawing, own};

/// Everything that is found.
#[must_use]
pub fn found(sheet: Sheet) -> Tag {
    let system = sheet.desk.system();
    let all = sheet.desk.findings(sheet.place, None);
    let faults = fact(move || all.with(|all| faults(all)));
    // What helps takes longer to find than a frame: it follows once the hand rests.
    let late = after_a_rest(sheet.drawn, |_| LONG_REST);
    let ways = fact(move || Ways(sheet.bench.get().map_or_else(Vec::new, |b| late.with(|d| cures(d, &b)))));
    let offer = fact(move || {
        // While something does not meet, what is equal is not what should be.
        if faults.with(|all| all.iter().any(|f| f.0 != Weight::Note)) {
            return None;
        }
        let named = sheet.bench.get().and_then(|b| late.with(|d| named(d, &b)));
        named.and_then(|n| Some((drawing::equal(&n, &late.get())?, n.drawn)))
    });
    let folds = fact(move || {
        let made = |p: &crate::plan::Plan| p.part(sheet.place).is_some_and(|p| p.assembly.is_some());
        sheet.desk.plan.with(|p| made(p))
    });
    let creased = fact(move || {
        let part = |p: &crate::plan::Plan| {
            let made = p.part(sheet.place).and_then(|p| p.assembly.as_ref());
            made.is_some_and(|a| a.parts.iter().any(|p| !p.net.creases.is_empty()))
        };
        sheet.desk.plan.with(|p| part(p))
    });
    let list = move || {
        let all = faults.get();
        if all.is_empty() {
            let words = if creased.get() { drawing::ALL_WELL } else { drawing::NO_FOLDS };
            return folds.get().then(|| classed("p", "note").with(words)).into_iter().collect::<Vec<Tag>>();
        }
        all.into_iter().map(|(weight, fault)| one(sheet, weight, fault, ways, system.get())).collect()
    };
    let name = move || {
        offer.get().map(|(words, drawn)| {
            let take = move || {
                sheet.lay("", drawn.clone(), Typed::OfItsOwn);
            };
            classed("div", "note")
                .with(tag("p").with(words))
                .with(classed("p", "actions").with(button(drawing::NAME_SIZES, take)))
        })
    };
    classed("section", "found")
        .is("aria-label", drawing::FINDS)
        .with(tag("h4").with(drawing::FINDS))
        .with(classed("div", "notes").is("aria-live", "polite").with(live(list)))
        .with(live(name))
        .with(far(sheet))
}

/// Ways to mend, alike where they mend the same in the same way.
#[derive(Clone, PartialEq)]
struct Ways(Vec<Cure>);

fn faults(all: &[Finding]) -> Vec<(Weight, OwnFault)> {
    let own = all.iter().filter_map(|f| match &f.what {
        What::Own(fault) => Some((f.weight, fault.clone())),
        _ => None,
    });
    own.collect()
}

/// One fault, and a button for each way to mend it.
fn one(sheet: Sheet, of: Weight, fault: OwnFault, ways: Fact<Ways>, system: System) -> Tag {
    let class = match of {
        Weight::Stop => "note stop",
        Weight::Caution => "note caution",
        Weight::Note => "note",
    };
    let head = tag("strong").with(format!("{}: ", weight(of)));
    let words = said(own::fault(&fault, system));
    let buttons = move || {
        let mine = ways.get().0.into_iter().filter(|c| c.fault == fault);
        let each = mine.map(|cure| {
            let says: Inside = said(drawing::cure(&cure.how, system));
            let take = move || {
                sheet.lay("", cure.drawn.clone(), Typed::OfItsOwn);
            };
            button(says, take)
        });
        each.collect::<Vec<Tag>>()
    };
    classed("div", class).with(tag("p").with(head).with(words)).with(classed("div", "actions").with(live(buttons)))
}

/// How far each size goes, where it is asked.
fn far(sheet: Sheet) -> Tag {
    let system = sheet.desk.system();
    // What was found, and for which form.
    let found = State::new(None::<(Drawn, Vec<String>)>);
    let ask = move || {
        let drawn = sheet.as_typed();
        let said = sheet.bench.get().map(|bench| match reach(&drawn, &[], &bench) {
            Some(all) => all.iter().map(|r| drawing::reach(r, system.get_untracked()).to_string()).collect(),
            None => vec![drawing::NOT_YET.to_owned()],
        });
        found.set(said.map(|said| (drawn, said)));
    };
    let sized = fact(move || sheet.drawn.with(|d| !d.sizes.is_empty()));
    let lines = move || {
        let now = sheet.as_typed();
        let said = found.get().filter(|f| f.0 == now).map_or_else(Vec::new, |f| f.1);
        classed("ul", "notes")
            .is("role", "status")
            .with(said.into_iter().map(|l| tag("li").with(l)).collect::<Vec<Tag>>())
    };
    tag("div").with(shown(
        move || sized.get(),
        move || vec![classed("p", "actions").with(button(drawing::HOW_FAR, ask)), tag("div").with(live(lines))],
    ))
}
