//! How large a design may be to be kept or shared: far above what a table holds, far below what chokes a page.
//!
//! These are wider than the ranges in `project::bound`, because a request that cannot be planned can still be kept.

use std::fmt;

use crate::measure::given::Given;
use crate::measure::system::System;
use crate::project::bound::{self, Range};
use crate::project::fitting::{Gifts, Lesson, Shape};
use crate::project::own::Own;
use crate::project::request::{Card, Entry, Mats, Part, Project};

/// Characters in a name.
pub const NAME: usize = 200;
/// Characters in a word that the page writes itself: a form, an input, a choice, a panel, the key of a step.
pub const WORD: usize = 60;
/// Cards in a design.
pub const CARDS: usize = 100;
/// Sizes of sheets of one card besides the first.
pub const MORE_SHEETS: usize = 40;
/// Kinds of boxes in a design.
pub const BOXES: usize = 200;
/// Values typed for one part.
pub const INPUTS: usize = 64;
/// Kinds of gifts in one box.
pub const GIFTS: usize = 50;
/// Things that are added to one part.
pub const EXTRAS: usize = 40;
/// Panels of one part whose mat is switched off.
pub const MATS_OFF: usize = 64;
/// Bytes of all texts of a design together: even if each of them is spelled out as `\u0000`, its file can be read.
pub const TEXTS: usize = 256 * 1024;
/// Characters in a list of names: 2,000 long ones.
pub const NAMES: usize = 80_000;
/// Steps and notes of the maker's own.
pub const NOTES: usize = 200;
/// Characters in one of them.
pub const NOTE: usize = 2_000;
/// Characters in a form of the maker's own.
pub const DRAWN: usize = 20_000;
/// Ticked steps of one design.
pub const TICKS: usize = 20_000;

/// What in a design is too large to be kept, or cannot be written down.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Excess {
    /// A text has too many characters.
    Long {
        /// What it is, in plain words.
        what: &'static str,
        /// How many characters it has.
        is: usize,
        /// The most that are kept.
        most: usize,
    },
    /// There are too many of something.
    Many {
        /// What they are, in plain words.
        what: &'static str,
        /// How many there are.
        is: usize,
        /// The most that are kept.
        most: usize,
    },
    /// More of something is asked for than is planned together.
    Unplanned {
        /// What they are, in plain words.
        what: &'static str,
        /// How many there are.
        is: u32,
        /// The most that are planned.
        most: u32,
    },
    /// A length or word whose text would be read as something else.
    Unsteady {
        /// Its text.
        text: String,
    },
}

impl fmt::Display for Excess {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Long { what, is, most } => {
                write!(f, "{what} has {is} characters, and {most} are the most that is kept: shorten it")
            }
            Self::Many { what, is, most } => {
                write!(f, "there are {is} {what}, and {most} are the most that is kept: make two designs of it")
            }
            Self::Unplanned { what, is, most } => {
                write!(
                    f,
                    "it asks for {is} {what}, and {most} are the most that are planned together: divide it into smaller designs"
                )
            }
            Self::Unsteady { text } => {
                write!(f, "“{text}” cannot be written down: type that length again")
            }
        }
    }
}

impl std::error::Error for Excess {}

/// Holds a design against the limits.
///
/// # Errors
/// The first [`Excess`] found.
pub fn check(project: &Project) -> Result<(), Excess> {
    text("the name of the set", &project.name, NAME)?;
    number("cards", project.cards.len(), CARDS)?;
    number("kinds of boxes", project.boxes.len(), BOXES)?;
    length(project.board.inch_step.as_ref())?;
    length(project.board.metric_step.as_ref())?;
    project.trimmer.typed().into_iter().try_for_each(|g| length(g.as_ref()))?;
    project.cards.iter().try_for_each(card)?;
    let parts = || project.boxes.iter().chain(&project.holder);
    parts().try_for_each(part)?;
    own(&project.own)?;
    text("the currency", &project.trade.currency, WORD)?;
    text("the list of names", &project.batch.names, NAMES)?;
    let cards: usize = project.cards.iter().map(|c| c.name.len()).sum();
    let notes: usize = project.own.notes.iter().map(|n| n.at.len() + n.text.len()).sum();
    let own = project.own.credit.len() + notes;
    let teach = project.trade.currency.len() + project.batch.names.len();
    let all = project.name.len() + teach + own + cards + parts().map(texts).sum::<usize>();
    number("bytes of text", all, TEXTS)
}

/// Holds a design that is passed on against what is planned ([`bound`]): what would only come to its page as something
/// that can't be planned is refused before.
///
/// # Errors
/// The first [`Excess`] found.
pub fn planned(project: &Project) -> Result<(), Excess> {
    let many = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let within = |what, is, range: Range<u32>| match range.most {
        most if is > most => Err(Excess::Unplanned { what, is, most }),
        _ => Ok(()),
    };
    within("kinds of boxes", many(project.boxes.len()), bound::BOX_KINDS)?;
    within("cards", many(project.cards.len()), bound::CARDS)?;
    within("sets", project.sets, bound::SETS)?;
    project.boxes.iter().try_for_each(|b| within("boxes of one kind", b.count, bound::BOX_COUNT))
}

/// Bytes of the texts of a part. Those of lengths are short.
fn texts(part: &Part) -> usize {
    let entries = part.inputs.iter().map(|(key, entry)| match entry {
        Entry::Choice(word) => key.len() + word.len(),
        Entry::Count(_) | Entry::Length(_) => key.len(),
    });
    let off = part.mats.iter().flat_map(|m| &m.off).map(String::len);
    let gifts: usize = part.gifts.kinds.iter().map(|g| g.name.len()).sum();
    let extras: usize = part.extras.iter().map(|e| e.face.len()).sum();
    part.name.len() + part.form.len() + part.drawn.len() + gifts + extras + entries.chain(off).sum::<usize>()
}

