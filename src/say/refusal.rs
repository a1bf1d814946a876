//! What is said beside a field that cannot be taken: what is wrong and what to type instead.

use super::measured::{least, most};
use super::phrase::Phrase;
use crate::form::input::Refusal;
use crate::measure::given::Unreadable;
use crate::measure::system::System;
use crate::project::bound::Range;

/// Why a typed length is not taken.
#[must_use]
pub fn length(why: Refusal, system: System) -> Phrase {
    let like = match system {
        System::Inch => "4 1/4, 4.25 or 108 mm",
        System::Metric => "108, 10.8 cm or 4 1/4 in",
    };
    match why {
        Refusal::Unreadable(Unreadable::Empty) => {
            format!("Nothing is typed here: type a length such as {like}.").into()
        }
        Refusal::Unreadable(Unreadable::NoNumber) => format!("This is no length yet: type one such as {like}.").into(),
        Refusal::Unreadable(Unreadable::UnknownUnit) => "The unit can be in, mm or cm: type one of these.".into(),
        Refusal::Unreadable(Unreadable::OverNought) => "A fraction needs something other than 0 under its line.".into(),
        Refusal::Unreadable(Unreadable::TooLong) => {
            format!("This is too long for a length: type one such as {like}.").into()
        }
        Refusal::Outside(range) => Phrase::words("Type a length from ")
            .with(least(range.least, system))
            .with(" to ")
            .with(most(range.most, system))
            .with("."),
    }
}

/// Why a typed count is not taken.
#[must_use]
pub fn count(range: Range<u32>) -> Phrase {
    format!("Type a whole number from {} to {}.", range.least, range.most).into()
}

/// Why a typed weight of card is not taken.
#[must_use]
pub fn weight(range: Range<u32>) -> Phrase {
    format!("Type a weight such as 216 (g/m²) or 80 lb, from {} to {} g/m².", range.least, range.most).into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::length::Length;

    #[test]
    fn each_says_what_to_type() {
        let range = Range::new(Length::mm(15), Length::mm(400));
        let said = length(Refusal::Outside(range), System::Inch);
        assert_eq!(said.to_string(), "Type a length from 5/8 in to 15 11/16 in.");
        assert_eq!(count(Range::new(1, 100)).to_string(), "Type a whole number from 1 to 100.");
    }
}
