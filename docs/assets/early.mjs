// @ts-check
// The first thing that runs, while the page is still being read: where figures wait for an answer, the engine starts.

import { createDoor } from './engine.mjs';
import { currentId, isShort, JOB_ID, shelf, shelfOf } from './state.mjs';
import { showWait } from './waiting.mjs';

/** Where the book begins, whatever page this is. */
export const root = new URL(/** @type {HTMLElement | null} */ (document.querySelector('[data-root]'))?.dataset.root || '.', location.href);
const told = document.getElementById('engines');
/** What the build tells of the engines; paths from the root. @type {Record<string, any>} */
export const engines = JSON.parse(told?.textContent || '{}');
/** The parts of the calculators that this page shows. The page may still be on its way; its head tells of its forms. */
const shown = (told?.dataset.parts || '').split(' ').filter(Boolean).map(Number);

const absolute = Object.fromEntries(
  Object.entries(engines).map(([name, path]) => [name, typeof path === 'string' ? new URL(path, root).href : path]),
);
export const door = createDoor(new URL('worker.mjs', import.meta.url).href, { ...absolute, shown }, (waited, calculator) => showWait(waited, calculator, (one) => door.stop(one)));

// A page works on one job for as long as it is open, whatever another page chooses meanwhile, so none writes into the other's
// job. Where the device kept nothing, the address holds the figures, and those belong to the job of then.
const { figures: how, job: then } = history.state ?? {};
export const job = how === 'loose' && JOB_ID.test(then ?? '') ? /** @type {string} */ (then) : currentId(root);
/** Its name, its notes, the days on which it was made and changed. */
export const about = shelf(shelfOf('about', job), root);
export const figures = shelf(shelfOf('figures', job), root, noted);
export const ticks = shelf(shelfOf('ticks', job), root, noted);
export const timers = shelf(shelfOf('timers', job), root, noted);
/** Which of the figures a link or a file put there: somebody else's word. */
export const brought = shelf(shelfOf('figures-of-a-link', job), root);

let asked = false;
/** Something of the job has changed: note when, and ask the device not to clear it by itself. At most once a day, as some ask the reader. */
export function noted() {
  const now = new Date().toISOString();
  if (!about.read().made) about.put('made', now);
  about.put('changed', now);
  const storage = navigator.storage;
  if (asked || !storage?.persist) return;
  asked = true;
  const own = shelf('device', root);
  if (own.read().asked === now.slice(0, 10)) return;
  own.put('asked', now.slice(0, 10));
  storage.persisted().then((stays) => stays || storage.persist()).catch(() => undefined);
}

if (engines.small_module && shown.length && !navigator.serviceWorker?.controller) {
  // A first visit: ask for the engine's parts before the worker is up to ask for them. It finds them in the browser's
  // cache then. Later the book is on the device, and there is nothing to gain.
  const parts = shown.map((at) => new URL(engines.small_parts[at], root));
  for (const part of [absolute.small_module, absolute.small_wasm, ...parts, new URL('parts.mjs', import.meta.url)]) fetch(part).catch(() => undefined);
}
if (isShort(location.hash)) import('./joblink.mjs').catch(() => undefined); // the forms ask for it soon, and tell if it does not come
if (engines.small_module && (isShort(location.hash) || location.hash.includes('?') || Object.keys(figures.read()).length)) door.warm();
