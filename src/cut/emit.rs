//! From a draft in units to exact cuts: places every cut, gathers alike patterns, and gives the pieces their names.

use super::build::Draft;
use super::job::Job;
use super::layout::{Ending, Layout, Node, Pattern, Remark, Way};
use super::name::Names;
use super::piece::{Piece, Pose};
use super::place::place;
use super::sheet::{Rules, Sheet};
use super::slice::{Block, Slice};
use crate::measure::length::Length;

/// The exact layout of a draft. Its bound is the one by area; a better one may be put in its place.
#[must_use]
pub fn emit(job: &Job, draft: &Draft, pieces: &[Piece], sheets: &[Sheet], rules: &Rules) -> Layout {
    let mut runs: Vec<(i64, usize, Node, u32)> = Vec::new();
    for run in &draft.runs {
        let tree = whole(job, run.board, &run.slice);
        match runs.iter_mut().find(|r| r.1 == run.board && r.2 == tree) {
            Some(alike) => alike.3 = alike.3.saturating_add(run.copies),
            None => runs.push((run.slice.area, run.board, tree, run.copies)),
        }
    }
    // Fullest first; the sheet with the large offcut comes last.
    runs.sort_by(|a, b| (b.0, a.1, &a.2).cmp(&(a.0, b.1, &b.2)));
    let mut names = Names::new(job);
    let mut layout = Layout {
        patterns: Vec::new(),
        left_out: job.left_out.clone(),
        remarks: job.remarks.clone(),
        bound: 0,
        price_bound: None,
        work: 0,
        ending: Ending::Quick,
    };
    let mut placed = 0;
    for (area, board, tree, copies) in runs {
        placed += i128::from(area) * i128::from(copies);
        let sheet = sheets[job.boards[board].sheet].id;
        names.share_out(pieces, sheet, &tree, copies, &mut layout.patterns);
    }
    names.rest(pieces, &mut layout.left_out);
    let largest = job.boards.iter().map(|b| i128::from(b.area())).max().unwrap_or(1).max(1);
    layout.bound = u32::try_from((placed + largest - 1) / largest).unwrap_or(u32::MAX);
    for (at, pattern) in layout.patterns.iter().enumerate() {
        let Some(sheet) = sheets.iter().find(|s| s.id == pattern.sheet) else {
            continue;
        };
        if let Some(width) = thinnest(pattern, sheet, rules) {
            layout.remarks.push(Remark::ThinOffcut { pattern: at, width });
        }
    }
    layout
}

/// The cuts of one board; pieces bear their kind as their number.
#[must_use]
pub fn whole(job: &Job, board: usize, slice: &Slice) -> Node {
    Cutter::new(job, board, slice).whole()
}

/// The narrowest strip of waste that is too narrow to hold, the trimmed edges aside.
fn thinnest(pattern: &Pattern, sheet: &Sheet, rules: &Rules) -> Option<Length> {
    place(pattern, sheet)
        .into_iter()
        .filter(|part| part.piece.is_none())
        .map(|part| part.width.min(part.height))
        .filter(|width| *width < rules.least_strip && *width != rules.edge_trim)
        .min()
}

/// Sides of a part in nanometres.
type Exact = [i64; 2];

/// Edges still to be trimmed: `[axis][low, high]`.
type Edges = [[i64; 2]; 2];

/// Places the cuts of one tree. Leaves of the result bear the kind as their id.
struct Cutter<'a> {
    job: &'a Job,
    board: usize,
    slice: &'a Slice,
    need: Vec<Exact>,
}

impl<'a> Cutter<'a> {
    fn new(job: &'a Job, board: usize, slice: &'a Slice) -> Self {
        let mut need: Vec<Exact> = vec![[0, 0]; slice.parts.len()];
        for (i, part) in slice.parts.iter().enumerate().rev() {
            let axis = part.split.axis();
            need[i] = match axis {
                None => block_sides(job, part.block),
                Some(axis) => {
                    let mut sides = [0, 0];
                    for inner in inner(slice, i) {
                        sides[axis] += need[inner][axis];
                        sides[1 - axis] = sides[1 - axis].max(need[inner][1 - axis]);
                    }
                    sides
                }
            };
        }
        Self { job, board, slice, need }
    }

    fn whole(&self) -> Node {
        if self.slice.parts.is_empty() {
            return Node::Offcut;
        }
        let sheet = self.job.boards[self.board].exact;
        let trim = self.job.trim;
        let mut edges = [[trim, trim], [trim, trim]];
        // Where card is left over at the far edge, that edge needs no cut of its own.
        if let Some(axis) = self.slice.parts[0].split.axis()
            && self.need[0][axis] + 2 * trim < sheet[axis]
        {
            edges[axis][1] = 0;
        }
        self.part(0, sheet, edges)
    }

    fn reaches(&self, cut: i64) -> bool {
        cut <= self.job.longest_exact
    }

    /// Trims the next edge that is within reach, or gives back the part as it is.
    fn trimmed(&self, sides: Exact, edges: Edges, then: &dyn Fn(Exact, Edges) -> Node) -> Option<Node> {
        for axis in 0..2 {
            if !self.reaches(sides[1 - axis]) {
                continue;
            }
            for end in 0..2 {
                let width = edges[axis][end];
                if width > 0 {
                    let (mut sides, mut edges) = (sides, edges);
                    let whole = sides[axis];
                    sides[axis] -= width;
                    edges[axis][end] = 0;
                    let rest = then(sides, edges);
                    return Some(if end == 0 {
                        cut(axis, width, Node::Offcut, rest)
                    } else {
                        cut(axis, whole - width, rest, Node::Offcut)
                    });
                }
            }
        }
        None
    }

