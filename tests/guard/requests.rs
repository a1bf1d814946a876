//! A thousand requests: what is planned, said, drawn and kept of each, as hashes.

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use serde_json::Value;

use snugfold::draw::flat::{Look, flat};
use snugfold::draw::folded::{Dress, folded, set};
use snugfold::draw::solid::View;
use snugfold::draw::step::step as drawn_step;
use snugfold::draw::svg::paint;
use snugfold::form::registry::{FORMS, Holds};
use snugfold::keep::file::{self, Kept};
use snugfold::keep::link;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::{Plan, plan};
use snugfold::project::extra::{Extra, ExtraKind};
use snugfold::project::fitting::{Blank, Gift, Shape, Turns, Wrap};
use snugfold::project::request::{Mats, Project, Tint};
use snugfold::say::spelling::Spelling;
use snugfold::say::step::step as say_step;

use super::common::dice::Dice;
use super::common::drawn::{DRAWN, set_of_drawn};
use super::common::odd::odd_project;
use super::common::projects::likely_project;
use super::common::typical::set_of;
use super::whole::Whole;
use super::{Hash, compare};

const REQUESTS: u64 = 1_000;

/// What is thrown from this seed.
fn thrown(strategy: &impl Strategy<Value = Project>, seed: u64) -> Project {
    let mut bytes = [0; 32];
    bytes[..8].copy_from_slice(&seed.to_le_bytes());
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &bytes);
    let config = Config { failure_persistence: None, ..Config::default() };
    strategy.new_tree(&mut TestRunner::new_with_rng(config, rng)).expect("there is one").current()
}

/// Each seed by itself, so that one more kind of request does not change the others.
fn request(seed: u64) -> Project {
    let mut dice = Dice(seed);
    let mut project = match seed % 20 {
        0..=11 => thrown(&likely_project(), seed),
        12..=14 => return thrown(&odd_project(), seed),
        15 | 16 => set_of_drawn(DRAWN[dice.below(DRAWN.len())].1),
        _ => set_of(&FORMS[dice.below(FORMS.len())]),
    };
    if seed % 20 > 14 {
        dress(&mut project, &mut dice);
    }
    if dice.below(4) == 0 {
        let at = dice.below(project.boxes.len());
        project.boxes[at].gifts.kinds = gifts(&mut dice);
    }
    if dice.below(5) == 0 {
        project.spares = dice.below(30) as u32;
        project.trimmer.longest_cut = Some(given(["10 in", "12 in", "320 mm"][dice.below(3)]));
    }
    if dice.below(6) == 0 {
        project.board.inch_step = Some(given(["1/16 in", "1/4 in", "1/8 in"][dice.below(3)]));
        project.board.metric_step = Some(given(["5 mm", "1 mm", "2.5 mm"][dice.below(3)]));
    }
    project
}

/// Mats, additions, counts, joints and the other system, for a set that has none of them.
fn dress(project: &mut Project, dice: &mut Dice) {
    let cards: Vec<u16> = project.cards.iter().map(|c| c.id).collect();
    project.sets = 1 + dice.below(12) as u32;
    project.system = System::ALL[dice.below(2)];
    for part in project.boxes.iter_mut().chain(&mut project.holder) {
        part.card = cards[dice.below(cards.len())];
        if dice.below(2) == 0 {
            let reveal = [None, Some("3/16 in"), Some("4 mm")][dice.below(3)].map(given);
            part.mats = Some(Mats { card: cards[dice.below(cards.len())], reveal, off: Vec::new() });
        }
        if dice.below(3) == 0 {
            part.blank = Blank::Joined;
        }
        for _ in 0..dice.below(3) {
            let kind = ExtraKind::ALL[dice.below(ExtraKind::ALL.len())];
            part.extras.push(Extra { card: cards.get(dice.below(4)).copied(), ..Extra::of(kind) });
        }
    }
    for part in &mut project.boxes {
        part.count = 1 + dice.below(4) as u32;
    }
}

/// One to three kinds of gifts.
fn gifts(dice: &mut Dice) -> Vec<Gift> {
    let sizes = ["25 mm", "1 1/2 in", "40 mm", "2 in", "63 mm"];
    let mut side = || given(sizes[dice.below(sizes.len())]);
    let shapes = [
        Shape::Block { width: side(), depth: side(), height: side() },
        Shape::Cylinder { across: side(), height: side() },
        Shape::Soft { width: side(), depth: side(), height: side() },
    ];
    let count = 1 + dice.below(3);
    let gift = |(n, shape): (usize, Shape)| Gift {
        name: format!("gift {n}"),
        shape,
        count: 1 + n as u32,
        wrap: if n == 1 { Wrap::Wrapped } else { Wrap::Bare },
        turns: if n == 0 { Turns::Upright } else { Turns::Any },
        grams: (n == 2).then_some(120),
    };
    shapes.into_iter().take(count).enumerate().map(gift).collect()
}

fn given(typed: &str) -> Given {
    Given::read(typed, System::Metric).expect("it is a length")
}

