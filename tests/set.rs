//! Whole sets: boxes of card with mats slide into their holder, and other libraries agree on where panels stand.

use nalgebra::{Isometry3, Point3, Translation3, UnitQuaternion, Vector3};
use proptest::prelude::*;

use snugfold::assembly::parts::Part as FormPart;
use snugfold::fit::odds::Accuracy;
use snugfold::fold::motion::{bends, folded};
use snugfold::fold::pose::Pose;
use snugfold::fold::room::{inside_of, outside_of};
use snugfold::make::slides::{Cure, SURE, odds};
use snugfold::measure::given::Given;
use snugfold::measure::length::Length;
use snugfold::measure::point::Point;
use snugfold::measure::system::System;
use snugfold::net::flat::PanelId;
use snugfold::plan::{Plan, plan};
use snugfold::project::example::example;
use snugfold::project::finding::Weight;
use snugfold::project::fitting::Facing;
use snugfold::project::request::{Card, Entry, Lie, Mats, Part, Project, Supply, Tint};
use snugfold::project::tools::{Board, Trimmer};
use snugfold::stock::weight::BasisWeight;

fn mm(um: i64) -> Given {
    Given::read(&format!("{}.{:03} mm", um / 1_000, um % 1_000), System::Metric).expect("it is a length")
}

fn card(id: u16, um: i64) -> Card {
    Card {
        id,
        name: String::new(),
        grammage: BasisWeight::Grams(250),
        thickness: Some(mm(um)),
        stack: 1,
        lesson: None,
        sheet_width: mm(1_500_000),
        sheet_height: mm(1_500_000),
        tint: Tint::default(),
        supply: Supply::default(),
        more_sheets: Vec::new(),
        lie: Lie::Either,
    }
}

fn part(id: u16, form: &str, sizes: &[(&str, i64)], count: u32) -> Part {
    let typed = |&(key, um): &(&str, i64)| (key.to_owned(), Entry::Length(mm(um)));
    Part {
        gifts: snugfold::project::fitting::Gifts::default(),
        extras: Vec::new(),
        facing: Facing::Front,
        blank: Default::default(),
        drawn: String::new(),
        id,
        name: String::new(),
        form: form.to_owned(),
        count,
        card: 1,
        inputs: sizes.iter().map(typed).collect(),
        mats: Some(Mats { card: 2, reveal: None, off: Vec::new() }),
    }
}

/// Up to five kinds of boxes, in card of any thickness, with mats of any thickness, in a row holder.
fn sets() -> impl Strategy<Value = (Project, System)> {
    let facing = prop::sample::select(Facing::ALL.to_vec());
    let a_box = (20_000_i64..=120_000, 20_000_i64..=80_000, 60_000_i64..=200_000, 1_u32..=3, facing);
    let boxes = prop::collection::vec(a_box, 1..=5);
    (boxes, 150_i64..=450, 80_i64..=350, any::<bool>()).prop_map(|(boxes, t, m, inch)| {
        let boxes = boxes.into_iter().enumerate();
        let project = Project {
            name: String::new(),
            system: System::Metric,
            board: Board::default(),
            sets: 1,
            trimmer: Trimmer::default(),
            spares: 0,
            cards: vec![card(1, t), card(2, m)],
            boxes: boxes
                .map(|(i, (w, d, h, n, facing))| {
                    let id = u16::try_from(i).expect("few boxes") + 1;
                    Part { facing, ..part(id, "tuck-box", &[("width", w), ("depth", d), ("height", h)], n) }
                })
                .collect(),
            holder: Some(part(0, "row-holder", &[], 1)),
            ..Project::default()
        };
        (project, if inch { System::Inch } else { System::Metric })
    })
}

