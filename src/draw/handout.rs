//! The handout: what a student has on the table, on two pages where that can be.

use super::code::{Spare, code};
use super::drawing::{Drawing, Spot};
use super::flow::{Block, Flow, Region};
use super::folded::set;
use super::font::Font;
use super::solid::View;
use super::step::step as draw;
use crate::make::class::at_home;
use crate::make::stage::stages;
use crate::make::step::{Action, Caution, Step};
use crate::phrase;
use crate::plan::Plan;
use crate::project::class::Ready;
use crate::project::finding::Place;
use crate::project::request::{Project, Tint};
use crate::say::finding::short;
use crate::say::hand::Hand;
use crate::say::phrase::Phrase;
use crate::say::spelling::Spelling;
use crate::say::step::{Said, caution, place, step as say};
use crate::say::{kept, measured, pictures, teach};

/// What a handout is made of.
pub struct Handout<'a> {
    /// The set.
    pub project: &'a Project,
    /// What one maker makes, in each system that is printed: one or two.
    pub plans: &'a [&'a Plan],
    /// How far everything is prepared.
    pub ready: Ready,
    /// The design as a link.
    pub link: Option<&'a str>,
    /// The paper.
    pub size: Spot,
    /// How words are spelled.
    pub spelling: Spelling,
    /// For which hand.
    pub hand: Hand,
    /// What it is set in.
    pub font: &'a Font,
}

/// So many pages a handout should have.
pub const PAGES: usize = 2;

/// How closely everything is set.
struct Level {
    /// Columns of the page.
    columns: usize,
    /// Height of the drawings.
    picture: f64,
    /// What is drawn and told of a step.
    told: Told,
    /// Height of the lettering: none below 7 points.
    size: f64,
    /// The side of the largest code, with what stays free round it.
    code: f64,
}

#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Told {
    /// A drawing and all its lines.
    All,
    /// A drawing; where cuts are heavy in it they are not told one by one.
    Drawn,
    /// A drawing only where the words speak of it.
    Least,
    /// And of folds no more than their names; what is in the bag stands on its label.
    Names,
}

/// The first that comes to two pages is taken.
const LEVELS: [Level; 8] = [
    Level { columns: 3, picture: 34.0, told: Told::All, size: 3.2, code: CODE },
    Level { columns: 3, picture: 28.0, told: Told::Drawn, size: 2.9, code: CODE },
    Level { columns: 4, picture: 24.0, told: Told::Drawn, size: 2.6, code: CODE },
    Level { columns: 4, picture: 18.0, told: Told::Drawn, size: 2.6, code: SMALL },
    Level { columns: 5, picture: 18.0, told: Told::Drawn, size: 2.47, code: SMALL },
    Level { columns: 5, picture: 14.0, told: Told::Drawn, size: 2.47, code: SMALL },
    Level { columns: 5, picture: 18.0, told: Told::Least, size: 2.47, code: SMALL },
    Level { columns: 5, picture: 14.0, told: Told::Names, size: 2.47, code: SMALL },
];

/// What stands among the steps.
enum Item {
    /// The part that the next ones are done to.
    Part(String),
    /// A step with its number.
    Step { number: usize, said: Box<Said>, drawing: Option<Box<Drawing>>, kind: Kind },
    /// Steps that are done as those of another part, as one.
    Same { number: usize, from: usize, to: usize, of: String },
}

/// How the words and the drawing of a step hang together.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// The drawing shows the cuts that the words would tell one by one.
    Cuts,
    /// The words speak of what is drawn.
    Seen,
    /// A fold, which has a name.
    Fold,
    /// Anything else.
    Plain,
}

impl Kind {
    const fn of(action: &Action) -> Self {
        match action {
            Action::Cut(_) | Action::ScoreShort(_) => Self::Cuts,
            Action::CutSheets { .. }
            | Action::TakeCells(_)
            | Action::Mark(_)
            | Action::ScoreMarks(_)
            | Action::CutMarks(_) => Self::Seen,
            Action::Fold { .. } | Action::FoldAndBurnish => Self::Fold,
            _ => Self::Plain,
        }
    }
}

/// The pages.
#[must_use]
pub fn handout(h: &Handout) -> Vec<Drawing> {
    let columns: Vec<Vec<Item>> = h.plans.iter().map(|plan| items(h, plan)).collect();
    let mut pages = Vec::new();
    for level in &LEVELS {
        pages = pages_at(h, &columns, level);
        if pages.len() <= PAGES {
            break;
        }
    }
    pages
}

