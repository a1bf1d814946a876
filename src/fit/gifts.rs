//! From the gifts of a box to the inside size that it is made with.
//!
//! To each block that an arrangement takes up ([`super::arrange`]) the room in total is added once in each direction,
//! and what comes out is raised to the least size of the form. Of these insides the one with the least volume wins;
//! ties go to the height nearest to that of another box, then to the smaller blank. The form is asked for each of
//! them, so that an inside it cannot make is passed over.
//!
//! Sizes that are typed stay: with gifts and sizes both, the typed sizes are used, and a finding says whether the
//! gifts go in. The choice whether typed sizes are finished or inside says nothing where no size is typed.

use crate::assembly::parts::Size;
use crate::form::input::Kind;
use crate::form::registry::Form;
use crate::form::resolve::{Remark, Setting, Shaped};
use crate::measure::area::Area;
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::{Native, System};
use crate::project::bound::{GIFT_SIDE, ROOM, Range};
use crate::project::finding::{Weight, What};
use crate::project::fitting::{Gift, Gifts, Shape, Turns, Wrap};
use crate::project::request::{Entry, Part};

use super::arrange::{self, Block, arrange};
use super::grown;
use super::largest::{SIDES, sized};

/// Room in total in each direction round hard gifts: ⅛ in, 3 mm.
pub const RIGID_ROOM: Native<Length> = Native::lengths(1, 8, 30);
/// The same where a gift is soft or wrapped: ¼ in, 6 mm (¼ in in total seen with two makers).
pub const SOFT_ROOM: Native<Length> = Native::lengths(1, 4, 60);
/// How many insides a form is asked for.
const ASKED: usize = 48;

/// A box shaped round its gifts.
pub struct Filled {
    /// What the form answers for the inside found; nothing where the sizes as typed are to be used.
    pub shaped: Option<Shaped>,
    /// What the maker should know.
    pub remarks: Vec<Remark>,
    /// True where the box cannot be planned.
    pub stopped: bool,
}

/// Shapes `part` round its gifts. `lining` is what is lost of the inside to a liner and panes; `heights` are those of the
/// other boxes.
#[must_use]
pub fn filled(part: &Part, form: &Form, setting: &Setting, lining: Size, heights: &[Length]) -> Filled {
    let mut found = Filled { shaped: None, remarks: Vec::new(), stopped: false };
    if part.gifts.kinds.is_empty() {
        return found;
    }
    check(&part.gifts, &mut found.remarks);
    let (ranges, own) = (ranges(form), grown::sizes(part, form, setting));
    if ranges.is_none() && own.is_empty() {
        found.remarks.push(stop(None, What::GiftsNotSized));
        found.stopped = true;
        return found;
    }
    if found.remarks.is_empty() {
        let room = room(&part.gifts, setting.system) + lining;
        let blocks: Vec<Block> = part.gifts.kinds.iter().map(block).collect();
        let sizes = arrange(&blocks).map_or_else(Vec::new, |a| a.sizes);
        let insides: Vec<Size> = sizes.into_iter().map(|s| s + room).collect();
        if grown::SIZES.iter().any(|key| part.inputs.contains_key(*key)) {
            found.remarks.extend(held_against(part, form, setting, &insides));
            return found;
        }
        found.shaped = match ranges {
            Some(ranges) => tightest(part, form, setting, &insides, ranges, heights),
            None => grown::tightest(part, form, setting, &insides),
        };
        if found.shaped.is_none()
            && let Some(least) = insides.first()
        {
            let Size { width, depth, height } = *least;
            found.remarks.push(stop(None, What::GiftsTooLarge([width, depth, height])));
        }
    }
    found.stopped = found.remarks.iter().any(|r| r.weight == Weight::Stop);
    found
}

/// Room in total in each direction: typed, or by what the gifts are like.
#[must_use]
pub fn room(gifts: &Gifts, system: System) -> Size {
    let gives = |g: &Gift| matches!(g.shape, Shape::Soft { .. }) || g.wrap == Wrap::Wrapped;
    let usual = if gifts.kinds.iter().any(gives) { SOFT_ROOM } else { RIGID_ROOM }.of(system);
    let typed = |g: &Option<Given>| g.as_ref().map_or(usual, Given::length);
    Size { width: typed(&gifts.room_width), depth: typed(&gifts.room_depth), height: typed(&gifts.room_height) }
}

/// A gift to start from, before the maker types what it is: 2 × 1 × 3 in, 50 × 25 × 75 mm, kept the way up that is
/// typed: nothing is laid on its side unasked.
#[must_use]
pub fn own(system: System) -> Option<Gift> {
    let [width, depth, height] = match system {
        System::Inch => ["2 in", "1 in", "3 in"],
        System::Metric => ["50 mm", "25 mm", "75 mm"],
    };
    let given = |text| Given::read(text, system).ok();
    let shape = Shape::Block { width: given(width)?, depth: given(depth)?, height: given(height)? };
    Some(Gift { name: String::new(), shape, count: 1, wrap: Wrap::Bare, turns: Turns::Upright, grams: None })
}

