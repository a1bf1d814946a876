//! Words about classes: the handout, the bags, the clock.

use super::measured::sides;
use super::names;
use super::phrase::Phrase;
use super::spelling::Spelling;
use super::step::place as at;
use super::trade::time;
use crate::cut::sheet::Sheet;
use crate::make::class::{Change, Cure, Doing, Hours};
use crate::make::pieces::{Becomes, Piece};
use crate::make::sheets::with_spares;
use crate::make::stage::Stage;
use crate::make::step::{Action, Step};
use crate::measure::system::System;
use crate::phrase;
use crate::plan::{Plan, Taught};
use crate::project::class::{Class, Ready};
use crate::project::finding::{Finding, Place, Weight};
use crate::project::request::Project;
use crate::stock::currency::Currency;

/// All of it.
pub const TITLE: &str = "A class";
/// How many come.
pub const MAKERS: &str = "Makers who come";
/// How many each makes.
pub const EACH: &str = "Sets each";
/// Spares.
pub const SPARES: &str = "Spare pieces for the class, %";
/// How long.
pub const MINUTES: &str = "Minutes that you have";
/// Margin.
pub const SLOW: &str = "More time for slow hands, %";
/// Breaks.
pub const BREAKS: &str = "Breaks of 10 minutes";
/// What is prepared.
pub const READY: &str = "What you prepare at home";
/// When what is done.
pub const CLOCK: &str = "The clock";
/// What the clock takes for granted.
pub const TOOLS: &str =
    "Counted as if everyone had a board, and a trimmer where sheets are cut. With fewer, prepare more at home.";
/// What is prepared, as a heading.
pub const HOME: &str = "Before the class";
/// What each gets.
pub const BAG: &str = "In the bag";
/// What is bought.
pub const BUY: &str = "To buy for all, spares included";
/// Sheets and their cuts.
pub const LAYOUTS: &str = "The sheets";
/// Pieces for all.
pub const PIECES: &str = "Pieces for the whole class";
/// Pieces of one, where everyone gets sheets.
pub const PIECES_EACH: &str = "Pieces that each maker cuts";
/// Sheets and their cuts, where everyone gets sheets.
pub const LAYOUTS_EACH: &str = "The sheets of each maker";
/// On paper.
pub const PAPERS: &str = "On paper";
/// A file asked for what cannot be.
pub const BROUGHT: &str = "Some of these figures cannot be: the plan takes the nearest that can. Type them anew.";
/// Which of them.
pub const WHICH: &str = "What to print";
/// They are being set.
pub const SETTING: &str = "Setting the pages …";
/// There are no names.
pub const NO_NAMES: &str = "Write the names first, under “Many sets over some evenings”.";
/// The student's pages.
pub const HANDOUT: &str = "Handout";
/// For the bags.
pub const LABELS: &str = "Labels for the bags";
/// The teacher's pages.
pub const TEACHER: &str = "Teacher’s sheet";
/// Tags.
pub const TAGS: &str = "Tags with names";
/// Saves it.
pub const SAVE: &str = "Save as PDF";
/// Prints it.
pub const PRINT: &str = "Print";
/// Shows names.
pub const WITH_NAMES: &str = "With the names";
/// Shows prices.
pub const WITH_PRICES: &str = "With the prices";
/// What they are, as a heading.
pub const PRICES: &str = "Prices";
/// In which system.
pub const MEASURES: &str = "Measured in";
/// Both.
pub const BOTH: &str = "both, side by side";
/// One of two columns.
pub const ONE_COLUMN: &str = "Work in one column only.";
/// Sizes.
pub const SIZES: &str = "Measurements";
/// What to do.
pub const STEPS: &str = "Step by step";
/// What the code is.
pub const CODE: &str = "This design, to open on your own device.";
/// The code cannot be printed.
pub const NO_CODE: &str = "The design is too long for a printed code: pass it on as a link or a file.";
/// Nothing can be planned.
pub const NOTHING: &str = "There is nothing to hand out yet: something stops the plan, and “The set” says what.";

/// Makers at a table, in figures.
#[must_use]
pub fn who(class: &Class) -> String {
    let makers = if class.makers == 1 { "1 maker".to_owned() } else { format!("{} makers", class.makers) };
    let sets = if class.each == 1 { "a set each".to_owned() } else { format!("{} sets each", class.each) };
    format!("{makers}, {sets}, {} % spares, {} minutes.", class.spares, class.minutes)
}

/// How far everything is prepared.
#[must_use]
pub const fn ready(ready: Ready) -> &'static str {
    match ready {
        Ready::Sheets => "nothing: everyone gets sheets",
        Ready::Pieces => "sheets cut into pieces",
        Ready::Scored => "pieces scored too",
        Ready::CutOut => "scored and cut out",
    }
}

