//! The moves of folding, in words.

use super::phrase::Phrase;
use crate::assembly::moves::{Gives, MoveName, Way};
use crate::assembly::parts::Part;
use crate::net::flat::Crease;
use crate::phrase;

/// What is said of each wall that is rolled over.
const ROLLED: &str = "Its free edge goes down to the floor; rub the rim flat, and press the layers together all along.";

/// What is said of a lid with a tuck: what holds it is trimmed last and least.
const CLOSED: &str = "Bow the tuck a little and slide it in behind the front. Where it will not close, trim the fronts of the \
                      dust flaps first and the tuck last, a hair at a time: they hold the lid.";

/// What is said of each end that folds over corners.
const OVER: &str = "Over the folded corners and down inside, its point to the middle of the floor.";

/// What is said of a lid with a tuck on each side.
const SIDE_TUCKS: &str = "Bend both tucks a little further in than square, lower the lid, let go: they spring outward.";

/// What is said beside the folded view of a move that is shown before and after only.
#[must_use]
pub const fn gives(why: Gives) -> &'static str {
    match why {
        Gives::Gussets => "The roof is shown open and closed: on the way its gussets bow, as card does.",
        Gives::Corners => "The walls are shown down and up: on the way their corners bow, as card does.",
        Gives::Loops => "It is shown flat and folded: where scores meet in a corner, card bends on the way.",
        Gives::Curves => "The ends are shown open and closed: on the way the card bends.",
    }
}

/// The step: what to do, and how.
#[must_use]
pub fn fold(name: MoveName, glued: bool) -> (Phrase, Vec<Phrase>) {
    let (title, line) = match name {
        MoveName::Tab => ("Turn the glue tab in", "It will lie inside the wall that it meets."),
        MoveName::Walls => ("Fold the walls round", "All the same way, with the outside outward."),
        MoveName::Seam => (
            "Glue the tab and close the ring",
            "Tab inside, edges level at the top; press and hold. It still goes flat now, and can be stored so.",
        ),
        MoveName::BaseInner => ("Fold in the inner base", "It comes from the back and lies innermost."),
        MoveName::BaseSides => (
            "Glue the two side flaps onto the inner base",
            "Press them together from inside, with a ruler's end through the open top.",
        ),
        MoveName::BaseOuter => {
            ("Glue the outer base over them", "Its edge to the back's score; stand the box up and press from inside.")
        }
        MoveName::DustFlaps => ("Fold in the dust flaps", "If they catch, trim a hair at a time."),
        MoveName::LowerDustFlaps => ("Fold in the lower dust flaps", "If they catch, trim a hair at a time."),
        MoveName::CloseBelow => ("Close the lower end", CLOSED),
        MoveName::Close => ("Close the lid", CLOSED),
        MoveName::SideLips => ("Turn down the lid's side lips", "The cut-off corners point to the front."),
        MoveName::CloseHinged => (
            "Close the lid, lips inside",
            "Side lips inside the side walls first; then bow the front lip a little and slide it in behind the front.",
        ),
        MoveName::Uprights => ("Fold up the front and the back", "What lies between them stays flat on the table."),
        MoveName::Wings => ("Fold the wings in round the corners", "They stand upright across the ends."),
        MoveName::Ends => (
            "Glue the end flaps over the wings",
            "Glue on the outside of the wings; the end flap comes up outside them.",
        ),
        MoveName::CornerTabs => ("Fold the corner tabs in", "They stand upright along the open sides."),
        MoveName::SideWalls => {
            ("Glue the side walls to the corner tabs", "Tabs inside, upper edges level; press and hold each corner.")
        }
        MoveName::UprightSides => ("Fold up the left and the right side", "The base stays flat on the table."),
        MoveName::FrontAndBack => (
            "Glue the front and the back to the corner tabs",
            "Tabs inside, upper edges level; press and hold each corner.",
        ),
        MoveName::RollFront => ("Roll the front over to the inside", ROLLED),
        MoveName::RollBack => ("Roll the back over to the inside", ROLLED),
        MoveName::RollLeft => ("Roll the left side over to the inside", ROLLED),
        MoveName::RollRight => ("Roll the right side over to the inside", ROLLED),
        MoveName::FreeWalls => ("Fold the walls up and let them fall open", "No glue here: the lid holds them up."),
        MoveName::TucksIn => ("Close the lid", SIDE_TUCKS),
        MoveName::LowerTucksIn => ("Close the lower lid", SIDE_TUCKS),
        MoveName::WallsUp => {
            ("Stand the walls up", "Each onto the tab of the next, tabs inside, rims level; press every edge.")
        }
        MoveName::Roof => (
            "Fill it and close the roof",
            "Push the gussets in at both sides, bring the ridge together over them; the ribbon through the holes.",
        ),
        MoveName::EdgesIn => (
            "Fold the front and the back edge over",
            "At the second score from the base: each point comes to the base's middle; rub it flat.",
        ),
        MoveName::CurvesIn => (
            "Glue it flat, then open it and push the ends in",
            "Fold it in two along the middle score, front onto the tab, and let it dry flat. Press both sides: it opens; \
             push the flaps in along their curves, one over the other.",
        ),
        MoveName::CornersIn => (
            "Stand all walls up, corners inward",
            "Fold each corner flat against its end, inside; front and back go round it.",
        ),
        MoveName::LeftOver => ("Fold the left end over", OVER),
        MoveName::RightOver => ("Fold the right end over", OVER),
        MoveName::Petals => (
            "Fill it and close the petals",
            "All together, or one after the other round; a label or a ribbon holds them.",
        ),
        MoveName::TabsIn => ("Bend the tabs in", "As far as the next wall will lean over them."),
        MoveName::WallsTucked => (
            "Bring the walls together",
            "Fill it first; each tab goes inside the wall beside it, the last two at once.",
        ),
        MoveName::WallsTied => {
            ("Bring the walls together", "Fill it first; then the ribbon through all holes, and a bow on the point.")
        }
        MoveName::Steps => {
            ("Fold treads and risers", "Away from you at the front of a tread, towards you at its back.")
        }
        MoveName::Hem => (
            "Turn the upper edges in and glue them down",
            "All the way over, onto the inside of front and back; rub the fold flat.",
        ),
        MoveName::BaseHalves => (
            "Fold in the side flaps and glue the back ones onto the inner base",
            "Press them together from inside; the front ones are glued under the outer base.",
        ),
        MoveName::TabbedSides => (
            "Stand the sides up and turn their tabs in",
            "Square up, then square in: the tabs lie above the back and point at each other.",
        ),
        MoveName::OverTabs => (
            "Glue the front onto the tabs",
            "Glue on the outside of the tabs; fold the bottom, lay the front over them and press.",
        ),
        MoveName::Flap => ("Close the flap", "Over the top and down outside the front; a seal or a ribbon holds it."),
        MoveName::BaseOver => (
            "Glue the outer base over them",
            "It comes from the front and reaches past the middle; stand the bag up and press from inside.",
        ),
        MoveName::StandUp => {
            ("Glue the flange to the base and let it stand", "Flange inside, its fold on the base's front edge.")
        }
        MoveName::Flanges => {
            ("Turn the flanges", "Towards you, square to the wall, so that they lie flat where they are glued.")
        }
        MoveName::Doubled => ("Glue the strip back on itself", "Edges level; rub it flat from the fold."),
        MoveName::Cover => ("Fold the spine up", "Square to the back board."),
        MoveName::Together => ("Fold the panels that move in the drawing", "Each along its own score, all at once."),
        MoveName::CoverClose => ("Close the cover", "Front board over, flap down at the open side."),
    };
    let mut lines: Vec<Phrase> = vec![line.into()];
    if glued && !title.starts_with("Glue") {
        lines.insert(0, "Glue first, where the drawing is hatched.".into());
    }
    (title.into(), lines)
}

