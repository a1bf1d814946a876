//! `Cells`: a net built as a grid of columns and rows, so that its recipe is exact by construction.

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::outline::{Outline, Rect};
use crate::measure::point::{Point, Vector};

use super::arc::Arc;
use super::around::around;
use super::corner::{Corner, Notch, Shape, Side, Slot, Trimmed};
use super::flat::{Crease, Duty, Face, Frame, Glue, Hole, Matting, Net, Panel, PanelId, Taken, Waste};
use super::spread::Spread;

/// Where the lines of a grid net run: from the left edge and from the top edge, both blank edges included.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lines {
    /// From the left edge.
    pub across: Vec<Length>,
    /// From the top edge.
    pub down: Vec<Length>,
}

impl Lines {
    /// Lines after each of the `columns` and `rows`.
    fn after(columns: &[Length], rows: &[Length]) -> Self {
        let run = |sizes: &[Length]| {
            let mut at = Length::ZERO;
            std::iter::once(at)
                .chain(sizes.iter().map(|&s| {
                    at += s;
                    at
                }))
                .collect()
        };
        Self { across: run(columns), down: run(rows) }
    }

    /// The blank's lower right corner.
    fn end(&self) -> Point {
        Point::new(self.across.last().copied().unwrap_or_default(), self.down.last().copied().unwrap_or_default())
    }

    /// The rectangle of so many columns and rows from a cell on.
    fn cell(&self, (column, row): (usize, usize), (columns, rows): (usize, usize)) -> Rect {
        Rect::between(self.across[column], self.down[row], self.across[column + columns], self.down[row + rows])
    }
}

/// A panel while its net is being built.
struct Draft {
    name: &'static str,
    duty: Duty,
    level: i8,
    mat: Matting,
    lies: Lies,
}

/// Where a panel lies on the blank.
enum Lies {
    Cell(InCell),
    /// Anywhere in cells that are no panels: its corners, and its sides as in [`Frame::Aslant`].
    Aslant(Outline, [(usize, usize); 4]),
}

/// A cell and what is cut off it.
#[derive(Default)]
struct InCell {
    column: usize,
    row: usize,
    /// Further columns and rows that it reaches over.
    more: (usize, usize),
    /// Strips taken off, by side: top, right, bottom, left.
    strips: [Length; 4],
    corners: [Shape; 4],
    notch: Option<Notch>,
    slots: Vec<Slot>,
}

impl InCell {
    const fn reach(&self) -> (usize, usize) {
        (self.more.0 + 1, self.more.1 + 1)
    }

    fn covers(&self, (column, row): (usize, usize)) -> bool {
        let (columns, rows) = self.reach();
        (self.column..self.column + columns).contains(&column) && (self.row..self.row + rows).contains(&row)
    }
}

/// A grid of cells, each a panel or waste, built up call by call.
pub struct Cells {
    lines: Lines,
    drafts: Vec<Draft>,
    creases: Vec<(PanelId, PanelId, Angle)>,
    loops: Vec<(PanelId, (PanelId, Side), Angle)>,
    glue: Vec<Spread>,
    holes: Vec<(PanelId, Punch, Length)>,
    arcs: Vec<Arc>,
}

/// Where a hole is punched.
enum Punch {
    /// So far right and down from the corner of the panel's cell.
    In(Vector),
    /// There on the blank.
    At(Point),
}

impl Cells {
    /// An empty blank of these columns (left to right) and rows (top to bottom).
    #[must_use]
    pub fn new(columns: &[Length], rows: &[Length]) -> Self {
        Self {
            lines: Lines::after(columns, rows),
            drafts: Vec::new(),
            creases: Vec::new(),
            loops: Vec::new(),
            glue: Vec::new(),
            holes: Vec::new(),
            arcs: Vec::new(),
        }
    }

    /// Makes the cell at `column`, `row` a panel. The first panel lies still while the rest is folded.
    pub fn panel(&mut self, column: usize, row: usize, name: &'static str, duty: Duty) -> PanelId {
        self.draft(name, duty, Lies::Cell(InCell { column, row, ..InCell::default() }))
    }

    fn draft(&mut self, name: &'static str, duty: Duty, lies: Lies) -> PanelId {
        self.drafts.push(Draft { name, duty, level: 0, mat: Matting::Never, lies });
        PanelId(self.drafts.len() - 1)
    }

    /// Makes a panel of these corners, clockwise on the card, in cells that are no panels; its sides as in
    /// [`Frame::Aslant`].
    pub fn aslant(
        &mut self,
        corners: Vec<Point>,
        sides: [(usize, usize); 4],
        name: &'static str,
        duty: Duty,
    ) -> PanelId {
        self.draft(name, duty, Lies::Aslant(Outline::new(corners), sides))
    }

    /// Adds a panel of these corners that hangs on `near` by its lower side.
    pub fn hung_aslant(
        &mut self,
        near: PanelId,
        fold: Angle,
        (corners, sides): (Vec<Point>, [(usize, usize); 4]),
        name: &'static str,
        duty: Duty,
    ) -> PanelId {
        let far = self.aslant(corners, sides, name, duty);
        self.creases.push((near, far, fold));
        far
    }

