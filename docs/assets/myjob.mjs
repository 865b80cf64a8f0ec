// @ts-check
// The page of all jobs: their names, what is in them, a file out and in, and the way to forget it all. It holds nothing itself:
// what it shows is read from the device each time, as another page may have changed it.

import { root } from './early.mjs';
import { save } from './filing.mjs';
import { LONGEST_NAME, LONGEST_NOTES, MOST_BYTES, read, Refusal, TOO_LARGE, write } from './jobfile.mjs';
import { allJobs, clearTicks, copyJob, currentJob, follow, forgetEverything, isEmpty, makeJob, putBack, removeJob, switchTo, takeJob, tell, workingOn } from './jobs.mjs';
import { button, element } from './make.mjs';
import { device, inOneLine } from './state.mjs';

/** @typedef {import('./jobfile.mjs').Job} Job */

const SHOWN = 120; // letters of a figure or of rooms that a row shows
const NOT_KEPT = 'This device keeps nothing for this page now: it is full, or forbids it. Save what you have as a file.';

export function startMyJob() {
  const $ = (/** @type {string} */ pick) => /** @type {HTMLElement} */ (document.querySelector(pick));
  const top = $('#jobs');
  const asked = /** @type {HTMLElement[]} */ ([...document.querySelectorAll('.asked li')]);
  const known = new Set(asked.map((one) => one.dataset.name ?? ''));
  const told = element('div', 'told');
  told.setAttribute('role', 'status');
  /** Jobs that were removed here, to be put back. @type {{job: Job, pairs: [string, string][]}[]} */
  let removed = [];
  /** The job whose removal is asked about. */
  let asking = '';

  const box = (/** @type {string} */ id, /** @type {string} */ label, /** @type {HTMLInputElement | HTMLTextAreaElement} */ control) => {
    const field = element('div', 'field');
    const words = /** @type {HTMLLabelElement} */ (element('label', '', label));
    words.htmlFor = control.id = id;
    control.autocomplete = 'off';
    field.append(words, control);
    return field;
  };

  // This job: its fields stay the same ones, so that what is being typed is not taken from under a finger.
  const name = /** @type {HTMLInputElement} */ (element('input', ''));
  name.type = 'text';
  name.maxLength = LONGEST_NAME;
  const notes = /** @type {HTMLTextAreaElement} */ (element('textarea', ''));
  notes.maxLength = LONGEST_NOTES;
  const facts = element('p', 'facts-of');
  const stays = element('p', 'facts-of');
  const tools = element('p', 'tools');
  tools.append(
    button('act', 'Save as a file', () => saved(currentJob())),
    button('quiet', 'Copy this job', () => done(copyJob(workingOn()).why, () => `“${currentJob().name}” is a copy with the same figures, and the current job now. Nothing in it is ticked.`)),
  );
  const begin = /** @type {HTMLAnchorElement} */ (element('a', 'act', ''));
  begin.href = new URL('prepare/measure/#takeoff', root).href;
  const first = element('p', 'tools');
  first.append(begin);
  $('.my-now').replaceChildren(box('job-name', 'Name', name), facts, first, box('job-notes', 'Notes', notes), tools, stays);
  const kept = (/** @type {boolean} */ works) => (works ? clearOf(NOT_KEPT) : say([NOT_KEPT]));
  let typing = '';
  for (const [field, what] of /** @type {[HTMLInputElement, 'name' | 'notes'][]} */ ([[name, 'name'], [notes, 'notes']])) {
    field.addEventListener('focus', () => (typing = workingOn()));
    field.addEventListener('input', () => {
      kept(tell(typing || workingOn(), what, what === 'name' ? field.value.trim() : field.value));
      list();
    });
    field.addEventListener('blur', () => {
      typing = '';
      show();
    });
  }

  // All jobs.
  const rows = element('ul', 'jobs');
  const more = element('p', 'tools');
  more.append(button('act', 'New job', () => done(makeJob().why, () => `“${currentJob().name}” is made, and is the current job. Give it a name.`) && name.select()));
  $('.my-all').replaceChildren(element('p', '', 'One house, one customer or one room: a job for each. All pages work on the current one.'), rows, more);

  // Files.
  const file = /** @type {HTMLInputElement} */ (element('input', ''));
  file.type = 'file';
  file.accept = '.json,application/json';
  const opener = element('label', 'file', 'Open a file');
  opener.append(file);
  const schema = element('p', '');
  schema.append(...$('.my-open').childNodes);
  $('.my-open').append(schema, opener);
  file.addEventListener('change', async () => {
    const [chosen] = file.files ?? [];
    if (chosen) await open(chosen);
    file.value = ''; // so that the same file can be chosen again
  });

  // Forgetting.
  const forget = element('div', '');
  $('.my-forget').replaceChildren(forget);

  /** @param {string[]} lines @param {HTMLElement[]} [buttons] */
  function say(lines, buttons = []) {
    told.replaceChildren(...lines.filter(Boolean).map((text) => element('p', '', text)), ...buttons);
    top.replaceChildren(told);
  }
  /** Take a word away that is not true any more. @param {string} text */
  const clearOf = (text) => told.textContent === text && told.replaceChildren();

  /** Say how something went. @param {string} why not, or nothing @param {() => string} how */
  function done(why, how) {
    say([why || how()]);
    show();
    top.scrollIntoView({ block: 'nearest' });
    return !why;
  }

  /** @param {Job} job */
  function saved(job) {
    const large = write(job).length > MOST_BYTES ? 'It is larger than 1 MB, and this book opens no file that large.' : '';
    say([`“${job.name}” goes to your files as ${save(job)}. It holds all that you typed and ticked for it.`, large]);
    top.scrollIntoView({ block: 'nearest' });
  }

  /** @param {File} chosen */
  async function open(chosen) {
    const before = currentJob();
    try {
      if (chosen.size > MOST_BYTES) throw new Refusal(TOO_LARGE);
      const { job, dropped } = read(await chosen.text(), known);
      const taken = takeJob(job, known);
      if (taken.why) throw new Refusal(taken.why);
      const now = currentJob();
      const ticks = Object.keys(now.ticks).length;
      const lines = [
        `“${now.name}” is open, and is the current job: ${contents(now)}.${isEmpty(before) ? '' : ` “${before.name}” stays as it was.`}`,
        dropped.length ? `Left out, as this edition does not know it: ${dropped.join(', ')}.` : '',
        now.figures.asbestos_result ? 'What it says of asbestos is the word of a file. See the report yourself, and give your own answers.' : '',
        ticks ? 'Its ticks are the word of whoever saved it. Check each hold point yourself before you go on.' : '',
      ];
      say(lines, ticks ? [button('quiet', 'Clear its ticks', () => {
        clearTicks(now.id);
        done('', () => `The ticks of “${now.name}” are cleared. The file still has them.`);
      })] : []);
    } catch (error) {
      say([error instanceof Refusal ? error.message : 'This file cannot be read.', 'Nothing was taken from it. Your jobs are as they were.']);
    }
    show();
    top.scrollIntoView({ block: 'nearest' });
  }

  /** @param {number} count @param {string} one */
  const many = (count, one) => `${count} ${one}${count === 1 ? '' : 's'}`;
  /** What a job holds, in numbers. @param {Job} job */
  function contents(job) {
    const running = Object.values(job.timers).filter((ends) => Date.parse(ends) > Date.now()).length;
    const counts = /** @type {[number, string][]} */ ([[Object.keys(job.figures).length, 'figure'], [Object.keys(job.ticks).length, 'tick'], [running, 'running timer'], [Object.keys(job.prices).length, 'price']]);
    const parts = counts.filter(([count]) => count).map(([count, one]) => many(count, one));
    if (job.notes) parts.push('notes');
    return parts.join(', ') || 'Nothing typed or ticked yet';
  }
  /** @param {string} moment */
  const day = (moment) => new Date(moment).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
  /** @param {Job} job */
  const summary = (job) => `${contents(job)}.${job.changed ? ` Last changed: ${day(job.changed)}.` : job.made ? ` Made: ${day(job.made)}.` : ''}`;
  const cut = (/** @type {string} */ text) => (text.length > SHOWN ? `${text.slice(0, SHOWN)} …` : text);

  /** @param {Job} job */
  function row(job) {
    const current = job.id === workingOn();
    const item = element('li', '');
    item.toggleAttribute('data-current', current);
    const head = element('h3', '', job.name);
    if (current) head.append(' ', element('small', '', 'current'));
    item.append(head, element('p', '', job.figures.rooms ? cut(inOneLine(job.figures.rooms)) : 'No rooms yet'), element('p', 'known', summary(job)));
    const acts = element('p', 'tools');
    const act = (/** @type {string} */ classes, /** @type {string} */ text, /** @type {() => void} */ what) => {
      const one = button(classes, text, what);
      one.setAttribute('aria-label', `${text}: ${job.name}`);
      acts.append(one);
      return one;
    };
    if (asking === job.id) {
      item.append(element('p', '', `Remove “${job.name}”? ${contents(job)}.`));
      act('act', 'Remove it', () => remove(job.id));
      act('quiet', 'Keep it', () => {
        asking = '';
        list();
      });
    } else {
      if (!current) act('quiet', 'Work on this', () => done(switchTo(job.id), () => `All pages work on “${job.name}” now.`));
      if (!current) act('quiet', 'Save as a file', () => saved(job));
      if (!current || !isEmpty(job)) {
        act('quiet', 'Remove', () => {
          asking = job.id;
          list();
          /** @type {HTMLElement | null} */ (rows.querySelector('button.act'))?.focus();
        });
      }
    }
    item.append(acts);
    return item;
  }

  /** @param {string} id */
  function remove(id) {
    asking = '';
    const { job, pairs, why } = removeJob(id);
    if (why) return done(why, () => '');
    removed.push({ job, pairs });
    offerBack();
    show();
    top.scrollIntoView({ block: 'nearest' });
  }

  /** What was removed can be put back as long as this page is open. */
  function offerBack() {
    say(removed.map(({ job }) => `“${job.name}” is removed. It can be put back until you leave this page.`), removed.map((one) => button('quiet', `Put “${one.job.name}” back`, () => {
      const why = putBack(one.pairs);
      if (why) return say([why, 'It is still here: save it as a file before you leave this page.'], [button('act', 'Save as a file', () => save(one.job))]);
      removed = removed.filter((other) => other !== one);
      switchTo(one.job.id);
      offerBack();
      if (!removed.length) say([`“${one.job.name}” is back, and is the current job.`]);
      show();
    })));
  }

  /** @param {boolean} sure */
  function offerForgetting(sure) {
    const jobs = allJobs();
    const what = element('p', '', sure
      ? `This takes ${jobs.length === 1 ? 'your job' : `all ${jobs.length} jobs`} off this device: names, figures, ticks, timers, prices and notes, and light or dark. It cannot be undone.`
      : 'One button takes all that you typed, ticked and chose off this device.');
    const rest = element('p', '', 'The book itself stays, and works without a signal. Files that you saved stay where they are. The history of your browser may still hold addresses with figures in them.');
    const acts = element('p', 'tools');
    if (sure) {
      acts.append(button('act', 'Forget everything', () => {
        const why = forgetEverything();
        removed = [];
        dispatchEvent(new StorageEvent('storage', { key: null })); // the rest of this page looks again too
        offerForgetting(false);
        done(why, () => 'All is forgotten. Nothing that you typed is on this device now.');
      }), button('quiet', 'Keep it', () => offerForgetting(false)));
    } else acts.append(button('quiet', 'Forget everything …', () => {
      offerForgetting(true);
      forget.querySelector('button')?.focus();
    }));
    forget.replaceChildren(what, rest, acts);
  }

  function list() {
    rows.replaceChildren(...allJobs().map(row));
  }

  /** Show what lies on the device now. */
  function show() {
    const job = currentJob();
    if (document.activeElement !== name) name.value = job.name;
    if (document.activeElement !== notes) notes.value = job.notes;
    facts.textContent = summary(job);
    list();
    showFigures(job);
    document.dispatchEvent(new Event('job')); // for whatever else of this page goes by it
  }

  /** Each figure that the job holds, beside the link to where it is asked. @param {Job} job */
  function showFigures(job) {
    const any = Object.keys(job.figures).length > 0;
    const none = $('.none-yet');
    none.textContent = any ? 'As you typed them. A link leads to where each is asked.' : 'None yet.';
    begin.textContent = job.figures.rooms ? 'See the rooms' : 'Give your rooms';
    for (const one of asked) {
      const text = job.figures[one.dataset.name ?? ''];
      one.hidden = text === undefined;
      one.querySelector('b')?.remove();
      if (text === undefined) continue;
      const words = [...one.querySelectorAll('data')].find((data) => data.value === text)?.textContent;
      const unit = one.dataset.unit && /^[\d./ ]+$/.test(text) ? ` ${one.dataset.unit}` : '';
      one.append(element('b', '', words ?? (text ? cut(inOneLine(text)) + unit : 'left empty')));
    }
  }

  async function tellStay() {
    const stay = await navigator.storage?.persisted?.().catch(() => false);
    stays.textContent = stay ? 'The browser keeps this until you clear it.' : 'The browser may clear this when the device runs out of room. A file is safe from that.';
  }

  /** Whether the device takes anything at all. */
  function works() {
    const place = `device ${root.pathname} tried`;
    try {
      device()?.setItem(place, 'tried');
      device()?.removeItem(place);
      return Boolean(device());
    } catch {
      return false;
    }
  }

  addEventListener('storage', ({ key }) => {
    if (key === `device ${root.pathname} tried`) return;
    const before = workingOn();
    follow();
    if (before !== workingOn()) say([`Another page chose “${currentJob().name}”. It is the current job here too.`]);
    if (typing && typing !== workingOn()) /** @type {HTMLElement | null} */ (document.activeElement)?.blur(); // what was typed is kept with its job
    show();
  });
  addEventListener('pageshow', ({ persisted }) => {
    if (!persisted) return;
    follow();
    show();
  });
  follow();
  if (!works()) say([NOT_KEPT]);
  offerForgetting(false);
  show();
  tellStay();
  document.documentElement.dataset.jobs = '';
}
