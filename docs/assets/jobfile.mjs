// @ts-check
// A job as a file: what is written, and what is taken. `job.schema.json` describes it. A file is taken whole or refused with
// one sentence; what this edition does not know is left out and named. Nothing here touches the page or the device.

import { plain } from './filename.mjs';
import { JOB_ID, wellFormed } from './state.mjs';

/**
 * @typedef {{id: string, name: string, made: string, changed: string, figures: Record<string, string>,
 *   ticks: Record<string, string>, timers: Record<string, string>, prices: Record<string, string>, notes: string}} Job
 * Texts all the way: figures as they were typed, by the names of the forms; ticks and timers by step, each with its moment;
 * prices by any name. An empty `made` or `changed` is not known.
 */

export const FORMAT = 'lidbook-job';
export const VERSION = 1;
export const MOST_BYTES = 1_000_000;
export const LONGEST_NAME = 80;
export const LONGEST_NOTES = 20_000;
const MOST_ENTRIES = 2_000; // in one part: more than the book has fields and steps together
const TOLD = 40; // letters of a name that are told
const MOMENT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,3})?Z$/;
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]/;
const STEP = /^(?=.{1,64}$)[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
/** What a name in each part may be. @type {Record<string, RegExp>} */
const NAMES = { figures: /^[a-z][a-z0-9_]{0,63}$/, ticks: STEP, timers: STEP, prices: /^[^\u0000-\u001f\u007f-\u009f\u2028\u2029]{1,80}$/ };
export const PARTS = /** @type {('figures' | 'ticks' | 'timers' | 'prices')[]} */ (Object.keys(NAMES));
const KEYS = ['format', 'version', 'id', 'name', 'made', 'changed', ...PARTS, 'notes'];

/** Why a file is not taken, in a sentence for people. */
export class Refusal extends Error {}

/** What each version is brought to the next by; the first is what edition 0.6 kept: figures alone, name and text. */
const UPGRADES = [(/** @type {any} */ figures) => ({ id: '', name: '', made: '', changed: '', figures, ticks: {}, timers: {}, prices: {}, notes: '' })];

/** @param {any} one */
const isMap = (one) => typeof one === 'object' && one !== null && !Array.isArray(one);
/** A key that every object of a script has already: no file of ours holds one. @param {string} key */
const isForbidden = (key) => key in Object.prototype;
const short = (/** @type {string} */ text) => `“${text.length > TOLD ? text.slice(0, TOLD) + '…' : text}”`;
/** @param {unknown} text */
export const isMoment = (text) => typeof text === 'string' && MOMENT.test(text) && !Number.isNaN(Date.parse(text));
/** Whether a part of a job may hold an entry of this name. @param {string} part @param {string} name */
export const mayHold = (part, name) => NAMES[part].test(name) && !isForbidden(name);
/** A name in one line. @param {string} text */
export const asName = (text) => wellFormed(text.split(CONTROL).join(' ').trim().slice(0, LONGEST_NAME)).trim();

/** @param {Job} job @returns {string} the text of its file */
export function write(job) {
  const known = Object.fromEntries(KEYS.slice(2).map((key) => [key, /** @type {any} */ (job)[key]]));
  return JSON.stringify({ format: FORMAT, version: VERSION, ...known }, null, 1) + '\n';
}

/** A name for the file: what any device takes. @param {Job} job */
export function fileName({ name, changed }) {
  return [plain(name) || 'job', changed.slice(0, 10)].filter(Boolean).join('-') + '.json';
}

/**
 * @param {string} text of a file @param {Set<string> | null} known the figures that this edition asks for
 * @returns {{job: Job, dropped: string[]}} `dropped` names what was left out
 */
export function read(text, known) {
  if (text.length > MOST_BYTES) throw new Refusal(TOO_LARGE);
  let found;
  try {
    found = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    throw new Refusal('This file cannot be read as a job. It was cut off, or it is something else.');
  }
  if (!isMap(found)) throw new Refusal('This file is no job of this book.');
  if (!Object.hasOwn(found, 'format')) {
    const names = Object.keys(found);
    if (!names.some((name) => mayHold('figures', name) && (known === null || known.has(name)))) throw new Refusal('This file is no job of this book.');
    return check(UPGRADES[0](found), known);
  }
  const { format, version } = found;
  if (format !== FORMAT) throw new Refusal('This file is no job of this book: its format is another one.');
  if (!Number.isInteger(version) || version < 1) throw new Refusal('This file does not say which version of a job it is.');
  if (version > VERSION) throw new Refusal(`A newer edition of this book made this file (version ${version}). Take the new edition, then open the file again.`);
  for (let at = version; at < VERSION; at += 1) found = UPGRADES[at](found);
  return check(found, known);
}

export const TOO_LARGE = 'This file is larger than 1 MB. No job of this book is.';

/**
 * A job that came from elsewhere, part by part. @param {any} found @param {Set<string> | null} known
 * @returns {{job: Job, dropped: string[]}}
 */
export function check(found, known) {
  /** @type {string[]} */
  const dropped = [];
  for (const key of Object.keys(found)) {
    if (isForbidden(key)) throw new Refusal(`This file holds ${short(key)}, which no job holds.`);
    if (!KEYS.includes(key)) dropped.push(short(key));
  }
  const textOf = (/** @type {string} */ key, /** @type {number} */ most) => {
    const text = found[key];
    if (typeof text !== 'string') throw new Refusal(`The part ${key} of this file is missing, or is no text.`);
    if (text.length > most) throw new Refusal(`The part ${key} of this file is longer than ${most.toLocaleString('en')} letters.`);
    return wellFormed(text);
  };
  const momentOf = (/** @type {string} */ key) => {
    const text = textOf(key, TOLD);
    if (text && !isMoment(text)) throw new Refusal(`The part ${key} of this file is no day and time.`);
    return text;
  };
  const id = textOf('id', TOLD);
  if (id && !JOB_ID.test(id)) throw new Refusal('The part id of this file is none that this book gives.');
  const job = { id, name: asName(textOf('name', LONGEST_NAME)), made: momentOf('made'), changed: momentOf('changed') };
  const parts = Object.fromEntries(PARTS.map((part) => [part, entriesOf(found[part], part, part === 'figures' ? known : null, dropped)]));
  return { job: /** @type {Job} */ ({ ...job, ...parts, notes: textOf('notes', LONGEST_NOTES) }), dropped };
}

/** @param {any} held @param {string} part @param {Set<string> | null} known @param {string[]} dropped */
function entriesOf(held, part, known, dropped) {
  if (!isMap(held)) throw new Refusal(`The part ${part} of this file is missing, or is no list of names and texts.`);
  const entries = Object.entries(held);
  if (entries.length > MOST_ENTRIES) throw new Refusal(`The part ${part} of this file holds more than ${MOST_ENTRIES.toLocaleString('en')} entries.`);
  const kept = [];
  for (const [name, text] of entries) {
    if (!mayHold(part, name)) throw new Refusal(`The part ${part} of this file holds the name ${short(name)}, which no job holds.`);
    if (typeof text !== 'string') throw new Refusal(`In ${part}, ${short(name)} is no text.`);
    if ((part === 'ticks' || part === 'timers') && !isMoment(text)) throw new Refusal(`In ${part}, ${short(name)} is no day and time.`);
    if (known && !known.has(name)) dropped.push(short(name));
    else kept.push(/** @type {[string, string]} */ ([name, wellFormed(text)]));
  }
  return Object.fromEntries(kept);
}
