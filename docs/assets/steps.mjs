// @ts-check
// Ticks: kept on the device, step by step. A hold point may not be passed: a later step takes its tick only when every
// hold point before it is true.

import { root, ticks } from './early.mjs';
import { element } from './make.mjs';

export function startSteps() {
  /** @type {HTMLInputElement[]} */
  const boxes = [...document.querySelectorAll('input[data-step]')].map((one) => /** @type {HTMLInputElement} */ (one));
  if (!boxes.length) return;
  const told = document.querySelector('.ticked');
  const say = element('p', 'stop-here');
  say.setAttribute('role', 'alert');
  /** What was cleared here, to be put back. @type {[string, string][]} */
  let cleared = [];
  const idOf = (/** @type {HTMLInputElement} */ box) => box.dataset.step || '';
  const clear = /** @type {HTMLElement | null} */ (document.querySelector('.clear-ticks'));

  /** Show what lies on the device now, whichever page put it there. */
  function show() {
    const held = ticks.read();
    let waiting = false;
    for (const box of boxes) {
      box.checked = Boolean(held[idOf(box)]);
      box.closest('li')?.classList.toggle('waiting', waiting && !box.checked);
      if (box.dataset.hold !== undefined && !box.checked) waiting = true;
    }
    const done = boxes.filter((box) => box.checked).length;
    if (told) told.textContent = `${done} of ${boxes.length} steps and hold points are ticked.${ticks.works ? '' : ' This device does not keep ticks now.'}`;
    if (clear) clear.textContent = cleared.length ? 'Put the ticks back' : 'Clear the ticks';
    document.dispatchEvent(new Event('ticks'));
  }

  for (const [at, box] of boxes.entries()) {
    box.addEventListener('change', () => {
      const wanted = box.checked;
      show(); // another page may have cleared a hold point since
      const open = boxes.slice(0, at).find((earlier) => earlier.dataset.hold !== undefined && !earlier.checked);
      say.remove();
      if (wanted && open) {
        say.textContent = 'Stop. This hold point comes first:';
        const hold = open.closest('li');
        hold?.prepend(say);
        hold?.scrollIntoView({ block: 'center' });
        open.focus({ preventScroll: true });
        return;
      }
      cleared = []; // a new round has begun
      ticks.put(idOf(box), wanted ? new Date().toISOString() : undefined);
      show();
    });
  }

  clear?.addEventListener('click', () => {
    const held = ticks.read();
    const own = /** @type {[string, string][]} */ (boxes.map((box) => [idOf(box), held[idOf(box)]]).filter(([, when]) => when));
    if (cleared.length) for (const [step, when] of cleared) ticks.put(step, when);
    else for (const [step] of own) ticks.put(step);
    cleared = cleared.length ? [] : own;
    show();
  });
  ticks.watch(() => {
    cleared = []; // another page has begun a round, and nothing old comes back over it
    show();
  });
  document.querySelector('.print')?.addEventListener('click', () => print());
  const when = document.querySelector('.sheet-head .when');
  addEventListener('beforeprint', () => when && (when.textContent = `Printed ${new Date().toLocaleDateString([], { dateStyle: 'medium' })}`));
  const tools = /** @type {HTMLElement | null} */ (document.querySelector('.job .tools'));
  if (tools) tools.hidden = false;
  show();
}
