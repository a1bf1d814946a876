//! A step of the making, in words: what to do in a line, how in a few, and the caution that belongs to it.

use super::measured::{length, row, sides, size};
use super::phrase::Phrase;
use super::spelling::Spelling;
use super::{cutting, names, recipe};
use crate::cut::order::order;
use crate::form::assembly::MoveName;
use crate::make::part::Planned;
use crate::make::pieces::{Becomes, Piece};
use crate::make::step::{Action, Caution, Step};
use crate::measure::length::Length;
use crate::net::recipe::Turned;
use crate::phrase;
use crate::plan::Plan;
use crate::project::request::Project;

/// A step in words.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    /// What it is done to.
    pub place: String,
    /// What to do, large.
    pub title: Phrase,
    /// How, line by line.
    pub lines: Vec<Phrase>,
    /// What to take care of.
    pub caution: Option<&'static str>,
}

/// Words for `step` of `plan`.
#[must_use]
pub fn step(step: &Step, plan: &Plan, project: &Project, spelling: Spelling) -> Said {
    let part = plan.part(step.place);
    let (title, lines) = match &step.action {
        Action::CutSheets { card, pattern } => cut_sheets(plan, project, *card, *pattern),
        Action::CutPieces { card, pieces } => by_hand(plan, project, *card, pieces),
        Action::Fill => ("Fill the boxes".into(), vec!["Put the gift in, tuck the dust flaps, then the lid.".into()]),
        Action::SlideIn => {
            ("Slide the boxes into the holder".into(), vec!["Fronts to the lower wall, one beside the other.".into()])
        }
        action => part.map_or_else(|| ("Step".into(), Vec::new()), |p| on_part(step, action, p, plan, spelling)),
    };
    Said { place: names::place(project, step.place), title, lines, caution: step.action.caution().map(caution) }
}

/// The words of a caution.
#[must_use]
pub const fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::Blade => "Blade: cut away from your hand, and cover the blade when you put it down.",
        Caution::Glue => "Hot glue burns, from a low-temperature gun too. Take no glue to be safe with food.",
        Caution::Contents => {
            "Put food in a food-grade bag first. No lit candle in or near paper. No small parts, magnets or button \
             cells for young children. Local rules and the material's maker decide."
        }
    }
}

fn cut_sheets(plan: &Plan, project: &Project, card: u16, pattern: usize) -> (Phrase, Vec<Phrase>) {
    let sheets = plan.sheets.iter().find(|s| s.job.card == card);
    let found = sheets.and_then(|s| s.layout.patterns.get(pattern).map(|p| (s, p)));
    let Some((pattern, sheet)) = found.and_then(|(s, p)| Some((p, s.sheet(p.sheet)?))) else {
        return ("Step".into(), Vec::new());
    };
    let (word, alike) = if pattern.copies == 1 { ("sheet", "") } else { ("sheets", " alike") };
    let title = phrase![
        format!("Cut {} {word} of {}, ", pattern.copies, names::card(project, card)),
        sides(sheet.width, sheet.height, plan.system),
        alike,
    ];
    let letter = |id| names::letter(plan, id);
    let mut lines = vec![cutting::gives(pattern, sheet, &letter)];
    lines.extend(cutting::lines(&order(pattern, sheet), plan.system, &letter));
    lines.extend(cutting::keep(pattern, sheet, plan.system));
    (title, lines)
}

fn by_hand(plan: &Plan, project: &Project, card: u16, ids: &[u32]) -> (Phrase, Vec<Phrase>) {
    let title = format!("Cut the rest of {} with knife and ruler", names::card(project, card)).into();
    let mut lines: Vec<Phrase> = vec!["The trimmer cannot hold or reach these; offcuts will do.".into()];
    let mine = plan.pieces.iter().filter(|p| ids.contains(&p.id));
    lines.extend(mine.map(|p| names::piece(plan, p, plan.system)));
    (title, lines)
}

fn on_part(step: &Step, action: &Action, part: &Planned, plan: &Plan, spelling: Spelling) -> (Phrase, Vec<Phrase>) {
    let system = plan.system;
    let net = part.assembly.as_ref().and_then(|a| a.parts.get(step.part)).map(|p| &p.net);
    let (Some(net), Some(recipe)) = (net, part.recipes.get(step.part)) else {
        return ("Step".into(), Vec::new());
    };
    let pieces = |ids: &[u32]| plan.pieces.iter().filter(|p| ids.contains(&p.id)).cloned().collect::<Vec<_>>();
    match action {
        Action::Score(scores) => {
            let other = if scores.turned == Turned::AsItLies { recipe.height } else { recipe.width };
            let title = phrase!["Score at ", row(&scores.at, system)];
            (title, vec![recipe::lie(scores, other, system, spelling), recipe::last(scores, system)])
        }
        Action::Cut(cuts) => {
            let mut lines: Vec<Phrase> = vec!["Turn the card back, as it lay first, outside up.".into()];
            lines.extend(cuts.iter().map(|c| recipe::cut(c, recipe, system)));
            ("Cut along the scores that are heavy in the drawing".into(), lines)
        }
        Action::TakeCells(count) => (recipe::fields(*count), Vec::new()),
        Action::TakeOff(off) => ("Trim the flaps and corners".into(), recipe::take_offs(net, off, system)),
        Action::FoldAndBurnish => (
            "Fold along every score and rub it flat".into(),
            vec!["Fold away from you, so that the ridge of each score ends inside. Then open it again.".into()],
        ),
        Action::GlueMats(ids) => glue_mats(part, &pieces(ids), net, plan),
        Action::Notch(off) => (
            "Punch the thumb notch".into(),
            vec![
                recipe::take_offs(net, &[*off], system).pop().unwrap_or_default(),
                "In the middle of the upper edge, through card and mat together.".into(),
            ],
        ),
        Action::Fold { name, glued, .. } => fold(*name, *glued),
        Action::TryBoxesIn { inside } => (
            "Try the boxes in before the glue sets".into(),
            vec![
                phrase!["Inside it should measure ", size(*inside, system), " (long × deep × high)."],
                "Corners square, walls upright: shift them now.".into(),
            ],
        ),
        Action::Straps(ids) => {
            let mut lines: Vec<Phrase> = pieces(ids).iter().map(|p| names::piece(plan, p, system)).collect();
            lines.push("One across each end, with a turn of the same length onto front and back.".into());
            ("Glue the straps over the ends".into(), lines)
        }
        Action::CutSheets { .. } | Action::CutPieces { .. } | Action::Fill | Action::SlideIn => {
            ("Step".into(), Vec::new())
        }
    }
}

