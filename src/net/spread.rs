//! `Spread`: glue while its net is being built.

use crate::measure::length::Length;
use crate::measure::outline::Outline;

use super::corner::Side;
use super::flat::{Face, PanelId};

/// Glue while its net is being built: on a face, but for a border; on the strip along one side where there is one.
pub struct Spread {
    /// The panel.
    pub on: PanelId,
    /// Its face.
    pub face: Face,
    /// The strip along one side, where it is not all of it.
    pub strip: Option<(Side, Length)>,
    /// The border.
    pub edge: Length,
    /// What it is pressed onto.
    pub onto: Vec<PanelId>,
}

impl Spread {
    /// Where it is, on a panel of this outline.
    #[must_use]
    pub fn area(&self, outline: &Outline) -> Outline {
        let whole = outline.bounds();
        let mut bounds = whole;
        if let Some((side, width)) = self.strip {
            match side {
                Side::Top => bounds.max.y = whole.max.y.min(whole.min.y + width),
                Side::Right => bounds.min.x = whole.min.x.max(whole.max.x - width),
                Side::Bottom => bounds.min.y = whole.min.y.max(whole.max.y - width),
                Side::Left => bounds.max.x = whole.max.x.min(whole.min.x + width),
            }
        }
        let edge = self.edge.min(bounds.width().min(bounds.height()).scaled(1, 4));
        if edge.is_positive() || bounds != whole { bounds.inset(edge).outline() } else { outline.clone() }
    }
}
