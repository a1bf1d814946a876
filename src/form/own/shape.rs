//! From a drawn form to its assembly, and what is to be said of it.

use std::collections::BTreeMap;

use super::build::{Built, Measures, build, stance};
use super::drawn::{At, Drawn, SizeName, Stance};
use super::met::{Folded, NEAR};
use super::order::moves;
use super::read::read;
use super::settle::settle;
use super::start::START;
use super::words;
use crate::assembly::moves::{Move, Way};
use crate::assembly::parts::{Assembly, Part, Root, Size};
use crate::fold::prove::{Fault, part_faults};
use crate::fold::room::{Measured, inside_of, outside_of};
use crate::form::resolve::{Ask, Shaped, Wants};
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::flat::{Duty, Net, PanelId};
use crate::project::finding::{OwnFault, Weight, What};

/// The drawn form of a text; nothing written is what a new form begins with.
///
/// # Errors
/// As [`read`], as a fault to be said.
pub fn drawn(text: &str, system: System) -> Result<Drawn, OwnFault> {
    let text = if text.trim().is_empty() { START } else { text };
    read(text, system).map_err(|e| OwnFault::Unread { said: e.said, why: e.why })
}

/// The sizes that the text of a form names, as drawn.
#[must_use]
pub fn sizes(text: &str, system: System) -> Vec<(&'static str, Length)> {
    let named = drawn(text, system).map_or_else(|_| Vec::new(), |d| d.sizes);
    named.iter().map(|(name, given)| (words::size(*name), given.length())).collect()
}

/// Answers a request for a form that its maker drew.
#[must_use]
pub fn shape(mut ask: Ask) -> Shaped {
    let stop = |mut ask: Ask, faults: Vec<OwnFault>| {
        faults.into_iter().for_each(|f| ask.remark(None, Weight::Stop, What::Own(f)));
        ask.shaped
    };
    let drawn = match drawn(ask.drawn(), ask.setting.system) {
        Ok(drawn) => drawn,
        Err(fault) => return stop(ask, vec![fault]),
    };
    let mut sizes: BTreeMap<SizeName, Length> = BTreeMap::new();
    for (name, given) in &drawn.sizes {
        let key = words::size(*name);
        let length = ask.scored(key, given.length());
        sizes.insert(*name, length);
    }
    let of = |name| sizes.get(&name).copied().unwrap_or_default();
    let measures = Measures { sizes: &of, score: ask.setting.score, system: ask.setting.system };
    let made = match make(&drawn, &measures, ask.setting.clear()) {
        Ok(made) => made,
        Err(faults) => return stop(ask, faults),
    };
    let t = ask.setting.thickness;
    if ask.wants == Wants::Everything {
        for (weight, fault) in told(&made, t) {
            ask.remark(None, weight, What::Own(fault));
        }
    }
    let assembly = made.assembly(t);
    ask.answer(assembly)
}

/// A drawn form, folded.
pub struct Made {
    /// What it was built from.
    pub built: Built,
    /// How it stands when all is folded.
    pub folded: Folded,
    /// The part.
    pub part: Part,
}

/// Builds and folds a drawn form; flaps pass each other with `clear` between them.
///
/// # Errors
/// What stops it.
pub fn make(drawn: &Drawn, measures: &Measures, clear: Length) -> Result<Made, Vec<OwnFault>> {
    let mut built = build(drawn, measures)?;
    let still = built.pieces.first().map(|p| p.at).unwrap_or_default();
    let stance = stance(drawn, still);
    let root = match stance {
        Stance::Front => Root::Front,
        Stance::Base => Root::Base,
    };
    let folded = Folded::of(&built.net, root);
    let moves = moves(drawn, &built, &folded, stance, measures, clear);
    let turn = turns(&built.net, &moves);
    settle(drawn, &mut built, &folded, &turn);
    let meets = folded.meets(&built.net);
    let part = Part::alone("box", built.net.clone(), root, meets, moves);
    Ok(Made { built, folded, part })
}

