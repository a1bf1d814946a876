//! What a maker does to a drawn form: cells, lines, columns and rows changed, and nothing else lost by it.

use super::build::duty;
use super::drawn::{At, Between, Cell, Drawn, Gluing, Line, Span, Term, Trim, Turn, Way};
use super::shape::Made;
use crate::assembly::moves::{MoveName, Way as Turning};
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::net::corner::{Corner, Side};
use crate::net::flat::{CreaseId, Duty, Net, PanelId};

/// What a cell is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// A panel of any sort.
    Panel,
    /// A tab.
    Tab,
    /// Taken away.
    Away,
}

impl State {
    /// All, in the order in which a tap goes through them.
    pub const ALL: [Self; 3] = [Self::Panel, Self::Tab, Self::Away];

    /// What a cell is.
    #[must_use]
    pub fn of(drawn: &Drawn, at: At) -> Self {
        match drawn.cell(at) {
            None => Self::Away,
            Some(cell) if duty(cell) == Some(Duty::Tab) => Self::Tab,
            Some(_) => Self::Panel,
        }
    }

    /// What a tap makes of it.
    #[must_use]
    pub const fn next(self) -> Self {
        match self {
            Self::Panel => Self::Tab,
            Self::Tab => Self::Away,
            Self::Away => Self::Panel,
        }
    }
}

/// Makes a cell a panel, a tab or nothing. A name that says otherwise goes.
pub fn set_cell(drawn: &mut Drawn, at: At, to: State) {
    let mut cell = drawn.cell(at).cloned().unwrap_or_else(|| Cell::panel(at));
    match to {
        State::Away => {
            drawn.take(at);
            drawn.glue.retain(|g| g.on != at);
            return;
        }
        State::Tab if duty(&cell) != Some(Duty::Tab) => {
            (cell.duty, cell.name, cell.diagonal) = (Some(Duty::Tab), None, None);
        }
        State::Panel if duty(&cell) == Some(Duty::Tab) => {
            (cell.duty, cell.name) = (None, None);
            drawn.glue.retain(|g| g.on != at);
        }
        State::Tab | State::Panel => {}
    }
    drawn.put(cell);
}

/// The cell in which a panel of a net begins.
#[must_use]
pub fn cell_of(net: &Net, panel: PanelId) -> Option<At> {
    let corner = net.panels.get(panel.0)?.cell.min;
    let place = |lines: &[Length], at: Length| lines.iter().position(|l| *l == at).and_then(|i| u8::try_from(i).ok());
    Some(At::new(place(&net.lines.across, corner.x)?, place(&net.lines.down, corner.y)?))
}

/// What a tap makes of a line.
#[must_use]
pub const fn next_line(line: Line) -> Line {
    match line {
        Line::Score(_) => Line::Cut,
        Line::Cut => Line::Whole,
        Line::Whole => Line::USUAL,
    }
}

/// How a corner of a cell is cut.
#[must_use]
pub fn corner(cell: &Cell, at: Corner) -> Option<&Trim> {
    cell.trims.iter().find(|t| matches!(t, Trim::Wedge(c, ..) | Trim::Round(c, _) if *c == at))
}

/// Cuts a corner of a cell, or leaves it square.
pub fn set_corner(cell: &mut Cell, at: Corner, trim: Option<Trim>) {
    cell.trims.retain(|t| !matches!(t, Trim::Wedge(c, ..) | Trim::Round(c, _) if *c == at));
    cell.trims.extend(trim);
}

/// The strip off a side of a cell.
#[must_use]
pub fn strip(cell: &Cell, at: Side) -> Option<&Span> {
    cell.trims.iter().find_map(|t| match t {
        Trim::Strip(side, wide) if *side == at => Some(wide),
        _ => None,
    })
}

/// Takes a strip off a side of a cell, or none.
pub fn set_strip(cell: &mut Cell, at: Side, wide: Option<Span>) {
    cell.trims.retain(|t| !matches!(t, Trim::Strip(s, _) if *s == at));
    cell.trims.extend(wide.map(|wide| Trim::Strip(at, wide)));
}

/// The thumb notch of a cell.
#[must_use]
pub fn notch(cell: &Cell) -> Option<(Side, &Span)> {
    cell.trims.iter().find_map(|t| match t {
        Trim::Notch(side, radius) => Some((*side, radius)),
        _ => None,
    })
}

