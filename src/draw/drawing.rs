//! `Drawing`: what is drawn, in millimetres and with the meaning of each line, for any painter.

use crate::project::request::Tint;
use crate::say::hand::Hand;
use crate::say::phrase::Phrase;

/// A place on the drawing in millimetres: x to the right, y downward.
pub type Spot = [f64; 2];

/// Marks in the order in which they are painted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// What it shows, in one line, for those who hear it.
    pub title: String,
    /// Upper left corner of what is shown.
    pub min: Spot,
    /// Lower right corner of what is shown.
    pub max: Spot,
    /// Height of ordinary lettering.
    pub lettering: f64,
    /// What is drawn, from below to above.
    pub marks: Vec<Mark>,
}

/// One thing that is drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A filled shape.
    Area(Area),
    /// A run of straight edges.
    Line(Line),
    /// Lettering.
    Label(Label),
}

/// A filled shape without a line of its own.
#[derive(Clone, Debug, PartialEq)]
pub struct Area {
    /// Its corners.
    pub corners: Vec<Spot>,
    /// What it is filled with.
    pub fill: Fill,
    /// The panel that a touch on it means.
    pub panel: Option<Touch>,
}

/// A panel that can be touched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Touch {
    /// The part, in the order of the drawing.
    pub part: usize,
    /// The panel of its net.
    pub panel: usize,
}

/// What a shape is filled with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fill {
    /// The maker's card; its light from −1 (black) through 0 (as it is) to 1 (white).
    Card(Tint, f64),
    /// Card that is taken away.
    Waste,
    /// A sheet as it is bought, and what is left over of it.
    Sheet,
    /// What was touched or what is spoken of.
    Chosen,
    /// A tool that the card lies against.
    Tool,
}

/// A run of straight edges with one meaning.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it means.
    pub meaning: Meaning,
    /// Its corners in order.
    pub run: Vec<Spot>,
    /// Whether the last corner is joined to the first.
    pub ends: Ends,
    /// What it is drawn on.
    pub ink: Ink,
}

impl Line {
    /// Whether what comes next is a line of the same look: both can be painted as one.
    #[must_use]
    pub fn goes_on(&self, next: &Mark) -> bool {
        matches!(next, Mark::Line(next) if next.meaning == self.meaning && next.ink == self.ink)
    }
}

/// Whether a line closes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// It has two ends.
    Open,
    /// It comes back to its start.
    Closed,
}

/// What a line means. The style says it, never the colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Meaning {
    /// A cut: solid and heavy.
    Cut,
    /// A fold away from the reader: dash and dot.
    Mountain,
    /// A fold towards the reader: dashes.
    Valley,
    /// Glue on the face that is seen: hatching.
    Glue,
    /// Glue on the face behind: broken hatching.
    GlueBehind,
    /// Across what is taken away.
    Cross,
    /// The edge of a mat.
    Mat,
    /// The edge of a blank, of a sheet, or of a folded panel: solid and thin.
    Edge,
    /// A measure and its ticks.
    Dimension,
    /// What is spoken of: solid and heaviest.
    Now,
}

/// What lies under a line or lettering, and so whether it is drawn dark or light.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// The page.
    Page,
    /// Card of this tint.
    Card(Tint),
}

/// Lettering.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// The middle of its line, at its left end, middle or right end.
    pub at: Spot,
    /// Where `at` is along it.
    pub hold: Hold,
    /// What it says.
    pub words: Phrase,
    /// Its height as a share of ordinary lettering.
    pub size: f64,
    /// Whether it reads upward.
    pub way: Reads,
    /// What it stands on.
    pub ink: Ink,
}

/// Where lettering is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// At its beginning.
    Start,
    /// In its middle.
    Middle,
    /// At its end.
    End,
}

/// Which way lettering reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reads {
    /// From left to right.
    Across,
    /// From bottom to top.
    Up,
}

