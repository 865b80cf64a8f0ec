// @ts-check
// What the view of one step takes over from the page: words with their figures, cautions as rows, drawings. The page keeps
// what it has, so a copy brings no address that is there already.

import { button, element } from './make.mjs';

const OWN = 'ladder-'; // before what a copied drawing calls its parts

/** A copy without marks of sources. Only a drawing keeps names for its parts, own ones. @template {Node} T @param {T} one @returns {T} */
export function copied(one) {
  const made = /** @type {T} */ (one.cloneNode(true));
  if (!(made instanceof Element)) return made;
  for (const inner of made.querySelectorAll('.mark')) inner.remove();
  for (const inner of [made, ...made.querySelectorAll('*')]) {
    if (!inner.closest('svg')) inner.removeAttribute('id');
    else for (const { name, value } of [...inner.attributes]) {
      if (name === 'id' || name === 'aria-labelledby') inner.setAttribute(name, value.split(' ').map((part) => OWN + part).join(' '));
      else if (value.includes('url(#')) inner.setAttribute(name, value.replaceAll('url(#', `url(#${OWN}`));
      else if (name === 'href' && value.startsWith('#')) inner.setAttribute(name, `#${OWN}${value.slice(1)}`);
    }
  }
  return made;
}

/** What a step or a hold point says, its figures too, without the time to wait after it. @param {Element | null | undefined} place */
export function wordsOf(place) {
  const found = document.createDocumentFragment();
  for (const one of place?.childNodes ?? []) if (!(one instanceof Element && one.matches('.wait'))) found.append(copied(one));
  return found;
}

/** The same as text. @param {Element | null | undefined} place */
export const textOf = (place) => (wordsOf(place).textContent ?? '').replace(/\s+/g, ' ').trim();

/**
 * A caution as one row that opens to all of it: signal word and hazard; what to do stands in the row where the caution is `whole`.
 * @param {HTMLElement} caution @param {boolean} whole
 */
export function hazardRow(caution, whole) {
  const from = copied(caution);
  const row = /** @type {HTMLDetailsElement} */ (element('details', from.className));
  row.classList.add('short', whole ? 'whole' : 'guard');
  row.dataset.caution = caution.dataset.caution;
  const signal = element('span', 'signal');
  signal.append(.../** @type {HTMLElement} */ (from.querySelector('.signal')).childNodes);
  const toDo = /** @type {HTMLElement} */ (from.querySelector('.hazard strong, summary > strong'));
  const what = /** @type {HTMLElement} */ (from.querySelector('.what'));
  const rest = /** @type {HTMLElement} */ (from.querySelector('.hazard'));
  const head = element('summary', '');
  head.append(signal, ' ', what);
  if (whole) head.append(' ', toDo);
  else rest.append(' ', toDo);
  row.append(head, rest);
  return row;
}

/** The drawing of a step, small, that a tap shows large. @param {Element} place @param {(large: Element) => void} show */
export function drawingOf(place, show) {
  const drawing = place.querySelector('svg');
  if (!drawing) return null;
  const small = button('ladder-figure', '', () => show(/** @type {SVGElement} */ (copied(drawing))));
  const picture = copied(drawing);
  picture.setAttribute('aria-hidden', 'true');
  for (const one of [picture, ...picture.querySelectorAll('[id]')]) if (!one.matches('pattern, marker, clipPath')) one.removeAttribute('id');
  small.setAttribute('aria-label', `Show the drawing large: ${drawing.querySelector('title')?.textContent}`);
  small.append(picture);
  return small;
}
