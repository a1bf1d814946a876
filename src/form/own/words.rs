//! The words that a drawn form is written in: what cells are called, what they do, named sizes, moves.

use super::drawn::{At, MOST, PanelName, SizeName};
use crate::assembly::moves::MoveName;
use crate::net::corner::{Corner, Side};
use crate::net::flat::Duty;

macro_rules! cells {
    ($($column:literal),+) => {
        [$(cells!(rows $column "1" "2" "3" "4" "5" "6" "7" "8" "9" "10" "11" "12")),+]
    };
    (rows $column:literal $($row:literal)+) => {
        [$([concat!($column, $row), concat!($column, $row, " above"), concat!($column, $row, " below")]),+]
    };
}

/// Every cell by column and row: whole, and its two halves where a score runs from corner to corner.
static CELLS: [[[&str; 3]; MOST as usize]; MOST as usize] =
    cells!("A", "B", "C", "D", "E", "F", "G", "H", "I", "J", "K", "L");

/// What part of a cell is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// All of it.
    Whole,
    /// The half above the score from corner to corner.
    Above,
    /// The half below it.
    Below,
}

/// The name of a cell by its column and row.
#[must_use]
pub fn cell(at: At, half: Half) -> &'static str {
    let column = CELLS.get(usize::from(at.column)).and_then(|c| c.get(usize::from(at.row)));
    column.map_or("", |names| names[half as usize])
}

/// The cell with this name.
#[must_use]
pub fn cell_named(name: &str) -> Option<At> {
    let (letter, number) = name.split_at_checked(1)?;
    let column = letter.chars().next()?.to_ascii_uppercase() as u32;
    let column = u8::try_from(column.checked_sub('A' as u32)?).ok().filter(|c| *c < MOST)?;
    let row: u8 = number.parse().ok().filter(|r| (1..=MOST).contains(r))?;
    Some(At::new(column, row - 1))
}

/// The sizes that can be named: the key in files and texts.
pub const SIZES: [&str; 16] = [
    "width",
    "depth",
    "height",
    "tab",
    "tuck",
    "flap",
    "lip",
    "lid",
    "rim",
    "base",
    "step",
    "gap",
    "second width",
    "second depth",
    "second height",
    "second tab",
];

/// The key of a named size.
#[must_use]
pub fn size(name: SizeName) -> &'static str {
    SIZES.get(usize::from(name.0)).copied().unwrap_or("width")
}

/// The size with this key.
#[must_use]
pub fn size_named(key: &str) -> Option<SizeName> {
    SIZES.iter().position(|k| *k == key).and_then(|i| u8::try_from(i).ok()).map(SizeName)
}

/// The names that a panel can have, each with what such a panel does.
pub const PANELS: &[(&str, Duty)] = &[
    ("front", Duty::Wall),
    ("back", Duty::Wall),
    ("left side", Duty::Wall),
    ("right side", Duty::Wall),
    ("base", Duty::Floor),
    ("bottom", Duty::Floor),
    ("top", Duty::Lid),
    ("lid", Duty::Lid),
    ("lower lid", Duty::Lid),
    ("flap", Duty::Lid),
    ("roof", Duty::Lid),
    ("glue tab", Duty::Tab),
    ("left tab", Duty::Tab),
    ("right tab", Duty::Tab),
    ("front left tab", Duty::Tab),
    ("front right tab", Duty::Tab),
    ("back left tab", Duty::Tab),
    ("back right tab", Duty::Tab),
    ("flange", Duty::Tab),
    ("tuck", Duty::Tuck),
    ("lower tuck", Duty::Tuck),
    ("left dust flap", Duty::DustFlap),
    ("right dust flap", Duty::DustFlap),
    ("lower left dust flap", Duty::DustFlap),
    ("lower right dust flap", Duty::DustFlap),
    ("front lip", Duty::DustFlap),
    ("left lip", Duty::DustFlap),
    ("right lip", Duty::DustFlap),
    ("front petal", Duty::DustFlap),
    ("back petal", Duty::DustFlap),
    ("left petal", Duty::DustFlap),
    ("right petal", Duty::DustFlap),
    ("inner base", Duty::Floor),
    ("outer base", Duty::BaseFlap),
    ("left base flap", Duty::BaseFlap),
    ("right base flap", Duty::BaseFlap),
    ("left front base flap", Duty::BaseFlap),
    ("left back base flap", Duty::BaseFlap),
    ("right front base flap", Duty::BaseFlap),
    ("right back base flap", Duty::BaseFlap),
    ("inner front", Duty::Wall),
    ("inner back", Duty::Wall),
    ("inner left side", Duty::Wall),
    ("inner right side", Duty::Wall),
    ("left side, front half", Duty::Wall),
    ("left side, back half", Duty::Wall),
    ("right side, front half", Duty::Wall),
    ("right side, back half", Duty::Wall),
    ("front left wing", Duty::Wing),
    ("front right wing", Duty::Wing),
    ("back left wing", Duty::Wing),
    ("back right wing", Duty::Wing),
    ("left end flap", Duty::EndFlap),
    ("right end flap", Duty::EndFlap),
    ("front hem", Duty::Hem),
    ("back hem", Duty::Hem),
    ("front flange", Duty::Flange),
    ("back flange", Duty::Flange),
    ("front of the handle", Duty::Divider),
    ("back of the handle", Duty::Divider),
    ("cross divider", Duty::Divider),
    ("first riser", Duty::Wall),
    ("second riser", Duty::Wall),
    ("third riser", Duty::Wall),
    ("first tread", Duty::Lid),
    ("second tread", Duty::Lid),
    ("third tread", Duty::Lid),
    ("spine", Duty::Wall),
    ("front board", Duty::Lid),
    ("back board", Duty::Floor),
    ("left gusset", Duty::Wall),
    ("right gusset", Duty::Wall),
];

