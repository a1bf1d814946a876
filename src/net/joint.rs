//! A wrap made of two blanks with a joint: where one blank is too long for its sheet.
//!
//! The joint stands at a score between two walls. The left piece keeps the score and gets a second glue tab beyond it;
//! the right piece begins at the score and is glued onto the tab, outside it, while both are flat. Glued, the two are
//! the one blank again, with one more layer inside the wall beside the joint, as beside the wrap's own tab; it stands opposite that
//! tab, so how sure a fit is does not change: of two walls that span a box the one with more glued edges counts.

use crate::measure::length::Length;
use crate::measure::outline::{Outline, Rect};
use crate::measure::point::{Point, Vector};

use super::cells::Lines;
use super::corner::{Shape, Trimmed};
use super::flat::{Crease, CreaseId, Duty, Face, Frame, Glue, Hole, Matting, Net, Panel, PanelId, Taken, Waste};

/// A net in two pieces.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joint {
    /// The score at which it stands.
    pub crease: CreaseId,
    /// The wall of the right piece that is glued onto the tab.
    pub onto: PanelId,
    /// The piece with the tab, and the other one.
    pub halves: [Net; 2],
}

/// How much wider than the tab the wall that hides it must be.
const ROOM: Length = Length::mm(2);

impl Net {
    /// The net in two pieces of about the same length with a tab of `lap`; nothing where it is no wrap: walls side by
    /// side that a glue tab closes.
    #[must_use]
    pub fn joint(&self, lap: Length) -> Option<Joint> {
        let upright = self.panels.iter().all(|p| p.frame == Frame::Upright);
        if !upright || !self.panels.iter().any(|p| p.duty == Duty::Tab) {
            return None;
        }
        let at = |c: &Crease| c.from.x;
        let longer = |c: &Crease| (at(c) + lap).max(self.blank.width() - at(c));
        let best = (0..self.creases.len()).filter(|i| self.parts_at(&self.creases[*i], lap)).min_by_key(|i| {
            let c = &self.creases[*i];
            (longer(c), at(c))
        })?;
        let crease = &self.creases[best];
        let onto = if self.panel(crease.near).cell.min.x == at(crease) { crease.near } else { crease.far };
        Some(Joint { crease: CreaseId(best), onto, halves: [self.left_of(crease, lap)?, self.right_of(crease)] })
    }

    /// Whether the net can be parted at this score: between two walls, of which the right one hides the tab, and with
    /// no other score on its line.
    fn parts_at(&self, crease: &Crease, lap: Length) -> bool {
        let upright = |c: &Crease| c.from.x == c.to.x;
        let walls = [crease.near, crease.far].map(|p| self.panel(p));
        let right = walls[0].cell.width().min(walls[1].cell.width());
        upright(crease)
            && walls.iter().all(|p| p.duty == Duty::Wall)
            && right >= lap + ROOM
            && walls[0].cell.min.y == walls[1].cell.min.y
            && self.creases.iter().filter(|c| upright(c) && c.from.x == crease.from.x).count() == 1
    }

    /// The panels on one side of a line.
    fn ids(&self, on: impl Fn(Rect) -> bool) -> Vec<PanelId> {
        (0..self.panels.len()).map(PanelId).filter(|id| on(self.panel(*id).cell)).collect()
    }

    /// What stands on these panels and these cells, `way` further, on a blank so wide.
    fn with(&self, ids: &[PanelId], cells: impl Fn(Rect) -> bool, way: Vector, width: Length) -> Self {
        let place = |id: PanelId| ids.iter().position(|i| *i == id).map(PanelId);
        let moved = |p: Point| p + way;
        let rect = |r: Rect| Rect { min: moved(r.min), max: moved(r.max) };
        let panels = ids.iter().map(|id| self.panel(*id)).map(|p| Panel {
            cell: rect(p.cell),
            outline: p.outline.moved(way),
            ..p.clone()
        });
        let creases = self.creases.iter().filter_map(|c| {
            let (near, far) = (place(c.near)?, place(c.far)?);
            Some(Crease { near, far, from: moved(c.from), to: moved(c.to), ..c.clone() })
        });
        let glue = self.glue.iter().filter_map(|g| {
            let onto = g.onto.iter().filter_map(|p| place(*p)).collect();
            Some(Glue { on: place(g.on)?, face: g.face, area: g.area.moved(way), onto })
        });
        let waste = self.waste.iter().filter_map(|w| {
            let from = match w.from {
                Some(id) => Some(place(id)?),
                None if cells(w.outline.bounds()) => None,
                None => return None,
            };
            Some(Waste { outline: w.outline.moved(way), taken: w.taken, from })
        });
        let holes = self.holes.iter().filter_map(|h| Some(Hole { panel: place(h.panel)?, at: moved(h.at), ..*h }));
        let across = self.lines.across.iter().map(|x| *x + way.x);
        let across = across.filter(|x| *x >= Length::ZERO && *x <= width).collect();
        Self {
            blank: Rect::sized(width, self.blank.height()),
            panels: panels.collect(),
            creases: creases.collect(),
            loops: Vec::new(),
            arcs: Vec::new(),
            glue: glue.collect(),
            waste: waste.collect(),
            holes: holes.collect(),
            lines: Lines { across, down: self.lines.down.clone() },
        }
    }

    fn right_of(&self, crease: &Crease) -> Self {
        let at = crease.from.x;
        let here = |cell: Rect| cell.min.x >= at;
        self.with(&self.ids(here), here, Vector::new(-at, Length::ZERO), self.blank.width() - at)
    }

    fn left_of(&self, crease: &Crease, lap: Length) -> Option<Self> {
        let at = crease.from.x;
        let here = |cell: Rect| cell.max.x <= at;
        let ids = self.ids(here);
        let mut net = self.with(&ids, here, Vector::default(), at);
        let near = ids.iter().position(|id| [crease.near, crease.far].contains(id)).map(PanelId)?;
        let wall = self.panel(ids[near.0]).cell;
        let (width, far) = (at + lap, PanelId(net.panels.len()));
        net.blank = Rect::sized(width, self.blank.height());
        net.lines.across.push(width);
        for rows in self.lines.down.windows(2) {
            let cell = Rect::between(at, rows[0], width, rows[1]);
            if (rows[0], rows[1]) != (wall.min.y, wall.max.y) {
                net.waste.push(Waste { outline: cell.outline(), taken: Taken::Cell, from: None });
                continue;
            }
            let down = lap.min(cell.height().scaled(1, 4));
            let wedge = Shape::Wedge { across: lap, down };
            let corners = [Shape::Square, wedge, wedge, Shape::Square];
            let (outline, off) = Trimmed { rect: cell, corners, ..Trimmed::default() }.cut();
            let take = |(outline, taken): (Outline, Taken)| Waste { outline, taken, from: Some(far) };
            net.waste.extend(off.into_iter().map(take));
            net.glue.push(Glue { on: far, face: Face::Outside, area: outline.clone(), onto: Vec::new() });
            let (name, duty, level, mat) = ("joint tab", Duty::Tab, -1, Matting::Never);
            net.panels.push(Panel { name, duty, cell, outline, frame: Frame::Upright, level, mat });
            net.creases.push(Crease { near, far, ..crease.clone() });
        }
        Some(net)
    }
}
