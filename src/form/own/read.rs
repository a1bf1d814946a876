//! A drawn form read from its text, or from a recipe as it is spoken.
//!
//! Statements stand on lines of their own, and details of a statement behind semicolons; in a recipe of one line,
//! semicolons part its statements: `blank 9 x 7 1/2; score at 1, 8; turn; score at 1, 6 1/2`. The table is in the
//! guide for files (`examples/README.md`).

use super::drawn::{
    At, Between, Cell, Diagonal, Drawn, Gluing, Line, Matted, Runs, Sign, Span, Stance, Term, Trim, Tuck, Turn, Way,
};
use super::spoken::Spoken;
use super::statements::{Answer, angle, cells, items, next, positive};
use super::words::{CORNERS, DUTIES, MOVES, SIDES, cell_named, panel_named, size_named, value};
use crate::measure::given::Given;
use crate::measure::system::System;
use crate::net::corner::Side;
use crate::net::flat::Face;
use crate::project::finding::OwnText;

/// The longest text that is read at all.
pub const LONGEST: usize = 20_000;

/// What cannot be read: the statement, and what is wrong with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// The statement, as written.
    pub said: String,
    /// What is wrong.
    pub why: OwnText,
}

/// Reads a form; bare numbers are in the unit of `bare`.
///
/// # Errors
/// The first statement that cannot be read.
pub fn read(text: &str, bare: System) -> Result<Drawn, Unread> {
    if text.len() > LONGEST {
        return Err(Unread { said: String::new(), why: OwnText::TooLong });
    }
    let mut reading = Reading { drawn: Drawn::default(), bare, spoken: Spoken::default() };
    for line in text.lines() {
        // Spoken sentences end with a full stop.
        let parted = if line.starts_with("called ") { line.to_owned() } else { line.replace(". ", "; ") };
        let mut rest = parted.as_str();
        while !rest.trim().is_empty() {
            let (statement, after) = next(rest);
            rest = after;
            reading.statement(statement).map_err(|why| Unread { said: statement.trim().to_owned(), why })?;
        }
    }
    let whole = |why| Unread { said: String::new(), why };
    reading.settle().map_err(whole)?;
    if reading.drawn.columns.is_empty() || reading.drawn.rows.is_empty() {
        return Err(whole(OwnText::NoBlank));
    }
    Ok(reading.drawn)
}

/// Reads a sum such as `depth - 1/16 in`.
///
/// # Errors
/// Where it is none.
pub fn sum(text: &str, bare: System) -> Answer<Span> {
    let text = text.trim().to_lowercase();
    Reading { drawn: Drawn::default(), bare, spoken: Spoken::default() }.span(&text)
}

/// A form while it is read.
pub(super) struct Reading {
    pub(super) drawn: Drawn,
    pub(super) bare: System,
    pub(super) spoken: Spoken,
}

impl Reading {
    fn statement(&mut self, text: &str) -> Answer<()> {
        let text = text.trim().trim_end_matches('.').trim();
        let mut parts = text.split(';').map(str::trim);
        let head = parts.next().unwrap_or_default();
        let details: Vec<&str> = parts.collect();
        let lower = head.to_lowercase();
        let (verb, rest) = lower.split_once(char::is_whitespace).unwrap_or((&lower, ""));
        let rest = rest.trim();
        match verb {
            "called" => {
                self.drawn.called = head.get(6..).unwrap_or_default().trim().to_owned();
                Ok(())
            }
            "number" => {
                self.drawn.number = Some(rest.parse().map_err(|_| OwnText::Unknown)?);
                Ok(())
            }
            "blank" => self.blank(rest),
            "cut" if rest.split(' ').take(2).any(|w| w == "blank") => {
                let size = rest.split_once("blank").map_or("", |b| b.1).trim();
                self.blank(size.strip_prefix("of ").unwrap_or(size))
            }
            "score" | "scores" => self.scores(rest),
            "turn" => {
                self.spoken.turned = true;
                Ok(())
            }
            "size" => self.size(rest),
            "columns" => self.spans(rest).map(|s| self.drawn.columns = s).and_then(|()| self.fresh()),
            "rows" => self.spans(rest).map(|s| self.drawn.rows = s).and_then(|()| self.fresh()),
            "empty" => {
                self.settle()?;
                self.drawn.cells.clear();
                Ok(())
            }
            "cut" => self.line(rest, |_| Ok(Line::Cut)),
            "whole" => self.line(rest, |_| Ok(Line::Whole)),
            "fold" => self.line(rest, |more| angle(more).map(Line::Score)),
            "glue" => self.glue(rest, &details),
            "still" => self.cell(rest).map(|at| self.drawn.still = Some(at)),
            "as" => match rest {
                "front" => self.stance(Stance::Front),
                "base" => self.stance(Stance::Base),
                _ => Err(OwnText::Unknown),
            },
            "then" => self.then(rest, &details),
            _ => {
                let (all, said) = cells(&lower);
                if all.is_empty() {
                    return Err(OwnText::Unknown);
                }
                let said =
                    ["is the ", "are the ", "is ", "are "].iter().find_map(|w| said.strip_prefix(w)).unwrap_or(said);
                all.into_iter().try_for_each(|at| self.of_cell(at, said, &details))
            }
        }
    }

