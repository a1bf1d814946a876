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
