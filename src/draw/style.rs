//! How each meaning of a line is drawn, on the screen and on paper: by strength and dashes, never by colour.

use super::drawing::{Fill, Ink, Meaning};
use crate::project::request::Tint;

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Style {
    /// Its class on the page.
    pub class: &'static str,
    /// Its strength, in screen pixels.
    pub width: f64,
    /// Its dashes and the gaps between them, in screen pixels; none for a solid line.
    pub dashes: &'static [f64],
}

/// A screen pixel in millimetres: 1/96 in (W3C, CSS Values and Units Level 3, 5.2).
pub const PIXEL: f64 = 25.4 / 96.0;

impl Meaning {
    /// How it is drawn.
    #[must_use]
    pub const fn style(self) -> Style {
        let (class, width, dashes): (_, _, &[f64]) = match self {
            Self::Cut => ("cut", 2.0, &[]),
            Self::Mountain => ("mountain", 1.4, &[9.0, 3.0, 1.5, 3.0]),
            Self::Valley => ("valley", 1.4, &[6.0, 4.0]),
            Self::Glue => ("glue", 0.8, &[]),
            Self::GlueBehind => ("glue-behind", 0.8, &[3.0, 3.0]),
            Self::Cross => ("cross", 0.7, &[]),
            Self::Mat => ("mat", 0.8, &[]),
            Self::Edge => ("edge", 0.8, &[]),
            Self::Dimension => ("dimension", 0.8, &[]),
            Self::Now => ("now", 3.5, &[]),
        };
        Style { class, width, dashes }
    }
}

/// Lines of drawings that are read on a page, not measured: as a share of those on patterns.
pub const FINE: f64 = 0.5;

impl Fill {
    /// What it is on paper.
    #[must_use]
    pub fn on_paper(self) -> Tint {
        let grey = |light: u32| Tint(light << 16 | light << 8 | light);
        match self {
            Self::Card(tint, light) => tint.lit(light),
            Self::Waste => grey(0xe4),
            Self::Sheet => grey(0xf6),
            Self::Chosen => grey(0xd0),
            Self::Tool => grey(0xc4),
        }
    }
}

impl Ink {
    /// What it is on paper: black, or white on dark card.
    #[must_use]
    pub fn on_paper(self) -> Tint {
        match self {
            Self::Card(tint) if !tint.is_light() => Tint(0x00ff_ffff),
            Self::Card(_) | Self::Page => Tint(0),
        }
    }
}
