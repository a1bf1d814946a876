//! How long a form that its maker drew takes: built and folded, and proved; medians, printed, never asserted.
//!
//! `cargo bench --bench drawn`
#![allow(clippy::disallowed_types, reason = "a bench is about the clock")]

mod clock;

use clock::median_us;
use std::fmt::Write as _;
use std::hint::black_box;
use std::time::Instant;

use snugfold::fit::own::Bench;
use snugfold::fit::own::cure::cures;
use snugfold::form::own::read::read;
use snugfold::form::own::shape::{make, told};
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::project::bound;

/// A grid of so many columns and rows, each line cut or scored by dice; with `tree`, no ring of scores is left.
fn grid(columns: usize, rows: usize, mut dice: u64, tree: bool) -> String {
    let mut text = format!("columns {}\nrows {}", vec!["1 in"; columns].join(", "), vec!["1 in"; rows].join(", "));
    let name = |c: usize, r: usize| format!("{}{}", char::from(b'A' + c as u8), r + 1);
    let mut group: Vec<usize> = (0..columns * rows).collect();
    for r in 0..rows {
        for c in 0..columns {
            for (d, s) in [(c + 1, r), (c, r + 1)] {
                if d >= columns || s >= rows {
                    continue;
                }
                dice = dice.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                let (a, b) = (group[r * columns + c], group[s * columns + d]);
                let cut = if tree { a == b } else { dice >> 63 == 0 };
                if cut {
                    let _ = write!(text, "\ncut {}|{}", name(c, r), name(d, s));
                } else {
                    group.iter_mut().filter(|g| **g == b).for_each(|g| *g = a);
                    let fold = [90, -90, 180, 45][(dice >> 40) as usize % 4];
                    let _ = write!(text, "\nfold {}|{} {fold}", name(c, r), name(d, s));
                }
            }
        }
    }
    text
}

fn main() {
    let bench = Bench {
        system: System::Inch,
        score: Grid::every(Length::inches(1, 8)),
        clear: bound::CLEAR.of(System::Inch),
        thickness: Length::um(300),
    };
    let ring = "columns 3 in, 1 1/4 in, 3 in, 1 1/8 in, 1/2 in\nrows 5 in, 1 1/4 in\nE1 a tab\nE2 away\ncut A2|B2\ncut B2|C2\ncut C2|D2";
    let all = [
        ("a ring with flaps, 9 panels".to_owned(), ring.to_owned()),
        ("60 cells, a tree".to_owned(), grid(10, 6, 7, true)),
        ("100 cells, a tree".to_owned(), grid(10, 10, 11, true)),
        ("100 cells, lines by dice, 1".to_owned(), grid(10, 10, 1, false)),
        ("100 cells, lines by dice, 2".to_owned(), grid(10, 10, 2, false)),
    ];
    for (name, text) in all {
        let Ok(drawn) = read(&text, System::Inch) else {
            println!("{name}: not read");
            continue;
        };
        let sizes = bench.sizes(&drawn, &[]);
        let measures = bench.measures(&sizes);
        let Ok(made) = make(&drawn, &measures, bench.clear) else {
            println!("{name}: not made");
            continue;
        };
        let folded = median_us(31, || {
            black_box(make(black_box(&drawn), &measures, bench.clear).is_ok());
        });
        let proved = median_us(31, || drop(black_box(told(black_box(&made), bench.thickness))));
        let start = Instant::now();
        let ways = cures(&drawn, &bench).len();
        let cured = start.elapsed().as_secs_f64() * 1e3;
        println!(
            "{name:>30}: {} panels, {} loops; built and folded {folded:6.0} µs, proved {proved:7.0} µs; {ways} cures in {cured:.0} ms",
            made.part.net.panels.len(),
            made.part.net.loops.len()
        );
    }
}
