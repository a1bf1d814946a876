//! Broken files: what is said of each, and where it is said to be, as text that can be read.

use serde_json::{Value, json};

use snugfold::keep::file::{self, FileError, Kept};
use snugfold::project::example::example;

use super::common::dice::Dice;
use super::compare;

/// A set in which everything is said that can be, set out over lines.
fn full() -> Value {
    json!({
        "snugfold": 1,
        "project": {
            "name": "Thanks",
            "system": "metric",
            "board": { "inch_step": "1/8 in", "metric_step": "1 mm" },
            "sets": 3,
            "trimmer": { "edge_trim": "2 mm", "longest_cut": "320 mm", "least_strip": "8 mm", "score_error": "0.4 mm", "cut_error": "0.5 mm" },
            "spares": 10,
            "cards": [{
                "id": 1, "name": "Kraft", "grammage": "80 lb", "thickness": "3 mm", "stack": 10, "lesson": { "wider": "0.5 mm" },
                "sheet_width": "12 in", "sheet_height": "30.5 cm", "tint": "#c9a878",
                "supply": { "have": 4, "shop": "shut", "price": 120 },
                "more_sheets": [{ "width": "210 mm", "height": "297 mm", "supply": { "have": 2 } }],
                "lie": "grain-up"
            }],
            "boxes": [{
                "id": 1, "name": "Tea", "form": "tuck-box", "count": 2, "card": 1,
                "inputs": { "width": "3 in", "notch": "yes", "window": 1 },
                "mats": { "card": 1, "reveal": "3 mm", "off": ["back"] },
                "gifts": {
                    "kinds": [
                        { "name": "tin", "shape": { "cylinder": { "across": "2 in", "height": "40 mm" } }, "count": 2, "wrap": "wrapped", "turns": "upright", "grams": 90 },
                        { "shape": { "block": { "width": "2 in", "depth": "1 in", "height": "40 mm" } } }
                    ],
                    "room_width": "3 mm", "room_depth": "3 mm", "room_height": "3 mm"
                },
                "extras": [{ "kind": "label", "face": "front", "width": "30 mm", "height": "20 mm", "card": 1 }],
                "facing": "side", "blank": "joined", "drawn": "called Mine"
            }],
            "holder": { "form": "row-holder", "card": 1 },
            "own": { "credit": "by Ada", "picture": "data:image/jpeg;base64,/9j/4AAQ", "notes": [{ "at": "0123456789abcdef", "kind": "note", "text": "press" }] },
            "trade": { "currency": "EUR", "hour": 1500, "trims": 80, "expenses": 10, "profit": 25, "shelf": 180, "with_hours": 3, "material": 5, "stall": 3000, "fee": 9000 },
            "class": { "makers": 11, "each": 2, "spares": 15, "minutes": 150, "slow": 40, "breaks": 1, "ready": "cut-out" },
            "batch": { "helpers": 3, "evening": 90, "names": "Ada\nBen" }
        },
        "ticks": ["0123456789abcdef"],
        "saved_at": 1_790_000_000_000_u64
    })
}

/// Every place in it, as a pointer.
fn places(value: &Value, at: &str, all: &mut Vec<String>) {
    let children: Vec<(String, &Value)> = match value {
        Value::Object(fields) => fields.iter().map(|(k, v)| (k.clone(), v)).collect(),
        Value::Array(list) => list.iter().enumerate().map(|(n, v)| (n.to_string(), v)).collect(),
        _ => Vec::new(),
    };
    for (name, child) in children {
        let at = format!("{at}/{name}");
        all.push(at.clone());
        places(child, &at, all);
    }
}

fn said(bytes: &[u8]) -> String {
    match file::read(bytes) {
        Ok(sets) => format!("opens, {} set(s)", sets.len()),
        Err(why) => format!("{why}"),
    }
}

fn text(value: &Value) -> String {
    serde_json::to_string_pretty(value).expect("it is plain data")
}

/// In each place something that does not belong there.
fn replaced(lines: &mut Vec<String>) {
    let wrong = [
        json!(null),
        json!(true),
        json!(1.5),
        json!(-1),
        json!(1e20),
        json!("wide"),
        json!([]),
        json!({}),
        json!(70_000),
    ];
    let mut all = Vec::new();
    places(&full(), "", &mut all);
    for (n, place) in all.iter().enumerate() {
        // Two of them each, others from place to place.
        for nth in [n, n + 4] {
            let mut value = full();
            let bad = &wrong[nth % wrong.len()];
            *value.pointer_mut(place).expect("it is there") = bad.clone();
            lines.push(format!("{place} := {bad}  →  {}", said(text(&value).as_bytes())));
        }
    }
}

