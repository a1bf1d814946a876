//! What is added to a part, worked out: its place on the net, the piece it is cut from, its holes.
//!
//! Whatever is on a face keeps a rim to the face's scores and to a thumb notch, and lies in its middle. Faces that slide,
//! are glued or are hidden take none: they are those that take no mat. Rims, usual sizes and laps are common practice,
//! no source.

use crate::assembly::parts::{Assembly, Size};
use crate::fold::cross::inside;
use crate::fold::pose::flat;
use crate::fold::space::V3;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::outline::{Outline, Rect};
use crate::measure::point::{Point, Vector};
use crate::measure::system::{Native, System};
use crate::net::corner::Side;
use crate::net::flat::{Frame, Hole, Matting, Panel, PanelId, Taken};
use crate::net::mat::Mat;
use crate::project::bound;
use crate::project::extra::{Extra, ExtraKind};
use crate::project::finding::What;

/// A part of an assembly and one of its panels.
pub type On = (usize, PanelId);

/// One thing that is added.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Made {
    /// A second layer on mats: where each lies on its net, and how much smaller it is all round.
    Layer {
        /// Of which card.
        card: u16,
        /// Of the mat that shows.
        border: Length,
        /// Each mat's face and the layer on it.
        on: Vec<(On, Rect)>,
    },
    /// A label.
    Label {
        /// Of which card.
        card: u16,
        /// Its face.
        on: On,
        /// Where it lies on the net.
        rect: Rect,
    },
    /// A tag and its hole.
    Tag {
        /// Of which card.
        card: u16,
        /// Across and down.
        sides: [Length; 2],
    },
    /// An opening.
    Window {
        /// The card of the pane behind it and the pane's sides.
        pane: Option<(u16, [Length; 2])>,
        /// Its face.
        on: On,
        /// Where it lies on the net.
        rect: Rect,
    },
    /// Two holes.
    RibbonHoles {
        /// Their face.
        on: On,
        /// Each of them.
        holes: [Hole; 2],
    },
    /// A liner on the floor.
    Liner {
        /// Of which card.
        card: u16,
        /// Left to right and front to back.
        sides: [Length; 2],
    },
}

/// Between what is on a face and the face's scores; a window's pane laps onto it.
const RIM: Native<Length> = Native::lengths(5, 16, 80);
/// How far a pane laps onto the card round its window.
const LAP: Native<Length> = Native::lengths(1, 4, 60);
/// How far a window usually stays away from the scores.
const FRAME: Native<Length> = Native::lengths(5, 8, 150);
/// A tag.
const TAG: [Native<Length>; 2] = [Native::lengths(3, 2, 400), Native::lengths(5, 2, 650)];
/// How far apart the holes for a ribbon are.
const APART: Native<Length> = Native::lengths(1, 1, 250);
/// How wide they are.
const HOLE: Native<Length> = Native::lengths(3, 16, 50);
/// What a liner is smaller than the inside, in total each way.
const LOOSE: Native<Length> = Native::lengths(1, 32, 10);

/// What surrounds it.
pub struct Round<'a> {
    /// The part.
    pub assembly: &'a Assembly,
    /// Its mats.
    pub mats: &'a [Mat],
    /// Its card.
    pub card: u16,
    /// The system of the plan.
    pub system: System,
}

