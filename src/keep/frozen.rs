//! The defaults as they were when version 1 of file and link was made, kept for ever.
//!
//! An input that a maker never touched is not written down: it *is* its default. If a default changes later, a file or
//! link of before must still mean the old one, so [`fill`] writes the old value in where today's form says another.
//!
//! **How this table grows.** A new form, input or choice is appended here (a test says so and prints the row); that
//! changes the meaning of no file and no link. A row that stands here is never changed and never taken out. Values
//! that a form works out from the rest of the request have no number to freeze; they follow the form.

use crate::form::input::{Default, Kind};
use crate::form::registry;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::measure::system::{Native, System};
use crate::project::bound;
use crate::project::request::{Entry, Part, Project, Tint};

mod forms;

pub use forms::FORMS;

/// A form as version 1 knows it.
#[derive(Clone, Copy, Debug)]
pub struct Form {
    /// Its number in links.
    pub number: u8,
    /// Its key in files.
    pub key: &'static str,
    /// Its inputs.
    pub inputs: &'static [Input],
}

/// An input as version 1 knows it.
#[derive(Clone, Copy, Debug)]
pub struct Input {
    /// Its number in links.
    pub number: u8,
    /// Its key in files.
    pub key: &'static str,
    /// What it is where nothing is typed.
    pub untouched: Untouched,
}

/// What an input is where nothing is typed.
#[derive(Clone, Copy, Debug)]
pub enum Untouched {
    /// This length.
    Length(Native<Length>),
    /// A length that the form works out.
    Worked,
    /// The first of these words.
    First(&'static [&'static str]),
}

/// The board's score step.
pub const SCORE_STEP: Native<Length> = Native::lengths(1, 8, 10);
/// A mat's border.
pub const REVEAL: Native<Length> = Native::lengths(1, 8, 30);
/// The narrowest strip that can be held.
pub const LEAST_STRIP: Length = Length::mm(10);
/// A card's colour on the screen.
pub const TINT: Tint = Tint(0xd8_b9_8a);
/// The first box of a link is of this form unless it says another.
pub const BOX: &str = "tuck-box";
/// The holder of a link is of this form unless it says another.
pub const HOLDER: &str = "row-holder";

/// The sheet that the first card of a link has unless it says another: 12 × 12 in, or A4.
#[must_use]
pub const fn sheet(system: System) -> (&'static str, &'static str) {
    match system {
        System::Inch => ("12 in", "12 in"),
        System::Metric => ("210 mm", "297 mm"),
    }
}

/// The form with this key.
#[must_use]
pub fn named(key: &str) -> Option<&'static Form> {
    FORMS.iter().find(|f| f.key == key)
}

/// The form with this number.
#[must_use]
pub fn numbered(number: u64) -> Option<&'static Form> {
    FORMS.iter().find(|f| u64::from(f.number) == number)
}

impl Input {
    /// The words that can be chosen; none for a length.
    #[must_use]
    pub const fn words(&self) -> &'static [&'static str] {
        match self.untouched {
            Untouched::First(words) => words,
            Untouched::Length(_) | Untouched::Worked => &[],
        }
    }
}

/// Writes the old default into `project` wherever an untouched input has another one today.
pub fn fill(project: &mut Project) {
    let system = project.system;
    let step = |system| (bound::DEFAULT_SCORE_STEP.of(system) != SCORE_STEP.of(system)).then(|| SCORE_STEP.of(system));
    fill_length(&mut project.board.inch_step, step(System::Inch), System::Inch);
    fill_length(&mut project.board.metric_step, step(System::Metric), System::Metric);
    let strip = (bound::DEFAULT_LEAST_STRIP != LEAST_STRIP).then_some(LEAST_STRIP);
    fill_length(&mut project.trimmer.least_strip, strip, System::Metric);
    for part in project.boxes.iter_mut().chain(&mut project.holder) {
        fill_part(part, system);
    }
}

fn fill_length(place: &mut Option<Given>, old: Option<Length>, system: System) {
    if place.is_none() {
        *place = old.and_then(|length| written(length, system));
    }
}

fn fill_part(part: &mut Part, system: System) {
    if let Some(mats) = &mut part.mats {
        let old = (bound::DEFAULT_REVEAL != REVEAL).then(|| REVEAL.of(system));
        fill_length(&mut mats.reveal, old, system);
    }
    let (Some(old), Some(live)) = (named(&part.form), registry::named(&part.form)) else {
        return;
    };
    for input in old.inputs.iter().filter(|i| drifted(i, live)) {
        let entry = match input.untouched {
            Untouched::Length(native) => written(native.of(system), system).map(Entry::Length),
            Untouched::First(words) => words.first().map(|&word| Entry::Choice(word.to_owned())),
            Untouched::Worked => None,
        };
        if let Some(entry) = entry.filter(|_| !part.inputs.contains_key(input.key)) {
            part.inputs.insert(input.key.to_owned(), entry);
        }
    }
}

