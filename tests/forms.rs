//! Every form proved over its whole range: it adds up flat, closes, meets, clears, and holds what it promises.

use geo::{Area as _, BooleanOps as _};
use proptest::prelude::*;
use proptest::test_runner::{Config, FileFailurePersistence};

use snugfold::fold::prove::{Fault, faults};
use snugfold::form::assembly::{Assembly, Size};
use snugfold::form::input::Kind;
use snugfold::form::registry::{Form, Holds, named};
use snugfold::form::resolve::{Content, Setting};
use snugfold::measure::given::Given;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::outline::Outline;
use snugfold::measure::point::Point;
use snugfold::measure::system::System;
use snugfold::net::flat::{Duty, Net, PanelId};
use snugfold::net::marks::Marks;
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
        Holds::Boxes => prop::collection::vec((size(), 1_u32..=4), 1..=5)
            .prop_map(|all| all.into_iter().map(|(outside, count)| Content { outside, count }).collect())
            .boxed(),
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

/// The general-purpose geometry library `geo` agrees: areas are alike, and no two flat panels overlap.
fn geo_agrees(net: &Net) -> Result<(), TestCaseError> {
    let shapes: Vec<geo::Polygon<f64>> = net.panels.iter().map(|p| polygon(&p.outline)).collect();
    for (panel, shape) in net.panels.iter().zip(&shapes) {
        let ours = panel.outline.area().as_mm2();
        prop_assert!((ours - shape.unsigned_area()).abs() < 1e-6 * ours, "{}", panel.name);
    }
    for (i, a) in shapes.iter().enumerate() {
        for (j, b) in shapes.iter().enumerate().skip(i + 1) {
            let shared = a.intersection(b).unsigned_area();
            prop_assert!(shared < 1e-6, "{} and {} share {shared} mm²", net.panels[i].name, net.panels[j].name);
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
            }
            Ok(())
        })
        .unwrap_or_else(|e| panic!("{}: {e}", form.name));
    let share = made.get() * 100 / REQUESTS;
    println!("{}: {share} % of {REQUESTS} requests can be made, all proved", form.name);
    assert!(share >= 20, "only {share} % of the requests can be made: the range says too much");
}

#[test]
fn tuck_box_over_its_whole_range() {
    prove(form("tuck-box"));
}

#[test]
fn triangle_over_its_whole_range() {
    prove(form("triangle"));
}

#[test]
fn slice_over_its_whole_range() {
    prove(form("slice"));
}

#[test]
fn prism_over_its_whole_range() {
    prove(form("prism"));
}

#[test]
fn pyramid_over_its_whole_range() {
    prove(form("pyramid"));
}

#[test]
fn frustum_over_its_whole_range() {
    prove(form("frustum"));
}

#[test]
fn row_holder_over_its_whole_range() {
    prove(form("row-holder"));
}

#[test]
fn lid_and_base_over_their_whole_range() {
    prove(form("lid-base"));
}

#[test]
fn drawer_and_sleeve_over_their_whole_range() {
    prove(form("drawer"));
}

#[test]
fn tray_with_lid_over_its_whole_range() {
    prove(form("set-tray"));
}

#[test]
fn tray_with_dividers_over_its_whole_range() {
    prove(form("grid-holder"));
}

#[test]
fn band_over_its_whole_range() {
    prove(form("band"));
}

#[test]
fn tower_over_its_whole_range() {
    prove(form("tower"));
}

#[test]
fn carrier_over_its_whole_range() {
    prove(form("carrier"));
}

#[test]
fn book_cover_over_its_whole_range() {
    prove(form("book-cover"));
}

#[test]
fn step_stand_over_its_whole_range() {
    prove(form("step-stand"));
}

#[test]
fn layered_box_over_its_whole_range() {
    prove(form("layered-box"));
}

fn form(key: &str) -> &'static Form {
    named(key).expect("it is registered")
}

#[test]
fn hinged_box_over_its_whole_range() {
    prove(form("hinged-box"));
}

#[test]
fn tuck_ends_over_its_whole_range() {
    prove(form("tuck-ends"));
}

#[test]
fn wallet_over_its_whole_range() {
    prove(form("wallet"));
}

/// A hole so near the edge that it tears out.
#[test]
fn a_hole_at_the_edge_is_caught() {
    let (mut bag, t) = typical(form("bag"));
    let net = &mut bag.parts[0].net;
    net.holes[0].at.y = net.panels[net.holes[0].panel.0].cell.min.y + Length::mm(4);
    assert!(faults(&bag, t).iter().any(|f| matches!(f, Fault::HoleAtEdge(_))));
}

#[test]
fn bag_over_its_whole_range() {
    prove(form("bag"));
}

#[test]
fn tray_over_its_whole_range() {
    prove(form("tray"));
}

