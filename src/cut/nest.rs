//! `Nest`: a slicing tree as nested rows, for building one and for changes that a list of nodes makes hard.

use super::slice::{Block, Part, Split};

/// A tree as nested rows, for building one and for changes that the list of nodes makes hard.
pub enum Nest {
    /// Pieces of one kind.
    Leaf(Block),
    /// Parts along an axis; one part or none is allowed here.
    Row(usize, Vec<Nest>),
}

impl Nest {
    /// Rows of one part become that part, rows of none vanish.
    #[must_use]
    pub fn tidy(self) -> Option<Self> {
        match self {
            Self::Leaf(_) => Some(self),
            Self::Row(axis, inside) => {
                let mut inside: Vec<Self> = inside.into_iter().filter_map(Self::tidy).collect();
                if inside.len() > 1 { Some(Self::Row(axis, inside)) } else { inside.pop() }
            }
        }
    }

    /// At most so many pieces of each kind, which are taken off `most`; leaves must be single.
    #[must_use]
    pub fn keep(self, most: &mut [u32]) -> Option<Self> {
        match self {
            Self::Row(axis, inside) => Some(Self::Row(axis, inside.into_iter().filter_map(|n| n.keep(most)).collect())),
            Self::Leaf(block) => {
                let left = &mut most[block.kind as usize];
                if *left == 0 {
                    return None;
                }
                *left -= 1;
                Some(self)
            }
        }
    }

    /// Grids become rows of single pieces.
    #[must_use]
    pub fn single(self) -> Self {
        match self {
            Self::Row(axis, inside) => Self::Row(axis, inside.into_iter().map(Self::single).collect()),
            Self::Leaf(block) => {
                let repeat = |axis: usize, n: u16, what: &dyn Fn() -> Self| {
                    if n == 1 { what() } else { Self::Row(axis, (0..n).map(|_| what()).collect()) }
                };
                let one = || Self::Leaf(Block::one(block.kind, block.turned));
                repeat(0, block.grid[0], &|| repeat(1, block.grid[1], &one))
            }
        }
    }

    /// Writes the nodes in preorder; a row within a row of the same axis becomes part of it. Returns how many.
    pub fn flatten(self, into: &mut Vec<Part>) -> u32 {
        let at = into.len();
        let blank =
            Part { split: Split::Leaf, span: 1, parent: 0, block: Block::one(0, false), need: [0, 0], room: [0, 0] };
        match self {
            Self::Leaf(block) => into.push(Part { block, ..blank }),
            Self::Row(axis, inside) => {
                into.push(Part { split: Split::along(axis), ..blank });
                let mut open: Vec<Self> = inside.into_iter().rev().collect();
                while let Some(next) = open.pop() {
                    match next {
                        Self::Row(same, more) if same == axis => {
                            open.extend(more.into_iter().rev());
                        }
                        other => {
                            other.flatten(into);
                        }
                    }
                }
                into[at].span = (into.len() - at) as u32;
            }
        }
        into[at].span
    }
}
