// @ts-check
// Ticks: kept on the device, step by step. A hold point may not be passed: a later step takes its tick only when every
// hold point before it is true.

import { root } from './early.mjs';
import { shelf } from './state.mjs';

export function startSteps() {
  /** @type {HTMLInputElement[]} */
  const boxes = [...document.querySelectorAll('input[data-step]')].map((one) => /** @type {HTMLInputElement} */ (one));
  if (!boxes.length) return;
  const ticks = shelf('ticks', root);
  let held = ticks.read();
  const told = document.querySelector('.ticked');
  const say = document.createElement('p');
  say.className = 'stop-here';
  say.setAttribute('role', 'alert');

  function show() {
    let waiting = false;
    for (const box of boxes) {
      box.checked = Boolean(held[box.dataset.step || '']);
      box.closest('li')?.classList.toggle('waiting', waiting && !box.checked);
      if (box.dataset.hold !== undefined && !box.checked) waiting = true;
    }
    const done = boxes.filter((box) => box.checked).length;
    if (told) told.textContent = `${done} of ${boxes.length} steps and hold points are ticked.${ticks.works ? '' : ' This device does not keep ticks now.'}`;
  }

  for (const [at, box] of boxes.entries()) {
    box.addEventListener('change', () => {
      const open = boxes.slice(0, at).find((earlier) => earlier.dataset.hold !== undefined && !earlier.checked);
      say.remove();
      if (box.checked && open) {
        box.checked = false;
        say.textContent = 'Stop. This hold point comes first:';
        const hold = open.closest('li');
        hold?.prepend(say);
        hold?.scrollIntoView({ block: 'center' });
        open.focus({ preventScroll: true });
        return;
      }
      const step = box.dataset.step || '';
      if (box.checked) held[step] = new Date().toISOString();
      else delete held[step];
      ticks.write(held);
      show();
    });
  }

  const clear = document.querySelector('.clear-ticks');
  clear?.addEventListener('click', () => {
    const before = held;
    if (clear.textContent === 'Put the ticks back') {
      held = JSON.parse(/** @type {HTMLElement} */ (clear).dataset.before || '{}');
      clear.textContent = 'Clear the ticks';
    } else {
      /** @type {HTMLElement} */ (clear).dataset.before = JSON.stringify(before);
      held = Object.fromEntries(Object.entries(held).filter(([step]) => !boxes.some((box) => box.dataset.step === step)));
      clear.textContent = 'Put the ticks back';
    }
    ticks.write(held);
    show();
  });
  document.querySelector('.print')?.addEventListener('click', () => print());
  const send = /** @type {HTMLElement | null} */ (document.querySelector('.send'));
  send?.addEventListener('click', async () => {
    // The address of the one screen for a customer, with the figures that stand in the address now.
    const [, query] = location.hash.split('?');
    const address = new URL(`to/${send.dataset.way}/`, root).href + (query ? `#takeoff?${query}` : '');
    try {
      await navigator.clipboard.writeText(address);
      if (told) told.textContent = 'The link for the customer is copied. It holds these figures and nothing else.';
    } catch {
      if (told) told.textContent = `Send this address: ${address}`;
    }
  });
  const tools = /** @type {HTMLElement | null} */ (document.querySelector('.job .tools'));
  if (tools) tools.hidden = false;
  show();
}
