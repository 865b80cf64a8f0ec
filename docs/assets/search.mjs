// @ts-check
// The search: over an index that lies on the device, by the words that people use.

import { root } from './early.mjs';
import { element } from './make.mjs';

/** @typedef {[string, string, string, string]} Entry address, title, kind, text */

const MOST = 25;
const TOLD = 15; // what it counts that the words of the trade lead to a page
const KINDS = /** @type {Record<string, string>} */ ({
  way: 'Way', task: 'Task', guide: 'Guide', reference: 'Reference', section: 'In a page', trouble: 'What goes wrong', word: 'Word', form: 'Form', step: 'Step',
});
const WEIGHT = /** @type {Record<string, number>} */ ({ way: 9, guide: 10, task: 8, trouble: 7, form: 6, word: 6, reference: 4, section: 1, step: 0 });
const SKIP = new Set(['a', 'an', 'the', 'it', 'is', 'of', 'to', 'in', 'on', 'my', 'i', 'do', 'how', 'and', 'or', 'what', 'with', 'for', 'does', 'take', 'takes', 'long', 'much', 'many', 'when', 'can', 'be', 'are', 'this', 'that', 'where']);

/** @param {string} text */
const words = (text) => text.toLowerCase().split(/[^a-z0-9]+/).filter(Boolean);
/** Bring drips, dripping and drip together. @param {string} word */
const stem = (word) => (word.length > 4 ? word.replace(/(ing|ed|es|s)$/, '').replace(/(.)\1$/, '$1') : word.replace(/s$/, ''));

export async function startSearch() {
  const place = /** @type {HTMLElement} */ (document.getElementById('find'));
  const box = /** @type {HTMLInputElement} */ (place.querySelector('input'));
  const list = /** @type {HTMLElement} */ (place.querySelector('.found'));
  const status = /** @type {HTMLElement} */ (place.querySelector('.status'));
  /** @type {{also: Record<string, string[]>, see: Record<string, string[]>, entries: Entry[]}} */
  let index;
  try {
    index = await (await fetch(new URL('search.json', root))).json();
  } catch {
    status.textContent = 'The index is not on this device yet. Open this page once with a signal.';
    return;
  }
  const ready = index.entries.map((entry) => ({ entry, title: words(entry[1]).map(stem), text: words(entry[3]).map(stem) }));

  /** What is looked for: each word of the question, or what the trade calls it. @param {string} question */
  function wanted(question) {
    const asked = words(question).filter((word) => !SKIP.has(word));
    const flat = ` ${words(question).map(stem).join(' ')} `;
    const own = asked.map((word) => ({ own: stem(word), others: /** @type {string[]} */ ([]) }));
    for (const [name, terms] of Object.entries(index.also)) {
      const parts = words(name).map(stem);
      if (!flat.includes(` ${parts.join(' ')} `)) continue;
      for (const one of own) if (parts.includes(one.own)) one.others.push(...terms.flatMap((term) => words(term).map(stem)));
    }
    return own;
  }

  /** The pages that tell of what is looked for, by the words of the trade. @param {string} question */
  function told(question) {
    const flat = ` ${words(question).map(stem).join(' ')} `;
    const named = (/** @type {string} */ name) => flat.includes(` ${words(name).map(stem).join(' ')} `);
    const terms = Object.keys(index.see).filter(named);
    for (const [name, meant] of Object.entries(index.also)) if (named(name)) terms.push(...meant);
    return new Set(terms.flatMap((term) => index.see[term] ?? []));
  }

  /** @param {string[]} among @param {string} word */
  const hit = (among, word) => (among.includes(word) ? 1 : word.length > 2 && among.some((one) => one.startsWith(word)) ? 0.6 : 0);

  /** @param {string} question */
  function find(question) {
    const own = wanted(question);
    if (!own.length) return [];
    const pages = told(question);
    return ready.map(({ entry, title, text }) => {
      let score = 0;
      let met = 0;
      for (const { own: word, others } of own) {
        const straight = 10 * hit(title, word) + 3 * hit(text, word);
        const meant = others.length ? Math.max(...others.map((other) => 4 * hit(title, other) + 3 * hit(text, other))) : 0;
        const best = Math.max(straight, meant);
        if (best) met += 1;
        score += best;
      }
      // A place that answers half of the question only comes after those that answer all of it.
      const share = met ? (score + WEIGHT[entry[2]]) * (met / own.length) ** 3 : 0;
      return { entry, score: share + (pages.has(entry[0]) ? TOLD + WEIGHT[entry[2]] : 0) };
    }).filter(({ score }) => score > 0).sort((one, other) => other.score - one.score || one.entry[0].localeCompare(other.entry[0])).slice(0, MOST);
  }

  function show() {
    const found = find(box.value);
    list.replaceChildren(...found.map(({ entry: [url, title, kind, text] }) => {
      const row = element('li', '');
      const to = /** @type {HTMLAnchorElement} */ (element('a', '', title));
      to.href = new URL(url, root).href;
      row.append(to, element('span', 'known', `${KINDS[kind]}. ${text.length > 120 ? text.slice(0, 118) + '…' : text}`));
      return row;
    }));
    status.textContent = !box.value.trim() ? '' : found.length ? `${found.length === MOST ? 'The best ' : ''}${found.length} found.` : 'Nothing found. Try another word for it, or fewer words.';
    history.replaceState(history.state, '', box.value.trim() ? `#q=${encodeURIComponent(box.value.trim())}` : location.pathname);
  }

  const brought = /^#q=(.*)$/.exec(location.hash);
  if (brought) {
    try {
      box.value = decodeURIComponent(brought[1]);
    } catch {
      box.value = brought[1]; // as it stands: half a code, as in “100 %”
    }
  }
  box.addEventListener('input', show);
  place.querySelector('form')?.addEventListener('submit', (event) => {
    event.preventDefault();
    show();
    /** @type {HTMLElement | null} */ (list.querySelector('a'))?.focus();
  });
  show();
  place.dataset.ready = '';
}
