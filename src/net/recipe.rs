//! The score-and-cut recipe, read off a grid net: where to score from which edge, where to cut, what to take away.

use crate::measure::length::Length;
use crate::measure::outline::Rect;

use super::flat::{Crease, Frame, Net, PanelId, Taken, Waste};
use super::marks::Marks;

/// The two ways in which a card lies at the fence.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Turned {
    /// Its left edge at the fence: places are measured across.
    AsItLies,
    /// Turned so that its top edge is at the fence: places are measured down.
    Quarter,
}

/// Scores made right across the blank in one position of the card.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Scores {
    /// How the card lies.
    pub turned: Turned,
    /// From the fence, in order.
    pub at: Vec<Length>,
    /// The blank's size in that direction.
    pub whole: Length,
}

impl Scores {
    /// What must be left behind the last score: the sum check.
    #[must_use]
    pub fn last_panel(&self) -> Length {
        self.whole - self.at.last().copied().unwrap_or_default()
    }
}

/// A straight cut along a line, or a score that goes no further.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CutLine {
    /// Whether the line is measured across or down.
    pub measured: Turned,
    /// Where the line is.
    pub at: Length,
    /// Where the cut starts, along the line.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

/// A corner, strip or notch to take off a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct TakeOff {
    /// The panel.
    pub panel: PanelId,
    /// What kind of piece goes.
    pub taken: Taken,
    /// Its size, as the upright rectangle round it.
    pub size: Rect,
}

/// Everything that is done to the flat blank, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Recipe {
    /// Its width.
    pub width: Length,
    /// Its height.
    pub height: Length,
    /// First across, then, turned, down.
    pub scores: [Scores; 2],
    /// Scores that are not made right across, as a panel lies on their line.
    pub short: Vec<CutLine>,
    /// What is marked by hand, and what is scored and cut between the marks.
    pub marks: Marks,
    /// Cuts between panels.
    pub cuts: Vec<CutLine>,
    /// Whole cells that go.
    pub cells: Vec<Rect>,
    /// What is taken off panels.
    pub off: Vec<TakeOff>,
}

impl Recipe {
    /// Reads the recipe off `net`.
    #[must_use]
    pub fn of(net: &Net) -> Self {
        let scored = |turned: Turned| -> Vec<Length> {
            let lines = match turned {
                Turned::AsItLies => &net.lines.across,
                Turned::Quarter => &net.lines.down,
            };
            let lies = |c: &Crease, at: Length| match turned {
                Turned::AsItLies => (c.from.x, c.to.x) == (at, at),
                Turned::Quarter => (c.from.y, c.to.y) == (at, at),
            };
            lines.iter().copied().filter(|&at| net.folds().any(|c| lies(c, at)) && !passes(net, turned, at)).collect()
        };
        let scores = |turned, whole| Scores { turned, at: scored(turned), whole };
        Self {
            width: net.blank.width(),
            height: net.blank.height(),
            scores: [scores(Turned::AsItLies, net.blank.width()), scores(Turned::Quarter, net.blank.height())],
            short: [Turned::AsItLies, Turned::Quarter].into_iter().flat_map(|turned| short(net, turned)).collect(),
            marks: Marks::of(net),
            cuts: cuts(net),
            cells: net.waste.iter().filter(|w| w.taken == Taken::Cell).map(|w| w.outline.bounds()).collect(),
            off: net.waste.iter().filter_map(take_off).collect(),
        }
    }
}

/// Whether a line runs through the inside of a panel.
fn passes(net: &Net, measured: Turned, at: Length) -> bool {
    let through = |c: Rect| match measured {
        Turned::AsItLies => c.min.x < at && at < c.max.x,
        Turned::Quarter => c.min.y < at && at < c.max.y,
    };
    net.panels.iter().any(|p| p.frame == Frame::Upright && through(p.cell))
}

/// The scores on lines that are not scored right across, neighbouring ones made one.
fn short(net: &Net, measured: Turned) -> Vec<CutLine> {
    let lines = match measured {
        Turned::AsItLies => &net.lines.across,
        Turned::Quarter => &net.lines.down,
    };
    let mut found: Vec<CutLine> = Vec::new();
    for &at in lines.iter().filter(|at| passes(net, measured, **at)) {
        let on = net.folds().filter_map(|c| {
            let (a, b, from, to) = match measured {
                Turned::AsItLies => (c.from.x, c.to.x, c.from.y, c.to.y),
                Turned::Quarter => (c.from.y, c.to.y, c.from.x, c.to.x),
            };
            ((a, b) == (at, at)).then(|| (from.min(to), from.max(to)))
        });
        let mut all: Vec<(Length, Length)> = on.collect();
        all.sort();
        for (from, to) in all {
            match found.last_mut() {
                Some(last) if (last.measured, last.at, last.to) == (measured, at, from) => last.to = to,
                _ => found.push(CutLine { measured, at, from, to }),
            }
        }
    }
    found
}

fn take_off(waste: &Waste) -> Option<TakeOff> {
    waste.from.map(|panel| TakeOff { panel, taken: waste.taken, size: waste.outline.bounds() })
}

/// Every stretch of a grid line between two cells of which one at least is a panel and that no crease joins,
/// neighbouring stretches made one.
fn cuts(net: &Net) -> Vec<CutLine> {
    let mut found = Vec::new();
    for measured in [Turned::AsItLies, Turned::Quarter] {
        let (lines, along) = match measured {
            Turned::AsItLies => (&net.lines.across, &net.lines.down),
            Turned::Quarter => (&net.lines.down, &net.lines.across),
        };
        let inner = lines.get(1..lines.len().saturating_sub(1)).unwrap_or_default();
        for &at in inner {
            let mut open: Option<CutLine> = None;
            for ends in along.windows(2) {
                if is_cut(net, measured, at, ends[0], ends[1]) {
                    let cut = open.get_or_insert(CutLine { measured, at, from: ends[0], to: ends[1] });
                    cut.to = ends[1];
                } else {
                    found.extend(open.take());
                }
            }
            found.extend(open);
        }
    }
    found
}

fn is_cut(net: &Net, measured: Turned, at: Length, from: Length, to: Length) -> bool {
    let panel_beside = |before: bool| {
        net.panels.iter().position(|p| {
            let c = p.cell;
            let (low, high, start, end) = match measured {
                Turned::AsItLies => (c.min.x, c.max.x, c.min.y, c.max.y),
                Turned::Quarter => (c.min.y, c.max.y, c.min.x, c.max.x),
            };
            let beside = if before { high == at } else { low == at };
            p.frame == Frame::Upright && beside && start <= from && end >= to
        })
    };
    let creased = net.folds().any(|c| {
        let (a, b, start, end) = match measured {
            Turned::AsItLies => (c.from.x, c.to.x, c.from.y, c.to.y),
            Turned::Quarter => (c.from.y, c.to.y, c.from.x, c.to.x),
        };
        (a, b) == (at, at) && start.min(end) <= from && start.max(end) >= to
    });
    match (panel_beside(true), panel_beside(false)) {
        (None, None) => false,
        _ if creased => false,
        (Some(a), Some(b)) => !net.folds().any(|c| (c.near.0, c.far.0) == (a, b) || (c.near.0, c.far.0) == (b, a)),
        _ => true,
    }
}
