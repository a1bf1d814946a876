//! What is said of a file that cannot be read: what is wrong, where, and how to mend it.

use crate::measure::json::Step;

/// Where there is nothing in it.
pub const EMPTY: &str = "This file is empty: choose another";
/// Where it is no text.
pub const NOT_TEXT: &str = "This is no text file: choose one that Snugfold has saved";
/// Where it ends too soon.
pub const CUT: &str = "This file ends in the middle: save or fetch it again";
/// Where it is JSON of something else.
pub const NOT_OURS: &str = "This file holds no gift set: choose one that Snugfold has saved";

/// Where it is more than is read.
#[must_use]
pub fn too_large(megabytes: usize, sets: usize) -> String {
    format!(
        "This file is larger than {megabytes} MB or {sets} sets, which is the most that is read: save the sets in parts"
    )
}

/// Where it is text, but no JSON from a line on.
#[must_use]
pub fn not_json(line: usize) -> String {
    format!("This file cannot be read from line {line} on: choose one that Snugfold has saved")
}

/// Where it has a version that is not known here.
#[must_use]
pub fn newer(version: u64, known: u32) -> String {
    format!(
        "This file is from a newer Snugfold (its version is {version}, this page knows {known}): load this page anew \
         while online, then open it again"
    )
}

/// Where something in it is not as it should be.
#[must_use]
pub fn wrong(line: usize, place: &str, what: &str) -> String {
    let place = if place.is_empty() { String::new() } else { format!(", {place}") };
    format!(
        "Line {line} of this file{place}: {what}. Put that right with a text editor, or open another copy of the file"
    )
}

/// What one of a list is called.
const LISTS: [(&str, &str); 10] = [
    ("sets", "set"),
    ("cards", "card"),
    ("boxes", "box"),
    ("more_sheets", "further sheets"),
    ("kinds", "gift"),
    ("extras", "addition"),
    ("off", "panel without a mat"),
    ("notes", "note"),
    ("ticks", "ticked step"),
    ("after", "state before"),
];

/// Where something is, as a maker calls it: `set 3, box 2, “inputs”, “width”`.
#[must_use]
pub fn place(way: &[Step]) -> String {
    let mut words = Vec::new();
    let mut way = way.iter().peekable();
    while let Some(step) = way.next() {
        let name = match step {
            Step::Named(name) => name.as_str(),
            Step::Nth(nth) => {
                words.push(format!("the {}. of the list", nth + 1));
                continue;
            }
        };
        match (name, way.peek()) {
            (list, Some(Step::Nth(nth))) => {
                let one = LISTS.iter().find(|l| l.0 == list).map_or_else(|| format!("“{list}”"), |l| l.1.to_owned());
                words.push(format!("{one} {}", nth + 1));
                way.next();
            }
            ("project" | "gifts", Some(_)) => {}
            ("holder", _) => words.push("the holder".to_owned()),
            (name, _) => words.push(format!("“{}”", short(name))),
        }
    }
    words.join(", ")
}

/// As much of what stands in a file as is said again.
fn short(text: &str) -> String {
    const MOST: usize = 40;
    if text.chars().count() <= MOST { text.to_owned() } else { text.chars().take(MOST).chain(['…']).collect() }
}

/// What the reader of JSON says where a value is of another kind than the word that belongs there.
pub const OTHER_VALUE: &str = "expected value";

/// What the reader of JSON found wrong, in a maker's words: it speaks of types, which nobody should have to know.
#[must_use]
pub fn fault(said: &str) -> String {
    let told = told(said);
    told.unwrap_or_else(|| short_line(said))
}

/// What rules of our own say is said as it is, but for its length.
fn short_line(said: &str) -> String {
    said.chars().take(200).collect()
}

fn told(said: &str) -> Option<String> {
    if said == OTHER_VALUE {
        return Some("something else belongs here".to_owned());
    }
    if let Some(rest) = said.strip_prefix("missing field ") {
        return Some(format!("{} is missing", quoted(rest)?.0));
    }
    if let Some(rest) = said.strip_prefix("duplicate field ") {
        return Some(format!("{} stands here twice", quoted(rest)?.0));
    }
    if let Some(rest) = said.strip_prefix("unknown field ") {
        return Some(format!("{} is not known here{}", quoted(rest)?.0, known(rest)));
    }
    if let Some(rest) = said.strip_prefix("unknown variant ") {
        let words: Vec<&str> = listed(rest.split_once(", expected ")?.1).collect();
        return Some(format!("{} is none of {}", quoted(rest)?.0, words.join(", ")));
    }
    let rest = said.strip_prefix("invalid type: ").or_else(|| said.strip_prefix("invalid value: "))?;
    let (is, wanted) = rest.rsplit_once(", expected ")?;
    Some(format!("{} belongs here, not {}", belongs(wanted), found(is)))
}

/// The first name between backticks, in our quotes, and what comes after.
fn quoted(text: &str) -> Option<(String, &str)> {
    let (name, rest) = text.strip_prefix('`')?.split_once("`, expected ").or_else(|| {
        let name = text.strip_prefix('`')?.strip_suffix('`')?;
        Some((name, ""))
    })?;
    Some((format!("“{}”", short(name)), rest))
}

