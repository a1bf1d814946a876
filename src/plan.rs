//! `plan`: from what the maker asks for to everything that the table needs.

use crate::assembly::parts::{Assembly, Footprint, Size};
use crate::fit::gifts;
use crate::fit::strength::{SEEN, carries, sag};
use crate::fold::room::mats_add;
use crate::form::registry::{self, Form, Holds};
use crate::form::resolve::{Content, Setting, Wants};
use crate::make::extras::{Made, Round};
use crate::make::layers::worn;
use crate::make::part::{Joined, Planned};
use crate::make::pieces::Piece;
use crate::make::sheets::CardSheets;
use crate::make::step::Step;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::mat::{Mat, mats};
use crate::net::recipe::Recipe;
use crate::project::bound::{self, Range};
use crate::project::extra::ExtraKind;
use crate::project::finding::{Finding, Place, Weight, What};
use crate::project::fitting::Facing;
use crate::project::request::{Part, Project};

mod at_hand;
mod bench;
mod checks;
mod largest;
mod relaid;
mod stages;
mod taught;

pub use at_hand::at_hand;
pub use bench::{bench, copied};
pub use largest::largest;
pub use relaid::relaid;
pub use stages::{Known, Planning, Progress};
pub use taught::{Taught, for_one, taught};

use checks::{count_outside, outside};
use stages::Around;

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
    /// Before anything is planned.
    #[must_use]
    pub const fn nothing(system: System) -> Self {
        Self {
            system,
            boxes: Vec::new(),
            holder: None,
            pieces: Vec::new(),
            sheets: Vec::new(),
            steps: Vec::new(),
            findings: Vec::new(),
        }
    }

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
    Planning::begin(project.clone(), system, Wants::Everything).to_the_end()
}

/// The first stage of [`plan`]: boxes, holder and what is to be said of them, without pieces, sheets and steps.
#[must_use]
pub fn shapes(project: &Project, system: System) -> Plan {
    Planning::begin(project.clone(), system, Wants::Unproved).to_the_shapes(&mut Known::default())
}

