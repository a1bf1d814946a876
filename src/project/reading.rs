//! How a request is read from a file and written to one: which fields must be there, which are told even where they are
//! as usual, and what those are that are left out.

use crate::fields;
use crate::measure::given::Given;
use crate::measure::slot::tree::Tree;
use crate::measure::slot::{Empty, Place, Slot, Takes};
use crate::measure::system::System;
use crate::stock::weight::BasisWeight;

use super::batch::Batch;
use super::class::Class;
use super::extra::{Extra, ExtraKind};
use super::fitting::{Gift, Gifts, Lesson, Shape, ShapeKind, Turns, Wrap};
use super::own::{Note, NoteKind, Own};
use super::request::{Board, Card, Entry, Lie, Mats, MoreSheets, Part, Project, Supply, Tint, Trimmer};
use super::trade::Trade;

fields!(
    Project,
    Self::default(),
    must { cards, boxes },
    told { name, system, board, sets },
    may { trimmer, spares, holder, own, trade, class, batch }
);

fields!(
    Trade,
    Self::default(),
    must {},
    may { currency, hour, trims, expenses, profit, shelf, with_hours, material, stall, fee }
);

fields!(Class, Self::default(), must {}, may { makers, each, spares, minutes, slow, breaks, ready });

fields!(Batch, Self::default(), must {}, may { helpers, evening, names });

fields!(Own, Self::default(), must {}, may { credit, picture, notes });

fields!(Note, Self { at: String::new(), kind: NoteKind::Note, text: String::new() }, must { at, kind, text }, may {});

fields!(Trimmer, Self::default(), must {}, may { edge_trim, longest_cut, least_strip, score_error, cut_error });

fields!(Board, Self::default(), must {}, may { inch_step, metric_step });

fields!(
    Card,
    Self {
        id: 0,
        name: String::new(),
        grammage: BasisWeight::empty(),
        thickness: None,
        stack: 1,
        lesson: None,
        sheet_width: Given::empty(),
        sheet_height: Given::empty(),
        tint: Tint::default(),
        supply: Supply::default(),
        more_sheets: Vec::new(),
        lie: Lie::Either,
    },
    must { id, grammage, sheet_width, sheet_height },
    told { name, tint },
    may { thickness, stack, lesson, supply, more_sheets, lie }
);

fields!(Supply, Self::default(), must {}, may { have, shop, price });

fields!(
    MoreSheets,
    Self { width: Given::empty(), height: Given::empty(), supply: Supply::default() },
    must { width, height },
    may { supply }
);

fields!(
    Part,
    Self::of(0, "", 0),
    must { form, card },
    told { id, name, count },
    may { inputs, mats, gifts, extras, facing, blank, drawn }
);

fields!(Mats, Self { card: 0, reveal: None, off: Vec::new() }, must { card }, may { reveal, off });

impl Slot for Tint {
    fn expects(&self) -> &'static str {
        "a string"
    }
    fn text(&mut self, text: &str) -> Result<(), Option<String>> {
        *self = Self::read(text).ok_or_else(|| Some(format!("“{text}” is no colour such as “#d8b98a”")))?;
        Ok(())
    }
    fn tree(&self) -> Tree {
        Tree::Text(self.hex())
    }
}

impl Empty for Tint {
    fn empty() -> Self {
        Self::default()
    }
}

impl Slot for Entry {
    fn expects(&self) -> &'static str {
        "a whole number or a text"
    }
    fn number(&mut self, number: u64) -> Result<(), Option<String>> {
        let mut count = 0_u32;
        count.number(number)?;
        *self = Self::Count(count);
        Ok(())
    }
    fn text(&mut self, text: &str) -> Result<(), Option<String>> {
        *self = Given::read(text, System::Metric).map_or_else(|_| Self::Choice(text.to_owned()), Self::Length);
        Ok(())
    }
    fn tree(&self) -> Tree {
        match self {
            Self::Count(count) => count.tree(),
            Self::Length(given) => given.tree(),
            Self::Choice(word) => word.tree(),
        }
    }
}

impl Empty for Entry {
    fn empty() -> Self {
        Self::Count(0)
    }
}

crate::read_by_slot!(Tint);
crate::read_by_slot!(Entry);

fields!(Gifts, Self::default(), must {}, told { kinds }, may { room_width, room_depth, room_height });

fields!(
    Gift,
    Self { name: String::new(), shape: Shape::empty(), count: 1, wrap: Wrap::Bare, turns: Turns::Any, grams: None },
    must { shape },
    may { name, count, wrap, turns, grams }
);

impl Slot for Shape {
    fn takes(&self) -> Takes {
        Takes::OneOf
    }
    fn expects(&self) -> &'static str {
        "enum Shape"
    }
    fn names(&self) -> (&'static [&'static str], usize) {
        (&["block", "cylinder", "soft"], 0)
    }
    fn field(&mut self, at: usize) -> Option<Place<'_>> {
        *self = Self::empty().into_kind(*ShapeKind::ALL.get(at)?);
        Some(match self {
            Self::Block { width, depth, height } | Self::Soft { width, depth, height } => {
                Place::Among(&["width", "depth", "height"], vec![width, depth, height])
            }
            Self::Cylinder { across, height } => Place::Among(&["across", "height"], vec![across, height]),
        })
    }
    fn tree(&self) -> Tree {
        let sides = |sides: &[(&str, &Given)]| {
            Tree::Object(sides.iter().map(|(name, given)| ((*name).to_owned(), given.tree())).collect())
        };
        let (kind, sides) = match self {
            Self::Block { width, depth, height } => {
                ("block", sides(&[("width", width), ("depth", depth), ("height", height)]))
            }
            Self::Cylinder { across, height } => ("cylinder", sides(&[("across", across), ("height", height)])),
            Self::Soft { width, depth, height } => {
                ("soft", sides(&[("width", width), ("depth", depth), ("height", height)]))
            }
        };
        Tree::Object(vec![(kind.to_owned(), sides)])
    }
}

impl Empty for Shape {
    fn empty() -> Self {
        Self::Block { width: Given::empty(), depth: Given::empty(), height: Given::empty() }
    }
}

crate::read_by_slot!(Shape);
crate::read_by_slot!(Lesson);

impl Slot for Lesson {
    fn takes(&self) -> Takes {
        Takes::OneOf
    }
    fn expects(&self) -> &'static str {
        "enum Lesson"
    }
    fn names(&self) -> (&'static [&'static str], usize) {
        (&["wider", "narrower"], 0)
    }
    fn field(&mut self, at: usize) -> Option<Place<'_>> {
        *self = if at == 0 { Self::empty() } else { Self::Narrower(Given::empty()) };
        match self {
            Self::Wider(by) | Self::Narrower(by) => Some(Place::Here(by)),
        }
    }
    fn tree(&self) -> Tree {
        let way = if matches!(self, Self::Wider(_)) { "wider" } else { "narrower" };
        Tree::Object(vec![(way.to_owned(), self.by().tree())])
    }
}

impl Empty for Lesson {
    fn empty() -> Self {
        Self::Wider(Given::empty())
    }
}

fields!(Extra, Self::of(ExtraKind::Label), must { kind }, may { face, width, height, card });
