//! From progress through the moves to how far each crease is bent.

use crate::assembly::moves::Way;
use crate::assembly::parts::Part;
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
        // Creases by a rule from where they end to where they are now.
        let mut bend = |creases: &[CreaseId], by: &dyn Fn(f64) -> f64| {
            for c in creases {
                if let (Some(bend), Some(crease)) = (bends.get_mut(c.0), part.net.creases.get(c.0)) {
                    *bend = Bend { degrees: by(crease.fold.as_degrees()), settled: done };
                }
            }
        };
        match &m.way {
            Way::Even(creases) => bend(creases, &|fold| fold * done),
            Way::EndOnly { creases, .. } if done >= 1.0 => bend(creases, &|fold| fold),
            Way::EndOnly { .. } => {}
            Way::Sprung { closing, tucks, over } => {
                // In three parts: tucks in, the rest closed, tucks back.
                let third = |nth: f64| (done * 3.0 - nth).clamp(0.0, 1.0);
                let over = over.as_degrees();
                bend(closing, &|fold| fold * third(1.0));
                bend(tucks, &|fold| (fold + over) * third(0.0) - over * third(2.0));
            }
            Way::TuckIn { lid, tuck, .. } => {
                let (lid_bend, tuck_bend) = tuck::Passage::of(&part.net, *tuck).at(done);
                bend(&[*lid], &|_| lid_bend);
                bend(&[*tuck], &|_| tuck_bend);
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
