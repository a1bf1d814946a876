//! Whether a base carries what stands on it, and walls a like box on top: rules of thumb, no more.
//!
//! The base. One layer of card, held up by the walls along its edges and free to tilt there, carries the gifts as an
//! even load. It sags by α · q · a⁴ ÷ D with a the shorter side, q the load on each area, and D = E · t³ ÷ (12 · (1 − ν²))
//! (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8; from memory). E is taken as 2 GPa, between
//! along and across the grain, and ν as 0.3 (both from memory). Most bases have two layers, and gifts are stiff
//! themselves: the true sag is less. Damp card and gifts with narrow feet are not in it.
//!
//! The walls. Each of the four is a plate held along its edges and free to tilt there, pressed from above; it buckles
//! under k · π² · D ÷ b with b its width, and k = 4, or (b ÷ h + h ÷ b)² where its height h is less than b (Timoshenko and
//! Gere, Theory of Elastic Stability, chapter 9; from memory). A third of that is taken, since card creeps and walls bow
//! (common practice, no source).

use crate::assembly::parts::Size;
use crate::measure::length::Length;

/// Sags that are seen and felt (common practice, no source).
pub const SEEN: Length = Length::mm(3);
/// Newtons for each kilogram.
const G: f64 = 9.81;
/// Of card, in pascals.
const E: f64 = 2e9;
/// Poisson's ratio of card.
const NU: f64 = 0.3;
/// Longer by shorter side, and α.
const ALPHA: [(f64, f64); 6] =
    [(1.0, 0.004_06), (1.2, 0.005_64), (1.5, 0.007_72), (2.0, 0.010_13), (3.0, 0.012_23), (5.0, 0.012_97)];

/// How far a base of these sides sags under so many grams.
///
/// ```
/// use snugfold::{fit::strength::sag, measure::length::Length};
/// // 100 g on 50 × 50 mm, 0.3 mm thick: D = 2e9 · 0.0003³ ÷ 10.92 = 0.00495 N m; q = 0.981 ÷ 0.0025 = 392 Pa;
/// // 0.00406 · 392 · 0.05⁴ ÷ 0.00495 = 0.0020 m.
/// assert_eq!(sag([Length::mm(50), Length::mm(50)], Length::um(300), 100).as_um(), 2_014);
/// ```
#[must_use]
pub fn sag(base: [Length; 2], thickness: Length, grams: u32) -> Length {
    let [a, b] = [base[0].min(base[1]), base[0].max(base[1])].map(|l| l.as_mm() / 1_000.0);
    let t = thickness.as_mm() / 1_000.0;
    if a <= 0.0 || t <= 0.0 {
        return Length::ZERO;
    }
    let load = f64::from(grams) / 1_000.0 * G / (a * b);
    let stiff = E * t * t * t / (12.0 * (1.0 - NU * NU));
    Length::round_mm((alpha(b / a) * load * a * a * a * a / stiff * 1_000.0).min(1_000.0))
}

/// How many grams the walls of a box of this inside carry on top before they buckle.
///
/// ```
/// use snugfold::{fit::strength::carries, assembly::parts::Size, measure::length::Length};
/// // 80 × 80 × 120 mm, 0.3 mm thick: D = 0.00495 N m; 4 · 9.87 · 0.00495 ÷ 0.08 = 2.44 N a wall, four of them 9.77 N, a
/// // third of that 3.26 N: 332 g.
/// let side = Length::mm(80);
/// assert_eq!(carries(Size { width: side, depth: side, height: Length::mm(120) }, Length::um(300)), 331);
/// ```
#[must_use]
pub fn carries(inside: Size, thickness: Length) -> u32 {
    let [w, d, h] = [inside.width, inside.depth, inside.height].map(|l| l.as_mm() / 1_000.0);
    if [w, d, h].iter().any(|l| *l <= 0.0) {
        return u32::MAX;
    }
    let t = thickness.as_mm() / 1_000.0;
    let stiff = E * t * t * t / (12.0 * (1.0 - NU * NU));
    let wall = |b: f64| {
        let k = if h < b { (b / h + h / b) * (b / h + h / b) } else { 4.0 };
        k * std::f64::consts::PI * std::f64::consts::PI * stiff / b
    };
    let newtons = 2.0 * (wall(w) + wall(d)) / 3.0;
    (newtons / G * 1_000.0) as u32
}

/// Between two rows of the table in a straight line; beyond its end as at its end.
fn alpha(ratio: f64) -> f64 {
    let at = |w: &[(f64, f64)]| {
        let ((r0, a0), (r1, a1)) = (w[0], w[1]);
        (ratio <= r1).then(|| a0 + (a1 - a0) * (ratio - r0) / (r1 - r0))
    };
    ALPHA.windows(2).find_map(at).unwrap_or(ALPHA[ALPHA.len() - 1].1)
}