/// `1:05`, hours and minutes from the beginning.
#[must_use]
pub fn clock(seconds: u64) -> String {
    let minutes = seconds / 60;
    format!("{}:{:02}", minutes / 60, minutes % 60)
}

/// What is done in a stretch.
#[must_use]
pub fn doing(doing: Doing, plan: &Plan, project: &Project) -> String {
    match doing {
        Doing::Welcome => "Welcome; bags are handed out".to_owned(),
        Doing::Break => "Break".to_owned(),
        Doing::TidyUp => "Tidy up".to_owned(),
        Doing::Work { place, part, stage } => {
            let step = plan.steps.iter().find(|s| (s.place, s.part) == (place, part));
            let name = step.map_or_else(|| names::place(project, place), |step| at(step, plan, project));
            format!("{name}: {}", work(stage))
        }
    }
}

/// What is done in a stage, within a line.
#[must_use]
pub const fn work(stage: Stage) -> &'static str {
    match stage {
        Stage::First => "one to try",
        Stage::Pieces => "cut the sheets",
        Stage::Score => "score",
        Stage::Mark => "mark by hand",
        Stage::CutAway => "cut away",
        Stage::Fold => "fold and rub every score",
        Stage::Flat => "glue on mats, punch",
        Stage::Close => "glue and close",
        Stage::Together => "put together",
        Stage::Fill => "fill and slide in",
    }
}

/// The pieces for all, with the spares that are cut besides.
#[must_use]
pub fn pieces(taught: &Taught) -> Vec<Phrase> {
    let (all, class) = (&taught.all, &taught.class);
    let line = |piece: &Piece| {
        let words = names::piece(all, piece, all.system);
        let spare = u64::from(with_spares(piece.count, class.spares)) - piece.count;
        if spare > 0 && class.ready != Ready::Sheets { words.with(format!(", and {spare} spare")) } else { words }
    };
    all.pieces.iter().map(line).collect()
}

/// Whether it fits the time.
#[must_use]
pub fn fits(hours: &Hours) -> String {
    let (needs, has) = (time(hours.needs), time(hours.has));
    if hours.needs > hours.has {
        format!("It takes about {needs}, and there are {has}.")
    } else {
        // Minutes that are begun count as taken.
        let spare = time(hours.has.saturating_sub(hours.needs.div_ceil(60) * 60));
        format!("It takes about {needs} of {has}: {spare} to spare, for showing and for questions.")
    }
}

/// What would help.
#[must_use]
pub fn cure(cure: &Cure) -> String {
    let then = time(cure.needs);
    match cure.change {
        Change::Prepare(Ready::CutOut) => format!("Score and cut everything out at home: {then}."),
        Change::Prepare(Ready::Scored) => format!("Score everything at home: {then}."),
        Change::Prepare(_) => format!("Cut the sheets into pieces at home: {then}."),
        Change::NoMats => format!("Leave the mats out: {then}."),
        Change::Fewer(1) => format!("Let each make one set: {then}."),
        Change::Fewer(n) => format!("Let each make {n} sets: {then}."),
        Change::Both => format!("Score and cut everything out at home, and leave the mats out: {then}."),
        Change::Longer(minutes) => format!("Or take {minutes} minutes more, or a second day."),
    }
}

/// How long the teacher works before.
#[must_use]
pub fn home(taught: &Taught) -> String {
    let what = match taught.class.ready {
        Ready::Sheets => "Pack the bags",
        Ready::Pieces => "Cut all the sheets, and pack the bags",
        Ready::Scored => "Cut all the sheets, score every piece, and pack the bags",
        Ready::CutOut => "Cut all the sheets, score and cut out every piece, and pack the bags",
    };
    format!("{what}: about {}. What is spare stays on your table.", time(taught.home))
}

/// What each maker gets, a line for each; `one` is what a maker makes.
#[must_use]
pub fn bag(one: &Plan, project: &Project, ready: Ready) -> Vec<Phrase> {
    if ready == Ready::Sheets {
        return sheets(one, project, 1, 0, false);
    }
    let state = match ready {
        Ready::Scored => ", scored",
        Ready::CutOut => ", scored and cut out",
        Ready::Sheets | Ready::Pieces => "",
    };
    let line = |piece: &Piece| {
        let words = names::piece(one, piece, one.system);
        if matches!(piece.becomes, Becomes::Blank(_) | Becomes::Half(..)) { words.with(state) } else { words }
    };
    one.pieces.iter().map(line).collect()
}

