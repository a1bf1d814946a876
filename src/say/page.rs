//! The words of the page itself: headings, labels, buttons, hints.

use super::spelling::Spelling;
use crate::project::fitting::Blank;
use crate::project::request::Lie;

/// The page's name.
pub const SNUGFOLD: &str = "Snugfold";

// The walk.
/// What goes in, boxes, holder, card.
pub const SET: &str = "The set";
/// Every part drawn.
pub const FLAT: &str = "Flat & folded";
/// What is cut from what.
pub const SHEETS: &str = "Sheets";
/// One thing after the other.
pub const STEPS: &str = "Steps";
/// Classes, batches and prices.
pub const TEACH: &str = "Teach & sell";
/// What is kept and passed on.
pub const KEPT: &str = "Saved & shared";
/// What the walk is, for those who hear it.
pub const WALK: &str = "From the set to the steps";

// Everywhere.
/// Takes the last edit back.
pub const UNDO: &str = "Undo";
/// Does it again.
pub const REDO: &str = "Redo";
/// Of a count.
pub const ONE_LESS: &str = "one less";
/// Of a count.
pub const ONE_MORE: &str = "one more";
/// Jumps over the walk.
pub const SKIP: &str = "Go to the content";
/// While the last good plan is shown.
pub const BEFORE: &str = "Drawn as it was before, until what stops it is mended.";
/// On a line that something stops.
pub const STOPPED: &str = "stopped";
/// On a line that needs care.
pub const CARE: &str = "take care";
/// To what is said.
pub const GO_THERE: &str = "Go there";
/// Where nothing can be drawn yet.
pub const NOTHING_YET: &str = "Nothing to draw yet: mend what stops it first.";

// The set.
/// Its name.
pub const SET_NAME: &str = "Name of the set";
/// Where it has none.
pub const UNNAMED: &str = "A set without a name";
/// How many.
pub const SETS: &str = "How many sets";
/// What that is.
pub const SETS_HINT: &str = "Alike sets; sheets and pieces count for all of them";
/// More than needed.
pub const SPARES: &str = "Spare pieces, %";
/// What that is.
pub const SPARES_HINT: &str = "Cut this much more of each piece; 10 is usual for a class";
/// The system.
pub const MEASURED_IN: &str = "Measured in";
/// A system.
pub const INCHES: &str = "inches";
/// A system.
pub const MILLIMETRES: [&str; 2] = ["millimetres", "millimeters"];
/// The boxes.
pub const BOXES: &str = "Boxes";
/// One more.
pub const ADD_BOX: &str = "Add a box";
/// A copy.
pub const DUPLICATE: &str = "Duplicate";
/// Away with it.
pub const REMOVE: &str = "Remove";
/// In the order.
pub const EARLIER: &str = "Move up";
/// In the order.
pub const LATER: &str = "Move down";
/// The holder.
pub const HOLDER: &str = "Holder & trims";
/// With one.
pub const ADD_HOLDER: &str = "Add a holder";
/// Card and board.
pub const CARD_AND_BOARD: &str = "Card & board";
/// One more.
pub const ADD_CARD: &str = "Add a card";

// A box or a holder.
/// Its name.
pub const NAME: &str = "Name";
/// Its form.
pub const FORM: &str = "Form";
/// Shows the drawings of all forms.
pub const OTHER_FORM: &str = "Choose another form";
/// For those who hear it.
pub const FORMS: &str = "Forms";
/// How many.
pub const COUNT: &str = "How many in a set";
/// Its card.
pub const CARD: &str = "Card";
/// What is measured.
pub const SIZES: &str = "Sizes";
/// Score to score.
pub const FINISHED: &str = "Finished, score to score";
/// What is free.
pub const INSIDE: &str = "True inside, at least";
/// On what the last edit changed.
pub const WAS: &str = "was ";
/// What it takes up.
pub const OUTSIDE: &str = "True outside, at most";
/// Directions of a size.
pub const ACROSS: [&str; 3] = ["wide", "deep", "high"];
/// Before a worked value.
pub const USUAL: &str = "usual: ";
/// Before a size that follows what goes in.
pub const FROM_GIFT: &str = "gift: ";
/// Mats.
pub const MATS: &str = "Mats";
/// With or without.
pub const MATS_ON: &str = "Mats on the faces that show";
/// Their card.
pub const MATS_CARD: &str = "Card of the mats";
/// Their border.
pub const REVEAL: &str = "Reveal, each side";
/// What that is.
pub const REVEAL_HINT: &str = "The border of the box that shows round a mat";
/// Which.
pub const FACES: &str = "Faces with a mat";

