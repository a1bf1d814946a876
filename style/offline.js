// Keeps the page working without a network: a service worker.
//
// `cargo xtask precache` fills in the two constants after each build. A new version is
// fetched whole, checked file by file, and then waits until the maker asks for it; only
// when it is in charge does it throw away the files of older ones.
"use strict";

// What this version is made of: [path, SHA-256 in hex].
const FILES = [/* files */];
// The hash over that list.
const VERSION = "/* version */";

// Two copies of the page on one host share the storage of caches: the folder is part of
// the name, and `#` can't be in a path.
const FOLDER = new URL(self.registration.scope).pathname;
const OURS = `snugfold ${FOLDER}#`;
const CACHE = OURS + VERSION;

const address = (path) => new URL(path, self.registration.scope).href;

async function hash(bytes) {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// A file that an older version already fetched is not fetched again.
async function inOlder(url, wanted) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(OURS) || name === CACHE) continue;
    const answer = await (await caches.open(name)).match(url);
    if (answer && await hash(await answer.clone().arrayBuffer()) === wanted) return answer;
  }
  return null;
}

async function keep(cache, [path, wanted]) {
  const url = address(path);
  let answer = await inOlder(url, wanted);
  if (!answer) {
    const fresh = await fetch(url, { cache: "no-cache", credentials: "same-origin" });
    if (!fresh.ok) throw new Error(`${path}: ${fresh.status}`);
    const bytes = await fresh.arrayBuffer();
    // Half an upload, or an older file from a cache on the way: try again another time
    // rather than keep a page that doesn't fit together.
    if (await hash(bytes) !== wanted) throw new Error(`${path} is not of this version`);
    // Made anew: a page may not be opened with an answer that was redirected.
    const type = fresh.headers.get("Content-Type") ?? "application/octet-stream";
    answer = new Response(bytes, { headers: { "Content-Type": type } });
  }
  await cache.put(url, answer);
}

self.addEventListener("install", (event) => {
  event.waitUntil((async () => {
    const cache = await caches.open(CACHE);
    try {
      await Promise.all(FILES.map((file) => keep(cache, file)));
    } catch (error) {
      await caches.delete(CACHE);
      throw error;
    }
  })());
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
    }
  })());
});

self.addEventListener("message", (event) => {
  if (event.data === "use this version") self.skipWaiting();
});

// The page itself by whatever address it was opened (a share link has a tail), and its
// files by their exact ones. Anything else on the host is none of our business.
const pages = new Set([address("./"), address("index.html")]);
const files = new Set(FILES.map(([path]) => address(path)));

self.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  const url = new URL(event.request.url);
  url.hash = "";
  url.search = "";
  let wanted = url.href;
  if (event.request.mode === "navigate" && pages.has(wanted)) wanted = address("index.html");
  if (!files.has(wanted)) return;
  event.respondWith((async () => {
    const kept = await (await caches.open(CACHE)).match(wanted);
    return kept ?? fetch(event.request);
  })());
});
