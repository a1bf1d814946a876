//! A drawing for each step: just what it speaks of.

use super::dimension;
use super::drawing::{Drawing, Fill, Ink, Mark, Meaning};
use super::flat::{Look, flat, pattern, unnamed};
use super::folded::{Dress, folded, joined, set};
use super::geometry::{block, corners, middle, spot};
use super::marks::marked;
use super::sheet::{Cutting, sheet};
use super::solid::View;
use crate::assembly::moves::{MoveName, Way};
use crate::cut::order::order;
use crate::make::extras::Made;
use crate::make::part::Planned;
use crate::make::pieces::{Becomes, Piece};
use crate::make::step::{Action, Step};
use crate::measure::length::Length;
use crate::net::flat::{Net, Taken};
use crate::net::recipe::{CutLine, Recipe, Scores, TakeOff, Turned};
use crate::plan::Plan;
use crate::project::request::Tint;
use crate::say::pictures;

/// The drawing of `step`; `tint` gives a card's colour.
#[must_use]
pub fn step(step: &Step, plan: &Plan, tint: &dyn Fn(u16) -> Tint) -> Option<Drawing> {
    match &step.action {
        Action::CutSheets { card, pattern } => one_sheet(plan, *card, *pattern, tint),
        Action::MakeOne | Action::Fill => Some(set(&plan.boxes, plan.holder.as_ref(), tint, 1.0, View::default())),
        Action::SlideIn => Some(set(&plan.boxes, plan.holder.as_ref(), tint, 0.45, View::default())),
        Action::TryBoxesIn { .. } => Some(set(&plan.boxes, plan.holder.as_ref(), tint, 0.0, View::default())),
        action => {
            let planned = plan.part(step.place)?;
            let look = Look {
                card: tint(planned.card),
                mats: planned.mat_card.map_or_else(Tint::default, tint),
                chosen: None,
                system: plan.system,
            };
            match step.half {
                Some(nth) => on_part(action, plan, &planned.half(step.part, nth)?, 0, look),
                None => on_part(action, plan, planned, step.part, look),
            }
        }
    }
}

fn one_sheet(plan: &Plan, card: u16, pattern: usize, tint: &dyn Fn(u16) -> Tint) -> Option<Drawing> {
    let sheets = plan.sheets.iter().find(|s| s.job.card == card)?;
    let pattern = sheets.layout.patterns.get(pattern)?;
    let letter = |id: u32| plan.pieces.iter().find(|p| p.id == id).map_or(String::new(), Piece::letter);
    let bare = sheets.sheet(pattern.sheet)?;
    let cuts = order(pattern, bare);
    let system = plan.system;
    Some(sheet(&Cutting { sheet: bare, pattern, cuts: &cuts, tint: tint(card), system, letter: &letter }))
}

fn on_part(action: &Action, plan: &Plan, planned: &Planned, part: usize, look: Look) -> Option<Drawing> {
    let shape = planned.assembly.as_ref()?.parts.get(part)?;
    let recipe = planned.recipes.get(part)?;
    let net = &shape.net;
    match action {
        Action::Score(scores) => Some(scored(recipe, scores, look)),
        Action::Mark(marks) | Action::ScoreMarks(marks) | Action::CutMarks(marks) => {
            Some(marked(net, recipe, marks, action, look))
        }
        Action::Cut(cuts) => Some(cut(net, recipe, cuts, pictures::CUTS, look)),
        Action::ScoreShort(cuts) => Some(cut(net, recipe, cuts, pictures::SHORT_SCORES, look)),
        Action::TakeCells(_) => Some(cells(net, look)),
        Action::TakeOff(off) => Some(take_off(&unmatted(planned), part, net, off, look)),
        Action::Notch(off) => Some(take_off(planned, part, net, &[*off], look)),
        Action::FoldAndBurnish | Action::GlueJoint => flat(&unmatted(planned), part, look),
        Action::Punch(_) => flat(planned, part, look),
        Action::GlueMats(ids) => Some(letters(plan, planned, part, net, ids, look)),
        Action::Join(join) => {
            Some(joined(planned, join, &Dress { card: look.card, mats: look.mats, chosen: Vec::new() }))
        }
        Action::Fold { index, .. } => {
            let moved = shape.moves.get(*index)?;
            let chosen = match &moved.way {
                Way::Even(all) | Way::EndOnly { creases: all, .. } | Way::Sprung { closing: all, .. } => {
                    all.iter().filter_map(|c| net.creases.get(c.0)).map(|c| c.far).collect()
                }
                Way::TuckIn { lid, .. } => net.creases.get(lid.0).map(|c| c.far).into_iter().collect(),
            };
            let dress = Dress { card: look.card, mats: look.mats, chosen };
            // Nearly at its end: so both where it comes from and where it goes can be seen.
            let shown = if matches!(moved.way, Way::EndOnly { .. }) { 1.0 } else { 0.82 };
            let mut d = folded(planned, part, *index as f64 + shown, &dress, view(moved.name))?;
            d.fit(4.0);
            Some(d)
        }
        Action::Extra { made: Made::Tag { sides, .. } | Made::Liner { sides, .. }, pieces } => {
            Some(piece(plan, pieces, *sides, look))
        }
        Action::Extra { .. } => flat(planned, part, look),
        Action::Straps(ids) => strap(plan, planned, ids, look),
        Action::CutSheets { .. }
        | Action::CutPieces { .. }
        | Action::TryBoxesIn { .. }
        | Action::MakeOne
        | Action::Fill
        | Action::Own(_)
        | Action::SlideIn => None,
    }
}

