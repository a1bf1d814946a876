//! Every form as it is drawn, flat and folded, byte for byte: a change of a drawing is seen before it is made.
//!
//! `SNUGFOLD_EXPECTED=write cargo test --test expected` writes the drawings anew; then look at them.
#![cfg(not(target_arch = "wasm32"))]

use std::fs;
use std::path::Path;

use snugfold::draw::flat::{Look, flat};
use snugfold::draw::folded::{Dress, folded};
use snugfold::draw::solid::View;
use snugfold::draw::svg::paint;
use snugfold::form::registry::{FORMS, Form, Holds};
use snugfold::make::part::Planned;
use snugfold::measure::system::System;
use snugfold::plan::shapes;
use snugfold::project::example::example;
use snugfold::project::fresh::fresh;
use snugfold::project::request::{Mats, Tint};

/// `form` as it is when nothing is typed, with mats; a holder round three of the first box.
fn usual(form: &Form) -> Planned {
    let mut project = fresh(example().as_ref(), form.shown_by(), form.key);
    let card = project.boxes[0].card;
    for part in project.boxes.iter_mut().chain(&mut project.holder) {
        part.mats = Some(Mats { card, reveal: None, off: Vec::new() });
        part.count = if form.holds == Holds::Gifts { 1 } else { 3 };
    }
    if form.holds == Holds::Gifts {
        project.holder = None;
    }
    let plan = shapes(&project, System::Metric);
    plan.holder.or_else(|| plan.boxes.into_iter().next()).expect("it is planned")
}

/// The drawings of a form by file name.
fn drawings(form: &Form) -> Vec<(String, String)> {
    let planned = usual(form);
    let parts = planned.assembly.as_ref().map_or(0, |a| a.parts.len());
    let (card, mats) = (Tint(0xd8_b9_8a), Tint(0xf4_ee_e2));
    let name = |part: usize, what: &str| match part {
        0 => format!("{}-{what}.svg", form.key),
        n => format!("{}-{}-{what}.svg", form.key, n + 1),
    };
    let look = Look { card, mats, chosen: None, system: System::Metric };
    let dress = Dress { card, mats, chosen: Vec::new() };
    (0..parts)
        .flat_map(|part| {
            let moves = planned.assembly.as_ref().map_or(0, |a| a.parts[part].moves.len());
            let mut done = folded(&planned, part, moves as f64, &dress, View::default()).expect("it is planned");
            done.fit(3.0);
            let pattern = flat(&planned, part, look).expect("it is planned");
            [(name(part, "flat"), paint(&pattern)), (name(part, "folded"), paint(&done))]
        })
        .collect()
}

#[test]
fn forms_are_drawn_as_expected() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/expected");
    let write = std::env::var("SNUGFOLD_EXPECTED").is_ok_and(|v| v == "write");
    let all: Vec<(String, String)> = FORMS.iter().flat_map(drawings).collect();
    if write {
        fs::create_dir_all(&folder).expect("a folder can be made");
        for (name, drawn) in &all {
            fs::write(folder.join(name), drawn).expect("a file can be written");
        }
    }
    for (name, drawn) in &all {
        let expected = fs::read_to_string(folder.join(name)).unwrap_or_default();
        assert!(*drawn == expected, "{name} is drawn differently: write it anew, and look at it");
    }
    let mut kept: Vec<String> = fs::read_dir(&folder)
        .expect("the folder is there")
        .map(|e| e.expect("an entry").file_name().to_string_lossy().into_owned())
        .collect();
    kept.retain(|k| !all.iter().any(|(name, _)| name == k));
    assert!(kept.is_empty(), "drawings of no form: {kept:?}");
}
