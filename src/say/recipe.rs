//! The score-and-cut recipe of one blank, in sentences.

use super::marks;
use super::measured::{length, row, sides};
use super::phrase::Phrase;
use super::spelling::Spelling;
use crate::measure::length::Length;
use crate::measure::outline::Rect;
use crate::measure::system::System;
use crate::net::arc::Line;
use crate::net::flat::{Net, Taken};
use crate::net::recipe::{CutLine, Recipe, Scores, TakeOff, Turned};
use crate::phrase;

/// How the card lies for these scores.
#[must_use]
pub fn lie(scores: &Scores, other: Length, system: System, spelling: Spelling) -> Phrase {
    let side = match scores.whole.cmp(&other) {
        std::cmp::Ordering::Greater => "its long side (",
        std::cmp::Ordering::Less => "its short side (",
        std::cmp::Ordering::Equal => "one side (",
    };
    let along = length(scores.whole, system);
    match scores.turned {
        Turned::AsItLies => phrase![
            "Lay the card outside up, ",
            side,
            along,
            ") along the top of the board and its left edge at the left fence."
        ],
        Turned::Quarter => phrase![
            format!("Turn the card a quarter {}: {side}", spelling.pick("anticlockwise", "counterclockwise")),
            along,
            ") now lies along the top, and what was its top edge is at the left fence."
        ],
    }
}

/// `Score at 1 1/4, 4 1/4 and 5 1/2 in.`
#[must_use]
pub fn score(scores: &Scores, system: System) -> Phrase {
    phrase!["Score at ", row(&scores.at, system), "."]
}

/// The check behind the last score.
#[must_use]
pub fn last(scores: &Scores, system: System) -> Phrase {
    phrase!["Check: ", length(scores.last_panel(), system), " remain behind the last score."]
}

/// One cut: where it runs, and how far.
#[must_use]
pub fn cut(cut: &CutLine, recipe: &Recipe, system: System) -> Phrase {
    let (from_edge, start, end, whole) = match cut.measured {
        Turned::AsItLies => ("from the left", "top", "bottom", recipe.height),
        Turned::Quarter => ("from the top", "left", "right", recipe.width),
    };
    let head = phrase!["At ", length(cut.at, system), format!(" {from_edge}: ")];
    let l = |it| length(it, system);
    if cut.from == Length::ZERO && cut.to == whole {
        head.with(format!("from {start} to {end}"))
    } else if cut.from == Length::ZERO {
        phrase![head, format!("from the {start} edge in as far as "), l(cut.to)]
    } else if cut.to == whole {
        phrase![head, format!("from the {end} edge in as far as the score at "), l(cut.from)]
    } else {
        phrase![head, "from ", l(cut.from), " to ", l(cut.to)]
    }
}

