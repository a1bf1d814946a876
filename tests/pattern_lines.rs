//! The lines of each pattern, at true scale: as long in its file as in the form, as another reader of SVG (`roxmltree`)
//! finds them; curves round, and told apart by style.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::typical::{form, set_of};
use roxmltree::Document as Xml;
use snugfold::draw::drawing::{Mark, Meaning, Spot};
use snugfold::draw::pattern::{Pattern, patterns};
use snugfold::draw::svg::true_scale;
use snugfold::form::registry::FORMS;
use snugfold::measure::{given::Given, point::Point, system::System};
use snugfold::net::flat::Net;
use snugfold::plan::plan;
use snugfold::project::request::Entry;

/// Every score and the blank's edge of every form, measured in the file by another reader.
#[test]
fn the_lines_of_a_file_are_as_long_as_the_forms() {
    for form in FORMS {
        for system in System::ALL {
            let project = set_of(form);
            let plan = plan(&project, system);
            let planned = plan.parts().find(|p| p.form.key == form.key).expect("it is planned");
            let all = patterns(&plan, 1);
            for (nth, part) in planned.assembly.as_ref().expect("as usual").parts.iter().enumerate() {
                if planned.joined(nth).is_some() {
                    continue;
                }
                let blank = [part.net.blank.width().as_mm(), part.net.blank.height().as_mm()];
                let same = |p: &&Pattern| (0..2).all(|i| (p.drawing.max[i] - 1.0 - blank[i]).abs() < 1e-9);
                let several = planned.assembly.as_ref().is_some_and(|a| a.parts.len() > 1);
                let called = |p: &&Pattern| !several || p.name.ends_with(part.name);
                let mine = all.iter().filter(called).find(same);
                let text = true_scale(&mine.expect("its pattern").drawing);
                let file = Xml::parse(&text).expect("it is SVG");
                let root = file.root_element();
                let size = |key: &str| root.attribute(key).and_then(|v| v.strip_suffix("mm")?.parse::<f64>().ok());
                assert!((size("width").expect("mm") - blank[0] - 2.0).abs() < 0.006, "{}", form.key);
                assert!((size("height").expect("mm") - blank[1] - 2.0).abs() < 0.006, "{}", form.key);
                let scores = length(&file, &["mountain", "valley"]);
                let stretches = part.net.folds().flat_map(|c| c.stretches());
                let expected: f64 = stretches.map(|(a, b)| long(&part.net, a, b)).sum();
                assert!((scores - expected).abs() <= 0.02 * part.net.creases.len() as f64, "{}: {scores}", form.key);
                let edge = length(&file, &["edge"]);
                assert!((edge - 2.0 * (blank[0] + blank[1])).abs() < 0.05, "{}: {edge}", form.key);
            }
        }
    }
}

/// How long a stretch is: along its arc, where it is part of one (twice the radius by the angle of half the chord).
fn long(net: &Net, a: Point, b: Point) -> f64 {
    let chord = libm::hypot((b.x - a.x).as_mm(), (b.y - a.y).as_mm());
    let radius = net.arcs.iter().find(|arc| arc.holds(a, b)).map(|arc| arc.radius.as_mm());
    radius.map_or(chord, |r| 2.0 * r * libm::asin(chord / (2.0 * r)))
}

/// A large pillow: its curves are drawn within 0.05 mm of their circles, at every place of each line.
#[test]
fn curves_are_drawn_round() {
    let mut project = set_of(form("pillow"));
    for (key, text) in [("width", "300 mm"), ("length", "350 mm"), ("curve", "60 mm")] {
        let given = Given::read(text, System::Metric).expect("a length");
        project.boxes[0].inputs.insert(key.to_owned(), Entry::Length(given));
    }
    let plan = plan(&project, System::Metric);
    let net = &plan.boxes[0].assembly.as_ref().expect("it is planned").parts[0].net;
    let all = patterns(&plan, 1);
    let mut tried = 0;
    for mark in &all[0].drawing.marks {
        let Mark::Line(line) = mark else { continue };
        for ends in line.run.windows(2) {
            let middle = [0, 1].map(|i| f64::midpoint(ends[0][i], ends[1][i]));
            for arc in &net.arcs {
                let off = |p: Spot| {
                    let (x, y) = (p[0] - arc.centre.x.as_mm(), p[1] - arc.centre.y.as_mm());
                    (libm::hypot(x, y) - arc.radius.as_mm()).abs()
                };
                if off(ends[0]) < 0.01
                    && off(ends[1]) < 0.01
                    && libm::hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]) < 20.0
                {
                    assert!(off(middle) < 0.05, "{middle:?} is {} mm off", off(middle));
                    tried += 1;
                }
            }
        }
    }
    assert!(tried > 200, "only {tried} stretches of arcs");
}

/// The length of a run of places.
fn run(mut places: impl Iterator<Item = Spot>) -> f64 {
    let mut last = places.next().expect("it begins somewhere");
    let mut sum = 0.0;
    for p in places {
        sum += libm::hypot(p[0] - last[0], p[1] - last[1]);
        last = p;
    }
    sum
}

/// The length of all lines of these kinds, as a reader of SVG paths finds it.
fn length(file: &Xml<'_>, kinds: &[&str]) -> f64 {
    let lines = file.descendants().filter(|n| n.attribute("data-line").is_some_and(|l| kinds.contains(&l)));
    let one = |n: roxmltree::Node<'_, '_>| {
        let d = n.attribute("d").expect("a path");
        let closed = d.ends_with('Z');
        let mut places: Vec<Spot> = d
            .trim_end_matches('Z')
            .split(['M', 'L'])
            .filter(|p| !p.is_empty())
            .map(|p| {
                let mut xy = p.split(' ').map(|v| v.parse().expect("a number"));
                [xy.next().expect("x"), xy.next().expect("y")]
            })
            .collect();
        if closed {
            places.push(places[0]);
        }
        run(places.into_iter())
    };
    lines.map(one).sum()
}

/// Each meaning of a line is told from every other that lies on card by strength or dashes.
#[test]
fn lines_differ_by_style() {
    let kinds = [Meaning::Cut, Meaning::Mountain, Meaning::Valley, Meaning::GlueBehind, Meaning::Mat];
    let styles: Vec<_> = kinds.map(|k| (k.style().width, k.style().dashes)).into();
    for (i, one) in styles.iter().enumerate() {
        assert!(styles[i + 1..].iter().all(|other| other != one), "{:?}", kinds[i]);
    }
}
