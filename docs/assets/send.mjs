// @ts-check
// The link for the customer: copied, shared, or shown as a code that another phone's camera reads. All of it is made on
// the device; the link is short where its maker came, and readable where not.

import { figures, root } from './early.mjs';
import { button, element } from './make.mjs';
import { $, $$ } from './section.mjs';
import { inOneLine, link } from './state.mjs';

const LONGEST_FINE = 300; // letters up to which the code stays coarse enough to bear spots and folds
const LONGEST_CODE = 1_000; // letters beyond which a phone's camera no longer tells the squares apart
const QUIET = 4; // squares of light paper round the code, as its standard asks
const SVG = 'http://www.w3.org/2000/svg';

export function startSend() {
  // A customer's one screen says who offers it at the head, and shows no form once figures stand in it, until it is asked for.
  if ($('#content').dataset.kind === 'screen') {
    $('#offer')?.addEventListener('answered', (/** @type {CustomEvent} */ { detail: { inputs } }) => {
      const told = $('.offered');
      told.replaceChildren(inputs.offer_by ?? '', inputs.offer_by && inputs.offer_day ? ' · ' : '', element('time', '', inputs.offer_day ?? ''));
      told.hidden = !told.textContent;
    });
    $('#takeoff')?.append(button('quiet change', 'Change these figures', () => {
      delete $('#content').dataset.filled;
      $('#takeoff [name=rooms]').focus();
    }));
  }
  const send = $('.send');
  if (!send) return;
  for (const onward of $$('.onward a')) onward.addEventListener('click', () => figures.put('way', send.dataset.way)); // the forms there ask for it
  $('.job .tools').hidden = false;
  const told = $('.ticked');
  const scan = $('.scan');

  /** The address of the one screen for a customer, with what it shows of this job and no more; nothing where it is too long. */
  async function address() {
    const way = send.dataset.way || $('[name=way]').value;
    const { customer = '', screens = way } = $('[data-customer]').dataset;
    if (!screens.split(' ').includes(way)) {
      told.textContent = 'This edition has no page of that way. Send the price as text.';
      return '';
    }
    const screen = new URL(`to/${way}/`, root).href;
    const shows = customer.split(' ');
    // Where the device keeps nothing, the address holds what was typed.
    const held = { ...figures.read(), ...Object.fromEntries(new URLSearchParams(location.hash.split('?')[1])) };
    const sent = new Map(shows.filter((/** @type {string} */ name) => held[name]).map((/** @type {string} */ name) => [name, inOneLine(held[name])]));
    if (!sent.size) return screen;
    try {
      const { shortLink } = await import('./joblink.mjs');
      return screen + shortLink(sent);
    } catch (error) {
      if (!(error instanceof RangeError)) return screen + link('takeoff', sent); // its maker did not come
      told.textContent = 'These figures are too long for a link.';
      return '';
    }
  }

  async function draw() {
    const made = await address();
    const place = $('.code', scan);
    if (place.dataset.of === made) return;
    place.dataset.of = made;
    place.replaceChildren(...(made ? await shown(made) : []));
    const drawing = /** @type {SVGSVGElement | null} */ (place.querySelector('svg'));
    if (drawing) drawing.style.width = `${wholeSquares(drawing.viewBox.baseVal.width, place.clientWidth)}px`;
  }

  $('.job').addEventListener('pointerdown', () => import('./joblink.mjs').catch(() => null), { once: true }); // copying bears no wait
  send.addEventListener('click', async () => {
    const made = await address();
    if (!made) return;
    try {
      await navigator.clipboard.writeText(made);
      told.textContent = 'The link for the customer is copied. It holds no price of a material and no rate of yours.';
    } catch {
      told.textContent = `Send this address: ${made}`;
    }
  });
  const share = $('.share');
  share.hidden = !('share' in navigator);
  share.addEventListener('click', async () => {
    const made = await address();
    if (made) await navigator.share({ title: document.title, url: made }).catch((error) => {
      if (error.name !== 'AbortError') told.textContent = `Send this address: ${made}`; // else the reader thought better of it
    });
  });
  scan.hidden = false;
  scan.addEventListener('toggle', () => scan.open && draw());
  document.addEventListener('figures', () => setTimeout(() => scan.open && draw())); // the address is written just after
}

/** The code of an address and what to do with it. @param {string} address @returns {Promise<Element[]>} */
async function shown(address) {
  if (address.length > LONGEST_CODE) return [element('p', '', 'These figures make a code too fine to scan. Copy the link instead.')];
  const maker = await import(new URL('qrcode.mjs', import.meta.url).href).catch(() => null);
  if (!maker) return [element('p', '', 'What draws the code did not come. Try again with a signal, or copy the link.')];
  const link = element('a', 'address', address);
  link.setAttribute('href', address);
  return [codeOf(maker.qrcode, address), element('p', '', "Point another phone's camera at it. It opens the customer's page with these figures."), link];
}

/** Dark squares on light paper, whatever the light of the page. @param {any} qrcode @param {string} text */
function codeOf(qrcode, text) {
  const code = qrcode(0, text.length > LONGEST_FINE ? 'L' : 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  let path = '';
  for (let row = 0; row < count; row += 1) {
    for (let from = 0, to = 0; from < count; from = to + 1) {
      for (to = from; to < count && code.isDark(row, to); to += 1);
      if (to > from) path += `M${from + QUIET} ${row + QUIET}h${to - from}v1h${from - to}z`;
    }
  }
  const size = count + 2 * QUIET;
  const drawing = made('svg', { viewBox: `0 0 ${size} ${size}`, role: 'img', 'aria-label': 'A code that holds the link for the customer', 'shape-rendering': 'crispEdges' });
  drawing.append(made('rect', { width: size, height: size, fill: '#fff' }), made('path', { d: path, fill: '#000' }));
  return drawing;
}

/** The width [px] at which each square is the same whole number of the screen's dots: uneven squares are misread. @param {number} squares @param {number} room_px */
function wholeSquares(squares, room_px) {
  return squares * Math.max(1, Math.floor((room_px * devicePixelRatio) / squares)) / devicePixelRatio;
}

/** @param {string} name @param {Record<string, string | number>} attributes */
function made(name, attributes) {
  const one = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) one.setAttribute(key, String(value));
  return one;
}
