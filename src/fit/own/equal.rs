//! Which columns and rows must be equal, or follow from others, for a form to close: found by folding it with each of
//! them a little wider in turn.
//!
//! Where edges meet, the way between them is a plain sum of columns and rows, as folds are square. Widening one column
//! tells its share in each such sum. A sum of two with opposite shares says that they are equal; where one column makes
//! up for several, it follows from them.

use super::{Bench, Rank};
use crate::assembly::parts::Root;
use crate::fold::space::V3;
use crate::form::own::build::{Built, build, stance};
use crate::form::own::drawn::{Drawn, Sign, SizeName, Span, Stance, Term};
use crate::form::own::met::{Folded, scored};
use crate::form::own::shape::make;
use crate::form::own::words::{size, size_named};
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::measure::system::System;
use crate::net::corner::Side;
use crate::net::flat::{Duty, PanelId};

/// Columns and rows that are one size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// What it is to be called.
    pub name: SizeName,
    /// How long they are.
    pub length: Given,
    /// Which they are.
    pub ranks: Vec<Rank>,
}

/// A form with its sizes named.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// The groups that were found.
    pub groups: Vec<Group>,
    /// The form with them.
    pub drawn: Drawn,
}

/// By how much columns and rows are widened, in mm.
const WIDER: f64 = 0.5;
/// Shares are whole or half within this.
const SHARE: f64 = 0.02;

/// The form with its sizes named; nothing where it cannot be built or they are named already.
#[must_use]
pub fn named(drawn: &Drawn, bench: &Bench) -> Option<Named> {
    let sizes = bench.sizes(drawn, &[]);
    let measures = bench.measures(&sizes);
    let ranks = Rank::all(drawn);
    let lengths: Vec<Length> = ranks.iter().map(|r| r.span(drawn).map_or(Length::ZERO, |s| measures.of(s))).collect();
    let plain = |lengths: &[Length]| -> Option<Drawn> {
        let mut plain = drawn.clone();
        for (rank, length) in ranks.iter().zip(lengths) {
            *rank.span_mut(&mut plain)? = Span::typed(Given::exactly(*length)?);
        }
        Some(plain)
    };
    let fixed = Bench { system: System::Metric, ..*bench };
    let measures = fixed.measures(&sizes);
    let base = plain(&lengths)?;
    let made = make(&base, &measures, bench.clear).ok()?;
    let still = made.built.pieces.first()?.at;
    let root = match stance(&base, still) {
        Stance::Front => Root::Front,
        Stance::Base => Root::Base,
    };
    let closings: Vec<Closing> = closings(&made.built, &made.folded);
    let gaps = |built: &Built, folded: &Folded| closings.iter().map(|c| c.gap(built, folded)).collect::<Vec<V3>>();
    let before = gaps(&made.built, &made.folded);
    // The share of each column and row in each way between edges.
    let shares: Vec<Vec<V3>> = (0..ranks.len())
        .map(|i| {
            let mut wider = lengths.clone();
            wider[i] += Length::round_mm(WIDER);
            // What lies still must not change with the sizes.
            let held = |d| Drawn { still: Some(still), ..d };
            let built = plain(&wider).map(held).and_then(|d| build(&d, &measures).ok());
            // Trims may not go into another size: then it has no share.
            built.filter(|b| b.net.panels.len() == made.built.net.panels.len()).map_or_else(
                || vec![V3::default(); closings.len()],
                |b| {
                    let folded = Folded::of(&b.net, root);
                    gaps(&b, &folded).iter().zip(&before).map(|(a, b)| (*a - *b) * (1.0 / WIDER)).collect()
                },
            )
        })
        .collect();
    let mut sums: Vec<Vec<f64>> = Vec::new();
    for c in 0..closings.len() {
        for axis in [|v: V3| v.x, |v: V3| v.y, |v: V3| v.z] {
            let sum: Vec<f64> = shares.iter().map(|s| axis(s[c])).collect();
            if sum.iter().any(|s| s.abs() > SHARE) {
                sums.push(sum);
            }
        }
    }
    Some(grouped(drawn, &made.built, &made.folded, &ranks, &lengths, &sums, bench.system))
}

/// Edges that come together.
struct Closing {
    edge: (PanelId, Side),
    along: (PanelId, Side),
}

impl Closing {
    /// The way from the line along which the edge should lie to the edge.
    fn gap(&self, built: &Built, folded: &Folded) -> V3 {
        let at = |(panel, side): (PanelId, Side)| {
            let (a, b) = scored(&built.net, panel, side);
            (folded.pose.point(panel, a), folded.pose.point(panel, b))
        };
        let ((a, b), (c, d)) = (at(self.edge), at(self.along));
        let way = (d - c).unit();
        let to = (a + b) * 0.5 - c;
        to - way * to.dot(way)
    }
}

