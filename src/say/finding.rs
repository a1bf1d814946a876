//! What a finding means and how to mend it, in one sentence or two.

use super::measured::{free, least, length, most, sides, size, taken};
use super::own;
use super::phrase::Phrase;
use super::refusal::weight as weight_of_card;
use crate::assembly::parts::Size;
use crate::form::joined::LEAST_TAB;
use crate::make::layers::MOST;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::phrase;
use crate::project::bound::Range;
use crate::project::finding::{Finding, Weight, What};

/// The word before a finding, for its weight.
#[must_use]
pub const fn weight(weight: Weight) -> &'static str {
    match weight {
        Weight::Stop => "This stops it",
        Weight::Caution => "Take care",
        Weight::Note => "Good to know",
    }
}

/// The finding in words.
#[must_use]
pub fn finding(finding: &Finding, system: System) -> Phrase {
    let l = |it| length(it, system);
    let at_least = |it| least(it, system);
    let at_most = |it| most(it, system);
    match &finding.what {
        What::Own(fault) => own::fault(fault, system),
        What::LengthOutside { least, most, .. } => {
            phrase!["Type a length from ", at_least(*least), " to ", at_most(*most), "."]
        }
        What::CountOutside { least, most, .. } => format!("This can be from {least} to {most}: change the number.").into(),
        What::NotThatKind { typed } => {
            format!("“{}” cannot be used here: type it anew, or clear it for the usual value.", short(typed)).into()
        }
        What::UnknownInput { key } => {
            format!("This design has a value called “{}” that this version does not know; it is left alone.", short(key))
                .into()
        }
        What::UnknownForm { form } => {
            format!("This version does not know the form “{}”: choose another one.", short(form)).into()
        }
        What::WrongKind { form } => {
            format!("“{}” cannot stand here, since one form is for boxes and the other for holders: choose another.", short(form))
                .into()
        }
        What::UnknownCard { .. } => "The card that it was cut from is no longer in the list: choose another card.".into(),
        What::NumberTwice { number } => {
            format!("Two entries share the number {number}: remove one of them and add it again.").into()
        }
        What::NoBoxes => "There is no box in this set yet: add one.".into(),
        What::NotSixSided => {
            "A honeycomb is made of boxes with six equal sides: choose the many-sided box with six for all of them.".into()
        }
        What::BoxesOutside { is, most } => {
            format!("This holder takes 2 to {most} boxes, not {is}: change how many there are of each.").into()
        }
        // What was typed stands in the field; said again here it would be converted.
        What::Moved { to, .. } => phrase![
            "Made ",
            l(*to),
            ": the next groove of your board that is not smaller."
        ],
        What::ExtraTooLarge([width, height]) => phrase![
            "There is room for ",
            sides(*width, *height, system),
            " at most (across × down): make it smaller, or choose a larger face."
        ],
        What::NoSuchFace { face } => {
            format!("Nothing can be put on “{}”: choose a face that is seen, is upright and does not slide.", short(face)).into()
        }
        What::LayerNeedsMats => "A second layer lies on mats: switch the mats on first.".into(),
        What::NothingToLine => "There is no floor inside that a liner could lie on: take it out.".into(),
        What::WallTooTall { panel, is, most } => phrase![
            format!("The {panel} is "),
            l(*is),
            " both ways or more, and this card stays flat up to about ",
            at_most(*most),
            ": take thicker card, or stiffen the wall with a mat."
        ],
        What::LayersPileUp { panel, layers } => {
            format!("{layers} layers lie on each other at the {panel}, and more than {MOST} of a card like this fold and press badly: leave one out there, or take thinner card.").into()
        }
        What::NoRoomForTabs => phrase![
            "Tabs of ",
            l(LEAST_TAB),
            " find no room on these walls: make the sides or the height larger."
        ],
        What::LeansTooFar { most } => phrase![
            "The walls lean out so far that no tabs lie between them: make the rim ",
            at_most(*most),
            " or less, or the box higher."
        ],
        What::PanelTooSmall { panel, is, least } => phrase![
            format!("The {panel} would be only "),
            free(*is, system),
            " across, too little to fold by hand: make it at least ",
            at_least(*least),
            "."
        ],
        What::TabTooWide { most } => phrase![
            "The glue tab is wider than the wall it hides behind: make the tab ",
            at_most(*most),
            " or less, or the box wider."
        ],
        What::CornerTabTooLong { most } => phrase![
            "A corner tab reaches no further than the wall is high, nor to the middle of the wall it is glued to: make it ",
            at_most(*most),
            " or less."
        ],
        What::WallTooHigh { most } => {
            phrase!["A wall that high hits the one opposite when it is rolled over: make it ", at_most(*most), " or less."]
        }
        What::RoundTooLarge { most } => {
            phrase!["The corners stand free for less than that: round them by ", at_most(*most), " or less."]
        }
        What::StrapTooWide { most } => {
            phrase!["The strap is broader than the end that it crosses: make it ", at_most(*most), " or less."]
        }
        What::TuckTooLong { is, most } => phrase![
            "The tuck of ",
            taken(*is, system),
            " is longer than three quarters of the height: make it ",
            at_most(*most),
            " or less, or the box higher."
        ],
        What::TuckHits { most } => phrase![
            "A tuck longer than the lid is deep cannot bend in past the dust flaps: make it ",
            at_most(*most),
            " or less, or the box deeper."
        ],
        What::NoMat { panel, reveal } => phrase![
            format!("The {panel} gets no mat: with a border of "),
            l(*reveal),
            " on each side too little would be left of it."
        ],
        What::RevealTooWide { reveal } => phrase![
            "A border of ",
            l(*reveal),
            " on each side leaves nothing of any mat: make the reveal smaller, or take the mats off."
        ],
        What::PieceTooLarge { piece, width, height, sheet_width, sheet_height, typed } => phrase![
            format!("Piece {piece} of "),
            sides(*width, *height, system),
            " does not come out of a sheet of ",
            sides(*sheet_width, *sheet_height, *typed),
            ": use a larger sheet, or make the box or holder smaller."
        ],
        What::PieceTooThin { piece, is, least } => phrase![
            format!("Piece {piece} is only "),
            free(*is, system),
            " wide, and a strip under ",
            at_least(*least),
            " can hardly be held at the trimmer: make it broader, or cut it by hand."
        ],
        What::ScoresAcrossGrain { pieces } => format!(
            "On these sheets the main scores of {pieces} run across the grain, where card may crack: score twice and fold \
             slowly, or use sheets whose grain runs the other way."
        )
        .into(),
        What::SheetsRanOut { piece, count } => format!(
            "The sheets in the drawer run out: {count} of piece {piece} are not cut. Buy more of this card, or make fewer sets."
        )
        .into(),
        What::TrimmerTooShort { piece, longest } => phrase![
            format!("Piece {piece} cannot be cut out with strokes of "),
            l(*longest),
            " on these sheets: use a smaller sheet, or cut it by hand."
        ],
        What::NothingLeftOfSheet => "There is no sheet to cut from: type how many you have, or let more be bought; and see that the edge trim leaves some of the sheet.".into(),
        What::PieceLeftOut { piece, count } => {
            format!("{count} of piece {piece} could not be laid on sheets: look at the size of the sheet.")
                .into()
        }
        What::LittleToGrip { is, least } => phrase![
            "Only ",
            free(*is, system),
            " of the shortest box stands out of the holder, and fingers need about ",
            at_least(*least),
            ": make this wall lower."
        ],
        What::WallAboveBoxes { wall, shortest } => phrase![
            "This wall of ",
            l(*wall),
            " is higher than the shortest box (",
            free(*shortest, system),
            "), which would be hidden: make it lower."
        ],
        What::UnevenDepths { play } => phrase![
            "The boxes are not equally deep: the shallowest has ",
            free(*play, system),
            " to move in the holder. Give the boxes one depth, or put a strip of card behind it."
        ],
        What::ThicknessEstimated { thickness } => phrase![
            "The thickness is taken as ",
            l(*thickness),
            " from the weight. Charts differ by a tenth: measure ten sheets together, and say how many they were."
        ],
        What::MarginOutside { least, most } => phrase![
            "The end margin can be from ",
            at_least(*least),
            " to ",
            at_most(*most),
            ", the height of the lower wall: change one of them."
        ],
        What::NotchTooLarge { most } => {
            phrase!["A notch of that radius takes too much of the front: make it ", at_most(*most), " or less."]
        }
        What::LooseFit { is, asked } => phrase![
            "They will sit with ",
            l(*is),
            " to move instead of ",
            l(*asked),
            ", because the next groove is that far: change the size a little, or use a board with finer grooves."
        ],
        What::TightRow { is, least } => phrase![
            if is.nm() < 0 {
                "A press fit: the boxes are larger than the room they go into and bend the walls, so they may jam or crease. \
                 For boxes that slide, make the clearance "
            } else {
                "With so little room boxes stick: make the clearance "
            },
            at_least(*least),
            " or more."
        ],
        What::LooseRow { most } => phrase![
            "With so much room boxes lean and rattle: make the clearance ",
            at_most(*most),
            " or less, or put a spacer of folded card into the row."
        ],
        What::LidTooHigh { most } => {
            phrase!["The lid's wall would stand below the base: make it ", at_most(*most), " or less."]
        }
        What::LipTooLong { most } => phrase![
            "The lips reach less than half the height and half the depth: make them ",
            at_most(*most),
            " or less, or the box larger."
        ],
        What::Ribbon { length } => phrase![
            "Cut ",
            taken(*length, system),
            " of thin ribbon, lay it under the drawer's floor from the back, and glue it there: it lifts the drawer out."
        ],
        What::TooShortForTabs { least } => {
            phrase!["A side under ", at_least(*least), " leaves no room for two corner tabs to glue: make it longer."]
        }
        What::FlapsOverlap { least, most } => phrase![
            "The base flaps must overlap, and end before the wall opposite: make them from ",
            at_least(*least),
            " to ",
            at_most(*most),
            ", or change the depth."
        ],
        What::HemTooHigh { most } => phrase![
            "Turned in by that much, the upper edge reaches too far down or is too small to fold: make it ",
            at_most(*most),
            " or less, or the bag higher."
        ],
        What::FlapTooLong { most } => phrase![
            "The flap would hang below the front: make it ",
            at_most(*most),
            " or less, or the wallet higher."
        ],
        What::GussetsMeet { most } => phrase![
            "Pressed together at the top, the sides would meet inside: make the depth ",
            at_most(*most),
            " or less, the width, or leave the top open."
        ],
        What::TooManyGifts { most, kinds } => {
            format!("Up to {most} gifts of {kinds} kinds are arranged in one box: share them between two boxes, or type the box's sizes instead.").into()
        }
        What::GiftsNotSized => {
            "This form is not sized by what goes in: choose another form, or take the gifts out and type its sizes.".into()
        }
        What::GiftsTooLarge([width, depth, height]) => phrase![
            "The gifts need ",
            inside(*width, *depth, *height, system),
            " inside, which this form does not have: share them between two boxes, or choose another form."
        ],
        What::SizesTypedToo([width, depth, height]) => phrase![
            "Sizes are typed, so they are used; the gifts need ",
            inside(*width, *depth, *height, system),
            " inside and go in. For the tightest box, take the sizes from what goes in."
        ],
        What::GiftsDoNotFit([width, depth, height]) => phrase![
            "Sizes are typed, so they are used, and the gifts do not go in: they need ",
            inside(*width, *depth, *height, system),
            " inside. Take the sizes from what goes in, or make them larger."
        ],
        What::LargestThatFits { width, depth, height, percent } => phrase![
            "In these proportions the largest that comes out of the sheets is ",
            size(Size { width: *width, depth: *depth, height: *height }, system),
            format!(", {percent} % of what was asked for.")
        ],
        What::BaseSags { sag, grams } => phrase![
            "By a rule of thumb a single layer of this card sags ",
            taken(*sag, system),
            format!(
                " under {grams} g. Take thicker card, glue a second layer onto the base, or share the gifts out; then \
                 try one filled."
            )
        ],
        What::WallsBuckle { carries, grams } => format!(
            "By a rule of thumb its walls carry about {carries} g on top before they buckle, and what goes in weighs \
             {grams} g: do not stand one filled box on another, or take thicker card."
        )
        .into(),
        What::WeightOutside { least, most } => weight_of_card(Range::new(*least, *most)),
        What::LessonTooLarge => "What was learned from the first make is more than any gap: forget it and try again.".into(),
        What::Topples { height, thin } => phrase![
            "A box ",
            taken(*height, system),
            " high and ",
            free(*thin, system),
            " thin leans and topples when others are taken out: make it thicker or lower, or put a divider beside it."
        ],
        What::NoJoint => "This form is cut in one piece: only a box that is wrapped round and closed by a glue tab can have a joint.".into(),
        What::FitsJoined => "In two pieces with a joint its blank comes out of the sheets: choose that below its card.".into(),
        What::FitsTurned => "Turned by a quarter all pieces come out of the sheets: let them lie either way.".into(),
        What::SetFitsAt { percent } => format!("At {percent} % of its size the whole set comes out of the sheets.").into(),
        What::TooManyPieces { is, most } => {
            format!("That makes {is} pieces, and a plan counts up to {most}: make fewer sets at a time.").into()
        }
    }
}

