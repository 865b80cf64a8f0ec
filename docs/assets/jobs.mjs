// @ts-check
// The jobs on this device. A job has no list that could break: it is there as long as an entry of it is. Each entry lies by
// itself on a shelf of its job, so two pages that work on two jobs never meet, and a damaged entry is one entry.

import { about, figures, job as bound, root, ticks, timers } from './early.mjs';
import { asName, check, isMoment, LONGEST_NOTES, mayHold, PARTS, Refusal } from './jobfile.mjs';
import { currentId, currentPlace, device, FIRST, JOB_ID, shelf, shelfOf, wellFormed } from './state.mjs';

/** @typedef {import('./jobfile.mjs').Job} Job */

const FULL = 'This device has no room, or keeps nothing now. Nothing was changed.';
/** What belongs to a job beside its parts: what lies aside, whose word a figure is, where the steps were left. */
const BESIDE = ['about', 'earlier-figures', 'figures-of-a-link', 'place'];
const KINDS = [...PARTS, ...BESIDE];
/** Shelves that are open, by what they are called: they know too what the device did not take. @type {Map<string, ReturnType<typeof shelf>>} */
const opened = new Map(Object.entries({ about, figures, ticks, timers }).map(([kind, one]) => [shelfOf(kind, bound), one]));

/** The job that this page works on. */
let now = bound;
export const workingOn = () => now;

/** @param {string} kind @param {string} id */
function openShelf(kind, id) {
  const called = shelfOf(kind, id);
  const one = opened.get(called) ?? shelf(called, root);
  opened.set(called, one);
  return one;
}

/** @param {string} kind @param {string} id @returns {Record<string, string>} */
function entries(kind, id) {
  try {
    return openShelf(kind, id).read();
  } catch {
    return {}; // a browser that forbids even to look
  }
}

/** Every place on the device that is this book's: `kind`, `job` and `name` are empty where there is none. */
function places() {
  const kept = device();
  const found = [];
  for (let at = 0; kept && at < kept.length; at += 1) {
    const place = kept.key(at) ?? '';
    const [shelfName, path, ...rest] = place.split(' ');
    if (path !== root.pathname) continue;
    const [kind, id = FIRST] = shelfName.split('@');
    found.push({ place, kind, job: KINDS.includes(kind) ? id : '', name: rest.join(' ') });
  }
  return found;
}

/** What a job is called where nobody named it. @param {string} id */
const unnamed = (id) => (id === FIRST ? 'Job 1' : 'Job without a name');

/** A whole job, as it stands. What no job holds, as a damaged device may, is left out. @param {string} id @returns {Job} */
export function jobOf(id) {
  const told = entries('about', id);
  const changed = isMoment(told.changed) ? told.changed : '';
  const made = isMoment(told.made) ? told.made : '';
  const part = (/** @type {string} */ kind) => Object.entries(entries(kind, id)).filter(([name]) => mayHold(kind, name)).sort(([one], [other]) => (one < other ? -1 : 1));
  // A tick is one whatever stands in it; a timer without a moment tells nobody anything.
  const ticked = part('ticks').filter(([, when]) => when).map(([step, when]) => [step, isMoment(when) ? when : changed || made || new Date().toISOString()]);
  return {
    id,
    name: asName(told.name ?? '') || unnamed(id),
    made,
    changed,
    figures: Object.fromEntries(part('figures')),
    ticks: Object.fromEntries(ticked),
    timers: Object.fromEntries(part('timers').filter(([, ends]) => isMoment(ends))),
    prices: Object.fromEntries(part('prices')),
    notes: (told.notes ?? '').slice(0, LONGEST_NOTES),
  };
}

/** The job that this page works on. */
export const currentJob = () => jobOf(now);

/** All jobs, the current one first, then those that changed last. */
export function allJobs() {
  let ids = [now];
  try {
    ids = [...new Set([now, ...places().map((one) => one.job).filter((id) => JOB_ID.test(id))])];
  } catch {
    // only what this page knows
  }
  const found = ids.map(jobOf).filter((one) => one.id !== FIRST || one.id === now || !isEmpty(one));
  const rank = (/** @type {Job} */ one) => (one.id === now ? '~' : one.changed || one.made);
  return found.sort((one, other) => (rank(one) < rank(other) ? 1 : rank(one) > rank(other) ? -1 : one.id < other.id ? -1 : 1));
}

/** @param {Job} job */
export const isEmpty = (job) => PARTS.every((part) => !Object.keys(job[part]).length) && !job.notes && job.name === unnamed(job.id);

/** Put all these, or none. @param {[string, string][]} pairs places and texts @returns {boolean} */
function layDown(pairs) {
  const put = [];
  const kept = device();
  try {
    if (!kept) return false;
    for (const [place, text] of pairs) {
      put.push(place);
      kept.setItem(place, text);
      if (kept.getItem(place) !== text) throw new Error('not kept');
    }
    return true;
  } catch {
    for (const place of put) {
      try {
        kept?.removeItem(place);
      } catch {
        // nothing came to lie there either
      }
    }
    return false;
  }
}

/** @param {string} kind @param {string} id @param {string} name */
const placeOf = (kind, id, name) => `${shelfOf(kind, id)} ${root.pathname} ${name}`;

/** Let all pages work on a job from now on. @param {string} id @returns {string} why not, or nothing */
export function switchTo(id) {
  try {
    const kept = /** @type {Storage} */ (device());
    kept.setItem(currentPlace(root), id);
    if (kept.getItem(currentPlace(root)) !== id) return FULL;
  } catch {
    return FULL;
  }
  now = id;
  return '';
}

/** A page without figures of its own goes along when another one chose. */
export function follow() {
  now = currentId(root);
}

