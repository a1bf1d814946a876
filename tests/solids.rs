//! Folded boxes off the grid against closed formulas of solid geometry.
//!
//! Sources: frustum of a pyramid, V = h (A₁ + A₂ + √(A₁A₂)) / 3 (CRC Concise Encyclopedia of Mathematics, “Pyramidal
//! Frustum”, archive.lib.msu.edu/crcmath/math/math/p/p738.htm); of one on n equal sides b and B,
//! V = n h (b² + bB + B²) cot(π/n) / 12 (vcalc.com, “Volume of a Polygon Based Pyramid Frustum”), of which prism (b = B) and
//! pyramid (B = 0) are the ends; hexagon, A = 3√3 a²/2 and 2 r = √3 a (sciencing.com, “How to find the volume of a
//! hexagon”); three equal sides, A = √3 a²/4, a sixth of that.
#![cfg(not(target_arch = "wasm32"))]

use std::f64::consts::PI;

use serde_json::{Value, json};
use snugfold::fold::hollow::Hollow;
use snugfold::fold::room::{leaves, without_tabs};
use snugfold::form::assembly::Assembly;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::request::Project;

fn made(form: &str, inputs: Value) -> Assembly {
    let project = json!({
        "board": { "metric_step": "0.5 mm" },
        "cards": [{ "id": 1, "grammage": 240, "sheet_width": "1000 mm", "sheet_height": "1000 mm" }],
        "boxes": [{ "id": 1, "form": form, "card": 1, "inputs": inputs }]
    });
    let project: Project = serde_json::from_value(project).expect("it is a project");
    let plan = plan(&project, System::Metric);
    plan.boxes[0].assembly.clone().unwrap_or_else(|| panic!("{form}: {:?}", plan.findings))
}

/// What the panels of a part close in from score to score, in cubic millimetres.
fn volume(assembly: &Assembly, part: usize) -> f64 {
    let none = Length::ZERO;
    Hollow::of(&without_tabs(leaves(&assembly.parts[part], none)), none).volume()
}

fn like(what: &str, is: f64, formula: f64) {
    assert!((is / formula - 1.0).abs() < 1e-6, "{what}: {is} mm³, by the formula {formula} mm³");
}

/// n h (b² + bB + B²) cot(π/n) / 12.
fn frustum(n: f64, h: f64, b: f64, top: f64) -> f64 {
    n * h * (b * b + b * top + top * top) / libm::tan(PI / n) / 12.0
}

const NAMES: [(&str, f64); 6] =
    [("three", 3.0), ("four", 4.0), ("five", 5.0), ("six", 6.0), ("seven", 7.0), ("eight", 8.0)];

#[test]
fn prisms() {
    for (name, n) in &NAMES[2..] {
        let inputs = json!({ "sides": name, "foot": "40 mm", "height": "70 mm", "lid-height": "30 mm" });
        let made = made("prism", inputs);
        like(name, volume(&made, 0), frustum(*n, 70.0, 40.0, 40.0));
        if *name == "six" {
            like("by the hexagon's own formula", volume(&made, 0), 3.0 * 3_f64.sqrt() / 2.0 * 40.0 * 40.0 * 70.0);
            // Across the flats √3 × side.
            like("across the flats", made.finished.width.as_mm(), 3_f64.sqrt() * 40.0);
        }
    }
}

#[test]
fn pyramids() {
    for (name, n) in &NAMES[..4] {
        let made = made("pyramid", json!({ "sides": name, "foot": "60 mm", "height": "90 mm" }));
        like(name, volume(&made, 0), frustum(*n, 90.0, 60.0, 0.0));
    }
}

/// A fan of n triangles of edge L is a pyramid √(L² − R²) high, R from its middle to a corner, turned upside down.
#[test]
fn favours() {
    for (name, n) in &NAMES[2..] {
        let made = made("favour", json!({ "sides": name, "edge": "160 mm", "rim": "45 mm" }));
        let corner = 45.0 / 2.0 / libm::sin(PI / n);
        let high = (160.0_f64 * 160.0 - corner * corner).sqrt();
        like(name, volume(&made, 0), frustum(*n, high, 45.0, 0.0));
        like("its height", made.finished.height.as_mm(), high);
    }
}

#[test]
fn frusta() {
    for (name, n) in NAMES.iter().filter(|(name, _)| ["four", "five", "six", "eight"].contains(name)) {
        let inputs = json!({ "sides": name, "foot": "50 mm", "rim": "65 mm", "height": "80 mm" });
        let made = made("frustum", inputs);
        like(name, volume(&made, 0), frustum(*n, 80.0, 50.0, 65.0));
        let area = |side: f64| n * side * side / 4.0 / libm::tan(PI / n);
        let (low, high) = (area(50.0), area(65.0));
        like("by its two areas", volume(&made, 0), 80.0 / 3.0 * (low + high + (low * high).sqrt()));
    }
}

#[test]
fn triangles() {
    let equal = made("triangle", json!({ "width": "60 mm", "height": "180 mm" }));
    like("three equal sides", volume(&equal, 0), 3_f64.sqrt() / 4.0 * 3_600.0 * 180.0);
    // Six slices as wide as they are long are a hexagon.
    let slice = made("slice", json!({ "slices": "six", "side": "80 mm", "height": "60 mm" }));
    like("six slices", volume(&slice, 0) * 6.0, 3.0 * 3_f64.sqrt() / 2.0 * 6_400.0 * 60.0);
}

/// So many slices never need more than the whole round, and leave less than a groove at its rim.
#[test]
fn slices_make_a_round() {
    for (name, n) in [("six", 6.0), ("seven", 7.0), ("eight", 8.0), ("nine", 9.0), ("ten", 10.0), ("twelve", 12.0)] {
        for side in ["75 mm", "101.5 mm", "160 mm"] {
            let slice = made("slice", json!({ "slices": name, "side": side, "height": "60 mm" }));
            let radius: f64 = side.trim_end_matches(" mm").parse().expect("a number");
            let angle = 2.0 * libm::asin(slice.finished.width.as_mm() / 2.0 / radius);
            assert!(angle * n <= 2.0 * PI + 1e-9, "{n} of {side} overlap");
            let chord = 2.0 * radius * libm::sin(PI / n);
            assert!(chord - slice.finished.width.as_mm() < 0.5, "{n} of {side} leave a gap");
        }
    }
}