fn inside(width: Length, depth: Length, height: Length, system: System) -> Phrase {
    size(Size { width, depth, height }, system)
}

/// A name as it is quoted: whole where it is short.
#[must_use]
pub fn short(name: &str) -> String {
    const MOST: usize = 60;
    let name = name.trim();
    if name.chars().count() <= MOST {
        return name.to_owned();
    }
    name.chars().take(MOST - 1).chain(['…']).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::finding::Place;

    fn check(what: What, expected: &str) {
        let finding = Finding { place: Place::Holder, input: None, weight: Weight::Stop, what };
        assert_eq!(super::finding(&finding, System::Inch).to_string(), expected);
    }

    #[test]
    fn they_say_what_and_how_to_mend_it() {
        check(What::NoBoxes, "There is no box in this set yet: add one.");
        check(
            What::TuckHits { most: Length::inches(1, 2) },
            "A tuck longer than the lid is deep cannot bend in past the dust flaps: make it 1/2 in or less, \
             or the box deeper.",
        );
        check(
            What::TightRow { is: Length::ZERO, least: Length::mm(1) },
            "With so little room boxes stick: make the clearance 0.04 in or more.",
        );
        check(
            What::LooseRow { most: Length::mm(4) },
            "With so much room boxes lean and rattle: make the clearance 5/32 in or less, or put a spacer of folded card \
             into the row.",
        );
        // What is measured on the folded model is said in marks of a ruler.
        check(
            What::UnevenDepths { play: Length::um(21_265) },
            "The boxes are not equally deep: the shallowest has 53/64 in to move in the holder. Give the boxes one depth, \
             or put a strip of card behind it.",
        );
        check(
            What::PanelTooSmall { panel: "lid", is: Length::um(5_100), least: Length::um(6_000) },
            "The lid would be only 3/16 in across, too little to fold by hand: make it at least 1/4 in.",
        );
        check(
            What::Moved { from: Length::inches(49, 16), to: Length::inches(25, 8) },
            "Made 3 1/8 in: the next groove of your board that is not smaller.",
        );
    }

    #[test]
    fn long_names_are_cut() {
        assert_eq!(short(&"x".repeat(10_000)).chars().count(), 60);
    }
}
