//! What is handed out on paper, read back by programs that others wrote: `hayro` draws it, `rxing` reads the code on it,
//! `lopdf` its words in order.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::projects::any_project;
use common::{font, tries};
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{PixmapSettings, RenderCache, RenderSettings, hayro_interpret, hayro_syntax, render};
use lopdf::Document;
use proptest::prelude::*;
use snugfold::cut::order::order;
use snugfold::draw::drawing::{Drawing, Mark};
use snugfold::draw::flow::{lines, width};
use snugfold::draw::handout::{Handout, PAGES, handout};
use snugfold::draw::labels::{bags, tags};
use snugfold::draw::lacking::on_pages;
use snugfold::draw::pdf::print;
use snugfold::draw::svg::page as painted;
use snugfold::draw::teacher::{Prices, teacher};
use snugfold::form::registry::FORMS;
use snugfold::keep::link;
use snugfold::make::pace::Pace;
use snugfold::measure::given::Given;
use snugfold::measure::system::System;
use snugfold::plan::{Taught, taught};
use snugfold::project::class::Ready;
use snugfold::project::example::example;
use snugfold::project::request::{Part, Project};
use snugfold::say::hand::Hand;
use snugfold::say::phrase::{Bit, Phrase};
use snugfold::say::spelling::Spelling;
use snugfold::say::teach as say;
use snugfold::say::{cutting, names};
use snugfold::stock::paper::Paper;

const PLACE: &str = "https://example.org/snugfold/#";

fn worked() -> Project {
    example().expect("the example reads")
}

fn address(project: &Project) -> String {
    format!("{PLACE}{}", link::write(project).expect("it is short"))
}

fn of(project: &Project, systems: &[System], paper: Paper, hand: Hand) -> Vec<Drawing> {
    let all: Vec<Taught> = systems.iter().map(|s| taught(project, *s, Pace::default())).collect();
    let plans: Vec<_> = all.iter().map(|t| &t.one).collect();
    let link = link::write(&project.for_others()).ok().map(|words| format!("{PLACE}{words}"));
    handout(&Handout {
        project,
        plans: &plans,
        ready: all[0].class.ready,
        link: link.as_deref(),
        size: paper.size(),
        spelling: Spelling::Uk,
        hand,
        font: font(),
    })
}

/// A page as grey dots, so many to the inch.
fn grey(file: &[u8], nth: usize, dots: f64) -> (usize, Vec<u8>) {
    let file = hayro_syntax::Pdf::new(file.to_vec()).expect("it is a PDF");
    let scale = (dots / 72.0) as f32;
    let look = PixmapSettings { x_scale: scale, y_scale: scale, bg_color: WHITE };
    let settings = hayro_interpret::InterpreterSettings::default();
    let picture = render(&file.pages()[nth], &RenderCache::new(), &settings, &RenderSettings::default(), &look);
    let dots = picture.data_as_u8_slice().as_chunks::<4>().0;
    let all = dots.iter().map(|d| ((u32::from(d[0]) + u32::from(d[1]) + u32::from(d[2])) / 3) as u8).collect();
    (usize::from(picture.width()), all)
}

/// Each dot as the mean of the nine round it: as from a camera that is not quite in focus.
fn blurred(wide: usize, dots: &[u8]) -> Vec<u8> {
    let high = dots.len() / wide;
    let mut out = dots.to_vec();
    for y in 1..high - 1 {
        for x in 1..wide - 1 {
            let nine = (y - 1..=y + 1).flat_map(|y| (x - 1..=x + 1).map(move |x| y * wide + x));
            out[y * wide + x] = (nine.map(|i| u32::from(dots[i])).sum::<u32>() / 9) as u8;
        }
    }
    out
}

/// What an independent decoder, the crate `rxing`, reads anywhere on the page.
fn read(wide: usize, dots: Vec<u8>) -> Option<String> {
    let (width, high) = (u32::try_from(wide).ok()?, u32::try_from(dots.len() / wide).ok()?);
    let found = rxing::helpers::detect_in_luma(dots, width, high, Some(rxing::BarcodeFormat::QR_CODE));
    found.ok().map(|code| code.getText().to_owned())
}

/// The link is read from a print of 150 dots to the inch, in focus and not, on both papers; from the smallest set, and
/// from one of twelve boxes.
#[test]
fn the_code_is_read_from_the_printed_page() {
    let mut twelve = worked();
    let first = twelve.boxes[0].clone();
    twelve.boxes = (1..=12).map(|id| Part { id, ..first.clone() }).collect();
    for project in [worked(), twelve] {
        for paper in Paper::ALL {
            let file = print("x", &of(&project, &[System::Inch], paper, Hand::Right), font());
            let (wide, dots) = grey(&file, 0, 150.0);
            let expected = Some(address(&project));
            assert_eq!(read(wide, blurred(wide, &dots)), expected, "out of focus");
            assert_eq!(read(wide, dots), expected);
        }
    }
}

