//! Those who teach and sell: a class, its papers, a batch, the price.

use crate::harness::{Page, journey};

/// How many pages of paper are shown, and what is written on the first.
async fn paper(page: &Page) -> (usize, String) {
    let script = "const all = [...document.querySelectorAll('.paper-page')];
        return [all.length, all.length ? [...all[0].querySelectorAll('text')].map((t) => t.textContent).join(' ') : ''];";
    serde_json::from_value(page.js(script, Vec::new()).await).expect("a count and words")
}

/// Saves what is shown, and looks at what came down.
async fn saved(page: &Page, name: &str) -> lopdf::Document {
    page.press("Save as PDF").await;
    page.downloaded(name).await;
    // What is written to the end can be read.
    page.wait("a whole file", async || lopdf::Document::load_mem(&page.downloaded(name).await).ok()).await
}

/// A class of five in half an hour is too short, and what is said to help does help; then its papers: handout in both
/// systems, labels with names only where that is ticked, the teacher's sheet.
#[test]
fn a_class_from_its_clock_to_its_papers() {
    journey(async |page| {
        page.open("").await;
        page.press("Teach & sell").await;
        page.fill("Makers who come", "5").await;
        page.see("It takes about 1 h 21 min of 2 h 00 min: 39 min to spare").await;
        page.fill("Minutes that you have", "60").await;
        page.see("and there are 1 h 00 min").await;
        page.see("Score and cut everything out at home").await;
        page.press("scored and cut out").await;
        page.see("of 1 h 00 min: ").await;
        page.fill("Makers who come", "10000").await;
        page.see("from 1 to 500").await;
        page.fill("Makers who come", "5").await;
        page.press("Many sets over some evenings").await;
        page.fill("For whom: a name on each line", "Wilhelmina\nZebedee").await;
        page.see("2 names for 3 sets: 1 has none.").await;

        page.press("Handout").await;
        page.press("both, side by side").await;
        page.see("2 pages").await;
        let (count, words) = paper(page).await;
        assert_eq!(count, 2);
        assert!(words.contains("Work in one column only.") && !words.contains("Wilhelmina"), "{words}");
        let file = saved(page, "Thanks-to-the-neighbours-handout.pdf").await;
        assert_eq!(file.get_pages().len(), 2);

        page.press("Labels for the bags").await;
        page.see("Print").await;
        page.wait("labels without names", async || {
            let (_, words) = paper(page).await;
            (words.contains("Bag 1 of 5") && !words.contains("Wilhelmina")).then_some(())
        })
        .await;
        page.press("With the names").await;
        page.wait("labels with names", async || paper(page).await.1.contains("Wilhelmina").then_some(())).await;

        page.press("Teacher’s sheet").await;
        page.wait("the teacher's sheet", async || paper(page).await.1.contains("The clock").then_some(())).await;
        assert!(!paper(page).await.1.contains("What it costs you"));
        page.press("Tags with names").await;
        page.wait("tags", async || paper(page).await.1.ends_with("Zebedee").then_some(())).await;
    });
}

/// The letters of papers are fetched by themselves; where they do not come that is said, and asked for again they do. Names
/// of many languages are then on the tags, and read back from the file; a letter that the file lacks is named.
#[test]
fn papers_wait_for_their_letters() {
    journey(async |page| {
        page.cdp("Network.enable", serde_json::json!({})).await;
        page.cdp("Network.setBlockedURLs", serde_json::json!({ "urls": ["*papers.ttf*"] })).await;
        page.open("").await;
        page.press("Teach & sell").await;
        page.press("Handout").await;
        page.see("The letters for papers didn’t load").await;
        page.press("Flat & folded").await;
        page.press("Patterns at true scale").await;
        page.see("The letters for papers didn’t load").await;
        assert!(!page.shows("Save the pages").await && page.shows("Save its drawing").await);
        page.press("Try again").await;
        page.see("The letters for papers didn’t load").await;
        page.cdp("Network.setBlockedURLs", serde_json::json!({ "urls": [] })).await;
        page.press("Try again").await;
        page.see("Save the pages").await;
        // The browser complains about what was blocked.
        page.errors().await;

        page.press("Teach & sell").await;
        page.press("Many sets over some evenings").await;
        let names = ["Łukasz", "Zoë", "Őrs", "Şule", "Ирина", "Ελένη"];
        page.fill("For whom: a name on each line", &format!("{}\n礼", names.join("\n"))).await;
        page.press("Tags with names").await;
        page.see("“礼” (page 1): the PDF has no 礼 (U+793C). A ? stands there.").await;
        let (_, words) = paper(page).await;
        assert!(names.iter().all(|name| words.contains(name)), "{words}");
        let file = saved(page, "Thanks-to-the-neighbours-tags-with-names.pdf").await;
        let text = file.extract_text(&[1]).expect("text");
        assert!(names.iter().all(|name| text.contains(name)), "{text}");
        // A face that the browser could not load once it tries again on the next visit: then what is seen is set in the
        // same letters.
        page.reload().await;
        page.press("Teach & sell").await;
        page.press("Handout").await;
        page.wait_js("the same letters", "return document.fonts.check('16px \"Snugfold Papers\"')").await;
    });
}

