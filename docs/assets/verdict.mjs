// @ts-check
// On the page of a way: what this way is by the reader's own answers about the ceiling, at the head, with the reasons.

import { door } from './early.mjs';
import { Superseded } from './engine.mjs';
import { element } from './make.mjs';
import { link } from './state.mjs';

let last = '';

/** @param {Map<string, string>} facts the answers that were given */
export async function judge(facts) {
  const place = /** @type {HTMLElement | null} */ (document.querySelector('.verdict'));
  const asked = JSON.stringify([...facts]);
  if (!place || asked === last) return;
  last = asked;
  if (!facts.size) {
    place.hidden = true;
    return;
  }
  try {
    const { text } = await door.answer('decision', Object.fromEntries(facts));
    const way = JSON.parse(text).answer?.items.find((/** @type {any} */ one) => one.page === `methods/${place.dataset.way}`);
    if (!way) return;
    const head = element('p', '');
    head.append('By your answers this way is ', element('b', '', way.state === 'open after' ? 'open after something else' : way.state), '.');
    const list = element('ul', '');
    list.append(...way.reasons.map((/** @type {{text: string}} */ reason) => element('li', '', reason.text)));
    const back = /** @type {HTMLAnchorElement} */ (element('a', '', 'See or change the answers'));
    back.href = '../../prepare/choose/' + link('decision', facts);
    place.replaceChildren(head, list, back);
    place.hidden = false;
  } catch (error) {
    if (!(error instanceof Superseded)) place.hidden = true;
  }
}