/// The plan as it is printed: without its steps, the steps without their keys, and the keys.
fn printed(project: &Project, system: System) -> [String; 3] {
    let mut whole = serde_json::to_value(Whole::of(project, system)).expect("it is plain data");
    let mut steps = whole.as_object_mut().and_then(|w| w.remove("steps")).unwrap_or_default();
    let mut keys = Hash::new();
    for step in steps.as_array_mut().into_iter().flatten() {
        for name in ["key", "site"] {
            let key = step.as_object_mut().and_then(|s| s.remove(name)).unwrap_or_default();
            keys.add(key.as_str().unwrap_or_default().as_bytes());
        }
    }
    [hashed(&whole), hashed(&steps), keys.hex()]
}

fn hashed(value: &Value) -> String {
    Hash::of(value.to_string().as_bytes())
}

/// The steps in the other spelling too.
fn american(plan: &Plan, project: &Project) -> String {
    let mut hash = Hash::new();
    for step in &plan.steps {
        let said = say_step(step, plan, project, Spelling::Us);
        hash.add(format!("{} {} {:?} {:?}", said.place, said.title, said.caution, said.notes).as_bytes());
        said.lines.iter().for_each(|line| hash.add(line.to_string().as_bytes()));
    }
    hash.hex()
}

/// The patterns, the folded parts, the finished set.
fn drawings(plan: &Plan, project: &Project) -> String {
    let tint = |card: u16| project.card(card).map_or_else(Tint::default, |c| c.tint);
    let mut hash = Hash::new();
    for planned in plan.parts() {
        let (card, mats) = (tint(planned.card), planned.mat_card.map_or_else(Tint::default, tint));
        for (nth, part) in planned.assembly.iter().flat_map(|a| &a.parts).enumerate() {
            let look = Look { card, mats, chosen: None, system: plan.system };
            let dress = Dress { card, mats, chosen: Vec::new() };
            let moves = part.moves.len() as f64;
            hash.add(flat(planned, nth, look).map_or_else(String::new, |d| paint(&d)).as_bytes());
            for progress in [moves / 2.0, moves] {
                let folded = folded(planned, nth, progress, &dress, View::default());
                hash.add(folded.map_or_else(String::new, |d| paint(&d)).as_bytes());
            }
        }
    }
    hash.add(paint(&set(&plan.boxes, plan.holder.as_ref(), &tint, 0.3, View::default())).as_bytes());
    hash.hex()
}

/// A drawing for each step.
fn step_drawings(plan: &Plan, project: &Project) -> String {
    let tint = |card: u16| project.card(card).map_or_else(Tint::default, |c| c.tint);
    let mut hash = Hash::new();
    for step in &plan.steps {
        hash.add(drawn_step(step, plan, &tint).map_or_else(String::new, |d| paint(&d)).as_bytes());
    }
    hash.hex()
}

/// One line: what was asked, as a file and as a link, and what came of it in both systems.
fn line(seed: u64) -> String {
    let project = request(seed);
    let kept = Hash::of(file::write(&Kept::new(project.clone())).as_bytes());
    let linked = link::write(&project).map_or_else(|why| why.to_string(), |l| Hash::of(l.as_bytes()));
    let mut line = format!("{seed:03} file {kept} link {linked}");
    for system in System::ALL {
        let [whole, steps, keys] = printed(&project, system);
        let name = if system == System::Inch { "in" } else { "mm" };
        line += &format!(" | {name} plan {whole} steps {steps} keys {keys}");
        // Drawing takes several times as long as planning: in one system each, and every fourth set step by step.
        if seed.is_multiple_of(2) == (system == System::Inch) {
            let plan = plan(&project, system);
            line += &format!(" us {} drawn {}", american(&plan, &project), drawings(&plan, &project));
            if seed % 4 < 2 && plan.steps.len() < 300 {
                line += &format!(" by step {}", step_drawings(&plan, &project));
            }
        }
    }
    line
}

#[test]
fn what_is_planned_said_drawn_and_kept_is_as_recorded() {
    let threads = std::thread::available_parallelism().map_or(1, usize::from) as u64;
    let lines = std::thread::scope(|scope| {
        let part =
            |first| move || (first..REQUESTS).step_by(threads as usize).map(|s| (s, line(s))).collect::<Vec<_>>();
        let parts: Vec<_> = (0..threads).map(|first| scope.spawn(part(first))).collect();
        let mut all: Vec<_> = parts.into_iter().flat_map(|p| p.join().expect("nothing stops")).collect();
        all.sort_unstable();
        all
    });
    let boxes = (0..REQUESTS).flat_map(|s| request(s).boxes);
    let holders = (0..REQUESTS).filter_map(|s| request(s).holder);
    let seen: std::collections::BTreeSet<String> = boxes.chain(holders).map(|p| p.form).collect();
    let missed: Vec<_> = FORMS.iter().filter(|f| !seen.contains(f.key)).map(|f| f.key).collect();
    assert!(missed.is_empty(), "no request has these forms: {missed:?}");
    assert!(FORMS.iter().any(|f| f.holds == Holds::Boxes));
    let text: String = lines.into_iter().map(|(_, line)| line + "\n").collect();
    compare("requests.txt", &text);
}
