// @ts-check
// What one form of a page holds and shows: its fields told in words, its faults beside them, and what is read out.

import { element } from './make.mjs';
import { inOneLine, wellFormed } from './state.mjs';

/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement} Control */
/** @typedef {{field: string, given: string, message: string, example: string}} Fault */

export const $ = /** @param {string} pick @param {ParentNode} [within] @returns {any} */ (pick, within = document) => within.querySelector(pick);
export const $$ = /** @param {string} pick @param {ParentNode} [within] @returns {any[]} */ (pick, within = document) => [...within.querySelectorAll(pick)];
const SPEAK_AFTER = 1000; // milliseconds without a keystroke after which an answer is read out to whoever does not see it

/** @param {Control | undefined} control @param {string} text */
export const takes = (control, text) => !(control instanceof HTMLSelectElement) || [...control.options].some((option) => option.value === text);

/** @param {HTMLElement} section */
export const hasOwn = (section) => $$('[name]', section).some((one) => one.value.trim() !== one.dataset.default);

/** @param {Control} control */
export const labelOf = (control) => $(`label[for="${control.id}"]`).firstChild.textContent.trim();

/** Why there is no answer. @param {HTMLElement} section @param {Fault[]} faults @param {Record<string, string>} asked */
export function why(section, faults, asked) {
  const labels = (/** @type {boolean} */ empty) => [...new Set(faults.filter((one) => !asked[one.field] === empty)
    .map((one) => $$('[name]', section).find((control) => control.name === one.field)).filter(Boolean).map(labelOf))];
  const parts = [['Still to fill in', labels(true)], ['To put right', labels(false)]].filter(([, names]) => names.length);
  return ['No answer yet.', ...parts.map(([what, names]) => `${what}: ${/** @type {string[]} */ (names).join('; ')}.`)].join(' ');
}

/** @param {HTMLElement} section */
export function inputsOf(section) {
  const own = $$('[name]', section).map((one) => /** @type {[string, string]} */ ([one.name, wellFormed(one.value).trim()]));
  return Object.fromEntries(own.filter(([, text]) => text));
}

/** What was typed, for the paper that the form does not stand on. @param {HTMLElement} section */
export function described(section) {
  const told = $$('[name]', section).filter((one) => one.value.trim() !== one.dataset.default);
  return told.map((one) => {
    const unit = one.parentElement.querySelector('.unit')?.textContent;
    const withUnit = (/** @type {string} */ text) => text + (unit && /^[\d./ ]+$/.test(text) ? ' ' + unit : '');
    if (one instanceof HTMLSelectElement) return `${labelOf(one)} ${one.selectedOptions[0].textContent}`;
    if (!one.value.trim()) return `${labelOf(one)} left empty, so the usual ${withUnit(one.dataset.default)}`;
    return `${labelOf(one)} ${withUnit(inOneLine(one.value.trim()))}`;
  }).join('; ') || 'the usual values';
}

/**
 * Tell the faults beside their fields: while somebody types those of the fields that were touched; after a button, and
 * until all is right, every one, with a summary.
 * @param {HTMLElement} section @param {Fault[]} all @param {boolean} loud
 * @param {Set<string>} touched fields that somebody filled
 * @returns {Fault[]} those that are told
 */
export function showFaults(section, all, loud, touched) {
  const summary = $('.faults', section);
  const whole = loud || !summary.hidden;
  const faults = all.filter((fault) => whole || touched.has(fault.field));
  for (const control of $$('[name]', section)) {
    const own = faults.filter((fault) => fault.field === control.name);
    const line = document.getElementById(control.id + '-fault');
    const text = own.map((fault) => `${fault.message} Like: ${fault.example}`).join(' ');
    if (own.length) control.setAttribute('aria-invalid', 'true');
    else control.removeAttribute('aria-invalid');
    if (line && line.textContent !== text) line.textContent = text;
    if (line) line.hidden = !own.length;
    if (own.length) control.closest('details')?.setAttribute('open', '');
  }
  const told = faults.map((fault) => fault.message).join('\n');
  if (whole && (loud || summary.dataset.told !== told)) {
    summary.dataset.told = told;
    summary.hidden = !faults.length;
    const list = element('ul', '');
    list.append(...faults.map((fault) => rowOf(section, fault)));
    summary.replaceChildren(element('p', '', faults.length === 1 ? 'One thing to put right:' : `${faults.length} things to put right:`), list);
  }
  if (loud && faults.length) summary.focus();
  return faults;
}

/** A fault that leads to its field. @param {HTMLElement} section @param {Fault} fault */
function rowOf(section, fault) {
  const row = element('li', '');
  const control = $$('[name]', section).find((one) => one.name === fault.field);
  const to = element(control ? 'a' : 'span', '', fault.message);
  if (control) {
    /** @type {HTMLAnchorElement} */ (to).href = '#' + control.id;
    to.addEventListener('click', (event) => {
      event.preventDefault();
      control.focus();
    });
  }
  row.append(to);
  return row;
}

/** @param {string} engine @param {string} wanted @param {string | null | undefined} before @param {string} now */
export function words(engine, wanted, before, now) {
  if (engine === 'small') return 'Worked out on this device by the small engine.';
  if (wanted === 'small') return 'Worked out on this device by the full engine, as the small one could not.';
  if (before && before !== now) return 'The full engine answers otherwise than the small one. Trust neither, and tell the publisher.';
  return before ? 'Worked out again by the full engine. Both engines agree.' : 'Worked out on this device by the full engine.';
}

/** What was wrong with a link, if anything. @param {ReturnType<typeof import('./state.mjs').readLink>} from @returns {string[]} */
export function brokenParts({ values, dropped }) {
  const rest = values.size ? 'The rest stands in the forms.' : 'Nothing else is in it. It may have been cut short: ask for it again.';
  if (dropped.length) return [`This link holds ${dropped.length === 1 ? 'a part' : dropped.length + ' parts'} that no field here takes, so ${dropped.length === 1 ? 'it was' : 'they were'} left out: ${dropped.join(' · ')}. ${rest}`];
  return values.size ? [] : ['This link holds no figures. It may have been cut short: ask for it again.'];
}

/**
 * How a form says what is going on, to the eye and to the ear. @param {() => string} workedIn the id of the form that is worked in
 */
export function voice(workedIn) {
  let speaking = 0;
  /** Read out to whoever does not see the page: the form that is worked in only, after a pause. @param {HTMLElement} section @param {string} text @param {boolean} loud */
  function say(section, text, loud) {
    if (section.id !== workedIn()) return;
    clearTimeout(speaking);
    const status = $('.status', section);
    speaking = setTimeout(() => {
      status.classList.add('unseen');
      status.textContent = text;
    }, loud ? 0 : SPEAK_AFTER);
  }

  /** Show in the form what is going on. @param {HTMLElement} section @param {string} text */
  function show(section, text) {
    if (section.id === workedIn()) clearTimeout(speaking);
    const status = $('.status', section);
    status.classList.remove('unseen');
    status.textContent = text;
  }

  return { say, show };
}
