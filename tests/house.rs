//! The rules of the house that a machine can check: see DEVELOPERS.md for why.
#![cfg(not(target_arch = "wasm32"))]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The rooms under `src`, in the order in which data walks through them. A room uses
/// those before it, and never one after it.
const ROOMS: [&str; 17] = [
    "measure", "stock", "project", "net", "allow", "assembly", "fold", "form", "fit", "cut", "make", "plan", "say",
    "draw", "keep", "web", "ui",
];

/// What only the page in the browser may be made of.
const BROWSER_CRATES: [&str; 7] = ["gloo-", "js-sys", "leptos", "reactive_graph", "tachys", "wasm-bindgen", "web-sys"];

const LONGEST: usize = 400;

struct Source {
    /// Such as `form/tray.rs`.
    name: String,
    text: String,
}

impl Source {
    fn room(&self) -> &str {
        let first = self.name.split('/').next().unwrap_or_default();
        first.strip_suffix(".rs").unwrap_or(first)
    }

    /// The lines of the program itself, numbered: no comments, no unit tests (they stand
    /// at the end of a file).
    fn program(&self) -> impl Iterator<Item = (usize, &str)> {
        self.code().take_while(|(_, line)| !line.trim_start().starts_with("#[cfg(test)]"))
    }

    /// The lines of code, numbered: no comments.
    fn code(&self) -> impl Iterator<Item = (usize, &str)> {
        let lines = self.text.lines().enumerate();
        lines.map(|(number, line)| (number + 1, line)).filter(|(_, line)| !line.trim_start().starts_with("//"))
    }
}

#[test]
fn the_native_build_knows_no_browser() {
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let tree = Command::new(cargo)
        .args(["tree", "--locked", "--package", "snugfold", "--edges", "normal", "--prefix", "none"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo tree runs");
    assert!(tree.status.success(), "{}", String::from_utf8_lossy(&tree.stderr));
    let tree = String::from_utf8_lossy(&tree.stdout);
    assert!(tree.contains("serde_json"), "a tree: {tree}");
    let found: Vec<_> = tree.lines().filter(|line| BROWSER_CRATES.iter().any(|name| line.starts_with(name))).collect();
    assert!(found.is_empty(), "only `web` and `ui` know the browser: {found:?}");
}

#[test]
fn every_file_says_what_it_is() {
    let silent: Vec<_> =
        sources().into_iter().filter(|source| !source.text.starts_with("//! ")).map(|source| source.name).collect();
    assert!(silent.is_empty(), "files begin with `//! `: {silent:#?}");
}

#[test]
fn no_file_is_too_long_to_read() {
    let long: Vec<_> = sources()
        .into_iter()
        .map(|source| (source.text.lines().count(), source.name))
        .filter(|(lines, _)| *lines > LONGEST)
        .collect();
    assert!(long.is_empty(), "over {LONGEST} lines, split them: {long:#?}");
}

#[test]
fn rooms_use_only_rooms_before_them() {
    let mut wrong = Vec::new();
    for source in sources() {
        let Some(own) = place(source.room()) else {
            continue;
        };
        for room in used_rooms(&source) {
            if place(&room).is_some_and(|other| other > own) {
                wrong.push(format!("{} uses {room}", source.name));
            }
        }
    }
    assert!(wrong.is_empty(), "arrows run upward only: {wrong:#?}");
}

#[test]
fn every_room_has_its_place() {
    let unknown: BTreeSet<_> = sources()
        .iter()
        .map(|source| source.room().to_owned())
        .filter(|room| room != "lib" && room != "main" && place(room).is_none())
        .collect();
    assert!(unknown.is_empty(), "not in the order of rooms: {unknown:?}");
}

#[test]
fn nothing_that_a_maker_can_reach_gives_up() {
    let mut found = Vec::new();
    for source in sources() {
        if !["ui", "web", "keep", "project"].contains(&source.room()) {
            continue;
        }
        for (number, line) in source.program() {
            for word in [".unwrap()", ".expect(", "panic!", "todo!", "unreachable!", "unimplemented!"] {
                if line.contains(word) {
                    found.push(format!("{}:{number}: {}", source.name, line.trim()));
                }
            }
        }
    }
    assert!(found.is_empty(), "a maker's page may not stop: {found:#?}");
}

/// Whether something in quotes on this line begins like a sentence: a capital, more letters, another word.
fn is_said(line: &str) -> bool {
    let begins = |text: &str| {
        let mut words = text.split(' ');
        let (first, second) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
        let capital = first.starts_with(char::is_uppercase) && first.chars().skip(1).all(char::is_lowercase);
        capital && first.len() > 1 && second.starts_with(char::is_lowercase)
    };
    line.split('"').skip(1).step_by(2).any(begins)
}

#[test]
fn what_is_said_stands_in_its_room() {
    assert!(is_said("tag(\"p\").with(\"Cut the blank\")") && !is_said("is(\"class\", \"note stop\") // Cut it"));
    let mut found = Vec::new();
    for source in sources().into_iter().filter(|s| ["draw", "web", "ui"].contains(&s.room())) {
        let said = source.program().filter(|(_, line)| is_said(line));
        found.extend(said.map(|(number, line)| format!("{}:{number}: {}", source.name, line.trim())));
    }
    assert!(found.is_empty(), "words for makers belong into src/say: {found:#?}");
}

/// What is called later must not look at signals that are gone: `ui/alive.rs` sees to it, where nobody goes round it.
#[test]
fn what_the_page_does_later_asks_whether_it_is_still_there() {
    let (anywhere, by_effects) = (["set_timeout(", "request_animation_frame(", "motion::each_frame("], "Effect::new(");
    let mut found = Vec::new();
    for source in sources().into_iter().filter(|s| s.room() == "ui" && s.name != "ui/alive.rs") {
        let effects = ["ui/placed.rs", "ui/value.rs"].contains(&source.name.as_str());
        let round = |line: &str| anywhere.iter().any(|w| line.contains(w)) || (line.contains(by_effects) && !effects);
        let lines = source.program().filter(|(_, line)| round(line));
        found.extend(lines.map(|(number, line)| format!("{}:{number}: {}", source.name, line.trim())));
    }
    assert!(found.is_empty(), "timers, frames and effects of the page go through `Alive`: {found:#?}");
}

#[test]
fn the_start_script_looks_for_the_design_where_the_program_keeps_it() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let read = |name| fs::read_to_string(root.join(name)).expect("the file is there");
    let between = |text: &str, before: &str| {
        let from = text.find(before).expect("the name is there") + before.len();
        text[from..].split('"').next().map(str::to_owned)
    };
    let script = between(&read("style/start.js"), "const CURRENT = \"");
    let program = between(&read("src/web/keys.rs"), "const CURRENT: &str = \"");
    assert_eq!(script, program);
}

/// What SECURITY.md tells a host to send is what the journeys are made with.
#[test]
fn hosts_are_told_the_headers_that_the_tests_send() {
    let text = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("SECURITY.md")).expect("it is there");
    let block = text.split("```").nth(1).expect("a block of headers");
    let told: Vec<_> = block.trim().lines().filter_map(|line| line.split_once(": ")).collect();
    let told: Vec<_> = told.iter().map(|(name, value)| (name.to_lowercase(), *value)).collect();
    let sent: Vec<_> = xtask::site::HEADERS.iter().map(|(name, value)| ((*name).to_owned(), *value)).collect();
    assert_eq!(told, sent);
}

