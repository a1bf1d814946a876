//! What follows an edit one frame later, so that the drawing answers a key at once.

use std::time::Duration;

use super::value::{Fact, State, effect};

use leptos::prelude::*;

/// Follows `now` after the next frame has been drawn.
pub fn after_the_drawing<T: Clone + PartialEq + Send + Sync + 'static>(now: Fact<T>) -> State<T> {
    let late = State::new(now.get_untracked());
    effect(move || {
        now.track();
        request_animation_frame(move || {
            let follow = move || {
                if let Some(now) = now.try_get_untracked()
                    && late.try_get_untracked().is_some_and(|l| l != now)
                {
                    late.set(now);
                }
            };
            set_timeout(follow, Duration::ZERO);
        });
    });
    late
}

/// How long a hand rests before what takes a frame or more is drawn.
pub const SHORT_REST: Duration = Duration::from_millis(120);
/// How long it rests before what takes long is looked for.
pub const LONG_REST: Duration = Duration::from_millis(500);

/// Follows `now` once it has been left alone for so long.
pub fn after_a_rest<T: Clone + PartialEq + Send + Sync + 'static>(now: Fact<T>, rest: Duration) -> State<T> {
    let late = State::new(now.get_untracked());
    let turns = State::new(0_u32);
    effect(move || {
        now.track();
        let mine = turns.get_untracked().wrapping_add(1);
        turns.set(mine);
        let follow = move || {
            if let (Some(now), Some(true)) = (now.try_get_untracked(), turns.try_get_untracked().map(|t| t == mine)) {
                late.set(now);
            }
        };
        set_timeout(follow, rest);
    });
    late
}
