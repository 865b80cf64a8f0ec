// @ts-check
// The first thing that runs, while the page is still being read: where figures wait for an answer, the engine starts.

import { createDoor } from './engine.mjs';
import { shelf } from './state.mjs';
import { showWait } from './waiting.mjs';

/** Where the book begins, whatever page this is. */
export const root = new URL(document.documentElement.dataset.root || '.', location.href);
const told = document.getElementById('engines');
/** What the build tells of the engines; paths from the root. @type {Record<string, any>} */
export const engines = JSON.parse(told?.textContent || '{}');
/** The parts of the calculators that this page shows. The page may still be on its way; its head tells of its forms. */
const shown = (told?.dataset.parts || '').split(' ').filter(Boolean).map(Number);

const absolute = Object.fromEntries(
  Object.entries(engines).map(([name, path]) => [name, typeof path === 'string' ? new URL(path, root).href : path]),
);
export const door = createDoor(new URL('worker.mjs', import.meta.url).href, { ...absolute, shown }, (waited, calculator) => showWait(waited, calculator, (one) => door.stop(one)));
export const figures = shelf('figures', root);

if (engines.small_module && shown.length && !navigator.serviceWorker?.controller) {
  // A first visit: ask for the engine's parts before the worker is up to ask for them. It finds them in the browser's
  // cache then. Later the book is on the device, and there is nothing to gain.
  const parts = shown.map((at) => new URL(engines.small_parts[at], root));
  for (const part of [absolute.small_module, absolute.small_wasm, ...parts, new URL('parts.mjs', import.meta.url)]) fetch(part).catch(() => undefined);
}
if (engines.small_module && (location.hash.includes('?') || Object.keys(figures.read()).length)) door.warm();