/// What is bought for all, a line for each card; with what it costs where that may be told.
#[must_use]
pub fn buy(taught: &Taught, project: &Project, money: Option<&Currency>) -> Vec<Phrase> {
    let all = &taught.all;
    if taught.class.ready == Ready::Sheets {
        return sheets(&taught.one, project, taught.class.makers, taught.class.spares, true);
    }
    all.sheets.iter().map(|s| super::cutting::buy(s, &names::card(project, s.job.card), money)).collect()
}

/// Whole sheets for so many, spares included; with those that come out of the drawer.
fn sheets(one: &Plan, project: &Project, makers: u32, spares: u32, drawer: bool) -> Vec<Phrase> {
    let all = one.sheets.iter().flat_map(|s| s.used().map(|(n, sheet)| (s.job.card, n, sheet)));
    let line = |(card, count, sheet): (u16, u32, &Sheet)| {
        let all = u64::from(with_spares(u64::from(count) * u64::from(makers), spares));
        let word = if all == 1 { "sheet" } else { "sheets" };
        let of = sides(sheet.width, sheet.height, sheet.typed);
        let line = phrase![format!("{}: {all} {word} of ", names::card(project, card)), of];
        let has = project.card(card).map_or(0, |c| {
            let first = (&c.sheet_width, &c.sheet_height, c.supply.have);
            let more = c.more_sheets.iter().map(|m| (&m.width, &m.height, m.supply.have));
            let like = std::iter::once(first).chain(more);
            like.filter(|(w, h, _)| (w.length(), h.length()) == (sheet.width, sheet.height))
                .map(|(.., have)| have)
                .sum()
        });
        let taken = u64::from(has).min(all);
        if drawer && taken > 0 { line.with(format!(", {taken} of them out of the drawer")) } else { line }
    };
    all.map(line).collect()
}

/// What should be known of the class's own plan: what stops it, and sheets that are too few or too small.
#[must_use]
pub fn stops(taught: &Taught) -> Vec<Phrase> {
    let plans = [&taught.one, &taught.all];
    let mut all: Vec<&Finding> = Vec::new();
    let tells =
        |f: &&Finding| f.weight == Weight::Stop || (f.weight == Weight::Caution && matches!(f.place, Place::Card(_)));
    for finding in plans.into_iter().flat_map(|plan| &plan.findings).filter(tells) {
        if !all.contains(&finding) {
            all.push(finding);
        }
    }
    all.into_iter().map(|f| super::finding::finding(f, taught.one.system)).collect()
}

/// Tools that these steps ask for.
#[must_use]
pub fn tools(steps: &[&Step]) -> String {
    let any = |is: &dyn Fn(&Action) -> bool| steps.iter().any(|s| is(&s.action));
    let all = [
        (any(&|a| matches!(a, Action::CutSheets { .. })), "a trimmer"),
        (any(&|a| matches!(a, Action::Score(_))), "a scoring board"),
        (any(&|a| matches!(a, Action::Mark(_) | Action::ScoreMarks(_))), "pencil and ruler"),
        (any(&|a| matches!(a, Action::FoldAndBurnish | Action::Score(_))), "a bone folder"),
        (any(&|a| a.caution() == Some(crate::make::step::Caution::Blade)), "scissors or a knife on a mat"),
        (any(&|a| a.caution() == Some(crate::make::step::Caution::Glue)), "glue or double-sided tape"),
        (any(&|a| matches!(a, Action::Notch(_) | Action::Punch(_))), "a punch"),
    ];
    let named: Vec<&str> = all.iter().filter(|(there, _)| *there).map(|(_, name)| *name).collect();
    format!("Tools: {}.", named.join(", "))
}

/// The pieces in the bags are of one system, whatever is printed.
#[must_use]
pub fn cut_in(is: System, spelling: Spelling) -> String {
    let name = system(is, spelling).to_lowercase();
    format!("The pieces in the bag are cut in {name}: work in {name}.")
}

/// Steps that are done as those of another part.
#[must_use]
pub fn same(from: usize, to: usize, of: &str) -> String {
    if from == to { format!("As step {from} of {of}.") } else { format!("As steps {from} to {to} of {of}.") }
}

/// How a system is called at the head of a column.
#[must_use]
pub const fn system(system: System, spelling: Spelling) -> &'static str {
    match system {
        System::Inch => "Inches",
        System::Metric => spelling.pick("Millimetres", "Millimeters"),
    }
}

/// A handout that takes more than two pages.
#[must_use]
pub fn long(pages: usize) -> String {
    format!(
        "{pages} pages: so much does not go on two. Prepare more at home, or make a handout of fewer kinds of boxes."
    )
}

/// Which bag it is.
#[must_use]
pub fn number(nth: usize, count: usize) -> String {
    format!("Bag {nth} of {count}")
}