    /// Makes a side of a panel a crease to another one that it hangs together with already.
    pub fn join(&mut self, near: PanelId, far: (PanelId, Side), fold: Angle) {
        self.loops.push((near, far, fold));
    }

    /// Where `column` begins, from the left edge, and `row`, from the top.
    #[must_use]
    pub fn corner_of(&self, column: usize, row: usize) -> Point {
        Point::new(self.lines.across[column], self.lines.down[row])
    }

    fn cell_mut(&mut self, panel: PanelId) -> Option<&mut InCell> {
        match &mut self.drafts.get_mut(panel.0)?.lies {
            Lies::Cell(cell) => Some(cell),
            Lies::Aslant(..) => None,
        }
    }

    /// Adds a panel that hangs on `near` by a crease folded by `fold`, in degrees (away from the reader above zero).
    pub fn hung(
        &mut self,
        near: PanelId,
        fold: impl Into<Angle>,
        (column, row): (usize, usize),
        name: &'static str,
        duty: Duty,
    ) -> PanelId {
        let far = self.panel(column, row, name, duty);
        self.creases.push((near, far, fold.into()));
        far
    }

    /// Lets a panel reach over so many further columns and rows.
    pub fn reach_over(&mut self, panel: PanelId, columns: usize, rows: usize) {
        if let Some(cell) = self.cell_mut(panel) {
            cell.more = (columns, rows);
        }
    }

    /// Takes a strip off one side of a panel.
    pub fn strip(&mut self, panel: PanelId, side: Side, width: Length) {
        if let Some(cell) = self.cell_mut(panel) {
            cell.strips[side as usize] = width.at_least_zero();
        }
    }

    /// Cuts a corner of a panel.
    pub fn corner(&mut self, panel: PanelId, corner: Corner, shape: Shape) {
        if let Some(cell) = self.cell_mut(panel) {
            cell.corners[corner as usize] = shape;
        }
    }

    /// Cuts a thumb notch into a panel.
    pub fn notch(&mut self, panel: PanelId, notch: Notch) {
        if let Some(cell) = self.cell_mut(panel) {
            cell.notch = Some(notch);
        }
    }

    /// Cuts slots into a panel, apart from each other and in the order of their places.
    pub fn slots(&mut self, panel: PanelId, slots: &[Slot]) {
        if let Some(cell) = self.cell_mut(panel) {
            cell.slots.extend_from_slice(slots);
        }
    }

    /// Puts a panel at a level where layers pile up, in halves of a card thickness outward from its scores.
    pub fn level(&mut self, panel: PanelId, halves: i8) {
        self.drafts[panel.0].level = halves;
    }

    /// Lets a panel take a mat.
    pub fn mat(&mut self, panel: PanelId) {
        self.drafts[panel.0].mat = Matting::Usual;
    }

    /// Glues the whole of a panel's face onto others.
    pub fn glue(&mut self, on: PanelId, face: Face, onto: &[PanelId]) {
        self.glue.push(Spread { on, face, strip: None, edge: Length::ZERO, onto: onto.to_vec() });
    }

    /// Glues a panel's face onto others, all but a border of `edge`, at most a quarter of it, all round.
    pub fn glue_within(&mut self, on: PanelId, face: Face, edge: Length, onto: &[PanelId]) {
        self.glue.push(Spread { on, face, strip: None, edge, onto: onto.to_vec() });
    }

    /// Glues the strip along one side of a panel's face onto others, all but a border as in [`Self::glue_within`].
    pub fn glue_along(&mut self, on: PanelId, face: Face, strip: (Side, Length), edge: Length, onto: &[PanelId]) {
        self.glue.push(Spread { on, face, strip: Some(strip), edge, onto: onto.to_vec() });
    }

    /// Punches a round hole of `radius` into a panel, so far `right` and `down` from the corner of its cell.
    pub fn hole(&mut self, panel: PanelId, (right, down): (Length, Length), radius: Length) {
        self.holes.push((panel, Punch::In(Vector::new(right, down)), radius));
    }

    /// Punches a round hole of `radius` into a panel at a place on the blank.
    pub fn hole_at(&mut self, panel: PanelId, at: Point, radius: Length) {
        self.holes.push((panel, Punch::At(at), radius));
    }

    /// Scores or cuts along an arc that panels run along.
    pub fn arc(&mut self, arc: Arc) {
        self.arcs.push(arc);
    }

