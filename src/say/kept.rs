//! Words about what is kept and shared.

/// Where the browser keeps nothing.
pub const NOT_LASTING: &str = "This browser keeps nothing for pages, so sets last only while this page is open: save \
                               them as a file.";
/// Where two windows saved one set.
pub const AS_COPY: &str = "This set was changed in another window meanwhile, so what is here was saved beside it as a \
                           new set.";
/// Where a link holds what is saved here.
pub const HERE_ALREADY: &str =
    "The design of this link is saved here already, so that set was opened: nothing was added.";
/// Makes what came by a link one of the maker's sets.
pub const KEEP_IT: &str = "Keep it";
/// Takes it off the page.
pub const PUT_AWAY: &str = "Put it away";
/// Where a link stopped the page.
pub const LINK_CLOSED: &str = "The design of this link stopped the page last time, so it wasn’t opened.";
/// Of the list.
pub const SAVED_SETS: &str = "Saved sets";
/// How saving works.
pub const BY_ITSELF: &str = "Every change is saved on this device by itself.";
/// Looks for a set by its name.
pub const FIND: &str = "Find by name";
/// Their order.
pub const ORDER: &str = "Order";
/// An order.
pub const BY_DATE: &str = "changed last first";
/// An order.
pub const BY_NAME: &str = "by name";
/// Where no name fits.
pub const NO_SUCH: &str = "No saved set has this in its name.";
/// Those that are not drawn yet.
pub const SHOW_MORE: &str = "Show more";
/// Before the first change.
pub const NONE_YET: &str = "Nothing saved yet. The first change to the example makes it a set of your own.";
/// On the open one.
pub const OPEN_NOW: &str = "open now";
/// Opens it.
pub const OPEN: &str = "Open";
/// Of a set.
pub const RENAME: &str = "Rename";
/// Of a set.
pub const DELETE: &str = "Delete";
/// Of a set.
pub const BRING_BACK: &str = "Bring it back";
/// What cannot be read.
pub const SET_ASIDE: &str = "Kept as it is, for it cannot be read";
/// Saves what cannot be read.
pub const SAVE_BYTES: &str = "Save its bytes as a file";
/// Takes away what cannot be read.
pub const REMOVE_IT: &str = "Remove it";
/// Of what could not be read.
pub const REMOVED: &str = "What couldn’t be read is removed.";
/// Before why the set that was open last cannot be read.
pub const UNREADABLE: &str = "The set that you had open last can’t be read, so it was left as it is. Save its bytes as a \
                              file to keep them, or remove it.";
/// Before why what is on the screen is not saved.
pub const NOT_SAVED: &str = "Your last changes aren’t saved yet.";
/// What could not be saved, is.
pub const SAVED_AFTER_ALL: &str = "Everything is saved now.";
/// To what was worked on before.
pub const GO_BACK: &str = "Go back to it";
/// Sharing.
pub const SHARE: &str = "Share";
/// The link.
pub const LINK: &str = "Link to this design";
/// The link on paper.
pub const CODE: &str = "Square code of the link";
/// What it is for.
pub const CODE_HINT: &str = "A phone or tablet that is pointed at it, on the screen or on paper, opens this design.";
/// Where it is no use.
pub const CODE_TOO_LONG: &str = "This design is too large for a code on paper: pass the link or a file on.";
/// Where much is kept and no copy was made for long.
pub const BACKUP: &str = "Your sets are on this device only, and a browser can lose what it keeps. Save them all as one \
                          file now and then, and put it somewhere else.";
/// Files.
pub const FILES: &str = "Files";
/// All of them.
pub const SAVE_ALL: &str = "Save all sets as one file";
/// Where a file was not read.
pub const FILE_NOT_READ: &str = "This file could not be read: it is larger than 4 MB, or the device did not give it. \
                                 Choose a file that Snugfold has saved.";
/// Where a file of ours holds nothing.
pub const NO_SETS: &str = "There is no set in this file, so nothing was added: choose another that Snugfold has saved.";
/// While the sets of a file are brought in.
pub const BRINGING_IN: &str = "Bringing in the sets of the file";
/// Ends that.
pub const STOP: &str = "Stop";
/// Where it was stopped before any set was added.
pub const STOPPED_AT_ONCE: &str = "Stopped: nothing of the file was added.";

