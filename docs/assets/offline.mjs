// @ts-check
// After one visit the book works without a signal. A new edition waits until the reader takes it.

import { engines, root } from './early.mjs';

export async function startOffline() {
  if (!('serviceWorker' in navigator)) return;
  const hadOne = Boolean(navigator.serviceWorker.controller);
  try {
    const registration = await navigator.serviceWorker.register(new URL('sw.js', root), { scope: root.pathname });
    if (registration.waiting && hadOne) offer(registration.waiting);
    registration.addEventListener('updatefound', () => {
      const worker = registration.installing;
      worker?.addEventListener('statechange', () => {
        if (worker.state === 'installed' && hadOne) offer(worker);
      });
    });
    await navigator.serviceWorker.ready;
    say('This book is on your device. It works without a signal.');
    document.documentElement.dataset.offline = '';
    await forgetOldEngines();
  } catch {
    say('This device does not keep the book. It needs a signal.');
  }
}

/** Take what belongs to older editions out of the cache of the full engine. */
async function forgetOldEngines() {
  const own = [engines.full_folder, engines.full_calc].map((path) => new URL(String(path), root).href);
  const cache = await caches.open('full-engine');
  for (const request of await cache.keys()) {
    if (!own.some((start) => request.url.startsWith(start))) await cache.delete(request);
  }
}

/** @param {string} text */
function say(text) {
  const line = document.querySelector('.offline-state');
  if (line) line.textContent = text;
}

/** @param {ServiceWorker} worker */
function offer(worker) {
  const notice = document.getElementById('edition');
  if (!notice) return;
  const line = document.createElement('p');
  line.textContent = 'A new edition of this book is here. What you typed and ticked stays.';
  const take = document.createElement('button');
  take.type = 'button';
  take.className = 'act';
  take.textContent = 'Take the new edition';
  take.addEventListener('click', () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    worker.postMessage({ type: 'SKIP_WAITING' });
  });
  notice.replaceChildren(line, take);
  notice.hidden = false;
}
