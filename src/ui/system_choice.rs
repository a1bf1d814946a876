//! Inches or millimetres: the system that is worked in.

use leptos::prelude::*;

use super::desk::desk;
use crate::measure::system::System;
use crate::say::page;

/// Two buttons of which one is pressed.
#[component]
pub fn SystemChoice() -> impl IntoView {
    let desk = desk();
    let system = desk.system();
    let name = move |one: System| match one {
        System::Inch => page::INCHES,
        System::Metric => page::spelt(page::MILLIMETRES, desk.spelling.get()),
    };
    let button = move |one: System| {
        view! {
            <button
                type="button"
                aria-pressed=move || if system.get() == one { "true" } else { "false" }
                on:click=move |_| desk.edit("", |p| p.system = one)
            >{move || name(one)}</button>
        }
    };
    view! {
        <fieldset class="field">
            <legend>{page::MEASURED_IN}</legend>
            <div class="either">{System::ALL.map(button)}</div>
        </fieldset>
    }
}
