//! `Planned`: one box or holder of the request, shaped, with its mats and its recipe.

use std::collections::BTreeMap;

use crate::assembly::parts::{Assembly, Part, Size};
use crate::form::registry::Form;
use crate::measure::length::Length;
use crate::net::joint::Joint;
use crate::net::mat::Mat;
use crate::net::recipe::Recipe;
use crate::project::finding::Place;
use crate::project::fitting::Facing;

use super::extras::Made;

/// A part of two pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Joined {
    /// Where, and the pieces' nets.
    pub joint: Joint,
    /// The recipe of each piece.
    pub recipes: [Recipe; 2],
}

impl Joined {
    /// A joint with the recipes of its pieces.
    #[must_use]
    pub fn of(joint: Joint) -> Self {
        let recipes = joint.halves.each_ref().map(Recipe::of);
        Self { joint, recipes }
    }
}

/// A box or holder as it is planned in one system.
#[derive(Clone)]
pub struct Planned {
    /// Which one of the request.
    pub place: Place,
    /// What the maker calls it, or its form's name.
    pub name: String,
    /// Its form.
    pub form: &'static Form,
    /// How many in one set.
    pub count: u32,
    /// The card it is cut from.
    pub card: u16,
    /// That card's thickness.
    pub thickness: Length,
    /// What the form made; nothing where a finding stops it.
    pub assembly: Option<Assembly>,
    /// The mats of all its parts.
    pub mats: Vec<Mat>,
    /// What is added besides, in the order of the request.
    pub extras: Vec<Made>,
    /// What a liner and panes take from the inside.
    pub lining: Size,
    /// The card that mats are cut from.
    pub mat_card: Option<u16>,
    /// Thickness of the mats' card.
    pub mat_thickness: Length,
    /// What it takes up with its mats.
    pub outside: Size,
    /// Which of its faces looks forward in the holder.
    pub facing: Facing,
    /// Of each part the two pieces that it is cut as, where it is not one.
    pub joints: Vec<Option<Joined>>,
    /// The recipe of each part.
    pub recipes: Vec<Recipe>,
    /// The length that each input came to.
    pub used: BTreeMap<&'static str, Length>,
}

impl Planned {
    /// The mats on the part at place `part` of its assembly.
    pub fn mats_on(&self, part: usize) -> impl Iterator<Item = &Mat> {
        self.mats.iter().filter(move |m| m.part == part)
    }

    /// What it takes up as it stands in the holder.
    #[must_use]
    pub const fn stood(&self) -> Size {
        self.outside.ordered(self.facing.order())
    }

    /// The two pieces of the part at place `part`, where it is not one.
    #[must_use]
    pub fn joined(&self, part: usize) -> Option<&Joined> {
        self.joints.get(part)?.as_ref()
    }

    /// One of the two pieces of a part as if it were all there is, to be scored, cut and drawn.
    #[must_use]
    pub fn half(&self, part: usize, nth: usize) -> Option<Self> {
        let Joined { joint, recipes } = self.joined(part)?;
        let assembly = self.assembly.as_ref()?;
        let whole = assembly.parts.get(part)?;
        let net = joint.halves.get(nth)?.clone();
        let alone = Part { net, meets: Vec::new(), moves: Vec::new(), ..whole.clone() };
        Some(Self {
            assembly: Some(Assembly { parts: vec![alone], trims: Vec::new(), joins: Vec::new(), ..assembly.clone() }),
            mats: Vec::new(),
            extras: Vec::new(),
            joints: Vec::new(),
            recipes: vec![recipes.get(nth)?.clone()],
            ..self.clone()
        })
    }

    /// How many alike pieces of the part at place `part` there are in one of it.
    #[must_use]
    pub fn alike(&self, part: usize) -> u32 {
        let part = self.assembly.as_ref().and_then(|a| a.parts.get(part));
        part.map_or(1, |p| u32::try_from(p.stands.len()).unwrap_or(u32::MAX))
    }
}

impl PartialEq for Planned {
    fn eq(&self, other: &Self) -> bool {
        (self.place, &self.name, self.form.key, self.count, self.card, self.thickness)
            == (other.place, &other.name, other.form.key, other.count, other.card, other.thickness)
            && (&self.extras, self.lining) == (&other.extras, other.lining)
            && (&self.assembly, &self.mats, self.mat_card, self.mat_thickness, self.facing, &self.joints, &self.used)
                == (
                    &other.assembly,
                    &other.mats,
                    other.mat_card,
                    other.mat_thickness,
                    other.facing,
                    &other.joints,
                    &other.used,
                )
    }
}
