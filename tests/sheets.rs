//! Sheets of a whole set: better layouts take the place of the quick ones, and steps and sheets agree.
#![cfg(not(target_arch = "wasm32"))]

use std::collections::{BTreeMap, BTreeSet};

use snugfold::cut::check::check;
use snugfold::cut::layout::Ending;
use snugfold::make::better::{Better, loses_ticks};
use snugfold::make::sheets::CardSheets;
use snugfold::make::step::Action;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan, relaid};
use snugfold::project::example::example;
use snugfold::project::finding::{Place, Weight, What};
use snugfold::project::request::{Entry, Project};
use snugfold::project::ticks::Ticks;
use snugfold::say::cutting::{buy, need};
use snugfold::say::finding::finding;
use snugfold::say::spelling::Spelling;
use snugfold::say::step::step as say;

fn sets(sets: u32) -> Project {
    Project { sets, ..example().expect("the example is a project") }
}

/// Searches every card of `plan` to the end, in slices of `work`.
fn searched(plan: &Plan, work: u64) -> Vec<CardSheets> {
    let mut better = Better::new(plan.sheets.iter().map(|s| s.job.clone()).collect());
    let mut found = Vec::new();
    let mut percent = 0;
    while !better.done() {
        found.extend(better.step(work));
        assert!(better.percent() >= percent, "it never goes back");
        percent = better.percent();
    }
    assert_eq!((found.len(), percent), (plan.sheets.len(), 100));
    found
}

#[test]
fn better_layouts_take_the_place_of_the_quick_ones() {
    for system in System::ALL {
        let project = sets(24);
        let quick = plan(&project, system);
        let found = searched(&quick, 20_000);
        assert_eq!(found, searched(&quick, 7_000_000), "slices do not matter");
        let best = relaid(&quick, &found);
        assert_eq!(best.sheets, found);
        let is_cut = |a: &Action| matches!(a, Action::CutSheets { .. } | Action::CutPieces { .. });
        for (before, after) in quick.sheets.iter().zip(&best.sheets) {
            assert_eq!(check(&after.job.wanted, &after.job.sheets, &after.job.rules, &after.layout), []);
            assert!(after.layout.sheets() <= before.layout.sheets());
            assert_eq!(after.layout.ending, Ending::Finished);
            // Every sheet is cut in exactly one step.
            let cut = best.steps.iter().filter_map(|s| match s.action {
                Action::CutSheets { card, pattern } if card == after.job.card => Some(pattern),
                _ => None,
            });
            assert_eq!(cut.collect::<Vec<_>>(), (0..after.layout.patterns.len()).collect::<Vec<_>>());
        }
        // Nothing else moves, and no two steps share a tick.
        let rest = |p: &Plan| p.steps.iter().filter(|s| !is_cut(&s.action)).cloned().collect::<Vec<_>>();
        assert_eq!(rest(&quick), rest(&best));
        // Cutting comes first, but for the one set that is made before many.
        let cut_first =
            |p: &Plan| p.steps.iter().find(|s| s.action != Action::MakeOne).expect("there are steps").clone();
        assert!(is_cut(&cut_first(&best).action));
        let keys: BTreeSet<&str> = best.steps.iter().map(|s| s.key.as_str()).collect();
        assert_eq!(keys.len(), best.steps.len());
        // A sheet that is ticked as cut is not taken back.
        let ticks = |p: &Plan| [cut_first(p).key].into_iter().collect::<Ticks>();
        let stays = keys.contains(cut_first(&quick).key.as_str());
        assert_eq!(loses_ticks(&quick.steps, &found[0], &ticks(&quick)), !stays);
        assert!(!loses_ticks(&best.steps, &found[0], &ticks(&best)));
        assert!(!loses_ticks(&quick.steps, &found[0], &Ticks::default()));
        // The same search again ticks the same steps.
        let again = relaid(&plan(&project, system), &found);
        assert!(again.steps.iter().map(|s| s.key.as_str()).eq(best.steps.iter().map(|s| s.key.as_str())));
    }
}

#[test]
fn what_was_found_for_another_batch_changes_nothing() {
    let quick = plan(&sets(3), System::Inch);
    let found = searched(&plan(&sets(4), System::Inch), 1_000_000);
    assert!(relaid(&quick, &found) == quick);
}

#[test]
fn a_search_that_is_stopped_says_at_how_much_work() {
    let quick = plan(&sets(40), System::Metric);
    let mut better = Better::new(quick.sheets.iter().map(|s| s.job.clone()).collect());
    assert!(better.so_far().is_none());
    assert!((0..2).all(|_| better.step(1_000).is_none()));
    let so_far = better.so_far().expect("it is at the first card");
    assert_eq!((so_far.layout.ending, so_far.layout.work), (Ending::Stopped, better.work()));
    let stopped = relaid(&quick, &[so_far]);
    assert_eq!(stopped.sheets[0].layout.work, better.work());
}

