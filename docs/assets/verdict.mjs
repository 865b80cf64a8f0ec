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
  const shared = (place.dataset.shared ?? '').split(' '); // figures of other forms tell of a ceiling, but ask for no verdict
  if (![...facts.keys()].some((name) => !shared.includes(name))) {
    place.hidden = true;
    return;
  }
  try {
    const { text } = await door.answer('decision', Object.fromEntries(facts));
    const { answer } = JSON.parse(text);
    const own = (/** @type {{items: any[]}} */ of) => of.items.find((one) => one.page === `methods/${place.dataset.way}`);
    if (!answer) return;
    const way = own(answer);
    const head = element('summary', '');
    const told = element('span', '');
    told.append('For this ceiling, by your answers: ', element('b', '', way.state === 'open after' ? 'open after something else' : way.state), '.');
    head.append(told);
    const list = element('ul', '');
    list.append(...way.reasons.map((/** @type {{text: string}} */ reason) => element('li', '', reason.text)));
    const outcomes = (answer.branches ?? []).map((/** @type {any} */ branch) => element('p', 'outcome', `${branch.title} it would be ${own(branch).state}.`));
    const back = /** @type {HTMLAnchorElement} */ (element('a', '', 'See or change the answers'));
    back.href = '../../prepare/choose/' + link('decision', facts);
    const fold = /** @type {HTMLDetailsElement} */ (element('details', ''));
    fold.open = place.querySelector('details')?.open ?? false; // whoever reads the reasons goes on reading
    fold.append(head, list, ...outcomes, back);
    place.replaceChildren(fold);
    place.hidden = false;
  } catch (error) {
    if (!(error instanceof Superseded)) place.hidden = true;
  }
}
