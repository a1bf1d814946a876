//! What forms of several parts share: trays, tubes, clearances, and the inputs that all of them ask.

use crate::allow::Layers;
use crate::measure::length::Length;
use crate::measure::system::Native;
use crate::net::cells::Cells;
use crate::net::corner::{Corner, Notch, Shape, Side};
use crate::net::flat::{Duty, Face, PanelId};
use crate::project::bound::Range;
use crate::project::finding::{Weight, What};

use super::input::{Choice, Default, Input, Kind};
use super::resolve::Ask;
use crate::assembly::moves::{Move, MoveName};
use crate::assembly::parts::{Meet, Part, Root, Size, Stand};

/// An input that is a length, from `mm.0` to `mm.1` millimetres.
pub const fn length(
    number: u8,
    key: &'static str,
    name: &'static str,
    hint: &'static str,
    mm: (i64, i64),
    default: Default,
) -> Input {
    let range = Range::new(Length::mm(mm.0), Length::mm(mm.1));
    Input { number, key, name, hint, kind: Kind::Length { range, default } }
}

/// An input that is one of several words.
pub const fn choice(
    number: u8,
    key: &'static str,
    name: &'static str,
    hint: &'static str,
    words: &'static [Choice],
) -> Input {
    Input { number, key, name, hint, kind: Kind::Choice(words) }
}

/// A word to choose.
pub const fn word(key: &'static str, name: &'static str) -> Choice {
    Choice { key, name }
}

/// Whether typed sizes are score to score or what must be free within.
pub const fn size_choice(number: u8) -> Input {
    const WORDS: &[Choice] = &[word("finished", "finished, score to score"), word("inside", "inside, at least")];
    choice(number, "size", "These sizes are", "Finished: from score to score. Inside: what must be free within", WORDS)
}

/// The clearance between two parts, in total each way.
pub const fn clearance_input(number: u8, hint: &'static str) -> Input {
    length(number, "clearance", "Clearance", hint, (1, 8), Default::Is(CLEARANCE))
}

/// Where the maker says nothing: 1/16 in, 1.5 mm in total (lid over base seen with three makers; drawer in sleeve: one
/// carton maker calls under 1 mm tight and over 2 mm loose).
pub const CLEARANCE: Native<Length> = Native::lengths(1, 16, 15);
/// Tabs are glued over this much: ½ in, 12 mm (seen with three makers).
pub const TAB: Native<Length> = Native::lengths(1, 2, 120);
/// The least that holds a tab.
pub const LEAST_TAB: Length = Length::mm(6);

/// A size typed for `key`, or where inside sizes are typed the score that leaves it free.
pub fn sized(ask: &mut Ask, key: &'static str, layers: Layers) -> Length {
    let t = ask.setting.thickness;
    sized_for(ask, key, |inside| layers.score_for(inside, t))
}

/// The same by another rule from inside to score.
pub fn sized_for(ask: &mut Ask, key: &'static str, score_for: impl Fn(Length) -> Length) -> Length {
    let asked = ask.length(key, Length::ZERO);
    let score = ask.setting.score;
    if ask.choice("size") == "inside" {
        let to = score.up(score_for(asked));
        ask.shaped.used.insert(key, to);
        to
    } else {
        let to = score.up(asked);
        ask.moved(key, to);
        to
    }
}

/// What may be left between parts of which the outer is moved up to the next groove.
#[must_use]
pub fn snapped(clearance: Length, ask: &Ask) -> Range<Length> {
    Range::new(clearance, clearance + ask.setting.score.step())
}

/// Says so where the groove leaves `free`, much more than the `asked` clearance.
pub fn remark_loose(ask: &mut Ask, free: Length, asked: Length) {
    /// More than this over the clearance is felt (common practice, no source).
    const FELT: Length = Length::mm(2);
    if free > asked + FELT {
        ask.remark(Some("clearance"), Weight::Caution, What::LooseFit { is: free, asked });
    }
}

/// Two edges that meet.
#[must_use]
pub const fn meet(edge: (PanelId, Side), along: (PanelId, Side), gap: Length) -> Meet {
    Meet { edge, along, gap }
}

/// Which panels of a part take mats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Matted {
    /// None: they slide or are hidden.
    None,
    /// The four walls.
    Walls,
    /// The walls, and what was the floor: it is the top of a lid.
    All,
    /// Only the floor of a tray that is turned over or the front of a drawer.
    Front,
}

/// An open tray: four walls of one height, a tab at each corner glued inside the side walls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tray {
    /// In plain words.
    pub name: &'static str,
    /// Left to right, score to score.
    pub width: Length,
    /// Front to back, score to score.
    pub depth: Length,
    /// Score to upper edge.
    pub height: Length,
    /// What takes mats.
    pub mats: Matted,
    /// A half-round in the front's upper edge, by its radius.
    pub notch: Option<Length>,
}

