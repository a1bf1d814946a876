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
use super::style::{FINE, PIXEL};
use crate::project::request::Tint;

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

/// Pages of patterns as a file: each layer can be switched off by itself.
#[must_use]
pub fn pdf(title: &str, patterns: &[Pattern], pages: &[Page]) -> Vec<u8> {
    let pages = pages.iter().map(|page| (page.size, drawn(page, patterns)));
    file(title, &Layer::ALL, pages.collect())
}

/// Pages to be read as a file: everything in the order in which it stands on them.
#[must_use]
pub fn print(title: &str, pages: &[Drawing]) -> Vec<u8> {
    let pages = pages.iter().map(|page| {
        let mut out = upright(page.max[1]);
        let mut marks = page.marks.iter().peekable();
        let mut begun = false;
        while let Some(mark) = marks.next() {
            let Mark::Area(area) = mark else {
                paint(&mut out, mark, page.lettering, PIXEL * FINE);
                continue;
            };
            // Alike areas one after another are one shape: between two that touch no light shows.
            if !begun {
                out.push_str(&format!("{} rg ", rgb(area.fill.on_paper())));
            }
            run(&mut out, &area.corners);
            begun = marks.peek().is_some_and(|next| area.goes_on(next));
            out.push_str(if begun { "h\n" } else { "h f 0 g\n" });
        }
        out.push('Q');
        (page.max, out)
    });
    file(title, &[], pages.collect())
}

/// The file of these pages: what is drawn on each, and its size in millimetres.
fn file(title: &str, layers: &[Layer], pages: Vec<(Spot, String)>) -> Vec<u8> {
    let mut file = Objects::default();
    let layers: Vec<usize> = layers.iter().map(|layer| file.add(&layer.dictionary())).collect();
    // One of the faces that every reader has (ISO 32000-1, 9.6.2.2).
    let font = file.add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>");
    let named = layers.iter().enumerate().map(|(nth, id)| format!("/L{nth} {id} 0 R"));
    let uses = format!("<</Font<</F {font} 0 R>>/Properties<<{}>>>>", named.collect::<String>());
    let uses = file.add(&uses);
    // The tree of the pages comes after them all: each of them is a drawing and a page.
    let tree = uses + 2 * pages.len() + 1;
    let count = pages.len();
    let mut leaves = String::new();
    for (size, drawn) in pages {
        let drawn = file.stream(&drawn);
        let [width, height] = size.map(|mm| num(mm * POINTS));
        let page = format!(
            "<</Type/Page/Parent {tree} 0 R/MediaBox[0 0 {width} {height}]/Resources {uses} 0 R/Contents {drawn} 0 R>>"
        );
        leaves.push_str(&format!("{} 0 R ", file.add(&page)));
    }
    let tree = file.add(&format!("<</Type/Pages/Count {count}/Kids[{leaves}]>>"));
    let listed: String = layers.iter().map(|id| format!("{id} 0 R ")).collect();
    let switched = format!("/OCProperties<</OCGs[{listed}]/D<</Order[{listed}]>>>>");
    let switched = if layers.is_empty() { "" } else { &switched };
    let root = file.add(&format!("<</Type/Catalog/Pages {tree} 0 R{switched}>>"));
    let info = file.add(&format!("<</Title{}/Creator(Snugfold)>>", words(title)));
    file.finish(root, info)
}

/// What of the words on these pages the file cannot show: names in which a character is missing.
#[must_use]
pub fn unshown(patterns: &[Pattern], credit: &str) -> Vec<String> {
    let names = patterns.iter().map(|p| p.name.as_str()).chain([credit]);
    names.filter(|n| !shows(n)).map(str::to_owned).collect()
}

/// From here on in millimetres, downward from the upper left corner of a page of this height.
fn upright(height: f64) -> String {
    format!("q {SCALE} 0 0 -{SCALE} 0 {} cm\n", num(height * POINTS))
}

/// The characters on these pages that the file cannot show.
#[must_use]
pub fn missing(pages: &[Drawing]) -> Vec<char> {
    let labels =
        pages.iter().flat_map(|p| &p.marks).filter_map(|m| if let Mark::Label(l) = m { Some(l) } else { None });
    let mut all: Vec<char> = Vec::new();
    for c in labels.flat_map(|l| l.words.to_string().chars().collect::<Vec<_>>()) {
        if latin::place(c).is_none() && !all.contains(&c) {
            all.push(c);
        }
    }
    all
}

/// What is drawn on a page of patterns (ISO 32000-1, annex A, has the operators).
fn drawn(page: &Page, patterns: &[Pattern]) -> String {
    let mut out = upright(page.size[1]);
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
            paint(&mut inside, mark, drawing.lettering, PIXEL);
        }
        if !inside.is_empty() {
            out.push_str(&format!("/OC /L{nth} BDC\n{inside}EMC\n"));
        }
    }
}

fn paint(out: &mut String, mark: &Mark, lettering: f64, unit: f64) {
    match mark {
        Mark::Line(one) => line(out, one, unit),
        Mark::Label(one) => label(out, one, lettering),
        // What lies under a pattern is no line of it; pages to be read paint areas themselves.
        Mark::Area(_) => {}
    }
}

/// Red, green and blue from 0 to 1.
fn rgb(tint: Tint) -> String {
    let part = |shift: u32| num(f64::from(tint.0 >> shift & 0xff) / 255.0);
    format!("{} {} {}", part(16), part(8), part(0))
}

fn run(out: &mut String, spots: &[Spot]) {
    for (i, spot) in spots.iter().enumerate() {
        out.push_str(&format!("{} {} {} ", num(spot[0]), num(spot[1]), if i == 0 { "m" } else { "l" }));
    }
}

fn line(out: &mut String, line: &Line, unit: f64) {
    let style = line.meaning.style();
    let light = line.ink.on_paper() != Tint(0);
    out.push_str(if light { "1 G " } else { "" });
    let dashes: Vec<String> = style.dashes.iter().map(|d| num(d * unit)).collect();
    out.push_str(&format!("{} w [{}] 0 d ", num(style.width * unit), dashes.join(" ")));
    run(out, &line.run);
    out.push_str(if line.ends == Ends::Closed { "h S" } else { "S" });
    out.push_str(if light { " 0 G\n" } else { "\n" });
}

/// Lettering: runs one after another, fractions stacked from their figures.
fn label(out: &mut String, label: &Label, lettering: f64) {
    let size = lettering * label.size;
    let light = label.ink.on_paper() != Tint(0);
    out.push_str(if light { "1 g 1 G " } else { "" });
    let pieces = pieces(&label.words);
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
    out.push_str(if light { "0 g 0 G\n" } else { "" });
}

fn bar(out: &mut String, from: Spot, to: Spot, width: f64) {
    let ([x, y], [to_x, to_y]) = (from.map(num), to.map(num));
    out.push_str(&format!("{} w [] 0 d {x} {y} m {to_x} {to_y} l S\n", num(width)));
}
