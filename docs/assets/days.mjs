// @ts-check
// The days of a plan for the calendar of the device: one entry a day on which something is done. A plan without a first day has none.

import { download } from './download.mjs';
import { firmName, ofFirm } from './filename.mjs';
import { calendar } from './ical.mjs';
import { button } from './make.mjs';
import { onAnswer } from './newest.mjs';
import { $ } from './section.mjs';

/** @typedef {{inputs: Record<string, string>, listings?: {name: string, rows: {text: string}[]}[]}} Answer */

const DATE = /\d{4}-\d{2}-\d{2}/; // a day is told by its date, in every language

/** The days as entries; in a firm's edition each says whose work it is. @param {Answer} answer @param {string} [firm] @returns {import('./ical.mjs').Happening[]} */
export function happenings({ inputs, listings = [] }, firm = '') {
  const rows = listings.find((one) => one.name === 'days')?.rows ?? [];
  return rows.flatMap(({ text }) => {
    const start = text.match(DATE)?.[0];
    if (!start) return [];
    const what = text.slice(text.indexOf(start) + start.length).replace(/^\W+/, '');
    return [{ uid: `${inputs.way}-${start}@plan`, start, title: firm ? `${what} (${firm})` : what, text: what }];
  });
}

export function startDays() {
  const section = /** @type {HTMLElement} */ (document.getElementById('plan'));
  /** @type {Answer} */
  let answer;
  const act = button('quiet', 'Save the days for a calendar', () =>
    download(ofFirm(`days-${answer.inputs.way}.ics`, firmName()), 'text/calendar',
      calendar(happenings(answer, firmName()), { name: [firmName(), answer.inputs.way].filter(Boolean).join(': ') })));
  onAnswer(section, (event) => {
    answer = /** @type {CustomEvent<Answer>} */ (event).detail;
    if (happenings(answer).length) $('.tools', section).prepend(act);
    else act.remove();
  });
}
