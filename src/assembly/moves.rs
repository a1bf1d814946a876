//! `Move`: which creases turn together, how far, and what the hands call it.

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::net::flat::{CreaseId, Net, PanelId};

/// Creases that turn together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Move {
    /// What it is, for steps and for the folded view.
    pub name: MoveName,
    /// How they turn.
    pub way: Way,
}

/// What a move does; steps are worded from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
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
    /// The lid's side lips turn down.
    SideLips,
    /// The lid of a hinged box closes: its side lips go in, then its front lip.
    CloseHinged,
    /// The lid closes and its tuck slides in.
    Close,
    /// The lid closes and the tucks on its sides go in.
    TucksIn,
    /// The same at the lower end.
    LowerTucksIn,
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
    /// The tabs at the corners of a tray fold in.
    CornerTabs,
    /// The side walls of a tray come up over the corner tabs.
    SideWalls,
    /// The left and the right side come up.
    UprightSides,
    /// Front and back come up over the corner tabs.
    FrontAndBack,
    /// The front is rolled over to the inside.
    RollFront,
    /// The back is rolled over to the inside.
    RollBack,
    /// The left side is rolled over to the inside.
    RollLeft,
    /// The right side is rolled over to the inside.
    RollRight,
    /// Walls that stay free stand up.
    FreeWalls,
    /// The treads and risers of steps fold to and fro.
    Steps,
    /// A folded strip stands up on its base.
    StandUp,
    /// A flange turns out.
    Flanges,
    /// A strip folds back on itself.
    Doubled,
    /// A cover folds up at its spine.
    Cover,
    /// A cover closes over what is in it.
    CoverClose,
    /// Upper edges turn right over.
    Hem,
    /// The flaps of the base under each half of a side fold in.
    BaseHalves,
    /// The outer flap of a base closes over the others, as far as past the middle.
    BaseOver,
    /// Sides stand up and their tabs turn in.
    TabbedSides,
    /// The roof closes over its gussets.
    Roof,
    /// The edges of a square at front and back are turned over, their points to the middle.
    EdgesIn,
    /// A tube is glued flat, opens and its curved ends are pushed in.
    CurvesIn,
    /// All walls stand up and the corners fold in at the ends.
    CornersIn,
    /// The left end folds over the corners.
    LeftOver,
    /// The right end folds over the corners.
    RightOver,
    /// Petals close an opening.
    Petals,
    /// All walls stand up, each onto the tab of the next.
    WallsUp,
    /// The tabs on the edges of walls bend in.
    TabsIn,
    /// All walls come together, each over the tab of the next.
    WallsTucked,
    /// All walls come together and are tied.
    WallsTied,
    /// What holds the tabs folds round onto the front.
    OverTabs,
    /// The flap closes.
    Flap,
    /// The panels of this move fold, by their own names.
    Together,
}

impl Move {
    /// Turns the creases that carry `panels` evenly.
    #[must_use]
    pub fn even(net: &Net, name: MoveName, panels: &[PanelId]) -> Self {
        Self { name, way: Way::Even(carriers(net, panels)) }
    }

    /// Brings the creases that carry `panels` to their end, by a way that only card makes.
    #[must_use]
    pub fn end_only(net: &Net, name: MoveName, panels: &[PanelId], why: Gives) -> Self {
        Self { name, way: Way::EndOnly { creases: carriers(net, panels), why } }
    }

    /// Why only its end is known; nothing where all of it is.
    #[must_use]
    pub const fn gives(&self) -> Option<Gives> {
        match self.way {
            Way::EndOnly { why, .. } => Some(why),
            _ => None,
        }
    }
}

fn carriers(net: &Net, panels: &[PanelId]) -> Vec<CreaseId> {
    panels.iter().map(|&p| net.carrier(p).unwrap_or(CreaseId(0))).collect()
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
    /// Tucks bend in further than at the end, what carries them closes, and they spring back.
    Sprung {
        /// The creases that close: of a lid, or of walls.
        closing: Vec<CreaseId>,
        /// The creases of the tucks.
        tucks: Vec<CreaseId>,
        /// By how much further.
        over: Angle,
    },
    /// Card gives on the way, so that only the end is known and proved.
    EndOnly {
        /// The creases.
        creases: Vec<CreaseId>,
        /// Why no rigid panels make this move.
        why: Gives,
    },
}

/// Why panels that stay flat do not make a move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gives {
    /// Gussets bow while they are pushed in: around their point, panels fit flat and folded, not between.
    Gussets,
    /// Corners are wrapped between walls that stand up at the same time.
    Corners,
    /// Scores are curved, and the card between them with them.
    Curves,
    /// Panels hang together in a ring round a corner.
    Loops,
}
