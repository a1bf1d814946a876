//! From progress through the moves to how far each crease is bent.

use crate::form::assembly::Part;
use crate::form::moves::Way;
use crate::net::flat::CreaseId;

use super::pose::Bend;
use super::tuck;

/// The bends of every crease of `part` after `progress` moves: 0 is flat, 1.5 is halfway through the second move.
#[must_use]
pub fn bends(part: &Part, progress: f64) -> Vec<Bend> {
    let mut bends = vec![Bend::default(); part.net.creases.len()];
    for (i, m) in part.moves.iter().enumerate() {
        let done = (progress - i as f64).clamp(0.0, 1.0);
        if done <= 0.0 {
            break;
        }
        match &m.way {
            Way::Even(creases) => {
                for c in creases {
                    if let (Some(bend), Some(crease)) = (bends.get_mut(c.0), part.net.creases.get(c.0)) {
                        *bend = Bend { degrees: crease.fold.as_degrees() * done, settled: done };
                    }
                }
            }
            Way::EndOnly { creases, .. } if done >= 1.0 => {
                for c in creases {
                    if let (Some(bend), Some(crease)) = (bends.get_mut(c.0), part.net.creases.get(c.0)) {
                        *bend = Bend { degrees: crease.fold.as_degrees(), settled: 1.0 };
                    }
                }
            }
            Way::EndOnly { .. } => {}
            Way::SideTucks { lid, tucks, over } => {
                // In three parts: tucks in, lid down, tucks back.
                let third = |nth: f64| (done * 3.0 - nth).clamp(0.0, 1.0);
                let mut bend = |c: CreaseId, by: &dyn Fn(f64) -> f64| {
                    if let (Some(bend), Some(crease)) = (bends.get_mut(c.0), part.net.creases.get(c.0)) {
                        *bend = Bend { degrees: by(crease.fold.as_degrees()), settled: done };
                    }
                };
                bend(*lid, &|fold| fold * third(1.0));
                for &tuck in tucks {
                    bend(tuck, &|fold| (fold + over.as_degrees()) * third(0.0) - over.as_degrees() * third(2.0));
                }
            }
            Way::TuckIn { lid, tuck, .. } => {
                let passage = tuck::Passage::of(&part.net, *tuck);
                let (lid_bend, tuck_bend) = passage.at(done);
                for (c, degrees) in [(lid, lid_bend), (tuck, tuck_bend)] {
                    if let Some(bend) = bends.get_mut(c.0) {
                        *bend = Bend { degrees, settled: done };
                    }
                }
            }
        }
    }
    bends
}

/// All moves made.
#[must_use]
pub fn folded(part: &Part) -> Vec<Bend> {
    bends(part, part.moves.len() as f64)
}
