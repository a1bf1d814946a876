//! Forms that their makers draw: those of the catalogue come back, whatever is drawn is answered, and what is found is so.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::typical::{form, typical};
use snugfold::assembly::parts::{Assembly, Part};
use snugfold::fold::prove::part_faults;
use snugfold::form::own::build::Measures;
use snugfold::form::own::copy::copy;
use snugfold::form::own::read::read;
use snugfold::form::own::shape::{make, told};
use snugfold::form::own::write::text;
use snugfold::form::registry::FORMS;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::net::flat::{Frame, Net};
use snugfold::project::bound;

fn measures() -> Measures<'static> {
    Measures { sizes: &|_| Length::ZERO, score: Grid::every(Length::mm(1)), system: System::Metric }
}

fn clear() -> Length {
    bound::CLEAR.of(System::Metric)
}

/// A net in an order that does not hang on how it was built.
fn sorted(net: &Net) -> String {
    let name = |p| net.panel(p).name;
    let mut lines: Vec<String> = net.panels.iter().map(|p| format!("{p:?}")).collect();
    lines.extend(net.creases.iter().map(|c| {
        let mut ends = [c.from, c.to];
        ends.sort_by_key(|p| (p.x, p.y));
        format!("{} {} {ends:?} {:?}", name(c.near), name(c.far), c.fold)
    }));
    lines.extend(net.glue.iter().map(|g| {
        format!("{} {:?} {:?} {:?}", name(g.on), g.face, g.area, g.onto.iter().map(|p| name(*p)).collect::<Vec<_>>())
    }));
    lines.extend(net.waste.iter().map(|w| format!("{:?} {:?} {:?}", w.outline, w.taken, w.from.map(name))));
    lines.extend(net.holes.iter().map(|h| format!("{} {:?} {:?}", name(h.panel), h.at, h.radius)));
    lines.sort();
    lines.insert(0, format!("{:?} {:?}", net.blank, net.lines));
    lines.join("\n")
}

/// Every part of the catalogue that is a grid.
fn grids() -> Vec<(String, Part, Length)> {
    let mut all = Vec::new();
    for form in FORMS {
        let (whole, t): (Assembly, Length) = typical(form);
        for part in whole.parts {
            if part.net.panels.iter().all(|p| p.frame == Frame::Upright) {
                all.push((format!("{}: {}", form.key, part.name), part, t));
            }
        }
    }
    all
}

#[test]
fn every_grid_of_the_catalogue_comes_back() {
    let all = grids();
    assert!(all.len() > 25);
    for (name, part, t) in all {
        let drawn = copy(&part, System::Metric, Grid::every(Length::mm(1)), clear()).unwrap_or_else(|| panic!("{name}"));
        let written = text(&drawn);
        let back = read(&written, System::Inch).unwrap_or_else(|e| panic!("{name}: {e:?}\n{written}"));
        assert_eq!(text(&back), written, "{name}");
        assert_eq!(back, drawn, "{name}");
        let made = make(&back, &measures(), clear()).unwrap_or_else(|e| panic!("{name}: {e:?}"));
        similar(&name, &sorted(&made.part.net), &sorted(&part.net));
        assert_eq!(made.part.moves.iter().map(|m| m.name).collect::<Vec<_>>(), part.moves.iter().map(|m| m.name).collect::<Vec<_>>(), "{name}");
        assert_eq!(part_faults(&made.part, t), part_faults(&part, t), "{name}");
        println!("{name} {} bytes: {:?}", written.len(), told(&made, t));
    }
    let _ = form("tray");
}

/// Says the first line that differs.
fn similar(name: &str, is: &str, should: &str) {
    for (a, b) in is.lines().zip(should.lines()) {
        assert_eq!(a, b, "{name}");
    }
    assert_eq!(is.lines().count(), should.lines().count(), "{name}");
}
