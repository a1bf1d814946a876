//! Finished, true inside and true outside, side by side.

use leptos::prelude::*;

use super::desk::desk;
use super::said::said;
use crate::form::assembly::Size;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::project::finding::Place;
use crate::say::measured::{free, taken};
use crate::say::page;
use crate::say::phrase::Phrase;

/// The three sizes of a box or holder, as the plan has them.
#[component]
pub fn SizeTable(
    /// Of which box or holder.
    place: Place,
) -> impl IntoView {
    let desk = desk();
    let sizes = Memo::new(move |_| {
        desk.shapes.with(|plan| {
            let part = plan.part(place)?;
            let assembly = part.assembly.as_ref()?;
            Some((plan.system, assembly.finished, assembly.inside, part.outside))
        })
    });
    move || {
        sizes.get().map(|(system, finished, inside, outside)| {
            view! {
                <table class="sizes">
                    <thead>
                        <tr>
                            <td></td>
                            {page::ACROSS.map(|way| view! { <th scope="col">{way}</th> })}
                        </tr>
                    </thead>
                    <tbody>
                        {row(page::FINISHED, finished, |l| Figure::of(l, system))}
                        {row(page::INSIDE, inside, |l| free(l, system))}
                        {row(page::OUTSIDE, outside, |l| taken(l, system))}
                    </tbody>
                </table>
            }
        })
    }
}

fn row(name: &'static str, size: Size, figure: impl Fn(Length) -> Figure) -> impl IntoView {
    let cells = [size.width, size.depth, size.height].map(figure);
    view! {
        <tr>
            <th scope="row">{name}</th>
            {cells.map(|f| view! { <td>{said(Phrase::from(f))}</td> })}
        </tr>
    }
}
