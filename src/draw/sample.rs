//! A small drawing of a form as it is when nothing is typed: what it is chosen by.

use super::drawing::Drawing;
use super::folded::set;
use super::solid::View;
use crate::form::registry::{Form, Holds};
use crate::make::part::Planned;
use crate::measure::system::System;
use crate::plan::shapes;
use crate::project::example::example;
use crate::project::fresh::fresh;
use crate::project::request::Tint;

/// How many boxes stand in a holder that is shown.
const BOXES: u32 = 3;

/// `form` with its usual sizes in `system`, folded, of card of this colour; a holder with boxes half out of it. Where its
/// maker drew it, `drawn` is its text.
#[must_use]
pub fn sample(form: &Form, drawn: &str, system: System, tint: Tint) -> Option<Drawing> {
    // Of the example's card.
    let mut project = fresh(example().as_ref(), form.shown_by(), form.key);
    match form.holds {
        Holds::Gifts => {
            project.holder = None;
            project.boxes.iter_mut().for_each(|b| drawn.clone_into(&mut b.drawn));
        }
        Holds::Boxes => project.boxes.iter_mut().for_each(|b| b.count = BOXES),
    }
    let plan = shapes(&project, system);
    let there = |p: &Planned| p.form.key == form.key && p.assembly.is_some();
    if !plan.parts().any(there) {
        return None;
    }
    let mut drawing = set(&plan.boxes, plan.holder.as_ref(), &|_| tint, 0.3, View::default());
    form.name.clone_into(&mut drawing.title);
    Some(drawing)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::registry::FORMS;

    #[test]
    fn every_form_can_be_chosen_by_its_drawing() {
        for form in FORMS {
            for system in [System::Inch, System::Metric] {
                let drawing = sample(form, "", system, Tint::default());
                assert!(drawing.is_some_and(|d| d.marks.len() > 4), "{} in {system:?}", form.key);
            }
        }
    }
}
