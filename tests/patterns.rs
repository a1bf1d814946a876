//! Pages of patterns, read back by programs that others wrote: `lopdf` for what a PDF holds, `hayro` for how it looks on
//! paper. (`tests/pattern_lines.rs` measures the lines of each drawing.)
#![cfg(not(target_arch = "wasm32"))]

mod common;

use common::font;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{PixmapSettings, RenderCache, RenderSettings, hayro_interpret, hayro_syntax, render};
use lopdf::{Dictionary, Document, Object, content::Content};
use roxmltree::Document as Xml;
use snugfold::draw::drawing::{Drawing, Ink, Mark, Reads, Spot};
use snugfold::draw::lacking::on_patterns;
use snugfold::draw::pages::{Page, pages};
use snugfold::draw::pattern::{Pattern, patterns};
use snugfold::draw::pdf::pdf;
use snugfold::draw::svg::true_scale;
use snugfold::measure::{length::Length, show::Figure, system::System};
use snugfold::plan::plan;
use snugfold::project::example::example;
use snugfold::project::request::Project;
use snugfold::say::phrase::Phrase;
use snugfold::stock::paper::Paper;

fn of(project: &Project, system: System) -> Vec<Pattern> {
    patterns(&plan(project, system), project.sets)
}

fn worked() -> (Project, Vec<Pattern>) {
    let project = example().expect("the example reads");
    let all = of(&project, System::Inch);
    (project, all)
}

/// How many dots of the picture are a millimetre.
const DOTS: f64 = 12.0;

/// A page as it comes out of a printer: rows of dots, true where dark.
fn printed(bytes: &[u8], nth: usize) -> Vec<Vec<bool>> {
    let file = hayro_syntax::Pdf::new(bytes.to_vec()).expect("it is a PDF");
    let page = &file.pages()[nth];
    let scale = (DOTS * 25.4 / 72.0) as f32;
    let look = PixmapSettings { x_scale: scale, y_scale: scale, bg_color: WHITE };
    let settings = hayro_interpret::InterpreterSettings::default();
    let picture = render(page, &RenderCache::new(), &settings, &RenderSettings::default(), &look);
    let wide = usize::from(picture.width());
    let dots = picture.data_as_u8_slice().as_chunks::<4>().0;
    dots.chunks(wide).map(|row| row.iter().map(|dot| dot[0] < 128).collect()).collect()
}

/// The middles of the dark stretches of a row, in millimetres.
fn stretches(row: &[bool]) -> Vec<f64> {
    let mut all = Vec::new();
    let mut from = None;
    for (x, dark) in row.iter().chain([&false]).enumerate() {
        match (from, dark) {
            (None, true) => from = Some(x),
            (Some(start), false) => {
                all.push((start + x) as f64 / 2.0 / DOTS);
                from = None;
            }
            _ => {}
        }
    }
    all
}

/// The upper left and lower right dark dots between `min` and `max`, in millimetres.
fn reach(picture: &[Vec<bool>], min: Spot, max: Spot) -> [Spot; 2] {
    let mut found = [[f64::MAX; 2], [f64::MIN; 2]];
    for (y, row) in picture.iter().enumerate() {
        for (x, _) in row.iter().enumerate().filter(|(_, dark)| **dark) {
            let at = [x as f64 / DOTS, y as f64 / DOTS];
            if (0..2).all(|i| at[i] > min[i] && at[i] < max[i]) {
                for i in 0..2 {
                    found[0][i] = found[0][i].min(at[i]);
                    found[1][i] = found[1][i].max(at[i] + 1.0 / DOTS);
                }
            }
        }
    }
    found
}

