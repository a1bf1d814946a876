//! How quickly the page answers. Figures to compare builds by, not a test: on a busy
//! machine they say more about the machine.
//!
//! After `cargo xtask test page`, with what that one tells it in the environment:
//! `cargo test --test page figures -- --ignored --nocapture`.

use crate::harness::journey;

/// The example's boxes, one kind after the other, up to so many, on sheets that hold their holder.
fn boxes(many: u16) -> String {
    let mut project = snugfold::project::example::example().expect("the example is a project");
    let some = project.boxes.clone();
    project.boxes = (1..=many)
        .zip(some.iter().cycle())
        .map(|(id, b)| snugfold::project::request::Part { id, ..b.clone() })
        .collect();
    for card in &mut project.cards {
        let large = || snugfold::measure::given::Given::read("40 in", project.system).expect("it is a length");
        (card.sheet_width, card.sheet_height) = (large(), large());
    }
    snugfold::keep::link::write(&project).expect("it is short")
}

/// A first visit over a slow phone network (1.6 Mbit/s, 150 ms there and back) with a processor four times as slow, each
/// file compressed as hosts do it: until the drawing is seen, and until a field can be typed into.
#[test]
#[ignore = "prints figures"]
fn time_of_a_first_visit() {
    let compressed = |scratch: &std::path::Path| {
        let files = scratch.join("site");
        crate::offline::copy(&crate::harness::dist(), &files);
        for entry in std::fs::read_dir(&files).expect("the copy").flatten() {
            let raw = std::fs::read(entry.path()).expect("a file");
            let mut out = Vec::new();
            std::io::Write::write_all(&mut brotli::CompressorWriter::new(&mut out, 4096, 11, 22), &raw)
                .expect("it fits");
            let mut name = entry.path().into_os_string();
            name.push(".br");
            std::fs::write(name, out).expect("room");
        }
        vec![xtask::site::Folder { at: "/".to_owned(), files }]
    };
    crate::harness::journey_through(compressed, async |page| {
        page.expect_errors();
        let slow = serde_json::json!({ "offline": false, "latency": 150, "downloadThroughput": 1_600_000 / 8, "uploadThroughput": 750_000 / 8 });
        page.cdp("Network.enable", serde_json::json!({})).await;
        page.cdp("Network.emulateNetworkConditions", slow).await;
        page.cdp("Emulation.setCPUThrottlingRate", serde_json::json!({ "rate": 4 })).await;
        let watch = "addEventListener('DOMContentLoaded', () => { const at = {}; window.firsts = at;
            const look = () => {
              if (!at.drawn && document.querySelector('#sight svg, .stage svg')) at.drawn = performance.now();
              if (!at.typed && document.querySelector('.field input')) at.typed = performance.now();
              if (!at.typed) requestAnimationFrame(look);
            }; look(); })";
        page.cdp("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source": watch })).await;
        page.open("").await;
        page.wait_js("a field", "return window.firsts && window.firsts.typed > 0").await;
        let figures = page
            .js(
                "const paint = performance.getEntriesByType('paint').map((p) => [p.name, Math.round(p.startTime)]);
                 const sent = performance.getEntriesByType('resource').map((r) => [r.name.split('/').pop(), r.encodedBodySize]);
                 return [window.firsts, paint, sent]",
                Vec::new(),
            )
            .await;
        println!("first visit, milliseconds: {figures}");
    });
}

/// The largest design that is planned, opened by its link, and keys typed into it.
#[test]
#[ignore = "prints figures"]
fn time_of_the_largest_design() {
    for (kinds, each, sets) in [(3, 1, 1), (60, 1, 1), (60, 100, 10_000)] {
        let fragment = snugfold::keep::link::write(&crate::links::many(kinds, each, sets)).expect("it is short");
        journey(async |page| {
            page.expect_errors();
            let watch = "window.long = []; window.firsts = {};
                new PerformanceObserver((all) => { for (const e of all.getEntries()) window.long.push([e.startTime, e.duration]); })
                  .observe({ type: 'longtask', buffered: true });
                addEventListener('DOMContentLoaded', () => { const at = window.firsts;
                  const look = () => {
                    if (!at.drawn && document.querySelector('.stage svg')) at.drawn = performance.now();
                    if (!at.typed && document.querySelector('#box-1-width')) at.typed = performance.now();
                    if (!at.whole && document.querySelector('.foot')) at.whole = performance.now();
                    if (!at.whole) requestAnimationFrame(look);
                  }; look(); })";
            page.cdp("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source": watch })).await;
            page.open(&format!("#{fragment}")).await;
            page.wait_js("everything", "return window.firsts && window.firsts.whole > 0").await;
            page.js_async("await new Promise((f) => setTimeout(f, 3000));").await;
            let opened = page
                .js(
                    "const l = window.long; window.long = []; return [window.firsts, l.map((t) => t.map(Math.round))]",
                    Vec::new(),
                )
                .await;
            let keys = crate::links::keys(page).await;
            let typed = page
                .js("return window.long.map((t) => Math.round(t[1])).sort((a, b) => b - a).slice(0, 12)", Vec::new())
                .await;
            println!("{kinds} kinds, {each} each, {sets} sets: opened, long tasks {opened}");
            println!("  keys at best, middle, worst {keys:?}; longest tasks while typing {typed}");
        });
    }
}

