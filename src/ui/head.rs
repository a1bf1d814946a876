//! The head of the page: its name, the walk, and the way back.

use leptos::prelude::*;

use super::app::Walk;
use super::desk::desk;
use crate::say::page;
use crate::web::here;

/// Name, walk, undo and redo.
#[component]
pub fn Head(
    /// The part of the walk that is looked at.
    walk: RwSignal<Walk>,
) -> impl IntoView {
    let desk = desk();
    let step = move |one: Walk| {
        view! {
            <li>
                <button
                    type="button"
                    aria-current=move || (walk.get() == one).then_some("page")
                    on:click=move |_| {
                        walk.set(one);
                        here::to_top();
                    }
                >{one.name()}</button>
            </li>
        }
    };
    view! {
        <header class="head" inert=move || desk.large.get()>
            <h1>{page::SNUGFOLD}</h1>
            <nav aria-label=page::WALK><ul>{Walk::ALL.map(step)}</ul></nav>
            <div class="ways">
                <button type="button" disabled=move || desk.ways.get().0 == 0 on:click=move |_| desk.undo()>
                    {page::UNDO}
                </button>
                <button type="button" disabled=move || desk.ways.get().1 == 0 on:click=move |_| desk.redo()>
                    {page::REDO}
                </button>
            </div>
        </header>
    }
}
