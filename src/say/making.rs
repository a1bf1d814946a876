//! Words round the steps: stages of the work, who is at work, how far, and what the maker writes.

use crate::make::stage::Stage;

/// What a stage is called.
#[must_use]
pub const fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::First => "One first",
        Stage::Pieces => "Cut the pieces",
        Stage::Score => "Score them all",
        Stage::Mark => "Mark by hand",
        Stage::CutAway => "Cut away",
        Stage::Fold => "Fold and rub every score",
        Stage::Flat => "What is done while they are flat",
        Stage::Close => "Glue and close",
        Stage::Together => "Put together",
        Stage::Fill => "Fill",
    }
}

/// Who is at work.
pub const WHO: &str = "Ticks of";
/// For the left hand.
pub const LEFT_HANDED: &str = "For the left hand";
/// Opens what is written to a step.
pub const WRITE: &str = "Add a note or a step";
/// What is written.
pub const TEXT: &str = "Your words";
/// Keeps it as a note.
pub const AS_NOTE: &str = "Keep as a note here";
/// Keeps it as a step.
pub const AS_STEP: &str = "Keep as a step after this";
/// Takes a note or own step away.
pub const TAKE_AWAY: &str = "Take this away";
/// Notes to steps that are no more.
pub const HOMELESS: &str = "Notes to steps that are gone";
/// What it looks like.
pub const PICTURE: &str = "Your picture of it";
/// It cannot be drawn.
pub const NO_PICTURE: &str = "This browser cannot draw that file: choose a photo or a drawing such as JPEG or PNG.";
/// Whose design it is.
pub const CREDIT: &str = "Whose design it is";
/// How to go on without aiming.
pub const TAP: &str = "A tap says done and goes on, at the edge it goes back; arrow, page and pedal keys do the same.";

/// What a picture shows, for those who hear it.
#[must_use]
pub fn picture_of(name: &str) -> String {
    if name.is_empty() { "The finished set".to_owned() } else { format!("{name}, finished") }
}

/// A maker at the table.
#[must_use]
pub fn maker(number: u32) -> String {
    format!("maker {number}")
}

/// How often a step is done for all sets, and how often it was so far.
#[must_use]
pub fn tally(done: u64, times: u64) -> String {
    if done == 0 { super::page::times(times) } else { format!("{done} of {times} done") }
}
