//! What is added to a part, in words.

use super::measured::{length, sides};
use super::phrase::Phrase;
use crate::assembly::parts::Assembly;
use crate::make::extras::Made;
use crate::measure::system::System;
use crate::phrase;
use crate::project::extra::ExtraKind;

/// The group of fields.
pub const EXTRAS: &str = "Extras";
/// What the group is for.
pub const EXTRAS_HINT: &str = "Second layers, labels, tags, windows, holes for a ribbon, a liner";
/// What is added next.
pub const EXTRA: &str = "Add";
/// The button.
pub const ADD_EXTRA: &str = "Add it";
/// The face that it is on.
pub const FACE: &str = "On";
/// The card that it is cut from.
pub const FROM: &str = "Cut from";
/// Cut from the part's own card.
pub const OWN_CARD: &str = "the same card";
/// A window without a pane.
pub const OPEN: &str = "nothing: it stays open";
/// A window's pane.
pub const PANE: &str = "Pane from";

/// What can be added, as it is chosen.
pub const KINDS: [(ExtraKind, &str); 6] = [
    (ExtraKind::Layer, "Second layer on the mats"),
    (ExtraKind::Label, "Label"),
    (ExtraKind::Tag, "Tag"),
    (ExtraKind::Window, "Window"),
    (ExtraKind::RibbonHoles, "Holes for a ribbon"),
    (ExtraKind::Liner, "Liner on the floor"),
];

/// What it is called.
#[must_use]
pub fn kind(kind: ExtraKind) -> &'static str {
    KINDS.iter().find(|k| k.0 == kind).map_or("", |k| k.1)
}

/// What its two measures are.
#[must_use]
pub const fn measures(kind: ExtraKind) -> [&'static str; 2] {
    match kind {
        ExtraKind::Layer => ["Border", ""],
        ExtraKind::RibbonHoles => ["Apart, middle to middle", "Each hole across"],
        _ => ["Width", "Height"],
    }
}

/// The piece that is cut for it.
#[must_use]
pub const fn piece(made: &Made) -> &'static str {
    match made {
        Made::Layer { .. } => "second layer",
        Made::Label { .. } => "label",
        Made::Tag { .. } => "tag",
        Made::Window { .. } => "pane of the window",
        Made::RibbonHoles { .. } => "",
        Made::Liner { .. } => "liner",
    }
}

/// The step: what to do, and how; `letters` are those of its pieces.
#[must_use]
pub fn step(made: &Made, letters: &str, assembly: &Assembly, system: System) -> (&'static str, Vec<Phrase>) {
    let l = |it| length(it, system);
    let face = |(part, panel): (usize, _)| {
        assembly.parts.get(part).map_or(String::new(), |p| assembly.face(part, p.net.panel(panel).name))
    };
    // From the edges of a face to what lies in its middle.
    let place = |(part, panel): (usize, _), rect: crate::measure::outline::Rect| {
        let face = assembly.parts.get(part).map(|p| p.net.panel(panel).outline.bounds()).unwrap_or_default();
        phrase![
            l(rect.min.x - face.min.x),
            " from its left and right, ",
            l(rect.min.y - face.min.y),
            " from its top and bottom"
        ]
    };
    match made {
        Made::Layer { border, .. } => (
            "Glue the second layers onto the mats",
            vec![
                phrase![format!("{letters}; a border of "), l(*border), " of the mat shows on each side."],
                "Layer onto mat while both are flat.".into(),
            ],
        ),
        Made::Label { on, rect, .. } => {
            ("Glue the label on", vec![phrase![format!("{letters} on the {}, ", face(*on)), place(*on, *rect), "."]])
        }
        Made::Tag { .. } => (
            "Make the tag",
            vec![
                format!("{letters}: cut the two upper corners off, punch a hole between them, thread the ribbon.")
                    .into(),
                "Tie it on when the box is filled.".into(),
            ],
        ),
        Made::Window { pane, on, rect } => {
            let mut lines = vec![
                phrase![
                    format!("In the {}, through the mat too: ", face(*on)),
                    sides(rect.width(), rect.height(), system),
                    ", ",
                    place(*on, *rect),
                    "."
                ],
                "From corner to corner against a ruler, on a cutting mat; do not cut past the corners.".into(),
            ];
            if pane.is_some() {
                lines.push(
                    format!("{letters}: glue the pane behind it, glue only on the rim, none near the opening.").into(),
                );
            }
            ("Cut the window", lines)
        }
        Made::RibbonHoles { on, holes } => (
            "Punch the holes for the ribbon",
            vec![phrase![
                format!("In the {}: two holes of ", face(*on)),
                l(holes[0].radius * 2),
                ", ",
                l(holes[1].at.x - holes[0].at.x),
                " apart, in the middle."
            ]],
        ),
        Made::Liner { .. } => (
            "Lay the liner in",
            vec![format!("{letters} on the floor inside; for food it is a food-grade one.").into()],
        ),
    }
}
