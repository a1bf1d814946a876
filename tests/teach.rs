//! Classes and batches: times by hand, and what must hold of every plan for a table full of people.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::likely_project;
use common::tries;
use proptest::prelude::*;
use snugfold::make::better::Better;
use snugfold::make::class::{Change, Doing, at_home};
use snugfold::make::clock::{Clock, alike, usual};
use snugfold::make::evenings::{MOST, evenings};
use snugfold::make::pace::{Kind, Pace};
use snugfold::make::sheets::with_spares;
use snugfold::make::stage::{Stage, stages};
use snugfold::make::step::Action;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan, taught};
use snugfold::project::batch::Batch;
use snugfold::project::bound::SPARES;
use snugfold::project::class::{BREAKS, Class, EACH, MAKERS, MINUTES, Ready, SLOW};
use snugfold::project::example::example;
use snugfold::project::request::{Part, Project, Shop};
use snugfold::say::teach as say;

fn clock(plan: &Plan) -> Clock<'_> {
    Clock { sheets: &plan.sheets, pieces: &plan.pieces, pace: Pace::default() }
}

/// The example from pieces that are cut already: each step by the table written out here, a quarter more for slow hands,
/// two breaks of ten minutes, five minutes to welcome and five to tidy up.
#[test]
fn a_class_takes_its_steps_its_margin_and_its_breaks() {
    let mut project = example().expect("the example reads");
    project.class = Class { breaks: 2, slow: 25, ready: Ready::Pieces, ..Class::default() };
    let taught = taught(&project, System::Inch, Pace::default());
    let by_hand: u64 = taught
        .one
        .steps
        .iter()
        .map(|step| match &step.action {
            Action::CutSheets { .. } => 0,
            Action::Score(scores) => 10 + 8 * scores.at.len() as u64,
            Action::Cut(cuts) | Action::ScoreShort(cuts) => 8 * cuts.len() as u64,
            Action::TakeCells(cells) => 3 * cells.len() as u64,
            Action::TakeOff(off) => 12 * off.len() as u64,
            Action::FoldAndBurnish | Action::TryBoxesIn { .. } | Action::Straps(_) => 60,
            Action::Fold { glued, .. } => {
                if *glued {
                    60
                } else {
                    15
                }
            }
            Action::Notch(_) => 15,
            // Five mats on a box, two on the holder.
            Action::GlueMats(_) => {
                if step.place == snugfold::project::finding::Place::Holder {
                    80
                } else {
                    200
                }
            }
            Action::Fill => 30,
            Action::SlideIn => 10,
            other => panic!("{other:?}"),
        })
        .sum();
    assert_eq!(taught.hours.needs, (by_hand * 125).div_ceil(100) + 2 * 600 + 2 * 300);
    let breaks: Vec<_> = taught.hours.rows.iter().filter(|row| row.doing == Doing::Break).collect();
    assert_eq!(breaks.len(), 2);
    // A third and two thirds through the work, whatever is being done then.
    for (nth, one) in (1..).zip(breaks) {
        assert_eq!(one.from, 300 + ((by_hand * nth / 3) * 125).div_ceil(100) + 600 * (nth - 1), "break {nth}");
    }
}

/// Where everyone gets sheets, a bag's sheets times those who come are bought, spares rounded up, what lies in the
/// drawer among them; and where the drawer is all there is, it is said that it is not enough.
#[test]
fn sheets_for_all_are_bags_times_makers() {
    let mut project = example().expect("the example reads");
    project.class = Class { makers: 7, spares: 10, ready: Ready::Sheets, ..Class::default() };
    project.cards[0].supply.have = 5;
    let told = |project: &Project| {
        let t = taught(project, System::Inch, Pace::default());
        let buy: Vec<String> = say::buy(&t, project, None).iter().map(ToString::to_string).collect();
        (t, buy)
    };
    let (t, buy) = told(&project);
    let each: u32 = t.one.sheets[0].used().map(|(n, _)| n).sum();
    let all = (u64::from(each) * 7 * 110).div_ceil(100);
    assert_eq!(buy[0], format!("Kraft card: {all} sheets of 12 × 12 in, 5 of them out of the drawer"));
    assert!(say::stops(&t).is_empty());
    project.class.ready = Ready::Pieces;
    project.cards[0].supply.shop = Shop::Shut;
    let (t, _) = told(&project);
    assert!(!say::stops(&t).is_empty(), "five sheets are not enough for seven");
}

