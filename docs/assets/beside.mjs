// @ts-check
// Beside the text of a wide page: the rooms as they were typed, drawn, and the figures that matter. It repeats what the forms
// of the page answer, so it is there only for eyes that have the room for it.

import { element } from './make.mjs';

export function startBeside() {
  const place = document.getElementById('beside');
  const sections = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.calc[data-calculator]')]);
  if (!place || sections.length < 2) return;
  /** The heading of a section, or the one that it stands under. */
  const headingOf = (/** @type {HTMLElement} */ section) => {
    let heading = section.querySelector('h2, h3');
    for (let at = section.previousElementSibling; at && !heading; at = at.previousElementSibling) if (at.matches('h2, h3')) heading = at;
    return heading?.textContent ?? '';
  };
  const told = (/** @type {HTMLElement} */ section) => /** @type {HTMLElement} */ (section.querySelector('.result')).dataset.shows;

  function draw() {
    const rows = sections.filter((one) => ['answer', 'example'].includes(told(one) ?? '')).map((section) => {
      const row = element('li', '');
      const link = /** @type {HTMLAnchorElement} */ (element('a', '', headingOf(section)));
      link.href = '#' + section.id;
      const notYet = section.querySelector('.not-yet')?.textContent;
      row.append(link, ' ', ...(notYet ? [element('small', '', notYet)] : []), ' ', element('b', '', section.querySelector('.headline b')?.textContent ?? ''));
      return row;
    });
    const example = sections.some((one) => told(one) === 'example');
    const list = element('ul', 'beside-figures');
    list.append(...rows);
    const parts = [element('h2', '', example ? 'Example rooms, made up' : 'Your rooms')];
    const drawing = document.querySelector('#takeoff svg.sheet');
    if (drawing) {
      const copy = /** @type {SVGElement} */ (drawing.cloneNode(true));
      for (const one of copy.querySelectorAll('[id]')) if (!one.matches('pattern')) one.removeAttribute('id');
      copy.removeAttribute('aria-labelledby');
      copy.setAttribute('aria-hidden', 'true'); // the form of the page tells it
      parts.push(/** @type {any} */ (copy));
    }
    /** @type {HTMLElement} */ (place).replaceChildren(...parts, list);
    place?.toggleAttribute('data-example', example);
  }
  for (const name of ['answered', 'emptied', 'figures']) document.addEventListener(name, draw);
  draw();
}
