//! Measures along the edges of a blank, as the board reads them: each score from the fence.

use super::drawing::{Drawing, Hold, Ink, Label, Mark, Meaning, Reads, Spot};
use super::lettering::label_width;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::measure::system::System;
use crate::net::recipe::Scores;
use crate::say::phrase::Phrase;

/// Scores measured from the left edge, above the blank.
pub fn along_top(d: &mut Drawing, scores: &Scores, system: System) {
    let base = -d.lettering * 0.5;
    d.line(Meaning::Dimension, Ink::Page, vec![[0.0, base], [scores.whole.as_mm(), base]]);
    let mut free = [f64::MIN; 2];
    for (at, words) in stops(scores, system) {
        let mut label = label([at, 0.0], words);
        let wide = label_width(&label, d.lettering);
        // In the first row where it does not touch the one before, or else in the second.
        let row = usize::from(at - wide / 2.0 < free[0]);
        free[row] = at + wide / 2.0 + d.lettering * 0.35;
        let away = d.lettering * (1.35 + 1.25 * row as f64);
        label.at[1] = -away;
        d.line(Meaning::Dimension, Ink::Page, vec![[at, 0.0], [at, -away + d.lettering * 0.7]]);
        d.marks.push(Mark::Label(label));
    }
}

/// Scores measured from the top edge, left of the blank.
pub fn along_left(d: &mut Drawing, scores: &Scores, system: System) {
    let base = -d.lettering * 0.5;
    d.line(Meaning::Dimension, Ink::Page, vec![[base, 0.0], [base, scores.whole.as_mm()]]);
    let mut free = f64::MIN;
    for (at, words) in stops(scores, system) {
        let y = at.max(free);
        free = y + d.lettering * 1.3;
        let mut label = label([base - d.lettering * 0.5, y], words);
        label.hold = Hold::End;
        d.line(Meaning::Dimension, Ink::Page, vec![[0.0, at], [base, at], [base - d.lettering * 0.35, y]]);
        d.marks.push(Mark::Label(label));
    }
}

/// Each score and the blank's far edge.
fn stops(scores: &Scores, system: System) -> Vec<(f64, Phrase)> {
    let said = |at: Length| (at.as_mm(), Phrase::bare(Figure::of(at, system)));
    scores.at.iter().copied().chain([scores.whole]).map(said).collect()
}

fn label(at: Spot, words: Phrase) -> Label {
    Label { at, hold: Hold::Middle, words, size: 1.0, way: Reads::Across, ink: Ink::Page }
}