/** An id that nothing on this device has yet. @param {string} [wanted] */
function freeId(wanted = '') {
  const taken = [FIRST, now, currentId(root), ...places().map((one) => one.job)];
  let id = wanted;
  while (!JOB_ID.test(id) || taken.includes(id)) id = Date.now().toString(36) + Math.floor(Math.random() * 36 ** 4).toString(36);
  return id;
}

/** A name that no job here has. @param {string} wanted */
function freeName(wanted) {
  const taken = allJobs().map((one) => one.name);
  let name = wanted;
  for (let count = 2; taken.includes(name); count += 1) name = `${wanted.slice(0, 70)} (${count})`;
  return name;
}

/**
 * Lay a job down as a new one, and make it the current one: all of it or nothing.
 * @param {Job} job @param {[string, Record<string, string>][]} beside kinds and entries that go with it
 * @returns {{id: string, why: string}}
 */
function addJob(job, beside) {
  const none = { id: '', why: FULL };
  try {
    const id = freeId(job.id);
    const told = Object.fromEntries(Object.entries({ name: freeName(job.name), made: job.made, changed: job.changed, notes: job.notes }).filter(([, text]) => text));
    if (!told.made) told.made = new Date().toISOString();
    const all = /** @type {[string, Record<string, string>][]} */ ([['about', told], ...PARTS.map((part) => [part, job[part]]), ...beside]);
    const pairs = all.flatMap(([kind, held]) => Object.entries(held).map(([name, text]) => /** @type {[string, string]} */ ([placeOf(kind, id, name), text])));
    if (!layDown(pairs)) return none;
    const why = switchTo(id);
    if (!why) return { id, why };
    for (const [place] of pairs) device()?.removeItem(place);
    return none;
  } catch {
    return none;
  }
}

/** @param {string} name */
export function makeJob(name = '') {
  const count = allJobs().length + 1;
  return addJob({ id: '', name: asName(name) || `Job ${count}`, made: '', changed: '', figures: {}, ticks: {}, timers: {}, prices: {}, notes: '' }, []);
}

/** A second job with the same figures, prices and notes. Ticks and timers tell of work that was done, and stay. @param {string} id */
export function copyJob(id) {
  const from = jobOf(id);
  const copy = { ...from, id: '', name: `${from.name.slice(0, 70)}, copy`, made: '', changed: '', ticks: {}, timers: {} };
  return addJob(copy, [['figures-of-a-link', entries('figures-of-a-link', id)]]);
}

/**
 * A job that came from elsewhere, by a file or a link, becomes a new job and the current one. What it says is somebody's word:
 * its figures are marked so, and no answer in it settles asbestos.
 * @param {Partial<Job>} from parts that are not there are empty @param {Set<string> | null} [known] the figures that this edition asks for
 * @returns {{id: string, name: string, dropped: string[], why: string}} `why` it was not taken, or nothing
 */
export function takeJob(from, known = null) {
  const no = { id: '', name: '', dropped: [] };
  try {
    const empty = { id: '', name: '', made: '', changed: '', figures: {}, ticks: {}, timers: {}, prices: {}, notes: '' };
    const { job, dropped } = check({ ...empty, ...from }, known);
    const { id, why } = addJob({ ...job, name: job.name || 'Job of a file' }, [['figures-of-a-link', job.figures]]);
    return why ? { ...no, why } : { id, name: jobOf(id).name, dropped, why };
  } catch (error) {
    return { ...no, why: error instanceof Refusal ? error.message : FULL };
  }
}

/** Name a job, or note something of it. @param {string} id @param {'name' | 'notes'} what @param {string} text @returns {boolean} whether the device keeps it */
export function tell(id, what, text) {
  const own = openShelf('about', id);
  own.put('changed', new Date().toISOString());
  return own.put(what, wellFormed(text) || undefined);
}

/** Take the ticks of a job away. @param {string} id */
export function clearTicks(id) {
  const own = openShelf('ticks', id);
  for (const step of Object.keys(own.read())) own.put(step);
}

/** Take a job away, and return all that lay there, so that it can be put back. @param {string} id @returns {{job: Job, pairs: [string, string][], why: string}} */
export function removeJob(id) {
  const job = jobOf(id);
  /** @type {[string, string][]} */
  const pairs = [];
  try {
    const kept = /** @type {Storage} */ (device());
    for (const { place, job: owner } of places()) if (owner === id) pairs.push([place, kept.getItem(place) ?? '']);
    if (id === now) {
      const next = allJobs().find((one) => one.id !== id);
      const why = switchTo(next?.id ?? FIRST);
      if (why) return { job, pairs, why };
    }
    for (const [place] of pairs) kept.removeItem(place);
    return { job, pairs, why: '' };
  } catch {
    for (const [place, text] of pairs) {
      try {
        device()?.setItem(place, text);
      } catch {
        // it lies there still
      }
    }
    return { job, pairs, why: FULL };
  }
}

/** Put back what was taken away; what was typed there meanwhile stays. @param {[string, string][]} pairs @returns {string} why not, or nothing */
export function putBack(pairs) {
  const there = new Set(places().map((one) => one.place));
  return layDown(pairs.filter(([place]) => !there.has(place))) ? '' : FULL;
}

/** Take away all that this book put on the device, but the book itself. @returns {string} why not, or nothing */
export function forgetEverything() {
  try {
    for (const { place } of places()) device()?.removeItem(place);
    opened.clear(); // what the device did not take is forgotten too
    for (const place of Object.keys(sessionStorage)) if (place.split(' ')[1] === root.pathname) sessionStorage.removeItem(place);
    now = FIRST;
    return places().length ? FULL : '';
  } catch {
    return 'This device did not let go of everything. Clear the data of this site in the settings of the browser.';
  }
}
