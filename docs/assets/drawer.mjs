// @ts-check
// The way through the book: its contents as a drawer over any page, the part of the page in view, the way last opened.
// Without this script “Contents” is a link to the page of the same list.

import { root } from './early.mjs';
import { button, element } from './make.mjs';
import { shelf } from './state.mjs';

const WIDE = matchMedia('(min-width: 68.75em)'); // the contents of the page stand beside it, as in the style sheet
const last = shelf('last', root);

startDrawer();
startLastWay();
startPlace();

function startDrawer() {
  /** @type {Promise<HTMLDialogElement> | undefined} */
  let made;
  for (const one of document.querySelectorAll('.to-contents')) {
    const link = /** @type {HTMLAnchorElement} */ (one);
    if (link.hasAttribute('aria-current')) continue; // the list is this page
    link.setAttribute('aria-haspopup', 'dialog');
    link.addEventListener('click', async (event) => {
      if (event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      made ??= makeDrawer(link.href);
      try {
        open(await made, link);
      } catch {
        location.href = link.href; // the browser says what is the matter
      }
    });
  }
}

/** @param {HTMLDialogElement} drawer @param {HTMLElement} from */
function open(drawer, from) {
  drawer.showModal();
  drawer.addEventListener('close', () => from.focus({ preventScroll: true }), { once: true });
  drawer.querySelector('[aria-current]')?.scrollIntoView({ block: 'center' });
}

/** The list of the contents page in a dialog, with this page marked. @param {string} href */
async function makeDrawer(href) {
  const answer = await fetch(href);
  if (!answer.ok) throw new Error(`the contents were answered with ${answer.status}`);
  const list = new DOMParser().parseFromString(await answer.text(), 'text/html').querySelector('.contents');
  if (!list) throw new Error('the contents hold no list');
  const drawer = /** @type {HTMLDialogElement} */ (element('dialog', 'drawer'));
  drawer.setAttribute('aria-label', 'Contents');
  const head = element('div', 'drawer-head');
  const close = button('quiet', 'Close', () => drawer.close());
  close.autofocus = true; // a search field would bring up a phone's keys
  head.append(searchForm(), close);
  const lists = element('nav', 'contents');
  lists.setAttribute('aria-label', 'Contents');
  lists.append(...onThisPage(), ...list.children);
  for (const one of lists.querySelectorAll('section[id]')) one.removeAttribute('id'); // the page may have it
  for (const one of lists.querySelectorAll('p')) one.remove();
  for (const one of lists.querySelectorAll('a')) {
    const to = one.getAttribute('href') || '';
    if (!to.startsWith('#')) one.href = new URL(to, href).href;
    if (one.href === location.href.split('#')[0]) one.setAttribute('aria-current', 'page');
  }
  lists.addEventListener('click', ({ target }) => target instanceof Element && target.closest('a') && drawer.close());
  drawer.addEventListener('click', ({ target }) => target === drawer && drawer.close()); // beside it
  drawer.append(head, lists);
  document.querySelector('.book')?.append(drawer);
  return drawer;
}

/** The parts of this page, where they do not stand beside it. */
function onThisPage() {
  const list = document.querySelector('.toc ul');
  if (!list || WIDE.matches) return [];
  const part = element('section', '');
  part.append(element('h2', '', 'On this page'), list.cloneNode(true));
  return [part];
}

function searchForm() {
  const form = /** @type {HTMLFormElement} */ (element('form', ''));
  form.setAttribute('role', 'search');
  const box = /** @type {HTMLInputElement} */ (element('input', ''));
  box.type = 'search';
  box.setAttribute('aria-label', 'Search the book');
  box.placeholder = 'Search';
  form.append(box);
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    location.href = new URL(`search/?q=${encodeURIComponent(box.value.trim())}`, root).href;
  });
  return form;
}

/** Whoever is on the job comes back to the steps of the way that was open last. */
function startLastWay() {
  const own = document.querySelector('#content[data-kind="way"]') && /methods\/([a-z-]+)\/$/.exec(location.pathname);
  if (own) last.put('way', `${own[1]} ${document.querySelector('h1')?.textContent?.trim()}`);
  const [, name, title] = /^([a-z-]+) (.+)$/.exec(last.read().way ?? '') ?? [];
  if (!name) return;
  const steps = new URL(`methods/${name}/#steps`, root).href;
  const door = /** @type {HTMLAnchorElement | null} */ (document.querySelector('.door[data-last]'));
  if (door) {
    door.href = steps;
    const more = door.querySelector('span');
    if (more) more.textContent = title;
  }
  const thumb = /** @type {HTMLAnchorElement | null} */ (document.querySelector('.bar .to-way'));
  if (thumb && !door) {
    thumb.href = steps;
    thumb.textContent = 'My way';
    thumb.setAttribute('aria-label', `My way: ${title}, the steps`);
  }
}

/** Mark the part in view, where the parts stand beside the page. */
function startPlace() {
  const links = /** @type {HTMLAnchorElement[]} */ ([...document.querySelectorAll('.toc a')]);
  const parts = links.map((one) => document.getElementById(decodeURIComponent(one.hash.slice(1))));
  let asked = false;
  function mark() {
    asked = false;
    const line = innerHeight / 3;
    const at = parts.findLastIndex((one) => one && one.checkVisibility() && one.getBoundingClientRect().top < line);
    for (const [index, one] of links.entries()) {
      if (index === at) one.setAttribute('aria-current', 'true');
      else one.removeAttribute('aria-current');
    }
  }
  const ask = () => {
    if (!WIDE.matches || asked) return;
    asked = true;
    requestAnimationFrame(mark);
  };
  addEventListener('scroll', ask, { passive: true });
  WIDE.addEventListener('change', ask);
  ask();
}
