//! What is asked of tools, counts and cards, held against its range.

use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::project::bound::{self, Range};
use crate::project::finding::{Finding, Place, Weight, What};
use crate::project::fitting::Lesson;
use crate::project::request::{Card, Project};
use crate::stock::thickness;

/// The board's grooves and the trimmer's marks.
pub fn marks(project: &Project, system: System, findings: &mut Vec<Finding>) -> (Grid, Grid) {
    let (typed, key) = match system {
        System::Inch => (&project.board.inch_step, "inch-step"),
        System::Metric => (&project.board.metric_step, "metric-step"),
    };
    let default = bound::DEFAULT_SCORE_STEP.of(system);
    let step = typed.as_ref().map_or(default, |g| g.length());
    let score = if bound::SCORE_STEP.holds(step) {
        step
    } else {
        findings.push(outside(Place::Board, key, step, bound::SCORE_STEP));
        default
    };
    (Grid::every(score), Grid::every(bound::CUT_STEP.of(system)))
}

pub fn outside(place: Place, input: &'static str, is: Length, range: Range<Length>) -> Finding {
    Finding {
        place,
        input: Some(input),
        weight: Weight::Stop,
        what: What::LengthOutside { is, least: range.least, most: range.most },
    }
}

pub fn count_outside(place: Place, input: &'static str, is: u32, range: Range<u32>) -> Option<Finding> {
    (!range.holds(is)).then_some(Finding {
        place,
        input: Some(input),
        weight: Weight::Stop,
        what: What::CountOutside { is, least: range.least, most: range.most },
    })
}

fn number(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}

pub fn check_trimmer(project: &Project, findings: &mut Vec<Finding>) {
    let t = &project.trimmer;
    for (typed, input, range) in [
        (&t.edge_trim, "edge-trim", bound::EDGE_TRIM),
        (&t.longest_cut, "longest-cut", bound::LONGEST_CUT),
        (&t.least_strip, "least-strip", bound::LEAST_STRIP),
        (&t.score_error, "score-error", bound::HAND_ERROR),
        (&t.cut_error, "cut-error", bound::HAND_ERROR),
    ] {
        if let Some(is) = typed.as_ref().map(|g| g.length())
            && !range.holds(is)
        {
            findings.push(outside(Place::Board, input, is, range));
        }
    }
}

pub fn check_counts(project: &Project, findings: &mut Vec<Finding>) {
    findings.extend(count_outside(Place::Set, "spares", project.spares, bound::SPARES));
    findings.extend(count_outside(Place::Set, "sets", project.sets, bound::SETS));
    findings.extend(count_outside(Place::Set, "cards", number(project.cards.len()), bound::CARDS));
    if project.boxes.is_empty() {
        findings.push(Finding { place: Place::Set, input: Some("boxes"), weight: Weight::Stop, what: What::NoBoxes });
    } else {
        findings.extend(count_outside(Place::Set, "boxes", number(project.boxes.len()), bound::BOX_KINDS));
    }
    let twice = |place: fn(u16) -> Place, ids: &[u16], findings: &mut Vec<Finding>| {
        for (i, &number) in ids.iter().enumerate() {
            if ids[..i].contains(&number) {
                findings.push(Finding {
                    place: place(number),
                    input: None,
                    weight: Weight::Stop,
                    what: What::NumberTwice { number },
                });
            }
        }
    };
    let ids: Vec<u16> = project.boxes.iter().map(|b| b.id).collect();
    twice(Place::Box, &ids, findings);
    let ids: Vec<u16> = project.cards.iter().map(|c| c.id).collect();
    twice(Place::Card, &ids, findings);
}

/// A card that can be planned with.
#[derive(Clone, PartialEq, Eq)]
pub struct Usable {
    pub id: u16,
    pub thickness: Length,
    pub learned: Length,
}

pub fn cards(project: &Project, findings: &mut Vec<Finding>) -> Vec<Usable> {
    project.cards.iter().take(bound::CARDS.most as usize).filter_map(|c| usable(c, findings)).collect()
}

pub fn usable(card: &Card, findings: &mut Vec<Finding>) -> Option<Usable> {
    let place = Place::Card(card.id);
    let mut bad = false;
    let grams = card.grammage.grams();
    let mut check = |input, is, range: Range<Length>| {
        if !range.holds(is) {
            bad = true;
            findings.push(outside(place, input, is, range));
        }
    };
    check("sheet-width", card.sheet_width.length(), bound::SHEET_SIDE);
    check("sheet-height", card.sheet_height.length(), bound::SHEET_SIDE);
    for m in &card.more_sheets {
        check("more-sheets", m.width.length(), bound::SHEET_SIDE);
        check("more-sheets", m.height.length(), bound::SHEET_SIDE);
    }
    let measured = card.thickness.as_ref().map(|t| t.length().scaled(1, i64::from(card.stack.max(1))));
    if let Some(t) = measured {
        check("thickness", t, bound::THICKNESS);
    }
    let learned = card.lesson.as_ref().map_or(Length::ZERO, Lesson::wider);
    if !bound::LESSON.holds(learned.abs()) {
        bad = true;
        let (input, weight) = (Some("lesson"), Weight::Stop);
        findings.push(Finding { place, input, weight, what: What::LessonTooLarge });
    }
    if let Some(f) = count_outside(place, "stack", card.stack, bound::STACK) {
        bad = true;
        findings.push(f);
    }
    if !bound::GRAMMAGE.holds(grams) {
        bad = true;
        let Range { least, most } = bound::GRAMMAGE;
        let (input, weight) = (Some("grammage"), Weight::Stop);
        findings.push(Finding { place, input, weight, what: What::WeightOutside { least, most } });
    }
    for f in supply_outside(card) {
        bad = true;
        findings.push(f);
    }
    let estimate = thickness::estimated(grams.min(bound::GRAMMAGE.most));
    if card.thickness.is_none() && !bad {
        findings.push(Finding {
            place,
            input: Some("thickness"),
            weight: Weight::Note,
            what: What::ThicknessEstimated { thickness: estimate },
        });
    }
    (!bad).then(|| Usable { id: card.id, thickness: measured.unwrap_or(estimate), learned })
}

/// What is outside its range in what was said of a card's sheets.
fn supply_outside(card: &Card) -> impl Iterator<Item = Finding> {
    let place = Place::Card(card.id);
    let more = number(card.more_sheets.len());
    let first = std::iter::once((card.supply, "have", "price"));
    let all = first.chain(card.more_sheets.iter().map(|m| (m.supply, "more-sheets", "more-sheets")));
    all.flat_map(move |(s, have, price)| {
        [
            count_outside(place, have, s.have, bound::HAVE),
            count_outside(place, price, s.price.unwrap_or(0), bound::SHEET_PRICE),
        ]
    })
    .chain([count_outside(place, "more-sheets", more, bound::MORE_SHEETS)])
    .flatten()
}