/// A length as a maker of `system` would type it.
fn written(length: Length, system: System) -> Option<Given> {
    Given::read(&Figure::of(length, system).to_string(), system).ok()
}

/// True where an untouched input means something else today. An input that the form has no more is left alone.
fn drifted(old: &Input, live: &registry::Form) -> bool {
    live.inputs.iter().find(|i| i.key == old.key).is_some_and(|today| match (old.untouched, today.kind) {
        (Untouched::Length(a), Kind::Length { default, .. }) => !matches!(default, Default::Is(b) if a == b),
        (Untouched::First(words), Kind::Choice(choices)) => words.first().copied() != choices.first().map(|c| c.key),
        (Untouched::Worked, _)
        | (Untouched::Length(_), Kind::Choice(_))
        | (Untouched::First(_), Kind::Length { .. }) => false,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::example::example;

    /// The row of a live input, as it is typed into the table.
    fn row(input: &crate::form::input::Input) -> String {
        let untouched = match input.kind {
            Kind::Length { default: Default::Is(n), .. } => {
                let tenths = n.metric.as_um() / 100;
                format!("is(/* {} */, {tenths})", Figure::of(n.inch, System::Inch).bare())
            }
            Kind::Length { default: Default::Worked(_), .. } => "Worked".to_owned(),
            Kind::Choice(choices) => format!("First(&{:?})", choices.iter().map(|c| c.key).collect::<Vec<_>>()),
        };
        format!("input({}, {:?}, {untouched}),", input.number, input.key)
    }

    #[test]
    fn every_form_input_and_choice_stands_in_the_table() {
        for live in registry::FORMS {
            let old = named(live.key).filter(|f| f.number == live.number);
            let rows = live.inputs.iter().map(row).collect::<Vec<_>>().join("\n");
            let old =
                old.unwrap_or_else(|| panic!("append to keep/frozen/forms.rs: {} {}\n{rows}", live.number, live.key));
            for input in live.inputs {
                let found = old.inputs.iter().find(|i| i.key == input.key && i.number == input.number);
                let found =
                    found.unwrap_or_else(|| panic!("append to {} in keep/frozen/forms.rs: {}", live.key, row(input)));
                if let Kind::Choice(choices) = input.kind {
                    let all = choices.iter().all(|c| found.words().contains(&c.key));
                    assert!(all, "append the new choice to {} in keep/frozen/forms.rs: {}", live.key, row(input));
                }
            }
        }
    }

    #[test]
    fn numbers_are_used_once_and_fit_a_link() {
        for (i, form) in FORMS.iter().enumerate() {
            assert!(FORMS[..i].iter().all(|f| f.number != form.number && f.key != form.key), "{}", form.key);
            for (j, input) in form.inputs.iter().enumerate() {
                assert!((1..64).contains(&input.number), "{} {}", form.key, input.key);
                let other = |i: &Input| i.number != input.number && i.key != input.key;
                assert!(form.inputs[..j].iter().all(other), "{} {}", form.key, input.key);
            }
        }
    }

    /// When a default is changed on purpose, its form and key are listed here.
    const DRIFTED: &[(&str, &str)] = &[];

    #[test]
    fn defaults_are_those_of_version_1() {
        for old in FORMS {
            let Some(live) = registry::named(old.key) else {
                continue;
            };
            for input in old.inputs {
                let listed = DRIFTED.contains(&(old.key, input.key));
                assert_eq!(drifted(input, live), listed, "{} {}", old.key, input.key);
            }
        }
        assert_eq!(Tint::default(), TINT);
        let mut project = example().expect("the example is a project");
        fill(&mut project);
        assert_eq!(DRIFTED.is_empty(), Some(project) == example());
    }

    #[test]
    fn a_changed_default_is_written_in() {
        let old = Input { untouched: Untouched::Length(Native::lengths(7, 2, 900)), ..FORMS[0].inputs[0] };
        let live = registry::named("tuck-box").expect("it is registered");
        assert!(drifted(&old, live));
        let text = |system| written(Length::inches(7, 2), system).map(|g| g.text().to_owned());
        assert_eq!(text(System::Inch), Some("3 1/2 in".to_owned()));
        assert_eq!(text(System::Metric), Some("88.9 mm".to_owned()));
    }
}
