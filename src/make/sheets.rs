//! The sheets of each card, laid out for all sets.

use crate::cut::layout::{Layout, Why};
use crate::cut::piece::{Piece as Wanted, Turn};
use crate::cut::sheet::{Rules, Sheet, Stock};
use crate::measure::length::Length;
use crate::net::flat::Run;
use crate::project::bound;
use crate::project::finding::{Finding, Place, Weight, What};
use crate::project::request::{Card, Lie, Project, Shop, Supply};

use super::pieces::Piece;

/// What is to be cut from one card, and from what.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// The card.
    pub card: u16,
    /// The pieces, by their place in the piece list, spares included.
    pub wanted: Vec<Wanted>,
    /// The sheets there are and the sheets that can be bought; numbered in this order.
    pub sheets: Vec<Sheet>,
    /// What the trimmer can do.
    pub rules: Rules,
    /// The way the grain runs on the sheets, where it matters.
    pub grain: Option<Run>,
}

/// The sheets of one card.
#[derive(Clone, Debug, PartialEq)]
pub struct CardSheets {
    /// What was asked.
    pub job: Job,
    /// What is cut from how many sheets.
    pub layout: Layout,
}

impl CardSheets {
    /// The sheet that a pattern is cut from.
    #[must_use]
    pub fn sheet(&self, id: u32) -> Option<&Sheet> {
        self.job.sheets.iter().find(|s| s.id == id)
    }

    /// Sheets of each size and source that are used, in the order of the job: how many, and of which.
    pub fn used(&self) -> impl Iterator<Item = (u32, &Sheet)> {
        self.job.sheets.iter().map(|s| (self.layout.sheets_of(s.id), s)).filter(|u| u.0 > 0)
    }

    /// What the sheets to buy cost, in the smallest coin; nothing where a price is not known.
    #[must_use]
    pub fn price(&self) -> Option<u64> {
        let bought = self.used().filter(|u| u.1.stock == Stock::Buy);
        bought.map(|(n, s)| s.price.map(|p| u64::from(p) * u64::from(n))).sum()
    }
}

/// What is to be cut from `card` for `pieces`, with spares; nothing where it has no pieces.
#[must_use]
pub fn job(project: &Project, card: &Card, pieces: &[Piece]) -> Option<Job> {
    let spares = project.spares.min(bound::SPARES.most);
    let (turn, grain) = match card.lie {
        Lie::Either => (Turn::Free, None),
        Lie::Upright => (Turn::Fixed, None),
        Lie::GrainUp => (Turn::Free, Some(Run::Up)),
        Lie::GrainAcross => (Turn::Free, Some(Run::Across)),
    };
    let (sheets, rules) = (sheets_of(card), rules(project));
    let wanted = |p: &Piece| {
        let count = with_spares(p.count, spares);
        let (width, height, turn) = match (grain, p.scores) {
            (Some(grain), Some(scores)) => {
                let along = if scores == grain { (p.width, p.height) } else { (p.height, p.width) };
                // Across the grain only where no sheet has it along.
                let (width, height) = if fits(along, &sheets, &rules) { along } else { (along.1, along.0) };
                (width, height, Turn::Fixed)
            }
            _ => (p.width, p.height, turn),
        };
        Wanted { id: p.id, width, height, count, turn }
    };
    let wanted: Vec<Wanted> = pieces.iter().filter(|p| p.card == card.id).map(wanted).collect();
    (!wanted.is_empty()).then_some(Job { card: card.id, wanted, sheets, rules, grain })
}

/// Whether a piece comes out of one of the sheets, its first side across.
fn fits((width, height): (Length, Length), sheets: &[Sheet], rules: &Rules) -> bool {
    let off = rules.edge_trim * 2;
    sheets.iter().any(|s| width <= s.width - off && height <= s.height - off)
}

/// So many pieces with so many per cent more, rounded up.
#[must_use]
pub fn with_spares(count: u64, per_cent: u32) -> u32 {
    u32::try_from(count.saturating_add(count.saturating_mul(u64::from(per_cent)).div_ceil(100))).unwrap_or(u32::MAX)
}