/// Printed by the browser, there are the pages and nothing else, one to a sheet.
#[test]
fn the_browser_prints_the_pages_and_nothing_else() {
    journey(async |page| {
        page.open("").await;
        page.press("Teach & sell").await;
        page.press("Handout").await;
        page.press("A4").await;
        page.see("2 pages").await;
        let printed = page
            .cdp(
                "Page.printToPDF",
                serde_json::json!({ "paperWidth": 8.27, "paperHeight": 11.69, "marginTop": 0, "marginBottom": 0,
                    "marginLeft": 0, "marginRight": 0, "printBackground": true }),
            )
            .await;
        let bytes =
            page.js("return Array.from(atob(arguments[0]), (c) => c.charCodeAt(0))", vec![printed["data"].clone()]);
        let bytes: Vec<u8> = serde_json::from_value(bytes.await).expect("a file");
        let file = lopdf::Document::load_mem(&bytes).expect("it is a PDF");
        assert_eq!(file.get_pages().len(), 2);
        let text = file.extract_text(&[1, 2]).expect("text");
        assert!(text.contains("Step"), "{text}");
        assert!(!text.contains("Undo") && !text.contains("Time and price"), "{text}");
    });
}

/// Time and price follow from what is typed, in the maker's money; what is no money or too much is said, and none of it
/// is in the link.
#[test]
fn a_price_is_reckoned() {
    journey(async |page| {
        page.open("").await;
        page.press("Teach & sell").await;
        page.press("Time and price").await;
        page.see("of work for all").await;
        page.see("nobody said what a sheet costs: Kraft card, Meadow paper").await;
        page.fill("Currency", "XQZ").await;
        page.see("No currency has this code").await;
        page.fill("Currency", "JPY").await;
        page.fill("Ribbon, glue and the like, a set", "250").await;
        page.see("Material 250 JPY").await;
        // Nothing is converted: the number stays.
        page.fill("Currency", "£").await;
        page.see("Material £250.00").await;
        page.fill("Ribbon, glue and the like, a set", "2.50").await;
        page.fill("Price on the shelf, % of a shop’s", "50").await;
        page.see("it would cost you more than it brings").await;
        page.fill("Price on the shelf, % of a shop’s", "200").await;
        page.see("Rule of thumb: 4 × the material £10.00").await;
        page.fill("Rule of thumb: times the material alone", "3").await;
        page.see("Rule of thumb: 3 × the material £7.50").await;
        page.fill("Profit on top, %", "20").await;
        page.see("Price to a shop £3.00").await;
        page.see("Price on the shelf £6.00").await;
        page.fill("The stall or room", "10000000.01").await;
        page.see("Type an amount such as 12.50").await;
        page.fill("The stall or room", "35").await;
        // Each leaves 3.50.
        page.see("Sold until the stall is paid 10").await;
        page.fill("Your fee for a class", "120").await;
        // (120 + 35 + 8 × 2.50) / 8 = 21.875.
        page.see("A place in the class £21.88").await;
        page.press("Saved & shared").await;
        let link = page.value("Link to this design").await;
        let fragment = link.split_once('#').expect("a link").1;
        let shared = snugfold::keep::link::read(fragment).expect("it reads");
        assert_eq!(shared.trade, snugfold::project::trade::Trade::default());
    });
}

/// A step that is timed changes what is reckoned, on this device and after a reload, until it is forgotten.
#[test]
fn a_timed_step_is_learned_and_forgotten() {
    journey(async |page| {
        page.open("").await;
        page.press("Steps").await;
        page.see("0 of").await;
        // The page's clock hardly goes: whatever the machine does meanwhile, it was under two seconds.
        page.js("const now = performance.now.bind(performance); performance.now = () => now() / 1000;", Vec::new())
            .await;
        page.press("Time it once").await;
        page.press("Stop the clock").await;
        page.see("Not counted: under two seconds").await;
        // Ten minutes for what is reckoned with less than two: the clock is put on.
        page.press("Time it once").await;
        page.js("const now = performance.now.bind(performance); performance.now = () => now() + 600000;", Vec::new())
            .await;
        page.press("Stop the clock").await;
        page.see("Counted: 10:0").await;
        page.reload().await;
        page.press("Teach & sell").await;
        page.press("Time and price").await;
        page.see("Times follow the steps that you timed.").await;
        page.press("Forget what was timed").await;
        page.see("Times are rules of thumb").await;
        page.reload().await;
        page.press("Teach & sell").await;
        page.press("Time and price").await;
        page.see("Times are rules of thumb").await;
    });
}
