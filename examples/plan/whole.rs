//! The whole plan.

use serde::Serialize;
use snugfold::make::pieces::{Becomes, Piece};
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan};
use snugfold::project::request::Project;
use snugfold::say::names;

use super::finding::Finding;
use super::frame::{Sides, place, sides};
use super::part::Part;
use super::sheet::Card;
use super::step::Step;

/// A plan as it is printed.
#[derive(Serialize)]
pub struct Whole {
    name: String,
    system: System,
    sets: u32,
    stopped: bool,
    findings: Vec<Finding>,
    parts: Vec<Part>,
    pieces: Vec<PieceLine>,
    sheets: Vec<Card>,
    steps: Vec<Step>,
}

#[derive(Serialize)]
struct PieceLine {
    letter: String,
    place: String,
    becomes: &'static str,
    said: String,
    card: u16,
    size: Sides,
    each: u32,
    count: u64,
}

impl Whole {
    /// Plans `project` in `system`.
    pub fn of(project: &Project, system: System) -> Self {
        let plan = plan(project, system);
        let findings = plan.findings.iter();
        let steps = plan.steps.iter();
        Self {
            name: project.name.clone(),
            system,
            sets: project.sets,
            stopped: plan.stopped(),
            findings: findings.map(|f| Finding::of(f, system)).collect(),
            parts: plan.parts().map(|p| Part::of(p, system)).collect(),
            pieces: plan.pieces.iter().map(|p| piece(p, &plan)).collect(),
            sheets: plan.sheets.iter().map(|s| Card::of(s, &plan)).collect(),
            steps: steps.map(|s| Step::of(s, &plan, project)).collect(),
        }
    }
}

fn piece(piece: &Piece, plan: &Plan) -> PieceLine {
    PieceLine {
        letter: piece.letter(),
        place: place(piece.place),
        becomes: match piece.becomes {
            Becomes::Blank(_) => "blank",
            Becomes::Half(..) => "half",
            Becomes::Mat(..) => "mat",
            Becomes::Trim(_) => "trim",
            Becomes::Extra(..) => "extra",
        },
        said: names::becomes(plan, piece),
        card: piece.card,
        size: sides(piece.width, piece.height, plan.system),
        each: piece.each,
        count: piece.count,
    }
}
