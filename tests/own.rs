//! Forms that their makers draw: those of the catalogue come back, whatever is drawn is answered, and what is found is so.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::drawn::{DRAWN, set_of_drawn};
use common::tries;
use common::typical::{form, set_of, typical};
use proptest::prelude::*;
use proptest::test_runner::{Config, FileFailurePersistence};
use snugfold::assembly::moves::Way;
use snugfold::assembly::parts::{Assembly, Part};
use snugfold::fit::own::cure::{Cure, How, cures};
use snugfold::fit::own::equal::named;
use snugfold::fit::own::reach::{folds, reach};
use snugfold::fit::own::{Bench, Rank};
use snugfold::fold::prove::{Fault, part_faults};
use snugfold::form::own::build::Measures;
use snugfold::form::own::copy::copy;
use snugfold::form::own::drawn::Drawn;
use snugfold::form::own::read::read;
use snugfold::form::own::shape::{make, told};
use snugfold::form::own::words::size;
use snugfold::form::own::write::text;
use snugfold::form::registry::{FORMS, Holds};
use snugfold::keep::link;
use snugfold::measure::given::Given;
use snugfold::measure::grid::Grid;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::net::flat::{Frame, Net};
use snugfold::plan::{Plan, plan};
use snugfold::project::bound;
use snugfold::project::finding::{OwnFault, OwnText, Place, What};
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

/// What a maker works with in inches.
fn bench() -> Bench {
    Bench {
        system: System::Inch,
        score: Grid::every(Length::inches(1, 8)),
        clear: bound::CLEAR.of(System::Inch),
        thickness: Length::um(300),
    }
}

/// A ring of four walls with a tab, as it is spoken.
const RING: &str = "blank 9 x 5; score at 3, 4 1/4, 7 1/4, 8 1/2; E1 tab";

fn said(text: &str) -> Vec<OwnFault> {
    let drawn = read(text, System::Inch).expect("it can be read");
    let b = bench();
    let sizes = b.sizes(&drawn, &[]);
    let made = make(&drawn, &b.measures(&sizes), b.clear).expect("it can be made");
    told(&made, b.thickness).into_iter().map(|s| s.1).collect()
}

#[test]
fn a_spoken_ring_is_offered_its_glue_and_its_sizes() {
    let drawn = read(RING, System::Inch).expect("it can be read");
    assert_eq!((drawn.width(), drawn.height()), (5, 1));
    let tab = OwnFault::Unglued { tab: "E1", panel: "A1" };
    assert!(said(RING).contains(&tab), "{:?}", said(RING));
    let glued = cures(&drawn, &bench()).into_iter().find(|c| c.fault == tab).expect("it is offered").drawn;
    assert!(said(&text(&glued)).is_empty(), "{:?}", said(&text(&glued)));
    let named = named(&glued, &bench()).expect("it can be named");
    let mut names: Vec<_> =
        named.groups.iter().map(|g| (size(g.name), g.length.text().to_owned(), g.ranks.clone())).collect();
    names.sort_by(|a, b| a.2.cmp(&b.2));
    use Rank::{Column, Row};
    assert_eq!(
        names,
        [
            ("width", "3 in".to_owned(), vec![Column(0), Column(2)]),
            ("depth", "1 1/4 in".to_owned(), vec![Column(1), Column(3)]),
            ("tab", "1/2 in".to_owned(), vec![Column(4)]),
            ("height", "5 in".to_owned(), vec![Row(0)]),
        ]
    );
    let reach = reach(&named.drawn, &[], &bench()).expect("it folds");
    for r in &reach {
        let ends = [r.least, r.most].map(|l| folds(&named.drawn, &[(r.name, l)], &bench()));
        assert_eq!(ends, [true, true], "{r:?}");
    }
    println!("{:?}", reach.iter().map(|r| (size(r.name), r.least, r.most)).collect::<Vec<_>>());
    let tab = reach.iter().find(|r| size(r.name) == "tab").expect("it has one");
    assert!(
        !folds(&named.drawn, &[(tab.name, tab.most + Length::inches(1, 8))], &bench()),
        "beyond its end it does not"
    );
}

