//! What the maker says about fitting: gifts, the stack that was measured, the grain, the hand and what a first make
//! taught.

use serde::{Deserialize, Serialize};

use crate::measure::given::Given;
use crate::measure::json::value::{is, is_usual, list};
use crate::measure::length::Length;
/// What goes into one box.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Gifts {
    /// The gifts, each kind once.
    #[serde(deserialize_with = "list")]
    pub kinds: Vec<Gift>,
    /// Room in total from left to right; left out, 3 mm or ⅛ in, and 6 mm or ¼ in round soft or wrapped gifts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room_width: Option<Given>,
    /// Room in total from front to back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room_depth: Option<Given>,
    /// Room in total from bottom to top.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room_height: Option<Given>,
}

impl Gifts {
    /// What they weigh together, in grams, where that was said.
    #[must_use]
    pub fn grams(&self) -> u32 {
        self.kinds.iter().fold(0, |sum, g| sum.saturating_add(g.grams.unwrap_or(0).saturating_mul(g.count)))
    }

    /// True where nothing was said.
    #[must_use]
    pub const fn is_none(&self) -> bool {
        self.kinds.is_empty() && self.room_width.is_none() && self.room_depth.is_none() && self.room_height.is_none()
    }
}

/// Which face of a box looks forward in its holder.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Facing {
    /// Its front.
    #[default]
    Front,
    /// Its left side: it stands turned by a quarter.
    Side,
    /// Its lid: it lies on its front.
    Lid,
}

impl Facing {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Front, Self::Side, Self::Lid];

    /// True where nothing was said.
    #[must_use]
    pub fn is_front(&self) -> bool {
        *self == Self::Front
    }

    /// Which of the box's own width (0), depth (1) and height (2) become width, depth and height in the holder.
    #[must_use]
    pub const fn order(self) -> [usize; 3] {
        match self {
            Self::Front => [0, 1, 2],
            Self::Side => [1, 0, 2],
            Self::Lid => [0, 2, 1],
        }
    }
}

/// What the blank of a wrap is cut as.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Blank {
    /// In one piece.
    #[default]
    Whole,
    /// In two pieces with a joint, where one would be too long for its sheet.
    Joined,
}

impl Blank {
    /// True where nothing was said.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        *self == Self::Whole
    }
}

/// Of a gift of which nothing else is said.
const fn one() -> u32 {
    1
}

/// Alike gifts.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Gift {
    /// What it looks like, hard projections included.
    pub shape: Shape,
    /// What the maker calls it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// How many.
    #[serde(default = "one", skip_serializing_if = "is::<1>")]
    pub count: u32,
    /// Whether paper goes round it.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub wrap: Wrap,
    /// How it may be turned.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub turns: Turns,
    /// Mass of one, in grams.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grams: Option<u32>,
}

/// The outline of a gift, as it stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Shape {
    /// A hard block.
    Block {
        /// Left to right.
        width: Given,
        /// Front to back.
        depth: Given,
        /// Bottom to top.
        height: Given,
    },
    /// A cylinder, disc, tin or coin standing on its round face.
    Cylinder {
        /// Its diameter.
        across: Given,
        /// Bottom to top.
        height: Given,
    },
    /// Something that gives way.
    Soft {
        /// Left to right.
        width: Given,
        /// Front to back.
        depth: Given,
        /// Bottom to top.
        height: Given,
    },
}

/// What a first make taught, kept with its card: clearances are planned that much wider or narrower.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lesson {
    /// It was tight.
    Wider(Given),
    /// It was loose.
    Narrower(Given),
}

impl Lesson {
    /// By how much.
    #[must_use]
    pub const fn by(&self) -> &Given {
        match self {
            Self::Wider(by) | Self::Narrower(by) => by,
        }
    }

    /// How much wider clearances are planned; below zero: narrower.
    #[must_use]
    pub fn wider(&self) -> Length {
        match self {
            Self::Wider(by) => by.length(),
            Self::Narrower(by) => -by.length(),
        }
    }
}

/// Which of the shapes a gift has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShapeKind {
    /// A hard block.
    Block,
    /// A cylinder, disc, tin or coin.
    Cylinder,
    /// Something that gives way.
    Soft,
}

impl ShapeKind {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Block, Self::Cylinder, Self::Soft];
}

impl Shape {
    /// Which shape it is.
    #[must_use]
    pub const fn kind(&self) -> ShapeKind {
        match self {
            Self::Block { .. } => ShapeKind::Block,
            Self::Cylinder { .. } => ShapeKind::Cylinder,
            Self::Soft { .. } => ShapeKind::Soft,
        }
    }

    /// Its sizes, in the order of their names.
    pub fn sides(&mut self) -> Vec<&mut Given> {
        match self {
            Self::Block { width, depth, height } | Self::Soft { width, depth, height } => vec![width, depth, height],
            Self::Cylinder { across, height } => vec![across, height],
        }
    }

    /// The same sizes in another shape: what is round is as wide as it was, what was round is as deep as it is wide.
    #[must_use]
    pub fn into_kind(self, kind: ShapeKind) -> Self {
        let (width, depth, height) = match self {
            Self::Block { width, depth, height } | Self::Soft { width, depth, height } => (width, depth, height),
            Self::Cylinder { across, height } => (across.clone(), across, height),
        };
        match kind {
            ShapeKind::Block => Self::Block { width, depth, height },
            ShapeKind::Cylinder => Self::Cylinder { across: width, height },
            ShapeKind::Soft => Self::Soft { width, depth, height },
        }
    }
}

/// Whether a gift is wrapped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Wrap {
    /// As it is.
    #[default]
    Bare,
    /// In tissue or paper; it takes the larger room.
    Wrapped,
}

impl Wrap {
    /// True where nothing was said.
    #[must_use]
    pub fn is_bare(&self) -> bool {
        *self == Self::Bare
    }
}

/// How a gift may be turned.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Turns {
    /// Any face down.
    #[default]
    Any,
    /// This way up: only about the vertical.
    Upright,
}

impl Turns {
    /// True where nothing was said.
    #[must_use]
    pub fn is_any(&self) -> bool {
        *self == Self::Any
    }
}
