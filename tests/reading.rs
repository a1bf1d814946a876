//! Files are read into plain data field by field, and what is wrong in them is said where it is.
#![cfg(not(target_arch = "wasm32"))]

use snugfold::measure::slot::reader::read;
use snugfold::project::example::example;
use snugfold::project::fitting::Shape;
use snugfold::project::request::{Board, Project};

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
}

#[test]
fn what_is_wrong_is_said() {
    for (text, said) in [
        (r#"{"cards": []}"#, "missing field `boxes`"),
        (r#"{"cards": [], "boxes": [], "cards": []}"#, "duplicate field `cards`"),
        (r#"{"sets": -1}"#, "invalid type: integer `-1`, expected u32"),
        (r#"{"sets": 4294967296}"#, "that number is too large"),
        (r#"{"sets": 1.5}"#, "invalid type: floating point `1.5`, expected u32"),
        (r#"{"sets": null}"#, "invalid type: null, expected u32"),
        (r#"{"cards": {}}"#, "invalid type: map, expected a sequence"),
        (r#"{"boxes": [[]]}"#, "invalid type: sequence, expected struct Part"),
        (r#"{"system": "feet"}"#, "“feet” is none of inch, metric"),
        (r#"{"cellar": 1}"#, "unknown field `cellar`, expected one of `cards`, `boxes`, "),
    ] {
        let error = read::<Project>(text).map_err(|e| e.to_string());
        assert!(error.as_ref().is_err_and(|e| e.starts_with(said)), "{text}: {error:?}");
    }
}