/// All edges of panels and tabs that come together.
fn closings(built: &Built, folded: &Folded) -> Vec<Closing> {
    let net = &built.net;
    let mut all: Vec<Closing> =
        folded.meets(net).into_iter().map(|m| Closing { edge: m.edge, along: m.along }).collect();
    // The score of a tab comes to an edge of what it lies on.
    let tabs = net.panels.iter().enumerate().filter(|p| p.1.duty == Duty::Tab).map(|p| p.0);
    for i in tabs {
        let Some(partner) = folded.partner(net, PanelId(i)).filter(|c| c.is_exact()) else {
            continue;
        };
        let Some(crease) = net.carrier(PanelId(i)).and_then(|c| net.creases.get(c.0)) else {
            continue;
        };
        const SIDES: [Side; 4] = [Side::Top, Side::Right, Side::Bottom, Side::Left];
        let on = |p, side: &Side| {
            let (a, b) = scored(net, p, *side);
            (b - a).cross(crease.from - a) == 0 && (b - a).cross(crease.to - a) == 0
        };
        let Some(edge) = SIDES.into_iter().find(|s| on(PanelId(i), s)) else {
            continue;
        };
        let off = |s: &Side| {
            let along = Closing { edge: (PanelId(i), edge), along: (partner.onto, *s) };
            along.gap(built, folded).norm()
        };
        let near = SIDES.into_iter().min_by(|a, b| off(a).total_cmp(&off(b)));
        let met = near.filter(|s| off(s) < MET_EDGE);
        all.extend(met.map(|s| Closing { edge: (PanelId(i), edge), along: (partner.onto, s) }));
    }
    all
}

/// Edges this near have come together, in mm.
const MET_EDGE: f64 = 0.1;

/// Groups of what must be equal, named by the way in which they stand; and what follows from others.
fn grouped(
    drawn: &Drawn,
    built: &Built,
    folded: &Folded,
    ranks: &[Rank],
    lengths: &[Length],
    sums: &[Vec<f64>],
    system: System,
) -> Named {
    let mut group: Vec<usize> = (0..ranks.len()).collect();
    let join = |group: &mut Vec<usize>, a: usize, b: usize| {
        let (from, to) = (group[a].max(group[b]), group[a].min(group[b]));
        group.iter_mut().filter(|g| **g == from).for_each(|g| *g = to);
    };
    // Those that bear one name already are one.
    for i in 0..ranks.len() {
        for j in 0..i {
            let name = |k: usize| ranks[k].span(drawn).and_then(Span::only_size);
            if name(i).is_some() && name(i) == name(j) {
                join(&mut group, i, j);
            }
        }
    }
    let in_groups = |group: &[usize], sum: &[f64]| -> Vec<(usize, f64)> {
        let mut of = vec![0.0; group.len()];
        sum.iter().zip(group).for_each(|(s, g)| of[*g] += s);
        of.into_iter().enumerate().filter(|s| s.1.abs() > SHARE).collect()
    };
    // Joining two may leave two in another sum.
    for _ in 0..ranks.len() {
        for sum in sums {
            if let [(a, x), (b, y)] = in_groups(&group, sum).as_slice()
                && (x + y).abs() < SHARE
                && lengths[*a] == lengths[*b]
            {
                join(&mut group, *a, *b);
            }
        }
    }
    // What stands the same way and is as long is one size, unless its maker says otherwise.
    let word = |g: usize, group: &[usize]| {
        let mine: Vec<Rank> = ranks.iter().zip(group).filter(|(_, x)| **x == g).map(|(r, _)| *r).collect();
        let already = mine.iter().any(|r| r.span(drawn).and_then(Span::only_size).is_some());
        if already { None } else { stands(built, folded, &mine) }
    };
    for a in 0..ranks.len() {
        for b in 0..a {
            if group[a] != group[b] && lengths[a] == lengths[b] {
                let words = (word(group[a], &group), word(group[b], &group));
                if words.0.is_some() && words.0 == words.1 {
                    join(&mut group, a, b);
                }
            }
        }
    }
    let mut out = drawn.clone();
    let mut named: Vec<(usize, SizeName)> = Vec::new();
    let mut groups = Vec::new();
    let mut followers: Vec<(usize, Vec<(usize, f64)>)> = Vec::new();
    for sum in sums {
        let parts = in_groups(&group, sum);
        if parts.len() < 3 {
            continue;
        }
        // One that is alone in its group and stands against all others follows from them.
        let alone = |g: usize| group.iter().filter(|x| **x == g).count() == 1;
        let follows = parts.iter().find(|(g, x)| {
            let others = parts.iter().filter(|o| o.0 != *g);
            alone(*g)
                && !followers.iter().any(|f| f.0 == *g || f.1.iter().any(|o| o.0 == *g))
                && others.clone().all(|o| o.1 * x < 0.0)
        });
        if let Some(&(g, x)) = follows {
            let others: Vec<(usize, f64)> = parts.iter().filter(|o| o.0 != g).map(|o| (o.0, -o.1 / x)).collect();
            let plain = others.iter().all(|o| (o.1 * 2.0 - (o.1 * 2.0).round()).abs() < SHARE * 2.0);
            if plain {
                followers.push((g, others));
            }
        }
    }
    // What lies still is named first, then walls by how many columns and rows they have, flaps last.
    let still = built.pieces.first();
    let first = |g: usize| {
        let mine = || ranks.iter().zip(&group).filter(move |(_, x)| **x == g).map(|(r, _)| *r);
        let lies = mine().any(|r| match r {
            Rank::Column(c) => still.is_some_and(|p| usize::from(p.at.column) == c),
            Rank::Row(r) => still.is_some_and(|p| usize::from(p.at.row) == r),
        });
        (!lies, std::cmp::Reverse(mine().count()), std::cmp::Reverse(lengths[g]), g)
    };
    let mut order: Vec<usize> = (0..ranks.len()).collect();
    order.sort_by_key(|g| first(*g));
    for g in order {
        if group[g] != g || followers.iter().any(|f| f.0 == g) {
            continue;
        }
        let mine: Vec<Rank> = ranks.iter().zip(&group).filter(|(_, x)| **x == g).map(|(r, _)| *r).collect();
        let already = mine.iter().find_map(|r| r.span(drawn).and_then(Span::only_size));
        let taken = |name: SizeName| named.iter().any(|n| n.1 == name) || drawn.drawn_size(name).is_some();
        let name = already.or_else(|| {
            let word = stands(built, folded, &mine)?;
            let second = format!("second {word}");
            [word, second.as_str()].into_iter().filter_map(size_named).find(|n| !taken(*n))
        });
        let (Some(name), Some(length)) = (name, Given::of(lengths[g], system)) else {
            continue;
        };
        named.push((g, name));
        for rank in &mine {
            if let Some(span) = rank.span_mut(&mut out) {
                *span = Span::size(name);
            }
        }
        if already.is_none() {
            out.sizes.push((name, length.clone()));
        }
        groups.push(Group { name, length, ranks: mine });
    }
    for (g, others) in followers {
        let terms: Option<Vec<Term>> = others
            .iter()
            .map(|(o, share)| {
                let name = named.iter().find(|n| n.0 == *o)?.1;
                Some(Term::Size(name, (share * 2.0).round() as i8))
            })
            .collect();
        let Some(mut terms) = terms else {
            continue;
        };
        let sum: Length = others.iter().map(|(o, share)| lengths[*o].scaled((share * 2.0).round() as i64, 2)).sum();
        let rest = lengths[g] - sum;
        if rest != Length::ZERO {
            let sign = if rest.is_positive() { Sign::Plus } else { Sign::Minus };
            match Given::of(rest.abs(), system) {
                Some(given) => terms.push(Term::Length(given, sign)),
                None => continue,
            }
        }
        if let Some(span) = ranks[g].span_mut(&mut out) {
            *span = Span(terms);
        }
    }
    out.sizes.sort_by_key(|s| s.0);
    Named { groups, drawn: out }
}

