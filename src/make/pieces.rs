//! The piece list: every rectangle that is cut from card, for all sets together.

use crate::measure::length::Length;
use crate::net::flat::{PanelId, Run};
use crate::project::finding::Place;

use super::extras::On;
use super::part::Planned;

/// What a piece becomes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Becomes {
    /// The blank of a part, by its place in the assembly.
    Blank(usize),
    /// One of the two pieces that a part is joined from: the part, and which.
    Half(usize, usize),
    /// Mats of one size, of these panels of the part at this place in the assembly.
    Mat(usize, Vec<PanelId>),
    /// A strip or piece besides, by its place in the assembly's trims.
    Trim(usize),
    /// Something that is added, by its place among these, and on which faces.
    Extra(usize, Vec<On>),
}

/// Alike pieces of card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Its place in the list, from which its letter is made.
    pub id: u32,
    /// The box or holder it belongs to.
    pub place: Place,
    /// What it becomes.
    pub becomes: Becomes,
    /// The card it is cut from.
    pub card: u16,
    /// One side.
    pub width: Length,
    /// The other side.
    pub height: Length,
    /// The way its main scores run, its width lying across.
    pub scores: Option<Run>,
    /// How many in one set.
    pub each: u32,
    /// How many for all sets.
    pub count: u64,
}

impl Piece {
    /// Its letter on drawings: A to Z, then AA, AB and so on.
    #[must_use]
    pub fn letter(&self) -> String {
        let mut n = u64::from(self.id) + 1;
        let mut letters = Vec::new();
        while n > 0 {
            n -= 1;
            letters.push(char::from(b'A' + (n % 26) as u8));
            n /= 26;
        }
        letters.into_iter().rev().collect()
    }
}

/// The pieces of `parts` for `sets` sets: blanks, then mats, then trims of each part.
#[must_use]
pub fn pieces(parts: &[&Planned], sets: u32) -> Vec<Piece> {
    let mut list: Vec<Piece> = Vec::new();
    let mut add = |part: &Planned, becomes, card, (width, height), each: u32, scores| {
        let id = u32::try_from(list.len()).unwrap_or(u32::MAX);
        list.push(Piece {
            id,
            place: part.place,
            becomes,
            card,
            width,
            height,
            scores,
            each,
            count: u64::from(each) * u64::from(sets),
        });
    };
    for part in parts {
        let Some(assembly) = &part.assembly else {
            continue;
        };
        for (i, p) in assembly.parts.iter().enumerate() {
            let each = part.count.saturating_mul(part.alike(i));
            if let Some(joined) = part.joined(i) {
                for (nth, net) in joined.joint.halves.iter().enumerate() {
                    let size = (net.blank.width(), net.blank.height());
                    add(part, Becomes::Half(i, nth), part.card, size, each, net.main_scores());
                }
                continue;
            }
            let size = (p.net.blank.width(), p.net.blank.height());
            add(part, Becomes::Blank(i), part.card, size, each, p.net.main_scores());
        }
        if let Some(card) = part.mat_card {
            for i in 0..assembly.parts.len() {
                for (size, panels) in alike_mats(part, i) {
                    let each = part.count.saturating_mul(part.alike(i));
                    let each = each.saturating_mul(u32::try_from(panels.len()).unwrap_or(u32::MAX));
                    add(part, Becomes::Mat(i, panels), card, size, each, None);
                }
            }
        }
        for (i, made) in part.extras.iter().enumerate() {
            let on = made.on();
            let alike = on.first().map_or(1, |on| part.alike(on.0));
            for (card, [w, h], count) in made.pieces() {
                let each = part.count.saturating_mul(alike).saturating_mul(count);
                add(part, Becomes::Extra(i, on.clone()), card, (w, h), each, None);
            }
        }
        for (i, trim) in assembly.trims.iter().enumerate() {
            let card = part.mat_card.unwrap_or(part.card);
            add(part, Becomes::Trim(i), card, (trim.length, trim.width), part.count * trim.count, None);
        }
    }
    list
}

/// Mats of one part by size, either way round, in the order in which their first panel stands in the net.
fn alike_mats(part: &Planned, index: usize) -> Vec<((Length, Length), Vec<PanelId>)> {
    let mut sizes: Vec<((Length, Length), Vec<PanelId>)> = Vec::new();
    for mat in part.mats_on(index) {
        let (w, h) = (mat.rect.width(), mat.rect.height());
        match sizes.iter_mut().find(|(s, _)| *s == (w, h) || *s == (h, w)) {
            Some((_, panels)) => panels.push(mat.panel),
            None => sizes.push(((w, h), vec![mat.panel])),
        }
    }
    sizes
}