#[test]
fn the_bars_of_every_page_measure_true() {
    let (project, all) = worked();
    for paper in Paper::ALL {
        let (sheets, _) = pages(&all, paper, "", font());
        let bytes = pdf(&project.name, &all, &sheets, font());
        for (nth, sheet) in sheets.iter().enumerate() {
            let picture = printed(&bytes, nth);
            // A row that crosses the four ends of the bars and nothing else, wherever that is in the foot.
            let foot = (sheet.size[1] - 31.0) * DOTS;
            let crossed = picture.iter().skip(foot as usize).map(|row| stretches(row));
            let ends = crossed.filter(|s| s.len() == 4).find(|s| (s[0] - 8.0).abs() < 0.3).expect("ends of two bars");
            assert!((ends[1] - ends[0] - 50.0).abs() < 0.2, "{paper:?} page {nth}: {ends:?}");
            assert!((ends[3] - ends[2] - 50.8).abs() < 0.2, "{paper:?} page {nth}: {ends:?}");
        }
    }
}

/// The outermost lines on the page are the blank's own edges, at its own size; a drawing a hundredth larger is found out.
#[test]
fn a_blank_measures_true_on_paper() {
    let (project, all) = worked();
    let (sheets, _) = pages(&all, Paper::A4, "", font());
    let one_page = |s: &&Page| sheets.iter().filter(|o| o.pattern == s.pattern).count() == 1;
    let alone: Vec<&Page> = sheets.iter().filter(one_page).collect();
    assert!(!alone.is_empty(), "something of the example fits on one page");
    for scale in [1.0, 1.01] {
        for sheet in &alone {
            let mut larger = all.clone();
            for mark in &mut larger[sheet.pattern].drawing.marks {
                if let Mark::Line(line) = mark {
                    line.run.iter_mut().flatten().for_each(|mm| *mm *= scale);
                }
            }
            let bytes = pdf(&project.name, &larger, std::slice::from_ref(sheet), font());
            let picture = printed(&bytes, 0);
            let [min, max] = reach(&picture, [0.0, 0.0], [sheet.size[0], sheet.size[1] - 31.0]);
            let drawing = &all[sheet.pattern].drawing;
            let true_to_size = (0..2).all(|i| {
                // The lines' own strength stands on both sides.
                let blank = drawing.max[i] - drawing.min[i] - 2.0;
                let seen = max[i] - min[i] - 2.0 * 25.4 / 96.0;
                (seen - blank).abs() < 0.2
            });
            assert_eq!(true_to_size, scale == 1.0, "{}", all[sheet.pattern].name);
        }
    }
}

/// The keys are those of ISO 19593-1:2018, tables 2 and 3, as the Arlington PDF model lists them
/// (pdf-association/arlington-pdf-model, tsv/latest/GTS_ProcStepsGroup.tsv).
#[test]
fn pages_and_layers_are_what_another_reader_finds() {
    const STEPS: [(&str, &str, Option<&str>); 5] = [
        ("Cut", "Structural", Some("Cutting")),
        ("Score", "Structural", Some("Creasing")),
        ("Glue", "Structural", Some("Gluing")),
        ("Measures", "Dimensions", None),
        ("Words", "Legend", None),
    ];
    let (project, all) = worked();
    // Sizes in points: ISO 216 and ANSI/ASME Y14.1.
    for (paper, [w, h]) in [(Paper::A4, [595.276, 841.890]), (Paper::Letter, [612.0, 792.0])] {
        let (sheets, _) = pages(&all, paper, "", font());
        let file = Document::load_mem(&pdf(&project.name, &all, &sheets, font())).expect("it is a PDF");
        assert_eq!(file.get_pages().len(), sheets.len());
        let root = file.catalog().expect("a catalogue");
        let groups = root.get(b"OCProperties").and_then(Object::as_dict).expect("layers");
        let listed = groups.get(b"OCGs").and_then(Object::as_array).expect("a list of them");
        let found: Vec<&Dictionary> =
            listed.iter().map(|id| file.get_dictionary(id.as_reference().expect("one")).expect("one")).collect();
        for (dict, (name, group, kind)) in found.iter().zip(STEPS) {
            let text = dict.get(b"Name").and_then(Object::as_str).expect("a name");
            assert_eq!(String::from_utf8_lossy(text), name);
            let steps = dict.get(b"GTS_Metadata").and_then(Object::as_dict).expect("what it is");
            let says = |key: &[u8]| steps.get(key).and_then(Object::as_name).ok().map(String::from_utf8_lossy);
            assert_eq!(says(b"GTS_ProcStepsGroup").as_deref(), Some(group));
            assert_eq!(says(b"GTS_ProcStepsType").as_deref(), kind);
        }
        for id in file.get_pages().values() {
            let page = file.get_dictionary(*id).expect("a page");
            let shape = page.get(b"MediaBox").and_then(Object::as_array).expect("its size");
            let at = |i: usize| f64::from(shape[i].as_float().expect("a number"));
            let (short, long) = (at(2).min(at(3)), at(2).max(at(3)));
            assert!((short - w).abs() < 0.03 && (long - h).abs() < 0.03, "{short} × {long}");
            let drawn = Content::decode(&file.get_page_content(*id)).expect("they read");
            let count = |op: &str| drawn.operations.iter().filter(|o| o.operator == op).count();
            assert!(count("BDC") > 3 && count("BDC") == count("EMC"));
            assert_eq!(count("q"), count("Q"));
            // What lies round the pattern, its bars and joins, is nothing to cut, score or glue: that ends with the
            // pattern's own part of the page.
            let round = drawn.operations.iter().position(|o| o.operator == "Q").expect("the pattern ends");
            let layers = drawn.operations[round..].iter().filter(|o| o.operator == "BDC");
            for layer in layers.map(|o| format!("{:?}", o.operands[1])) {
                assert!(["L3", "L4"].iter().any(|l| layer.contains(l)), "{layer}");
            }
            // Nothing is painted outside a layer.
            let mut inside = false;
            for one in &drawn.operations {
                match one.operator.as_str() {
                    "BDC" => inside = true,
                    "EMC" => inside = false,
                    "S" | "Tj" => assert!(inside, "{one:?}"),
                    _ => {}
                }
            }
        }
    }
}

