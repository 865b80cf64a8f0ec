// @ts-check
// The figures of the firm whose edition this is: each stands in its field as the usual one and is told as the firm's. What the
// visitor types goes before it, and can be taken back. The page of an edition that is nobody's fetches none of this.

import { button, element } from './make.mjs';
import { inLines } from './state.mjs';

/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement} Control */
/** @typedef {{text: string, date: string, where: string}} Value */

/** @type {{name: string, values: Record<string, Value>}} */
const firm = JSON.parse(document.getElementById('firm')?.textContent || '{"name": "", "values": {}}');

/** The firm's value of a field, where it has one. @param {string} name @returns {Value | undefined} */
const valueOf = (name) => (Object.hasOwn(firm.values, name) ? firm.values[name] : undefined);

/** @param {Value} value */
const origin = ({ date, where }) => `from ${firm.name}, ${date}${where ? ` (${where})` : ''}`;

/** Put the firm's value into each field that has one, before anything typed is put there. @param {Map<string, Control>} controls */
export function layFigures(controls) {
  for (const [name, control] of controls) {
    const value = valueOf(name);
    const fault = document.getElementById(`${control.id}-fault`);
    if (!value || !fault) continue;
    control.dataset.book = control.dataset.default ?? '';
    control.dataset.default = control instanceof HTMLTextAreaElement ? inLines(value.text) : value.text;
    const show = () => (control.value = control.dataset.default ?? '');
    show();
    const note = element('p', 'from-firm');
    note.id = `${control.id}-firm`;
    control.setAttribute('aria-describedby', `${control.getAttribute('aria-describedby') ?? ''} ${note.id}`.trim());
    fault.before(note);
    const back = button('quiet', 'Take it again', () => {
      show();
      control.dispatchEvent(new Event('input', { bubbles: true }));
      control.focus();
    });
    const tell = () => {
      if (standsAsFirms(control)) note.textContent = origin(value);
      else note.replaceChildren(`Yours. ${value.text.includes(';') ? 'The usual ones are' : `The usual ${shown(control, value.text)} is`} ${origin(value)}. `, back);
    };
    for (const kind of ['input', 'change', 'filled']) control.addEventListener(kind, tell);
    tell();
  }
}

/** Whether the firm's value is the one that counts: it stands in the field, or the field is empty and always has a value. @param {Control} control */
export const standsAsFirms = (control) => valueOf(control.name) !== undefined && effective(control) === control.dataset.default;

/** What a field gives to the calculators: an emptied one that the book has a value for gives the firm's. @param {Control} control */
export function effective(control) {
  const text = control.value.trim();
  return text || !control.dataset.book ? text : control.dataset.default ?? '';
}

/** The firm's figures that an answer goes by, for the line that tells whose figures it stands on. @param {Control[]} controls @param {(control: Control) => string} labelOf */
export function told(controls, labelOf) {
  const own = controls.filter(standsAsFirms);
  if (!own.length) return '';
  const one = (/** @type {Control} */ control) => {
    const { text, date, where } = /** @type {Value} */ (valueOf(control.name));
    const entries = text.split(';').length;
    return `${labelOf(control)} ${entries > 1 ? `${entries} of ${date}` : `${shown(control, text)}, ${date}`}${where ? ` (${where})` : ''}`;
  };
  return `. From ${firm.name}: ${own.map(one).join('; ')}`;
}

/** A link holds the firm's figures too, as they may change before it is opened. @param {Map<string, string>} values @param {Map<string, Control>} controls */
export function withFirms(values, controls) {
  const more = [...controls.values()].filter((one) => !values.has(one.name) && standsAsFirms(one) && one.dataset.default !== one.dataset.book);
  return new Map([...values, ...more.map((one) => /** @type {[string, string]} */ ([one.name, one.dataset.default ?? '']))]);
}

/** @param {Control} control @param {string} text */
function shown(control, text) {
  if (control instanceof HTMLSelectElement) return [...control.options].find((one) => one.value === text)?.textContent ?? text;
  const unit = control.parentElement?.querySelector('.unit')?.textContent;
  return unit && /^[\d./ ]+$/.test(text) ? `${text} ${unit}` : text;
}