// A card.
/// Its name.
pub const CARD_NAME: &str = "Name";
/// The pieces of a blank with a joint.
pub const HALVES: [&str; 2] = ["piece 1", "piece 2"];
/// What the blank is cut as.
pub const BLANK: &str = "Blank";
/// What it can be cut as.
pub const BLANKS: [(Blank, &str); 2] = [(Blank::Whole, "in one piece"), (Blank::Joined, "in two pieces, with a joint")];
/// Its weight.
pub const GRAMMAGE: &str = "Weight";
/// Where it stands.
pub const GRAMMAGE_HINT: &str = "As on the packet: 216 for g/m²; 80 lb for cover; or 110 lb index, 80 lb text";
/// How thick.
pub const THICKNESS: &str = "Thickness, measured";
/// How to find out.
pub const THICKNESS_HINT: &str = "Of all sheets that were measured together; empty: from the weight";
/// How many at once.
pub const STACK: &str = "Sheets measured together";
/// Why.
pub const STACK_HINT: &str = "Ten give a truer thickness than one";
/// Sheet.
pub const SHEET: &str = "Sheet";
/// Own size.
pub const SHEET_OWN: &str = "a size of its own";
/// What is meant.
pub const SHEET_HINT: &str = "Then measure it: sheets are often smaller than they are called";
/// One side.
pub const SHEET_WIDTH: &str = "Sheet, across";
/// Other side.
pub const SHEET_HEIGHT: &str = "Sheet, down";
/// On the screen.
pub const TINT: [&str; 2] = ["Colour on the screen", "Color on the screen"];
/// Where a card is used and cannot go.
pub const CARD_IN_USE: &str = "Boxes, mats or the holder are cut from it";
/// In the drawer.
pub const HAVE: &str = "Sheets in the drawer";
/// What that does.
pub const HAVE_HINT: &str = "Used first; the rest is bought";
/// In the shop.
pub const PRICE: &str = "Price of one sheet";
/// How it is typed.
pub const PRICE_HINT: &str = "Such as 0.45; 0 where it is not known";
/// Or what is there is all.
pub const SHOP: &str = "More of this size can be bought";
/// Which way round.
pub const LIE: &str = "Pieces on the sheet";
/// What to look at.
pub const LIE_HINT: &str =
    "Card folds best along its grain: bend a sheet gently both ways, and it gives more easily along it";
/// What can be chosen.
pub const LIES: [(Lie, &str); 4] = [
    (Lie::Either, "either way round"),
    (Lie::Upright, "upright, since it has a pattern"),
    (Lie::GrainUp, "scores along the grain, which runs up the sheet"),
    (Lie::GrainAcross, "scores along the grain, which runs across the sheet"),
];
/// One more.
pub const ADD_SHEETS: &str = "Add another sheet size";
/// Off the edge.
pub const EDGE_TRIM: &str = "Trimmed off each edge";
/// What that does.
pub const EDGE_TRIM_HINT: &str = "Off every sheet first, where its edges are not true";
/// Of the trimmer.
pub const LONGEST_CUT: &str = "Longest cut of the trimmer";
/// What that is.
pub const LONGEST_CUT_HINT: &str = "In one stroke";
/// Where nothing is typed.
pub const ANY_LENGTH: &str = "usual: any length";
/// Of the hand.
pub const LEAST_STRIP: &str = "Narrowest strip";
/// What that is.
pub const LEAST_STRIP_HINT: &str = "That can be held safely at the trimmer";
/// Of the hand.
pub const SCORE_ERROR: &str = "Your scores are true to ±";
/// Of the hand.
pub const CUT_ERROR: &str = "Your cuts are true to ±";
/// What that is.
pub const ERROR_HINT: &str = "What 95 of 100 keep to; it says how sure a fit is";
/// The board and the trimmer.
pub const BOARD: &str = "Scoring board & trimmer";
/// Its grooves.
pub const INCH_STEP: &str = "Grooves in inches, every";
/// Its grooves.
pub const METRIC_STEP: &str = "Grooves in millimetres, every";
/// What that does.
pub const STEP_HINT: &str = "Sizes are moved to the next groove of your board";

// Flat and folded.
/// Of a box that is made of several.
pub const PARTS: &str = "Parts";
/// The slider.
pub const FOLD: &str = "From flat to folded";
/// Starts it.
pub const PLAY: &str = "Fold it";
/// Stops it.
pub const PAUSE: &str = "Stop";
/// Panels as a list.
pub const PANELS: &str = "Panels in words";
/// The lines.
pub const LINES: &str = "What the lines mean";
/// What each line means.
pub const LEGEND: [(&str, &str); 6] = [
    ("cut", "cut"),
    ("mountain", "fold away from you"),
    ("valley", "fold towards you"),
    ("glue", "glue on this face"),
    ("glue-behind", "glue on the face behind"),
    ("cross", "taken away"),
];
/// The recipe.
pub const RECIPE: &str = "Score and cut";
/// Both.
pub const BOTH_RECIPES: &str = "Show both recipes";
/// Why they differ.
pub const BOTH_HINT: &str =
    "Each is planned on its own grooves, so the two boxes differ a little: follow one column only.";
