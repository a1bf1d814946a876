//! Names of many languages on every paper, read back by a program that others wrote (`lopdf`, and `pdftotext` where the
//! machine has it), and seen as `hayro` draws them.
#![cfg(not(target_arch = "wasm32"))]

mod common;

use std::process::Command;

use common::font;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::{PixmapSettings, RenderCache, RenderSettings, hayro_interpret, hayro_syntax, render};
use lopdf::{Dictionary, Document, Object};
use snugfold::draw::drawing::{Drawing, Ink};
use snugfold::draw::handout::{Handout, handout};
use snugfold::draw::labels::{bags, tags};
use snugfold::draw::lacking::on_pages;
use snugfold::draw::pages::pages;
use snugfold::draw::pattern::patterns;
use snugfold::draw::pdf::{pdf, print};
use snugfold::draw::teacher::teacher;
use snugfold::form::registry::FORMS;
use snugfold::make::pace::Pace;
use snugfold::measure::system::System;
use snugfold::plan::taught;
use snugfold::project::example::example;
use snugfold::project::request::Project;
use snugfold::say::hand::Hand;
use snugfold::say::spelling::Spelling;
use snugfold::say::teach as say;
use snugfold::stock::paper::Paper;

const NAMES: [&str; 6] = ["Łukasz", "Zoë", "Őrs", "Şule", "Ирина", "Ελένη"];

/// The worked example, whose set, boxes and maker have such names.
fn named() -> Project {
    let mut project = example().expect("the example reads");
    project.name = NAMES.join(", ");
    project.own.credit = format!("Made by {}.", NAMES[4]);
    for (part, name) in project.boxes.iter_mut().zip(NAMES) {
        name.clone_into(&mut part.name);
    }
    project
}

fn handed_out(project: &Project) -> Vec<Drawing> {
    let taught = taught(project, System::Metric, Pace::default());
    handout(&Handout {
        project,
        plans: &[&taught.one],
        ready: taught.class.ready,
        link: None,
        size: Paper::A4.size(),
        spelling: Spelling::Uk,
        hand: Hand::Right,
        font: font(),
    })
}

fn labels(project: &Project) -> Vec<Drawing> {
    let taught = taught(project, System::Metric, Pace::default());
    let heads: Vec<Vec<String>> = (1..).zip(NAMES).map(|(n, name)| vec![say::number(n, 6), name.to_owned()]).collect();
    let inside = say::bag(&taught.one, project, taught.class.ready);
    bags(&project.name, &heads, &inside, Paper::A4.size(), font())
}

fn teachers(project: &Project) -> Vec<Drawing> {
    teacher(&taught(project, System::Metric, Pace::default()), project, None, Paper::A4.size(), font())
}

/// Each kind of paper as a file, by what it is called.
fn files(project: &Project) -> [(&'static str, Vec<u8>); 5] {
    let all = patterns(&taught(project, System::Metric, Pace::default()).one, 1);
    let (sheets, _) = pages(&all, Paper::A4, &project.own.credit, font());
    let read = |pages: Vec<Drawing>| print(&project.name, &pages, font());
    [
        ("tags", read(tags("Tags", &NAMES, Paper::A4.size(), font()))),
        ("labels", read(labels(project))),
        ("handout", read(handed_out(project))),
        ("teacher's sheet", read(teachers(project))),
        ("patterns", pdf(&project.name, &all, &sheets, font())),
    ]
}

/// The names that a paper has.
fn names_on(paper: &str) -> &'static [&'static str] {
    // The example has three boxes; its credit has the fifth name.
    if paper == "patterns" { &["Łukasz", "Zoë", "Őrs", "Ирина"] } else { &NAMES }
}

