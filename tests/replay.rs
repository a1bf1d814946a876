//! The steps alone make the blank into the pattern: a program that knows nothing but what each step says scores, cuts and
//! takes away on a fine grid, and what is left is held against the net, panel for panel and score for score.
//!
//! It reads: a score runs right across, or from mark to mark; a cut runs along its line; of what is cut apart the
//! piece with most of the scores stays in the hand; of what is trimmed, the step's rectangle goes, or the part of it beyond the slanted
//! or round cut, on the side away from the middle of its panel.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::drawn::{DRAWN, set_of_drawn};
use common::projects::likely_project;
use common::table::{FINE, Spot, Table, apart, points, spot};
use common::typical::{form, set_of};
use proptest::prelude::*;
use snugfold::form::registry::{FORMS, Form};
use snugfold::make::part::Planned;
use snugfold::make::step::Action;
use snugfold::measure::point::Point;
use snugfold::measure::system::System;
use snugfold::net::arc::Line;
use snugfold::net::flat::Net;
use snugfold::plan::{Plan, plan};

fn within(outline: &[Spot], p: Spot) -> bool {
    let mut inside = false;
    for (i, a) in outline.iter().enumerate() {
        let b = outline[(i + 1) % outline.len()];
        if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) {
            inside = !inside;
        }
    }
    inside
}

/// What differs between the table and the net, in words.
fn differences(table: &Table, net: &Net) -> Vec<String> {
    let mut found = Vec::new();
    let panels: Vec<Vec<Spot>> =
        net.panels.iter().map(|p| p.outline.corners.iter().map(|&c| spot(c)).collect()).collect();
    let round: Vec<(Spot, Spot)> =
        net.panels.iter().map(|p| p.outline.bounds()).map(|b| (spot(b.min), spot(b.max))).collect();
    let near = |i: usize, p: Spot| (0..2).all(|k| p[k] >= round[i].0[k] && p[k] <= round[i].1[k]);
    let panel_at = |p: Spot| (0..panels.len()).find(|&i| near(i, p) && within(&panels[i], p));
    let wanted: Vec<bool> = (0..table.card.len()).map(|i| panel_at(table.middle(i)).is_some()).collect();
    let (w, h) = (table.wide, table.high);
    for y in 2..h.saturating_sub(2) {
        for x in 2..w.saturating_sub(2) {
            let i = y * w + x;
            let around = || (y - 2..=y + 2).flat_map(move |y| (x - 2..=x + 2).map(move |x| y * w + x));
            // At an edge a grid this coarse cannot tell.
            if table.card[i] == wanted[i] {
                continue;
            }
            let plain = around().all(|j| wanted[j] == wanted[i] && table.card[j] == table.card[i] && !table.cut[j]);
            if plain {
                let what = if wanted[i] { "is missing at" } else { "is left at" };
                found.push(format!("card {what} {:?}", table.middle(i)));
            }
        }
    }
    let folds: Vec<[Spot; 2]> = net.folds().flat_map(|c| c.stretches()).map(|(a, b)| [spot(a), spot(b)]).collect();
    // An arc of the net is drawn in straight stretches, which lie inside it by their rise: length² / (8 × radius).
    let rise = net.arcs.iter().flat_map(|arc| {
        let long = |w: &[Point]| libm::hypot((w[1].x - w[0].x).as_mm(), (w[1].y - w[0].y).as_mm());
        arc.run.windows(2).map(move |w| long(w) * long(w) / (8.0 * arc.radius.as_mm()))
    });
    let slack = 0.05 + 1.1 * rise.fold(0.0, f64::max);
    for &fold in &folds {
        let unscored = points(fold).find(|&p| table.scores.iter().all(|&s| apart(p, s) > slack));
        found.extend(unscored.map(|p| format!("no score at {p:?}")));
    }
    for &score in &table.scores {
        let through = points(score).find(|&p| {
            panel_at(p).is_some_and(|panel| {
                let own = &panels[panel];
                let edges = (0..own.len()).map(|i| [own[i], own[(i + 1) % own.len()]]);
                edges.chain(folds.iter().copied()).all(|e| apart(p, e) > 1.0)
            })
        });
        found.extend(through.map(|p| format!("a score through a panel at {p:?}")));
    }
    // Neighbours without a fold between them have to be cut apart.
    for (i, a) in panels.iter().enumerate() {
        for k in 0..a.len() {
            let edge = [a[k], a[(k + 1) % a.len()]];
            let (dx, dy) = (edge[1][0] - edge[0][0], edge[1][1] - edge[0][1]);
            let long = libm::hypot(dx, dy);
            for p in points(edge) {
                let beside = [p[0] + dy / long * 2.0, p[1] - dx / long * 2.0];
                let other = panel_at(beside).is_some_and(|j| j != i);
                let folded = folds.iter().any(|&f| apart(p, f) < 0.6);
                let end = edge.iter().any(|e| libm::hypot(e[0] - p[0], e[1] - p[1]) < 2.5);
                let at = [(p[0] / FINE) as usize, (p[1] / FINE) as usize];
                let cut = (at[1].saturating_sub(2)..=at[1] + 2).any(|y| {
                    (at[0].saturating_sub(2)..=at[0] + 2)
                        .any(|x| x < w && y < h && (table.cut[y * w + x] || !table.card[y * w + x]))
                });
                if other && !folded && !end && !cut {
                    found.push(format!("not cut apart at {p:?}"));
                }
            }
        }
    }
    found
}

