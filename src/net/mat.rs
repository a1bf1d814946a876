//! Mats: the layer of other card on a panel, smaller by the reveal on each side.

use crate::measure::length::Length;
use crate::measure::outline::{Outline, Rect};
use crate::measure::point::Point;

use super::corner::{Notch, Side, Trimmed};
use super::flat::{Frame, Matting, Net, PanelId};

/// One mat of a net.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mat {
    /// The part of its assembly, by its place there.
    pub part: usize,
    /// The panel that it is glued onto.
    pub panel: PanelId,
    /// Where it lies on the flat net; of one that is no rectangle, the upright rectangle it is cut from.
    pub rect: Rect,
    /// How far it stays away from the panel's edges.
    pub reveal: Length,
    /// A notch that goes through panel and mat together.
    pub notch: Option<Notch>,
    /// As it is once the notch is cut.
    pub outline: Outline,
}

impl Mat {
    /// As it is glued on, before a notch is cut through it.
    #[must_use]
    pub fn laid(&self) -> Outline {
        if self.notch.is_some() { self.rect.outline() } else { self.outline.clone() }
    }

    /// Whether it is more than a rectangle cut from a sheet.
    #[must_use]
    pub fn is_shaped(&self) -> bool {
        self.laid() != self.rect.outline()
    }
}

/// The least number of reveals across a panel for it to take a mat.
pub const LEAST_REVEALS: i64 = 3;

/// The mats that `net`, of the part at place `part` of its assembly, takes, and the panels that are too small for one.
///
/// ```
/// use snugfold::measure::length::Length;
/// use snugfold::net::{cells::Cells, flat::Duty, mat::mats};
/// let inch = |n, d| Length::inches(n, d);
/// let mut cells = Cells::new(&[inch(3, 1)], &[inch(5, 1)]);
/// let front = cells.panel(0, 0, "front", Duty::Wall);
/// cells.mat(front);
/// let (mats, _) = mats(&cells.finish(), 0, inch(1, 8), &[]);
/// assert_eq!((mats[0].rect.width(), mats[0].rect.height()), (inch(11, 4), inch(19, 4))); // 2¾ × 4¾
/// ```
#[must_use]
pub fn mats(net: &Net, part: usize, reveal: Length, off: &[String]) -> (Vec<Mat>, Vec<PanelId>) {
    let mut some = Vec::new();
    let mut none = Vec::new();
    for (i, panel) in net.panels.iter().enumerate() {
        if panel.mat == Matting::Never || off.iter().any(|o| o == panel.name) {
            continue;
        }
        let least = reveal * LEAST_REVEALS;
        if panel.frame != Frame::Upright {
            match panel.outline.inset(reveal).filter(|_| panel.outline.inset(least.half()).is_some()) {
                Some(outline) => {
                    some.push(Mat { part, panel: PanelId(i), rect: outline.bounds(), reveal, notch: None, outline });
                }
                None => none.push(PanelId(i)),
            }
        } else if panel.cell.width() < least || panel.cell.height() < least {
            none.push(PanelId(i));
        } else {
            let rect = panel.cell.inset(reveal);
            let notch = panel_notch(net, PanelId(i));
            let outline = match notch {
                Some(notch) => notched(rect, panel.outline.bounds(), notch),
                None => rect.outline(),
            };
            some.push(Mat { part, panel: PanelId(i), rect, reveal, notch, outline });
        }
    }
    (some, none)
}

/// The notch in a panel, read from what is taken away.
fn panel_notch(net: &Net, panel: PanelId) -> Option<Notch> {
    use super::flat::Taken;
    let waste = net.waste.iter().find(|w| w.taken == Taken::Notch && w.from == Some(panel))?;
    let (notch, body) = (waste.outline.bounds(), net.panel(panel).outline.bounds());
    let (side, radius) = if notch.min.y == body.min.y {
        (Side::Top, notch.height())
    } else if notch.max.y == body.max.y {
        (Side::Bottom, notch.height())
    } else if notch.min.x == body.min.x {
        (Side::Left, notch.width())
    } else {
        (Side::Right, notch.width())
    };
    Some(Notch { side, radius })
}

/// What a notch in the edge of a panel leaves of a mat on it: the mat's own edge lies further in, so less is cut.
fn notched(mat: Rect, panel: Rect, notch: Notch) -> Outline {
    let (near, far) = match notch.side {
        Side::Top => (mat.min.y - panel.min.y, notch.radius),
        Side::Right => (panel.max.x - mat.max.x, notch.radius),
        Side::Bottom => (panel.max.y - mat.max.y, notch.radius),
        Side::Left => (mat.min.x - panel.min.x, notch.radius),
    };
    let bite = far - near;
    if !bite.is_positive() {
        return mat.outline();
    }
    let whole = Trimmed { rect: panel, notch: Some(notch), ..Trimmed::default() }.cut().0;
    // The corners of the panel's own arc that lie on the mat, in the order in which the outline runs.
    let within = |p: &Point| p.x >= mat.min.x && p.x <= mat.max.x && p.y >= mat.min.y && p.y <= mat.max.y;
    let arc: Vec<Point> = whole.corners.into_iter().filter(within).collect();
    let mut corners = mat.outline().corners;
    let after = notch.side as usize + 1;
    corners.splice(after..after, arc);
    Outline::new(corners)
}
