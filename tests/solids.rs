//! Folded boxes off the grid against closed formulas of solid geometry.
//!
//! Sources: frustum of a pyramid, V = h (A₁ + A₂ + √(A₁A₂)) / 3 (CRC Concise Encyclopedia of Mathematics, “Pyramidal
//! Frustum”, archive.lib.msu.edu/crcmath/math/math/p/p738.htm); of one on n equal sides b and B,
//! V = n h (b² + bB + B²) cot(π/n) / 12 (vcalc.com, “Volume of a Polygon Based Pyramid Frustum”), of which prism (b = B) and
//! pyramid (B = 0) are the ends; hexagon, A = 3√3 a²/2 and 2 r = √3 a (sciencing.com, “How to find the volume of a
//! hexagon”); three equal sides, A = √3 a²/4, a sixth of that; wedge with a top edge c over a base a × b,
//! V = b h (2 a + c) / 6 (mathworld.wolfram.com/Wedge.html; calculatorlib.com, “Rectangular-Base Wedge”, whose worked
//! example 4, 3, 3, 5 comes to 27.5); pillow box: the panel over a curve f is at height f, its flap stands upright on the
//! same curve (the definition in “Isometric deformations of pillow boxes”, arXiv 2509.02049).
#![cfg(not(target_arch = "wasm32"))]

use std::f64::consts::PI;

use serde_json::{Value, json};
use snugfold::assembly::parts::{Assembly, Part};
use snugfold::fold::hollow::Hollow;
use snugfold::fold::motion::folded;
use snugfold::fold::pose::Pose;
use snugfold::fold::room::{leaves, without_tabs};
use snugfold::fold::space::V3;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::net::corner::Side;
use snugfold::net::flat::{Panel, PanelId};
use snugfold::plan::{Plan, plan};
use snugfold::project::request::Project;

fn asked(form: &str, inputs: &Value) -> Plan {
    let project = json!({
        "board": { "metric_step": "0.5 mm" },
        "cards": [{ "id": 1, "grammage": 240, "sheet_width": "1000 mm", "sheet_height": "1000 mm" }],
        "boxes": [{ "id": 1, "form": form, "card": 1, "inputs": inputs }]
    });
    let project: Project = serde_json::from_value(project).expect("it is a project");
    plan(&project, System::Metric)
}

fn made(form: &str, inputs: Value) -> Assembly {
    let plan = asked(form, &inputs);
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

/// b h (2 a + c) / 6.
fn wedge(a: f64, b: f64, c: f64, h: f64) -> f64 {
    b * h * (2.0 * a + c) / 6.0
}

/// Walls and a wedge on them: its height by Pythagoras, its top edge shorter by the depth, as its gussets go in as far
/// as the roof.
#[test]
fn cartons() {
    assert_eq!(wedge(4.0, 3.0, 3.0, 5.0), 27.5, "the worked example");
    let inputs = json!({ "width": "80 mm", "depth": "60 mm", "height": "70 mm", "slope": "50 mm", "ridge": "20 mm" });
    let made = made("carton", inputs);
    let body = 80.0 * 60.0 * 70.0;
    // 50² − 30² = 40².
    like("carton", volume(&made, 0), body + wedge(80.0, 60.0, 80.0 - 60.0, 40.0));
}

/// A slope of half the depth lies flat and closes nothing: it has to be more.
#[test]
fn a_flat_roof_is_refused() {
    for (slope, closes) in [("29 mm", false), ("30 mm", false), ("33 mm", true), ("60 mm", true), ("61 mm", false)] {
        let inputs = json!({ "width": "80 mm", "depth": "60 mm", "slope": slope });
        assert_eq!(asked("carton", &inputs).boxes[0].assembly.is_some(), closes, "{slope}");
    }
}

/// Finished side = blank ÷ (2√2), walls half as high.
#[test]
fn corner_folded() {
    for side in ["80 mm", "113.4 mm", "3 in"] {
        let made = made("corner-box", json!({ "side": side, "lid": "no" }));
        let net = &made.parts[0].net;
        let blank = net.blank.width().as_mm();
        let pose = Pose::of(&made.parts[0], &folded(&made.parts[0]), Length::ZERO);
        let named = |name: &str| net.named(name).expect("it is there");
        let long = |panel: PanelId, side: Side| {
            let (a, b) = net.panel(panel).side(side);
            (pose.point(panel, a) - pose.point(panel, b)).norm()
        };
        like("side", long(named("base"), Side::Top), blank / (2.0 * 2_f64.sqrt()));
        like("wall", long(named("left end"), Side::Left), blank / (4.0 * 2_f64.sqrt()));
        // All four points meet in the middle of the floor.
        let tips = ["front point", "back point", "left point", "right point"].map(|name| {
            let panel = named(name);
            pose.point(panel, net.panel(panel).side(Side::Top).0)
        });
        assert!(tips.iter().all(|t| (*t - tips[0]).norm() < 1e-5), "{tips:?}");
    }
}

/// What closed leaves hold: a third of each face's distance times its area.
fn held(part: &Part, keep: impl Fn(&str) -> bool) -> f64 {
    let pose = Pose::of(part, &folded(part), Length::ZERO);
    let panels = part.net.panels.iter().enumerate().filter(|(_, p)| keep(p.name));
    let cone = |(i, p): (usize, &Panel)| {
        let at = PanelId(i);
        pose.point(at, p.outline.corners[0]).dot(pose.out(at)) * p.outline.area().as_mm2() / 3.0
    };
    panels.map(cone).sum()
}

/// Over the width of the open box, 2 f high and so long as the flaps leave between them: the sum of 2 f (L − 2 f), for
/// the curve that is an arc on the flat card; and each flap ends at the other panel's score.
#[test]
fn pillows() {
    let (w, l, s) = (110.0_f64, 150.0, 18.0);
    let made = made("pillow", json!({ "width": "110 mm", "length": "150 mm", "curve": "18 mm" }));
    let strips = made.parts[0].rigid();
    let radius = (w * w / 4.0 + s * s) / (2.0 * s);
    let sum: f64 = (0..100_000)
        .map(|i| {
            let off = (f64::from(i) + 0.5) / 100_000.0 * w - w / 2.0;
            let f = (radius * radius - off * off).sqrt() - (radius - s);
            let slope = off / (radius * radius - off * off).sqrt();
            2.0 * f * (l - 2.0 * f) * (1.0 - slope * slope).sqrt() * w / 100_000.0
        })
        .sum();
    let is = held(strips, |name| !name.starts_with("back ") && name != "glue tab");
    // Strips cut the corners of an arc: 11 of them leave out 0.86 %.
    assert!((0.99..1.0).contains(&(is / sum)), "{is} mm³, by the sum {sum} mm³");
    let pose = Pose::of(strips, &folded(strips), Length::ZERO);
    let all = |name: &str| {
        (0..strips.net.panels.len()).map(PanelId).filter(move |p| strips.net.panel(*p).name == name).collect::<Vec<_>>()
    };
    let scores: Vec<V3> = all("back").iter().flat_map(|&p| pose.outline(p, &strips.net.panel(p).outline)).collect();
    for flap in all("front upper flap").into_iter().chain(all("front lower flap")) {
        for corner in pose.outline(flap, &strips.net.panel(flap).outline) {
            let front = corner.y < made.finished.depth.as_mm() / 2.0 - 1e-6;
            let near = scores.iter().map(|s| (*s - corner).norm()).fold(f64::MAX, f64::min);
            assert!(front || near < 1e-3, "a flap ends {near} mm off the back's score");
        }
    }
}
