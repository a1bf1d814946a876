//! From what was typed to what a form works with: values within their ranges, and findings for the rest.

use std::collections::BTreeMap;

use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::project::bound;
use crate::project::finding::{Weight, What};
use crate::project::request::{Entry, Part};

use super::input::{Default, Input, Kind};
use crate::assembly::parts::{Assembly, Footprint, Size};

/// What surrounds a form: the system with its marks, the card, and what goes in.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// The system of this plan.
    pub system: System,
    /// The board's grooves.
    pub score: Grid,
    /// The trimmer's marks.
    pub cut: Grid,
    /// Thickness of the card.
    pub thickness: Length,
    /// Thickness of the mats on this part, nothing where it has none.
    pub mat_thickness: Length,
    /// How much wider clearances are planned than asked for; below zero: narrower.
    pub learned: Length,
    /// What goes in, for holders.
    pub contents: Vec<Content>,
}

/// Alike boxes that stand in a holder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Content {
    /// What one takes up, mats included.
    pub outside: Size,
    /// What one covers.
    pub footprint: Footprint,
    /// How many.
    pub count: u32,
}

impl Setting {
    /// What stays clear so that edges pass each other.
    #[must_use]
    pub const fn clear(&self) -> Length {
        bound::CLEAR.of(self.system)
    }

    /// The smallest panel that can be folded.
    #[must_use]
    pub const fn least_panel(&self) -> Length {
        bound::LEAST_PANEL.of(self.system)
    }
}

/// A remark of a form on one of its inputs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// The input it hangs on.
    pub input: Option<&'static str>,
    /// How much it matters.
    pub weight: Weight,
    /// What it is.
    pub what: What,
}

/// What a form answers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shaped {
    /// What it makes; nothing where a remark stops it.
    pub assembly: Option<Assembly>,
    /// What the maker should know.
    pub remarks: Vec<Remark>,
    /// The length that each input came to, typed or not.
    pub used: BTreeMap<&'static str, Length>,
}

/// What is wanted of a form.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Wants {
    /// All that it makes.
    #[default]
    Everything,
    /// All but what takes a proof to be said.
    Unproved,
    /// Its sizes, as often as it takes to find the right ones: nets and moves may be left out.
    Sizes,
}

/// The typed values of one part, by the form's inputs, and the answer as it grows.
pub struct Ask<'a> {
    inputs: &'static [Input],
    part: &'a Part,
    /// What surrounds the form.
    pub setting: &'a Setting,
    /// What is wanted of it.
    pub wants: Wants,
    /// The answer.
    pub shaped: Shaped,
}

impl<'a> Ask<'a> {
    /// Holds what was typed for `part` against `inputs`; what cannot be used is remarked on.
    #[must_use]
    pub fn new(inputs: &'static [Input], part: &'a Part, setting: &'a Setting) -> Self {
        let mut ask = Self { inputs, part, setting, wants: Wants::default(), shaped: Shaped::default() };
        for (key, entry) in &part.inputs {
            match inputs.iter().find(|i| i.key == key) {
                None => ask.remark(None, Weight::Note, What::UnknownInput { key: key.clone() }),
                Some(input) => ask.check(input, entry),
            }
        }
        ask
    }

    fn check(&mut self, input: &Input, entry: &Entry) {
        let what = match (input.kind, entry) {
            (Kind::Length { range, .. }, Entry::Length(given)) if !range.holds(given.length()) => {
                What::LengthOutside { is: given.length(), least: range.least, most: range.most }
            }
            (Kind::Length { .. }, Entry::Length(_)) => return,
            (Kind::Choice(choices), Entry::Choice(word)) if choices.iter().any(|c| c.key == word) => {
                return;
            }
            (_, Entry::Count(n)) => What::NotThatKind { typed: n.to_string() },
            (_, Entry::Length(given)) => What::NotThatKind { typed: given.text().to_owned() },
            (_, Entry::Choice(word)) => What::NotThatKind { typed: word.clone() },
        };
        self.remark(Some(input.key), Weight::Stop, what);
    }

    /// The form as its maker drew it, where there is one.
    #[must_use]
    pub fn drawn(&self) -> &'a str {
        &self.part.drawn
    }

    /// Adds a remark.
    pub fn remark(&mut self, input: Option<&'static str>, weight: Weight, what: What) {
        self.shaped.remarks.push(Remark { input, weight, what });
    }

    /// Adds a remark that stops this part.
    pub fn stop(&mut self, input: &'static str, what: What) {
        self.remark(Some(input), Weight::Stop, what);
    }

    /// True once a remark stops this part.
    #[must_use]
    pub fn stopped(&self) -> bool {
        self.shaped.remarks.iter().any(|r| r.weight == Weight::Stop)
    }

    /// The length typed for `key`.
    #[must_use]
    pub fn typed(&self, key: &str) -> Option<Length> {
        match self.part.inputs.get(key) {
            Some(Entry::Length(given)) => Some(given.length()),
            _ => None,
        }
    }

    /// The length for `key`: typed, or the input's default, or `worked`; noted as what was used.
    pub fn length(&mut self, key: &'static str, worked: Length) -> Length {
        let default = self.inputs.iter().find(|i| i.key == key).and_then(|i| match i.kind {
            Kind::Length { default: Default::Is(native), .. } => Some(native.of(self.setting.system)),
            _ => None,
        });
        let length = self.typed(key).or(default).unwrap_or(worked);
        self.shaped.used.insert(key, length);
        length
    }

    /// The clearance: typed, or the input's default, or `worked`, and what a first make taught of the card; never under
    /// the least that can be typed.
    pub fn clearance(&mut self, worked: Length) -> Length {
        let least = self.inputs.iter().find(|i| i.key == "clearance").and_then(|i| match i.kind {
            Kind::Length { range, .. } => Some(range.least),
            Kind::Choice(_) => None,
        });
        let asked = self.length("clearance", worked);
        (asked + self.setting.learned).max(least.unwrap_or(asked))
    }

    /// As [`Self::length`], moved up to the first groove that meets it; a typed size that moves is noted.
    pub fn scored(&mut self, key: &'static str, worked: Length) -> Length {
        let length = self.length(key, worked);
        let on = self.setting.score.up(length);
        self.moved(key, on);
        on
    }

    /// Notes that `key` came to `to`, and says so where something else was typed.
    pub fn moved(&mut self, key: &'static str, to: Length) {
        self.shaped.used.insert(key, to);
        if let Some(from) = self.typed(key)
            && from != to
        {
            self.remark(Some(key), Weight::Note, What::Moved { from, to });
        }
    }

    /// The word chosen for `key`, or the first of its choices.
    #[must_use]
    pub fn choice(&self, key: &str) -> &'static str {
        let choices = self.inputs.iter().find(|i| i.key == key).map_or(&[][..], |i| match i.kind {
            Kind::Choice(choices) => choices,
            Kind::Length { .. } => &[],
        });
        let chosen = match self.part.inputs.get(key) {
            Some(Entry::Choice(word)) => choices.iter().find(|c| c.key == word),
            _ => None,
        };
        chosen.or(choices.first()).map_or("", |c| c.key)
    }

    /// The answer where only sizes are wanted.
    #[must_use]
    pub fn sizes(self, finished: Size, inside: Size, outside: Size) -> Shaped {
        self.answer(Assembly::of(Vec::new(), finished, inside, outside))
    }

    /// The answer, with the assembly where nothing stops it.
    #[must_use]
    pub fn answer(mut self, assembly: Assembly) -> Shaped {
        if !self.stopped() {
            self.shaped.assembly = Some(assembly);
        }
        self.shaped
    }
}
