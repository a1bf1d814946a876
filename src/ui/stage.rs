//! The stage: the box or holder at hand, drawn flat, and folded by one control.

use super::alerts::alerts;
use super::child::{Child, Inside, live, shown, words};
use super::desk::desk;
use super::explained::explained;
use super::flat_view::slider;
use super::fold_control::fold_control;
use super::legend::legend;
use super::panel_list::panel_list;
use super::picture::touchable;
use super::recipe::recipe_text;
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::turn::{Turn, in_turn};
use super::value::{Fact, State, effect, fact, fact_after};
use crate::assembly::moves::Move;
use crate::draw::drawing::{Drawing, Touch};
use crate::draw::flat::{Look, flat};
use crate::draw::folded::{Dress, folded};
use crate::draw::solid::View;
use crate::draw::svg::paint;
use crate::net::flat::PanelId;
use crate::plan::Plan;
use crate::project::finding::Place;
use crate::project::request::{Project, Tint};
use crate::say::folding::{fold, gives};
use crate::say::{names, page};

/// The drawing of what is at hand, with its recipe; `beside` stands beside it.
#[must_use]
pub fn stage(beside: Option<Tag>) -> Tag {
    let desk = desk();
    // Where a card or the board is edited, the box looked at last stays.
    let place = fact_after(move |last: Option<&Place>| match desk.place.get() {
        at @ (Place::Box(_) | Place::Holder) => at,
        _ => last.copied().unwrap_or_else(|| {
            desk.project.with_untracked(|p| p.boxes.first().map_or(Place::Holder, |b| Place::Box(b.id)))
        }),
    });
    let at_hand = desk.at_hand(place);
    let fresh = fact(move || at_hand.with(|p| drawn(p, place.get())));
    let old = fact(move || !fresh.get() && desk.good.with(|p| drawn(p, place.get())));
    // Where nothing can be drawn, what could be drawn last.
    let now = fact(move || if fresh.get() { at_hand.get() } else { desk.good.get() });
    let title = fact(move || desk.project.with(|p| names::place(p, place.get())));
    let progress = State::new(0.0_f64);
    let turn = State::new(View::default().turn);
    let chosen = State::new(None::<PanelId>);
    let piece = State::new(0_usize);
    effect(move || {
        place.track();
        piece.set(0);
    });
    effect(move || {
        place.track();
        piece.track();
        progress.set(0.0);
        chosen.set(None);
    });
    // An edit may leave fewer parts than were looked at.
    let names = fact(move || now.with(|p| part_names(p, place.get())));
    let part = fact(move || piece.get().min(names.with(Vec::len).saturating_sub(1)));
    let svg = fact(move || {
        let (at, by) = (place.get(), progress.get());
        let view = View { turn: turn.get(), ..View::default() };
        now.with(|plan| {
            desk.project.with(|project| {
                draw(plan, project, (at, part.get()), by, chosen.get(), view).as_ref().map(paint).unwrap_or_default()
            })
        })
    });
    let folds = fact(move || {
        now.with(|p| {
            let parts = p.part(place.get()).and_then(|p| p.assembly.as_ref()).map(|a| &a.parts);
            let moves = parts.and_then(|p| p.get(part.get())).map_or(&[][..], |p| &p.moves);
            (moves.len(), moves.iter().find_map(Move::gives).map_or("", gives))
        })
    });
    let moves = fact(move || folds.get().0);
    // Which move is made as far as it is folded.
    let move_now = fact(move || {
        let by = progress.get();
        now.with(|p| {
            let moves = &p.part(place.get())?.assembly.as_ref()?.parts.get(part.get())?.moves;
            let at = moves.get(by as usize).filter(|_| by > 0.0)?;
            Some(fold(at.name, false).0.to_string())
        })
    });
    let touched = move |touch: Touch| {
        let panel = PanelId(touch.panel);
        chosen.update(|c| *c = (*c != Some(panel)).then_some(panel));
        desk.touched.set(Some((place.get_untracked(), panel)));
    };
    let panel = move || chosen.get().and_then(|id| now.with(|plan| panel_words(plan, (place.get(), part.get()), id)));
    let unasked = move || move_now.get().unwrap_or_else(|| page::TOUCH.to_owned());
    let spoken = move || panel().map_or_else(|| tag("span").with(words(unasked)), |p| tag("span").with(p));
    let several = move || {
        classed("div", "either")
            .is("role", "group")
            .is("aria-label", page::PARTS)
            .with(live(move || part_buttons(&names.get(), part, piece)))
    };
    let turned = move || slider("stage-turn", page::TURN, -180.0, 180.0, turn);
    let empty = fact(move || svg.with(String::is_empty));
    let shown_part = move || {
        if empty.get() {
            return vec![classed("p", "empty").with(page::NOTHING_YET).view()];
        }
        vec![
            shown(move || names.with(Vec::len) > 1, several),
            touchable(move || svg.get(), touched).view(),
            classed("p", "spoken").is("role", "status").with(live(spoken)).view(),
            fold_control(progress, moves).view(),
            classed("p", "hint").with(words(move || folds.get().1.to_owned())).view(),
            shown(move || progress.get() > 0.0, turned),
        ]
    };
    let drawing = classed("section", if beside.is_some() { "stage two" } else { "stage" })
        .follows("aria-label", move || Some(title.get()))
        .with(tag("h2").with(words(move || title.get())))
        .with(shown(move || old.get(), || classed("p", "note stop").is("role", "status").with(page::BEFORE)))
        .with(live(shown_part))
        .with(in_turn(Turn::Plan, alerts))
        .with(beside);
    let reading = move || {
        classed("section", "reading")
            .is("aria-label", page::RECIPE)
            .with(explained())
            .with(recipe_text(place, now))
            .with(panel_list((place, part), now, chosen))
            .with(legend())
    };
    classed("div", "right").with(drawing).with(in_turn(Turn::Reading, reading))
}

fn drawn(plan: &Plan, place: Place) -> bool {
    plan.part(place).is_some_and(|p| p.assembly.is_some())
}

/// The names of the parts of a box or holder, in the order in which they are made.
fn part_names(plan: &Plan, place: Place) -> Vec<&'static str> {
    let parts = plan.part(place).and_then(|p| p.assembly.as_ref()).map(|a| &a.parts);
    parts.map_or_else(Vec::new, |parts| parts.iter().map(|p| p.name).collect())
}

fn part_buttons(names: &[&'static str], part: Fact<usize>, piece: State<usize>) -> Vec<Tag> {
    let each = names
        .iter()
        .enumerate()
        .map(|(i, &name)| button(name, move || piece.set(i)).says("aria-pressed", move || part.get() == i));
    each.collect()
}

fn draw(
    plan: &Plan,
    project: &Project,
    (place, index): (Place, usize),
    progress: f64,
    chosen: Option<PanelId>,
    view: View,
) -> Option<Drawing> {
    let part = plan.part(place)?;
    let tint = |card: Option<u16>| card.and_then(|c| project.card(c)).map_or_else(Tint::default, |c| c.tint);
    let (card, mats) = (tint(Some(part.card)), tint(part.mat_card));
    if progress > 0.0 {
        folded(part, index, progress, &Dress { card, mats, chosen: chosen.into_iter().collect() }, view)
    } else {
        flat(part, index, Look { card, mats, chosen, system: plan.system })
    }
}

fn panel_words(plan: &Plan, (place, part): (Place, usize), panel: PanelId) -> Option<Inside> {
    let words = names::panel_list(plan.part(place)?, part, plan.system);
    Some(said(words.get(panel.0)?.clone()))
}
