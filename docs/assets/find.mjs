// @ts-check
// What answers a question, best first: by title, by text, by the words that people use, and past a slip of the keys.
// A library for this was weighed (minisearch): its code costs 15.6 kB more over the line, beside an index that this needs
// as well; the slips alone take the forty lines below.

/** @typedef {[string, string, string, string]} Entry address, title, kind, text */
/** @typedef {{also: Record<string, string[]>, see: Record<string, string[]>, entries: Entry[]}} Index */

const MOST = 25;
const TOLD = 15; // what it counts that the words of the trade lead to a page
const SHORTEST = 4; // letters of a word that may be misspelt: a shorter one is another word
const LONG = 7; // letters from which two slips are forgiven
const WEIGHT = /** @type {Record<string, number>} */ ({ way: 9, guide: 10, task: 8, trouble: 7, form: 6, word: 6, reference: 4, section: 1, step: 0 });
const PART = new Set(['step', 'section']); // of a page: its words count less than the page's own title
const SKIP = new Set(['a', 'an', 'the', 'it', 'is', 'of', 'to', 'in', 'on', 'my', 'i', 'do', 'how', 'and', 'or', 'what', 'with', 'for', 'does', 'take', 'takes', 'long', 'much', 'many', 'when', 'can', 'be', 'are', 'this', 'that', 'where']);