/// What is taken off panels, alike pieces together: `left dust flap and right dust flap: a strip of 1/16 in`.
#[must_use]
pub fn take_offs(net: &Net, off: &[TakeOff], system: System) -> Vec<Phrase> {
    let mut groups: Vec<(Shape, Vec<&'static str>)> = Vec::new();
    for one in off {
        let Some(panel) = net.panels.get(one.panel.0) else {
            continue;
        };
        let shape = Shape::of(one, panel.cell);
        match groups.iter_mut().find(|g| g.0 == shape) {
            Some((_, names)) => names.push(panel.name),
            None => groups.push((shape, vec![panel.name])),
        }
    }
    groups
        .into_iter()
        .map(|(shape, names)| {
            let mut each: Vec<(&str, usize)> = Vec::new();
            for name in names {
                match each.iter_mut().find(|e| e.0 == name) {
                    Some(e) => e.1 += 1,
                    None => each.push((name, 1)),
                }
            }
            let most = each.iter().map(|e| e.1).max().unwrap_or(1);
            let names = Phrase::list(each.iter().map(|e| Phrase::words(e.0)), ", ", " and ");
            phrase![names, ": ", shape.said(most, system)]
        })
        .collect()
}

/// A piece that is taken off, as it is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shape {
    Strip { side: &'static str, width: Length },
    Wedge { across: Length, down: Length },
    Round(Length),
    Notch(Length),
    Slot { from: &'static str, at: Length, width: Length, depth: Length },
}

impl Shape {
    fn of(off: &TakeOff, cell: Rect) -> Self {
        let (w, h) = (off.size.width(), off.size.height());
        match off.taken {
            Taken::Strip | Taken::Cell | Taken::Around => {
                // Strips left and right run the whole height; those above and below lie between them.
                let lengthwise = h < cell.height();
                let side = match (lengthwise, off.size.min.y == cell.min.y, off.size.min.x == cell.min.x) {
                    (true, true, _) => "upper edge",
                    (true, false, _) => "lower edge",
                    (false, _, true) => "left edge",
                    (false, _, false) => "right edge",
                };
                Self::Strip { side, width: if lengthwise { h } else { w } }
            }
            Taken::Wedge => Self::Wedge { across: w, down: h },
            Taken::Round => Self::Round(w),
            Taken::Notch => Self::Notch(w.half()),
            Taken::Slot => {
                let (upper, lower) = (off.size.min.y == cell.min.y, off.size.max.y == cell.max.y);
                let (left, y) = (off.size.min.x - cell.min.x, off.size.min.y - cell.min.y);
                match (upper, lower, off.size.min.x == cell.min.x) {
                    (true, ..) => Self::Slot { from: "upper edge, from the left at ", at: left, width: w, depth: h },
                    (_, true, _) => Self::Slot { from: "lower edge, from the left at ", at: left, width: w, depth: h },
                    (.., true) => Self::Slot { from: "left edge, from above at ", at: y, width: h, depth: w },
                    _ => Self::Slot { from: "right edge, from above at ", at: y, width: h, depth: w },
                }
            }
        }
    }

    fn said(self, each: usize, system: System) -> Phrase {
        match self {
            Self::Strip { side, width } => phrase!["a strip of ", length(width, system), format!(" off the {side}")],
            Self::Wedge { across, down } => {
                let wedges = if each > 1 { "wedges at both ends, " } else { "a wedge, " };
                phrase![wedges, sides(across, down, system), " (across × down)"]
            }
            Self::Round(radius) => {
                let corners = if each > 1 { "round the free corners by " } else { "round the free corner by " };
                phrase![corners, length(radius, system)]
            }
            Self::Slot { from, at, width, depth } => phrase![
                format!("a slot in the {from}"),
                length(at, system),
                ", ",
                sides(width, depth, system),
                " (broad × deep)"
            ],
            Self::Notch(radius) => {
                phrase!["a half-round notch of ", length(radius, system), " radius"]
            }
        }
    }
}

/// The whole recipe, sentence by sentence.
#[must_use]
pub fn recipe(net: &Net, recipe: &Recipe, system: System, spelling: Spelling) -> Vec<Phrase> {
    let mut said = vec![phrase!["Cut the blank ", sides(recipe.width, recipe.height, system), "."]];
    for scores in recipe.scores.iter().filter(|s| !s.at.is_empty()) {
        let other = if scores.turned == Turned::AsItLies { recipe.height } else { recipe.width };
        said.push(phrase![lie(scores, other, system, spelling), " ", score(scores, system), " ", last(scores, system)]);
    }
    if !recipe.short.is_empty() {
        said.push("Score these stretches, and no further:".into());
        said.extend(recipe.short.iter().map(|c| phrase!["— ", cut(c, recipe, system), "."]));
    }
    if recipe.scores.iter().all(|s| !s.at.is_empty()) {
        said.push("Turn the card back, as it lay first, outside up.".into());
    }
    if !recipe.marks.is_empty() {
        let dashed = |lines: Vec<Phrase>| lines.into_iter().map(|p| phrase!["— ", p]);
        said.push(phrase![marks::TITLE, ":"]);
        said.extend(dashed(marks::places(&recipe.marks, system)));
        for (line, title) in [(Line::Score, marks::SCORE), (Line::Cut, marks::CUT)] {
            if recipe.marks.has(line) {
                said.push(phrase![title, ": ", marks::between(&recipe.marks, line, system)]);
            }
        }
    }
    if !recipe.cuts.is_empty() {
        said.push("Cut along these scores, and no further:".into());
        said.extend(recipe.cuts.iter().map(|c| phrase!["— ", cut(c, recipe, system), "."]));
    }
    if !recipe.cells.is_empty() {
        said.push(fields(recipe.cells.len()));
    }
    if !recipe.off.is_empty() {
        said.push("Take off:".into());
        said.extend(take_offs(net, &recipe.off, system).into_iter().map(|p| phrase!["— ", p, "."]));
    }
    said
}

/// The fields that go.
#[must_use]
pub fn fields(count: usize) -> Phrase {
    if count == 1 {
        "Take away the field that is crossed in the drawing.".into()
    } else {
        format!("Take away the {count} fields that are crossed in the drawing.").into()
    }
}
