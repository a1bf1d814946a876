//! `Assembly`: what a form makes: parts, the moves that fold them, and the sizes that it promises.

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::net::corner::Side;
use crate::net::flat::{Net, PanelId};
use crate::project::bound::Range;

use super::moves::Move;

/// Width (left to right), depth (front to back) and height.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Size {
    /// Left to right, seen from the front.
    pub width: Length,
    /// Front to back.
    pub depth: Length,
    /// Bottom to top.
    pub height: Length,
}

impl Size {
    /// Width, depth and height in another order.
    #[must_use]
    pub const fn ordered(self, order: [usize; 3]) -> Self {
        let own = [self.width, self.depth, self.height];
        Self { width: own[order[0] % 3], depth: own[order[1] % 3], height: own[order[2] % 3] }
    }
}

impl Size {
    /// What is left when `taken` is gone each way, not below nothing.
    #[must_use]
    pub fn less(self, taken: Self) -> Self {
        let left = |a: Length, b: Length| (a - b).at_least_zero().min(a);
        Self {
            width: left(self.width, taken.width),
            depth: left(self.depth, taken.depth),
            height: left(self.height, taken.height),
        }
    }
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
    /// What is free inside, promised; nothing at all where boxes only stand on it.
    pub inside: Size,
    /// What it takes up, promised, without mats.
    pub outside: Size,
    /// Strips and pieces that are cut besides the parts.
    pub trims: Vec<Trim>,
    /// How parts go together, in the order in which the hands do it.
    pub joins: Vec<Join>,
    /// Where each box stands in a holder; empty where the form leaves that to the row.
    pub seats: Vec<Seat>,
    /// What it covers.
    pub footprint: Footprint,
}

impl Assembly {
    /// What a face is called when it is to have no mat: a panel of the first part by its name, of another part by
    /// both names.
    #[must_use]
    pub fn face(&self, part: usize, panel: &str) -> String {
        match self.parts.get(part) {
            Some(p) if part > 0 => format!("{}: {panel}", p.name),
            _ => panel.to_owned(),
        }
    }

    /// An assembly of one part.
    #[must_use]
    pub fn alone(part: Part, finished: Size, inside: Size, outside: Size) -> Self {
        Self::of(vec![part], finished, inside, outside)
    }

    /// An assembly of these parts and nothing besides.
    #[must_use]
    pub fn of(parts: Vec<Part>, finished: Size, inside: Size, outside: Size) -> Self {
        let (trims, joins, seats) = (Vec::new(), Vec::new(), Vec::new());
        Self { parts, finished, inside, outside, trims, joins, seats, footprint: Footprint::Block }
    }
}

/// What something covers, seen from above.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Footprint {
    /// All of its width and depth.
    #[default]
    Block,
    /// A regular polygon of so many sides: one at the front, and as deep from there to the side opposite.
    Sides(u8),
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
    /// What is free inside it, promised; a direction in which it does not close is not measured. Nothing where the
    /// part holds nothing by itself.
    pub inside: Option<Size>,
    /// What it takes up, promised, without mats; nothing where the assembly's outside is its own.
    pub outside: Option<Size>,
    /// The same card in strips that stay flat, where it bends along curves: they are folded, proved and shown in its
    /// place. They bear the names of the panels that they make up; its moves are named alike.
    pub strips: Option<Box<Self>>,
    /// Where it stands when all is put together, once for each of its alike pieces.
    pub stands: Vec<Stand>,
}

impl Part {
    /// The part in panels that stay flat.
    #[must_use]
    pub fn rigid(&self) -> &Self {
        self.strips.as_deref().unwrap_or(self)
    }

    /// The panel that a panel of [`Self::rigid`] is, or belongs to.
    #[must_use]
    pub fn whole(&self, strip: PanelId) -> PanelId {
        let name = self.strips.as_ref().and_then(|s| s.net.panels.get(strip.0)).map(|p| p.name);
        name.and_then(|n| self.net.named(n)).unwrap_or(strip)
    }