/// The trimmer's limits, typed or usual.
fn rules(project: &Project) -> Rules {
    let t = &project.trimmer;
    Rules {
        edge_trim: t.edge_trim.as_ref().map_or(Length::ZERO, |g| g.length()),
        longest_cut: t.longest_cut.as_ref().map(|g| g.length()),
        least_strip: t.least_strip.as_ref().map_or(bound::DEFAULT_LEAST_STRIP, |g| g.length()),
    }
}

/// Each size first from the drawer, then from the shop.
fn sheets_of(card: &Card) -> Vec<Sheet> {
    let first = (&card.sheet_width, &card.sheet_height, card.supply);
    let more = card.more_sheets.iter().map(|m| (&m.width, &m.height, m.supply));
    let mut all = Vec::new();
    for (width, height, supply) in std::iter::once(first).chain(more) {
        for stock in stocks(supply) {
            all.push(Sheet {
                id: u32::try_from(all.len()).unwrap_or(u32::MAX),
                width: width.length(),
                height: height.length(),
                typed: width.system(),
                stock,
                price: if stock == Stock::Buy { supply.price } else { None },
            });
        }
    }
    all
}

fn stocks(supply: Supply) -> impl Iterator<Item = Stock> {
    let have = (supply.have > 0).then_some(Stock::Have(supply.have));
    let buy = (supply.shop == Shop::Open).then_some(Stock::Buy);
    have.into_iter().chain(buy)
}

/// What a layout leaves out, and what can be done about it.
#[must_use]
pub fn findings(sheets: &CardSheets, pieces: &[Piece]) -> Vec<Finding> {
    let left = sheets.layout.left_out.iter();
    let mut found: Vec<Finding> = left
        .filter_map(|left| {
            let piece = pieces.iter().find(|p| p.id == left.piece)?;
            Some(left_out(piece, left.count, left.why, &sheets.job))
        })
        .collect();
    let out = |p: &&Piece| sheets.layout.left_out.iter().all(|left| left.piece != p.id);
    let letters: Vec<String> = across_the_grain(&sheets.job, pieces).filter(out).map(Piece::letter).collect();
    if !letters.is_empty() {
        let what = What::ScoresAcrossGrain { pieces: letters.join(", ") };
        found.push(Finding { place: Place::Card(sheets.job.card), input: Some("lie"), weight: Weight::Caution, what });
    }
    found
}

/// The pieces whose main scores run across the grain.
fn across_the_grain<'a>(job: &'a Job, pieces: &'a [Piece]) -> impl Iterator<Item = &'a Piece> {
    job.wanted.iter().filter_map(move |w| {
        let piece = pieces.iter().find(|p| p.id == w.id)?;
        let straight = (w.width, w.height) == (piece.width, piece.height);
        let along = (piece.scores? == job.grain?) == straight;
        (!along && w.width != w.height).then_some(piece)
    })
}

fn left_out(piece: &Piece, count: u32, why: Why, job: &Job) -> Finding {
    let letter = piece.letter();
    let largest = job.sheets.iter().max_by_key(|s| (s.width.min(s.height), s.width.max(s.height)));
    let (what, input) = match why {
        Why::TooLarge => {
            let (sheet_width, sheet_height, typed) =
                largest.map_or_else(Default::default, |s| (s.width, s.height, s.typed));
            let (width, height) = (piece.width, piece.height);
            let what = What::PieceTooLarge { piece: letter, width, height, sheet_width, sheet_height, typed };
            (what, "sheet-width")
        }
        Why::TooThin => {
            let (is, least) = (piece.width.min(piece.height), job.rules.least_strip);
            (What::PieceTooThin { piece: letter, is, least }, "least-strip")
        }
        Why::StockRanOut => (What::SheetsRanOut { piece: letter, count }, "have"),
        Why::TrimmerTooShort => {
            let longest = job.rules.longest_cut.unwrap_or_default();
            (What::TrimmerTooShort { piece: letter, longest }, "longest-cut")
        }
        Why::NoSheets => (What::NothingLeftOfSheet, "have"),
        Why::NoSize | Why::WorkRanOut => (What::PieceLeftOut { piece: letter, count }, "sheet-width"),
    };
    // A thin strip is cut with knife and ruler; sheets that run out can be bought: neither spoils the rest.
    let weight = match why {
        Why::TooThin | Why::StockRanOut | Why::TrimmerTooShort => Weight::Caution,
        _ => Weight::Stop,
    };
    Finding { place: Place::Card(piece.card), input: Some(input), weight, what }
}
