//! The order of the making, read off the planned parts.

use crate::assembly::moves::{Move, MoveName, Way};
use crate::assembly::parts::{Assembly, Part, Size};
use crate::cut::layout::Why;
use crate::form::registry::Holds;
use crate::net::arc::Line;
use crate::net::flat::{CreaseId, Net, PanelId, Taken};
use crate::net::recipe::Recipe;
use crate::project::finding::Place;

use super::extras::Made;
use super::key::key;
use super::part::{Joined, Planned};
use super::pieces::{Becomes, Piece};
use super::sheets::CardSheets;
use super::stage::by_stage;
use super::step::{Action, Step};

/// Of more sets than these one is made first, and then alike work together (common practice, no source).
const FEW: u32 = 5;

/// Whether so many sets are made stage by stage, not box by box.
#[must_use]
pub const fn is_batch(sets: u32) -> bool {
    sets > FEW
}

/// All steps for `sets` sets: the cutting for all, then each box, then the holder, then fill and slide in; of many sets
/// stage by stage. Their sites are named when they are woven.
#[must_use]
pub fn steps(
    boxes: &[Planned],
    holder: Option<&Planned>,
    pieces: &[Piece],
    sheets: &[CardSheets],
    sets: u32,
) -> Vec<Step> {
    let nothing = boxes.iter().chain(holder).all(|p| p.assembly.is_none());
    let mut list: Vec<Step> = Vec::new();
    if is_batch(sets) && !nothing {
        push(&mut list, Place::Set, 0, 1, Action::MakeOne);
    }
    list.extend(sheets.iter().flat_map(cutting));
    for part in boxes.iter().chain(holder) {
        if let Some(assembly) = &part.assembly {
            part_steps(&mut list, part, assembly, pieces, sets);
        }
    }
    if nothing {
        return list;
    }
    push(&mut list, Place::Set, 0, u64::from(sets), Action::Fill);
    if boxes.iter().any(|b| b.assembly.is_some()) && holder.is_some_and(|h| h.assembly.is_some()) {
        push(&mut list, Place::Set, 0, u64::from(sets), Action::SlideIn);
    }
    if is_batch(sets) { by_stage(list) } else { list }
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
        let place = Place::Card(card);
        // Two alike patterns, one of them from the drawer, are two steps.
        let alike = |nth: usize| key(&(place, "sheets", size, p.copies, &p.tree, nth));
        let mut keys = (0..=pattern).map(alike);
        let key = keys.find(|key| list.iter().all(|s| s.key != *key)).unwrap_or_default();
        list.push(Step {
            key,
            site: String::new(),
            place,
            part: 0,
            half: None,
            times: 1,
            action: Action::CutSheets { card, pattern },
        });
    }
    let by_hand = |why| matches!(why, Why::TooThin | Why::TrimmerTooShort);
    let pieces: Vec<u32> = sheets.layout.left_out.iter().filter(|l| by_hand(l.why)).map(|l| l.piece).collect();
    if !pieces.is_empty() {
        push(&mut list, Place::Card(card), 0, 1, Action::CutPieces { card, pieces });
    }
    list
}

fn push(list: &mut Vec<Step>, place: Place, part: usize, times: u64, action: Action) {
    let key = key(&(place, part, &action));
    list.push(Step { key, site: String::new(), place, part, half: None, times, action });
}

/// The steps of both pieces that a part is joined from, and the joint.
fn joined_steps(list: &mut Vec<Step>, place: Place, part: usize, times: u64, joined: &Joined) {
    for (nth, (net, recipe)) in joined.joint.halves.iter().zip(&joined.recipes).enumerate() {
        blank_steps(recipe, net.creases.len(), &mut |action| {
            let key = key(&(place, part, nth, &action));
            list.push(Step { key, site: String::new(), place, part, half: Some(nth), times, action });
        });
    }
    push(list, place, part, times, Action::GlueJoint);
}

