//! Patterns on pages of paper: one page each, or several that are joined mark on mark.

use super::drawing::{Drawing, Hold, Ink, Mark, Meaning, Spot};
use super::font::Font;
use super::pattern::Pattern;
use crate::say::pages as say;
use crate::stock::paper::Paper;

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Its width and height in millimetres.
    pub size: Spot,
    /// The pattern's place in the list.
    pub pattern: usize,
    /// Where the pattern's own zero lies on the page.
    pub at: Spot,
    /// Upper left and lower right corner of what is shown of the pattern.
    pub shown: [Spot; 2],
    /// What is round it: the two bars, words, and marks to join by.
    pub round: Drawing,
}

/// Patterns of more pages than these are left out: nobody joins so many.
pub const MOST: usize = 100;

/// Left free round the page: what printers leave white at most (common practice, no source).
const EDGE: f64 = 8.0;
/// Kept for the bars and words below.
const FOOT: f64 = 23.0;
/// What two pages that are joined both show.
const LAP: f64 = 12.0;

/// A pattern on one kind of page: how many across and down, and what each shows.
#[derive(Clone, Copy)]
struct Tiling {
    size: Spot,
    room: Spot,
    count: [usize; 2],
}

impl Tiling {
    fn of(size: Spot, whole: Spot) -> Self {
        let room = [size[0] - 2.0 * EDGE, size[1] - 2.0 * EDGE - FOOT];
        // A page shows its room; each further one shows less by what both show.
        let count = [0, 1].map(|i| {
            let more = (whole[i] - room[i]) / (room[i] - LAP);
            1 + more.max(0.0).ceil() as usize
        });
        Self { size, room, count }
    }

    const fn pages(&self) -> usize {
        self.count[0].saturating_mul(self.count[1])
    }

    fn step(&self, axis: usize) -> f64 {
        self.room[axis] - LAP
    }
}

/// The pages of all patterns, in order, and the places of those that would take more than [`MOST`].
#[must_use]
pub fn pages(patterns: &[Pattern], paper: Paper, credit: &str, font: &Font) -> (Vec<Page>, Vec<usize>) {
    let (mut all, mut left_out) = (Vec::new(), Vec::new());
    for (nth, pattern) in patterns.iter().enumerate() {
        let (min, max) = (pattern.drawing.min, pattern.drawing.max);
        let whole = [max[0] - min[0], max[1] - min[1]];
        let [w, h] = paper.size();
        let (upright, lying) = (Tiling::of([w, h], whole), Tiling::of([h, w], whole));
        let tiling = if lying.pages() < upright.pages() { lying } else { upright };
        if tiling.pages() > MOST {
            left_out.push(nth);
            continue;
        }
        for row in 0..tiling.count[1] {
            for column in 0..tiling.count[0] {
                all.push(page(pattern, nth, &tiling, [column, row], &Foot { credit, font }));
            }
        }
    }
    (all, left_out)
}

/// What stands at the foot of every page, and what it is set in.
struct Foot<'a> {
    credit: &'a str,
    font: &'a Font,
}

fn page(pattern: &Pattern, nth: usize, tiling: &Tiling, place: [usize; 2], below: &Foot) -> Page {
    let (min, max) = (pattern.drawing.min, pattern.drawing.max);
    // What it shows begins here on the pattern.
    let from = [0, 1].map(|i| min[i] + place[i] as f64 * tiling.step(i));
    let at = [EDGE - from[0], EDGE - from[1]];
    let to = [0, 1].map(|i| (from[i] + tiling.room[i]).min(max[i]));
    let mut round = Drawing { lettering: 3.4, ..Drawing::default() };
    join_marks(&mut round, tiling, place, at, [from, to], min);
    foot(&mut round, pattern, tiling, place, below);
    Page { size: tiling.size, pattern: nth, at, shown: [[EDGE, EDGE], [to[0] + at[0], to[1] + at[1]]], round }
}

/// Along each edge where another page goes on: a line in the middle of what both show, and crosses on it. The same
/// places of the pattern on both pages: joined rightly, cross lies on cross.
fn join_marks(d: &mut Drawing, tiling: &Tiling, place: [usize; 2], at: Spot, [from, to]: [Spot; 2], min: Spot) {
    for axis in [0, 1] {
        let other = 1 - axis;
        for seam in [place[axis].checked_sub(1), Some(place[axis]).filter(|p| p + 1 < tiling.count[axis])] {
            let Some(seam) = seam else { continue };
            let along = min[axis] + (seam + 1) as f64 * tiling.step(axis) + LAP / 2.0;
            let spot = |across: f64, off: f64| {
                let mut spot = [0.0; 2];
                spot[axis] = along + at[axis] + off;
                spot[other] = across + at[other];
                spot
            };
            d.line(Meaning::Cross, Ink::Page, vec![spot(from[other], 0.0), spot(to[other], 0.0)]);
            for share in [0.2, 0.8] {
                let across = from[other] + (to[other] - from[other]) * share;
                d.line(Meaning::Dimension, Ink::Page, vec![spot(across, -3.0), spot(across, 3.0)]);
                d.line(Meaning::Dimension, Ink::Page, vec![spot(across - 3.0, 0.0), spot(across + 3.0, 0.0)]);
                let name = say::join(axis, seam, place[other]);
                // Beside the line, on what both pages show.
                d.label(spot(across + 4.0, if axis == 0 { -3.2 } else { -2.0 }), name, Ink::Page);
            }
        }
    }
}

/// The two bars, what the page shows, and how to print it.
fn foot(d: &mut Drawing, pattern: &Pattern, tiling: &Tiling, place: [usize; 2], below: &Foot) {
    let [width, height] = tiling.size;
    let bar = height - EDGE - 14.7;
    let mut left = EDGE;
    for (long, words) in [(50.0, "50 mm"), (50.8, "2 in")] {
        d.line(Meaning::Dimension, Ink::Page, vec![[left, bar], [left + long, bar]]);
        for end in [left, left + long] {
            d.line(Meaning::Dimension, Ink::Page, vec![[end, bar - 2.0], [end, bar + 2.0]]);
        }
        d.label([left + long / 2.0, bar - 2.2], words, Ink::Page);
        left += long + 12.0;
    }
    let count = tiling.pages();
    let nth = place[1] * tiling.count[0] + place[0] + 1;
    let title = say::title(&pattern.name, pattern.times, nth, count);
    let room = width - 2.0 * EDGE;
    for (words, up) in [(title.as_str(), 9.4), (say::HOW, 5.2), (below.credit, 0.8)] {
        let words = shortened(words, room / d.lettering, below.font);
        d.label([EDGE, height - EDGE - up], words, Ink::Page);
        if let Some(Mark::Label(label)) = d.marks.last_mut() {
            label.hold = Hold::Start;
        }
    }
}

/// As much as fits in `room`, which counts in the lettering's height.
fn shortened(words: &str, room: f64, font: &Font) -> String {
    if font.width(words) <= room {
        return words.to_owned();
    }
    let mut wide = font.width("…");
    let fits = words.chars().take_while(|c| {
        wide += font.width(c.encode_utf8(&mut [0; 4]));
        wide <= room
    });
    fits.chain(['…']).collect()
}
