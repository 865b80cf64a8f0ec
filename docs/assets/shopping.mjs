// @ts-check
// The list of what to buy: a tick for what is in the cart, kept with the job on this device, and the list as a file for a
// table. A tick belongs to a thing and to how many of it: where the list asks for another number, it stands open again.

import { csv } from './csv.mjs';
import { download } from './download.mjs';
import { ticks } from './early.mjs';
import { firmName, ofFirm } from './filename.mjs';
import { button, element } from './make.mjs';
import { onAnswer } from './newest.mjs';
import { $, $$ } from './section.mjs';

/** @typedef {{name: string, state: string, text: string, group?: string, cells?: Record<string, string>}} Item */
/** @typedef {{inputs: Record<string, string>, items?: Item[]}} Answer */

const HEAD = ['Aisle', 'Thing', 'Take', 'Packages', 'Needed', 'Left over', 'Cost', 'Notes', 'Got it'];

/** @param {Item} one @returns {string} what its tick is kept under */
const tickOf = ({ cells = {} }) => `buy-${cells.id}-${cells.count}`;

/** The list as a table: a head and one row a thing, in a firm's edition each with whose list it is. @param {Item[]} items @param {Record<string, string>} held the ticks @param {string} firm */
function table(items, held, firm) {
  const rows = items.map((one) => {
    const { count = '', need = '', left = '', cost = '' } = one.cells ?? {};
    return [one.group ?? '', one.name, one.state, count, need, left, cost, one.text, held[tickOf(one)] ? 'yes' : ''];
  });
  return csv(firm ? [[...HEAD, 'List of'], ...rows.map((row) => [...row, firm])] : [HEAD, ...rows]);
}

export function startShopping() {
  const section = /** @type {HTMLElement} */ (document.getElementById('shopping'));
  const told = element('p', 'got-told');
  told.setAttribute('role', 'status');
  /** @type {Answer | undefined} */
  let answer;
  const act = button('quiet', 'Save the list for a table (CSV)', () =>
    answer && download(ofFirm(`to-buy-${answer.inputs.way}.csv`, firmName()), 'text/csv', table(answer.items ?? [], ticks.read(), firmName())));

  /** Show what lies on the device now, whichever page put it there. */
  function show() {
    const boxes = /** @type {HTMLInputElement[]} */ ($$('.got input', section));
    const held = ticks.read();
    for (const box of boxes) box.checked = Boolean(held[box.dataset.tick ?? '']);
    const got = boxes.filter((box) => box.checked).length;
    told.textContent = `${got} of ${boxes.length} ticked.${ticks.works ? '' : ' This device does not keep ticks now.'}`;
  }

  onAnswer(section, (event) => {
    answer = /** @type {CustomEvent<Answer>} */ (event).detail;
    const rows = $$('.items > li:not(.group)', section);
    for (const [at, one] of (answer.items ?? []).entries()) {
      const name = $('.label', rows[at]);
      const box = /** @type {HTMLInputElement} */ (element('input', ''));
      box.type = 'checkbox';
      box.dataset.tick = tickOf(one);
      box.addEventListener('change', () => {
        ticks.put(tickOf(one), box.checked ? new Date().toISOString() : undefined);
        show();
      });
      const label = element('label', 'label got');
      label.append(box, element('span', '', name.textContent));
      name.replaceWith(label);
    }
    $('.items', section).after(told);
    $('.tools', section).prepend(act);
    show();
  });
  ticks.watch(show);
}
