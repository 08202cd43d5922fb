// SPDX-License-Identifier: MIT
// Keeps the page, so that it opens without a network. A new page has another version, and takes the old one's place at the next visit.
const KEPT = "roll-up-side-@VERSION@", FILES = ["./", "manifest.webmanifest"];

addEventListener("install", (event) => event.waitUntil(caches.open(KEPT).then((cache) => cache.addAll(FILES)).then(() => skipWaiting())));

addEventListener("activate", (event) =>
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith("roll-up-side-") && name !== KEPT).map((name) => caches.delete(name))))
      .then(() => clients.claim()),
  ),
);

addEventListener("fetch", (event) => {
  if (event.request.method !== "GET" || new URL(event.request.url).origin !== location.origin) return;
  event.respondWith(caches.match(event.request, { ignoreSearch: true }).then((found) => found ?? fetch(event.request)));
});
