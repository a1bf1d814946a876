//! `What`: the findings there are, each with its measurements.

use super::own::OwnFault;
use crate::measure::length::Length;
use crate::measure::system::System;

/// The findings there are, each with its measurements.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum What {
    /// Something about a form of the maker's own.
    Own(OwnFault),
    /// A typed length is outside its range.
    LengthOutside {
        /// What was typed.
        is: Length,
        /// The least it may be.
        least: Length,
        /// The most it may be.
        most: Length,
    },
    /// A typed count is outside its range.
    CountOutside {
        /// What was typed.
        is: u32,
        /// The least it may be.
        least: u32,
        /// The most it may be.
        most: u32,
    },
    /// An input holds something that is not a length, count or choice as it should be.
    NotThatKind {
        /// What was typed.
        typed: String,
    },
    /// An input that the form does not have.
    UnknownInput {
        /// Its key.
        key: String,
    },
    /// A form that the registry does not have.
    UnknownForm {
        /// Its key.
        form: String,
    },
    /// A holder's form was asked for a box, or the other way round.
    WrongKind {
        /// The form's key.
        form: String,
    },
    /// A card number that no card has.
    UnknownCard {
        /// The number asked for.
        card: u16,
    },
    /// Two cards or two boxes share a number.
    NumberTwice {
        /// The number.
        number: u16,
    },
    /// There is no box in the set.
    NoBoxes,
    /// Boxes for a honeycomb that have not six equal sides each.
    NotSixSided,
    /// More or fewer boxes than a holder of this form takes.
    BoxesOutside {
        /// How many there are.
        is: u32,
        /// The most that there may be, two at least.
        most: u32,
    },
    /// A typed size was moved to the next groove.
    Moved {
        /// As typed.
        from: Length,
        /// As planned.
        to: Length,
    },
    /// Something that is added is larger than its face leaves room for: across and down.
    ExtraTooLarge([Length; 2]),
    /// A face that takes nothing: there is none of that name, or it slides, leans or is hidden.
    NoSuchFace {
        /// Its name.
        face: String,
    },
    /// A second layer where there are no mats.
    LayerNeedsMats,
    /// A liner where nothing is held.
    NothingToLine,
    /// A wall so large both ways that its card bows under a hand.
    WallTooTall {
        /// Its name.
        panel: &'static str,
        /// Its smaller side.
        is: Length,
        /// The most that its card carries well.
        most: Length,
    },
    /// More layers lie at one place than a hand can fold and press.
    LayersPileUp {
        /// The panel there.
        panel: &'static str,
        /// How many.
        layers: u32,
    },
    /// Walls too low or too narrow for tabs of the least width that holds.
    NoRoomForTabs,
    /// Walls that lean out so far that their tabs do not lie between them on the card.
    LeansTooFar {
        /// The widest rim.
        most: Length,
    },
    /// A panel is too small to fold by hand.
    PanelTooSmall {
        /// Its name.
        panel: &'static str,
        /// Its smaller side.
        is: Length,
        /// The smallest that can be folded.
        least: Length,
    },
    /// A glue tab leaves no wall wide enough to hide it.
    TabTooWide {
        /// The widest that can be hidden.
        most: Length,
    },
    /// Corner tabs of a tray longer than its wall is high, or than half the wall they are glued to.
    CornerTabTooLong {
        /// The longest.
        most: Length,
    },
    /// A wall too high to be rolled over: it would hit the wall opposite.
    WallTooHigh {
        /// The highest.
        most: Length,
    },
    /// A rounded corner larger than the free corner it is on.
    RoundTooLarge {
        /// The largest radius.
        most: Length,
    },
    /// A strap broader than the end it crosses.
    StrapTooWide {
        /// The broadest.
        most: Length,
    },
    /// A tuck is longer than three quarters of the height.
    TuckTooLong {
        /// As planned.
        is: Length,
        /// Three quarters of the height.
        most: Length,
    },
    /// A tuck longer than its lid is deep cannot be bent in past the dust flaps.
    TuckHits {
        /// The longest that slides in.
        most: Length,
    },
    /// A panel gets no mat, because it is under three reveals across.
    NoMat {
        /// Its name.
        panel: &'static str,
        /// The border asked for.
        reveal: Length,
    },
    /// A border so wide that it leaves nothing of the mat anywhere.
    RevealTooWide {
        /// The border asked for.
        reveal: Length,
    },
    /// A piece is larger than its sheet, whichever way it is turned.
    PieceTooLarge {
        /// Its letter in the piece list.
        piece: String,
        /// Its width.
        width: Length,
        /// Its height.
        height: Length,
        /// The sheet's width.
        sheet_width: Length,
        /// The sheet's height.
        sheet_height: Length,
        /// The system in which the sheet's sides were typed: they are said in it.
        typed: System,
    },
    /// The largest of this form, in its proportions, that comes out of the sheets.
    LargestThatFits {
        /// Its width.
        width: Length,
        /// Its depth.
        depth: Length,
        /// Its height.
        height: Length,
        /// That in percent of what was asked for, rounded down.
        percent: i64,
    },
    /// A base that sags under its gifts, by a rule of thumb.
    BaseSags {
        /// By how much.
        sag: Length,
        /// What the gifts weigh, in grams.
        grams: u32,
    },
    /// A box so high and thin that it topples in its holder.
    Topples {
        /// Its height.
        height: Length,
        /// Its smaller side.
        thin: Length,
    },
    /// Turned by a quarter, everything would come out of the sheets.
    FitsTurned,
    /// The scale at which the whole set comes out of the sheets.
    SetFitsAt {
        /// In percent.
        percent: i64,
    },
    /// A piece is narrower than a strip that can be held at the trimmer: it is left to knife and ruler.
    PieceTooThin {
        /// Its letter in the piece list.
        piece: String,
        /// Its smaller side.
        is: Length,
        /// The narrowest strip that can be held.
        least: Length,
    },
    /// The walls would buckle under another filled box like it: by a rule of thumb.
    WallsBuckle {
        /// What they carry.
        carries: u32,
        /// What goes in.
        grams: u32,
    },
    /// Card is lighter or heavier than any that is folded.
    WeightOutside {
        /// The least, in g/m².
        least: u32,
        /// The most.
        most: u32,
    },
    /// What was learned from a first make is more than any gap.
    LessonTooLarge,
    /// What is asked for in two pieces is no wrap, or slides in another part.
    NoJoint,
    /// In two pieces with a joint the blank comes out of the sheets.
    FitsJoined,
    /// Main scores run across the grain, because no sheet has these pieces along it.
    ScoresAcrossGrain {
        /// Their letters in the piece list.
        pieces: String,
    },
    /// The sheets in the drawer are not enough, and no more can be bought.
    SheetsRanOut {
        /// The piece's letter.
        piece: String,
        /// How many of it are not cut.
        count: u32,
    },
    /// The trimmer's cut is too short to cut this piece out of its sheet.
    TrimmerTooShort {
        /// The piece's letter.
        piece: String,
        /// The trimmer's longest cut.
        longest: Length,
    },
    /// An edge trim leaves nothing of a sheet.
    NothingLeftOfSheet,
    /// Pieces that a layout could not place for another reason.
    PieceLeftOut {
        /// Its letter in the piece list.
        piece: String,
        /// How many of them.
        count: u32,
    },
    /// A holder's wall leaves too little of a box to grip.
    LittleToGrip {
        /// What sticks out.
        is: Length,
        /// What a hand needs.
        least: Length,
    },
    /// A holder's wall is higher than its boxes.
    WallAboveBoxes {
        /// The wall.
        wall: Length,
        /// The shortest box.
        shortest: Length,
    },
    /// Boxes of different depths stand in one row: the shallower ones have play.
    UnevenDepths {
        /// The play of the shallowest box.
        play: Length,
    },
    /// The thickness is an estimate from the grammage.
    ThicknessEstimated {
        /// The estimate.
        thickness: Length,
    },
    /// The margin asked for cannot be had: it must lie within these.
    MarginOutside {
        /// The least.
        least: Length,
        /// The most.
        most: Length,
    },
    /// A thumb notch is too large for its panel.
    NotchTooLarge {
        /// The largest radius.
        most: Length,
    },
    /// Parts sit looser than asked, because the next groove is further away.
    LooseFit {
        /// What is left free in total.
        is: Length,
        /// What was asked for.
        asked: Length,
    },
    /// So little room in a holder that boxes stick; below nothing they are pressed in.
    TightRow {
        /// What was asked for.
        is: Length,
        /// The least that slides.
        least: Length,
    },
    /// So much room in a holder that boxes lean.
    LooseRow {
        /// The most that is advised.
        most: Length,
    },
    /// A lid's wall longer than the base's would stand on the table.
    LidTooHigh {
        /// The longest.
        most: Length,
    },
    /// A lid's lip so long that it leaves too little wall for the corner tabs, or too little of itself.
    LipTooLong {
        /// The longest.
        most: Length,
    },
    /// A ribbon to pull by, and how long it is.
    Ribbon {
        /// Its length.
        length: Length,
    },
    /// A side of the base too short for the corner tabs.
    TooShortForTabs {
        /// The shortest.
        least: Length,
    },
    /// Base flaps that do not overlap, or run into the wall opposite.
    FlapsOverlap {
        /// The least.
        least: Length,
        /// The most.
        most: Length,
    },
    /// An upper edge turned in by more than a third of the height, or by too little to fold.
    HemTooHigh {
        /// A third of the height.
        most: Length,
    },
    /// A flap that would hang below the front.
    FlapTooLong {
        /// The longest.
        most: Length,
    },
    /// Gussets that would meet when the top is pressed together.
    GussetsMeet {
        /// The deepest that folds in.
        most: Length,
    },
    /// Nobody can plan this many pieces at a table.
    TooManyPieces {
        /// How many.
        is: u64,
        /// The most that are planned.
        most: u64,
    },
    /// More gifts than are arranged.
    TooManyGifts {
        /// The most in one box.
        most: u32,
        /// The most kinds of them.
        kinds: u32,
    },
    /// The form cannot be made to an inside size.
    GiftsNotSized,
    /// No size that the form can have holds the gifts: what they need in width, depth and height, room included.
    GiftsTooLarge([Length; 3]),
    /// Gifts and sizes are both given; the sizes are used, and the gifts, which need so much, go in.
    SizesTypedToo([Length; 3]),
    /// Gifts and sizes are both given; the sizes are used, and the gifts, which need so much, do not go in.
    GiftsDoNotFit([Length; 3]),
}