/// The step for a move that goes by the names of its panels.
#[must_use]
pub fn together(part: &Part, index: usize, glued: bool) -> (Phrase, Vec<Phrase>) {
    let net = &part.net;
    let creases = part.moves.get(index).map_or_else(Vec::new, |m| match &m.way {
        Way::Even(all) | Way::EndOnly { creases: all, .. } => all.clone(),
        Way::Sprung { closing, .. } => closing.clone(),
        Way::TuckIn { lid, .. } => vec![*lid],
    });
    let folds: Vec<_> = creases.iter().filter_map(|c| net.creases.get(c.0)).collect();
    let names = |all: &[&Crease]| Phrase::list(all.iter().map(|c| Phrase::words(net.panel(c.far).name)), ", ", " and ");
    let mut lines: Vec<Phrase> = Vec::new();
    if glued {
        lines.push("Glue first, where the drawing is hatched.".into());
    }
    let mut said: Vec<crate::measure::angle::Angle> = Vec::new();
    for crease in &folds {
        if said.contains(&crease.fold) {
            continue;
        }
        said.push(crease.fold);
        let all: Vec<&Crease> = folds.iter().copied().filter(|c| c.fold == crease.fold).collect();
        let degrees = crease.fold.as_degrees();
        let far = match degrees.abs().round() as i32 {
            90 => "square".to_owned(),
            180 => "right over".to_owned(),
            n => format!("by {n}°"),
        };
        let way = if degrees < 0.0 { ", the outside inward" } else { "" };
        // All in one way need no names.
        let said = if all.len() == folds.len() { Phrase::words("All of it") } else { names(&all) };
        if degrees < 0.0 || far != "square" || all.len() < folds.len() {
            lines.push(phrase![said, format!(": {far}{way}.")]);
        }
    }
    if lines.is_empty() {
        lines.push("Square, the outside outward; edges level where they meet.".into());
    }
    if let Some(Way::TuckIn { tuck, .. }) = part.moves.get(index).map(|m| &m.way) {
        let tuck = net.creases.get(tuck.0).map_or("tuck", |c| net.panel(c.far).name);
        lines.push(format!("Bow the {tuck} a little and slide it in.").into());
    }
    let fold = if glued { "Glue and fold " } else { "Fold " };
    (phrase![fold, names(&folds)], lines)
}