/// What every part is planned with.
struct Maker<'a> {
    project: &'a Project,
    around: &'a Around,
    wants: Wants,
    /// Of the boxes that do not follow their gifts.
    heights: &'a [Length],
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
            .filter_map(|b| b.assembly.as_ref().map(|a| (b, a)))
            .map(|(b, a)| {
                // Turned, it covers something else.
                let footprint = if b.facing == Facing::Front { a.footprint } else { Footprint::Block };
                Content { outside: b.stood(), footprint, count: b.count }
            })
            .collect();
        self.shaped(part, Place::Holder, Holds::Boxes, contents, findings)
    }

    fn thickness(&self, card: u16, place: Place, findings: &mut Vec<Finding>) -> Option<Length> {
        let found = self.around.cards.iter().find(|c| c.id == card).map(|c| c.thickness);
        if found.is_none() && self.project.card(card).is_none() {
            findings.push(stop(place, Some("card"), What::UnknownCard { card }));
        }
        found
    }

    /// What the form of `part` is asked in.
    fn setting(
        &self,
        part: &Part,
        place: Place,
        contents: Vec<Content>,
        findings: &mut Vec<Finding>,
    ) -> Option<Setting> {
        let thickness = self.thickness(part.card, place, findings)?;
        let mat_thickness = match &part.mats {
            Some(mats) => {
                let layers = part.extras.iter().filter(|e| e.kind == ExtraKind::Layer);
                let cards = layers.map(|e| e.card.unwrap_or(part.card));
                let each: Vec<Length> = std::iter::once(mats.card)
                    .chain(cards)
                    .map(|c| self.thickness(c, place, findings))
                    .collect::<Option<_>>()?;
                each.into_iter().sum()
            }
            None => Length::ZERO,
        };
        let (score, cut) = self.around.marks;
        let learned = self.around.cards.iter().find(|c| c.id == part.card).map_or(Length::ZERO, |c| c.learned);
        Some(Setting { system: self.around.system, score, cut, thickness, mat_thickness, learned, contents })
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
        let setting = self.setting(part, place, contents, findings)?;
        let lining = self.lining(part);
        let filled = gifts::filled(part, form, &setting, lining, self.heights);
        let shaped = match filled.shaped {
            Some(shaped) => shaped,
            None if filled.stopped => Default::default(),
            None => form.wanted(part, &setting, self.wants),
        };
        findings.extend(filled.remarks.into_iter().chain(shaped.remarks).map(|r| Finding {
            place,
            input: r.input,
            weight: r.weight,
            what: r.what,
        }));
        let mut planned = bare(part, place, form);
        planned.thickness = setting.thickness;
        planned.mat_thickness = setting.mat_thickness;
        planned.mat_card = part.mats.as_ref().map(|m| m.card);
        planned.used = shaped.used;
        planned.assembly = shaped.assembly;
        if let Some(assembly) = &planned.assembly {
            planned.recipes = assembly.parts.iter().map(|p| Recipe::of(&p.net)).collect();
            planned.joints = self.joints(part, place, assembly, findings);
            planned.mats = self.mats(part, place, assembly, findings);
            let panels: Vec<_> = planned.mats.iter().map(|m| (m.part, m.panel)).collect();
            let added = mats_add(assembly, &panels, setting.mat_thickness);
            planned.outside = assembly.outside + added;
            planned.lining = lining;
            planned.extras = self.extras(part, place, assembly, &planned.mats, findings);
            for made in planned.extras.iter().filter(|m| matches!(m, Made::Label { .. })) {
                let card = made.raises().unwrap_or(part.card);
                let thick = self.thickness(card, place, findings).unwrap_or_default();
                planned.outside = planned.outside + mats_add(assembly, &made.on(), thick);
            }
            findings.extend(worn(&planned).into_iter().map(|what| Finding {
                place,
                input: None,
                weight: Weight::Caution,
                what,
            }));
            let grams = part.gifts.grams();
            let carries = carries(assembly.inside, setting.thickness);
            if grams > carries {
                let what = What::WallsBuckle { carries, grams };
                findings.push(Finding { place, input: Some("gifts"), weight: Weight::Caution, what });
            }
            let sag = sag([assembly.inside.width, assembly.inside.depth], setting.thickness, grams);
            if sag > SEEN {
                let what = What::BaseSags { sag, grams };
                findings.push(Finding { place, input: Some("gifts"), weight: Weight::Caution, what });
            }
        }
        Some(planned)
    }

    /// The parts that are cut in two, where that is asked for.
    /// What liners and panes take from the inside: a liner from the height, a pane from wherever it is.
    fn lining(&self, part: &Part) -> Size {
        let thick = |card: u16| self.around.cards.iter().find(|c| c.id == card).map_or(Length::ZERO, |c| c.thickness);
        part.extras.iter().fold(Size::default(), |sum, e| match (e.kind, e.card) {
            (ExtraKind::Liner, card) => sum + Size { height: thick(card.unwrap_or(part.card)), ..Size::default() },
            (ExtraKind::Window, Some(card)) => {
                let t = thick(card);
                sum + Size { width: t, depth: t, height: t }
            }
            _ => sum,
        })
    }

    /// What is added, and what cannot be.
    fn extras(&self, part: &Part, place: Place, a: &Assembly, mats: &[Mat], findings: &mut Vec<Finding>) -> Vec<Made> {
        let round = Round { assembly: a, mats, card: part.card, system: self.around.system };
        let mut all = Vec::new();
        for extra in &part.extras {
            let card = extra.card.filter(|c| self.around.cards.iter().all(|u| u.id != *c));
            match card.map_or_else(|| round.make(extra), |card| Err(What::UnknownCard { card })) {
                Ok(made) => all.push(made),
                Err(what) => findings.push(Finding { place, input: Some("extras"), weight: Weight::Caution, what }),
            }
        }
        all
    }

    fn joints(&self, part: &Part, place: Place, a: &Assembly, findings: &mut Vec<Finding>) -> Vec<Option<Joined>> {
        if part.blank.is_whole() {
            return Vec::new();
        }
        let joints = joints(a, self.around.marks.0, self.around.system);
        if joints.iter().all(Option::is_none) {
            findings.push(Finding { place, input: Some("blank"), weight: Weight::Caution, what: What::NoJoint });
        }
        joints
    }

    fn mats(&self, part: &Part, place: Place, assembly: &Assembly, findings: &mut Vec<Finding>) -> Vec<Mat> {
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
        let reveal = self.around.marks.1.nearest(typed.unwrap_or(bound::DEFAULT_REVEAL.of(self.around.system)));
        let reveal = reveal.max(self.around.marks.1.step());
        let mut all = Vec::new();
        let mut too_small = 0;
        for (i, p) in assembly.parts.iter().enumerate() {
            let off: Vec<String> = p
                .net
                .panels
                .iter()
                .map(|p| p.name.to_owned())
                .filter(|n| asked.off.contains(&assembly.face(i, n)))
                .collect();
            let (some, none) = mats(&p.net, i, reveal, &off);
            all.extend(some);
            too_small += none.len();
            findings.extend(none.into_iter().map(|panel| Finding {
                place,
                input: Some("reveal"),
                weight: Weight::Note,
                what: What::NoMat { panel: p.net.panel(panel).name, reveal },
            }));
        }
        if all.is_empty() && too_small > 0 {
            findings.push(stop(place, Some("reveal"), What::RevealTooWide { reveal }));
        }
        all
    }
}

/// The parts that can be cut in two. What slides in another part is not: a joint makes a wall thicker.
fn joints(assembly: &Assembly, grooves: Grid, system: System) -> Vec<Option<Joined>> {
    let lap = grooves.up(bound::JOINT.of(system));
    let parts = if assembly.joins.is_empty() { assembly.parts.as_slice() } else { &[] };
    parts.iter().map(|p| p.net.joint(lap).map(Joined::of)).collect()
}

fn stop(place: Place, input: Option<&'static str>, what: What) -> Finding {
    Finding { place, input, weight: Weight::Stop, what }
}

fn bare(part: &Part, place: Place, form: &'static Form) -> Planned {
    Planned {
        place,
        name: part.called().unwrap_or(form.name).to_owned(),
        form,
        count: part.count.max(1),
        card: part.card,
        thickness: Length::ZERO,
        assembly: None,
        mats: Vec::new(),
        extras: Vec::new(),
        lining: Size::default(),
        mat_card: None,
        mat_thickness: Length::ZERO,
        outside: Size::default(),
        facing: part.facing,
        joints: Vec::new(),
        recipes: Vec::new(),
        used: Default::default(),
    }
}
