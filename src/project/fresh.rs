//! A new set: one box and a holder, of the card and with the tools at hand.

use super::batch::Batch;
use super::class::Class;
use super::own::Own;
use super::request::{Part, Project};
use super::tools::{Board, Trimmer};
use super::trade::Trade;
use crate::measure::system::System;

/// A new set for whoever made `before`: same system, board, trimmer, cards, maker and reckoning; everything else
/// untouched.
/// `gifts` and `boxes` are the forms of its box and its holder.
#[must_use]
pub fn fresh(before: Option<&Project>, gifts: &str, boxes: &str) -> Project {
    let cards = before.map_or_else(Vec::new, |p| p.cards.clone());
    let card = cards.first().map_or(1, |c| c.id);
    let part = |id, form: &str| Part::of(id, form, card);
    Project {
        name: String::new(),
        system: before.map_or_else(System::default, |p| p.system),
        board: before.map_or_else(Board::default, |p| p.board.clone()),
        sets: 1,
        cards,
        trimmer: before.map_or_else(Trimmer::default, |p| p.trimmer.clone()),
        spares: 0,
        boxes: vec![part(1, gifts)],
        holder: Some(part(0, boxes)),
        own: Own { credit: before.map_or_else(String::new, |p| p.own.credit.clone()), ..Own::default() },
        trade: before.map_or_else(Trade::default, |p| p.trade.clone()),
        class: before.map_or_else(Class::default, |p| p.class),
        batch: Batch::default(),
    }
}

#[cfg(test)]
mod tests {
    use super::fresh;
    use crate::project::example::example;

    #[test]
    fn it_keeps_the_tools_and_nothing_else() {
        let before = example();
        let new = fresh(before.as_ref(), "tuck-box", "row-holder");
        assert_eq!(Some(&new.cards), before.as_ref().map(|p| &p.cards));
        assert_eq!((new.name.as_str(), new.sets, new.boxes.len()), ("", 1, 1));
    }
}
