//! A box or holder: what came of its inputs, its blanks with their recipes and panels, and its mats.

use std::collections::BTreeMap;

use serde::Serialize;
use snugfold::assembly::parts::Part as Shaped;
use snugfold::make::part::Planned;
use snugfold::measure::system::System;
use snugfold::net::flat::{Net, PanelId};
use snugfold::net::mat::Mat as Drawn;
use snugfold::net::recipe::{CutLine, Recipe, Scores, Turned};

use super::frame::{At, Measure, Room, Sides, at, corners, kind, measure, measures, place, room, sides};

/// A box or holder.
#[derive(Serialize)]
pub struct Part {
    place: String,
    name: String,
    form: &'static str,
    count: u32,
    card: u16,
    thickness: Measure,
    /// The length that each input came to.
    used: BTreeMap<&'static str, Measure>,
    /// Nothing from here on where a finding stops it.
    sizes: Option<Sizes>,
    blanks: Vec<Blank>,
    mats: Vec<Mat>,
    trims: Vec<Trim>,
}

#[derive(Serialize)]
struct Sizes {
    finished: Room,
    inside: Room,
    /// Without mats.
    outside: Room,
    outside_with_mats: Room,
}

#[derive(Serialize)]
struct Blank {
    name: &'static str,
    size: Sides,
    scores: Vec<ScoreLine>,
    /// Places marked by hand: `[x, y]` in micrometres from the blank's upper left corner.
    marks_um: Vec<[i64; 2]>,
    /// From mark to mark, by their place in that list.
    score_marks: Vec<[usize; 2]>,
    cut_marks: Vec<Vec<usize>>,
    cuts: Vec<Cut>,
    cells_away: Vec<At>,
    taken_off: Vec<TakenOff>,
    panels: Vec<Panel>,
}

/// Scores right across the blank.
#[derive(Serialize)]
struct ScoreLine {
    /// The edge at the fence, as the blank is drawn.
    from: &'static str,
    whole: Measure,
    at: Vec<Measure>,
    last: Measure,
}

#[derive(Serialize)]
struct Cut {
    from: &'static str,
    at: Measure,
    start: Measure,
    end: Measure,
}

#[derive(Serialize)]
struct TakenOff {
    panel: &'static str,
    kind: String,
    at: At,
}

#[derive(Serialize)]
struct Panel {
    name: &'static str,
    duty: String,
    /// Score to score.
    cell: At,
    /// As cut: `[x, y]` in micrometres from the blank's upper left corner.
    outline_um: Vec<[i64; 2]>,
}

#[derive(Serialize)]
struct Mat {
    /// The blank that it goes on.
    blank: &'static str,
    panel: &'static str,
    card: Option<u16>,
    size: Sides,
}

#[derive(Serialize)]
struct Trim {
    name: &'static str,
    count: u32,
    length: Measure,
    width: Measure,
}

impl Part {
    /// A box or holder in `system`.
    pub fn of(planned: &Planned, system: System) -> Self {
        let assembly = planned.assembly.as_ref();
        let used = planned.used.iter();
        let parts = assembly.map_or(&[][..], |a| &a.parts);
        let name = |m: &Drawn| parts.get(m.part).map_or("", |p| p.net.panel(m.panel).name);
        let on = |m: &Drawn| parts.get(m.part).map_or("", |p| p.name);
        Self {
            place: place(planned.place),
            name: planned.name.clone(),
            form: planned.form.key,
            count: planned.count,
            card: planned.card,
            thickness: measure(planned.thickness, system),
            used: used.map(|(key, l)| (*key, measure(*l, system))).collect(),
            sizes: assembly.map(|a| Sizes {
                finished: room(a.finished, system),
                inside: room(a.inside, system),
                outside: room(a.outside, system),
                outside_with_mats: room(planned.outside, system),
            }),
            blanks: parts.iter().zip(&planned.recipes).map(|(part, recipe)| blank(part, recipe, system)).collect(),
            mats: planned
                .mats
                .iter()
                .map(|m| Mat {
                    blank: on(m),
                    panel: name(m),
                    card: planned.mat_card,
                    size: sides(m.rect.width(), m.rect.height(), system),
                })
                .collect(),
            trims: assembly
                .map_or(&[][..], |a| &a.trims)
                .iter()
                .map(|t| Trim {
                    name: t.name,
                    count: t.count,
                    length: measure(t.length, system),
                    width: measure(t.width, system),
                })
                .collect(),
        }
    }
}

fn blank(part: &Shaped, recipe: &Recipe, system: System) -> Blank {
    let net = &part.net;
    let cells = recipe.cells.iter();
    Blank {
        name: part.name,
        size: sides(recipe.width, recipe.height, system),
        scores: recipe.scores.iter().map(|s| score(s, system)).collect(),
        marks_um: recipe.marks.places.iter().map(|p| [p.x.as_um(), p.y.as_um()]).collect(),
        score_marks: recipe.marks.scores.iter().map(|&(a, b)| [a, b]).collect(),
        cut_marks: recipe.marks.cuts.clone(),
        cuts: recipe.cuts.iter().map(|c| cut(*c, system)).collect(),
        cells_away: cells.map(|&c| at(c, system)).collect(),
        taken_off: recipe
            .off
            .iter()
            .map(|o| TakenOff { panel: net.panel(o.panel).name, kind: kind(&o.taken), at: at(o.size, system) })
            .collect(),
        panels: panels(net, system),
    }
}

fn panels(net: &Net, system: System) -> Vec<Panel> {
    let ids = (0..net.panels.len()).map(PanelId);
    ids.map(|id| net.panel(id))
        .map(|p| Panel { name: p.name, duty: kind(&p.duty), cell: at(p.cell, system), outline_um: corners(&p.outline) })
        .collect()
}

/// The edge from which places are measured.
pub fn edge(turned: Turned) -> &'static str {
    match turned {
        Turned::AsItLies => "left",
        Turned::Quarter => "top",
    }
}

fn score(scores: &Scores, system: System) -> ScoreLine {
    ScoreLine {
        from: edge(scores.turned),
        whole: measure(scores.whole, system),
        at: measures(&scores.at, system),
        last: measure(scores.last_panel(), system),
    }
}

fn cut(cut: CutLine, system: System) -> Cut {
    Cut {
        from: edge(cut.measured),
        at: measure(cut.at, system),
        start: measure(cut.from, system),
        end: measure(cut.to, system),
    }
}
