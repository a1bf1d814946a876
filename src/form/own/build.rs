//! From a drawn form and its sizes to a net: cells become panels, hung on each other from the one that lies still.

use super::drawn::{At, Between, Cell, Drawn, Line, Runs, Sign, SizeName, Span, Stance, Term, Way};
use super::hang::Hanging;
use super::words::{Half, cell as cell_name, panel as panel_name};
use crate::measure::angle::Angle;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{CreaseId, Duty, Net, PanelId};
use crate::project::finding::OwnFault;

/// The largest blank that is planned, either way.
pub const LARGEST: Length = Length::mm(2_000);

/// What a drawn form is measured by.
pub struct Measures<'a> {
    /// What each named size comes to.
    pub sizes: &'a dyn Fn(SizeName) -> Length,
    /// The board's grooves: a length typed in the other system goes up to the next one.
    pub score: Grid,
    /// The system of this plan.
    pub system: System,
}

impl Measures<'_> {
    /// What a sum comes to.
    #[must_use]
    pub fn of(&self, span: &Span) -> Length {
        let each = span.0.iter().map(|term| match term {
            Term::Size(name, halves) => (self.sizes)(*name).scaled(i64::from(*halves), 2),
            Term::Length(given, sign) => {
                let length = given.length();
                let native = if given.system() == self.system { length } else { self.score.up(length) };
                if *sign == Sign::Minus { -native } else { native }
            }
        });
        // Far beyond any blank there is nothing to tell apart, and nothing to overflow.
        let far = LARGEST * 10;
        each.fold(Length::ZERO, |sum, l| (sum + l.min(far).max(-far)).min(far).max(-far))
    }
}

/// What panels are made from: a cell, several that are one, or half of one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Its upper left cell.
    pub at: At,
    /// Further columns and rows.
    pub more: (u8, u8),
    /// Which half of the cell.
    pub half: Half,
}

/// A net, and what came of each cell.
pub struct Built {
    /// The net; panels in the order of `pieces`.
    pub net: Net,
    /// What each panel was made from.
    pub pieces: Vec<Piece>,
    /// What is wrong so far.
    pub faults: Vec<OwnFault>,
}

impl Built {
    /// The panel that a cell went into: the upper half of two.
    #[must_use]
    pub fn panel(&self, at: At) -> Option<PanelId> {
        self.pieces.iter().position(|p| p.covers(at)).map(PanelId)
    }

    /// The crease that carries the panel of a cell.
    #[must_use]
    pub fn carrier(&self, at: At) -> Option<CreaseId> {
        self.net.carrier(self.panel(at)?)
    }
}

impl Piece {
    /// Whether the cell is part of it.
    #[must_use]
    pub fn covers(&self, at: At) -> bool {
        let inside = |a: u8, from: u8, more: u8| (from..=from.saturating_add(more)).contains(&a);
        inside(at.column, self.at.column, self.more.0) && inside(at.row, self.at.row, self.more.1)
    }

    /// Its name where it has none of its own.
    #[must_use]
    pub fn name(&self) -> &'static str {
        cell_name(self.at, self.half)
    }

    /// Whether this half of a cell has that side.
    #[must_use]
    pub fn has(&self, runs: Runs, side: Side) -> bool {
        let above = match runs {
            Runs::Falling => matches!(side, Side::Top | Side::Right),
            Runs::Rising => matches!(side, Side::Top | Side::Left),
        };
        match self.half {
            Half::Whole => true,
            Half::Above => above,
            Half::Below => !above,
        }
    }
}

/// A score between two pieces: which, on which side of each (none: the diagonal), and how far it folds.
pub struct Joint {
    /// The place of each piece, and its side.
    pub ends: [(usize, Option<Side>); 2],
    /// How far it folds.
    pub fold: Angle,
}

