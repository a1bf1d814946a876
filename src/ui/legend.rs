//! What the lines of the drawings mean.

use leptos::prelude::*;

use crate::draw::legend::sample;
use crate::draw::svg::paint;
use crate::say::page;

/// Each line with its meaning.
#[component]
pub fn Legend() -> impl IntoView {
    view! {
        <details class="legend">
            <summary>{page::LINES}</summary>
            <ul>
                {page::LEGEND.map(|(key, means)| view! {
                    <li>
                        <span class="sample" aria-hidden="true" inner_html=sample(key).map(|d| paint(&d))></span>
                        <span>{means}</span>
                    </li>
                })}
            </ul>
        </details>
    }
}
