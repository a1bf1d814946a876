//! Parts as they fold, and the whole set as it stands.

use super::drawing::{Drawing, Touch};
use super::solid::{Chosen, Leaf, View, paint};
use crate::assembly::parts::{From, Join, Offset, Part, Size, Stand, Turn};
use crate::fold::motion::{bends, folded as all_folded};
use crate::fold::pose::{Pose, standing};
use crate::fold::room::{assembled, bounds};
use crate::fold::space::{Rigid, V3};
use crate::make::extras::Laid;
use crate::make::part::Planned;
use crate::measure::outline::Outline;
use crate::measure::point::Point;
use crate::net::flat::PanelId;
use crate::project::fitting::Facing;
use crate::project::request::Tint;
use crate::say::pictures;

/// The cards of a part that is drawn, and what is spoken of.
#[derive(Clone, Debug, PartialEq)]
pub struct Dress {
    /// The card it is cut from.
    pub card: Tint,
    /// The card of its mats.
    pub mats: Tint,
    /// Panels that are touched or spoken of.
    pub chosen: Vec<PanelId>,
}

/// One part of an assembly after `progress` of its moves: 0 is flat, the number of moves is finished.
/// The frame is the same for every progress, so that the drawing does not jump while it folds.
#[must_use]
pub fn folded(planned: &Planned, part: usize, progress: f64, dress: &Dress, view: View) -> Option<Drawing> {
    let shape = planned.assembly.as_ref()?.parts.get(part)?;
    let title = if progress < shape.moves.len() as f64 { pictures::folding } else { pictures::folded };
    let mut d = Drawing { title: title(&planned.name), ..Drawing::default() };
    let rigid = shape.rigid();
    let pose = Pose::of(rigid, &bends(rigid, progress), planned.thickness);
    paint(&mut d, &leaves(planned, part, shape, &pose, dress, V3::default()), view);
    let steps = shape.moves.len() * 2;
    let every = (0..=steps).flat_map(|i| {
        let pose = Pose::of(rigid, &bends(rigid, i as f64 / 2.0), planned.thickness);
        places(shape, &pose, V3::default())
    });
    frame(&mut d, every, view);
    Some(d)
}

