//! The steps as a list, or one at a time in big type.

use leptos::prelude::on_cleanup;

use super::alive::Alive;
use super::before::before;
use super::child::{Inside, each, live, words};
use super::desk::{Desk, desk};
use super::either::either;
use super::explained::explained;
use super::glance::glance;
use super::look_bar::look_bar;
use super::own_notes::{homeless, notes_at, pen};
use super::picture::picture;
use super::said::said;
use super::tag::{Tag, button, classed, tag};
use super::tick::tick;
use super::timing::timing;
use super::value::{State, fact};
use crate::draw::step::step as draw;
use crate::draw::svg::paint;
use crate::make::stage::stages;
use crate::make::step::{Action, Step};
use crate::make::steps::is_batch;
use crate::plan::Plan;
use crate::project::request::Tint;
use crate::project::ticks::{MAKERS, Ticks};
use crate::say::hand::Hand;
use crate::say::step::{place, step as say};
use crate::say::{making, page};
use crate::web::here;
use crate::web::motion::Again;

/// Which steps are done, by their keys.
pub type Ticked = State<Ticks>;

/// The making, step by step.
#[must_use]
pub fn steps_view() -> Tag {
    let desk = desk();
    let (done, large): (Ticked, _) = (desk.ticks, desk.large);
    on_cleanup(move || large.set(false));
    let count = fact(move || {
        desk.good.with(|p| (p.steps.iter().filter(|s| done.with(|d| d.contains(&s.key))).count(), p.steps.len()))
    });
    let how_many = move || {
        let (n, all) = count.get();
        page::done_of(n, all)
    };
    let whole = move || {
        let again = button(page::START_AGAIN, move || desk.tick(Ticks::clear));
        let actions = classed("p", "actions")
            .with(button(page::ONE_AT_A_TIME, move || large.set(true)).class("main"))
            .with(again.while_so("disabled", move || done.with(Ticks::is_empty)))
            .with(left_handed(desk))
            .with(tag("span").is("role", "status").with(words(how_many)));
        classed("div", "steps")
            .with(before())
            // What is cut may still change under whoever reads.
            .with(look_bar())
            .with(actions)
            .with(live(move || makers(done)))
            .with(explained())
            .with(list(desk, done))
    };
    tag("div").with(live(move || if large.get() { glance(done, large) } else { whole() }))
}

/// Whose ticks are seen: of one more maker than there were so far.
fn makers(done: Ticked) -> Tag {
    let (now, most) = done.with(|d| (d.maker(), d.makers()));
    let one = |maker: u32| {
        button(making::maker(maker), move || done.update(|d| d.work_as(maker)))
            .says("aria-pressed", move || now == maker)
    };
    either(making::WHO, (1..=(most + 1).min(MAKERS)).map(one).collect())
}

fn left_handed(desk: Desk) -> Tag {
    let turn = move || {
        let hand = if desk.hand.get_untracked() == Hand::Left { Hand::Right } else { Hand::Left };
        desk.hand.set(hand);
        here::keep_hand(hand);
    };
    button(making::LEFT_HANDED, turn).says("aria-pressed", move || desk.hand.get() == Hand::Left)
}

/// So many steps are drawn in a frame: the first ones are there at once, however many there are.
const A_FRAME: usize = 2;

/// Under the box or holder that they make; of many sets under what is done to all of them.
fn list(desk: Desk, done: Ticked) -> Tag {
    let shown = State::new(A_FRAME);
    Alive::here().each_frame(move |_| {
        let now = shown.get_untracked();
        if now >= desk.good.with_untracked(|p| p.steps.len()) {
            // Whatever is planned later stands at once.
            shown.set(usize::MAX);
            return Again::No;
        }
        shown.set(now + A_FRAME);
        Again::Yes
    });
    let heads = fact(move || desk.good.with(|plan| heads(desk, plan)));
    let sites = move || desk.good.with(|p| p.steps.iter().take(shown.get()).map(|s| s.site.clone()).collect());
    let row = move |site: String| {
        let at = fact(move || desk.good.with(|p| p.steps.iter().position(|s| s.site == site).unwrap_or(usize::MAX)));
        // Only where it is another than over the step before.
        let head = live(move || {
            let at = at.get();
            heads.with(|all| {
                let own = all.get(at)?;
                (at.checked_sub(1).and_then(|before| all.get(before)) != Some(own)).then(|| tag("h2").with(own.clone()))
            })
        });
        let step = live(move || {
            let at = at.get();
            desk.good.with(|plan| plan.steps.get(at).map(|s| row(desk, plan, s, at, done)))
        });
        classed("div", "steps").with(head).with(step)
    };
    classed("div", "steps").with(each(sites, row)).with(live(move || desk.good.with(|plan| homeless(plan))))
}

