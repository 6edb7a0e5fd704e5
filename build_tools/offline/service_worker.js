/**
 * The offline worker of one edition of the handbook. The build writes before this which edition
 * it is, and three lists: WORKBOX, the files of the library, ESSENTIAL, the styles and scripts, and
 * ADDRESSES, those of all pages; and NOT_HERE, what it says of its own, by language.
 *
 * Pages come from the network first, since a caution must not go stale unseen; a copy answers
 * where there is none, or none in time. Files with a hash in their address never change, and any
 * copy of them will do. A kept edition (see keep.js) is one whole, and goes before single copies.
 */
importScripts(...WORKBOX);

const { precaching, routing, strategies } = workbox;

const PAGES = "pages";
const SECONDS_TO_WAIT = 4;

const site = new URL(self.registration.scope);
const below = (url) => (url.href.startsWith(site.href) ? url.pathname.slice(site.pathname.length) : null);

/** A page is the same whatever a link fills into its forms. */
const withoutSearch = {
  cacheKeyWillBeUsed: async ({ request }) => {
    const url = new URL(request.url);
    url.search = "";
    url.pathname = url.pathname.replace(/\/index\.html$/, "/");
    return url.href;
  },
};

/** The host is asked, and not only the browser's own memory of what it said a while ago. */
const fromTheHost = {
  requestWillFetch: async ({ request }) => new Request(request, { cache: "no-cache" }),
};

const keptEditionFirst = {
  cachedResponseWillBeUsed: async ({ cachedResponse, request }) => {
    const note = new URL("kept-edition", site).href; // see editions.js
    const name = await (await caches.match(note, { cacheName: "kept editions" }))?.text();
    const kept = name && (await caches.match(request, { cacheName: name }));
    return kept || cachedResponse;
  },
};

precaching.precache(ESSENTIAL.map((url) => ({ url, revision: null })));
precaching.cleanupOutdatedCaches();

routing.registerRoute(
  ({ url }) => /^(assets|runtime)\//.test(below(url) ?? ""),
  async ({ request }) => (await caches.match(request)) ?? fetch(request),
);

/**
 * The theme changes pages without loading them, so that Python need not start anew, where a list
 * gives it their full addresses. The build cannot know these; here they are known.
 */
routing.registerRoute(
  ({ url }) => below(url) === "sitemap.xml",
  () => {
    const entries = ADDRESSES.map((address) => `<url><loc>${new URL(address, site).href}</loc></url>`);
    const headers = { "Content-Type": "application/xml" };
    return new Response(`<urlset>${entries.join("")}</urlset>`, { headers });
  },
);

/** What a script asks the host for by all means is not answered from here: see keep.js. */
const wantsTheHost = ({ mode, cache }) => mode !== "navigate" && /^no-(cache|store)$/.test(cache);

routing.registerRoute(
  ({ url, request }) => below(url) !== null && !wantsTheHost(request),
  new strategies.NetworkFirst({
    cacheName: PAGES,
    networkTimeoutSeconds: SECONDS_TO_WAIT,
    plugins: [withoutSearch, fromTheHost, keptEditionFirst],
  }),
);

routing.setCatchHandler(async ({ request }) =>
  request.mode === "navigate" ? notHere(new URL(request.url)) : Response.error(),
);

self.addEventListener("activate", (event) => {
  event.waitUntil(self.clients.claim());
  refreshPages();
});

/** Copies of pages become those of this edition; what cannot be fetched now stays as it was. */
async function refreshPages() {
  const pages = await caches.open(PAGES);
  for (const { url } of await pages.keys()) {
    if (!url.startsWith(site.href)) {
      continue;
    }
    try {
      const response = await fetch(url, { cache: "no-cache" });
      if (response.ok) {
        await pages.put(url, response);
      }
    } catch {
      return;
    }
  }
}

/** What is said where a page is not here, in the language of its address. */
function notHere(url) {
  const folder = below(url)?.split("/")[0];
  const [language, home] = folder in NOT_HERE ? [folder, `${folder}/`] : ["en", ""];
  const [title, sentence, first] = NOT_HERE[language];
  const text =
    `<!doctype html><html lang="${language}"><head><meta charset="utf-8"><title>${title}</title>` +
    '<meta name="viewport" content="width=device-width"></head><body>' +
    `<h1>${title}</h1><p>${sentence}</p>` +
    `<p><a href="${site.pathname}${home}">${first}</a></p></body></html>`;
  return new Response(text, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
}
