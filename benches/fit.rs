//! How long the arrangement of gifts and the search for the largest box take, and how they grow: medians, printed,
//! never asserted.
//!
//! `cargo bench --bench fit`
#![allow(clippy::disallowed_types, reason = "a bench is about the clock")]

mod clock;

use clock::median_us;
use std::hint::black_box;

use snugfold::assembly::parts::Size;
use snugfold::fit::arrange::{Block, arrange};
use snugfold::fit::largest::{Grow, Usable, largest};
use snugfold::form::registry::named;
use snugfold::form::resolve::Setting;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::project::fitting::Turns;
use snugfold::project::request::{Lie, Part};

/// Gifts of unlike sizes, so that no two arrangements are alike.
fn block(i: i64, count: u32) -> Block {
    let um = |n: i64| Length::um(n);
    let size = Size { width: um(20_010 + i * 7_130), depth: um(31_070 + i * 3_370), height: um(11_030 + i * 5_710) };
    Block { size, count, turns: Turns::Any }
}

fn main() {
    for kinds in 1..=6 {
        let blocks: Vec<Block> = (0..kinds).map(|i| block(i, 1)).collect();
        let found = arrange(&blocks).map_or(0, |a| a.sizes.len());
        let us = median_us(15, || drop(black_box(arrange(black_box(&blocks)))));
        println!("{kinds} unlike gifts: {us:9.0} µs, {found} blocks");
    }
    for (kinds, count) in [(1, 10), (1, 50), (2, 10), (2, 25), (6, 8)] {
        let blocks: Vec<Block> = (0..kinds).map(|i| block(i, count)).collect();
        let us = median_us(15, || drop(black_box(arrange(black_box(&blocks)))));
        println!("{kinds} kinds of {count}: {us:9.0} µs");
    }
    let Ok(part) = serde_json::from_str::<Part>(r#"{ "form": "tuck-box", "card": 1 }"#) else {
        return;
    };
    let Some(form) = named("tuck-box") else {
        return;
    };
    for step in [Length::mm(5), Length::MM, Length::um(500)] {
        let setting = Setting {
            system: System::Metric,
            score: Grid::every(step),
            cut: Grid::every(Length::um(500)),
            thickness: Length::um(300),
            mat_thickness: Length::ZERO,
            learned: Length::ZERO,
            contents: Vec::new(),
        };
        let sheet = Usable { width: Length::mm(210), height: Length::mm(297), lie: Lie::Either };
        let us = median_us(15, || {
            black_box(largest(&part, form, &setting, sheet, Grow::InProportion));
        });
        println!("largest on grooves of {} µm: {us:9.0} µs", step.as_um());
    }
}
