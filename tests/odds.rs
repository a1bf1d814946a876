//! How sure a fit is: published stack-ups, the table of the normal distribution, and chains thrown out by dice.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::dice::Dice;
use snugfold::fit::odds::{Chain, Kind, Link, On, below};
use snugfold::measure::length::Length;

fn link(times: u32, tolerance: Length) -> Link {
    Link { kind: Kind::Score, on: On::Inner, times, tolerance }
}

/// Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, from memory, to six places.
#[test]
fn the_normal_distribution_is_the_handbooks() {
    let table = [(0.0, 0.5), (0.5, 0.691_462), (1.0, 0.841_345), (2.0, 0.977_250), (3.0, 0.998_650)];
    for (z, expected) in table {
        assert!((below(z) - expected).abs() < 6e-7, "{z}: {}", below(z));
        assert!((below(-z) - (1.0 - expected)).abs() < 6e-7, "-{z}: {}", below(-z));
    }
}

/// The rows of one published example: term, nominal and plus-minus in mm, sense.
fn published(example: &str) -> Vec<(String, f64, f64, String)> {
    let text = include_str!("data/stackup.csv");
    let rows = text.lines().filter(|l| l.split(',').next() == Some(example));
    rows.map(|l| {
        let f: Vec<&str> = l.split(',').collect();
        (f[1].to_owned(), f[2].parse().unwrap_or(0.0), f[3].parse().unwrap_or(0.0), f[4].to_owned())
    })
    .collect()
}

/// The chain of an example's terms, and what is published of the whole: (row, nominal, plus-minus).
fn chained(example: &str) -> (Chain, Vec<(String, f64, f64)>) {
    let (terms, whole): (Vec<_>, Vec<_>) = published(example).into_iter().partition(|r| r.3 != "=");
    let signed = |r: &(String, f64, f64, String)| Length::round_mm(if r.3 == "-" { -r.1 } else { r.1 });
    let chain = Chain {
        gap: terms.iter().map(signed).sum(),
        links: terms.iter().map(|r| link(1, Length::round_mm(r.2))).collect(),
    };
    (chain, whole.into_iter().map(|(term, nominal, pm, _)| (term, nominal, pm)).collect())
}

#[test]
fn published_stack_ups_come_out() {
    let mut checked = 0;
    for example in ["ring_gap_mm", "housing"] {
        let (chain, whole) = chained(example);
        for (term, nominal, pm) in whole {
            // The printed figures are rounded to their last place.
            let close = |is: Length, to: f64, within: f64| {
                assert!((is.as_mm() - to).abs() <= within, "{example}, {term}: {is:?} is not {to}");
            };
            if term.starts_with("gap") {
                close(chain.gap, nominal, 1e-9);
            }
            if term.contains("worst case") {
                close(chain.worst(), pm, 1e-9);
            } else if term.starts_with("stack root sum square") {
                // The parts without the housing that they go into.
                let parts = Chain { links: chain.links[..3].to_vec(), ..chain.clone() };
                close(parts.spread(), pm, 6e-6);
            } else if term.contains("root sum square") {
                close(chain.spread(), pm, if example == "housing" { 6e-6 } else { 6e-5 });
            } else {
                continue;
            }
            checked += 1;
        }
    }
    assert_eq!(checked, 5, "all published results are checked");
    let (_, _, each, note) = published("ten_equal").remove(0);
    assert!(note.is_empty() && include_str!("data/stackup.csv").contains("worst case 1.0, root sum square 0.316"));
    let ten = Chain { links: vec![link(10, Length::round_mm(each))], gap: Length::ZERO };
    assert_eq!((ten.worst(), ten.spread().as_um()), (Length::mm(1), 316));
}

/// A throw of a normal distribution (Box and Muller 1958), of which ± `two` is two standard deviations.
pub fn thrown(dice: &mut Dice, two: f64) -> f64 {
    let mut even = || ((dice.bits() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64;
    let (u, v) = (even(), even());
    two / 2.0 * (-2.0 * libm::log(u)).sqrt() * libm::cos(std::f64::consts::TAU * v)
}

#[test]
fn the_chance_is_what_dice_throw() {
    const THROWS: u32 = 200_000;
    let mut dice = Dice(20);
    for gap in [-500, 0, 400, 800, 1_200, 1_600] {
        let links = vec![link(6, Length::um(400)), link(2, Length::um(500)), link(1, Length::um(300))];
        let chain = Chain { links, gap: Length::um(gap) };
        let mut free = 0_u32;
        for _ in 0..THROWS {
            let mut left = chain.gap.as_mm();
            for l in &chain.links {
                for _ in 0..l.times {
                    left += thrown(&mut dice, l.tolerance.as_mm());
                }
            }
            free += u32::from(left > 0.0);
        }
        let share = f64::from(free) / f64::from(THROWS);
        assert!((share - chain.chance()).abs() < 0.005, "{gap}: {share} thrown, {} said", chain.chance());
    }
}

#[test]
fn without_errors_it_fits_or_it_does_not() {
    let bare = |um| Chain { links: Vec::new(), gap: Length::um(um) };
    assert_eq!([-1, 0, 1].map(|um| bare(um).chance()), [0.0, 0.0, 1.0]);
    assert_eq!(bare(0).tightest(), None);
}
