//! A recipe as it is spoken: the blank, scores along one side, turn, scores along the other.

use super::drawn::{MOST, Span};
use super::read::Reading;
use super::statements::{Answer, items, positive};
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::finding::OwnText;

/// What was spoken of the blank and its scores so far.
#[derive(Default)]
pub(super) struct Spoken {
    blank: Option<(Length, Length)>,
    across: Vec<Length>,
    down: Vec<Length>,
    pub(super) turned: bool,
}

impl Reading {
    /// `9 x 7 1/2`, `230 by 190 mm`.
    pub(super) fn blank(&mut self, text: &str) -> Answer<()> {
        let text = text.replace(['×', '*'], " x ").replace(" by ", " x ");
        let (a, b) = text.split_once(" x ").or_else(|| text.split_once('x')).ok_or(OwnText::NoBlank)?;
        let height = self.given(b)?;
        // A unit that is said once, at the end, counts for both.
        let width = Given::read(a, height.system()).map_err(|_| OwnText::Length)?;
        self.bare = height.system();
        let (width, height) = (positive(width.length())?, positive(height.length())?);
        self.spoken = Spoken { blank: Some((width, height)), ..Spoken::default() };
        Ok(())
    }

    /// `at 1, 8`: from the left edge; once the card is turned, from the upper edge.
    pub(super) fn scores(&mut self, text: &str) -> Answer<()> {
        let text = text.strip_prefix("at ").unwrap_or(text).replace(" and ", ", ");
        let mut at = Vec::new();
        for one in items(&text) {
            at.push(positive(self.given(one)?.length())?);
        }
        if self.spoken.blank.is_none() {
            return Err(OwnText::NoBlank);
        }
        let into = if self.spoken.turned { &mut self.spoken.down } else { &mut self.spoken.across };
        into.extend(at);
        Ok(())
    }

    /// Makes columns and rows of what was spoken.
    pub(super) fn settle(&mut self) -> Answer<()> {
        let Some((width, height)) = self.spoken.blank.take() else {
            return Ok(());
        };
        let bare = self.bare;
        let spans = |all: &mut Vec<Length>, whole: Length| -> Answer<Vec<Span>> {
            all.sort_unstable();
            all.dedup();
            if all.last().is_some_and(|last| *last >= whole) {
                return Err(OwnText::BeyondBlank);
            }
            all.push(whole);
            if all.len() > usize::from(MOST) {
                return Err(OwnText::TooMany);
            }
            let mut before = Length::ZERO;
            let widths = all.iter().map(|&at| {
                let width = at - before;
                before = at;
                Given::of(width, bare).map(Span::typed).ok_or(OwnText::Length)
            });
            widths.collect()
        };
        self.drawn.columns = spans(&mut self.spoken.across, width)?;
        self.drawn.rows = spans(&mut self.spoken.down, height)?;
        self.fresh()
    }

    /// All cells are card once there are columns and rows.
    pub(super) fn fresh(&mut self) -> Answer<()> {
        if self.drawn.columns.len().max(self.drawn.rows.len()) > usize::from(MOST) {
            return Err(OwnText::TooMany);
        }
        self.drawn.cells.clear();
        self.drawn.fill();
        Ok(())
    }
}
