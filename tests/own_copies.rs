//! Every grid form of the catalogue comes back as a form that its maker drew: copied, and spoken as its recipe.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::typical::{set_of, typical};
use snugfold::assembly::parts::{Assembly, Part};
use snugfold::fold::prove::part_faults;
use snugfold::form::own::build::Measures;
use snugfold::form::own::copy::copy;
use snugfold::form::own::read::read;
use snugfold::form::own::shape::{make, told};
use snugfold::form::own::write::text;
use snugfold::form::registry::{FORMS, Holds};
use snugfold::measure::given::Given;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::net::flat::{Frame, Net};
use snugfold::plan::{Plan, plan};
use snugfold::project::bound;
use snugfold::project::finding::Place;
use snugfold::project::request::Project;
use snugfold::say::spelling::Spelling;

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
        let drawn =
            copy(&part, System::Metric, Grid::every(Length::mm(1)), clear()).unwrap_or_else(|| panic!("{name}"));
        let written = text(&drawn);
        let back = read(&written, System::Inch).unwrap_or_else(|e| panic!("{name}: {e:?}\n{written}"));
        assert_eq!(text(&back), written, "{name}");
        assert_eq!(back, drawn, "{name}");
        let made = make(&back, &measures(), clear()).unwrap_or_else(|e| panic!("{name}: {e:?}"));
        similar(&name, &sorted(&made.part.net), &sorted(&part.net));
        assert_eq!(
            made.part.moves.iter().map(|m| m.name).collect::<Vec<_>>(),
            part.moves.iter().map(|m| m.name).collect::<Vec<_>>(),
            "{name}"
        );
        assert_eq!(part_faults(&made.part, t), part_faults(&part, t), "{name}");
        println!("{name} {} bytes: {:?}", written.len(), told(&made, t));
    }
}

/// Says the first line that differs.
fn similar(name: &str, is: &str, should: &str) {
    for (a, b) in is.lines().zip(should.lines()) {
        assert_eq!(a, b, "{name}");
    }
    assert_eq!(is.lines().count(), should.lines().count(), "{name}");
}

/// The recipe of a part as it is spoken at the table: blank, scores along one side, turn, scores along the other.
fn spoken(part: &Part) -> String {
    let said = |l: Length| Given::exactly(l).expect("not below nothing").text().to_owned();
    let inner = |lines: &[Length]| lines[1..lines.len() - 1].iter().map(|l| said(*l)).collect::<Vec<_>>().join(", ");
    let lines = &part.net.lines;
    let score = |lines: &[Length]| if lines.len() > 2 { format!("; score at {}", inner(lines)) } else { String::new() };
    let blank = part.net.blank;
    format!(
        "blank {} x {}{}; turn{}",
        said(blank.width()),
        said(blank.height()),
        score(&lines.across),
        score(&lines.down)
    )
}

/// A grid form of the catalogue, spoken as its recipe and then told cell by cell, has the same pieces and the same steps,
/// word for word.
#[test]
fn a_spoken_form_of_the_catalogue_has_the_same_steps() {
    let mut same = Vec::new();
    for form in FORMS.iter().filter(|f| f.holds == Holds::Gifts) {
        let mut project = set_of(form);
        project.system = System::Metric;
        project.boxes[0].name = "One box".to_owned();
        let theirs = plan(&project, System::Metric);
        let Some([part]) = theirs.boxes[0].assembly.as_ref().map(|a| a.parts.as_slice()) else { continue };
        let score = Grid::every(Length::mm(1));
        let Some(drawn) = copy(part, System::Metric, score, clear()) else { continue };
        let cells = text(&drawn);
        let cells = cells.split_once("empty\n").expect("it tells its cells").1;
        let own = format!("{}\nempty\n{cells}", spoken(part));
        let mut project = project.clone();
        project.boxes[0].form = "own".to_owned();
        project.boxes[0].drawn = own;
        let ours = plan(&project, System::Metric);
        let words = |plan: &Plan, project: &Project| -> Vec<String> {
            let said = |s| snugfold::say::step::step(s, plan, project, Spelling::default());
            let mine = plan.steps.iter().filter(|s| s.place == Place::Box(1));
            // Where several panels are told in one breath, they come in another order.
            mine.map(said)
                .map(|s| {
                    let all: Vec<String> = std::iter::once(&s.title).chain(&s.lines).map(ToString::to_string).collect();
                    let mut words: Vec<&str> = all.iter().flat_map(|l| l.split([' ', ',', '.', ':'])).collect();
                    words.sort_unstable();
                    words.join(" ")
                })
                .collect()
        };
        assert_eq!(words(&ours, &project), words(&theirs, &project), "{}", form.key);
        assert_eq!(ours.boxes[0].outside, theirs.boxes[0].outside, "{}", form.key);
        assert_eq!(
            ours.boxes[0].assembly.as_ref().map(|a| a.inside),
            theirs.boxes[0].assembly.as_ref().map(|a| a.inside),
            "{}",
            form.key
        );
        assert_eq!(ours.pieces.len(), theirs.pieces.len(), "{}", form.key);
        same.push(form.key);
    }
    assert!(same.len() >= 8, "{same:?}");
}
