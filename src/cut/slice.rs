//! `Slice`: a slicing tree whose cuts are not placed yet: who stands beside whom, what that needs, and the room there is.

use super::job::{Job, Sides};
use super::nest::Nest;

/// Which way the parts of a part are laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Split {
    /// Beside each other along the width.
    Across,
    /// On each other along the height.
    Up,
    /// Not split: pieces of one kind, one or a grid of them.
    Leaf,
}

impl Split {
    /// The axis along which parts follow each other: 0 the width, 1 the height; none for a leaf.
    #[must_use]
    pub const fn axis(self) -> Option<usize> {
        match self {
            Self::Across => Some(0),
            Self::Up => Some(1),
            Self::Leaf => None,
        }
    }

    /// The split along an axis.
    #[must_use]
    pub const fn along(axis: usize) -> Self {
        if axis == 0 { Self::Across } else { Self::Up }
    }
}

/// A grid of pieces of one kind, mostly a single one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Block {
    /// Kind of the job.
    pub kind: u32,
    /// Whether they lie turned.
    pub turned: bool,
    /// How many along the width and along the height.
    pub grid: [u16; 2],
}

impl Block {
    /// One piece.
    #[must_use]
    pub const fn one(kind: u32, turned: bool) -> Self {
        Self { kind, turned, grid: [1, 1] }
    }

    /// How many pieces.
    #[must_use]
    pub fn count(&self) -> u32 {
        u32::from(self.grid[0]) * u32::from(self.grid[1])
    }

    /// Sides of the whole grid.
    #[must_use]
    pub fn sides(&self, job: &Job) -> Sides {
        let [w, h] = job.sides(self.kind as usize, self.turned);
        [w * i32::from(self.grid[0]), h * i32::from(self.grid[1])]
    }
}

/// A node of the tree.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// How it is split.
    pub split: Split,
    /// How many nodes it has, itself included. They follow it in the list.
    pub span: u32,
    /// Index of the node that it is a part of; its own for the root.
    pub parent: u32,
    /// What a leaf holds.
    pub block: Block,
    /// The least sides that hold everything in it.
    pub need: Sides,
    /// The largest sides that it could be given while all the others keep what they need.
    pub room: Sides,
}

/// The tree of one sheet, its nodes in preorder. Splits alternate along every branch and have two parts or more.
#[derive(Clone, Debug, Default)]
pub struct Slice {
    /// The nodes.
    pub parts: Vec<Part>,
    /// Area of the pieces in it.
    pub area: i64,
}

/// Where a block can go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    /// Beside this node (any value in an empty tree).
    pub part: u32,
    /// Along this axis.
    pub axis: u8,
}

impl Slice {
    /// Takes everything out.
    pub fn clear(&mut self) {
        self.parts.clear();
        self.area = 0;
    }

    /// Puts a block beside a node. The room must have been checked (`Slice::offers`).
    pub fn insert(&mut self, job: &Job, board: usize, spot: Spot, block: Block) {
        let leaf = Part { split: Split::Leaf, span: 1, parent: 0, block, need: block.sides(job), room: [0, 0] };
        self.area += job.kinds[block.kind as usize].area() * i64::from(block.count());
        let at = spot.part as usize;
        if self.parts.is_empty() {
            self.parts.push(leaf);
        } else {
            let old = self.parts[at];
            let added = if old.split.axis() == Some(spot.axis as usize) {
                // One more part at the end of a row that runs this way already.
                self.parts.insert(at + old.span as usize, leaf);
                1
            } else {
                let wrap = Part { split: Split::along(spot.axis as usize), ..old };
                self.parts.insert(at, wrap);
                self.parts.insert(at + 1 + old.span as usize, leaf);
                2
            };
            self.parts[at].span = old.span + added;
            // The nodes above have not moved.
            let mut above = at;
            while above != 0 {
                above = old_parent(&self.parts, above);
                self.parts[above].span += added;
            }
        }
        self.measure(job, board);
    }

    /// Takes a node out, adding what its leaves held to `freed`.
    pub fn remove(&mut self, job: &Job, board: usize, at: usize, freed: &mut Vec<Block>) {
        let part = self.parts[at];
        for inside in &self.parts[at..at + part.span as usize] {
            if inside.split == Split::Leaf {
                freed.push(inside.block);
                self.area -= job.kinds[inside.block.kind as usize].area() * i64::from(inside.block.count());
            }
        }
        let mut above = at;
        while above != 0 {
            above = self.parts[above].parent as usize;
            self.parts[above].span -= part.span;
        }
        self.parts.drain(at..at + part.span as usize);
        if at != 0 {
            self.tidy(part.parent as usize);
        }
        if !self.parts.is_empty() {
            self.measure(job, board);
        }
    }