/// Read back from the words: every piece comes off as often as its sheets give it, and the cuts are numbered through.
#[test]
fn steps_say_every_cut_and_give_every_piece() {
    for system in System::ALL {
        let project = sets(5);
        let plan = plan(&project, system);
        let mut given: BTreeMap<String, u32> = BTreeMap::new();
        for step in &plan.steps {
            let Action::CutSheets { card, pattern } = step.action else {
                continue;
            };
            let sheets = plan.sheets.iter().find(|s| s.job.card == card).expect("it has sheets");
            let copies = sheets.layout.patterns[pattern].copies;
            let said = say(step, &plan, &project, Spelling::Uk);
            let lines: Vec<String> = said.lines.iter().map(ToString::to_string).collect();
            let mut next = 1_usize;
            let mut off: BTreeMap<String, u32> = BTreeMap::new();
            for (number, words) in lines.iter().filter_map(|l| l.split_once(" · ")) {
                let (first, last) = number.split_once(" to ").unwrap_or((number, number));
                assert_eq!(first.parse(), Ok(next), "{lines:#?}");
                next = last.parse::<usize>().expect("a number") + 1;
                let words: Vec<&str> = words.split([' ', ',', ';', '.']).filter(|w| !w.is_empty()).collect();
                for (i, word) in words.iter().enumerate() {
                    let count = match *word {
                        "piece" => 1,
                        "pieces" => words[i - 1].parse().expect("how many"),
                        _ => continue,
                    };
                    *off.entry(words[i + 1].to_owned()).or_default() += count;
                }
            }
            let promised = lines[0].strip_prefix("Each sheet gives ").and_then(|l| l.split('.').next());
            let promised: BTreeMap<String, u32> = promised
                .expect("it says what a sheet gives")
                .replace(" and ", ", ")
                .split(", ")
                .filter_map(|p| p.split_once(" × ").map(|(n, id)| (id.to_owned(), n.parse().expect("how many"))))
                .collect();
            if next > 1 {
                assert_eq!(off, promised, "{lines:#?}");
            }
            for (id, n) in promised {
                *given.entry(id).or_default() += n * copies;
            }
        }
        for piece in &plan.pieces {
            assert_eq!(given.get(&piece.letter()).copied().map(u64::from), Some(piece.count), "{}", piece.letter());
        }
    }
}

/// One box of one card with this card changed by `with`, as JSON.
fn asked(with: impl FnOnce(&mut serde_json::Value)) -> Project {
    let mut value: serde_json::Value = serde_json::from_str(
        r#"{ "sets": 1,
        "cards": [ { "id": 1, "grammage": 270, "thickness": "0.3 mm", "sheet_width": "12 in", "sheet_height": "12 in" } ],
        "boxes": [ { "id": 1, "form": "tuck-box", "count": 1, "card": 1, "inputs": {} } ] }"#,
    )
    .expect("it is JSON");
    with(&mut value);
    serde_json::from_value(value).expect("it is a project")
}

/// Mats of the box's own card come out of what its blank leaves: nine by eight of twelve by twelve inches.
#[test]
fn mats_are_taken_from_the_offcuts_of_their_card() {
    let bare = plan(&asked(|_| {}), System::Inch);
    let matted =
        plan(&asked(|v| v["boxes"][0]["mats"] = serde_json::json!({ "card": 1, "off": ["back"] })), System::Inch);
    assert!(matted.pieces.len() > 2, "{:?}", matted.pieces);
    let found = searched(&matted, 1_000_000);
    assert_eq!((bare.sheets[0].layout.sheets(), found[0].layout.sheets()), (1, 1), "{:?}", found[0].layout);
}

