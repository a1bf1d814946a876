//! When what is on the desk is saved: soon after a change, before it is left, and again where it could not be.

use std::cell::Cell;
use std::rc::Rc;
use std::time::Duration;

use leptos::prelude::untrack;

use super::shelf::Shelf;
use super::value::effect;
use crate::web::motion::now;
use crate::web::{here, locks};

/// How long a change waits for the next one before it is saved.
const PAUSE: f64 = 350.0;
/// How long it waits at most, however many follow: with what the browser takes to come to it, within a second.
const LONGEST: f64 = 800.0;
/// After so long what could not be saved is tried again, whatever the maker does meanwhile.
const AGAIN: Duration = Duration::from_secs(3);

impl Shelf {
    /// Saves whatever is changed from now on.
    pub(super) fn save_as_it_changes(self) {
        self.save_changes();
        self.try_again();
        let opening = Cell::new(true);
        effect(move || {
            self.desk().ticks.track();
            if !opening.replace(false) {
                self.save_now();
            }
        });
        here::on_hide(move || {
            self.save_now();
        });
        here::ask_before_leaving(move || {
            self.save_now();
            self.is_any_unsaved()
        });
    }

    /// Saves a change once it has been left alone for a moment, or others have followed it for long.
    fn save_changes(self) {
        // When the first change that is not saved came, and how many have come.
        let (first, count) = (Rc::new(Cell::new(None::<f64>)), Rc::new(Cell::new(0_u32)));
        effect(move || {
            self.desk().project.track();
            let mine = count.get().wrapping_add(1);
            count.set(mine);
            let at = now();
            let since = first.get().unwrap_or(at);
            first.set(Some(since));
            let left = since + LONGEST - at;
            if left <= 0.0 {
                // It has waited for long enough: not for other windows as well, beside which it loses nothing.
                first.set(None);
                untrack(|| self.save_now());
                return;
            }
            let (first, count) = (first.clone(), count.clone());
            self.alive.after(Duration::from_millis(PAUSE.min(left) as u64), move || {
                if count.get() != mine {
                    return;
                }
                first.set(None);
                if left <= PAUSE {
                    self.save_now();
                } else {
                    locks::alone(move || {
                        self.save_now();
                    });
                }
            });
        });
    }

    /// Tries again what could not be saved: after a while, when the maker comes back, and when another window has
    /// changed what is kept, which may have made room.
    fn try_again(self) {
        let trying = Rc::new(Cell::new(false));
        effect(move || {
            if self.unsaved.with(Option::is_some) || !self.waiting.with(Vec::is_empty) {
                self.try_later(trying.clone());
            }
        });
        here::on_return(move || {
            if self.is_any_unsaved() {
                self.save_now();
            }
        });
        here::on_kept_elsewhere(move || {
            if self.is_any_unsaved() {
                self.save_now();
            }
            self.list_anew();
        });
    }

    fn try_later(self, trying: Rc<Cell<bool>>) {
        if trying.replace(true) {
            return;
        }
        self.alive.after(AGAIN, move || {
            trying.set(false);
            if self.is_any_unsaved() {
                locks::alone(move || {
                    self.save_now();
                    if self.is_any_unsaved() {
                        self.try_later(trying);
                    }
                });
            }
        });
    }

    /// Whether something could not be saved.
    fn is_any_unsaved(self) -> bool {
        self.unsaved.with_untracked(Option::is_some) || !self.waiting.with_untracked(Vec::is_empty)
    }
}
