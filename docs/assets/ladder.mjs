// @ts-check
// On a ladder: one step in sight, large, with two targets for a thumb. Ticks are those of the page. A hold point asks to
// be met. The instruction comes whole; each hazard stands over it as a row with its signal word, which opens to the rest.

import { button, element } from './make.mjs';
import { startTimers } from './timers.mjs';

const SWIPE = 60; // pixels that a finger has to travel

export function startLadder() {
  const rows = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.step, .hold')]);
  const first = document.querySelector('.steps');
  if (!rows.length || !first || !('showModal' in HTMLDialogElement.prototype)) return;
  let at = 0;
  /** @type {any} */
  let lock = null;

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
  const timers = startTimers();
  dialog.append(top, body, foot); // and the timers, while it is open
  document.body.append(dialog);

  const opener = button('act', 'One step at a time', open);
  const line = element('p', 'tools ladder-open');
  line.append(opener);
  first.before(line);
  const home = element('div', 'timers-home'); // where running timers stand while the ladder's view is closed
  document.querySelector('main')?.prepend(home);
  home.append(timers.strip);

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

  /** A caution as one row, signal word and hazard, that opens to all of it. @param {HTMLElement} one */
  function row(one) {
    const copy = /** @type {HTMLElement} */ (bare(one));
    const fold = element('details', copy.className + ' short');
    fold.dataset.caution = one.dataset.caution;
    const head = element('summary', '');
    head.append(.../** @type {HTMLElement[]} */ ([...copy.querySelectorAll('.signal, .what')]));
    fold.append(head, copy.querySelector('.hazard') ?? '');
    fold.addEventListener('toggle', seen);
    return fold;
  }

  const box = (/** @type {HTMLElement} */ row) => /** @type {HTMLInputElement} */ (row.querySelector('input[data-step]'));
  const isHold = (/** @type {HTMLElement} */ row) => row.classList.contains('hold');

  function open() {
    const next = rows.findIndex((row) => !box(row).checked);
    at = next < 0 ? rows.length - 1 : next || FIRST;
    dialog.showModal();
    top.after(timers.strip);
    stayAwake();
    show();
  }

  /** Keep the screen on where the device allows it, and only while this view is open. */
  async function stayAwake() {
    try {
      const held = await /** @type {any} */ (navigator).wakeLock?.request('screen');
      if (!dialog.open || (lock && !lock.released)) held?.release();
      else lock = held;
    } catch {
      lock = null; // low battery, or not allowed: the steps work all the same
    }
  }
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && dialog.open) stayAwake();
  });
  document.addEventListener('ticks', () => dialog.open && name());
  dialog.addEventListener('close', () => {
    lock?.release?.();
    lock = null;
    home.append(timers.strip);
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

  /** The phase of the work that a row belongs to. @param {HTMLElement} row */
  function phase(row) {
    /** @type {Element | null} */
    let before = row;
    while (before && !before.classList.contains('phase')) before = before.previousElementSibling;
    return before?.textContent;
  }

  /** Which step it is, and what the button does now. */
  function name() {
    back.disabled = at === FIRST;
    if (at < 0) {
      where.textContent = 'Before you start';
      done.textContent = 'Read, next';
      return seen();
    }
    const own = box(rows[at]);
    const part = phase(rows[at]);
    where.textContent = `${part ? part + ', ' : ''}${at + 1} of ${rows.length}${own.checked ? ', done' : ''}`;
    done.textContent = isHold(rows[at]) && !own.checked ? 'This is true now' : at === rows.length - 1 ? 'Done' : own.checked ? 'Next' : 'Done, next';
    seen();
  }

  /** A step is done only by somebody who has it before the eyes: all of its text lies in sight, or its end once it is longer. */
  function seen() {
    const view = body.getBoundingClientRect();
    const parts = [...body.querySelectorAll('.ladder-do, .ladder-know')].map((one) => one.getBoundingClientRect());
    const top = parts[0]?.top ?? view.top;
    const bottom = parts.at(-1)?.bottom ?? view.bottom;
    done.disabled = bottom > view.bottom + 1 || (top < view.top - 1 && bottom - top < view.height);
  }
  body.addEventListener('scroll', seen);
  addEventListener('resize', () => dialog.open && seen());

  /** The cautions of a row: its own, and those of the page that guard it and no hold point has proved settled. @param {HTMLElement} row */
  function cautionsOf(row) {
    const settled = rows.slice(0, at).filter((one) => isHold(one) && box(one).checked).flatMap((one) => (one.dataset.proves ?? '').split(' '));
    const guards = (row.dataset.guards ?? '').split(' ');
    const found = warnings.filter((one) => guards.includes(one.dataset.caution ?? ''));
    for (let before = row.previousElementSibling; before && /step-(caution|figure)/.test(before.className); before = before.previousElementSibling) {
      found.push(.../** @type {HTMLElement[]} */ ([...before.querySelectorAll('.alarm')]));
    }
    return found.filter((one) => !settled.includes(one.dataset.caution ?? ''));
  }

  /** @param {string} [warning] */
  function show(warning = '') {
    body.scrollTop = 0;
    if (at < 0) {
      body.classList.remove('at-hold');
      body.replaceChildren(...opening.map(bare));
    } else {
      const one = rows[at];
      body.classList.toggle('at-hold', isHold(one));
      body.replaceChildren();
      if (warning) body.append(element('p', 'stop-here', warning));
      body.append(...cautionsOf(one).map(row));
      if (isHold(one)) {
        body.append(element('p', 'hold-word', 'Hold point'), element('p', 'ladder-do', one.querySelector('.hold-until')?.textContent ?? ''),
          element('p', 'ladder-know', one.querySelector('.hold-know')?.textContent ?? ''));
      } else {
        body.append(element('p', 'ladder-do', one.querySelector('.do')?.firstChild?.textContent ?? ''));
      }
      const waits = /** @type {HTMLElement | null} */ (one.querySelector('.wait'));
      if (waits) body.append(timers.starter(box(one).dataset.step ?? '', waits));
      for (let before = one.previousElementSibling; before && /step-(caution|figure)/.test(before.className); before = before.previousElementSibling) {
        if (before.classList.contains('step-figure')) body.append(...[...before.childNodes].map(bare));
      }
    }
    body.focus({ preventScroll: true });
    name();
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
