// @ts-check
// Timers: kept as the moment when they end, so a locked phone does not stop them. One that runs stays in sight on every
// step and on the page; when it ends it sounds, shakes and is read out, whichever step is shown by then.

import { textOf } from './copies.mjs';
import { timers } from './early.mjs';
import { button, element } from './make.mjs';

const SECOND = 1000;
const FORGOTTEN = 12 * 3600 * SECOND; // an end that is longer past than this tells nobody anything
const BEEPS = 3;
const PITCH_HZ = 880;

export function startTimers() {
  const strip = element('div', 'timers');
  const list = element('ul', '');
  const bell = element('p', 'unseen');
  bell.setAttribute('role', 'alert');
  strip.append(list, bell);
  let ticking = 0;
  /** @type {AudioContext | undefined} */
  let sound;
  /** Ends that were told here, or were past before this page opened. @type {Set<string>} */
  const told = new Set();

  for (const [step, ends] of Object.entries(timers.read())) {
    const past = Date.now() - Date.parse(ends);
    if (!(past < FORGOTTEN)) timers.put(step);
    else if (past > 0) told.add(step + ends);
  }

  /** A browser gives sound only after a touch. */
  function wakeSound() {
    if (ticking && 'AudioContext' in window) sound ??= new AudioContext();
  }
  for (const touch of ['pointerdown', 'keydown']) addEventListener(touch, wakeSound, { passive: true });

  /** @param {string} step @returns {string} what the step says */
  const nameOf = (step) => textOf(document.getElementById(step)?.querySelector('.do'));

  /** @param {string} step @param {string} ends */
  function leftOf(step, ends) {
    const seconds = Math.ceil((Date.parse(ends) - Date.now()) / SECOND);
    if (seconds > 0) return `${Math.floor(seconds / 3600) ? `${Math.floor(seconds / 3600)} h ` : ''}${Math.floor(seconds / 60) % 60} min ${seconds % 60} s left`;
    list.querySelector(`li[data-step="${step}"]`)?.classList.add('over');
    if (!told.has(step + ends)) ring(step + ends, nameOf(step));
    return `The time is over, since ${new Date(ends).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}. Feel and look before you go on.`;
  }

  /** @param {string} end @param {string} what */
  function ring(end, what) {
    told.add(end);
    bell.textContent = `The time is over: ${what}`;
    navigator.vibrate?.([300, 200, 300]);
    for (let beep = 0; sound && beep < BEEPS; beep += 1) {
      const tone = sound.createOscillator();
      tone.frequency.value = PITCH_HZ;
      tone.connect(sound.destination);
      tone.start(sound.currentTime + beep / 2);
      tone.stop(sound.currentTime + beep / 2 + 0.25);
    }
  }

  /** Say what is left of each timer, from the clock and not from counting. */
  function tell() {
    clearInterval(ticking);
    ticking = 0;
    const all = Object.entries(timers.read()).filter(([step]) => document.getElementById(step));
    list.replaceChildren(...all.map(([step, ends]) => {
      const row = element('li', '');
      row.dataset.step = step;
      const over = Date.parse(ends) <= Date.now();
      row.classList.toggle('over', over);
      const stop = button('quiet', 'Stop', () => {
        timers.put(step);
        tell();
      });
      stop.setAttribute('aria-label', `Stop the timer: ${nameOf(step)}`);
      row.append(element('b', '', nameOf(step)), element('span', 'left', leftOf(step, ends)), stop);
      return row;
    }));
    strip.hidden = !all.length;
    for (const place of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.timer'))) {
      const start = place.querySelector('button');
      if (start && timers.read()[place.dataset.step ?? '']) start.textContent = start.textContent?.replace(/^Start (?!again)/, 'Start again, ') ?? '';
    }
    if (all.some(([, ends]) => Date.parse(ends) > Date.now())) ticking = setInterval(count, SECOND);
  }

  /** Only the words that change are touched, so that a button under a thumb stays. */
  function count() {
    const held = timers.read();
    for (const row of /** @type {NodeListOf<HTMLElement>} */ (list.querySelectorAll('li'))) {
      const step = row.dataset.step ?? '';
      const text = held[step] ? leftOf(step, held[step]) : '';
      const left = /** @type {HTMLElement} */ (row.querySelector('.left'));
      if (left.textContent !== text) left.textContent = text;
    }
    if (!Object.values(held).some((ends) => Date.parse(ends) > Date.now())) clearInterval(ticking);
  }

  /** Minutes in words. @param {number} minutes */
  function inWords(minutes) {
    const hours = Math.floor(minutes / 60);
    return [hours ? `${hours} h` : '', minutes % 60 || !hours ? `${minutes % 60} min` : ''].filter(Boolean).join(' ');
  }

  /** The place in a step where its timer is started. How long it runs is read when it starts, as figures change. @param {string} step @param {HTMLElement} waits */
  function starter(step, waits) {
    const place = element('div', 'timer');
    place.dataset.step = step;
    place.append(element('p', 'wanted', waits.textContent ?? ''));
    const least = () => Math.round(Number(waits.dataset.least));
    if (!(least() > 0)) return place; // nobody knows yet how long
    place.append(button('quiet', `Start${timers.read()[step] ? ' again,' : ''} ${inWords(least())}`, () => {
      bell.textContent = '';
      timers.put(step, new Date(Date.now() + least() * 60 * SECOND).toISOString());
      tell();
      wakeSound();
    }));
    return place;
  }

  timers.watch(tell);
  document.addEventListener('figures-shown', tell); // a step that waits may hold one
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && tell());
  tell();
  return { strip, starter };
}
