//! The largest box out of a sheet is held against every groove there is.
#![cfg(not(target_arch = "wasm32"))]

use serde_json::json;
use snugfold::fit::largest::{Grow, Largest, Usable, largest};
use snugfold::form::registry::named;
use snugfold::form::resolve::Setting;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::project::request::{Lie, Part};

fn setting(step: Length) -> Setting {
    Setting {
        system: System::Metric,
        score: Grid::every(step),
        cut: Grid::every(Length::um(500)),
        thickness: Length::um(300),
        mat_thickness: Length::ZERO,
        learned: Length::ZERO,
        contents: Vec::new(),
    }
}

fn part(width: i64, depth: i64, height: i64) -> Part {
    let mm = |n: i64| format!("{n} mm");
    serde_json::from_value(json!({ "form": "tuck-box", "card": 1,
        "inputs": { "width": mm(width), "depth": mm(depth), "height": mm(height) } }))
    .expect("it is a part")
}

fn blank(part: &Part, setting: &Setting) -> Option<(Length, Length)> {
    let assembly = named("tuck-box")?.shaped(part, setting).assembly?;
    let blank = assembly.parts[0].net.blank;
    Some((blank.width(), blank.height()))
}

fn sheet(width: i64, height: i64, lie: Lie) -> Usable {
    Usable { width: Length::mm(width), height: Length::mm(height), lie }
}

fn found(part: &Part, step: Length, sheet: Usable, grow: Grow) -> Option<Largest> {
    largest(part, named("tuck-box")?, &setting(step), sheet, grow)
}

/// Every height from the least to the most is made; the highest that comes out of the sheet is the answer.
#[test]
fn no_higher_box_comes_out_of_the_sheet() {
    let setting = setting(Length::MM);
    for (w, h) in [(305, 305), (210, 297), (297, 210), (216, 279)] {
        for (lie, turns) in [(Lie::Either, true), (Lie::Upright, false)] {
            let goes = |&height: &i64| {
                blank(&part(60, 25, height), &setting).is_some_and(|(a, b)| {
                    let lies = |a, b| a <= Length::mm(w) && b <= Length::mm(h);
                    lies(a, b) || (turns && lies(b, a))
                })
            };
            let best = (15..=500).filter(goes).max().map(Length::mm);
            let is = found(&part(60, 25, 40), Length::MM, sheet(w, h, lie), Grow::Height);
            assert_eq!(is.map(|l| l.finished.height), best, "{w} × {h}, {lie:?}");
        }
    }
}

/// In proportion 3 : 1 : 4 each size of the scan is made too.
#[test]
fn no_larger_box_in_proportion_comes_out_of_the_sheet() {
    let setting = setting(Length::MM);
    let goes = |&k: &i64| {
        let sides = (k * 3 / 4, k / 4);
        sides.1 >= 8
            && blank(&part(sides.0, sides.1, k), &setting)
                .is_some_and(|(a, b)| a.max(b) <= Length::mm(297) && a.min(b) <= Length::mm(210))
    };
    let best = (15..=500).filter(goes).max().map(Length::mm);
    let is = found(&part(300, 100, 400), Length::MM, sheet(210, 297, Lie::Either), Grow::InProportion);
    assert!(best.is_some());
    assert_eq!(is.map(|l| l.finished.height), best);
    assert_eq!(is.map(|l| l.per_mille), best.map(|b| b.nm() * 1_000 / Length::mm(400).nm()));
}

#[test]
fn a_sheet_too_small_for_any_box_has_no_answer() {
    assert_eq!(found(&part(60, 25, 40), Length::MM, sheet(50, 50, Lie::Either), Grow::InProportion), None);
    assert_eq!(found(&part(60, 25, 40), Length::MM, sheet(0, 0, Lie::Either), Grow::Height), None);
}