/// Gives a cell a thumb notch, or none.
pub fn set_notch(cell: &mut Cell, notch: Option<(Side, Span)>) {
    cell.trims.retain(|t| !matches!(t, Trim::Notch(..)));
    cell.trims.extend(notch.map(|(side, radius)| Trim::Notch(side, radius)));
}

/// A way along the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// Columns.
    Columns,
    /// Rows.
    Rows,
}

impl Along {
    fn spans(self, drawn: &mut Drawn) -> &mut Vec<Span> {
        match self {
            Self::Columns => &mut drawn.columns,
            Self::Rows => &mut drawn.rows,
        }
    }

    fn place(self, at: &mut At) -> &mut u8 {
        match self {
            Self::Columns => &mut at.column,
            Self::Rows => &mut at.row,
        }
    }
}

/// Puts a column or row in at place `at`, of card, as wide as `span`; false where there are as many as there may be.
pub fn insert(drawn: &mut Drawn, along: Along, at: u8, span: Span) -> bool {
    let spans = along.spans(drawn);
    let place = usize::from(at).min(spans.len());
    if spans.len() >= usize::from(super::drawn::MOST) {
        return false;
    }
    spans.insert(place, span);
    moved(drawn, along, &|n| Some(if n >= at { n + 1 } else { n }));
    // Beside what is card there is card, so that it hangs together.
    let new: Vec<At> = all(drawn).into_iter().filter(|a| *along.place(&mut a.clone()) == at).collect();
    let sides = match along {
        Along::Columns => [Side::Left, Side::Right],
        Along::Rows => [Side::Top, Side::Bottom],
    };
    for cell in new {
        let beside = sides.iter().filter_map(|s| cell.beside(*s)).any(|b| drawn.cell(b).is_some());
        if beside {
            drawn.put(Cell::panel(cell));
        }
    }
    true
}

/// Takes a column or row out; false for the last one.
pub fn remove(drawn: &mut Drawn, along: Along, at: u8) -> bool {
    let spans = along.spans(drawn);
    if spans.len() < 2 || usize::from(at) >= spans.len() {
        return false;
    }
    spans.remove(usize::from(at));
    moved(drawn, along, &|n| match n.cmp(&at) {
        std::cmp::Ordering::Less => Some(n),
        std::cmp::Ordering::Equal => None,
        std::cmp::Ordering::Greater => Some(n - 1),
    });
    true
}

fn all(drawn: &Drawn) -> Vec<At> {
    (0..drawn.height()).flat_map(|r| (0..drawn.width()).map(move |c| At::new(c, r))).collect()
}

/// Moves everything to where its column or row is now; what has none any more is gone.
fn moved(drawn: &mut Drawn, along: Along, to: &dyn Fn(u8) -> Option<u8>) {
    let at = |mut at: At| {
        let place = along.place(&mut at);
        *place = to(*place)?;
        Some(at)
    };
    let cells = std::mem::take(&mut drawn.cells);
    for cell in cells {
        if let Some(place) = at(cell.at) {
            drawn.put(Cell { at: place, ..cell });
        }
    }
    let lines = std::mem::take(&mut drawn.lines);
    for (between, line) in lines {
        let (a, b) = (at(between.at), at(between.other()));
        // A line whose two cells do not lie beside each other any more is between others now.
        if let (Some(a), Some(b)) = (a, b)
            && [Way::Right, Way::Below].iter().any(|way| Between { at: a, way: *way }.other() == b)
        {
            drawn.draw(Between { at: a, way: between.way }, line);
        }
    }
    let glue = std::mem::take(&mut drawn.glue);
    drawn.glue = glue
        .into_iter()
        .filter_map(|g| {
            let onto: Vec<At> = g.onto.iter().filter_map(|o| at(*o)).collect();
            (!onto.is_empty()).then_some(())?;
            Some(Gluing { on: at(g.on)?, onto, ..g })
        })
        .collect();
    drawn.still = drawn.still.and_then(at);
    for turn in &mut drawn.order {
        turn.cells = turn.cells.iter().filter_map(|c| at(*c)).collect();
        turn.tuck =
            turn.tuck.take().and_then(|t| Some(super::drawn::Tuck { at: at(t.at)?, behind: at(t.behind)?, ..t }));
    }
    drawn.order.retain(|t| !t.cells.is_empty());
}