/// The finished boxes in a row in their holder; `out` lifts them, from 0 (in) to 1 (standing above it). A touch on one
/// tells which it is: the boxes in their order, then the holder.
#[must_use]
pub fn set(boxes: &[Planned], holder: Option<&Planned>, tint: &dyn Fn(u16) -> Tint, out: f64, view: View) -> Drawing {
    let names: Vec<(&str, u32)> = boxes.iter().map(|b| (b.name.as_str(), b.count)).collect();
    let title = pictures::finished(&names, holder.map(|h| h.name.as_str()));
    let mut d = Drawing { title, ..Drawing::default() };
    let dress = |p: &Planned| Dress {
        card: tint(p.card),
        mats: p.mat_card.map_or_else(Tint::default, tint),
        chosen: Vec::new(),
    };
    let mut all = Vec::new();
    let mut ends = Vec::new();
    let mut add = |nth: usize, planned: &Planned, turned: Rigid, at: V3, reach: V3| {
        let Some(assembly) = &planned.assembly else {
            return;
        };
        for (i, part) in assembly.parts.iter().enumerate() {
            let rigid = part.rigid();
            for stand in &part.stands {
                let pose =
                    Pose::of(rigid, &all_folded(rigid), planned.thickness).placed(&standing(stand)).placed(&turned);
                let leaves = leaves(planned, i, part, &pose, &dress(planned), at).into_iter();
                all.extend(leaves.map(|leaf| Leaf { touch: Some(Touch { part: nth, panel: 0 }), ..leaf }));
                ends.extend(places(part, &pose, at));
                ends.extend(places(part, &pose, at + reach));
            }
        }
    };
    let most = most(boxes.len());
    let mut x = 0.0;
    let mut gap = 4.0;
    let mut front = 0.0;
    if let Some((holder, assembly)) = holder.and_then(|h| h.assembly.as_ref().map(|a| (h, a))) {
        add(boxes.len(), holder, Rigid::STAY, V3::default(), V3::default());
        let count: u32 = boxes.iter().filter(|b| b.assembly.is_some()).map(|b| b.count).sum();
        let taken: f64 = boxes.iter().map(|b| b.stood().width.as_mm() * f64::from(b.count)).sum();
        gap = (assembly.inside.width.as_mm() - taken) / f64::from(count + 1);
        x = (assembly.finished.width.as_mm() - assembly.inside.width.as_mm()) / 2.0 + gap;
        front = assembly.finished.depth.as_mm() / 2.0;
    }
    if let Some(assembly) = holder.and_then(|h| h.assembly.as_ref()).filter(|a| !a.seats.is_empty()) {
        let shaped: Vec<(usize, &Planned)> = boxes.iter().enumerate().filter(|b| b.1.assembly.is_some()).collect();
        let mut drawn = vec![0_u32; shaped.len()];
        for seat in &assembly.seats {
            let Some((&(nth, planned), drawn)) = shaped.get(seat.kind).zip(drawn.get_mut(seat.kind)) else {
                continue;
            };
            *drawn += 1;
            if *drawn > most {
                continue;
            }
            let at = V3::new(seat.at.right.as_mm(), seat.at.back.as_mm(), seat.at.up.as_mm());
            let away = match seat.from {
                From::Front => V3::new(0.0, -seat.size.depth.as_mm() * 1.05, 0.0),
                From::Above | From::Below => V3::new(0.0, 0.0, seat.size.height.as_mm() * 1.05),
            };
            add(nth, planned, stood(planned), at + away * out, away * (1.0 - out));
        }
        paint(&mut d, &all, view);
        frame(&mut d, ends.into_iter(), view);
        return d;
    }
    for (nth, planned) in boxes.iter().enumerate() {
        let (wide, deep) = (planned.stood().width.as_mm(), planned.stood().depth.as_mm());
        if planned.assembly.is_none() {
            continue;
        }
        let lift = planned.stood().height.as_mm() * 1.05;
        let y = if front > 0.0 { front - deep / 2.0 } else { 0.0 };
        for _ in 0..planned.count.min(most) {
            add(nth, planned, stood(planned), V3::new(x, y, lift * out), V3::new(0.0, 0.0, lift * (1.0 - out)));
            x += wide + gap;
        }
    }
    paint(&mut d, &all, view);
    frame(&mut d, ends.into_iter(), view);
    d
}

/// How a box stands in the holder: turned so that its face looks forward, the lower front left corner of what it takes
/// up at the origin.
fn stood(planned: &Planned) -> Rigid {
    let v = V3::new;
    let axes = match planned.facing {
        Facing::Front => Rigid::STAY.axes,
        Facing::Side => standing(&Stand { turn: Turn::Quarter, at: Offset::default() }).axes,
        Facing::Lid => [v(1.0, 0.0, 0.0), v(0.0, 0.0, 1.0), v(0.0, -1.0, 0.0)],
    };
    let turn = Rigid { axes, origin: V3::default() };
    let t = planned.thickness;
    let Some(assembly) = &planned.assembly else {
        return turn;
    };
    // Mats lie outside what the panels take up, half of them at each end as far as the eye can tell.
    let (low, high) = bounds(&assembled(assembly, t, |_| true), t);
    let Size { width, depth, height } = planned.outside;
    let bare = high - low;
    let mats = v(width.as_mm() - bare.x, depth.as_mm() - bare.y, height.as_mm() - bare.z) * 0.5;
    let (a, b) = (turn.apply(low - mats), turn.apply(high + mats));
    Rigid { origin: -v(a.x.min(b.x), a.y.min(b.y), a.z.min(b.z)), ..turn }
}

