//! `Project`: everything that the maker asks for, and nothing that is computed.

use crate::measure::few::Few;

use crate::measure::given::Given;
use crate::measure::system::System;
use crate::stock::weight::BasisWeight;
use crate::words;

use super::batch::Batch;
use super::class::Class;
use super::extra::Extra;
use super::fitting::{Blank, Facing, Gifts, Lesson};
use super::own::Own;
use super::trade::Trade;

/// One gift set as it is asked for. Only `boxes` and `cards` are needed in a file; the rest has defaults.
#[derive(Clone, Debug, PartialEq)]
pub struct Project {
    /// What the maker calls it.
    pub name: String,
    /// The system that is worked in.
    pub system: System,
    /// Where the maker's board can score.
    pub board: Board,
    /// How many alike sets are made.
    pub sets: u32,
    /// The card at hand.
    pub cards: Vec<Card>,
    /// What the trimmer can do.
    pub trimmer: Trimmer,
    /// Spare pieces to cut, in percent of those needed.
    pub spares: u32,
    /// The kinds of boxes in a set.
    pub boxes: Vec<Part>,
    /// What the boxes slide into.
    pub holder: Option<Part>,
    /// What the maker writes into the plan.
    pub own: Own,
    /// What the maker reckons with.
    pub trade: Trade,
    /// What a class is planned with.
    pub class: Class,
    /// How a batch is shared out, and for whom it is.
    pub batch: Batch,
}

impl Default for Project {
    /// One set of nothing yet.
    fn default() -> Self {
        Self {
            name: String::new(),
            system: System::default(),
            board: Board::default(),
            sets: one(),
            trimmer: Trimmer::default(),
            spares: 0,
            cards: Vec::new(),
            boxes: Vec::new(),
            holder: None,
            own: Own::default(),
            trade: Trade::default(),
            class: Class::default(),
            batch: Batch::default(),
        }
    }
}

const fn one() -> u32 {
    1
}

/// What the trimmer and the hand at it can do; left out, nothing off the edges, a cut of any length, strips down to
/// 10 mm, and errors as in [`super::bound::DEFAULT_SCORE_ERROR`].
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trimmer {
    /// Taken off each edge of a sheet before anything else.
    pub edge_trim: Option<Given>,
    /// The longest cut in one stroke.
    pub longest_cut: Option<Given>,
    /// The narrowest strip that can be held.
    pub least_strip: Option<Given>,
    /// What the maker's scores are out by, as ± two standard deviations.
    pub score_error: Option<Given>,
    /// What the maker's cuts are out by, as ± two standard deviations.
    pub cut_error: Option<Given>,
}

impl Trimmer {
    /// Everything that can be typed.
    #[must_use]
    pub const fn typed(&self) -> [&Option<Given>; 5] {
        [&self.edge_trim, &self.longest_cut, &self.least_strip, &self.score_error, &self.cut_error]
    }

    /// True where nothing was typed.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        self.typed().iter().all(|g| g.is_none())
    }
}

/// The board's score step in each system; left out, ⅛ in and 1 mm.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Board {
    /// Between two grooves on the inch side.
    pub inch_step: Option<Given>,
    /// Between two grooves on the metric side.
    pub metric_step: Option<Given>,
}

/// A card that parts are cut from.
#[derive(Clone, Debug, PartialEq)]
pub struct Card {
    /// What parts call it by; unique in a project.
    pub id: u16,
    /// What the maker calls it.
    pub name: String,
    /// How heavy it is.
    pub grammage: BasisWeight,
    /// Measured thickness of the sheets in `stack`; left out, it is estimated from the grammage.
    pub thickness: Option<Given>,
    /// How many sheets were measured together.
    pub stack: u32,
    /// What a first make of it taught.
    pub lesson: Option<Lesson>,
    /// The sheet as it really is, across.
    pub sheet_width: Given,
    /// The sheet as it really is, down.
    pub sheet_height: Given,
    /// How it is tinted on the screen.
    pub tint: Tint,
    /// Where its sheets come from.
    pub supply: Supply,
    /// Sheets of other sizes of the same card.
    pub more_sheets: Vec<MoreSheets>,
    /// Which way round its pieces may lie on the sheet.
    pub lie: Lie,
}

/// Where sheets of one size come from; left out, none in the drawer, and as many to buy as it takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Supply {
    /// Sheets in the drawer.
    pub have: u32,
    /// Whether more can be bought.
    pub shop: Shop,
    /// What one sheet costs there, in the smallest coin.
    pub price: Option<u32>,
}

impl Supply {
    /// True where nothing was said.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}

/// Whether a shop has more sheets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Shop {
    /// As many as it takes.
    #[default]
    Open,
    /// None: what is in the drawer is all.
    Shut,
}

