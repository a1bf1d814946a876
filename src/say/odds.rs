//! How sure a fit is, in words.

use super::measured::length;
use super::phrase::Phrase;
use crate::fit::odds::{Accuracy, Kind, Link, On};
use crate::make::slides::{Cure, Odds, Way};
use crate::measure::system::System;
use crate::phrase;
use crate::project::fitting::Lesson;

/// `Slides in for about 97 of 100 makes …`: the chance, the tightest link, and what makes it surer.
#[must_use]
pub fn odds(odds: &Odds, accuracy: &Accuracy, system: System) -> Phrase {
    let makes = match odds.per_mille / 10 {
        0 => "fewer than 1".to_owned(),
        // Rounded down: no more is promised than there is.
        n @ 1..=98 => format!("about {n}"),
        _ => "at least 99".to_owned(),
    };
    let way = match odds.way {
        Way::Along => "along the row",
        Way::Across => "from front to back",
    };
    let cure = match odds.cure {
        Cure::None => Phrase::default(),
        Cure::Clearance(asked) => phrase![" A clearance of ", length(asked, system), " makes it 99."],
        Cure::MeasureFirst => " Make the boxes first, and measure them in a row before you score the holder.".into(),
    };
    phrase![
        format!("Slides in for {makes} of 100 makes, with scores true to "),
        length(accuracy.score, system),
        format!(" either way. The tightest link, {way}: {}.", link(odds.tightest)),
        cure
    ]
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
fn link(link: Link) -> String {
    let whose = match link.on {
        On::Inner => " of the boxes",
        On::Outer => " of the holder",
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
