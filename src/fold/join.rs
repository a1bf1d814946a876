//! The proof that parts go together: the measured inside of the outer against the measured outside of the inner, nothing
//! in the way, no mat on a face that slides, and every box free at its seat.

use crate::assembly::parts::{Assembly, From, Join, JoinName, Part, Room};
use crate::measure::length::Length;
use crate::net::flat::{Matting, PanelId};

use super::cross::Shrunk;
use super::motion::folded;
use super::pose::{Pose, standing};
use super::prove::{Fault, SIZE};
use super::room::{Leaf, assembled, free, leaves, taken};
use super::solid::Solid;
use super::space::{Rigid, V3};

/// Places tried on the way in.
const FRAMES: u32 = 12;

/// What is wrong with the joins and seats of `assembly` in card of thickness `t`.
#[must_use]
pub fn faults(assembly: &Assembly, t: Length) -> Vec<Fault> {
    let mut found = Vec::new();
    let placed: Vec<(Shrunk, Vec<Pose>)> = assembly.parts.iter().map(|p| placed(p, t)).collect();
    for join in &assembly.joins {
        found.extend(clearances(assembly, join, t));
        found.extend(blocked(join, &placed, assembly, t));
        found.extend(mats_that_slide(assembly, join));
    }
    found.extend(at_rest(&placed));
    found.extend(seats(assembly, t));
    found
}

fn placed(part: &Part, t: Length) -> (Shrunk, Vec<Pose>) {
    let rigid = part.rigid();
    let pose = Pose::of(rigid, &folded(rigid), t);
    (Shrunk::of(rigid, t), part.stands.iter().map(|s| pose.placed(&standing(s))).collect())
}

fn clearances(assembly: &Assembly, join: &Join, t: Length) -> Vec<Fault> {
    let Room { width, depth, height, round } = join.room;
    let Some(outer) = assembly.parts.get(join.outer) else {
        return Vec::new();
    };
    // Turned over or not, the axes stay the same; tabs count, for the inner part slides past them.
    let around = free(&leaves(outer, t), t);
    let inside = |p: &Part| join.inner.iter().any(|&i| std::ptr::eq(p, &assembly.parts[i]));
    let all = |which: &dyn Fn(&Part) -> bool| assembled(assembly, t, which);
    let within = taken(&all(&inside), t);
    let pairs = [(width, around.width, within.width), (depth, around.depth, within.depth)];
    let pairs = pairs.into_iter().chain([(height, around.height, within.height)]);
    let sides = pairs.map(|(allowed, around, within)| (allowed, around.zip(within).map(|(a, w)| a - w)));
    let (around, inner) = (all(&|p| std::ptr::eq(p, outer)), all(&inside));
    sides
        .chain([(round, between(&around, &inner, t))])
        .filter_map(|(allowed, free)| {
            let allowed = allowed.map(|a| (a.least.as_mm(), a.most.as_mm()))?;
            let good = free.is_some_and(|f| f > allowed.0 - SIZE && f < allowed.1 + SIZE);
            (!good).then_some(Fault::Clearance { join: join.name, free, allowed })
        })
        .collect()
}

/// Twice the least distance from the inner face of an upright wall or tab in `around` to the walls in `within`, each in
/// card of thickness `t`.
fn between(around: &[Leaf], within: &[Leaf], t: Length) -> Option<f64> {
    let upright = |l: &&Leaf| l.at.axes[2].z.abs() < 1e-6;
    let least = around.iter().filter(upright).flat_map(|wall| {
        let out = wall.at.axes[2];
        let face = wall.at.origin.dot(out) - t.as_mm() / 2.0;
        let reach = within.iter().filter(upright).flat_map(move |l| {
            let thick = t.as_mm() / 2.0 * l.at.axes[2].dot(out).abs();
            l.outline.iter().map(move |&p| l.at.apply(p).dot(out) + thick)
        });
        reach.map(move |r| face - r)
    });
    least.reduce(f64::min).map(|gap| gap * 2.0)
}

