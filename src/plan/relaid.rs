//! A plan with better layouts in the place of its own.

use super::Plan;
use crate::make::sheets::{CardSheets, findings as left_out};
use crate::make::steps::cutting;
use crate::make::weave::{unwoven, woven};
use crate::project::finding::Place;

/// The plan with better layouts in the place of its own: sheets, the steps that cut them, and what they leave out. A
/// layout found for a job that is no longer asked changes nothing; all other steps stay as they are.
#[must_use]
pub fn relaid(plan: &Plan, found: &[CardSheets]) -> Plan {
    let mut plan = plan.clone();
    let (mut steps, notes) = unwoven(std::mem::take(&mut plan.steps));
    for sheets in &mut plan.sheets {
        let Some(better) = found.iter().find(|f| f.job == sheets.job && f.layout != sheets.layout) else {
            continue;
        };
        let said = left_out(sheets, &plan.pieces);
        plan.findings.retain(|f| !said.contains(f));
        plan.findings.extend(left_out(better, &plan.pieces));
        let place = Place::Card(sheets.job.card);
        let at = steps.iter().position(|s| s.place == place).unwrap_or(steps.len());
        steps.retain(|s| s.place != place);
        steps.splice(at..at, cutting(better));
        sheets.clone_from(better);
    }
    plan.steps = woven(steps, &notes);
    plan.findings.sort_by_key(|f| f.weight);
    plan
}
