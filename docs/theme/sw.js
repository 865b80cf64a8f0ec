// @ts-check
// The service worker: every page and the small engine are kept after one visit, the full engine once it was used. What is
// kept agrees with the digest that the build wrote below, so a host's error page or a cut file is never taken for a part.

/** @type {{edition: string, kept: Record<string, string>, later: Record<string, string>}} digests by path */
const BOOK = { edition: '', kept: {}, later: {} }; // the build fills this line

const here = /** @type {any} */ (self);
/** @type {string} */
const SCOPE = here.registration.scope;
const CACHE = `book ${SCOPE} ${BOOK.edition}`;
const FULL_CACHE = `full-engine ${SCOPE}`;
const AT_ONCE = 4; // files at a time, so that the line is left to the reader too
/** @type {{cache: RequestCache, after: number}[]} past every cache from the second try; milliseconds */
const TRIES = [{ cache: 'default', after: 0 }, { cache: 'reload', after: 1_000 }, { cache: 'reload', after: 5_000 }];

/** @param {number} milliseconds */
const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** @param {BufferSource} bytes */
async function digest(bytes) {
  const found = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...found].map((byte) => byte.toString(16).padStart(2, '0')).join('').slice(0, 32);
}

/** The response to keep, if all its bytes came. @param {Response} response @param {string} wanted @returns {Promise<Response | null>} */
async function checked(response, wanted) {
  if (!response.ok) return null;
  const bytes = await response.arrayBuffer();
  if ((await digest(bytes)) !== wanted) return null;
  const headers = new Headers(response.headers); // the host's policy stays with its files
  for (const name of ['Content-Encoding', 'Content-Length', 'Transfer-Encoding']) headers.delete(name);
  headers.set('X-Digest', wanted);
  return new Response(bytes, { headers });
}

/** Find a file that an earlier edition holds too. @param {string} path @returns {Promise<Response | undefined>} */
async function fromEarlier(path) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(`book ${SCOPE} `) || name === CACHE) continue;
    const held = await (await caches.open(name)).match(SCOPE + path);
    if (held?.headers.get('X-Digest') === BOOK.kept[path]) return held;
  }
  return undefined;
}

/** @param {Cache} cache @param {string} path */
async function keep(cache, path) {
  if (await cache.match(SCOPE + path)) return; // it came whole in an earlier attempt
  const earlier = await fromEarlier(path);
  if (earlier) return cache.put(SCOPE + path, earlier);
  let why = '';
  for (const { cache: mode, after } of TRIES) {
    await pause(after);
    try {
      const response = await fetch(SCOPE + path, { cache: mode });
      why = response.ok ? 'came cut or changed' : `was answered with ${response.status}`;
      const whole = await checked(response, BOOK.kept[path]);
      if (whole) return await cache.put(SCOPE + path, whole);
    } catch (error) {
      why = error instanceof DOMException && error.name === 'QuotaExceededError' ? 'found no room on this device' : 'could not be reached';
    }
  }
  throw new Error(`${path} ${why}`);
}

async function install() {
  const cache = await caches.open(CACHE);
  const queue = Object.keys(BOOK.kept);
  let failed = '';
  const work = async () => {
    for (let path = queue.shift(); path !== undefined && !failed; path = queue.shift()) {
      await keep(cache, path).catch((error) => (failed = error.message));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  if (!failed) return;
  for (const client of await here.clients.matchAll({ type: 'window', includeUncontrolled: true })) {
    if (client.url.startsWith(SCOPE)) client.postMessage({ type: 'MISSING', what: failed });
  }
  throw new Error(failed);
}

/** Take away what belongs to other editions of this book. */
async function activate() {
  for (const name of await caches.keys()) {
    const older = name.startsWith(`book ${SCOPE} `) && name !== CACHE;
    if (older || (name.startsWith('workbox-') && name.endsWith(SCOPE))) await caches.delete(name);
  }
  for (const name of ['full-engine', FULL_CACHE]) {
    if (!(await caches.has(name))) continue;
    const cache = await caches.open(name);
    for (const { url } of await cache.keys()) {
      const stays = name === FULL_CACHE && url.slice(SCOPE.length) in BOOK.later;
      if (url.startsWith(SCOPE) && !stays) await cache.delete(url);
    }
  }
  await here.clients.claim();
}

/** @param {string} path @param {Request} request */
async function kept(path, request) {
  const held = await (await caches.open(CACHE)).match(SCOPE + path);
  return held ?? fetch(request);
}

/** The full engine is handed on as it comes in, so that its progress shows, and kept once all of it came. @param {any} event @param {string} path */
async function later(event, path) {
  const cache = await caches.open(FULL_CACHE);
  const held = await cache.match(SCOPE + path);
  if (held) return held;
  const response = await fetch(event.request);
  const copy = response.clone();
  event.waitUntil(checked(copy, BOOK.later[path]).then((whole) => whole && cache.put(SCOPE + path, whole)).catch(() => undefined));
  return response;
}

here.addEventListener('install', (/** @type {any} */ event) => event.waitUntil(install()));
here.addEventListener('activate', (/** @type {any} */ event) => event.waitUntil(activate()));
// A new edition waits until the reader takes it, so that a page and its calculators are always of one edition.
here.addEventListener('message', (/** @type {any} */ event) => event.data?.type === 'SKIP_WAITING' && here.skipWaiting());
here.addEventListener('fetch', (/** @type {any} */ event) => {
  const address = event.request.url.split(/[?#]/)[0];
  if (event.request.method !== 'GET' || !address.startsWith(SCOPE)) return;
  const path = decodeURI(address.slice(SCOPE.length));
  const page = path === '' || path.endsWith('/') ? path + 'index.html' : path;
  if (page in BOOK.kept) event.respondWith(kept(page, event.request));
  else if (page in BOOK.later) event.respondWith(later(event, page));
  else if (`${path}/index.html` in BOOK.kept) event.respondWith(Response.redirect(`${SCOPE}${path}/`));
});
