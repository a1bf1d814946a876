//! The scoring board and the trimmer.

use leptos::prelude::*;

use super::desk::{Desk, desk};
use super::length_field::LengthField;
use super::notes::notes;
use super::tag::{Tag, classed};
use super::value::fact;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::measure::system::System;
use crate::project::bound::{self, Range};
use crate::project::finding::Place;
use crate::project::request::Project;
use crate::say::page;

/// One tool's figure: what it is called, and where it stands in the design.
struct Tool {
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    range: Range<Length>,
    of: fn(&mut Project) -> &mut Option<Given>,
}

/// What each figure is.
const TOOLS: [Tool; 7] = [
    Tool {
        key: "inch-step",
        label: page::INCH_STEP,
        hint: page::STEP_HINT,
        range: bound::SCORE_STEP,
        of: |p| &mut p.board.inch_step,
    },
    Tool {
        key: "metric-step",
        label: page::METRIC_STEP,
        hint: page::STEP_HINT,
        range: bound::SCORE_STEP,
        of: |p| &mut p.board.metric_step,
    },
    Tool {
        key: "longest-cut",
        label: page::LONGEST_CUT,
        hint: page::LONGEST_CUT_HINT,
        range: bound::LONGEST_CUT,
        of: |p| &mut p.trimmer.longest_cut,
    },
    Tool {
        key: "least-strip",
        label: page::LEAST_STRIP,
        hint: page::LEAST_STRIP_HINT,
        range: bound::LEAST_STRIP,
        of: |p| &mut p.trimmer.least_strip,
    },
    Tool {
        key: "edge-trim",
        label: page::EDGE_TRIM,
        hint: page::EDGE_TRIM_HINT,
        range: bound::EDGE_TRIM,
        of: |p| &mut p.trimmer.edge_trim,
    },
    Tool {
        key: "score-error",
        label: page::SCORE_ERROR,
        hint: page::ERROR_HINT,
        range: bound::HAND_ERROR,
        of: |p| &mut p.trimmer.score_error,
    },
    Tool {
        key: "cut-error",
        label: page::CUT_ERROR,
        hint: page::ERROR_HINT,
        range: bound::HAND_ERROR,
        of: |p| &mut p.trimmer.cut_error,
    },
];

/// The fields of the tools.
#[must_use]
pub fn tool_fields() -> Vec<Tag> {
    let desk = desk();
    let shown = &["inch-step", "metric-step", "longest-cut", "least-strip", "edge-trim", "score-error", "cut-error"];
    let fields = TOOLS.map(|tool| field(desk, tool)).into_iter().collect::<Vec<_>>();
    vec![notes(desk.findings_besides(Place::Board, shown)), classed("div", "fields").with(fields)]
}

fn field(desk: Desk, tool: Tool) -> Tag {
    let Tool { key, label, hint, range, of } = tool;
    let value = fact(move || {
        // The same way in for reading and writing; a copy is read.
        let mut copy = desk.project.get();
        of(&mut copy).clone()
    });
    let system = desk.system();
    let usual = fact(move || match key {
        "inch-step" => usual(bound::DEFAULT_SCORE_STEP.inch, System::Inch),
        "metric-step" => usual(bound::DEFAULT_SCORE_STEP.metric, System::Metric),
        "least-strip" => usual(bound::DEFAULT_LEAST_STRIP, system.get()),
        "edge-trim" => usual(Length::ZERO, system.get()),
        "score-error" => usual(bound::DEFAULT_SCORE_ERROR.of(system.get()), system.get()),
        "cut-error" => usual(bound::DEFAULT_CUT_ERROR.of(system.get()), system.get()),
        _ => page::ANY_LENGTH.to_owned(),
    });
    let commit = Callback::new(move |given: Option<Given>| desk.edit(key, |p| *of(p) = given));
    LengthField {
        id: key.to_owned(),
        label,
        hint: hint.to_owned(),
        range,
        value,
        usual: Some(usual),
        findings: desk.findings(Place::Board, Some(key)),
        commit,
    }
    .view()
}

fn usual(length: Length, system: System) -> String {
    format!("{}{}", page::USUAL, Figure::of(length, system))
}
