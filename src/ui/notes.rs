//! What the maker should know, where it belongs.

use leptos::prelude::*;

use super::desk::desk;
use super::said::said;
use crate::project::finding::{Finding, Weight};
use crate::say::finding::{finding, weight};

/// Findings, one under the other.
#[component]
pub fn Notes(
    /// What is to be said.
    #[prop(into)]
    findings: Signal<Vec<Finding>>,
    /// For the field that they belong to.
    #[prop(optional, into)]
    id: String,
) -> impl IntoView {
    let system = desk().system();
    let list = move || findings.get().into_iter().map(|f| note(&f, system.get())).collect_view();
    view! { <div class="notes" id=id aria-live="polite">{list}</div> }
}

fn note(f: &Finding, system: crate::measure::system::System) -> impl IntoView + use<> {
    let class = match f.weight {
        Weight::Stop => "note stop",
        Weight::Caution => "note caution",
        Weight::Note => "note",
    };
    let head = weight(f.weight);
    view! { <p class=class><strong>{head}": "</strong>{said(finding(f, system))}</p> }
}
