// Starts the program, and stands ready for when it stops: DEVELOPERS.md says why each thing is so.
(() => {
  "use strict";
  const CURRENT = "snugfold:current";
  const folder = location.pathname.replace(/[^/]*$/, "");
  const byId = (id) => document.getElementById(id);

  let able = typeof WebAssembly === "object";
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
    const design = savedText() !== null;
    const ran = started && able;
    byId("trouble-stopped").hidden = !ran;
    byId("trouble-unstarted").hidden = ran;
    byId("trouble-host").hidden = ran || !able;
    byId("trouble-browser").hidden = able;
    byId("trouble-design").hidden = !design;
    byId("trouble-save").hidden = !design;
    byId("trouble-save").onclick = save;
    byId("trouble-again").onclick = () => location.reload();
    block.hidden = false;
    byId(design ? "trouble-save" : "trouble-again").focus();
    offerNewer().catch(() => {});
  }

  addEventListener("error", (event) => {
    const from = event.target;
    if (from instanceof HTMLScriptElement || from instanceof HTMLLinkElement) {
      if (!started && (!from.rel || from.rel === "stylesheet")) trouble();
    } else if (event.error && !String(event.filename ?? "").includes("extension:")) {
      trouble();
    }
  }, true);
  addEventListener("unhandledrejection", (event) => {
    if (event.reason instanceof Error && !(event.reason instanceof DOMException)) trouble();
  });

  function sight() {
    const drawn = byId("sight");
    // Whoever has a design of their own, or comes by a link to one, sees no other before it.
    if (drawn) drawn.hidden = savedText() !== null || location.hash.startsWith("#snug");
  }

  // Sent for at once, and checked by the browser. Not by a `preload` in the page: what that brought would be fetched
  // again where a digest is asked for.
  async function fetched() {
    const { wasm, integrity } = byId("program").dataset;
    return fetch(new URL(wasm, document.baseURI), { credentials: "same-origin", integrity });
  }

  // While it comes, where the host calls it what it is; a browser refuses that for any other kind.
  async function compiled(answer) {
    if (answer.headers.get("Content-Type") === "application/wasm") return WebAssembly.compileStreaming(answer);
    return WebAssembly.compile(await answer.arrayBuffer());
  }

  // `import()` takes no digest and the element does: what that has let through is what is imported then.
  function checked({ href, integrity }) {
    return new Promise((resolve, reject) => {
      const script = document.createElement("script");
      Object.assign(script, { type: "module", crossOrigin: "anonymous", integrity, src: href });
      script.onload = () => resolve(import(href));
      script.onerror = () => reject(new Error(`${href} did not come, or is not what was built`));
      document.head.append(script);
    });
  }

  // Asked once everything has come or has not: a style may have been refused before anybody listened.
  async function styled() {
    if (document.readyState !== "complete") await new Promise((done) => addEventListener("load", done));
    const { sheet } = document.querySelector("link[rel='stylesheet']");
    if (!sheet?.cssRules.length) throw new Error("the page's style did not come");
  }

  async function start(program) {
    const { default: run } = await checked(document.querySelector("link[rel='modulepreload'][integrity]"));
    const module = await compiled(await program);
    await styled();
    // Browsers end the compiling in a task of their own; what the program does first is long enough by itself.
    await new Promise((done) => setTimeout(done));
    // Whatever goes wrong from here on is the program's doing.
    started = true;
    await run({ module_or_path: module });
  }

  let begun = false;
  function begin(program) {
    if (begun) return;
    begun = true;
    start(program).catch((error) => {
      console.error(error);
      if (able && error instanceof WebAssembly.CompileError) able = false;
      trouble();
    });
  }

  addEventListener("DOMContentLoaded", () => {
    sight();
    const program = fetched();
    // First what is there already is painted; where nobody looks, or no browser says so, it begins all the same.
    try {
      new PerformanceObserver((seen) => {
        if (seen.getEntriesByName("first-contentful-paint").length) begin(program);
      }).observe({ type: "paint", buffered: true });
    } catch {
      begin(program);
    }
    setTimeout(() => begin(program), 400);
  });
})();
