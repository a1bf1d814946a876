//! The finished set, as it will stand on the table.

use super::desk::{Desk, desk};
use super::late::{LONG_REST, SHORT_REST, after_a_rest};
use super::picture::touchable;
use super::shared::Shared;
use super::tag::Tag;
use super::value::{Fact, State, fact};
use crate::draw::drawing::Touch;
use crate::draw::folded::set;
use crate::draw::solid::View;
use crate::draw::svg::paint;
use crate::project::request::Tint;

/// How a finished set is looked at.
#[derive(Clone, Copy)]
pub struct Look {
    /// How far the boxes are out of their holder, of a hundred.
    pub out: State<f64>,
    /// How far it is turned, in degrees.
    pub turn: State<f64>,
}

impl Look {
    /// The boxes so far out of the holder, as drawings of folded boxes are turned at first.
    #[must_use]
    pub fn at(out: f64) -> Self {
        Self { out: State::new(out), turn: State::new(View::default().turn) }
    }
}

/// More kinds than these take more than a frame or two to draw.
const MANY: usize = 24;

/// The boxes in their holder; a touch on one looks at it. It follows edits once the hand rests: a large set takes some
/// frames to draw.
#[must_use]
pub fn finished(look: Look) -> Tag {
    let desk = desk();
    let whole = after_a_rest(whole(desk), |plan| if plan.boxes.len() > MANY { LONG_REST } else { SHORT_REST });
    let painted = fact(move || {
        let view = View { turn: look.turn.get(), ..View::default() };
        whole.with(|plan| {
            // Each edit makes shapes anew: nothing else need be followed.
            desk.project.with_untracked(|p| {
                let tint = |card| p.card(card).map_or_else(Tint::default, |c| c.tint);
                paint(&set(&plan.boxes, plan.holder.as_ref(), &tint, look.out.get() / 100.0, view))
            })
        })
    });
    let touched = move |touch: Touch| {
        if let Some(place) = whole.with_untracked(|p| p.parts().nth(touch.part).map(|p| p.place)) {
            desk.place.set(place);
        }
    };
    touchable(move || painted.get(), touched)
}

/// The set as it is asked for, or else the last one of which every part can be drawn.
fn whole(desk: Desk) -> Fact<Shared> {
    let every = fact(move || {
        let asked = desk.project.with(|p| p.boxes.len() + usize::from(p.holder.is_some()));
        desk.shapes.with(|plan| plan.parts().filter(|p| p.assembly.is_some()).count() == asked)
    });
    fact(move || if every.get() { desk.shapes.get() } else { desk.good.get() })
}