/// What the folded boxes leave of the folded holder's inside, in mm: along the row and across it. Everything is
/// measured on panels in space; mats are counted one by one.
fn room_left(plan: &Plan) -> (f64, f64) {
    let holder = plan.holder.as_ref().expect("it has a holder");
    let assembly = holder.assembly.as_ref().expect("it can be made");
    let inside = inside_of(&assembly.parts[0], holder.thickness);
    let (mut along, mut across) = (0.0, 0.0_f64);
    for b in &plan.boxes {
        let part = &b.assembly.as_ref().expect("it can be made").parts[0];
        let bare = outside_of(part, b.thickness);
        let mats = |names: [&str; 2]| {
            let on = names.iter().filter(|n| b.mats.iter().any(|m| part.net.panel(m.panel).name == **n)).count();
            on as f64 * b.mat_thickness.as_mm()
        };
        let wide = bare.width.expect("closed") + mats(["left side", "right side"]);
        let deep = bare.depth.expect("closed") + mats(["front", "back"]);
        let high = bare.height.expect("closed") + mats(["lid", ""]);
        // The left side forward: it is as wide as the box is deep. The lid forward: it is as deep as the box is high.
        let (wide, deep) = match b.facing {
            Facing::Front => (wide, deep),
            Facing::Side => (deep, wide),
            Facing::Lid => (wide, high),
        };
        along += f64::from(b.count) * wide;
        across = across.max(deep);
    }
    (inside.width.expect("closed") - along, inside.depth.expect("closed") - across)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 500, ..ProptestConfig::default() })]

    /// At least the millimetre that boxes need to slide, in total, along the row and across it.
    #[test]
    fn boxes_slide_into_their_holder((project, system) in sets()) {
        let plan = plan(&project, system);
        prop_assert!(!plan.stopped(), "{:?}", plan.findings);
        let (along, across) = room_left(&plan);
        prop_assert!(along >= 1.0, "only {along} mm along the row");
        prop_assert!(across >= 1.0, "only {across} mm across it");
        // Never more than the clearance asked for, the step of the board and a hair of rounding.
        let step = if system == System::Inch { 3.175 + 1.5875 } else { 1.0 + 1.5 };
        prop_assert!(along < step + 0.01 && across < step + 0.01, "{along} {across}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// A clearance that is said to make it sure does, once it is asked for.
    #[test]
    fn the_clearance_advised_makes_it_sure((mut project, system) in sets()) {
        let odds = |project: &Project| {
            let plan = plan(project, system);
            odds(&plan.boxes, plan.holder.as_ref()?, system, &Accuracy::usual(system))
        };
        let before = odds(&project).expect("it is planned");
        match before.cure {
            Cure::None => prop_assert!(before.per_mille >= SURE),
            Cure::MeasureFirst => prop_assert!(before.per_mille < SURE),
            Cure::Clearance(asked) => {
                prop_assert!(before.per_mille < SURE);
                let holder = project.holder.as_mut().expect("it has one");
                let typed = Given::read(&format!("{} mm", asked.nm() as f64 / 1e6), System::Metric).expect("a length");
                holder.inputs.insert("clearance".to_owned(), Entry::Length(typed));
                let after = odds(&project).expect("it is planned");
                prop_assert!(after.per_mille >= SURE, "{before:?} {after:?}");
            }
        }
    }
}

/// A general-purpose linear-algebra library (nalgebra) puts every panel where we put it, at any stage of folding.
#[test]
fn nalgebra_agrees_on_posed_panels() {
    let project = example().expect("the example is a project");
    for system in System::ALL {
        for planned in plan(&project, system).parts() {
            let part = &planned.assembly.as_ref().expect("it can be made").parts[0];
            for stage in 0..=part.moves.len() * 4 {
                let bends = bends(part, stage as f64 / 4.0);
                let ours = Pose::of(part, &bends, Length::ZERO);
                let degrees: Vec<f64> = bends.iter().map(|b| b.degrees).collect();
                compare(part, &ours, &degrees);
            }
        }
    }
}

fn compare(part: &FormPart, ours: &Pose, degrees: &[f64]) {
    let flat = |p: Point| Point3::new(p.x.as_mm(), -p.y.as_mm(), 0.0);
    // The root as we place it; every other panel by their rotations about crease lines.
    let root = &ours.panels[0];
    let axis = |v: snugfold::fold::space::V3| Vector3::new(v.x, v.y, v.z);
    let turn = nalgebra::Rotation3::from_basis_unchecked(&root.axes.map(axis));
    let start =
        Isometry3::from_parts(Translation3::from(axis(root.origin)), UnitQuaternion::from_rotation_matrix(&turn));
    let mut theirs = vec![start; part.net.panels.len()];
    for (crease, degrees) in part.net.creases.iter().zip(degrees) {
        let (from, to) = (flat(crease.from), flat(crease.to));
        let cell = part.net.panel(crease.far).cell;
        let middle = nalgebra::center(&flat(cell.min), &flat(cell.max));
        let line = nalgebra::Unit::new_normalize(to - from);
        let turn = |angle: f64| {
            let about = UnitQuaternion::from_axis_angle(&line, angle);
            Isometry3::rotation_wrt_point(about, from)
        };
        // Mountain, outside up: the far panel goes down, whichever way round the line was named.
        let angle = degrees.to_radians();
        let down = if (turn(0.1) * middle).z < 0.0 { turn(angle) } else { turn(-angle) };
        theirs[crease.far.0] = theirs[crease.near.0] * down;
    }
    for (i, panel) in part.net.panels.iter().enumerate() {
        for &corner in &panel.outline.corners {
            let (a, b) = (ours.point(PanelId(i), corner), theirs[i] * flat(corner));
            let off = (Vector3::new(a.x, a.y, a.z) - b.coords).norm();
            assert!(off < 1e-9, "{} is {off} mm off", panel.name);
        }
    }
    assert_eq!(folded(part).len(), part.net.creases.len());
}

/// Arithmetic of common practice, no source: a tuck-top box finished 3 × 1¼ × 5 in with tab and tuck of ½ in.
#[test]
fn the_tuck_box_of_common_practice() {
    let text = r#"{ "cards": [ { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "12 in", "sheet_height": "12 in" } ],
        "boxes": [ { "id": 1, "form": "tuck-box", "card": 1, "mats": { "card": 1, "reveal": "1/8 in" },
        "inputs": { "width": "3 in", "depth": "1 1/4 in", "height": "5 in", "tab": "1/2 in", "tuck": "1/2 in" } } ] }"#;
    let project: Project = serde_json::from_str(text).expect("it is a project");
    let plan = plan(&project, System::Inch);
    let eighths = |all: &[i64]| all.iter().map(|&n| Length::inches(n, 8)).collect::<Vec<_>>();
    let recipe = &plan.boxes[0].recipes[0];
    assert_eq!((recipe.width, recipe.height), (Length::inches(9, 1), Length::inches(8, 1)));
    assert_eq!(recipe.scores[0].at, eighths(&[10, 34, 44, 68])); // 1¼, 4¼, 5½, 8½
    assert_eq!(recipe.scores[1].at, eighths(&[4, 14, 54])); // ½, 1¾, 6¾
    assert_eq!(recipe.scores[0].last_panel(), Length::inches(1, 2));
    let mats: Vec<_> = plan.pieces[1..].iter().map(|p| (p.each, p.width, p.height)).collect();
    let q = |n| Length::inches(n, 4);
    assert_eq!(mats, [(2, q(11), q(19)), (2, q(4), q(19)), (1, q(11), q(4))]);
    assert!(plan.findings.iter().all(|f| f.weight == Weight::Note), "{:?}", plan.findings);
}

/// Above five sets one is made first, and its fit said, before all are cut.
#[test]
fn of_many_sets_one_is_made_first() {
    use snugfold::make::step::Action;
    let first = |sets: u32| {
        let mut project = snugfold::project::example::example().expect("it reads");
        project.sets = sets;
        let steps = snugfold::plan::plan(&project, System::Metric).steps;
        let at = steps.iter().position(|s| s.action == Action::MakeOne);
        (at, steps.first().map(|s| s.key.clone()))
    };
    assert_eq!(first(5).0, None);
    assert_eq!(first(6).0, Some(0));
    assert_eq!(first(200), first(6), "a tick stays when there are more");
}
