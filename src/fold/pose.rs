//! Panels in space for given fold angles.

use crate::assembly::parts::{Part, Root, Stand, Turn};
use crate::measure::length::Length;
use crate::measure::outline::Outline;
use crate::measure::point::Point;
use crate::net::corner::Side;
use crate::net::flat::{Crease, Net, PanelId};

use super::space::{Rigid, V3};

/// A place on the flat card, seen from its outside: right, up, and out of the card.
#[must_use]
pub const fn flat(p: Point) -> V3 {
    V3::new(p.x.as_mm(), -p.y.as_mm(), 0.0)
}

/// How far a crease is folded.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bend {
    /// Degrees, away from the reader above zero.
    pub degrees: f64,
    /// How far its move has gone, from 0 to 1: layers part as they settle.
    pub settled: f64,
}

/// Every panel of a part in space.
#[derive(Clone, Debug, PartialEq)]
pub struct Pose {
    /// For each panel, where its flat coordinates go; its own third axis points out of its outside.
    pub panels: Vec<Rigid>,
}

impl Pose {
    /// The panels of `part` with its creases bent by `bends`, layers of thickness `t` on their levels.
    /// Without a thickness, panels stand exactly on their scores.
    #[must_use]
    pub fn of(part: &Part, bends: &[Bend], t: Length) -> Self {
        let net = &part.net;
        let mut scored = vec![world(part); net.panels.len()];
        let mut settled = vec![1.0; net.panels.len()];
        for (crease, bend) in net.creases.iter().zip(bends) {
            scored[crease.far.0] = scored[crease.near.0].after(&bent(net, crease, bend.degrees));
            settled[crease.far.0] = bend.settled;
        }
        let panels = scored
            .into_iter()
            .enumerate()
            .map(|(i, at)| {
                let out = f64::from(net.panels[i].level) * t.as_mm() / 2.0 * settled[i];
                at.shifted(at.turn(V3::new(0.0, 0.0, out)))
            })
            .collect();
        Self { panels }
    }

    /// The same panels, moved together.
    #[must_use]
    pub fn placed(&self, at: &Rigid) -> Self {
        Self { panels: self.panels.iter().map(|p| at.after(p)).collect() }
    }

    /// A place on a panel, in space.
    #[must_use]
    pub fn point(&self, panel: PanelId, p: Point) -> V3 {
        self.panels[panel.0].apply(flat(p))
    }

    /// The way out of a panel's outside.
    #[must_use]
    pub fn out(&self, panel: PanelId) -> V3 {
        self.panels[panel.0].axes[2]
    }

    /// An outline of a panel, in space.
    #[must_use]
    pub fn outline(&self, panel: PanelId, outline: &Outline) -> Vec<V3> {
        outline.corners.iter().map(|&p| self.point(panel, p)).collect()
    }
}

/// Where a part's own space goes in its assembly.
#[must_use]
pub fn standing(stand: &Stand) -> Rigid {
    let v = V3::new;
    let axes = match stand.turn {
        Turn::AsFolded => Rigid::STAY.axes,
        Turn::UpsideDown => [v(-1.0, 0.0, 0.0), v(0.0, 1.0, 0.0), v(0.0, 0.0, -1.0)],
        Turn::Quarter => [v(0.0, 1.0, 0.0), v(-1.0, 0.0, 0.0), v(0.0, 0.0, 1.0)],
    };
    Rigid { axes, origin: v(stand.at.right.as_mm(), stand.at.back.as_mm(), stand.at.up.as_mm()) }
}

/// The root panel stands upright: the front before the reader, or the base below.
fn world(part: &Part) -> Rigid {
    let v = V3::new;
    let axes = match part.root {
        Root::Front => [v(1.0, 0.0, 0.0), v(0.0, 0.0, 1.0), v(0.0, -1.0, 0.0)],
        Root::Leaning(by) => {
            let by = by.as_degrees().to_radians();
            let (sine, cosine) = (libm::sin(by), libm::cos(by));
            [v(1.0, 0.0, 0.0), v(0.0, -sine, cosine), v(0.0, -cosine, -sine)]
        }
        Root::OnCorner => {
            let (a, b) = part.net.panels.first().map(|p| p.side(Side::Top)).unwrap_or_default();
            let right = (flat(b) - flat(a)).unit();
            [v(right.x, right.y, 0.0), v(right.y, -right.x, 0.0), v(0.0, 0.0, -1.0)]
        }
        Root::Base => [v(1.0, 0.0, 0.0), v(0.0, -1.0, 0.0), v(0.0, 0.0, -1.0)],
    };
    let turn = Rigid { axes, origin: V3::default() };
    let corner = part.net.panels.first().map_or(Point::default(), |p| match part.root {
        Root::Front => Point::new(p.cell.min.x, p.cell.max.y),
        Root::Base => p.cell.min,
        Root::Leaning(_) | Root::OnCorner => p.outline.corners.first().copied().unwrap_or_default(),
    });
    // The front's lower left corner, or the base's front left corner, is the origin.
    turn.shifted(-turn.turn(flat(corner)))
}

/// How the far panel of a crease that is folded by so much lies to the near one.
#[must_use]
pub fn bent(net: &Net, crease: &Crease, degrees: f64) -> Rigid {
    let (from, to) = (flat(crease.from), flat(crease.to));
    let axis = (to - from).unit();
    let centre = flat(net.panel(crease.far).middle());
    // Right-handed about the axis, the far panel goes the way of axis × (centre − from); that must be away from us.
    let away = if axis.cross(centre - from).z > 0.0 { -1.0 } else { 1.0 };
    Rigid::about(from, axis, away * degrees.to_radians())
}
