//! Thickness of card from its grammage, and grammage from pound weights.

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

/// Grammage of `pounds` of cover stock, rounded to whole g/m².
///
/// A ream of 500 sheets of 20 × 26 in weighs that many pounds: g/m² = lb × 453.59237 ÷ (500 × 20 × 26 × 0.0254²)
/// (definition of basis weight; inch and pound exact by the 1959 agreement).
///
/// ```
/// use snugfold::stock::thickness::cover_pounds;
/// assert_eq!((cover_pounds(65), cover_pounds(80), cover_pounds(110)), (176, 216, 297));
/// ```
#[must_use]
pub const fn cover_pounds(pounds: u32) -> u32 {
    // 2.704114 g/m² for each pound, in millionths.
    ((pounds as u64 * 2_704_114 + 500_000) / 1_000_000) as u32
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

    /// ToolCross cover table: pounds, g/m² within 0.5.
    #[test]
    fn agrees_with_a_cover_table() {
        for (pounds, grammage) in [(65, 176), (80, 216), (100, 270), (110, 297), (130, 352)] {
            assert_eq!(cover_pounds(pounds), grammage, "{pounds} lb");
        }
    }
}
