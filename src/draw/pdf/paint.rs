//! Marks of a drawing as what a page of a PDF says (ISO 32000-1, annex A, has the operators): lengths are millimetres,
//! downward from the page's upper left corner.

use pdf_writer::{Content, Name, Str};

use super::letters::Letters;
use super::{Layer, POINTS};
use crate::draw::drawing::{Area, Drawing, Ends, Hold, Label, Line, Mark, Reads, Spot};
use crate::draw::lettering::{Piece, STACKED, pieces};
use crate::draw::pages::Page;
use crate::draw::pattern::Pattern;
use crate::draw::style::{FINE, PIXEL};
use crate::project::request::Tint;

/// What the pages call the font.
pub const FONT: Name = Name(b"F");

/// Hundredths of a millimetre.
pub fn short(mm: f64) -> f32 {
    let hundredths = (mm * 100.0).round();
    if hundredths.is_finite() { (hundredths / 100.0) as f32 } else { 0.0 }
}

/// A page in the making.
pub struct Painter<'a, 'b> {
    out: Content,
    letters: &'a mut Letters<'b>,
}

impl<'a, 'b> Painter<'a, 'b> {
    /// A page of this height with nothing on it.
    pub fn new(height: f64, letters: &'a mut Letters<'b>) -> Self {
        let mut out = Content::new();
        let scale = POINTS as f32;
        out.save_state().transform([scale, 0.0, 0.0, -scale, 0.0, short(height * POINTS)]);
        Self { out, letters }
    }

    /// What the page says.
    pub fn finish(mut self) -> Vec<u8> {
        self.out.restore_state();
        self.out.finish().into_vec()
    }

    /// A page of patterns: everything in its layer.
    pub fn pattern(&mut self, page: &Page, patterns: &[Pattern]) {
        if let Some(pattern) = patterns.get(page.pattern) {
            let [min, max] = page.shown;
            let [x, y, wide, high] = [min[0], min[1], max[0] - min[0], max[1] - min[1]].map(short);
            let [to_x, to_y] = page.at.map(short);
            self.out.save_state().rect(x, y, wide, high).clip_nonzero().end_path();
            self.out.transform([1.0, 0.0, 0.0, 1.0, to_x, to_y]);
            self.layers(&pattern.drawing);
            self.out.restore_state();
        }
        self.layers(&page.round);
    }

    fn layers(&mut self, drawing: &Drawing) {
        for layer in Layer::ALL {
            let mut marks = drawing.marks.iter().filter(|mark| Layer::of(mark) == Some(layer)).peekable();
            if marks.peek().is_none() {
                continue;
            }
            self.out.begin_marked_content_with_properties(Name(b"OC")).properties_named(layer.key());
            for mark in marks {
                self.mark(mark, drawing.lettering, PIXEL);
            }
            self.out.end_marked_content();
        }
    }

    /// A page to be read: everything in the order in which it stands there.
    pub fn read(&mut self, page: &Drawing) {
        let mut marks = page.marks.iter().peekable();
        let mut begun = false;
        while let Some(mark) = marks.next() {
            let Mark::Area(area) = mark else {
                self.mark(mark, page.lettering, PIXEL * FINE);
                continue;
            };
            // Alike areas one after another are one shape: between two that touch no light shows.
            let goes_on = marks.peek().is_some_and(|next| area.goes_on(next));
            self.area(area, begun, goes_on);
            begun = goes_on;
        }
    }

    fn area(&mut self, area: &Area, begun: bool, goes_on: bool) {
        if !begun {
            let [red, green, blue] = rgb(area.fill.on_paper());
            self.out.set_fill_rgb(red, green, blue);
        }
        self.run(&area.corners);
        self.out.close_path();
        if !goes_on {
            self.out.fill_nonzero().set_fill_gray(0.0);
        }
    }

    fn mark(&mut self, mark: &Mark, lettering: f64, unit: f64) {
        match mark {
            Mark::Line(one) => self.line(one, unit),
            Mark::Label(one) => self.label(one, lettering),
            // What lies under a pattern is no line of it; pages to be read paint areas themselves.
            Mark::Area(_) => {}
        }
    }

    fn run(&mut self, spots: &[Spot]) {
        for (nth, spot) in spots.iter().enumerate() {
            let [x, y] = spot.map(short);
            if nth == 0 {
                self.out.move_to(x, y);
            } else {
                self.out.line_to(x, y);
            }
        }
    }

    fn line(&mut self, line: &Line, unit: f64) {
        let style = line.meaning.style();
        let light = line.ink.on_paper() != Tint(0);
        if light {
            self.out.set_stroke_gray(1.0);
        }
        self.out.set_line_width(short(style.width * unit));
        self.out.set_dash_pattern(style.dashes.iter().map(|dash| short(dash * unit)), 0.0);
        self.run(&line.run);
        if line.ends == Ends::Closed {
            self.out.close_path();
        }
        self.out.stroke();
        if light {
            self.out.set_stroke_gray(0.0);
        }
    }

    /// Lettering: runs one after another, fractions stacked from their figures.
    fn label(&mut self, label: &Label, lettering: f64) {
        let size = lettering * label.size;
        let light = label.ink.on_paper() != Tint(0);
        if light {
            self.out.set_fill_gray(1.0).set_stroke_gray(1.0);
        }
        let font = self.letters.font();
        let pieces = pieces(&label.words);
        let width: f64 = pieces.iter().map(|piece| piece.width_in(font) * size).sum();
        let mut x = match label.hold {
            Hold::Start => 0.0,
            Hold::Middle => -width / 2.0,
            Hold::End => -width,
        };
        for piece in &pieces {
            let wide = piece.width_in(font) * size;
            match piece {
                Piece::Run(words) => self.words(label, words, [x, 0.0], size),
                Piece::Stack(over, under) => {
                    let small = size * STACKED;
                    for (figure, y) in [(over, -small * 0.52), (under, small * 0.52)] {
                        let words = figure.to_string();
                        self.words(label, &words, [x + (wide - font.width(&words) * small) / 2.0, y], small);
                    }
                    let ends = [x + size * 0.05, x + wide - size * 0.05].map(|x| from(label, [x, 0.0]));
                    self.out.set_line_width(short(size * 0.06)).set_dash_pattern([], 0.0);
                    self.run(&ends);
                    self.out.stroke();
                }
            }
            x += wide;
        }
        if light {
            self.out.set_fill_gray(0.0).set_stroke_gray(0.0);
        }
    }

    /// Words whose line's middle begins at a place along a label.
    fn words(&mut self, label: &Label, words: &str, [x, y]: Spot, size: f64) {
        let [x, y] = from(label, [x, y + self.letters.font().capital / 2.0 * size]).map(short);
        let turned = match label.way {
            Reads::Across => [1.0, 0.0, 0.0, -1.0, x, y],
            Reads::Up => [0.0, -1.0, -1.0, 0.0, x, y],
        };
        let codes = self.letters.codes(words);
        self.out.begin_text().set_font(FONT, short(size)).set_text_matrix(turned).show(Str(&codes)).end_text();
    }
}

/// A place along a label on the page.
fn from(label: &Label, [x, y]: Spot) -> Spot {
    match label.way {
        Reads::Across => [label.at[0] + x, label.at[1] + y],
        Reads::Up => [label.at[0] + y, label.at[1] - x],
    }
}

/// Red, green and blue from 0 to 1.
fn rgb(tint: Tint) -> [f32; 3] {
    [16, 8, 0].map(|shift| short(f64::from(tint.0 >> shift & 0xff) / 255.0))
}
