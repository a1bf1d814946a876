//! Samples of the lines, for the list of what they mean.

use super::drawing::{Drawing, Fill, Ink, Meaning, Spot};
use super::geometry::{block, hatch};

/// How large a sample is.
const SIZE: Spot = [16.0, 6.0];

/// A sample of the line called `key`.
#[must_use]
pub fn sample(key: &str) -> Option<Drawing> {
    let mut d = Drawing { title: key.to_owned(), max: SIZE, lettering: 3.0, ..Drawing::default() };
    let middle = vec![[0.0, SIZE[1] / 2.0], [SIZE[0], SIZE[1] / 2.0]];
    let field = block([1.0, 0.5], [SIZE[0] - 1.0, SIZE[1] - 0.5]);
    match key {
        "cut" => d.line(Meaning::Cut, Ink::Page, middle),
        "mountain" => d.line(Meaning::Mountain, Ink::Page, middle),
        "valley" => d.line(Meaning::Valley, Ink::Page, middle),
        "glue" => hatch(&field, 2.0).into_iter().for_each(|[a, b]| d.line(Meaning::Glue, Ink::Page, vec![a, b])),
        "glue-behind" => {
            hatch(&field, 2.0).into_iter().for_each(|[a, b]| d.line(Meaning::GlueBehind, Ink::Page, vec![a, b]));
        }
        "cross" => {
            d.area(field.clone(), Fill::Waste);
            d.line(Meaning::Cross, Ink::Page, vec![field[0], field[2]]);
            d.line(Meaning::Cross, Ink::Page, vec![field[1], field[3]]);
        }
        _ => return None,
    }
    Some(d)
}