/// In which move each panel folds.
fn turns(net: &Net, moves: &[Move]) -> Vec<usize> {
    let mut turn = vec![0; net.panels.len()];
    for (i, m) in moves.iter().enumerate() {
        let creases = match &m.way {
            Way::Even(all) | Way::EndOnly { creases: all, .. } => all.clone(),
            Way::TuckIn { lid, tuck, .. } => vec![*lid, *tuck],
            Way::Sprung { closing, tucks, .. } => closing.iter().chain(tucks).copied().collect(),
        };
        for crease in creases.iter().filter_map(|c| net.creases.get(c.0)) {
            turn[crease.far.0] = i + 1;
        }
    }
    turn
}

impl Made {
    /// As an assembly in card of thickness `t`: its sizes are measured on the folded panels.
    #[must_use]
    pub fn assembly(&self, t: Length) -> Assembly {
        let size = |m: Measured, open: Size| {
            let of = |m: Option<f64>, open: Length| m.map_or(open, |m| Length::round_mm(m).at_least_zero());
            Size { width: of(m.width, open.width), depth: of(m.depth, open.depth), height: of(m.height, open.height) }
        };
        let finished = size(outside_of(&self.part, Length::ZERO), Size::default());
        let inside = size(inside_of(&self.part, t), finished);
        let outside = size(outside_of(&self.part, t), finished);
        Assembly::alone(self.part.clone(), finished, inside, outside)
    }

    fn name(&self, panel: PanelId) -> &'static str {
        self.part.net.panel(panel).name
    }
}

/// The cell of the panel with this name.
#[must_use]
pub fn made_by_name(made: &Made, name: &str) -> Option<At> {
    made.part.net.named(name).and_then(|p| made.built.pieces.get(p.0)).map(|p| p.at)
}

/// Everything that is to be said of a drawn form, in card of thickness `t`.
#[must_use]
pub fn told(made: &Made, t: Length) -> Vec<(Weight, OwnFault)> {
    let caution = |f: OwnFault| (Weight::Caution, f);
    let mut said: Vec<(Weight, OwnFault)> = made.built.faults.iter().cloned().map(caution).collect();
    // What does not meet comes first: much of what crosses follows from it.
    said.extend(tabs(made));
    said.extend(tucks(made).into_iter().map(caution));
    let proved = proved(made, t).into_iter().filter(|f| !said.iter().any(|s| s.1 == *f)).map(caution);
    said.extend(proved.collect::<Vec<_>>());
    // What swings free is worth saying once all that is to be glued is.
    let free = if said.is_empty() { unheld(made) } else { Vec::new() };
    said.extend(free.into_iter().map(|p| (Weight::Note, OwnFault::Unheld(made.name(p)))));
    said
}

/// What the proof finds.
fn proved(made: &Made, t: Length) -> Vec<OwnFault> {
    let mut found: Vec<OwnFault> = Vec::new();
    let turns = turns(&made.part.net, &made.part.moves);
    for fault in part_faults(&made.part, t) {
        // Two panels run into each other in the later one of the folds that carry them.
        let turn = |a: PanelId, b: PanelId| {
            let carried =
                |p: PanelId| made.part.net.carriers(p).into_iter().filter_map(|c| made.part.net.creases.get(c.0));
            carried(a).chain(carried(b)).map(|c| turns[c.far.0]).max().unwrap_or(1)
        };
        let said = match fault {
            Fault::LoopOpen { panels: (a, b), .. } => OwnFault::Round(made.name(a), made.name(b)),
            Fault::GlueMisses { on, .. } => OwnFault::GlueMisses(made.name(on)),
            Fault::Crossing { a, b, .. } => OwnFault::Cross { a: made.name(a), b: made.name(b), turn: turn(a, b) },
            Fault::HoleAtEdge(p) | Fault::Loose(p) => OwnFault::Trimmed(made.name(p)),
            Fault::TuckStuck { .. } => {
                let tuck = made.part.net.panels.iter().find(|p| p.duty == Duty::Tuck);
                OwnFault::TuckStuck(tuck.map_or("tuck", |p| p.name))
            }
            Fault::AreaLost => OwnFault::Trimmed(made.name(PanelId(0))),
            _ => continue,
        };
        if !found.contains(&said) && found.len() < MOST_SAID {
            found.push(said);
        }
    }
    found
}

