// @ts-check
// What was typed: in the fields, in the address, on the device. Nothing typed is lost: a link keeps what it can and
// says what it dropped, and figures that a link replaces can be had back.

const READABLE = /%(20|27|3A|3B|2C|2F|28|29|40|D7)/gi; // marks that an address may carry as they are
const PLAIN = { 20: '+', 27: "'", '3A': ':', '3B': ';', '2C': ',', '2F': '/', 28: '(', 29: ')', 40: '@' };
const LONGEST_TEXT = 8_000; // letters of one figure that a link may hold: some fifty rooms, walked round
export const LONGEST_LINK = 32_000; // letters of a whole link
const TOLD = 60; // letters of a part left out that are told
export const SHORT = '#j='; // where a job's short link begins (joblink.mjs)

/** Entries on lines of their own, as a field of many lines shows them. @param {string} text */
export const inLines = (text) => text.split(';').map((entry) => entry.trim()).join('\n');

/** Entries in one line, as a link and a sentence hold them. @param {string} text */
export const inOneLine = (text) => text.split('\n').map((entry) => entry.trim()).filter(Boolean).join('; ');

/** A lone half of a letter can be neither written into a link nor asked. @param {string} text */
export const wellFormed = (text) => text.replace(/[\ud800-\udfff]/gu, '\ufffd');

