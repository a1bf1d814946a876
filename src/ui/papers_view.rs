//! Pages to hand out: seen as they come out of the printer, saved as PDF, or printed by the browser.

use super::alive::Alive;
use super::child::live;
use super::class_view::class;
use super::desk::{Desk, desk};
use super::either::either;
use super::picture::picture;
use super::price_view::reckoned;
use super::tag::{Tag, button, classed, tag};
use super::tick::tick;
use super::value::{State, effect};
use super::with_font::{told, with_font};
use crate::draw::drawing::Drawing;
use crate::draw::font::Font;
use crate::draw::handout::{Handout, PAGES, handout};
use crate::draw::labels::{bags, tags};
use crate::draw::lacking::on_pages;
use crate::draw::pdf::print;
use crate::draw::svg::page;
use crate::draw::teacher::teacher;
use crate::measure::system::System;
use crate::plan::for_one;
use crate::say::spelling::Spelling;
use crate::say::{pages as words, teach as say};
use crate::stock::paper::Paper;
use crate::web::motion::Again;
use crate::web::{files, here, link};
use leptos::prelude::untrack;

/// What is handed out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Which {
    Handout,
    Labels,
    Teacher,
    Tags,
}

impl Which {
    const ALL: [Self; 4] = [Self::Handout, Self::Labels, Self::Teacher, Self::Tags];

    const fn name(self) -> &'static str {
        match self {
            Self::Handout => say::HANDOUT,
            Self::Labels => say::LABELS,
            Self::Teacher => say::TEACHER,
            Self::Tags => say::TAGS,
        }
    }
}

/// In which systems a handout is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Measures {
    One(System),
    Both,
}

/// What is chosen; what is private only where the maker ticks it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Chosen {
    which: Option<Which>,
    paper: Paper,
    measures: Measures,
    private: bool,
}

/// The papers.
#[must_use]
pub fn papers_view() -> Tag {
    let desk = desk();
    let paper = if desk.spelling.get_untracked() == Spelling::Us { Paper::Letter } else { Paper::A4 };
    let system = desk.project.with_untracked(|p| p.system);
    let chosen = State::new(Chosen { which: None, paper, measures: Measures::One(system), private: false });
    // A long handout takes a moment: first that is said.
    let set = State::new(None::<Chosen>);
    let (wait, alive) = (State::new(0_u32), Alive::here());
    let begin = move |frames: u32| {
        if wait.get_untracked() > 0 {
            wait.set(frames);
            return;
        }
        wait.set(frames);
        alive.each_frame(move |_| {
            let left = wait.get_untracked();
            if left > 1 {
                wait.set(left - 1);
                return Again::Yes;
            }
            wait.set(0);
            set.set(Some(chosen.get_untracked()));
            Again::No
        });
    };
    let choose = move |change: &dyn Fn(&mut Chosen)| {
        chosen.update(change);
        set.set(None);
        begin(2);
    };
    // Whoever types is not kept waiting for pages: they are set anew after a pause. Until then those before stay, so that
    // a print in that moment is of pages, never of the screen.
    effect(move || {
        desk.project.track();
        desk.good.track();
        desk.pace.track();
        desk.spelling.track();
        desk.hand.track();
        if chosen.with_untracked(|c| c.which.is_some()) {
            begin(PAUSE);
        }
    });
    let one = move |says: &'static str, is: fn(&Chosen, Which) -> bool, which: Which| {
        button(says, move || choose(&|c| (c.which, c.private) = (Some(which), false)))
            .says("aria-pressed", move || chosen.with(|c| is(c, which)))
    };
    let which = Which::ALL.map(|w| one(w.name(), |c, w| c.which == Some(w), w)).into_iter().collect();
    let sized = move |paper: Paper| {
        button(words::paper(paper), move || choose(&|c| c.paper = paper))
            .says("aria-pressed", move || chosen.with(|c| c.paper == paper))
    };
    let measured = move |says: &'static str, measures: Measures| {
        button(says, move || choose(&|c| c.measures = measures))
            .says("aria-pressed", move || chosen.with(|c| c.measures == measures))
    };
    let more = live(move || {
        let spelling = desk.spelling.get();
        let private = |says| tick(says, move || chosen.get().private, move |on| choose(&|c| c.private = on));
        match chosen.get().which? {
            Which::Handout => {
                let each = System::ALL.map(|s| measured(say::system(s, spelling), Measures::One(s)));
                let all = each.into_iter().chain([measured(say::BOTH, Measures::Both)]);
                Some(either(say::MEASURES, all.collect()))
            }
            Which::Labels => Some(private(say::WITH_NAMES)),
            Which::Teacher => Some(private(say::WITH_PRICES)),
            Which::Tags => None,
        }
    });
    let out = live(move || match (set.get(), chosen.get().which) {
        (_, None) => Vec::new(),
        (None, _) => vec![classed("p", "hint").is("role", "status").with(say::SETTING)],
        (Some(now), _) => with_font(|font| untrack(|| shown(desk, &now, font))),
    });
    classed("section", "sheet-of-paper papers")
        .with(tag("h2").with(say::PAPERS))
        .with(either(say::WHICH, which))
        .with(either(words::PAPER, Paper::ALL.map(sized).into_iter().collect()))
        .with(more)
        .with(classed("div", "papers-out").with(out))
}