impl Tray {
    /// Free within, in card of thickness `t`; a corner tab takes one more in its own place.
    #[must_use]
    pub const fn inside(&self, t: Length) -> Size {
        Size {
            width: Layers::WALLS.inside(self.width, t),
            depth: Layers::WALLS.inside(self.depth, t),
            height: Layers::OPEN.inside(self.height, t),
        }
    }

    /// What it takes up, in card of thickness `t`.
    #[must_use]
    pub const fn outside(&self, t: Length) -> Size {
        Size {
            width: Layers::WALLS.outside(self.width, t),
            depth: Layers::WALLS.outside(self.depth, t),
            height: Layers::OPEN.outside(self.height, t),
        }
    }

    /// How far a corner tab reaches along the side wall.
    fn reach(&self, ask: &Ask) -> Length {
        let most = ask.setting.cut.down(self.depth.half() - ask.setting.clear());
        TAB.of(ask.setting.system).min(most).min(self.height)
    }

    /// Stops where walls or tabs are too small to fold; `depth` and `height` are the inputs that mend it.
    pub fn check(&self, ask: &mut Ask, depth: &'static str, height: &'static str) {
        let least = ask.setting.least_panel().max(LEAST_TAB);
        if self.height < least {
            ask.stop(height, What::PanelTooSmall { panel: "wall", is: self.height, least });
        } else if self.reach(ask) < LEAST_TAB {
            let least = ask.setting.score.up((LEAST_TAB + ask.setting.clear()) * 2);
            ask.stop(depth, What::TooShortForTabs { least });
        }
    }

    /// The part.
    #[must_use]
    pub fn part(&self, ask: &Ask) -> Part {
        let (clear, reach, h) = (ask.setting.clear(), self.reach(ask), self.height);
        let mut c = Cells::new(&[h, self.width, h], &[h, self.depth, h]);
        let floor = if self.mats == Matted::All { "top" } else { "base" };
        let base = c.panel(1, 1, floor, Duty::Floor);
        let front = c.hung(base, 90, (1, 0), "front", Duty::Wall);
        let back = c.hung(base, 90, (1, 2), "back", Duty::Wall);
        let left = c.hung(base, 90, (0, 1), "left side", Duty::Wall);
        let right = c.hung(base, 90, (2, 1), "right side", Duty::Wall);
        let tabs = [
            (front, (0, 0), "front left tab", Side::Top, Side::Left, Corner::BottomLeft),
            (front, (2, 0), "front right tab", Side::Top, Side::Right, Corner::BottomRight),
            (back, (0, 2), "back left tab", Side::Bottom, Side::Left, Corner::TopLeft),
            (back, (2, 2), "back right tab", Side::Bottom, Side::Right, Corner::TopRight),
        ]
        .map(|(wall, cell, name, free, tip, low_tip)| {
            let tab = c.hung(wall, 90, cell, name, Duty::Tab);
            c.level(tab, -2);
            c.strip(tab, free, clear);
            c.strip(tab, tip, h - reach);
            c.corner(tab, low_tip, Shape::Wedge { across: reach, down: clear });
            tab
        });
        for (tab, side) in [(0, left), (1, right), (2, left), (3, right)] {
            c.glue(tabs[tab], Face::Outside, &[side]);
        }
        match self.mats {
            Matted::None => {}
            Matted::Front => c.mat(front),
            Matted::Walls => [front, back, left, right].into_iter().for_each(|p| c.mat(p)),
            Matted::All => [base, front, back, left, right].into_iter().for_each(|p| c.mat(p)),
        }
        if let Some(radius) = self.notch {
            c.notch(front, Notch { side: Side::Top, radius });
        }
        let net = c.finish();
        let moves = vec![
            Move::even(&net, MoveName::Uprights, &[front, back]),
            Move::even(&net, MoveName::CornerTabs, &tabs),
            Move::even(&net, MoveName::SideWalls, &[left, right]),
        ];
        let z = Length::ZERO;
        let meets = vec![
            meet((tabs[0], Side::Top), (left, Side::Left), clear),
            meet((tabs[1], Side::Top), (right, Side::Right), clear),
            meet((tabs[2], Side::Bottom), (left, Side::Left), clear),
            meet((tabs[3], Side::Bottom), (right, Side::Right), clear),
            meet((left, Side::Top), (front, Side::Left), z),
            meet((left, Side::Bottom), (back, Side::Left), z),
            meet((right, Side::Top), (front, Side::Right), z),
            meet((right, Side::Bottom), (back, Side::Right), z),
        ];
        let t = ask.setting.thickness;
        Part {
            inside: Some(self.inside(t)),
            outside: Some(self.outside(t)),
            strips: None,
            ..Part::alone(self.name, net, Root::Base, meets, moves)
        }
    }
}

