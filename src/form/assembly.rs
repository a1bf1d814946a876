//! `Assembly`: what a form makes: parts, the moves that fold them, and the sizes that it promises.

use crate::measure::length::Length;
use crate::net::corner::Side;
use crate::net::flat::{CreaseId, Net, PanelId};

/// Width (left to right), depth (front to back) and height.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Size {
    /// Left to right, seen from the front.
    pub width: Length,
    /// Front to back.
    pub depth: Length,
    /// Bottom to top.
    pub height: Length,
}

impl std::ops::Add for Size {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        Self { width: self.width + o.width, depth: self.depth + o.depth, height: self.height + o.height }
    }
}

/// Everything that a form makes of a request.
#[derive(Clone, Debug, PartialEq)]
pub struct Assembly {
    /// The parts, each from one blank.
    pub parts: Vec<Part>,
    /// Score to score.
    pub finished: Size,
    /// What is free inside, promised.
    pub inside: Size,
    /// What it takes up, promised, without mats.
    pub outside: Size,
    /// Strips and pieces that are cut besides the parts.
    pub trims: Vec<Trim>,
}

/// One part of an assembly, from one blank.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its name in plain words, where an assembly has several.
    pub name: &'static str,
    /// Its flat pattern.
    pub net: Net,
    /// What the net's first panel is, so that the folded part stands upright.
    pub root: Root,
    /// Edges that come together when it is folded.
    pub meets: Vec<Meet>,
    /// How it folds, in order.
    pub moves: Vec<Move>,
}

/// What the panel that lies still becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Root {
    /// The front, its outside to the reader and its top edge up.
    Front,
    /// The base, its underside to the reader and the front beyond its top edge.
    Base,
}

/// Two edges that lie along each other when the part is folded, as far as score lines go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meet {
    /// One edge.
    pub edge: (PanelId, Side),
    /// The line that it lies along.
    pub along: (PanelId, Side),
    /// How far it stays away from it: what is trimmed off on purpose.
    pub gap: Length,
}

/// Creases that turn together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Move {
    /// What it is, for steps and for the folded view.
    pub name: MoveName,
    /// How they turn.
    pub way: Way,
}

/// What a move does; steps are worded from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MoveName {
    /// The glue tab turns in.
    Tab,
    /// The walls fold round.
    Walls,
    /// The seam closes over the glued tab.
    Seam,
    /// The inner panel of the base folds in.
    BaseInner,
    /// The side flaps of the base fold in.
    BaseSides,
    /// The outer panel of the base closes it.
    BaseOuter,
    /// The dust flaps fold in.
    DustFlaps,
    /// The lid closes and its tuck slides in.
    Close,
    /// Front and back come up.
    Uprights,
    /// The wings fold round the corners.
    Wings,
    /// The end flaps come up over the wings.
    Ends,
    /// The dust flaps of the lower end fold in.
    LowerDustFlaps,
    /// The lower lid closes and its tuck slides in.
    CloseBelow,
}

/// How the creases of a move turn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Way {
    /// Each by an even turn to its end.
    Even(Vec<CreaseId>),
    /// A lid closes while the tip of its tuck slides down inside a wall: the tuck bends over further than at the end.
    TuckIn {
        /// The lid's crease.
        lid: CreaseId,
        /// The tuck's crease.
        tuck: CreaseId,
        /// The wall that it slides behind.
        behind: PanelId,
        /// The gap that the tip goes through, from the wall's middle to the dust flaps.
        gap: Length,
    },
}

/// A strip or piece besides the parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trim {
    /// Its name in plain words.
    pub name: &'static str,
    /// Its longer side.
    pub length: Length,
    /// Its shorter side.
    pub width: Length,
    /// How many for one assembly.
    pub count: u32,
}
