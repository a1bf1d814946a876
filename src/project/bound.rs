//! Named ranges: one for each input, from which its check and its error both come.

use crate::measure::length::Length;
use crate::measure::system::Native;

/// From the least to the most that an input may be, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Range<T> {
    /// The least.
    pub least: T,
    /// The most.
    pub most: T,
}

impl<T: Copy + PartialOrd> Range<T> {
    /// From `least` to `most`.
    pub const fn new(least: T, most: T) -> Self {
        Self { least, most }
    }

    /// What of it lies from `least` to `most`; all of it where nothing does.
    ///
    /// ```
    /// use snugfold::project::bound::Range;
    /// let range = Range::new(20, 300);
    /// assert_eq!(range.within(60, 400), Range::new(60, 300));
    /// assert_eq!(range.within(400, 500), range);
    /// ```
    #[must_use]
    pub fn within(&self, least: T, most: T) -> Self {
        let least = if least > self.least { least } else { self.least };
        let most = if most < self.most { most } else { self.most };
        if least <= most { Self { least, most } } else { *self }
    }

    /// True for a value within.
    pub fn holds(&self, value: T) -> bool {
        self.least <= value && value <= self.most
    }
}

/// Alike sets in one plan.
pub const SETS: Range<u32> = Range::new(1, 10_000);
/// Boxes of one kind in a set.
pub const BOX_COUNT: Range<u32> = Range::new(1, 100);
/// Kinds of boxes in a set.
pub const BOX_KINDS: Range<u32> = Range::new(1, 60);
/// Cards in a project.
pub const CARDS: Range<u32> = Range::new(1, 30);
/// Grams for each square metre: from thin text paper to the heaviest board that is still scored by hand.
pub const GRAMMAGE: Range<u32> = Range::new(60, 600);
/// How much wider or narrower clearances are planned after a first make.
pub const LESSON: Range<Length> = Range::new(Length::ZERO, Length::mm(3));
/// A gap that was measured on one.
pub const GAP: Range<Length> = Range::new(Length::ZERO, Length::mm(20));
/// What one gift weighs, in grams.
pub const GRAMS: Range<u32> = Range::new(0, 20_000);
/// Sheets that are measured together.
pub const STACK: Range<u32> = Range::new(1, 100);
/// Thickness of all sheets that are measured together.
pub const STACK_THICKNESS: Range<Length> = Range::new(Length::um(50), Length::mm(200));
/// Thickness of one sheet of card.
pub const THICKNESS: Range<Length> = Range::new(Length::um(50), Length::mm(2));
/// Spare pieces, in percent.
pub const SPARES: Range<u32> = Range::new(0, 100);
/// Sheets in the drawer, of one size.
pub const HAVE: Range<u32> = Range::new(0, 100_000);
/// Price of one sheet, in the smallest coin.
pub const SHEET_PRICE: Range<u32> = Range::new(0, 1_000_000);
/// Sizes of sheets of one card besides the first.
pub const MORE_SHEETS: Range<u32> = Range::new(0, 8);
/// Off each edge of a sheet.
pub const EDGE_TRIM: Range<Length> = Range::new(Length::ZERO, Length::mm(20));
/// A trimmer's longest cut.
pub const LONGEST_CUT: Range<Length> = Range::new(Length::mm(100), Length::mm(1_500));
/// The narrowest strip that can be held.
pub const LEAST_STRIP: Range<Length> = Range::new(Length::mm(2), Length::mm(50));
/// The narrowest strip where the maker says nothing: 10 mm (common practice, no source).
pub const DEFAULT_LEAST_STRIP: Length = Length::mm(10);
/// Either side of a sheet.
pub const SHEET_SIDE: Range<Length> = Range::new(Length::mm(50), Length::mm(1_500));
/// Between two grooves of a board.
pub const SCORE_STEP: Range<Length> = Range::new(Length::um(500), Length::mm(13));
/// A side of a gift.
pub const GIFT_SIDE: Range<Length> = Range::new(Length::um(100), Length::mm(1_000));
/// Room in total round the gifts, in one direction.
pub const ROOM: Range<Length> = Range::new(Length::ZERO, Length::mm(50));
/// A side of a label, a tag or a window, and what holes measure.
pub const EXTRA_SIDE: Range<Length> = Range::new(Length::mm(2), Length::mm(400));
/// A mat's border on each side.
pub const REVEAL: Range<Length> = Range::new(Length::um(500), Length::mm(30));

/// A board's grooves where the maker says nothing: ⅛ in, 1 mm.
pub const DEFAULT_SCORE_STEP: Native<Length> = Native::lengths(1, 8, 10);
/// What a trimmer's or ruler's marks allow to cut at: 1/32 in, ½ mm (common practice, no source).
pub const CUT_STEP: Native<Length> = Native::lengths(1, 32, 5);
/// A mat's border where the maker says nothing: ⅛ in (seen with seven makers), 3 mm.
pub const DEFAULT_REVEAL: Native<Length> = Native::lengths(1, 8, 30);
/// The smallest panel that can be folded by hand: ¼ in, 5 mm (common practice, no source).
pub const LEAST_PANEL: Native<Length> = Native::lengths(1, 4, 50);
/// What stays clear so that two edges pass each other: 1/16 in, 1 mm.
pub const CLEAR: Native<Length> = Native::lengths(1, 16, 10);
/// A hair off an edge that meets a fold, 0.5 to 1 mm: 1/32 in, 1 mm (common practice, no source).
pub const HAIR: Native<Length> = Native::lengths(1, 32, 10);
/// What a score, a cut or a glued joint may be out by, as ± two standard deviations.
pub const HAND_ERROR: Range<Length> = Range::new(Length::ZERO, Length::mm(2));
/// What a card's thickness may be out by, as ± two standard deviations, in thousandths of it.
pub const THICKNESS_ERROR: Range<u32> = Range::new(0, 200);
/// A score, where the maker says nothing: 1/64 in, 0.4 mm (common practice, no source).
pub const DEFAULT_SCORE_ERROR: Native<Length> = Native::lengths(1, 64, 4);
/// A cut, where the maker says nothing: 1/50 in, 0.5 mm (common practice, no source).
pub const DEFAULT_CUT_ERROR: Native<Length> = Native::lengths(1, 50, 5);
/// A glued joint, where the maker says nothing: 1/80 in, 0.3 mm (common practice, no source).
pub const DEFAULT_GLUE_ERROR: Native<Length> = Native::lengths(1, 80, 3);
/// A card's thickness, where the maker says nothing: 5 % (common practice, no source).
pub const DEFAULT_THICKNESS_ERROR: u32 = 50;
/// The tab of a joint between two pieces of a wrap: ½ in, 12 mm (common practice for glue tabs).
pub const JOINT: Native<Length> = Native::lengths(1, 2, 120);
