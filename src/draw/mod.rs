//! Drawings in millimetres, neutral until a painter paints them.

pub mod drawing;
pub mod font;
pub mod geometry;
pub mod lettering;
pub mod number;
pub mod style;
pub mod svg;
pub mod teacher;
pub mod dimension;
pub mod flat;
pub mod legend;
pub mod flow;
pub mod folded;
pub mod solid;
pub mod sheet;
pub mod step;
pub mod marks;
pub mod overview;
pub mod sample;
pub mod code;
pub mod pattern;
pub mod pages;
pub mod handout;
pub mod labels;
pub mod lacking;
pub mod pdf;
