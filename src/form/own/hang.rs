//! Panels hung on each other from the one that lies still, each with what is cut off it.

use super::build::{Built, Joint, Measures, Piece, duty};
use super::drawn::{Drawn, Matted, Runs, Trim};
use super::words::{Half, panel as panel_name};
use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::outline::Rect;
use crate::measure::point::Point;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Notch, Shape, Side, Slot};
use crate::net::flat::{Duty, Face, Frame, PanelId};
use crate::project::finding::OwnFault;

/// A net that grows.
pub struct Hanging<'a> {
    drawn: &'a Drawn,
    measures: &'a Measures<'a>,
    pieces: &'a [Piece],
    cells: Cells,
    /// The panel of each piece.
    ids: Vec<Option<PanelId>>,
    /// Of half a cell, which of its edges it hangs by.
    first: Vec<usize>,
    names: Vec<&'static str>,
}

impl<'a> Hanging<'a> {
    /// An empty blank.
    #[must_use]
    pub fn over(drawn: &'a Drawn, measures: &'a Measures<'a>, pieces: &'a [Piece], cells: Cells) -> Self {
        let n = pieces.len();
        Self { drawn, measures, pieces, cells, ids: vec![None; n], first: vec![0; n], names: Vec::new() }
    }

    /// Hangs every piece that can be reached on the one before it, and trims and glues them. `sizes` are those of the
    /// pieces.
    #[must_use]
    pub fn finish(
        mut self,
        sizes: &[(Length, Length)],
        still: usize,
        joints: &[Joint],
        mut faults: Vec<OwnFault>,
    ) -> Built {
        let order = self.hang(still, joints);
        for &piece in &order {
            if !self.trim(piece, sizes[piece]) {
                faults.push(OwnFault::Trimmed(self.pieces[piece].name()));
            }
        }
        let loose = (0..self.pieces.len()).filter(|i| self.ids[*i].is_none());
        faults.extend(loose.map(|i| OwnFault::Loose(self.pieces[i].name())));
        self.glue();
        let pieces = order.iter().map(|&i| self.pieces[i].clone()).collect();
        Built { net: self.cells.finish(), pieces, faults }
    }

    /// The pieces in the order of their panels.
    fn hang(&mut self, still: usize, joints: &[Joint]) -> Vec<usize> {
        let mut order = vec![still];
        self.add(still, None, None);
        let mut used = vec![false; joints.len()];
        let mut next = 0;
        while let Some(&near) = order.get(next) {
            next += 1;
            for (i, joint) in joints.iter().enumerate() {
                let [a, b] = joint.ends;
                let far = if a.0 == near { b } else { a };
                let mine = a.0 == near || b.0 == near;
                if used[i] || !mine || self.ids[far.0].is_some() {
                    continue;
                }
                used[i] = true;
                self.add(far.0, self.ids[near].map(|id| (id, joint.fold)), far.1);
                order.push(far.0);
            }
        }
        for (joint, _) in joints.iter().zip(used).filter(|(_, used)| !used) {
            let [a, b] = joint.ends;
            // Where such a crease runs is read off the half of a cell, where one of the two is one.
            let (near, far) = if self.pieces[a.0].half == Half::Whole { (a, b) } else { (b, a) };
            if let (Some(on), Some(id)) = (self.ids[near.0], self.ids[far.0]) {
                let side = self.side_of(far.0, far.1);
                self.cells.join(on, (id, side), joint.fold);
            }
        }
        order
    }

    fn runs(&self, piece: usize) -> Runs {
        let diagonal = self.drawn.cell(self.pieces[piece].at).and_then(|c| c.diagonal);
        diagonal.map_or(Runs::Falling, |d| d.runs)
    }

    /// What a side of the cell is called in the panel of a piece; nothing is the diagonal.
    fn side_of(&self, piece: usize, side: Option<Side>) -> Side {
        let half = self.pieces[piece].half;
        if half == Half::Whole {
            return side.unwrap_or(Side::Top);
        }
        let at = edges(self.runs(piece), half).iter().position(|e| e.0 == side).unwrap_or_default();
        [Side::Bottom, Side::Left, Side::Right][(at + 3 - self.first[piece]) % 3]
    }

