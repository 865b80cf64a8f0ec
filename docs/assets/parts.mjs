// @ts-check
// What the worker takes from the network: from this book alone, and only whole. A folder or a file of the engines is named
// by what is in it, so its name tells whether all of it came.

const NAMED = /-([0-9a-f]{12})(?:[/.]|$)/;
/** Bytes that came whole, for the engines' own loaders. @type {Map<string, Uint8Array>} */
export const fetchFrom = new Map();

/** Thrown where a part did not come; `kind` is network, host or damaged. */
export class Part extends Error {
  /** @param {string} kind @param {string} message */
  constructor(kind, message) {
    super(message);
    this.kind = kind;
  }
}

const fetched = globalThis.fetch;

/**
 * From now on this worker asks nobody but this book. A policy in the page does not reach a worker, one in the host's
 * headers does; what a header alone can stop is an `import()` from another host.
 * @param {string} root
 */
export function only(root) {
  /** @param {RequestInfo | URL} what @param {RequestInit} [how] @returns {Promise<Response>} */
  const own = async (what, how) => {
    const url = String(what instanceof Request ? what.url : what);
    const held = fetchFrom.get(url);
    if (held) return new Response(/** @type {BlobPart} */ (held), { headers: { 'Content-Type': url.endsWith('.wasm') ? 'application/wasm' : 'application/octet-stream' } });
    if (!new URL(url, root).href.startsWith(root)) throw new TypeError(`${url} is not of this book`);
    return fetched(what, how);
  };
  put('fetch', own);
  for (const name of ['XMLHttpRequest', 'WebSocket', 'WebSocketStream', 'WebTransport', 'EventSource', 'importScripts', 'Worker']) put(name, undefined);
}

/** Put a value in a name's place wherever the name stands, for good. @param {string} name @param {unknown} value */
function put(name, value) {
  for (let holder = globalThis; holder && holder !== Object.prototype; holder = Object.getPrototypeOf(holder)) {
    if (holder === globalThis || Object.hasOwn(holder, name)) Object.defineProperty(holder, name, { value, writable: false, configurable: false });
  }
}

/**
 * Fetch files and hand them out once their bytes agree with the digest in `named`. What does not agree is asked for once
 * more, past every cache, as a host's wrong answer may be kept there.
 * @param {string} what for the reader @param {string} folder @param {string[]} names @param {string} named
 * @param {(bytes: number) => void} came
 */
export async function whole(what, folder, names, named, came) {
  const wanted = NAMED.exec(named)?.[1];
  /** @type {RequestCache[]} */
  const ways = ['default', 'reload'];
  for (const cache of ways) {
    const files = await Promise.all(names.map((name) => bytesOf(folder + name, cache, came)));
    // A folder's name tells of its files' names too, a single file's of its bytes alone.
    const pieces = folder ? files.flatMap((bytes, at) => [new TextEncoder().encode(names[at] + '\0'), bytes]) : files;
    if (await agrees(pieces, wanted)) {
      files.forEach((bytes, at) => fetchFrom.set(folder + names[at], bytes));
      return files;
    }
  }
  throw new Part('damaged', `${what} did not come whole`);
}

/** @param {Uint8Array[]} pieces @param {string | undefined} wanted */
async function agrees(pieces, wanted) {
  if (!globalThis.crypto?.subtle) return true; // over plain HTTP no browser digests, and none keeps the book
  const all = new Uint8Array(await new Blob(/** @type {BlobPart[]} */ (pieces)).arrayBuffer());
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', all));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('').slice(0, 12) === wanted;
}

/** @param {string} url @param {RequestCache} cache @param {(bytes: number) => void} came @returns {Promise<Uint8Array>} */
async function bytesOf(url, cache, came) {
  try {
    const response = await fetch(url, { cache });
    if (!response.ok) throw new Part('host', `the host answered ${response.status} for ${url}`);
    /** @type {Uint8Array[]} */
    const chunks = [];
    const reader = /** @type {ReadableStream<Uint8Array>} */ (response.body).getReader();
    for (let read = await reader.read(); !read.done; read = await reader.read()) {
      chunks.push(read.value);
      came(read.value.length);
    }
    return new Uint8Array(await new Blob(/** @type {BlobPart[]} */ (chunks)).arrayBuffer());
  } catch (error) {
    throw error instanceof Part ? error : new Part('network', `${url} could not be reached`);
  }
}
