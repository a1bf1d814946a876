//! Words of the trade that stand on the page, explained where they stand.

use super::child::live;
use super::desk::desk;
use super::late::after_the_drawing;
use super::opened::opened;
use super::tag::{Tag, classed, tag};
use super::value::{Fact, State, fact};
use crate::say::terms::{TERMS_USED, used};
use crate::web::here;

/// The terms in the text of `within`, a place as style sheets name it; looked up only while it is open, and anew when
/// `changes` does.
#[must_use]
pub fn explained_in<T: Clone + PartialEq + Send + Sync + 'static>(within: &'static str, changes: Fact<T>) -> Tag {
    let open = State::new(false);
    let late = after_the_drawing(changes);
    let list = live(move || {
        late.track();
        let each = open.get().then(|| {
            let text = here::text(within, ".terms");
            let each = used(&text).flat_map(|term| [tag("dt").with(term.word), tag("dd").with(term.means)]);
            each.collect::<Vec<_>>()
        });
        each.unwrap_or_default()
    });
    opened("terms", TERMS_USED, open).with(classed("dl", "pieces").with(list))
}

/// The terms in this part of the walk.
#[must_use]
pub fn explained() -> Tag {
    let desk = desk();
    explained_in("main", fact(move || (desk.plan.get(), desk.place.get())))
}
