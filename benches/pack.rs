//! How long layouts take and how that grows from 1 to 10,000 sets: printed, never asserted.
//!
//! `cargo bench --bench pack`
#![allow(clippy::disallowed_types, reason = "a bench is about the clock")]

use std::hint::black_box;
use std::time::Instant;

use snugfold::cut::build::lay_out;
use snugfold::cut::order::{order, settings};
use snugfold::cut::piece::{Piece, Turn};
use snugfold::cut::search::{Search, Status};
use snugfold::cut::sheet::{Rules, Sheet, Stock};
use snugfold::measure::length::Length;
use snugfold::measure::system::System;

/// What one set of four boxes takes in the largest of its cards: a dozen sizes, forty-odd pieces, in eighths of an inch.
const SET: [(i64, i64, u32); 12] = [
    (72, 64, 2),
    (60, 52, 2),
    (22, 38, 6),
    (8, 38, 6),
    (22, 8, 3),
    (18, 30, 6),
    (6, 30, 6),
    (68, 58, 1),
    (80, 14, 2),
    (50, 40, 1),
    (30, 40, 2),
    (15, 55, 4),
];

fn set(sets: u32) -> Vec<Piece> {
    (0..)
        .zip(SET)
        .map(|(id, (w, h, n))| Piece {
            id,
            width: Length::inches(w, 8),
            height: Length::inches(h, 8),
            count: n * sets,
            turn: Turn::Free,
        })
        .collect()
}

fn main() {
    let sheet = Sheet {
        id: 0,
        width: Length::inches(12, 1),
        height: Length::inches(12, 1),
        typed: System::Inch,
        stock: Stock::Buy,
        price: None,
    };
    let sheets = [sheet];
    let rules = Rules { longest_cut: Some(Length::inches(12, 1)), ..Rules::default() };
    println!(
        "  sets  pieces   quick ms  sheets   search ms  sheets   bound  patterns  settings      work  longest slice ms"
    );
    for sets in [1, 10, 100, 1_000, 10_000] {
        let pieces = set(sets);
        let count: u32 = pieces.iter().map(|p| p.count).sum();
        let start = Instant::now();
        let quick = black_box(lay_out(&pieces, &sheets, &rules));
        let quick_ms = start.elapsed().as_secs_f64() * 1e3;
        let start = Instant::now();
        let mut search = Search::new(&pieces, &sheets, &rules);
        let mut longest = 0.0_f64;
        loop {
            let slice = Instant::now();
            let status = search.step(50_000);
            longest = longest.max(slice.elapsed().as_secs_f64() * 1e3);
            if status == Status::Done {
                break;
            }
        }
        let best = black_box(search.layout());
        let ms = start.elapsed().as_secs_f64() * 1e3;
        let set: usize = best.patterns.iter().map(|p| settings(&order(p, &sheets[0]))).sum();
        println!(
            "{sets:6} {count:7} {quick_ms:10.2} {:7} {ms:11.1} {:7} {:7} {:9} {set:9} {:9} {longest:8.2}",
            quick.sheets(),
            best.sheets(),
            best.bound,
            best.patterns.len(),
            best.work,
        );
    }
}
