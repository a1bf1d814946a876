//! The flat pattern, outside face up: panels, folds, cuts, glue, mats, what is taken away, and where to score.

use super::dimension;
use super::drawing::{Area, Drawing, Fill, Ink, Label, Mark, Meaning, Reads, Spot, Touch};
use super::geometry::{block, corners, hatch, middle, spot, uncovered};
use super::lettering::label_width;
use crate::make::extras::Laid;
use crate::make::part::Planned;
use crate::measure::angle::Angle;
use crate::measure::outline::Outline;
use crate::measure::point::Point;
use crate::measure::system::System;
use crate::net::flat::{Crease, Face, Frame, Net, PanelId, Taken};
use crate::net::joint::Joint;
use crate::project::request::Tint;
use crate::say::phrase::Phrase;
use crate::say::pictures;

/// How a flat pattern is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// The card it is cut from.
    pub card: Tint,
    /// The card of its mats.
    pub mats: Tint,
    /// The panel that was touched.
    pub chosen: Option<PanelId>,
    /// The system of its measures.
    pub system: System,
}

/// The flat pattern of one part of an assembly, dimensioned along its upper and left edges; nothing where the part
/// could not be planned.
#[must_use]
pub fn flat(planned: &Planned, part: usize, look: Look) -> Option<Drawing> {
    let net = &planned.assembly.as_ref()?.parts.get(part)?.net;
    let (w, h) = (net.blank.width().as_mm(), net.blank.height().as_mm());
    let mut d = Drawing { title: pictures::flat(&planned.name), lettering: w.max(h) / 30.0, ..Drawing::default() };
    pattern(&mut d, planned, part, look);
    let recipe = planned.recipes.get(part)?;
    let room = d.lettering * 3.4;
    dimension::along_top(&mut d, &recipe.scores[0], look.system);
    dimension::along_left(&mut d, &recipe.scores[1], look.system);
    let edge = d.lettering * 0.6;
    d.frame([-room, -room], [w + edge, h + edge]);
    Some(d)
}

/// The pattern itself, without measures, from the blank's upper left corner.
pub fn pattern(d: &mut Drawing, planned: &Planned, part: usize, look: Look) {
    unnamed(d, planned, part, look);
    if let Some(p) = planned.assembly.as_ref().and_then(|a| a.parts.get(part)) {
        names(d, &p.net, planned, part, look);
    }
}

/// The pattern without the names of its panels.
pub fn unnamed(d: &mut Drawing, planned: &Planned, part: usize, look: Look) {
    let Some(net) = planned.assembly.as_ref().and_then(|a| a.parts.get(part)).map(|p| &p.net) else {
        return;
    };
    taken_away(d, net);
    for (i, panel) in net.panels.iter().enumerate() {
        let touch = Touch { part, panel: i };
        let fill = if look.chosen == Some(PanelId(i)) { Fill::Chosen } else { Fill::Card(look.card, 0.0) };
        d.marks.push(Mark::Area(Area { corners: corners(&panel.outline), fill, panel: Some(touch) }));
    }
    mats(d, net, planned, part, look);
    glue(d, net, look.card);
    lines(d, net, look.card);
    extras(d, planned, part, look);
    if let Some(joined) = planned.joined(part) {
        joint(d, net, &joined.joint, look.card);
    }
    net.holes.iter().for_each(|hole| punched(d, &hole.outline(), look));
}

/// A hole, or a window.
fn punched(d: &mut Drawing, outline: &Outline, look: Look) {
    let shape = corners(outline);
    d.area(shape.clone(), Fill::Waste);
    d.ring(Meaning::Cut, Ink::Card(look.card), shape);
}

/// What is added: layers and labels in the box's own colour, windows and holes as they are cut.
fn extras(d: &mut Drawing, planned: &Planned, part: usize, look: Look) {
    for made in &planned.extras {
        for (shape, laid) in made.shapes(part) {
            match laid {
                Laid::Through => punched(d, &shape.1, look),
                Laid::Onto => {
                    let run = corners(&shape.1);
                    if look.chosen != Some(shape.0) {
                        let touch = Some(Touch { part, panel: shape.0.0 });
                        d.marks.push(Mark::Area(Area {
                            corners: run.clone(),
                            fill: Fill::Card(look.card, 0.0),
                            panel: touch,
                        }));
                    }
                    d.ring(Meaning::Mat, Ink::Card(look.card), run);
                }
            }
        }
    }
}

/// What is taken away: the blank's edge, a light tint and a cross.
fn taken_away(d: &mut Drawing, net: &Net) {
    let (w, h) = (net.blank.width().as_mm(), net.blank.height().as_mm());
    d.area(block([0.0, 0.0], [w, h]), Fill::Waste);
    for waste in &net.waste {
        let shape = corners(&waste.outline);
        let (_, wide, high) = middle(&shape);
        if wide.min(high) > d.lettering * 0.8 && shape.len() == 4 && waste.taken != Taken::Around {
            d.line(Meaning::Cross, Ink::Page, vec![shape[0], shape[2]]);
            d.line(Meaning::Cross, Ink::Page, vec![shape[1], shape[3]]);
        }
    }
    d.ring(Meaning::Edge, Ink::Page, block([0.0, 0.0], [w, h]));
}

