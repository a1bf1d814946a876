//! What follows from folding: what panels do, which face takes the glue, and which layer lies over which.

use super::build::{Built, duty};
use super::drawn::Drawn;
use super::met::{Contact, Folded};
use crate::net::flat::{Duty, Face, PanelId};

/// How much of a panel lies on another one where layers count.
const COUNTS: f64 = 0.3;
/// Nearly upright or level: the cosine of what is missing.
const SQUARE: f64 = 0.99;

/// Gives panels what was left to be found. `turn` says in which move each panel folds.
pub fn settle(drawn: &Drawn, built: &mut Built, folded: &Folded, turn: &[usize]) {
    let said = |p: PanelId| built.pieces.get(p.0).and_then(|piece| drawn.cell(piece.at));
    let all: Vec<PanelId> = (0..built.net.panels.len()).map(PanelId).collect();
    let low = all.iter().map(|p| folded.pose.point(*p, built.net.panel(*p).middle()).z).fold(f64::INFINITY, f64::min);
    let duties: Vec<Duty> = all
        .iter()
        .map(|&p| {
            let given = said(p).and_then(duty);
            let level = folded.pose.out(p).z.abs() > SQUARE;
            let lowest = folded.pose.point(p, built.net.panel(p).middle()).z < low + 1.0;
            given.unwrap_or(match (level, lowest) {
                (true, true) => Duty::Floor,
                (true, false) => Duty::Lid,
                _ => Duty::Wall,
            })
        })
        .collect();
    let levels: Vec<Option<i8>> = all.iter().map(|p| said(*p).and_then(|c| c.level)).collect();
    for (panel, duty) in built.net.panels.iter_mut().zip(duties) {
        panel.duty = duty;
    }
    let layers: Vec<Contact> = folded.layers(&built.net).into_iter().filter(|c| c.share > COUNTS).collect();
    level(built, &layers, &levels, turn);
    faces(drawn, built, &layers);
}

/// Tabs and tucks lie inside what they lie on; of others, what folds later lies outside.
fn level(built: &mut Built, layers: &[Contact], given: &[Option<i8>], turn: &[usize]) {
    let inner = |p: PanelId| matches!(built.net.panel(p).duty, Duty::Tab | Duty::Tuck);
    let when = |p: PanelId| turn.get(p.0).copied().unwrap_or_default();
    let mut order: Vec<PanelId> = (0..given.len()).map(PanelId).collect();
    order.sort_by_key(|p| (inner(*p), when(*p), p.0));
    let mut level: Vec<i8> = vec![0; given.len()];
    let mut done = vec![false; given.len()];
    for p in order {
        let along = |c: &Contact, q: PanelId| if c.same { level[q.0] } else { -level[q.0] };
        let under = layers.iter().filter_map(|c| match (c.on == p, c.onto == p) {
            (true, _) if done[c.onto.0] => Some(along(c, c.onto)),
            (_, true) if done[c.on.0] => Some(along(c, c.on)),
            _ => None,
        });
        level[p.0] = given[p.0].unwrap_or_else(|| {
            if inner(p) {
                // Inside of what it lies on, whichever way that looks.
                let onto = layers.iter().filter(|c| c.on == p && done[c.onto.0] && !inner(c.onto));
                let inside = onto.map(|c| {
                    if c.same { level[c.onto.0].saturating_sub(2) } else { -level[c.onto.0].saturating_sub(2) }
                });
                inside.reduce(|a, b| if a.abs() > b.abs() { a } else { b }).unwrap_or(0)
            } else {
                under.max().map_or(0, |l| l.saturating_add(2))
            }
        });
        done[p.0] = true;
    }
    for (panel, level) in built.net.panels.iter_mut().zip(level) {
        panel.level = level.clamp(-20, 20);
    }
}

/// The face that was not said is the one that looks at what it is pressed onto.
fn faces(drawn: &Drawn, built: &mut Built, layers: &[Contact]) {
    let said: Vec<(Option<PanelId>, Option<Face>)> = drawn.glue.iter().map(|g| (built.panel(g.on), g.face)).collect();
    for glue in &mut built.net.glue {
        let face = said.iter().find(|s| s.0 == Some(glue.on)).and_then(|s| s.1);
        let Some(first) = glue.onto.first().copied() else {
            continue;
        };
        glue.face = face.unwrap_or_else(|| {
            let contact = layers.iter().find(|c| (c.on, c.onto) == (glue.on, first));
            let same = contact.is_none_or(|c| c.same);
            let (mine, its) = (built.net.panels[glue.on.0].level, built.net.panels[first.0].level);
            let its = if same { its } else { -its };
            if its >= mine { Face::Outside } else { Face::Inside }
        });
    }
}
