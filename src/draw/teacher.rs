//! The teacher's sheet: what to buy and prepare, the clock, the bags, and how each sheet is cut.

use super::drawing::{Drawing, Spot};
use super::flow::{Block, Flow};
use super::font::Font;
use super::sheet::{Cutting, sheet};
use crate::cut::order::order;
use crate::phrase;
use crate::plan::Taught;
use crate::project::class::Ready;
use crate::project::request::{Project, Tint};
use crate::say::phrase::Phrase;
use crate::say::{cutting, names, pictures, teach};
use crate::stock::currency::Currency;

/// Ordinary lettering.
const SIZE: f64 = 3.4;
/// A heading.
const HEAD: f64 = 5.0;

/// Prices that the teacher asked to be shown.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Prices {
    /// What costs what.
    pub lines: Vec<(String, String)>,
    /// What should be known about it.
    pub notes: Vec<String>,
}

/// The pages; without `prices` there is none on any of them.
#[must_use]
pub fn teacher(taught: &Taught, project: &Project, prices: Option<&Prices>, size: Spot, font: &Font) -> Vec<Drawing> {
    let money = Currency::of(&project.trade.currency).unwrap_or_default();
    let money = prices.map(|_| &money);
    let mut flow = Flow::new(&project.name, size, font);
    let name = if project.name.trim().is_empty() { pictures::UNNAMED } else { &project.name };
    flow.words(name, 7.0);
    flow.words(teach::who(&taught.class), SIZE);
    let list = |flow: &mut Flow, head: &'static str, lines: Vec<Phrase>| {
        flow.heading(head, HEAD, SIZE * 3.0);
        for line in lines {
            flow.words(line, SIZE);
        }
    };
    for stop in teach::stops(taught) {
        flow.words(stop, SIZE);
    }
    list(&mut flow, teach::BUY, teach::buy(taught, project, money));
    list(&mut flow, teach::HOME, vec![teach::home(taught).into()]);
    list(&mut flow, teach::BAG, teach::bag(&taught.one, project, taught.class.ready));
    clock(&mut flow, taught, project);
    if let Some(prices) = prices {
        flow.heading(teach::PRICES, HEAD, SIZE * 3.0);
        for (what, sum) in &prices.lines {
            let words = |w: &str| vec![Block::Words(w.into(), SIZE)];
            flow.row(&[3.0, 1.0], vec![words(what), words(sum)]);
        }
        for note in &prices.notes {
            flow.words(note.as_str(), SIZE);
        }
    }
    let each = taught.class.ready == Ready::Sheets;
    list(&mut flow, if each { teach::PIECES_EACH } else { teach::PIECES }, teach::pieces(taught));
    layouts(&mut flow, taught, project);
    flow.finish()
}

fn clock(flow: &mut Flow, taught: &Taught, project: &Project) {
    flow.heading(teach::CLOCK, HEAD, SIZE * 3.0);
    flow.words(teach::fits(&taught.hours), SIZE);
    for row in &taught.hours.rows {
        let words = |w: String| vec![Block::Words(w.into(), SIZE)];
        let columns = vec![words(teach::clock(row.from)), words(teach::doing(row.doing, &taught.one, project))];
        flow.row(&[1.0, 8.0], columns);
    }
    flow.words(teach::TOOLS, SIZE * 0.85);
    for cure in &taught.hours.cures {
        flow.words(teach::cure(cure), SIZE);
    }
}

fn layouts(flow: &mut Flow, taught: &Taught, project: &Project) {
    let plan = &taught.all;
    let letter = |id: u32| names::letter(plan, id);
    for sheets in &plan.sheets {
        let card = sheets.job.card;
        let tint = project.card(card).map_or_else(Tint::default, |c| c.tint);
        let what = if taught.class.ready == Ready::Sheets { teach::LAYOUTS_EACH } else { teach::LAYOUTS };
        let mut head = Some(phrase![format!("{what}: {}", names::card(project, card))]);
        for pattern in &sheets.layout.patterns {
            let Some(bare) = sheets.sheet(pattern.sheet) else { continue };
            let cuts = order(pattern, bare);
            let system = plan.system;
            let drawn = sheet(&Cutting { sheet: bare, pattern, cuts: &cuts, tint, system, letter: &letter });
            if let Some(head) = head.take() {
                flow.heading(head, HEAD, 70.0);
            }
            let mut words = vec![Block::Words(cutting::copies(pattern.copies).into(), SIZE * 1.2)];
            words.push(Block::Words(cutting::gives(pattern, bare, &letter), SIZE));
            flow.row(&[1.0, 1.2], vec![vec![Block::Picture(Box::new(drawn), 80.0)], words]);
            // Below, line by line: a sheet of many cuts goes on overleaf.
            for line in cutting::lines(&cuts, plan.system, &letter) {
                flow.words(line, 2.8);
            }
            flow.space(3.0);
        }
    }
}
