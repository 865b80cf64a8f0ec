// @ts-check
// A rule carries the day by which somebody looks at its source again. Once that day is past for whoever reads, the page says so
// beside it: on a finished page, and in each answer that stands on such a rule.

import { element } from './make.mjs';
import { $$ } from './section.mjs';

/** The day where the reader is, as the book writes days. */
function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((one) => String(one).padStart(2, '0')).join('-');
}

/** @param {ParentNode} place */
function mark(place) {
  for (const one of $$('[data-review-by]', place)) {
    const { reviewBy = '' } = one.dataset;
    const told = one.querySelector(':scope > .overdue');
    if (reviewBy >= today()) told?.remove();
    else if (!told) one.append(element('strong', 'overdue', ` Review was due on ${reviewBy}. Ask before you go by it.`));
  }
}

export function startReview() {
  mark(document);
  document.addEventListener('answered', (event) => mark(/** @type {HTMLElement} */ (event.target)));
}
