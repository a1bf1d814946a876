//! A whole design in the fragment of a link, which a browser never sends to a server.
//!
//! # The format, version 1
//!
//! `snug1.` and then base64url of: length of the body, CRC-32 of the body, body ([`seal`]). Numbers are LEB128 and texts
//! are their number of bytes and UTF-8 ([`wire`]). A typed length is one number that brings back every character of it,
//! such as 3 bytes for `11 63/64 in` ([`spelling`]). The body ([`body`], [`stock`]) holds, in this order:
//!
//! | what | how |
//! | --- | --- |
//! | design | marks: 1 metric, 2 sets, 4 inch step, 8 metric step, 16 holder, 32 trimmer, 64 spares, 128 own words; name; sets; steps; trimmer; spares; cards; boxes; holder; own words |
//! | cards | how many; each: marks: 1 number, 2 thickness, 4 sheet, 8 tint, 16 stock, 32 pounds, of 0 cover, 64 text, 128 index, 192 bristol; number; name; g/m² or pounds; thickness; sheet's width, height; tint as 3 bytes; stock |
//! | trimmer | marks: 1 edge trim, 2 longest cut, 4 least strip, 8 error of a score, 16 of a cut; each a length |
//! | stock | marks: 1 have, 2 shop shut, 4 price, 8 pieces upright, 16 more sheets, 32 measured in a stack, 64 clearances wider, 128 narrower, 256 grain up the sheet, 512 across it; have; price; sheets in the stack; how much wider; how many more; each: marks 1 to 4, have, price, width, height |
//! | boxes | how many; each a part |
//! | part | marks: 1 number, 2 form, 4 count, 8 card, 16 inputs, 32 mats, 64 mats as before, 128 gifts, 256 left side forward, 512 lid forward, 1024 in two pieces, 2048 extras, 4096 a form of its own; number; form; name; count; card; inputs; mats; gifts; extras; the form as text |
//! | form | its number in [`super::frozen`], or 0 and its key |
//! | inputs | bits by the numbers in [`super::frozen`] (bit 0: spelled-out ones follow); a value for each bit; how many spelled out; each: key, value |
//! | value | a length; or `31` and a count; or `63` and a word; or `95 + 32 × place` of the word among the input's |
//! | gifts | marks: 1 room across, 2 in depth, 4 in height; each a length; how many kinds; each: marks: 1 name, 2 count, 4 wrapped, 8 upright, 16 mass, 32 cylinder, 64 soft; name; count; grams; sides |
//! | extras | how many; each: marks: 1 face, 2 width, 4 height, 8 card, and 16 × the place of its kind in [`extras`]; face; width; height; card |
//! | own words | whose design it is; how many notes; each: 0 note or 1 step; site of the step it hangs on; text |
//! | mats | marks: 1 reveal, 2 panels without; card; reveal; how many panels; each: name |
//!
//! A mark that is not set means: as usual. The usual number is one more than that of the card or box before, the holder's
//! is 0; the usual sheet is that of the card before; the usual form, card and mats are those of the box before. Before
//! the first stand the values in [`super::frozen`], which never change. So a link that is made today means the same in
//! every later version.
//!
//! There is no compression: the larger half of a typical body is names, too short for a general compressor to gain on
//! (deflate takes 1 of the 136 bytes of the worked example), and it would be a second reader of strangers' bytes.

pub mod body;
pub mod extras;
pub mod gifts;
pub mod own;
pub mod seal;
pub mod spelling;
pub mod stock;
pub mod wire;

use std::fmt;

use crate::project::request::Project;

use super::frozen;
use super::limits::{self, Excess};
use wire::Fault;

/// Why a link cannot be made or read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkError {
    /// It is something else.
    NotALink,
    /// Its version, or something in it, is not known here.
    Newer,
    /// Its end is missing.
    Cut,
    /// Characters in it were changed.
    Damaged,
    /// It came whole, but no Snugfold writes such a link.
    Broken,
    /// The design is larger than a link carries.
    TooLong,
    /// The design is larger than any that is kept.
    Excess(Excess),
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NotALink => "This is not a Snugfold link: copy the whole address, from “https” to its end",
            Self::Newer => "This link is from a newer Snugfold: load this page anew while online, then open it again",
            Self::Cut => "This link was cut short: ask for it again, or for the design as a file",
            Self::Damaged => "This link was changed on its way: ask for it again, or for the design as a file",
            Self::Broken => "This link holds no design that can be read: ask for the design as a file",
            Self::TooLong => "This design is too long for a link: save it as a file and send that",
            Self::Excess(excess) => return write!(f, "This design is too large for a link: {excess}"),
        })
    }
}

impl std::error::Error for LinkError {}

/// The fragment for `project`, to stand behind the `#` of the page's address.
///
/// # Errors
/// [`LinkError::TooLong`] or [`LinkError::Excess`] where the design is too large.
///
/// ```
/// use snugfold::{keep::link, project::example::example};
/// let project = example().unwrap();
/// let fragment = link::write(&project).unwrap();
/// assert!(fragment.starts_with("snug1.") && fragment.len() < 250);
/// assert_eq!(link::read(&fragment), Ok(project));
/// ```
pub fn write(project: &Project) -> Result<String, LinkError> {
    limits::check(project).map_err(LinkError::Excess)?;
    seal::close(&body::write::design(project))
}

/// The design of a link: its fragment, or a whole address with one. The work is bounded by the length of `link`, of
/// which a few kilobytes at most are looked at where it is no link.
///
/// # Errors
/// What is wrong with the link, in words for the maker.
pub fn read(link: &str) -> Result<Project, LinkError> {
    let body = seal::open(link)?;
    let mut project = body::read::design(&body).map_err(|fault| match fault {
        Fault::Broken => LinkError::Broken,
        Fault::Unknown => LinkError::Newer,
    })?;
    limits::check(&project).map_err(LinkError::Excess)?;
    frozen::fill(&mut project);
    Ok(project)
}
