// Starts the program, and stands ready for when it stops: DEVELOPERS.md says why each thing is so.
(() => {
  "use strict";
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
      if (!started) trouble();
    } else if (event.error && !String(event.filename ?? "").includes("extension:")) {
      trouble();
    }
  }, true);
  addEventListener("unhandledrejection", (event) => {
    if (event.reason instanceof Error && !(event.reason instanceof DOMException)) trouble();
  });

  function sight() {
    const drawn = byId("sight");
    if (drawn && savedText() !== null) drawn.hidden = true;
  }

  async function start() {
    const program = byId("program");
    if (!program) throw new Error("the page lacks its program");
    const glue = await import(new URL(program.dataset.glue, document.baseURI).href);
    await glue.default({ module_or_path: new URL(program.dataset.wasm, document.baseURI) });
    started = true;
  }

  let begun = false;
  function begin() {
    if (begun) return;
    begun = true;
    start().catch((error) => {
      console.error(error);
      trouble();
    });
  }

  addEventListener("DOMContentLoaded", () => {
    sight();
    // First what is there already is painted; where nobody looks, or no browser says so, it begins all the same.
    try {
      new PerformanceObserver((seen) => {
        if (seen.getEntriesByName("first-contentful-paint").length) begin();
      }).observe({ type: "paint", buffered: true });
    } catch {
      begin();
    }
    setTimeout(begin, 400);
  });
})();
