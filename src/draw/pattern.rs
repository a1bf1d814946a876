//! Patterns: each blank at true scale, to be printed and traced, or cut by a machine.

use super::drawing::{Drawing, Spot};
use super::flat::{Look, pattern};
use crate::assembly::parts::Assembly;
use crate::make::part::Planned;
use crate::plan::Plan;
use crate::project::request::Tint;
use crate::say::finding::short;
use crate::say::names;

/// One blank at true scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// What it is called.
    pub name: String,
    /// How often it is cut, for all sets.
    pub times: u64,
    /// The pattern in millimetres, from its blank's upper left corner.
    pub drawing: Drawing,
}

/// Height of the lettering in millimetres: as in a book for young readers.
const LETTERING: f64 = 4.2;

/// What is shown round the blank, so that its edges are whole.
const EDGE: f64 = 1.0;

/// The patterns of all parts, in the order of the set.
#[must_use]
pub fn patterns(plan: &Plan, sets: u32) -> Vec<Pattern> {
    let mut all = Vec::new();
    for planned in plan.parts() {
        let Some(assembly) = &planned.assembly else { continue };
        for (nth, part) in assembly.parts.iter().enumerate() {
            let times = u64::from(sets) * u64::from(planned.count) * u64::from(planned.alike(nth));
            let mut name = short(&planned.name);
            if assembly.parts.len() > 1 {
                name = format!("{name}: {}", part.name);
            }
            if planned.joined(nth).is_some() {
                let halves = (0..2).filter_map(|h| Some((h, planned.half(nth, h)?)));
                all.extend(halves.map(|(h, half)| one(plan, &half, 0, format!("{name}, {}", names::half(h)), times)));
            } else {
                all.push(one(plan, planned, nth, name, times));
            }
        }
    }
    all
}

fn one(plan: &Plan, planned: &Planned, part: usize, name: String, times: u64) -> Pattern {
    let paper = Tint(0xff_ff_ff);
    let look = Look { card: paper, mats: paper, chosen: None, system: plan.system };
    let mut drawing = Drawing { title: name.clone(), lettering: LETTERING, ..Drawing::default() };
    pattern(&mut drawing, planned, part, look);
    let [w, h] = size(planned.assembly.as_ref(), part);
    drawing.frame([-EDGE, -EDGE], [w + EDGE, h + EDGE]);
    Pattern { name, times, drawing }
}

fn size(assembly: Option<&Assembly>, part: usize) -> Spot {
    let blank = assembly.and_then(|a| a.parts.get(part)).map(|p| p.net.blank);
    blank.map_or([0.0, 0.0], |b| [b.width().as_mm(), b.height().as_mm()])
}
