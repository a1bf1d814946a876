//! What the lines of the drawings mean.

use super::tag::{Tag, classed, tag};
use crate::draw::legend::sample;
use crate::draw::svg::paint;
use crate::say::page;

/// Each line with its meaning.
#[must_use]
pub fn legend() -> Tag {
    let line = |(key, means): (&'static str, &'static str)| {
        let svg = move || sample(key).as_ref().map(paint).unwrap_or_default();
        let drawn = classed("span", "sample").is("aria-hidden", "true").painted(svg);
        tag("li").with(drawn).with(tag("span").with(means))
    };
    classed("details", "legend")
        .with(tag("summary").with(page::LINES))
        .with(tag("ul").with(page::LEGEND.into_iter().map(line).collect::<Vec<_>>()))
}