/// Of one kind of fault no more are said at a time.
const MOST_SAID: usize = 4;

/// Tucks that reach beyond the wall that they go in behind.
fn tucks(made: &Made) -> Vec<OwnFault> {
    let net = &made.part.net;
    let behind = made.part.moves.iter().filter_map(|m| match &m.way {
        Way::TuckIn { tuck, behind, .. } => net.creases.get(tuck.0).map(|c| (c.far, *behind)),
        _ => None,
    });
    let beyond = |tuck, wall| made.folded.over(net, tuck, wall) < WITHIN;
    behind.filter(|&(tuck, wall)| beyond(tuck, wall)).map(|(tuck, _)| OwnFault::TuckStuck(made.name(tuck))).collect()
}

/// How much of a tuck lies on its wall at least.
const WITHIN: f64 = 0.95;

/// Whether tabs come to where they belong.
#[must_use]
pub fn tabs(made: &Made) -> Vec<(Weight, OwnFault)> {
    let net = &made.part.net;
    let mut said = Vec::new();
    for tab in (0..net.panels.len()).map(PanelId).filter(|p| net.panel(*p).duty == Duty::Tab && p.0 > 0) {
        let partner = made.folded.partner(net, tab);
        let glued = net.glue.iter().any(|g| g.on == tab);
        let name = made.name(tab);
        match partner {
            Some(c) if !c.is_exact() && c.by() > super::met::MET && c.by() <= NEAR => {
                let by = Length::round_mm(c.by());
                said.push((Weight::Caution, OwnFault::Misses { tab: name, panel: made.name(c.onto), by }));
            }
            Some(c) if !glued => said.push((Weight::Note, OwnFault::Unglued { tab: name, panel: made.name(c.onto) })),
            None if !glued => said.push((Weight::Caution, OwnFault::Alone(name))),
            _ => {}
        }
    }
    said.truncate(MOST_SAID * 2);
    said
}

/// Walls and floors that swing free: those that hang on a crease which nothing else helps to hold.
fn unheld(made: &Made) -> Vec<PanelId> {
    let net = &made.part.net;
    let n = net.panels.len();
    let mut links: Vec<(usize, usize)> = net.loops.iter().map(|l| (l.near.0, l.far.0)).collect();
    links.extend(net.glue.iter().flat_map(|g| g.onto.iter().map(|o| (g.on.0, o.0))));
    for m in &made.part.moves {
        if let Way::TuckIn { tuck, behind, .. } = &m.way
            && let Some(tuck) = net.creases.get(tuck.0)
        {
            links.push((tuck.far.0, behind.0));
        }
    }
    let swings = |i: usize| {
        // Whether the rest still hangs together without this crease.
        let others = net.creases.iter().enumerate().filter(|(j, _)| *j != i).map(|(_, c)| (c.near.0, c.far.0));
        let all: Vec<(usize, usize)> = others.chain(links.iter().copied()).collect();
        let mut reached = vec![false; n];
        reached[0] = true;
        let mut open = vec![0];
        while let Some(at) = open.pop() {
            for &(a, b) in &all {
                for (from, to) in [(a, b), (b, a)] {
                    if from == at && !reached[to] {
                        reached[to] = true;
                        open.push(to);
                    }
                }
            }
        }
        !reached[net.creases[i].far.0]
    };
    let counts = |p: PanelId| matches!(net.panel(p).duty, Duty::Wall | Duty::Floor);
    let free = (0..net.creases.len()).filter(|i| counts(net.creases[*i].far) && swings(*i));
    free.map(|i| net.creases[i].far).take(MOST_SAID).collect()
}
