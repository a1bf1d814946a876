//! Carton with a gable roof, one piece: a tube with a glued base, two roof panels that come together in a ridge, and
//! gussets that fold in between them. A ribbon through two holes in the ridge closes it.
//!
//! The roof. Over a depth D a roof panel of slope S > D/2 rises by √(S² − (D/2)²) (Pythagoras); the gusset's point, in
//! the middle of the side at the ridge's score, comes to the height of the ridge, D/2 in from the side. Flatter than
//! 25°, S = 11/20 D, gusset and pleat lie on each other before they are home; steeper than S = D, the layers at the
//! ridge push each other apart: both shown by the proof in card of 0.45 mm.

use crate::allow::Layers;
use crate::measure::angle::Angle;
use crate::measure::length::Length;
use crate::measure::point::Point;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::Side;
use crate::net::flat::{Duty, Frame, PanelId};
use crate::project::finding::What;

use super::input::{Default, Input};
use super::joined::{length, size_choice, sized, sized_for};
use super::registry::{Form, Holds};
use super::resolve::{Ask, Shaped};
use super::tube::{Tube, columns, ring_tab, walls};
use super::tuck_box::base;
use crate::assembly::moves::{Gives, Move, MoveName};
use crate::assembly::parts::{Assembly, Meet, Part, Root, Size};

/// The form.
pub const FORM: Form =
    Form { number: 27, key: "carton", name: "Carton with a gable roof", holds: Holds::Gifts, inputs: INPUTS, shape };

const INPUTS: &[Input] = &[
    length(
        1,
        "width",
        "Width",
        "Along the ridge, at least the depth",
        (30, 300),
        Default::Is(Native::lengths(3, 1, 750)),
    ),
    length(2, "depth", "Depth", "Front to back, across the ridge", (30, 250), Default::Is(Native::lengths(5, 2, 600))),
    length(3, "height", "Height", "Base to eaves", (20, 400), Default::Is(Native::lengths(3, 1, 750))),
    length(
        4,
        "slope",
        "Roof",
        "From the eaves up the slope to the ridge: 11/20 of the depth to all of it",
        (20, 300),
        Default::Worked("three quarters of the depth"),
    ),
    length(5, "ridge", "Ridge", "What stands up on the roof", (10, 60), Default::Is(Native::lengths(3, 4, 200))),
    length(6, "hole", "Holes", "Across, two in the ridge for a ribbon", (2, 8), Default::Is(Native::lengths(1, 8, 30))),
    size_choice(7),
    ring_tab(8),
];

/// The longest width and roof.
const MOST: Length = Length::mm(300);
/// What stays between a hole and the edges of its panel.
const RIM: Length = Length::um(2_500);

/// A carton, score to score.
struct Carton {
    tube: Tube,
    slope: Length,
    ridge: Length,
    hole: Length,
}

impl Carton {
    fn half(&self) -> f64 {
        self.tube.depth.as_mm() / 2.0
    }

    /// From the eaves to the ridge, upright.
    fn rise(&self) -> f64 {
        let (slope, half) = (self.slope.as_mm(), self.half());
        (slope * slope - half * half).max(0.0).sqrt()
    }

    /// What is lost of the height above in card of thickness `t`: under the roof lies a layer of gusset, and the
    /// largest block meets both where it meets the walls.
    fn lost(slope: f64, half: f64, rise: f64, t: Length) -> Length {
        Length::round_mm(t.as_mm() * (1.5 * slope - 0.5 * rise) / half)
    }
}

fn shape(mut ask: Ask) -> Shaped {
    let (score, t) = (ask.setting.score, ask.setting.thickness);
    let width = sized(&mut ask, "width", Layers::WALLS);
    let depth = sized(&mut ask, "depth", Layers::WALLS);
    if width < depth {
        ask.stop("width", What::LengthOutside { is: width, least: depth, most: MOST });
    }
    let least = score.up(depth.scaled(11, 20));
    let slope = ask.scored("slope", score.up(depth.scaled(3, 4)).max(least));
    let most = score.down(depth).max(least);
    if slope < least || slope > most {
        ask.stop("slope", What::LengthOutside { is: slope, least, most });
    }
    let ridge = ask.scored("ridge", Length::ZERO);
    let hole = ask.length("hole", Length::ZERO).half();
    let most = ridge.min(depth.half()).half() - RIM;
    if hole > most {
        ask.stop("hole", What::LengthOutside { is: hole * 2, least: Length::mm(2), most: (most * 2).at_least_zero() });
    }
    let tab = ask.scored("tab", Length::ZERO);
    let most = score.down(width - Length::mm(2));
    if tab > most {
        ask.stop("tab", What::TabTooWide { most });
    }
    let tube = Tube { width, depth, height: Length::ZERO, tab, tuck: Length::ZERO, notch: None };
    let roof = Carton { tube, slope, ridge, hole };
    let lost = Carton::lost(slope.as_mm(), roof.half(), roof.rise(), t) + t;
    let height = sized_for(&mut ask, "height", |inside| inside + lost);
    let inside = Size { width: width - t, depth: depth - t, height: height - lost };
    if !inside.height.is_positive() {
        ask.stop("height", What::PanelTooSmall { panel: "front", is: height, least: score.up(lost) });
    }
    if ask.stopped() {
        return ask.shaped;
    }
    let whole = Carton { tube: Tube { height, ..roof.tube }, ..roof };
    let part = whole.draw(&ask);
    let finished = Size { width, depth, height };
    let up = Length::round_mm(whole.rise()) + ridge;
    let outside = Size { width: width + t, depth: depth + t, height: height + up + t * 2 };
    ask.answer(Assembly::alone(part, finished, inside, outside))
}

