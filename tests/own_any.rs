//! Whatever is drawn or written is answered: random grids, any text, lengths beyond all measure.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::drawn::{bench, set_of_drawn};
use common::tries;
use common::typical::{form, set_of};
use proptest::prelude::*;
use proptest::test_runner::{Config, FileFailurePersistence};
use snugfold::assembly::moves::Way;
use snugfold::fit::own::cure::cures;
use snugfold::fit::own::equal::named;
use snugfold::fit::own::reach::reach;
use snugfold::fold::prove::{Fault, part_faults};
use snugfold::form::own::drawn::Drawn;
use snugfold::form::own::read::read;
use snugfold::form::own::shape::{make, told};
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::finding::What;

/// Any drawing at all: a grid with cells, lines, trims, glue and order thrown onto it.
fn any_form() -> impl Strategy<Value = String> {
    let size = prop_oneof![
        8 => (1_i64..=40).prop_map(|n| format!("{n}/8 in")),
        2 => (1_i64..=900).prop_map(|n| format!("{n} mm")),
        1 => Just("width".to_owned()),
        1 => Just("half depth - 1/16 in".to_owned()),
        1 => Just("width - depth".to_owned()),
    ];
    let spans = || prop::collection::vec(size.clone(), 1..=10);
    (spans(), spans()).prop_flat_map(|(columns, rows)| {
        let (w, h) = (columns.len(), rows.len());
        let cell = (0..w, 0..h).prop_map(|(c, r)| format!("{}{}", char::from(b'A' + c as u8), r + 1));
        let side = prop::sample::select(vec!["top", "right", "bottom", "left"]);
        let corner = prop::sample::select(vec!["top left", "top right", "bottom left", "bottom right"]);
        let length = prop::sample::select(vec!["1/16 in", "1/4 in", "1 in", "tab", "3 in", "width - 1/8 in"]);
        let detail = prop_oneof![
            (side.clone(), length.clone()).prop_map(|(s, l)| format!("strip {s}: {l}")),
            (corner.clone(), length.clone(), length.clone()).prop_map(|(c, a, b)| format!("wedge {c}: {a} × {b}")),
            (corner, length.clone()).prop_map(|(c, l)| format!("round {c}: {l}")),
            (side.clone(), length.clone()).prop_map(|(s, l)| format!("notch {s}: {l}")),
            (side, length.clone(), length.clone(), length.clone())
                .prop_map(|(s, a, b, c)| format!("slot {s}: {a} × {b} × {c}")),
            (length.clone(), length.clone(), length.clone()).prop_map(|(a, b, c)| format!("hole: {a} × {b} × {c}")),
            (-180_i32..=180).prop_map(|a| format!("score falling {a}")),
            (-180_i32..=180).prop_map(|a| format!("score rising {a}")),
            (-100_i32..=100).prop_map(|l| format!("level {l}")),
            Just("mat".to_owned()),
        ];
        let word = prop::sample::select(vec![
            "panel",
            "a tab",
            "a tuck",
            "lid",
            "front",
            "glue tab",
            "away",
            "base as wall",
            "tuck",
            "a dust flap",
        ]);
        let of_cell = (cell.clone(), word, prop::collection::vec(detail, 0..3))
            .prop_map(|(c, w, d)| std::iter::once(format!("{c} {w}")).chain(d).collect::<Vec<_>>().join("; "));
        let beside = (0..w, 0..h, any::<bool>()).prop_map(move |(c, r, right)| {
            let (d, s) = if right { ((c + 1) % w, r) } else { (c, (r + 1) % h) };
            let name = |c: usize, r: usize| format!("{}{}", char::from(b'A' + c as u8), r + 1);
            format!("{}|{}", name(c, r), name(d, s))
        });
        let line = prop_oneof![
            beside.clone().prop_map(|b| format!("cut {b}")),
            beside.clone().prop_map(|b| format!("whole {b}")),
            (beside, -180_i32..=180).prop_map(|(b, a)| format!("fold {b} {a}")),
        ];
        let more = prop_oneof![
            (cell.clone(), cell.clone()).prop_map(|(a, b)| format!("glue {a} to {b}")),
            (cell.clone(), cell.clone()).prop_map(|(a, b)| format!("glue {a} inside to {b}; border 1/8 in")),
            cell.clone().prop_map(|c| format!("still {c}")),
            Just("as base".to_owned()),
            Just("as front".to_owned()),
            (cell.clone(), cell.clone()).prop_map(|(a, b)| format!("then {a}, {b}")),
            (cell.clone(), cell.clone(), cell)
                .prop_map(|(a, b, c)| format!("then {a}; tuck {b} behind {c}; gap 1/16 in")),
        ];
        let all = (
            prop::collection::vec(of_cell, 0..30),
            prop::collection::vec(line, 0..60),
            prop::collection::vec(more, 0..8),
        );
        all.prop_map(move |(cells, lines, more)| {
            let head = format!(
                "size width = 3 in\nsize depth = 1 1/4 in\nsize tab = 1/2 in\ncolumns {}\nrows {}",
                columns.join(", "),
                rows.join(", ")
            );
            let rest = cells.into_iter().chain(lines).chain(more);
            std::iter::once(head).chain(rest).collect::<Vec<_>>().join("\n")
        })
    })
}