/// When, where that is known, and how large.
#[must_use]
pub fn saved(date: Option<&str>, bytes: usize) -> String {
    let size = bytes.div_ceil(1_000);
    date.map_or_else(|| format!("Saved on an unknown day · {size} KB"), |date| format!("Saved {date} · {size} KB"))
}

/// A design between quotation marks, or what it is where it has no name.
fn called(name: &str) -> String {
    let name = super::finding::short(name);
    if name.is_empty() { "This design".to_owned() } else { format!("“{name}”") }
}

/// Of a design that came by a link: what it is called, and what it says of whose it is.
///
/// ```
/// use snugfold::say::kept::came_by_link;
/// assert_eq!(
///     came_by_link("Seven jars", "Ada’s paper shed"),
///     "“Seven jars” (Ada’s paper shed) came by a link. It isn’t saved with your sets yet."
/// );
/// ```
#[must_use]
pub fn came_by_link(name: &str, credit: &str) -> String {
    let credit = super::finding::short(credit);
    let by = if credit.is_empty() { String::new() } else { format!(" ({credit})") };
    format!("{}{by} came by a link. It isn’t saved with your sets yet.", called(name))
}

/// After it was kept.
#[must_use]
pub fn now_yours(name: &str) -> String {
    format!("{} is saved with your sets now.", called(name))
}

/// After the first change to it.
#[must_use]
pub fn changed_so_yours(name: &str) -> String {
    let name = super::finding::short(name);
    let it = if name.is_empty() { "it".to_owned() } else { format!("“{name}”") };
    format!("You changed the design of the link, so {it} is saved with your sets now.")
}

/// After it was put away.
#[must_use]
pub fn put_away(name: &str) -> String {
    format!("{} is put away. Open its link to see it again.", called(name))
}

/// After a set was deleted.
#[must_use]
pub fn deleted(name: &str) -> String {
    format!("“{}” is deleted.", super::finding::short(name))
}

/// Of work that could not be saved before another design was taken to hand.
#[must_use]
pub fn waits(name: &str) -> String {
    format!("“{}” isn’t saved yet. It stays here while this page is open.", super::finding::short(name))
}

/// After a file was opened: so many sets, of which so many were here before just as they are.
///
/// ```
/// use snugfold::say::kept::brought_in;
/// assert_eq!(brought_in(1, 0), "1 set is here from the file, and open.");
/// assert_eq!(brought_in(1, 1), "The set of the file was here already, and is open.");
/// assert_eq!(brought_in(3, 1), "3 sets are here from the file; 1 of them was here already. The first is open.");
/// ```
#[must_use]
pub fn brought_in(count: usize, known: usize) -> String {
    let known = match (count, known) {
        (1, 0) => return "1 set is here from the file, and open.".to_owned(),
        (1, _) => return "The set of the file was here already, and is open.".to_owned(),
        (_, 0) => String::new(),
        (_, 1) => "; 1 of them was here already".to_owned(),
        (_, known) if known == count => "; all of them were here already".to_owned(),
        (_, known) => format!("; {known} of them were here already"),
    };
    format!("{count} sets are here from the file{known}. The first is open.")
}

/// Where that ended before all sets were here.
#[must_use]
pub fn brought_in_part(why: Option<&str>, count: usize, of: usize) -> String {
    let why = why.map_or_else(|| "Stopped".to_owned(), |why| format!("{why}. It ended there"));
    format!("{why}: {count} of the {of} sets of the file are here.")
}

/// What a file is called: letters and digits of the name.
#[must_use]
pub fn file_name(name: &str) -> String {
    format!("{}.snugfold.json", plain(name))
}

/// Letters and digits of a name, for a file's.
#[must_use]
pub fn plain(name: &str) -> String {
    // Letters of any writing, but no punctuation of any: that could turn the name's direction.
    let fits = |c: char| c.is_ascii_alphanumeric() || (c >= '\u{c0}' && !('\u{2000}'..'\u{3000}').contains(&c));
    let plain: String = name.chars().take(60).map(|c| if fits(c) { c } else { '-' }).collect();
    let plain = plain.trim_matches('-');
    if plain.is_empty() { "set" } else { plain }.to_owned()
}

#[cfg(test)]
mod tests {
    #[test]
    fn file_names_are_plain() {
        assert_eq!(super::file_name("Thanks / to <you>"), "Thanks---to--you.snugfold.json");
        assert_eq!(super::file_name("Grüße\u{202e} 礼物"), "Grüße--礼物.snugfold.json");
        assert_eq!(super::file_name("///"), "set.snugfold.json");
    }
}