const RIDGE: usize = 0;
const ROOF: usize = 1;
const WALL: usize = 2;
const BASE: usize = 3;

/// Names over one side: the gusset; right and left of it, seen from outside, what folds under the roof, and the ridge.
type Names = [&'static str; 5];
const LEFT: Names = ["left gusset", "left front pleat", "left back pleat", "left front ridge", "left back ridge"];
const RIGHT: Names = ["right gusset", "right back pleat", "right front pleat", "right back ridge", "right front ridge"];

/// What stands over a wall with a roof panel.
struct Gable {
    column: usize,
    roof: PanelId,
    ridge: PanelId,
}

impl Carton {
    fn draw(&self, ask: &Ask) -> Part {
        let s = &self.tube;
        let at = columns(s);
        let mut c = Cells::new(&at.sizes, &[self.ridge, self.slope, s.height, s.depth]);
        let w = walls(&mut c, s, at, WALL);
        let lean = Angle::of(self.half(), self.rise());
        let gables =
            [(w.front, w.at.front, ["front roof", "front ridge"]), (w.back, w.at.back, ["back roof", "back ridge"])]
                .map(|(wall, column, [roof, ridge])| {
                    let roof = c.hung(wall, lean, (column, ROOF), roof, Duty::Lid);
                    c.mat(roof);
                    let ridge = c.hung(roof, -lean, (column, RIDGE), ridge, Duty::Ridge);
                    c.level(ridge, 3);
                    let (quarter, down) = (s.depth.scaled(1, 4), self.ridge.half());
                    c.hole(ridge, (quarter, down), self.hole);
                    c.hole(ridge, (s.width - quarter, down), self.hole);
                    Gable { column, roof, ridge }
                });
        let mut open = Vec::new();
        let mut folded: Vec<PanelId> = gables.iter().flat_map(|g| [g.roof, g.ridge]).collect();
        for (wall, column, names) in [(w.left, w.at.left, LEFT), (w.right, w.at.right, RIGHT)] {
            folded.extend(self.gusset(&mut c, (wall, column), names, &gables, &mut open));
        }
        let base = base(&mut c, s, &w, BASE, ask);
        let net = c.finish();
        let mut moves = w.moves(&net);
        moves.extend(base.moves(&net));
        moves.push(Move::end_only(&net, MoveName::Roof, &folded, Gives::Gussets));
        let mut meets = vec![w.meet()];
        meets.extend(base.meets(&w, ask));
        meets.extend(open);
        Part::alone("carton", net, Root::Front, meets, moves)
    }

    /// What folds in over a side, and the seam at which it hangs together with nothing: there edges only meet.
    fn gusset(
        &self,
        c: &mut Cells,
        (wall, column): (PanelId, usize),
        names: Names,
        gables: &[Gable; 2],
        open: &mut Vec<Meet>,
    ) -> Vec<PanelId> {
        let (eave, next) = (c.corner_of(column, WALL), c.corner_of(column + 1, WALL));
        let (score, top) = (c.corner_of(column, ROOF).y, c.corner_of(column, RIDGE).y);
        let (left, right, middle) = (eave.x, next.x, (eave.x + next.x).half());
        let at = Point::new;
        let (half, rise, slope) = (self.half(), self.rise(), self.slope.as_mm());
        let lean = Angle::of(half, rise);
        // Gusset and roof lean alike, one to the middle and one to the ridge: the ways out of them stand at an angle of
        // cosine (½ D / S)²; the pleat shows its outside to the gusset.
        let cosine = -(half / slope) * (half / slope);
        let pleated = -Angle::of((1.0 - cosine * cosine).sqrt(), cosine);
        let gusset =
            c.hung_aslant(wall, lean, (vec![next, eave, at(middle, score)], Frame::THREE), names[0], Duty::EndFlap);
        let halves = [
            (vec![next, at(middle, score), at(right, score)], [right, middle], Side::Right, column + 1),
            (vec![at(middle, score), eave, at(left, score)], [middle, left], Side::Left, column.wrapping_sub(1)),
        ];
        let mut made = vec![gusset];
        let mut ridges = Vec::new();
        for (i, (corners, [from, to], side, beside)) in halves.into_iter().enumerate() {
            let pleat = c.hung_aslant(gusset, pleated, (corners, Frame::THREE), names[1 + i], Duty::EndFlap);
            c.level(pleat, 2);
            let up = vec![at(from, score), at(to, score), at(to, top), at(from, top)];
            let ridge = c.hung_aslant(pleat, lean, (up, Frame::FOUR), names[3 + i], Duty::Ridge);
            c.level(ridge, -1);
            c.hole_at(ridge, at((from + to).half(), (score + top).half()), self.hole);
            let flat = Angle::degrees(180);
            match gables.iter().find(|g| g.column == beside) {
                Some(g) => {
                    c.join(g.roof, (pleat, side), flat);
                    c.join(g.ridge, (ridge, side), flat);
                }
                None => {
                    // The gable across the seam, at the other end of the blank.
                    let other = if gables[0].column.abs_diff(column) == 1 { &gables[1] } else { &gables[0] };
                    let far = if side == Side::Right { Side::Left } else { Side::Right };
                    open.push(Meet { edge: (pleat, side), along: (other.roof, far), gap: Length::ZERO });
                }
            }
            made.extend([pleat, ridge]);
            ridges.push(ridge);
        }
        if let [right, left] = ridges.as_slice() {
            c.join(*right, (*left, Side::Right), -Angle::degrees(180));
        }
        made
    }
}
