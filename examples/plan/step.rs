//! A step of the making: its key, what it is, its measurements, and the words of the page.

use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::{Value, json};
use snugfold::make::pieces::Piece;
use snugfold::make::step::{self, Action};
use snugfold::net::arc::Line;
use snugfold::plan::Plan;
use snugfold::project::request::Project;
use snugfold::say;
use snugfold::say::spelling::Spelling;

use super::frame::{kind, measures, place, room};
use super::part::edge;

/// One step.
#[derive(Serialize)]
pub struct Step {
    key: String,
    site: String,
    place: String,
    /// Which of its blanks.
    part: usize,
    times: u64,
    kind: String,
    caution: Option<String>,
    values: BTreeMap<&'static str, Value>,
    said: Vec<String>,
}

impl Step {
    /// A step of `plan`.
    pub fn of(step: &step::Step, plan: &Plan, project: &Project) -> Self {
        let said = say::step::step(step, plan, project, Spelling::default());
        let lines = said.lines.iter().map(ToString::to_string);
        Self {
            key: step.key.clone(),
            site: step.site.clone(),
            place: place(step.place),
            part: step.part,
            times: step.times,
            kind: kind(&step.action),
            caution: step.action.caution().map(|c| kind(&c)),
            values: values(&step.action, plan).into_iter().collect(),
            said: [said.title.to_string()].into_iter().chain(lines).collect(),
        }
    }
}

fn values(action: &Action, plan: &Plan) -> Vec<(&'static str, Value)> {
    let letters = |ids: &[u32]| {
        let pieces = plan.pieces.iter().filter(|p| ids.contains(&p.id));
        json!(pieces.map(Piece::letter).collect::<Vec<_>>())
    };
    match action {
        Action::CutSheets { card, pattern } => vec![("card", json!(card)), ("pattern", json!(pattern))],
        Action::CutPieces { card, pieces } => {
            vec![("card", json!(card)), ("pieces", letters(pieces))]
        }
        Action::Score(scores) => {
            vec![("from", json!(edge(scores.turned))), ("at", json!(measures(&scores.at, plan.system)))]
        }
        Action::Mark(m) => vec![("places", json!(m.places.len()))],
        Action::ScoreMarks(m) => vec![("scores", json!(m.scores.len() + m.along(Line::Score).count()))],
        Action::CutMarks(m) => vec![("cuts", json!(m.cuts.len() + m.along(Line::Cut).count()))],
        Action::Extra { made, pieces } => vec![("what", json!(kind(made))), ("pieces", letters(pieces))],
        Action::Cut(cuts) | Action::ScoreShort(cuts) => vec![("cuts", json!(cuts.len()))],
        Action::TakeCells(cells) => vec![("cells", json!(cells.len()))],
        Action::TakeOff(off) => vec![("places", json!(off.len()))],
        Action::GlueMats(pieces) | Action::Straps(pieces) => vec![("pieces", letters(pieces))],
        Action::Fold { index, name, glued } => {
            vec![("index", json!(index)), ("move", json!(kind(name))), ("glued", json!(glued))]
        }
        Action::Join(join) => vec![("join", json!(kind(&join.name)))],
        Action::TryBoxesIn { inside } => vec![("inside", json!(room(*inside, plan.system)))],
        Action::Punch(holes) => vec![("holes", json!(holes.len()))],
        Action::Own(own) => vec![("text", json!(own.text))],
        Action::GlueJoint
        | Action::FoldAndBurnish
        | Action::Notch(_)
        | Action::MakeOne
        | Action::Fill
        | Action::SlideIn => vec![],
    }
}
