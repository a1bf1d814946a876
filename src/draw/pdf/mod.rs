//! The one painter of PDF: pages at true scale, with what is cut, creased and glued in layers of their own.
//!
//! The layers say what they are by the keys of ISO 19593-1:2018 (processing steps), as the PDF Association's Arlington
//! model lists them (`GTS_ProcStepsGroup`, `GTS_ProcStepsType`). The standard's own text was not at hand.

pub mod objects;

use objects::{Objects, bytes, words};

use super::drawing::{Drawing, Ends, Hold, Label, Line, Mark, Meaning, Reads, Spot};
use super::latin::{self, places, shows};
use super::lettering::{Piece, STACKED, pieces};
use super::number::num;
use super::pages::Page;
use super::pattern::Pattern;
use super::style::PIXEL;

/// Points in a millimetre: a point is 1/72 in (ISO 32000-1, 8.3.2.3).
const POINTS: f64 = 72.0 / 25.4;

/// [`POINTS`], as the file says it.
const SCALE: &str = "2.8346457";

/// What lies in a layer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Layer {
    Cut,
    Crease,
    Glue,
    Measures,
    Words,
}

impl Layer {
    const ALL: [Self; 5] = [Self::Cut, Self::Crease, Self::Glue, Self::Measures, Self::Words];

    /// What it is called in the file; its group, and its type where the group has types.
    const fn names(self) -> (&'static str, &'static str, Option<&'static str>) {
        match self {
            Self::Cut => ("Cut", "Structural", Some("Cutting")),
            Self::Crease => ("Score", "Structural", Some("Creasing")),
            Self::Glue => ("Glue", "Structural", Some("Gluing")),
            Self::Measures => ("Measures", "Dimensions", None),
            Self::Words => ("Words", "Legend", None),
        }
    }

    const fn of(mark: &Mark) -> Option<Self> {
        match mark {
            Mark::Area(_) => None,
            Mark::Label(_) => Some(Self::Words),
            Mark::Line(line) => Some(match line.meaning {
                Meaning::Cut | Meaning::Edge => Self::Cut,
                Meaning::Mountain | Meaning::Valley => Self::Crease,
                Meaning::Glue | Meaning::GlueBehind => Self::Glue,
                Meaning::Dimension | Meaning::Now => Self::Measures,
                Meaning::Cross | Meaning::Mat => Self::Words,
            }),
        }
    }

    /// What it says of itself.
    fn dictionary(self) -> String {
        let (name, group, kind) = self.names();
        let kind = kind.map_or(String::new(), |kind| format!("/GTS_ProcStepsType/{kind}"));
        format!("<</Type/OCG/Name({name})/GTS_Metadata<</GTS_ProcStepsGroup/{group}{kind}>>>>")
    }
}

/// The pages as a file.
#[must_use]
pub fn pdf(title: &str, patterns: &[Pattern], pages: &[Page]) -> Vec<u8> {
    let mut file = Objects::default();
    let layers = Layer::ALL.map(|layer| file.add(&layer.dictionary()));
    // One of the faces that every reader has (ISO 32000-1, 9.6.2.2).
    let font = file.add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>");
    let named = layers.iter().enumerate().map(|(nth, id)| format!("/L{nth} {id} 0 R"));
    let uses = format!("<</Font<</F {font} 0 R>>/Properties<<{}>>>>", named.collect::<String>());
    let uses = file.add(&uses);
    // The tree of the pages comes after them all: each of them is a drawing and a page.
    let tree = uses + 2 * pages.len() + 1;
    let mut leaves = String::new();
    for page in pages {
        let drawn = file.stream(&drawn(page, patterns));
        let [width, height] = page.size.map(|mm| num(mm * POINTS));
        let page = format!(
            "<</Type/Page/Parent {tree} 0 R/MediaBox[0 0 {width} {height}]/Resources {uses} 0 R/Contents {drawn} 0 R>>"
        );
        leaves.push_str(&format!("{} 0 R ", file.add(&page)));
    }
    let tree = file.add(&format!("<</Type/Pages/Count {}/Kids[{leaves}]>>", pages.len()));
    let layers: String = layers.iter().map(|id| format!("{id} 0 R ")).collect();
    let root =
        file.add(&format!("<</Type/Catalog/Pages {tree} 0 R/OCProperties<</OCGs[{layers}]/D<</Order[{layers}]>>>>>>"));
    let info = file.add(&format!("<</Title{}/Creator(Snugfold)>>", words(title)));
    file.finish(root, info)
}

