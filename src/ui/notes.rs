//! What the maker should know, where it belongs.

use super::child::live;
use super::desk::desk;
use super::said::said;
use super::tag::{Tag, classed, tag};
use super::value::Fact;
use crate::measure::system::System;
use crate::project::finding::{Finding, Weight};
use crate::say::finding::{finding, weight};

/// Findings, one under the other.
#[must_use]
pub fn notes(findings: Fact<Vec<Finding>>) -> Tag {
    let system = desk().system();
    let list = move || findings.with(|all| all.iter().map(|f| note(f, system.get())).collect::<Vec<_>>());
    classed("div", "notes").is("aria-live", "polite").with(live(list))
}

fn note(f: &Finding, system: System) -> Tag {
    let class = match f.weight {
        Weight::Stop => "note stop",
        Weight::Caution => "note caution",
        Weight::Note => "note",
    };
    let head = tag("strong").with(format!("{}: ", weight(f.weight)));
    classed("p", class).with(head).with(said(finding(f, system)))
}