/** @param {string} text */
export function encode(text) {
  return encodeURIComponent(inOneLine(wellFormed(text)))
    .replace(/'/g, "'")
    .replace(READABLE, (whole, code) => /** @type {any} */ (PLAIN)[code.toUpperCase()] ?? whole);
}

/**
 * Read `#anchor?name=text&…`.
 * @param {string} hash @param {Set<string>} names that the page knows
 * @returns {{anchor: string, values: Map<string, string>, dropped: string[], given: boolean, fault?: string}}
 */
export function readLink(hash, names) {
  const [anchor, query] = splitOnce(hash.replace(/^#/, ''), '?');
  const values = new Map();
  const dropped = [];
  if (query !== null && query.length > LONGEST_LINK) {
    return { anchor: decode(anchor.slice(0, TOLD)) ?? '', values, dropped: [`all of it, as a link may hold ${LONGEST_LINK.toLocaleString('en')} letters`], given: true };
  }
  for (const part of query === null ? [] : query.split('&').filter(Boolean)) {
    const [rawName, rawText] = splitOnce(part, '=');
    const name = decode(rawName);
    const text = rawText === null ? null : decode(rawText);
    if (name === null || text === null || !names.has(name) || values.has(name)) dropped.push(part.slice(0, TOLD));
    else if (text.length > LONGEST_TEXT) dropped.push(`${name}, longer than ${LONGEST_TEXT.toLocaleString('en')} letters`);
    else values.set(name, text);
  }
  return { anchor: decode(anchor) ?? '', values, dropped, given: query !== null };
}

/** @param {string} hash */
export const isShort = (hash) => hash.startsWith(SHORT);

/**
 * Read a link of either kind; what reads the short ones is fetched when one is opened.
 * @param {string} hash @param {Set<string>} names that the page knows @returns {Promise<ReturnType<typeof readLink>>}
 */
export async function openLink(hash, names) {
  if (!isShort(hash)) return readLink(hash, names);
  const reader = await import('./joblink.mjs').catch(() => null);
  const fault = 'This link could not be read, as a part of the book did not come. Load this page again with a signal.';
  const found = reader?.readShortLink(hash) ?? { values: new Map(), dropped: 0, fault };
  const values = new Map();
  const dropped = found.dropped ? [`${found.dropped} ${found.dropped === 1 ? 'figure' : 'figures'} that only a newer edition knows`] : [];
  for (const [name, text] of found.values) {
    if (!names.has(name)) dropped.push(`${name}=${text}`.slice(0, TOLD));
    else if (text.length > LONGEST_TEXT) dropped.push(`${name}, longer than ${LONGEST_TEXT.toLocaleString('en')} letters`);
    else values.set(name, text);
  }
  return { anchor: '', values, dropped, given: true, fault: found.fault };
}

/** @param {string} anchor @param {Map<string, string>} values */
export function link(anchor, values) {
  const query = [...values].map(([name, text]) => `${encodeURIComponent(name)}=${encode(text)}`).join('&');
  return `#${anchor}${query ? '?' + query : ''}`;
}

/** @param {string} text @param {string} mark @returns {[string, string | null]} */
function splitOnce(text, mark) {
  const at = text.indexOf(mark);
  return at < 0 ? [text, null] : [text.slice(0, at), text.slice(at + 1)];
}

/** @param {string} text */
function decode(text) {
  try {
    return decodeURIComponent(text.replace(/\+/g, ' '));
  } catch {
    return null;
  }
}

/** @returns {Storage | null} what a browser may forbid */
export function device() {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/** The job that editions up to 0.6 knew alone: its entries stay where they always lay. */
export const FIRST = 'first';
export const JOB_ID = /^[a-z0-9]{1,32}$/;

/** The shelf of a job. @param {string} kind 'figures', 'ticks' and so on @param {string} job */
export const shelfOf = (kind, job) => (job === FIRST ? kind : `${kind}@${job}`);

/** Where it stands which job all pages work on. @param {URL} root */
export const currentPlace = (root) => `current ${root.pathname} job`;

/** The job that all pages work on; the first one where nobody chose, or what stands there is damaged. @param {URL} root */
export function currentId(root) {
  try {
    const found = device()?.getItem(currentPlace(root)) ?? FIRST;
    return JOB_ID.test(found) ? found : FIRST;
  } catch {
    return FIRST;
  }
}

/** @param {string | null | undefined} text JSON of an object of texts; anything else is taken as nothing */
function pairsOf(text) {
  try {
    return Object.entries(JSON.parse(text || '{}') || {}).filter((pair) => typeof pair[1] === 'string');
  } catch {
    return [];
  }
}

/**
 * A shelf on this device. Each entry lies there by itself and is written when it changes, so that two pages never write
 * over what the other one put there. The device may be full or forbid it; the entries then stay with the page, which
 * goes on and can say so.
 * @param {string} key @param {URL} root of the book, as two books on one host keep apart
 * @param {() => void} [changed] called when something was put here
 */
export function shelf(key, root, changed) {
  const whole = `${key} ${root.pathname}`; // where editions up to 0.3 kept all entries in one
  const start = whole + ' ';
  /** @type {Map<string, string | undefined>} what the device did not take */
  const loose = new Map();

  /** @param {string} name @param {string | undefined} text */
  function write(name, text) {
    try {
      const kept = /** @type {Storage} */ (device());
      if (text === undefined) kept.removeItem(start + name);
      else if (kept.getItem(start + name) !== text) kept.setItem(start + name, text);
      loose.delete(name);
    } catch {
      loose.set(name, text);
    }
  }

  /** Lay out what an earlier edition kept in one entry. Where the device is full it stays where it is. */
  function takeOver() {
    const kept = device();
    const old = kept?.getItem(whole);
    if (!kept || old === null || old === undefined) return;
    const entries = /** @type {[string, string][]} */ (pairsOf(old)).filter(([name]) => kept.getItem(start + name) === null);
    for (const [name, text] of entries) write(name, text);
    if (entries.every(([name]) => !loose.has(name))) kept.removeItem(whole);
  }

  /** @param {string} name that is not to come back from there either */
  function forget(name) {
    const kept = device();
    const old = kept?.getItem(whole);
    if (!kept || !old) return;
    const others = pairsOf(old).filter(([other]) => other !== name);
    kept.removeItem(whole);
    if (others.length) kept.setItem(whole, JSON.stringify(Object.fromEntries(others))); // shorter than what stood there
  }

  const own = {
    /** Whether the device holds all that was put here. */
    get works() {
      return !loose.size;
    },
    /** @returns {Record<string, string>} */
    read() {
      const kept = device();
      const found = new Map();
      for (let at = 0; kept && at < kept.length; at += 1) {
        const place = kept.key(at) ?? '';
        if (place.startsWith(start)) found.set(place.slice(start.length), wellFormed(kept.getItem(place) ?? ''));
      }
      for (const [name, text] of loose) {
        if (text === undefined) found.delete(name);
        else found.set(name, text);
      }
      return Object.fromEntries(found);
    },
    /** Put one entry, or take it away where `text` is undefined. @param {string} name @param {string} [text] */
    put(name, text) {
      if (text === undefined) forget(name);
      write(name, text === undefined ? text : wellFormed(text));
      for (const [other, waiting] of [...loose]) if (other !== name) write(other, waiting); // there may be room by now
      changed?.();
      return this.works;
    },
    /** Call `changed` when another page may have changed what lies here. @param {() => void} changed */
    watch(changed) {
      addEventListener('storage', ({ key: place }) => (place === null || place.startsWith(start)) && changed());
      addEventListener('pageshow', ({ persisted }) => persisted && changed());
    },
  };
  takeOver();
  return own;
}
