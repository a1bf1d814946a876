//! Words with lengths among them, with fractions stacked.

use super::child::{Child, Inside};
use super::tag::{Tag, classed, tag};
use crate::measure::show::Figure;
use crate::say::phrase::{Bit, Phrase};

/// A phrase on the page. Who hears the page hears `4 1/4 in`; who sees it sees the fraction stacked.
#[must_use]
pub fn said(phrase: Phrase) -> Inside {
    let bits = phrase.bits.into_iter().map(|bit| match bit {
        Bit::Words(words) => words.view(),
        Bit::Figure(figure) => {
            let unit = format!(" {}", figure.unit);
            number(&figure).with(unit).view()
        }
        Bit::Bare(figure) => number(&figure).view(),
    });
    bits.collect::<Vec<_>>().view()
}

fn number(figure: &Figure) -> Tag {
    let length = classed("span", "length");
    let Some((over, under)) = &figure.fraction else {
        return length.with(figure.bare());
    };
    let minus = if figure.minus { "−" } else { "" };
    let fraction =
        classed("span", "fraction").with(tag("span").with(over.to_string())).with(tag("span").with(under.to_string()));
    let seen =
        classed("span", "stack").is("aria-hidden", "true").with(format!("{minus}{}", figure.whole)).with(fraction);
    length.with(classed("span", "heard").with(figure.bare())).with(seen)
}