#[test]
fn a_tab_that_misses_is_cured_by_the_column_that_is_out() {
    let wrong = RING.replace("8 1/2", "8 3/8");
    let misses = OwnFault::Misses { tab: "E1", panel: "A1", by: Length::inches(1, 8) };
    assert!(said(&wrong).contains(&misses), "{:?}", said(&wrong));
    let drawn = read(&wrong, System::Inch).expect("it can be read");
    let cures: Vec<Cure> = cures(&drawn, &bench()).into_iter().filter(|c| c.fault == misses).collect();
    for c in &cures {
        println!("{:?}", c.how);
    }
    let first = cures.first().expect("there is one");
    let equal = How::Equal { rank: Rank::Column(3), like: Rank::Column(1), to: Length::inches(5, 4) };
    assert!(cures.iter().any(|c| c.how == equal), "{:?}", first.how);
}

/// Any drawing at all: a grid with cells, lines, trims, glue and order thrown onto it.
fn any_form() -> impl Strategy<Value = String> {
    let size = prop_oneof![
        8 => (1_i64..=40).prop_map(|n| format!("{n}/8 in")),
        2 => (1_i64..=900).prop_map(|n| format!("{n} mm")),
        1 => Just("width".to_owned()),
        1 => Just("half depth - 1/16 in".to_owned()),
        1 => Just("width - depth".to_owned()),
    ];
    let spans = || prop::collection::vec(size.clone(), 1..=10);
    (spans(), spans()).prop_flat_map(|(columns, rows)| {
        let (w, h) = (columns.len(), rows.len());
        let cell = (0..w, 0..h).prop_map(|(c, r)| format!("{}{}", char::from(b'A' + c as u8), r + 1));
        let side = prop::sample::select(vec!["top", "right", "bottom", "left"]);
        let corner = prop::sample::select(vec!["top left", "top right", "bottom left", "bottom right"]);
        let length = prop::sample::select(vec!["1/16 in", "1/4 in", "1 in", "tab", "3 in", "width - 1/8 in"]);
        let detail = prop_oneof![
            (side.clone(), length.clone()).prop_map(|(s, l)| format!("strip {s}: {l}")),
            (corner.clone(), length.clone(), length.clone()).prop_map(|(c, a, b)| format!("wedge {c}: {a} × {b}")),
            (corner, length.clone()).prop_map(|(c, l)| format!("round {c}: {l}")),
            (side.clone(), length.clone()).prop_map(|(s, l)| format!("notch {s}: {l}")),
            (side, length.clone(), length.clone(), length.clone())
                .prop_map(|(s, a, b, c)| format!("slot {s}: {a} × {b} × {c}")),
            (length.clone(), length.clone(), length.clone()).prop_map(|(a, b, c)| format!("hole: {a} × {b} × {c}")),
            (-180_i32..=180).prop_map(|a| format!("score falling {a}")),
            (-180_i32..=180).prop_map(|a| format!("score rising {a}")),
            (-100_i32..=100).prop_map(|l| format!("level {l}")),
            Just("mat".to_owned()),
        ];
        let word = prop::sample::select(vec![
            "panel",
            "a tab",
            "a tuck",
            "lid",
            "front",
            "glue tab",
            "away",
            "base as wall",
            "tuck",
            "a dust flap",
        ]);
        let of_cell = (cell.clone(), word, prop::collection::vec(detail, 0..3))
            .prop_map(|(c, w, d)| std::iter::once(format!("{c} {w}")).chain(d).collect::<Vec<_>>().join("; "));
        let beside = (0..w, 0..h, any::<bool>()).prop_map(move |(c, r, right)| {
            let (d, s) = if right { ((c + 1) % w, r) } else { (c, (r + 1) % h) };
            let name = |c: usize, r: usize| format!("{}{}", char::from(b'A' + c as u8), r + 1);
            format!("{}|{}", name(c, r), name(d, s))
        });
        let line = prop_oneof![
            beside.clone().prop_map(|b| format!("cut {b}")),
            beside.clone().prop_map(|b| format!("whole {b}")),
            (beside, -180_i32..=180).prop_map(|(b, a)| format!("fold {b} {a}")),
        ];
        let more = prop_oneof![
            (cell.clone(), cell.clone()).prop_map(|(a, b)| format!("glue {a} to {b}")),
            (cell.clone(), cell.clone()).prop_map(|(a, b)| format!("glue {a} inside to {b}; border 1/8 in")),
            cell.clone().prop_map(|c| format!("still {c}")),
            Just("as base".to_owned()),
            Just("as front".to_owned()),
            (cell.clone(), cell.clone()).prop_map(|(a, b)| format!("then {a}, {b}")),
            (cell.clone(), cell.clone(), cell)
                .prop_map(|(a, b, c)| format!("then {a}; tuck {b} behind {c}; gap 1/16 in")),
        ];
        let all = (
            prop::collection::vec(of_cell, 0..30),
            prop::collection::vec(line, 0..60),
            prop::collection::vec(more, 0..8),
        );
        all.prop_map(move |(cells, lines, more)| {
            let head = format!(
                "size width = 3 in\nsize depth = 1 1/4 in\nsize tab = 1/2 in\ncolumns {}\nrows {}",
                columns.join(", "),
                rows.join(", ")
            );
            let rest = cells.into_iter().chain(lines).chain(more);
            std::iter::once(head).chain(rest).collect::<Vec<_>>().join("\n")
        })
    })
}

