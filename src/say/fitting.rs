//! The words round what goes in and how it fits.

use crate::project::fitting::Facing;

/// What goes into it.
pub const GIFTS: &str = "What goes in";
/// What that does.
pub const GIFTS_HINT: &str = "Say what it has to hold, and the box takes its size from that";
/// Of those that can be chosen, the first.
pub const GIFT_OWN: &str = "Something of your own";
/// What is to be added.
pub const GIFT: &str = "Add a gift";
/// Adds it.
pub const ADD_GIFT: &str = "Put it in";
/// What it looks like.
pub const GIFT_SHAPE: &str = "Shape";
/// The shapes.
pub const GIFT_SHAPES: [&str; 3] = ["block", "cylinder or disc", "soft"];
/// The sizes of a block.
pub const GIFT_SIDES: [&str; 3] = ["Width", "Depth", "Height"];
/// The sizes of a cylinder.
pub const GIFT_ROUND: [&str; 2] = ["Diameter", "Height"];
/// How many.
pub const GIFT_COUNT: &str = "How many of it";
/// How heavy.
pub const GIFT_GRAMS: &str = "Weight of one, g";
/// Why.
pub const GIFT_GRAMS_HINT: &str = "Says whether the base carries it; 0 where it is light";
/// Whether.
pub const GIFT_WRAPPED: &str = "In tissue or paper";
/// How it may be turned.
pub const GIFT_UPRIGHT: &str = "Keep this way up";
/// Room round the gifts.
pub const ROOM: [&str; 3] = ["Room across", "Room in depth", "Room in height"];
/// What that is.
pub const ROOM_HINT: &str = "Room round them, both sides together; more where hands must reach in";
/// Takes the typed sizes out.
pub const SIZES_FOLLOW: &str = "Take the sizes from what goes in";
/// Once it is made.
pub const MADE_ONE: &str = "Made one? How does it slide?";
/// What that does.
pub const LESSON_HINT: &str = "The next is then planned for this card and your hand";
/// It sticks.
pub const TIGHT: &str = "Too tight";
/// It rattles.
pub const LOOSE: &str = "Too loose";
/// It does.
pub const RIGHT: &str = "Just right";
/// What follows.
pub const STAYS: &str = "Then it stays as planned: make the rest like it";
/// Takes it back.
pub const FORGET: &str = "Forget what was learned";
/// Measured.
pub const GAP: &str = "Or measure what is free along the row";
/// Takes it as the lesson.
pub const LEARN: &str = "Learn from this gap";
/// How.
pub const GAP_HINT: &str = "All boxes pushed to one end, the gap at the other; 0 where they touch both";
/// Makes it larger.
pub const GROW: [&str; 2] = ["As large as the sheet, in proportion", "As high as the sheet allows"];
/// Where it cannot be.
pub const NO_LARGEST: &str = "No size of this form comes out of the sheets of its card: choose another card or form.";

/// A kind of gift in a box.
#[must_use]
pub fn gift_number(number: usize) -> String {
    format!("Thing {number}")
}

/// How it stands.
pub const FACING: &str = "What looks forward in the holder";

/// The faces that can.
pub const FACINGS: [(Facing, &str); 3] = [(Facing::Front, "front"), (Facing::Side, "left side"), (Facing::Lid, "lid")];

/// A face that looks forward.
#[must_use]
pub fn facing(facing: Facing) -> &'static str {
    FACINGS.iter().find(|f| f.0 == facing).map_or("", |f| f.1)
}
