//! The cards at hand and the scoring board.

use leptos::prelude::*;

use super::card_editor::CardEditor;
use super::desk::{Desk, desk};
use super::entry::Entry;
use super::length_field::LengthField;
use crate::measure::given::Given;
use crate::measure::show::Figure;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::finding::Place;
use crate::project::request::{Board, Project};
use crate::say::{names, page};

/// All cards, then the board.
#[component]
pub fn StockList() -> impl IntoView {
    let desk = desk();
    let ids = Memo::new(move |_| {
        desk.project
            .with(|p| p.cards.iter().map(|c| c.id).collect::<Vec<_>>())
    });
    let full = move || ids.with(|i| i.len()) >= bound::CARDS.most as usize;
    let one = move |id: u16| {
        let title = Memo::new(move |_| desk.project.with(|p| names::card(p, id)));
        let used = Memo::new(move |_| desk.project.with(|p| in_use(p, id)));
        view! {
            <Entry place=Place::Card(id) title=title>
                <CardEditor id=id />
                <p class="actions">
                    <button
                        type="button"
                        disabled=used
                        on:click=move |_| {
                            desk.edit("", |p| p.cards.retain(|c| c.id != id));
                            desk.place.set(Place::Set);
                        }
                    >{page::REMOVE}</button>
                    <Show when=move || used.get()><span class="hint">{page::CARD_IN_USE}</span></Show>
                </p>
            </Entry>
        }
    };
    view! {
        <section aria-label=page::CARD_AND_BOARD>
            <h2>{page::CARD_AND_BOARD}</h2>
            <For each=move || ids.get() key=|id| *id children=one />
            <button type="button" class="add" disabled=full on:click=move |_| add(desk)>{page::ADD_CARD}</button>
            <Entry place=Place::Board title=Signal::stored(page::BOARD.to_owned())>
                <div class="fields">
                    {step(desk, System::Inch)}
                    {step(desk, System::Metric)}
                </div>
            </Entry>
        </section>
    }
}

fn in_use(project: &Project, card: u16) -> bool {
    let parts = project.boxes.iter().chain(&project.holder);
    let mut cards = parts
        .flat_map(|p| [Some(p.card), p.mats.as_ref().map(|m| m.card)])
        .flatten();
    cards.any(|c| c == card)
}

fn add(desk: Desk) {
    let id = desk.project.with_untracked(|p| {
        (1..=u16::MAX)
            .find(|n| !p.cards.iter().any(|c| c.id == *n))
            .unwrap_or(u16::MAX)
    });
    desk.edit("", |p| {
        // As the last one, so that only what differs has to be typed.
        if let Some(mut card) = p.cards.last().cloned() {
            card.id = id;
            card.name = String::new();
            card.thickness = None;
            p.cards.push(card);
        }
    });
    desk.place.set(Place::Card(id));
}

fn step(desk: Desk, system: System) -> impl IntoView {
    let (key, label) = match system {
        System::Inch => ("inch-step", page::INCH_STEP),
        System::Metric => ("metric-step", page::METRIC_STEP),
    };
    const fn of(board: &Board, system: System) -> &Option<Given> {
        match system {
            System::Inch => &board.inch_step,
            System::Metric => &board.metric_step,
        }
    }
    let value = Memo::new(move |_| desk.project.with(|p| of(&p.board, system).clone()));
    let usual = format!(
        "{}{}",
        page::USUAL,
        Figure::of(bound::DEFAULT_SCORE_STEP.of(system), system)
    );
    let commit = move |given: Option<Given>| {
        desk.edit(key, |p| match system {
            System::Inch => p.board.inch_step = given,
            System::Metric => p.board.metric_step = given,
        });
    };
    view! {
        <LengthField
            id=key.to_owned()
            label=label.to_owned()
            hint=page::STEP_HINT
            range=bound::SCORE_STEP
            value=value
            usual=Signal::stored(usual)
            findings=desk.findings(Place::Board, Some(key))
            commit=commit
        />
    }
}
