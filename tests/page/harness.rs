//! A browser with the built page in it, and the few verbs that a journey needs.
//!
//! Things are found as a person finds them: by the words on them. Nothing sleeps for a
//! fixed time: [`Page::wait`] looks again and again until a state is reached or patience
//! ends, and then shows what was on the page.

use crate::driver::Driver;
use serde_json::{Value, json};
use std::future::Future;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use thirtyfour::prelude::*;
use xtask::site::{Folder, Site};

/// How long a state may take to come. Machines that test are often busy with much else.
const PATIENCE: Duration = Duration::from_secs(30);

/// One maker's browser, and the site that it visits.
pub(crate) struct Page {
    pub(crate) driver: WebDriver,
    /// Stop it to take the network away.
    pub(crate) site: Site,
    /// An empty folder of this journey's own.
    pub(crate) scratch: PathBuf,
    expects_errors: bool,
}

/// The page as it was built, from the folder that `cargo xtask test` names.
pub(crate) fn dist() -> PathBuf {
    let named = std::env::var_os("SNUGFOLD_DIST").map(PathBuf::from);
    let Some(dist) = named else {
        panic!("SNUGFOLD_DIST names no built page: run `cargo xtask test page`, which builds it");
    };
    assert!(dist.join("index.html").is_file(), "no page was built in {}", dist.display());
    dist
}

/// A journey through the page, served at the top of its site.
pub(crate) fn journey(body: impl AsyncFnOnce(&mut Page)) {
    journey_through(|_| vec![Folder { at: "/".to_owned(), files: dist() }], body);
}

/// A journey through a site that is laid out for it, perhaps in its scratch folder.
pub(crate) fn journey_through(folders: impl FnOnce(&Path) -> Vec<Folder>, body: impl AsyncFnOnce(&mut Page)) {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    // Declared first, so that it goes last: after the browser has been told to quit.
    let started = Driver::start();
    let scratch = started.scratch().join("journey");
    std::fs::create_dir_all(&scratch).expect("a folder of its own");
    let site = Site::start_with(folders(&scratch), 0).expect("a free port");
    runtime.block_on(async {
        let driver = started.open().await;
        // Quits the browser even when the journey panics, and then panics on: a session
        // that is left open hangs for two minutes.
        let end = driver
            .run_and_quit(async |driver| {
                let mut page = Page { driver, site, scratch, expects_errors: false };
                body(&mut page).await;
                page.end().await;
                Ok::<(), WebDriverError>(())
            })
            .await;
        if let Err(error) = end {
            panic!("the browser did not quit: {error}");
        }
    });
}

/// Visits of one maker's browser, each of which ends with the browser being killed from outside, then one more.
pub(crate) fn visits_cut_off(count: usize, body: impl AsyncFn(&Page, usize)) {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    let started = Driver::start();
    let mut site = Some(Site::start_with(vec![Folder { at: "/".to_owned(), files: dist() }], 0).expect("a free port"));
    for visit in 0..=count {
        runtime.block_on(async {
            let driver = started.open().await;
            let (scratch, site_now) = (started.scratch().to_owned(), site.take().expect("the site"));
            let page = Page { driver, site: site_now, scratch, expects_errors: true };
            body(&page, visit).await;
            started.kill_browser();
            // There is nothing left to quit; the session's end is still told.
            let _ = page.driver.clone().quit().await;
            site = Some(page.site);
        });
    }
}

#[allow(dead_code, reason = "verbs are kept ready for the next journey")]
impl Page {
    /// Opens an address of the site: `""` for the page, or its folder, tail and all.
    pub(crate) async fn open(&self, path: &str) {
        let url = format!("{}{path}", self.site.url());
        self.driver.goto(url).await.expect("the page opens");
    }

    /// Loads the page again.
    pub(crate) async fn reload(&self) {
        self.driver.refresh().await.expect("the page opens again");
    }

    /// Runs a script in the page: `return …`; the arguments are `arguments[0]` and so on.
    pub(crate) async fn js(&self, script: &str, args: Vec<Value>) -> Value {
        match self.driver.execute(script, args).await {
            Ok(answer) => answer.json().clone(),
            Err(error) => panic!("{script}\n{error}"),
        }
    }