/// The steps that are done in the class.
fn in_class(plan: &Plan, ready: Ready) -> Vec<&Step> {
    let stages = stages(&plan.steps);
    plan.steps.iter().zip(stages).filter(|(_, stage)| !at_home(*stage, ready)).map(|(step, _)| step).collect()
}

/// The steps of a plan; what is said word for word of an earlier box of the same form is not said again.
fn items(h: &Handout, plan: &Plan) -> Vec<Item> {
    let tint = |card: u16| h.project.card(card).map_or_else(Tint::default, |c| c.tint);
    // Of each step so far: its form and part, what was said, its number and where.
    let mut before: Vec<(&'static str, usize, Said, usize, String)> = Vec::new();
    let (mut all, mut now, mut number) = (Vec::new(), String::new(), 0);
    for step in in_class(plan, h.ready) {
        let said = say(step, plan, h.project, h.spelling);
        let at = short(&place(step, plan, h.project));
        if at != now {
            all.push(Item::Part(at.clone()));
            now.clone_from(&at);
        }
        let form = plan.part(step.place).filter(|_| matches!(step.place, Place::Box(_))).map(|p| p.form.key);
        let same = form.and_then(|form| {
            let mut alike = before.iter().filter(|b| (b.0, b.1) == (form, step.part) && b.4 != at);
            alike
                .find(|b| (&b.2.title, &b.2.lines, &b.2.notes) == (&said.title, &said.lines, &said.notes))
                .map(|b| (b.3, b.4.clone()))
        });
        if let Some((nth, of)) = same {
            match all.last_mut() {
                Some(Item::Same { to, of: last, .. }) if *last == of && *to + 1 == nth => *to = nth,
                _ => {
                    number += 1;
                    all.push(Item::Same { number, from: nth, to: nth, of });
                }
            }
            continue;
        }
        number += 1;
        if let Some(form) = form {
            before.push((form, step.part, said.clone(), number, at));
        }
        let mut drawing = draw(step, plan, &tint).map(Box::new);
        if let (Hand::Left, Some(drawing)) = (h.hand, &mut drawing) {
            drawing.mirror();
        }
        let said = Box::new(Said {
            title: h.hand.phrase(said.title),
            lines: said.lines.into_iter().map(|line| h.hand.phrase(line)).collect(),
            ..said
        });
        all.push(Item::Step { number, said, drawing, kind: Kind::of(&step.action) });
    }
    all
}

fn pages_at(h: &Handout, columns: &[Vec<Item>], level: &Level) -> Vec<Drawing> {
    let mut flow = Flow::new(&h.project.name, h.size, h.font);
    head(h, &mut flow, level.code);
    care(h, &mut flow, level.size);
    let several = columns.len() > 1;
    let each = if several { (level.columns / 2).max(1) } else { level.columns };
    let regions = h.plans.iter().zip(columns).map(|(plan, items)| {
        let cells = need(h, plan, level).into_iter().chain(told(items, level)).collect();
        let head = several.then(|| teach::system(plan.system, h.spelling).into());
        Region { share: 1.0, columns: each, head, cells }
    });
    flow.columns(regions.collect());
    flow.finish()
}

/// A heading in a column.
fn headed(words: &str, size: f64) -> Vec<Block> {
    vec![Block::Words(words.into(), size * 1.4), Block::Space(size * 0.3)]
}

/// The name, whose design it is, the set as it will be, and the code of the link.
fn head(h: &Handout, flow: &mut Flow, most: f64) {
    let name = if h.project.name.trim().is_empty() { pictures::UNNAMED } else { &h.project.name };
    let mut words = vec![Block::Words(name.into(), 8.0), Block::Space(2.0)];
    if !h.project.own.credit.is_empty() {
        words.push(Block::Words(h.project.own.credit.as_str().into(), 3.2));
    }
    if h.plans.len() > 1 {
        words.push(Block::Words(teach::ONE_COLUMN.into(), 4.0));
    }
    let other = h.plans.iter().any(|plan| plan.system != h.project.system);
    if other && h.ready != Ready::Sheets {
        words.push(Block::Words(teach::cut_in(h.project.system, h.spelling).into(), 3.2));
    }
    let tint = |card: u16| h.project.card(card).map_or_else(Tint::default, |c| c.tint);
    let picture = h.plans.first().map(|p| set(&p.boxes, p.holder.as_ref(), &tint, 0.35, View::default()));
    let picture = picture.map(|mut d| {
        d.fit(2.0);
        Block::Picture(Box::new(d), 42.0)
    });
    let link = h
        .link
        .and_then(|link| code(link, kept::CODE, Spare::Fourteenth))
        .filter(|d| d.max[0] - d.min[0] <= most / LEAST);
    let link = match link {
        Some(code) => {
            let wide = ((code.max[0] - code.min[0]) * SQUARE).min(most);
            vec![Block::Picture(Box::new(code), wide), Block::Words(teach::CODE.into(), 2.5)]
        }
        None => vec![Block::Words(teach::NO_CODE.into(), 2.5)],
    };
    flow.row(&[1.0, 0.9, 1.3], vec![words, picture.into_iter().collect(), link]);
    flow.space(2.0);
}

/// The largest square of a printed code, in millimetres.
const SQUARE: f64 = 1.0;
/// The smallest: three dots of a plain printer's 150 to the inch.
const LEAST: f64 = 0.5;
/// The side of the largest code, with what stays free round it.
const CODE: f64 = 64.0;
/// The same where room is short.
const SMALL: f64 = 46.0;

/// Sizes and what is in the bag.
fn need(h: &Handout, plan: &Plan, level: &Level) -> Vec<Vec<Block>> {
    let size = level.size;
    let words = |words: Phrase| Block::Words(words, size);
    let mut sizes = headed(teach::SIZES, size);
    for part in plan.parts() {
        let Some(assembly) = &part.assembly else { continue };
        let many = pictures::many(part.count);
        let name = format!("{}{many}: ", short(&part.name));
        sizes.push(words(phrase![name, measured::size(assembly.finished, plan.system)]));
    }
    sizes.push(Block::Space(size));
    let mut all = vec![sizes];
    let mut bag = teach::bag(plan, h.project, h.ready).into_iter().filter(|_| level.told < Told::Names);
    if let Some(first) = bag.next() {
        let mut cell = headed(teach::BAG, size);
        cell.push(words(first));
        all.push(cell);
        all.extend(bag.map(|line| vec![words(line)]));
        all.push(vec![Block::Space(size)]);
    }
    all
}

/// The steps as cells; the name of a part stays with its first step.
fn told(items: &[Item], level: &Level) -> Vec<Vec<Block>> {
    let mut cells: Vec<Vec<Block>> = Vec::new();
    let mut waiting = headed(teach::STEPS, level.size);
    let size = level.size;
    let space = Block::Space(if level.told == Told::Names { size * 0.6 } else { size });
    for item in items {
        match item {
            Item::Part(name) => waiting.extend(headed(name, size * 0.9)),
            Item::Same { number, from, to, of } => {
                let mut cell = std::mem::take(&mut waiting);
                let words = phrase![format!("{number}  {}", teach::same(*from, *to, of))];
                cell.extend([Block::Words(words, size * 1.12), space.clone()]);
                cells.push(cell);
            }
            Item::Step { number, said, drawing, kind } => {
                let mut cell = std::mem::take(&mut waiting);
                cell.push(Block::Words(phrase![format!("{number}  "), said.title.clone()], size * 1.12));
                if level.told < Told::Least || matches!(kind, Kind::Cuts | Kind::Seen) {
                    cell.extend(drawing.clone().map(|d| Block::Picture(d, level.picture)));
                }
                let quiet = match kind {
                    Kind::Cuts => level.told > Told::All,
                    Kind::Fold => level.told == Told::Names,
                    Kind::Seen | Kind::Plain => false,
                };
                let lines = said.lines.iter().filter(|_| !quiet);
                cell.extend(lines.map(|line| Block::Words(line.clone(), size)));
                cell.extend(said.notes.iter().map(|note| Block::Words(note.as_str().into(), size)));
                cell.push(space.clone());
                cells.push(cell);
            }
        }
    }
    cells
}

/// Tools and cautions, once for all.
fn care(h: &Handout, flow: &mut Flow, size: f64) {
    let steps: Vec<&Step> = h.plans.iter().flat_map(|plan| in_class(plan, h.ready)).collect();
    flow.words(teach::tools(&steps), size);
    let mut all: Vec<Caution> = Vec::new();
    for one in steps.iter().filter_map(|s| s.action.caution()) {
        if !all.contains(&one) {
            all.push(one);
        }
    }
    all.sort();
    for one in all {
        flow.words(caution(one), size);
    }
    flow.space(1.0);
    flow.rule();
}