/// What each step stands under.
fn heads(desk: Desk, plan: &Plan) -> Vec<String> {
    let batch = desk.project.with(|p| is_batch(p.sets));
    let named = plan.steps.iter().zip(stages(&plan.steps)).map(|(step, stage)| {
        if batch { making::stage(stage).to_owned() } else { desk.project.with(|p| place(step, plan, p)) }
    });
    named.collect()
}

fn row(desk: Desk, plan: &Plan, step: &Step, at: usize, done: Ticked) -> Tag {
    let Worded { place, title, lines, .. } = step_words(desk, plan, step, done);
    let batch = desk.project.with(|p| is_batch(p.sets));
    let svg = drawing(desk, plan, step);
    let (key, same) = (step.key.clone(), step.key.clone());
    let ticked = fact(move || done.with(|d| d.contains(&key)));
    let number = classed("span", "number").with((at + 1).to_string());
    let words = classed("div", "words")
        .with(tag("h3").with(number).with(tag("span").with(title)))
        .with(batch.then(|| classed("p", "hint").with(place)))
        .with(lines)
        .with(notes_at(step))
        .with(tick(page::DONE, move || ticked.get(), move |_| toggle(desk, &same)))
        .with(classed("div", "at-step").with(timing(step)).with(pen(step)));
    classed("article", "step sheet-of-paper")
        .class_while("done", move || ticked.get())
        .with(words)
        .with(picture(move || svg.clone()))
}

/// A step in words on the page.
pub struct Worded {
    /// Where it is made.
    pub place: String,
    /// What it is called.
    pub title: Inside,
    /// What is said about it.
    pub lines: Vec<Tag>,
    /// What the maker noted.
    pub notes: Vec<String>,
}

/// A step in the maker's spelling and for the maker's hand, with how often it was done.
pub fn step_words(desk: Desk, plan: &Plan, step: &Step, done: Ticked) -> Worded {
    let words = desk.project.with(|p| say(step, plan, p, desk.spelling.get()));
    // What the maker wrote is for the maker's hand as it stands.
    let hand = if matches!(step.action, Action::Own(_)) { Hand::Right } else { desk.hand.get() };
    let (key, times) = (step.key.clone(), step.times);
    let tally = move || making::tally(done.with(|d| d.tally(&key)), times);
    let times = (times > 1).then(|| classed("p", "times").with(super::child::words(tally)));
    let lines = words.lines.into_iter().map(|l| tag("p").with(said(hand.phrase(l))));
    let caution = words.caution.map(|c| classed("p", "note caution").with(c));
    Worded {
        place: words.place,
        title: said(hand.phrase(words.title)),
        lines: times.into_iter().chain(lines).chain(caution).collect(),
        notes: words.notes,
    }
}

/// The drawing of a step.
pub fn drawing(desk: Desk, plan: &Plan, step: &Step) -> String {
    let drawing = desk.project.with(|p| draw(step, plan, &|card| p.card(card).map_or_else(Tint::default, |c| c.tint)));
    let Some(mut drawing) = drawing else {
        return String::new();
    };
    if desk.hand.get() == Hand::Left {
        drawing.mirror();
    }
    paint(&drawing)
}

/// Ticks a step, or takes its tick off.
pub fn toggle(desk: Desk, key: &str) {
    desk.tick(|d| {
        d.toggle(key);
    });
}