    /// Mends a split that has been left with one part: the part takes its place, and if that runs the same way as the
    /// split above, their parts become one row.
    fn tidy(&mut self, at: usize) {
        let split = self.parts[at];
        if self.parts[at + 1].span + 1 != split.span {
            return;
        }
        let only = self.parts[at + 1];
        let joins = at != 0 && only.split != Split::Leaf && { self.parts[split.parent as usize].split == only.split };
        let gone = if joins { 2 } else { 1 };
        let mut above = at;
        while above != 0 {
            above = self.parts[above].parent as usize;
            self.parts[above].span -= gone;
        }
        self.parts.drain(at..at + gone as usize);
    }

    /// Finds parents, needs and rooms anew from kinds, splits and spans.
    pub fn measure(&mut self, job: &Job, board: usize) {
        let parts = &mut self.parts;
        let mut parent = 0;
        for i in 0..parts.len() {
            while i >= parent + parts[parent].span as usize {
                parent = parts[parent].parent as usize;
            }
            parts[i].parent = parent as u32;
            if parts[i].split == Split::Leaf {
                parts[i].need = parts[i].block.sides(job);
            } else {
                parts[i].need = [0, 0];
                parent = i;
            }
        }
        for i in (1..parts.len()).rev() {
            let Part { need, parent, .. } = parts[i];
            let above = &mut parts[parent as usize];
            if above.split == Split::Across {
                above.need = [above.need[0] + need[0], above.need[1].max(need[1])];
            } else {
                above.need = [above.need[0].max(need[0]), above.need[1] + need[1]];
            }
        }
        for i in 0..parts.len() {
            let above = parts[parts[i].parent as usize];
            let part = &mut parts[i];
            part.room = if i == 0 {
                job.boards[board].sides
            } else if above.split == Split::Across {
                [part.need[0] + above.room[0] - above.need[0], above.room[1]]
            } else {
                [above.room[0], part.need[1] + above.room[1] - above.need[1]]
            };
            // The cuts between the parts of a split are as long as its other side.
            match part.split {
                Split::Across => part.room[1] = part.room[1].min(job.longest),
                Split::Up => part.room[0] = part.room[0].min(job.longest),
                Split::Leaf => {}
            }
        }
    }

    /// Calls `take` with every spot where a block with these sides can go, and the node there.
    pub fn offers(&self, longest: i32, sides: Sides, mut take: impl FnMut(Spot, &Part)) {
        for (i, part) in self.parts.iter().enumerate() {
            let above = &self.parts[part.parent as usize];
            for axis in 0..2 {
                // Beside a part of a row, along the row, is the row's own offer.
                if i != 0 && above.split.axis() == Some(axis) {
                    continue;
                }
                let other = 1 - axis;
                let wide = part.need[other].max(sides[other]);
                if part.need[axis] + sides[axis] <= part.room[axis] && wide <= part.room[other].min(longest) {
                    take(Spot { part: i as u32, axis: axis as u8 }, part);
                }
            }
        }
    }

    /// Splits grids, so that every leaf is one piece.
    pub fn single(&mut self, job: &Job, board: usize) {
        if self.parts.is_empty() || self.blocks().all(|b| b.grid == [1, 1]) {
            return;
        }
        let mut parts = Vec::new();
        self.nest(0).single().flatten(&mut parts);
        self.parts = parts;
        self.measure(job, board);
    }

    /// The tree of nested rows; none if it is empty, or too large for the board or for the trimmer.
    #[must_use]
    pub fn from_nest(job: &Job, board: usize, nest: Nest) -> Option<Self> {
        let mut slice = Self::default();
        nest.tidy()?.flatten(&mut slice.parts);
        slice.measure(job, board);
        slice.area = slice.blocks().map(|b| job.kinds[b.kind as usize].area() * i64::from(b.count())).sum();
        let holds = |part: &Part| part.need[0] <= part.room[0] && part.need[1] <= part.room[1];
        slice.parts.iter().all(holds).then_some(slice)
    }

    /// The same tree with at most so many pieces of each kind, which are taken off `most`; grids become single pieces.
    /// None if nothing is left.
    #[must_use]
    pub fn keep(&self, job: &Job, board: usize, most: &mut [u32]) -> Option<Self> {
        if self.parts.is_empty() {
            return None;
        }
        Self::from_nest(job, board, self.nest(0).single().keep(most)?)
    }

    /// The tree below a node as nested rows.
    fn nest(&self, at: usize) -> Nest {
        let part = self.parts[at];
        let Some(axis) = part.split.axis() else {
            return Nest::Leaf(part.block);
        };
        let mut inside = Vec::new();
        let mut next = at + 1;
        while next < at + part.span as usize {
            inside.push(self.nest(next));
            next += self.parts[next].span as usize;
        }
        Nest::Row(axis, inside)
    }

    /// The leaves' blocks.
    pub fn blocks(&self) -> impl Iterator<Item = Block> + '_ {
        self.parts.iter().filter(|p| p.split == Split::Leaf).map(|p| p.block)
    }
}

/// Parent of a node as last measured; nodes above an insertion keep their places.
fn old_parent(parts: &[Part], at: usize) -> usize {
    parts[at].parent as usize
}
