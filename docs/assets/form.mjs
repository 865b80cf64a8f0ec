// @ts-check
// The forms of a page. Same-named fields are one figure. The engines check and answer; this carries texts and shows what comes back.

import { brought, door, engines, figures, job, root } from './early.mjs';
import { NotOnDevice, Superseded } from './engine.mjs';
import { openTo } from './folds.mjs';
import { button, element } from './make.mjs';
import { $, $$, brokenParts, complete, controls, controlsOf, described, hasOwn, head, inputsOf, showFaults, showsExample, takes, voice, why, words } from './section.mjs';
import { whyNotYet } from './notyet.mjs';
import { inLines, inOneLine, link, LONGEST_LINK, openLink, shelf, shelfOf, wellFormed } from './state.mjs';
import { judge } from './verdict.mjs';

/** @typedef {import('./section.mjs').Control} Control */
/** @typedef {import('./section.mjs').Fault} Fault */

const NONE = 'No figures of your own yet.';
const MEGABYTE = 1_000_000;
const PAUSE = 250; // milliseconds without a keystroke after which figures are put by

/** @returns {Promise<unknown>} done when the small engine runs, or cannot */
export async function startForms() {
  const sections = $$('.calc');
  if (!sections.length) return undefined;
  const earlier = shelf(shelfOf('earlier-figures', job), root);
  // On the page of a way the answers about the ceiling are carried without a field of their own.
  const carried = new Map(/** @type {[string, string][]} */ (`${$('.verdict')?.dataset.facts ?? ''} ${$('.verdict')?.dataset.carries ?? ''}`.split(' ').filter(Boolean).map((/** @type {string} */ name) => [name, ''])));
  const names = new Set([...controls.keys(), ...carried.keys()]);
  /** @type {Map<HTMLElement, {inputs: string, text: string}>} the answer that stands in each section */
  const shown = new Map();
  /** Fields whose faults are told at once, as somebody typed there or a link or the device filled them. @type {Set<string>} */
  const touched = new Set();
  /** What this page last saw on the device, field by field. @type {Record<string, string | undefined>} */
  let known = {};
  let anchor = '';
  let seen = location.hash; // the address that this page last read or wrote
  const { say, show } = voice(() => anchor);

  /** @param {string} name */
  const valueOf = (name) => wellFormed(controls.get(name)?.value ?? carried.get(name) ?? '').trim();
  /** @param {string} name @param {string} text */
  const put = (name, text) => {
    if (carried.has(name)) carried.set(name, text);
    const control = controls.get(name);
    if (!control || !takes(control, text)) return;
    control.value = control instanceof HTMLTextAreaElement ? inLines(text) : text;
    control.dispatchEvent(new Event('filled'));
  };
  /** The value that a field has when nobody has typed. @param {string} name */
  const usual = (name) => controls.get(name)?.dataset.default ?? '';
  /** A choice takes only what it offers; a link may hold something else. @param {Awaited<ReturnType<typeof openLink>>} from */
  const dropUnoffered = (from) => {
    for (const [name, text] of from.values) {
      if (takes(controls.get(name), text)) continue;
      from.values.delete(name);
      if (controls.get(name)?.type !== 'hidden') from.dropped.push(`${name}=${text}`);
    }
    return from;
  };
  /** What lies on the device for the fields of this page. @returns {Record<string, string | undefined>} */
  const onDevice = () => Object.fromEntries(Object.entries(figures.read()).filter(([name, text]) => names.has(name) && takes(controls.get(name), text)));
  /** What differs from the usual values, in the order of the page. */
  const typed = () => new Map([...names]
    .map((name) => /** @type {[string, string]} */ ([name, valueOf(name)]))
    .filter(([name, text]) => text !== usual(name)));
  let keeping = 0;
  /** Put by what has changed here, each field for itself, and write it into the address. */
  function keep() {
    clearTimeout(keeping);
    keeping = 0;
    const values = typed();
    for (const name of names) {
      const text = values.get(name);
      if (text !== known[name]) figures.put(name, text);
      known[name] = text;
    }
    const facts = ($('.verdict')?.dataset.facts ?? '').split(' ');
    judge(new Map([...values].filter(([name]) => facts.includes(name))));
    document.dispatchEvent(new Event('figures'));
    const address = link(anchor, complete(values));
    if (seen === location.hash && (values.size || seen.includes('?'))) { // else a jump is on its way, and is told in a moment
      // The address is marked as this page's own: whoever comes back to it wants the newest figures, not those of then.
      history.replaceState({ ...history.state, figures: figures.works ? 'kept' : 'loose', job }, '', address || location.pathname);
      seen = location.hash;
    }
    const where = address.length > LONGEST_LINK ? 'A link cannot hold them either: leave this page open.' : 'The link in the address still holds your figures.';
    for (const line of $$('.saved')) line.textContent = figures.works ? '' : `This device keeps nothing for this page now. ${where}`;
  }

  /** Another page has changed what lies on the device: show that, but never over what is being typed here. */
  function refresh() {
    const now = onDevice();
    const mine = typed();
    const changed = [...names].filter((name) => now[name] !== known[name] && mine.get(name) === known[name]);
    if (!changed.length) return;
    for (const name of changed) {
      put(name, now[name] ?? usual(name));
      known[name] = now[name];
    }
    keep();
    tell([], canGoBack());
    askAgain(changed);
  }

  /** @param {string[]} changed fields; each form that goes by one of them is asked again, and no form shows its example now */
  function askAgain(changed) {
    for (const name of changed) touched.add(name);
    const asked = sections.filter((section) => controlsOf(section).some((one) => changed.includes(one.name)));
    for (const section of [...asked, ...sections.filter((one) => !asked.includes(one) && showsExample(one))]) work(section);
  }

  /** Take away what stands in a section: no example and no old answer beside figures that are not its own. @param {HTMLElement} section @param {string} text */
  function clearAnswer(section, text) {
    $('.result', section).dataset.shows = 'nothing';
    head(section, '–', text);
    section.dispatchEvent(new CustomEvent('emptied', { bubbles: true }));
    $('.origin', section).textContent = text;
    $('.slot', section).replaceChildren();
    $('.tools', section).hidden = true;
    shown.delete(section);
  }

  /**
   * Ask and show. `loud` is for a button: all faults are told and the answer is brought into sight.
   * @param {HTMLElement} section @param {{loud?: boolean, engine?: 'small' | 'full'}} [how]
   */
  async function work(section, { loud = false, engine = 'small' } = {}) {
    const result = $('.result', section);
    if (showsExample(section)) clearAnswer(section, 'Working it out …');
    const onLoading = /** @param {string} which */ (which) => {
      if (loud) show(section, which === 'full' ? `Loading the full engine (${sizeText()}) …` : 'Starting the engine …');
    };
    try {
      const asked = inputsOf(section);
      const answered = await door.answer(section.dataset.calculator || '', asked, { engine, onLoading });
      if (!$('.status', section).classList.contains('unseen')) show(section, ''); // what was read out stays there
      const found = JSON.parse(answered.text);
      if (found.faults) {
        const told = showFaults(section, found.faults, loud, touched);
        if (told.length && !loud) say(section, told.map((fault) => fault.message).join(' '), false);
        // What is typed may be on its way to something right; what was emptied is gone, and so is its answer.
        if (!shown.has(section) || found.faults.some((/** @type {Fault} */ one) => !asked[one.field])) {
          clearAnswer(section, why(found.faults, asked));
        } else {
          result.dataset.shows = 'earlier';
          section.dispatchEvent(new CustomEvent('emptied', { bubbles: true }));
          $('.origin', section).textContent = 'The answer to your figures before. The ones above do not work yet.';
        }
        return;
      }
      showFaults(section, [], false, touched);
      result.dataset.shows = 'answer';
      const open = $$('.slot details[open]', section).map((one) => one.className);
      const before = shown.get(section)?.inputs === JSON.stringify(asked) ? shown.get(section)?.text : null;
      $('.slot', section).innerHTML = found.html; // written and escaped by calc.render
      for (const one of $$('.slot details', section)) one.open = open.includes(one.className);
      const [strong, label] = $('.figure', section).childNodes;
      head(section, strong.textContent, (label?.textContent.trim() ?? '') + (hasOwn(section) ? '' : ' · by the usual values'));
      $('.origin', section).textContent = `Worked out from your figures: ${described(section)}.`;
      $('.tools', section).hidden = false;
      $('.by', section).textContent = words(answered.engine, engine, before, answered.text);
      say(section, [whyNotYet(section), `Answer: ${$('.figure', section)?.textContent}`, $('.sentence', section)?.textContent].filter(Boolean).join('. '), loud);
      feed(section, found.answer.answers);
      shown.set(section, { inputs: JSON.stringify(asked), text: answered.text });
      section.dataset.engine = answered.engine;
      section.dispatchEvent(new CustomEvent('answered', { detail: found.answer, bubbles: true }));
      if (loud) section.scrollIntoView();
    } catch (error) {
      if (error instanceof Superseded) return;
      const text = error instanceof NotOnDevice
        ? 'The full engine is not on this device yet, and there is no signal. Try again with a signal.'
        : 'No engine could answer. Your figures are kept. Try again, or reload the page.';
      if (loud || engine === 'full') show(section, text);
      else if (!shown.has(section)) clearAnswer(section, text);
    }
  }

  /**
   * An answer that another form asks for is put there, as long as nobody has typed into that field; and only if it is an
   * answer to something that was typed for it, not one to figures as the book has them.
   * @param {HTMLElement} section @param {{name: string, value: number, unit: string}[]} lines
   */
  function feed(section, lines) {
    const calculator = section.dataset.calculator || '';
    for (const control of $$(`[data-fed-by^="${calculator} "]`)) {
      const line = lines.find((one) => control.dataset.fedBy === `${calculator} ${one.name}`);
      const other = controlsOf(control.closest('.calc'));
      const typed = controlsOf(section).some((one) => known[one.name] !== undefined && !other.includes(one));
      if (!line || !typed || (control.value && control.dataset.fed !== control.value)) continue;
      const text = String(line.value); // both stand in the same unit, which the form shows beside the field
      if (control.value === text) continue;
      put(control.name, text);
      control.dataset.fed = text;
      keep();
      askAgain([control.name]);
    }
  }

  const sizeText = () => `${(Number(engines.full_bytes) / MEGABYTE).toFixed(1)} MB, once`;

  /** Whether a link of this book only carries on what lies on the device. @param {Map<string, string>} values */
  const carriesOn = (values) => document.referrer.startsWith(root.href) && [...values].every(([name, text]) => inOneLine(text) === inOneLine(known[name] ?? usual(name)));
  /** @param {string} name a place on this page, or it is none */
  const placeOf = (name) => (document.getElementById(name) ? name : '');

  // What stands in the fields when the page opens: a link first, else what was typed last. An address that this page
  // wrote itself is no link: the device holds the same or something newer.
  known = onDevice();
  const linked = dropUnoffered(await openLink(location.hash, names));
  const own = history.state?.figures;
  const brings = linked.given && !own && linked.values.size > 0 && !carriesOn(linked.values);
  const foreign = linked.given && !own && (brings || !linked.values.size); // from elsewhere, though maybe broken
  const opening = brings ? linked.values : new Map(Object.entries(known));
  if (own === 'loose') for (const [name, text] of linked.values) opening.set(name, text);
  for (const [name, text] of opening) {
    put(name, text ?? '');
    touched.add(name);
  }
  anchor = placeOf(linked.anchor);
  if (brings) setAside(new Map([...names].map((name) => [name, known[name] ?? usual(name)])), false);
  tell(foreign ? brokenParts(linked) : [], canGoBack());
  if (opening.size || foreign) keep();
  if (foreign) for (const section of sections) clearAnswer(section, NONE);
  if (linked.given || opening.size) showPlace();
  if (opening.size) $('#content').dataset.filled = ''; // a customer's one screen shows answers then, and no form
  figures.watch(refresh);

  /** Bring the place of the address into sight. A customer's one screen is read from its top. */
  function showPlace() {
    if ($('#content').dataset.kind === 'screen') return;
    openTo(document.getElementById(anchor));
    document.getElementById(anchor)?.scrollIntoView({ behavior: 'instant' });
  }

  /**
   * Other figures stand in the fields now: set those aside that a person typed before. What a link had brought is
   * nobody's, unless `all` of it is to be had back.
   * @param {Map<string, string>} before @param {boolean} all
   */
  function setAside(before, all) {
    const fromLinks = brought.read();
    const isMine = (/** @type {string} */ name) => all || fromLinks[name] !== before.get(name);
    const replaced = [...before].some(([name, was]) => isMine(name) && was !== usual(name) && was !== valueOf(name));
    for (const [name, was] of before) {
      const now = valueOf(name);
      if (isMine(name)) earlier.put(name, replaced && was !== now ? was : undefined);
      if (was !== now && !all) brought.put(name, now);
    }
  }

  /** Whether a link's figures stand here, and a person's own lie aside. */
  function canGoBack() {
    const held = earlier.read();
    const fromLinks = brought.read();
    return [...names].some((name) => name in held && held[name] !== valueOf(name) && fromLinks[name] === valueOf(name));
  }

  /** @param {string[]} lines @param {boolean} offerEarlier @param {string} [because] @param {string} [verb] */
  function tell(lines, offerEarlier, because = 'A link brought these figures. Yours are kept', verb = 'Put my earlier figures back') {
    const notice = $('#figures');
    notice.replaceChildren(...lines.map((text) => element('p', '', text)));
    if (offerEarlier) {
      const where = earlier.works ? 'on this device.' : 'on this page until you leave it, as this device keeps no more.';
      notice.append(element('p', '', `${because} ${where}`), button('quiet', verb, putBack));
    }
    notice.hidden = !notice.childNodes.length;
    // What is to be told of a link stands where the link leads.
    const place = $('#content').dataset.kind === 'screen' ? undefined : sections.find((section) => section.id === anchor);
    if (place && place.firstChild !== notice) place.prepend(notice);
    else if (!place && $('#content').previousSibling !== notice) $('#content').before(notice);
  }

  /** What stands in the fields and what lies aside change places, so that this too can be taken back. */
  function putBack() {
    const held = earlier.read();
    const changed = [...names].filter((name) => name in held && held[name] !== valueOf(name));
    for (const name of changed) {
      earlier.put(name, valueOf(name));
      put(name, held[name]);
    }
    keep();
    tell([], true, 'Your earlier figures stand in the forms again. The others are kept', 'Undo that');
    askAgain(changed);
  }

  /**
   * Answer each form that somebody's figures stand in. The one that is asked for comes first: a link is opened for its
   * answer.
   * @param {Map<string, unknown>} given by a link or by the device
   */
  function answerAll(given) {
    const wanted = sections.filter((section) => hasOwn(section) || controlsOf(section).some((one) => given.has(one.name)));
    if (!wanted.length) return Promise.resolve();
    const first = wanted.filter((section) => section.id === anchor);
    const rest = sections.filter((section) => !wanted.includes(section)); // these go by the usual values
    return Promise.all([...first, ...wanted.filter((section) => !first.includes(section)), ...rest].map((section) => work(section)));
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
      if (location.hash.length > LONGEST_LINK) return show(section, 'These figures are too long for a link.');
      try {
        await navigator.clipboard.writeText(location.href);
        $('.by', section).textContent = 'The link is copied. It holds these figures and nothing else.';
      } catch {
        show(section, 'Copy the address of this page; it holds these figures.');
      }
    });
    section.addEventListener('input', (/** @type {Event} */ event) => {
      const control = /** @type {Control} */ (event.target);
      if (!control.name) return;
      anchor = section.id;
      // The question goes out first; the door drops all but the newest. Keeping waits for a pause in the typing, or
      // for the page to be left.
      askAgain([control.name]);
      clearTimeout(keeping);
      keeping = setTimeout(keep, PAUSE);
    });
    section.addEventListener('pointerdown', warm, { once: true });
    section.addEventListener('focusin', warm, { once: true });
  }
  // Also once the field is left: what is tapped next, such as the link for the customer, goes by the address.
  for (const left of ['pagehide', 'visibilitychange', 'change']) addEventListener(left, () => keeping && keep());
  // A plain jump inside the page, and the way back to one, keeps the figures in the address; a link brings its own.
  addEventListener('hashchange', async () => {
    const came = location.hash;
    seen = ''; // nothing is written over the address until it is read
    const now = dropUnoffered(await openLink(came, names));
    if (came !== location.hash) return; // another one is on its way
    seen = came;
    anchor = placeOf(now.anchor);
    if (!now.given || history.state?.figures) return keep();
    if (!now.values.size) {
      tell(brokenParts(now), canGoBack());
      return keep();
    }
    const before = new Map([...names].map((name) => [name, valueOf(name)]));
    for (const name of names) put(name, now.values.get(name) ?? usual(name));
    setAside(before, false);
    tell(brokenParts(now), canGoBack());
    keep();
    for (const name of now.values.keys()) touched.add(name);
    for (const section of sections) clearAnswer(section, NONE);
    answerAll(now.values);
    showPlace();
  });
  const clear = $('.clear-figures');
  clear?.addEventListener('click', () => {
    const before = new Map([...names].map((name) => [name, valueOf(name)]));
    const any = typed().size;
    for (const name of names) put(name, usual(name));
    keep(); // first, as that makes room on a full device
    if (any) setAside(before, true);
    tell([], [...names].some((name) => name in earlier.read()), 'Your figures are cleared, and kept aside');
    $('#figures button')?.focus();
    for (const section of sections) {
      $('.faults', section).hidden = true;
      touched.clear();
      showFaults(section, [], false, touched);
      clearAnswer(section, NONE);
    }
  });

  /** @type {(done: unknown) => void} */
  let running = () => {};
  const started = new Promise((resolve) => (running = resolve));
  let warmed = false;
  function warm() {
    if (warmed) return;
    warmed = true;
    running(door.warm());
  }
  if (opening.size) {
    warmed = true;
    let moved = false; // by the reader: then the page stays where it is
    for (const kind of ['wheel', 'touchstart', 'pointerdown', 'keydown']) addEventListener(kind, () => (moved = true), { once: true, passive: true });
    running(answerAll(opening).then(() => moved || showPlace()));
  } else if ('requestIdleCallback' in window) requestIdleCallback(warm, { timeout: 3000 });
  else setTimeout(warm, 500);
  document.documentElement.dataset.ready = '';
  return started;
}
