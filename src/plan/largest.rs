//! What comes out of the sheets at hand: the largest box, and the scale at which the whole set does.

use super::checks::{marks, usable};
use super::stages::Around;
use super::{Known, Maker, Plan, Planning, Progress, joints, shapes};
use crate::assembly::parts::Size;
use crate::cut::layout::Why;
use crate::fit::largest::{Grow, Largest, Usable, largest as grown, sized};
use crate::form::registry;
use crate::form::resolve::Wants;
use crate::make::part::Planned;
use crate::make::pieces::{Becomes, pieces};
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::finding::{Finding, Place, Weight, What};
use crate::project::request::{Card, Lie, Part, Project};

/// The box of this number as large as the sheets of its card allow, with that size typed. Nothing where no size comes
/// out of them, or where its form is not sized by width, depth and height.
#[must_use]
pub fn largest(project: &Project, system: System, id: u16, grow: Grow) -> Option<(Largest, Part)> {
    larger(project, &shapes(project, system), id, grow)
}

/// From the size that it has in `plan`, so that a box that follows its gifts grows from them.
fn larger(project: &Project, plan: &Plan, id: u16, grow: Grow) -> Option<(Largest, Part)> {
    let system = plan.system;
    let now = plan.part(Place::Box(id))?.assembly.as_ref()?.finished;
    let around = Around::of(project, system, &mut Vec::new());
    let maker = Maker { project, around: &around, wants: Wants::Sizes, heights: &[] };
    let part = project.boxes.iter().find(|b| b.id == id)?;
    let part = &sized(part, now, |l| Given::of(l, system))?;
    let form = registry::named(&part.form)?;
    let setting = maker.setting(part, Place::Box(id), Vec::new(), &mut Vec::new())?;
    let sheets = sheets_of(project, project.card(part.card)?);
    let found = sheets.into_iter().filter_map(|sheet| grown(part, form, &setting, sheet, grow));
    let best = found.reduce(|a, b| if b.per_mille > a.per_mille { b } else { a })?;
    Some((best, sized(part, best.finished, |l| Given::of(l, system))?))
}

/// The sheets of a card, edges trimmed off.
fn sheets_of(project: &Project, card: &Card) -> Vec<Usable> {
    let trim = project.trimmer.edge_trim.as_ref().map_or(Length::ZERO, Given::length) * 2;
    let more = card.more_sheets.iter().map(|m| (&m.width, &m.height));
    let all = std::iter::once((&card.sheet_width, &card.sheet_height)).chain(more);
    all.map(|(w, h)| Usable { width: w.length() - trim, height: h.length() - trim, lie: card.lie }).collect()
}

/// What mends it where pieces are larger than their sheets, looked for in counted steps.
pub struct Curing {
    /// The boxes and the holder of which a piece is too large.
    large: Vec<Place>,
    cures: Vec<Finding>,
    stage: Stage,
    /// The changed set that is tried, on its way.
    trial: Option<Planning>,
}

/// What is looked for next.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stage {
    /// The largest box that comes out, for this one of the large.
    Boxes(usize),
    /// Whether this one comes out in two pieces.
    Joints(usize),
    /// Whether all come out turned.
    Turned,
    /// The scale at which all come out: where they do, and where not, in percent.
    Scale(i64, i64),
    Done,
}

impl Curing {
    /// Nothing is looked for yet.
    pub fn begin(plan: &Plan) -> Self {
        let mut large: Vec<Place> = Vec::new();
        for sheets in &plan.sheets {
            for out in sheets.layout.left_out.iter().filter(|out| out.why == Why::TooLarge) {
                let made = plan.pieces.iter().find(|p| p.id == out.piece);
                // A mat is as large as its panel, which is smaller than the blank.
                if let Some(piece) = made.filter(|p| {
                    !matches!(p.becomes, Becomes::Mat(..) | Becomes::Extra(..)) && !large.contains(&p.place)
                }) {
                    large.push(piece.place);
                }
            }
        }
        let stage = if large.is_empty() { Stage::Done } else { Stage::Boxes(0) };
        Self { large, cures: Vec::new(), stage, trial: None }
    }

