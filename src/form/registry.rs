//! The list of all forms.

use crate::project::request::Part;

use super::input::Input;
use super::resolve::{Ask, Setting, Shaped, Wants};
use super::{
    bag, band, book_cover, carrier, carton, corner_box, double_tray, drawer, favour, frustum, grid_holder, hinged_box,
    honeycomb, layered_box, lid_base, own, petal_box, pillow, prism, pyramid, row_holder, set_tray, slice, step_stand,
    tower, tray, triangle, tuck_box, tuck_ends, wallet,
};

/// Whether a form holds gifts or boxes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Holds {
    /// Gifts: it is a box.
    Gifts,
    /// Boxes: it is a holder.
    Boxes,
}

/// One form: what it is called, what it asks, and what it makes of the answers.
#[derive(Clone, Copy)]
pub struct Form {
    /// Its stable number, for links: never used again for another form.
    pub number: u8,
    /// Its key in files.
    pub key: &'static str,
    /// Its name on the page.
    pub name: &'static str,
    /// What it holds.
    pub holds: Holds,
    /// What it asks.
    pub inputs: &'static [Input],
    /// From the answers to the assembly.
    pub shape: fn(Ask) -> Shaped,
}

/// Every form of the catalogue; besides them there is [`own`].
pub const FORMS: &[Form] = &[
    tuck_box::FORM,
    tuck_ends::FORM,
    tray::FORM,
    double_tray::FORM,
    lid_base::FORM,
    drawer::FORM,
    hinged_box::FORM,
    wallet::FORM,
    bag::FORM,
    layered_box::FORM,
    triangle::FORM,
    slice::FORM,
    prism::FORM,
    pyramid::FORM,
    frustum::FORM,
    favour::FORM,
    petal_box::FORM,
    carton::FORM,
    corner_box::FORM,
    pillow::FORM,
    row_holder::FORM,
    grid_holder::FORM,
    carrier::FORM,
    band::FORM,
    tower::FORM,
    set_tray::FORM,
    book_cover::FORM,
    step_stand::FORM,
    honeycomb::FORM,
];

/// The form with this key.
#[must_use]
pub fn named(key: &str) -> Option<&'static Form> {
    const { &FORMS }.iter().chain([&own::FORM]).find(|f| f.key == key)
}

impl Form {
    /// The form of a box to show it by: itself, or one that stands in it.
    #[must_use]
    pub const fn shown_by(&self) -> &'static str {
        match self.holds {
            Holds::Gifts => self.key,
            Holds::Boxes if self.number == honeycomb::FORM.number => prism::FORM.key,
            Holds::Boxes => tuck_box::FORM.key,
        }
    }

    /// The sizes that `part` comes to in `setting`.
    #[must_use]
    pub fn sized(&self, part: &Part, setting: &Setting) -> Shaped {
        self.wanted(part, setting, Wants::Sizes)
    }

    /// Shapes `part` in `setting`.
    #[must_use]
    pub fn shaped(&self, part: &Part, setting: &Setting) -> Shaped {
        self.wanted(part, setting, Wants::Everything)
    }

    /// What is wanted of `part` in `setting`.
    #[must_use]
    pub fn wanted(&self, part: &Part, setting: &Setting, wants: Wants) -> Shaped {
        let mut ask = Ask::new(self.inputs, part, setting);
        ask.wants = wants;
        (self.shape)(ask)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_and_keys_are_unique() {
        for (i, a) in FORMS.iter().enumerate() {
            for b in &FORMS[i + 1..] {
                assert!(a.number != b.number && a.key != b.key, "{} {}", a.key, b.key);
            }
            for (j, x) in a.inputs.iter().enumerate() {
                for y in &a.inputs[j + 1..] {
                    assert!(x.number != y.number && x.key != y.key, "{} {} {}", a.key, x.key, y.key);
                }
            }
        }
    }
}
