//! What stops the set or needs care somewhere else than where the maker is, with the way there.

use super::child::{live, shown, words};
use super::desk::desk;
use super::part_fields::id;
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::value::fact;
use crate::project::finding::{Finding, Weight};
use crate::say::finding::{finding, weight};
use crate::say::{names, page};
use crate::web::here;
/// So many are shown at once; the rest is counted.
const SHOWN: usize = 2;

/// Stops and cautions of other places.
#[must_use]
pub fn alerts() -> Tag {
    let desk = desk();
    let elsewhere = fact(move || {
        let here = desk.place.get();
        desk.plan.with(|p| {
            let grave = p.findings.iter().filter(|f| f.weight != Weight::Note);
            grave.filter(|f| f.place != here).cloned().collect::<Vec<_>>()
        })
    });
    let one = move |f: &Finding| {
        let place = f.place;
        let name = desk.project.with(|p| names::place(p, place));
        let go = move || {
            desk.place.set(place);
            here::reveal(id(place, "head"));
        };
        let text = tag("p")
            .with(tag("strong").with(format!("{}: ", weight(f.weight))))
            .with(format!("{name}. "))
            .with(said(finding(f, desk.system().get())));
        classed("li", if f.weight == Weight::Stop { "note stop" } else { "note caution" })
            .with(text)
            .with(button(page::GO_THERE, go))
    };
    let more = move || elsewhere.with(Vec::len).saturating_sub(SHOWN);
    let list = live(move || elsewhere.with(|all| all.iter().take(SHOWN).map(one).collect::<Vec<_>>()));
    classed("div", "elsewhere")
        .is("role", "status")
        .with(classed("ul", "alerts").with(list))
        .with(shown(move || more() > 0, move || classed("p", "hint").with(words(move || page::and_more(more())))))
}
