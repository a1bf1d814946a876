// Keeps the page working without a network: a service worker.
//
// `cargo xtask precache` fills in the two constants after each build. A new version is
// taken whole, checked file by file, and then waits until the maker asks for it; only
// when it is in charge does it throw away the files of older ones.
"use strict";

// What this version is made of: [path, SHA-256 in hex, media type].
const FILES = [/* files */];
// The hash over that list.
const VERSION = "/* version */";

// Two copies of the page on one host share the storage of caches: the folder is part of
// the name, and `#` can't be in a path.
const FOLDER = new URL(self.registration.scope).pathname;
const OURS = `snugfold ${FOLDER}#`;
const CACHE = OURS + VERSION;

const address = (path) => new URL(path, self.registration.scope).href;

// The page itself is asked for as visitors do, by its folder.
const source = (path) => address(path === "index.html" ? "./" : path);

// The page works without its pictures; where the letters of papers are missing it says so, and asks for them again.
const optional = (kind) => /^(image|font)\/|^text\/plain|^application\/manifest\+json/.test(kind);

// The bytes of an answer where they are what this version is made of.
async function whole(answer, wanted) {
  if (!answer?.ok) return null;
  const bytes = await answer.arrayBuffer();
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  const hex = Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
  return hex === wanted ? bytes : null;
}

// Made anew: a page may not be opened with an answer that was redirected, and a host may have called the file
// something that it is not.
function kept(bytes, answer, kind) {
  const headers = new Headers(answer.headers);
  for (const name of ["Content-Encoding", "Content-Length", "Vary"]) headers.delete(name);
  headers.set("Content-Type", kind);
  return new Response(bytes, { headers });
}

// A file that an older version already has is not fetched again.
async function older(path, wanted, kind) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(OURS) || name === CACHE) continue;
    const answer = await (await caches.open(name)).match(address(path));
    const bytes = await whole(answer, wanted);
    if (bytes) return kept(bytes, answer, kind);
  }
  return null;
}

// What the page has just fetched lies in the browser's own cache. Where that, or a cache on the way, has another
// file, the host itself is asked.
async function fetched(path, wanted, kind) {
  for (const cache of ["force-cache", "reload"]) {
    const answer = await fetch(source(path), { cache, credentials: "same-origin" });
    const bytes = await whole(answer, wanted);
    if (bytes) return kept(bytes, answer, kind);
  }
  // Half an upload: rather none than a page that doesn't fit together. It is tried again at the next visit.
  throw new Error(`${path} is not of this version`);
}

async function keep(cache, [path, wanted, kind]) {
  try {
    const answer = (await older(path, wanted, kind)) ?? (await fetched(path, wanted, kind));
    await cache.put(address(path), answer);
  } catch (error) {
    if (!optional(kind)) throw error;
  }
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

// What could not be had before, or was thrown away by the browser, is kept at the next visit.
async function mend() {
  const cache = await caches.open(CACHE);
  const there = new Set((await cache.keys()).map((request) => request.url));
  const missing = FILES.filter(([path]) => !there.has(address(path)));
  await Promise.allSettled(missing.map((file) => keep(cache, file)));
}

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
  if (event.request.mode === "navigate" && pages.has(wanted)) {
    wanted = address("index.html");
    event.waitUntil(mend());
  }
  if (!files.has(wanted)) return;
  event.respondWith((async () => {
    const answer = await (await caches.open(CACHE)).match(wanted);
    return answer ?? fetch(event.request);
  })());
});
