//! A sheet with its pieces, each with its letter, and its cuts numbered in order.

use super::drawing::{Drawing, Fill, Hold, Ink, Label, Mark, Meaning, Reads, Spot};
use super::geometry::block;
use crate::cut::layout::{Node, Pattern, Way};
use crate::cut::order::CutStep;
use crate::cut::sheet::Sheet;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::measure::system::System;
use crate::project::request::Tint;
use crate::say::phrase::Phrase;
use crate::say::pictures;

/// What a sheet is drawn with.
pub struct Cutting<'a> {
    /// The sheet.
    pub sheet: &'a Sheet,
    /// What is cut from it.
    pub pattern: &'a Pattern,
    /// The cuts in order.
    pub cuts: &'a [CutStep],
    /// The card.
    pub tint: Tint,
    /// The system of its measures.
    pub system: System,
    /// The letter of a piece.
    pub letter: &'a dyn Fn(u32) -> String,
}

/// The sheet as it lies on the table.
#[must_use]
pub fn sheet(c: &Cutting) -> Drawing {
    let (w, h) = (c.sheet.width.as_mm(), c.sheet.height.as_mm());
    let side = |length| Figure::of(length, c.sheet.typed).to_string();
    let mut d = Drawing {
        title: pictures::sheet(&side(c.sheet.width), &side(c.sheet.height)),
        lettering: w.max(h) / 25.0,
        ..Drawing::default()
    };
    d.area(block([0.0, 0.0], [w, h]), Fill::Sheet);
    // Nodes count from the lower left corner; the drawing from the upper left.
    node(&mut d, c, &c.pattern.tree, [0.0, 0.0], [w, h], h);
    d.ring(Meaning::Edge, Ink::Page, block([0.0, 0.0], [w, h]));
    for (i, cut) in c.cuts.iter().enumerate() {
        let ends = cut.line.map(|[x, y]| [x.as_mm(), h - y.as_mm()]);
        d.line(Meaning::Cut, Ink::Card(c.tint), ends.to_vec());
        number(&mut d, i + 1, ends);
    }
    let edge = d.lettering * 1.2;
    d.frame([-edge, -edge], [w + edge, h + edge]);
    d
}

/// The cut's number, in a field of its own on the cut.
fn number(d: &mut Drawing, number: usize, [a, b]: [Spot; 2]) {
    // Not in the middle: there the pieces have their letters.
    let at = |t: f64| [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    let spot = at(0.2);
    let text = number.to_string();
    let (half, high) = (d.lettering * (0.32 * text.len() as f64 + 0.2), d.lettering * 0.58);
    let field = block([spot[0] - half, spot[1] - high], [spot[0] + half, spot[1] + high]);
    d.area(field.clone(), Fill::Tool);
    d.ring(Meaning::Edge, Ink::Page, field);
    d.label(spot, text, Ink::Page);
}

fn node(d: &mut Drawing, c: &Cutting, node_at: &Node, low: Spot, sides: Spot, height: f64) {
    match node_at {
        Node::Cut { way, at, low: first, high: second } => {
            let at = at.as_mm();
            match way {
                Way::Upright => {
                    node(d, c, first, low, [at, sides[1]], height);
                    node(d, c, second, [low[0] + at, low[1]], [sides[0] - at, sides[1]], height);
                }
                Way::Level => {
                    node(d, c, first, low, [sides[0], at], height);
                    node(d, c, second, [low[0], low[1] + at], [sides[0], sides[1] - at], height);
                }
            }
        }
        Node::Piece { id, .. } => piece(d, c, *id, low, sides, height),
        Node::Offcut => {
            let (min, max) = ([low[0], height - low[1] - sides[1]], [low[0] + sides[0], height - low[1]]);
            d.area(block(min, max), Fill::Waste);
        }
    }
}

fn piece(d: &mut Drawing, c: &Cutting, id: u32, low: Spot, sides: Spot, height: f64) {
    let (min, max) = ([low[0], height - low[1] - sides[1]], [low[0] + sides[0], height - low[1]]);
    d.area(block(min, max), Fill::Card(c.tint, 0.0));
    let middle = [f64::midpoint(min[0], max[0]), f64::midpoint(min[1], max[1])];
    let ink = Ink::Card(c.tint);
    let narrow = sides[0].min(sides[1]);
    let large = (narrow / d.lettering * 0.5).clamp(0.6, 2.2);
    let label = |at: Spot, words: Phrase, size: f64, way: Reads| {
        Mark::Label(Label { at, hold: Hold::Middle, words, size, way, ink })
    };
    // The measures stand under the letter where there is room, beside it on a strip.
    let said = Phrase::bare(Figure::of(Length::round_mm(sides[0]), c.system))
        .with(" × ")
        .with(Phrase::bare(Figure::of(Length::round_mm(sides[1]), c.system)));
    let letter = Phrase::words((c.letter)(id));
    if sides[0] > d.lettering * 6.0 && sides[1] > d.lettering * 4.5 {
        d.marks.push(label([middle[0], middle[1] - d.lettering * 0.8], letter, large, Reads::Across));
        d.marks.push(label([middle[0], middle[1] + d.lettering * large * 0.62], said, 0.85, Reads::Across));
    } else if sides[1] > sides[0] {
        d.marks.push(label(middle, letter, large, Reads::Up));
    } else {
        d.marks.push(label(middle, letter, large, Reads::Across));
    }
}
