//! What comes out of the sheets at hand: the largest box, and the scale at which the whole set does.

use super::checks::{marks, usable};
use super::{Maker, Plan, joints, shapes};
use crate::assembly::parts::Size;
use crate::cut::layout::Why;
use crate::fit::largest::{Grow, Largest, Usable, largest as grown, sized};
use crate::form::registry;
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
    let maker = Maker::of(project, system, &mut Vec::new());
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

/// What mends it where pieces are larger than their sheets.
pub(super) fn cures(project: &Project, plan: &Plan) -> Vec<Finding> {
    let mut cures = Vec::new();
    let note = |place, what| Finding { place, input: None, weight: Weight::Note, what };
    let mut large: Vec<Place> = Vec::new();
    for sheets in &plan.sheets {
        for out in sheets.layout.left_out.iter().filter(|out| out.why == Why::TooLarge) {
            let made = plan.pieces.iter().find(|p| p.id == out.piece);
            // A mat is as large as its panel, which is smaller than the blank.
            if let Some(piece) = made
                .filter(|p| !matches!(p.becomes, Becomes::Mat(..) | Becomes::Extra(..)) && !large.contains(&p.place))
            {
                large.push(piece.place);
            }
        }
    }
    if large.is_empty() {
        return cures;
    }
    for &place in &large {
        if let Place::Box(id) = place
            && let Some((Largest { finished, per_mille }, _)) = larger(project, plan, id, Grow::InProportion)
        {
            let Size { width, depth, height } = finished;
            let percent = per_mille / 10;
            cures.push(note(place, What::LargestThatFits { width, depth, height, percent }));
        }
    }
    let grooves = marks(project, plan.system, &mut Vec::new()).0;
    for &place in &large {
        let Some((part, assembly)) = plan.part(place).and_then(|p| Some((p, p.assembly.as_ref()?))) else {
            continue;
        };
        let joints = joints(assembly, grooves, plan.system);
        if joints.iter().any(Option::is_some) && out(project, &Planned { joints, ..part.clone() }) {
            cures.push(note(place, What::FitsJoined));
        }
    }
    let turned = |p: &mut Project| p.cards.iter_mut().for_each(|c| c.lie = Lie::Either);
    if project.cards.iter().any(|c| c.lie == Lie::Upright) && comes(&changed(project, turned), plan.system) {
        cures.push(note(Place::Set, What::FitsTurned));
    }
    if let Some(percent) = scale(project, plan) {
        cures.push(note(Place::Set, What::SetFitsAt { percent }));
    }
    cures
}

/// The greatest scale in percent at which every part comes out of its sheets, holder included. It falls groove by
/// groove, so that a smaller one is taken to do as well where a larger one does.
fn scale(project: &Project, plan: &Plan) -> Option<i64> {
    let scaled = |percent: i64| {
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
    };
    let (mut does, mut not) = (0, 100);
    while not - does > 1 {
        let middle = (does + not) / 2;
        if comes(&scaled(middle), plan.system) { does = middle } else { not = middle }
    }
    (does > 0).then_some(does)
}

fn changed(project: &Project, change: impl FnOnce(&mut Project)) -> Project {
    let mut other = project.clone();
    change(&mut other);
    other
}

/// Whether every part can be made and comes out of a sheet of its card.
fn comes(project: &Project, system: System) -> bool {
    let plan = shapes(project, system);
    !plan.stopped() && plan.parts().all(|part| out(project, part))
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