/// A column.
pub const RECIPE_IN: &str = "Recipe in ";
/// All parts.
pub const ALL_PARTS: &str = "All parts at one scale";
/// What to do.
pub const TOUCH_PART: &str = "Touch a part to see it large";
/// Boxes and holder together.
pub const FINISHED_SET: &str = "The finished set";
/// What to do.
pub const TOUCH_BOX: &str = "Touch one to work on it";
/// Slides the boxes out of the holder.
pub const LIFT: &str = "Slide the boxes out";
/// Round its upright.
pub const TURN: &str = "Turn it";
/// What to do.
pub const TOUCH: &str = "Touch a panel for its name and size";

// Sheets.
/// How many.
pub const CUTS: &str = "Cuts in order";
/// The pieces.
pub const PIECES: &str = "Pieces";
/// The shopping.
pub const TO_BUY: &str = "What to buy";
/// While the search runs.
pub const LOOKING: &str = "Looking for a better layout";
/// At its end.
pub const LOOKED: &str = "These are the best layouts that were found.";
/// Ends it.
pub const STOP_LOOKING: &str = "Stop looking";
/// Goes on.
pub const LOOK_ON: &str = "Go on looking";

// Steps.
/// One at a time.
pub const ONE_AT_A_TIME: &str = "One step at a time, large";
/// Back.
pub const AS_LIST: &str = "List of steps";
/// It is done, and the next one comes.
pub const NEXT: &str = "Done, go on";
/// Goes on without a tick.
pub const AHEAD: &str = "Look ahead";
/// Back.
pub const BACK: &str = "Back";
/// A tick.
pub const DONE: &str = "Done";
/// All gone.
pub const START_AGAIN: &str = "Take all ticks off";
/// Awake.
pub const AWAKE: &str = "The screen stays on while this is open.";
/// Not awake.
pub const MAY_SLEEP: &str = "This browser may let the screen go dark: set it to stay on in the device’s settings.";

// Kept.
/// Keeps it.
pub const SAVE: &str = "Save this set";
/// Anew.
pub const NEW_SET: &str = "Start a new set";
/// Link.
pub const COPY_LINK: &str = "Copy a link to this design";
/// Done.
pub const LINK_COPIED: &str = "Copied. The link holds the whole design; whoever opens it gets the same plan.";
/// Not done.
pub const LINK_NOT_COPIED: &str = "This browser did not let the page copy: mark the link and copy it yourself.";
/// File.
pub const SAVE_FILE: &str = "Save as a file";
/// File.
pub const OPEN_FILE: &str = "Open a file";
/// The example.
pub const EXAMPLE: &str = "Open the worked example";

// The page itself.
/// Offline.
pub const OFFLINE_READY: &str = "Works without a network now";
/// Not yet.
pub const OFFLINE_PREPARING: &str = "Getting ready to work without a network …";
/// Not here.
pub const OFFLINE_NEVER: &str = "Needs a network to open";
/// Update.
pub const NEWER: &str = "A newer version is here.";
/// Take it.
pub const USE_NEWER: &str = "Use it now";
/// After a break.
pub const BROKE: &str = "The design that was open last stopped the page while opening, so it is left closed.";
/// Takes a notice away.
pub const UNDERSTOOD: &str = "Understood";
/// Which English.
pub const SPELLING: &str = "Spelling";
/// Of Britain.
pub const BRITISH: &str = "British";
/// Of the United States.
pub const AMERICAN: &str = "American";
/// At the end of the page.
pub const CAUTIONS: &str = "Blades and hot glue hurt; card and glue are not known to be safe with food; no lit candle in or near paper. Local rules and the material’s maker decide.";
/// Nonetheless.
pub const OPEN_ANYWAY: &str = "Open it all the same";

/// After those that are shown.
#[must_use]
pub fn and_more(count: usize) -> String {
    if count == 1 { "And 1 more.".to_owned() } else { format!("And {count} more.") }
}

/// Where the search was stopped: counted work in thousands, the same on every device.
#[must_use]
pub fn looked_until(work: u64) -> String {
    format!("Stopped looking after {} thousand steps of the search.", work / 1_000)
}

/// A further size of sheet of one card.
#[must_use]
pub fn another_size(number: usize) -> String {
    format!("Sheet size {number}")
}

/// How far the ticks have come.
#[must_use]
pub fn done_of(done: usize, all: usize) -> String {
    format!("{done} of {all} done")
}

/// How many of those that a step makes are made.
#[must_use]
pub fn made(made: u64) -> String {
    format!("{made} made")
}

/// Which step this is, and what it is about.
#[must_use]
pub fn step_of(number: usize, all: usize, place: &str) -> String {
    format!("{number} of {all} · {place}")
}

/// How often a step is done.
#[must_use]
pub fn times(times: u64) -> String {
    format!("{times} times, for all sets")
}

/// A word that the two spellings write differently.
#[must_use]
pub const fn spelt(words: [&'static str; 2], spelling: Spelling) -> &'static str {
    spelling.pick(words[0], words[1])
}
