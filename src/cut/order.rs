//! The cuts of a pattern in the order in which a hand makes them: one fence setting after the other.

use super::layout::{Node, Pattern, Way};
use super::piece::Pose;
use super::sheet::{Rules, Sheet};
use crate::measure::length::Length;

/// One cut at the trimmer. Where a pattern is cut from several sheets, each step is done for all of them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutStep {
    /// The part in hand: nothing is the whole sheet, others are numbered as they come off.
    pub part: u32,
    /// Width and height of the part in hand, as the sheet is drawn.
    pub sides: (Length, Length),
    /// Direction of the cut on the sheet as drawn.
    pub way: Way,
    /// Whether the card is turned since the cut before.
    pub quarter: Quarter,
    /// What the fence is set to.
    pub fence: Length,
    /// Whether the fence stands there already.
    pub setting: Setting,
    /// Which edge of the part lies against the fence.
    pub edge: Edge,
    /// What lies left of the cut or below it.
    pub low: Comes,
    /// What lies right of the cut or above it.
    pub high: Comes,
    /// Both ends of the cut on the sheet, from its lower left corner: `[x, y]`.
    pub line: [[Length; 2]; 2],
}

/// Whether the card keeps its direction under the blade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quarter {
    /// It lies as it lay.
    Keep,
    /// A quarter turn.
    Turn,
}

/// Whether the fence moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// Set it.
    Set,
    /// Leave it.
    Leave,
}

/// An edge of the part in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// Its left edge (upright cut) or lower edge (level cut).
    Near,
    /// Its right or upper edge.
    Far,
}

/// What a cut makes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comes {
    /// A finished piece.
    Piece {
        /// The piece's number.
        id: u32,
        /// How it lies on the sheet.
        pose: Pose,
    },
    /// A part that is cut further.
    Part(u32),
    /// An offcut.
    Offcut,
}

/// A part that waits to be cut.
struct Waiting<'a> {
    part: u32,
    node: &'a Node,
    corner: [Length; 2],
    sides: [Length; 2],
}

impl Waiting<'_> {
    /// Fence setting and edge: what is kept lies against the fence; a strip of waste never does.
    fn fence(&self) -> (Length, Edge) {
        match self.node {
            Node::Cut { way, at, low, .. } => {
                let whole = self.sides[axis(*way)];
                if **low == Node::Offcut { (whole - *at, Edge::Far) } else { (*at, Edge::Near) }
            }
            _ => (Length::ZERO, Edge::Near),
        }
    }

    fn way(&self) -> Way {
        if let Node::Cut { way, .. } = self.node { *way } else { Way::Upright }
    }
}

const fn axis(way: Way) -> usize {
    match way {
        Way::Upright => 0,
        Way::Level => 1,
    }
}

/// The cuts of a pattern, from the bare sheet, in an order that moves the fence seldom: every cut at the present
/// setting is made before the fence moves, and a setting that will fall due again later waits for the others.
///
/// A sheet that is a piece already needs no cut.
#[must_use]
pub fn order(pattern: &Pattern, sheet: &Sheet) -> Vec<CutStep> {
    let mut waiting = Vec::new();
    if let Node::Cut { .. } = pattern.tree {
        let sides = [sheet.width, sheet.height];
        waiting.push(Waiting { part: 0, node: &pattern.tree, corner: [Length::ZERO; 2], sides });
    }
    let mut due = fences(&waiting);
    let mut steps: Vec<CutStep> = Vec::new();
    let mut parts = 0;
    while !waiting.is_empty() {
        let now = steps.last().map(|step| (step.fence, step.way));
        let next = choose(&waiting, &due, now);
        let taken = waiting.remove(next);
        let (fence, edge) = taken.fence();
        if let Some(count) = due.iter_mut().find(|d| d.0 == fence) {
            count.1 -= 1;
        }
        let Node::Cut { way, at, low, high } = taken.node else {
            continue;
        };
        let a = axis(*way);
        let (mut low_sides, mut high_sides, mut corner) = (taken.sides, taken.sides, taken.corner);
        low_sides[a] = *at;
        high_sides[a] = taken.sides[a] - *at;
        corner[a] += *at;
        let mut end = corner;
        end[1 - a] += taken.sides[1 - a];
        let mut comes = |node, corner, sides| match node {
            &Node::Piece { id, pose } => Comes::Piece { id, pose },
            Node::Offcut => Comes::Offcut,
            Node::Cut { .. } => {
                parts += 1;
                waiting.push(Waiting { part: parts, node, corner, sides });
                Comes::Part(parts)
            }
        };
        let low = comes(low, taken.corner, low_sides);
        let high = comes(high, corner, high_sides);
        steps.push(CutStep {
            part: taken.part,
            sides: (taken.sides[0], taken.sides[1]),
            way: *way,
            quarter: if now.is_some_and(|n| n.1 != *way) { Quarter::Turn } else { Quarter::Keep },
            fence,
            setting: if now.is_some_and(|n| n.0 == fence) { Setting::Leave } else { Setting::Set },
            edge,
            low,
            high,
            line: [corner, end],
        });
    }
    steps
}

