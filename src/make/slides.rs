//! How sure it is that a row of boxes slides into its holder.
//!
//! The chains. Along the row lie all boxes; from front to back each box lies by itself. What an outside or inside is
//! made by is read off the folded net: the panel that spans it, where its edges are creases, by a score each; where an
//! edge is cut and glued flush with another panel, by a cut and a joint. Of several panels that span it, the one with
//! most joints counts. Mats and all layers between the surfaces come in with their card's thickness.
//!
//! The chance for all is the product over the chains. They share nothing but the holder's errors and the card's, which
//! go the same way in each; so the true chance is no less (Slepian 1962, from memory).

use crate::allow::clearance;
use crate::assembly::parts::{Assembly, JoinName, Part, Size};
use crate::fit::odds::{Accuracy, Chain, Kind, Link, On};
use crate::fold::motion::folded;
use crate::fold::pose::{Pose, standing};
use crate::fold::space::V3;
use crate::form::registry::Holds;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::system::{Native, System};
use crate::net::corner::Side;
use crate::net::flat::{Duty, PanelId};

use super::part::Planned;

mod joins;
mod seated;

pub use joins::joins;
pub use seated::seated;

/// A direction in which boxes must fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// Along the row, left to right.
    Along,
    /// From front to back.
    Across,
    /// From bottom to top.
    Up,
}

impl Way {
    fn of(self, size: Size) -> Length {
        match self {
            Self::Along => size.width,
            Self::Across => size.depth,
            Self::Up => size.height,
        }
    }
}

/// How sure it is, and what would mend it.
#[derive(Clone, Debug, PartialEq)]
pub struct Odds {
    /// The chance that every box slides in, in parts in 1000, rounded down.
    pub per_mille: u32,
    /// The direction that is least likely to fit.
    pub way: Way,
    /// What adds most to the spread there.
    pub tightest: Link,
    /// The chain along the row.
    pub along: Chain,
    /// The chain from front to back of each kind of box, and how many of them there are.
    pub across: Vec<(Chain, u32)>,
    /// What makes it surer.
    pub cure: Cure,
}

/// What makes a fit at least [`SURE`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cure {
    /// It is.
    None,
    /// This clearance asked for, whatever grooves the board has.
    Clearance(Length),
    /// More than [`clearance::LOOSE`] would be needed: the boxes are made and measured first.
    MeasureFirst,
}

/// How sure it is that one part goes into another, or boxes to their seats, and what would mend it.
#[derive(Clone, Debug, PartialEq)]
pub struct Goes {
    /// Which parts, and how; nothing where boxes go to their seats.
    pub join: Option<JoinName>,
    /// The chance, in parts in 1000, rounded down.
    pub per_mille: u32,
    /// The direction that is least likely to fit.
    pub way: Way,
    /// What adds most to the spread there.
    pub tightest: Link,
    /// What makes it surer.
    pub cure: Cure,
}

impl Goes {
    /// Of the chains in each direction; `used` is the clearance that they were planned with, where one can be asked for.
    fn of(join: Option<JoinName>, chains: &[(Way, Chain)], used: Option<Length>, system: System) -> Option<Self> {
        let (way, least) = chains.iter().min_by(|a, b| a.1.chance().total_cmp(&b.1.chance()))?;
        let now: f64 = chains.iter().map(|(_, c)| c.chance()).product();
        // Asked for, a clearance is what each gap has at least; grooves may leave more, as they do now.
        let chance = |asked: Length| chains.iter().map(|(_, c)| c.chance_with(c.gap.max(asked))).product();
        let step = STEP.of(system);
        let from = used.map_or(clearance::LOOSE, |used| Grid::every(step).down(used)) + step;
        let cure = surest(now, from, step, chance);
        Some(Self { join, per_mille: (now * 1_000.0) as u32, way: *way, tightest: least.tightest()?, cure })
    }
}

/// What counts as sure, in parts in 1000.
pub const SURE: u32 = 990;
/// What clearances are advised in.
const STEP: Native<Length> = Native::lengths(1, 16, 5);

