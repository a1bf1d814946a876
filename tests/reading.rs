//! Files are read into plain data by what is derived for each type, and what is wrong in them is said where it is.
#![cfg(not(target_arch = "wasm32"))]

use serde::de::DeserializeOwned;
use snugfold::measure::json::{self, Step, Wrong};
use snugfold::project::batch::Batch;
use snugfold::project::class::Class;
use snugfold::project::example::example;
use snugfold::project::fitting::Shape;
use snugfold::project::own::Own;
use snugfold::project::request::{Project, Supply};
use snugfold::project::tools::{Board, Trimmer};
use snugfold::project::trade::Trade;

fn read<T: DeserializeOwned>(text: &str) -> Result<T, Wrong> {
    json::read(text)
}

#[test]
fn objects_are_read_and_arrays_in_their_place_are_not() {
    let project = example().expect("it is a project");
    let text = serde_json::to_string(&project).expect("it is written");
    assert_eq!(read::<Project>(&text).ok(), Some(project));
    assert!(read::<Project>(&format!("{text} 1")).is_err(), "something follows");
    let shape = r#"{"cylinder": {"across": "40 mm", "height": "50 mm"}}"#;
    assert!(matches!(read::<Shape>(shape), Ok(Shape::Cylinder { .. })));
    for wrong in [r#"{"cylinder": ["40 mm", "50 mm"]}"#, r#"{"ball": {}}"#, r#"{"cylinder": {"across": "4 mm"}}"#] {
        assert!(read::<Shape>(wrong).is_err(), "{wrong}");
    }
    assert!(read::<Board>("[null, null]").is_err() && read::<Board>("{}").is_ok());
    assert!(read::<Project>(r#"{"cards": [], "boxes": [], "class": [1, 2]}"#).is_err());
}

#[test]
fn what_is_wrong_is_said() {
    for (text, said) in [
        (r#"{"cards": []}"#, "missing field `boxes`"),
        (r#"{"cards": [], "boxes": [], "cards": []}"#, "duplicate field `cards`"),
        (r#"{"sets": -1}"#, "invalid value: integer `-1`, expected u32"),
        (r#"{"sets": 4294967296}"#, "invalid value: integer `4294967296`, expected u32"),
        (r#"{"sets": 1.5}"#, "invalid type: floating point `1.5`, expected u32"),
        (r#"{"sets": null}"#, "invalid type: null, expected u32"),
        (r#"{"cards": {}}"#, "invalid type: map, expected a sequence"),
        (r#"{"boxes": [[]]}"#, "invalid type: sequence, expected struct Part"),
        (r#"{"system": "feet"}"#, "unknown variant `feet`, expected `inch` or `metric`"),
        (r#"{"cellar": 1}"#, "unknown field `cellar`, expected one of `cards`, `boxes`, "),
    ] {
        let error = read::<Project>(text).map_err(|e| e.said);
        assert!(error.as_ref().is_err_and(|e| e.starts_with(said)), "{text}: {error:?}");
    }
}

#[test]
fn where_it_is_wrong_is_said() {
    let text = r#"{"cards": [],
        "boxes": [{"form": "a", "card": 1}, {"form": "b", "card": 1, "gifts": {"kinds": [
            {"shape": {"cylinder": {"across": "wide", "height": "1 in"}}}]}}]}"#;
    let wrong = read::<Project>(text).expect_err("that is no length");
    let named = |name: &str| Step::Named(name.to_owned());
    let way = ["gifts", "kinds", "", "shape", "cylinder", "across"].map(named);
    let way: Vec<Step> = [named("boxes"), Step::Nth(1)]
        .into_iter()
        .chain(way.map(|s| if s == named("") { Step::Nth(0) } else { s }))
        .collect();
    assert_eq!((wrong.line, wrong.way), (3, way));
}

/// What is as usual is not written: the numbers for that stand beside each field, and those of reading in `Default`.
#[test]
fn what_is_as_usual_is_not_written() {
    fn check<T: Default + serde::Serialize>() {
        assert_eq!(serde_json::to_string(&T::default()).ok().as_deref(), Some("{}"), "{}", std::any::type_name::<T>());
    }
    check::<Trade>();
    check::<Class>();
    check::<Batch>();
    check::<Own>();
    check::<Trimmer>();
    check::<Board>();
    check::<Supply>();
}
