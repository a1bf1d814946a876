//! The making at the table: a batch by stages, two makers, a step of one's own, the left hand, and patterns on paper.

use crate::harness::journey;
use lopdf::Document;

#[test]
fn a_batch_is_made_stage_by_stage_and_counted() {
    journey(async |page| {
        page.open("").await;
        page.fill("How many sets", "60").await;
        page.press("Steps").await;
        page.see("Make one set first").await;
        page.see("Score them all").await;
        page.see("60 times, for all sets").await;
        page.press("One step at a time, large").await;
        // On to the first step that is done many times.
        page.wait("a step that is done 60 times", async || {
            if page.shows("60 times, for all sets").await {
                return Some(());
            }
            page.press("Done, go on").await;
            None
        })
        .await;
        page.press("one more").await;
        page.press("one more").await;
        page.see("2 of 60 done").await;
        page.press("one less").await;
        page.see("1 of 60 done").await;
        page.reload().await;
        page.press("Steps").await;
        page.see("1 of 60 done").await;
        // Another maker at the same table begins at the beginning.
        page.press("maker 2").await;
        page.see("0 of").await;
        page.see_gone("1 of 60 done").await;
        page.press("maker 1").await;
        page.see("1 of 60 done").await;
    });
}

#[test]
fn a_step_of_ones_own_survives_other_sizes() {
    journey(async |page| {
        page.open("").await;
        page.press("Steps").await;
        page.press("Add a note or a step").await;
        page.fill("Your words", "Wipe the board <b>dry</b>").await;
        page.press("Keep as a step after this").await;
        page.see("Wipe the board <b>dry</b>").await;
        page.press("Add a note or a step").await;
        page.fill("Your words", "The blade is new").await;
        page.press("Keep as a note here").await;
        page.see("The blade is new").await;
        page.press("The set").await;
        page.fill("Width", "3 1/4").await;
        page.press("Steps").await;
        page.see("Wipe the board <b>dry</b>").await;
        page.see("The blade is new").await;
        page.reload().await;
        page.press("Steps").await;
        page.see("The blade is new").await;
        page.press("Take this away").await;
        page.see_gone("The blade is new").await;
        page.press("Undo").await;
        page.see("The blade is new").await;
    });
}

/// A tap goes on, a tap at the edge goes back, pedals do both; for the left hand the table is mirrored.
#[test]
fn glued_hands_walk_through_the_steps() {
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        page.press("Steps").await;
        page.see("left edge at the left fence").await;
        page.press("For the left hand").await;
        page.see("right edge at the right fence").await;
        page.see_gone("left edge at the left fence").await;
        page.press("For the left hand").await;
        page.press("One step at a time, large").await;
        page.see("1 of ").await;
        let tap = "const all = document.querySelector('.glance .words'), at = all.getBoundingClientRect();
            const x = innerWidth * arguments[0];
            all.dispatchEvent(new MouseEvent('click', { bubbles: true, clientX: x, clientY: at.top + 5 }));";
        page.js(tap, vec![0.6.into()]).await;
        page.wait_js("the second step", "return /(^|\\s)2 of \\d/.test(document.body.innerText)").await;
        page.js(tap, vec![0.1.into()]).await;
        page.wait_js("the first step", "return /(^|\\s)1 of \\d/.test(document.body.innerText)").await;
        let key = "document.querySelector('.glance')
            .dispatchEvent(new KeyboardEvent('keydown', { key: arguments[0], bubbles: true }));";
        page.js(key, vec!["PageDown".into()]).await;
        page.wait_js("the second step", "return /(^|\\s)2 of \\d/.test(document.body.innerText)").await;
        page.js(key, vec!["PageUp".into()]).await;
        page.wait_js("the first step", "return /(^|\\s)1 of \\d/.test(document.body.innerText)").await;
    });
}

