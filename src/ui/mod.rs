//! What the maker sees: one component per thing on the screen.

use leptos::prelude::*;

/// The whole page.
#[component]
pub fn App() -> impl IntoView {
    view! {
        <main>
            <h1>"Snugfold"</h1>
        </main>
    }
}