#[test]
#[ignore = "prints figures"]
fn time_from_typing_to_drawn() {
    answer("3 boxes", "", 1);
}

#[test]
#[ignore = "prints figures"]
fn time_from_typing_to_drawn_with_many_boxes() {
    for (many, slower) in [(12, 1), (12, 4), (60, 4)] {
        answer(&format!("{many} boxes, processor {slower} × as slow"), &format!("#{}", boxes(many)), slower);
    }
}

/// From a key in a field to the new drawing, with a processor so many times as slow.
fn answer(set: &str, fragment: &str, slower: u32) {
    journey(async |page| {
        page.expect_errors();
        page.open(fragment).await;
        page.cdp("Emulation.setCPUThrottlingRate", serde_json::json!({ "rate": slower })).await;
        let field = page.find("field", "Width").await;
        let times = page
            .driver
            .execute_async(
                "const [field, done] = arguments;
                 // What follows from an edit runs in microtasks; a few rounds of them see it through.
                 const settled = async () => {
                   for (let i = 0; i < 50; i += 1) await null;
                 };
                 (async () => {
                   const times = [];
                   for (let round = 0; round < 41; round += 1) {
                     // Each edit has frames of its own, as a hand's has.
                     for (let i = 0; i < 3; i += 1) {
                       await new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
                     }
                     const start = performance.now();
                     field.value = round % 2 ? '3 1/2' : '3';
                     field.dispatchEvent(new InputEvent('input', { bubbles: true }));
                     await settled();
                     const drawn = performance.now();
                     document.body.offsetHeight;
                     times.push([drawn - start, performance.now() - drawn]);
                   }
                   // The first ones run while the program is still being compiled.
                   const sorted = (at) => times.slice(5).map((t) => t[at]).sort((a, b) => a - b);
                   done([sorted(0), sorted(1)]);
                 })();",
                vec![field.to_json().expect("a field")],
            )
            .await
            .expect("figures");
        let times: [Vec<f64>; 2] = times.convert().expect("numbers");
        for (what, times) in ["the program", "the browser's layout"].into_iter().zip(times) {
            println!(
                "{set}, typing to drawn, {what}: {:.1} ms at best, {:.1} ms in the middle, {:.1} ms at worst",
                times[0],
                times[times.len() / 2],
                times[times.len() - 1]
            );
        }
    });
}

/// From the press to the file, for the twelve boxes and their holder.
#[test]
#[ignore = "prints figures"]
fn time_of_pattern_pages() {
    journey(async |page| {
        page.expect_errors();
        page.open(&format!("#{}", boxes(12))).await;
        page.press("Flat & folded").await;
        page.press("Patterns at true scale").await;
        page.see("Save the pages (PDF)").await;
        let times = page
            .js_async(
                "const give = URL.createObjectURL; let given = 0, bytes = 0;
                 URL.createObjectURL = (blob) => { given = performance.now(); bytes = blob.size; return give(blob); };
                 const all = [...document.querySelectorAll('button')];
                 const button = all.find((b) => b.innerText === 'Save the pages (PDF)');
                 const times = [];
                 for (let round = 0; round < 15; round += 1) {
                   await new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
                   const start = performance.now();
                   button.click();
                   times.push(given - start);
                 }
                 return [bytes, ...times.sort((a, b) => a - b)];",
            )
            .await;
        println!("pattern pages, bytes and milliseconds from the fastest: {times}");
    });
}