    /// Makes a piece a panel, by a crease or by itself.
    fn add(&mut self, piece: usize, near: Option<(PanelId, Angle)>, by: Option<Side>) {
        let p = &self.pieces[piece];
        let cell = self.drawn.cell(p.at);
        let name = cell.and_then(|c| c.name).map(|n| panel_name(n).0).filter(|_| p.half == Half::Whole);
        let name = name.filter(|n| !self.names.contains(n)).unwrap_or_else(|| p.name());
        self.names.push(name);
        let duty = cell.and_then(duty).unwrap_or(Duty::Wall);
        let (column, row) = (usize::from(p.at.column), usize::from(p.at.row));
        let id = if p.half == Half::Whole {
            let id = match near {
                Some((near, fold)) => self.cells.hung(near, fold, (column, row), name, duty),
                None => self.cells.panel(column, row, name, duty),
            };
            self.cells.reach_over(id, usize::from(p.more.0), usize::from(p.more.1));
            id
        } else {
            let all = edges(self.runs(piece), p.half);
            let first = all.iter().position(|e| e.0 == by).unwrap_or_default();
            self.first[piece] = first;
            let (a, b) = (self.cells.corner_of(column, row), self.cells.corner_of(column + 1, row + 1));
            let corner = |at: Corner| match at {
                Corner::TopLeft => a,
                Corner::TopRight => Point::new(b.x, a.y),
                Corner::BottomRight => b,
                Corner::BottomLeft => Point::new(a.x, b.y),
            };
            let corners: Vec<Point> = (0..3).map(|i| corner(all[(first + i) % 3].1)).collect();
            match near {
                Some((near, fold)) => self.cells.hung_aslant(near, fold, (corners, Frame::THREE), name, duty),
                None => self.cells.aslant(corners, Frame::THREE, name, duty),
            }
        };
        let matted = match cell.and_then(|c| c.mat) {
            Some(Matted::Yes) => true,
            Some(Matted::No) => false,
            None => p.half == Half::Whole && matches!(duty, Duty::Wall | Duty::Lid),
        };
        if matted {
            self.cells.mat(id);
        }
        self.cells.level(id, cell.and_then(|c| c.level).unwrap_or_default());
        self.ids[piece] = Some(id);
    }

    /// Cuts off the panel what is to go; false where that cannot be, and nothing is cut.
    fn trim(&mut self, piece: usize, (width, height): (Length, Length)) -> bool {
        let p = &self.pieces[piece];
        let Some((cell, id)) = self.drawn.cell(p.at).zip(self.ids[piece]) else {
            return true;
        };
        if cell.trims.is_empty() {
            return true;
        }
        if p.half != Half::Whole || !fits(&cell.trims, self.measures, width, height) {
            return false;
        }
        let of = |span| self.measures.of(span);
        let mut slots = Vec::new();
        for trim in &cell.trims {
            match trim {
                Trim::Strip(side, wide) => self.cells.strip(id, *side, of(wide)),
                Trim::Wedge(corner, across, down) => {
                    self.cells.corner(id, *corner, Shape::Wedge { across: of(across), down: of(down) });
                }
                Trim::Round(corner, radius) => self.cells.corner(id, *corner, Shape::Round(of(radius))),
                Trim::Notch(side, radius) => self.cells.notch(id, Notch { side: *side, radius: of(radius) }),
                Trim::Slot(side, at, width, depth) => {
                    slots.push(Slot { side: *side, at: of(at), width: of(width), depth: of(depth) });
                }
                Trim::Hole(right, down, radius) => self.cells.hole(id, (of(right), of(down)), of(radius)),
            }
        }
        slots.sort_by_key(|s| (s.side, s.at));
        self.cells.slots(id, &slots);
        true
    }

    /// Spreads the glue that was confirmed.
    fn glue(&mut self) {
        let panel = |at| {
            let piece = self.pieces.iter().position(|p: &Piece| p.covers(at));
            piece.and_then(|p| self.ids[p])
        };
        for glue in &self.drawn.glue {
            let onto: Vec<PanelId> = glue.onto.iter().filter_map(|at| panel(*at)).collect();
            let Some(on) = panel(glue.on).filter(|on| !onto.is_empty() && !onto.contains(on)) else {
                continue;
            };
            // Where the face is found by folding, it is put right then.
            let face = glue.face.unwrap_or(Face::Outside);
            let border = glue.border.as_ref().map_or(Length::ZERO, |b| self.measures.of(b).at_least_zero());
            match &glue.strip {
                Some((side, wide)) => {
                    let strip = (*side, self.measures.of(wide).at_least_zero());
                    self.cells.glue_along(on, face, strip, border, &onto);
                }
                None if border.is_positive() => self.cells.glue_within(on, face, border, &onto),
                None => self.cells.glue(on, face, &onto),
            }
        }
    }
}

