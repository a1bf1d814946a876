//! Inches or millimetres: the system that is worked in.

use super::child::words;
use super::desk::desk;
use super::either::either;
use super::tag::{Tag, button};
use crate::measure::system::System;
use crate::say::page;
use crate::say::spelling::Spelling;

/// Two buttons of which one is pressed.
#[must_use]
pub fn system_choice() -> Tag {
    let desk = desk();
    let system = desk.system();
    let one = move |one: System| {
        let choose = move || desk.edit("", |p| p.system = one);
        let says = words(move || name(one, desk.spelling.get()).to_owned());
        button(says, choose).says("aria-pressed", move || system.get() == one)
    };
    either(page::MEASURED_IN, System::ALL.map(one).into_iter().collect())
}

/// What a system is called.
#[must_use]
pub fn name(system: System, spelling: Spelling) -> &'static str {
    match system {
        System::Inch => page::INCHES,
        System::Metric => page::spelt(page::MILLIMETRES, spelling),
    }
}
