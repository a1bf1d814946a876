//! Lays out open benchmark instances and prints one line for each: name, bins, lower bound, milliseconds.
//!
//! `cargo run --release --example pack -- FILE... [--turn] [--work N] [--quick]`
//!
//! Files are CSV with a header: `set,instance,bin_w,bin_h,n,item_area,items`, items as `WxH`, `WxHxQ` or `WxHxQxV`
//! (width, height, copies, value; the value is not used) with spaces between. Every layout is replayed by the checker.

#![expect(clippy::disallowed_types, reason = "this is what measures")]

use std::process::ExitCode;
use std::time::Instant;

use snugfold::cut::build::lay_out;
use snugfold::cut::check::check;
use snugfold::cut::piece::{Piece, Turn};
use snugfold::cut::search::{Aim, Search, Status};
use snugfold::cut::sheet::{Rules, Sheet, Stock};
use snugfold::measure::length::Length;
use snugfold::measure::system::System;

struct Instance {
    name: String,
    sheet: Sheet,
    pieces: Vec<Piece>,
}

fn main() -> ExitCode {
    match run(std::env::args().skip(1)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("pack: {why}");
            ExitCode::FAILURE
        }
    }
}

fn run(args: impl Iterator<Item = String>) -> Result<(), String> {
    let mut files = Vec::new();
    let mut turn = Turn::Fixed;
    let mut times = 1_u64;
    let mut quick = false;
    let mut args = args;
    while let Some(arg) = args.next() {
        match arg.as_str() {
            "--turn" => turn = Turn::Free,
            "--quick" => quick = true,
            "--work" => {
                let given = args.next().unwrap_or_default();
                times = given.parse().map_err(|_| format!("--work takes a whole number, not {given:?}"))?;
            }
            flag if flag.starts_with('-') => return Err(format!("unknown flag {flag}")),
            _ => files.push(arg),
        }
    }
    if files.is_empty() {
        return Err("usage: pack FILE... [--turn] [--work N] [--quick]".to_owned());
    }
    let (mut count, mut bins, mut bounds, mut spent) = (0_u32, 0, 0, 0.0);
    for file in &files {
        let text = std::fs::read_to_string(file).map_err(|why| format!("{file}: {why}"))?;
        for (line, row) in text.lines().enumerate().skip(1).filter(|(_, row)| !row.trim().is_empty()) {
            let instance = read(row, turn).ok_or_else(|| format!("{file}:{}: not an instance", line + 1))?;
            let rules = Rules { least_strip: Length::ZERO, ..Rules::default() };
            let start = Instant::now();
            let sheets = [instance.sheet];
            let layout = if quick {
                lay_out(&instance.pieces, &sheets, &rules)
            } else {
                let mut search = Search::new(&instance.pieces, &sheets, &rules).times(times).aim(Aim::Sheets);
                while search.step(100_000) == Status::Working {}
                search.layout()
            };
            let ms = start.elapsed().as_secs_f64() * 1e3;
            let faults = check(&instance.pieces, &sheets, &rules, &layout);
            if !faults.is_empty() || !layout.left_out.is_empty() {
                return Err(format!("{}: {faults:?} {:?}", instance.name, layout.left_out));
            }
            println!("{} {} {} {ms:.2}", instance.name, layout.sheets(), layout.bound);
            count += 1;
            bins += layout.sheets();
            bounds += layout.bound;
            spent += ms;
        }
    }
    eprintln!(
        "{count} instances, {bins} bins, bound {bounds}, mean {:.2} ms, work x {times}",
        spent / f64::from(count.max(1))
    );
    Ok(())
}

fn read(row: &str, turn: Turn) -> Option<Instance> {
    let mut cells = row.split(',');
    let name = cells.nth(1)?.to_owned();
    let side = |cell: Option<&str>| cell?.parse().ok().map(Length::mm);
    let sheet = Sheet {
        id: 0,
        width: side(cells.next())?,
        height: side(cells.next())?,
        typed: System::Metric,
        stock: Stock::Buy,
        price: None,
    };
    let items = cells.nth(2)?;
    let mut pieces = Vec::new();
    for (id, item) in (0..).zip(items.split_whitespace()) {
        let mut numbers = item.split('x');
        let (width, height) = (side(numbers.next())?, side(numbers.next())?);
        let count = numbers.next().map_or(Some(1), |q| q.parse().ok())?;
        pieces.push(Piece { id, width, height, count, turn });
    }
    Some(Instance { name, sheet, pieces })
}