#[test]
fn patterns_are_saved_as_pages_and_as_drawings() {
    journey(async |page| {
        page.open("").await;
        page.fill("Name of the set", "Allotment").await;
        page.press("Flat & folded").await;
        page.press("Patterns at true scale").await;
        page.fill("Whose design it is", "Ann 礼").await;
        page.see("“Ann 礼”: the PDF has no 礼 (U+793C)").await;
        page.fill("Whose design it is", "Designed by Ελένη").await;
        page.see_gone("the PDF has no").await;
        page.press("A4").await;
        page.see("6 pages").await;
        page.press("Save the pages (PDF)").await;
        let file = Document::load_mem(&page.downloaded("Allotment.pdf").await).expect("it is a PDF");
        assert_eq!(file.get_pages().len(), 6);
        assert!(file.extract_text(&[1]).expect("words").contains("Designed by Ελένη"));
        page.press("Save its drawing (SVG)").await;
        let drawing = String::from_utf8(page.downloaded("Linden-tea.svg").await).expect("text");
        let drawing = roxmltree::Document::parse(&drawing).expect("it is SVG");
        // The example's first blank, 9 × 7 1/2 in, and a millimetre round it.
        assert_eq!(drawing.root_element().attribute("width"), Some("230.6mm"));
        assert_eq!(drawing.root_element().attribute("height"), Some("192.5mm"));
    });
}

/// A large photo is kept small, with the set and not in its link; what is no picture is said to be none.
#[test]
fn a_picture_is_kept_with_the_set() {
    const CHOOSE: &str = "const input = document.getElementById('picture'), given = new DataTransfer();
        given.items.add(file); input.files = given.files;
        input.dispatchEvent(new Event('change', { bubbles: true })); return true;";
    journey(async |page| {
        page.open("").await;
        page.press("Saved & shared").await;
        let link = page.value("Link to this design").await;
        let large = "const c = document.createElement('canvas'); c.width = 3000; c.height = 2000;
            const on = c.getContext('2d'); on.fillStyle = '#b98552'; on.fillRect(300, 300, 2000, 1200);
            const blob = await new Promise((f) => c.toBlob(f, 'image/png'));
            const file = new File([blob], 'set.png', { type: 'image/png' });";
        page.js_async(&format!("{large} {CHOOSE}")).await;
        let size = "const i = document.querySelector('.own-picture img');
            return !!i && i.complete && i.naturalWidth === 640 && i.naturalHeight === 427";
        page.wait_js("the picture, small", size).await;
        assert_eq!(page.value("Link to this design").await, link, "a link leaves it out");
        page.press("Save as a file").await;
        page.reload().await;
        page.press("Saved & shared").await;
        page.wait_js("the picture, kept", size).await;
        page.js_async(&format!("const file = new File(['<svg'], 'x.png', {{ type: 'image/png' }}); {CHOOSE}")).await;
        page.see("This browser cannot draw that file").await;
        page.press("Take this away").await;
        page.wait_js("no picture", "return !document.querySelector('.own-picture img')").await;
        page.press("Undo").await;
        page.wait_js("the picture again", size).await;
    });
}

/// What is drawn anew keeps what is open and typed, and shows what is so: another form with other choices, another part
/// of the walk, a note half written while the rest is looked at.
#[test]
fn what_is_drawn_anew_shows_what_is_so() {
    let chosen = "const label = [...document.querySelectorAll('label')].find((l) => l.textContent.startsWith('Sides'));
        const list = label && document.getElementById(label.htmlFor);
        return list ? list.options[list.selectedIndex]?.text ?? '' : null";
    journey(async |page| {
        page.open("").await;
        page.press("millimeters").await;
        for (form, sides) in
            [("Many-sided box with lid", "six"), ("Pyramid", "four"), ("Many-sided box with lid", "six")]
        {
            page.press("Choose another form").await;
            page.press(form).await;
            page.wait(&format!("the {form} to have {sides} sides"), async || {
                (page.js(chosen, Vec::new()).await.as_str() == Some(sides)).then_some(())
            })
            .await;
        }
        page.press("Steps").await;
        page.press("Add a note or a step").await;
        page.fill("Your words", "half written").await;
        page.press("The set").await;
        page.press("Steps").await;
        page.press("Add a note or a step").await;
        assert_eq!(page.value("Your words").await, "half written");
        page.js(
            "document.getElementById('own-words')
                .dispatchEvent(new KeyboardEvent('keydown', { key: 'z', ctrlKey: true, bubbles: true }));",
            Vec::new(),
        )
        .await;
        page.press("Keep as a note here").await;
        page.see("half written").await;
        page.press("The set").await;
        // The letters were taken back at most, not the form.
        page.wait("the form to be there", async || {
            (page.js(chosen, Vec::new()).await.as_str() == Some("six")).then_some(())
        })
        .await;
    });
}
