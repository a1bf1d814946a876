//! A step of the making, in words: what to do in a line, how in a few, and the caution that belongs to it.

use super::finding::short;
use super::fitting::facing;
use super::measured::{inside as inside_of, length, row, sides};
use super::phrase::Phrase;
use super::spelling::Spelling;
use super::{cutting, extras, folding, joined, marks, names, recipe};
use crate::assembly::moves::MoveName;
use crate::cut::order::order;
use crate::make::part::Planned;
use crate::make::pieces::{Becomes, Piece};
use crate::make::step::{Action, Caution, Step};
use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::arc::Line;
use crate::net::flat::{Hole, Net, PanelId};
use crate::net::mat::Mat;
use crate::net::recipe::Turned;
use crate::phrase;
use crate::plan::Plan;
use crate::project::own::NoteKind;
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
    /// What the maker noted.
    pub notes: Vec<String>,
    /// What to take care of.
    pub caution: Option<&'static str>,
}

/// Words for `step` of `plan`.
#[must_use]
pub fn step(step: &Step, plan: &Plan, project: &Project, spelling: Spelling) -> Said {
    let part = plan.part(step.place);
    let (title, lines) = match &step.action {
        Action::Own(own) => (own.text.as_str().into(), Vec::new()),
        Action::CutSheets { card, pattern } => cut_sheets(plan, project, *card, *pattern),
        Action::CutPieces { card, pieces } => by_hand(plan, project, *card, pieces),
        Action::MakeOne => (
            "Make one set first".into(),
            vec![
                "Cut, fold and fit a single set before you cut for all.".into(),
                "Then say, at the sizes of each part, whether it slides too tight, just right or too loose: the rest is planned anew.".into(),
            ],
        ),
        Action::Fill => ("Fill the boxes".into(), vec![fill(plan).into()]),
        Action::SlideIn => {
            let seated = plan.holder.as_ref().and_then(|h| h.assembly.as_ref()).is_some_and(|a| !a.seats.is_empty());
            let line = if seated {
                "Each to its place, as the drawing shows, in the order of the set."
            } else {
                "Fronts to the lower wall, one beside the other."
            };
            let turned = plan.boxes.iter().filter(|b| b.assembly.is_some() && !b.facing.is_front());
            let turned = turned.map(|b| format!("{}: {} forward.", short(&b.name), facing(b.facing)).into());
            ("Slide the boxes into the holder".into(), std::iter::once(line.into()).chain(turned).collect())
        }
        _ => {
            let half = step.half.and_then(|nth| part?.half(step.part, nth));
            let (part, at) = if step.half.is_some() { (half.as_ref(), 0) } else { (part, step.part) };
            part.map_or_else(|| ("Step".into(), Vec::new()), |p| on_part(step, at, p, plan, spelling))
        }
    };
    let notes = project.own.notes.iter().filter(|n| n.kind == NoteKind::Note && n.at == step.site);
    let notes = notes.map(|n| n.text.clone()).collect();
    let place = place(step, plan, project);
    Said { place, title, lines, notes, caution: step.action.caution().map(caution) }
}

/// What a step is done to: where there are several parts, which of them.
#[must_use]
pub fn place(step: &Step, plan: &Plan, project: &Project) -> String {
    let part = plan.part(step.place);
    let name = names::place(project, step.place);
    let several = part.and_then(|p| p.assembly.as_ref()).map(|a| &a.parts).filter(|p| p.len() > 1);
    match several.and_then(|p| p.get(step.part)) {
        Some(p) if !matches!(step.action, Action::Join(_)) => format!("{name}: {}", p.name),
        _ => name,
    }
}

/// A box with nothing to close is only filled.
fn fill(plan: &Plan) -> &'static str {
    let parts = plan.boxes.iter().filter_map(|b| b.assembly.as_ref()).flat_map(|a| &a.parts);
    if parts.flat_map(|p| &p.moves).any(|m| m.name == MoveName::Close) {
        "Put the gift in, tuck the dust flaps, then the lid."
    } else {
        "Put the gift in."
    }
}