/// From the press to the pages of a handout for the twelve boxes and their holder on the page, and to its file.
#[test]
#[ignore = "prints figures"]
fn time_of_a_handout() {
    journey(async |page| {
        page.expect_errors();
        page.open(&format!("#{}", boxes(12))).await;
        page.press("Teach & sell").await;
        page.see("On paper").await;
        let times = page
            .js_async(
                "const named = (name) => [...document.querySelectorAll('button')].find((b) => b.innerText === name);
                 const frame = () => new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
                 const shown = [], saved = [];
                 let given = 0;
                 const give = URL.createObjectURL;
                 URL.createObjectURL = (blob) => { given = performance.now(); return give(blob); };
                 for (let round = 0; round < 9; round += 1) {
                   named('Tags with names').click();
                   await frame(); await frame(); await frame();
                   const start = performance.now();
                   named('Handout').click();
                   while (!document.querySelector('.paper-page')) await frame();
                   shown.push(performance.now() - start);
                   const press = performance.now();
                   named('Save as PDF').click();
                   saved.push(given - press);
                 }
                 return [document.querySelectorAll('.paper-page').length, shown.sort((a, b) => a - b), saved.sort((a, b) => a - b)];",
            )
            .await;
        println!("handout: pages, milliseconds to the page, to the file: {times}");
    });
}

/// From the press to all steps with their drawings, for the twelve boxes and their holder.
#[test]
#[ignore = "prints figures"]
fn time_to_all_steps() {
    journey(async |page| {
        page.expect_errors();
        page.open(&format!("#{}", boxes(12))).await;
        page.press("Steps").await;
        page.see("0 of").await;
        let times = page
            .js_async(
                "const named = (name) => [...document.querySelectorAll('button')].find((b) => b.innerText === name);
                 const times = [];
                 for (let round = 0; round < 15; round += 1) {
                   named('The set').click();
                   for (let i = 0; i < 20; i += 1) await new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
                   const start = performance.now();
                   named('Steps').click();
                   for (let i = 0; i < 50; i += 1) await null;
                   const program = performance.now() - start;
                   document.body.offsetHeight;
                   times.push([program, performance.now() - start]);
                 }
                 return [document.querySelectorAll('article.step svg').length, ...times.sort((a, b) => a[0] - b[0])];",
            )
            .await;
        println!("drawings; milliseconds of the program, and with layout, from the fastest: {times}");
    });
}

#[test]
#[ignore = "prints figures"]
fn time_that_the_search_takes_from_a_frame() {
    journey(async |page| {
        page.open("").await;
        page.js(
            "window.took = []; const ask = window.requestAnimationFrame.bind(window);
            window.requestAnimationFrame = (f) => ask((at) => {
                const from = performance.now(); f(at); window.took.push(performance.now() - from); });",
            Vec::new(),
        )
        .await;
        // First while the browser still compiles the program, then compiled; and what the machine adds: frames that do
        // nothing but wait for two milliseconds.
        const OF: &str = "const t = window.took.sort((a, b) => a - b); window.took = [];
            return [t.length, t[t.length >> 1], t[t.length - 1], t.filter((x) => x > 4).length];";
        for sets in ["7", "8", "9"] {
            page.press("The set").await;
            page.fill("How many sets", sets).await;
            page.press("Sheets").await;
            page.see("These are the best layouts that were found.").await;
            let figure: [f64; 4] = serde_json::from_value(page.js(OF, Vec::new()).await).expect("figures");
            println!("frames, middle ms, worst ms, over 4 ms, searching: {figure:?}");
        }
        page.js_async(
            "while (window.took.length < 90) await new Promise((next) => requestAnimationFrame(() => {
               const from = performance.now(); while (performance.now() < from + 2); setTimeout(next); }));",
        )
        .await;
        let figure: [f64; 4] = serde_json::from_value(page.js(OF, Vec::new()).await).expect("figures");
        println!("frames, middle ms, worst ms, over 4 ms, waiting: {figure:?}");
    });
}

