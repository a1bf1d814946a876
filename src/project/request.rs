//! `Project`: everything that the maker asks for, and nothing that is computed.

use std::collections::BTreeMap;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::batch::Batch;
use super::class::Class;
use super::extra::Extra;
use super::fitting::{Blank, Facing, Gifts, Lesson};
use super::own::Own;
use super::tools::{Board, Trimmer};
use super::trade::Trade;
use crate::measure::given::Given;
use crate::measure::json::value::{is, is_usual, list, named, number_or_text, text};
use crate::measure::system::System;
use crate::stock::weight::BasisWeight;

/// One gift set as it is asked for. Only `boxes` and `cards` are needed in a file; the rest has defaults.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Project {
    /// The card at hand.
    #[serde(deserialize_with = "list")]
    pub cards: Vec<Card>,
    /// The kinds of boxes in a set.
    #[serde(deserialize_with = "list")]
    pub boxes: Vec<Part>,
    /// What the maker calls it.
    #[serde(default)]
    pub name: String,
    /// The system that is worked in.
    #[serde(default)]
    pub system: System,
    /// Where the maker's board can score.
    #[serde(default)]
    pub board: Board,
    /// How many alike sets are made.
    #[serde(default = "one")]
    pub sets: u32,
    /// What the trimmer can do.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub trimmer: Trimmer,
    /// Spare pieces to cut, in percent of those needed.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub spares: u32,
    /// What the boxes slide into.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub holder: Option<Part>,
    /// What the maker writes into the plan.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub own: Own,
    /// What the maker reckons with.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub trade: Trade,
    /// What a class is planned with.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub class: Class,
    /// How a batch is shared out, and for whom it is.
    #[serde(default, skip_serializing_if = "is_usual")]
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

/// A card that parts are cut from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Card {
    /// What parts call it by; unique in a project.
    pub id: u16,
    /// How heavy it is.
    pub grammage: BasisWeight,
    /// The sheet as it really is, across.
    pub sheet_width: Given,
    /// The sheet as it really is, down.
    pub sheet_height: Given,
    /// What the maker calls it.
    #[serde(default)]
    pub name: String,
    /// How it is tinted on the screen.
    #[serde(default)]
    pub tint: Tint,
    /// Measured thickness of the sheets in `stack`; left out, it is estimated from the grammage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Given>,
    /// How many sheets were measured together.
    #[serde(default = "one", skip_serializing_if = "is::<1>")]
    pub stack: u32,
    /// What a first make of it taught.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lesson: Option<Lesson>,
    /// Where its sheets come from.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub supply: Supply,
    /// Sheets of other sizes of the same card.
    #[serde(default, deserialize_with = "list", skip_serializing_if = "Vec::is_empty")]
    pub more_sheets: Vec<MoreSheets>,
    /// Which way round its pieces may lie on the sheet.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub lie: Lie,
}

/// Where sheets of one size come from; left out, none in the drawer, and as many to buy as it takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Supply {
    /// Sheets in the drawer.
    #[serde(skip_serializing_if = "is_usual")]
    pub have: u32,
    /// Whether more can be bought.
    #[serde(skip_serializing_if = "is_usual")]
    pub shop: Shop,
    /// What one sheet costs there, in the smallest coin.
    #[serde(skip_serializing_if = "Option::is_none")]
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
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shop {
    /// As many as it takes.
    #[default]
    Open,
    /// None: what is in the drawer is all.
    Shut,
}

impl Shop {
    /// True where nothing was said.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        *self == Self::Open
    }
}

/// Sheets of another size.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MoreSheets {
    /// As it really is, across.
    pub width: Given,
    /// As it really is, down.
    pub height: Given,
    /// Where they come from.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub supply: Supply,
}

/// Which way round pieces may lie on a sheet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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

impl Serialize for Tint {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.hex())
    }
}

impl<'de> Deserialize<'de> for Tint {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        text(from, |typed| Self::read(typed).ok_or_else(|| format!("“{typed}” is no colour such as “#d8b98a”")))
    }
}

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
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// The form's key in the registry, such as `tuck-box`.
    pub form: String,
    /// The card it is cut from.
    pub card: u16,
    /// Its stable number in the project, unique among boxes.
    #[serde(default)]
    pub id: u16,
    /// What the maker calls it.
    #[serde(default)]
    pub name: String,
    /// How many in one set.
    #[serde(default = "one")]
    pub count: u32,
    /// What was typed, by the input's key; an input that is not here has its default.
    #[serde(default, deserialize_with = "named", skip_serializing_if = "BTreeMap::is_empty")]
    pub inputs: BTreeMap<String, Entry>,
    /// Mats on it; left out, none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mats: Option<Mats>,
    /// What goes into it; left out, its sizes are typed.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub gifts: Gifts,
    /// What is added besides mats, in the order in which it is done.
    #[serde(default, deserialize_with = "list", skip_serializing_if = "Vec::is_empty")]
    pub extras: Vec<Extra>,
    /// How a box stands in the holder; left out, its front looks forward.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub facing: Facing,
    /// What its blank is cut as; left out, one piece.
    #[serde(default, skip_serializing_if = "is_usual")]
    pub blank: Blank,
    /// A form of the maker's own, as `form/own/read.rs` reads it; nothing where its form is another, or as a new one
    /// begins.
    #[serde(default, skip_serializing_if = "String::is_empty")]
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
            inputs: BTreeMap::new(),
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

impl Serialize for Entry {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Count(count) => to.serialize_u32(*count),
            Self::Length(given) => given.serialize(to),
            Self::Choice(word) => to.serialize_str(word),
        }
    }
}

/// A text that reads as a length is one.
impl<'de> Deserialize<'de> for Entry {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let typed = |text: &str| {
            Ok(Given::read(text, System::Metric).map_or_else(|_| Self::Choice(text.to_owned()), Self::Length))
        };
        number_or_text(from, Self::Count, typed)
    }
}

/// Layers of other card on the panels that show.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mats {
    /// The card they are cut from.
    pub card: u16,
    /// The border left on each side; left out, ⅛ in or 3 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reveal: Option<Given>,
    /// Panels that could have one and are to have none.
    #[serde(default, deserialize_with = "list", skip_serializing_if = "Vec::is_empty")]
    pub off: Vec<String>,
}

impl Project {
    /// The card numbered `id`.
    #[must_use]
    pub fn card(&self, id: u16) -> Option<&Card> {
        self.cards.iter().find(|c| c.id == id)
    }
}
