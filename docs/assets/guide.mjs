// @ts-check
// The choice of way, one question at a time. The form holds the answers and the engine says which question is worth most
// next; this file only shows one of them, large, with the state of all ways in sight.

import { button, element } from './make.mjs';
import { link } from './state.mjs';

/** @typedef {{name: string, state: string, page: string}} Way */

const MARKS = /** @type {Record<string, string>} */ ({ open: '○', 'open after': '◐', 'not known': '?', closed: '✕' });
// A question, and the figure of another form that tells its answer as well: either stands, not both (calc.decision_shared).
const FIGURES = /** @type {Record<string, string>} */ ({ built: 'year_built', texture_depth: 'texture_depth_in', joists: 'joist_spacing_in', height: 'ceiling_height_ft', times_painted: 'texture_painted' });
const CLEARANCE = 8; // pixels between the strip of ways and the question under it
const PATIENCE = 4000; // milliseconds after which the next question comes in the order of the book, engine or not

export function startGuide() {
  const section = /** @type {HTMLElement} */ (document.getElementById('decision'));
  const form = /** @type {HTMLFormElement} */ (section.querySelector('form'));
  /** @type {Map<string, HTMLElement>} */
  const fields = new Map();
  for (const field of form.querySelectorAll(':scope > .field')) fields.set(/** @type {any} */ (field.querySelector('[name]')).name, /** @type {HTMLElement} */ (field));
  const names = [...fields.keys()].filter((name) => !Object.values(FIGURES).includes(name));
  /** @type {string[]} the questions worth asking, best first, as the engine says */
  let asks = names;
  /** @type {string[]} what was shown already, the way back */
  const path = [];
  let current = '';
  /** @type {Set<string>} what was answered with 'not known' */
  const said = new Set();
  let untested = false;

  const strip = element('ul', 'strip');
  strip.setAttribute('aria-label', 'The eight ways now');
  const guide = element('div', 'guide');
  const count = element('p', 'count');
  const head = element('h3', '');
  head.tabIndex = -1;
  const help = element('p', 'help');
  const slot = element('div', 'answers');
  const why = /** @type {HTMLDetailsElement} */ (element('details', 'why'));
  const summary = element('summary', '', 'Why?');
  const because = element('p', '');
  why.append(summary, because);
  const back = button('quiet', 'Back', () => show(path.pop() ?? names[0], false));
  const skip = button('quiet', 'Skip', () => next());
  const all = button('quiet', 'Show all questions', () => {
    const whole = form.classList.toggle('whole');
    all.textContent = whole ? 'One question at a time' : 'Show all questions';
    if (whole) form.scrollIntoView();
  });
  const tools = element('p', 'guide-tools');
  tools.append(back, skip, all);
  guide.append(count, head, help, why, slot, tools);
  form.classList.add('guided');
  form.before(strip, guide);

  section.addEventListener('answered', (event) => {
    const answer = /** @type {CustomEvent} */ (event).detail;
    asks = answer.asks ?? [];
    untested = Boolean(answer.branches);
    takeFigures(answer.facts ?? {});
    drawStrip(answer.items);
    tell();
  });

  /** @param {string} name @returns {any} any field of the form, in sight or not */
  const entry = (name) => form.elements.namedItem(name);
  const usual = (/** @type {string} */ name) => entry(name).dataset.default ?? '';
  const filled = (/** @type {string} */ name) => entry(name).value.trim() !== usual(name);
  let sharing = false;

  // Whoever answers a question takes its figure back, and the other way round; painted or not is told to the other forms.
  form.addEventListener('input', (event) => {
    const name = /** @type {any} */ (event.target).name;
    for (const [question, figure] of Object.entries(FIGURES)) {
      if (sharing || (name !== question && name !== figure)) continue;
      const other = entry(name === question ? figure : question);
      other.value = usual(other.name);
      if (name === 'times_painted' && filled(name)) other.value = entry(name).value === 'never' ? 'no' : 'yes';
    }
  }, true);

  /** A figure that was typed here or in another form gives its question the answer. @param {Record<string, string>} facts */
  function takeFigures(facts) {
    for (const [question, figure] of Object.entries(FIGURES)) {
      if (!filled(figure) || filled(question) || (facts[question] ?? 'unknown') === 'unknown') continue;
      sharing = true;
      entry(question).value = facts[question];
      entry(question).dispatchEvent(new Event('input', { bubbles: true }));
      sharing = false;
    }
  }

  /** @param {Way[]} ways */
  function drawStrip(ways) {
    strip.replaceChildren(...ways.map((way) => {
      const row = element('li', '');
      const mark = element('b', '', MARKS[way.state]);
      mark.setAttribute('aria-hidden', 'true');
      row.dataset.state = way.state;
      row.append(mark, element('span', 'way', way.name.replace(/ (into|with|removal).*/, '')), element('span', 'state', way.state));
      return row;
    }));
  }

  // The links to the ways take the answers along, once somebody reaches for one: the answer itself stays as it was told.
  for (const kind of ['pointerdown', 'focusin', 'click']) section.addEventListener(kind, (event) => {
    const way = /** @type {HTMLAnchorElement | null} */ (/** @type {Element} */ (event.target).closest('.items .label a'));
    if (!way) return;
    const facts = new Map([...names, ...Object.values(FIGURES)].filter(filled).map((name) => /** @type {[string, string]} */ ([name, entry(name).value.trim()])));
    way.href = way.href.split('#')[0] + link('', facts);
  });

  /** @param {string} name @returns {any} */
  const control = (name) => fields.get(name)?.querySelector('[name]');
  const answered = (/** @type {string} */ name) => control(name).value.trim() !== (control(name).dataset.default ?? '');

  function tell() {
    const known = names.filter((name) => answered(name) || said.has(name)).length;
    const open = asks.filter((name) => name !== current && !path.includes(name)).length;
    count.textContent = `${known} answered. ${open ? `${open} more can change the outcome.` : 'No other question changes the outcome.'}`;
    skip.textContent = (current && answered(current)) || !open ? 'Next' : 'Skip';
  }

  /** @param {string} name @param {boolean} [focus] */
  function show(name, focus = true) {
    current = name;
    const field = /** @type {HTMLElement} */ (fields.get(name));
    const own = control(name);
    guide.dataset.question = name;
    head.textContent = field.querySelector('label')?.firstChild?.textContent ?? '';
    help.textContent = field.querySelector('.help')?.textContent ?? '';
    because.textContent = field.querySelector('.why p')?.textContent ?? '';
    why.hidden = !because.textContent;
    why.open = false;
    back.hidden = !path.length;
    slot.replaceChildren(...(own instanceof HTMLSelectElement ? choices(own) : [written(own)]), ...figureOf(name));
    tell();
    if (focus) bringHead();
  }

  /** The question takes the focus, and stands clear of the strip that stays at the top. */
  function bringHead() {
    guide.style.scrollMarginTop = `${strip.offsetHeight + CLEARANCE}px`;
    head.focus({ preventScroll: true });
    if (guide.getBoundingClientRect().top < strip.offsetHeight) guide.scrollIntoView({ behavior: 'instant' });
  }

  /** The figure that tells the answer more closely, where there is one to type. @param {string} name */
  function figureOf(name) {
    const own = fields.get(FIGURES[name])?.querySelector('input');
    if (!own) return [];
    const label = element('label', 'figure-of', `Or type it. ${fields.get(own.name)?.querySelector('label')?.firstChild?.textContent ?? ''}`);
    const help = fields.get(own.name)?.querySelector('.help')?.cloneNode(true);
    if (help) /** @type {Element} */ (help).removeAttribute('id');
    const box = written(own);
    const unit = fields.get(own.name)?.querySelector('.unit')?.cloneNode(true);
    const row = element('span', 'box');
    row.append(box, ...(unit ? [unit] : []));
    label.append(...(help ? [element('span', 'help', help.textContent ?? '')] : []), row);
    return [label];
  }

  /** @param {HTMLSelectElement} own */
  function choices(own) {
    // What is known first; 'not known' last, where the thumb does not fall on it by itself.
    const options = [...own.options].sort((one, other) => Number(one.value === own.dataset.default) - Number(other.value === own.dataset.default));
    return options.map((option) => {
      const choice = button('pick', option.textContent ?? '', () => {
        for (const one of slot.children) one.setAttribute('aria-pressed', String(one === choice));
        own.value = option.value;
        if (option.value === own.dataset.default) said.add(own.name);
        else said.delete(own.name);
        told(own);
      });
      choice.setAttribute('aria-pressed', String(answered(own.name) && own.value === option.value));
      return choice;
    });
  }

  /** @param {HTMLInputElement} own */
  function written(own) {
    const box = /** @type {HTMLInputElement} */ (element('input', ''));
    box.type = 'text';
    box.value = own.value;
    box.setAttribute('aria-label', fields.get(own.name)?.querySelector('label')?.firstChild?.textContent ?? '');
    if (own.getAttribute('list')) box.setAttribute('list', own.getAttribute('list') ?? '');
    box.addEventListener('input', () => {
      own.value = box.value;
      own.dispatchEvent(new Event('input', { bubbles: true }));
    });
    return box;
  }

  /** Hand an answer to the form, wait for what the engine makes of it, and go on. @param {HTMLElement} own */
  function told(own) {
    const went = current;
    const go = () => {
      clearTimeout(timer);
      section.removeEventListener('answered', go);
      if (current === went) next();
    };
    const timer = setTimeout(go, PATIENCE);
    section.addEventListener('answered', go);
    own.dispatchEvent(new Event('input', { bubbles: true }));
  }

  function next() {
    if (current) path.push(current);
    goOn(true);
  }

  /** The question most worth an answer that was not shown yet; else the end. @param {boolean} focus */
  function goOn(focus) {
    const wanted = asks.find((name) => !path.includes(name) && !answered(name));
    if (wanted) return show(wanted, focus);
    current = '';
    guide.dataset.question = '';
    head.textContent = 'That is all that matters now';
    help.textContent = untested
      ? 'No laboratory has settled it. Below stand what to do first and both outcomes: if it finds none, and if it finds some.'
      : 'Below stands each way with its reasons, and what to do first.';
    because.textContent = '';
    why.hidden = true;
    back.hidden = false;
    slot.replaceChildren(button('act', 'Read the outcome', () => section.querySelector('.result')?.scrollIntoView()));
    tell();
    count.textContent = count.textContent?.split('. ')[0] + '.';
    skip.hidden = true;
    if (focus) bringHead();
  }

  back.addEventListener('click', () => (skip.hidden = false));
  path.push(...names.filter(answered));
  if (path.length) section.addEventListener('answered', () => goOn(false), { once: true });
  else show(names[0], false);
  control(names[0]).dispatchEvent(new Event('input', { bubbles: true }));
}
