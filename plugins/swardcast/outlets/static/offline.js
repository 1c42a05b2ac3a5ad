// Keeps the last course status for reading without a connection; asks no other host, and only for what is listed above.
"use strict";

const HOME = new URL("./", location.href).href;
const OURS = `swardcast ${HOME} `;
const CACHE = OURS + VERSION;
const ADDRESSES = FILES.map((file) => new URL(file, HOME).href);
const PATIENCE_MS = 8000;

const plain = (address) => address.split(/[?#]/)[0];
const isHome = (address) => [HOME, HOME + "index.html"].includes(plain(address));

function inTime(request) {
  return Promise.race([
    fetch(request),
    new Promise((_, give_up) => setTimeout(() => give_up(new Error("slow")), PATIENCE_MS)),
  ]);
}

self.addEventListener("install", (event) => {
  const all = ADDRESSES.map((address) => new Request(address, { cache: "reload" }));
  event.waitUntil(caches.open(CACHE).then((kept) => kept.addAll(all)).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith(OURS) && name !== CACHE) await caches.delete(name);
    }
    await self.clients.claim();
  })());
});

async function kept(address) {
  return (await caches.open(CACHE)).match(isHome(address) ? HOME : plain(address));
}

// The network first; then the last status, which says that it is a copy.
async function page(request) {
  try {
    if (!isHome(request.url)) return await inTime(request);
    const answer = await inTime(new Request(HOME, { cache: "no-cache" })); // or a host's hour-old copy would do
    if (answer.redirected) return Response.redirect(answer.url);
    if (answer.ok) await (await caches.open(CACHE)).put(HOME, answer.clone());
    return answer;
  } catch {
    if (!isHome(request.url)) return Response.redirect(HOME);
    const copy = await kept(HOME);
    if (!copy) return Response.error();
    const text = (await copy.text()).replace("<html ", "<html data-offline ");
    return new Response(text, { headers: { "Content-Type": "text/html; charset=utf-8" } });
  }
}

async function file(request) {
  try {
    return await inTime(request);
  } catch {
    return (await kept(request.url)) || Response.error();
  }
}

self.addEventListener("fetch", (event) => {
  const request = event.request;
  if (request.method !== "GET" || !request.url.startsWith(HOME)) return;
  if (request.mode === "navigate") event.respondWith(page(request));
  else if (ADDRESSES.includes(plain(request.url))) event.respondWith(file(request));
});
