//! A link on paper: the code is read back by a decoder that others wrote.
#![cfg(not(target_arch = "wasm32"))]

use snugfold::draw::code::{Spare, code};
use snugfold::draw::drawing::{Drawing, Fill, Mark};
use snugfold::keep::link;
use snugfold::project::example::example;
use snugfold::project::request::Tint;

const DARK: Tint = Tint(0);

/// The drawing at `per_mm` pixels a millimetre, grey where a pixel is partly covered, from 0 (dark) to 255.
fn picture(d: &Drawing, per_mm: f64) -> (usize, Vec<f64>) {
    const FINE: usize = 4;
    let side = ((d.max[0] - d.min[0]) * per_mm).ceil() as usize;
    let dark: Vec<_> = d
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Area(a) if a.fill == Fill::Card(DARK, 0.0) => Some((a.corners[0], a.corners[2])),
            _ => None,
        })
        .collect();
    let mut fine = vec![255.0; side * FINE * side * FINE];
    for (low, high) in dark {
        let at = |mm: f64| ((mm - d.min[0]) * per_mm * FINE as f64).round() as usize;
        for y in at(low[1])..at(high[1]) {
            for x in at(low[0])..at(high[0]) {
                fine[y * side * FINE + x] = 0.0;
            }
        }
    }
    let mean = |x: usize, y: usize| {
        let all = (0..FINE * FINE).map(|i| fine[(y * FINE + i / FINE) * side * FINE + x * FINE + i % FINE]);
        all.sum::<f64>() / (FINE * FINE) as f64
    };
    (side, (0..side * side).map(|i| mean(i % side, i / side)).collect())
}

fn blurred(side: usize, grey: &[f64]) -> Vec<f64> {
    let at = |x: i64, y: i64| {
        let hold = |v: i64| v.clamp(0, side as i64 - 1) as usize;
        grey[hold(y) * side + hold(x)]
    };
    // One, two, one each way: what a lens that is a little out of focus does.
    let weigh = |i: i64| if i == 1 { 2.0 } else { 1.0 };
    let mean = |x: i64, y: i64| {
        let near = (0..9).map(|i| weigh(i % 3) * weigh(i / 3) * at(x + i % 3 - 1, y + i / 3 - 1));
        near.sum::<f64>() / 16.0
    };
    (0..side * side).map(|i| mean((i % side) as i64, (i / side) as i64)).collect()
}

/// What an independent decoder, the crate `rxing`, reads.
fn read(side: usize, grey: &[f64]) -> Option<String> {
    let (dots, side) = (grey.iter().map(|dot| *dot as u8).collect(), u32::try_from(side).ok()?);
    let found = rxing::helpers::detect_in_luma(dots, side, side, Some(rxing::BarcodeFormat::QR_CODE));
    found.ok().map(|code| code.getText().to_owned())
}

#[test]
fn the_example_is_read_from_paper_and_from_a_blurred_picture() {
    let fragment = link::write(&example().expect("there is one")).expect("it is short");
    let text = format!("https://example.org/snugfold/#{fragment}");
    let drawing = code(&text, "", Spare::Seventh).expect("it is short");
    // Squares of 0.8 mm (the code is then about 6 cm wide) at 150 dots an inch.
    let (side, grey) = picture(&drawing, 0.8 * 150.0 / 25.4);
    assert_eq!(read(side, &grey).as_deref(), Some(text.as_str()));
    assert_eq!(read(side, &blurred(side, &grey)).as_deref(), Some(text.as_str()));
}

#[test]
fn too_long_a_text_is_no_code() {
    assert!(code(&"x".repeat(2_000), "", Spare::Seventh).is_some());
    assert!(code(&"x".repeat(3_000), "", Spare::Seventh).is_none());
}
