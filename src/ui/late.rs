//! What follows an edit one frame later, so that the drawing answers a key at once.

use std::time::Duration;

use leptos::prelude::*;

/// Follows `now` after the next frame has been drawn.
pub fn after_the_drawing<T: Clone + PartialEq + Send + Sync + 'static>(now: Signal<T>) -> ReadSignal<T> {
    let (late, set_late) = signal(now.get_untracked());
    Effect::new(move |_| {
        now.track();
        request_animation_frame(move || {
            let follow = move || {
                if let Some(now) = now.try_get_untracked()
                    && late.try_with_untracked(|l| *l != now) == Some(true)
                {
                    set_late.try_set(now);
                }
            };
            set_timeout(follow, Duration::ZERO);
        });
    });
    late
}