    /// A part that is all there is of its assembly: inside and outside are the assembly's.
    #[must_use]
    pub fn alone(name: &'static str, net: Net, root: Root, meets: Vec<Meet>, moves: Vec<Move>) -> Self {
        Self {
            name,
            net,
            root,
            meets,
            moves,
            inside: None,
            outside: None,
            strips: None,
            stands: vec![Stand::default()],
        }
    }
}

/// How far something stands from the assembly's origin: the front's lower left score.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Offset {
    /// To the right.
    pub right: Length,
    /// To the back.
    pub back: Length,
    /// Up.
    pub up: Length,
}

/// Which way round a part stands in its assembly, turned about its own origin.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Turn {
    /// As it was folded.
    #[default]
    AsFolded,
    /// Turned over sideways: front stays front, left is right.
    UpsideDown,
    /// A quarter to the left, seen from above: what ran left to right runs front to back.
    Quarter,
}

/// How a part stands in its assembly: first turned, then shifted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Stand {
    /// Which way round.
    pub turn: Turn,
    /// Where its own origin goes.
    pub at: Offset,
}

/// The side from which something comes to its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum From {
    /// From the front to the back.
    Front,
    /// From above, down.
    Above,
    /// From below, up.
    Below,
}

/// One or several parts that slide into another, or that another slides over.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Join {
    /// What the hands do.
    pub name: JoinName,
    /// The parts that are inside in the end, all together.
    pub inner: Vec<usize>,
    /// The part round them.
    pub outer: usize,
    /// The side from which the inner parts come, as the outer part sees it.
    pub from: From,
    /// What may be left between them.
    pub room: Room,
}

/// Clearance in total between an inner and an outer part, from the least to the most; nothing where it is open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Room {
    /// Left to right.
    pub width: Option<Range<Length>>,
    /// Front to back.
    pub depth: Option<Range<Length>>,
    /// Bottom to top.
    pub height: Option<Range<Length>>,
    /// From wall to wall, where walls stand at other angles: twice the least distance of a wall from what it surrounds.
    pub round: Option<Range<Length>>,
}

/// What putting parts together is; steps are worded from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum JoinName {
    /// A lid goes over its base.
    LidOver,
    /// A drawer goes into its sleeve.
    DrawerIn,
    /// A divider is lapped with those that cross it.
    DividersLap,
    /// A divider goes down into its tray.
    DividerIn,
    /// A band goes round what stands together.
    BandRound,
    /// A tray goes into a cover.
    TrayIn,
    /// A layer goes down into the one round it.
    LayerIn,
    /// A handle goes down into its tray.
    HandleIn,
}

/// Where one box stands in a holder, as it lies between its scores; what it takes up, with its mats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seat {
    /// Which of the contents.
    pub kind: usize,
    /// Its lower front left corner.
    pub at: Offset,
    /// What the box takes up.
    pub size: Size,
    /// What must stay free round it, in total across the way by which it comes.
    pub play: Length,
    /// The side from which it comes.
    pub from: From,
    /// What it covers.
    pub footprint: Footprint,
}

impl Seat {
    /// For a box that covers all of its width and depth: which of the contents and what it takes up, where, and so on.
    #[must_use]
    pub const fn of((kind, size): (usize, Size), at: Offset, play: Length, from: From) -> Self {
        Self { kind, at, size, play, from, footprint: Footprint::Block }
    }
}

/// What the panel that lies still becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Root {
    /// The front, its outside to the reader and its top edge up.
    Front,
    /// The base, its underside to the reader and the front beyond its top edge.
    Base,
    /// The base as before, on its corner on the blank: its first two corners are those of its front, left and right.
    OnCorner,
    /// The front of what stands on a point: its upper edge leans so far to the reader; its first corner is the point,
    /// the origin.
    Leaning(Angle),
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