/// Writes the order down in which it folds, so that it can be changed.
pub fn spell_order(drawn: &mut Drawn, made: &Made) {
    let far = |c: &CreaseId| {
        let crease = made.part.net.creases.get(c.0)?;
        made.built.pieces.get(crease.far.0).map(|p| p.at)
    };
    let turns = made.part.moves.iter().map(|m| {
        let name = (m.name != MoveName::Together).then_some(m.name);
        let mut turn = Turn { name, cells: Vec::new(), tuck: None };
        match &m.way {
            Turning::Even(all) | Turning::EndOnly { creases: all, .. } => {
                turn.cells = all.iter().filter_map(far).collect();
                turn.cells.dedup();
            }
            Turning::Sprung { closing, .. } => turn.cells = closing.iter().filter_map(far).collect(),
            Turning::TuckIn { lid, tuck, behind, .. } => {
                turn.cells = far(lid).into_iter().collect();
                let behind = made.built.pieces.get(behind.0).map(|p| p.at);
                turn.tuck = far(tuck).zip(behind).map(|(at, behind)| {
                    // The usual gap needs no word; one that was said stays as it was typed.
                    let mut said = drawn.order.iter().filter_map(|t| t.tuck.as_ref());
                    let gap = said.find(|t| t.at == at).and_then(|t| t.gap.clone());
                    super::drawn::Tuck { at, behind, gap }
                });
            }
        }
        turn
    });
    drawn.order = turns.filter(|t| !t.cells.is_empty()).collect();
}

/// Gives every size that columns and rows name a length: where it has none yet, this one.
pub fn complete(drawn: &mut Drawn, length: &Given) {
    let terms = drawn.columns.iter().chain(&drawn.rows).flat_map(|s| &s.0);
    let named = terms.filter_map(|t| if let Term::Size(name, _) = t { Some(*name) } else { None });
    for name in named.collect::<Vec<_>>() {
        if drawn.drawn_size(name).is_none() {
            drawn.sizes.push((name, length.clone()));
        }
    }
}

/// Lets a fold come one place earlier.
pub fn earlier(drawn: &mut Drawn, turn: usize) {
    if turn > 0 && turn < drawn.order.len() {
        drawn.order.swap(turn - 1, turn);
    }
}

#[cfg(test)]
mod tests {
    use super::super::read::read;
    use super::super::write::text;
    use super::*;
    use crate::measure::system::System;

    fn drawn(text: &str) -> Drawn {
        read(text, System::Inch).unwrap_or_default()
    }

    const CROSS: &str = "blank 6 x 5; score at 1, 5; turn; score at 1, 4; A1 tab; cut A1|B1; C3 away; glue A1 to A2; still B2; then A2; then B1";

    #[test]
    fn a_row_put_in_and_taken_out_leaves_all_as_it_was() {
        let before = drawn(CROSS);
        let mut after = before.clone();
        for (along, at) in [(Along::Rows, 0), (Along::Columns, 3), (Along::Rows, 3), (Along::Columns, 0)] {
            assert!(insert(
                &mut after,
                along,
                at,
                Span::typed(Given::exactly(crate::measure::length::Length::mm(9)).unwrap_or_else(|| unreachable!()))
            ));
            assert_eq!(after.cells.len(), before.cells.len() + 3 - usize::from(at == 3));
            assert!(remove(&mut after, along, at));
            assert_eq!(text(&after), text(&before));
        }
    }

    #[test]
    fn taps_go_round() {
        let mut form = drawn(CROSS);
        let at = At::new(1, 1);
        for want in [State::Tab, State::Away, State::Panel] {
            let next = State::of(&form, at).next();
            set_cell(&mut form, at, next);
            assert_eq!(State::of(&form, at), want);
        }
        assert_eq!([Line::USUAL, Line::Cut, Line::Whole].map(next_line), [Line::Cut, Line::Whole, Line::USUAL]);
    }

    #[test]
    fn a_cell_that_goes_takes_its_glue_along() {
        let mut form = drawn(CROSS);
        set_cell(&mut form, At::new(0, 0), State::Away);
        assert!(form.glue.is_empty());
    }
}
