//! Lengths and sizes as they are said.

use super::phrase::Phrase;
use crate::assembly::parts::Size;
use crate::measure::grid::Grid;
use crate::measure::length::Length;
use crate::measure::show::Figure;
use crate::measure::system::System;

/// A length with its unit.
#[must_use]
pub fn length(length: Length, system: System) -> Phrase {
    Figure::of(length, system).into()
}

/// `9 × 7 1/2 in`.
#[must_use]
pub fn sides(a: Length, b: Length, system: System) -> Phrase {
    Phrase::bare(Figure::of(a, system)).with(" × ").with(Figure::of(b, system))
}

/// `3 × 1 1/4 × 5 in`: width, depth, height.
#[must_use]
pub fn size(size: Size, system: System) -> Phrase {
    three(size, |l| Figure::of(l, system))
}

/// As [`size`], of what is free inside ([`free`]).
#[must_use]
pub fn inside(size: Size, system: System) -> Phrase {
    three(size, |l| free(l, system))
}

fn three(size: Size, figure: impl Fn(Length) -> Figure) -> Phrase {
    Phrase::bare(figure(size.width))
        .with(" × ")
        .with(Phrase::bare(figure(size.depth)))
        .with(" × ")
        .with(figure(size.height))
}

/// What is free inside, as a ruler shows it: no more than there is, to 1/64 in or a tenth of a millimetre.
///
/// ```
/// use snugfold::{measure::{length::Length, system::System}, say::measured::{free, taken}};
/// assert_eq!(free(Length::um(196_250), System::Inch).to_string(), "7 23/32 in"); // 7.7264 in
/// assert_eq!(taken(Length::um(196_250), System::Inch).to_string(), "7 47/64 in");
/// assert_eq!(free(Length::um(76_480), System::Metric).to_string(), "76.4 mm");
/// ```
#[must_use]
pub fn free(length: Length, system: System) -> Figure {
    Figure::of(fine(system).down(length), system)
}

/// What something takes up, as a ruler shows it: no less than it is.
#[must_use]
pub fn taken(length: Length, system: System) -> Figure {
    Figure::of(fine(system).up(length), system)
}

/// The finest marks that thickness is shown to.
fn fine(system: System) -> Grid {
    Grid::every(match system {
        System::Inch => Length::inches(1, 64),
        System::Metric => Length::um(100),
    })
}

/// Lengths in a row with one unit at the end: `1 1/4, 4 1/4 and 5 1/2 in`.
#[must_use]
pub fn row(all: &[Length], system: System) -> Phrase {
    let last = all.len().saturating_sub(1);
    Phrase::list(
        all.iter().enumerate().map(|(i, &l)| {
            let figure = Figure::of(l, system);
            if i == last { figure.into() } else { Phrase::bare(figure) }
        }),
        ", ",
        " and ",
    )
}

/// The least that may be typed, as a figure that a ruler shows and that is taken.
#[must_use]
pub fn least(length: Length, system: System) -> Figure {
    Figure::of(coarse(length, system).up(length), system)
}

/// The most that may be typed, as a figure that a ruler shows and that is taken.
#[must_use]
pub fn most(length: Length, system: System) -> Figure {
    Figure::of(coarse(length, system).down(length), system)
}

/// Marks coarse enough to be read, fine enough not to swallow the length.
fn coarse(length: Length, system: System) -> Grid {
    let small = length < Length::mm(6);
    Grid::every(match system {
        System::Inch if length < Length::mm(3) => Length::inches(1, 1_000),
        System::Inch if small => Length::inches(1, 32),
        System::Inch => Length::inches(1, 16),
        System::Metric if small => Length::um(10),
        System::Metric => Length::um(500),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bounds_read_as_a_ruler_does_and_are_taken() {
        let bounds = |l, s| (least(l, s).to_string(), most(l, s).to_string());
        assert_eq!(bounds(Length::mm(15), System::Inch), ("5/8 in".into(), "9/16 in".into()));
        assert_eq!(bounds(Length::mm(400), System::Inch), ("15 3/4 in".into(), "15 11/16 in".into()));
        assert_eq!(bounds(Length::mm(15), System::Metric), ("15 mm".into(), "15 mm".into()));
        assert_eq!(bounds(Length::um(50), System::Inch), ("0.002 in".into(), "0.001 in".into()));
    }

    #[test]
    fn a_row_names_its_unit_once() {
        let inches = [Length::inches(5, 4), Length::inches(17, 4), Length::inches(11, 2)];
        assert_eq!(row(&inches, System::Inch).to_string(), "1 1/4, 4 1/4 and 5 1/2 in");
        assert_eq!(row(&inches[..1], System::Inch).to_string(), "1 1/4 in");
    }
}