/// A step that cuts nine sheets in one go is timed by one of them.
#[test]
fn sheets_are_timed_one_by_one() {
    let mut project = example().expect("the example reads");
    project.sets = 9;
    let plan = plan(&project, System::Inch);
    let cutting = plan.steps.iter().find(|s| matches!(s.action, Action::CutSheets { .. })).expect("there is one");
    let copies = u64::from(plan.sheets[0].layout.patterns[0].copies);
    assert!(copies > 1);
    assert_eq!(alike(cutting, &plan.sheets), copies);
    let folding = plan.steps.iter().find(|s| matches!(s.action, Action::Fold { .. })).expect("there is one");
    assert_eq!(alike(folding, &plan.sheets), 1);
}

/// Whoever glues twice as slowly takes twice as long for what is glued, and for nothing else.
#[test]
fn a_pace_that_was_timed_counts() {
    let project = example().expect("the example reads");
    let plan = plan(&project, System::Inch);
    let mut pace = Pace::default();
    assert!(pace.learn(Kind::Glueing, 240, 120));
    let slow = Clock { pace, ..clock(&plan) };
    for step in &plan.steps {
        let factor = if Kind::of(&step.action) == Some(Kind::Glueing) { 2 } else { 1 };
        assert_eq!(slow.once(step), factor * usual(step, &plan.sheets, &plan.pieces));
    }
    assert!(
        !pace.learn(Kind::Glueing, 1, 60) && !pace.learn(Kind::Glueing, 80_000, 60) && !pace.learn(Kind::Folding, 9, 0)
    );
}

/// 60 sets, three hands, two hours an evening: evenings are full, nothing is lost, and what is cut comes first.
#[test]
fn a_wedding_is_shared_out() {
    let mut project = example().expect("the example reads");
    project.sets = 60;
    let plan = plan(&project, System::Inch);
    let clock = clock(&plan);
    let batch = Batch { helpers: 2, evening: 120, names: String::new() };
    let (all, more) = evenings(&batch, &plan.steps, &clock);
    assert!(!more && all.len() > 3);
    let seconds = |evening: &Vec<snugfold::make::evenings::Stretch>| evening.iter().map(|s| s.seconds).sum::<u64>();
    let (last, full) = all.split_last().expect("there are some");
    assert!(full.iter().all(|evening| seconds(evening) == 3 * 7_200));
    assert!(seconds(last) <= 3 * 7_200);
    assert_eq!(all.iter().map(seconds).sum::<u64>(), clock.all(&plan.steps));
    assert!(all.concat().iter().map(|s| s.stage).is_sorted());
    assert_eq!(last.last().map(|s| s.stage), Some(Stage::Fill));
    // Ten minutes for one hand: more than are listed.
    let alone = Batch { helpers: 0, evening: 10, names: String::new() };
    let (listed, more) = evenings(&alone, &plan.steps, &clock);
    assert_eq!((listed.len(), more), (MOST, true));
}