#[test]
fn names_are_read_back_from_every_paper() {
    for (paper, bytes) in files(&named()) {
        let file = Document::load_mem(&bytes).expect("it is a PDF");
        let all: Vec<u32> = file.get_pages().keys().copied().collect();
        let text = file.extract_text(&all).expect("text");
        for name in names_on(paper) {
            assert!(text.contains(name), "{name} on the {paper}: {text}");
        }
        let title = file.trailer.get(b"Info").and_then(Object::as_reference).and_then(|id| file.get_dictionary(id));
        let title = title.and_then(|info| info.get(b"Title")).expect("a title");
        assert_eq!(lopdf::decode_text_string(title).expect("text"), NAMES.join(", "), "{paper}");
    }
}

/// A second reader, where the machine has one.
#[test]
fn names_are_read_back_by_another_reader() {
    for (paper, bytes) in files(&named()) {
        let place = std::env::temp_dir().join(format!("snugfold-{}-{}.pdf", std::process::id(), paper.len()));
        std::fs::write(&place, bytes).expect("a file can be written");
        let read = Command::new("pdftotext").args(["-layout".as_ref(), place.as_os_str(), "-".as_ref()]).output();
        std::fs::remove_file(&place).expect("it was there");
        let Ok(read) = read else {
            println!("no pdftotext here: nothing was read");
            return;
        };
        let text = String::from_utf8_lossy(&read.stdout).into_owned();
        assert_eq!(String::from_utf8_lossy(&read.stderr), "", "{paper}");
        for name in names_on(paper) {
            assert!(text.contains(name), "{name} on the {paper}: {text}");
        }
    }
}

fn dict<'a>(file: &'a Document, of: &'a Dictionary, key: &[u8]) -> &'a Dictionary {
    file.get_dict_in_dict(of, key).expect("it is there")
}

fn stream(file: &Document, of: &Dictionary, key: &[u8]) -> Vec<u8> {
    let id = of.get(key).and_then(Object::as_reference).expect("a stream");
    let stream = file.get_object(id).and_then(Object::as_stream).expect("a stream");
    stream.decompressed_content().expect("it reads")
}

/// The one font of a file, and what it descends to.
fn fonts(file: &Document) -> (Dictionary, Dictionary) {
    let page = file.page_iter().next().expect("a page");
    let fonts = file.get_page_fonts(page).expect("fonts");
    assert_eq!(fonts.len(), 1);
    let font = (*fonts.values().next().expect("one")).clone();
    let below = font.get(b"DescendantFonts").and_then(Object::as_array).expect("one")[0].as_reference().expect("one");
    let below = file.get_dictionary(below).expect("one").clone();
    (font, below)
}

/// Each file has the part of the font that it uses and no more; each letter says what it is, even where two look alike.
#[test]
fn a_file_has_the_letters_that_it_uses() {
    let alike = ["AА", "BВΒ", "oоο", "a\u{a0}b c", "x−y–z-"];
    let names: Vec<&str> = NAMES.into_iter().chain(alike).collect();
    let bytes = print("Tags", &tags("Tags", &names, Paper::A4.size(), font()), font());
    let file = Document::load_mem(&bytes).expect("it is a PDF");
    let (font_dict, below) = fonts(&file);
    let shown = stream(&file, dict(&file, &below, b"FontDescriptor"), b"FontFile2");
    let whole = font().file().len();
    assert!(shown.len() < 12_000 && shown.len() * 8 < whole, "{} of {whole} bytes", shown.len());
    let name = |of: &Dictionary| of.get(b"BaseFont").and_then(Object::as_name).expect("a name").to_vec();
    let called = String::from_utf8(name(&font_dict)).expect("letters");
    let (tag, rest) = called.split_once('+').expect("a part of a font");
    assert!(tag.len() == 6 && tag.bytes().all(|b| b.is_ascii_uppercase()) && rest == font().name, "{called}");
    assert_eq!(name(&font_dict), name(&below));
    // Every letter once, in the order in which it is first used.
    let map = String::from_utf8(stream(&file, &font_dict, b"ToUnicode")).expect("text");
    let letters = map.split("beginbfchar").nth(1).expect("letters");
    let codes = letters.lines().filter(|line| line.starts_with('<') && line.len() == 13);
    let read: Vec<char> = codes
        .map(|line| char::from_u32(u32::from_str_radix(&line[8..12], 16).expect("a number")).expect("a letter"))
        .collect();
    let mut expected: Vec<char> = Vec::new();
    for letter in names.iter().flat_map(|name| name.split([' ', '\t']).collect::<Vec<_>>()).flat_map(str::chars) {
        if !expected.contains(&letter) {
            expected.push(letter);
        }
    }
    let missing: Vec<&char> = expected.iter().filter(|letter| !read.contains(letter)).collect();
    assert!(missing.is_empty(), "{missing:?} of {read:?}");
    // And each is as wide as the font says.
    let widths = below.get(b"W").and_then(Object::as_array).expect("widths")[1].as_array().expect("a list").clone();
    assert_eq!(widths.len(), read.len());
    for (width, letter) in widths.iter().zip(&read) {
        let width = f64::from(width.as_float().expect("a number"));
        assert!((width - font().width(&letter.to_string()) * 1_000.0).abs() < 0.01, "{letter}: {width}");
    }
    // The same papers are the same file.
    assert_eq!(bytes, print("Tags", &tags("Tags", &names, Paper::A4.size(), font()), font()));
}