fn block(gift: &Gift) -> Block {
    let [width, depth, height] = sides(&gift.shape);
    Block { size: Size { width, depth, height }, count: gift.count, turns: gift.turns }
}

fn sides(shape: &Shape) -> [Length; 3] {
    match shape {
        Shape::Block { width, depth, height } | Shape::Soft { width, depth, height } => {
            [width.length(), depth.length(), height.length()]
        }
        Shape::Cylinder { across, height } => [across.length(), across.length(), height.length()],
    }
}

const fn stop(input: Option<&'static str>, what: What) -> Remark {
    Remark { input, weight: Weight::Stop, what }
}

fn check(gifts: &Gifts, remarks: &mut Vec<Remark>) {
    let outside = |input, is: Length, range: Range<Length>| {
        let Range { least, most } = range;
        (!range.holds(is)).then(|| stop(Some(input), What::LengthOutside { is, least, most }))
    };
    for gift in &gifts.kinds {
        remarks.extend(sides(&gift.shape).into_iter().find_map(|is| outside("gifts", is, GIFT_SIDE)));
        if gift.count == 0 {
            let most = arrange::GIFTS;
            remarks.push(stop(Some("gifts"), What::CountOutside { is: 0, least: 1, most }));
        }
    }
    let typed =
        [("room-width", &gifts.room_width), ("room-depth", &gifts.room_depth), ("room-height", &gifts.room_height)];
    remarks.extend(typed.into_iter().filter_map(|(key, g)| outside(key, g.as_ref()?.length(), ROOM)));
    let count = gifts.kinds.iter().fold(0_u32, |n, g| n.saturating_add(g.count));
    if count > arrange::GIFTS || gifts.kinds.len() > arrange::KINDS {
        remarks.push(stop(Some("gifts"), What::TooManyGifts { most: arrange::GIFTS, kinds: arrange::KINDS as u32 }));
    }
}

/// The ranges of the three sizes of a form that can be made to an inside size.
fn ranges(form: &Form) -> Option<[Range<Length>; 3]> {
    let kind = |key| form.inputs.iter().find(|i| i.key == key).map(|i| i.kind);
    let Some(Kind::Choice(choices)) = kind("size") else {
        return None;
    };
    choices.iter().find(|c| c.key == "inside")?;
    let range = |key| match kind(key) {
        Some(Kind::Length { range, .. }) => Some(range),
        _ => None,
    };
    Some([range(SIDES[0])?, range(SIDES[1])?, range(SIDES[2])?])
}

fn tightest(
    part: &Part,
    form: &Form,
    setting: &Setting,
    insides: &[Size],
    ranges: [Range<Length>; 3],
    heights: &[Length],
) -> Option<Shaped> {
    let raised = |s: &Size| Size {
        width: s.width.max(ranges[0].least),
        depth: s.depth.max(ranges[1].least),
        height: s.height.max(ranges[2].least),
    };
    let within = |s: &Size| s.width <= ranges[0].most && s.depth <= ranges[1].most && s.height <= ranges[2].most;
    let mut all: Vec<(i128, Size)> = insides.iter().map(raised).filter(within).map(|s| (volume(s), s)).collect();
    all.sort_by_key(|(volume, s)| (*volume, s.height, s.depth));
    all.dedup();
    all.truncate(ASKED);
    let ask = |size: Size| {
        let shaped = form.shaped(&inside(part, size)?, setting);
        let assembly = shaped.assembly.as_ref()?;
        let off = heights.iter().map(|&h| (h - assembly.outside.height).abs()).min().unwrap_or_default();
        let blank: Area = assembly.parts.iter().map(|p| Area::of(p.net.blank.width(), p.net.blank.height())).sum();
        Some((off, blank, shaped))
    };
    all.chunk_by(|a, b| a.0 == b.0).find_map(|alike| {
        let made = alike.iter().filter_map(|&(_, size)| ask(size));
        made.min_by_key(|(off, blank, _)| (*off, *blank)).map(|(_, _, shaped)| shaped)
    })
}

fn volume(s: Size) -> i128 {
    [s.width, s.depth, s.height].iter().map(|l| i128::from(l.nm())).product()
}

/// `part` with an inside size typed.
fn inside(part: &Part, size: Size) -> Option<Part> {
    let mut part = sized(part, size, Given::exactly)?;
    part.inputs.insert("size".to_owned(), Entry::Choice("inside".to_owned()));
    Some(part)
}

/// Whether the gifts go into the box as it is typed.
fn held_against(part: &Part, form: &Form, setting: &Setting, insides: &[Size]) -> Option<Remark> {
    let inside = form.shaped(part, setting).assembly?.inside;
    let goes = |s: &&Size| s.width <= inside.width && s.depth <= inside.depth && s.height <= inside.height;
    let fits = insides.iter().find(goes);
    let Size { width, depth, height } = *fits.or(insides.first())?;
    Some(if fits.is_some() {
        Remark { input: Some("gifts"), weight: Weight::Note, what: What::SizesTypedToo([width, depth, height]) }
    } else {
        Remark { input: Some("gifts"), weight: Weight::Caution, what: What::GiftsDoNotFit([width, depth, height]) }
    })
}
