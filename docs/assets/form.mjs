// @ts-check
// The forms of a page. Same-named fields are one figure: typed once, it stands everywhere. The engines check and
// answer; this file only carries texts to them and shows what comes back.

import { door, engines, figures, root } from './early.mjs';
import { NotOnDevice, Superseded } from './engine.mjs';
import { link, readLink, shelf } from './state.mjs';
import { judge } from './verdict.mjs';

/** @typedef {HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement} Control */
/** @typedef {{field: string, given: string, message: string, example: string}} Fault */

const $ = /** @param {string} pick @param {ParentNode} [within] @returns {any} */ (pick, within = document) => within.querySelector(pick);
const $$ = /** @param {string} pick @param {ParentNode} [within] @returns {any[]} */ (pick, within = document) => [...within.querySelectorAll(pick)];

/** @param {Record<string, string>} one @param {Record<string, string>} other */
const same = (one, other) => {
  const names = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...names].every((name) => one[name] === other[name]);
};

const MEGABYTE = 1_000_000;
const PAUSE = 250; // milliseconds without a keystroke after which figures are put by

/** @returns {Promise<unknown>} done when the small engine runs, or cannot */
export function startForms() {
  const sections = $$('.calc');
  if (!sections.length) return Promise.resolve();
  const earlier = shelf('earlier-figures', root);
  const brought = shelf('figures-of-a-link', root);
  /** @type {Map<string, Control[]>} */
  const controls = new Map();
  for (const control of $$('.calc [name]')) controls.set(control.name, [...(controls.get(control.name) || []), control]);
  // On the page of a way the answers about the ceiling are carried without a field of their own.
  const carried = new Map(/** @type {[string, string][]} */ (`${$('.verdict')?.dataset.facts ?? ''} ${$('.verdict')?.dataset.carries ?? ''}`.split(' ').filter(Boolean).map((/** @type {string} */ name) => [name, ''])));
  const names = new Set([...controls.keys(), ...carried.keys()]);
  /** @type {Map<HTMLElement, {inputs: string, text: string}>} the answer that stands in each section */
  const shown = new Map();
  let anchor = '';

  /** @param {string} name */
  const valueOf = (name) => controls.get(name)?.[0].value ?? carried.get(name) ?? '';
  /** @param {string} name @param {string} text @param {Control} [except] */
  const put = (name, text, except) => {
    if (carried.has(name)) carried.set(name, text);
    controls.get(name)?.forEach((one) => {
      if (one !== except) one.value = one instanceof HTMLTextAreaElement ? text.replace(/\s*;\s*/g, '\n') : text;
    });
  };
  /** The value that a field has when nobody has typed. @param {string} name */
  const usual = (name) => controls.get(name)?.[0].dataset.default ?? '';
  /** A choice takes only what it offers; a link may hold something else. @param {ReturnType<typeof readLink>} from */
  const dropUnoffered = (from) => {
    for (const [name, text] of from.values) {
      const control = controls.get(name)?.[0];
      if (control instanceof HTMLSelectElement && ![...control.options].some((option) => option.value === text)) {
        from.values.delete(name);
        from.dropped.push(`${name}=${text}`);
      }
    }
    return from;
  };
  /** What differs from the usual values, in the order of the page. */
  const typed = () => new Map([...names]
    .map((name) => /** @type {[string, string]} */ ([name, valueOf(name).trim()]))
    .filter(([name, text]) => text !== usual(name)));

  let keeping = 0;
  function keep() {
    clearTimeout(keeping);
    keeping = 0;
    const values = typed();
    const others = Object.entries(figures.read()).filter(([name]) => !names.has(name)); // of other pages
    const kept = figures.write(Object.fromEntries([...others, ...values]));
    const facts = ($('.verdict')?.dataset.facts ?? '').split(' ');
    judge(new Map([...values].filter(([name]) => facts.includes(name))));
    if (values.size || location.hash.includes('?')) history.replaceState(history.state, '', link(anchor || sections[0].id, values));
    for (const line of $$('.saved')) {
      line.textContent = kept ? '' : 'This device keeps nothing for this page now. The link in the address still holds your figures.';
    }
  }

  /** @param {HTMLElement} section */
  function inputsOf(section) {
    const own = $$('[name]', section).map((one) => /** @type {[string, string]} */ ([one.name, one.value.trim()]));
    return Object.fromEntries(own.filter(([, text]) => text));
  }

  /** What was typed, for the paper that the form does not stand on. @param {HTMLElement} section */
  function described(section) {
    const told = $$('[name]', section).filter((one) => one.value.trim() && one.value.trim() !== one.dataset.default);
    return told.map((one) => {
      const label = $(`label[for="${one.id}"]`, section).firstChild.textContent;
      const unit = one.parentElement.querySelector('.unit')?.textContent;
      const bare = /^[\d./ ]+$/.test(one.value);
      if (one instanceof HTMLSelectElement) return `${label} ${one.selectedOptions[0].textContent}`;
      return `${label} ${one.value.trim().replace(/\s*\n\s*/g, '; ')}${unit && bare ? ' ' + unit : ''}`;
    }).join('; ') || 'the usual values';
  }

  /** @param {HTMLElement} section @param {Fault[]} faults @param {boolean} takeFocus */
  function showFaults(section, faults, takeFocus) {
    const summary = $('.faults', section);
    if (!faults.length && summary.hidden && !$('[aria-invalid]', section)) return;
    summary.replaceChildren();
    for (const control of $$('[name]', section)) {
      const own = faults.filter((fault) => fault.field === control.name);
      const line = document.getElementById(control.id + '-fault');
      control.toggleAttribute('aria-invalid', false);
      if (own.length) control.setAttribute('aria-invalid', 'true');
      if (line) {
        line.hidden = !own.length;
        line.textContent = own.map((fault) => `${fault.message} Like: ${fault.example}`).join(' ');
      }
      if (own.length) control.closest('details')?.setAttribute('open', '');
    }
    summary.hidden = !faults.length;
    if (!faults.length) return;
    const head = document.createElement('p');
    head.textContent = faults.length === 1 ? 'One thing to put right:' : `${faults.length} things to put right:`;
    const list = document.createElement('ul');
    for (const fault of faults) {
      const row = document.createElement('li');
      const control = $$('[name]', section).find((one) => one.name === fault.field);
      const to = document.createElement(control ? 'a' : 'span');
      to.textContent = fault.message;
      if (control) {
        /** @type {HTMLAnchorElement} */ (to).href = '#' + control.id;
        to.addEventListener('click', (event) => {
          event.preventDefault();
          control.focus();
        });
      }
      row.append(to);
      list.append(row);
    }
    summary.append(head, list);
    if (takeFocus) summary.focus();
  }

  /**
   * Ask and show. `loud` is for a button: faults are told and the answer is brought into sight. `linked` are the
   * names that a link brought: their faults are told too, without taking the focus.
   * @param {HTMLElement} section @param {{loud?: boolean, engine?: 'small' | 'full', linked?: Map<string, string>}} [how]
   */
  async function work(section, { loud = false, engine = 'small', linked } = {}) {
    const result = $('.result', section);
    const by = $('.by', section);
    const status = $('.status', section);
    const onLoading = /** @param {string} which */ (which) => {
      if (loud) status.textContent = which === 'full' ? `Loading the full engine (${sizeText()}) …` : 'Starting the engine …';
    };
    try {
      const asked = inputsOf(section);
      const answered = await door.answer(section.dataset.calculator || '', asked, { engine, onLoading });
      status.textContent = '';
      const found = JSON.parse(answered.text);
      if (found.faults) {
        if (loud) showFaults(section, found.faults, true);
        else if (linked) showFaults(section, found.faults.filter((/** @type {Fault} */ one) => linked.has(one.field)), false);
        if (shown.has(section)) $('.origin', section).textContent = 'The answer to your figures before. The ones above do not work yet.';
        result.setAttribute('data-stale', '');
        return;
      }
      showFaults(section, [], false);
      result.removeAttribute('data-stale');
      const open = $('.working', section)?.open;
      const before = shown.get(section)?.inputs === JSON.stringify(asked) ? shown.get(section)?.text : null;
      $('.slot', section).innerHTML = found.html; // written and escaped by calc.render
      if (open) $('.working', section).open = true;
      $('.origin', section).textContent = `Worked out from your figures: ${described(section)}.`;
      $('.tools', section).hidden = false;
      by.textContent = words(answered.engine, engine, before, answered.text);
      feed(section.dataset.calculator || '', found.answer.answers);
      shown.set(section, { inputs: JSON.stringify(asked), text: answered.text });
      section.dataset.engine = answered.engine;
      section.dispatchEvent(new CustomEvent('answered', { detail: found.answer }));
      if (loud) $('.figure', section)?.scrollIntoView({ block: 'center' });
    } catch (error) {
      if (error instanceof Superseded) return;
      const text = error instanceof NotOnDevice
        ? 'The full engine is not on this device yet, and there is no signal. Try again with a signal; the small engine still answers.'
        : 'No engine could answer. Your figures are kept. Try again, or reload the page.';
      if (loud || engine === 'full') status.textContent = text;
    }
  }

  /**
   * An answer that another form asks for is put there, as long as nobody has typed into that field.
   * @param {string} calculator @param {{name: string, value: number, unit: string}[]} lines
   */
  function feed(calculator, lines) {
    for (const control of $$(`[data-fed-by^="${calculator} "]`)) {
      const line = lines.find((one) => control.dataset.fedBy === `${calculator} ${one.name}`);
      if (!line || (control.value && control.dataset.fed !== control.value)) continue;
      const text = String(line.value); // both stand in the same unit, which the form shows beside the field
      if (control.value === text) continue;
      put(control.name, text);
      control.dataset.fed = text;
      keep();
      const other = control.closest('.calc');
      if (shown.has(other)) work(other);
    }
  }

  /** @param {string} engine @param {string} wanted @param {string | null | undefined} before @param {string} now */
  function words(engine, wanted, before, now) {
    if (engine === 'small') return 'Worked out on this device by the small engine.';
    if (wanted === 'small') return 'Worked out on this device by the full engine, as the small one could not.';
    if (before && before !== now) return 'The full engine answers otherwise than the small one. Trust neither, and tell the publisher.';
    return before ? 'Worked out again by the full engine. Both engines agree.' : 'Worked out on this device by the full engine.';
  }

  const sizeText = () => `${(Number(engines.full_bytes) / MEGABYTE).toFixed(1)} MB, once`;

  // What stands in the fields when the page opens: the link first, else what was typed last.
  const stored = figures.read();
  const linked = dropUnoffered(readLink(location.hash, names));
  const storedHere = Object.entries(stored).filter(([name]) => names.has(name));
  const opening = linked.given ? linked.values : new Map(storedHere);
  for (const [name, text] of opening) put(name, text);
  anchor = linked.given ? linked.anchor : '';
  const replaced = linked.given && setAside(Object.fromEntries(storedHere));
  tell(linked.dropped, replaced);
  if (opening.size) keep();
  if (linked.given && linked.anchor) document.getElementById(linked.anchor)?.scrollIntoView();

  /**
   * A link has put its own figures in the fields: set those aside that stood there before, unless an earlier link had
   * brought them, since then what was typed by hand is aside already.
   * @param {Record<string, string>} before @returns {boolean} whether there is something to have back
   */
  function setAside(before) {
    const now = Object.fromEntries(typed());
    if (Object.keys(before).length && !same(before, now) && !same(before, brought.read())) earlier.write(before);
    brought.write(now);
    const held = earlier.read();
    return Object.keys(held).length > 0 && !same(held, now);
  }

  /** @param {string[]} dropped @param {boolean} offerEarlier */
  function tell(dropped, offerEarlier) {
    const notice = $('#figures');
    notice.replaceChildren();
    if (dropped.length) {
      const line = document.createElement('p');
      line.textContent = `This link holds ${dropped.length === 1 ? 'a part' : dropped.length + ' parts'} that no field here takes, so ${dropped.length === 1 ? 'it was' : 'they were'} left out: ${dropped.join(' · ')}. The rest stands in the forms.`;
      notice.append(line);
    }
    if (offerEarlier) {
      const line = document.createElement('p');
      line.textContent = 'This link brought its own figures. Yours are kept on this device.';
      const back = document.createElement('button');
      back.type = 'button';
      back.className = 'quiet';
      back.textContent = 'Put my earlier figures back';
      back.addEventListener('click', () => {
        const held = earlier.read();
        for (const name of names) put(name, held[name] ?? usual(name));
        notice.hidden = true;
        keep();
        answerAll();
      });
      notice.append(line, back);
    }
    notice.hidden = !notice.childNodes.length;
  }

  /** The first form that is asked for comes first: a link is opened for its answer. */
  function answerAll(/** @type {Map<string, string> | undefined} */ linked = undefined) {
    const wanted = sections.filter((section) => section.id === anchor);
    return Promise.all([...wanted, ...sections.filter((section) => !wanted.includes(section))].map((section) => work(section, { linked })));
  }

  for (const section of sections) {
    const again = $('.again', section);
    const effort = $('[name=effort]', section); // a search that can go on
    again.textContent = `${effort ? 'Search thoroughly' : 'Work it out again'} with the full engine (${sizeText()})`;
    $('form', section).addEventListener('submit', (/** @type {Event} */ event) => {
      event.preventDefault();
      anchor = section.id;
      keep();
      work(section, { loud: true });
    });
    again.addEventListener('click', () => {
      if (effort) {
        put('effort', 'thorough');
        keep();
      }
      work(section, { loud: true, engine: 'full' });
    });
    $('.copy', section).addEventListener('click', async () => {
      anchor = section.id;
      keep();
      const status = $('.status', section);
      try {
        await navigator.clipboard.writeText(location.href);
        $('.by', section).textContent = 'The link is copied. It holds these figures and nothing else.';
      } catch {
        status.textContent = 'Copy the address of this page; it holds these figures.';
      }
    });
    section.addEventListener('input', (/** @type {Event} */ event) => {
      const control = /** @type {Control} */ (event.target);
      if (!control.name) return;
      put(control.name, control.value, control);
      anchor = section.id;
      // The question goes out first; the door drops all but the newest. Keeping waits for a pause in the typing, or
      // for the page to be left.
      for (const one of sections) if ($$('[name]', one).some((other) => other.name === control.name)) work(one);
      clearTimeout(keeping);
      keeping = setTimeout(keep, PAUSE);
    });
    section.addEventListener('pointerdown', warm, { once: true });
    section.addEventListener('focusin', warm, { once: true });
  }
  addEventListener('pagehide', () => {
    if (keeping) keep();
  });
  // A plain jump inside the page keeps the figures in the address.
  addEventListener('hashchange', () => {
    const now = dropUnoffered(readLink(location.hash, names));
    if (!now.given) {
      anchor = now.anchor;
      keep();
      return;
    }
    if (now.anchor === anchor && [...typed()].every(([name, text]) => now.values.get(name) === text)) return;
    const before = Object.fromEntries(typed());
    for (const name of names) put(name, now.values.get(name) ?? usual(name));
    tell(now.dropped, setAside(before));
    anchor = now.anchor;
    keep();
    answerAll(now.values);
    document.getElementById(now.anchor)?.scrollIntoView();
  });
  const clear = $('.clear-figures');
  clear?.addEventListener('click', () => {
    earlier.write(Object.fromEntries(typed()));
    for (const name of names) put(name, usual(name));
    keep();
    tell([], true);
    $('#figures p').textContent = 'Your figures are cleared.';
    $('#figures button').focus();
    for (const section of sections) showFaults(section, [], false);
  });

  /** @type {(done: unknown) => void} */
  let running;
  const started = new Promise((resolve) => (running = resolve));
  let warmed = false;
  function warm() {
    if (warmed) return;
    warmed = true;
    running(door.warm());
  }
  if (opening.size) {
    warmed = true;
    running(answerAll(linked.given ? linked.values : undefined));
  } else if ('requestIdleCallback' in window) requestIdleCallback(warm, { timeout: 3000 });
  else setTimeout(warm, 500);
  document.documentElement.dataset.ready = '';
  return started;
}