    const fn stance(&mut self, stance: Stance) -> Answer<()> {
        self.drawn.stance = Some(stance);
        Ok(())
    }

    pub(super) fn given(&self, text: &str) -> Answer<Given> {
        Given::read(text.trim(), self.bare).map_err(|_| OwnText::Length)
    }

    fn size(&mut self, text: &str) -> Answer<()> {
        let (name, length) = text.split_once('=').ok_or(OwnText::Unknown)?;
        let name = size_named(name.trim()).ok_or(OwnText::Size)?;
        let length = self.given(length)?;
        positive(length.length())?;
        self.drawn.sizes.retain(|s| s.0 != name);
        self.drawn.sizes.push((name, length));
        Ok(())
    }

    fn spans(&self, text: &str) -> Answer<Vec<Span>> {
        items(text).map(|one| self.span(one)).collect()
    }

    /// `depth - 1/16 in`.
    fn span(&self, text: &str) -> Answer<Span> {
        let mut terms: Vec<Term> = Vec::new();
        let mut sign = Sign::Plus;
        let mut rest = text.trim();
        if let Some(after) = rest.strip_prefix("- ") {
            (sign, rest) = (Sign::Minus, after);
        }
        loop {
            let cut = [" + ", " - "].iter().filter_map(|s| rest.find(s)).min();
            let (one, after) = cut.map_or((rest, ""), |i| (&rest[..i], &rest[i..]));
            let one = one.trim();
            let (name, halves) = one.strip_prefix("half ").map_or((one, 2), |n| (n.trim(), 1));
            match size_named(name) {
                Some(size) => {
                    let halves = if sign == Sign::Minus { -halves } else { halves };
                    match terms.last_mut() {
                        Some(Term::Size(last, sum)) if *last == size && (*sum < 0) == (halves < 0) => {
                            *sum = sum.checked_add(halves).ok_or(OwnText::TooMany)?;
                        }
                        _ => terms.push(Term::Size(size, halves)),
                    }
                }
                None => terms.push(Term::Length(self.given(one)?, sign)),
            }
            if after.is_empty() {
                break;
            }
            if terms.len() > 8 {
                return Err(OwnText::TooMany);
            }
            sign = if after.starts_with(" - ") { Sign::Minus } else { Sign::Plus };
            rest = &after[3..];
        }
        Ok(Span(terms))
    }

    fn cell(&mut self, text: &str) -> Answer<At> {
        self.settle()?;
        let at = cell_named(text.trim()).ok_or(OwnText::Cell)?;
        if self.drawn.holds(at) { Ok(at) } else { Err(OwnText::Cell) }
    }

    fn of_cell(&mut self, at: At, text: &str, details: &[&str]) -> Answer<()> {
        self.settle()?;
        if !self.drawn.holds(at) {
            return Err(OwnText::Cell);
        }
        if matches!(text, "away" | "taken away") {
            self.drawn.take(at);
            return Ok(());
        }
        let mut cell = Cell::panel(at);
        let (name, duty) = text.rsplit_once(" as ").map_or((text, None), |(n, d)| (n, Some(d)));
        let duty = duty.map(|d| value(DUTIES, d).ok_or(OwnText::Unknown)).transpose()?;
        let bare = name.strip_prefix("a ").or_else(|| name.strip_prefix("an "));
        match (panel_named(name), bare.or(Some(name)).and_then(|b| value(DUTIES, b))) {
            (Some(name), _) => (cell.name, cell.duty) = (Some(name), duty),
            (None, Some(duty)) => cell.duty = Some(duty),
            (None, None) if name == "panel" => {}
            _ => return Err(OwnText::Unknown),
        }
        for detail in details {
            self.detail(&mut cell, &detail.to_lowercase())?;
        }
        self.drawn.put(cell);
        Ok(())
    }