#[test]
fn sheets_that_will_not_do_are_said() {
    let said = |project: &Project, weight, is: &dyn Fn(&What) -> bool| {
        for system in System::ALL {
            let plan = plan(project, system);
            let here = |f: &&snugfold::project::finding::Finding| f.place == Place::Card(1) && f.weight == weight;
            assert!(plan.findings.iter().filter(here).any(|f| is(&f.what)), "{:?}", plan.findings);
        }
    };
    let supply = |v: &mut serde_json::Value, have: u32| {
        v["cards"][0]["supply"] = serde_json::json!({ "have": have, "shop": "shut" });
    };
    // None in the drawer and the shop shut.
    said(&asked(|v| supply(v, 0)), Weight::Stop, &|w| *w == What::NothingLeftOfSheet);
    // Two sheets for five boxes.
    let short = asked(|v| {
        supply(v, 2);
        v["sets"] = 5.into();
    });
    said(&short, Weight::Caution, &|w| matches!(w, What::SheetsRanOut { count: 3, .. }));
    // A box larger than every sheet.
    let large = asked(|v| v["boxes"][0]["inputs"]["height"] = "400 mm".into());
    said(&large, Weight::Stop, &|w| matches!(w, What::PieceTooLarge { .. }));
    // Mats thinner than a strip that can be held.
    let thin = asked(|v| {
        v["boxes"][0]["inputs"]["depth"] = "20 mm".into();
        v["boxes"][0]["mats"] = serde_json::json!({ "card": 1 });
        v["trimmer"] = serde_json::json!({ "least_strip": "20 mm" });
    });
    said(&thin, Weight::Caution, &|w| matches!(w, What::PieceTooThin { .. }));
    // They are cut by hand, in a step of their own.
    let by_hand = plan(&thin, System::Metric).steps.iter().any(|s| matches!(s.action, Action::CutPieces { .. }));
    assert!(by_hand);
}

/// The walls of a tuck box hang on each other, so its main scores run up its blank of 9 × 8 in or so.
#[test]
fn main_scores_run_along_the_grain_where_a_sheet_has_it() {
    let lying = |lie: &str, width: &str, height: &str| {
        let project = asked(|v| {
            v["cards"][0]["lie"] = lie.into();
            v["cards"][0]["sheet_width"] = width.into();
            v["cards"][0]["sheet_height"] = height.into();
        });
        let plan = plan(&project, System::Inch);
        let (piece, wanted) = (&plan.pieces[0], &plan.sheets[0].job.wanted[0]);
        assert!(piece.width > piece.height, "{piece:?}");
        assert_eq!(plan.sheets[0].layout.sheets(), 1);
        let across = plan.findings.iter().any(|f| f.what == What::ScoresAcrossGrain { pieces: "A".to_owned() });
        ((wanted.width, wanted.height) == (piece.width, piece.height), across)
    };
    // On a square sheet the blank is laid as the grain wants it.
    assert_eq!(lying("grain-up", "12 in", "12 in"), (true, false));
    assert_eq!(lying("grain-across", "12 in", "12 in"), (false, false));
    // A sheet as narrow as the blank is high leaves no choice.
    assert_eq!(lying("grain-up", "8.5 in", "12 in"), (false, true));
    assert_eq!(lying("grain-across", "8.5 in", "12 in"), (false, false));
}

/// A search ends for a hundred thousand pieces.
#[test]
fn very_many_sets_are_searched_through() {
    let quick = plan(&sets(10_000), System::Inch);
    assert!(quick.pieces.iter().map(|p| p.count).sum::<u64>() > 100_000);
    for found in searched(&quick, 1_000_000) {
        assert_eq!(check(&found.job.wanted, &found.job.sheets, &found.job.rules, &found.layout), []);
        let (sheets, bound) = (u64::from(found.layout.sheets()), u64::from(found.layout.bound));
        assert!(sheets * 100 <= bound * 101 + 100, "{sheets} sheets, {bound} at least");
    }
}

/// Nothing is converted: a sheet is said in the system in which it was typed, whatever is worked in.
#[test]
fn a_sheet_stays_as_it_was_typed() {
    for (typed, said) in [(["12 in", "12 in"], "12 × 12 in"), (["210 mm", "297 mm"], "210 × 297 mm")] {
        for system in System::ALL {
            let mut project = sets(1);
            for card in &mut project.cards {
                let given = typed.map(|side| Given::read(side, System::Metric).expect("a length"));
                [card.sheet_width, card.sheet_height] = given;
            }
            let plan = plan(&project, system);
            let cuts = plan.steps.iter().filter(|s| matches!(s.action, Action::CutSheets { .. }));
            let titles: Vec<String> = cuts.map(|s| say(s, &plan, &project, Spelling::Uk).title.to_string()).collect();
            assert!(!titles.is_empty() && titles.iter().all(|t| t.contains(said)), "{system:?}: {titles:?}");
            for sheets in &plan.sheets {
                assert!(buy(sheets, "Card", None).to_string().contains(said));
                assert!(need(sheets).to_string().contains(said));
            }
            // What does not come out of it says so of the sheet as it was typed.
            project.boxes[0]
                .inputs
                .insert("width".to_owned(), Entry::Length(Given::read("9 in", system).expect("a length")));
            let large = snugfold::plan::plan(&project, system);
            let told = large.findings.iter().find(|f| matches!(f.what, What::PieceTooLarge { .. })).expect("too large");
            assert!(finding(told, system).to_string().contains(&format!("a sheet of {said}")));
        }
    }
}
