// @ts-check
// Figures of the forms in the steps. As long as nobody gave figures they are the example's and marked so. Once a form
// holds anything of the reader's own, no example stays: a step shows what its form answers now, or a blank.

import { $, $$ } from './section.mjs';

/** @typedef {{name?: string, shown: string, value?: number}} Shown */

const BLANK = '…';
const MINUTES = 60; // in an hour

export function startLive() {
  /** @type {HTMLElement[]} */
  const places = $$('.live');
  /** @type {HTMLElement[]} */
  const waits = $$('.wait[data-hours]');
  if (!places.length && !waits.length) return;
  const sections = new Map($$('.calc').map((one) => /** @type {[string, HTMLElement]} */ ([one.dataset.calculator, one])));
  const results = [...sections.values()].map((one) => /** @type {HTMLElement} */ ($('.result', one)));
  /** What each form answered last, by the name in `data-figure`. @type {Map<string, Map<string, Shown>>} */
  const answers = new Map();
  const usual = new Map(waits.map((one) => [one, { text: one.textContent ?? '', least: one.dataset.least, most: one.dataset.most }]));

  /** @param {string} calculator */
  const shows = (calculator) => $('.result', sections.get(calculator)).dataset.shows;
  /** What stands for a figure now, if its form holds an answer to what is typed. @param {string} name */
  function answerOf(name) {
    const [calculator, line] = name.split('.');
    return shows(calculator) === 'answer' ? answers.get(calculator)?.get(line) : undefined;
  }

  function show() {
    if (results.every((one) => one.dataset.shows === 'example')) return;
    let changed = false;
    for (const place of places) {
      const found = answerOf(place.dataset.figure ?? '');
      const text = found?.shown ?? BLANK;
      changed ||= place.textContent !== text || place.dataset.shows === 'example';
      place.textContent = text;
      place.dataset.shows = found ? 'answer' : 'nothing';
      place.title = found ? '' : 'Give your rooms, and what the form asks for';
    }
    for (const one of waits) changed = tellWait(one) || changed;
    tellWhose();
    if (changed) document.dispatchEvent(new Event('figures-shown'));
  }

  /** A wait is by the reader's own figures, or the usual one. @param {HTMLElement} one @returns {boolean} whether it changed */
  function tellWait(one) {
    const found = (one.dataset.hours ?? '').split(' ').map(answerOf);
    const known = found.every((figure) => figure && /^\d/.test(figure.shown)); // some answers say 'not in 30 days'
    const minutes = found.map((figure) => String(Math.round((figure?.value ?? 0) * MINUTES)));
    const before = usual.get(one);
    const text = known ? `Wait ${found.map((figure) => figure?.shown).join(' to ')}` : before?.text ?? '';
    if (one.textContent === text) return false;
    one.textContent = text;
    one.dataset.least = known ? minutes[0] : before?.least;
    one.dataset.most = known ? minutes.at(-1) : before?.most;
    return true;
  }

  /** Above the steps: no word of an example any more, and which forms still wait. */
  function tellWhose() {
    const waiting = new Set(places.filter((one) => one.dataset.shows === 'nothing').map((one) => one.dataset.figure?.split('.')[0]));
    for (const one of $$('.live-note[data-says="example"]')) one.hidden = true;
    for (const note of $$('.live-note[data-says="blank"]')) {
      for (const form of $$('[data-of]', note)) form.hidden = !waiting.has(form.dataset.of);
      note.hidden = $$('[data-of]', note).every((form) => form.hidden);
    }
  }

  document.addEventListener('answered', (event) => {
    const section = /** @type {HTMLElement} */ (event.target);
    /** @type {Map<string, Shown>} */
    const lines = new Map(/** @type {CustomEvent} */ (event).detail.answers.map((/** @type {{name: string}} */ line) => [line.name, line]));
    lines.set('figure', { shown: $('.figure strong', section).textContent });
    answers.set(section.dataset.calculator ?? '', lines);
    show();
  });
  const watch = new MutationObserver(show);
  for (const one of results) watch.observe(one, { attributes: true, attributeFilter: ['data-shows'] });
}
