//! One line: how sure it is that the boxes slide in.

use leptos::prelude::*;

use super::desk::desk;
use super::said::said;
use crate::fit::odds::Accuracy;
use crate::make::slides;
use crate::say::odds::odds;

/// How sure the fit is, where a row of boxes stands in a holder.
#[component]
pub fn OddsLine() -> impl IntoView {
    let desk = desk();
    let line = Memo::new(move |_| {
        desk.shapes.with(|plan| {
            let usual = Accuracy::usual(plan.system);
            let sure = slides::odds(&plan.boxes, plan.holder.as_ref()?, plan.system, &usual)?;
            Some(odds(&sure, &usual, plan.system))
        })
    });
    move || line.get().map(|l| view! { <p class="hint">{said(l)}</p> })
}