/// The words of a file, page by page, as another program reads them.
fn words(pages: &[Drawing]) -> Vec<String> {
    let file = Document::load_mem(&print("x", pages, font())).expect("it is a PDF");
    let count = file.get_pages().len();
    assert_eq!(count, pages.len());
    (1..=count).map(|nth| file.extract_text(&[u32::try_from(nth).expect("few")]).expect("text")).collect()
}

/// Two pages of either paper, in one system or two, for either hand; each step once, in its order; cautions are there.
#[test]
fn a_handout_is_two_pages_in_reading_order() {
    let project = worked();
    for paper in Paper::ALL {
        for systems in [&[System::Inch][..], &[System::Metric], &System::ALL] {
            for hand in [Hand::Right, Hand::Left] {
                let pages = of(&project, systems, paper, hand);
                assert!(pages.len() <= PAGES, "{systems:?} on {paper:?}: {} pages", pages.len());
                let all = words(&pages).join("\n");
                for part in ["Thanks to the", "Tools: ", "Blade: cut away", "Hot glue burns", "food-grade bag"] {
                    assert!(all.contains(part), "{part} in {all}");
                }
                assert_eq!(all.contains(say::ONE_COLUMN), systems.len() > 1);
                if let [_] = systems {
                    let order = ["Tools: ", "Measurements", "In the bag", "Step by step", "Score at"];
                    let places: Vec<_> = order.iter().map(|part| all.find(part)).collect();
                    assert!(places.is_sorted() && places[0].is_some(), "{places:?}");
                    let numbers: Vec<usize> = numbered(&pages);
                    assert_eq!(numbers, (1..=numbers.len()).collect::<Vec<_>>());
                    assert!(numbers.len() > 30);
                }
            }
        }
    }
}

/// The numbers of the steps, in the order in which they stand in the file.
fn numbered(pages: &[Drawing]) -> Vec<usize> {
    let labels =
        pages.iter().flat_map(|p| &p.marks).filter_map(|m| if let Mark::Label(l) = m { Some(l) } else { None });
    let first = labels.filter_map(|l| {
        if let [Bit::Words(w), Bit::Words(s), ..] = l.words.bits.as_slice() { Some((w, s)) } else { None }
    });
    first.filter(|(_, space)| *space == " ").filter_map(|(number, _)| number.parse().ok()).collect()
}

/// Beside each other, each column speaks one system only.
#[test]
fn two_systems_never_mix() {
    let project = worked();
    let pages = of(&project, &System::ALL, Paper::A4, Hand::Right);
    let (mut inches, mut metric) = (0, 0);
    for label in pages.iter().flat_map(|p| &p.marks).filter_map(|m| if let Mark::Label(l) = m { Some(l) } else { None })
    {
        for bit in &label.words.bits {
            let Bit::Figure(figure) = bit else { continue };
            let left = label.at[0] < Paper::A4.size()[0] / 2.0;
            assert_eq!(figure.unit == "in", left, "{} at {:?}", label.words, label.at);
            *(if left { &mut inches } else { &mut metric }) += 1;
        }
    }
    assert!(inches > 50 && metric > 50, "{inches} and {metric}");
}

/// All that a page holds lies on it.
fn lies_on(pages: &[Drawing]) {
    for page in pages {
        let on = |p: [f64; 2]| (0..2).all(|i| p[i] >= -0.01 && p[i] <= page.max[i] + 0.01);
        for mark in &page.marks {
            match mark {
                Mark::Area(a) => assert!(a.corners.iter().all(|p| on(*p))),
                Mark::Line(l) => assert!(l.run.iter().all(|p| on(*p))),
                Mark::Label(l) => assert!(on(l.at), "{} at {:?}", l.words, l.at),
            }
        }
    }
}

/// Every form, prepared as little and as much as can be, comes out on paper.
#[test]
fn every_form_can_be_handed_out() {
    for form in FORMS {
        let mut project = common::typical::set_of(form);
        for ready in Ready::ALL {
            project.class.ready = ready;
            let taught = taught(&project, System::Metric, Pace::default());
            assert!(!taught.one.steps.is_empty(), "{}", form.key);
            let pages = of(&project, &[System::Metric], Paper::A4, Hand::Right);
            lies_on(&pages);
            assert!(pages.len() <= PAGES, "{}: {} pages", form.key, pages.len());
            lies_on(&teacher(&taught, &project, None, Paper::Letter.size(), font()));
        }
    }
}