impl Round<'_> {
    /// Works `extra` out.
    ///
    /// # Errors
    /// What is wrong with it, and nothing is added.
    pub fn make(&self, extra: &Extra) -> Result<Made, What> {
        let card = extra.card.unwrap_or(self.card);
        for side in [&extra.width, &extra.height].into_iter().flatten().map(|g| g.length()) {
            let bound::Range { least, most } = bound::EXTRA_SIDE;
            if !bound::EXTRA_SIDE.holds(side) {
                return Err(What::LengthOutside { is: side, least, most });
            }
        }
        let typed = |usual: [Length; 2]| {
            let one = |given: &Option<_>, usual| given.as_ref().map_or(usual, crate::measure::given::Given::length);
            [one(&extra.width, usual[0]), one(&extra.height, usual[1])]
        };
        let of = |native: Native<Length>| native.of(self.system);
        let cut = Grid::every(bound::CUT_STEP.of(self.system));
        Ok(match extra.kind {
            ExtraKind::Layer => {
                let usual = self.mats.first().ok_or(What::LayerNeedsMats)?.reveal;
                let border = typed([usual; 2])[0];
                let flat = self.mats.iter().filter(|m| !m.is_shaped());
                let layer = |m: &Mat| ((m.part, m.panel), m.rect.inset(border));
                let on: Vec<_> = flat.map(layer).filter(|(_, r)| r.width().min(r.height()) >= border).collect();
                if on.is_empty() {
                    return Err(What::RevealTooWide { reveal: border });
                }
                Made::Layer { card, border, on }
            }
            ExtraKind::Label => {
                let (on, most) = self.face(extra, of(bound::CLEAR) * 2)?;
                let sides = typed([cut.down(most[0].half()), cut.down(most[1].scaled(1, 3))]);
                Made::Label { card, on, rect: self.middle(on, within(sides, most)?) }
            }
            ExtraKind::Window => {
                let (on, most) = self.face(extra, of(RIM))?;
                let frame = (of(FRAME) - of(RIM)) * 2;
                let sides = typed(most.map(|m| cut.down((m - frame).max(m.half()))));
                let rect = self.middle(on, within(sides, most)?);
                let pane = extra.card.map(|card| (card, sides.map(|s| s + of(LAP) * 2)));
                Made::Window { pane, on, rect }
            }
            ExtraKind::RibbonHoles => {
                let (on, most) = self.face(extra, of(bound::CLEAR) * 2)?;
                let usual = cut.down(of(APART).min(most[0].half()));
                let [apart, wide] = typed([usual, of(HOLE)]);
                within([apart + wide, wide], most)?;
                let rect = self.middle(on, [apart, Length::ZERO]);
                let hole = |at| Hole { panel: on.1, at, radius: wide.half() };
                Made::RibbonHoles { on, holes: [hole(rect.min), hole(rect.max)] }
            }
            ExtraKind::Tag => Made::Tag { card, sides: typed(TAG.map(of)) },
            ExtraKind::Liner => {
                let Size { width, depth, .. } = self.assembly.inside;
                let sides = [width, depth].map(|s| cut.down(s - of(LOOSE)));
                if sides[0].min(sides[1]) < of(bound::LEAST_PANEL) {
                    return Err(What::NothingToLine);
                }
                Made::Liner { card, sides }
            }
        })
    }

    /// The face that is asked for, and the most that it holds across and down, a rim of `rim` left.
    fn face(&self, extra: &Extra, rim: Length) -> Result<(On, [Length; 2]), What> {
        let all = faces(self.assembly);
        let found = all.iter().find(|f| extra.face.is_empty() || f.1 == extra.face);
        let &(on, _) = found.ok_or_else(|| What::NoSuchFace { face: extra.face.clone() })?;
        let net = &self.assembly.parts[on.0].net;
        let notch = net.waste.iter().filter(|w| w.taken == Taken::Notch && w.from == Some(on.1));
        let notch = notch.map(|w| w.outline.bounds()).next().unwrap_or_default();
        let panel = net.panel(on.1);
        let off = |kinds: &[Taken]| net.waste.iter().any(|w| w.from == Some(on.1) && kinds.contains(&w.taken));
        if panel.frame != Frame::Upright || off(&[Taken::Round, Taken::Wedge]) && !off(&[Taken::Notch, Taken::Slot]) {
            return Ok((on, upright(panel, rim)));
        }
        let cell = panel.outline.bounds();
        // A notch is in the middle of an edge: clear of it, and as far from the edge opposite.
        let beside = |long: Length, deep: Length| long - (rim + deep) * 2;
        let (w, h) = if notch.width() > notch.height() {
            (beside(cell.width(), Length::ZERO), beside(cell.height(), notch.height()))
        } else {
            (beside(cell.width(), notch.width()), beside(cell.height(), Length::ZERO))
        };
        Ok((on, [w, h]))
    }

    /// A rectangle of these sides in the middle of a face.
    fn middle(&self, (part, panel): On, sides: [Length; 2]) -> Rect {
        let at = centre(self.assembly.parts[part].net.panel(panel));
        let min = at - Vector::new(sides[0].half(), sides[1].half());
        Rect { min, max: Point::new(min.x + sides[0], min.y + sides[1]) }
    }
}

/// The middle of a panel as it is cut: a wall may be lower than its cell.
fn centre(panel: &Panel) -> Point {
    let bounds = panel.outline.bounds();
    match panel.frame {
        Frame::Upright => bounds.min + Vector::new(bounds.width().half(), bounds.height().half()),
        Frame::Aslant(_) => panel.middle(),
    }
}

/// The largest upright rectangle round the middle of a panel that leans or whose corners are cut, in the panel's own
/// proportion, that keeps `rim` to its edges: found by halving.
fn upright(panel: &Panel, rim: Length) -> [Length; 2] {
    let Some(left) = panel.outline.inset(rim) else {
        return [Length::ZERO; 2];
    };
    let corners: Vec<V3> = left.corners.iter().map(|&c| flat(c)).collect();
    let middle = flat(centre(panel));
    let whole = panel.outline.bounds();
    let sides = |share: i64| [whole.width().scaled(share, 1_000), whole.height().scaled(share, 1_000)];
    let fits = |share: i64| {
        let [w, h] = sides(share).map(|s| s.as_mm() / 2.0);
        let ends = [(w, h), (-w, h), (w, -h), (-w, -h)];
        // An edge that curves inward may reach in between its corners.
        let reaches = |c: &V3| (c.x - middle.x).abs() < w && (c.y - middle.y).abs() < h;
        ends.iter().all(|&(x, y)| inside(&corners, middle + V3::new(x, y, 0.0))) && !corners.iter().any(reaches)
    };
    let (mut low, mut high) = (0, 1_000);
    while high - low > 1 {
        let share = i64::midpoint(low, high);
        if fits(share) { low = share } else { high = share }
    }
    sides(low)
}

