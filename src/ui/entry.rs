//! One thing of the request: a line that opens into its fields. One at a time is open.

use super::child::{live, shown, words};
use super::desk::desk;
use super::part_fields::id;
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::value::{Fact, fact};
use crate::plan::Plan;
use crate::project::finding::{Place, Weight};
use crate::say::measured::size;
use crate::say::page;
use crate::say::phrase::Phrase;
use crate::web::here;

/// A line that opens: what it is, what it is called, and its fields.
#[must_use]
pub fn entry(place: Place, title: Fact<String>, fields: impl Fn() -> Vec<Tag> + Send + 'static) -> Tag {
    let desk = desk();
    let open = fact(move || desk.place.get() == place);
    let toggle = move || {
        desk.place.set(if open.get_untracked() { Place::Set } else { place });
        // The one that closes may stand above and let this one slip out of sight.
        here::reveal(id(place, "head"));
    };
    let sum = fact(move || {
        desk.shapes.with(|plan| {
            let part = plan.part(place)?;
            let count = if part.count > 1 { format!("{} × ", part.count) } else { String::new() };
            Some(Phrase::words(count).with(size(part.assembly.as_ref()?.finished, plan.system)))
        })
    });
    let was = fact(move || {
        let old = desk.was.get()?;
        let finished = |plan: &Plan| Some(plan.part(place)?.assembly.as_ref()?.finished);
        let (before, now) = (finished(&old)?, desk.shapes.with(|p| finished(p))?);
        let alike = before == now || desk.shapes.with(|p| p.system) != old.system;
        (!alike).then(|| Phrase::words(page::WAS).with(size(before, old.system)))
    });
    let worst =
        fact(move || desk.plan.with(|plan| plan.findings.iter().filter(|f| f.place == place).map(|f| f.weight).min()));
    let flag = move || match worst.get() {
        Some(Weight::Stop) => Some(classed("span", "flag stop").with(page::STOPPED)),
        Some(Weight::Caution) => Some(classed("span", "flag caution").with(page::CARE)),
        _ => None,
    };
    let head = button(classed("span", "title").with(words(move || title.get())), toggle)
        .is("id", id(place, "head"))
        .says("aria-expanded", move || open.get())
        .is("aria-controls", id(place, "body"))
        .with(classed("span", "sum").with(live(move || sum.get().map(said))))
        .with(live(move || was.get().map(|w| classed("span", "was").with(said(w)))))
        .with(live(flag));
    classed("article", "entry sheet-of-paper")
        .class_while("open", move || open.get())
        .with(tag("h3").with(head))
        .with(classed("div", "body").is("id", id(place, "body")).with(shown(move || open.get(), fields)))
}