#[test]
fn double_tray_over_its_whole_range() {
    prove(form("double-tray"));
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

/// The default request of a form, on the finest board, so that a millimetre is not lost in snapping.
fn typical(form: &Form) -> (Assembly, Length) {
    let t = Length::um(300);
    let outside = Size { width: Length::mm(77), depth: Length::mm(33), height: Length::mm(128) };
    let setting = Setting {
        system: System::Metric,
        score: Grid::every(Length::mm(1)),
        cut: Grid::every(Length::um(500)),
        thickness: t,
        mat_thickness: Length::ZERO,
        learned: Length::ZERO,
        contents: vec![Content { outside, count: 3 }],
    };
    let part = Part {
        gifts: snugfold::project::fitting::Gifts::default(),
        extras: Vec::new(),
        facing: snugfold::project::fitting::Facing::Front,
        blank: Default::default(),
        id: 1,
        name: String::new(),
        form: form.key.to_owned(),
        count: 1,
        card: 1,
        inputs: std::collections::BTreeMap::new(),
        mats: None,
    };
    (form.shaped(&part, &setting).assembly.expect("the default can be made"), t)
}

/// Every point of a net moved.
fn mapped(net: &Net, to: impl Fn(snugfold::measure::point::Point) -> snugfold::measure::point::Point) -> Net {
    let mut net = net.clone();
    let outline = |o: &mut Outline| o.corners.iter_mut().for_each(|p| *p = to(*p));
    for p in &mut net.panels {
        outline(&mut p.outline);
        (p.cell.min, p.cell.max) = (to(p.cell.min), to(p.cell.max));
    }
    for c in &mut net.creases {
        (c.from, c.to) = (to(c.from), to(c.to));
    }
    net.glue.iter_mut().for_each(|g| outline(&mut g.area));
    net.holes.iter_mut().for_each(|h| h.at = to(h.at));
    net.waste.iter_mut().for_each(|w| outline(&mut w.outline));
    net.blank.max = to(net.blank.max);
    net
}

/// Each column, each row and each edge of each panel made 1 mm larger in turn: which of them the proof does not catch.
fn survivors(form: &Form) -> Vec<String> {
    let (whole, t) = typical(form);
    assert_eq!(faults(&whole, t), Vec::<Fault>::new(), "sound before anything is changed");
    (0..whole.parts.len()).flat_map(|part| survivors_of(&whole, t, part)).collect()
}

/// Whether a wall, a floor or a lid turns at this place: tabs and tucks of any shape do their work.
fn counts(net: &Net, place: Point) -> bool {
    net.panels.iter().filter(|p| !matches!(p.duty, Duty::Tab | Duty::Tuck)).any(|p| {
        let all = &p.outline.corners;
        all.iter().position(|c| *c == place).is_some_and(|i| {
            let (before, after) = (all[(i + all.len() - 1) % all.len()], all[(i + 1) % all.len()]);
            let turn = (place - before).cross(after - place) as f64 / ((after - before).dot(after - before) as f64);
            turn.abs() > 1e-6
        })
    })
}

/// The same for one part; names of further parts stand in front of what is theirs.
fn survivors_of(whole: &Assembly, t: Length, part: usize) -> Vec<String> {
    let mm = Length::mm(1);
    let mut alive = Vec::new();
    let mut try_one = |name: String, net: Net| {
        let mut wrong = whole.clone();
        wrong.parts[part].net = net;
        if faults(&wrong, t).is_empty() {
            alive.push(whole.face(part, &name));
        }
    };
    let net = &whole.parts[part].net;
    for (i, pair) in net.lines.across.windows(2).enumerate() {
        let beyond = pair[0];
        let wider = mapped(net, |mut p| {
            p.x += if p.x > beyond { mm } else { Length::ZERO };
            p
        });
        try_one(format!("column {}", i + 1), wider);
    }
    for (i, pair) in net.lines.down.windows(2).enumerate() {
        let beyond = pair[0];
        let taller = mapped(net, |mut p| {
            p.y += if p.y > beyond { mm } else { Length::ZERO };
            p
        });
        try_one(format!("row {}", i + 1), taller);
    }
    // A place marked by hand a millimetre beside where it belongs.
    for (i, place) in Marks::of(net).places.into_iter().enumerate().filter(|(_, p)| counts(net, *p)) {
        for (way, x, y) in [("right", mm, Length::ZERO), ("down", Length::ZERO, mm)] {
            let beside = snugfold::measure::point::Vector::new(x, y);
            try_one(format!("mark {} {way}", i + 1), mapped(net, |p| if p == place { p + beside } else { p }));
        }
    }
    for (i, panel) in net.panels.iter().enumerate() {
        let b = panel.outline.bounds();
        for side in ["top", "right", "bottom", "left"] {
            let mut longer = net.clone();
            for p in &mut longer.panels[i].outline.corners {
                match side {
                    "top" if p.y == b.min.y => p.y -= mm,
                    "right" if p.x == b.max.x => p.x += mm,
                    "bottom" if p.y == b.max.y => p.y += mm,
                    "left" if p.x == b.min.x => p.x -= mm,
                    _ => {}
                }
            }
            try_one(format!("{} {side}", net.panel(PanelId(i)).name), longer);
        }
    }
    alive
}

/// A column or row is free where nothing else must equal it; these are, for the reasons given.
#[test]
fn a_millimetre_wrong_is_caught() {
    // A tab or tuck of any width does its work: its size is the maker's choice, within its range.
    assert_eq!(survivors(form("tuck-box")), ["column 5", "row 1"]);
    // The tab; and the first row begins with what lies round the lid.
    assert_eq!(survivors(form("triangle")), ["column 4", "row 1"]);
    assert_eq!(survivors(form("slice")), ["column 4", "row 1"]);
    // A star lies in the middle of a blank that may be larger; and a lid's rim may end where it likes.
    let blank = ["column 1", "row 1"];
    let lid = ["lid: column 1", "lid: row 1", "lid: mark 1 down", "lid: mark 29 down"];
    assert_eq!(survivors(form("prism")), [&blank[..], &lid].concat());
    assert_eq!(survivors(form("pyramid")), blank);
    assert_eq!(survivors(form("frustum")), blank);
    assert_eq!(survivors(form("row-holder")), Vec::<String>::new());
    assert_eq!(survivors(form("lid-base")), Vec::<String>::new());
    assert_eq!(survivors(form("tray")), Vec::<String>::new());
    // A wider first column or row makes only the strip wider that comes off the free edge of an inner wall.
    assert_eq!(survivors(form("double-tray")), ["column 1", "row 1"]);
    assert_eq!(survivors(form("tuck-ends")), ["column 5", "row 1", "row 5"]);
    assert_eq!(survivors(form("bag")), ["column 7"]);
    // A wallet's tabs, and a flap that may end anywhere on the front.
    assert_eq!(survivors(form("wallet")), ["column 1", "column 5", "row 5"]);
    // The same for the sleeve's tab.
    assert_eq!(survivors(form("drawer")), ["sleeve: column 5"]);
    assert_eq!(survivors(form("set-tray")), Vec::<String>::new());
    assert_eq!(survivors(form("grid-holder")), Vec::<String>::new());
    assert_eq!(survivors(form("band")), ["column 5"]);
    // A front lip of any depth does its work. The first column and row begin with what is trimmed off: more of that
    // leaves every panel as it was.
    assert_eq!(survivors(form("hinged-box")), ["column 1", "row 1", "row 5"]);
    assert_eq!(survivors(form("tower")), ["column 5", "wrap: column 5"]);
    assert_eq!(survivors(form("carrier")), Vec::<String>::new());
    assert_eq!(survivors(form("book-cover")), Vec::<String>::new());
    // The flange is glued over as much as there is.
    assert_eq!(survivors(form("step-stand")), ["row 9"]);
    assert_eq!(survivors(form("layered-box")), Vec::<String>::new());
}

/// The proof of joins and seats sees what it is there for.
#[test]
fn a_bad_joint_is_caught() {
    let (whole, t) = typical(form("lid-base"));
    let caught = |wrong: &Assembly, fault: fn(&Fault) -> bool| faults(wrong, t).iter().any(fault);
    let mm = Length::mm(1);
    // A lid two millimetres narrower that promises what it has: only the clearance is wrong.
    let mut tight = whole.clone();
    let lid = &mut tight.parts[1];
    let beyond = lid.net.lines.across[1];
    lid.net = mapped(&lid.net, |mut p| {
        p.x -= if p.x > beyond { mm * 2 } else { Length::ZERO };
        p
    });
    (lid.inside, lid.outside) = (None, None);
    assert!(caught(&tight, |f| matches!(f, Fault::Clearance { .. })));

    let mut matted = whole;
    matted.parts[0].net.panels[1].mat = snugfold::net::flat::Matting::Usual;
    assert!(caught(&matted, |f| matches!(f, Fault::MatSlides { .. })));

    let (mut blocked, _) = typical(form("drawer"));
    blocked.joins[0].from = snugfold::form::assembly::From::Above;
    assert!(caught(&blocked, |f| matches!(f, Fault::Blocked { .. })));

    let (mut shifted, _) = typical(form("set-tray"));
    shifted.seats[0].at.right += mm * 2;
    assert!(caught(&shifted, |f| matches!(f, Fault::Seat(_))));
}
