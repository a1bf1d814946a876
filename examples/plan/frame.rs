//! What all of the plan's JSON shares: lengths, sizes and places.

use serde::Serialize;
use snugfold::assembly::parts::Size;
use snugfold::measure::length::Length;
use snugfold::measure::outline::{Outline, Rect};
use snugfold::measure::show::Figure;
use snugfold::measure::system::System;
use snugfold::project::finding::Place;

/// A length: whole micrometres, and text in the plan's system.
#[derive(Serialize)]
pub struct Measure {
    um: i64,
    text: String,
}

/// Two sides.
#[derive(Serialize)]
pub struct Sides {
    width: Measure,
    height: Measure,
}

/// Three sides.
#[derive(Serialize)]
pub struct Room {
    width: Measure,
    depth: Measure,
    height: Measure,
}

/// A rectangle on the blank: its upper left corner and its sides.
#[derive(Serialize)]
pub struct At {
    x: Measure,
    y: Measure,
    width: Measure,
    height: Measure,
}

/// A length in `system`.
pub fn measure(length: Length, system: System) -> Measure {
    Measure { um: length.as_um(), text: Figure::of(length, system).to_string() }
}

/// Lengths in `system`.
pub fn measures(lengths: &[Length], system: System) -> Vec<Measure> {
    lengths.iter().map(|&l| measure(l, system)).collect()
}

/// Two sides in `system`.
pub fn sides(width: Length, height: Length, system: System) -> Sides {
    Sides { width: measure(width, system), height: measure(height, system) }
}

/// Three sides in `system`.
pub fn room(size: Size, system: System) -> Room {
    Room {
        width: measure(size.width, system),
        depth: measure(size.depth, system),
        height: measure(size.height, system),
    }
}

/// A rectangle in `system`.
pub fn at(rect: Rect, system: System) -> At {
    At {
        x: measure(rect.min.x, system),
        y: measure(rect.min.y, system),
        width: measure(rect.width(), system),
        height: measure(rect.height(), system),
    }
}

/// The corners of an outline in micrometres, for programs to draw.
pub fn corners(outline: &Outline) -> Vec<[i64; 2]> {
    outline.corners.iter().map(|p| [p.x.as_um(), p.y.as_um()]).collect()
}

/// `set`, `board`, `card 1`, `box 2`, `holder`.
pub fn place(place: Place) -> String {
    match place {
        Place::Set => "set".to_owned(),
        Place::Board => "board".to_owned(),
        Place::Card(id) => format!("card {id}"),
        Place::Box(id) => format!("box {id}"),
        Place::Holder => "holder".to_owned(),
    }
}

/// The name of a value without its fields, in small letters: `TuckTooLong { .. }` is `tuck-too-long`.
pub fn kind(value: &impl std::fmt::Debug) -> String {
    let text = format!("{value:?}");
    let name = text.split(|c: char| !c.is_alphanumeric()).next();
    let mut kind = String::new();
    for c in name.unwrap_or_default().chars() {
        if c.is_uppercase() && !kind.is_empty() {
            kind.push('-');
        }
        kind.extend(c.to_lowercase());
    }
    kind
}
