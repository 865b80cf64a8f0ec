// @ts-check
// The asbestos question as a state of this ceiling, from the answers kept on the device. Only a report that found none, names
// this ceiling and every layer of it folds the stop at the head of a page into a line, and only by somebody's own answers: what a
// link brought is somebody else's word. Else the stop stays in full, says what is missing, and a strip stays in sight.

import { brought, figures, root } from './early.mjs';
import { element } from './make.mjs';
import { inOneLine } from './state.mjs';

const STOP = 'asbestos-first';
// What settles the question for every layer (calc.decision.verdict.CLEARED), and the rooms that it is settled for.
const CLEARED = { asbestos_result: 'none', result_rooms: 'this', result_layers: 'all' };
const UNKNOWN = 'unknown';
/** What each state is called, and what to do about it where the stop itself does not say. */
const TOLD = /** @type {Record<string, [string, string]>} */ ({
  untested: ['not tested', ''],
  found: ['found', 'By your answers a laboratory found asbestos. Leave the ceiling alone: a licensed contractor decides what happens to it.'],
  room: ['another room’s report', 'By your answers the report does not name this ceiling. A result holds only for what was sampled.'],
  layers: ['layers missing', 'By your answers the report does not name every layer by itself. Have the rest sampled.'],
  link: ['known by a link alone', 'A link or a file says that a laboratory found none. See the report yourself, and give your own answers.'],
});

/** @typedef {keyof typeof TOLD | 'clean'} State */

// Where the device keeps nothing, a page that is loaded again cannot tell whose figures the address holds.
const doubted = new Set(history.state?.figures === 'loose' ? [...Object.keys(CLEARED), 'rooms'] : []);

/**
 * @param {Record<string, string>} facts @param {Record<string, string>} linked what a link put there
 * @returns {State}
 */
export function stateOf(facts, linked) {
  const said = (/** @type {string} */ name) => facts[name] || UNKNOWN;
  if (said('asbestos_result') === UNKNOWN) return 'untested';
  if (said('asbestos_result') !== 'none') return 'found';
  if (said('result_rooms') !== 'this') return 'room';
  if (said('result_layers') !== 'all') return 'layers';
  const foreign = [...Object.keys(CLEARED), 'rooms'].some((name) => facts[name] !== undefined && facts[name] === linked[name]);
  return foreign ? 'link' : 'clean';
}

/** The state now. @returns {State} */
export function asbestos() {
  const held = figures.read();
  return stateOf(held, { ...brought.read(), ...Object.fromEntries([...doubted].map((name) => [name, held[name]])) });
}
/** What a state is called, in a word or three. @param {State} state */
export const nameOf = (state) => TOLD[state]?.[0] ?? '';

export function startAsbestos() {
  const main = document.getElementById('content');
  const box = /** @type {HTMLElement | undefined} */ ([...document.querySelectorAll(`#content .alarm[data-caution="${STOP}"]`)]
    .find((one) => !one.closest('.answer, .steps, details')));
  if (!main || !box) return;
  const signal = /** @type {HTMLElement} */ (box.querySelector('.signal'));
  const hazard = /** @type {HTMLElement} */ (box.querySelector('.hazard'));
  if (!box.querySelector('.state')) signal.append(' ', element('span', 'state'));
  const why = element('p', 'hazard by-answers');
  const change = /** @type {HTMLAnchorElement} */ (element('a', '', 'See or change the answers'));
  change.href = new URL('prepare/choose/#decision', root).href;
  box.id ||= 'stop';
  box.tabIndex = -1;

  // Clean: a line that opens to the whole stop.
  const line = /** @type {HTMLDetailsElement} */ (element('details', 'cleared'));
  const summary = element('summary', '');
  const told = element('p', 'by-answers');
  line.append(summary, told);

  const strip = /** @type {HTMLAnchorElement} */ (element('a', 'stop-strip'));
  const word = element('b', '');
  strip.href = '#content'; // where no handler is yet
  strip.append('DANGER ', word);
  strip.hidden = true;
  strip.addEventListener('click', (event) => { // an address of its own would take the figures out of the link
    event.preventDefault();
    box.scrollIntoView({ block: 'start' });
    box.focus({ preventScroll: true });
  });
  main.prepend(strip);
  let outOfSight = false;
  new IntersectionObserver(([seen]) => {
    outOfSight = !seen.isIntersecting && seen.boundingClientRect.top < 0;
    draw();
  }).observe(box);

  /** What stands after the signal word, here and on paper. @param {string} text */
  function call(text) {
    for (const one of document.querySelectorAll('.paper-hazards .state')) one.textContent = text;
    /** @type {HTMLElement} */ (signal.querySelector('.state')).textContent = text;
  }

  function draw() {
    const held = figures.read();
    const now = asbestos();
    const clean = now === 'clean';
    document.documentElement.dataset.asbestos = now;
    strip.hidden = clean || !outOfSight;
    document.documentElement.toggleAttribute('data-strip', !strip.hidden);
    if (clean) {
      if (!line.isConnected) {
        /** @type {HTMLElement} */ (box).before(line);
        line.append(/** @type {HTMLElement} */ (box));
      }
      const rooms = held.rooms ? ` Your rooms: ${inOneLine(held.rooms)}.` : '';
      const text = `The report found no asbestos, names this ceiling and every layer down to the base.${rooms}`;
      if (summary.textContent !== `By your answers ${text}`) summary.replaceChildren(element('b', '', 'By your answers'), ` ${text}`);
      told.replaceChildren('The report must say this in your hand, before work. ', change);
      call('');
      why.remove();
      return;
    }
    if (line.isConnected) line.replaceWith(/** @type {HTMLElement} */ (box));
    const [name, reason] = TOLD[now];
    call(`· ${name}`);
    word.textContent = `Asbestos: ${name}`;
    why.replaceChildren(reason + ' ', change);
    if (reason) hazard.after(why);
    else why.remove();
  }

  // Who answers here by hand takes the word of a link over as an own one.
  document.addEventListener('input', (event) => {
    const { name } = /** @type {HTMLInputElement} */ (event.target);
    if (!(name in CLEARED) && name !== 'rooms') return;
    brought.put(name, undefined);
    doubted.delete(name);
  }, true);
  document.addEventListener('figures', draw);
  figures.watch(draw);
  draw();
}
