//! Finished, true inside and true outside, side by side.

use super::child::{Inside, live};
use super::desk::desk;
use super::said::said;
use super::tag::{Tag, classed, tag};
use super::value::fact;
use crate::assembly::parts::Size;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::project::finding::Place;
use crate::say::measured::{free, taken};
use crate::say::page;
use crate::say::phrase::Phrase;

/// The three sizes of a box or holder, as the plan has them.
#[must_use]
pub fn size_table(place: Place) -> Inside {
    let desk = desk();
    let sizes = fact(move || {
        desk.shapes.with(|plan| {
            let part = plan.part(place)?;
            let assembly = part.assembly.as_ref()?;
            Some((plan.system, assembly.finished, assembly.inside.less(part.lining), part.outside))
        })
    });
    live(move || {
        sizes.get().map(|(system, finished, inside, outside)| {
            let ways = page::ACROSS.map(|way| tag("th").is("scope", "col").with(way)).into_iter().collect::<Vec<_>>();
            let rows = vec![
                row(page::FINISHED, finished, &|l| Figure::of(l, system)),
                row(page::INSIDE, inside, &|l| free(l, system)),
                row(page::OUTSIDE, outside, &|l| taken(l, system)),
            ];
            classed("table", "sizes")
                .with(tag("thead").with(tag("tr").with(tag("td")).with(ways)))
                .with(tag("tbody").with(rows))
        })
    })
}

fn row(name: &'static str, size: Size, figure: &dyn Fn(Length) -> Figure) -> Tag {
    let cells = [size.width, size.depth, size.height].map(|l| tag("td").with(said(Phrase::from(figure(l)))));
    tag("tr").with(tag("th").is("scope", "row").with(name)).with(cells.into_iter().collect::<Vec<_>>())
}
