//! `BasisWeight`: how heavy card is, as it stands on the packet: grams for each square metre, or pounds of a ream.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::measure::digits;
use crate::measure::json::value::number_or_text;

/// The size of sheet that a ream is weighed in; the names are the trade's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// 20 × 26 in.
    Cover,
    /// 25 × 38 in.
    Text,
    /// 25½ × 30½ in.
    Index,
    /// 22½ × 28½ in.
    Bristol,
}

impl Basis {
    /// All of them, the one meant by pounds alone first.
    pub const ALL: [Self; 4] = [Self::Cover, Self::Text, Self::Index, Self::Bristol];

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cover => "cover",
            Self::Text => "text",
            Self::Index => "index",
            Self::Bristol => "bristol",
        }
    }

    /// Area of the basic sheet, in quarters of a square inch.
    const fn quarters(self) -> u64 {
        match self {
            Self::Cover => 40 * 52,
            Self::Text => 50 * 76,
            Self::Index => 51 * 61,
            Self::Bristol => 45 * 57,
        }
    }
}

/// How heavy card is, as it was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BasisWeight {
    /// Grams for each square metre.
    Grams(u32),
    /// Pounds for 500 sheets of a basic size.
    Pounds(u32, Basis),
}

impl Serialize for BasisWeight {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Grams(n) => to.serialize_u32(*n),
            Self::Pounds(..) => to.serialize_str(&self.written()),
        }
    }
}

impl<'de> Deserialize<'de> for BasisWeight {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let typed =
            |text: &str| Self::read(text).ok_or_else(|| format!("“{text}” is no weight such as 216 or “80 lb”"));
        number_or_text(from, Self::Grams, typed)
    }
}

impl BasisWeight {
    /// Reads `216`, `216 gsm`, `80 lb`, `110 lb index`. Pounds alone are of cover.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let text = &*digits::plain(text.trim());
        let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
        let number = text.get(..end)?.parse().ok()?;
        let unit = text.get(end..)?.trim().to_lowercase();
        if ["", "g", "gsm", "g/m2", "g/m²"].contains(&unit.as_str()) {
            return Some(Self::Grams(number));
        }
        let rest = ["lbs", "lb", "#"].iter().find_map(|u| unit.strip_prefix(u))?.trim();
        let basis = Basis::ALL.into_iter().find(|b| rest == b.name());
        basis.or(rest.is_empty().then_some(Basis::Cover)).map(|b| Self::Pounds(number, b))
    }

    /// As it is typed: what [`Self::read`] reads.
    #[must_use]
    pub fn written(self) -> String {
        match self {
            Self::Grams(n) => n.to_string(),
            Self::Pounds(n, Basis::Cover) => format!("{n} lb"),
            Self::Pounds(n, basis) => format!("{n} lb {}", basis.name()),
        }
    }

    /// Grams for each square metre, to the nearest.
    ///
    /// g/m² = lb × 453.59237 ÷ (500 × width × height × 0.0254²), sides of the basic sheet in inches (definition of
    /// basis weight; inch and pound exact by the 1959 agreement).
    ///
    /// ```
    /// use snugfold::stock::weight::BasisWeight;
    /// let grams = |typed| BasisWeight::read(typed).map(BasisWeight::grams);
    /// assert_eq!(grams("65 lb"), Some(176)); // 65 × 2.704114
    /// assert_eq!(grams("110 lb index"), Some(199)); // 110 × 1.807958
    /// assert_eq!(grams("216 gsm"), Some(216));
    /// assert_eq!(grams("٢١٦"), Some(216));
    /// ```
    #[must_use]
    pub const fn grams(self) -> u32 {
        match self {
            Self::Grams(n) => n,
            Self::Pounds(n, basis) => {
                // 453.59237 ÷ (500 × 0.0254²) = 1 406.139 159 for a square inch.
                let micro = (n as u64).saturating_mul(4 * 1_406_139_159) / basis.quarters();
                let grams = (micro + 500_000) / 1_000_000;
                if grams > u32::MAX as u64 { u32::MAX } else { grams as u32 }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Tables of ToolCross (index, bristol), HP LaserJet 4300 user guide (cover 60 lb, index, bristol, text
    /// 100 lb), timesprinters.com (text 50 lb), Xerox 701P28020 (text 90 lb); each within 1.5 g/m², as they round.
    #[test]
    fn agrees_with_published_tables() {
        for (pounds, basis, grams) in [
            (60, Basis::Cover, 163),
            (90, Basis::Index, 163),
            (110, Basis::Index, 199),
            (140, Basis::Index, 253),
            (67, Basis::Bristol, 148),
            (100, Basis::Bristol, 219),
            (120, Basis::Bristol, 264),
            (50, Basis::Text, 74),
            (90, Basis::Text, 133),
            (100, Basis::Text, 148),
        ] {
            let is = BasisWeight::Pounds(pounds, basis).grams();
            assert!(is.abs_diff(grams) <= 1, "{pounds} lb {}: {is}", basis.name());
        }
    }

    /// ToolCross cover table: pounds, g/m² within 0.5.
    #[test]
    fn agrees_with_a_cover_table() {
        for (pounds, grams) in [(65, 176), (80, 216), (100, 270), (110, 297), (130, 352)] {
            assert_eq!(BasisWeight::Pounds(pounds, Basis::Cover).grams(), grams, "{pounds} lb");
        }
    }

    #[test]
    fn what_is_typed_is_kept() {
        for basis in Basis::ALL {
            let weight = BasisWeight::Pounds(110, basis);
            assert_eq!(BasisWeight::read(&weight.written()), Some(weight));
        }
        assert_eq!(BasisWeight::read("80LB Text"), Some(BasisWeight::Pounds(80, Basis::Text)));
        assert_eq!(BasisWeight::read(" 300 g/m² "), Some(BasisWeight::Grams(300)));
        for odd in ["", "lb", "65 lb lb", "-3", "99999999999", "6 oz", "½ lb", "216 lb covers"] {
            assert_eq!(BasisWeight::read(odd), None, "{odd}");
        }
    }
}
