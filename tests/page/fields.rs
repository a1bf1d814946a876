//! What fields take, and what they say where they don't.

use crate::harness::journey;

/// The rim of a box with leaning walls takes 20 to 300 mm, but never less than the floor: a text that is refused while
/// the last value was too small names the range that is left, and no other.
#[test]
fn a_refused_field_names_the_one_range_that_holds() {
    journey(async |page| {
        page.size(1180, 820).await;
        page.open("").await;
        page.press("millimeters").await;
        page.press("Choose another form").await;
        page.press("Box with leaning walls").await;
        page.fill("Side at the floor", "60").await;
        page.fill("Side at the rim", "25").await;
        page.see("Type a length from 60 mm to 300 mm.").await;
        page.fill("Side at the rim", "5").await;
        page.wait_js(
            "one range at the rim",
            "const at = document.querySelector('[id$=-rim-note]');
             return at?.innerText.split('Type a length').length === 2 && at.innerText.includes('60 mm to 300 mm')",
        )
        .await;
        page.fill("Side at the rim", "80").await;
        page.see_gone("Type a length").await;
    });
}

/// Digits of an Arabic keyboard and full-width ones are numbers; what is kept is plain.
#[test]
fn digits_of_other_keyboards_are_read() {
    journey(async |page| {
        page.size(1180, 820).await;
        page.open("").await;
        page.press("millimeters").await;
        for (label, typed, kept) in [
            ("Width", "٦٣", "63 mm"),
            ("Width", "６４", "64 mm"),
            ("How many sets", "۱۲", "12"),
            ("Height", "١٠٫٥ cm", "10.5 cm"),
        ] {
            page.fill(label, typed).await;
            page.wait(&format!("{label} to be {kept}"), async || (page.value(label).await == kept).then_some(())).await;
        }
        assert!(!page.shows("Type a").await);
    });
}
