//! What follows an edit one frame later, so that the drawing answers a key at once.

use std::time::Duration;

use super::alive::Alive;
use super::value::{Fact, State, effect};

/// Follows `now` after the next frame has been drawn.
pub fn after_the_drawing<T: Clone + PartialEq + Send + Sync + 'static>(now: Fact<T>) -> State<T> {
    let (late, alive) = (State::new(now.get_untracked()), Alive::here());
    effect(move || {
        now.track();
        alive.after_next_frame(move || {
            let now = now.get_untracked();
            if late.with_untracked(|l| *l != now) {
                late.set(now);
            }
        });
    });
    late
}

/// How long a hand rests before what takes a frame or more is drawn.
pub const SHORT_REST: Duration = Duration::from_millis(120);
/// How long it rests before what takes long is looked for.
pub const LONG_REST: Duration = Duration::from_millis(500);

/// Follows `now` once it has been left alone for as long as it needs.
pub fn after_a_rest<T: Clone + PartialEq + Send + Sync + 'static>(
    now: Fact<T>,
    rest: impl Fn(&T) -> Duration + 'static,
) -> State<T> {
    let (late, alive) = (State::new(now.get_untracked()), Alive::here());
    let turns = State::new(0_u32);
    effect(move || {
        let rest = now.with(&rest);
        let mine = turns.get_untracked().wrapping_add(1);
        turns.set(mine);
        alive.after(rest, move || {
            if turns.get_untracked() == mine {
                late.set(now.get_untracked());
            }
        });
    });
    late
}