words!(Shop { Open = "open", Shut = "shut" });

impl Shop {
    /// True where nothing was said.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        *self == Self::Open
    }
}

/// Sheets of another size.
#[derive(Clone, Debug, PartialEq)]
pub struct MoreSheets {
    /// As it really is, across.
    pub width: Given,
    /// As it really is, down.
    pub height: Given,
    /// Where they come from.
    pub supply: Supply,
}

/// Which way round pieces may lie on a sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lie {
    /// Plain card: either way.
    #[default]
    Either,
    /// A pattern: upright on the sheet as it is held.
    Upright,
    /// Main scores along the grain, which runs up the sheet as it is held.
    GrainUp,
    /// Main scores along the grain, which runs across the sheet as it is held.
    GrainAcross,
}

words!(Lie { Either = "either", Upright = "upright", GrainUp = "grain-up", GrainAcross = "grain-across" });

impl Lie {
    /// True where nothing was said.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        *self == Self::Either
    }
}

/// A colour of card, as `#rrggbb`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tint(pub u32);

impl Default for Tint {
    /// Unbleached card.
    fn default() -> Self {
        Self(0xd8_b9_8a)
    }
}

impl Tint {
    /// As `#rrggbb`.
    #[must_use]
    pub fn hex(self) -> String {
        format!("#{:06x}", self.0 & 0xff_ff_ff)
    }

    /// From `#rrggbb`.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#').filter(|d| d.len() == 6 && d.bytes().all(|b| b.is_ascii_hexdigit()))?;
        u32::from_str_radix(digits, 16).ok().map(Self)
    }
}

/// A box or a holder that is asked for: which form, from which card, and what was typed for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its stable number in the project, unique among boxes.
    pub id: u16,
    /// What the maker calls it.
    pub name: String,
    /// The form's key in the registry, such as `tuck-box`.
    pub form: String,
    /// How many in one set.
    pub count: u32,
    /// The card it is cut from.
    pub card: u16,
    /// What was typed, by the input's key; an input that is not here has its default.
    pub inputs: Few<String, Entry>,
    /// Mats on it; left out, none.
    pub mats: Option<Mats>,
    /// What goes into it; left out, its sizes are typed.
    pub gifts: Gifts,
    /// What is added besides mats, in the order in which it is done.
    pub extras: Vec<Extra>,
    /// How a box stands in the holder; left out, its front looks forward.
    pub facing: Facing,
    /// What its blank is cut as; left out, one piece.
    pub blank: Blank,
    /// A form of the maker's own, as `form/own/read.rs` reads it; nothing where its form is another, or as a new one
    /// begins.
    pub drawn: String,
}

impl Part {
    /// One of `form`, of `card`, of which nothing else was said.
    #[must_use]
    pub fn of(id: u16, form: &str, card: u16) -> Self {
        Self {
            id,
            name: String::new(),
            form: form.to_owned(),
            count: one(),
            card,
            inputs: Few::default(),
            mats: None,
            gifts: Gifts::default(),
            extras: Vec::new(),
            facing: Facing::Front,
            blank: Blank::Whole,
            drawn: String::new(),
        }
    }
}

/// The key of forms that their makers draw.
pub const OWN_FORM: &str = "own";

impl Part {
    /// What its maker calls the form that was drawn for it, where it has that form.
    #[must_use]
    pub fn form_called(&self) -> Option<&str> {
        let drawn = if self.form == OWN_FORM { self.drawn.as_str() } else { "" };
        drawn.lines().find_map(|line| line.strip_prefix("called "))
    }

    /// What its maker calls it: the box, or else the form that was drawn for it.
    #[must_use]
    pub fn called(&self) -> Option<&str> {
        [Some(self.name.as_str()), self.form_called()].into_iter().flatten().find(|name| !name.trim().is_empty())
    }
}

/// One typed value.
#[derive(Clone, Debug, PartialEq)]
pub enum Entry {
    /// A count.
    Count(u32),
    /// A length with its unit.
    Length(Given),
    /// One of several words.
    Choice(String),
}

/// Layers of other card on the panels that show.
#[derive(Clone, Debug, PartialEq)]
pub struct Mats {
    /// The card they are cut from.
    pub card: u16,
    /// The border left on each side; left out, ⅛ in or 3 mm.
    pub reveal: Option<Given>,
    /// Panels that could have one and are to have none.
    pub off: Vec<String>,
}

impl Project {
    /// The card numbered `id`.
    #[must_use]
    pub fn card(&self, id: u16) -> Option<&Card> {
        self.cards.iter().find(|c| c.id == id)
    }
}