#[test]
fn rooms_are_found_in_all_the_ways_to_name_them() {
    let check = |text: &str, expected: &[&str]| {
        let name = "form/x.rs".to_owned();
        let text = text.to_owned();
        let found: Vec<_> = used_rooms(&Source { name, text }).into_iter().collect();
        assert_eq!(found, expected);
    };
    check("use crate::cut::Layout;", &["cut"]);
    check("let x: crate::net::Net = crate::fold::pose();", &["fold", "net"]);
    check("use crate::{measure::{Length, net}, cut, fold as f};", &["cut", "fold", "measure"]);
    check("use crate::{\n    draw::Drawing,\n    ui::App,\n};", &["draw", "ui"]);
    check("// see crate::ui", &[]);
    check("pub(in crate::form) fn f() {}", &["form"]);
}

fn place(room: &str) -> Option<usize> {
    ROOMS.iter().position(|name| *name == room)
}

/// The first names after each `crate::`, those within braces too.
fn used_rooms(source: &Source) -> BTreeSet<String> {
    let code: Vec<_> = source.code().map(|(_, line)| line).collect();
    let code = code.join("\n");
    let mut rooms = BTreeSet::new();
    for (at, before) in code.match_indices("crate::") {
        let rest = &code[at + before.len()..];
        if let Some(group) = rest.strip_prefix('{') {
            let mut depth = 0_usize;
            let mut name = String::new();
            let mut named = false;
            for letter in group.chars() {
                match letter {
                    '}' if depth == 0 => break,
                    '{' => depth += 1,
                    '}' => depth -= 1,
                    ',' if depth == 0 => {
                        rooms.insert(std::mem::take(&mut name));
                        named = false;
                    }
                    _ if depth > 0 || named => {}
                    _ if letter.is_alphanumeric() || letter == '_' => name.push(letter),
                    _ => named = !name.is_empty(),
                }
            }
            rooms.insert(name);
        } else {
            let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_');
            rooms.insert(rest[..end.unwrap_or(rest.len())].to_owned());
        }
    }
    rooms.remove("");
    rooms
}

fn sources() -> Vec<Source> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut paths = Vec::new();
    collect(&top, &mut paths);
    paths.sort();
    assert!(!paths.is_empty());
    let read = |path: PathBuf| Source {
        name: path.strip_prefix(&top).expect("under src").to_string_lossy().replace('\\', "/"),
        text: fs::read_to_string(&path).expect("a source file can be read"),
    };
    paths.into_iter().map(read).collect()
}

fn collect(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder can be read") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            collect(&path, into);
        } else if path.extension().is_some_and(|end| end == "rs") {
            into.push(path);
        }
    }
}
