//! `Shared`: a plan that many look at.

use std::ops::Deref;
use std::sync::Arc;

use crate::plan::Plan;

/// A plan that many look at. Two are alike where they are one: to compare all that follows from a design would be much
/// to do at each key, and much to download.
#[derive(Clone)]
pub struct Shared(Arc<Plan>);

impl Shared {
    /// A plan to be looked at.
    #[must_use]
    pub fn new(plan: Plan) -> Self {
        Self(Arc::new(plan))
    }
}

impl PartialEq for Shared {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl Deref for Shared {
    type Target = Plan;
    fn deref(&self) -> &Plan {
        &self.0
    }
}
