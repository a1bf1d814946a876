//! Forms that their makers draw: what is found is so, what is offered helps, and they travel.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::drawn::{DRAWN, bench, set_of_drawn};
use snugfold::fit::own::Rank;
use snugfold::fit::own::cure::{Cure, How, cures};
use snugfold::fit::own::equal::named;
use snugfold::fit::own::reach::{folds, reach};
use snugfold::form::own::read::read;
use snugfold::form::own::shape::{make, told};
use snugfold::form::own::words::size;
use snugfold::form::own::write::text;
use snugfold::keep::link;
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::plan::plan;
use snugfold::project::finding::{OwnFault, OwnText};
use snugfold::project::request::Project;

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

/// A drawn form takes its size from its gifts, as any box: by trial, with the proof's own inside.
#[test]
fn a_drawn_form_follows_its_gifts() {
    let drawn = "size width = 70 mm\nsize depth = 20 mm\nsize height = 100 mm\nsize tab = 12 mm\ncolumns width, depth, width, depth, tab\n\
        rows height, depth\nempty\nA1 front\nB1 right side\nC1 back\nD1 left side\nE1 glue tab\nC2 base\nglue E1 to A1\nstill A1";
    let mut project = set_of_drawn(drawn);
    for system in System::ALL {
        project.boxes[0].gifts.kinds = snugfold::fit::gifts::own(system).into_iter().collect();
        let plan = plan(&project, system);
        let inside = plan.boxes[0].assembly.as_ref().unwrap_or_else(|| panic!("{:?}", plan.findings)).inside;
        let mut sides = [inside.width, inside.depth, inside.height];
        sides.sort_unstable();
        // A gift of 25 × 50 × 75 mm (1 × 2 × 3 in) with its room, and no more than two grooves beyond.
        let needs = snugfold::fit::gifts::room(&project.boxes[0].gifts, system).width;
        let gift =
            if system == System::Inch { [1, 2, 3].map(|n| Length::inches(n, 1)) } else { [25, 50, 75].map(Length::mm) };
        for (side, gift) in sides.into_iter().zip(gift) {
            let spare = side - gift - needs;
            assert!(spare >= Length::ZERO && spare < Length::inches(1, 4), "{system:?}: {sides:?}");
        }
    }
}
