//! What drawings are called: for those who hear the page, and in files.

/// Scores with their measures.
pub const SCORES: &str = "Scores";
/// Marks by hand.
pub const MARKS: &str = "Marks";
/// Cuts that end inside the card.
pub const CUTS: &str = "Cuts along scores";
/// Scores that end inside the card.
pub const SHORT_SCORES: &str = "Scores that go no further";
/// Cells that are cut away.
pub const TAKEN: &str = "What is taken away";
/// Strips, wedges and notches.
pub const TRIMMED: &str = "What is trimmed";
/// Mats by their letters.
pub const LETTERS: &str = "Where each mat goes, by its letter";
/// One piece by itself.
pub const PIECE: &str = "The piece";
/// A strap.
pub const STRAP: &str = "A strap and its folds";
/// Every part.
pub const OVERVIEW: &str = "All parts, flat, at one scale";
/// On papers, of a set without a name.
pub const UNNAMED: &str = "A gift set";

/// A part flat.
#[must_use]
pub fn flat(name: &str) -> String {
    format!("Flat pattern of {name}, outside up")
}

/// A part on its way.
#[must_use]
pub fn folding(name: &str) -> String {
    format!("{name}, folding")
}

/// A part that is done.
#[must_use]
pub fn folded(name: &str) -> String {
    format!("{name}, folded")
}

/// Parts that go together.
#[must_use]
pub fn together(name: &str) -> String {
    format!("{name}, put together")
}

/// A sheet of such sides.
#[must_use]
pub fn sheet(width: &str, height: &str) -> String {
    format!("Sheet of {width} × {height}")
}

/// The whole set: its boxes in the order of the design, and what they stand in.
///
/// ```
/// use snugfold::say::pictures::finished;
/// let boxes = [("Tea", 2), ("Honey", 1)];
/// assert_eq!(finished(&boxes, Some("Caddy")), "The finished set: 2 × Tea, Honey, in Caddy");
/// assert_eq!(finished(&[], None), "The finished set");
/// ```
#[must_use]
pub fn finished(boxes: &[(&str, u32)], holder: Option<&str>) -> String {
    let each = boxes.iter().map(|(name, count)| match count {
        1 => (*name).to_owned(),
        count => format!("{count} × {name}"),
    });
    let all: Vec<String> = each.chain(holder.map(|name| format!("in {name}"))).collect();
    let said = all.join(", ");
    if said.is_empty() { "The finished set".to_owned() } else { format!("The finished set: {said}") }
}

/// How many of a part, after its name.
#[must_use]
pub fn many(count: u32) -> String {
    if count > 1 { format!(", {count} of them") } else { String::new() }
}
