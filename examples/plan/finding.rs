//! What the maker should know: where, how much it matters, what it is, its values, and the words of the page.

use std::collections::BTreeMap;

use serde::Serialize;
use serde_json::{Value, json};
use snugfold::measure::length::Length;
use snugfold::measure::system::System;
use snugfold::project::finding::{self, What};
use snugfold::say;

use super::frame::{kind, measure, place};

/// One finding.
#[derive(Serialize)]
pub struct Finding {
    place: String,
    input: Option<&'static str>,
    weight: String,
    kind: String,
    values: BTreeMap<&'static str, Value>,
    said: String,
}

impl Finding {
    /// A finding in `system`.
    pub fn of(finding: &finding::Finding, system: System) -> Self {
        Self {
            place: place(finding.place),
            input: finding.input,
            weight: kind(&finding.weight),
            kind: kind(&finding.what),
            values: values(&finding.what, system).into_iter().collect(),
            said: say::finding::finding(finding, system).to_string(),
        }
    }
}

fn values(what: &What, system: System) -> Vec<(&'static str, Value)> {
    let l = |length: &Length| json!(measure(*length, system));
    match what {
        What::Own(_) => vec![],
        What::BoxesOutside { is, most } => vec![("is", json!(is)), ("most", json!(most))],
        What::NoBoxes
        | What::NotSixSided
        | What::FitsTurned
        | What::FitsJoined
        | What::NoJoint
        | What::NothingLeftOfSheet
        | What::GiftsNotSized
        | What::LessonTooLarge
        | What::LayerNeedsMats
        | What::NothingToLine
        | What::NoRoomForTabs => {
            vec![]
        }
        What::NotThatKind { typed } => vec![("typed", json!(typed))],
        What::UnknownInput { key } => vec![("key", json!(key))],
        What::UnknownForm { form } | What::WrongKind { form } => vec![("form", json!(form))],
        What::UnknownCard { card } => vec![("card", json!(card))],
        What::NumberTwice { number } => vec![("number", json!(number))],
        What::CountOutside { is, least, most } => {
            vec![("is", json!(is)), ("least", json!(least)), ("most", json!(most))]
        }
        What::LengthOutside { is, least, most } => {
            vec![("is", l(is)), ("least", l(least)), ("most", l(most))]
        }
        What::ExtraTooLarge([width, height]) => vec![("width", l(width)), ("height", l(height))],
        What::NoSuchFace { face } => vec![("face", json!(face))],
        What::WallTooTall { panel, is, most } => vec![("panel", json!(panel)), ("is", l(is)), ("most", l(most))],
        What::LayersPileUp { panel, layers } => {
            vec![("panel", json!(panel)), ("layers", json!(layers))]
        }
        What::Moved { from, to } => vec![("from", l(from)), ("to", l(to))],
        What::PanelTooSmall { panel, is, least } => {
            vec![("panel", json!(panel)), ("is", l(is)), ("least", l(least))]
        }
        What::LooseFit { is, asked } => vec![("is", l(is)), ("asked", l(asked))],
        What::Ribbon { length } => vec![("length", l(length))],
        What::TooShortForTabs { least } => vec![("least", l(least))],
        What::TabTooWide { most }
        | What::LeansTooFar { most }
        | What::HemTooHigh { most }
        | What::GussetsMeet { most }
        | What::FlapTooLong { most }
        | What::LidTooHigh { most }
        | What::LipTooLong { most }
        | What::CornerTabTooLong { most }
        | What::WallTooHigh { most }
        | What::RoundTooLarge { most }
        | What::StrapTooWide { most }
        | What::TuckHits { most }
        | What::NotchTooLarge { most } => vec![("most", l(most))],
        What::FlapsOverlap { least, most } => vec![("least", l(least)), ("most", l(most))],
        What::TuckTooLong { is, most } => vec![("is", l(is)), ("most", l(most))],
        What::NoMat { panel, reveal } => vec![("panel", json!(panel)), ("reveal", l(reveal))],
        What::RevealTooWide { reveal } => vec![("reveal", l(reveal))],
        What::PieceTooLarge { piece, width, height, sheet_width, sheet_height, .. } => vec![
            ("piece", json!(piece)),
            ("width", l(width)),
            ("height", l(height)),
            ("sheet_width", l(sheet_width)),
            ("sheet_height", l(sheet_height)),
        ],
        What::ScoresAcrossGrain { pieces } => vec![("pieces", json!(pieces))],
        What::PieceTooThin { piece, is, least } => {
            vec![("piece", json!(piece)), ("is", l(is)), ("least", l(least))]
        }
        What::TrimmerTooShort { piece, longest } => {
            vec![("piece", json!(piece)), ("longest", l(longest))]
        }
        What::SheetsRanOut { piece, count } | What::PieceLeftOut { piece, count } => {
            vec![("piece", json!(piece)), ("count", json!(count))]
        }
        What::LittleToGrip { is, least } | What::TightRow { is, least } => vec![("is", l(is)), ("least", l(least))],
        What::WallAboveBoxes { wall, shortest } => {
            vec![("wall", l(wall)), ("shortest", l(shortest))]
        }
        What::LooseRow { most } => vec![("most", l(most))],
        What::UnevenDepths { play } => vec![("play", l(play))],
        What::LargestThatFits { width, depth, height, percent } => {
            vec![("width", l(width)), ("depth", l(depth)), ("height", l(height)), ("percent", json!(percent))]
        }
        What::WeightOutside { least, most } => vec![("least", json!(least)), ("most", json!(most))],
        What::WallsBuckle { carries, grams } => vec![("carries", json!(carries)), ("grams", json!(grams))],
        What::BaseSags { sag, grams } => vec![("sag", l(sag)), ("grams", json!(grams))],
        What::Topples { height, thin } => vec![("height", l(height)), ("thin", l(thin))],
        What::SetFitsAt { percent } => vec![("percent", json!(percent))],
        What::ThicknessEstimated { thickness } => vec![("thickness", l(thickness))],
        What::MarginOutside { least, most } => vec![("least", l(least)), ("most", l(most))],
        What::TooManyGifts { most, kinds } => vec![("most", json!(most)), ("kinds", json!(kinds))],
        What::GiftsTooLarge([width, depth, height])
        | What::SizesTypedToo([width, depth, height])
        | What::GiftsDoNotFit([width, depth, height]) => {
            vec![("width", l(width)), ("depth", l(depth)), ("height", l(height))]
        }
        What::TooManyPieces { is, most } => vec![("is", json!(is)), ("most", json!(most))],
    }
}
