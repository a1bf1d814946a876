//! A drawn form as text, which `read` reads back.

use std::fmt::Write;

use super::drawn::{Between, Cell, Diagonal, Drawn, Gluing, Line, Matted, Runs, Sign, Span, Stance, Term, Trim, Turn};
use super::words::{CORNERS, DUTIES, Half, MOVES, SIDES, cell, panel, size, word};
use crate::measure::angle::Angle;
use crate::net::flat::Face;

/// The text of `drawn`, one statement to a line.
#[must_use]
pub fn text(drawn: &Drawn) -> String {
    let mut to = Vec::new();
    let called = drawn.called.trim();
    if !called.is_empty() {
        to.push(format!("called {}", called.replace(['\n', '\r', ';'], " ")));
    }
    to.extend(drawn.number.map(|number| format!("number {number}")));
    to.extend(drawn.sizes.iter().map(|(name, given)| format!("size {} = {}", size(*name), given.text())));
    to.push(format!("columns {}", list(&drawn.columns, span)));
    to.push(format!("rows {}", list(&drawn.rows, span)));
    to.push("empty".to_owned());
    to.extend(drawn.cells.iter().map(of_cell));
    to.extend(drawn.lines.iter().map(|(between, line)| of_line(*between, *line)));
    to.extend(drawn.glue.iter().map(gluing));
    if let Some(at) = drawn.still {
        to.push(format!("still {}", cell(at, Half::Whole)));
    }
    match drawn.stance {
        Some(Stance::Front) => to.push("as front".to_owned()),
        Some(Stance::Base) => to.push("as base".to_owned()),
        None => {}
    }
    to.extend(drawn.order.iter().map(turn));
    to.join("\n")
}

fn list<T>(all: &[T], of: impl Fn(&T) -> String) -> String {
    all.iter().map(of).collect::<Vec<_>>().join(", ")
}

/// A sum as it is written: `depth - 1/16 in`.
#[must_use]
pub fn span(span: &Span) -> String {
    let mut to = String::new();
    for term in &span.0 {
        let (minus, text) = match term {
            Term::Size(name, halves) => {
                let times = halves.unsigned_abs();
                let name = size(*name);
                let text = match times {
                    1 => format!("half {name}"),
                    2 => name.to_owned(),
                    n => vec![format!("half {name}"); usize::from(n)].join(if *halves < 0 { " - " } else { " + " }),
                };
                (*halves < 0, text)
            }
            Term::Length(given, sign) => (*sign == Sign::Minus, given.text().to_owned()),
        };
        let before = match (to.is_empty(), minus) {
            (true, false) => "",
            (true, true) => "- ",
            (false, true) => " - ",
            (false, false) => " + ",
        };
        to.push_str(before);
        to.push_str(&text);
    }
    if to.is_empty() { "0 mm".to_owned() } else { to }
}

fn of_cell(c: &Cell) -> String {
    let mut to = cell(c.at, Half::Whole).to_owned();
    let name = c.name.map(|n| panel(n).0);
    let duty = c.duty.and_then(|d| word(DUTIES, d));
    to.push(' ');
    to.push_str(&match (name, duty) {
        (Some(name), Some(duty)) => format!("{name} as {duty}"),
        (Some(name), None) => name.to_owned(),
        (None, Some(duty)) => format!("a {duty}"),
        (None, None) => "panel".to_owned(),
    });
    for trim in &c.trims {
        let _ = write!(to, "; {}", of_trim(trim));
    }
    if let Some(Diagonal { runs, fold }) = c.diagonal {
        let runs = match runs {
            Runs::Falling => "falling",
            Runs::Rising => "rising",
        };
        let _ = write!(to, "; score {runs} {}", angle(fold));
    }
    if let Some(level) = c.level {
        let _ = write!(to, "; level {level}");
    }
    match c.mat {
        Some(Matted::Yes) => to.push_str("; mat"),
        Some(Matted::No) => to.push_str("; no mat"),
        None => {}
    }
    to
}

fn of_trim(trim: &Trim) -> String {
    let side = |s| word(&SIDES, s).unwrap_or("top");
    let corner = |c| word(&CORNERS, c).unwrap_or("top left");
    match trim {
        Trim::Strip(s, width) => format!("strip {}: {}", side(*s), span(width)),
        Trim::Wedge(c, across, down) => format!("wedge {}: {} × {}", corner(*c), span(across), span(down)),
        Trim::Round(c, radius) => format!("round {}: {}", corner(*c), span(radius)),
        Trim::Notch(s, radius) => format!("notch {}: {}", side(*s), span(radius)),
        Trim::Slot(s, at, broad, deep) => {
            format!("slot {}: {} × {} × {}", side(*s), span(at), span(broad), span(deep))
        }
        Trim::Hole(right, down, radius) => format!("hole: {} × {} × {}", span(right), span(down), span(radius)),
    }
}

/// An angle in degrees, exact.
#[must_use]
pub fn angle(angle: Angle) -> String {
    let millionths = angle.millionths();
    let (sign, all) = (if millionths < 0 { "-" } else { "" }, millionths.unsigned_abs());
    let text = format!("{sign}{}.{:06}", all / 1_000_000, all % 1_000_000);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn of_line(between: Between, line: Line) -> String {
    let lies = format!("{}|{}", cell(between.at, Half::Whole), cell(between.other(), Half::Whole));
    match line {
        Line::Score(fold) => format!("fold {lies} {}", angle(fold)),
        Line::Cut => format!("cut {lies}"),
        Line::Whole => format!("whole {lies}"),
    }
}

fn gluing(glue: &Gluing) -> String {
    let face = match glue.face {
        Some(Face::Outside) => " outside",
        Some(Face::Inside) => " inside",
        None => "",
    };
    let mut to = format!(
        "glue {}{face} to {}",
        cell(glue.on, Half::Whole),
        list(&glue.onto, |at| cell(*at, Half::Whole).to_owned())
    );
    if let Some(border) = &glue.border {
        let _ = write!(to, "; border {}", span(border));
    }
    if let Some((side, wide)) = &glue.strip {
        let _ = write!(to, "; along {}: {}", word(&SIDES, *side).unwrap_or("top"), span(wide));
    }
    to
}

fn turn(turn: &Turn) -> String {
    let mut to = format!("then {}", list(&turn.cells, |at| cell(*at, Half::Whole).to_owned()));
    if let Some(name) = turn.name.and_then(|n| word(MOVES, n)) {
        let _ = write!(to, "; as {name}");
    }
    if let Some(tuck) = &turn.tuck {
        let _ = write!(to, "; tuck {} behind {}", cell(tuck.at, Half::Whole), cell(tuck.behind, Half::Whole));
        if let Some(gap) = &tuck.gap {
            let _ = write!(to, "; gap {}", span(gap));
        }
    }
    to
}