    fn detail(&self, cell: &mut Cell, text: &str) -> Answer<()> {
        if let Some(fold) = text.strip_prefix("score ") {
            let (runs, fold) = fold.split_once(' ').map_or((fold, ""), |(r, f)| (r, f));
            let runs = match runs {
                "falling" => Runs::Falling,
                "rising" => Runs::Rising,
                _ => return Err(OwnText::Unknown),
            };
            cell.diagonal = Some(Diagonal { runs, fold: angle(fold)? });
            return Ok(());
        }
        if let Some(level) = text.strip_prefix("level ") {
            cell.level = Some(level.trim().parse().map_err(|_| OwnText::Unknown)?);
            return Ok(());
        }
        match text {
            "mat" | "no mat" => {
                cell.mat = Some(if text == "mat" { Matted::Yes } else { Matted::No });
                return Ok(());
            }
            _ => {}
        }
        let (head, sizes) = text.split_once(':').ok_or(OwnText::Unknown)?;
        let mut sizes = sizes.split('×').map(|s| self.span(s));
        let mut next = || sizes.next().unwrap_or(Err(OwnText::Length));
        let (what, place) = head.trim().split_once(' ').map_or((head.trim(), ""), |(w, p)| (w, p.trim()));
        let side = || value(&SIDES, place).ok_or(OwnText::Unknown);
        let corner = || value(&CORNERS, place).ok_or(OwnText::Unknown);
        let trim = match what {
            "strip" => Trim::Strip(side()?, next()?),
            "wedge" => Trim::Wedge(corner()?, next()?, next()?),
            "round" => Trim::Round(corner()?, next()?),
            "notch" => Trim::Notch(side()?, next()?),
            "slot" => Trim::Slot(side()?, next()?, next()?, next()?),
            "hole" => Trim::Hole(next()?, next()?, next()?),
            _ => return Err(OwnText::Unknown),
        };
        if cell.trims.len() > 24 {
            return Err(OwnText::TooMany);
        }
        cell.trims.push(trim);
        Ok(())
    }

    fn line(&mut self, text: &str, what: impl Fn(&str) -> Answer<Line>) -> Answer<()> {
        self.settle()?;
        let (pair, more) = cells(text);
        let [a, b] = pair.as_slice() else {
            return Err(OwnText::Pair);
        };
        let (a, b) = (*a, *b);
        if !self.drawn.holds(a) || !self.drawn.holds(b) {
            return Err(OwnText::Cell);
        }
        let (a, b) = if a < b { (a, b) } else { (b, a) };
        let way = match b {
            _ if a.beside(Side::Right) == Some(b) => Way::Right,
            _ if a.beside(Side::Bottom) == Some(b) => Way::Below,
            _ => return Err(OwnText::NotBeside),
        };
        self.drawn.draw(Between { at: a, way }, what(more)?);
        Ok(())
    }

    fn glue(&mut self, text: &str, details: &[&str]) -> Answer<()> {
        let (on, onto) = text.split_once(" to ").ok_or(OwnText::Unknown)?;
        let (on, face) = match on.split_once(' ') {
            Some((on, "outside")) => (on, Some(Face::Outside)),
            Some((on, "inside")) => (on, Some(Face::Inside)),
            Some(_) => return Err(OwnText::Unknown),
            None => (on, None),
        };
        let on = self.cell(on)?;
        let (onto, rest) = cells(onto);
        if onto.is_empty() || !rest.is_empty() || onto.iter().any(|at| !self.drawn.holds(*at)) {
            return Err(OwnText::Cell);
        }
        let (mut border, mut strip) = (None, None);
        for detail in details {
            if let Some(span) = detail.strip_prefix("border ") {
                border = Some(self.span(span)?);
            } else {
                let along = detail.strip_prefix("along ").and_then(|a| a.split_once(':')).ok_or(OwnText::Unknown)?;
                let side = value(&SIDES, along.0.trim()).ok_or(OwnText::Unknown)?;
                strip = Some((side, self.span(along.1)?));
            }
        }
        if self.drawn.glue.len() > 200 {
            return Err(OwnText::TooMany);
        }
        self.drawn.glue.push(Gluing { on, face, onto, border, strip });
        Ok(())
    }

    fn then(&mut self, text: &str, details: &[&str]) -> Answer<()> {
        let cells = items(text).map(|c| self.cell(c)).collect::<Answer<Vec<At>>>()?;
        let mut turn = Turn { name: None, cells, tuck: None };
        for detail in details {
            let detail = detail.to_lowercase();
            if let Some(name) = detail.strip_prefix("as ") {
                turn.name = Some(value(MOVES, name).ok_or(OwnText::Unknown)?);
            } else if let Some(tuck) = detail.strip_prefix("tuck ") {
                let (at, behind) = tuck.split_once(" behind ").ok_or(OwnText::Unknown)?;
                turn.tuck = Some(Tuck { at: self.cell(at)?, behind: self.cell(behind)?, gap: None });
            } else if let (Some(gap), Some(tuck)) = (detail.strip_prefix("gap "), &mut turn.tuck) {
                tuck.gap = Some(self.span(gap)?);
            } else {
                return Err(OwnText::Unknown);
            }
        }
        if self.drawn.order.len() > 200 {
            return Err(OwnText::TooMany);
        }
        self.drawn.order.push(turn);
        Ok(())
    }
}