/// How often the fence is set for these steps.
#[must_use]
pub fn settings(steps: &[CutStep]) -> usize {
    steps.iter().filter(|s| s.setting == Setting::Set).count()
}

/// How many different settings the cuts of a whole sheet need; at least so often the fence is set.
#[must_use]
pub fn different(tree: &Node, width: Length, height: Length) -> usize {
    fences(&[Waiting { part: 0, node: tree, corner: [Length::ZERO; 2], sides: [width, height] }]).len()
}

/// Which cuts would take off, or leave, a strip narrower than can be held.
#[must_use]
pub fn too_thin(step: &CutStep, rules: &Rules) -> bool {
    let whole = if step.way == Way::Upright { step.sides.0 } else { step.sides.1 };
    step.fence.min(whole - step.fence) < rules.least_strip
}

/// Every fence setting below these parts and how often it falls due, by rising length.
fn fences(waiting: &[Waiting]) -> Vec<(Length, usize)> {
    let mut all = Vec::new();
    let mut open: Vec<(&Node, [Length; 2])> = waiting.iter().map(|w| (w.node, w.sides)).collect();
    while let Some((node, sides)) = open.pop() {
        if let Node::Cut { way, at, low, high } = node {
            let w = Waiting { part: 0, node, corner: [Length::ZERO; 2], sides };
            all.push(w.fence().0);
            let (mut below, mut above) = (sides, sides);
            below[axis(*way)] = *at;
            above[axis(*way)] = sides[axis(*way)] - *at;
            open.extend([(&**low, below), (&**high, above)]);
        }
    }
    all.sort();
    let mut due: Vec<(Length, usize)> = Vec::new();
    for fence in all {
        match due.last_mut() {
            Some(last) if last.0 == fence => last.1 += 1,
            _ => due.push((fence, 1)),
        }
    }
    due
}

/// The next cut: at the present setting if there is one, else at a setting that won't fall due again, else the first.
fn choose(waiting: &[Waiting], due: &[(Length, usize)], now: Option<(Length, Way)>) -> usize {
    if let Some((fence, way)) = now {
        let same = |w: &Waiting| w.fence().0 == fence;
        if let Some(next) = waiting.iter().position(|w| same(w) && w.way() == way) {
            return next;
        }
        if let Some(next) = waiting.iter().position(same) {
            return next;
        }
    }
    let ready =
        |fence: Length| -> usize { waiting.iter().filter(|w| w.fence().0 == fence).map(|w| run(w, fence)).sum() };
    let whole = |fence: Length| due.iter().find(|d| d.0 == fence).map_or(0, |d| d.1);
    let mut best = (0, (true, true));
    for (at, w) in waiting.iter().enumerate() {
        let fence = w.fence().0;
        let later = ready(fence) < whole(fence);
        let turns = now.is_some_and(|n| n.1 != w.way());
        // The first of the best; false goes before true.
        if at == 0 || (later, turns) < best.1 {
            best = (at, (later, turns));
        }
    }
    best.0
}

/// How many cuts at this setting follow each other from this part on.
fn run(waiting: &Waiting, fence: Length) -> usize {
    let mut count = 0;
    let mut node = waiting.node;
    while let Node::Cut { at, low, high, .. } = node {
        let here = if count == 0 { waiting.fence().0 } else { *at };
        if here != fence {
            break;
        }
        count += 1;
        node = if **low == Node::Offcut { low } else { high };
    }
    count
}