/// As it is before its mats are on.
fn unmatted(planned: &Planned) -> Planned {
    Planned { mats: Vec::new(), ..planned.clone() }
}

/// What happens at the base is seen from below, from the side that it comes from.
fn view(name: MoveName) -> View {
    let usual = View::default();
    match name {
        MoveName::BaseInner | MoveName::BaseSides | MoveName::BaseHalves => {
            View { turn: usual.turn + 180.0, tilt: -38.0 }
        }
        MoveName::BaseOuter | MoveName::BaseOver => View { tilt: -38.0, ..usual },
        _ => usual,
    }
}

/// The pattern with each mat under the letter of its piece.
fn letters(plan: &Plan, planned: &Planned, part: usize, net: &Net, ids: &[u32], look: Look) -> Drawing {
    let (w, h) = (net.blank.width().as_mm(), net.blank.height().as_mm());
    let mut d = Drawing { title: pictures::LETTERS.to_owned(), lettering: w.max(h) / 14.0, ..Drawing::default() };
    unnamed(&mut d, planned, part, look);
    for piece in plan.pieces.iter().filter(|p| ids.contains(&p.id)) {
        let Becomes::Mat(part, panels) = &piece.becomes else {
            continue;
        };
        for mat in planned.mats_on(*part).filter(|m| panels.contains(&m.panel)) {
            let (at, wide, high) = middle(&corners(&mat.rect.outline()));
            let size = (wide.min(high) / d.lettering * 0.8).min(1.0);
            d.label(at, piece.letter(), Ink::Card(look.mats));
            if let Some(Mark::Label(label)) = d.marks.last_mut() {
                label.size = size;
            }
        }
    }
    d.fit(w.max(h) / 40.0);
    d
}

/// A piece by itself.
fn piece(plan: &Plan, ids: &[u32], sides: [Length; 2], look: Look) -> Drawing {
    let [w, h] = sides.map(Length::as_mm);
    let mut d = Drawing { title: pictures::PIECE.to_owned(), lettering: w.max(h) / 12.0, ..Drawing::default() };
    let card = Ink::Card(look.mats);
    d.area(block([0.0, 0.0], [w, h]), Fill::Card(look.mats, 0.0));
    d.ring(Meaning::Cut, card, block([0.0, 0.0], [w, h]));
    let letter = plan.pieces.iter().find(|p| ids.contains(&p.id)).map_or(String::new(), Piece::letter);
    d.label([w / 2.0, h / 2.0], letter, card);
    d.fit(w.max(h) / 12.0);
    d
}

/// A strap with the folds that turn it onto front and back, and the measures from its ends.
fn strap(plan: &Plan, planned: &Planned, ids: &[u32], look: Look) -> Option<Drawing> {
    let piece = plan.pieces.iter().find(|p| ids.contains(&p.id))?;
    let turn = (piece.width - planned.outside.depth).half();
    let (w, h) = (piece.width.as_mm(), piece.height.as_mm());
    let mut d = Drawing { title: pictures::STRAP.to_owned(), lettering: w / 18.0, ..Drawing::default() };
    let card = Ink::Card(look.mats);
    d.area(block([0.0, 0.0], [w, h]), Fill::Card(look.mats, 0.0));
    d.ring(Meaning::Cut, card, block([0.0, 0.0], [w, h]));
    for x in [turn.as_mm(), w - turn.as_mm()] {
        d.line(Meaning::Mountain, card, vec![[x, 0.0], [x, h]]);
    }
    d.label([w / 2.0, h / 2.0], piece.letter(), card);
    d.fit(w / 12.0);
    Some(d)
}

