//! Words of the trade, and what they mean: what stands on the page is explained where it stands.

/// A word and what it means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Term {
    /// As it stands in sentences, one of it.
    pub word: &'static str,
    /// In one line.
    pub means: &'static str,
}

/// Over the list.
pub const TERMS_USED: &str = "Words used here";

/// All that are explained, in the order of the alphabet. Where each comes from is in `src/say/README.md`.
pub const TERMS: [Term; 45] = [
    term("band", "a strip of card that goes round something and is glued to a ring"),
    term("base", "what a box or holder stands on"),
    term("base flap", "closes the bottom of a box together with the others"),
    term("blank", "the piece of card that one part is scored and cut from"),
    term("bone folder", "a smooth blade without an edge, for pressing scores and rubbing folds"),
    term("clearance", "the room left between two parts, so that one slides in the other"),
    term("crease", "where card is folded; in the drawing, between two panels"),
    term("dust flap", "a small flap at the side that folds in before the lid"),
    term("end flap", "a flap at the end of a holder or sleeve, glued or folded in"),
    term("fence", "the edge of the trimmer or board that card is pushed against"),
    term("finished", "of a size: from score to score, before mats are on"),
    term("flange", "an edge that is turned over to be glued to something"),
    term("glue tab", "a narrow flap that is glued behind the edge it meets"),
    term("grain", "the way in which card bends more easily: it folds best along it"),
    term("groove", "a line in the scoring board that the score is pressed into"),
    term("gusset", "a side that folds inwards, so that it can be pressed flat"),
    term("hem", "an edge that is folded over, so that it is strong and clean"),
    term("holder", "what the boxes of a set slide or stand in"),
    term("inside", "the side that is hidden; of a size, what is free for the gift"),
    term("joint", "where a wrap that was cut in two is glued together again"),
    term("layer", "a larger mat under a mat, so that its border shows"),
    term("lid", "what closes a box from above"),
    term("liner", "a piece laid on the floor of a box"),
    term("lip", "a narrow flap along an edge"),
    term("mat", "a thinner piece glued on a face to decorate it"),
    term("mountain", "a fold away from you: the score stands up like a ridge"),
    term("offcut", "what is left of a sheet, large enough to keep"),
    term("outside", "the side that is seen; of a size, what the box takes up"),
    term("panel", "a part of the card between scores and edges that stays flat"),
    term("reveal", "the border of the box that shows round a mat, on each side"),
    term("rim", "the upper edge of a tray or an open box"),
    term("rub", "press a fold flat along its whole length with a bone folder"),
    term("score", "a line pressed into card, so that it folds there without cracking"),
    term("scoring board", "a board with grooves at even distances, for pressing scores"),
    term("sleeve", "a tube that is open at two ends; something slides into it"),
    term("spare", "a piece cut more than needed, for slips of the blade"),
    term("strap", "a strip glued across an end or a front, so that nothing slides out"),
    term("thumb notch", "a half-round in an edge, to get hold of what is behind"),
    term("tower", "a holder in which boxes stand one above the other"),
    term("trim", "cut a little off"),
    term("trimmer", "a ruler with a blade that runs along it, for straight cuts"),
    term("tuck", "the flap of a lid that goes in behind the front and holds it shut"),
    term("valley", "a fold towards you: the score lies at the bottom"),
    term("wedge", "a slanting cut off the side of a flap, so that it goes in easily"),
    term("wing", "a flap at the side of a holder that is glued to the next wall"),
];

const fn term(word: &'static str, means: &'static str) -> Term {
    Term { word, means }
}

/// The terms that stand in a text, each once.
///
/// ```
/// use snugfold::say::terms::used;
/// let words: Vec<&str> = used("Score at 2 in; rub the folds. On the table.").map(|t| t.word).collect();
/// assert_eq!(words, ["rub", "score"]);
/// ```
pub fn used(text: &str) -> impl Iterator<Item = &'static Term> {
    TERMS.iter().filter(move |term| stands(term.word, text))
}

/// Whether a word stands in a text: by itself, as more than one, or as what was done.
fn stands(word: &str, text: &str) -> bool {
    let letter = |c: Option<char>| c.is_some_and(char::is_alphabetic);
    starts(word, text).any(|at| {
        let after = &text[at + word.len()..];
        let rest = ["", "s", "d", "ed", "bed", "med"].into_iter().find_map(|end| {
            let rest = after.strip_prefix(end)?;
            (!letter(rest.chars().next())).then_some(())
        });
        rest.is_some() && !letter(text[..at].chars().next_back())
    })
}

/// Where a word begins, in small letters or with a capital.
fn starts<'a>(word: &'a str, text: &'a str) -> impl Iterator<Item = usize> + 'a {
    text.char_indices().map(|(at, _)| at).filter(move |at| {
        let here = text.as_bytes()[*at..].get(..word.len());
        here.is_some_and(|here| here.eq_ignore_ascii_case(word.as_bytes()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_inside_another_is_not_meant() {
        let words = |text| used(text).map(|t| t.word).collect::<Vec<_>>();
        assert_eq!(words("a table, a formation, striped, Scored twice, two tucks, trimmed"), ["score", "trim", "tuck"]);
        assert_eq!(words("Dust flaps"), ["dust flap"]);
        assert!(words("½ × ¼ … — “”").is_empty());
    }

    #[test]
    fn they_stand_in_order_and_are_said_in_one_line() {
        for pair in TERMS.windows(2) {
            assert!(pair[0].word < pair[1].word, "{} stands before {}", pair[0].word, pair[1].word);
        }
        for term in TERMS {
            assert!(term.means.len() < 90 && !term.means.ends_with('.'), "{}", term.word);
        }
    }
}
