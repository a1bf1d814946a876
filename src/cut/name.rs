//! Gives the pieces of a pattern their names, for kinds gather pieces of one size under several names.

use super::job::Job;
use super::layout::{LeftOut, Node, Pattern, Why};
use super::piece::{Piece, Pose};

/// Hands out the names of pieces of a kind.
#[derive(Clone, Debug)]
pub struct Names {
    /// For each kind: index of the piece, how many are still to be named, whether its sides were swapped.
    left: Vec<Vec<(usize, u32, bool)>>,
}

impl Names {
    /// All names are still to be given.
    #[must_use]
    pub fn new(job: &Job) -> Self {
        Self { left: job.kinds.iter().map(|k| k.pieces.clone()).collect() }
    }

    /// Names the pieces of a pattern whose leaves bear kinds; sheets on which other names fall due are a pattern of
    /// their own.
    pub fn share_out(&mut self, pieces: &[Piece], sheet: u32, tree: &Node, mut copies: u32, into: &mut Vec<Pattern>) {
        while copies > 0 {
            let before = self.left.clone();
            let mut named = tree.clone();
            self.name(pieces, &mut named);
            let mut lasts = copies;
            for (was, is) in before.iter().flatten().zip(self.left.iter().flatten()) {
                if was.1 > is.1 {
                    lasts = lasts.min(was.1 / (was.1 - is.1));
                }
            }
            let lasts = lasts.max(1);
            for (was, is) in before.iter().flatten().zip(self.left.iter_mut().flatten()) {
                is.1 = was.1.saturating_sub((was.1 - is.1).saturating_mul(lasts));
            }
            copies -= lasts;
            into.push(Pattern { sheet, copies: lasts, tree: named });
        }
    }

    fn name(&mut self, pieces: &[Piece], tree: &mut Node) {
        let mut open = vec![tree];
        while let Some(node) = open.pop() {
            match node {
                Node::Cut { low, high, .. } => open.extend([&mut **high, &mut **low]),
                Node::Piece { id, pose } => {
                    let Some(next) = self.left[*id as usize].iter_mut().find(|p| p.1 > 0) else {
                        continue;
                    };
                    next.1 -= 1;
                    *id = pieces[next.0].id;
                    if next.2 {
                        *pose = if *pose == Pose::Straight { Pose::Turned } else { Pose::Straight };
                    }
                }
                Node::Offcut => {}
            }
        }
    }

    /// Names that were not given: their pieces are left out.
    pub fn rest(&self, pieces: &[Piece], left_out: &mut Vec<LeftOut>) {
        for (index, count, _) in self.left.iter().flatten() {
            if *count > 0 {
                left_out.push(LeftOut { piece: pieces[*index].id, count: *count, why: Why::StockRanOut });
            }
        }
        left_out.sort_by_key(|out| out.piece);
    }
}
