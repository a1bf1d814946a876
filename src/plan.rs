//! `plan`: from what the maker asks for to everything that the table needs.

use crate::fold::room::mats_add;
use crate::form::assembly::Size;
use crate::form::registry::{self, Form, Holds};
use crate::form::resolve::{Content, Setting};
use crate::make::part::Planned;
use crate::make::pieces::{Piece, pieces};
use crate::make::sheets::{CardSheets, findings as left_out, sheets};
use crate::make::step::Step;
use crate::make::steps::{cutting, steps};
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::mat::{Mat, mats};
use crate::net::recipe::Recipe;
use crate::project::bound::{self, Range};
use crate::project::finding::{Finding, Place, Weight, What};
use crate::project::request::{Card, Part, Project};
use crate::stock::thickness;

/// Everything that follows from a request in one system.
#[derive(Clone, PartialEq)]
pub struct Plan {
    /// The system that every measurement here is native to.
    pub system: System,
    /// The boxes, in the order of the request.
    pub boxes: Vec<Planned>,
    /// The holder, where one is asked for.
    pub holder: Option<Planned>,
    /// Every piece of card for all sets.
    pub pieces: Vec<Piece>,
    /// The sheets of each card.
    pub sheets: Vec<CardSheets>,
    /// What is done, in order.
    pub steps: Vec<Step>,
    /// What the maker should know.
    pub findings: Vec<Finding>,
}

/// The most pieces that one plan counts.
pub const PIECES: Range<u64> = Range::new(0, 5_000_000);

impl Plan {
    /// Boxes, then the holder.
    pub fn parts(&self) -> impl Iterator<Item = &Planned> {
        self.boxes.iter().chain(&self.holder)
    }

    /// The box or holder at `place`.
    #[must_use]
    pub fn part(&self, place: Place) -> Option<&Planned> {
        self.parts().find(|p| p.place == place)
    }

    /// True where something stops it.
    #[must_use]
    pub fn stopped(&self) -> bool {
        self.findings.iter().any(|f| f.weight == Weight::Stop)
    }
}

/// Plans `project` in `system`. Never fails: what cannot be planned is left out and said in the findings.
#[must_use]
pub fn plan(project: &Project, system: System) -> Plan {
    let mut plan = shapes(project, system);
    let sets = project.sets.clamp(bound::SETS.least, bound::SETS.most);
    plan.pieces = pieces(&plan.parts().collect::<Vec<_>>(), sets);
    // What was said of a card that cannot be planned with stands in the findings already.
    let usable: Vec<&Card> = project
        .cards
        .iter()
        .take(bound::CARDS.most as usize)
        .filter(|c| usable(c, &mut Vec::new()).is_some())
        .collect();
    plan.sheets = sheets(project, &usable, &plan.pieces);
    plan.steps = steps(&plan.boxes, plan.holder.as_ref(), &plan.pieces, &plan.sheets, sets);
    plan.findings.extend(plan.sheets.iter().flat_map(|s| left_out(s, &plan.pieces)));
    plan.findings.sort_by_key(|f| f.weight);
    plan
}

/// The plan with better layouts in the place of its own: sheets, the steps that cut them, and what they leave out. A
/// layout found for a job that is no longer asked changes nothing; all other steps stay as they are.
#[must_use]
pub fn relaid(plan: &Plan, found: &[CardSheets]) -> Plan {
    let mut plan = plan.clone();
    for sheets in &mut plan.sheets {
        let Some(better) = found.iter().find(|f| f.job == sheets.job && f.layout != sheets.layout) else {
            continue;
        };
        let said = left_out(sheets, &plan.pieces);
        plan.findings.retain(|f| !said.contains(f));
        plan.findings.extend(left_out(better, &plan.pieces));
        let place = Place::Card(sheets.job.card);
        let at = plan.steps.iter().position(|s| s.place == place).unwrap_or(plan.steps.len());
        plan.steps.retain(|s| s.place != place);
        plan.steps.splice(at..at, cutting(better));
        sheets.clone_from(better);
    }
    plan.findings.sort_by_key(|f| f.weight);
    plan
}

