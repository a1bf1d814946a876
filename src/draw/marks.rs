//! Marking by hand, drawn: places by their numbers, and what is scored and cut between them.

use super::dimension;
use super::drawing::{Drawing, Ink, Mark, Meaning, Spot};
use super::flat::Look;
use super::geometry::{block, spot};
use super::step::canvas;
use crate::fold::cross::inside;
use crate::fold::pose::flat;
use crate::fold::space::V3;
use crate::make::step::Action;
use crate::net::arc::Line;
use crate::net::flat::{Net, Panel};
use crate::net::marks::Marks;
use crate::net::recipe::{Recipe, Turned};
use crate::say::pictures;

/// Places by their numbers, and what is done between them now.
#[must_use]
pub fn marked(net: &Net, recipe: &Recipe, marks: &Marks, action: &Action, look: Look) -> Drawing {
    let mut d = canvas(recipe, pictures::MARKS, look);
    let card = Ink::Card(look.card);
    for scores in &recipe.scores {
        for at in scores.at.iter().map(|at| at.as_mm()) {
            let run = match scores.turned {
                Turned::AsItLies => vec![[at, 0.0], [at, recipe.height.as_mm()]],
                Turned::Quarter => vec![[0.0, at], [recipe.width.as_mm(), at]],
            };
            d.line(Meaning::Mountain, card, run);
        }
    }
    let at = |n: usize| marks.places.get(n).map_or([0.0, 0.0], |p| spot(*p));
    let (scores, cuts) = match action {
        Action::ScoreMarks(_) => (Meaning::Now, None),
        Action::CutMarks(_) => (Meaning::Mountain, Some(Meaning::Now)),
        _ => (Meaning::Dimension, Some(Meaning::Dimension)),
    };
    for &(a, b) in &marks.scores {
        d.line(scores, card, vec![at(a), at(b)]);
    }
    for (run, meaning) in marks.cuts.iter().filter_map(|r| Some((r, cuts?))) {
        d.line(meaning, card, run.iter().map(|&n| at(n)).collect());
    }
    for arc in &net.arcs {
        let meaning = match arc.line {
            Line::Score => Some(scores),
            Line::Cut => cuts,
        };
        if let Some(meaning) = meaning {
            d.line(meaning, card, arc.run.iter().map(|p| spot(*p)).collect());
        }
    }
    let flat_corners = |p: &Panel| p.outline.corners.iter().map(|&c| flat(c)).collect();
    let outlines: Vec<Vec<V3>> = net.panels.iter().map(flat_corners).collect();
    let dot = d.lettering * 0.16;
    for (i, p) in marks.places.iter().enumerate() {
        let [x, y] = spot(*p);
        d.ring(Meaning::Now, card, block([x - dot, y - dot], [x + dot, y + dot]));
        // Off the panels, where there is room.
        let beside = |dx: f64, dy: f64| [x + dx * d.lettering * 0.7, y + dy * d.lettering * 0.7];
        let ways = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
        let (w, h) = (recipe.width.as_mm(), recipe.height.as_mm());
        let within = |at: &Spot| at[0] > 0.0 && at[0] < w && at[1] > 0.0 && at[1] < h;
        let covered = |at: &Spot| outlines.iter().any(|o| inside(o, V3::new(at[0], -at[1], 0.0)));
        let all: Vec<Spot> = ways.map(|(dx, dy)| beside(dx, dy)).into_iter().filter(within).collect();
        let place = all.iter().copied().find(|at| !covered(at)).or(all.first().copied()).unwrap_or([x, y]);
        d.label(place, (i + 1).to_string(), card);
        if let Some(Mark::Label(label)) = d.marks.last_mut() {
            label.size = 0.75;
        }
    }
    dimension::along_top(&mut d, &recipe.scores[0], look.system);
    dimension::along_left(&mut d, &recipe.scores[1], look.system);
    d
}