/// What a size is called by the panels that it runs along: the first that is no flap counts.
fn stands(built: &Built, folded: &Folded, ranks: &[Rank]) -> Option<&'static str> {
    let mut best: Option<(u8, &'static str)> = None;
    for (i, piece) in built.pieces.iter().enumerate() {
        let across = ranks
            .iter()
            .any(|r| matches!(r, Rank::Column(c) if usize::from(piece.at.column) == *c && piece.more.0 == 0));
        let down =
            ranks.iter().any(|r| matches!(r, Rank::Row(r) if usize::from(piece.at.row) == *r && piece.more.1 == 0));
        if !across && !down {
            continue;
        }
        let panel = &built.net.panels[i];
        // Along its score a flap is as long as what carries it.
        let by = built.net.carrier(PanelId(i)).and_then(|c| built.net.creases.get(c.0));
        let hung_across = by.is_some_and(|c| c.from.y == c.to.y);
        let out = |across: bool| by.is_some() && (across != hung_across);
        let flap = |word| if out(across) || (down && out(false)) { Some(word) } else { None };
        let (rank, word) = match panel.duty {
            Duty::Tab => (2, flap(size(SizeName(3)))),
            Duty::Tuck => (2, flap(size(SizeName(4)))),
            Duty::DustFlap | Duty::Hem | Duty::Flange => (3, flap(size(SizeName(5)))),
            _ => {
                let flat = if across { V3::new(1.0, 0.0, 0.0) } else { V3::new(0.0, 1.0, 0.0) };
                let way = folded.pose.panels[i].turn(flat);
                let (x, y, z) = (way.x.abs(), way.y.abs(), way.z.abs());
                let word = if x > y && x > z {
                    0
                } else if y > z {
                    1
                } else {
                    2
                };
                (1, Some(size(SizeName(word))))
            }
        };
        if let Some(word) = word
            && best.is_none_or(|b| rank < b.0)
        {
            best = Some((rank, word));
        }
    }
    best.map(|b| b.1)
}
