//! Open benchmark instances: no layout undercuts a known bound, no bound exceeds a known optimum, exact patterns are
//! exact. Instances and reference values: `tests/data/pack/README.md`.

use std::collections::BTreeMap;

use snugfold::cut::check::check;
use snugfold::cut::job::Job;
use snugfold::cut::layout::Layout;
use snugfold::cut::piece::{Piece, Turn};
use snugfold::cut::raster::Raster;
use snugfold::cut::search::{Aim, Search, Status};
use snugfold::cut::sheet::{Rules, Sheet, Stock};
use snugfold::measure::length::Length;
use snugfold::measure::system::System;

const CLASS: &str = include_str!("data/pack/class.csv");
const CUT: &str = include_str!("data/pack/cut.csv");
const PERFECT: &str = include_str!("data/pack/perfect.csv");
const CLASS_BOUNDS: &str = include_str!("data/pack/class_bounds.csv");
const KNOWN: &str = include_str!("data/pack/known.csv");

struct Instance {
    name: String,
    sheet: Sheet,
    pieces: Vec<Piece>,
    worths: Vec<i64>,
}

fn instances(text: &str, turn: Turn) -> Vec<Instance> {
    let number = |cell: &str| cell.parse::<i64>().unwrap();
    let read = |row: &str| {
        let cells: Vec<&str> = row.split(',').collect();
        let mut pieces = Vec::new();
        let mut worths = Vec::new();
        for (id, item) in (0..).zip(cells[6].split_whitespace()) {
            let n: Vec<i64> = item.split('x').map(number).collect();
            let count = u32::try_from(n.get(2).copied().unwrap_or(1)).unwrap();
            pieces.push(Piece { id, width: Length::mm(n[0]), height: Length::mm(n[1]), count, turn });
            worths.push(n.get(3).copied().unwrap_or(0));
        }
        Instance {
            name: cells[1].to_owned(),
            sheet: Sheet {
                id: 0,
                width: Length::mm(number(cells[2])),
                height: Length::mm(number(cells[3])),
                typed: System::Metric,
                stock: Stock::Buy,
                price: None,
            },
            pieces,
            worths,
        }
    };
    text.lines().skip(1).map(read).collect()
}

fn rules() -> Rules {
    Rules { least_strip: Length::ZERO, ..Rules::default() }
}

/// A short search, replayed by the checker.
fn laid(instance: &Instance, work: u64) -> Layout {
    let sheets = [instance.sheet.clone()];
    let mut search = Search::new(&instance.pieces, &sheets, &rules()).aim(Aim::Sheets);
    let mut status = Status::Working;
    while status == Status::Working && search.work() < work {
        status = search.step(100_000);
    }
    let layout = search.layout();
    assert_eq!(check(&instance.pieces, &sheets, &rules(), &layout), [], "{}", instance.name);
    assert!(layout.left_out.is_empty(), "{}", instance.name);
    layout
}

/// Least and best known numbers of bins by instance and turn.
fn bounds() -> BTreeMap<(String, Turn), (u32, u32)> {
    let mut all = BTreeMap::new();
    for row in CLASS_BOUNDS.lines().skip(1) {
        let c: Vec<&str> = row.split(',').collect();
        let n = |i: usize| c[i].parse().unwrap();
        all.insert((c[0].to_owned(), Turn::Fixed), (n(2), n(4)));
        all.insert((c[0].to_owned(), Turn::Free), (n(5), n(6)));
    }
    for row in KNOWN.lines().skip(1) {
        let c: Vec<&str> = row.split(',').collect();
        let turn = if c[3].starts_with("rotated") { Turn::Free } else { Turn::Fixed };
        if c[2] == "bins" {
            // An empty cell is a bound that nobody has given.
            let n = |i: usize, none: u32| c[i].parse().unwrap_or(none);
            all.insert((c[1].to_owned(), turn), (n(4, 0), n(5, u32::MAX)));
        }
    }
    all
}

#[test]
fn no_layout_undercuts_a_bound_and_no_bound_exceeds_an_optimum() {
    let bounds = bounds();
    let mut checked = 0;
    for turn in [Turn::Fixed, Turn::Free] {
        for text in [CLASS, CUT, PERFECT] {
            for instance in instances(text, turn) {
                let Some((least, best)) = bounds.get(&(instance.name.clone(), turn)) else {
                    continue;
                };
                let layout = laid(&instance, 400_000);
                assert!(layout.sheets() >= *least, "{}: {} sheets of {least}", instance.name, layout.sheets());
                assert!(layout.bound <= *best, "{}: bound {} of {best}", instance.name, layout.bound);
                checked += 1;
            }
        }
    }
    assert!(checked > 250, "{checked}");
}

#[test]
fn exact_patterns_reach_the_known_optima() {
    let mut checked = 0;
    for row in KNOWN.lines().skip(1) {
        let c: Vec<&str> = row.split(',').collect();
        if c[2] != "knapsack one sheet / unlimited copies" {
            continue;
        }
        let turn = if c[3] == "rotated" { Turn::Free } else { Turn::Fixed };
        let all = instances(CUT, turn);
        let instance = all.iter().find(|i| i.name == c[1]).unwrap();
        let job = Job::new(&instance.pieces, std::slice::from_ref(&instance.sheet), &rules());
        // The dearest piece of each size counts.
        let dearest = |k: &snugfold::cut::job::Kind| k.pieces.iter().map(|p| instance.worths[p.0]).max().unwrap();
        let worths: Vec<i64> = job.kinds.iter().map(dearest).collect();
        let raster = Raster::new(&job, 0).unwrap();
        let mut run = raster.price(&worths);
        let mut work = 0;
        assert!(raster.advance(&mut run, &mut work, u64::MAX));
        assert_eq!(raster.value(&run), c[4].parse::<i64>().unwrap(), "{} {}", c[1], c[3]);
        let slice = raster.slice(&job, &run).unwrap();
        let sum: i64 = slice.blocks().map(|b| worths[b.kind as usize] * i64::from(b.count())).sum();
        assert_eq!(sum, raster.value(&run));
        checked += 1;
    }
    assert_eq!(checked, 20);
}

#[test]
fn slices_of_work_do_not_matter() {
    let all = instances(CLASS, Turn::Free);
    for instance in all.iter().step_by(9) {
        let sheets = [instance.sheet.clone()];
        let run = |slice: u64| {
            let mut search = Search::new(&instance.pieces, &sheets, &rules()).most(1_500_000);
            while search.step(slice) == Status::Working {}
            search.layout()
        };
        let (fine, coarse) = (run(7_001), run(u64::MAX));
        assert_eq!(fine, coarse, "{}", instance.name);
        assert_eq!(check(&instance.pieces, &sheets, &rules(), &fine), []);
    }
}