/// The first stage of [`plan`]: boxes, holder and what is to be said of them, without pieces, sheets and steps.
#[must_use]
pub fn shapes(project: &Project, system: System) -> Plan {
    let mut findings = Vec::new();
    let marks = marks(project, system, &mut findings);
    check_counts(project, &mut findings);
    check_trimmer(project, &mut findings);
    let cards = cards(project, &mut findings);
    let maker = Maker { project, system, marks, cards };
    let boxes: Vec<Planned> = project.boxes.iter().filter_map(|b| maker.boxed(b, &mut findings)).collect();
    let holder = project.holder.as_ref().and_then(|h| maker.held(h, &boxes, &mut findings));
    findings.sort_by_key(|f| f.weight);
    Plan { system, boxes, holder, pieces: Vec::new(), sheets: Vec::new(), steps: Vec::new(), findings }
}

/// The board's grooves and the trimmer's marks.
fn marks(project: &Project, system: System, findings: &mut Vec<Finding>) -> (Grid, Grid) {
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

fn outside(place: Place, input: &'static str, is: Length, range: Range<Length>) -> Finding {
    Finding {
        place,
        input: Some(input),
        weight: Weight::Stop,
        what: What::LengthOutside { is, least: range.least, most: range.most },
    }
}

fn count_outside(place: Place, input: &'static str, is: u32, range: Range<u32>) -> Option<Finding> {
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

fn check_trimmer(project: &Project, findings: &mut Vec<Finding>) {
    let t = &project.trimmer;
    for (typed, input, range) in [
        (&t.edge_trim, "edge-trim", bound::EDGE_TRIM),
        (&t.longest_cut, "longest-cut", bound::LONGEST_CUT),
        (&t.least_strip, "least-strip", bound::LEAST_STRIP),
    ] {
        if let Some(is) = typed.as_ref().map(|g| g.length())
            && !range.holds(is)
        {
            findings.push(outside(Place::Board, input, is, range));
        }
    }
}

fn check_counts(project: &Project, findings: &mut Vec<Finding>) {
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
struct Usable {
    id: u16,
    thickness: Length,
}

fn cards(project: &Project, findings: &mut Vec<Finding>) -> Vec<Usable> {
    project.cards.iter().take(bound::CARDS.most as usize).filter_map(|c| usable(c, findings)).collect()
}

fn usable(card: &Card, findings: &mut Vec<Finding>) -> Option<Usable> {
    let place = Place::Card(card.id);
    let mut bad = false;
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
    if let Some(t) = &card.thickness {
        check("thickness", t.length(), bound::THICKNESS);
    }
    if let Some(f) = count_outside(place, "grammage", card.grammage, bound::GRAMMAGE) {
        bad = true;
        findings.push(f);
    }
    for f in supply_outside(card) {
        bad = true;
        findings.push(f);
    }
    let estimate = thickness::estimated(card.grammage.min(bound::GRAMMAGE.most));
    if card.thickness.is_none() && !bad {
        findings.push(Finding {
            place,
            input: Some("thickness"),
            weight: Weight::Note,
            what: What::ThicknessEstimated { thickness: estimate },
        });
    }
    (!bad).then(|| Usable { id: card.id, thickness: card.thickness.as_ref().map_or(estimate, |t| t.length()) })
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

/// What every part is planned with.
struct Maker<'a> {
    project: &'a Project,
    system: System,
    marks: (Grid, Grid),
    cards: Vec<Usable>,
}

impl Maker<'_> {
    fn boxed(&self, part: &Part, findings: &mut Vec<Finding>) -> Option<Planned> {
        let place = Place::Box(part.id);
        if let Some(f) = count_outside(place, "count", part.count, bound::BOX_COUNT) {
            findings.push(f);
            return None;
        }
        self.shaped(part, place, Holds::Gifts, Vec::new(), findings)
    }

    fn held(&self, part: &Part, boxes: &[Planned], findings: &mut Vec<Finding>) -> Option<Planned> {
        let contents = boxes
            .iter()
            .filter(|b| b.assembly.is_some())
            .map(|b| Content { outside: b.outside, count: b.count })
            .collect();
        self.shaped(part, Place::Holder, Holds::Boxes, contents, findings)
    }

    fn thickness(&self, card: u16, place: Place, findings: &mut Vec<Finding>) -> Option<Length> {
        let found = self.cards.iter().find(|c| c.id == card).map(|c| c.thickness);
        if found.is_none() && self.project.card(card).is_none() {
            findings.push(stop(place, Some("card"), What::UnknownCard { card }));
        }
        found
    }

    fn shaped(
        &self,
        part: &Part,
        place: Place,
        holds: Holds,
        contents: Vec<Content>,
        findings: &mut Vec<Finding>,
    ) -> Option<Planned> {
        let Some(form) = registry::named(&part.form) else {
            let form = part.form.clone();
            findings.push(stop(place, Some("form"), What::UnknownForm { form }));
            return None;
        };
        if form.holds != holds {
            let form = part.form.clone();
            findings.push(stop(place, Some("form"), What::WrongKind { form }));
            return None;
        }
        let thickness = self.thickness(part.card, place, findings)?;
        let mat_card = part.mats.as_ref().map(|m| m.card);
        let mat_thickness = match mat_card {
            Some(card) => self.thickness(card, place, findings)?,
            None => Length::ZERO,
        };
        let setting =
            Setting { system: self.system, score: self.marks.0, cut: self.marks.1, thickness, mat_thickness, contents };
        let shaped = form.shaped(part, &setting);
        findings.extend(shaped.remarks.into_iter().map(|r| Finding {
            place,
            input: r.input,
            weight: r.weight,
            what: r.what,
        }));
        let mut planned = bare(part, place, form);
        planned.thickness = thickness;
        planned.mat_thickness = mat_thickness;
        planned.mat_card = mat_card;
        planned.used = shaped.used;
        planned.assembly = shaped.assembly;
        if let Some(assembly) = &planned.assembly {
            planned.recipes = assembly.parts.iter().map(|p| Recipe::of(&p.net)).collect();
            planned.mats = self.mats(part, place, &assembly.parts[0].net, findings);
            let panels: Vec<_> = planned.mats.iter().map(|m| m.panel).collect();
            let added = mats_add(&assembly.parts[0], &panels, mat_thickness);
            planned.outside = assembly.outside + added;
        }
        Some(planned)
    }

    fn mats(&self, part: &Part, place: Place, net: &crate::net::flat::Net, findings: &mut Vec<Finding>) -> Vec<Mat> {
        let Some(asked) = &part.mats else {
            return Vec::new();
        };
        let typed = asked.reveal.as_ref().map(|g| g.length());
        if let Some(is) = typed
            && !bound::REVEAL.holds(is)
        {
            findings.push(outside(place, "reveal", is, bound::REVEAL));
            return Vec::new();
        }
        let reveal = self.marks.1.nearest(typed.unwrap_or(bound::DEFAULT_REVEAL.of(self.system)));
        let reveal = reveal.max(self.marks.1.step());
        let (mats, too_small) = mats(net, reveal, &asked.off);
        for &panel in &too_small {
            findings.push(Finding {
                place,
                input: Some("reveal"),
                weight: Weight::Note,
                what: What::NoMat { panel: net.panel(panel).name, reveal },
            });
        }
        if mats.is_empty() && !too_small.is_empty() {
            findings.push(stop(place, Some("reveal"), What::RevealTooWide { reveal }));
        }
        mats
    }
}

fn stop(place: Place, input: Option<&'static str>, what: What) -> Finding {
    Finding { place, input, weight: Weight::Stop, what }
}

fn bare(part: &Part, place: Place, form: &'static Form) -> Planned {
    Planned {
        place,
        name: if part.name.trim().is_empty() { form.name.to_owned() } else { part.name.clone() },
        form,
        count: part.count.max(1),
        card: part.card,
        thickness: Length::ZERO,
        assembly: None,
        mats: Vec::new(),
        mat_card: None,
        mat_thickness: Length::ZERO,
        outside: Size::default(),
        recipes: Vec::new(),
        used: std::collections::BTreeMap::new(),
    }
}
