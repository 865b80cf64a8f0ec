// @ts-check
// On a ladder: one step in sight, large, with two targets for a thumb. The instruction comes first and whole; under it what
// can hurt, with what to do about it. Ticks are those of the page. A hold point is met by a box of its own.

import { copied, drawingOf, hazardRow, textOf, wordsOf } from './copies.mjs';
import { job, root } from './early.mjs';
import { button, element } from './make.mjs';
import { phaseList, phasesOf } from './phases.mjs';
import { shelf, shelfOf } from './state.mjs';
import { startTimers } from './timers.mjs';

const SWIPE = 60; // pixels that a finger has to travel
const LINE = 20; // pixels of a part in sight that show how it begins
const SCREENFUL = 0.8; // of what is in sight, that reading on moves by
// What has to have been in sight before a step is done: the instruction whole, and of its own cautions the word and what to do.
const TO_MEET = '.ladder-do, .ladder-know, .whole .signal, .whole .what, .whole strong, .whole[open] .hazard';

export function startLadder() {
  const rows = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.steps > :is(.step, .hold)')]);
  const first = document.querySelector('.steps');
  if (!rows.length || !first || typeof HTMLDialogElement === 'undefined' || !('showModal' in HTMLDialogElement.prototype)) return;
  const phases = phasesOf(rows);
  const places = shelf(shelfOf('place', job), root); // the step that was in sight last, by page
  const box = (/** @type {HTMLElement} */ row) => /** @type {HTMLInputElement} */ (row.querySelector('input[data-step]'));
  const isHold = (/** @type {HTMLElement} */ row) => row.classList.contains('hold');
  let at = 0;
  /** @type {any} */
  let lock = null;
  /** Of each part that has to be met, whether its begin and its end have been in sight. @type {Map<Element, {top: boolean, bottom: boolean}>} */
  let met = new Map();
  /** The tick of a hold point in this view. @type {HTMLInputElement | null} */
  let check = null;

  const dialog = document.createElement('dialog');
  dialog.className = 'ladder';
  dialog.setAttribute('aria-label', 'One step at a time');
  const top = element('div', 'ladder-top');
  const where = phases.length ? button('quiet where', '', () => showPhases(list.hidden)) : element('p', 'where');
  const close = button('quiet', 'Close', () => dialog.close());
  top.append(where, close);
  const body = element('div', 'ladder-body');
  body.tabIndex = 0;
  body.setAttribute('role', 'region');
  const list = element('nav', 'ladder-phases');
  list.hidden = true;
  list.setAttribute('aria-label', 'Phases of the work');
  const foot = element('div', 'ladder-foot');
  const back = button('quiet', 'Back', () => go(at - 1));
  const undo = button('quiet undo', 'Not done', () => unTick());
  const more = button('quiet more', 'Read on', readOn);
  const done = button('act', '', () => {});
  // The second half of a double tap belongs to the step before, and ticks nothing.
  done.addEventListener('click', (event) => event.detail < 2 && finish());
  foot.append(back, undo, more, done);
  const told = element('p', 'unseen');
  told.setAttribute('role', 'status');
  const timers = startTimers();
  dialog.append(top, body, list, foot, told); // and the timers, while it is open
  const large = /** @type {HTMLDialogElement} */ (element('dialog', 'ladder-large'));
  large.setAttribute('aria-label', 'Drawing');
  const largeBox = element('div', '');
  largeBox.tabIndex = 0;
  large.append(button('quiet', 'Close', () => large.close()), largeBox);
  document.querySelector('.book')?.append(dialog, large);

  const opener = button('act', '', open);
  const line = element('p', 'tools ladder-open');
  line.append(opener);
  // Where the steps are folded away the button stands right under the line that opens them.
  const fold = /** @type {HTMLDetailsElement | null} */ (first.closest('details'));
  const placeOpener = () => (fold && !fold.open ? fold.after(line) : first.before(line));
  fold?.addEventListener('toggle', placeOpener);
  placeOpener();
  const home = element('div', 'timers-home'); // where running timers stand while the ladder's view is closed
  document.getElementById('content')?.prepend(home);
  home.append(timers.strip);

  // The cautions of the page: all of them once before the first step, and each again with the steps that it guards.
  const stated = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('#content .alarm[data-caution]')].filter((one) => !one.closest('.calc, .answer, .verdict')));
  const warnings = [...new Map(stated.map((one) => [one.dataset.caution, one])).values()];
  const opening = [...new Map(stated.filter((one) => !one.closest('.steps')).map((one) => [one.dataset.caution, one])).values()];
  const FIRST = opening.length ? -1 : 0;

  /** The row to open at: where somebody was, if it is not done and no hold point before it waits; else the first not done. */
  function begin() {
    const undone = rows.findIndex((row) => !box(row).checked);
    if (undone < 0) return rows.length - 1;
    if (!rows.some((row) => box(row).checked)) return FIRST;
    const kept = rows.findIndex((row) => !box(row).checked && row.id === places.read()[location.pathname]);
    return kept >= 0 && holdBefore(kept) < 0 ? kept : undone || FIRST;
  }

  function nameOpener() {
    const to = begin();
    opener.textContent = box(rows[Math.max(to, 0)]).checked ? 'See the steps again' : to > 0 ? `Go on at step ${to + 1}` : 'One step at a time';
  }

  function open() {
    at = begin();
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
  document.addEventListener('ticks', () => {
    nameOpener();
    if (dialog.open) name();
  });
  document.addEventListener('figures-shown', () => dialog.open && at >= 0 && show('', true));
  dialog.addEventListener('cancel', (event) => {
    if (list.hidden) return;
    event.preventDefault();
    showPhases(false);
  });
  dialog.addEventListener('close', () => {
    lock?.release?.();
    lock = null;
    showPhases(false);
    home.append(timers.strip);
    nameOpener();
    (fold && !fold.open ? line : rows[Math.max(at, 0)]).scrollIntoView({ block: 'center', behavior: 'instant' });
  });

  /** The first hold point before `to` that is not met. @param {number} to */
  function holdBefore(to) {
    return rows.slice(0, Math.max(to, 0)).findIndex((row) => isHold(row) && !box(row).checked);
  }

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
    if (!own.checked && !isHold(rows[at])) own.click(); // the page's own rule of hold points decides
    if (!own.checked) return go(rows.length - 1);
    if (at === rows.length - 1) return dialog.close();
    go(at + 1);
  }

  function unTick() {
    box(rows[at]).click();
    told.textContent = 'Not done any more.';
    done.focus();
  }

  /** @param {boolean} wanted */
  function showPhases(wanted) {
    if (wanted) {
      const entries = phaseList(phases, rows, at, (to) => {
        showPhases(false);
        // Whoever jumps back may jump anywhere; forward, each hold point on the way comes first.
        go(to);
      });
      if (FIRST < 0) {
        const before = element('li', '');
        before.append(button('', 'Before you start', () => {
          showPhases(false);
          go(FIRST);
        }));
        entries.prepend(before);
      }
      list.replaceChildren(entries);
    }
    list.hidden = !wanted;
    body.hidden = foot.hidden = wanted;
    where.setAttribute('aria-expanded', String(wanted));
    if (wanted) /** @type {HTMLElement | null} */ (list.querySelector('[aria-current], button'))?.focus();
    else if (dialog.open) where.focus();
    seen();
  }

  /** Which step it is, and what the buttons do now. */
  function name() {
    back.disabled = at === FIRST;
    const own = at < 0 ? null : box(rows[at]);
    undo.hidden = !own?.checked || isHold(rows[at]);
    if (check && own) check.checked = own.checked;
    const part = phases.find(({ from, to }) => from <= at && at < to)?.name;
    where.textContent = own ? `${part ? part + ', ' : 'Step '}${at + 1} of ${rows.length}${own.checked ? ', done' : ''}` : 'Before you start';
    done.textContent = !own ? 'Read, next' : at === rows.length - 1 ? 'Done' : own.checked || isHold(rows[at]) ? 'Next' : 'Done, next';
    seen();
  }

  /** What was passed by too fast comes back; else the next screenful. */
  function readOn() {
    const next = [...body.querySelectorAll(TO_MEET)].find((part) => !(met.get(part)?.top && met.get(part)?.bottom));
    const view = body.getBoundingClientRect();
    const { top: begins, bottom: ends } = (next ?? body).getBoundingClientRect();
    const passed = next && (met.get(next)?.top ? ends <= view.top : begins < view.top);
    body.scrollBy(0, !passed ? body.clientHeight * SCREENFUL : met.get(next)?.top ? ends - view.bottom : begins - view.top - LINE);
  }

  /** A step is done only by somebody who has had it before the eyes, what can hurt too. */
  function seen() {
    if (body.hidden || !dialog.open) return;
    const view = body.getBoundingClientRect();
    let all = true;
    for (const part of body.querySelectorAll(TO_MEET)) {
      const { top: begins, bottom: ends } = part.getBoundingClientRect();
      const had = met.get(part) ?? { top: false, bottom: false };
      had.top ||= begins >= view.top - 1 && Math.min(begins + LINE, ends) <= view.bottom + 1;
      had.bottom ||= ends <= view.bottom + 1 && ends > view.top;
      met.set(part, had);
      all &&= had.top && had.bottom;
    }
    const own = at < 0 ? null : box(rows[at]);
    if (check) check.disabled = !all && !check.checked;
    done.disabled = !(own?.checked || (all && !check));
    more.hidden = all || Boolean(own?.checked);
  }
  body.addEventListener('scroll', seen);
  new ResizeObserver(seen).observe(body);

  /** What stands in the list before a row and belongs to it. @param {HTMLElement} row @param {string} kind */
  function before(row, kind) {
    const found = [];
    for (let one = row.previousElementSibling; one && /step-(caution|figure)/.test(one.className); one = one.previousElementSibling) if (one.matches(kind)) found.unshift(one);
    return found;
  }

  /** The cautions of a row: its own, and those that guard it. What a hold point has proved is settled. @param {HTMLElement} row */
  function cautionsOf(row) {
    const settled = rows.slice(0, at).filter((one) => isHold(one) && box(one).checked).flatMap((one) => (one.dataset.proves ?? '').split(' '));
    if (document.documentElement.dataset.asbestos === 'clean') settled.push('asbestos-first');
    const own = /** @type {HTMLElement[]} */ (before(row, '.step-caution').map((one) => one.querySelector('.alarm')).filter(Boolean));
    const guards = (row.dataset.guards ?? '').split(' ');
    const others = warnings.filter((one) => guards.includes(one.dataset.caution ?? '') && !own.some((mine) => mine.dataset.caution === one.dataset.caution));
    const open = (/** @type {HTMLElement[]} */ some) => some.filter((one) => !settled.includes(one.dataset.caution ?? ''));
    return [...open(own).map((one) => hazardRow(one, true)), ...open(others).map((one) => hazardRow(one, false))];
  }

  /** A box of its own, out of the way of a thumb that taps on: a hold point is met on purpose. @param {HTMLElement} row */
  function holdCheck(row) {
    const label = element('label', 'ladder-check');
    const input = /** @type {HTMLInputElement} */ (element('input', ''));
    input.type = 'checkbox';
    input.addEventListener('change', () => {
      const wanted = input.checked; // what the box of the page says comes back into this one
      if (wanted !== box(row).checked) box(row).click();
      if (wanted !== box(row).checked) go(rows.length - 1); // an earlier one was cleared meanwhile
    });
    label.append(input, ' This is true now');
    check = input;
    return label;
  }

  /** Whose figures stand in the step, where they are not the reader's. @param {HTMLElement} instruction */
  function whose(instruction) {
    const example = instruction.querySelector('[data-figure][data-shows="example"]');
    const blank = instruction.querySelector('[data-figure][data-shows="nothing"]');
    return example ? 'Example: figures over dashes are of a made-up room. Give your rooms on the page.' : blank ? 'Where … stands, a form of the page waits for your figures.' : '';
  }

  /** @param {string} [warning] @param {boolean} [again] the same step, as its figures changed */
  function show(warning = '', again = false) {
    const scrolled = again ? body.scrollTop : 0;
    const opened = again ? [...body.querySelectorAll('details[open]')].map((one) => /** @type {HTMLElement} */ (one).dataset.caution) : [];
    const focused = !again || (body.contains(document.activeElement) && document.activeElement !== body);
    const row = /** @type {HTMLElement | undefined} */ (rows[at]);
    const parts = [];
    met = new Map();
    check = null;
    let start = body;
    if (warning) parts.push(element('p', 'stop-here', warning));
    if (!row) {
      parts.push(...opening.map((one) => hazardRow(one, true)));
      for (const one of parts) one.toggleAttribute('open', true); // read before the first step, so nothing is folded
    } else {
      start = element('p', 'ladder-do');
      start.tabIndex = -1;
      start.append(wordsOf(row.querySelector(isHold(row) ? '.hold-until' : '.do')));
      if (isHold(row)) parts.push(element('p', 'hold-word', 'Hold point'));
      parts.push(start);
      const note = whose(start);
      if (note) parts.push(element('p', 'ladder-note', note));
      if (isHold(row)) {
        const know = element('p', 'ladder-know');
        know.append(wordsOf(row.querySelector('.hold-know')));
        parts.push(know, holdCheck(row));
      }
      parts.push(...cautionsOf(row));
      const waits = /** @type {HTMLElement | null} */ (row.querySelector('.wait'));
      if (waits) parts.push(timers.starter(box(row).dataset.step ?? '', waits));
      for (const one of before(row, '.step-figure')) {
        const drawing = drawingOf(one, (whole) => {
          largeBox.replaceChildren(whole);
          large.showModal();
        });
        if (drawing) parts.push(drawing);
      }
      places.put(location.pathname, row.id);
    }
    body.classList.toggle('at-hold', Boolean(row && isHold(row)));
    body.replaceChildren(...parts);
    for (const one of body.querySelectorAll('details')) {
      if (opened.includes(one.dataset.caution)) one.open = true;
      one.addEventListener('toggle', seen);
    }
    body.scrollTop = scrolled;
    if (focused) start.focus({ preventScroll: true });
    name();
    body.setAttribute('aria-label', where.textContent ?? '');
    // Focus reads the instruction; this says where it stands and what can hurt, in the same breath.
    told.textContent = [warning.replace(/[.]$/, ''), where.textContent, ...[...body.querySelectorAll('.whole, .guard')].map((one) => textOf(one.querySelector('summary')))].filter(Boolean).join('. ');
  }

  let from = { x: 0, y: 0 };
  body.addEventListener('pointerdown', (event) => (from = { x: event.clientX, y: event.clientY }));
  body.addEventListener('pointerup', (event) => {
    const across = event.clientX - from.x;
    if (Math.abs(across) > SWIPE && Math.abs(across) > 2 * Math.abs(event.clientY - from.y)) go(at + (across < 0 ? 1 : -1));
  });
  dialog.addEventListener('keydown', (event) => {
    if (body.hidden) return;
    if (event.key === 'ArrowRight') go(at + 1);
    if (event.key === 'ArrowLeft') go(at - 1);
    if (event.key === 'Enter' && event.target instanceof Element && event.target.matches('.ladder-do, .ladder-body') && !done.disabled) finish();
  });
  nameOpener();
}