/// The pages that are chosen, and what they are called.
fn pages(desk: Desk, now: &Chosen, font: &Font) -> Option<(&'static str, Vec<Drawing>)> {
    let which = now.which?;
    let size = now.paper.size();
    let project = desk.project.get();
    if which == Which::Tags {
        let names: Vec<&str> = project.batch.names().take(usize::from(u16::MAX)).collect();
        return (!names.is_empty()).then(|| (which.name(), tags(which.name(), &names, size, font)));
    }
    if which == Which::Handout {
        let systems = match now.measures {
            Measures::One(system) => vec![system],
            Measures::Both => System::ALL.to_vec(),
        };
        let plans: Vec<_> = systems.into_iter().map(|system| for_one(&project, system)).collect();
        let address = link::address(&project).ok();
        let pages = handout(&Handout {
            project: &project,
            plans: &plans.iter().collect::<Vec<_>>(),
            ready: project.class.ready,
            link: address.as_deref(),
            size,
            spelling: desk.spelling.get(),
            hand: desk.hand.get(),
            font,
        });
        return (!desk.plan.with(|plan| plan.stopped() || plan.steps.is_empty())).then(|| (which.name(), pages));
    }
    let taught = class(desk)?;
    let pages = match which {
        Which::Labels => {
            let count = taught.class.makers as usize;
            let mut names = project.batch.names().filter(|_| now.private);
            let heads: Vec<Vec<String>> = (1..=count)
                .map(|nth| std::iter::once(say::number(nth, count)).chain(names.next().map(str::to_owned)).collect())
                .collect();
            let inside = say::bag(&taught.one, &project, taught.class.ready);
            bags(&project.name, &heads, &inside, size, font)
        }
        Which::Teacher => {
            let prices = now.private.then(|| reckoned(desk));
            teacher(&taught, &project, prices.as_ref(), size, font)
        }
        Which::Handout | Which::Tags => return None,
    };
    Some((which.name(), pages))
}

/// Frames without an edit before the pages are set anew: half a second.
const PAUSE: u32 = 30;

fn shown(desk: Desk, now: &Chosen, font: &'static Font) -> Vec<Tag> {
    let Some((name, pages)) = pages(desk, now, font) else {
        let why = if now.which == Some(Which::Tags) { say::NO_NAMES } else { say::NOTHING };
        return vec![classed("p", "note caution").with(why)];
    };
    let lacking = told(&on_pages(&pages, font), words::PRINT_INSTEAD);
    let long = now.which == Some(Which::Handout) && pages.len() > PAGES;
    let nameless =
        now.which == Some(Which::Labels) && now.private && desk.project.with(|p| p.batch.names().next().is_none());
    let notes = [nameless.then(|| say::NO_NAMES.to_owned()), long.then(|| say::long(pages.len()))];
    let notes = notes.into_iter().flatten().chain(lacking).map(|words| classed("p", "note caution").with(words));
    let title = desk.project.with(|p| format!("{} {}", p.name, name.to_lowercase()));
    let svgs: Vec<String> = pages.iter().map(|one| page(one, font)).collect();
    let count = words::count(pages.len());
    let save = move || {
        let _ = files::give(&words::file(&title, "pdf"), "application/pdf", &print(&title, &pages, font));
    };
    let actions = classed("p", "actions")
        .with(button(say::SAVE, save).class("main"))
        .with(button(say::PRINT, here::print))
        .with(tag("span").is("role", "status").with(count));
    let notes = notes.collect::<Vec<_>>();
    let sheets = svgs.into_iter().map(|svg| picture(move || svg.clone()));
    vec![actions, tag("div").with(notes), classed("div", "printed").with(sheets.collect::<Vec<_>>())]
}
