//! Lettering: what a label is made of, and how wide it will be, in a font or in whatever face the device has.

use super::drawing::Label;
use super::font::Font;
use crate::measure::show::Figure;
use crate::say::phrase::{Bit, Phrase};

/// Width of a run of lettering, in its own height: figures in system faces are a little over half their height wide.
#[must_use]
pub fn run_width(text: &str) -> f64 {
    text.chars()
        .map(|c| match c {
            ' ' | '\u{a0}' | '.' | ',' | 'i' | 'l' | 'I' | 'j' | '\'' => 0.3,
            'm' | 'w' | 'M' | 'W' | '@' | '×' => 0.84,
            c if c.is_ascii_uppercase() => 0.66,
            _ => 0.58,
        })
        .sum()
}

/// One run of lettering or one fraction.
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// Words and whole numbers.
    Run(String),
    /// Numerator over denominator.
    Stack(i64, i64),
}

/// Height of the figures of a stacked fraction, as a share of the lettering's.
pub const STACKED: f64 = 0.66;

impl Piece {
    /// How wide it is in whatever face the device has, in the height of its lettering.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.measured(run_width)
    }

    /// How wide it is in a font.
    #[must_use]
    pub fn width_in(&self, font: &Font) -> f64 {
        self.measured(|words| font.width(words))
    }

    fn measured(&self, wide: impl Fn(&str) -> f64) -> f64 {
        match self {
            Self::Run(words) => wide(words),
            Self::Stack(over, under) => wide(&over.to_string()).max(wide(&under.to_string())) * STACKED + 0.16,
        }
    }
}

/// Words as runs and fractions, in order.
#[must_use]
pub fn pieces(words: &Phrase) -> Vec<Piece> {
    let mut all: Vec<Piece> = Vec::new();
    let mut run = String::new();
    let mut figure = |run: &mut String, f: &Figure, unit: bool| {
        if f.minus {
            run.push('−');
        }
        run.push_str(&f.whole);
        if let Some((n, d)) = f.fraction {
            if !run.is_empty() {
                all.push(Piece::Run(std::mem::take(run)));
            }
            all.push(Piece::Stack(n, d));
        }
        if unit {
            run.push(' ');
            run.push_str(f.unit);
        }
    };
    for bit in &words.bits {
        match bit {
            Bit::Words(words) => run.push_str(words),
            Bit::Figure(f) => figure(&mut run, f, true),
            Bit::Bare(f) => figure(&mut run, f, false),
        }
    }
    if !run.is_empty() {
        all.push(Piece::Run(run));
    }
    all
}

/// How wide a label is, in the unit of its lettering's height.
#[must_use]
pub fn label_width(label: &Label, lettering: f64) -> f64 {
    pieces(&label.words).iter().map(Piece::width).sum::<f64>() * lettering * label.size
}