/// Lines between cells that do not lie beside each other are refused: they are left out here.
fn readable(text: &str) -> Option<Drawn> {
    let mut lines: Vec<&str> = text.lines().collect();
    while let Err(e) = read(&lines.join("\n"), System::Inch) {
        let before = lines.len();
        lines.retain(|l| l.trim() != e.said);
        if lines.len() == before {
            return None;
        }
    }
    read(&lines.join("\n"), System::Inch).ok()
}

proptest! {
    #![proptest_config(Config {
        cases: tries(400),
        failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/data/own.seeds"))),
        ..Config::default()
    })]

    /// Whatever is drawn is planned and told of; what adds up flat is not left to luck.
    #[test]
    fn any_drawing_is_answered(text in any_form()) {
        let Some(drawn) = readable(&text) else { return Ok(()) };
        let b = bench();
        let written = snugfold::form::own::write::text(&drawn);
        prop_assert_eq!(read(&written, System::Metric), Ok(drawn.clone()), "{}", written);
        let sizes = b.sizes(&drawn, &[]);
        if let Ok(made) = make(&drawn, &b.measures(&sizes), b.clear) {
            let faults = part_faults(&made.part, b.thickness);
            prop_assert!(!faults.iter().any(|f| matches!(f, Fault::AreaLost)), "{written}");
            let _ = told(&made, b.thickness);
            prop_assert!(made.part.moves.iter().map(|m| match &m.way {
                Way::Even(c) | Way::EndOnly { creases: c, .. } => c.len(),
                Way::TuckIn { .. } => 2,
                Way::Sprung { .. } => 0,
            }).sum::<usize>() == made.part.net.creases.len(), "each crease folds once: {written}");
        }
        let mut project = set_of(form("own"));
        project.boxes[0].drawn = written;
        for system in [System::Inch, System::Metric] {
            let plan = plan(&project, system);
            for f in &plan.findings {
                prop_assert!(!snugfold::say::finding::finding(f, system).to_string().is_empty());
            }
        }
    }

    /// Any text at all is read or refused.
    #[test]
    fn any_text_is_read_or_refused(text in "(blank [0-9x /.]{0,12}|score [0-9, /]{0,12}|turn|[A-M][0-9]{1,2} [a-z ]{0,12}|[;|:,×° a-z0-9\n-]{0,40}|\\PC{0,20}|\n|; ){0,12}") {
        let _ = read(&text, System::Inch).map(|d| snugfold::form::own::write::text(&d));
    }
}

/// Lengths beyond all measure are told, not reckoned with.
#[test]
fn lengths_beyond_all_measure_are_told() {
    for text in [
        "blank 999999999999999999 x 5",
        "blank 5 x 5; score at 999999999999999",
        "size width = 99999999999999999 in\ncolumns width, width + width, half width - 99999999999999999 mm\nrows 99999999999999999 in, 0.000001 mm",
        "columns 1 in, 99999999999999999 mm\nrows 1 in\nempty\nA1 panel; strip top: 99999999999999999 in; notch left: 99999999999999999 in\nB1 panel",
    ] {
        let Ok(drawn) = read(text, System::Inch) else { continue };
        let written = snugfold::form::own::write::text(&drawn);
        let mut project = set_of_drawn(&written);
        project.boxes[0].inputs.insert(
            "width".to_owned(),
            snugfold::project::request::Entry::Length(
                Given::read("99999999999999999 in", System::Inch).expect("a length"),
            ),
        );
        for system in [System::Inch, System::Metric] {
            assert!(
                plan(&project, system)
                    .findings
                    .iter()
                    .any(|f| matches!(f.what, What::Own(_) | What::LengthOutside { .. })),
                "{text}"
            );
        }
        let _ = (cures(&drawn, &bench()), named(&drawn, &bench()), reach(&drawn, &[], &bench()));
    }
}
