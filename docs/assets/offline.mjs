// @ts-check
// After one visit the book works without a signal. A new edition waits until the reader takes it.

import { root } from './early.mjs';
import { button, element } from './make.mjs';

const TRY_AGAIN_AFTER = [20_000, 60_000, 300_000]; // milliseconds after a part did not come
const KEPT = 'This book is on your device. It works without a signal.';

let under = 'serviceWorker' in navigator && Boolean(navigator.serviceWorker.controller); // whether an edition holds this page
let tries = 0;

export async function startOffline() {
  if (!('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  // Whoever takes a new edition takes it for every open page: the parts that an older page would still ask for are gone.
  serviceWorker.addEventListener('controllerchange', () => {
    if (under) location.reload();
    under = true;
  });
  serviceWorker.addEventListener('message', ({ data }) => data?.type === 'MISSING' && missing(data.what));
  serviceWorker.startMessages();
  try {
    await register();
    await serviceWorker.ready;
    say(KEPT);
    document.documentElement.dataset.offline = '';
  } catch {
    say('This device does not keep the book. It needs a signal.');
  }
}

async function register() {
  const registration = await navigator.serviceWorker.register(new URL('sw.js', root), { scope: root.pathname });
  if (registration.waiting && registration.active) offer(registration.waiting);
  if (registration.installing) watch(registration, registration.installing);
  registration.onupdatefound = () => registration.installing && watch(registration, registration.installing);
}

/** @param {ServiceWorkerRegistration} registration @param {ServiceWorker} worker */
function watch(registration, worker) {
  worker.addEventListener('statechange', () => {
    if (worker.state === 'installed' && registration.active) offer(worker);
  });
}

/** A part did not come, so nothing was installed: say which, and try again. @param {string} what */
function missing(what) {
  const again = TRY_AGAIN_AFTER[tries++];
  const then = again ? 'It is tried again soon.' : 'Open a page later to try again.';
  const edition = navigator.serviceWorker.controller ? 'A new edition is there, and not on this device yet; the one before works.' : 'This book is not on your device yet; it needs a signal.';
  say(`${edition} ${what}. ${then}`);
  if (again) setTimeout(() => register().catch(() => undefined), again);
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
  const take = button('act', 'Take the new edition', () => worker.postMessage({ type: 'SKIP_WAITING' }));
  notice.replaceChildren(element('p', '', 'A new edition of this book is here. What you typed and ticked stays.'), take);
  notice.hidden = false;
  if (navigator.serviceWorker.controller) say(KEPT);
}
