//! The worked example that a first visitor lands on: invented here.

use super::request::Project;

/// Tea, honey and beeswax for three neighbours.
const TEXT: &str = include_str!("example.json");

/// The example, ready to be changed.
#[must_use]
pub fn example() -> Option<Project> {
    serde_json::from_str(TEXT).ok()
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_can_be_read() {
        let project: super::Project = serde_json::from_str(super::TEXT).expect("the example is a project");
        assert_eq!(project.boxes.len(), 3);
    }
}