/// Makes every part of a box or holder by its steps, without the one at `left_out`, and tells what is wrong.
fn wrong(plan: &Plan, planned: &Planned, left_out: Option<usize>) -> Vec<String> {
    let mut wrong = Vec::new();
    let parts = planned.assembly.iter().flat_map(|a| &a.parts).enumerate();
    for (i, part) in parts.filter(|(i, _)| planned.joined(*i).is_none()) {
        let net = &part.net;
        let mut table = Table::new(spot(net.blank.max));
        let mut holes = Vec::new();
        let steps = plan.steps.iter().enumerate().filter(|(nth, _)| Some(*nth) != left_out).map(|(_, s)| s);
        for step in steps.filter(|s| s.place == planned.place && s.part == i) {
            match &step.action {
                Action::Score(scores) => table.score(scores),
                Action::ScoreShort(scores) => scores.iter().for_each(|s| table.score_line(s)),
                Action::ScoreMarks(marks) => table.between(marks, Line::Score),
                Action::CutMarks(marks) => table.between(marks, Line::Cut),
                Action::Cut(cuts) => cuts.iter().for_each(|c| table.cut_line(c)),
                Action::TakeCells(cells) => cells.iter().for_each(|&c| table.take(c, |_| true)),
                Action::TakeOff(off) => off.iter().for_each(|o| table.trim(o, net)),
                Action::Notch(off) => table.trim(off, net),
                Action::Punch(some) => holes.extend(some.iter().copied()),
                _ => {}
            }
        }
        table.let_fall();
        let name = |d| format!("{} {}: {d}", planned.form.key, part.name);
        wrong.extend(differences(&table, net).into_iter().map(name));
        if holes != net.holes {
            wrong.push(name("other holes".to_owned()));
        }
    }
    wrong
}

fn of<'a>(plan: &'a Plan, form: &Form) -> &'a Planned {
    plan.parts().find(|p| p.form.key == form.key).expect("it is planned")
}

#[test]
fn the_steps_make_every_form() {
    for form in FORMS {
        for system in System::ALL {
            let plan = plan(&set_of(form), system);
            let planned = of(&plan, form);
            assert!(planned.assembly.is_some(), "{} can be made", form.key);
            let wrong = wrong(&plan, planned, None);
            assert!(wrong.is_empty(), "{system:?}: {} wrong, such as {:#?}", wrong.len(), &wrong[..wrong.len().min(5)]);
        }
    }
}

/// And every form that its maker drew, in both systems.
#[test]
fn the_steps_make_drawn_forms() {
    for (name, text) in DRAWN {
        for system in System::ALL {
            let plan = plan(&set_of_drawn(text), system);
            let planned = of(&plan, form("own"));
            assert!(planned.assembly.is_some(), "{name} can be made: {:?}", plan.findings);
            let wrong = wrong(&plan, planned, None);
            assert!(
                wrong.is_empty(),
                "{name}, {system:?}: {} wrong, such as {:#?}",
                wrong.len(),
                &wrong[..wrong.len().min(5)]
            );
        }
    }
}

/// No step on the blank is for nothing: without it something is wrong. (Cells that go are cut free by the step before.)
#[test]
fn without_a_step_something_is_wrong() {
    let (mut tried, mut unseen) = (0, Vec::new());
    for form in FORMS {
        let plan = plan(&set_of(form), System::Metric);
        let planned = of(&plan, form);
        let works = |a: &Action| {
            matches!(
                a,
                Action::Score(_)
                    | Action::ScoreMarks(_)
                    | Action::CutMarks(_)
                    | Action::Cut(_)
                    | Action::TakeOff(_)
                    | Action::Notch(_)
                    | Action::Punch(_)
            )
        };
        let steps = plan.steps.iter().enumerate().filter(|(_, s)| s.place == planned.place && works(&s.action));
        for (nth, step) in steps {
            if wrong(&plan, planned, Some(nth)).is_empty() {
                let what = format!("{:?}", step.action);
                unseen.push(format!("{} {}", form.key, what.split('(').next().unwrap_or_default()));
            }
            tried += 1;
        }
    }
    // A strip that is trimmed off beside a cut parts the same panels, and a wedge may be finer than the grid.
    let fine = |u: &String| u.ends_with(" Cut") || u.ends_with(" TakeOff");
    assert!(unseen.iter().all(fine) && unseen.len() * 8 < tried, "{unseen:?} of {tried}");
    assert!(tried > 100, "only {tried} steps were left out");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 30, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever sizes are typed.
    #[test]
    fn the_steps_make_every_likely_set(project in likely_project(), system in prop::sample::select(System::ALL.to_vec())) {
        let plan = plan(&project, system);
        for planned in plan.parts() {
            let wrong = wrong(&plan, planned, None);
            prop_assert!(wrong.is_empty(), "{} wrong, such as {:#?}", wrong.len(), &wrong[..wrong.len().min(5)]);
        }
    }
}
