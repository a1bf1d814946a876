//! `Planned`: one box or holder of the request, shaped, with its mats and its recipe.

use std::collections::BTreeMap;

use crate::form::assembly::{Assembly, Size};
use crate::form::registry::Form;
use crate::measure::length::Length;
use crate::net::flat::PanelId;
use crate::net::mat::Mat;
use crate::net::recipe::Recipe;
use crate::project::finding::Place;

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
    /// Its mats, of the first part's net.
    pub mats: Vec<Mat>,
    /// The card that mats are cut from.
    pub mat_card: Option<u16>,
    /// Thickness of the mats' card.
    pub mat_thickness: Length,
    /// What it takes up with its mats.
    pub outside: Size,
    /// The recipe of each part.
    pub recipes: Vec<Recipe>,
    /// The length that each input came to.
    pub used: BTreeMap<&'static str, Length>,
}

impl Planned {
    /// Mats on the panels whose name is in `names`.
    #[must_use]
    pub fn has_mat(&self, panel: PanelId) -> bool {
        self.mats.iter().any(|m| m.panel == panel)
    }
}

impl PartialEq for Planned {
    fn eq(&self, other: &Self) -> bool {
        (self.place, &self.name, self.form.key, self.count, self.card, self.thickness)
            == (other.place, &other.name, other.form.key, other.count, other.card, other.thickness)
            && (&self.assembly, &self.mats, self.mat_card, self.mat_thickness, &self.used)
                == (&other.assembly, &other.mats, other.mat_card, other.mat_thickness, &other.used)
    }
}