/// From a touch on a line of a drawn form of 60 cells to its new fold on the page.
#[test]
#[ignore = "prints figures"]
fn time_of_a_touch_on_sixty_cells() {
    journey(async |page| {
        page.expect_errors();
        page.open("").await;
        page.press("Choose another form").await;
        page.press("A form of your own").await;
        // A comb: ten teeth of five cells on a back of ten.
        let name = |c: u8| char::from(b'A' + c);
        let teeth = (1..10).flat_map(|c| (2..=6).map(move |r| format!("; cut {}{r}|{}{r}", name(c - 1), name(c))));
        let at = |most: u8| (1..most).map(|n| n.to_string()).collect::<Vec<_>>().join(", ");
        let teeth: String = teeth.collect();
        let spoken = format!("blank 10 x 6; score at {}; turn; score at {}{teeth}", at(10), at(6));
        page.fill("Say it as you would at the table", &spoken).await;
        page.press("Lay out the cells").await;
        page.wait_js("sixty cells", "return document.querySelectorAll('.cells .cell').length === 60").await;
        let times = page
            .js_async(
                "const frame = () => new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
                 const slider = document.querySelector('#fold-slider');
                 slider.value = slider.max; slider.dispatchEvent(new InputEvent('input', { bubbles: true }));
                 const line = () => [...document.querySelectorAll('.cells button')].find((b) => b.ariaLabel.startsWith('between E5 and E6'));
                 line().click(); await frame();
                 const settled = async () => { for (let i = 0; i < 50; i += 1) await null; };
                 const all = [];
                 for (let round = 0; round < 25; round += 1) {
                   for (let i = 0; i < 6; i += 1) await frame();
                   const start = performance.now();
                   line().click();
                   await settled();
                   const drawn = performance.now();
                   document.body.offsetHeight;
                   all.push([drawn - start, performance.now() - drawn]);
                 }
                 const sorted = (at) => all.slice(4).map((t) => t[at]).sort((a, b) => a - b);
                 return [sorted(0), sorted(1)].map((t) => [t[0], t[t.length >> 1], t[t.length - 1]]);",
            )
            .await;
        println!("a touch on sixty cells, [program, layout], at best, in the middle, at worst, ms: {times}");
    });
}

/// What the page holds after a hundred and after 1,100 edits: elements, listeners, the script's own memory, and the
/// program's.
#[test]
#[ignore = "prints figures"]
fn memory_over_a_thousand_edits() {
    journey(async |page| {
        page.expect_errors();
        let keep = "for (const way of ['instantiate', 'instantiateStreaming']) {
              const begin = WebAssembly[way];
              WebAssembly[way] = async (...given) => {
                const made = await begin.apply(WebAssembly, given);
                window.memory ??= Object.values((made.instance ?? made).exports).find((e) => e instanceof WebAssembly.Memory);
                return made;
              };
            }";
        page.cdp("Page.addScriptToEvaluateOnNewDocument", serde_json::json!({ "source": keep })).await;
        page.open("").await;
        let field = page.find("field", "Width").await.to_json().expect("a field");
        page.cdp("Performance.enable", serde_json::json!({})).await;
        for edits in [100, 500, 500] {
            let script = "const [field, edits, done] = arguments;
                 (async () => {
                   for (let round = 0; round < edits; round += 1) {
                     await new Promise((f) => requestAnimationFrame(() => setTimeout(f)));
                     field.value = round % 2 ? '3 1/2' : '3';
                     field.dispatchEvent(new InputEvent('input', { bubbles: true }));
                   }
                   done(true);
                 })();";
            page.driver.execute_async(script, vec![field.clone(), edits.into()]).await.expect("edits");
            // What is searched for after a while is over, and kept.
            tokio::time::sleep(std::time::Duration::from_secs(4)).await;
            page.cdp("HeapProfiler.collectGarbage", serde_json::json!({})).await;
            let all = page.cdp("Performance.getMetrics", serde_json::json!({})).await;
            let of = |name: &str| {
                let found = all["metrics"].as_array().and_then(|m| m.iter().find(|m| m["name"] == name));
                found.and_then(|m| m["value"].as_f64()).unwrap_or_default()
            };
            let program =
                page.js("return window.memory?.buffer.byteLength ?? 0", Vec::new()).await.as_f64().unwrap_or(0.0);
            println!(
                "{edits} more edits: {} nodes, {} listeners, {:.2} MB of the script, {:.2} MB of the program",
                of("Nodes"),
                of("JSEventListeners"),
                of("JSHeapUsedSize") / 1e6,
                program / 1e6
            );
        }
    });
}

/// Whether long lists of sheets slow typing: the same edits with as many sheets as two hundred sets need, typed at the
/// set, and at the number of sets.
#[test]
#[ignore = "prints figures"]
fn time_from_typing_to_drawn_with_many_sheets() {
    let mut project = snugfold::project::example::example().expect("the example is a project");
    for sets in [1, 200] {
        project.sets = sets;
        let link = snugfold::keep::link::write(&project).expect("it is short");
        answer(&format!("{sets} sets"), &format!("#{link}"), 1);
    }
}
