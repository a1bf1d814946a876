//! How long each form takes to be planned, at its defaults: medians, printed, never asserted.
//!
//! `cargo bench --bench forms`
#![allow(clippy::disallowed_types, reason = "a bench is about the clock")]

mod clock;

use clock::median_us;
use std::hint::black_box;

use serde_json::json;
use snugfold::form::registry::{FORMS, Holds};
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::request::Project;

fn main() {
    let card =
        json!({ "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "500 mm", "sheet_height": "700 mm" });
    let part = |id: usize, form: &str| json!({ "id": id, "form": form, "card": 1 });
    let boxes = |forms: &[&str]| forms.iter().enumerate().map(|(i, f)| part(i + 1, f)).collect::<Vec<_>>();
    let asked = |forms: &[&str], holder: Option<&str>| {
        let mut project = json!({ "cards": [card], "boxes": boxes(forms) });
        if let Some(form) = holder {
            project["holder"] = part(0, form);
        }
        project
    };
    let gifts: Vec<&str> = FORMS.iter().filter(|f| f.holds == Holds::Gifts).map(|f| f.key).collect();
    let mut all: Vec<(&str, serde_json::Value)> = Vec::new();
    for form in FORMS {
        all.push(match form.holds {
            Holds::Gifts => (form.key, asked(&[form.key], None)),
            Holds::Boxes => (form.key, asked(&[form.shown_by(); 3], Some(form.key))),
        });
    }
    all.push(("8 forms in one row", asked(&gifts[..8.min(gifts.len())], Some("row-holder"))));
    for (name, project) in all {
        let Ok(project) = serde_json::from_value::<Project>(project) else {
            println!("{name}: not read");
            continue;
        };
        let made = plan(&project, System::Metric);
        let us = median_us(101, || drop(black_box(plan(black_box(&project), System::Metric))));
        println!(
            "{name:>20}: {us:7.0} µs, {} pieces{}",
            made.pieces.len(),
            if made.stopped() { ", stopped" } else { "" }
        );
    }
}