fn glue_mats(part: &Planned, pieces: &[Piece], net: &crate::net::flat::Net, plan: &Plan) -> (Phrase, Vec<Phrase>) {
    let border = part.mats.first().map(|m| m.rect.min.x - net.panel(m.panel).cell.min.x);
    let border = border.unwrap_or(Length::ZERO);
    let mut lines: Vec<Phrase> = pieces
        .iter()
        .filter_map(|p| match &p.becomes {
            Becomes::Mat(ids) => Some(format!("{} on {}", p.letter(), names::panels(net, ids)).into()),
            _ => None,
        })
        .collect();
    lines.push(phrase!["A border of ", length(border, plan.system), " shows on each side."]);
    ("Glue on the mats".into(), lines)
}

fn fold(name: MoveName, glued: bool) -> (Phrase, Vec<Phrase>) {
    let (title, line) = match name {
        MoveName::Tab => ("Turn the glue tab in", "It will lie inside the wall that it meets."),
        MoveName::Walls => ("Fold the walls round", "All the same way, with the outside outward."),
        MoveName::Seam => ("Glue the tab and close the ring", "Tab inside, edges level at the top; press and hold."),
        MoveName::BaseInner => ("Fold in the inner base", "It comes from the back and lies innermost."),
        MoveName::BaseSides => (
            "Glue the two side flaps onto the inner base",
            "Press them together from inside, with a ruler's end through the open top.",
        ),
        MoveName::BaseOuter => {
            ("Glue the outer base over them", "Its edge to the back's score; stand the box up and press from inside.")
        }
        MoveName::DustFlaps => ("Fold in the dust flaps", "If they catch, trim half a millimetre at a time."),
        MoveName::Close => ("Close the lid", "Bow the tuck a little and slide it in behind the front."),
        MoveName::Uprights => ("Fold up the front and the back", "The base stays flat on the table."),
        MoveName::Wings => ("Fold the wings in round the corners", "They stand upright across the ends."),
        MoveName::Ends => (
            "Glue the end flaps over the wings",
            "Glue on the outside of the wings; the end flap comes up outside them.",
        ),
    };
    let mut lines: Vec<Phrase> = vec![line.into()];
    if glued && !title.starts_with("Glue") {
        lines.insert(0, "Glue first, where the drawing is hatched.".into());
    }
    (title.into(), lines)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::system::System;
    use crate::project::example::example;

    #[test]
    fn every_step_of_the_example_says_what_to_do() {
        let project = example().unwrap_or_else(|| panic!("the example reads"));
        for system in System::ALL {
            let plan = crate::plan::plan(&project, system);
            for one in &plan.steps {
                let said = step(one, &plan, &project, Spelling::Uk);
                assert!(said.title.to_string() != "Step", "{one:?}");
                assert!(said.title.to_string().len() > 8, "{one:?}");
            }
        }
    }

    #[test]
    fn the_first_box_is_scored_as_makers_say_it() {
        let project = example().unwrap_or_else(|| panic!("the example reads"));
        let plan = crate::plan::plan(&project, System::Inch);
        let scored = plan.steps.iter().filter(|s| matches!(s.action, Action::Score(_))).take(2);
        let said: Vec<String> = scored.map(|s| step(s, &plan, &project, Spelling::Us).title.to_string()).collect();
        assert_eq!(said, ["Score at 1 1/4, 4 1/4, 5 1/2 and 8 1/2 in", "Score at 1/2, 1 3/4 and 6 1/4 in"]);
    }

    /// Glue goes on right before the move that closes it, and nowhere else.
    #[test]
    fn glue_is_said_where_it_is_needed() {
        use MoveName::{BaseOuter, BaseSides, Ends, Seam};
        let project = example().unwrap_or_else(|| panic!("the example reads"));
        let plan = crate::plan::plan(&project, System::Inch);
        let glued = plan.steps.iter().filter_map(|s| match s.action {
            Action::Fold { name, glued: true, .. } => Some(name),
            _ => None,
        });
        let each_box = [Seam, BaseSides, BaseOuter];
        let expected = [&each_box[..], &each_box, &each_box, &[Ends]].concat();
        assert_eq!(glued.collect::<Vec<_>>(), expected);
    }
}
