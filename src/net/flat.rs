//! `Net`: one flat pattern, outside face up, in the blank's own coordinates.

use crate::measure::angle::Angle;
use crate::measure::area::Area;
use crate::measure::length::Length;
use crate::measure::outline::{Outline, Rect};
use crate::measure::point::{Point, Vector};

use super::arc::Arc;
use super::cells::Lines;
use super::corner::Side;

/// The place of a panel in [`Net::panels`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PanelId(pub usize);

/// The place of a crease in [`Net::creases`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CreaseId(pub usize);

/// What a panel does in the folded part. Steps, mats and cautions hang on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Duty {
    /// A wall that is seen.
    Wall,
    /// A floor that the contents stand on.
    Floor,
    /// A lid that closes the top.
    Lid,
    /// Glued inside a wall to close the ring.
    Tab,
    /// Slides in behind a wall and holds the lid.
    Tuck,
    /// Folds in under the lid and keeps dust and light out.
    DustFlap,
    /// One of several layers glued together into a floor.
    BaseFlap,
    /// Folds round a corner and is glued under an end flap.
    Wing,
    /// Comes up outside the wings and is glued over them.
    EndFlap,
    /// Stands between boxes.
    Divider,
    /// Turned out to be glued onto another part.
    Flange,
    /// Turned right over along a free edge, so that the edge is double.
    Hem,
    /// Stands on a roof, where all layers come together: no wall of the space within.
    Ridge,
}

/// One flat piece between creases, cuts and edges.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panel {
    /// Its name in plain words, unique in its net.
    pub name: &'static str,
    /// What it does.
    pub duty: Duty,
    /// Score to score, before trims and corners; of a panel that stands aslant the upright rectangle round it.
    pub cell: Rect,
    /// As cut.
    pub outline: Outline,
    /// How its sides are named.
    pub frame: Frame,
    /// Where it lies when folded, outward from its scores, in halves of a card thickness: flaps that pile up at one
    /// place have different levels.
    pub level: i8,
    /// Whether it takes a mat unless told otherwise.
    pub mat: Matting,
}

/// How the sides of a panel are named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Frame {
    /// As it lies on the card: its sides run across and down.
    Upright,
    /// As it stands on its crease, its lower side: top, right, bottom and left, each from one corner of its outline to
    /// another.
    Aslant([(usize, usize); 4]),
}

impl Frame {
    /// Three sides of a panel that hangs on its first; at its top is a point.
    pub const THREE: [(usize, usize); 4] = [(2, 2), (2, 0), (0, 1), (1, 2)];
    /// Four sides of a panel that hangs on its first.
    pub const FOUR: [(usize, usize); 4] = [(2, 3), (3, 0), (0, 1), (1, 2)];
}

impl Panel {
    /// The corners between the two of a side, where that is no straight line.
    #[must_use]
    pub fn between(&self, side: Side) -> Vec<Point> {
        match self.frame {
            Frame::Aslant(sides) => {
                let (a, b) = sides[side as usize];
                self.outline.corners.get(a + 1..b).unwrap_or_default().to_vec()
            }
            Frame::Upright => Vec::new(),
        }
    }

    /// Both ends of a side, as cut.
    #[must_use]
    pub fn side(&self, side: Side) -> (Point, Point) {
        if let Frame::Aslant(sides) = self.frame {
            let (a, b) = sides[side as usize];
            let corner = |i: usize| self.outline.corners.get(i).copied().unwrap_or_default();
            return (corner(a), corner(b));
        }
        let b = self.outline.bounds();
        let (right, left) = (Point::new(b.max.x, b.min.y), Point::new(b.min.x, b.max.y));
        match side {
            Side::Top => (b.min, right),
            Side::Right => (right, b.max),
            Side::Bottom => (left, b.max),
            Side::Left => (b.min, left),
        }
    }

    /// A place well within it.
    #[must_use]
    pub fn middle(&self) -> Point {
        let half = |a: Length, b: Length| (a + b).half();
        let mean = |of: fn(&Point) -> Length| {
            let sum: Length = self.outline.corners.iter().map(of).sum();
            sum.scaled(1, (self.outline.corners.len() as i64).max(1))
        };
        match self.frame {
            Frame::Upright => {
                Point::new(half(self.cell.min.x, self.cell.max.x), half(self.cell.min.y, self.cell.max.y))
            }
            Frame::Aslant(_) => Point::new(mean(|p| p.x), mean(|p| p.y)),
        }
    }
}

/// Whether a panel takes a mat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Matting {
    /// Unless it is switched off.
    Usual,
    /// Never: it slides, is glued or is hidden.
    Never,
}

/// A fold between two panels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Crease {
    /// The panel nearer the root.
    pub near: PanelId,
    /// The panel that it carries.
    pub far: PanelId,
    /// One end.
    pub from: Point,
    /// The other end.
    pub to: Point,
    /// Places between the ends where it is curved, in order.
    pub through: Vec<Point>,
    /// How far it is folded in the end: above zero away from the reader (mountain, outside face up), below zero
    /// towards the reader (valley). Nothing: creased towards the reader and opened again.
    pub fold: Angle,
}

impl Crease {
    /// It as a line of straight stretches.
    pub fn run(&self) -> impl Iterator<Item = Point> {
        std::iter::once(self.from).chain(self.through.iter().copied()).chain([self.to])
    }

    /// Its straight stretches.
    #[must_use]
    pub fn stretches(&self) -> Vec<(Point, Point)> {
        self.run().zip(self.run().skip(1)).collect()
    }
}

