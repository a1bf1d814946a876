// Starts the program, and stands ready for when it stops.
//
// This runs before anything else on the page and knows nothing of the program, so that a
// maker can still save a design when the program can't start or has stopped. It never
// throws: whatever a browser refuses, it goes on without.
(() => {
  "use strict";

  // The same name as in src/web/keys.rs (tests/house.rs holds the two together). The
  // folder goes before it: two copies on one host share their storage.
  const CURRENT = "snugfold:current";
  const folder = location.pathname.replace(/[^/]*$/, "");
  const byId = (id) => document.getElementById(id);

  let started = false;

  function say(text) {
    const note = byId("trouble-note");
    if (note) note.textContent = text;
  }

  function savedText() {
    try {
      return localStorage.getItem(folder + CURRENT);
    } catch {
      return null;
    }
  }

  function save() {
    const text = savedText();
    if (text === null) {
      say("There is no design kept on this device yet.");
      return;
    }
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    link.download = "design.snugfold.json";
    document.body.append(link);
    link.click();
    link.remove();
    say("Saved as design.snugfold.json, where this browser keeps its downloads.");
  }

  // A broken version can't offer its own successor, so this offers it.
  async function offerNewer() {
    const registration = await navigator.serviceWorker?.getRegistration();
    if (!registration) return;
    const button = byId("trouble-newer");
    const offer = () => {
      const waiting = registration.waiting;
      if (!waiting || !button) return;
      button.hidden = false;
      button.onclick = () => {
        waiting.addEventListener("statechange", () => {
          if (waiting.state === "activated") location.reload();
        });
        waiting.postMessage("use this version");
      };
    };
    offer();
    registration.addEventListener("updatefound", () => {
      registration.installing?.addEventListener("statechange", offer);
    });
    await registration.update();
  }

  function trouble() {
    const block = byId("trouble");
    if (!block || !block.hidden) return;
    const loading = byId("loading");
    if (loading) loading.hidden = true;
    // What the program drew last stays to be seen, but would not answer any more.
    const app = byId("app");
    if (app) app.inert = true;
    byId("trouble-save").onclick = save;
    byId("trouble-again").onclick = () => location.reload();
    block.hidden = false;
    byId("trouble-save").focus();
    offerNewer().catch(() => {});
  }

  addEventListener("error", (event) => {
    if (event.target instanceof HTMLScriptElement || event.target instanceof HTMLLinkElement) {
      // One of our own files didn't come.
      if (!started) trouble();
    } else if (event.error && !String(event.filename ?? "").includes("extension:")) {
      // Real exceptions carry one; a browser's own notices and foreign scripts don't.
      trouble();
    }
  }, true);
  addEventListener("unhandledrejection", (event) => {
    // The browser said no to something (a clipboard, say) and nobody listened: that is
    // no reason to stop.
    if (event.reason instanceof Error && !(event.reason instanceof DOMException)) trouble();
  });

  async function start() {
    const program = byId("program");
    if (!program) throw new Error("the page lacks its program");
    const glue = await import(new URL(program.dataset.glue, document.baseURI).href);
    await glue.default({ module_or_path: new URL(program.dataset.wasm, document.baseURI) });
    started = true;
  }

  addEventListener("DOMContentLoaded", () => {
    start().catch((error) => {
      console.error(error);
      trouble();
    });
  });
})();