impl Area {
    /// Whether what comes next is an area like this, turning the same way: both can be painted as one shape.
    #[must_use]
    pub fn goes_on(&self, next: &Mark) -> bool {
        let turn = |corners: &[Spot]| {
            let next = corners.iter().cycle().skip(1);
            corners.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() > 0.0
        };
        let Mark::Area(next) = next else {
            return false;
        };
        let same = next.fill == self.fill && next.panel == self.panel && self.panel.is_none();
        same && turn(&self.corners) == turn(&next.corners)
    }
}

impl Drawing {
    /// Adds a filled shape.
    pub fn area(&mut self, corners: Vec<Spot>, fill: Fill) {
        self.marks.push(Mark::Area(Area { corners, fill, panel: None }));
    }

    /// Adds a line from place to place.
    pub fn line(&mut self, meaning: Meaning, ink: Ink, run: Vec<Spot>) {
        self.marks.push(Mark::Line(Line { meaning, run, ends: Ends::Open, ink }));
    }

    /// Adds a line that comes back to its start.
    pub fn ring(&mut self, meaning: Meaning, ink: Ink, run: Vec<Spot>) {
        self.marks.push(Mark::Line(Line { meaning, run, ends: Ends::Closed, ink }));
    }

    /// Adds lettering of ordinary size, held in its middle and reading across.
    pub fn label(&mut self, at: Spot, words: impl Into<Phrase>, ink: Ink) {
        let (hold, way) = (Hold::Middle, Reads::Across);
        self.marks.push(Mark::Label(Label { at, hold, words: words.into(), size: 1.0, way, ink }));
    }

    /// Makes what is shown reach round all that is drawn, with `edge` to spare.
    pub fn fit(&mut self, edge: f64) {
        let drawn = self.marks.iter().flat_map(|m| match m {
            Mark::Area(a) => a.corners.as_slice(),
            Mark::Line(l) => l.run.as_slice(),
            Mark::Label(_) => &[],
        });
        let (min, max) = drawn.fold(([f64::MAX; 2], [f64::MIN; 2]), |(min, max), p| {
            ([min[0].min(p[0]), min[1].min(p[1])], [max[0].max(p[0]), max[1].max(p[1])])
        });
        if min[0] <= max[0] {
            self.frame([min[0] - edge, min[1] - edge], [max[0] + edge, max[1] + edge]);
        }
    }

    /// The same in a mirror, with words that say so.
    pub fn mirror(&mut self) {
        let turn = |p: &mut Spot| p[0] = -p[0];
        for mark in &mut self.marks {
            match mark {
                Mark::Area(a) => a.corners.iter_mut().for_each(turn),
                Mark::Line(l) => l.run.iter_mut().for_each(turn),
                Mark::Label(l) => {
                    turn(&mut l.at);
                    l.words = Hand::Left.phrase(std::mem::take(&mut l.words));
                    l.hold = match (l.way, l.hold) {
                        (Reads::Across, Hold::Start) => Hold::End,
                        (Reads::Across, Hold::End) => Hold::Start,
                        (_, hold) => hold,
                    };
                }
            }
        }
        (self.min[0], self.max[0]) = (-self.max[0], -self.min[0]);
    }

    /// Makes what is shown reach from `min` to `max`.
    pub const fn frame(&mut self, min: Spot, max: Spot) {
        self.min = min;
        self.max = max;
    }
}

impl Tint {
    /// With more (1 is white) or less light (−1 is black).
    #[must_use]
    pub fn lit(self, light: f64) -> Self {
        let part = |shift: u32| {
            let c = f64::from(self.0 >> shift & 0xff);
            let c = if light < 0.0 { c * (1.0 + light.max(-1.0)) } else { c + (255.0 - c) * light.min(1.0) };
            // Between 0 and 255 by construction.
            c.round() as u32
        };
        Self(part(16) << 16 | part(8) << 8 | part(0))
    }

    /// Whether dark ink shows on it: by its light as the sRGB standard (IEC 61966-2-1) weighs red, green and blue.
    #[must_use]
    pub fn is_light(self) -> bool {
        let part = |shift: u32| f64::from(self.0 >> shift & 0xff);
        0.2126 * part(16) + 0.7152 * part(8) + 0.0722 * part(0) > 110.0
    }
}
