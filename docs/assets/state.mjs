// @ts-check
// What was typed: in the fields, in the address, on the device. Nothing typed is lost: a link keeps what it can and
// says what it dropped, and figures that a link replaces can be had back.

const READABLE = /%(20|27|3A|3B|2C|2F|28|29|40|D7)/gi; // marks that an address may carry as they are
const PLAIN = { 20: '+', 27: "'", '3A': ':', '3B': ';', '2C': ',', '2F': '/', 28: '(', 29: ')', 40: '@' };

/** @param {string} text */
export function encode(text) {
  const flat = text.replace(/\s*\n\s*/g, '; ');
  return encodeURIComponent(flat)
    .replace(/'/g, "'")
    .replace(READABLE, (whole, code) => /** @type {any} */ (PLAIN)[code.toUpperCase()] ?? whole);
}

/**
 * Read `#anchor?name=text&…`.
 * @param {string} hash @param {Set<string>} names that the page knows
 * @returns {{anchor: string, values: Map<string, string>, dropped: string[], given: boolean}}
 */
export function readLink(hash, names) {
  const [anchor, query] = splitOnce(hash.replace(/^#/, ''), '?');
  const values = new Map();
  const dropped = [];
  for (const part of query === null ? [] : query.split('&').filter(Boolean)) {
    const [rawName, rawText] = splitOnce(part, '=');
    const name = decode(rawName);
    const text = rawText === null ? null : decode(rawText);
    if (name === null || text === null || !names.has(name) || values.has(name)) dropped.push(part.slice(0, 60));
    else values.set(name, text);
  }
  return { anchor: decode(anchor) ?? '', values, dropped, given: query !== null };
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

/**
 * A shelf on this device that may be full, forbidden or broken; it then says so and the page goes on.
 * @param {string} key @param {URL} root of the book, as two books on one host keep apart
 */
export function shelf(key, root) {
  const own = `${key} ${root.pathname}`;
  return {
    works: true,
    /** @returns {Record<string, string>} */
    read() {
      try {
        const held = JSON.parse(localStorage.getItem(own) || '{}');
        const pairs = Object.entries(held || {}).filter(([, text]) => typeof text === 'string');
        return Object.fromEntries(/** @type {[string, string][]} */ (pairs));
      } catch {
        return {};
      }
    },
    /** @param {Record<string, string>} values */
    write(values) {
      try {
        localStorage.setItem(own, JSON.stringify(values));
        this.works = true;
      } catch {
        this.works = false;
      }
      return this.works;
    },
  };
}