/// Everything between backticks.
fn listed(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

/// The names that are known, where they are few.
fn known(rest: &str) -> String {
    const FEW: usize = 8;
    let names: Vec<String> = rest
        .split_once(", expected ")
        .map_or("", |r| r.1)
        .split('`')
        .skip(1)
        .step_by(2)
        .map(|n| format!("“{n}”"))
        .collect();
    if names.is_empty() || names.len() > FEW { String::new() } else { format!("; known are {}", names.join(", ")) }
}

/// What belongs somewhere.
fn belongs(wanted: &str) -> String {
    match wanted {
        "u16" => "a whole number from 0 to 65,535".to_owned(),
        "u32" => "a whole number from 0 to 4,294,967,295".to_owned(),
        "u64" => "a whole number".to_owned(),
        "a string" | "a text" => "a text in quotes".to_owned(),
        "a sequence" => "a list in [ ]".to_owned(),
        "a map" => "a group of fields in { }".to_owned(),
        of_type if of_type.starts_with("struct ") => "a group of fields in { }".to_owned(),
        other => short_line(other),
    }
}

/// What stands there instead.
fn found(is: &str) -> String {
    let between = |begin: &str, end: &str| is.strip_prefix(begin).and_then(|r| r.strip_suffix(end));
    match is {
        "null" | "unit value" => "null".to_owned(),
        "sequence" => "a list".to_owned(),
        "map" => "a group of fields".to_owned(),
        _ => ["boolean `", "integer `", "floating point `"]
            .iter()
            .find_map(|begin| between(begin, "`"))
            .map(short)
            .or_else(|| between("string \"", "\"").map(|text| format!("“{}”", short(text))))
            .unwrap_or_else(|| short_line(is)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Step::Nth;

    fn named(name: &str) -> Step {
        Step::Named(name.to_owned())
    }

    #[test]
    fn places_are_called_as_makers_call_them() {
        let check = |way: &[Step], expected: &str| assert_eq!(place(way), expected);
        check(&[], "");
        check(&[named("project"), named("boxes"), Nth(1), named("inputs"), named("width")], "box 2, “inputs”, “width”");
        check(&[named("sets"), Nth(811), named("project"), named("cards"), Nth(0)], "set 812, card 1");
        check(
            &[named("holder"), named("gifts"), named("kinds"), Nth(0), named("shape")],
            "the holder, gift 1, “shape”",
        );
        check(&[named("odd"), Nth(2)], "“odd” 3");
    }

    /// Made by the library itself, so that another version of it that says it otherwise is noticed.
    #[test]
    fn what_the_library_says_is_said_in_plain_words() {
        #[derive(serde::Deserialize, Debug)]
        #[serde(deny_unknown_fields)]
        struct Sheets {
            #[allow(dead_code, reason = "it is only read")]
            have: u32,
            #[serde(default)]
            #[allow(dead_code, reason = "it is only read")]
            name: String,
            #[serde(default)]
            #[allow(dead_code, reason = "it is only read")]
            all: Vec<Way>,
        }
        #[derive(serde::Deserialize, Debug)]
        #[serde(rename_all = "kebab-case")]
        enum Way {
            Up,
            GrainAcross,
        }
        let check = |text: &str, expected: &str| {
            let error = serde_json::from_str::<Sheets>(text).map(|_| ()).expect_err("it is wrong").to_string();
            assert_eq!(fault(error.rsplit_once(" at line ").map_or(error.as_str(), |(said, _)| said)), expected);
        };
        check(r#"{"have":"3"}"#, "a whole number from 0 to 4,294,967,295 belongs here, not “3”");
        check(r#"{"have":-1}"#, "a whole number from 0 to 4,294,967,295 belongs here, not -1");
        check(r#"{"have":4294967296}"#, "a whole number from 0 to 4,294,967,295 belongs here, not 4294967296");
        check(r#"{"have":1.5}"#, "a whole number from 0 to 4,294,967,295 belongs here, not 1.5");
        check(r#"{"have":null}"#, "a whole number from 0 to 4,294,967,295 belongs here, not null");
        check(r#"{"have":1,"name":7}"#, "a text in quotes belongs here, not 7");
        check(r#"{"have":1,"name":[]}"#, "a text in quotes belongs here, not a list");
        check(r#"{"have":1,"all":{}}"#, "a list in [ ] belongs here, not a group of fields");
        check(r#"{"have":1,"all":["down"]}"#, "“down” is none of up, grain-across");
        check(r#"{"have":1,"all":[7]}"#, "something else belongs here");
        check(r#"{"have":1,"hoard":2}"#, "“hoard” is not known here; known are “have”, “name”, “all”");
        check("{}", "“have” is missing");
        check(r#"{"have":1,"have":1}"#, "“have” stands here twice");
        check("true", "a group of fields in { } belongs here, not true");
    }

    #[test]
    fn what_our_own_rules_say_is_said_as_it_is() {
        let own = "“twelve” is no length such as “4 1/4 in” or “108 mm”";
        assert_eq!(fault(own), own);
        assert_eq!(fault(&"x".repeat(900)).len(), 200);
    }
}