fn mats(d: &mut Drawing, net: &Net, planned: &Planned, part: usize, look: Look) {
    for mat in planned.mats_on(part) {
        let shape = corners(&mat.laid());
        if look.chosen != Some(mat.panel) {
            let touch = Touch { part, panel: mat.panel.0 };
            let fill = Fill::Card(look.mats, 0.0);
            d.marks.push(Mark::Area(Area { corners: shape.clone(), fill, panel: Some(touch) }));
        }
        d.ring(Meaning::Mat, Ink::Card(look.mats), shape);
    }
    // A notch goes through panel and mat together.
    for notch in net.waste.iter().filter(|w| w.taken == Taken::Notch) {
        d.area(corners(&notch.outline), Fill::Waste);
    }
}

fn glue(d: &mut Drawing, net: &Net, card: Tint) {
    for glue in &net.glue {
        let meaning = match glue.face {
            Face::Outside => Meaning::Glue,
            Face::Inside => Meaning::GlueBehind,
        };
        for [a, b] in hatch(&corners(&glue.area), d.lettering * 0.75) {
            d.line(meaning, Ink::Card(card), vec![a, b]);
        }
    }
}

/// Where two pieces meet: the right one's edge on the score, the left one's tab behind it.
fn joint(d: &mut Drawing, net: &Net, joint: &Joint, card: Tint) {
    let tab = joint.halves[0].glue.last().map(|g| corners(&g.area)).unwrap_or_default();
    for [a, b] in hatch(&tab, d.lettering * 0.75) {
        d.line(Meaning::GlueBehind, Ink::Card(card), vec![a, b]);
    }
    if let Some(crease) = net.creases.get(joint.crease.0) {
        d.line(Meaning::Cut, Ink::Card(card), vec![spot(crease.from), spot(crease.to)]);
    }
    let (at, wide, high) = middle(&tab);
    name(d, "joint", at, (wide, high), Ink::Card(card));
}

/// Folds by their way, and cuts round every panel where no fold lies.
fn lines(d: &mut Drawing, net: &Net, card: Tint) {
    let folds: Vec<(Point, Point)> = net.folds().flat_map(Crease::stretches).collect();
    for crease in net.folds() {
        let meaning = if crease.fold <= Angle::ZERO { Meaning::Valley } else { Meaning::Mountain };
        let mut run = vec![spot(crease.from)];
        crease.stretches().into_iter().for_each(|(a, b)| round(&mut run, net, a, b));
        d.line(meaning, Ink::Card(card), run);
    }
    for panel in &net.panels {
        // Stretches that follow each other become one line, so that corners are whole.
        let mut run: Vec<Spot> = Vec::new();
        for (a, b) in panel.outline.edges() {
            for [from, to] in uncovered(a, b, &folds) {
                if run.last() != Some(&from) {
                    flush(d, &mut run, card);
                    run.push(from);
                }
                if (from, to) == (spot(a), spot(b)) { round(&mut run, net, a, b) } else { run.push(to) }
            }
        }
        flush(d, &mut run, card);
    }
}

/// On to `b`, round an arc where the stretch from `a` is one of its: the net's own stretches lie inside it.
fn round(run: &mut Vec<Spot>, net: &Net, a: Point, b: Point) {
    const PARTS: i32 = 8;
    if let Some(arc) = net.arcs.iter().find(|arc| arc.holds(a, b)) {
        let (from, to, centre, radius) = (spot(a), spot(b), spot(arc.centre), arc.radius.as_mm());
        for part in 1..PARTS {
            let share = f64::from(part) / f64::from(PARTS);
            let off = [0, 1].map(|i| from[i] + (to[i] - from[i]) * share - centre[i]);
            let out = radius / libm::hypot(off[0], off[1]).max(f64::MIN_POSITIVE);
            run.push([0, 1].map(|i| centre[i] + off[i] * out));
        }
    }
    run.push(spot(b));
}

fn flush(d: &mut Drawing, run: &mut Vec<Spot>, card: Tint) {
    if run.len() > 1 {
        d.line(Meaning::Cut, Ink::Card(card), std::mem::take(run));
    }
    run.clear();
}

fn names(d: &mut Drawing, net: &Net, planned: &Planned, part: usize, look: Look) {
    for (i, panel) in net.panels.iter().enumerate() {
        let mat = planned.mats_on(part).find(|m| m.panel == PanelId(i));
        let (mut at, mut wide, mut high) = match mat {
            Some(mat) => middle(&corners(&mat.rect.outline())),
            None => middle(&corners(&panel.outline)),
        };
        if panel.frame != Frame::Upright {
            (at, wide, high) = (spot(panel.middle()), wide * 0.6, high * 0.6);
        }
        let ink = Ink::Card(if mat.is_some() { look.mats } else { look.card });
        name(d, panel.name, at, (wide, high), ink);
    }
}