/// Each object with a field too many, and without one that must be there.
fn fields(lines: &mut Vec<String>) {
    let mut all = Vec::new();
    places(&full(), "", &mut all);
    for place in all.iter().chain([&String::new()]) {
        let mut value = full();
        if let Some(Value::Object(fields)) = value.pointer_mut(place) {
            fields.insert("colour".to_owned(), json!("red"));
            lines.push(format!("{place} + \"colour\"  →  {}", said(text(&value).as_bytes())));
        }
    }
    for place in &all {
        let mut value = full();
        let (parent, name) = place.rsplit_once('/').expect("it begins with one");
        if let Some(Value::Object(fields)) = value.pointer_mut(parent) {
            fields.remove(name);
            let said = said(text(&value).as_bytes());
            if !said.starts_with("opens") {
                lines.push(format!("without {place}  →  {said}"));
            }
        }
    }
}

/// Files that makers really choose, and texts that were changed by hand.
fn by_hand(lines: &mut Vec<String>) {
    let full = text(&full());
    let mut whole: Vec<(&str, Vec<u8>)> = vec![
        ("nothing", vec![]),
        ("only spaces", b" \n\t ".to_vec()),
        ("a byte order mark", "\u{feff}".into()),
        ("a byte order mark and a set", format!("\u{feff}{full}").into_bytes()),
        ("a shopping list", b"eggs, milk, card".to_vec()),
        ("a picture", b"\xff\xd8\xff\xe0\x00\x10JFIF".to_vec()),
        ("a document", b"%PDF-1.7 \n1 0 obj".to_vec()),
        ("a packed folder", b"PK\x03\x04\x14\x00".to_vec()),
        ("a page", b"<!doctype html><title>Not found</title>".to_vec()),
        ("in another encoding", full.encode_utf16().flat_map(u16::to_le_bytes).collect()),
        ("null", b"null".to_vec()),
        ("a number", b"7".to_vec()),
        ("a word", b"\"snugfold\"".to_vec()),
        ("an empty list", b"[]".to_vec()),
        ("an empty object", b"{}".to_vec()),
        ("a foreign object", br#"{"type":"FeatureCollection","features":[]}"#.to_vec()),
        ("a list of sets", format!("[{full}]").into_bytes()),
        ("two sets in a row", format!("{full}{full}").into_bytes()),
        ("words behind it", format!("{full}\nand more").into_bytes()),
        ("no sets", br#"{"snugfold":1,"sets":[]}"#.to_vec()),
        ("sets that are none", br#"{"snugfold":1,"sets":7}"#.to_vec()),
        ("a set that is none", br#"{"snugfold":1,"sets":[7]}"#.to_vec()),
        ("a set without a design", br#"{"snugfold":1,"sets":[{"ticks":[]}]}"#.to_vec()),
        ("a version alone", br#"{"snugfold":1}"#.to_vec()),
        ("version 0", br#"{"snugfold":0,"project":{}}"#.to_vec()),
        ("a word for a version", br#"{"snugfold":"1","project":{}}"#.to_vec()),
        ("a design that is none", br#"{"snugfold":1,"project":[]}"#.to_vec()),
        ("a bare design without boxes", br#"{"cards":[]}"#.to_vec()),
        ("a bare design without cards", br#"{"boxes":[]}"#.to_vec()),
        ("a bare design of nothing", br#"{"boxes":[],"cards":[]}"#.to_vec()),
        ("ticks alone", br#"{"snugfold":1,"after":[],"saved_at":1,"ticks":[]}"#.to_vec()),
        ("deep brackets", b"[".repeat(100_000)),
        ("deep objects", br#"{"project":"#.repeat(50_000)),
        ("too many bytes", b" ".repeat(file::MOST_BYTES + 1)),
    ];
    let sets = |n: usize| {
        format!("{{\"snugfold\":1,\"sets\":[{}]}}", vec![r#"{"project":{"cards":[],"boxes":[]}}"#; n].join(","))
    };
    whole.push(("a set too many", sets(file::MOST_SETS + 1).into_bytes()));
    for (name, bytes) in whole {
        lines.push(format!("{name}  →  {}", said(&bytes)));
    }
    let long = "x".repeat(201);
    let changes: &[(&str, &str)] = &[
        ("\"snugfold\": 1", "\"snugfold\": 2"),
        ("\"snugfold\": 1", "\"snugfold\": -1"),
        ("\"snugfold\": 1", "\"snugfold\": 1, \"snugfold\": 1"),
        ("\"sets\": 3", "\"sets\": 3, \"sets\": 4"),
        ("\"sets\": 3", "\"sets\": 4294967296"),
        ("\"sets\": 3", "\"sets\": 3.0"),
        ("\"sets\": 3", "\"sets\": \"3\""),
        ("\"sets\": 3", "\"sets\": 03"),
        ("\"sets\": 3", "\"sets\":"),
        ("\"sets\": 3", "\"sets\" 3"),
        ("\"sets\": 3", "'sets': 3"),
        ("\"system\": \"metric\"", "\"system\": \"feet\""),
        ("\"system\": \"metric\"", "\"system\": \"Metric\""),
        ("\"12 in\"", "\"twelve\""),
        ("\"12 in\"", "\"12 furlongs\""),
        ("\"12 in\"", "\"\""),
        ("\"12 in\"", "\"1/0 in\""),
        ("\"12 in\"", "12"),
        ("\"80 lb\"", "\"heavy\""),
        ("\"80 lb\"", "\"80 lb bond\""),
        ("\"80 lb\"", "\"99999999999\""),
        ("\"#c9a878\"", "\"red\""),
        ("\"#c9a878\"", "\"#fff\""),
        ("\"wider\"", "\"broader\""),
        ("\"wider\": \"0.5 mm\"", ""),
        ("\"wider\": \"0.5 mm\"", "\"wider\": \"0.5 mm\", \"narrower\": \"0.5 mm\""),
        ("\"cylinder\"", "\"cone\""),
        ("\"across\"", "\"width\""),
        ("\"across\": \"2 in\",", ""),
        ("\"label\"", "\"sticker\""),
        ("\"kind\": \"note\"", "\"kind\": \"remark\""),
        ("data:image/jpeg;base64,/9j/4AAQ", "https://example.org/a.jpg"),
        ("data:image/jpeg;base64,/9j/4AAQ", "data:image/png;base64,AAAA"),
        ("data:image/jpeg;base64,/9j/4AAQ", ""),
        ("1790000000000", "\"yesterday\""),
        ("1790000000000", "18446744073709551615"),
        ("1790000000000", "99999999999999999999"),
        ("\"Thanks\"", "\"\\ud800\""),
        ("\"Thanks\"", "\"\u{1}\""),
        ("\"yes\"", "\"7 mm7\""),
    ];
    let larger: &[(&str, &str)] = &[
        ("\"Thanks\"", &format!("\"{long}\"")),
        ("\"Kraft\"", &format!("\"{long}\"")),
        ("\"width\": \"3 in\"", &format!("\"{long}\": \"3 in\"")),
        ("\"0123456789abcdef\"", &format!("\"{long}\"")),
    ];
    for (old, new) in changes.iter().chain(larger) {
        let changed = full.replacen(old, new, 1);
        assert_ne!(changed, full, "{old} stands in it");
        let short: String = new.chars().take(60).collect();
        lines.push(format!("{old} := {}  →  {}", short.escape_debug(), said(changed.as_bytes())));
    }
    for (list, most) in
        [("cards", 101), ("boxes", 201), ("boxes/0/gifts/kinds", 51), ("boxes/0/extras", 41), ("own/notes", 201)]
    {
        let mut value = self::full();
        if let Some(Value::Array(all)) = value.pointer_mut(&format!("/project/{list}")) {
            *all = vec![all[0].clone(); most];
        }
        lines.push(format!("{most} of {list}  →  {}", said(self::text(&value).as_bytes())));
    }
}

/// Bytes changed by dice, as a cable or a disk might.
fn by_dice(lines: &mut Vec<String>) {
    let mut dice = Dice(7);
    let full = text(&full());
    let example = file::write(&Kept::new(example().expect("there is one")));
    for nth in 0..80 {
        let good = if nth % 2 == 0 { &full } else { &example };
        let changed = dice.changed(good.as_bytes(), full.as_bytes());
        let at = good.bytes().zip(changed.iter()).take_while(|(a, b)| a == *b).count();
        let end = changed.len().min(at + 24);
        let seen = String::from_utf8_lossy(&changed[at.min(end)..end]).escape_debug().to_string();
        lines.push(format!("dice {nth}, from byte {at}: {seen}  →  {}", said(&changed)));
    }
}

#[test]
fn what_is_said_of_broken_files_is_as_recorded() {
    let mut lines = Vec::new();
    replaced(&mut lines);
    fields(&mut lines);
    by_hand(&mut lines);
    by_dice(&mut lines);
    let broken = lines.iter().filter(|l| !l.contains("  →  opens")).count();
    assert!(broken >= 300, "{broken} broken files");
    compare("broken.txt", &(lines.join("\n") + "\n"));
}

/// A text cut anywhere is told as cut.
#[test]
fn a_file_that_ends_in_the_middle_is_told_as_such() {
    let full = text(&full());
    for end in (1..full.len()).step_by(7).filter(|&end| full.is_char_boundary(end)) {
        assert_eq!(file::read(&full.as_bytes()[..end]), Err(FileError::Cut), "{end}");
    }
}