/// Builds the net; nothing where no cell is card or the blank is out of all measure.
///
/// # Errors
/// What stops it.
pub fn build(drawn: &Drawn, measures: &Measures) -> Result<Built, Vec<OwnFault>> {
    let lengths = |spans: &[Span]| spans.iter().map(|s| measures.of(s)).collect::<Vec<_>>();
    let (columns, rows) = (lengths(&drawn.columns), lengths(&drawn.rows));
    let mut stops = Vec::new();
    let number = |i: usize| u8::try_from(i + 1).unwrap_or(u8::MAX);
    let least = Length::mm(1);
    stops.extend(columns.iter().enumerate().filter(|c| *c.1 < least).map(|c| OwnFault::NoColumn(number(c.0))));
    stops.extend(rows.iter().enumerate().filter(|r| *r.1 < least).map(|r| OwnFault::NoRow(number(r.0))));
    let whole = |all: &[Length]| all.iter().copied().sum::<Length>();
    if whole(&columns).max(whole(&rows)) > LARGEST {
        stops.push(OwnFault::TooLarge);
    }
    let cells: Vec<&Cell> = drawn.cells.iter().filter(|c| drawn.holds(c.at)).collect();
    if cells.is_empty() {
        stops.push(OwnFault::Empty);
    }
    if !stops.is_empty() {
        return Err(stops);
    }
    let mut faults = Vec::new();
    let pieces = pieces(drawn, &cells, &mut faults);
    let joints = joints(drawn, &pieces);
    let still = drawn.still.and_then(|at| pieces.iter().position(|p| p.covers(at)));
    let size = |p: &Piece| {
        let run = |all: &[Length], from: u8, more: u8| -> Length {
            let (from, more) = (usize::from(from), usize::from(more));
            all.get(from..=from + more).unwrap_or_default().iter().copied().sum()
        };
        (run(&columns, p.at.column, p.more.0), run(&rows, p.at.row, p.more.1))
    };
    let still = still.unwrap_or_else(|| largest(drawn, &pieces, &joints, size));
    let sizes: Vec<(Length, Length)> = pieces.iter().map(size).collect();
    Ok(Hanging::over(drawn, measures, &pieces, Cells::new(&columns, &rows)).finish(&sizes, still, &joints, faults))
}

/// The cells, those that are one together, halves apart.
fn pieces(drawn: &Drawn, cells: &[&Cell], faults: &mut Vec<OwnFault>) -> Vec<Piece> {
    let mut group: Vec<usize> = (0..cells.len()).collect();
    let place = |at: At| cells.iter().position(|c| c.at == at);
    for (between, line) in &drawn.lines {
        if let (Line::Whole, Some(a), Some(b)) = (line, place(between.at), place(between.other())) {
            let (from, to) = (group[a].max(group[b]), group[a].min(group[b]));
            group.iter_mut().filter(|g| **g == from).for_each(|g| *g = to);
        }
    }
    let mut all = Vec::new();
    for (i, cell) in cells.iter().enumerate() {
        let mine: Vec<At> = cells.iter().zip(&group).filter(|(_, g)| **g == group[i]).map(|(c, _)| c.at).collect();
        let split = mine.iter().any(|at| drawn.cell(*at).is_some_and(|c| c.diagonal.is_some()));
        let span = |of: fn(&At) -> u8| {
            let least = mine.iter().map(of).min().unwrap_or_default();
            (least, mine.iter().map(of).max().unwrap_or_default() - least)
        };
        let ((column, columns), (row, rows)) = (span(|a| a.column), span(|a| a.row));
        let rectangle = mine.len() == (usize::from(columns) + 1) * (usize::from(rows) + 1);
        if mine.len() > 1 && (split || !rectangle) {
            if group[i] == i {
                faults.push(OwnFault::NotRectangle(cell_name(cell.at, Half::Whole)));
            }
            all.push(Piece { at: cell.at, more: (0, 0), half: Half::Whole });
        } else if cell.diagonal.is_some() {
            all.extend([Half::Above, Half::Below].map(|half| Piece { at: cell.at, more: (0, 0), half }));
        } else if group[i] == i {
            all.push(Piece { at: At::new(column, row), more: (columns, rows), half: Half::Whole });
        }
    }
    all
}