/// The way back along which a part came.
const fn back(from: From) -> V3 {
    match from {
        From::Front => V3::new(0.0, -1.0, 0.0),
        From::Above => V3::new(0.0, 0.0, 1.0),
        From::Below => V3::new(0.0, 0.0, -1.0),
    }
}

fn blocked(join: &Join, placed: &[(Shrunk, Vec<Pose>)], assembly: &Assembly, t: Length) -> Option<Fault> {
    let all = taken(&assembled(assembly, t, |_| true), t);
    let far = [all.width, all.depth, all.height].into_iter().flatten().fold(0.0, f64::max) * 1.2;
    let outer = placed.get(join.outer)?;
    for frame in 0..=FRAMES {
        let at = f64::from(frame) / f64::from(FRAMES);
        let away = Rigid::STAY.shifted(back(join.from) * (far * (1.0 - at)));
        for &i in &join.inner {
            let inner = placed.get(i)?;
            let moved: Vec<Pose> = inner.1.iter().map(|p| p.placed(&away)).collect();
            if let Some(panels) = meeting((&inner.0, &moved), (&outer.0, &outer.1)) {
                return Some(Fault::Blocked { parts: (i, join.outer), panels, at });
            }
        }
    }
    None
}

fn meeting(a: (&Shrunk, &[Pose]), b: (&Shrunk, &[Pose])) -> Option<(PanelId, PanelId)> {
    a.1.iter().find_map(|p| b.1.iter().find_map(|q| a.0.crosses(p, b.0, q)))
}

/// Any two parts that cross where they stand in the end.
fn at_rest(placed: &[(Shrunk, Vec<Pose>)]) -> Vec<Fault> {
    let pairs = (0..placed.len()).flat_map(|i| (i + 1..placed.len()).map(move |j| (i, j)));
    pairs
        .filter_map(|(i, j)| {
            let (a, b) = (&placed[i], &placed[j]);
            let panels = meeting((&a.0, &a.1), (&b.0, &b.1))?;
            Some(Fault::Blocked { parts: (i, j), panels, at: 1.0 })
        })
        .collect()
}

/// Faces of the inner parts that look across the way slide along the outer part: nothing raised on them.
fn mats_that_slide(assembly: &Assembly, join: &Join) -> Vec<Fault> {
    let mut found = Vec::new();
    for &i in &join.inner {
        let Some(part) = assembly.parts.get(i) else {
            continue;
        };
        let part = part.rigid();
        let pose = Pose::of(part, &folded(part), Length::ZERO);
        for (p, panel) in part.net.panels.iter().enumerate() {
            let across = part.stands.iter().any(|s| {
                let out = standing(s).turn(pose.out(PanelId(p)));
                out.dot(back(join.from)).abs() < 0.5
            });
            if across && panel.mat == Matting::Usual {
                found.push(Fault::MatSlides { part: i, panel: PanelId(p) });
            }
        }
    }
    found
}

/// Seats at which a box, with its play and all along its way in, meets a panel, or stands in another box.
fn seats(assembly: &Assembly, t: Length) -> Vec<Fault> {
    if assembly.seats.is_empty() {
        return Vec::new();
    }
    let solids = |leaves: Vec<Leaf>| leaves.iter().map(|l| Solid::of(l, t)).collect::<Vec<_>>();
    let walls = solids(assembled(assembly, t, |_| true));
    // A lid goes on last and a cover opens: they are in nobody's way before.
    let last = |p: &Part| {
        let mut over = assembly.joins.iter().filter(|j| matches!(j.name, JoinName::LidOver | JoinName::TrayIn));
        over.any(|j| assembly.parts.get(j.outer).is_some_and(|o| std::ptr::eq(o, p)))
    };
    let open = solids(assembled(assembly, t, |p| !last(p)));
    let bodies: Vec<Solid> = assembly.seats.iter().map(Solid::seated).collect();
    let hits = |i: usize| {
        let way = Solid::swept(&assembly.seats[i]);
        open.iter().any(|w| way.meets(w))
            || walls.iter().any(|w| bodies[i].meets(w))
            || bodies.iter().enumerate().any(|(j, b)| j != i && bodies[i].meets(b))
    };
    (0..bodies.len()).filter(|&i| hits(i)).map(Fault::Seat).collect()
}
