//! What boxes, holders, cards and pieces are called.

use super::extras;
use super::finding::short;
use super::measured::sides;
use super::phrase::Phrase;
use crate::form::registry;
use crate::make::part::Planned;
use crate::make::pieces::{Becomes, Piece};
use crate::measure::system::System;
use crate::net::flat::{Net, PanelId};
use crate::plan::Plan;
use crate::project::finding::Place;
use crate::project::request::{Part, Project};

/// What stands at a place, as the maker calls it.
#[must_use]
pub fn place(project: &Project, place: Place) -> String {
    match place {
        Place::Set => "The set".to_owned(),
        Place::Board => "Board".to_owned(),
        Place::Card(id) => card(project, id),
        Place::Box(id) => {
            let found = project.boxes.iter().find(|b| b.id == id);
            found.map_or_else(|| "Box".to_owned(), part)
        }
        Place::Holder => project.holder.as_ref().map_or_else(|| "Holder".to_owned(), part),
    }
}

fn part(part: &Part) -> String {
    let form = || registry::named(&part.form).map_or("Box", |f| f.name).to_owned();
    part.called().map_or_else(form, short)
}

/// What a card is called.
#[must_use]
pub fn card(project: &Project, id: u16) -> String {
    match project.card(id) {
        Some(card) if !card.name.trim().is_empty() => short(&card.name),
        _ => format!("Card {id}"),
    }
}

/// Panels by name: `front, back and lid`.
#[must_use]
pub fn panels(net: &Net, ids: &[PanelId]) -> String {
    let names = ids.iter().filter_map(|id| net.panels.get(id.0)).map(|p| Phrase::words(p.name));
    Phrase::list(names, ", ", " and ").to_string()
}

/// What a piece becomes: `blank for Linden tea`, `mat for front and back`, `strap`.
#[must_use]
pub fn becomes(plan: &Plan, piece: &Piece) -> String {
    let Some(part) = plan.part(piece.place) else {
        return "piece".to_owned();
    };
    let name = short(&part.name);
    let Some(assembly) = &part.assembly else {
        return name;
    };
    match &piece.becomes {
        Becomes::Blank(i) => match assembly.parts.get(*i) {
            Some(p) if assembly.parts.len() > 1 => format!("{name}: blank of the {}", p.name),
            _ => format!("{name}: blank"),
        },
        Becomes::Half(_, nth) => format!("{name}: blank, {}", half(*nth)),
        Becomes::Mat(part, ids) => {
            let on = match assembly.parts.get(*part) {
                Some(p) if assembly.parts.len() > 1 => format!("{} of the {}", panels(&p.net, ids), p.name),
                Some(p) => panels(&p.net, ids),
                None => String::new(),
            };
            format!("{name}: {} for {on}", if ids.len() == 1 { "mat" } else { "mats" })
        }
        Becomes::Extra(i, _) => format!("{name}: {}", part.extras.get(*i).map_or("", extras::piece)),
        Becomes::Trim(i) => format!("{name}: {}", assembly.trims.get(*i).map_or("trim", |t| t.name)),
    }
}

/// The letter of the piece of this number.
#[must_use]
pub fn letter(plan: &Plan, id: u32) -> String {
    plan.pieces.iter().find(|p| p.id == id).map_or(String::new(), Piece::letter)
}

/// A piece in a list: `A · 3 of 9 × 7 1/2 in · Linden tea: blank`.
#[must_use]
pub fn piece(plan: &Plan, piece: &Piece, system: System) -> Phrase {
    Phrase::words(format!("{} · {} of ", piece.letter(), piece.count))
        .with(sides(piece.width, piece.height, system))
        .with(format!(" · {}", becomes(plan, piece)))
}

/// What a part is, with its panels, for those who hear the drawing: each as wide and high as it is, trimmed.
#[must_use]
pub fn panel_list(planned: &Planned, part: usize, system: System) -> Vec<Phrase> {
    let Some(p) = planned.assembly.as_ref().and_then(|a| a.parts.get(part)) else {
        return Vec::new();
    };
    p.net
        .panels
        .iter()
        .map(|panel| {
            let whole = panel.outline.bounds();
            Phrase::words(format!("{}, ", panel.name)).with(sides(whole.width(), whole.height(), system))
        })
        .collect()
}
/// One of the two pieces that a blank is joined from.
#[must_use]
pub fn half(nth: usize) -> String {
    format!("piece {} of 2", nth + 1)
}