/// How sure it is that `boxes` slide into `holder`, both as planned in `system`. Nothing where one of them could not be
/// planned, or where the holder holds no row.
#[must_use]
pub fn odds(boxes: &[Planned], holder: &Planned, system: System, accuracy: &Accuracy) -> Option<Odds> {
    let row = |a: &&Assembly| holder.form.holds == Holds::Boxes && a.seats.is_empty();
    let held = holder.assembly.as_ref().filter(row)?;
    let accuracy = accuracy.within();
    let made: Option<Vec<Row>> = boxes.iter().map(|b| Row::of(b, b.assembly.as_ref()?)).collect();
    let made = made.filter(|m| !m.is_empty())?;
    let outer = spans(&held.parts, held.finished);
    let chain = |way: Way, inner: &mut dyn Iterator<Item = (&Row, u32)>| {
        let mut tally = Tally { gap: way.of(held.inside), ..Tally::default() };
        let own = &outer[way as usize];
        tally.add(1, 1, own, (holder.card, own.length - way.of(held.inside)));
        for (row, n) in inner {
            let (own, bare) = (&row.spans[way as usize], way.of(row.bare));
            tally.add(0, n, own, (row.planned.card, bare - own.length));
            tally.card(row.planned.mat_card.unwrap_or_default(), (way.of(row.planned.stood()) - bare) * i64::from(n));
            tally.gap -= way.of(row.planned.stood()) * i64::from(n);
        }
        tally.chain(&accuracy)
    };
    let along = chain(Way::Along, &mut made.iter().map(|r| (r, r.planned.count)));
    let across: Vec<(Chain, u32)> =
        made.iter().map(|r| (chain(Way::Across, &mut std::iter::once((r, 1))), r.planned.count)).collect();

    let deepest = across.iter().map(|(c, _)| c.gap).min()?;
    // Asked for, a clearance is what the tightest has at least; shallower boxes have as much more as they have now.
    let chance = |asked: Length| {
        let free = |c: &Chain, more: Length| c.chance_with(c.gap.max(asked + more));
        across.iter().fold(free(&along, Length::ZERO), |all, (c, n)| {
            let one = free(c, c.gap - deepest);
            (0..*n).fold(all, |all, _| all * one)
        })
    };
    let now = along.gap.min(deepest);
    let per_mille = |asked| (chance(asked) * 1_000.0) as u32;
    let used = holder.used.get("clearance").copied().unwrap_or_default();
    let step = STEP.of(system);
    let cure = surest(chance(now), Grid::every(step).down(used) + step, step, chance);
    let least = across.iter().map(|(c, _)| c).reduce(|a, b| if b.chance() < a.chance() { b } else { a })?;
    let (way, least) = if along.chance() <= least.chance() { (Way::Along, &along) } else { (Way::Across, least) };
    Some(Odds { per_mille: per_mille(now), way, tightest: least.tightest()?, cure, along, across })
}

/// The least clearance from `asked` on that makes it sure.
fn surest(now: f64, mut asked: Length, step: Length, chance: impl Fn(Length) -> f64) -> Cure {
    let sure = |chance: f64| (chance * 1_000.0) as u32 >= SURE;
    if sure(now) {
        return Cure::None;
    }
    while asked <= clearance::LOOSE && !sure(chance(asked)) {
        asked += step;
    }
    if asked <= clearance::LOOSE { Cure::Clearance(asked) } else { Cure::MeasureFirst }
}

/// Alike boxes in the row.
struct Row<'a> {
    planned: &'a Planned,
    /// What it takes up without mats, and what that is made by, as it stands in the holder.
    bare: Size,
    spans: [Span; 3],
}

impl<'a> Row<'a> {
    fn of(planned: &'a Planned, assembly: &'a Assembly) -> Option<Self> {
        let order = planned.facing.order();
        let spans = || {
            let own = spans(&assembly.parts, assembly.finished);
            order.map(|axis| own[axis])
        };
        (planned.count > 0).then(|| Self { planned, bare: assembly.outside.ordered(order), spans: spans() })
    }
}

/// What a width or depth is made by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Span {
    /// Score to score.
    length: Length,
    /// Edges that are a crease.
    scores: u32,
    /// Edges that are cut and glued flush with another panel.
    joints: u32,
}

