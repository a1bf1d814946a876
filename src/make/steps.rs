//! The order of the making, read off the planned parts.

use crate::cut::layout::Why;
use crate::form::assembly::{Assembly, Move, MoveName, Way};
use crate::net::flat::{Net, PanelId, Taken};
use crate::net::recipe::Recipe;
use crate::project::finding::Place;

use super::part::Planned;
use super::pieces::{Becomes, Piece};
use super::sheets::CardSheets;
use super::step::{Action, Step};

/// All steps for `sets` sets: the cutting for all, then each box, then the holder, then fill and slide in.
#[must_use]
pub fn steps(
    boxes: &[Planned],
    holder: Option<&Planned>,
    pieces: &[Piece],
    sheets: &[CardSheets],
    sets: u32,
) -> Vec<Step> {
    let mut list: Vec<Step> = sheets.iter().flat_map(cutting).collect();
    for part in boxes.iter().chain(holder) {
        if let Some(assembly) = &part.assembly {
            part_steps(&mut list, part, assembly, pieces, sets);
        }
    }
    if boxes.iter().chain(holder).all(|p| p.assembly.is_none()) {
        return list;
    }
    push(&mut list, Place::Set, 0, u64::from(sets), Action::Fill);
    if boxes.iter().any(|b| b.assembly.is_some()) && holder.is_some_and(|h| h.assembly.is_some()) {
        push(&mut list, Place::Set, 0, u64::from(sets), Action::SlideIn);
    }
    list
}

/// The cutting steps of one card: each pattern once, for all the sheets that are cut so, then what the trimmer cannot.
///
/// A tick on a pattern hangs on its sheet's size, its cuts and its copies, not on its place in the layout.
#[must_use]
pub fn cutting(sheets: &CardSheets) -> Vec<Step> {
    let card = sheets.job.card;
    let mut list: Vec<Step> = Vec::new();
    for (pattern, p) in sheets.layout.patterns.iter().enumerate() {
        let size = sheets.sheet(p.sheet).map(|s| (s.width, s.height));
        let what = format!("sheets/{size:?}/{}/{:?}", p.copies, p.tree);
        // Two alike patterns, one of them from the drawer, are two steps.
        let before = list.iter().filter(|s| s.key == key(Place::Card(card), 0, &what)).count();
        let what = if before == 0 { what } else { format!("{what}/{before}") };
        let action = Action::CutSheets { card, pattern };
        list.push(Step { key: key(Place::Card(card), 0, &what), place: Place::Card(card), part: 0, times: 1, action });
    }
    let by_hand = |why| matches!(why, Why::TooThin | Why::TrimmerTooShort);
    let pieces: Vec<u32> = sheets.layout.left_out.iter().filter(|l| by_hand(l.why)).map(|l| l.piece).collect();
    if !pieces.is_empty() {
        push(&mut list, Place::Card(card), 0, 1, Action::CutPieces { card, pieces });
    }
    list
}

fn key(place: Place, part: usize, what: &str) -> String {
    format!("{:016x}", fingerprint(&format!("{place:?}/{part}/{what}")))
}

fn push(list: &mut Vec<Step>, place: Place, part: usize, times: u64, action: Action) {
    let key = key(place, part, &format!("{action:?}"));
    list.push(Step { key, place, part, times, action });
}

/// A short stable name for a step (Fowler, Noll and Vo's hash, 64 bits, variant 1a).
fn fingerprint(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |h, b| (h ^ u64::from(b)).wrapping_mul(0x0100_0000_01b3))
}

fn part_steps(list: &mut Vec<Step>, part: &Planned, assembly: &Assembly, pieces: &[Piece], sets: u32) {
    let times = u64::from(part.count) * u64::from(sets);
    let mine = |wanted: fn(&Becomes) -> bool| -> Vec<u32> {
        pieces.iter().filter(|p| p.place == part.place && wanted(&p.becomes)).map(|p| p.id).collect()
    };
    for (i, (p, recipe)) in assembly.parts.iter().zip(&part.recipes).enumerate() {
        let mut add = |action| push(list, part.place, i, times, action);
        blank_steps(recipe, &mut add);
        let mats = mine(|b| matches!(b, Becomes::Mat(_)));
        if i == 0 && !mats.is_empty() {
            add(Action::GlueMats(mats));
        }
        for &off in recipe.off.iter().filter(|o| o.taken == Taken::Notch) {
            add(Action::Notch(off));
        }
        for (index, m) in p.moves.iter().enumerate() {
            let glued = takes_glue(&p.net, &p.moves, index);
            add(Action::Fold { index, name: m.name, glued });
            if m.name == MoveName::Ends {
                add(Action::TryBoxesIn { inside: assembly.inside });
            }
        }
    }
    let straps = mine(|b| matches!(b, Becomes::Trim(_)));
    if !straps.is_empty() {
        push(list, part.place, 0, times, Action::Straps(straps));
    }
}

fn blank_steps(recipe: &Recipe, add: &mut impl FnMut(Action)) {
    for scores in &recipe.scores {
        if !scores.at.is_empty() {
            add(Action::Score(scores.clone()));
        }
    }
    if !recipe.cuts.is_empty() {
        add(Action::Cut(recipe.cuts.clone()));
    }
    if !recipe.cells.is_empty() {
        add(Action::TakeCells(recipe.cells.len()));
    }
    let off: Vec<_> = recipe.off.iter().copied().filter(|o| o.taken != Taken::Notch).collect();
    if !off.is_empty() {
        add(Action::TakeOff(off));
    }
    add(Action::FoldAndBurnish);
}

/// True for the move that brings the later of two glued panels to rest: glue goes on right before it.
fn takes_glue(net: &Net, moves: &[Move], index: usize) -> bool {
    let moved = |panel: PanelId| {
        let carrier = net.carrier(panel)?;
        moves.iter().position(|m| match &m.way {
            Way::Even(creases) => creases.contains(&carrier),
            Way::TuckIn { lid, tuck, .. } => [lid, tuck].contains(&&carrier),
        })
    };
    net.glue.iter().any(|g| g.onto.first().is_some_and(|&onto| moved(g.on).max(moved(onto)) == Some(index)))
}