/// The blank with room for its measures.
pub fn canvas(recipe: &Recipe, title: &str, look: Look) -> Drawing {
    let (w, h) = (recipe.width.as_mm(), recipe.height.as_mm());
    let mut d = Drawing { title: title.to_owned(), lettering: w.max(h) / 24.0, ..Drawing::default() };
    d.area(block([0.0, 0.0], [w, h]), Fill::Card(look.card, 0.0));
    d.ring(Meaning::Edge, Ink::Card(look.card), block([0.0, 0.0], [w, h]));
    let room = d.lettering * 3.4;
    d.frame([-room, -room], [w + d.lettering, h + d.lettering]);
    d
}

/// The blank as it lies at the fence, with the scores that are made now.
fn scored(recipe: &Recipe, scores: &Scores, look: Look) -> Drawing {
    let (whole, along) = match scores.turned {
        Turned::AsItLies => (recipe.width.as_mm(), recipe.height.as_mm()),
        Turned::Quarter => (recipe.height.as_mm(), recipe.width.as_mm()),
    };
    let mut d =
        Drawing { title: pictures::SCORES.to_owned(), lettering: whole.max(along) / 24.0, ..Drawing::default() };
    let card = Ink::Card(look.card);
    d.area(block([0.0, 0.0], [whole, along]), Fill::Card(look.card, 0.0));
    d.ring(Meaning::Edge, card, block([0.0, 0.0], [whole, along]));
    // The fence at the left.
    let thick = d.lettering * 0.7;
    d.area(block([-thick, -thick], [0.0, along + thick]), Fill::Tool);
    d.ring(Meaning::Edge, Ink::Page, block([-thick, -thick], [0.0, along + thick]));
    if scores.turned == Turned::Quarter {
        // A quarter to the left: what lay at the left now lies below; the first scores run across.
        for at in &recipe.scores[0].at {
            let y = along - at.as_mm();
            d.line(Meaning::Mountain, card, vec![[0.0, y], [whole, y]]);
        }
    }
    for at in &scores.at {
        d.line(Meaning::Now, card, vec![[at.as_mm(), 0.0], [at.as_mm(), along]]);
    }
    dimension::along_top(&mut d, scores, look.system);
    let room = d.lettering * 3.4;
    d.frame([-room, -room], [whole + d.lettering, along + d.lettering]);
    d
}

fn cut(net: &Net, recipe: &Recipe, cuts: &[CutLine], title: &str, look: Look) -> Drawing {
    let mut d = canvas(recipe, title, look);
    let card = Ink::Card(look.card);
    folds(&mut d, net, look);
    for c in cuts {
        let (at, from, to) = (c.at.as_mm(), c.from.as_mm(), c.to.as_mm());
        let ends = match c.measured {
            Turned::AsItLies => vec![[at, from], [at, to]],
            Turned::Quarter => vec![[from, at], [to, at]],
        };
        d.line(Meaning::Now, card, ends);
    }
    dimension::along_top(&mut d, &recipe.scores[0], look.system);
    dimension::along_left(&mut d, &recipe.scores[1], look.system);
    d
}

fn folds(d: &mut Drawing, net: &Net, look: Look) {
    for crease in net.folds() {
        d.line(Meaning::Mountain, Ink::Card(look.card), crease.run().map(spot).collect());
    }
}

fn cells(net: &Net, look: Look) -> Drawing {
    let recipe = Recipe::of(net);
    let mut d = canvas(&recipe, pictures::TAKEN, look);
    folds(&mut d, net, look);
    for waste in net.waste.iter().filter(|w| w.taken == Taken::Cell) {
        let shape = corners(&waste.outline);
        d.area(shape.clone(), Fill::Waste);
        if let [a, b, c, e] = shape.as_slice() {
            d.line(Meaning::Cut, Ink::Page, vec![*a, *c]);
            d.line(Meaning::Cut, Ink::Page, vec![*b, *e]);
        }
        d.ring(Meaning::Edge, Ink::Page, shape);
    }
    d
}

/// The pattern, with what is taken off now drawn heaviest.
fn take_off(planned: &Planned, part: usize, net: &Net, off: &[TakeOff], look: Look) -> Drawing {
    let (w, h) = (net.blank.width().as_mm(), net.blank.height().as_mm());
    let mut d = Drawing { title: pictures::TRIMMED.to_owned(), lettering: w.max(h) / 28.0, ..Drawing::default() };
    pattern(&mut d, planned, part, look);
    for waste in &net.waste {
        let mine = |o: &TakeOff| Some(o.panel) == waste.from && o.taken == waste.taken;
        if off.iter().any(mine) {
            d.ring(Meaning::Now, Ink::Page, corners(&waste.outline));
        }
    }
    let edge = d.lettering;
    d.frame([-edge, -edge], [w + edge, h + edge]);
    d
}
