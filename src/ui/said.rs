//! Words with lengths among them, with fractions stacked.

use leptos::prelude::*;

use crate::measure::show::Figure;
use crate::say::phrase::{Bit, Phrase};

/// A phrase on the page. Who hears the page hears `4 1/4 in`; who sees it sees the fraction stacked.
#[must_use]
pub fn said(phrase: Phrase) -> impl IntoView {
    phrase
        .bits
        .into_iter()
        .map(|bit| match bit {
            Bit::Words(words) => words.into_any(),
            Bit::Figure(figure) => {
                view! { <span class="length">{number(figure.clone())}" "{figure.unit}</span> }.into_any()
            }
            Bit::Bare(figure) => view! { <span class="length">{number(figure)}</span> }.into_any(),
        })
        .collect_view()
}

fn number(figure: Figure) -> AnyView {
    let Some((over, under)) = figure.fraction else {
        return figure.bare().into_any();
    };
    let minus = if figure.minus { "−" } else { "" };
    view! {
        <span class="heard">{figure.bare()}</span>
        <span class="stack" aria-hidden="true">
            {minus}{figure.whole}
            <span class="fraction"><span>{over}</span><span>{under}</span></span>
        </span>
    }
    .into_any()
}