/// Lines between cells that do not lie beside each other are refused: they are left out here.
fn readable(text: &str) -> Option<Drawn> {
    let mut lines: Vec<&str> = text.lines().collect();
    while let Err(e) = read(&lines.join("\n"), System::Inch) {
        let before = lines.len();
        lines.retain(|l| l.trim() != e.said);
        if lines.len() == before {
            return None;
        }
    }
    read(&lines.join("\n"), System::Inch).ok()
}

proptest! {
    #![proptest_config(Config {
        cases: tries(400),
        failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/data/own.seeds"))),
        ..Config::default()
    })]

    /// Whatever is drawn is planned and told of; what adds up flat is not left to luck.
    #[test]
    fn any_drawing_is_answered(text in any_form()) {
        let Some(drawn) = readable(&text) else { return Ok(()) };
        let b = bench();
        let written = snugfold::form::own::write::text(&drawn);
        prop_assert_eq!(read(&written, System::Metric), Ok(drawn.clone()), "{}", written);
        let sizes = b.sizes(&drawn, &[]);
        if let Ok(made) = make(&drawn, &b.measures(&sizes), b.clear) {
            let faults = part_faults(&made.part, b.thickness);
            prop_assert!(!faults.iter().any(|f| matches!(f, Fault::AreaLost)), "{written}");
            let _ = told(&made, b.thickness);
            prop_assert!(made.part.moves.iter().map(|m| match &m.way {
                Way::Even(c) | Way::EndOnly { creases: c, .. } => c.len(),
                Way::TuckIn { .. } => 2,
                Way::Sprung { .. } => 0,
            }).sum::<usize>() == made.part.net.creases.len(), "each crease folds once: {written}");
        }
        let mut project = set_of(form("own"));
        project.boxes[0].drawn = written;
        for system in [System::Inch, System::Metric] {
            let plan = plan(&project, system);
            for f in &plan.findings {
                prop_assert!(!snugfold::say::finding::finding(f, system).to_string().is_empty());
            }
        }
    }

    /// Any text at all is read or refused.
    #[test]
    fn any_text_is_read_or_refused(text in "(blank [0-9x /.]{0,12}|score [0-9, /]{0,12}|turn|[A-M][0-9]{1,2} [a-z ]{0,12}|[;|:,×° a-z0-9\n-]{0,40}|\\PC{0,20}|\n|; ){0,12}") {
        let _ = read(&text, System::Inch).map(|d| snugfold::form::own::write::text(&d));
    }
}

