//! Ways to mend what does not meet, each tried on the form itself: only what helps is offered.

use super::{Bench, Rank};
use crate::form::own::drawn::{At, Between, Drawn, Gluing, Line, Span, Trim, Turn};
use crate::form::own::edit::spell_order;
use crate::form::own::shape::{Made, made_by_name, make, tabs, told};
use crate::measure::given::Given;
use crate::measure::length::Length;
use crate::net::corner::{Corner, Side};
use crate::net::flat::{Duty, PanelId};
use crate::project::bound::HAIR;
use crate::project::finding::{OwnFault, Weight};

/// What is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum How {
    /// A column or row is made as wide as another one.
    Equal {
        /// Which.
        rank: Rank,
        /// As which.
        like: Rank,
        /// How wide that is.
        to: Length,
    },
    /// A column or row is made this wide.
    Make {
        /// Which.
        rank: Rank,
        /// How wide.
        to: Length,
    },
    /// A line is cut.
    Cut(&'static str, &'static str),
    /// A cell is taken away.
    Take(&'static str),
    /// A tab is glued to what it lies on.
    Glue(&'static str, &'static str),
    /// A tab becomes a panel.
    Panel(&'static str),
    /// A border is left free of glue.
    Border(&'static str),
    /// What was to be cut off a cell stays.
    Untrim(&'static str),
    /// Wedges this broad are taken off the free corners.
    Wedges(&'static str, Length),
    /// A strip this wide is taken off the free edges.
    Strips(&'static str, Length),
    /// A panel folds after another one.
    After(&'static str, &'static str),
}

/// One way to mend one fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cure {
    /// What it mends.
    pub fault: OwnFault,
    /// What is done.
    pub how: How,
    /// The form after that.
    pub drawn: Drawn,
}

/// No more ways than this are offered for one fault.
const OFFERED: usize = 2;
/// How much is tried in all: panels squared, for each way.
const TRIED: usize = 30_000;

/// What helps against each fault of a form.
#[must_use]
pub fn cures(drawn: &Drawn, bench: &Bench) -> Vec<Cure> {
    let trying = Trying { drawn, bench };
    let Some(made) = trying.made(drawn) else {
        return Vec::new();
    };
    let before = told(&made, bench.thickness);
    let mut found: Vec<Cure> = Vec::new();
    let mut left = TRIED / made.part.net.panels.len().pow(2).max(1);
    for (_, fault) in &before {
        if found.iter().any(|c| c.fault == *fault) {
            continue;
        }
        let ways = trying.ways(&made, fault);
        let mut good = 0;
        for (how, after) in ways {
            if good >= OFFERED || left == 0 {
                break;
            }
            if found.iter().any(|c| c.fault == *fault && c.how == how) {
                continue;
            }
            left -= 1;
            let helps = match fault {
                // What its maker says of glue and of tabs is so.
                OwnFault::Unglued { .. } | OwnFault::Alone(_) => trying.made(&after).is_some(),
                _ => trying.helps(&after, fault, &before),
            };
            if helps {
                good += 1;
                found.push(Cure { fault: fault.clone(), how, drawn: after });
            }
        }
    }
    found
}

struct Trying<'a> {
    drawn: &'a Drawn,
    bench: &'a Bench,
}

impl Trying<'_> {
    fn made(&self, drawn: &Drawn) -> Option<Made> {
        let sizes = self.bench.sizes(drawn, &[]);
        make(drawn, &self.bench.measures(&sizes), self.bench.clear).ok()
    }

    /// Whether a change mends the fault and makes nothing worse.
    fn helps(&self, after: &Drawn, fault: &OwnFault, before: &[(Weight, OwnFault)]) -> bool {
        let Some(made) = self.made(after) else {
            return false;
        };
        // Whether tabs meet is quickly seen; the whole proof only for what passes that.
        if let OwnFault::Misses { tab, .. } = fault
            && tabs(&made).iter().any(|(w, f)| {
                *w == Weight::Caution && matches!(f, OwnFault::Misses { tab: t, .. } | OwnFault::Alone(t) if t == tab)
            })
        {
            return false;
        }
        let now = told(&made, self.bench.thickness);
        let bad = |all: &[(Weight, OwnFault)]| all.iter().filter(|f| f.0 != Weight::Note).count();
        // What is only good to know is mended where nothing gets worse.
        let note = before.iter().any(|f| f.0 == Weight::Note && f.1 == *fault);
        !now.iter().any(|f| f.1 == *fault) && if note { bad(&now) <= bad(before) } else { bad(&now) < bad(before) }
    }

    /// What may help.
    fn ways(&self, made: &Made, fault: &OwnFault) -> Vec<(How, Drawn)> {
        let at = |name: &str| made_by_name(made, name);
        let changed = |how: How, change: &dyn Fn(&mut Drawn)| {
            let mut after = self.drawn.clone();
            change(&mut after);
            (how, after)
        };
        let cell = |how: fn(&'static str) -> How, name: &'static str, change: &dyn Fn(&mut Drawn, At)| {
            at(name).map(|at| changed(how(name), &|d| change(d, at))).into_iter().collect::<Vec<_>>()
        };
        match fault {
            OwnFault::Misses { by, .. } => self.resized(*by),
            OwnFault::Loose(name) => {
                // It is no panel of the net, so it goes by its column and row.
                let at = crate::form::own::words::cell_named(name);
                at.map(|at| changed(How::Take(name), &|d| d.take(at))).into_iter().collect()
            }
            OwnFault::Round(a, b) => self.cut(at(a), at(b), a, b),
            OwnFault::Alone(name) => cell(How::Panel, name, &|d, at| {
                if let Some(cell) = d.cell_mut(at) {
                    (cell.duty, cell.name) = (Some(Duty::Wall), None);
                }
            }),
            OwnFault::Unglued { tab, panel } => match (at(tab), at(panel)) {
                (Some(on), Some(onto)) => {
                    let glue = Gluing { on, face: None, onto: vec![onto], border: None, strip: None };
                    vec![changed(How::Glue(tab, panel), &|d| d.glue.push(glue.clone()))]
                }
                _ => Vec::new(),
            },
            OwnFault::Unheld(name) => self.glued(made, name),
            OwnFault::GlueMisses(name) => cell(How::Border, name, &|d, at| {
                let border = Given::of(self.bench.clear * 2, self.bench.system).map(Span::typed);
                d.glue.iter_mut().filter(|g| g.on == at).for_each(|g| g.border.clone_from(&border));
            }),
            OwnFault::Trimmed(name) => cell(How::Untrim, name, &|d, at| {
                if let Some(cell) = d.cell_mut(at) {
                    cell.trims.clear();
                }
            }),
            OwnFault::Cross { a, b, .. } => {
                let orders = [(a, b), (b, a)].into_iter().filter_map(|(a, b)| self.after(made, a, b));
                orders.chain([a, b].into_iter().flat_map(|name| self.trimmed(made, name))).collect()
            }
            _ => Vec::new(),
        }
    }

    /// A panel glued to all that lies under it, or to what it lies on most.
    fn glued(&self, made: &Made, name: &'static str) -> Vec<(How, Drawn)> {
        let net = &made.part.net;
        let Some((on, panel)) = made_by_name(made, name).zip(net.named(name)) else {
            return Vec::new();
        };
        let mut under: Vec<_> =
            made.folded.layers(net).into_iter().filter(|c| c.on == panel && c.share > 0.2).collect();
        under.sort_by_key(|c| std::cmp::Reverse((c.share * 1e6) as i64));
        let cell = |p: PanelId| made.built.pieces.get(p.0).map(|p| p.at);
        let border = Given::of(self.bench.clear * 2, self.bench.system).map(Span::typed);
        let Some(first) = under.first().map(|c| net.panel(c.onto).name) else {
            return Vec::new();
        };
        let all: Vec<At> = under.iter().filter_map(|c| cell(c.onto)).collect();
        let mut ways = Vec::new();
        for onto in [all.clone(), all.into_iter().take(1).collect()] {
            for border in [None, border.clone()] {
                let mut after = self.drawn.clone();
                after.glue.push(Gluing { on, face: None, onto: onto.clone(), border, strip: None });
                ways.push((How::Glue(name, first), after));
            }
        }
        ways
    }

    /// One panel folded right after the fold of another.
    fn after(&self, made: &Made, late: &'static str, early: &'static str) -> Option<(How, Drawn)> {
        let (late_at, early_at) = (made_by_name(made, late)?, made_by_name(made, early)?);
        let mut after = self.drawn.clone();
        spell_order(&mut after, made);
        let from = after.order.iter().position(|t| t.cells.contains(&late_at))?;
        if after.order[from].tuck.is_some() {
            return None;
        }
        after.order[from].cells.retain(|c| *c != late_at);
        after.order.retain(|t| !t.cells.is_empty());
        let to = after.order.iter().position(|t| t.cells.contains(&early_at))?;
        after.order.insert(to + 1, Turn { name: None, cells: vec![late_at], tuck: None });
        Some((How::After(late, early), after))
    }

    /// Every column and row made as wide as each other width there is; then a little wider or narrower.
    fn resized(&self, by: Length) -> Vec<(How, Drawn)> {
        let sizes = self.bench.sizes(self.drawn, &[]);
        let measures = self.bench.measures(&sizes);
        let ranks = Rank::all(self.drawn);
        let length = |r: &Rank| r.span(self.drawn).map_or(Length::ZERO, |s| measures.of(s));
        let mut equal: Vec<(Length, How, Drawn)> = Vec::new();
        for rank in &ranks {
            let mut tried: Vec<Length> = vec![length(rank)];
            for like in &ranks {
                let to = length(like);
                if tried.contains(&to) {
                    continue;
                }
                tried.push(to);
                let mut after = self.drawn.clone();
                if let (Some(span), Some(mine)) = (like.span(self.drawn).cloned(), rank.span_mut(&mut after)) {
                    *mine = span;
                    equal.push(((to - length(rank)).abs(), How::Equal { rank: *rank, like: *like, to }, after));
                }
            }
        }
        equal.sort_by_key(|e| e.0);
        let near = |ranks: &[Rank]| {
            let mut all = Vec::new();
            for rank in ranks.iter().filter(|r| r.span(self.drawn).is_some_and(|s| s.only_typed().is_some())) {
                for to in [length(rank) - by, length(rank) + by] {
                    let mut after = self.drawn.clone();
                    if let (Some(given), Some(mine)) = (Given::of(to, self.bench.system), rank.span_mut(&mut after)) {
                        *mine = Span::typed(given);
                        all.push((How::Make { rank: *rank, to }, after));
                    }
                }
            }
            all
        };
        equal.into_iter().map(|(_, how, after)| (how, after)).chain(near(&ranks)).collect()
    }

    /// The lines round a corner at which two panels hang together too often, cut in turn.
    fn cut(&self, a: Option<At>, b: Option<At>, first: &'static str, second: &'static str) -> Vec<(How, Drawn)> {
        let (Some(a), Some(b)) = (a, b) else {
            return Vec::new();
        };
        let beside = |l: &Between| [l.at, l.other()] == [a, b] || [l.at, l.other()] == [b, a];
        let lines = self.drawn.inner().into_iter().filter(beside);
        let cut = |line: Between| {
            let mut after = self.drawn.clone();
            after.draw(line, Line::Cut);
            (How::Cut(first, second), after)
        };
        lines.map(cut).collect()
    }

    /// A panel with its free corners or edges trimmed a little.
    fn trimmed(&self, made: &Made, name: &'static str) -> Vec<(How, Drawn)> {
        let Some((at, panel)) = made_by_name(made, name).zip(made.part.net.named(name)) else {
            return Vec::new();
        };
        let net = &made.part.net;
        let size = net.panel(panel).cell;
        let free = |side: Side| {
            let between = Between::of(at, side);
            between.is_none_or(|b| {
                let other = if b.at == at { b.other() } else { b.at };
                self.drawn.cell(other).is_none() || self.drawn.line(b) == Line::Cut
            })
        };
        let span = |length: Length| Given::of(length, self.bench.system).map(Span::typed);
        let mut all = Vec::new();
        let hair = HAIR.of(self.bench.system);
        for clear in [hair, self.bench.clear, self.bench.clear * 2, self.bench.clear * 4] {
            if clear * 2 >= size.width().min(size.height()) {
                break;
            }
            let corners = [
                (Corner::TopLeft, Side::Top, Side::Left),
                (Corner::TopRight, Side::Top, Side::Right),
                (Corner::BottomRight, Side::Bottom, Side::Right),
                (Corner::BottomLeft, Side::Bottom, Side::Left),
            ];
            let mut wedged = self.drawn.clone();
            let mut stripped = self.drawn.clone();
            let hung_across = net.carrier(panel).and_then(|c| net.creases.get(c.0)).is_none_or(|c| c.from.y == c.to.y);
            // Narrower towards the free edge, over all of its depth.
            let deep = if hung_across { size.height() } else { size.width() }.half();
            for (corner, _, _) in corners.into_iter().filter(|c| free(c.1) && free(c.2)) {
                let (across, down) = if hung_across { (clear, deep) } else { (deep, clear) };
                if let (Some(cell), Some(across), Some(down)) = (wedged.cell_mut(at), span(across), span(down)) {
                    cell.trims.retain(|t| !matches!(t, Trim::Wedge(c, ..) | Trim::Round(c, _) if *c == corner));
                    cell.trims.push(Trim::Wedge(corner, across, down));
                }
            }
            for side in [Side::Top, Side::Right, Side::Bottom, Side::Left].into_iter().filter(|s| free(*s)) {
                if let (Some(cell), Some(wide)) = (stripped.cell_mut(at), span(clear)) {
                    cell.trims.retain(|t| !matches!(t, Trim::Strip(s, _) if *s == side));
                    cell.trims.push(Trim::Strip(side, wide));
                }
            }
            all.push((How::Wedges(name, clear), wedged));
            all.push((How::Strips(name, clear), stripped));
        }
        all.retain(|a| a.1 != *self.drawn);
        all
    }
}