/** @param {string} text */
const words = (text) => text.toLowerCase().replace(/['’]s\b/g, '').split(/[^a-z0-9]+/).filter(Boolean);
/** Bring drips, dripping and drip together. @param {string} word */
const stem = (word) => (word.length > 4 ? word.replace(/(ing|ed|es|s)$/, '').replace(/(.)\1$/, '$1') : word.replace(/s$/, ''));

/** A letter too few or too many beside its like is the lightest slip. @param {string} word */
const single = (word) => word.replace(/(.)\1+/g, '$1');

/** How many letters are left out, put in, changed, or change places with the next. @param {string} one @param {string} other @param {number} most */
function slips(one, other, most) {
  if (Math.abs(one.length - other.length) > most) return most + 1;
  let before = /** @type {number[]} */ ([]);
  let above = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (let row = 1; row <= one.length; row += 1) {
    const own = [row];
    for (let at = 1; at <= other.length; at += 1) {
      const same = one[row - 1] === other[at - 1] ? 0 : 1;
      own[at] = Math.min(above[at] + 1, own[at - 1] + 1, above[at - 1] + same);
      if (row > 1 && at > 1 && one[row - 1] === other[at - 2] && one[row - 2] === other[at - 1]) own[at] = Math.min(own[at], before[at - 2] + 1);
    }
    [before, above] = [above, own];
  }
  return above[other.length];
}

/** @param {Index} index */
export function finder(index) {
  const ready = index.entries.map((entry) => ({ entry, title: words(entry[1]).map(stem), text: words(entry[3]).map(stem) }));
  /** How often each word stands in the book, and each name that people use. @type {Map<string, number>} */
  const known = new Map();
  /** A word as it is written, of each stem. @type {Map<string, string>} */
  const written = new Map();
  for (const text of [...Object.keys(index.also), ...Object.keys(index.see), ...index.entries.flatMap(([, title, , more]) => [title, more])]) {
    for (const word of words(text)) {
      const short = stem(word);
      known.set(short, (known.get(short) ?? 0) + 1);
      if (!written.has(short)) written.set(short, word);
    }
  }
  const begun = (/** @type {string} */ word) => known.has(word) || (word.length > 2 && [...known.keys()].some((one) => one.startsWith(word)));

  /** The word of the book that is meant. @param {string} word */
  function meant(word) {
    if (word.length < SHORTEST || /\d/.test(word) || begun(word)) return word;
    for (let at = 3; at <= word.length - 3; at += 1) {
      const [one, other] = [word.slice(0, at), word.slice(at)];
      if (known.has(one) && known.has(stem(other))) return `${one} ${stem(other)}`;
    }
    const most = word.length < LONG ? 1 : 2;
    let [best, least, often] = [word, most + 1, 0];
    for (const [one, count] of known) {
      if (one.length < SHORTEST - 1) continue;
      const far = single(one) === single(word) ? 0.5 : slips(word, one, most) + (one[0] === word[0] ? 0 : 0.5);
      if (far < least || (far === least && count > often)) [best, least, often] = [one, far, count];
    }
    return best;
  }

  /** The question in words of the book: what is written apart and known as one goes together, slips are put right. @param {string} question */
  function read(question) {
    const asked = words(question);
    const found = /** @type {string[]} */ ([]);
    for (let at = 0; at < asked.length; at += 1) {
      const joined = at + 1 < asked.length && !SKIP.has(asked[at]) ? stem(asked[at] + asked[at + 1]) : '';
      if (joined && known.has(joined)) {
        found.push(joined);
        at += 1;
      } else if (SKIP.has(asked[at])) found.push(asked[at]);
      else found.push(...meant(stem(asked[at])).split(' '));
    }
    return found;
  }

  /** What is looked for: each word of the question, or what the trade calls it. @param {string[]} asked */
  function wanted(asked) {
    const flat = ` ${asked.map(stem).join(' ')} `;
    const own = asked.filter((word) => !SKIP.has(word)).map((word) => ({ own: word, others: /** @type {string[]} */ ([]) }));
    for (const [name, terms] of Object.entries(index.also)) {
      const parts = words(name).map(stem);
      if (!flat.includes(` ${parts.join(' ')} `)) continue;
      for (const one of own) if (parts.includes(one.own)) one.others.push(...terms.flatMap((term) => words(term).map(stem)));
    }
    return own;
  }

  /** The pages that tell of what is looked for, by the words of the trade. @param {string[]} asked */
  function told(asked) {
    const flat = ` ${asked.map(stem).join(' ')} `;
    const named = (/** @type {string} */ name) => flat.includes(` ${words(name).map(stem).join(' ')} `);
    const terms = Object.keys(index.see).filter(named);
    for (const [name, meaning] of Object.entries(index.also)) if (named(name)) terms.push(...meaning);
    return new Set(terms.flatMap((term) => index.see[term] ?? []));
  }

  /** @param {string[]} among @param {string} word */
  const hit = (among, word) => (among.includes(word) ? 1 : word.length > 2 && among.some((one) => one.startsWith(word)) ? 0.6 : 0);

  /** The places, and the words that were taken instead of those typed. @param {string} question @returns {{places: Entry[], instead: string[]}} */
  return function find(question) {
    const asked = read(question);
    const typed = words(question).map(stem);
    const instead = asked.filter((word) => !SKIP.has(word) && !typed.includes(word)).map((word) => written.get(word) ?? word);
    return { places: places(asked), instead };
  };

  /** @param {string[]} asked */
  function places(asked) {
    const own = wanted(asked);
    if (!own.length) return /** @type {Entry[]} */ ([]);
    const pages = told(asked);
    return ready.map(({ entry, title, text }) => {
      let score = 0;
      let met = 0;
      for (const { own: word, others } of own) {
        const straight = (PART.has(entry[2]) ? 6 : 10) * hit(title, word) + 3 * hit(text, word);
        const other = others.length ? Math.max(...others.map((one) => 4 * hit(title, one) + 3 * hit(text, one))) : 0;
        const best = Math.max(straight, other);
        if (best) met += 1;
        score += best;
      }
      // A place that answers half of the question only comes after those that answer all of it.
      const share = met ? (score + WEIGHT[entry[2]]) * (met / own.length) ** 3 : 0;
      return { entry, score: share + (pages.has(entry[0]) ? TOLD + WEIGHT[entry[2]] : 0) };
    }).filter(({ score }) => score > 0).sort((one, other) => other.score - one.score || one.entry[0].localeCompare(other.entry[0])).slice(0, MOST).map(({ entry }) => entry);
  }
}