/// Drawn forms that fold are told to, with diagonal scores, cells that are one and folds to and fro among them.
#[test]
fn drawn_forms_that_fold_are_well() {
    for (name, text) in &DRAWN[1..4] {
        assert_eq!(said(text), [], "{name}");
    }
    assert_eq!(said(DRAWN[4].1), [OwnFault::Alone("A1")]);
    // A gusset that is folded ten degrees too little leaves its corner open.
    let open = said(&DRAWN[3].1.replace("falling -180", "falling -170"));
    assert!(
        open.iter().any(|f| matches!(f, OwnFault::Round(a, b) if a.starts_with("A1") && b.starts_with("A1"))),
        "{open:?}"
    );
}

/// Two flaps that meet on their way: one after the other they pass.
#[test]
fn flaps_that_cross_are_folded_one_after_the_other_or_trimmed() {
    let lids = "columns 2 in, 4 in, 2 in\nrows 3 in, 5 in, 3 in\nempty\nA2 panel\nB1 panel\nB2 panel\nB3 panel\nC2 panel\nfold A2|B2 180\nfold B2|C2 180\nfold B1|B2 180\nfold B2|B3 180\nstill B2\nas base";
    let crossing: Vec<OwnFault> = said(lids).into_iter().filter(|f| matches!(f, OwnFault::Cross { .. })).collect();
    assert!(!crossing.is_empty(), "{:?}", said(lids));
    let drawn = read(lids, System::Inch).expect("it can be read");
    let cures: Vec<Cure> = cures(&drawn, &bench()).into_iter().filter(|c| c.fault == crossing[0]).collect();
    assert!(
        cures.iter().any(|c| matches!(c.how, How::After(..))),
        "{crossing:?} {:?}",
        cures.iter().map(|c| &c.how).collect::<Vec<_>>()
    );
    for cure in cures {
        assert!(!said(&text(&cure.drawn)).contains(&crossing[0]), "{:?}", cure.how);
    }
}

