//! Prints the drawing of the worked example as SVG: the build paints it into the page, where it is seen before the
//! program has come.

use snugfold::draw::folded::set;
use snugfold::draw::solid::View;
use snugfold::draw::svg::paint;
use snugfold::plan::shapes;
use snugfold::project::example::example;
use snugfold::project::request::Tint;

fn main() {
    let Some(project) = example() else {
        return;
    };
    let plan = shapes(&project, project.system);
    let tint = |card: u16| project.card(card).map_or_else(Tint::default, |c| c.tint);
    let mut drawing = set(&plan.boxes, plan.holder.as_ref(), &tint, 0.45, View::default());
    drawing.title.clone_from(&project.name);
    drawing.fit(4.0);
    print!("{}", paint(&drawing));
}
