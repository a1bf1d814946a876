//! How sure a fit is, in words.

use super::measured::length;
use super::phrase::Phrase;
use crate::assembly::parts::JoinName;
use crate::fit::odds::{Accuracy, Kind, Link, On};
use crate::make::slides::{Cure, Goes, Odds, Way};
use crate::measure::system::System;
use crate::phrase;
use crate::project::fitting::Lesson;

/// `Slides in for about 97 of 100 makes …`: the chance, the tightest link, and what makes it surer.
#[must_use]
pub fn odds(odds: &Odds, accuracy: &Accuracy, system: System) -> Phrase {
    let way = match odds.way {
        Way::Along => "along the row",
        Way::Across => "from front to back",
        Way::Up => "from bottom to top",
    };
    let tightest = link(odds.tightest, BOXES);
    let makes = phrase![format!("Slides in {}", makes(odds.per_mille)), length(accuracy.score, system)];
    phrase![
        makes,
        format!(" either way. The tightest link, {way}: {tightest}."),
        cure(odds.cure, " A clearance of ", FIRST, system)
    ]
}

const BOXES: [&str; 2] = [" of the boxes", " of the holder"];
const FIRST: &str = " Make the boxes first, and measure them in a row before you score the holder.";

/// The same of a part that goes into another; nothing of dividers, which are lapped.
#[must_use]
pub fn goes(goes: &Goes, accuracy: &Accuracy, system: System) -> Option<Phrase> {
    let what = match goes.join {
        None => "The boxes go to their places",
        Some(JoinName::LidOver) => "The lid goes over",
        Some(JoinName::DrawerIn) => "The drawer goes in",
        Some(JoinName::BandRound) => "The band goes round",
        Some(JoinName::TrayIn) => "The tray goes in",
        Some(JoinName::LayerIn) => "The layer goes in",
        Some(JoinName::DividersLap | JoinName::DividerIn | JoinName::HandleIn) => return None,
    };
    let way = match goes.way {
        Way::Along => "from side to side",
        Way::Across => "from front to back",
        Way::Up => "from bottom to top",
    };
    // The room round boxes has a name of its own in some holders.
    let (whose, asked, first) = match goes.join {
        None => (BOXES, " Room in total of ", FIRST),
        Some(_) => (
            [" of the inner part", " of the outer part"],
            " A clearance of ",
            " Make the inner part first, and measure it before you score the outer one.",
        ),
    };
    let tightest = link(goes.tightest, whose);
    let makes = phrase![format!("{what} {}", makes(goes.per_mille)), length(accuracy.score, system)];
    Some(phrase![
        makes,
        format!(" either way. The tightest link, {way}: {tightest}."),
        cure(goes.cure, asked, first, system)
    ])
}

fn makes(per_mille: u32) -> String {
    let makes = match per_mille / 10 {
        0 => "fewer than 1".to_owned(),
        // Rounded down: no more is promised than there is.
        n @ 1..=98 => format!("about {n}"),
        _ => "at least 99".to_owned(),
    };
    format!("for {makes} of 100 makes, with scores true to ")
}

fn cure(cure: Cure, asked: &'static str, first: &'static str, system: System) -> Phrase {
    match cure {
        Cure::None => Phrase::default(),
        Cure::Clearance(least) => phrase![asked, length(least, system), " makes it 99."],
        Cure::MeasureFirst => first.into(),
    }
}

/// What a first make taught: `Learned for this card: …`.
#[must_use]
pub fn learned(lesson: &Lesson, system: System) -> Phrase {
    let by = length(lesson.by().length(), system);
    match lesson {
        Lesson::Wider(_) => phrase!["Learned for this card: clearances are planned ", by, " wider than asked for."],
        Lesson::Narrower(_) => {
            phrase!["Learned for this card: clearances are planned ", by, " narrower than asked for."]
        }
    }
}

/// What errs: `the 6 scores of the boxes`.
fn link(link: Link, whose: [&str; 2]) -> String {
    let whose = match link.on {
        On::Inner => whose[0],
        On::Outer => whose[1],
        On::Both => "",
    };
    let (one, many) = match link.kind {
        Kind::Score => ("score", "scores"),
        Kind::Cut => ("cut edge", "cut edges"),
        Kind::Glue => ("glued joint", "glued joints"),
        Kind::Card => return "the thickness of the card".to_owned(),
    };
    match link.times {
        1 => format!("the {one}{whose}"),
        n => format!("the {n} {many}{whose}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::odds::Chain;
    use crate::measure::length::Length;

    fn check(per_mille: u32, cure: Cure, expected: &str) {
        let tightest = Link { kind: Kind::Score, on: On::Inner, times: 6, tolerance: Length::um(400) };
        let o = Odds { per_mille, way: Way::Along, tightest, along: Chain::default(), across: Vec::new(), cure };
        assert_eq!(odds(&o, &Accuracy::usual(System::Inch), System::Inch).to_string(), expected);
    }

    #[test]
    fn it_says_how_sure_and_what_to_do() {
        check(
            979,
            Cure::Clearance(Length::inches(1, 8)),
            "Slides in for about 97 of 100 makes, with scores true to 1/64 in either way. The tightest link, along the row: \
             the 6 scores of the boxes. A clearance of 1/8 in makes it 99.",
        );
        check(
            1_000,
            Cure::None,
            "Slides in for at least 99 of 100 makes, with scores true to 1/64 in either way. The tightest link, along the \
             row: the 6 scores of the boxes.",
        );
        check(
            3,
            Cure::MeasureFirst,
            "Slides in for fewer than 1 of 100 makes, with scores true to 1/64 in either way. The tightest link, along the \
             row: the 6 scores of the boxes. Make the boxes first, and measure them in a row before you score the holder.",
        );
    }
}