/// How many dots to a millimetre.
const DOTS: f64 = 12.0;

/// Where the dark dots of a page of one line lie from its middle, and how dark each of them is.
fn drawn(words: &str) -> (f64, Vec<u8>) {
    let mut page = Drawing { max: [150.0, 30.0], lettering: 8.0, ..Drawing::default() };
    page.label([75.0, 15.0], words, Ink::Page);
    let file = hayro_syntax::Pdf::new(print("x", &[page], font())).expect("it is a PDF");
    let scale = (DOTS * 25.4 / 72.0) as f32;
    let look = PixmapSettings { x_scale: scale, y_scale: scale, bg_color: WHITE };
    let settings = hayro_interpret::InterpreterSettings::default();
    let picture = render(&file.pages()[0], &RenderCache::new(), &settings, &RenderSettings::default(), &look);
    let wide = usize::from(picture.width());
    let dots: Vec<u8> = picture.data_as_u8_slice().as_chunks::<4>().0.iter().map(|dot| dot[0]).collect();
    let dark = dots.iter().enumerate().filter(|(_, dot)| **dot < 128).map(|(nth, _)| nth % wide);
    let (min, max) = dark.fold((usize::MAX, 0), |(min, max), x| (min.min(x), max.max(x)));
    assert!(min < max, "{words} leaves no ink");
    ((max - min) as f64 / DOTS, dots)
}

/// Each name is drawn as wide as it was measured, by letters of its own: no blank, no box, no question mark.
#[test]
fn names_are_drawn_by_their_own_letters() {
    for name in NAMES {
        let (wide, dots) = drawn(name);
        let measured = font().width(name) * 8.0;
        assert!((wide - measured).abs() < 1.4, "{name}: {wide} mm, measured {measured}");
        let asked = "?".repeat(name.chars().count());
        assert_ne!(dots, drawn(&asked).1, "{name}");
        // Each letter by itself looks like no other of its name.
        let letters: Vec<(char, Vec<u8>)> = name.chars().map(|c| (c, drawn(&c.to_string()).1)).collect();
        for (nth, (letter, one)) in letters.iter().enumerate() {
            let same = letters[..nth].iter().filter(|(other, dots)| other != letter && dots == one);
            assert_eq!(same.count(), 0, "{letter} of {name}");
        }
    }
}

/// Whatever the page itself says on paper has its letters.
#[test]
fn no_word_of_the_page_lacks_a_letter() {
    for form in FORMS {
        let project = common::typical::set_of(form);
        for pages in [handed_out(&project), labels(&project), teachers(&project)] {
            assert_eq!(on_pages(&pages, font()), [], "{}", form.key);
        }
    }
}