    /// The finished net.
    #[must_use]
    pub fn finish(self) -> Net {
        let lines = self.lines.clone();
        let mut panels = Vec::with_capacity(self.drafts.len());
        let mut waste = Vec::new();
        for (i, draft) in self.drafts.iter().enumerate() {
            let (cell, outline, frame) = match &draft.lies {
                Lies::Cell(c) => {
                    let cell = lines.cell((c.column, c.row), c.reach());
                    let (rect, strips) = stripped(cell, c.strips);
                    let trimmed = Trimmed { rect, corners: c.corners, notch: c.notch, slots: c.slots.clone() };
                    let (outline, off) = trimmed.cut();
                    let mut take = |outline: Outline, taken| {
                        waste.push(Waste { outline, taken, from: Some(PanelId(i)) });
                    };
                    strips.into_iter().for_each(|s| take(s.outline(), Taken::Strip));
                    off.into_iter().for_each(|(o, taken)| take(o, taken));
                    (cell, outline, Frame::Upright)
                }
                Lies::Aslant(outline, sides) => (outline.bounds(), outline.clone(), Frame::Aslant(*sides)),
            };
            let Draft { name, duty, level, mat, .. } = *draft;
            panels.push(Panel { name, duty, cell, outline, frame, level, mat });
        }
        let blank = Rect { min: Point::default(), max: lines.end() };
        waste.extend(self.unused(&lines, blank));
        let creases = self
            .creases
            .iter()
            .map(|&(near, far, fold)| {
                let (from, to) = shared_edge(&panels[near.0], &panels[far.0]);
                let through = panels[far.0].between(Side::Bottom);
                Crease { near, far, from, to, through, fold }
            })
            .collect();
        let loops = self
            .loops
            .iter()
            .map(|&(near, (far, side), fold)| {
                let (from, to) = panels[far.0].side(side);
                Crease { near, far, from, to, through: Vec::new(), fold }
            })
            .collect();
        let glue = self
            .glue
            .into_iter()
            .map(|g| {
                let area = g.area(&panels[g.on.0].outline);
                Glue { on: g.on, face: g.face, area, onto: g.onto }
            })
            .collect();
        let holes = self
            .holes
            .into_iter()
            .map(|(panel, punch, radius)| {
                let at = match punch {
                    Punch::In(way) => panels[panel.0].cell.min + way,
                    Punch::At(at) => at,
                };
                Hole { panel, at, radius }
            })
            .collect();
        Net { blank, panels, creases, loops, arcs: self.arcs, glue, waste, holes, lines }
    }
}

impl Cells {
    /// What of the blank is no panel: whole cells, or what lies round panels that are none.
    fn unused(&self, lines: &Lines, blank: Rect) -> Vec<Waste> {
        let waste = |taken| move |outline| Waste { outline, taken, from: None };
        let taken = self.drafts.iter().map(|d| match &d.lies {
            Lies::Cell(c) => lines.cell((c.column, c.row), c.reach()).outline(),
            Lies::Aslant(outline, _) => outline.clone(),
        });
        let cells = || {
            self.drafts.iter().filter_map(|d| match &d.lies {
                Lies::Cell(c) => Some(c),
                Lies::Aslant(..) => None,
            })
        };
        if cells().count() < self.drafts.len() {
            let taken: Vec<Outline> = taken.collect();
            return around(&blank.outline(), &taken).into_iter().map(waste(Taken::Around)).collect();
        }
        let all = (0..lines.across.len() - 1).flat_map(|c| (0..lines.down.len() - 1).map(move |r| (c, r)));
        let free = all.filter(|at| !cells().any(|c| c.covers(*at)));
        free.map(|at| lines.cell(at, (1, 1)).outline()).map(waste(Taken::Cell)).collect()
    }
}

/// A cell without its strips, and the strips: left and right over the full height, top and bottom between them.
fn stripped(cell: Rect, strips: [Length; 4]) -> (Rect, Vec<Rect>) {
    let [top, right, bottom, left] = strips;
    let (x0, x1) = (cell.min.x + left, cell.max.x - right);
    let (y0, y1) = (cell.min.y + top, cell.max.y - bottom);
    let all = [
        Rect::between(cell.min.x, cell.min.y, x0, cell.max.y),
        Rect::between(x1, cell.min.y, cell.max.x, cell.max.y),
        Rect::between(x0, cell.min.y, x1, y0),
        Rect::between(x0, y1, x1, cell.max.y),
    ];
    let real = all.into_iter().filter(|s| s.width().is_positive() && s.height().is_positive()).collect();
    (Rect::between(x0, y0, x1, y1), real)
}

/// Where two neighbouring panels meet, as far as both reach.
fn shared_edge(a: &Panel, b: &Panel) -> (Point, Point) {
    if b.frame != Frame::Upright {
        return b.side(Side::Bottom);
    }
    let (ca, cb) = (a.cell, b.cell);
    let (ba, bb) = (a.outline.bounds(), b.outline.bounds());
    if ca.max.x == cb.min.x || cb.max.x == ca.min.x {
        let x = if ca.max.x == cb.min.x { ca.max.x } else { ca.min.x };
        (Point::new(x, ba.min.y.max(bb.min.y)), Point::new(x, ba.max.y.min(bb.max.y)))
    } else {
        let y = if ca.max.y == cb.min.y { ca.max.y } else { ca.min.y };
        (Point::new(ba.min.x.max(bb.min.x), y), Point::new(ba.max.x.min(bb.max.x), y))
    }
}
