//! How each meaning of a line is drawn, on the screen and on paper: by strength and dashes, never by colour.

use super::drawing::Meaning;

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
