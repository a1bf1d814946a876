//! How long `plan` takes for 1, 12 and 100 boxes, how it grows, and how long drawings and pattern pages take: medians of many runs, printed, never asserted.
//!
//! `cargo bench --bench plan`
#![allow(clippy::disallowed_types, reason = "a bench is about the clock")]

use std::hint::black_box;
use std::time::Instant;

use snugfold::draw::font::Font;
use snugfold::draw::handout::{Handout, handout};
use snugfold::draw::pages::pages;
use snugfold::draw::pattern::patterns;
use snugfold::draw::pdf::{pdf, print};
use snugfold::draw::step::step;
use snugfold::draw::svg::paint;
use snugfold::make::pace::Pace;
use snugfold::measure::system::System;
use snugfold::plan::{plan, taught};
use snugfold::project::example::example;
use snugfold::project::request::{Project, Tint};
use snugfold::say::hand::Hand;
use snugfold::say::spelling::Spelling;
use snugfold::stock::paper::Paper;

/// The example's boxes repeated up to `kinds` kinds, each `count` times in the set.
fn set(kinds: u16, count: u32) -> Option<Project> {
    let mut project = example()?;
    let some = project.boxes.clone();
    project.boxes = (0..kinds)
        .zip(some.iter().cycle())
        .map(|(i, b)| {
            let mut b = b.clone();
            (b.id, b.count) = (i + 1, count);
            b
        })
        .collect();
    // A holder for a hundred boxes in a row is larger than any sheet; that is said, and planned all the same.
    Some(project)
}

fn median_us(run: impl Fn()) -> f64 {
    let mut runs: Vec<f64> = (0..60)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed().as_secs_f64() * 1e6
        })
        .collect();
    runs.sort_by(f64::total_cmp);
    runs[runs.len() / 2]
}

fn main() {
    let cases = [
        ("1 box", 1, 1),
        ("12 boxes, 3 kinds", 3, 4),
        ("12 boxes, 12 kinds", 12, 1),
        ("60 boxes, 60 kinds", 60, 1),
        ("100 boxes, 20 kinds", 20, 5),
    ];
    let mut first = None;
    for (name, kinds, count) in cases {
        let Some(project) = set(kinds, count) else {
            continue;
        };
        let us = median_us(|| drop(black_box(plan(black_box(&project), System::Inch))));
        let base = *first.get_or_insert(us);
        println!("{name:>20}: {us:9.0} µs   × {:.1}", us / base);
    }
    if let Some(project) = set(12, 1) {
        on_paper(&project);
    }
}

/// What is drawn of twelve boxes and their holder: all steps, all pages of patterns, and the handout.
fn on_paper(project: &Project) {
    let file = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/style/font/papers.ttf")).unwrap_or_default();
    let Ok(font) = Font::read(file) else { return };
    let plan = plan(project, System::Inch);
    let steps = median_us(|| {
        let drawn = plan.steps.iter().filter_map(|s| step(s, &plan, &|_| Tint::default()));
        black_box(drawn.map(|d| paint(&d)).collect::<Vec<_>>());
    });
    println!("{:>20}: {steps:9.0} µs, {} steps", "drawings", plan.steps.len());
    let pages_us = median_us(|| {
        let all = patterns(&plan, project.sets);
        let (sheets, _) = pages(&all, Paper::A4, "", &font);
        black_box(pdf(&project.name, &all, &sheets, &font));
    });
    let count = pages(&patterns(&plan, project.sets), Paper::A4, "", &font).0.len();
    println!("{:>20}: {pages_us:9.0} µs, {count} pages", "pattern pages");
    let one = taught(project, System::Inch, Pace::default()).one;
    let plans = [&one];
    let make = || {
        handout(&Handout {
            project,
            plans: &plans,
            ready: project.class.ready,
            link: None,
            size: Paper::A4.size(),
            spelling: Spelling::Uk,
            hand: Hand::Right,
            font: &font,
        })
    };
    let set_us = median_us(|| drop(black_box(make())));
    let set = make();
    println!("{:>20}: {set_us:9.0} µs, {} pages", "handout", set.len());
    let file_us = median_us(|| drop(black_box(print(&project.name, &set, &font))));
    println!("{:>20}: {file_us:9.0} µs, {} bytes", "its file", print(&project.name, &set, &font).len());
}
