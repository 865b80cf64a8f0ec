// @ts-check
// The phases of the work, as the list of steps names them: which one a step is in, and a list that leads to each.

import { button, element } from './make.mjs';

/** @typedef {{name: string, from: number, to: number}} Phase from its first row to the one after its last */

/** @param {HTMLElement[]} rows steps and hold points @returns {Phase[]} */
export function phasesOf(rows) {
  /** @type {Phase[]} */
  const found = [];
  for (const [at, row] of rows.entries()) {
    /** @type {Element | null} */
    let before = row.previousElementSibling;
    while (before && !before.matches('.phase, .step, .hold')) before = before.previousElementSibling;
    if (before?.matches('.phase')) found.push({ name: before.textContent ?? '', from: at, to: at });
    for (const last of found.slice(-1)) last.to = at + 1;
  }
  return found;
}

/** @param {number} count @param {string} what */
const counted = (count, what) => `${count} ${what}${count === 1 ? '' : 's'}`;

/**
 * The list: of each phase its name, how much of it is done and which hold points wait.
 * @param {Phase[]} phases @param {HTMLElement[]} rows @param {number} at the row in sight
 * @param {(to: number) => void} jump to the first row of a phase that is not done
 */
export function phaseList(phases, rows, at, jump) {
  const list = element('ol', 'phase-list');
  for (const { name, from, to } of phases) {
    const own = rows.slice(from, to);
    const open = own.filter((row) => !row.querySelector('input')?.checked);
    const holds = own.filter((row) => row.matches('.hold'));
    const waiting = holds.filter((row) => open.includes(row));
    const entry = button('', '', () => jump(open.length ? rows.indexOf(open[0]) : from));
    const told = [open.length ? `${own.length - open.length} of ${own.length} done` : `All ${own.length} done`];
    if (holds.length) told.push(waiting.length ? `${counted(waiting.length, 'hold point')} to meet` : `${counted(holds.length, 'hold point')} met`);
    entry.append(element('b', '', name), element('span', '', told.join(', ')));
    entry.classList.toggle('over', !open.length);
    if (from <= at && at < to) entry.setAttribute('aria-current', 'step');
    const line = element('li', '');
    line.append(entry);
    list.append(line);
  }
  return list;
}
