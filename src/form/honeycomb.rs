//! Sleeve round six-sided boxes that stand side by side like cells of a honeycomb: two to seven of them.
//!
//! The line round them has the six sides of a box and, parallel to where the outer middles are joined, sides as long as
//! two neighbours are apart (a convex shape drawn round others: sides of both, sorted by their way). Sides of one kind
//! are all alike, so the line closes whatever mark of the ruler they are moved up to. A hexagon of side a is √3 a from
//! side to side.

use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Face, Frame, PanelId};
use crate::project::finding::{Weight, What};

use super::input::{Default, Input};
use super::joined::{CLEARANCE, length, remark_loose};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::rows::{One, each};
use super::tube::ring_tab;
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Assembly, Footprint, From, Meet, Offset, Part, Root, Seat, Size};

/// The form.
pub const FORM: Form =
    Form { number: 30, key: "honeycomb", name: "Honeycomb sleeve", holds: Holds::Boxes, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(1, "height", "Height", "Of the sleeve round the boxes", (10, 400), Default::Worked("half the lowest box")),
    length(2, "clearance", "Clearance", "In total from side to side of each box", (1, 20), Default::Is(CLEARANCE)),
    ring_tab(3),
];

/// The most boxes: one with six round it.
const MOST: usize = 7;
/// How far on the middle of a box is from that of the first, in halves of √3/2 and halves of a box's depth: to the right
/// and to the back. The first stands farthest to the front.
type Cell = (i64, i64);
const CELLS: [&[Cell]; MOST + 1] = [
    &[],
    &[],
    &[(0, 0), (0, 2)],
    &[(0, 0), (0, 2), (1, 1)],
    &[(0, 0), (0, 2), (1, 1), (1, 3)],
    &[(0, 0), (0, 2), (0, 4), (1, 1), (1, 3)],
    &[(0, 0), (0, 2), (0, 4), (1, 1), (1, 3), (1, 5)],
    &[(0, 0), (0, 2), (0, 4), (-1, 1), (-1, 3), (1, 1), (1, 3)],
];

const NAMES: [&str; 12] = [
    "front", "side 2", "side 3", "side 4", "side 5", "side 6", "side 7", "side 8", "side 9", "side 10", "side 11",
    "side 12",
];

