//! `Turn`: the page is put together over some frames, so that none of them takes long.

use super::alive::Alive;
use super::child::{Child, Inside, shown};
use super::desk::desk;
use super::value::State;

/// What is put on the page in the first frames of a visit, one after the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// The head and the pattern.
    Pattern,
    /// What the set as a whole is asked.
    Set,
    /// Boxes and their fields.
    Boxes,
    /// The finished set, the recipe.
    Reading,
    /// Pieces, sheets, steps, and what is to be said.
    Plan,
    /// Everything else.
    Rest,
}

impl Turn {
    const fn next(self) -> Option<Self> {
        match self {
            Self::Pattern => Some(Self::Set),
            Self::Set => Some(Self::Boxes),
            Self::Boxes => Some(Self::Reading),
            Self::Reading => Some(Self::Plan),
            Self::Plan => Some(Self::Rest),
            Self::Rest => None,
        }
    }
}

/// Whose turn it is; a frame is drawn between two.
#[must_use]
pub fn turns() -> State<Turn> {
    let turn = State::new(Turn::Pattern);
    follow_turns(turn, Alive::here());
    turn
}

fn follow_turns(turn: State<Turn>, alive: Alive) {
    alive.after_next_frame(move || {
        if let Some(next) = turn.get_untracked().next() {
            turn.set(next);
            follow_turns(turn, alive);
        }
    });
}

/// What is there from its turn on.
pub fn in_turn<C: Child>(turn: Turn, what: impl Fn() -> C + 'static) -> Inside {
    let desk = desk();
    shown(move || desk.turn.get() >= turn, what)
}

/// So many rows of a list are put on the page in one frame.
const ROWS: usize = 8;

/// How many rows of a list are on the page: some more with each frame until all `there` are, and then however many come.
pub fn by_and_by(there: impl Fn() -> usize + 'static) -> State<usize> {
    let until = State::new(ROWS);
    more(until, Box::new(there), Alive::here());
    until
}

fn more(until: State<usize>, there: Box<dyn Fn() -> usize>, alive: Alive) {
    let now = until.get_untracked();
    if now >= there() {
        until.set(usize::MAX);
        return;
    }
    alive.after_next_frame(move || {
        until.set(now + ROWS);
        more(until, there, alive);
    });
}
