//! Small papers, many to a page: what goes in each bag, and tags with names.

use super::drawing::{Drawing, Ends, Hold, Ink, Line, Mark, Meaning, Spot};
use super::flow::{line, lines, width};
use super::geometry::block;
use crate::say::phrase::Phrase;

/// Left free round the page (common practice, no source).
const EDGE: f64 = 10.0;
/// Left free inside a label.
const INSIDE: f64 = 5.0;
/// From line to line, in the height of the lettering.
const LEADING: f64 = 1.25;
/// Large print: 14 points and more (as RNIB and others ask for print that all can read).
const LARGE: f64 = 14.0 * 25.4 / 72.0;

/// A page cut into so many across and down; labels may not be smaller than their words in large print.
const GRIDS: [[usize; 2]; 5] = [[2, 4], [2, 3], [2, 2], [1, 2], [1, 1]];

/// A label for each of `heads` (its number, and perhaps a name), with the same lines below.
#[must_use]
pub fn bags(title: &str, heads: &[Vec<String>], inside: &[Phrase], size: Spot) -> Vec<Drawing> {
    let room = |grid: [usize; 2]| [0, 1].map(|i| (size[i] - 2.0 * EDGE) / grid[i] as f64 - 2.0 * INSIDE);
    let high = |grid: [usize; 2]| {
        let of = |words: &Phrase| lines(words, room(grid)[0] / LARGE).len();
        let head = heads.iter().map(|h| h.iter().map(|words| of(&words.as_str().into())).sum::<usize>()).max();
        let all = head.unwrap_or(0) * 3 / 2 + 1 + inside.iter().map(of).sum::<usize>() + 1;
        all as f64 * LARGE * LEADING
    };
    let grid = GRIDS.into_iter().find(|grid| high(*grid) <= room(*grid)[1]).unwrap_or([1, 1]);
    // What is too much for a whole page is set smaller.
    let share = (room(grid)[1] / high(grid)).min(1.0).sqrt();
    let letter = LARGE * share;
    let label = |page: &mut Drawing, [left, top]: Spot, nth: usize| {
        let mut y = top + INSIDE;
        let mut say = |page: &mut Drawing, words: &Phrase, size: f64| {
            for words in lines(words, room(grid)[0] / size) {
                y += size * LEADING;
                line(page, words, [left + INSIDE, y - size * LEADING / 2.0], size, Hold::Start);
            }
        };
        for (i, words) in heads[nth].iter().enumerate() {
            say(page, &words.as_str().into(), if i == 0 { letter * 1.4 } else { letter });
        }
        say(page, &title.into(), letter * 0.8);
        for words in inside {
            say(page, words, letter);
        }
    };
    grid_of(title, heads.len(), grid, size, &label)
}

/// Tags of 60 by 30 mm or a little more, a name on each, with a ring where a hole is punched.
#[must_use]
pub fn tags(title: &str, names: &[&str], size: Spot) -> Vec<Drawing> {
    let grid = [0, 1].map(|i| ((size[i] - 2.0 * EDGE) / [60.0, 30.0][i]) as usize);
    let [wide, high] = [0, 1].map(|i| (size[i] - 2.0 * EDGE) / grid[i] as f64);
    // The hole stands at the left; the name in what is left.
    let hole = 10.0;
    let tag = |page: &mut Drawing, [left, top]: Spot, nth: usize| {
        let ring = (0..24).map(|i| {
            let turn = f64::from(i) * std::f64::consts::TAU / 24.0;
            [left + 7.0 + 2.0 * libm::cos(turn), top + high / 2.0 + 2.0 * libm::sin(turn)]
        });
        page.ring(Meaning::Cut, Ink::Page, ring.collect());
        let (name, room): (Phrase, f64) = (names[nth].into(), wide - hole - INSIDE);
        // On one line down to half the size, then on several.
        let letter = (room / width(&name)).clamp(4.0, 8.0);
        let all = lines(&name, room / letter);
        let most = ((high - 4.0) / (letter * LEADING)).max(1.0) as usize;
        let shown = all.len().min(most);
        let first = top + high / 2.0 - (shown as f64 - 1.0) * letter * LEADING / 2.0;
        for (i, words) in all.into_iter().take(most).enumerate() {
            line(page, words, [left + hole, first + i as f64 * letter * LEADING], letter, Hold::Start);
        }
    };
    grid_of(title, names.len(), grid, size, &tag)
}

/// So many alike papers, with lines to cut along.
fn grid_of(
    title: &str,
    count: usize,
    [across, down]: [usize; 2],
    size: Spot,
    one: &dyn Fn(&mut Drawing, Spot, usize),
) -> Vec<Drawing> {
    let [wide, high] = [(size[0] - 2.0 * EDGE) / across as f64, (size[1] - 2.0 * EDGE) / down as f64];
    let mut pages: Vec<Drawing> = Vec::new();
    for nth in 0..count {
        let place = nth % (across * down);
        if place == 0 {
            let mut page = Drawing { title: title.to_owned(), lettering: 3.0, ..Drawing::default() };
            page.frame([0.0; 2], size);
            pages.push(page);
        }
        let Some(page) = pages.last_mut() else { continue };
        let at = [EDGE + (place % across) as f64 * wide, EDGE + (place / across) as f64 * high];
        let run = block(at, [at[0] + wide, at[1] + high]);
        page.marks.push(Mark::Line(Line { meaning: Meaning::Edge, run, ends: Ends::Closed, ink: Ink::Page }));
        one(page, at, nth);
    }
    pages
}
