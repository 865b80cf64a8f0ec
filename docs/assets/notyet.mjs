// @ts-check
// Where an answer must not be acted on yet, its figure says so before itself, with the reason: asbestos is not settled, the
// ceiling sags, is damp or loose by the answers given, or it may be rated. The same on each row that shows that figure.

import { asbestos, nameOf } from './asbestos.mjs';
import { figures } from './early.mjs';
import { element } from './make.mjs';

// These two are how the question is settled: their answers are to be acted on.
const SETTLING = ['decision', 'samples'];
/** Answers about the ceiling that stop whatever loads it, and in a few words why. @type {[string, string, string][]} */
const UNSOUND = [['sag', 'yes', 'it sags'], ['stains', 'wet', 'it is damp'], ['loose_board', 'loose', 'it is loose']];

/** Why the answer of a calculator must not be acted on now; '' where nothing is known against it. @param {Element | null} section */
export function whyNotYet(section) {
  const answer = section?.querySelector('.answer');
  if (!section || !answer) return '';
  const says = (/** @type {string} */ id) => Boolean(answer.querySelector(`[data-caution="${id}"]`));
  const held = figures.read();
  const state = asbestos();
  const found = [];
  if (says('asbestos-first') && state !== 'clean' && !SETTLING.includes(section.id)) found.push(`asbestos ${nameOf(state)}`);
  if (says('ceiling-load')) found.push(...UNSOUND.filter(([name, value]) => held[name] === value).map(([, , why]) => why));
  if (says('rated-ceiling')) found.push(held.rated_ceiling === 'yes' ? 'a rated ceiling' : 'rated or not is not known');
  if (!found.length && !SETTLING.includes(section.id) && answer.querySelector(':scope > .alarm-danger:not(details)')) found.push('a stop stands over this answer');
  return found.length ? `Not yet: ${found.join('; ')}` : '';
}

/** Put the words before `place`, or take them away. @param {Element} place @param {string} tag @param {string} text */
function put(place, tag, text) {
  const before = place.previousElementSibling;
  const own = before?.classList.contains('not-yet') ? before : null;
  if (!text) own?.remove();
  else if (!own) place.before(element(tag, 'not-yet', text));
  else if (own.textContent !== text) own.textContent = text;
}

export function startNotYet() {
  function mark() {
    // Before the answer, not in it: what the engine wrote stands as it is.
    for (const slot of document.querySelectorAll('.calc .slot')) put(slot, 'p', whyNotYet(slot.closest('.calc')));
    for (const row of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('[data-headline-of]'))) {
      put(row, 'span', whyNotYet(document.querySelector(`.calc[data-calculator="${row.dataset.headlineOf}"]`)));
    }
  }
  document.addEventListener('figures', mark);
  document.addEventListener('answered', mark);
  document.addEventListener('emptied', mark);
  figures.watch(mark);
  mark();
}