fn within(sides: [Length; 2], most: [Length; 2]) -> Result<[Length; 2], What> {
    let fits = sides[0] <= most[0] && sides[1] <= most[1] && most[0].min(most[1]).is_positive();
    if fits { Ok(sides) } else { Err(What::ExtraTooLarge(most.map(Length::at_least_zero))) }
}

/// The faces that something can be put on, with their names.
#[must_use]
pub fn faces(assembly: &Assembly) -> Vec<(On, String)> {
    // A panel that lies askew on the card has no upright middle that could be measured from its edges.
    let straight = |p: &Panel| {
        let sides = [Side::Top, Side::Bottom].map(|s| p.side(s));
        p.frame == Frame::Upright || sides.iter().any(|(a, b)| a != b && (a.x == b.x || a.y == b.y))
    };
    let takes = |p: &Panel| p.mat == Matting::Usual && straight(p);
    let parts = assembly.parts.iter().enumerate();
    let each = parts.flat_map(|(i, part)| {
        let panels = part.net.panels.iter().enumerate().filter(|(_, p)| takes(p));
        panels.map(move |(at, p)| ((i, PanelId(at)), assembly.face(i, p.name)))
    });
    each.collect()
}

/// How something is on its face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Laid {
    /// It lies on the card.
    Onto,
    /// It goes through the card.
    Through,
}

impl Made {
    /// The faces that it is on.
    #[must_use]
    pub fn on(&self) -> Vec<On> {
        match self {
            Self::Layer { on, .. } => on.iter().map(|o| o.0).collect(),
            Self::Label { on, .. } | Self::Window { on, .. } | Self::RibbonHoles { on, .. } => vec![*on],
            Self::Tag { .. } | Self::Liner { .. } => Vec::new(),
        }
    }

    /// What can be seen of it on a part: its face, its outline on the net, and whether it lies on the card or goes
    /// through it.
    #[must_use]
    pub fn shapes(&self, part: usize) -> Vec<((PanelId, Outline), Laid)> {
        let all: Vec<(On, Outline, Laid)> = match self {
            Self::Layer { on, .. } => on.iter().map(|(on, r)| (*on, r.outline(), Laid::Onto)).collect(),
            Self::Label { on, rect, .. } => vec![(*on, rect.outline(), Laid::Onto)],
            Self::Window { on, rect, .. } => vec![(*on, rect.outline(), Laid::Through)],
            Self::RibbonHoles { on, holes } => holes.iter().map(|h| (*on, h.outline(), Laid::Through)).collect(),
            Self::Tag { .. } | Self::Liner { .. } => Vec::new(),
        };
        let mine = all.into_iter().filter(|(on, ..)| on.0 == part);
        mine.map(|(on, outline, laid)| ((on.1, outline), laid)).collect()
    }

    /// The card that it lays on those faces.
    #[must_use]
    pub const fn raises(&self) -> Option<u16> {
        match self {
            Self::Layer { card, .. } | Self::Label { card, .. } => Some(*card),
            _ => None,
        }
    }

    /// The two measures that are asked for it.
    #[must_use]
    pub fn measures(&self) -> [Length; 2] {
        match self {
            Self::Layer { border, .. } => [*border; 2],
            Self::Label { rect, .. } | Self::Window { rect, .. } => [rect.width(), rect.height()],
            Self::RibbonHoles { holes, .. } => [holes[1].at.x - holes[0].at.x, holes[0].radius * 2],
            Self::Tag { sides, .. } | Self::Liner { sides, .. } => *sides,
        }
    }

    /// The pieces that it is cut from for one part: card, sides, how many.
    #[must_use]
    pub fn pieces(&self) -> Vec<(u16, [Length; 2], u32)> {
        let sides = |r: &Rect| [r.width(), r.height()];
        match self {
            Self::Layer { card, on, .. } => {
                let mut all: Vec<(u16, [Length; 2], u32)> = Vec::new();
                for [w, h] in on.iter().map(|o| sides(&o.1)) {
                    match all.iter_mut().find(|p| p.1 == [w, h] || p.1 == [h, w]) {
                        Some(same) => same.2 += 1,
                        None => all.push((*card, [w, h], 1)),
                    }
                }
                all
            }
            Self::Label { card, rect, .. } => vec![(*card, sides(rect), 1)],
            Self::Tag { card, sides } | Self::Liner { card, sides } => vec![(*card, *sides, 1)],
            Self::Window { pane, .. } => pane.iter().map(|&(card, sides)| (card, sides, 1)).collect(),
            Self::RibbonHoles { .. } => Vec::new(),
        }
    }
}