/// A face of a panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    /// What is seen when the part is folded.
    Outside,
    /// What the contents touch.
    Inside,
}

/// Glue on one face of a panel and the panels that it meets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Glue {
    /// The panel that takes the glue.
    pub on: PanelId,
    /// The face that takes it.
    pub face: Face,
    /// Where on it.
    pub area: Outline,
    /// The panels it is pressed onto, the one it touches most first.
    pub onto: Vec<PanelId>,
}

/// Why a piece of the blank is taken away.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Taken {
    /// A whole cell between lines.
    Cell,
    /// What lies round panels that are no cells.
    Around,
    /// A strip off a panel's edge.
    Strip,
    /// A wedge off a corner.
    Wedge,
    /// What lies outside a rounded corner.
    Round,
    /// A thumb notch.
    Notch,
    /// A slot for another part.
    Slot,
}

/// A piece of the blank that is taken away.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waste {
    /// Its shape.
    pub outline: Outline,
    /// Why it goes.
    pub taken: Taken,
    /// The panel that it is taken from, where it is not a whole cell.
    pub from: Option<PanelId>,
}

/// A round hole, punched through a panel and all that lies on it once its edge is turned in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Hole {
    /// The panel.
    pub panel: PanelId,
    /// Its middle.
    pub at: Point,
    /// Its radius.
    pub radius: Length,
}

impl Hole {
    /// As it is drawn, with straight edges.
    #[must_use]
    pub fn outline(&self) -> Outline {
        const EDGES: i32 = 16;
        let r = self.radius.as_mm();
        let corner = |i: i32| {
            let a = std::f64::consts::TAU * f64::from(i) / f64::from(EDGES);
            self.at + Vector::new(Length::round_mm(r * libm::cos(a)), Length::round_mm(r * libm::sin(a)))
        };
        Outline::new((0..EDGES).map(corner).collect())
    }
}

/// Which way something runs on a blank or a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Run {
    /// From side to side.
    Across,
    /// From top to bottom.
    Up,
}

/// A flat pattern cut from one rectangular blank.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Net {
    /// The blank.
    pub blank: Rect,
    /// All panels; the first is the one that lies still while the rest is folded.
    pub panels: Vec<Panel>,
    /// Arcs along which it is scored and cut.
    pub arcs: Vec<Arc>,
    /// All creases, each after the one that its near panel hangs on.
    pub creases: Vec<Crease>,
    /// Creases between panels that hang together already: folded with them, they come out as they must.
    pub loops: Vec<Crease>,
    /// All glued places.
    pub glue: Vec<Glue>,
    /// All that is taken away.
    pub waste: Vec<Waste>,
    /// All holes that are punched in the end; panels are counted whole.
    pub holes: Vec<Hole>,
    /// The lines across the blank, for nets that are a grid.
    pub lines: Lines,
}

impl Net {
    /// The panel at `id`. Ids come from the net itself.
    #[must_use]
    pub fn panel(&self, id: PanelId) -> &Panel {
        &self.panels[id.0]
    }

    /// The panel called `name`.
    #[must_use]
    pub fn named(&self, name: &str) -> Option<PanelId> {
        self.panels.iter().position(|p| p.name == name).map(PanelId)
    }

    /// The crease that carries `panel`; the root has none.
    #[must_use]
    pub fn carrier(&self, panel: PanelId) -> Option<CreaseId> {
        self.creases.iter().position(|c| c.far == panel).map(CreaseId)
    }

    /// Every crease: those that panels hang on, and those that close a loop.
    pub fn folds(&self) -> impl Iterator<Item = &Crease> {
        self.creases.iter().chain(&self.loops)
    }

    /// The creases between `panel` and the one that lies still, from `panel` on.
    #[must_use]
    pub fn carriers(&self, panel: PanelId) -> Vec<CreaseId> {
        let up = |c: &CreaseId| self.creases.get(c.0).and_then(|c| self.carrier(c.near));
        std::iter::successors(self.carrier(panel), up).collect()
    }

    /// Panels and waste together: equal to the blank's area where nothing is lost or counted twice.
    #[must_use]
    pub fn accounted(&self) -> Area {
        let panels: Area = self.panels.iter().map(|p| p.outline.area()).sum();
        let waste: Area = self.waste.iter().map(|w| w.outline.area()).sum();
        panels + waste
    }

    /// The way the scores between walls and floors run, by their whole length: those that a box stands by. Nothing
    /// where there are none, or as many each way.
    #[must_use]
    pub fn main_scores(&self) -> Option<Run> {
        let stands = |p: PanelId| matches!(self.panel(p).duty, Duty::Wall | Duty::Floor);
        let main = self.creases.iter().filter(|c| stands(c.near) && stands(c.far));
        let (up, across): (Vec<_>, Vec<_>) =
            main.map(|c| ((c.to.y - c.from.y).abs(), (c.to.x - c.from.x).abs())).unzip();
        let (up, across): (Length, Length) = (up.into_iter().sum(), across.into_iter().sum());
        match up.cmp(&across) {
            std::cmp::Ordering::Less => Some(Run::Across),
            std::cmp::Ordering::Equal => None,
            std::cmp::Ordering::Greater => Some(Run::Up),
        }
    }

    /// The longer side of the blank.
    #[must_use]
    pub fn longest(&self) -> Length {
        self.blank.width().max(self.blank.height())
    }
}
