//! What a first make teaches: how much wider clearances are planned for a card and a hand.
//!
//! What errs the same way each time (a fence that is out, card that springs back, glue that is laid thick) moves the gap
//! and is not among the chances of [`super::odds`]. The maker makes one and says how it slides. Where the gap was
//! measured, the difference from the planned one is what is planned for from then on; where it was only felt, a step of
//! [`EASE`] is gone, as often as it is said.

use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::{Native, System};
use crate::project::bound::LESSON;
use crate::project::fitting::Lesson;

/// What a tight or loose fit is mended by: 1/32 in, 0.8 mm (common practice, no source).
pub const EASE: Native<Length> = Native::lengths(1, 32, 8);

/// What the maker says of one that was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heard {
    /// It sticks.
    Tight,
    /// It rattles.
    Loose,
    /// So much is free where this was planned to be.
    Measured {
        /// As planned, with what was learned before.
        planned: Length,
        /// As made.
        gap: Length,
    },
}

/// How much wider clearances are planned after `heard`, where it was `now`; below zero: narrower.
///
/// ```
/// use snugfold::fit::lesson::{Heard, learned};
/// use snugfold::measure::{length::Length, system::System::Metric};
/// assert_eq!(learned(Length::ZERO, Heard::Tight, Metric), Length::um(800));
/// let measured = Heard::Measured { planned: Length::um(1_500), gap: Length::um(500) };
/// assert_eq!(learned(Length::um(800), measured, Metric), Length::mm(1)); // 1.5 − 0.5, whatever was thought before
/// ```
#[must_use]
pub fn learned(now: Length, heard: Heard, system: System) -> Length {
    let ease = EASE.of(system);
    let learned = match heard {
        Heard::Tight => now + ease,
        Heard::Loose => now - ease,
        Heard::Measured { planned, gap } => planned - gap,
    };
    learned.clamp(-LESSON.most, LESSON.most)
}

/// The lesson as it is kept with a card; nothing where nothing differs.
#[must_use]
pub fn lesson(learned: Length, system: System) -> Option<Lesson> {
    let by = Given::of(learned.abs(), system).filter(|_| learned != Length::ZERO)?;
    Some(if learned.is_positive() { Lesson::Wider(by) } else { Lesson::Narrower(by) })
}
