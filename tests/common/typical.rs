//! Forms as they are when nothing is typed, and nets with every point moved.

use snugfold::assembly::parts::{Assembly, Footprint, Size};
use snugfold::form::registry::{Form, Holds, named};
use snugfold::form::resolve::{Content, Setting};
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::outline::Outline;
use snugfold::measure::point::Point;
use snugfold::measure::system::System;
use snugfold::net::flat::Net;
use snugfold::project::example::example;
use snugfold::project::fresh::fresh;
use snugfold::project::request::{Part, Project};

/// The form of this key.
pub fn form(key: &str) -> &'static Form {
    named(key).unwrap_or_else(|| panic!("{key} is not registered"))
}

/// The default request of a form, on the finest board, so that a millimetre is not lost in snapping.
pub fn typical(form: &Form) -> (Assembly, Length) {
    let t = Length::um(300);
    let outside = Size { width: Length::mm(77), depth: Length::mm(33), height: Length::mm(128) };
    let setting = Setting {
        system: System::Metric,
        score: Grid::every(Length::mm(1)),
        cut: Grid::every(Length::um(500)),
        thickness: t,
        mat_thickness: Length::ZERO,
        learned: Length::ZERO,
        contents: vec![Content { outside, footprint: Footprint::Sides(6), count: 3 }],
    };
    let part = Part::of(1, form.key, 1);
    (form.shaped(&part, &setting).assembly.expect("the default can be made"), t)
}

/// Every point of a net moved.
pub fn mapped(net: &Net, to: impl Fn(Point) -> Point) -> Net {
    let mut net = net.clone();
    let outline = |o: &mut Outline| o.corners.iter_mut().for_each(|p| *p = to(*p));
    for p in &mut net.panels {
        outline(&mut p.outline);
        (p.cell.min, p.cell.max) = (to(p.cell.min), to(p.cell.max));
    }
    for c in net.creases.iter_mut().chain(&mut net.loops) {
        (c.from, c.to) = (to(c.from), to(c.to));
        c.through.iter_mut().for_each(|p| *p = to(*p));
    }
    net.glue.iter_mut().for_each(|g| outline(&mut g.area));
    net.holes.iter_mut().for_each(|h| h.at = to(h.at));
    net.waste.iter_mut().for_each(|w| outline(&mut w.outline));
    net.blank.max = to(net.blank.max);
    net
}

/// A set with `form` as it is when nothing is typed.
pub fn set_of(form: &Form) -> Project {
    let mut project = fresh(example().as_ref(), form.shown_by(), form.key);
    if form.holds == Holds::Gifts {
        project.holder = None;
    } else {
        project.boxes[0].count = 3;
    }
    project
}
