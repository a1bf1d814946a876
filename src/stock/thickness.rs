//! Thickness of card from its grammage.

use crate::measure::length::Length;

/// Bulk of plain card: thickness in micrometres for each g/m², in thousandths.
///
/// 1 150 = 1.15 cm³/g, the mean of the four rows of index card stock in the US Government Paper Specification
/// Standards (JCP K10: 165 g/m² 0.190 mm, 200 g/m² 0.230 mm, 255 g/m² 0.290 mm, 305 g/m² 0.350 mm).
const BULK_PER_MILLE: i64 = 1_150;

/// How thick card of `grammage` g/m² is likely to be, to the nearest hundredth of a millimetre.
/// Charts differ by about 10 %: a measured thickness is always better.
///
/// ```
/// use snugfold::{measure::length::Length, stock::thickness::estimated};
/// assert_eq!(estimated(255), Length::um(290)); // 255 × 1.15 = 293 µm
/// ```
#[must_use]
pub const fn estimated(grammage: u32) -> Length {
    let um = grammage as i64 * BULK_PER_MILLE / 1_000;
    Length::um((um + 5) / 10 * 10)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// US GPO / Joint Committee on Printing, standard K10 (index card stock): grammage, thickness in µm.
    /// Tolerance there: 0.013 mm (0.02 mm for the last).
    #[test]
    fn agrees_with_index_card_standard() {
        for (grammage, um, tolerance) in [(165, 190, 13), (200, 230, 13), (255, 290, 13), (305, 350, 20)] {
            assert!((estimated(grammage) - Length::um(um)).abs() <= Length::um(tolerance), "{grammage}");
        }
    }
}
