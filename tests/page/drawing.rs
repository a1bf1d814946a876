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

/// Said as at the table, wrong at first; walked through with the arrows and changed by keys alone; kept on the shelf over
/// a reload, used in another box, deleted and brought back, passed on as a file.
#[test]
fn a_spoken_form_is_kept_on_the_shelf() {
    journey(async |page| {
        draw(&page).await;
        page.fill("Say it as you would at the table", "score at 1, 5").await;
        page.press("Lay out the cells").await;
        page.see("begin with its size, such as blank 9 x 7 1/2").await;
        let spoken = "blank 6 x 5; score at 1, 5; turn; score at 1, 4; A1 away; C1 away; A3 away; C3 away";
        page.fill("Say it as you would at the table", spoken).await;
        page.press("Lay out the cells").await;
        page.see("Nothing holds").await;
        page.fill("What you call this form", "Open cross").await;
        // From B2, which lies still, up to its line and on to B1; Enter picks, and again changes.
        touch(&page, "B2", 1).await;
        page.js("document.querySelector('.cells [aria-pressed=true]').focus()", Vec::new()).await;
        page.type_keys(thirtyfour::Key::Up + "").await;
        page.type_keys(thirtyfour::Key::Enter + "").await;
        page.see("between B1 and B2").await;
        page.type_keys(thirtyfour::Key::Enter + "").await;
        page.see("B1 hangs together with nothing that folds").await;
        page.press("Undo").await;
        page.see_gone("B1 hangs together with nothing that folds").await;

        page.reload().await;
        page.press("Heather honey").await;
        page.press("Choose another form").await;
        page.press("A form of your own").await;
        page.see("Open cross").await;
        page.press("Use it here: Open cross").await;
        page.see("Nothing holds").await;
        page.press("Save as a file: Open cross").await;
        let file = String::from_utf8(page.downloaded("Open cross.form.txt").await).expect("text");
        assert!(file.contains("called Open cross") && file.contains("columns 1 in, 4 in, 1 in"), "{file}");
        page.press("Delete: Open cross").await;
        page.see("Bring it back").await;
        page.press("Bring it back").await;
        page.find("button", "Use it here: Open cross").await;

        // Chosen like any other form.
        page.press("Beeswax wraps").await;
        page.press("Choose another form").await;
        page.press("Open cross").await;
        page.find("field", "What you call this form").await;
        page.see("Nothing holds").await;
    });
}
