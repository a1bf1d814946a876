//! `Project`: everything that the maker asks for, and nothing that is computed.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::measure::given::Given;
use crate::measure::system::System;

/// One gift set as it is asked for. Only `boxes` and `cards` are needed in a file; the rest has defaults.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Project {
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
    /// The card at hand.
    pub cards: Vec<Card>,
    /// The kinds of boxes in a set.
    pub boxes: Vec<Part>,
    /// What the boxes slide into.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub holder: Option<Part>,
}

const fn one() -> u32 {
    1
}

/// The board's score step in each system; left out, ⅛ in and 1 mm.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Board {
    /// Between two grooves on the inch side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inch_step: Option<Given>,
    /// Between two grooves on the metric side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub metric_step: Option<Given>,
}

/// A card that parts are cut from.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Card {
    /// What parts call it by; unique in a project.
    pub id: u16,
    /// What the maker calls it.
    #[serde(default)]
    pub name: String,
    /// Grams for each square metre.
    pub grammage: u32,
    /// Measured thickness of one sheet; left out, it is estimated from the grammage.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Given>,
    /// The sheet as it really is, across.
    pub sheet_width: Given,
    /// The sheet as it really is, down.
    pub sheet_height: Given,
    /// How it is tinted on the screen.
    #[serde(default)]
    pub tint: Tint,
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

impl Serialize for Tint {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.hex())
    }
}

impl<'de> Deserialize<'de> for Tint {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        Self::read(&text).ok_or_else(|| {
            serde::de::Error::custom(format!("“{text}” is no colour such as “#d8b98a”"))
        })
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
        let digits = text
            .strip_prefix('#')
            .filter(|d| d.len() == 6 && d.bytes().all(|b| b.is_ascii_hexdigit()))?;
        u32::from_str_radix(digits, 16).ok().map(Self)
    }
}

/// A box or a holder that is asked for: which form, from which card, and what was typed for it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// Its stable number in the project, unique among boxes.
    #[serde(default)]
    pub id: u16,
    /// What the maker calls it.
    #[serde(default)]
    pub name: String,
    /// The form's key in the registry, such as `tuck-box`.
    pub form: String,
    /// How many in one set.
    #[serde(default = "one")]
    pub count: u32,
    /// The card it is cut from.
    pub card: u16,
    /// What was typed, by the input's key; an input that is not here has its default.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub inputs: BTreeMap<String, Entry>,
    /// Mats on it; left out, none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mats: Option<Mats>,
}

/// One typed value.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Entry {
    /// A count.
    Count(u32),
    /// A length with its unit.
    Length(Given),
    /// One of several words.
    Choice(String),
}

/// Layers of other card on the panels that show.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mats {
    /// The card they are cut from.
    pub card: u16,
    /// The border left on each side; left out, ⅛ in or 3 mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reveal: Option<Given>,
    /// Panels that could have one and are to have none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub off: Vec<String>,
}

impl Project {
    /// The card numbered `id`.
    #[must_use]
    pub fn card(&self, id: u16) -> Option<&Card> {
        self.cards.iter().find(|c| c.id == id)
    }
}