/// Prices and names are on no handout, label or link that nobody ticked them for.
#[test]
fn what_is_private_stays_private() {
    let mut project = worked();
    project.batch.names = "Wilhelmina Quartz\nZebedee Plum\n".into();
    project.trade.hour = 98_765;
    project.trade.fee = 87_654;
    project.trade.currency = "XCD".into();
    for card in &mut project.cards {
        card.supply.price = Some(7_654);
    }
    let taught = taught(&project, System::Inch, Pace::default());
    let bag = say::bag(&taught.one, &project, taught.class.ready);
    let heads = vec![vec![say::number(1, 1)]];
    let papers = [
        of(&project, &System::ALL, Paper::A4, Hand::Right),
        bags(&project.name, &heads, &bag, Paper::A4.size(), font()),
        teacher(&taught, &project, None, Paper::A4.size(), font()),
    ];
    let all: String = papers.iter().flat_map(|pages| words(pages)).collect();
    let linked = link::write(&project.for_others()).expect("it is short");
    let mut opened = link::read(&linked).expect("it reads");
    assert_eq!((&opened.trade, &opened.batch), (&Project::default().trade, &Project::default().batch));
    assert!(opened.supplies().all(|supply| supply.price.is_none()));
    // The handout's code is that link.
    let file = print("x", &of(&project, &[System::Inch], Paper::A4, Hand::Right), font());
    let (wide, dots) = grey(&file, 0, 150.0);
    assert_eq!(read(wide, dots), Some(format!("{PLACE}{linked}")));
    for private in ["Wilhelmina", "Zebedee", "987", "876", "XCD", "765"] {
        assert!(!all.contains(private), "{private} is told");
    }
}

/// Every cut of every sheet stands on the teacher's sheet, however many there are: twelve boxes on sheets of a metre.
#[test]
fn a_teachers_sheet_tells_every_cut() {
    let mut project = worked();
    let some = project.boxes.clone();
    project.boxes = (1..=12).zip(some.iter().cycle()).map(|(id, b)| Part { id, ..b.clone() }).collect();
    for card in &mut project.cards {
        let large = || Given::read("40 in", System::Inch).expect("it is a length");
        (card.sheet_width, card.sheet_height) = (large(), large());
    }
    let taught = taught(&project, System::Inch, Pace::default());
    let fences = |text: &str| text.matches("et the fence to").count() + text.matches("eave the fence at").count();
    let (mut cuts, mut most) = (0, 0);
    for sheets in &taught.all.sheets {
        for pattern in &sheets.layout.patterns {
            let bare = sheets.sheet(pattern.sheet).expect("it is cut from a sheet");
            let lines = cutting::lines(&order(pattern, bare), System::Inch, &|id| names::letter(&taught.all, id));
            most = most.max(lines.len());
            cuts += lines.iter().map(|line| fences(&line.to_string())).sum::<usize>();
        }
    }
    let pages = teacher(&taught, &project, None, Paper::A4.size(), font());
    lies_on(&pages);
    let all: String = words(&pages).join(" ").split_whitespace().map(|word| format!("{word} ")).collect();
    assert!(most > 30, "{most}: a sheet of many cuts is among them");
    assert_eq!(fences(&all), cuts);
}

/// Each bag has its label in letters of 14 points and more, with all that goes in.
#[test]
fn labels_are_large_and_complete() {
    let project = worked();
    let taught = taught(&project, System::Inch, Pace::default());
    let bag = say::bag(&taught.one, &project, Ready::Pieces);
    assert_eq!(bag.len(), taught.one.pieces.len());
    let heads: Vec<Vec<String>> = (1..=7).map(|n| vec![say::number(n, 7)]).collect();
    for paper in Paper::ALL {
        let pages = bags(&project.name, &heads, &bag, paper.size(), font());
        lies_on(&pages);
        let all = words(&pages).join("\n");
        for n in 1..=7 {
            assert_eq!(all.matches(&format!("Bag {n} of 7")).count(), 1);
        }
        assert_eq!(all.matches("Beeswax wraps: blank").count(), 7);
        let small = pages.iter().flat_map(|p| p.marks.iter().map(move |m| (p, m)));
        let size = small.filter_map(|(p, m)| if let Mark::Label(l) = m { Some(l.size * p.lettering) } else { None });
        let points = size.fold(f64::MAX, f64::min) * 72.0 / 25.4;
        // The set's own name may be a little smaller.
        assert!(points > 11.0, "{points}");
    }
}

