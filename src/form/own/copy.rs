//! A copy of a part of the catalogue as a drawn form, to be changed.

use super::build::{Measures, duty};
use super::drawn::{At, Cell, Drawn, Gluing, Line, Matted, SizeName, Span, Stance, Trim, Tuck, Turn};
use super::shape::make;
use super::words::{MOVES, panel_named, word};
use crate::assembly::moves::{Move, Way as Turning};
use crate::assembly::parts::{Part, Root};
use crate::measure::given::Given;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::outline::Rect;
use crate::measure::system::System;
use crate::net::corner::{Corner, Side};
use crate::net::flat::{CreaseId, Frame, Matting, Net, PanelId, Taken, Waste};

/// `part` as a drawn form in the lengths of `system`; nothing where it is no grid, or larger than a drawn form may be.
#[must_use]
pub fn copy(part: &Part, system: System, score: Grid, clear: Length) -> Option<Drawn> {
    let net = &part.net;
    let upright = net.panels.iter().all(|p| p.frame == Frame::Upright);
    if !upright || part.strips.is_some() || !net.arcs.is_empty() || !net.loops.is_empty() {
        return None;
    }
    let stance = match part.root {
        Root::Front => Stance::Front,
        Root::Base => Stance::Base,
        Root::OnCorner | Root::Leaning(_) => return None,
    };
    let copying = Copying { net, system };
    let cells: Vec<(At, Cell)> =
        (0..net.panels.len()).map(|i| copying.cell(PanelId(i)).map(|c| (c.at, c))).collect::<Option<_>>()?;
    let at = |p: PanelId| cells[p.0].0;
    let mut drawn = Drawn {
        columns: copying.spans(&net.lines.across)?,
        rows: copying.spans(&net.lines.down)?,
        still: cells.first().map(|c| c.0),
        stance: Some(stance),
        ..Drawn::default()
    };
    cells.iter().for_each(|(_, cell)| drawn.put(cell.clone()));
    for between in drawn.inner() {
        let pair = [between.at, between.other()].map(|c| cells.iter().position(|x| x.0 == c));
        let crease = net
            .creases
            .iter()
            .find(|c| [[c.near.0, c.far.0], [c.far.0, c.near.0]].contains(&pair.map(|p| p.unwrap_or(usize::MAX))));
        drawn.draw(between, crease.map_or(Line::Cut, |c| Line::Score(c.fold)));
    }
    for glue in &net.glue {
        let whole = net.panel(glue.on).outline.bounds();
        let area = glue.area.bounds();
        let gaps =
            [area.min.y - whole.min.y, whole.max.x - area.max.x, whole.max.y - area.max.y, area.min.x - whole.min.x];
        let border = gaps.iter().copied().min().unwrap_or_default();
        let deep = gaps.iter().position(|g| *g > border + Length::um(1));
        // Along the side opposite to the one from which most is left free.
        let strip = deep.map(|i| {
            let side = [Side::Bottom, Side::Left, Side::Top, Side::Right][i];
            let wide = if i % 2 == 0 { area.height() } else { area.width() };
            (side, wide + border * 2)
        });
        drawn.glue.push(Gluing {
            on: at(glue.on),
            face: Some(glue.face),
            onto: glue.onto.iter().map(|p| at(*p)).collect(),
            border: if border.is_positive() || strip.is_some() { Some(copying.span(border)?) } else { None },
            strip: match strip {
                Some((side, wide)) => Some((side, copying.span(wide)?)),
                None => None,
            },
        });
    }
    for m in &part.moves {
        drawn.order.push(copying.turn(m, &at)?);
    }
    // What follows by itself needs no word.
    let no_sizes = |_: SizeName| Length::ZERO;
    let measures = Measures { sizes: &no_sizes, score, system };
    let made = make(&drawn, &measures, clear).ok()?;
    for (p, panel) in net.panels.iter().enumerate() {
        let found = made.built.panel(at(PanelId(p)))?;
        let found = made.part.net.panel(found);
        if let Some(cell) = drawn.cell_mut(at(PanelId(p))) {
            cell.level = (found.level != panel.level).then_some(panel.level);
            cell.mat = (found.mat != panel.mat).then_some(match panel.mat {
                Matting::Usual => Matted::Yes,
                Matting::Never => Matted::No,
            });
        }
    }
    Some(drawn)
}