    fn part(&self, at: usize, sides: Exact, edges: Edges) -> Node {
        let part = &self.slice.parts[at];
        let Some(axis) = part.split.axis() else {
            return self.block(part.block, sides, edges);
        };
        let other = 1 - axis;
        let need = self.need[at];
        // Only the whole sheet can be higher than its row: take the strip above off first if it is the larger offcut
        // (or if the row's own cuts would be too long otherwise).
        let above = sides[other] - edges[other][0] - need[other];
        let beside = sides[axis] - edges[axis][0] - need[axis];
        let first = i128::from(above) * i128::from(sides[axis]) >= i128::from(beside) * i128::from(sides[other]);
        if above > edges[other][1] && self.reaches(sides[axis]) && (first || !self.reaches(sides[other])) {
            let (mut sides, mut edges) = (sides, edges);
            sides[other] = edges[other][0] + need[other];
            edges[other][1] = 0;
            return cut(other, sides[other], self.part(at, sides, edges), Node::Offcut);
        }
        if let Some(node) = self.trimmed(sides, edges, &|s, e| self.part(at, s, e)) {
            return node;
        }
        let mut inside: Vec<usize> = inner(self.slice, at).collect();
        inside.sort_by_key(|i| {
            let block = self.slice.parts[*i].block;
            (std::cmp::Reverse(self.need[*i][axis]), std::cmp::Reverse(self.need[*i][other]), block.kind, block.grid)
        });
        let lengths: Vec<i64> = inside.iter().map(|i| self.need[*i][axis]).collect();
        self.row(axis, sides, edges, &lengths, &|nth, s, e| self.part(inside[nth], s, e))
    }

    /// Cuts a row of parts of these lengths off, one after the other; what is left over comes last.
    fn row(
        &self,
        axis: usize,
        sides: Exact,
        edges: Edges,
        lengths: &[i64],
        part: &dyn Fn(usize, Exact, Edges) -> Node,
    ) -> Node {
        let spare = sides[axis] - edges[axis][0] - edges[axis][1] - lengths.iter().sum::<i64>();
        let mut tail = (spare > 0).then_some(Node::Offcut);
        for (nth, length) in lengths.iter().enumerate().rev() {
            let mut own = edges;
            own[axis] = [0, 0];
            if nth == 0 {
                own[axis][0] = edges[axis][0];
            }
            if nth + 1 == lengths.len() && spare <= 0 {
                own[axis][1] = edges[axis][1];
            }
            let mut size = sides;
            size[axis] = length + own[axis][0] + own[axis][1];
            let node = part(nth, size, own);
            tail = Some(match tail {
                Some(rest) => cut(axis, size[axis], node, rest),
                None => node,
            });
        }
        tail.unwrap_or(Node::Offcut)
    }

    fn block(&self, block: Block, sides: Exact, edges: Edges) -> Node {
        let need = block_sides(self.job, block);
        // The larger offcut first; its own far edge goes with it.
        let spare = |a: usize| sides[a] - edges[a][0] - need[a];
        let offcut = |a: usize| i128::from(spare(a)) * i128::from(sides[1 - a]);
        let mut axes = [0, 1];
        axes.sort_by_key(|a| std::cmp::Reverse(offcut(*a)));
        for axis in axes {
            if spare(axis) > edges[axis][1] && self.reaches(sides[1 - axis]) {
                let (mut sides, mut edges) = (sides, edges);
                sides[axis] = edges[axis][0] + need[axis];
                edges[axis][1] = 0;
                return cut(axis, sides[axis], self.block(block, sides, edges), Node::Offcut);
            }
        }
        if let Some(node) = self.trimmed(sides, edges, &|s, e| self.block(block, s, e)) {
            return node;
        }
        let pose = if block.turned { Pose::Turned } else { Pose::Straight };
        let one = block_sides(self.job, Block { grid: [1, 1], ..block });
        let mut axes: Vec<usize> = (0..2).filter(|a| block.grid[*a] > 1).collect();
        // Fewer long cuts first, if they are within reach.
        axes.sort_by_key(|a| (!self.reaches(sides[1 - *a]), block.grid[*a]));
        let Some(&axis) = axes.first() else {
            return Node::Piece { id: block.kind, pose };
        };
        let lengths = vec![one[axis]; usize::from(block.grid[axis])];
        let mut grid = block.grid;
        grid[axis] = 1;
        self.row(axis, sides, edges, &lengths, &|_, s, e| self.block(Block { grid, ..block }, s, e))
    }
}

fn block_sides(job: &Job, block: Block) -> Exact {
    let [w, h] = job.kinds[block.kind as usize].exact;
    let [w, h] = if block.turned { [h, w] } else { [w, h] };
    [w * i64::from(block.grid[0]), h * i64::from(block.grid[1])]
}

/// The parts that a node is split into.
fn inner(slice: &Slice, at: usize) -> impl Iterator<Item = usize> + '_ {
    let end = at + slice.parts[at].span as usize;
    let mut next = at + 1;
    std::iter::from_fn(move || {
        (next < end).then(|| {
            let now = next;
            next += slice.parts[now].span as usize;
            now
        })
    })
}

fn cut(axis: usize, at: i64, low: Node, high: Node) -> Node {
    let way = if axis == 0 { Way::Upright } else { Way::Level };
    Node::Cut { way, at: Length::from_nm(at), low: Box::new(low), high: Box::new(high) }
}