/// The scores between pieces; where several lines part the same two, the first that is scored.
fn joints(drawn: &Drawn, pieces: &[Piece]) -> Vec<Joint> {
    let runs = |p: &Piece| drawn.cell(p.at).and_then(|c| c.diagonal).map_or(Runs::Falling, |d| d.runs);
    let at = |cell: At, side: Side| pieces.iter().position(|p| p.covers(cell) && p.has(runs(p), side));
    let mut all: Vec<Joint> = Vec::new();
    for (i, p) in pieces.iter().enumerate().filter(|(_, p)| p.half == Half::Above) {
        let diagonal = drawn.cell(p.at).and_then(|c| c.diagonal);
        let below = pieces.iter().position(|q| q.at == p.at && q.half == Half::Below);
        if let (Some(diagonal), Some(below)) = (diagonal, below) {
            all.push(Joint { ends: [(i, None), (below, None)], fold: diagonal.fold });
        }
    }
    for between in drawn.inner() {
        let (near, far) = match between.way {
            Way::Right => (Side::Right, Side::Left),
            Way::Below => (Side::Bottom, Side::Top),
        };
        // Cells that are to be one and make no rectangle are scored.
        let fold = match drawn.line(between) {
            Line::Score(fold) => fold,
            Line::Whole => Angle::degrees(90),
            Line::Cut => continue,
        };
        if let (Some(a), Some(b)) = (at(between.at, near), at(between.other(), far))
            && a != b
            && !all.iter().any(|j| j.ends.map(|e| e.0) == [a, b])
        {
            all.push(Joint { ends: [(a, Some(near)), (b, Some(far))], fold });
        }
    }
    all
}

/// The piece that lies still where its maker says nothing: of those that most pieces hang together with, the largest
/// that is no tab.
fn largest(drawn: &Drawn, pieces: &[Piece], joints: &[Joint], size: impl Fn(&Piece) -> (Length, Length)) -> usize {
    let mut group: Vec<usize> = (0..pieces.len()).collect();
    for j in joints {
        let [a, b] = j.ends.map(|e| group[e.0]);
        group.iter_mut().filter(|g| **g == a.max(b)).for_each(|g| *g = a.min(b));
    }
    let many = |i: usize| group.iter().filter(|g| **g == group[i]).count();
    let area = |p: &Piece| {
        let (w, h) = size(p);
        i128::from(w.nm()) * i128::from(h.nm())
    };
    let tab =
        |p: &Piece| drawn.cell(p.at).is_some_and(|c| duty(c).is_some_and(|d| !matches!(d, Duty::Wall | Duty::Floor)));
    let rank = |i: &usize| (many(*i), !tab(&pieces[*i]), area(&pieces[*i]), std::cmp::Reverse(*i));
    (0..pieces.len()).max_by_key(rank).unwrap_or_default()
}

/// What a cell was said to do.
#[must_use]
pub fn duty(cell: &Cell) -> Option<Duty> {
    cell.duty.or_else(|| cell.name.map(|n| panel_name(n).1))
}

/// Whether the still cell is the base: it is where all four of its sides are scored.
#[must_use]
pub fn stance(drawn: &Drawn, still: At) -> Stance {
    let scored = |side: Side| {
        let there = still.beside(side).is_some_and(|at| drawn.cell(at).is_some());
        there && Between::of(still, side).is_some_and(|b| matches!(drawn.line(b), Line::Score(_)))
    };
    let all = [Side::Top, Side::Right, Side::Bottom, Side::Left].into_iter().all(scored);
    drawn.stance.unwrap_or(if all { Stance::Base } else { Stance::Front })
}