struct Copying<'a> {
    net: &'a Net,
    system: System,
}

impl Copying<'_> {
    fn span(&self, length: Length) -> Option<Span> {
        Given::of(length, self.system).map(Span::typed)
    }

    fn spans(&self, lines: &[Length]) -> Option<Vec<Span>> {
        if lines.len() > usize::from(super::drawn::MOST) + 1 {
            return None;
        }
        lines.windows(2).map(|pair| self.span(pair[1] - pair[0])).collect()
    }

    fn cell(&self, id: PanelId) -> Option<Cell> {
        let panel = self.net.panel(id);
        let place =
            |lines: &[Length], at: Length| lines.iter().position(|l| *l == at).and_then(|i| u8::try_from(i).ok());
        let lines = &self.net.lines;
        let at = At::new(place(&lines.across, panel.cell.min.x)?, place(&lines.down, panel.cell.min.y)?);
        let mut cell = Cell::panel(at);
        cell.name = panel_named(panel.name);
        cell.duty = (duty(&cell) != Some(panel.duty)).then_some(panel.duty);
        let trims = self.net.waste.iter().filter(|w| w.from == Some(id));
        cell.trims = trims.map(|w| self.trim(panel.cell, panel.outline.bounds(), w)).collect::<Option<_>>()?;
        for hole in self.net.holes.iter().filter(|h| h.panel == id) {
            let way = hole.at - panel.cell.min;
            cell.trims.push(Trim::Hole(self.span(way.x)?, self.span(way.y)?, self.span(hole.radius)?));
        }
        Some(cell)
    }

    fn trim(&self, cell: Rect, rect: Rect, waste: &Waste) -> Option<Trim> {
        let (off, first) = (waste.outline.bounds(), *waste.outline.corners.first()?);
        let (w, h) = (self.span(off.width())?, self.span(off.height())?);
        let corner = || match (first.x == rect.min.x, first.y == rect.min.y) {
            (true, true) => Corner::TopLeft,
            (false, true) => Corner::TopRight,
            (false, false) => Corner::BottomRight,
            (true, false) => Corner::BottomLeft,
        };
        Some(match waste.taken {
            Taken::Strip if off.height() == cell.height() => {
                Trim::Strip(if off.min.x == cell.min.x { Side::Left } else { Side::Right }, w)
            }
            Taken::Strip => Trim::Strip(if off.min.y == cell.min.y { Side::Top } else { Side::Bottom }, h),
            Taken::Wedge => Trim::Wedge(corner(), w, h),
            Taken::Round => Trim::Round(corner(), w),
            Taken::Notch => {
                let across = off.width() > off.height();
                let side = match (across, off.min.y == rect.min.y, off.min.x == rect.min.x) {
                    (true, true, _) => Side::Top,
                    (true, false, _) => Side::Bottom,
                    (false, _, true) => Side::Left,
                    (false, _, false) => Side::Right,
                };
                Trim::Notch(side, if across { h } else { w })
            }
            Taken::Slot => {
                let (right, down) = (self.span(off.min.x - rect.min.x)?, self.span(off.min.y - rect.min.y)?);
                if off.min.y == rect.min.y {
                    Trim::Slot(Side::Top, right, w, h)
                } else if off.max.y == rect.max.y {
                    Trim::Slot(Side::Bottom, right, w, h)
                } else {
                    Trim::Slot(if off.min.x == rect.min.x { Side::Left } else { Side::Right }, down, h, w)
                }
            }
            Taken::Cell | Taken::Around => return None,
        })
    }

    fn turn(&self, m: &Move, at: &impl Fn(PanelId) -> At) -> Option<Turn> {
        let far = |c: &CreaseId| self.net.creases.get(c.0).map(|c| at(c.far));
        let name = word(MOVES, m.name).map(|_| m.name);
        Some(match &m.way {
            Turning::Even(creases) => Turn { name, cells: creases.iter().map(far).collect::<Option<_>>()?, tuck: None },
            Turning::TuckIn { lid, tuck, behind, gap } => Turn {
                name,
                cells: vec![far(lid)?],
                tuck: Some(Tuck { at: far(tuck)?, behind: at(*behind), gap: Some(self.span(*gap)?) }),
            },
            Turning::Sprung { .. } | Turning::EndOnly { .. } => return None,
        })
    }
}
