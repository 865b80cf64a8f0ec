// @ts-check
// A wait that is felt is told, with how far it is and a button that stops it.

import { button, element } from './make.mjs';

/** @typedef {import('./engine.mjs').Waited} Waited */

const FELT_AFTER = 2_000; // milliseconds
const MEGABYTE = 1_000_000;
/** @type {Map<string, {since: number, timer: ReturnType<typeof setInterval>, last: Waited}>} */
const waits = new Map();

/** @param {Waited | null} waited @param {string} calculator @param {(calculator: string) => void} stop */
export function showWait(waited, calculator, stop) {
  const section = calculator && document.getElementById(calculator);
  if (!section) return;
  const held = waits.get(calculator);
  if (!waited) {
    clearInterval(held?.timer);
    waits.delete(calculator);
    section.querySelector('.wait')?.remove();
  } else if (held) held.last = waited;
  else waits.set(calculator, { since: performance.now(), last: waited, timer: setInterval(() => draw(section, calculator, stop), 500) });
}

/** @param {HTMLElement} section @param {string} calculator @param {(calculator: string) => void} stop */
function draw(section, calculator, stop) {
  const held = waits.get(calculator);
  if (!held || performance.now() - held.since < FELT_AFTER) return;
  const status = section.querySelector('.status');
  let place = section.querySelector('.wait');
  if (!place) {
    place = element('p', 'wait');
    place.append(element('span', ''), ' ', button('quiet', 'Stop', () => {
      stop(calculator);
      if (status) status.textContent = 'Stopped. Your figures are kept.';
    }));
    status?.after(place);
  }
  const { engine, bytes, total } = held.last;
  const came = `${(bytes / MEGABYTE).toFixed(1)} MB${total ? ` of ${(total / MEGABYTE).toFixed(1)}` : ''} came so far.`;
  const seconds = Math.round((performance.now() - held.since) / 1000);
  /** @type {Element} */ (place.firstElementChild).textContent = bytes ? `The ${engine} engine loads: ${came}` : `Waiting for the ${engine} engine, ${seconds} s so far.`;
}