fn shape(mut ask: Ask) -> Shaped {
    let (cut, t) = (ask.setting.cut, ask.setting.thickness);
    let boxes = each(&ask);
    let contents = &ask.setting.contents;
    let (Some(deep), Some(low), Some(high)) = (
        boxes.iter().map(|b| b.size.depth).max(),
        boxes.iter().map(|b| b.size.height).min(),
        boxes.iter().map(|b| b.size.height).max(),
    ) else {
        ask.remark(None, Weight::Stop, What::NoBoxes);
        return ask.shaped;
    };
    if contents.iter().any(|c| c.footprint != Footprint::Sides(6)) {
        ask.remark(None, Weight::Stop, What::NotSixSided);
    }
    let count = boxes.len();
    if !(2..=MOST).contains(&count) {
        let is = u32::try_from(count).unwrap_or(u32::MAX);
        ask.remark(None, Weight::Stop, What::BoxesOutside { is, most: MOST as u32 });
    }
    let height = ask.length("height", cut.up(low.half().max(Length::mm(10))));
    if height > high {
        ask.stop("height", What::LengthOutside { is: height, least: Length::mm(10), most: high });
    }
    let clearance = ask.clearance(Length::ZERO);
    let comb = Comb::round(deep, clearance, t, &ask, count.min(MOST));
    let tab = ask.length("tab", Length::ZERO);
    let most = cut.down(comb.side.min(height).scaled(2, 3));
    if tab > most {
        ask.stop("tab", What::TabTooWide { most });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    remark_loose(&mut ask, Length::round_mm(comb.across()) - t * 3 - deep, clearance);
    let part = comb.part(height, tab);
    let finished = comb.size(height, Length::ZERO);
    let outside = comb.size(height, t);
    let seats = comb.seats(&boxes, height, clearance);
    ask.answer(Assembly { seats, ..Assembly::alone(part, finished, Size::default(), outside) })
}

/// The line round the boxes, on the scores.
struct Comb {
    /// The side of a cell.
    side: Length,
    /// From middle to middle of neighbours.
    apart: Length,
    cells: &'static [Cell],
}

/// One side of it: its way in degrees, from the right to the back, and its length.
type Edge = (i64, Length);

impl Comb {
    /// Round boxes so deep. The scores lie half a thickness outside the inner faces, and a tab inside one of them.
    fn round(deep: Length, clearance: Length, t: Length, ask: &Ask, count: usize) -> Self {
        let cut = ask.setting.cut;
        let side = cut.up(Length::round_mm((deep + clearance + t * 3).as_mm() / 3_f64.sqrt()));
        Self { side, apart: cut.up(deep), cells: CELLS.get(count).copied().unwrap_or_default() }
    }

    /// From side to side of a cell, in mm.
    fn across(&self) -> f64 {
        self.side.as_mm() * 3_f64.sqrt()
    }

    /// Where a cell's middle is, from that of the first.
    fn middle(&self, (right, back): Cell) -> [f64; 2] {
        let half = self.apart.as_mm() / 2.0;
        [right as f64 * half * 3_f64.sqrt(), back as f64 * half]
    }

    /// The sides in the order in which they go round, the front first.
    fn edges(&self) -> Vec<Edge> {
        let mut edges: Vec<Edge> = (0..6).map(|k| (60 * k, self.side)).collect();
        // Between outer middles: round them, each the one that all others lie to the left of.
        let (first, mut at) = ((0, 0), (0, 0));
        let left = |a: Cell, b: Cell, c: Cell| (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0);
        let long = |a: Cell, b: Cell| 3 * (b.0 - a.0) * (b.0 - a.0) + (b.1 - a.1) * (b.1 - a.1);
        for _ in 0..self.cells.len() {
            let others = || self.cells.iter().copied().filter(move |c| *c != at);
            let next = others()
                .find(|&b| others().all(|c| left(at, b, c) > 0 || (left(at, b, c) == 0 && long(at, c) <= long(at, b))));
            let Some(next) = next else { break };
            let way = match (next.0 - at.0, next.1 - at.1) {
                (0, back) => {
                    if back > 0 {
                        90
                    } else {
                        270
                    }
                }
                (right, back) => match (right > 0, back > 0) {
                    (true, true) => 30,
                    (false, true) => 150,
                    (false, false) => 210,
                    (true, false) => 330,
                },
            };
            // Neighbours are two half depths apart.
            let steps = libm::sqrt(long(at, next) as f64 / 4.0).round() as i64;
            edges.push((way, self.apart * steps));
            at = next;
            if at == first {
                break;
            }
        }
        edges.sort_by_key(|e| e.0);
        edges
    }

    /// The corners, from the front's left one.
    fn corners(&self) -> Vec<[f64; 2]> {
        let mut at = [0.0, 0.0];
        let step = |(way, long): Edge| {
            let here = at;
            let angle = (way as f64).to_radians();
            at = [at[0] + long.as_mm() * libm::cos(angle), at[1] + long.as_mm() * libm::sin(angle)];
            here
        };
        self.edges().into_iter().map(step).collect()
    }

    /// What it takes up with walls of thickness `t` on the scores.
    fn size(&self, height: Length, t: Length) -> Size {
        let (corners, edges) = (self.corners(), self.edges());
        let mut far = [f64::MAX, f64::MIN, f64::MAX, f64::MIN];
        for (i, (way, _)) in edges.iter().enumerate() {
            let angle = (*way as f64).to_radians();
            let thick = [libm::sin(angle).abs(), libm::cos(angle).abs()].map(|w| w * t.as_mm() / 2.0);
            for c in [corners[i], corners[(i + 1) % corners.len()]] {
                far[0] = far[0].min(c[0] - thick[0]);
                far[1] = far[1].max(c[0] + thick[0]);
                far[2] = far[2].min(c[1] - thick[1]);
                far[3] = far[3].max(c[1] + thick[1]);
            }
        }
        Size { width: Length::round_mm(far[1] - far[0]), depth: Length::round_mm(far[3] - far[2]), height }
    }

    /// Each box in the middle of its cell, the sleeve round the middle of its height.
    fn seats(&self, boxes: &[One], height: Length, play: Length) -> Vec<Seat> {
        let first = [self.side.as_mm() / 2.0, self.across() / 2.0];
        let seat = |(one, &cell): (&One, &Cell)| {
            let [right, back] = self.middle(cell);
            let at = Offset {
                right: Length::round_mm(first[0] + right) - one.size.width.half(),
                back: Length::round_mm(first[1] + back) - one.size.depth.half(),
                up: (height - one.size.height).half(),
            };
            Seat { footprint: Footprint::Sides(6), ..Seat::of((one.kind, one.size), at, play, From::Above) }
        };
        boxes.iter().zip(self.cells).map(seat).collect()
    }

    fn part(&self, height: Length, tab: Length) -> Part {
        let edges = self.edges();
        let round: Length = edges.iter().map(|e| e.1).sum();
        let mut c = Cells::new(&[round + tab], &[height]);
        let (p, n) = (Point::new, edges.len());
        let turn = |from: usize, to: usize| Angle::degrees((edges[to].0 - edges[from].0).rem_euclid(360) as i16);
        // The last side lies left of the front and closes the ring over the tab.
        let closing = edges[n - 1].1;
        let mut at = closing;
        let mut walls: Vec<PanelId> = Vec::new();
        for (i, &(_, long)) in edges.iter().enumerate().take(n - 1) {
            let end = at + long;
            let quad = [p(at, height), p(at, Length::ZERO), p(end, Length::ZERO), p(end, height)];
            let wall = match walls.last() {
                // As it stands, from its lower right corner on.
                None => c.aslant((0..4).map(|k| quad[(k + 3) % 4]).collect(), Frame::FOUR, NAMES[i], Duty::Wall),
                Some(&near) => c.hung_aslant(near, turn(i - 1, i), (quad.to_vec(), Frame::FOUR), NAMES[i], Duty::Wall),
            };
            c.mat(wall);
            walls.push(wall);
            at = end;
        }
        let zero = Length::ZERO;
        let quad = vec![p(closing, zero), p(closing, height), p(zero, height), p(zero, zero)];
        let (front, last) = (walls[0], walls[n - 2]);
        let closes = c.hung_aslant(front, turn(n - 1, 0), (quad, Frame::FOUR), NAMES[n - 1], Duty::Wall);
        c.mat(closes);
        let low = tab.half().min(height.scaled(1, 4));
        let corners = vec![p(at, height), p(at, zero), p(at + tab, low), p(at + tab, height - low)];
        let tab = c.hung_aslant(last, turn(n - 2, n - 1), (corners, Frame::FOUR), "glue tab", Duty::Tab);
        c.level(tab, -2);
        c.glue(tab, Face::Outside, &[closes]);
        let net = c.finish();
        let moves = vec![
            Move::even(&net, MoveName::Tab, &[tab]),
            Move::even(&net, MoveName::Walls, &walls[1..]),
            Move::even(&net, MoveName::Seam, &[closes]),
        ];
        let meets = vec![Meet { edge: (closes, Side::Top), along: (last, Side::Top), gap: Length::ZERO }];
        Part::alone("sleeve", net, Root::Front, meets, moves)
    }
}