/// A panel's name inside it: across, on several lines, upward or smaller, as it fits; left out where nothing does.
fn name(d: &mut Drawing, words: &str, at: Spot, (wide, high): (f64, f64), ink: Ink) {
    let label = |text: &str, size: f64, way: Reads, at: Spot| {
        let mut one = Drawing::default();
        one.label(at, text, ink);
        match one.marks.pop() {
            Some(Mark::Label(l)) => Label { size, way, ..l },
            _ => Label { at, hold: super::drawing::Hold::Middle, words: Phrase::default(), size, way, ink },
        }
    };
    let fits = |rows: &[&str], size: f64, along: f64, across: f64| {
        let longest = rows.iter().map(|r| label_width(&label(r, size, Reads::Across, at), d.lettering));
        let longest = longest.fold(0.0, f64::max);
        longest < along * 0.88 && rows.len() as f64 * size * 1.15 * d.lettering < across * 0.95
    };
    let single = [words];
    let split: Vec<&str> = words.split(' ').collect();
    for size in [1.0, 0.8, 0.64] {
        for rows in [&single[..], &split[..]] {
            for way in [Reads::Across, Reads::Up] {
                let (along, across) = if way == Reads::Across { (wide, high) } else { (high, wide) };
                if fits(rows, size, along, across) {
                    let step = size * 1.15 * d.lettering;
                    let first = -(rows.len() as f64 - 1.0) / 2.0 * step;
                    let placed: Vec<Label> = rows
                        .iter()
                        .enumerate()
                        .map(|(i, row)| {
                            let off = first + i as f64 * step;
                            let at = if way == Reads::Across { [at[0], at[1] + off] } else { [at[0] + off, at[1]] };
                            label(row, size, way, at)
                        })
                        .collect();
                    d.marks.extend(placed.into_iter().map(Mark::Label));
                    return;
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draw::svg::paint;
    use crate::project::example::example;

    /// The first box of the example: finished 3 × 1¼ × 4½ in.
    fn drawn(system: System) -> (Planned, Drawing) {
        let project = example().expect("the example reads");
        let plan = crate::plan::plan(&project, system);
        let look = Look { card: Tint::default(), mats: Tint(0xff_ff_ff), chosen: None, system };
        let drawing = flat(&plan.boxes[0], 0, look).expect("it is planned");
        (plan.boxes[0].clone(), drawing)
    }

    fn lines(d: &Drawing, meaning: Meaning) -> usize {
        d.marks.iter().filter(|m| matches!(m, Mark::Line(l) if l.meaning == meaning)).count()
    }

    #[test]
    fn every_fold_is_a_mountain_and_every_panel_can_be_touched() {
        let (planned, d) = drawn(System::Inch);
        let net = &planned.assembly.expect("it is planned").parts[0].net;
        assert_eq!(lines(&d, Meaning::Mountain), net.creases.len());
        assert_eq!(lines(&d, Meaning::Valley), 0);
        for i in 0..net.panels.len() {
            let touched = |m: &Mark| matches!(m, Mark::Area(Area { panel: Some(t), .. }) if t.panel == i);
            assert!(d.marks.iter().any(touched), "{}", net.panels[i].name);
        }
    }

    #[test]
    fn scores_stand_along_two_edges_as_the_board_reads_them() {
        let (_, d) = drawn(System::Metric);
        let said: Vec<String> = d
            .marks
            .iter()
            .filter_map(|m| match m {
                Mark::Label(l) if l.ink == Ink::Page => Some(l.words.to_string()),
                _ => None,
            })
            .collect();
        assert_eq!(said, ["32", "109", "141", "218", "230", "12", "44", "159", "191"]);
    }

    #[test]
    fn no_cut_runs_along_a_fold() {
        let (planned, d) = drawn(System::Inch);
        let net = &planned.assembly.expect("it is planned").parts[0].net;
        let folds: Vec<(Spot, Spot)> = net.creases.iter().map(|c| (spot(c.from), spot(c.to))).collect();
        for mark in &d.marks {
            let Mark::Line(line) = mark else { continue };
            if line.meaning == Meaning::Cut {
                for ends in line.run.windows(2) {
                    let same = |f: &(Spot, Spot)| (f.0, f.1) == (ends[0], ends[1]) || (f.1, f.0) == (ends[0], ends[1]);
                    assert!(!folds.iter().any(same), "{ends:?}");
                }
            }
        }
    }

    #[test]
    fn it_paints_as_well_formed_svg() {
        let painted = paint(&drawn(System::Inch).1);
        assert_eq!(painted.matches("<g").count(), painted.matches("</g>").count());
        assert!(!painted.contains("style="), "a strict content policy forbids inline styles");
        assert!(!painted.contains("NaN"), "every place is a number");
    }
}