fn part_steps(list: &mut Vec<Step>, part: &Planned, assembly: &Assembly, pieces: &[Piece], sets: u32) {
    let times = u64::from(part.count) * u64::from(sets);
    let mine = |wanted: &dyn Fn(&Becomes) -> bool| -> Vec<u32> {
        pieces.iter().filter(|p| p.place == part.place && wanted(&p.becomes)).map(|p| p.id).collect()
    };
    for (i, (p, recipe)) in assembly.parts.iter().zip(&part.recipes).enumerate() {
        let times = times * u64::from(part.alike(i));
        if let Some(joined) = part.joined(i) {
            joined_steps(list, part.place, i, times, joined);
        }
        let extra = |(nth, made): (usize, &Made)| {
            let pieces = mine(&|b| matches!(b, Becomes::Extra(of, _) if *of == nth));
            Action::Extra { made: made.clone(), pieces }
        };
        let mut add = |action| push(list, part.place, i, times, action);
        if part.joined(i).is_none() {
            blank_steps(recipe, p.net.creases.len(), &mut add);
        }
        let mats = mine(&|b| matches!(b, Becomes::Mat(on, _) if *on == i));
        if !mats.is_empty() {
            add(Action::GlueMats(mats));
        }
        for &off in recipe.off.iter().filter(|o| o.taken == Taken::Notch) {
            add(Action::Notch(off));
        }
        // What is on a face is done while it is flat, in the order of the request.
        let flat = part.extras.iter().enumerate().filter(|(_, made)| made.on().first().is_some_and(|on| on.0 == i));
        flat.map(extra).for_each(&mut add);
        // A hole goes through the edge that is turned in, so after that, and while the part is still flat.
        let hemmed = p.moves.first().is_some_and(|m| m.name == MoveName::Hem);
        let holes = !p.net.holes.is_empty();
        if holes && !hemmed {
            add(Action::Punch(p.net.holes.clone()));
        }
        for (index, m) in p.moves.iter().enumerate() {
            let glued = takes_glue(&p.net, &p.moves, index);
            add(Action::Fold { index, name: m.name, glued });
            if holes && m.name == MoveName::Hem {
                add(Action::Punch(p.net.holes.clone()));
            }
            let inside = own_inside(assembly, p);
            if i == 0
                && index + 1 == p.moves.len()
                && part.form.holds == Holds::Boxes
                && let Some(inside) = inside
            {
                add(Action::TryBoxesIn { inside });
            }
        }
    }
    for join in &assembly.joins {
        push(list, part.place, join.outer, times, Action::Join(join.clone()));
    }
    for (nth, made) in part.extras.iter().enumerate().filter(|(_, made)| made.on().is_empty()) {
        let pieces = mine(&|b| matches!(b, Becomes::Extra(of, _) if *of == nth));
        push(list, part.place, 0, times, Action::Extra { made: made.clone(), pieces });
    }
    let straps = mine(&|b| matches!(b, Becomes::Trim(_)));
    if !straps.is_empty() {
        push(list, part.place, 0, times, Action::Straps(straps));
    }
}

fn blank_steps(recipe: &Recipe, creases: usize, add: &mut impl FnMut(Action)) {
    for scores in &recipe.scores {
        if !scores.at.is_empty() {
            add(Action::Score(scores.clone()));
        }
    }
    if !recipe.short.is_empty() {
        add(Action::ScoreShort(recipe.short.clone()));
    }
    let marks = &recipe.marks;
    if !marks.is_empty() {
        add(Action::Mark(marks.clone()));
        if marks.has(Line::Score) {
            add(Action::ScoreMarks(marks.clone()));
        }
        if marks.has(Line::Cut) {
            add(Action::CutMarks(marks.clone()));
        }
    }
    if !recipe.cuts.is_empty() {
        add(Action::Cut(recipe.cuts.clone()));
    }
    if !recipe.cells.is_empty() {
        add(Action::TakeCells(recipe.cells.clone()));
    }
    let off: Vec<_> = recipe.off.iter().copied().filter(|o| o.taken != Taken::Notch).collect();
    if !off.is_empty() {
        add(Action::TakeOff(off));
    }
    if creases > 0 {
        add(Action::FoldAndBurnish);
    }
}

/// What the boxes are tried in while the glue of `part` is soft: its own inside, or that of the whole where it is all.
fn own_inside(assembly: &Assembly, part: &Part) -> Option<Size> {
    let whole = (assembly.parts.len() == 1 && assembly.inside != Size::default()).then_some(assembly.inside);
    part.inside.or(whole)
}

/// True for the move that brings two glued panels together: glue goes on right before it.
fn takes_glue(net: &Net, moves: &[Move], index: usize) -> bool {
    let moved = |crease: &CreaseId| {
        moves.iter().position(|m| match &m.way {
            Way::Even(creases) | Way::EndOnly { creases, .. } => creases.contains(crease),
            Way::TuckIn { lid, tuck, .. } => [lid, tuck].contains(&crease),
            Way::Sprung { closing, tucks, .. } => closing.contains(crease) || tucks.contains(crease),
        })
    };
    let last = |a: PanelId, b: PanelId| {
        let (a, b) = (net.carriers(a), net.carriers(b));
        // What carries both moves neither against the other.
        let between = a.iter().filter(|c| !b.contains(c)).chain(b.iter().filter(|c| !a.contains(c)));
        between.filter_map(moved).max()
    };
    net.glue.iter().any(|g| g.onto.first().is_some_and(|&onto| last(g.on, onto) == Some(index)))
}
