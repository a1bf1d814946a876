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
