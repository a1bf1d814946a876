//! What a form asks for: each input said once, with its range and default.

use crate::measure::given::{Given, Unreadable};
use crate::measure::length::Length;
use crate::measure::system::{Native, System};
use crate::project::bound::Range;

/// One input of a form.
#[derive(Clone, Copy, Debug)]
pub struct Input {
    /// Its stable number in this form, for links: never used again for another input.
    pub number: u8,
    /// Its key in files.
    pub key: &'static str,
    /// Its name on the page.
    pub name: &'static str,
    /// What it is, in one line.
    pub hint: &'static str,
    /// What may be typed.
    pub kind: Kind,
}

/// What may be typed into an input.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A length.
    Length {
        /// From the least to the most.
        range: Range<Length>,
        /// Where nothing is typed.
        default: Default,
    },
    /// One of several words; the first where nothing is chosen.
    Choice(&'static [Choice]),
}

/// Where the value of an untouched length comes from.
#[derive(Clone, Copy, Debug)]
pub enum Default {
    /// The same for every request.
    Is(Native<Length>),
    /// Worked out by the form from the rest of the request, as this line says.
    Worked(&'static str),
}

/// One word to choose.
#[derive(Clone, Copy, Debug)]
pub struct Choice {
    /// In files.
    pub key: &'static str,
    /// On the page.
    pub name: &'static str,
}

/// Why a typed length is refused at its field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// It cannot be read.
    Unreadable(Unreadable),
    /// It is outside the range.
    Outside(Range<Length>),
}

impl Refusal {
    /// The same where only `range` is left.
    #[must_use]
    pub const fn narrowed(self, range: Range<Length>) -> Self {
        match self {
            Self::Outside(_) => Self::Outside(range),
            Self::Unreadable(why) => Self::Unreadable(why),
        }
    }
}

/// Reads a typed length and holds it against its range.
///
/// # Errors
/// [`Refusal`] says why it cannot be taken.
pub fn read_length(typed: &str, range: Range<Length>, system: System) -> Result<Given, Refusal> {
    let given = Given::read(typed, system).map_err(Refusal::Unreadable)?;
    if range.holds(given.length()) { Ok(given) } else { Err(Refusal::Outside(range)) }
}
