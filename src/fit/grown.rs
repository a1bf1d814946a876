//! A box round its gifts where the form is not sized by width, depth and height: its own sizes are tried.
//!
//! All sizes grow together from the usual ones until the gifts go in; then each is made as small as it may be while they
//! still do, one after the other. What comes out is tight in each size by itself; that no other choice of all of them
//! together has less card is not shown.

use crate::assembly::parts::Size;
use crate::form::input::{Default, Kind};
use crate::form::own;
use crate::form::registry::Form;
use crate::form::resolve::{Setting, Shaped};
use crate::measure::area::Area;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::bound::Range;
use crate::project::request::{Entry, Part};

/// Inputs that are sizes of the whole box; others are of its tabs, holes and the like.
pub const SIZES: [&str; 8] = ["height", "width", "depth", "length", "foot", "rim", "edge", "side"];
/// How many ways in which the gifts lie are tried.
const TRIED: usize = 6;

/// How often all sizes are gone through.
const ROUNDS: usize = 3;

/// A size of a form: its key, its range and what it is where nothing is typed.
type Own = (&'static str, Range<Length>, Length);

/// The sizes of a form.
#[must_use]
pub fn sizes(part: &Part, form: &Form, setting: &Setting) -> Vec<Own> {
    if form.key == own::FORM.key {
        return drawn(part, form, setting);
    }
    let own = |key: &&str| {
        let input = form.inputs.iter().find(|i| i.key == *key)?;
        match input.kind {
            Kind::Length { range, default: Default::Is(usual) } => Some((input.key, range, usual.of(setting.system))),
            _ => None,
        }
    };
    SIZES.iter().filter_map(own).collect()
}

/// The sizes that the maker of a form named, from what they are as drawn.
///
/// They grow together as far as the largest blank that is planned: beyond that no form answers, and halving would not
/// find what does.
fn drawn(part: &Part, form: &Form, setting: &Setting) -> Vec<Own> {
    let made = form.sized(part, setting).assembly;
    let longest = made.iter().flat_map(|a| &a.parts).map(|p| p.net.longest()).max().unwrap_or(Length::MM);
    let room = own::build::LARGEST - setting.score.step() * 50;
    let own = |(name, drawn): &(&'static str, Length)| {
        let key = SIZES.into_iter().find(|key| key == name)?;
        match form.inputs.iter().find(|i| i.key == key)?.kind {
            Kind::Length { range, .. } => {
                let usual = setting.score.up(*drawn);
                let most = range.most.min(usual.scaled(room.nm(), longest.nm().max(1))).max(range.least);
                Some((key, Range { most, ..range }, usual))
            }
            Kind::Choice(_) => None,
        }
    };
    let named = own::shape::sizes(&part.drawn, setting.system);
    named.iter().filter_map(own).collect()
}

/// What the form answers for the smallest sizes that hold one of `insides`, of which the first are tried; nothing where
/// no size does.
#[must_use]
pub fn tightest(part: &Part, form: &Form, setting: &Setting, insides: &[Size]) -> Option<Shaped> {
    let own = sizes(part, form, setting);
    let lying = insides.iter().take(TRIED);
    let made = lying.filter_map(|&inside| Trial { part, form, setting, own: &own, inside }.smallest());
    let card = |s: &Shaped| -> Area {
        let parts = s.assembly.iter().flat_map(|a| &a.parts);
        parts.map(|p| Area::of(p.net.blank.width(), p.net.blank.height())).sum()
    };
    made.min_by_key(card)
}

/// One inside that is looked for.
struct Trial<'a> {
    part: &'a Part,
    form: &'a Form,
    setting: &'a Setting,
    own: &'a [Own],
    inside: Size,
}

impl Trial<'_> {
    /// The request with these sizes.
    fn typed(&self, lengths: &[Length]) -> Option<Part> {
        let mut part = self.part.clone();
        for ((key, ..), length) in self.own.iter().zip(lengths) {
            part.inputs.insert((*key).to_owned(), Entry::Length(Given::exactly(*length)?));
        }
        part.inputs.remove("size");
        Some(part)
    }

    /// Whether a box of these sizes holds the inside.
    fn holds(&self, lengths: &[Length]) -> bool {
        let made = self.typed(lengths).and_then(|p| self.form.sized(&p, self.setting).assembly);
        let Size { width, depth, height } = self.inside;
        // Where flaps of a drawn form stand out, what is measured may lie between them: no inside is larger than its walls.
        let of = |key| self.own.iter().zip(lengths).find(|(own, _)| own.0 == key).map(|(_, length)| *length);
        let walls = |key, inside: Length| self.form.key != own::FORM.key || of(key).is_none_or(|wall| inside <= wall);
        made.map(|a| a.inside).is_some_and(|i| {
            let holds = i.width >= width && i.depth >= depth && i.height >= height;
            holds && walls("width", i.width) && walls("depth", i.depth) && walls("height", i.height)
        })
    }

    fn smallest(&self) -> Option<Shaped> {
        let step = self.setting.score.step();
        let most = self.own.iter().map(|(_, range, usual)| range.most.nm() * 100 / usual.nm().max(1)).max()?;
        // In hundredths of the usual sizes.
        let scaled = |percent: i64| -> Vec<Length> {
            let size = |(_, range, usual): &Own| {
                self.setting.score.up(usual.scaled(percent, 100)).max(range.least).min(range.most)
            };
            self.own.iter().map(size).collect()
        };
        let (mut low, mut high) = (0, most + 1);
        while high - low > 1 {
            let middle = i64::midpoint(low, high);
            if self.holds(&scaled(middle)) { high = middle } else { low = middle }
        }
        let mut lengths = scaled(high);
        if !self.holds(&lengths) {
            return None;
        }
        // What one makes smaller may let another be.
        for _ in 0..ROUNDS {
            let before = lengths.clone();
            for (i, (_, range, _)) in self.own.iter().enumerate() {
                let (mut low, mut high) = (range.least / step - 1, lengths[i] / step);
                while high - low > 1 {
                    let middle = i64::midpoint(low, high);
                    let mut fewer = lengths.clone();
                    fewer[i] = step * middle;
                    if self.holds(&fewer) { (lengths, high) = (fewer, middle) } else { low = middle }
                }
            }
            if lengths == before {
                break;
            }
        }
        Some(self.form.shaped(&self.typed(&lengths)?, self.setting))
    }
}
