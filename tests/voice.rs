//! Own voice: where each word of the page comes from is written down (`src/say/README.md`), and nothing is missing.

use snugfold::form::registry::FORMS;
use snugfold::say::begin::ASKED;
use snugfold::say::page;
use snugfold::say::terms::TERMS;

/// The rows of the first table: words, and where they come from.
fn rows() -> Vec<(Vec<&'static str>, &'static str)> {
    let table = include_str!("../src/say/README.md").split("## ").next().expect("a first part");
    let lines = table.lines().filter(|line| line.starts_with("| ")).skip(2);
    let row = |line: &'static str| {
        let cells: Vec<&str> = line.trim_matches('|').split('|').map(str::trim).collect();
        (cells[0].split("; ").collect(), cells[1])
    };
    lines.map(row).collect()
}

fn listed() -> Vec<&'static str> {
    rows().into_iter().flat_map(|(words, _)| words).collect()
}

#[test]
fn nothing_is_missing() {
    let listed = listed();
    let walk = [page::SET, page::FLAT, page::SHEETS, page::STEPS, page::TEACH, page::KEPT];
    let all = TERMS.iter().map(|t| t.word).chain(FORMS.iter().map(|f| f.name)).chain(walk).chain(ASKED);
    let missing: Vec<&str> = all.filter(|word| !listed.contains(word)).collect();
    assert_eq!(missing, Vec::<&str>::new(), "where these come from is not said");
}

#[test]
fn each_has_one_known_origin() {
    let mut seen = Vec::new();
    for (words, from) in rows() {
        assert!(["trade", "open standard", "plain English", "own"].contains(&from), "{from}");
        for word in words {
            assert!(!seen.contains(&word), "{word} stands twice");
            seen.push(word);
        }
    }
    assert!(seen.len() > 100, "{} words", seen.len());
}

/// What is listed is on the page: as a term, a form, or in a text of `src/say`.
#[test]
fn nothing_is_listed_that_is_not_there() {
    let texts: String = std::fs::read_dir("src/say")
        .expect("the texts")
        .flatten()
        .filter(|file| file.path().extension().is_some_and(|end| end == "rs"))
        .map(|file| std::fs::read_to_string(file.path()).expect("a text"))
        .collect();
    let there = |word: &&str| {
        TERMS.iter().any(|t| t.word == *word)
            || FORMS.iter().any(|f| f.name == *word)
            || texts.contains(&format!("\"{word}\""))
    };
    let lost: Vec<&str> = listed().into_iter().filter(|word| !there(word)).collect();
    assert_eq!(lost, Vec::<&str>::new(), "these are not on the page");
}
