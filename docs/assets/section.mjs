// @ts-check
// What one form of a page holds and shows: its fields told in words, its faults beside them, and what is read out.

import { openTo } from './folds.mjs';
import { element } from './make.mjs';
import { inOneLine, wellFormed } from './state.mjs';

/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement} Control */
/** @typedef {{field: string, given: string, message: string, example: string}} Fault */

export const $ = /** @param {string} pick @param {ParentNode} [within] @returns {any} */ (pick, within = document) => within.querySelector(pick);
export const $$ = /** @param {string} pick @param {ParentNode} [within] @returns {any[]} */ (pick, within = document) => [...within.querySelectorAll(pick)];
const SPEAK_AFTER = 1000; // milliseconds without a keystroke after which an answer is read out to whoever does not see it

/** Whether a field may hold a text: a choice what it offers, what the page says by itself only that. @param {Control | undefined} control @param {string} text */
export const takes = (control, text) => (control?.type === 'hidden' ? text === control.dataset.default
  : !(control instanceof HTMLSelectElement) || [...control.options].some((option) => option.value === text));

/** Each field of the page by its name: it stands once, and every form that asks for it goes by it. @type {Map<string, Control>} */
export const controls = new Map($$('.calc [name]').map((one) => [one.name, one]));

/** What lays the figures of the firm whose edition this is into the fields; nothing where it is nobody's. */
const firm = document.getElementById('firm') ? await import('./firm.mjs') : undefined;
firm?.layFigures(controls);

/** What a link holds: what was typed, and where that is anything the firm's figures with it. @param {Map<string, string>} typed */
export const complete = (typed) => (firm && typed.size ? firm.withFirms(typed, controls) : typed);

/** The fields that a form goes by, on whichever form of the page they stand. @param {HTMLElement} section @returns {Control[]} */
export const controlsOf = (section) => (section.dataset.fields ?? '').split(' ').map((name) => /** @type {Control} */ (controls.get(name))).filter(Boolean);

/** @param {HTMLElement} section */
export const hasOwn = (section) => controlsOf(section).some((one) => one.value.trim() !== one.dataset.default);

/** @param {HTMLElement} section */
export const showsExample = (section) => $('.result', section).dataset.shows === 'example';

/** The one line of a form that is always in sight. @param {HTMLElement} section @param {string} figure @param {string} label */
export function head(section, figure, label) {
  for (const line of $$(`[data-headline-of="${section.dataset.calculator}"]`)) line.replaceChildren(element('b', '', figure), ' ', element('small', '', label));
}

/** @param {Control} control */
export const labelOf = (control) => control.dataset.label ?? $(`label[for="${control.id}"]`).firstChild.textContent.trim();

/** Why there is no answer. @param {Fault[]} faults @param {Record<string, string>} asked */
export function why(faults, asked) {
  const labels = (/** @type {boolean} */ empty) => [...new Set(faults.filter((one) => !asked[one.field] === empty)
    .flatMap((one) => controls.get(one.field) ?? []).map(labelOf))];
  const parts = [['Still to fill in', labels(true)], ['To put right', labels(false)]].filter(([, names]) => names.length);
  return ['No answer yet.', ...parts.map(([what, names]) => `${what}: ${/** @type {string[]} */ (names).join('; ')}.`)].join(' ');
}

/** @param {HTMLElement} section */
export function inputsOf(section) {
  const own = controlsOf(section).map((one) => /** @type {[string, string]} */ ([one.name, wellFormed(firm?.effective(one) ?? one.value).trim()]));
  return Object.fromEntries(own.filter(([, text]) => text));
}

/** What was typed, for the paper that the form does not stand on, and whose the usual values are. @param {HTMLElement} section */
export function described(section) {
  const told = controlsOf(section).filter((one) => one.value.trim() !== one.dataset.default);
  return told.map((one) => {
    const unit = one.parentElement?.querySelector('.unit')?.textContent;
    const withUnit = (/** @type {string} */ text) => text + (unit && /^[\d./ ]+$/.test(text) ? ' ' + unit : '');
    if (one instanceof HTMLSelectElement) return `${labelOf(one)} ${one.selectedOptions[0].textContent}`;
    if (!one.value.trim()) return `${labelOf(one)} left empty, so the usual ${withUnit(one.dataset.default ?? '')}`;
    return `${labelOf(one)} ${withUnit(inOneLine(one.value.trim()))}`;
  }).join('; ').concat(told.length ? '' : 'the usual values', firm?.told(controlsOf(section), labelOf) ?? '');
}

/** What each form says of a field. @type {WeakMap<Control, Map<HTMLElement, string>>} */
const faultsOf = new WeakMap();

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
  for (const control of controlsOf(section)) {
    const own = faults.filter((fault) => fault.field === control.name);
    const text = own.map((fault) => (fault.message.includes(fault.example) ? fault.message : `${fault.message} Like: ${fault.example}`)).join(' ');
    // Several forms may go by one field: what each says of it stands there together.
    const all = faultsOf.get(control) ?? new Map();
    faultsOf.set(control, text ? all.set(section, text) : (all.delete(section), all));
    const line = document.getElementById(control.id + '-fault');
    const told = [...new Set(all.values())].join(' ');
    if (told) control.setAttribute('aria-invalid', 'true');
    else control.removeAttribute('aria-invalid');
    if (line && line.textContent !== told) line.textContent = told;
    if (line) line.hidden = !told;
    if (own.length && section.contains(control)) control.closest('details:not(.as-text)')?.setAttribute('open', '');
  }
  const told = faults.map((fault) => fault.message).join('\n');
  if (whole && (loud || summary.dataset.told !== told)) {
    summary.dataset.told = told;
    summary.hidden = !faults.length;
    const list = element('ul', '');
    list.append(...faults.map(rowOf));
    summary.replaceChildren(element('p', '', faults.length === 1 ? 'One thing to put right:' : `${faults.length} things to put right:`), list);
  }
  if (loud && faults.length) summary.focus();
  return faults;
}

/** A fault that leads to its field. @param {Fault} fault */
function rowOf(fault) {
  const row = element('li', '');
  const control = controls.get(fault.field);
  const to = element(control ? 'a' : 'span', '', fault.message);
  if (control) {
    /** @type {HTMLAnchorElement} */ (to).href = '#' + control.id;
    to.addEventListener('click', (event) => {
      event.preventDefault();
      openTo(control.closest('.field'));
      if (control.dispatchEvent(new Event('wanted', { cancelable: true }))) control.focus(); // a list in its place takes it over
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
export function brokenParts({ values, dropped, fault }) {
  if (fault) return [fault];
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