/// The sides of half a cell, clockwise on the card, each with the corner where it begins; nothing is the diagonal.
const fn edges(runs: Runs, half: Half) -> [(Option<Side>, Corner); 3] {
    use Corner::{BottomLeft, BottomRight, TopLeft, TopRight};
    match (runs, half) {
        (Runs::Falling, Half::Below) => {
            [(Some(Side::Bottom), BottomRight), (Some(Side::Left), BottomLeft), (None, TopLeft)]
        }
        (Runs::Falling, _) => [(Some(Side::Top), TopLeft), (Some(Side::Right), TopRight), (None, BottomRight)],
        (Runs::Rising, Half::Below) => {
            [(Some(Side::Right), TopRight), (Some(Side::Bottom), BottomRight), (None, BottomLeft)]
        }
        (Runs::Rising, _) => [(Some(Side::Left), BottomLeft), (Some(Side::Top), TopLeft), (None, TopRight)],
    }
}

/// Whether what is cut off leaves something, and no two pieces of it are in each other's way: the upright rectangles
/// round them are held against each other.
fn fits(trims: &[Trim], measures: &Measures, width: Length, height: Length) -> bool {
    let of = |span| measures.of(span);
    let mut strips = [Length::ZERO; 4];
    for trim in trims {
        if let Trim::Strip(side, wide) = trim {
            strips[*side as usize] = of(wide);
        }
    }
    let [top, right, bottom, left] = strips;
    if strips.iter().any(|s| *s < Length::ZERO) || left + right >= width || top + bottom >= height {
        return false;
    }
    let rect = Rect::between(left, top, width - right, height - bottom);
    let (w, h) = (rect.width(), rect.height());
    let cornered = |at: Corner, across: Length, down: Length| {
        let right = matches!(at, Corner::TopRight | Corner::BottomRight);
        let low = matches!(at, Corner::BottomLeft | Corner::BottomRight);
        let x = if right { rect.max.x - across } else { rect.min.x };
        let y = if low { rect.max.y - down } else { rect.min.y };
        Rect::between(x, y, x + across, y + down)
    };
    // Along a side from its left or upper end, and so far in.
    let sided = |side: Side, at: Length, along: Length, deep: Length| match side {
        Side::Top => Rect::between(rect.min.x + at, rect.min.y, rect.min.x + at + along, rect.min.y + deep),
        Side::Bottom => Rect::between(rect.min.x + at, rect.max.y - deep, rect.min.x + at + along, rect.max.y),
        Side::Left => Rect::between(rect.min.x, rect.min.y + at, rect.min.x + deep, rect.min.y + at + along),
        Side::Right => Rect::between(rect.max.x - deep, rect.min.y + at, rect.max.x, rect.min.y + at + along),
    };
    let mut taken: Vec<Rect> = Vec::new();
    let mut corners = Vec::new();
    let mut notches = 0;
    for trim in trims {
        let (piece, deep) = match trim {
            Trim::Strip(..) => continue,
            Trim::Wedge(at, across, down) => {
                corners.push(*at);
                (cornered(*at, of(across), of(down)), false)
            }
            Trim::Round(at, radius) => {
                corners.push(*at);
                (cornered(*at, of(radius), of(radius)), false)
            }
            Trim::Notch(side, radius) => {
                notches += 1;
                let (r, along) = (of(radius), if matches!(side, Side::Top | Side::Bottom) { w } else { h });
                (sided(*side, along.half() - r, r * 2, r), true)
            }
            Trim::Slot(side, at, broad, deep) => (sided(*side, of(at), of(broad), of(deep)), true),
            Trim::Hole(x, y, radius) => {
                let (at, r) = (Point::new(of(x), of(y)), of(radius));
                (Rect::between(at.x - r, at.y - r, at.x + r, at.y + r), true)
            }
        };
        if !piece.width().is_positive() || !piece.height().is_positive() {
            return false;
        }
        let within = piece.min.x >= rect.min.x
            && piece.min.y >= rect.min.y
            && piece.max.x <= rect.max.x
            && piece.max.y <= rect.max.y;
        // Notches and the like leave something on both sides, and end before the far edge.
        let through = deep && (piece.width() >= w || piece.height() >= h);
        let over =
            |o: &Rect| piece.min.x < o.max.x && o.min.x < piece.max.x && piece.min.y < o.max.y && o.min.y < piece.max.y;
        if !within || through || taken.iter().any(over) {
            return false;
        }
        taken.push(piece);
    }
    let twice = corners.iter().enumerate().any(|(i, c)| corners[i + 1..].contains(c));
    let all: crate::measure::area::Area = taken.iter().map(|t| t.area()).sum();
    !twice && notches <= 1 && all <= rect.area()
}
