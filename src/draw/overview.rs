//! All parts of a set side by side at one scale.

use super::drawing::{Area, Drawing, Label, Line, Mark, Spot, Touch};
use super::flat::{Look, pattern};
use crate::plan::Plan;
use crate::project::request::Tint;
use crate::say::finding::short;
use crate::say::pictures;

/// Every part in rows, each under its name. A touch names the part by its place among the plan's parts.
#[must_use]
pub fn overview(plan: &Plan, tint: &dyn Fn(u16) -> Tint) -> Drawing {
    let sizes: Vec<(usize, Spot)> = plan
        .parts()
        .enumerate()
        .filter_map(|(i, p)| {
            let blank = p.assembly.as_ref()?.parts.first()?.net.blank;
            Some((i, [blank.width().as_mm(), blank.height().as_mm()]))
        })
        .collect();
    let mut d = Drawing { title: pictures::OVERVIEW.to_owned(), ..Drawing::default() };
    let area: f64 = sizes.iter().map(|(_, s)| s[0] * s[1]).sum();
    let widest = sizes.iter().map(|(_, s)| s[0]).fold(0.0, f64::max);
    // About three wide to two high.
    let room = widest.max((area * 1.5).sqrt() * 1.1);
    d.lettering = (room / 42.0).max(2.0);
    let gap = d.lettering * 1.2;
    let (mut at, mut row, mut reach) = ([0.0, 0.0], 0.0_f64, 0.0_f64);
    for (index, size) in sizes {
        if at[0] > 0.0 && at[0] + size[0] > room {
            at = [0.0, at[1] + row + gap];
            row = 0.0;
        }
        let Some(part) = plan.parts().nth(index) else {
            continue;
        };
        let look = Look {
            card: tint(part.card),
            mats: part.mat_card.map_or_else(Tint::default, tint),
            chosen: None,
            system: plan.system,
        };
        let mut one = Drawing { lettering: d.lettering * 0.8, ..Drawing::default() };
        pattern(&mut one, part, 0, look);
        let top = [at[0], at[1] + d.lettering * 1.8];
        d.label([at[0] + size[0] / 2.0, at[1] + d.lettering * 0.7], short(&part.name), super::drawing::Ink::Page);
        d.marks.extend(one.marks.into_iter().map(|m| shifted(m, top, index)));
        at[0] += size[0] + gap;
        row = row.max(size[1] + d.lettering * 1.8);
        reach = reach.max(at[0] - gap);
    }
    let edge = 2.0;
    d.frame([-edge, -edge], [reach + edge, at[1] + row + edge]);
    d
}

/// A mark of one part on the drawing of all.
fn shifted(mark: Mark, by: Spot, part: usize) -> Mark {
    let there = |p: Spot| [p[0] + by[0], p[1] + by[1]];
    match mark {
        Mark::Area(a) => Mark::Area(Area {
            corners: a.corners.into_iter().map(there).collect(),
            panel: a.panel.map(|t| Touch { part, panel: t.panel }),
            ..a
        }),
        Mark::Line(l) => Mark::Line(Line { run: l.run.into_iter().map(there).collect(), ..l }),
        // Lettering was made for the size of one part's names.
        Mark::Label(l) => Mark::Label(Label { at: there(l.at), size: l.size * 0.8, ..l }),
    }
}