/// A corner where four scores meet is told, and cutting one of them helps.
#[test]
fn a_corner_that_cannot_fold_is_cut() {
    let tray = "blank 6 x 5; score at 1, 5; turn; score at 1, 4";
    let round = said(tray);
    assert!(round.iter().any(|f| matches!(f, OwnFault::Round(..))), "{round:?}");
    let mut drawn = read(tray, System::Inch).expect("it can be read");
    for _ in 0..8 {
        let Some(cure) = cures(&drawn, &bench()).into_iter().find(|c| matches!(c.how, How::Cut(..))) else { break };
        drawn = cure.drawn;
    }
    let left = said(&text(&drawn));
    assert!(!left.iter().any(|f| matches!(f, OwnFault::Round(..))), "{left:?}");
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

/// As a maker says it, in sentences and lists.
#[test]
fn a_recipe_is_read_as_it_is_spoken() {
    let spoken = "Cut a blank of 9 1/2 by 9 inches. Score at 2, 4 1/2, 6 1/2 and 9. Turn. Score at 1, 3, 7. A1, B1 and C1 away; \
                  E1 away; B2, E2, E4 are away; E3 is the tab. D2 is a lid; cut between A4 and B4; cut B4 from C4; cut C4 D4; \
                  cut C2|D2; glue E3 to A3.";
    let plain = "blank 9.5 x 9 in; score at 2, 4.5, 6.5, 9; turn; score 1, 3, 7; A1 away; B1 away; C1 away; E1 away; B2 away; \
                 E2 away; E4 away; E3 tab; D2 a lid; cut A4|B4; cut B4|C4; cut C4|D4; cut C2|D2; glue E3 to A3";
    let [a, b] = [spoken, plain].map(|t| read(t, System::Inch).unwrap_or_else(|e| panic!("{e:?}")));
    assert_eq!(
        text(&a).replace("lid", "a lid").replace("a a", "a"),
        text(&b).replace("lid", "a lid").replace("a a", "a")
    );
    let why = |t: &str| read(t, System::Inch).expect_err("it is wrong").why;
    assert_eq!(why("blank 4 x 4; score at 2; cut A1"), OwnText::Pair);
    assert_eq!(why("blank 4 x 4; score at 5"), OwnText::BeyondBlank);
    assert_eq!(why("score at 2"), OwnText::NoBlank);
    assert_eq!(why("blank 4 x 4; score at 2; B9 tab"), OwnText::Cell);
    assert_eq!(why("blank 4 x 4; score at 2; fold A1|B1 200"), OwnText::Angle);
}

/// The tower of four walls, tab, four base flaps and a lid with a tuck.
const TOWER: &str = "size width = 2 1/2 in\nsize depth = 2 in\nsize height = 4 in\nsize tuck = 1 in\nsize tab = 1/2 in\n\
    columns depth, width, depth, width, tab\nrows tuck, depth, height, depth\nempty\nD1 tuck\nA2 panel\nC2 panel\nD2 lid\n\
    A3 left side\nB3 front; strip top: 1/8 in\nC3 right side\nD3 back\nE3 a tab\nA4 panel\nB4 inner base\nC4 panel\nD4 outer base as floor\n\
    cut C2|D2\ncut A4|B4\ncut B4|C4\ncut C4|D4\nglue E3 to A3\nstill B3\nthen E3\nthen C3, D3\nthen A3\nthen B4\nthen A4\nthen C4\nthen D4\n\
    then A2\nthen C2\nthen D2; tuck D1 behind B3";

/// A tuck that is longer than its wall is told, and ends the range of sizes.
#[test]
fn a_tuck_stays_above_the_base() {
    let stuck = |t: &str| said(t).iter().any(|f| matches!(f, OwnFault::TuckStuck(_)));
    assert!(!stuck(TOWER), "{:?}", said(TOWER));
    assert!(stuck(&TOWER.replace("tuck = 1 in", "tuck = 6 in")));
    assert!(stuck(&TOWER.replace("height = 4 in", "height = 3/4 in")));
}

/// What nothing holds is offered to be glued to what it lies on, where that helps.
#[test]
fn a_loose_base_is_offered_its_glue() {
    let drawn = read(TOWER, System::Inch).expect("it can be read");
    let loose = said(TOWER)
        .into_iter()
        .find(|f| matches!(f, OwnFault::Unheld(_)))
        .unwrap_or_else(|| panic!("{:?}", said(TOWER)));
    let cures: Vec<Cure> = cures(&drawn, &bench()).into_iter().filter(|c| c.fault == loose).collect();
    assert!(
        cures.iter().any(|c| matches!(c.how, How::Glue(..))),
        "{loose:?}: {:?}",
        cures.iter().map(|c| &c.how).collect::<Vec<_>>()
    );
}

/// Walls are named before tucks.
#[test]
fn walls_are_named_before_flaps() {
    let recipe = "blank 9 1/2 x 9; score at 2, 4 1/2, 6 1/2, 9; turn; score at 1, 3, 7; E3 tab; A1, B1, C1, E1, B2, E2, E4 away; \
                  A3 left side; B3 front; C3 right side; D3 back; D2 lid; cut A4|B4; cut B4|C4; cut C4|D4; cut C2|D2; glue E3 to A3";
    let named = named(&read(recipe, System::Inch).expect("it can be read"), &bench()).expect("it can be named");
    let height = named.groups.iter().find(|g| size(g.name) == "height").expect("it has one");
    assert_eq!(height.ranks, [Rank::Row(2)]);
}

/// A drawn form goes through a link and a file and is the same set; what is too long for a link is said.
#[test]
fn drawn_forms_travel() {
    for (name, drawn) in DRAWN {
        let project = set_of_drawn(drawn);
        let there = link::write(&project).unwrap_or_else(|e| panic!("{name}: {e}"));
        let back = link::read(&there).unwrap_or_else(|e| panic!("{name}: {e}"));
        assert_eq!(back.boxes[0].drawn, drawn, "{name}");
        assert!(plan(&back, System::Inch) == plan(&project, System::Inch), "{name}");
    }
    let mut long = set_of_drawn(DRAWN[1].1);
    long.boxes[0].drawn.push_str(&"\nA1 panel".repeat(2_000));
    long.boxes = (1..4).map(|id| snugfold::project::request::Part { id, ..long.boxes[0].clone() }).collect();
    assert_eq!(link::write(&long), Err(link::LinkError::TooLong));
}

/// Each wall of a ring made a sixteenth wider in turn, and the tab put elsewhere: all of it is told.
#[test]
fn one_wrong_width_is_told() {
    let good = "columns 3 in, 1 1/4 in, 3 in, 1 1/4 in, 1/2 in\nrows 5 in\nempty\nA1 panel\nB1 panel\nC1 panel\nD1 panel\nE1 a tab\nglue E1 to A1\nstill A1";
    assert_eq!(said(good), []);
    for (n, from) in [(0, "columns 3 in"), (1, "1 1/4 in, 3"), (2, "3 in, 1 1/4 in, 1/2"), (3, "1 1/4 in, 1/2")] {
        let wider = from.replacen("3 in", "3 1/16 in", 1).replacen("1 1/4 in", "1 5/16 in", usize::from(n % 2 == 1));
        let wrong = good.replacen(from, &wider, 1);
        assert_ne!(wrong, good);
        assert!(
            said(&wrong).iter().any(|f| matches!(f, OwnFault::Misses { tab: "E1", .. })),
            "{wrong}: {:?}",
            said(&wrong)
        );
    }
    assert!(said(&good.replace("fold", "")).is_empty() && !said(&format!("{good}\nfold D1|E1 -90")).is_empty());
}

/// Lengths beyond all measure are told, not reckoned with.
#[test]
fn lengths_beyond_all_measure_are_told() {
    for text in [
        "blank 999999999999999999 x 5",
        "blank 5 x 5; score at 999999999999999",
        "size width = 99999999999999999 in\ncolumns width, width + width, half width - 99999999999999999 mm\nrows 99999999999999999 in, 0.000001 mm",
        "columns 1 in, 99999999999999999 mm\nrows 1 in\nempty\nA1 panel; strip top: 99999999999999999 in; notch left: 99999999999999999 in\nB1 panel",
    ] {
        let Ok(drawn) = read(text, System::Inch) else { continue };
        let written = snugfold::form::own::write::text(&drawn);
        let mut project = set_of_drawn(&written);
        project.boxes[0].inputs.insert(
            "width".to_owned(),
            snugfold::project::request::Entry::Length(
                Given::read("99999999999999999 in", System::Inch).expect("a length"),
            ),
        );
        for system in [System::Inch, System::Metric] {
            assert!(
                plan(&project, system)
                    .findings
                    .iter()
                    .any(|f| matches!(f.what, What::Own(_) | What::LengthOutside { .. })),
                "{text}"
            );
        }
        let _ = (cures(&drawn, &bench()), named(&drawn, &bench()), reach(&drawn, &[], &bench()));
    }
}

/// A box that is given another form has that form's name; what was drawn for it waits.
#[test]
fn a_drawn_name_belongs_to_the_drawn_form() {
    let mut project = set_of_drawn("called Pen pot\nblank 4 x 4; score at 2");
    project.boxes[0].name.clear();
    let name = |p: &Project| plan(p, System::Inch).boxes[0].name.clone();
    assert_eq!(name(&project), "Pen pot");
    project.boxes[0].form = "tray".to_owned();
    assert_eq!(name(&project), "Tray");
}