/// The spans of the outermost part: left to right, front to back, bottom to top.
fn spans(parts: &[Part], finished: Size) -> [Span; 3] {
    // Where nothing closes it: two scores.
    let none = |length| Span { length, scores: 2, joints: 0 };
    let mut found = [Span::default(); 3];
    // What bends has no straight spans.
    for part in parts.iter().filter(|p| p.strips.is_none()) {
        let at = part.stands.first().map(standing);
        let mut pose = Pose::of(part, &folded(part), Length::ZERO);
        if let Some(at) = at {
            pose = pose.placed(&at);
        }
        for (i, panel) in part.net.panels.iter().enumerate() {
            if !matches!(panel.duty, Duty::Wall | Duty::Floor | Duty::EndFlap) {
                continue;
            }
            let (right, down) = (V3::new(1.0, 0.0, 0.0), V3::new(0.0, -1.0, 0.0));
            for (flat, length, sides) in [
                (right, panel.cell.width(), [Side::Left, Side::Right]),
                (down, panel.cell.height(), [Side::Top, Side::Bottom]),
            ] {
                let along = pose.panels[i].turn(flat);
                let way = [along.x, along.y, along.z].iter().position(|a| a.abs() > 0.99);
                let edges = sides.map(|s| edge(part, PanelId(i), s));
                if let (Some(way), [Some(a), Some(b)]) = (way, edges) {
                    let joints = [a, b].iter().filter(|&&e| e == Edge::Glued).count() as u32;
                    let span = Span { length, scores: 2 - joints, joints };
                    if (length, joints) > (found[way].length, found[way].joints) {
                        found[way] = span;
                    }
                }
            }
        }
    }
    let Size { width, depth, height } = finished;
    let usual = [width, depth, height].map(none);
    [0, 1, 2].map(|i| if found[i].scores + found[i].joints == 0 { usual[i] } else { found[i] })
}

/// Where a panel ends at another one.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Edge {
    /// At a crease.
    Creased,
    /// Cut, and glued flush with it.
    Glued,
}

/// What this edge of a panel is; nothing where it is free.
fn edge(part: &Part, panel: PanelId, side: Side) -> Option<Edge> {
    let cell = part.net.panel(panel).cell;
    let creased = part.net.creases.iter().any(|c| {
        let on = match side {
            Side::Left => (c.from.x, c.to.x) == (cell.min.x, cell.min.x),
            Side::Right => (c.from.x, c.to.x) == (cell.max.x, cell.max.x),
            Side::Top => (c.from.y, c.to.y) == (cell.min.y, cell.min.y),
            Side::Bottom => (c.from.y, c.to.y) == (cell.max.y, cell.max.y),
        };
        on && (c.near == panel || c.far == panel)
    });
    let glued = part.meets.iter().any(|m| m.edge == (panel, side) && m.gap == Length::ZERO);
    if creased { Some(Edge::Creased) } else { glued.then_some(Edge::Glued) }
}

/// A chain as it is counted.
#[derive(Default)]
struct Tally {
    gap: Length,
    /// Scores and joints, of the boxes and of the holder.
    edges: [(u32, u32); 2],
    /// Card between the surfaces, by its number.
    cards: Vec<(u16, Length)>,
}

impl Tally {
    fn add(&mut self, whose: usize, times: u32, span: &Span, (card, layers): (u16, Length)) {
        let (scores, joints) = &mut self.edges[whose];
        *scores += span.scores * times;
        *joints += span.joints * times;
        self.card(card, layers * i64::from(times));
    }

    fn card(&mut self, card: u16, layers: Length) {
        match self.cards.iter_mut().find(|c| c.0 == card) {
            Some(same) => same.1 += layers,
            None => self.cards.push((card, layers)),
        }
    }

    fn chain(&self, accuracy: &Accuracy) -> Chain {
        let hands = [On::Inner, On::Outer].into_iter().zip(self.edges).flat_map(|(on, (scores, joints))| {
            [
                (Kind::Score, scores, accuracy.score),
                (Kind::Cut, joints, accuracy.cut),
                (Kind::Glue, joints, accuracy.glue),
            ]
            .map(|(kind, times, tolerance)| Link { kind, on, times, tolerance })
        });
        let cards = self.cards.iter().map(|&(_, layers)| Link {
            kind: Kind::Card,
            on: On::Both,
            times: 1,
            tolerance: layers.abs().scaled(i64::from(accuracy.thickness), 1_000),
        });
        let links = hands.chain(cards).filter(|l| l.times > 0 && l.tolerance.is_positive()).collect();
        Chain { links, gap: self.gap }
    }
}