fn card(card: &Card) -> Result<(), Excess> {
    text("the name of a card", &card.name, NAME)?;
    length(card.thickness.as_ref())?;
    length(card.lesson.as_ref().map(Lesson::by))?;
    length(Some(&card.sheet_width))?;
    length(Some(&card.sheet_height))?;
    number("sizes of sheets", card.more_sheets.len(), MORE_SHEETS)?;
    let more = card.more_sheets.iter().flat_map(|m| [&m.width, &m.height]);
    more.map(Some).try_for_each(length)
}

fn part(part: &Part) -> Result<(), Excess> {
    text("the name of a box or holder", &part.name, NAME)?;
    text("the form of a box or holder", &part.form, WORD)?;
    number("values for one box", part.inputs.len(), INPUTS)?;
    for (key, entry) in &part.inputs {
        text("the key of a value", key, WORD)?;
        match entry {
            Entry::Count(_) => {}
            Entry::Length(given) => length(Some(given))?,
            Entry::Choice(word) => choice(word)?,
        }
    }
    text("a form of your own", &part.drawn, DRAWN)?;
    gifts(&part.gifts)?;
    number("things added to one box", part.extras.len(), EXTRAS)?;
    for extra in &part.extras {
        text("the name of a panel", &extra.face, WORD)?;
        [&extra.width, &extra.height].into_iter().try_for_each(|g| length(g.as_ref()))?;
    }
    part.mats.as_ref().map_or(Ok(()), mats)
}

fn own(own: &Own) -> Result<(), Excess> {
    text("the line that says whose design it is", &own.credit, NAME)?;
    number("notes and steps of your own", own.notes.len(), NOTES)?;
    for note in &own.notes {
        text("the key of a step", &note.at, WORD)?;
        text("a note or step of your own", &note.text, NOTE)?;
    }
    Ok(())
}

fn gifts(gifts: &Gifts) -> Result<(), Excess> {
    [&gifts.room_width, &gifts.room_depth, &gifts.room_height].into_iter().try_for_each(|g| length(g.as_ref()))?;
    number("kinds of gifts in one box", gifts.kinds.len(), GIFTS)?;
    for gift in &gifts.kinds {
        text("the name of a gift", &gift.name, NAME)?;
        let (a, b, c) = match &gift.shape {
            Shape::Block { width, depth, height } | Shape::Soft { width, depth, height } => {
                (width, Some(depth), height)
            }
            Shape::Cylinder { across, height } => (across, None, height),
        };
        [Some(a), b, Some(c)].into_iter().try_for_each(length)?;
    }
    Ok(())
}

/// In a file a word that reads as a length is a length.
fn choice(word: &str) -> Result<(), Excess> {
    text("a chosen word", word, WORD)?;
    match Given::read(word, System::Metric) {
        Ok(_) => Err(Excess::Unsteady { text: word.to_owned() }),
        Err(_) => Ok(()),
    }
}

fn mats(mats: &Mats) -> Result<(), Excess> {
    length(mats.reveal.as_ref())?;
    number("panels without a mat", mats.off.len(), MATS_OFF)?;
    mats.off.iter().try_for_each(|name| text("the name of a panel", name, WORD))
}

fn length(given: Option<&Given>) -> Result<(), Excess> {
    match given {
        Some(g) if Given::read(g.text(), System::Metric).as_ref() != Ok(g) => {
            Err(Excess::Unsteady { text: g.text().to_owned() })
        }
        _ => Ok(()),
    }
}

/// Holds a text against a limit of characters.
pub(super) fn text(what: &'static str, text: &str, most: usize) -> Result<(), Excess> {
    // A character has at most four bytes, so that most texts are not counted.
    if text.len() <= most {
        return Ok(());
    }
    let is = text.chars().count();
    if is <= most { Ok(()) } else { Err(Excess::Long { what, is, most }) }
}

/// Holds a count against a limit.
pub(super) const fn number(what: &'static str, is: usize, most: usize) -> Result<(), Excess> {
    if is <= most { Ok(()) } else { Err(Excess::Many { what, is, most }) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::example::example;

    #[test]
    fn the_example_is_well_within() {
        assert_eq!(example().as_ref().map(check), Some(Ok(())));
    }

    #[test]
    fn what_is_not_planned_is_not_passed_on() {
        let mut project = example().expect("the example is a project");
        let one = project.boxes[0].clone();
        project.boxes = vec![one; 60];
        project.sets = 10_000;
        assert_eq!(planned(&project), Ok(()));
        let one = project.boxes[0].clone();
        project.boxes.push(one);
        assert_eq!(
            planned(&project).map_err(|e| e.to_string()),
            Err(
                "it asks for 61 kinds of boxes, and 60 are the most that are planned together: divide it into smaller \
                 designs"
                    .to_owned()
            )
        );
        project.boxes.pop();
        project.sets = 10_001;
        assert!(matches!(planned(&project), Err(Excess::Unplanned { what: "sets", is: 10_001, most: 10_000 })));
    }

    #[test]
    fn a_long_name_is_counted_in_characters() {
        let mut project = example().expect("the example is a project");
        project.name = "ö".repeat(NAME);
        assert_eq!(check(&project), Ok(()));
        project.name.push('ö');
        assert_eq!(
            check(&project).map_err(|e| e.to_string()),
            Err("the name of the set has 201 characters, and 200 are the most that is kept: shorten it".to_owned())
        );
    }
}
