//! What a maker adds to a box or holder besides its mats: second layers, labels, tags, windows, holes for a ribbon, and
//! a liner.

use serde::{Deserialize, Serialize};

use crate::measure::given::Given;
/// One thing that is added.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Extra {
    /// What it is.
    pub kind: ExtraKind,
    /// The face that it is on, by its name; empty for the first that can have it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub face: String,
    /// How wide it is; of holes how far apart, of a second layer its border.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Option<Given>,
    /// How high it is; of holes how wide each is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub height: Option<Given>,
    /// The number of the card that it is cut from; of a window that of its pane. Without one it is cut from the card
    /// of the part, and a window stays open.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub card: Option<u16>,
}

impl Extra {
    /// One of these, as usual.
    #[must_use]
    pub const fn of(kind: ExtraKind) -> Self {
        Self { kind, face: String::new(), width: None, height: None, card: None }
    }
}

/// What can be added.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ExtraKind {
    /// A second, smaller layer on every mat.
    Layer,
    /// A label glued onto a face.
    Label,
    /// A tag that hangs on a ribbon.
    Tag,
    /// An opening in a face, with a pane behind it where a card is chosen for it.
    Window,
    /// Two holes for a ribbon.
    RibbonHoles,
    /// A sheet that lies on the floor inside.
    Liner,
}

impl ExtraKind {
    /// Each of them.
    pub const ALL: [Self; 6] = [Self::Layer, Self::Label, Self::Tag, Self::Window, Self::RibbonHoles, Self::Liner];

    /// Whether it is on one face.
    #[must_use]
    pub const fn has_face(self) -> bool {
        matches!(self, Self::Label | Self::Window | Self::RibbonHoles)
    }

    /// Whether its width and its height are asked.
    #[must_use]
    pub const fn has_sides(self) -> [bool; 2] {
        match self {
            Self::Layer => [true, false],
            Self::Liner => [false, false],
            _ => [true, true],
        }
    }

    /// Whether it is cut from a card.
    #[must_use]
    pub const fn has_card(self) -> bool {
        !matches!(self, Self::RibbonHoles)
    }
}
