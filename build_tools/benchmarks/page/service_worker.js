/** The plainest service worker: whatever was fetched once comes from the browser's storage. */
const STORE = "all files";

self.addEventListener("install", () => self.skipWaiting());

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET") {
    event.respondWith(kept(event.request));
  }
});

/** @param {Request} request */
async function kept(request) {
  const store = await caches.open(STORE);
  const found = await store.match(request);
  if (found) {
    return found;
  }
  const response = await fetch(request);
  await store.put(request, response.clone());
  return response;
}