/// Of sixty kinds and a name of hundreds of letters: no line lies on another or off its label, and none is lost.
#[test]
fn labels_of_a_large_bag_go_on() {
    let line =
        |n: usize| Phrase::words(format!("{n} · 2 of 45 × 96 mm · Heather honey number {n}: mats for front and back"));
    for kinds in [1, 10, 30, 48, 60, 80, 200] {
        let inside: Vec<Phrase> = (1..=kinds).map(line).collect();
        let heads = vec![vec![say::number(1, 2)], vec![say::number(2, 2), "Wilhelmina ".repeat(30)]];
        let pages = bags(&"A very long name of a set ".repeat(12), &heads, &inside, Paper::Letter.size(), font());
        lies_on(&pages);
        let words: String = words(&pages).join(" ").split_whitespace().map(|word| format!("{word} ")).collect();
        for n in 1..=kinds {
            assert_eq!(words.matches(&format!("honey number {n}: mats")).count(), 2, "{n} of {kinds}");
        }
        for page in &pages {
            let mut places: Vec<[f64; 2]> =
                page.marks.iter().filter_map(|m| if let Mark::Label(l) = m { Some(l.at) } else { None }).collect();
            places.sort_by(|a, b| a.partial_cmp(b).expect("numbers"));
            assert!(
                places.windows(2).all(|two| two[0][0] < two[1][0] || two[0][1] + 2.5 < two[1][1]),
                "lines lie apart"
            );
        }
    }
}

/// 2,000 names of any characters: a tag each, in their order, inside its lines; what a PDF lacks is said.
#[test]
fn two_thousand_names_have_tags() {
    let odd =
        ["Ada", "Zoë & Ben", "<b>Bobby</b>", "礼 & 愛", "\u{202e}right to left", "🎁🎁🎁", "O’Neill (né Ng) \\", "x"];
    let long = "Maximilian ".repeat(40);
    let mut names: Vec<&str> = odd.iter().copied().cycle().take(1_999).collect();
    names.push(&long);
    let pages = tags("Tags", &names, Paper::A4.size(), font());
    lies_on(&pages);
    assert_eq!(pages.len(), 2_000_usize.div_ceil(3 * 9));
    let labels =
        pages.iter().flat_map(|p| &p.marks).filter_map(|m| if let Mark::Label(l) = m { Some(l) } else { None });
    let shown: Vec<String> = labels.map(|l| l.words.to_string()).collect();
    assert!(shown.iter().filter(|w| w.starts_with("Ada")).count() == 250);
    let lacking = on_pages(&pages, font());
    let kanji = lacking.iter().find(|l| l.words == "礼 & 愛").expect("it is named");
    assert_eq!((kanji.letters.as_slice(), kanji.page), (&['礼', '愛'][..], Some(1)));
    assert!(lacking.iter().all(|l| !l.words.contains("Zoë")));
    for page in &pages {
        let svg = painted(page, font());
        roxmltree::Document::parse(&svg).expect("it is SVG");
    }
    hayro_syntax::Pdf::new(print("Tags", &pages, font())).expect("it is a PDF");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(tries(40)))]

    /// Whatever is asked for: papers that lie on their pages, or none, and nothing stops.
    #[test]
    fn papers_of_any_design(project in any_project(), ready in prop::sample::select(Ready::ALL.to_vec()), makers in 0_u32..10_001) {
        let mut project = project;
        (project.class.ready, project.class.makers) = (ready, makers);
        let taught = taught(&project, project.system, Pace::default());
        lies_on(&of(&project, &System::ALL, Paper::A4, Hand::Left));
        lies_on(&teacher(&taught, &project, Some(&Prices { lines: vec![("Work".into(), "1.00".into())], notes: Vec::new() }), Paper::A4.size(), font()));
        let bag = say::bag(&taught.one, &project, ready);
        lies_on(&bags(&project.name, &[vec![say::number(1, 2), project.name.clone()]], &bag, Paper::Letter.size(), font()));
    }

    /// Lines hold all words in their order, and none is wider than there is room, but for a single letter.
    #[test]
    fn lines_hold_all_words(text in "\\PC{0,200}", room in 1.0_f64..60.0) {
        let font = font();
        let all = lines(&Phrase::words(&*text), room, font);
        let bare = |text: &str| text.chars().filter(|c| !" \t\n\r".contains(*c)).collect::<String>();
        let together: String = all.iter().map(|line| bare(&line.to_string())).collect();
        prop_assert_eq!(together, bare(&text));
        for line in &all {
            let one = line.to_string().chars().count() == 1;
            prop_assert!(width(line, font) <= room + 1e-9 || one, "{}", line);
        }
    }
}
