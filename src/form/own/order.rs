//! In which order a drawn form folds: as its maker says, the rest by a rule that most hands follow.
//!
//! Tabs first; then the walls round what lies still, those that carry a tab before those that close over it; then what
//! is below, and what is above: flaps before what closes over them.

use super::build::{Built, Measures};
use super::drawn::{Drawn, Stance};
use super::met::Folded;
use crate::assembly::moves::{Gives, Move, MoveName, Way};
use crate::measure::length::Length;
use crate::net::flat::{CreaseId, Duty, Net, PanelId};

/// The moves, each panel once.
#[must_use]
pub fn moves(
    drawn: &Drawn,
    built: &Built,
    folded: &Folded,
    stance: Stance,
    measures: &Measures,
    clear: Length,
) -> Vec<Move> {
    let net = &built.net;
    let mut left: Vec<PanelId> = net.creases.iter().map(|c| c.far).collect();
    let mut all = Vec::new();
    for turn in &drawn.order {
        // Both halves of a cell fold with it.
        let mine = built.pieces.iter().enumerate().filter(|(_, p)| turn.cells.iter().any(|at| p.covers(*at)));
        let mine: Vec<PanelId> = mine.map(|(i, _)| PanelId(i)).collect();
        // A tuck goes in with what carries it.
        let tuck = turn.tuck.as_ref().and_then(|tuck| {
            let (at, behind) = (built.panel(tuck.at)?, built.panel(tuck.behind)?);
            let lid = carried_by(net, at)?;
            let gap = tuck.gap.as_ref().map_or(clear, |g| measures.of(g));
            (left.contains(&at) && mine.contains(&lid) && behind != at && behind != lid).then_some((at, behind, gap))
        });
        if let Some((tuck, ..)) = tuck {
            left.retain(|p| *p != tuck);
        }
        let mut panels: Vec<PanelId> = Vec::new();
        for at in &turn.cells {
            let of_cell = mine.iter().copied().filter(|p| built.pieces[p.0].covers(*at));
            panels.extend(of_cell.filter(|p| left.contains(p)).collect::<Vec<_>>());
            left.retain(|p| !panels.contains(p));
        }
        all.extend(turned(net, turn.name, &panels, tuck));
    }
    for mut panels in usual(net, &left, stance) {
        // A tuck goes in with the lid that carries it.
        let tuck = panels
            .iter()
            .copied()
            .find(|p| net.panel(*p).duty == Duty::Tuck && carried_by(net, *p).is_some_and(|l| panels.contains(&l)));
        let behind =
            tuck.and_then(|tuck| folded.partner(net, tuck).filter(|c| c.share > 0.5).map(|c| (tuck, c.onto, clear)));
        if let Some((tuck, ..)) = behind {
            panels.retain(|p| *p != tuck);
        }
        all.extend(turned(net, None, &panels, behind));
    }
    all
}

fn carried_by(net: &Net, panel: PanelId) -> Option<PanelId> {
    net.carrier(panel).and_then(|c| net.creases.get(c.0)).map(|c| c.near)
}

/// Whether a panel is part of a ring that a loop closes.
fn in_loop(net: &Net, panel: PanelId) -> bool {
    net.loops.iter().any(|l| {
        let (a, b) = (net.carriers(l.near), net.carriers(l.far));
        // What carries both ends is no part of the ring.
        let ring = a.iter().filter(|c| !b.contains(c)).chain(b.iter().filter(|c| !a.contains(c)));
        ring.filter_map(|c| net.creases.get(c.0)).any(|c| c.far == panel)
    })
}

fn turned(
    net: &Net,
    name: Option<MoveName>,
    panels: &[PanelId],
    tuck: Option<(PanelId, PanelId, Length)>,
) -> Option<Move> {
    let creases: Vec<CreaseId> = panels.iter().filter_map(|p| net.carrier(*p)).collect();
    let name = name.unwrap_or(MoveName::Together);
    // What closes a loop gives on the way.
    let looped = |c: &CreaseId| net.creases.get(c.0).is_some_and(|c| in_loop(net, c.far));
    let way = match (tuck, creases.as_slice()) {
        (Some((tuck, behind, gap)), [lid]) => Way::TuckIn { lid: *lid, tuck: net.carrier(tuck)?, behind, gap },
        (Some((tuck, ..)), _) => Way::Even(creases.iter().copied().chain(net.carrier(tuck)).collect()),
        (None, []) => return None,
        (None, all) if all.iter().any(looped) => Way::EndOnly { creases, why: Gives::Loops },
        (None, _) => Way::Even(creases),
    };
    Some(Move { name, way })
}

/// The panels that are left, in the groups in which they fold.
fn usual(net: &Net, left: &[PanelId], stance: Stance) -> Vec<Vec<PanelId>> {
    let Some(still) = net.panels.first().map(|p| p.cell) else {
        return Vec::new();
    };
    // Panels that loops join fold at once.
    let looped = |p: PanelId| in_loop(net, p);
    let level = |p: PanelId| {
        let cell = net.panel(p).cell;
        cell.min.y < still.max.y && still.min.y < cell.max.y
    };
    let upright = |p: PanelId| {
        let cell = net.panel(p).cell;
        cell.min.x < still.max.x && still.min.x < cell.max.x
    };
    let below = |p: PanelId| net.panel(p).cell.min.y >= still.max.y;
    let ring = |p: PanelId| match stance {
        Stance::Front => level(p),
        Stance::Base => level(p) || upright(p),
    };
    let carries_tab = |p: PanelId| {
        let mut under = vec![p];
        let mut next = 0;
        while let Some(&q) = under.get(next) {
            next += 1;
            under.extend(net.creases.iter().filter(|c| c.near == q).map(|c| c.far));
        }
        under.iter().any(|q| net.panel(*q).duty == Duty::Tab)
    };
    // The branch of the ring that a panel belongs to: the first panel from the still one.
    let branch = |p: PanelId| {
        let mut at = p;
        while let Some(near) = carried_by(net, at).filter(|n| n.0 != 0) {
            at = near;
        }
        at
    };
    let deep = |p: PanelId| net.carriers(p).len();
    let closing = |p: PanelId| {
        let own = net.panel(p).duty;
        let rank = match own {
            Duty::DustFlap | Duty::Floor => 0,
            Duty::Lid | Duty::Tuck => 2,
            _ => 1,
        };
        (rank, deep(p))
    };
    // (which stage, within it, is it a pair)
    let stage = |p: PanelId| -> (u8, usize, usize) {
        let duty = net.panel(p).duty;
        let tuck = if duty == Duty::Tuck { carried_by(net, p) } else { None };
        let p = tuck.unwrap_or(p);
        let duty = net.panel(p).duty;
        match duty {
            // What hangs together round a corner comes up at once.
            _ if looped(p) => (1, 0, 0),
            Duty::Tab => (0, 0, 0),
            _ if ring(p) => (if carries_tab(branch(p)) { 1 } else { 2 }, 0, 0),
            _ if below(p) => (3, closing(p).0, closing(p).1),
            _ => (4, closing(p).0, closing(p).1),
        }
    };
    let mut sorted: Vec<PanelId> = left.to_vec();
    sorted.sort_by_key(|p| (stage(*p), p.0));
    let mut groups: Vec<Vec<PanelId>> = Vec::new();
    for p in sorted {
        match groups.last_mut() {
            Some(last) if last.first().is_some_and(|q| stage(*q) == stage(p)) => last.push(p),
            _ => groups.push(vec![p]),
        }
    }
    groups
}
