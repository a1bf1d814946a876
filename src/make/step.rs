//! `Step`: one thing that the hands do, as a typed value.

use crate::assembly::moves::MoveName;
use crate::assembly::parts::{Join, Size};
use crate::measure::outline::Rect;
use crate::net::flat::Hole;
use crate::net::marks::Marks;
use crate::net::recipe::{CutLine, Scores, TakeOff};
use crate::project::finding::Place;
use crate::project::own::Note;

use super::extras::Made;

/// One step of the making.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// What the step is, so that a tick stays on it when a re-plan moves it: the same for the same action on the same
    /// part with the same measurements.
    pub key: String,
    /// Where in the making it stands, whatever the measurements: what the maker writes to it hangs on this.
    pub site: String,
    /// What it is done to.
    pub place: Place,
    /// The part of its assembly.
    pub part: usize,
    /// Which of the two pieces that the part is joined from, where it is one of them.
    pub half: Option<usize>,
    /// How often it is done, for all sets.
    pub times: u64,
    /// What is done.
    pub action: Action,
}

/// What a step does.
#[derive(Clone, Debug, PartialEq, Hash)]
pub enum Action {
    /// Make one set before all the others, and say how it fits.
    MakeOne,
    /// Cut the sheets of one pattern of this card, all alike.
    CutSheets {
        /// The card.
        card: u16,
        /// The pattern's place in the card's layout.
        pattern: usize,
    },
    /// Cut what the trimmer cannot with knife and ruler.
    CutPieces {
        /// The card.
        card: u16,
        /// The pieces' places in the list.
        pieces: Vec<u32>,
    },
    /// Score right across, outside face up.
    Score(Scores),
    /// Glue the two pieces of the part together, flat.
    GlueJoint,
    /// Mark places that no groove gives.
    Mark(Marks),
    /// Score between the marks.
    ScoreMarks(Marks),
    /// Cut between the marks; what lies round the panels falls away.
    CutMarks(Marks),
    /// Cut between panels.
    Cut(Vec<CutLine>),
    /// Take these whole cells away.
    TakeCells(Vec<Rect>),
    /// Take strips, wedges, corners off panels.
    TakeOff(Vec<TakeOff>),
    /// Fold every score away from you and back, and rub it flat.
    FoldAndBurnish,
    /// Glue these mats on, by the pieces' places in the list.
    GlueMats(Vec<u32>),
    /// Punch the thumb notch, through panel and mat.
    Notch(TakeOff),
    /// Glue and fold: the move of this place in the part.
    Fold {
        /// Its place among the part's moves.
        index: usize,
        /// Its name.
        name: MoveName,
        /// Whether glue goes on before.
        glued: bool,
    },
    /// Try the boxes in the holder before the glue has set; the room that they must have.
    TryBoxesIn {
        /// The holder's inside.
        inside: Size,
    },
    /// Do what is added.
    Extra {
        /// What it is.
        made: Made,
        /// The numbers of its pieces.
        pieces: Vec<u32>,
    },
    /// Glue the straps on, by the pieces' places in the list.
    Straps(Vec<u32>),
    /// Punch these holes.
    Punch(Vec<Hole>),
    /// Put parts together.
    Join(Join),
    /// Fill the boxes.
    Fill,
    /// Slide the boxes in.
    SlideIn,
    /// What the maker wrote.
    Own(Note),
    /// Score these stretches and no further.
    ScoreShort(Vec<CutLine>),
}

/// A caution that belongs to a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    /// Blades: cut away from the hand, cover the blade.
    Blade,
    /// Glue: hot glue burns, and no glue here is known to be fit for food.
    Glue,
    /// What goes in: food, young children, candles.
    Contents,
}

impl Action {
    /// The caution that belongs to it.
    #[must_use]
    pub const fn caution(&self) -> Option<Caution> {
        match self {
            Self::CutSheets { .. }
            | Self::CutPieces { .. }
            | Self::Cut(_)
            | Self::CutMarks(_)
            | Self::TakeCells(_)
            | Self::TakeOff(_) => Some(Caution::Blade),
            Self::GlueJoint | Self::Fold { glued: true, .. } | Self::GlueMats(_) | Self::Straps(_) => {
                Some(Caution::Glue)
            }
            Self::Extra { made: Made::Window { .. }, .. } => Some(Caution::Blade),
            Self::Extra { made: Made::Layer { .. } | Made::Label { .. }, .. } => Some(Caution::Glue),
            Self::Fill => Some(Caution::Contents),
            _ => None,
        }
    }
}
