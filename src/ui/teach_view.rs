//! For those who teach and sell: a class, a batch, the price, and what goes on paper.

use super::batch_view::batch_view;
use super::before::before;
use super::class_view::class_view;
use super::explained::explained;
use super::papers_view::papers_view;
use super::price_view::price_view;
use super::tag::{Tag, classed};

/// All of it.
#[must_use]
pub fn teach_view() -> Tag {
    classed("div", "sheets teach")
        .with(before())
        .with(class_view())
        .with(batch_view())
        .with(price_view())
        .with(papers_view())
        .with(explained())
}
