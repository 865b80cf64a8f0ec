// @ts-check
// On a ladder: one step in sight, large, with two targets for a thumb. Ticks are those of the page. A hold point asks to
// be met. Timers are kept as the moment when they end, so a locked phone does not stop them.

import { root } from './early.mjs';
import { button, element } from './make.mjs';
import { shelf } from './state.mjs';

const SWIPE = 60; // pixels that a finger has to travel
const SECOND = 1000;

export function startLadder() {
  const rows = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.step, .hold')]);
  const first = document.querySelector('.steps');
  if (!rows.length || !first || !('showModal' in HTMLDialogElement.prototype)) return;
  const timers = shelf('timers', root);
  let at = 0;
  /** @type {any} */
  let lock = null;
  let ticking = 0;

  const dialog = document.createElement('dialog');
  dialog.className = 'ladder';
  dialog.setAttribute('aria-label', 'One step at a time');
  const top = element('div', 'ladder-top');
  const where = element('p', 'where');
  const close = button('quiet', 'Close', () => dialog.close());
  top.append(where, close);
  const body = element('div', 'ladder-body');
  body.tabIndex = -1;
  const foot = element('div', 'ladder-foot');
  const back = button('quiet', 'Back', () => go(at - 1));
  const done = button('act', 'Done, next', () => finish());
  foot.append(back, done);
  dialog.append(top, body, foot);
  document.body.append(dialog);

  const opener = button('act', 'One step at a time', open);
  const line = element('p', 'tools ladder-open');
  line.append(opener);
  first.before(line);

  // The cautions of the page: all of them once before the first step, and each again with the steps that it guards.
  const warnings = /** @type {HTMLElement[]} */ ([...new Map([...document.querySelectorAll('main > .alarm, .step-caution > .alarm')]
    .map((one) => [/** @type {HTMLElement} */ (one).dataset.caution, one])).values()]);
  const opening = warnings.filter((one) => one.parentElement?.tagName === 'MAIN');
  const FIRST = opening.length ? -1 : 0;

  /** A copy without addresses and marks, which the page has already. @param {Node} one */
  function bare(one) {
    const copy = /** @type {HTMLElement} */ (one.cloneNode(true));
    for (const inner of copy.querySelectorAll?.('.mark') ?? []) inner.remove();
    for (const inner of [copy, ...copy.querySelectorAll?.('[id]') ?? []]) inner.removeAttribute?.('id');
    return copy;
  }

  const box = (/** @type {HTMLElement} */ row) => /** @type {HTMLInputElement} */ (row.querySelector('input[data-step]'));
  const isHold = (/** @type {HTMLElement} */ row) => row.classList.contains('hold');

  function open() {
    const next = rows.findIndex((row) => !box(row).checked);
    at = next < 0 ? rows.length - 1 : next || FIRST;
    dialog.showModal();
    stayAwake();
    show();
  }

  /** Keep the screen on where the device allows it. */
  async function stayAwake() {
    try {
      lock = await /** @type {any} */ (navigator).wakeLock?.request('screen');
    } catch {
      lock = null; // low battery, or not allowed: the steps work all the same
    }
  }
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && dialog.open) {
      stayAwake();
      tell();
    }
  });
  dialog.addEventListener('close', () => {
    lock?.release?.();
    clearInterval(ticking);
    rows[Math.max(at, 0)].scrollIntoView({ block: 'center' });
  });

  /** The first hold point before `to` that is not met. @param {number} to */
  const holdBefore = (to) => rows.slice(0, Math.max(to, 0)).findIndex((row) => isHold(row) && !box(row).checked);

  /** @param {number} to */
  function go(to) {
    if (to < FIRST || to >= rows.length) return;
    const held = to > at ? holdBefore(to) : -1;
    at = held >= 0 ? held : to;
    show(held >= 0 ? 'Stop. This hold point comes first.' : '');
  }

  function finish() {
    if (at < 0) return go(0);
    const own = box(rows[at]);
    if (!own.checked) own.click(); // the page's own rule of hold points decides
    if (!own.checked) return go(rows.length - 1);
    if (at === rows.length - 1) return dialog.close();
    go(at + 1);
  }

  /** @param {string} [warning] */
  function show(warning = '') {
    back.disabled = at === FIRST;
    body.scrollTop = 0;
    if (at < 0) {
      where.textContent = 'Before you start';
      done.textContent = 'Read, next';
      body.classList.remove('at-hold');
      body.replaceChildren(...opening.map(bare));
      body.focus({ preventScroll: true });
      return;
    }
    const row = rows[at];
    const own = box(row);
    where.textContent = `${at + 1} of ${rows.length}${own.checked ? ', done' : ''}`;
    body.replaceChildren();
    body.classList.toggle('at-hold', isHold(row));
    if (warning) body.append(element('p', 'stop-here', warning));
    for (const one of warnings.filter((one) => (row.dataset.guards ?? '').split(' ').includes(one.dataset.caution ?? ''))) body.append(bare(one));
    /** @type {Node[]} */
    const drawings = [];
    for (let before = row.previousElementSibling; before && /step-(caution|figure)/.test(before.className); before = before.previousElementSibling) {
      const copies = [...before.childNodes].map(bare);
      if (before.classList.contains('step-figure')) drawings.push(...copies);
      else body.append(...copies);
    }
    if (isHold(row)) {
      body.append(element('p', 'hold-word', 'Hold point'), element('p', 'ladder-do', row.querySelector('.hold-until')?.textContent ?? ''),
        element('p', 'ladder-know', row.querySelector('.hold-know')?.textContent ?? ''));
    } else {
      body.append(element('p', 'ladder-do', row.querySelector('.do')?.firstChild?.textContent ?? ''));
    }
    const waits = /** @type {HTMLElement | null} */ (row.querySelector('.wait'));
    if (waits) body.append(timer(own.dataset.step ?? '', waits));
    body.append(...drawings);
    done.textContent = isHold(row) && !own.checked ? 'This is true now' : at === rows.length - 1 ? 'Done' : own.checked ? 'Next' : 'Done, next';
    body.focus({ preventScroll: true });
    tell();
  }

  /** @param {string} step @param {HTMLElement} waits */
  function timer(step, waits) {
    const place = element('div', 'timer');
    place.dataset.step = step;
    const least = Number(waits.dataset.least);
    const told = element('p', 'left', waits.textContent ?? '');
    told.setAttribute('role', 'timer');
    const start = button('quiet', `Start ${least < 60 ? `${least} min` : `${least / 60} h`}`, () => {
      timers.write({ ...timers.read(), [step]: new Date(Date.now() + least * 60 * SECOND).toISOString() });
      tell();
    });
    place.append(told, start);
    return place;
  }

  /** Say what is left of each timer, from the clock and not from counting. */
  function tell() {
    clearInterval(ticking);
    const place = /** @type {HTMLElement | null} */ (body.querySelector('.timer'));
    const ends = place && timers.read()[place.dataset.step ?? ''];
    if (!place || !ends) return;
    const left = /** @type {HTMLElement} */ (place.querySelector('.left'));
    const start = /** @type {HTMLElement} */ (place.querySelector('button'));
    start.textContent = 'Start again';
    const update = () => {
      const seconds = Math.ceil((Date.parse(ends) - Date.now()) / SECOND);
      if (seconds > 0) {
        left.textContent = `${Math.floor(seconds / 3600) ? `${Math.floor(seconds / 3600)} h ` : ''}${Math.floor(seconds / 60) % 60} min ${seconds % 60} s left`;
        return;
      }
      if (!place.dataset.over) navigator.vibrate?.([300, 200, 300]);
      place.dataset.over = '';
      left.textContent = `The time is over, since ${new Date(ends).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}. Feel and look before you go on.`;
      clearInterval(ticking);
    };
    update();
    if (Date.parse(ends) > Date.now()) ticking = setInterval(update, SECOND);
  }

  let from = { x: 0, y: 0 };
  body.addEventListener('pointerdown', (event) => (from = { x: event.clientX, y: event.clientY }));
  body.addEventListener('pointerup', (event) => {
    const across = event.clientX - from.x;
    if (Math.abs(across) > SWIPE && Math.abs(across) > 2 * Math.abs(event.clientY - from.y)) go(at + (across < 0 ? 1 : -1));
  });
  dialog.addEventListener('keydown', (event) => {
    if (event.key === 'ArrowRight') go(at + 1);
    if (event.key === 'ArrowLeft') go(at - 1);
  });
}
