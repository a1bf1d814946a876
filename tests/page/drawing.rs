//! A form of the maker's own: from an empty blank to a printed handout, on the shelf, in a link and a file.

use crate::harness::{Page, journey};

/// Opens the first box's form as one to be drawn.
async fn draw(page: &Page) {
    page.open("").await;
    page.press("Choose another form").await;
    page.press("A form of your own").await;
    page.see("It folds: nothing crosses").await;
}

/// Touches something of the grid so often.
async fn touch(page: &Page, what: &str, times: usize) {
    for _ in 0..times {
        let script = "const b = [...document.querySelectorAll('.cells button')].find((b) => b.ariaLabel.startsWith(arguments[0]));
            if (b) b.click(); return Boolean(b);";
        page.wait(what, async || page.js(script, vec![what.into()]).await.as_bool().filter(|b| *b)).await;
    }
}

/// A pen pot that no catalogue has: a ring of three walls with a tab, a notch, and a base of two flaps.
#[test]
fn from_an_empty_blank_to_a_printed_handout() {
    journey(async |page| {
        draw(&page).await;
        page.press("Empty blank").await;
        page.fill("What you call this form", "Pen pot").await;
        page.fill("Column A", "2 1/2").await;
        for _ in 0..4 {
            page.press("Add a column on the right").await;
        }
        for (column, wide) in [("Column B", "2 1/2"), ("Column C", "2 1/2"), ("Column D", "2 3/8"), ("Column E", "1/2")]
        {
            page.fill(column, wide).await;
        }
        page.fill("Row 1", "4").await;
        page.press("Add a row below").await;
        page.fill("Row 2", "2 1/2").await;
        // Four flaps below the walls hang apart; two of them go, and so does what is below the tab.
        for line in ["between A2 and B2", "between B2 and C2", "between C2 and D2", "between D2 and E2"] {
            touch(&page, line, 2).await;
        }
        for cell in ["B2", "D2", "E2"] {
            touch(&page, cell, 3).await;
        }
        touch(&page, "E1", 2).await;
        page.see("E1 misses A1 by").await;
        page.press(", as column A").await;
        page.see("E1 lies on A1").await;
        page.press("Yes, glue E1 to A1").await;
        page.see_gone("E1 lies on A1").await;
        page.see("Named, the form can be made in any size").await;
        page.press("Name them").await;
        page.see_gone("Named, the form can be made in any size").await;
        page.press("How far do its sizes go?").await;
        page.see("Height: folds from").await;
        // Larger by its named size: all four walls follow.
        page.fill("Width", "3").await;
        page.see("Cut the blank 11").await;
        page.press("Undo").await;
        page.press("Steps").await;
        page.see("Fold E1").await;
        page.press("Teach & sell").await;
        page.press("Handout").await;
        page.see("pages").await;
        page.press("Save as PDF").await;
        let read = async || {
            let bytes = page.downloaded("Thanks-to-the-neighbours-handout.pdf").await;
            lopdf::Document::load_mem(&bytes).ok()
        };
        let file = page.wait("a whole file", read).await;
        let pages: Vec<u32> = file.get_pages().keys().copied().collect();
        let text = file.extract_text(&pages).expect("text");
        assert!(text.contains("Fold E1"), "{text}");
    });
}