/// What of the words on these pages the file cannot show: names in which a character is missing.
#[must_use]
pub fn unshown(patterns: &[Pattern], credit: &str) -> Vec<String> {
    let names = patterns.iter().map(|p| p.name.as_str()).chain([credit]);
    names.filter(|n| !shows(n)).map(str::to_owned).collect()
}

/// What is drawn on a page (ISO 32000-1, annex A, has the operators).
fn drawn(page: &Page, patterns: &[Pattern]) -> String {
    // From here on in millimetres, downward from the upper left corner.
    let mut out = format!("q {SCALE} 0 0 -{SCALE} 0 {} cm\n", num(page.size[1] * POINTS));
    if let Some(pattern) = patterns.get(page.pattern) {
        let [min, max] = page.shown;
        let [x, y, w, h] = [min[0], min[1], max[0] - min[0], max[1] - min[1]].map(num);
        let [to_x, to_y] = page.at.map(num);
        out.push_str(&format!("q {x} {y} {w} {h} re W n 1 0 0 1 {to_x} {to_y} cm\n"));
        marks(&mut out, &pattern.drawing);
        out.push_str("Q\n");
    }
    marks(&mut out, &page.round);
    out.push('Q');
    out
}

fn marks(out: &mut String, drawing: &Drawing) {
    for (nth, layer) in Layer::ALL.into_iter().enumerate() {
        let mut inside = String::new();
        for mark in drawing.marks.iter().filter(|m| Layer::of(m) == Some(layer)) {
            match mark {
                Mark::Line(one) => line(&mut inside, one),
                Mark::Label(one) => label(&mut inside, one, drawing.lettering),
                Mark::Area(_) => {}
            }
        }
        if !inside.is_empty() {
            out.push_str(&format!("/OC /L{nth} BDC\n{inside}EMC\n"));
        }
    }
}

fn line(out: &mut String, line: &Line) {
    let style = line.meaning.style();
    let dashes: Vec<String> = style.dashes.iter().map(|d| num(d * PIXEL)).collect();
    out.push_str(&format!("{} w [{}] 0 d ", num(style.width * PIXEL), dashes.join(" ")));
    for (i, spot) in line.run.iter().enumerate() {
        out.push_str(&format!("{} {} {} ", num(spot[0]), num(spot[1]), if i == 0 { "m" } else { "l" }));
    }
    out.push_str(if line.ends == Ends::Closed { "h S\n" } else { "S\n" });
}

/// Lettering: runs one after another, fractions stacked from their figures.
fn label(out: &mut String, label: &Label, lettering: f64) {
    let size = lettering * label.size;
    let pieces = pieces(label);
    let wide = |piece: &Piece| match piece {
        Piece::Run(words) => latin::width(words) * size,
        stack @ Piece::Stack(..) => stack.width() * size,
    };
    let width: f64 = pieces.iter().map(wide).sum();
    let mut x = match label.hold {
        Hold::Start => 0.0,
        Hold::Middle => -width / 2.0,
        Hold::End => -width,
    };
    let there = |x: f64, y: f64| match label.way {
        Reads::Across => [label.at[0] + x, label.at[1] + y],
        Reads::Up => [label.at[0] + y, label.at[1] - x],
    };
    let turn = match label.way {
        Reads::Across => "1 0 0 -1",
        Reads::Up => "0 -1 -1 0",
    };
    let run = |out: &mut String, words: &str, x: f64, y: f64, size: f64| {
        // Capitals of this face are 0.72 of its size high.
        let [x, y] = there(x, y + 0.36 * size).map(num);
        out.push_str(&format!("BT /F {} Tf {turn} {x} {y} Tm {} Tj ET\n", num(size), bytes(&places(words))));
    };
    for piece in &pieces {
        let wide = wide(piece);
        match piece {
            Piece::Run(words) => run(out, words, x, 0.0, size),
            Piece::Stack(over, under) => {
                let small = size * STACKED;
                for (figure, y) in [(over, -small * 0.52), (under, small * 0.52)] {
                    let words = figure.to_string();
                    run(out, &words, x + (wide - latin::width(&words) * small) / 2.0, y, small);
                }
                bar(out, there(x + size * 0.05, 0.0), there(x + wide - size * 0.05, 0.0), size * 0.06);
            }
        }
        x += wide;
    }
}

fn bar(out: &mut String, from: Spot, to: Spot, width: f64) {
    let ([x, y], [to_x, to_y]) = (from.map(num), to.map(num));
    out.push_str(&format!("{} w [] 0 d {x} {y} m {to_x} {to_y} l S\n", num(width)));
}