/// Pages that are joined show everything, and both show the same cross at the same place of the pattern.
#[test]
fn pages_join_cross_on_cross() {
    let large = Drawing { min: [0.0; 2], max: [700.0, 900.0], lettering: 4.0, ..Drawing::default() };
    let all = [Pattern { name: "large".into(), times: 1, drawing: large }];
    for paper in Paper::ALL {
        let (sheets, left_out) = pages(&all, paper, "", font());
        assert!(left_out.is_empty() && sheets.len() > 8, "{}", sheets.len());
        for x in 0..70 {
            for y in 0..90 {
                let on = |s: &&Page| {
                    let at = [f64::from(x) * 10.0 + s.at[0], f64::from(y) * 10.0 + s.at[1]];
                    (0..2).all(|i| at[i] >= s.shown[0][i] && at[i] <= s.shown[1][i])
                };
                assert!(sheets.iter().any(|s| on(&s)), "{paper:?}: nothing shows {x}, {y}");
            }
        }
        // The crosses by the name beside them, in the pattern's own places.
        let mut crosses: Vec<(String, Spot)> = Vec::new();
        for sheet in &sheets {
            let named = sheet.round.marks.iter().filter_map(|m| match m {
                Mark::Label(l) if l.at[1] < sheet.size[1] - 31.0 => Some(l),
                _ => None,
            });
            crosses.extend(named.map(|l| (l.words.to_string(), [l.at[0] - sheet.at[0], l.at[1] - sheet.at[1]])));
        }
        assert!(crosses.len() >= 4 * (sheets.len() - 1), "{}", crosses.len());
        for (name, at) in &crosses {
            let same = crosses.iter().filter(|(n, a)| n == name && libm::hypot(a[0] - at[0], a[1] - at[1]) < 1e-6);
            assert_eq!(same.count(), 2, "{paper:?}: {name} at {at:?}");
        }
    }
}