/// Parts of an assembly as they go together: the inner ones on their way.
#[must_use]
pub fn joined(planned: &Planned, join: &Join, dress: &Dress) -> Drawing {
    let mut d = Drawing { title: pictures::together(&planned.name), ..Drawing::default() };
    let view = View::default();
    let mut all = Vec::new();
    let mut ends = Vec::new();
    for (i, part) in planned.assembly.iter().flat_map(|a| &a.parts).enumerate() {
        let inner = join.inner.contains(&i);
        if !inner && i != join.outer {
            continue;
        }
        // Nearly in: so both where it comes from and where it goes can be seen. What goes over comes from above.
        let size = planned.outside;
        let shift = match (join.from, inner) {
            (From::Front, true) => V3::new(0.0, -size.depth.as_mm() * 0.6, 0.0),
            (From::Above, true) | (From::Below, false) => V3::new(0.0, 0.0, size.height.as_mm() * 0.8),
            _ => V3::default(),
        };
        let rigid = part.rigid();
        for stand in &part.stands {
            let pose = Pose::of(rigid, &all_folded(rigid), planned.thickness).placed(&standing(stand));
            all.extend(leaves(planned, i, part, &pose, dress, shift));
            ends.extend(places(part, &pose, shift));
        }
    }
    paint(&mut d, &all, view);
    frame(&mut d, ends.into_iter(), view);
    d
}

/// Alike boxes drawn one by one; more than these would not be told apart.
const MOST_ALIKE: u32 = 24;
/// Boxes of all kinds drawn one by one, but one of each kind at least: a browser takes a millisecond for each.
const MOST_DRAWN: usize = 72;

/// How many boxes of each kind are drawn.
fn most(kinds: usize) -> u32 {
    let share = MOST_DRAWN / kinds.max(1);
    u32::try_from(share).unwrap_or(MOST_ALIKE).clamp(1, MOST_ALIKE)
}

/// What is seen through a hole: the dark of the inside.
const THROUGH: Tint = Tint(0x4a_42_3a);

fn leaves(planned: &Planned, index: usize, part: &Part, pose: &Pose, dress: &Dress, at: V3) -> Vec<Leaf> {
    let moved = |all: Vec<V3>| all.into_iter().map(|p| p + at).collect::<Vec<_>>();
    part.rigid()
        .net
        .panels
        .iter()
        .enumerate()
        .map(|(i, panel)| {
            let (own, id) = (PanelId(i), part.whole(PanelId(i)));
            // Of what lies on a panel that bends, what lies on this strip.
            let bounds = panel.outline.bounds();
            let here = |o: Outline| if part.strips.is_some() { o.between(bounds.min.x, bounds.max.x) } else { o };
            let mats = planned.mats_on(index).filter(|m| m.panel == id).map(|m| (m.outline.clone(), dress.mats));
            let holes = part.net.holes.iter().filter(|h| h.panel == id).map(|h| (h.outline(), THROUGH));
            let extras = planned.extras.iter().flat_map(|m| m.shapes(index)).filter(|(shape, _)| shape.0 == id);
            let extras = extras.map(|(shape, laid)| match laid {
                Laid::Onto => (shape.1, dress.card),
                Laid::Through => (shape.1, THROUGH),
            });
            Leaf {
                corners: moved(pose.outline(own, &panel.outline)),
                out: pose.out(own),
                card: dress.card,
                touch: Some(Touch { part: index, panel: id.0 }),
                bends: if part.strips.is_some() { bent_edges(part.rigid(), i) } else { Vec::new() },
                chosen: if dress.chosen.contains(&id) { Chosen::Yes } else { Chosen::No },
                mats: mats
                    .chain(extras)
                    .chain(holes)
                    .map(|(o, tint)| (moved(pose.outline(own, &here(o))), tint))
                    // Of some, nothing lies on this strip.
                    .filter(|(corners, _)| corners.len() > 2)
                    .collect(),
            }
        })
        .collect()
}