    /// Runs the body of an async function in the page and waits for what it returns.
    pub(crate) async fn js_async(&self, body: &str) -> Value {
        let script = format!(
            "const done = arguments[arguments.length - 1];
             (async () => {{ {body} }})().then(done, (error) => done('failed: ' + error));"
        );
        match self.driver.execute_async(script, Vec::new()).await {
            Ok(answer) => answer.json().clone(),
            Err(error) => panic!("{body}\n{error}"),
        }
    }

    /// Stops a program on the page as a panic does: by an instruction that cannot be carried out. From here on the
    /// browser's console may show errors.
    pub(crate) async fn stop(&mut self) {
        self.expects_errors = true;
        let trap = "setTimeout(() => new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(
            [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 8, 1, 0, 10, 5, 1, 3, 0, 0, 11]))))";
        self.js(trap, Vec::new()).await;
    }

    /// Waits until `look` finds what it looks for.
    pub(crate) async fn wait<T, F>(&self, what: &str, mut look: impl FnMut() -> F) -> T
    where
        F: Future<Output = Option<T>>,
    {
        let end = Instant::now() + PATIENCE;
        loop {
            if let Some(found) = look().await {
                return found;
            }
            if Instant::now() > end {
                self.give_up(what).await;
            }
            tokio::time::sleep(Duration::from_millis(40)).await;
        }
    }

    /// Waits until a script returns true. One that throws is asked again.
    pub(crate) async fn wait_js(&self, what: &str, script: &str) {
        self.wait(what, async || {
            let answer = self.driver.execute(script, Vec::new()).await.ok()?;
            (answer.json() == &Value::Bool(true)).then_some(())
        })
        .await;
    }

    /// Waits until these words can be seen, anywhere on the page.
    pub(crate) async fn see(&self, words: &str) {
        self.wait(&format!("to see “{words}”"), async || self.shows(words).await.then_some(())).await;
    }

    /// Waits until these words can't be seen any more.
    pub(crate) async fn see_gone(&self, words: &str) {
        self.wait(&format!("“{words}” to go"), async || (!self.shows(words).await).then_some(())).await;
    }

    /// Whether these words can be seen right now.
    pub(crate) async fn shows(&self, words: &str) -> bool {
        let flat = words.split_whitespace().collect::<Vec<_>>().join(" ");
        self.text().await.contains(&flat)
    }

    /// All that can be read on the page, in one line.
    pub(crate) async fn text(&self) -> String {
        let script = "return document.body ? document.body.innerText.replace(/\\s+/g, ' ') : ''";
        match self.driver.execute(script, Vec::new()).await {
            Ok(answer) => answer.json().as_str().unwrap_or_default().to_owned(),
            // In the middle of loading.
            Err(_) => String::new(),
        }
    }

    /// The thing of this role with these words on it (its accessible name; the whole of
    /// it, or a part if nothing has just that). Roles are ARIA's: `button`, `link`,
    /// `textbox`, `checkbox`, `radio`, `combobox`, `tab`, `heading`, `slider`, `img` …;
    /// `""` is anything that can be pressed, `"field"` anything that takes a value.
    pub(crate) async fn find(&self, role: &str, words: &str) -> WebElement {
        self.wait(&format!("a {role} “{words}”"), async || {
            let args = vec![json!(role), json!(words)];
            let found = self.driver.execute(include_str!("find.js"), args).await;
            found.ok()?.element().ok()
        })
        .await
    }

    /// Presses a button, link, tab, tick box … by the words on it.
    pub(crate) async fn press(&self, words: &str) {
        self.wait(&format!("to press “{words}”"), async || {
            // It may be redrawn between being found and being pressed.
            let found = self.find("", words).await;
            if found.click().await.is_ok() {
                return Some(());
            }
            // Out from under the head, which stays while the page scrolls.
            let middle = "arguments[0].scrollIntoView({ block: 'center' });";
            let _ = self.driver.execute(middle, vec![found.to_json().ok()?]).await;
            None
        })
        .await;
    }

    /// Types into the field with this label, instead of what was there, and leaves it.
    pub(crate) async fn fill(&self, label: &str, value: &str) {
        let field = self.find("field", label).await;
        // Out from under the head, which stays while the page scrolls.
        let middle = "arguments[0].scrollIntoView({ block: 'center' });";
        self.js(middle, vec![field.to_json().expect("a field")]).await;
        field.click().await.expect("the field can be reached");
        let all = Key::Control + "a";
        field.send_keys(all).await.expect("typing");
        field.send_keys(value).await.expect("typing");
        field.send_keys(Key::Tab + "").await.expect("typing");
    }

    /// Types keys into whatever has the focus.
    pub(crate) async fn type_keys(&self, keys: impl Into<thirtyfour::TypingData>) {
        let focused = self.driver.active_element().await.expect("something has the focus");
        focused.send_keys(keys).await.expect("typing");
    }

    /// Chooses an entry of the list with this label.
    pub(crate) async fn choose(&self, label: &str, entry: &str) {
        let list = self.find("combobox", label).await;
        let script = "const [list, entry] = arguments;
            const found = [...list.options].find((o) => o.text.trim() === entry);
            if (!found) return false;
            list.value = found.value;
            list.dispatchEvent(new Event('input', { bubbles: true }));
            list.dispatchEvent(new Event('change', { bubbles: true }));
            return true;";
        let list = list.to_json().expect("a list");
        let chosen = self.js(script, vec![list, json!(entry)]).await;
        assert_eq!(chosen, json!(true), "“{label}” has no entry “{entry}”");
    }

    /// The value of the field with this label.
    pub(crate) async fn value(&self, label: &str) -> String {
        let field = self.find("field", label).await;
        field.prop("value").await.ok().flatten().unwrap_or_default()
    }

    /// Gives the page this many CSS pixels: up to a tablet's, as on a tablet or phone,
    /// whose scroll bars take no room.
    pub(crate) async fn size(&self, width: u32, height: u32) {
        let metrics = json!({
            "width": width, "height": height, "deviceScaleFactor": 1, "mobile": width <= 1180,
        });
        self.cdp("Emulation.setDeviceMetricsOverride", metrics).await;
    }

    /// A request in the browser's own developer protocol.
    pub(crate) async fn cdp(&self, method: &str, params: Value) -> Value {
        match self.driver.cdp().send_raw(method, params).await {
            Ok(answer) => answer,
            Err(error) => panic!("{method}: {error}"),
        }
    }

    /// Waits for a downloaded file.
    pub(crate) async fn downloaded(&self, name: &str) -> Vec<u8> {
        let file = self.scratch.with_file_name("downloads").join(name);
        // The browser makes it empty, and may write on under another name.
        let part = self.scratch.with_file_name("downloads").join(format!("{name}.crdownload"));
        let whole = async || std::fs::read(&file).ok().filter(|bytes| !bytes.is_empty() && !part.exists());
        self.wait(&format!("the file {name}"), whole).await
    }

    /// This journey breaks something on purpose: what the browser complains about is not
    /// held against it.
    pub(crate) fn expect_errors(&mut self) {
        self.expects_errors = true;
    }

    /// What the browser has complained about since last asked: scripts that threw, files
    /// that didn't come, things that the content policy forbids.
    pub(crate) async fn errors(&self) -> Vec<String> {
        let log = self.driver.browser_log().await.expect("the browser's log");
        log.into_iter().filter(|entry| entry.level == "SEVERE").map(|entry| entry.message).collect()
    }

    async fn end(&self) {
        if !self.expects_errors {
            let errors = self.errors().await;
            assert!(errors.is_empty(), "the browser complains: {errors:#?}");
        }
    }

    async fn give_up(&self, what: &str) -> ! {
        let text = self.text().await;
        let errors = self.driver.browser_log().await.unwrap_or_default();
        let errors: Vec<_> = errors.into_iter().map(|entry| entry.message).collect();
        panic!("waited in vain for {what}\non the page: {text}\nthe browser says: {errors:#?}");
    }
}
