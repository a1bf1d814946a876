//! Every form proved over its whole range: it adds up flat, closes, meets, clears, and holds what it promises.

mod common;

use common::typical::{form, typical};
use geo::{Area as _, BooleanOps as _};
use proptest::prelude::*;
use proptest::test_runner::{Config, FileFailurePersistence};

use snugfold::assembly::parts::{Footprint, Size};
use snugfold::fold::prove::faults;
use snugfold::form::input::Kind;
use snugfold::form::registry::{FORMS, Form, Holds};
use snugfold::form::resolve::{Content, Setting};
use snugfold::measure::given::Given;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::outline::Outline;
use snugfold::measure::system::System;
use snugfold::net::flat::Net;
use snugfold::project::bound;
use snugfold::project::finding::Weight;
use snugfold::project::request::{Entry, Part};

/// Requests tried for each form.
const REQUESTS: u32 = 2_000;

/// A typed length within a range: any micrometre, or a sixteenth of an inch as makers type it.
fn typed(least: Length, most: Length) -> impl Strategy<Value = Entry> {
    let um = (least.as_um()..=most.as_um()).prop_map(|um| {
        let sign = if um < 0 { "-" } else { "" };
        format!("{sign}{}.{:03} mm", um.abs() / 1_000, um.abs() % 1_000)
    });
    let sixteenth = Length::inches(1, 16);
    let (low, high) = (Grid::every(sixteenth).up(least) / sixteenth, most / sixteenth);
    let sixteenths = (low..=high.max(low)).prop_map(|n| format!("{n}/16 in"));
    prop_oneof![um, sixteenths]
        .prop_map(|text| Entry::Length(Given::read(&text, System::Metric).expect("it is a length")))
}

/// Any request for `form`: each input typed or left alone.
fn request(form: &'static Form) -> impl Strategy<Value = Part> {
    let each: Vec<BoxedStrategy<Option<(String, Entry)>>> = form
        .inputs
        .iter()
        .map(|input| {
            let key = input.key.to_owned();
            match input.kind {
                Kind::Length { range, .. } => prop::option::of(typed(range.least, range.most))
                    .prop_map(move |e| e.map(|e| (key.clone(), e)))
                    .boxed(),
                Kind::Choice(words) => prop::option::of(0..words.len())
                    .prop_map(move |w| w.map(|w| (key.clone(), Entry::Choice(words[w].key.to_owned()))))
                    .boxed(),
            }
        })
        .collect();
    each.prop_map(move |inputs| Part {
        gifts: snugfold::project::fitting::Gifts::default(),
        extras: Vec::new(),
        facing: snugfold::project::fitting::Facing::Front,
        blank: Default::default(),
        drawn: String::new(),
        id: 1,
        name: String::new(),
        form: form.key.to_owned(),
        count: 1,
        card: 1,
        inputs: inputs.into_iter().flatten().collect(),
        mats: None,
    })
}

fn size() -> impl Strategy<Value = Size> {
    let um = |least: i64, most: i64| (least..=most).prop_map(Length::um);
    (um(15_000, 150_000), um(8_000, 120_000), um(30_000, 300_000)).prop_map(|(width, depth, height)| Size {
        width,
        depth,
        height,
    })
}

/// Any card, board and contents.
fn setting(holds: Holds) -> impl Strategy<Value = Setting> {
    let contents = match holds {
        Holds::Gifts => Just(Vec::new()).boxed(),
        // All of one footprint: a honeycomb takes nothing but six sides, other holders take anything.
        Holds::Boxes => {
            let footprints = prop_oneof![1 => Just(Footprint::Block), 4 => Just(Footprint::Sides(6))];
            let all = prop_oneof![
                prop::collection::vec((size(), 1_u32..=4), 1..=5),
                prop::collection::vec((size(), 1_u32..=2), 1..=3),
            ];
            (all, footprints)
                .prop_map(|(all, footprint)| {
                    let content = |(outside, count)| Content { outside, footprint, count };
                    all.into_iter().map(content).collect()
                })
                .boxed()
        }
    };
    let steps = prop_oneof![
        Just((System::Inch, Length::inches(1, 8))),
        Just((System::Inch, Length::inches(1, 16))),
        Just((System::Inch, Length::inches(1, 4))),
        Just((System::Metric, Length::mm(1))),
        Just((System::Metric, Length::mm(5))),
    ];
    (steps, 100_i64..=450, contents).prop_map(|((system, step), um, contents)| Setting {
        system,
        score: Grid::every(step),
        cut: Grid::every(bound::CUT_STEP.of(system)),
        thickness: Length::um(um),
        mat_thickness: Length::ZERO,
        learned: Length::ZERO,
        contents,
    })
}

fn polygon(outline: &Outline) -> geo::Polygon<f64> {
    let ring: Vec<(f64, f64)> = outline.corners.iter().map(|p| (p.x.as_mm(), p.y.as_mm())).collect();
    geo::Polygon::new(ring.into(), Vec::new())
}

