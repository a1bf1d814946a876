//! The largest size of a form whose blanks come out of a sheet.
//!
//! The model. Sizes are score to score and on the board's grooves. Growing in proportion, the longest side goes up
//! groove by groove and the other two follow, down to the groove below their share; growing in height, width and depth
//! stay. Each size is asked of the form itself, so that its tabs, tucks and flaps count as they will be made. Every
//! blank and strip must come out of a sheet of its own, without mats.
//!
//! The search halves the range, which is exact as long as a larger box never has smaller blanks; the size on the next
//! groove is always asked and does not fit. Limits: forms whose sizes are not width, depth and height (holders) have
//! no answer here.

use crate::assembly::parts::{Assembly, Size};
use crate::form::input::Kind;
use crate::form::registry::Form;
use crate::form::resolve::Setting;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::project::bound::Range;
use crate::project::request::{Entry, Lie, Part};

/// The keys of the sizes of a form, from left to right, front to back and bottom to top.
pub const SIDES: [&str; 3] = ["width", "depth", "height"];

/// How a box may grow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grow {
    /// All three sizes together.
    InProportion,
    /// The height alone, on the base as it is.
    Height,
}

/// What is left of a sheet to cut from, edge trims off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Usable {
    /// Across.
    pub width: Length,
    /// Down.
    pub height: Length,
    /// Which way round blanks may lie.
    pub lie: Lie,
}

impl Usable {
    /// Whether a piece comes out of it, turned where it may be.
    #[must_use]
    pub fn holds(self, (width, height): (Length, Length)) -> bool {
        let lies = |w, h| w <= self.width && h <= self.height;
        lies(width, height) || (self.lie != Lie::Upright && lies(height, width))
    }
}

/// The largest size that fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Largest {
    /// Score to score.
    pub finished: Size,
    /// The side that grew in thousandths of what was asked for: above 1 000 there is room to spare.
    pub per_mille: i64,
}

/// What the form says to one size.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Answer {
    Fits,
    TooLarge,
    /// The form cannot be folded so small.
    TooSmall,
}

/// The largest size of `part` that comes out of `sheet`, growing or shrinking as `grow` says. Nothing where no size
/// does, or where the form is not sized by width, depth and height.
#[must_use]
pub fn largest(part: &Part, form: &Form, setting: &Setting, sheet: Usable, grow: Grow) -> Option<Largest> {
    let ranges = [range(form, SIDES[0])?, range(form, SIDES[1])?, range(form, SIDES[2])?];
    let asked = asked(part, form, setting)?;
    let grown = match grow {
        Grow::InProportion => asked.width.max(asked.depth).max(asked.height),
        Grow::Height => asked.height,
    };
    let step = setting.score.step();
    let size = |grooves: i64| {
        let to = step * grooves;
        let share = |side: Length| setting.score.down(side.scaled(to.nm(), grown.nm()));
        match grow {
            Grow::InProportion => {
                Size { width: share(asked.width), depth: share(asked.depth), height: share(asked.height) }
            }
            Grow::Height => Size { height: to, ..asked },
        }
    };
    let answer = |grooves| answer(part, form, setting, sheet, size(grooves), ranges);
    // Some size is too large: one groove above the longest that the form takes.
    let most = ranges.iter().map(|r| r.most).max()?;
    let (mut below, mut above) = (0, most / step + 1);
    while above - below > 1 {
        let middle = below + (above - below) / 2;
        if answer(middle) == Answer::TooLarge {
            above = middle;
        } else {
            below = middle;
        }
    }
    (below > 0 && answer(below) == Answer::Fits)
        .then(|| Largest { finished: size(below), per_mille: (step * below).scaled(1_000, grown.nm()).nm() })
}

fn range(form: &Form, key: &str) -> Option<Range<Length>> {
    form.inputs.iter().find(|i| i.key == key).and_then(|i| match i.kind {
        Kind::Length { range, .. } => Some(range),
        Kind::Choice(_) => None,
    })
}

/// The sizes that `part` comes to, score to score.
fn asked(part: &Part, form: &Form, setting: &Setting) -> Option<Size> {
    let used = form.shaped(part, setting).used;
    let side = |key| used.get(key).copied().filter(|l| l.is_positive());
    Some(Size { width: side("width")?, depth: side("depth")?, height: side("height")? })
}

fn answer(
    part: &Part,
    form: &Form,
    setting: &Setting,
    sheet: Usable,
    size: Size,
    ranges: [Range<Length>; 3],
) -> Answer {
    let sides = [size.width, size.depth, size.height];
    if sides.iter().zip(ranges).any(|(side, range)| *side > range.most) {
        return Answer::TooLarge;
    }
    match sized(part, size, Given::exactly).and_then(|part| form.shaped(&part, setting).assembly) {
        None => Answer::TooSmall,
        Some(assembly) if comes_out(&assembly, sheet) => Answer::Fits,
        Some(_) => Answer::TooLarge,
    }
}

/// `part` with a finished size typed as `typed` writes lengths.
pub fn sized(part: &Part, size: Size, typed: impl Fn(Length) -> Option<Given>) -> Option<Part> {
    let mut part = part.clone();
    for (key, length) in SIDES.into_iter().zip([size.width, size.depth, size.height]) {
        part.inputs.insert(key.to_owned(), Entry::Length(typed(length)?));
    }
    part.inputs.remove("size");
    Some(part)
}

/// Whether every blank and strip comes out of a sheet of its own.
#[must_use]
pub fn comes_out(assembly: &Assembly, sheet: Usable) -> bool {
    let blanks = assembly.parts.iter().map(|p| (p.net.blank.width(), p.net.blank.height()));
    let trims = assembly.trims.iter().map(|t| (t.length, t.width));
    blanks.chain(trims).all(|piece| sheet.holds(piece))
}
