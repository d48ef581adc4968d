/*
 * Keeps one unit's guide in the browser, so that its addresses open without signal.
 * Before this text stands GUIDE: the unit's code, the edition, the version (a digest of
 * all that follows from it), the SHA-256 of each file by its path from here, the path of
 * the emergencies, and the paths of notices.
 *
 * A version is kept whole or not at all.  Each file is let in by its hash alone, so an
 * upload that is half done cannot get in; what is here already is not asked for again.
 */
(function () {
  "use strict";

  const PREFIX = "hatchleaf " + GUIDE.code + " ";
  const NAME = PREFIX + GUIDE.version;
  const NOTICES = PREFIX + "notices";
  /* Each kept file tells which hash it was let in by. */
  const HASH = "x-hatchleaf-sha256";
  /* At most so long is a notice waited for where an older one is at hand. */
  const PATIENCE = 2500;
  const AT_A_TIME = 4;

  const here = (path) => new URL(path, new URL("./", location.href)).href;
  const HOME = here("000/");
  const EMERGENCIES = here(GUIDE.emergencies);
  const SHARED = here("../a/");
  /* Stands in a cache that has all of its version; no address on the host. */
  const WHOLE = here("whole");
  const FILES = new Map(Object.keys(GUIDE.files).map((path) => [here(path), GUIDE.files[path]]));
  const FRESH = new Set(GUIDE.fresh.map(here));

  /* ---- Letting files in ---- */

  async function fetched(url, hash) {
    const ask = (cache) => fetch(url, { cache: cache, integrity: "sha256-" + hash });
    let answer;
    try {
      answer = await ask("no-cache");
    } catch (_) {
      /* Something on the way may have held an older one. */
      answer = await ask("reload");
    }
    if (!answer.ok) throw new Error(url + " " + answer.status);
    return answer;
  }

  async function held(cache, url, hash) {
    const found = await cache.match(url);
    return found && found.headers.get(HASH) === hash ? found : null;
  }

  async function keep(cache, others, url, hash) {
    if (await held(cache, url, hash)) return;
    let answer = null;
    for (const other of others) answer = answer || await held(other, url, hash);
    if (!answer) answer = await fetched(url, hash);
    /* A new answer: one that was redirected may not be given for a page. */
    const headers = new Headers(answer.headers);
    ["content-encoding", "content-length", "vary"].forEach((name) => headers.delete(name));
    headers.set(HASH, hash);
    await cache.put(url, new Response(await answer.arrayBuffer(), { headers: headers }));
  }

  async function ours() {
    const names = await caches.keys();
    return names.filter((name) => name.startsWith(PREFIX) && name !== NOTICES);
  }

  async function fill() {
    const cache = await caches.open(NAME);
    const names = (await ours()).filter((name) => name !== NAME);
    const others = await Promise.all(names.map((name) => caches.open(name)));
    const rest = Array.from(FILES);
    const work = async () => {
      try {
        while (rest.length) await keep(cache, others, ...rest.shift());
      } catch (error) {
        rest.length = 0;
        throw error;
      }
    };
    try {
      await Promise.all(Array.from({ length: AT_A_TIME }, work));
    } catch (error) {
      /* What came so far is of use next time, unless the phone is full. */
      if (error.name === "QuotaExceededError") await caches.delete(NAME);
      throw error;
    }
    await cache.put(WHOLE, new Response(String(Date.now())));
    if (!await isWhole()) throw new Error("not whole");
  }

  async function isWhole() {
    if (!await caches.has(NAME)) return false;
    const cache = await caches.open(NAME);
    if (!await cache.match(WHOLE)) return false;
    const found = await Promise.all(Array.from(FILES, ([url, hash]) => held(cache, url, hash)));
    return found.every(Boolean);
  }

  let filling = null;

  /* The browser may have thrown files away since: then they are fetched again. */
  async function mended() {
    if (await isWhole()) return true;
    filling = filling || fill().finally(() => { filling = null; });
    return filling.then(isWhole, () => false);
  }

  /* Pages that are open are of the version before: it stays for what they load late. */
  async function clear() {
    let last = { at: 0, name: "" };
    const names = (await ours()).filter((name) => name !== NAME);
    for (const name of names) {
      const mark = await (await caches.open(name)).match(WHOLE);
      const at = mark ? Number(await mark.text()) : 0;
      if (at > last.at) last = { at: at, name: name };
    }
    await Promise.all(names.filter((name) => name !== last.name).map((name) => caches.delete(name)));
  }

  self.addEventListener("install", (event) => {
    event.waitUntil(fill().then(() => self.skipWaiting()));
  });

  self.addEventListener("activate", (event) => {
    event.waitUntil(clear().then(() => self.clients.claim()));
  });

  self.addEventListener("message", (event) => {
    if (event.data !== "whole?" || !event.ports[0]) return;
    event.waitUntil(mended().then((whole) => {
      event.ports[0].postMessage({ whole: whole, edition: GUIDE.edition });
    }));
  });

  /* ---- Giving them ---- */

  async function kept(key, request) {
    const found = await (await caches.open(NAME)).match(key);
    return found || fetch(request);
  }

  async function keptBefore(key, request) {
    for (const name of await ours()) {
      const found = await (await caches.open(name)).match(key);
      if (found) return found;
    }
    return fetch(request);
  }

  /* A notice from the network, if it comes soon; else the last one that came. */
  async function freshest(key, event) {
    const cache = await caches.open(NOTICES);
    /* Its date or size may be that of the one before: it is fetched in full. */
    const asked = fetch(key, { cache: "no-store" }).then(async (answer) => {
      if (answer.status === 404 || answer.status === 410) await cache.delete(key);
      if (!answer.ok) return answer.status < 500 ? answer : null;
      /* One that was cut off is none. */
      await answer.clone().json();
      await cache.put(key, answer.clone());
      return answer;
    });
    event.waitUntil(asked.catch(() => null));
    const late = new Promise((done) => { setTimeout(done, PATIENCE, null); });
    const answer = await Promise.race([asked.catch(() => null), late]);
    return answer || await cache.match(key) || await asked || Response.error();
  }

  async function asked(request) {
    try {
      return await fetch(request);
    } catch (_) {
      const text = '<!doctype html><html lang="en"><meta charset="utf-8">' +
        '<meta name="viewport" content="width=device-width, initial-scale=1">' +
        "<title>No signal</title><h1>No signal</h1>" +
        "<p>This page is not among those saved on this phone.</p>" +
        '<p><a href="' + EMERGENCIES + '">Emergencies</a></p>' +
        '<p><a href="' + HOME + '">All saved pages</a></p>';
      return new Response(text, { status: 503, headers: { "content-type": "text/html; charset=utf-8" } });
    }
  }

  self.addEventListener("fetch", (event) => {
    const request = event.request;
    const url = new URL(request.url);
    if (request.method !== "GET" || url.origin !== location.origin) return;
    url.search = "";
    url.hash = "";
    const page = request.mode === "navigate";
    const key = url.href.replace(/\/index\.html$/, "/");
    if (FRESH.has(key)) {
      event.respondWith(freshest(key, event));
    } else if (FILES.has(key)) {
      event.respondWith(kept(key, request));
    } else if (page && FILES.has(key + "/")) {
      event.respondWith(Response.redirect(key + "/"));
    } else if (page && !key.endsWith(".html")) {
      event.respondWith(asked(request));
    } else if (!page && (key.startsWith(SHARED) || key.startsWith(here("./")))) {
      event.respondWith(keptBefore(key, request));
    }
  });
})();