    /// Takes one step; all that was found, once there is no more to look for.
    pub fn step(&mut self, project: &Project, plan: &Plan) -> Option<Vec<Finding>> {
        self.stage = match self.stage {
            Stage::Boxes(nth) => match self.large.get(nth) {
                Some(&place) => {
                    self.cures.extend(smaller(project, plan, place));
                    Stage::Boxes(nth + 1)
                }
                None => Stage::Joints(0),
            },
            Stage::Joints(nth) => match self.large.get(nth) {
                Some(&place) => {
                    self.cures.extend(joined(project, plan, place));
                    Stage::Joints(nth + 1)
                }
                None if project.cards.iter().any(|c| c.lie == Lie::Upright) => Stage::Turned,
                None => Stage::Scale(0, 100),
            },
            Stage::Turned => match self.comes(plan, || turned(project)) {
                None => Stage::Turned,
                Some(comes) => {
                    self.cures.extend(comes.then(|| note(Place::Set, What::FitsTurned)));
                    Stage::Scale(0, 100)
                }
            },
            Stage::Scale(does, not) if not - does <= 1 => {
                self.cures.extend((does > 0).then(|| note(Place::Set, What::SetFitsAt { percent: does })));
                Stage::Done
            }
            // It falls groove by groove, so that a smaller one is taken to do as well where a larger one does.
            Stage::Scale(does, not) => {
                let middle = (does + not) / 2;
                match self.comes(plan, || scaled(project, plan, middle)) {
                    None => Stage::Scale(does, not),
                    Some(true) => Stage::Scale(middle, not),
                    Some(false) => Stage::Scale(does, middle),
                }
            }
            Stage::Done => return Some(std::mem::take(&mut self.cures)),
        };
        None
    }

    /// Whether every part of a changed set can be made and comes out of a sheet of its card; nothing while it is tried.
    fn comes(&mut self, plan: &Plan, changed: impl FnOnce() -> Project) -> Option<bool> {
        let trial = self.trial.get_or_insert_with(|| Planning::begin(changed(), plan.system, Wants::Unproved));
        if trial.step(&mut Known::default()) == Progress::More {
            return None;
        }
        let trial = self.trial.take()?;
        let shaped = trial.plan();
        Some(!shaped.stopped() && shaped.parts().all(|part| out(trial.project(), part)))
    }
}

fn note(place: Place, what: What) -> Finding {
    Finding { place, input: None, weight: Weight::Note, what }
}

/// The largest box that comes out of the sheets in place of the one at `place`.
fn smaller(project: &Project, plan: &Plan, place: Place) -> Option<Finding> {
    let Place::Box(id) = place else {
        return None;
    };
    let (Largest { finished, per_mille }, _) = larger(project, plan, id, Grow::InProportion)?;
    let Size { width, depth, height } = finished;
    Some(note(place, What::LargestThatFits { width, depth, height, percent: per_mille / 10 }))
}

/// That the part at `place` comes out in two pieces, where it does.
fn joined(project: &Project, plan: &Plan, place: Place) -> Option<Finding> {
    let grooves = marks(project, plan.system, &mut Vec::new()).0;
    let part = plan.part(place)?;
    let joints = joints(part.assembly.as_ref()?, grooves, plan.system);
    let comes = joints.iter().any(Option::is_some) && out(project, &Planned { joints, ..part.clone() });
    comes.then(|| note(place, What::FitsJoined))
}

/// The same set with pieces that may lie either way on their sheets.
fn turned(project: &Project) -> Project {
    changed(project, |p| p.cards.iter_mut().for_each(|c| c.lie = Lie::Either))
}

/// The same set with every box so large, in percent of what it is in `plan`.
fn scaled(project: &Project, plan: &Plan, percent: i64) -> Project {
    changed(project, |p| {
        for part in &mut p.boxes {
            let planned = plan.part(Place::Box(part.id)).and_then(|p| p.assembly.as_ref());
            let size = planned.map(|a| a.finished);
            let to = |l: Length| l.scaled(percent, 100);
            let size = size.map(|s| Size { width: to(s.width), depth: to(s.depth), height: to(s.height) });
            if let Some(smaller) = size.and_then(|s| sized(part, s, |l| Given::of(l, plan.system))) {
                *part = smaller;
            }
        }
    })
}

fn changed(project: &Project, change: impl FnOnce(&mut Project)) -> Project {
    let mut other = project.clone();
    change(&mut other);
    other
}

/// Whether every piece of a part but its mats, which are smaller, comes out of a sheet of its card.
fn out(project: &Project, part: &Planned) -> bool {
    let card = |id| {
        let all = project.cards.iter().take(bound::CARDS.most as usize);
        all.filter(|c| usable(c, &mut Vec::new()).is_some()).find(|c| c.id == id)
    };
    let pieces = pieces(&[part], 1);
    let mut large = pieces.iter().filter(|p| !matches!(p.becomes, Becomes::Mat(..) | Becomes::Extra(..)));
    part.assembly.is_some()
        && large
            .all(|p| card(p.card).is_some_and(|c| sheets_of(project, c).iter().any(|s| s.holds((p.width, p.height)))))
}