/// The general-purpose geometry library `geo` agrees: areas are alike, and of all flat panels and
/// pieces of waste no two overlap.
fn geo_agrees(net: &Net) -> Result<(), TestCaseError> {
    let panels = net.panels.iter().map(|p| (p.name, &p.outline));
    let (names, shapes): (Vec<&str>, Vec<geo::Polygon<f64>>) =
        panels.chain(net.waste.iter().map(|w| ("waste", &w.outline))).map(|(n, o)| (n, polygon(o))).unzip();
    for (panel, shape) in net.panels.iter().zip(&shapes) {
        let ours = panel.outline.area().as_mm2();
        prop_assert!((ours - shape.unsigned_area()).abs() < 1e-6 * ours, "{}", panel.name);
    }
    for (i, a) in shapes.iter().enumerate() {
        for (j, b) in shapes.iter().enumerate().skip(i + 1) {
            let shared = a.intersection(b).unsigned_area();
            prop_assert!(shared < 1e-6, "{} and {} share {shared} mm²", names[i], names[j]);
        }
    }
    Ok(())
}

/// Proves `form` over [`REQUESTS`] requests, of which a fair share must be possible.
fn prove(form: &'static Form) {
    let made = std::cell::Cell::new(0_u32);
    let config = Config {
        cases: REQUESTS,
        failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/data/forms.seeds"))),
        ..Config::default()
    };
    let tried = (request(form), setting(form.holds));
    proptest::test_runner::TestRunner::new(config)
        .run(&tried, |(part, setting)| {
            let shaped = form.shaped(&part, &setting);
            let Some(assembly) = shaped.assembly else {
                let stops = shaped.remarks.iter().any(|r| r.weight == Weight::Stop);
                prop_assert!(stops, "nothing is made, and nothing says why");
                return Ok(());
            };
            made.set(made.get() + 1);
            let found = faults(&assembly, setting.thickness);
            let parts = assembly.parts.iter();
            let names: Vec<Vec<_>> = parts.map(|p| p.net.panels.iter().map(|p| p.name).enumerate().collect()).collect();
            prop_assert!(found.is_empty(), "{found:?} of {names:?}");
            for part in &assembly.parts {
                geo_agrees(&part.net)?;
                if let Some(strips) = &part.strips {
                    geo_agrees(&strips.net)?;
                }
            }
            Ok(())
        })
        .unwrap_or_else(|e| panic!("{}: {e}", form.name));
    let share = made.get() * 100 / REQUESTS;
    println!("{}: {share} % of {REQUESTS} requests can be made, all proved", form.name);
    assert!(share >= 20, "only {share} % of the requests can be made: the range says too much");
}

/// A test for each form by the name of its file.
macro_rules! proved {
    ($($name:ident),+ $(,)?) => {
        $(
            #[test]
            fn $name() {
                prove(form(&stringify!($name).replace('_', "-")));
            }
        )+

        #[test]
        fn every_form_is_proved() {
            let proved = [$(stringify!($name).replace('_', "-")),+];
            let missing: Vec<&str> = FORMS.iter().map(|f| f.key).filter(|k| !proved.contains(&(*k).to_owned())).collect();
            assert!(missing.is_empty(), "add to this list: {missing:?}");
        }
    };
}

proved! {
    tuck_box, tuck_ends, tray, double_tray, lid_base, drawer, hinged_box, wallet, bag, layered_box,
    triangle, slice, prism, pyramid, frustum,
    favour,
    petal_box,
    carton,
    corner_box,
    pillow,
    row_holder, grid_holder, carrier, band, tower, set_tray, book_cover, step_stand,
    honeycomb,
}

/// Blanks as six and four independent makers give them, W + 2 H and W + 4 H; insides by the simple rule of box makers
/// (length and width: score − t) and, for each layer more at a wall, one t: worked out here by hand.
#[test]
fn trays_have_the_usual_blank_and_hold_their_volume() {
    for (key, blank, inside) in
        [("tray", (150, 125), [99_700, 74_700, 24_850]), ("double-tray", (200, 175), [99_100, 73_500, 24_850])]
    {
        let (tray, t) = typical(form(key));
        let net = &tray.parts[0].net;
        assert_eq!(t, Length::um(300));
        assert_eq!((net.blank.width(), net.blank.height()), (Length::mm(blank.0), Length::mm(blank.1)), "{key}");
        let measured = snugfold::fold::room::inside_of(&tray.parts[0], t);
        let volume: f64 = [measured.width, measured.depth, measured.height].into_iter().flatten().product();
        let expected: f64 = inside.iter().map(|um| f64::from(*um) / 1e3).product();
        assert!((volume - expected).abs() < 0.5, "{key}: {volume} mm³, by hand {expected} mm³");
    }
}