/// The words of a caution.
#[must_use]
pub const fn caution(caution: Caution) -> &'static str {
    match caution {
        Caution::Blade => "Blade: cut away from your hand, and cover the blade when you put it down.",
        Caution::Glue => {
            "Hot glue burns, from a low-temperature gun too; air the room for spray glue. Do not count on any glue being safe with food."
        }
        Caution::Contents => {
            "Put food in a food-grade bag first. No lit candle in or near paper. Nothing that fits into a cylinder of \
             31.7 mm for children under three (16 CFR 1501); no loose magnets or button cells for any child. Local \
             rules and the material's maker decide."
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
        sides(sheet.width, sheet.height, sheet.typed),
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

/// `Take piece A, 9 × 7 1/2 in.`: which blank is worked on from here.
fn take(step: &Step, plan: &Plan) -> Option<Phrase> {
    let blank = step.half.map_or(Becomes::Blank(step.part), |nth| Becomes::Half(step.part, nth));
    let piece = plan.pieces.iter().find(|p| p.place == step.place && p.becomes == blank)?;
    let size = sides(piece.width, piece.height, plan.system);
    Some(phrase![format!("Take piece {}, ", piece.letter()), size, "."])
}

fn on_part(step: &Step, at: usize, part: &Planned, plan: &Plan, spelling: Spelling) -> (Phrase, Vec<Phrase>) {
    let system = plan.system;
    let net = part.assembly.as_ref().and_then(|a| a.parts.get(at)).map(|p| &p.net);
    let (Some(net), Some(recipe)) = (net, part.recipes.get(at)) else {
        return ("Step".into(), Vec::new());
    };
    let pieces = |ids: &[u32]| plan.pieces.iter().filter(|p| ids.contains(&p.id)).cloned().collect::<Vec<_>>();
    match &step.action {
        Action::GlueJoint => (
            "Glue the two pieces together, flat".into(),
            vec![
                "Both lie outside up. Glue goes on the joint tab of piece 1.".into(),
                "Lay piece 2 onto it, its edge exactly on the score and its scores in line with those of piece 1; press."
                    .into(),
                "From here on the two are one blank.".into(),
            ],
        ),
        Action::Score(scores) => {
            let other = if scores.turned == Turned::AsItLies { recipe.height } else { recipe.width };
            let title = phrase!["Score at ", row(&scores.at, system)];
            let first = recipe.scores.iter().find(|s| !s.at.is_empty()) == Some(scores);
            let mut lines: Vec<Phrase> = first.then(|| take(step, plan)).flatten().into_iter().collect();
            lines.extend([recipe::lie(scores, other, system, spelling), recipe::last(scores, system)]);
            (title, lines)
        }
        Action::Mark(marks) => {
            let unscored = recipe.scores.iter().all(|s| s.at.is_empty());
            let mut lines: Vec<Phrase> = unscored.then(|| take(step, plan)).flatten().into_iter().collect();
            lines.push("The card lies as at first, outside up; mark lightly.".into());
            lines.extend(marks::places(marks, system));
            (marks::TITLE.into(), lines)
        }
        Action::ScoreMarks(marks) => {
            let mut lines = vec![marks::between(marks, Line::Score, system)];
            if !marks.scores.is_empty() {
                lines.push("With a ruler and a scoring tool, or by laying both marks on one groove.".into());
            }
            if marks.along(Line::Score).next().is_some() {
                lines.push("Cut one curve from firm card and run the scoring tool along it for all of them.".into());
            }
            (marks::SCORE.into(), lines)
        }
        Action::CutMarks(marks) => {
            (marks::CUT.into(), vec![marks::between(marks, Line::Cut, system), "What lies round the panels falls away.".into()])
        }
        Action::Cut(cuts) => {
            let mut lines: Vec<Phrase> = vec!["Turn the card back, as it lay first, outside up.".into()];
            lines.extend(cuts.iter().map(|c| recipe::cut(c, recipe, system)));
            ("Cut along the scores that are heavy in the drawing".into(), lines)
        }
        Action::ScoreShort(scores) => {
            let mut lines: Vec<Phrase> = vec!["Outside up, not right across: a panel lies on the same line.".into()];
            lines.extend(scores.iter().map(|c| recipe::cut(c, recipe, system)));
            ("Score these stretches, and no further".into(), lines)
        }
        Action::TakeCells(cells) => (recipe::fields(cells.len()), Vec::new()),
        Action::TakeOff(off) => ("Trim the flaps and corners".into(), recipe::take_offs(net, off, system)),
        Action::FoldAndBurnish => {
            let mut lines: Vec<Phrase> =
                vec!["Fold away from you, so that the ridge of each score ends inside. Then open it again.".into()];
            if net.folds().any(|c| c.fold <= Angle::ZERO) {
                lines.push("Those that are drawn with even dashes go the other way, towards you.".into());
            }
            ("Fold along every score and rub it flat".into(), lines)
        }
        Action::GlueMats(ids) => glue_mats(part, at, &pieces(ids), net, plan),
        Action::Join(join) => joined::join(join, part),
        Action::Notch(off) => (
            "Punch the thumb notch".into(),
            vec![
                recipe::take_offs(net, &[*off], system).pop().unwrap_or_default(),
                "In the middle of the upper edge, through card and mat together.".into(),
            ],
        ),
        Action::Punch(holes) => punch(holes, net, system),
        Action::Fold { index, name: MoveName::Together, glued } => {
            let shape = part.assembly.as_ref().and_then(|a| a.parts.get(at));
            shape.map_or_else(|| folding::fold(MoveName::Together, *glued), |p| folding::together(p, *index, *glued))
        }
        Action::Fold { name, glued, .. } => folding::fold(*name, *glued),
        Action::TryBoxesIn { inside } => (
            "Try the boxes in before the glue sets".into(),
            vec![
                phrase!["Inside it should measure ", inside_of(*inside, system), " (long × deep × high)."],
                "Corners square, walls upright: shift them now.".into(),
            ],
        ),
        Action::Extra { made, pieces: ids } => {
            let letters: Vec<String> = pieces(ids).iter().map(Piece::letter).collect();
            let assembly = part.assembly.as_ref();
            assembly.map_or_else(|| ("Step".into(), Vec::new()), |a| {
                let (title, lines) = extras::step(made, &letters.join(", "), a, system);
                (title.into(), lines)
            })
        }
        Action::Straps(ids) => {
            let mut lines: Vec<Phrase> = pieces(ids).iter().map(|p| names::piece(plan, p, system)).collect();
            lines.push("One across each end, with a turn of the same length onto front and back.".into());
            ("Glue the straps over the ends".into(), lines)
        }
        Action::CutSheets { .. } | Action::CutPieces { .. } | Action::MakeOne | Action::Fill | Action::SlideIn | Action::Own(_) => {
            ("Step".into(), Vec::new())
        }
    }
}

fn glue_mats(part: &Planned, index: usize, pieces: &[Piece], net: &Net, plan: &Plan) -> (Phrase, Vec<Phrase>) {
    let border = part.mats_on(index).next().map_or(Length::ZERO, |m| m.reveal);
    let mut lines: Vec<Phrase> = pieces
        .iter()
        .filter_map(|p| match &p.becomes {
            Becomes::Mat(_, ids) => Some(format!("{} on {}", p.letter(), names::panels(net, ids)).into()),
            _ => None,
        })
        .collect();
    if part.mats_on(index).any(Mat::is_shaped) {
        lines.push(
            "Cut the slanted ones to shape first: lay them under the panel, mark its corners, come in by the border."
                .into(),
        );
    }
    lines.push(phrase!["A border of ", length(border, plan.system), " shows on each side."]);
    ("Glue on the mats".into(), lines)
}

fn punch(holes: &[Hole], net: &Net, system: System) -> (Phrase, Vec<Phrase>) {
    let mut panels: Vec<PanelId> = holes.iter().map(|h| h.panel).collect();
    panels.dedup();
    let mut lines: Vec<Phrase> = Vec::new();
    if let Some(first) = holes.first() {
        let cell = net.panel(first.panel).cell;
        lines.push(phrase![
            format!("{}: holes of ", names::panels(net, &panels)),
            length(first.radius * 2, system),
            ", ",
            length(first.at.y - cell.min.y, system),
            " below the upper edge and ",
            length(first.at.x - cell.min.x, system),
            " from either side."
        ]);
    }
    lines.push("Through everything that lies there: card, mat and the edge that is turned in.".into());
    ("Punch the holes for the ribbon".into(), lines)
}

#[cfg(test)]
mod tests {
    use super::*;
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

    /// What goes in is cautioned where it goes in. The test cylinder for small parts is 1.25 in across, in the rule's own
    /// drawing 31.7 mm (16 CFR 1501.4, figure 1; for children under three, 1501.2).
    #[test]
    fn small_parts_are_cautioned_where_gifts_go_in() {
        let project = example().unwrap_or_else(|| panic!("the example reads"));
        let plan = crate::plan::plan(&project, System::Inch);
        let fill = plan.steps.iter().find(|s| matches!(s.action, Action::Fill));
        let said = fill.and_then(|s| step(s, &plan, &project, Spelling::Uk).caution).unwrap_or_default();
        let tenths = Length::inches(5, 4).nm() / 100_000;
        assert!(said.contains(&format!("{}.{} mm", tenths / 10, tenths % 10)), "{said}");
        for part in ["under three", "16 CFR 1501", "magnets", "button cells", "food-grade", "candle", "Local rules"] {
            assert!(said.contains(part), "{part} in {said}");
        }
    }

    #[test]
    fn the_first_box_is_scored_as_makers_say_it() {
        let project = example().unwrap_or_else(|| panic!("the example reads"));
        let plan = crate::plan::plan(&project, System::Inch);
        let scored = plan.steps.iter().filter(|s| matches!(s.action, Action::Score(_))).take(2);
        let said: Vec<String> = scored.map(|s| step(s, &plan, &project, Spelling::Us).title.to_string()).collect();
        assert_eq!(said, ["Score at 1 1/4, 4 1/4, 5 1/2 and 8 1/2 in", "Score at 1/2, 1 3/4 and 6 1/4 in"]);
        let first = plan.steps.iter().find(|s| matches!(s.action, Action::Score(_)));
        let lines = first.map(|s| step(s, &plan, &project, Spelling::Us).lines).unwrap_or_default();
        assert_eq!(lines[0].to_string(), "Take piece A, 9 × 7 1/2 in.");
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
