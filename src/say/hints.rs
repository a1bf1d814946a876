//! One line for each field whose form has no line of its own for it: what it is, and what follows from it.

use super::{batch, drawing, extras, fitting, kept, making, page, teach, trade};
use crate::project::extra::ExtraKind;

/// The line under the field with this label; empty where it has none.
///
/// ```
/// use snugfold::say::{hints::hint, page};
/// assert_eq!(hint(page::SHEET_WIDTH), "From left to right, as it lies before you");
/// ```
#[must_use]
pub fn hint(label: &str) -> &'static str {
    HINTS.iter().find(|(of, _)| *of == label).map_or("", |(_, hint)| hint)
}

const HINTS: [(&str, &str); 67] = [
    // The set.
    (page::SETS, page::SETS_HINT),
    (page::SET_NAME, "What you call it; drawings and papers bear it"),
    (page::NAME, "What you call it; steps and labels say it"),
    (page::COUNT, "Alike ones that stand in one holder"),
    (page::CARD, "What it is cut from"),
    (page::BLANK, "Two pieces where the sheet is too small for one"),
    (page::MATS_CARD, "Usually thinner, and printed with a pattern"),
    (page::SHEET_WIDTH, "From left to right, as it lies before you"),
    (page::SHEET_HEIGHT, "From top to bottom, as it lies before you"),
    (page::TINT[0], "So that drawings look like your card"),
    (page::TINT[1], "So that drawings look like your card"),
    // Gifts.
    (fitting::FACING, "The face that you see when it stands there"),
    (fitting::GIFT, "Common things have their sizes already"),
    (fitting::GIFT_SHAPE, "Soft things are measured gently pressed"),
    (fitting::GIFT_SIDES[0], "From left to right, at its widest"),
    (fitting::GIFT_SIDES[1], "From front to back"),
    (fitting::GIFT_SIDES[2], "From bottom to top"),
    (fitting::GIFT_ROUND[0], "Across its widest place"),
    (fitting::GIFT_COUNT, "So many are put in one box"),
    (fitting::ROOM[0], "Left and right together"),
    (fitting::ROOM[1], "Before and behind together"),
    (fitting::ROOM[2], "Above and below together"),
    // Extras.
    (extras::EXTRA, "One more of them, on this part"),
    (extras::FACE, "The face that bears it"),
    (extras::FROM, "The card that it is cut from"),
    (extras::PANE, "A clear sheet, glued in from behind"),
    (extras::measures(ExtraKind::Layer)[0], "How far the layer below shows round it"),
    (extras::measures(ExtraKind::RibbonHoles)[0], "So far the two holes are apart"),
    (extras::measures(ExtraKind::RibbonHoles)[1], "As wide as your punch"),
    // Making.
    (making::CREDIT, "Printed on every pattern page"),
    (making::TEXT, "They stay at this step when sizes change"),
    // A form that is drawn.
    (drawing::CALLED, "What the form is called in the list of forms"),
    (drawing::COPY_OF, "Its cells and lines become yours to change"),
    (drawing::DOES, "What this cell is for"),
    (drawing::NAME, "Steps call it so"),
    (drawing::NOTCH, "A half-round to get hold of something"),
    (drawing::DIAGONAL, "A score from corner to corner"),
    (drawing::CORNER_NAMES[0], "As it is, cut off aslant, or round"),
    (drawing::CORNER_NAMES[1], "As it is, cut off aslant, or round"),
    (drawing::CORNER_NAMES[2], "As it is, cut off aslant, or round"),
    (drawing::CORNER_NAMES[3], "As it is, cut off aslant, or round"),
    (drawing::ACROSS, "Along the edge that runs across"),
    (drawing::DOWN, "Along the edge that runs down"),
    (drawing::RADIUS, "Half as wide as the round would be whole"),
    // A class.
    (teach::MAKERS, "Besides you"),
    (teach::EACH, "Each maker takes so many home"),
    (teach::MINUTES, "From the welcome to the last tidied table"),
    (teach::BREAKS, "They are shared out over the class"),
    (teach::SLOW, "On top of your own time; 25 suits beginners"),
    (teach::SPARES, "For slips of the blade; 10 is usual"),
    // Evenings.
    (batch::HELPERS, "Each works as quickly as you"),
    (batch::EVENING, "Without breaks"),
    (batch::NAMES, "For tags. Kept on this device and in files that you save; no link holds them"),
    // Money.
    (trade::CURRENCY, "A code such as EUR, or a sign such as £. Nothing is converted"),
    (trade::HOUR, "What your time is worth to you"),
    (trade::TRIMS, "Bought for one set, besides card"),
    (trade::STALL, "Rent for one day, or for the class"),
    (trade::FEE, "For one class, all makers together"),
    (trade::EXPENSES, "Tools, power, packing, as a share of material and work"),
    (trade::PROFIT, "Added to all that it costs you"),
    (trade::SHELF, "200 where a shop doubles what it pays"),
    (trade::WITH_HOURS, "With your hours on top, to compare"),
    (trade::BY_MATERIAL, "Nothing else counted, to compare"),
    // Kept.
    (kept::FIND, "Any part of it"),
    (
        kept::LINK,
        "The link itself holds the whole design, without your prices and names. Nothing is sent anywhere until you pass it on",
    ),
    (page::OPEN_FILE, "One that was saved here, on this or another device"),
    (making::PICTURE, "Made small, kept with the set and in its files; a link leaves it out"),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_label_has_one_short_line() {
        for (n, (label, hint)) in HINTS.iter().enumerate() {
            assert!(!HINTS[..n].iter().any(|(other, _)| other == label), "{label} stands twice");
            assert!(!hint.is_empty() && hint.len() <= 130 && !hint.ends_with('.'), "{label}: {hint}");
        }
    }
}
