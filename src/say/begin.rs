//! The words of the first minutes: what is asked first, and what has been answered.

use crate::project::request::{Card, Project};
use crate::stock::sheets::{STANDARD, standard};
use crate::stock::weight::BasisWeight;

/// On a first visit.
pub const WELCOME: &str =
    "A worked example: three boxes in a holder. Change anything and it becomes your own, or begin with nothing.";

/// What is asked first; each leads to its fields.
pub const ASKED: [&str; 3] = ["Your gift", "Your card", "Your sheets"];
/// For those who hear it.
pub const ASKED_FIRST: &str = "What everything follows from";
/// Where nothing was said of gifts.
const NO_GIFT: &str = "Say what goes in: the boxes take their sizes from it";

/// What goes in, as far as it was said.
///
/// ```
/// use snugfold::{project::example::example, say::begin};
/// let mut project = example().unwrap();
/// for b in &mut project.boxes {
///     b.gifts.kinds.clear();
/// }
/// assert!(begin::gift(&project).starts_with("Say what goes in"));
/// ```
#[must_use]
pub fn gift(project: &Project) -> String {
    let filled = project.boxes.iter().filter(|b| !b.gifts.kinds.is_empty());
    let (mut things, mut boxes) = (0_u32, 0_u32);
    for part in filled {
        boxes += 1;
        things = part.gifts.kinds.iter().fold(things, |sum, kind| sum.saturating_add(kind.count));
    }
    let of = |n: u32, one: &str, more: &str| if n == 1 { format!("1 {one}") } else { format!("{n} {more}") };
    match boxes {
        0 => NO_GIFT.to_owned(),
        _ => format!("{} in {}", of(things, "thing", "things"), of(boxes, "kind of box", "kinds of box")),
    }
}

/// The first card, as on its packet.
#[must_use]
pub fn card(card: &Card) -> String {
    let weight = match card.grammage {
        BasisWeight::Grams(grams) => format!("{grams} g/m²"),
        pounds @ BasisWeight::Pounds(..) => pounds.written(),
    };
    let said = format!("{weight}, as on the packet");
    if card.name.trim().is_empty() { said } else { format!("{}, {said}", card.name) }
}

/// Its sheets: how large, and how many there are.
#[must_use]
pub fn sheets(card: &Card) -> String {
    let (w, h) = (&card.sheet_width, &card.sheet_height);
    let standard = standard(w.length(), h.length()).and_then(|at| STANDARD.get(at));
    let size = standard.map_or_else(|| format!("{} × {}", w.text(), h.text()), |s| s.name.to_owned());
    match card.supply.have {
        0 => format!("{size}, all to be bought"),
        have => format!("{size}, {have} in the drawer"),
    }
}