/// A tube, open at the front and the back: base, two sides, a top, and a tab glued inside the left side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tube {
    /// In plain words.
    pub name: &'static str,
    /// Left to right, score to score.
    pub width: Length,
    /// Bottom to top, score to score.
    pub height: Length,
    /// Front to back, edge to edge.
    pub length: Length,
    /// What takes mats.
    pub mats: Matted,
    /// A half-round in the top's front edge, by its radius.
    pub notch: Option<Length>,
}

impl Tube {
    /// The tube that leaves `clearance` round `inner` in total each way, moved up to the next groove.
    #[must_use]
    pub fn round(name: &'static str, inner: Size, length: Length, clearance: Length, ask: &Ask) -> Self {
        let (score, t) = (ask.setting.score, ask.setting.thickness);
        Self {
            name,
            width: score.up(Layers::ONE_TAB.score_for(inner.width + clearance, t)),
            height: score.up(Layers::WALLS.score_for(inner.height + clearance, t)),
            length,
            mats: Matted::None,
            notch: None,
        }
    }

    /// Stops where a side is too low to hide the tab, or it is too short to fold; `key` is the input that mends it.
    pub fn check(&self, ask: &mut Ask, key: &'static str) {
        let least = ask.setting.least_panel().max(LEAST_TAB + Length::mm(2));
        for (panel, is) in [("side", self.height), ("base", self.width), ("sleeve", self.length)] {
            if is < least {
                ask.stop(key, What::PanelTooSmall { panel, is, least });
                return;
            }
        }
    }

    /// Free within, in card of thickness `t`; the tab takes one more in its own place.
    #[must_use]
    pub const fn inside(&self, t: Length) -> Size {
        let (width, height) = (Layers::WALLS.inside(self.width, t), Layers::WALLS.inside(self.height, t));
        Size { width, depth: self.length, height }
    }

    /// What it takes up, in card of thickness `t`.
    #[must_use]
    pub const fn outside(&self, t: Length) -> Size {
        let (width, height) = (Layers::WALLS.outside(self.width, t), Layers::WALLS.outside(self.height, t));
        Size { width, depth: self.length, height }
    }

    /// Where it stands so that something of `outside`, standing with its lower left outside at `right` and `up`, lies
    /// on its floor and in the middle of what is free.
    #[must_use]
    pub fn stand(&self, (right, up): (Length, Length), outside: Size, back: Length, t: Length) -> Stand {
        // Free from 1½ t (wall and tab) to the width less ½ t.
        let free_middle = (self.width + t).half();
        let at = crate::assembly::parts::Offset {
            right: right + outside.width.half() - free_middle,
            back,
            up: up - t.half(),
        };
        Stand { at, ..Stand::default() }
    }

    /// The part.
    #[must_use]
    pub fn part(&self, ask: &Ask) -> Part {
        let clear = ask.setting.clear();
        let most = ask.setting.cut.down(self.height - Length::mm(2));
        let tab_width = TAB.of(ask.setting.system).min(most).max(LEAST_TAB);
        let mut c = Cells::new(&[self.height, self.width, self.height, self.width, tab_width], &[self.length]);
        let base = c.panel(1, 0, "base", Duty::Floor);
        let left = c.hung(base, 90, (0, 0), "left side", Duty::Wall);
        let right = c.hung(base, 90, (2, 0), "right side", Duty::Wall);
        let top = c.hung(right, 90, (3, 0), "top", Duty::Lid);
        let tab = c.hung(top, 90, (4, 0), "glue tab", Duty::Tab);
        c.level(tab, -2);
        let wedge = Shape::Wedge { across: tab_width, down: clear.min(self.length.scaled(1, 6)) };
        c.corner(tab, Corner::TopRight, wedge);
        c.corner(tab, Corner::BottomRight, wedge);
        c.glue(tab, Face::Outside, &[left]);
        match self.mats {
            Matted::None => {}
            Matted::Front => c.mat(top),
            Matted::Walls => [left, right, top].into_iter().for_each(|p| c.mat(p)),
            Matted::All => [base, left, right, top].into_iter().for_each(|p| c.mat(p)),
        }
        if let Some(radius) = self.notch {
            c.notch(top, Notch { side: Side::Top, radius });
        }
        let net = c.finish();
        let moves = vec![
            Move::even(&net, MoveName::Tab, &[tab]),
            Move::even(&net, MoveName::Walls, &[right, top]),
            Move::even(&net, MoveName::Seam, &[left]),
        ];
        let z = Length::ZERO;
        let meets = vec![meet((left, Side::Left), (top, Side::Right), z)];
        let t = ask.setting.thickness;
        Part {
            inside: Some(self.inside(t)),
            outside: Some(self.outside(t)),
            strips: None,
            ..Part::alone(self.name, net, Root::Base, meets, moves)
        }
    }
}