/// Lettering stands in the middle of its place, across and upward, with its fraction.
#[test]
fn lettering_is_where_it_is_meant() {
    let eighth = Phrase::bare(Figure::of(Length::inches(17, 8), System::Inch));
    let across = ["right side", "Bottom", "XYZ 12345", "minimum will"].map(Phrase::from);
    for words in across.into_iter().chain([eighth]) {
        for way in [Reads::Across, Reads::Up] {
            let mut drawing = Drawing { max: [150.0, 150.0], lettering: 6.0, ..Drawing::default() };
            drawing.label([75.0, 75.0], words.clone(), Ink::Page);
            if let Some(Mark::Label(label)) = drawing.marks.last_mut() {
                label.way = way;
            }
            let all = [Pattern { name: "lettering".into(), times: 1, drawing }];
            let (sheets, _) = pages(&all, Paper::A4, "", font());
            let picture = printed(&pdf("lettering", &all, &sheets, font()), 0);
            let [min, max] = reach(&picture, [9.0; 2], [158.0; 2]);
            let middle = [0, 1].map(|i| f64::midpoint(min[i], max[i]) - 8.0);
            for i in 0..2 {
                assert!((middle[i] - 75.0).abs() < 0.9, "{words} {way:?}: {middle:?}");
            }
            let long = (max[0] - min[0]).max(max[1] - min[1]);
            assert!(long > 5.0, "{words}: {long}");
        }
    }
}

/// Nobody joins more pages than these; the other patterns are still printed.
#[test]
fn what_takes_too_many_pages_is_left_out() {
    let of = |max| Drawing { max, lettering: 4.0, ..Drawing::default() };
    let all = [[5_000.0, 5_000.0], [100.0, 100.0], [f64::from(u32::MAX), f64::from(u32::MAX)]];
    let all = all.map(|max| Pattern { name: "P".into(), times: 1, drawing: of(max) });
    let (sheets, left_out) = pages(&all, Paper::A4, "", font());
    assert_eq!((sheets.len(), left_out), (1, vec![0, 2]));
}

/// Names that try to become something else stay words, or are shortened; what cannot be shown is said.
#[test]
fn odd_names_stay_names() {
    let long = "a very long name ".repeat(600);
    let odd =
        ["<script>alert(1)</script>", ") Tj ET Q (", "🎁 gift", "\u{202e}evil\u{0}", "علبة", &long, "", "ünï–cødé"];
    let (mut project, _) = worked();
    for name in odd {
        for card in &mut project.boxes {
            name.clone_into(&mut card.name);
        }
        let all = of(&project, System::Metric);
        for one in &all {
            let text = true_scale(&one.drawing);
            let file = Xml::parse(&text).expect("it is SVG");
            assert!(file.descendants().all(|n| !n.has_tag_name("script")), "{name}");
            assert!(!text.contains(" style="));
        }
        let (sheets, _) = pages(&all, Paper::A4, name, font());
        let file = Document::load_mem(&pdf(name, &all, &sheets, font())).expect("it is a PDF");
        assert_eq!(file.get_pages().len(), sheets.len());
        for id in file.get_pages().values() {
            let drawn = Content::decode(&file.get_page_content(*id)).expect("they read");
            let [saved, back] = ["q", "Q"].map(|op| drawn.operations.iter().filter(|o| o.operator == op).count());
            assert_eq!(saved, back, "{name}");
        }
        let shown = ["<script>alert(1)</script>", ") Tj ET Q (", &long, "", "ünï–cødé"].contains(&name);
        assert_eq!(on_patterns(&all, "", font()).is_empty(), shown, "{name}");
    }
}

/// The words of a page can be read by a program, in the order of the page.
#[test]
fn the_words_of_a_page_are_text() {
    let (project, all) = worked();
    let (sheets, _) = pages(&all, Paper::Letter, "Made by hand.", font());
    let file = Document::load_mem(&pdf(&project.name, &all, &sheets, font())).expect("it is a PDF");
    let text = file.extract_text(&[1]).expect("text");
    for part in ["front", "50 mm", "2 in", "Print at 100 %", "Made by hand."] {
        assert!(text.contains(part), "{part} in {text}");
    }
    let places: Vec<_> = ["50 mm", "2 in", "Print at 100 %"].iter().map(|p| text.find(p)).collect();
    assert!(places.is_sorted(), "{places:?}");
}