/// The edges of a strip at which it goes on in the next one of its panel.
fn bent_edges(strips: &Part, strip: usize) -> Vec<usize> {
    let all = &strips.net.panels;
    let own = &all[strip];
    let same = || all.iter().enumerate().filter(|(i, p)| *i != strip && p.name == own.name);
    let goes_on = |(a, b): (Point, Point)| same().any(|(_, p)| p.outline.edges().any(|e| e == (b, a)));
    own.outline.edges().enumerate().filter(|(_, e)| goes_on(*e)).map(|(i, _)| i).collect()
}

fn places(part: &Part, pose: &Pose, at: V3) -> Vec<V3> {
    let corners = part.rigid().net.panels.iter().enumerate().flat_map(|(i, p)| pose.outline(PanelId(i), &p.outline));
    corners.map(|p| p + at).collect()
}

fn frame(d: &mut Drawing, places: impl Iterator<Item = V3>, view: View) {
    let (mut min, mut max) = ([f64::MAX; 2], [f64::MIN; 2]);
    for p in places {
        let s = view.seen(p).0;
        min = [min[0].min(s[0]), min[1].min(s[1])];
        max = [max[0].max(s[0]), max[1].max(s[1])];
    }
    if min[0] > max[0] {
        return;
    }
    let edge = 3.0;
    d.lettering = ((max[0] - min[0]).max(max[1] - min[1]) / 30.0).max(1.0);
    d.frame([min[0] - edge, min[1] - edge], [max[0] + edge, max[1] + edge]);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::drawing::Mark;
    use crate::form::registry::{FORMS, Holds};
    use crate::measure::system::System;
    use crate::plan::shapes;
    use crate::project::example::example;
    use crate::project::extra::{Extra, ExtraKind};
    use crate::project::fresh::fresh;

    /// Whatever corner its own origin is at, a box stands with its lower front left corner at the origin.
    #[test]
    fn every_box_stands_in_its_own_place() {
        for form in FORMS.iter().filter(|f| f.holds == Holds::Gifts) {
            let mut project = fresh(example().as_ref(), form.key, "row-holder");
            project.holder = None;
            for facing in Facing::ALL {
                project.boxes[0].facing = facing;
                let plan = shapes(&project, System::Metric);
                let planned = &plan.boxes[0];
                let assembly = planned.assembly.as_ref().expect("as usual");
                let t = planned.thickness;
                let turned = stood(planned);
                let all = assembled(assembly, t, |_| true).into_iter();
                let moved: Vec<_> = all.map(|l| crate::fold::room::Leaf { at: turned.after(&l.at), ..l }).collect();
                let (low, high) = bounds(&moved, t);
                let size = planned.stood();
                let wanted = V3::new(size.width.as_mm(), size.depth.as_mm(), size.height.as_mm());
                assert!(low.norm() < 0.02, "{} {facing:?}: begins at {low:?}", form.key);
                assert!((high - wanted).norm() < 0.02, "{} {facing:?}: ends at {high:?}, not {wanted:?}", form.key);
            }
        }
    }

    /// What lies on one strip of a panel that bends is nothing on the others, and of nothing nothing is drawn.
    #[test]
    fn of_nothing_nothing_is_drawn() {
        let mut project = fresh(example().as_ref(), "pillow", "row-holder");
        let part = &mut project.boxes[0];
        part.extras = ExtraKind::ALL.into_iter().map(Extra::of).collect();
        let plan = shapes(&project, System::Metric);
        let drawing = set(&plan.boxes, plan.holder.as_ref(), &|_| Tint::default(), 0.5, View::default());
        let areas = drawing.marks.iter().filter_map(|mark| if let Mark::Area(area) = mark { Some(area) } else { None });
        let (mut count, mut empty) = (0, 0);
        for area in areas {
            count += 1;
            empty += usize::from(area.corners.len() < 3);
        }
        assert!(count > 80 && empty == 0, "{empty} of {count} areas are nothing");
    }
}