/// A name of a panel, with what such a panel does.
#[must_use]
pub fn panel(name: PanelName) -> (&'static str, Duty) {
    PANELS.get(usize::from(name.0)).copied().unwrap_or(("", Duty::Wall))
}

/// The panel's name that is written so.
#[must_use]
pub fn panel_named(name: &str) -> Option<PanelName> {
    PANELS.iter().position(|p| p.0 == name).and_then(|i| u8::try_from(i).ok()).map(PanelName)
}

/// What a cell can do, as it is written.
pub const DUTIES: &[(&str, Duty)] = &[
    ("wall", Duty::Wall),
    ("floor", Duty::Floor),
    ("lid", Duty::Lid),
    ("tab", Duty::Tab),
    ("tuck", Duty::Tuck),
    ("dust flap", Duty::DustFlap),
    ("base flap", Duty::BaseFlap),
    ("wing", Duty::Wing),
    ("end flap", Duty::EndFlap),
    ("divider", Duty::Divider),
    ("flange", Duty::Flange),
    ("hem", Duty::Hem),
];

/// The sides of a cell, as they are written.
pub const SIDES: [(&str, Side); 4] =
    [("top", Side::Top), ("right", Side::Right), ("bottom", Side::Bottom), ("left", Side::Left)];

/// The corners of a cell, as they are written.
pub const CORNERS: [(&str, Corner); 4] = [
    ("top left", Corner::TopLeft),
    ("top right", Corner::TopRight),
    ("bottom right", Corner::BottomRight),
    ("bottom left", Corner::BottomLeft),
];

/// What the hands call a move, as it is written.
pub const MOVES: &[(&str, MoveName)] = &[
    ("tab", MoveName::Tab),
    ("walls", MoveName::Walls),
    ("seam", MoveName::Seam),
    ("inner base", MoveName::BaseInner),
    ("base sides", MoveName::BaseSides),
    ("outer base", MoveName::BaseOuter),
    ("dust flaps", MoveName::DustFlaps),
    ("side lips", MoveName::SideLips),
    ("hinged lid", MoveName::CloseHinged),
    ("lid", MoveName::Close),
    ("front and back up", MoveName::Uprights),
    ("wings", MoveName::Wings),
    ("ends", MoveName::Ends),
    ("lower dust flaps", MoveName::LowerDustFlaps),
    ("lower lid", MoveName::CloseBelow),
    ("corner tabs", MoveName::CornerTabs),
    ("side walls", MoveName::SideWalls),
    ("sides up", MoveName::UprightSides),
    ("front and back", MoveName::FrontAndBack),
    ("roll front", MoveName::RollFront),
    ("roll back", MoveName::RollBack),
    ("roll left", MoveName::RollLeft),
    ("roll right", MoveName::RollRight),
    ("free walls", MoveName::FreeWalls),
    ("steps", MoveName::Steps),
    ("stand up", MoveName::StandUp),
    ("flanges", MoveName::Flanges),
    ("doubled", MoveName::Doubled),
    ("cover", MoveName::Cover),
    ("cover close", MoveName::CoverClose),
    ("hems", MoveName::Hem),
    ("base halves", MoveName::BaseHalves),
    ("base over", MoveName::BaseOver),
    ("tabbed sides", MoveName::TabbedSides),
    ("petals", MoveName::Petals),
    ("over tabs", MoveName::OverTabs),
    ("flap", MoveName::Flap),
];

/// The word for a value of one of these tables.
#[must_use]
pub fn word<T: Copy + PartialEq>(table: &[(&'static str, T)], value: T) -> Option<&'static str> {
    table.iter().find(|w| w.1 == value).map(|w| w.0)
}

/// The value for a word of one of these tables.
#[must_use]
pub fn value<T: Copy>(table: &[(&'static str, T)], word: &str) -> Option<T> {
    table.iter().find(|w| w.0 == word).map(|w| w.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_word_is_there_once_and_comes_back() {
        for (i, (name, _)) in PANELS.iter().enumerate() {
            assert_eq!(panel_named(name).map(|n| usize::from(n.0)), Some(i), "{name}");
            assert!(
                cell_named(name).is_none() && !DUTIES.iter().any(|d| name.starts_with(&format!("{} ", d.0))),
                "{name}"
            );
        }
        for (i, key) in SIZES.iter().enumerate() {
            assert_eq!(size_named(key).map(|n| usize::from(n.0)), Some(i));
        }
        for (i, (word, name)) in MOVES.iter().enumerate() {
            assert!(MOVES[i + 1..].iter().all(|m| m.0 != *word && m.1 != *name), "{word}");
        }
        let at = At::new(11, 9);
        assert_eq!((cell(at, Half::Whole), cell_named("l10")), ("L10", Some(at)));
        assert_eq!([cell_named("M1"), cell_named("A13"), cell_named("A0"), cell_named("é1")], [None; 4]);
    }
}
