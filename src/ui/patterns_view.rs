//! Patterns at true scale, to be saved: pages for a printer, and each part's drawing.

use super::child::live;
use super::desk::{Desk, desk};
use super::either::either;
use super::opened::opened;
use super::tag::{Tag, button, classed, tag};
use super::text_field::text_field;
use super::value::{Fact, State, fact};
use super::with_font::{told, with_font};
use crate::draw::font::Font;
use crate::draw::lacking::on_patterns;
use crate::draw::pages::{MOST, pages};
use crate::draw::pattern::{Pattern, patterns};
use crate::draw::pdf::pdf;
use crate::draw::svg::true_scale;
use crate::say::making;
use crate::say::pages as say;
use crate::say::spelling::Spelling;
use crate::stock::paper::Paper;
use crate::web::files;

/// Everything about patterns; drawn only while it is open.
#[must_use]
pub fn patterns_view() -> Tag {
    let desk = desk();
    let open = State::new(false);
    let usual = if desk.spelling.get_untracked() == Spelling::Us { Paper::Letter } else { Paper::A4 };
    let paper = State::new(usual);
    let one = move |one: Paper| {
        button(say::paper(one), move || paper.set(one)).says("aria-pressed", move || paper.get() == one)
    };
    let credit = fact(move || desk.project.with(|p| p.own.credit.clone()));
    let write = move |text| desk.edit("credit", |p| p.own.credit = text);
    let field = text_field("credit".to_owned(), making::CREDIT, Fact::fixed(String::new()), credit, write);
    let inside = live(move || {
        open.get().then(|| {
            let all = all(desk);
            let sheets = with_font(|font| sheets(desk, &all, paper, &credit.get(), font));
            let rows = all.into_iter().map(row).collect::<Vec<_>>();
            classed("div", "patterns-out")
                .with(classed("p", "hint").with(say::HINT))
                .with(either(say::PAPER, Paper::ALL.map(one).into_iter().collect()))
                .with(sheets)
                .with(classed("ul", "pieces").with(rows))
        })
    });
    classed("section", "sheet-of-paper").with(opened("patterns", say::PATTERNS, open).with(field).with(inside))
}

fn all(desk: Desk) -> Vec<Pattern> {
    let sets = desk.project.with(|p| p.sets);
    desk.good.with(|plan| patterns(plan, sets))
}

fn row(pattern: Pattern) -> Tag {
    let name = pattern.name.clone();
    let save = button(say::SAVE_ONE, move || {
        let _ = files::give(&say::file(&pattern.name, "svg"), "image/svg+xml", true_scale(&pattern.drawing).as_bytes());
    });
    tag("li").with(tag("span").with(name)).with(save)
}

/// What saves the pages, how many there are, and what should be known about them.
fn sheets(desk: Desk, all: &[Pattern], paper: State<Paper>, credit: &str, font: &'static Font) -> Vec<Tag> {
    let (sheets, left_out) = pages(all, paper.get(), credit, font);
    let left_out = left_out.iter().filter_map(|&nth| all.get(nth)).map(|p| say::left_out(&p.name, MOST));
    let lacking = told(&on_patterns(all, credit, font), say::DRAW_INSTEAD);
    let save = classed("p", "actions")
        .with(button(say::SAVE, move || save_pages(desk, paper.get_untracked(), font)).class("main"))
        .with(tag("span").with(say::count(sheets.len())));
    let notes = left_out.chain(lacking).map(|w| classed("p", "note caution").with(w));
    std::iter::once(save).chain(notes).collect()
}

fn save_pages(desk: Desk, paper: Paper, font: &Font) {
    let all = all(desk);
    let (name, credit) = desk.project.with_untracked(|p| (p.name.clone(), p.own.credit.clone()));
    let (sheets, _) = pages(&all, paper, &credit, font);
    let _ = files::give(&say::file(&name, "pdf"), "application/pdf", &pdf(&name, &all, &sheets, font));
}