fn class() -> impl Strategy<Value = Class> {
    let ready = prop::sample::select(Ready::ALL.to_vec());
    let usual = (1_u32..30, 1_u32..8, 0_u32..30, 10_u32..400, 0_u32..100, 0_u32..5, ready.clone());
    let odd = (0..=20_000_u32, any::<u32>(), any::<u32>(), any::<u32>(), any::<u32>(), any::<u32>(), ready);
    prop_oneof![3 => usual.boxed(), 1 => odd.boxed()].prop_map(
        |(makers, each, spares, minutes, slow, breaks, ready)| Class {
            makers,
            each,
            spares,
            minutes,
            slow,
            breaks,
            ready,
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(tries(60)))]

    /// Of any class of any design: what one gets times those who come is what is cut, spares besides; the clock has no
    /// gaps; what is prepared is done before; and each cure, if it is taken, does what it says.
    #[test]
    fn a_class_adds_up(project in likely_project(), class in class()) {
        let mut project = Project { class, ..project };
        project.sets = 1;
        let t = taught(&project, project.system, Pace::default());
        let c = t.class;
        prop_assert!(MAKERS.holds(c.makers) && EACH.holds(c.each) && MINUTES.holds(c.minutes));
        prop_assert!(SPARES.holds(c.spares) && SLOW.holds(c.slow) && BREAKS.holds(c.breaks));
        if c.ready != Ready::Sheets && c.makers * c.each <= 10_000 {
            for (one, all) in t.one.pieces.iter().zip(&t.all.pieces) {
                prop_assert_eq!(one.count * u64::from(c.makers), all.count);
                prop_assert!(u64::from(with_spares(all.count, c.spares)) * 100 >= all.count * u64::from(100 + c.spares));
            }
            prop_assert_eq!(t.one.pieces.len(), t.all.pieces.len());
        }
        let mut at = 0;
        for row in &t.hours.rows {
            prop_assert_eq!(row.from, at);
            at += row.seconds;
        }
        prop_assert_eq!(at, t.hours.needs);
        for (step, stage) in t.one.steps.iter().zip(stages(&t.one.steps)) {
            let there = t.hours.rows.iter().any(|row| row.doing == Doing::Work { place: step.place, part: step.part, stage });
            prop_assert_eq!(there, !at_home(stage, c.ready));
        }
        if t.hours.needs <= t.hours.has {
            prop_assert!(t.hours.cures.is_empty());
            return Ok(());
        }
        let longer = t.hours.cures.iter().filter(|cure| matches!(cure.change, Change::Longer(_))).count();
        prop_assert_eq!(longer, 1);
        for cure in &t.hours.cures {
            let mut other = project.clone();
            let bare = |other: &mut Project| {
                let parts: Vec<&mut Part> = other.boxes.iter_mut().chain(&mut other.holder).collect();
                parts.into_iter().for_each(|part| part.mats = None);
            };
            match cure.change {
                Change::Prepare(ready) => other.class.ready = ready,
                Change::Fewer(each) => other.class.each = each,
                Change::NoMats => bare(&mut other),
                Change::Both => {
                    other.class.ready = Ready::CutOut;
                    bare(&mut other);
                }
                Change::Longer(minutes) => {
                    other.class.minutes = (c.minutes + minutes as u32).min(MINUTES.most);
                    let now = taught(&other, other.system, Pace::default());
                    prop_assert!(now.hours.needs <= now.hours.has || other.class.minutes == MINUTES.most);
                    continue;
                }
            }
            let now = taught(&other, other.system, Pace::default());
            let (said, is) = (cure.needs, now.hours.needs);
            if matches!(cure.change, Change::Prepare(_)) {
                prop_assert_eq!(said, is);
            } else {
                // Sheets are fewer, and what lay on mats goes with them: it does not take longer than was said.
                prop_assert!(is * 10 <= said * 11, "{:?}: said {said}, is {is}", cure.change);
            }
            prop_assert!(said <= t.hours.has);
        }
    }

    /// Whatever is in a file: evenings that hold all the work in order, or as many as are listed.
    #[test]
    fn evenings_hold_all_the_work(project in likely_project(), sets in 1_u32..200, helpers in 0_u32..10, evening in 0_u32..600) {
        let project = Project { sets, ..project };
        let plan = plan(&project, project.system);
        let clock = clock(&plan);
        let (all, more) = evenings(&Batch { helpers, evening, names: String::new() }, &plan.steps, &clock);
        let seconds: u64 = all.iter().flatten().map(|s| s.seconds).sum();
        prop_assert!(more || seconds == clock.all(&plan.steps));
        let room = (u64::from(evening) * 60 * u64::from(helpers + 1)).max(60);
        for one in &all {
            prop_assert!(!one.is_empty() && one.iter().map(|s| s.seconds).sum::<u64>() <= room);
            prop_assert!(one.iter().all(|s| s.from <= s.to && s.to <= s.times));
        }
    }
}

/// A class in which a card needs one sheet at least and none may be used while fewer are looked for: the search has
/// nothing to do there, and ends all the same.
#[test]
fn a_search_without_a_sheet_to_change_ends() {
    let mut project: Project =
        serde_json::from_str(include_str!("data/no-board-to-ruin.json")).expect("the design reads");
    (project.sets, project.spares) = (77, 13);
    let plan = plan(&project, project.system);
    let mut better = Better::new(plan.sheets.iter().map(|s| s.job.clone()).collect());
    let mut steps = 0;
    while !better.done() {
        better.step(25_000);
        steps += 1;
        assert!(steps < 100_000, "it goes on and on");
    }
}
