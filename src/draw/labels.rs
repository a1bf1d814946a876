//! Small papers, many to a page: what goes in each bag, and tags with names.

use super::drawing::{Drawing, Ends, Hold, Ink, Line, Mark, Meaning, Spot};
use super::flow::{line, lines, width};
use super::font::Font;
use super::geometry::block;
use crate::say::phrase::Phrase;

/// Left free round the page (common practice, no source).
const EDGE: f64 = 10.0;
/// Left free inside a label.
const INSIDE: f64 = 5.0;
/// From line to line, in the height of the lettering.
const LEADING: f64 = 1.4;
/// Large print: 14 points and more (what guides to print for all ask for, written here from memory).
const LARGE: f64 = 14.0 * 25.4 / 72.0;

/// A page cut into so many across and down; labels may not be smaller than their words in large print.
const GRIDS: [[usize; 2]; 5] = [[2, 4], [2, 3], [2, 2], [1, 2], [1, 1]];

/// The lettering of a label of which not even a page holds all in large print; what is more then goes on to another.
const SMALL: f64 = 11.0 * 25.4 / 72.0;

/// A line of a label, and its lettering as a share of the ordinary.
type Said = (Phrase, f64);

/// A label for each of `heads` (its number, and perhaps a name), with the same lines below; several where they are too
/// many for a page.
#[must_use]
pub fn bags(title: &str, heads: &[Vec<String>], inside: &[Phrase], size: Spot, font: &Font) -> Vec<Drawing> {
    let room = |grid: [usize; 2]| [0, 1].map(|i| (size[i] - 2.0 * EDGE) / grid[i] as f64 - 2.0 * INSIDE);
    let begin = |head: &[String]| -> Vec<Said> {
        let first = head.iter().enumerate();
        let first = first.map(|(nth, words)| (words.as_str().into(), if nth == 0 { 1.4 } else { 1.0 }));
        first.chain([(title.into(), 0.8)]).collect()
    };
    let rest: Vec<Said> = inside.iter().map(|line| (line.clone(), 1.0)).collect();
    let fits = |grid: [usize; 2]| {
        let [wide, most] = room(grid);
        let below = high(&rest, LARGE, wide, font);
        heads.iter().all(|head| high(&begin(head), LARGE, wide, font) + below <= most)
    };
    let found = GRIDS.into_iter().find(|grid| fits(*grid));
    let (grid, letter) = found.map_or(([1, 1], SMALL), |grid| (grid, LARGE));
    let [wide, most] = room(grid);
    let mut all: Vec<Vec<Said>> = Vec::new();
    for head in heads {
        let mut now = begin(head);
        for line in rest.iter().flat_map(|line| by_line(line, letter, wide, font)) {
            if high(&now, letter, wide, font) + high(std::slice::from_ref(&line), letter, wide, font) > most {
                all.push(std::mem::replace(&mut now, begin(head)));
            }
            now.push(line);
        }
        all.push(now);
    }
    let label = |page: &mut Drawing, [left, top]: Spot, nth: usize| {
        let mut y = top + INSIDE;
        for (words, share) in &all[nth] {
            let size = letter * share;
            for words in lines(words, wide / size, font) {
                y += size * LEADING;
                // A name of hundreds of letters ends with its label.
                if y <= top + INSIDE + most {
                    line(page, words, [left + INSIDE, y - size * LEADING / 2.0], size, Hold::Start);
                }
            }
        }
    };
    grid_of(title, all.len(), grid, size, &label)
}

fn by_line((words, share): &Said, letter: f64, wide: f64, font: &Font) -> Vec<Said> {
    lines(words, wide / (letter * share), font).into_iter().map(|line| (line, *share)).collect()
}

/// How high these lines are together.
fn high(said: &[Said], letter: f64, wide: f64, font: &Font) -> f64 {
    let one = |said: &Said| by_line(said, letter, wide, font).len() as f64 * letter * said.1 * LEADING;
    said.iter().map(one).sum()
}

/// Tags of 60 by 30 mm or a little more, a name on each, with a ring where a hole is punched.
#[must_use]
pub fn tags(title: &str, names: &[&str], size: Spot, font: &Font) -> Vec<Drawing> {
    let grid = [0, 1].map(|i| ((size[i] - 2.0 * EDGE) / [60.0, 30.0][i]) as usize);
    let [wide, high] = [0, 1].map(|i| (size[i] - 2.0 * EDGE) / grid[i] as f64);
    // The hole stands at the left; the name in what is left, not against its edge.
    let hole = 12.0;
    let tag = |page: &mut Drawing, [left, top]: Spot, nth: usize| {
        let ring = (0..24).map(|i| {
            let turn = f64::from(i) * std::f64::consts::TAU / 24.0;
            [left + 7.0 + 2.0 * libm::cos(turn), top + high / 2.0 + 2.0 * libm::sin(turn)]
        });
        page.ring(Meaning::Cut, Ink::Page, ring.collect());
        let (name, room): (Phrase, f64) = (names[nth].into(), wide - hole - INSIDE);
        // On one line down to half the size, then on several, then smaller still.
        let one = (room / width(&name, font)).clamp(4.0, 8.0);
        let tall = |letter: f64| lines(&name, room / letter, font).len() as f64 * letter * LEADING <= high - 4.0;
        let letter = [one, 3.5, 3.0, 2.5].into_iter().find(|letter| *letter <= one && tall(*letter)).unwrap_or(2.5);
        let all = lines(&name, room / letter, font);
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
