// @ts-check
// Whose figures a page shows: the name of its job, where there is more than one; a word when another page chose another job, as
// this one stays with its own; and a way to save the job where the device keeps nothing.

import { about, figures, job, root, ticks, timers } from './early.mjs';
import { button, element } from './make.mjs';
import { currentId, currentPlace, device, FIRST } from './state.mjs';

export function startWhose() {
  const notice = document.getElementById('whose');
  const main = document.getElementById('content');
  if (!notice || !main || document.getElementById('jobs')) return; // the page of all jobs follows by itself
  const works = Boolean(document.querySelector('.calc, input[data-step]'));
  const line = element('p', 'whose');
  const link = /** @type {HTMLAnchorElement} */ (element('a', '', ''));
  link.href = new URL('my-job/', root).href;
  line.append(link);
  let gone = false;

  /** Whether there is any job but the first one. */
  const several = () => {
    try {
      const kept = device();
      for (let at = 0; kept && at < kept.length; at += 1) {
        const [shelf, path] = (kept.key(at) ?? '').split(' ');
        if (path === root.pathname && shelf.includes('@')) return true;
      }
    } catch {
      // a browser that forbids even to look
    }
    return false;
  };
  const nameOf = async (/** @type {string} */ id) => (await import('./jobs.mjs')).jobOf(id).name;

  async function show() {
    const named = about.read().name;
    link.textContent = `Job: ${named ?? (job === FIRST ? 'Job 1' : 'Job without a name')}`;
    if (works && (named || several())) {
      const after = main?.querySelector('.crumbs');
      if (after) after.after(line);
      else main?.prepend(line);
    } else line.remove();
    const now = currentId(root);
    const parts = [];
    if (works && now !== job) {
      const other = await nameOf(now);
      parts.push(
        element('p', '', `Another page works on “${other}” now. This page stays with “${await nameOf(job)}”: what you type here is kept there.`),
        button('act', `Show “${other}” here`, () => {
          if (history.state?.figures) history.replaceState({ ...history.state, figures: 'kept', job: now }, '');
          location.reload();
        }),
      );
    } else if (gone) parts.push(element('p', '', 'Another page removed this job. What you type here begins it anew.'));
    if (works && ![figures, ticks, timers].every((one) => one.works)) {
      parts.push(element('p', '', 'This device keeps nothing for this page now: it is full, or forbids it. What you typed and ticked is in a file once you save one.'), button('quiet', 'Save this job as a file', save));
    }
    const before = notice?.textContent;
    const after = parts.map((one) => one.textContent).join('');
    if (before === after) return; // a button under a thumb stays
    notice?.replaceChildren(...parts);
    if (notice) notice.hidden = !parts.length;
  }

  async function save() {
    const [{ jobOf }, { save: asFile }] = await Promise.all([import('./jobs.mjs'), import('./filing.mjs')]);
    asFile(jobOf(job));
  }

  addEventListener('storage', ({ key, newValue }) => {
    const own = key?.startsWith(`about${job === FIRST ? '' : '@' + job} ${root.pathname} made`);
    if (own) gone = newValue === null;
    if (key === null || key === currentPlace(root) || key.startsWith('about')) show();
  });
  document.addEventListener('figures', show);
  document.addEventListener('ticks', show);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && show());
  // Who goes back to a page that slept meanwhile wants the job that was chosen since; what the device did not keep stays.
  addEventListener('pageshow', ({ persisted }) => {
    if (!persisted) return;
    if (currentId(root) !== job && history.state?.figures !== 'loose' && [figures, ticks, timers].every((one) => one.works)) location.reload();
    else show();
  });
  show();
}
