// @ts-check
// The choice of way, one question at a time. The form holds the answers and the engine says which question is worth most
// next; this file only shows it, large, with the state of all ways in sight. What most people answer alike is one screen.

import { figures, root } from './early.mjs';
import { button, element } from './make.mjs';
import { BUILD, LEAD, MEASURED, SHEETS } from './sheets.mjs';
import { link } from './state.mjs';

/** `state_name` stands where the state is told in another language. @typedef {{name: string, state: string, state_name?: string, page: string, left_out?: boolean, reasons: {text: string}[]}} Way */
/** A screen that was shown: its questions, and of those the ones that are done with. @typedef {{id: string, asks: string[], done: string[]}} Screen */

const stateOf = (/** @type {{state: string, state_name?: string}} */ way) => way.state_name ?? way.state;
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
  /** @type {Screen[]} what was shown already, the way back */
  const path = [];
  /** @type {Screen | null} */
  let current = null;
  /** @type {Set<string>} what was ticked on a screen of several questions: asked next, each by itself */
  const ticked = new Set();
  /** @type {{items: Way[], branches?: {title: string, items: Way[]}[], listings: {name: string, rows: {text: string}[]}[]}} */
  let latest = { items: [], listings: [] };
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
  const back = button('quiet', 'Back', () => show(path.pop() ?? one(names[0]), false));
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
    latest = answer;
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
      const mark = element('b', '', MARKS[stateOf(way)]);
      mark.setAttribute('aria-hidden', 'true');
      row.dataset.state = stateOf(way);
      row.append(mark, element('span', 'way', way.name.replace(/ (into|with|removal).*/, '')), element('span', 'state', way.state));
      return row;
    }));
  }

  // The links to the ways take the answers along, once somebody reaches for one: the answer itself stays as it was told.
  for (const kind of ['pointerdown', 'focusin', 'click']) section.addEventListener(kind, (event) => {
    const way = /** @type {HTMLAnchorElement | null} */ (/** @type {Element} */ (event.target).closest('.items .label a'));
    if (!way) return;
    way.href = way.href.split('#')[0] + link('', facts());
  });
  const facts = () => new Map([...names, ...Object.values(FIGURES)].filter(filled).map((name) => /** @type {[string, string]} */ ([name, entry(name).value.trim()])));

  /** @param {string} name @returns {any} */
  const control = (name) => fields.get(name)?.querySelector('[name]');
  const answered = (/** @type {string} */ name) => control(name).value.trim() !== (control(name).dataset.default ?? '');

  const labelOf = (/** @type {string} */ name) => fields.get(name)?.querySelector('label')?.firstChild?.textContent ?? '';
  const seen = (/** @type {string} */ name) => path.some((screen) => screen.done.includes(name));
  /** A screen of one question. @param {string} name @returns {Screen} */
  const one = (name) => ({ id: name, asks: [name], done: [name] });

  function tell() {
    const known = names.filter((name) => answered(name) || said.has(name)).length;
    const open = asks.filter((name) => !current?.asks.includes(name) && !seen(name)).length;
    count.textContent = `${known} answered. ${open ? `${open} more can change the outcome.` : 'No other question changes the outcome.'}`;
    skip.textContent = (current?.asks.length === 1 && answered(current.asks[0])) || !open ? 'Next' : 'Skip';
  }

  /** @param {Screen} screen @param {boolean} [focus] */
  function show(screen, focus = true) {
    current = screen;
    screen.done = screen.id === LEAD.id ? ['built'] : screen.asks; // whoever skips or types the year is asked for the paint by itself
    guide.dataset.question = screen.id;
    const sheet = [...SHEETS, BUILD, LEAD, MEASURED].find((each) => each.id === screen.id);
    const field = /** @type {HTMLElement} */ (fields.get(screen.id));
    head.textContent = sheet?.head ?? labelOf(screen.id);
    help.textContent = sheet?.help ?? field.querySelector('.help')?.textContent ?? '';
    because.textContent = (sheet ? '' : field.querySelector('.why p')?.textContent) ?? '';
    why.hidden = !because.textContent;
    why.open = false;
    back.hidden = !path.length;
    slot.replaceChildren(...(sheet ? together(screen, sheet) : alone(screen.id)));
    tell();
    if (focus) bringHead();
  }

  /** @param {string} name @returns {HTMLElement[]} */
  function alone(name) {
    const own = control(name);
    return [...(own instanceof HTMLSelectElement ? choices(own) : [written(own)]), ...figureOf(name)];
  }

  /** Several questions on one screen. @param {Screen} screen @param {import('./sheets.mjs').Sheet | BUILD | LEAD | MEASURED} sheet @returns {HTMLElement[]} */
  function together(screen, sheet) {
    if (sheet === LEAD) return [...inOne(screen), ...figureOf('built')];
    const oneByOne = () => {
      screen.done = [];
      next();
    };
    const unsure = button('pick', /** @type {{unsure: string}} */ (sheet).unsure, () => {
      for (const name of screen.asks) answer(name, usual(name));
      told(control(screen.asks[0]));
    });
    if (sheet === BUILD) return [unsure, button('pick', BUILD.some, oneByOne)];
    if (sheet === MEASURED) return measured(screen, button('pick', MEASURED.unsure, oneByOne));
    const lines = /** @type {import('./sheets.mjs').Sheet} */ (sheet).lines.filter(([name]) => screen.asks.includes(name));
    const done = button('act', '', () => {
      screen.done = screen.asks.filter((name) => !ticked.has(name));
      for (const [name, unticked] of lines) {
        if (!ticked.has(name)) answer(name, unticked);
        else if (entry(name).value === unticked) answer(name, usual(name), false);
      }
      told(control(screen.asks[0]));
    });
    const count = () => (done.textContent = lines.some(([name]) => ticked.has(name)) ? 'Nothing else of these' : 'None of these');
    const ticks = lines.map(([name, , text]) => {
      const tick = button('pick tick', text, () => {
        if (!ticked.delete(name)) ticked.add(name);
        tick.setAttribute('aria-pressed', String(ticked.has(name)));
        count();
      });
      tick.setAttribute('aria-pressed', String(ticked.has(name)));
      return tick;
    });
    count();
    return [...ticks, done, unsure];
  }

  /** Choices that answer more than one question; what a choice does not say is asked by itself. @param {Screen} screen */
  function inOne(screen) {
    return LEAD.picks.map(([text, answers]) => {
      const pick = button('pick', text, () => {
        screen.done = Object.keys(answers);
        for (const name of screen.asks) answer(name, answers[name] ?? usual(name), name in answers);
        told(control('built'));
      });
      const stands = Object.entries(answers).every(([name, value]) => entry(name).value === value && (answered(name) || said.has(name)));
      pick.setAttribute('aria-pressed', String(stands));
      return pick;
    });
  }

  /** The figures of a screen, and what to do without them. @param {Screen} screen @param {HTMLElement} unsure */
  function measured(screen, unsure) {
    const boxes = screen.asks.flatMap((name) => figureOf(name, ''));
    const own = (/** @type {string} */ name) => entry(FIGURES[name]);
    const go = button('act', 'Go on', () => {
      const wrong = screen.asks.findIndex((name) => own(name).getAttribute('aria-invalid'));
      if (wrong >= 0) return boxes[wrong].querySelector('input')?.focus();
      screen.done = screen.asks.filter((name) => filled(FIGURES[name]));
      told(own(screen.asks[0]));
    });
    return [...boxes, go, unsure];
  }

  /** @param {string} name @param {string} value @param {boolean} [known] whether 'not known' is what was answered */
  function answer(name, value, known = true) {
    entry(name).value = value;
    if (known && value === usual(name)) said.add(name);
    else said.delete(name);
  }

  /** The question takes the focus, and stands clear of the strip that stays at the top. */
  function bringHead() {
    const over = strip.offsetHeight + (parseFloat(getComputedStyle(strip).top) || 0); // it stands under the stop, where that is in sight
    guide.style.scrollMarginTop = `${over + CLEARANCE}px`;
    head.focus({ preventScroll: true });
    if (guide.getBoundingClientRect().top < over) guide.scrollIntoView({ behavior: 'instant' });
  }

  /** The figure that tells the answer more closely, where there is one to type. @param {string} name @param {string} before */
  function figureOf(name, before = 'Or type it. ') {
    const own = fields.get(FIGURES[name])?.querySelector('input');
    if (!own) return [];
    const label = element('label', 'figure-of', before + labelOf(own.name));
    const help = fields.get(own.name)?.querySelector('.help')?.cloneNode(true);
    if (help) /** @type {Element} */ (help).removeAttribute('id');
    const box = written(own);
    const unit = fields.get(own.name)?.querySelector('.unit')?.cloneNode(true);
    const row = element('span', 'box');
    row.append(box, ...(unit ? [unit] : []));
    const fault = element('span', 'fault');
    const wrong = /** @type {HTMLElement} */ (document.getElementById(own.id + '-fault'));
    const mirror = () => {
      fault.textContent = wrong.textContent;
      fault.hidden = wrong.hidden;
    };
    new MutationObserver(mirror).observe(wrong, { attributes: true, childList: true });
    mirror();
    label.append(...(help ? [element('span', 'help', help.textContent ?? '')] : []), fault, row);
    return [label];
  }

  /** @param {HTMLSelectElement} own */
  function choices(own) {
    // What is known first; 'not known' last, where the thumb does not fall on it by itself.
    const options = [...own.options].sort((one, other) => Number(one.value === own.dataset.default) - Number(other.value === own.dataset.default));
    return options.map((option) => {
      const choice = button('pick', option.textContent ?? '', () => {
        for (const one of slot.children) one.setAttribute('aria-pressed', String(one === choice));
        answer(own.name, option.value);
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
    box.setAttribute('aria-label', labelOf(own.name));
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
    // Lead may be in the paint of a house of any year but a late one.
    if (current?.id === LEAD.id && !current.done.includes('paint_test') && entry('built').value !== 'later') ticked.add('paint_test');
    goOn(true);
  }

  /** The screen on which to ask a question: with its like, where more than one of them is open. @param {string} name @returns {Screen} */
  function screenOf(name) {
    const found = [...SHEETS.map(({ id, lines }) => ({ id, questions: lines.map(([each]) => each) })), BUILD, LEAD, MEASURED].find((each) => each.questions.includes(name));
    if (!found || path.some((screen) => screen.id === found.id)) return one(name);
    const open = found.questions.filter((each) => !seen(each) && !answered(each));
    return open.length > 1 ? { id: found.id, asks: open, done: open } : one(name);
  }

  /** What was ticked, then the question most worth an answer that was not shown yet; else the end. @param {boolean} focus */
  function goOn(focus) {
    const onward = [...ticked].find((name) => !seen(name));
    if (onward) return show(one(onward), focus);
    const wanted = asks.find((name) => !seen(name) && !answered(name));
    if (wanted) return show(screenOf(wanted), focus);
    current = null;
    guide.dataset.question = '';
    head.textContent = 'That is all that matters now';
    // Before the result: what would be left if nothing is found. It looks like no state, and what comes first stands over it.
    const none = untested ? latest.branches?.[0] : undefined;
    const free = (none ?? latest).items.filter((way) => (untested ? stateOf(way) !== 'closed' : stateOf(way).startsWith('open')));
    help.textContent = untested
      ? `No laboratory has settled it. First: ${latest.listings.find((one) => one.name === 'next')?.rows[0].text ?? ''}`
      : free.length ? 'These ways are left. Read what comes first.' : 'Below stands each way with its reasons, and what to do first.';
    because.textContent = '';
    why.hidden = true;
    back.hidden = false;
    const read = button(untested || !free.length ? 'act' : 'quiet', untested ? 'Read both outcomes' : 'Read all reasons', () => section.querySelector('.result')?.scrollIntoView());
    slot.replaceChildren(...(untested ? [read] : []), ...(free.length ? [outcome(free, none?.title)] : []), ...(untested ? [] : [read]), sideBySide());
    tell();
    count.textContent = count.textContent?.split('. ')[0] + '.';
    skip.hidden = true;
    if (focus) bringHead();
  }

  /** All ways side by side, with the answers and the rooms in the link. */
  function sideBySide() {
    const leads = /** @type {HTMLAnchorElement} */ (element('a', 'quiet side-by-side', 'All ways side by side'));
    const { rooms } = figures.read();
    leads.href = new URL(`work-out/compare/${link('compare', new Map([.../** @type {[string, string][]} */ (rooms ? [['rooms', rooms]] : []), ...facts()]))}`, root).href;
    return leads;
  }

  /** The ways that are left: each leads to its page, and to how much of what it takes. @param {Way[]} free @param {string} [when] under which they would be */
  function outcome(free, when) {
    const list = element('ul', 'outcome');
    list.append(...free.map((way) => {
      const row = element('li', '');
      const to = (/** @type {string} */ place, /** @type {string} */ text) => {
        const leads = /** @type {HTMLAnchorElement} */ (element('a', '', text));
        leads.href = new URL(`${way.page}/${link(place, facts())}`, root).href;
        return leads;
      };
      const name = way.left_out ? element('span', '', way.name) : to('', way.name); // an edition may do without the page of a way
      const first = stateOf(way) === 'open' ? '' : way.reasons[0]?.text;
      row.append(name, element('span', 'state', (when ? 'would be ' : '') + way.state), element('span', 'first', first));
      if (!way.left_out) row.append(to('takeoff', 'How much, for my rooms'));
      return row;
    }));
    if (!when) return list;
    const box = element('div', 'to-come');
    box.append(element('p', '', `${when}. Not now: an outcome to come`), list);
    return box;
  }

  back.addEventListener('click', () => (skip.hidden = false));
  path.push(...names.filter(answered).map(one));
  if (path.length) section.addEventListener('answered', () => goOn(false), { once: true });
  else show(one(names[0]), false);
  control(names[0]).dispatchEvent(new Event('input', { bubbles: true }));
}
