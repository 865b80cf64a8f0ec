// @ts-check
// The page of the search: over an index that lies on the device.

import { root } from './early.mjs';
import { finder } from './find.mjs';
import { element } from './make.mjs';

const KINDS = /** @type {Record<string, string>} */ ({
  way: 'Way', task: 'Task', guide: 'Guide', reference: 'Reference', section: 'In a page', trouble: 'What goes wrong', word: 'Word', form: 'Form', step: 'Step',
});

export async function startSearch() {
  const place = /** @type {HTMLElement} */ (document.getElementById('find'));
  const box = /** @type {HTMLInputElement} */ (place.querySelector('input'));
  const list = /** @type {HTMLElement} */ (place.querySelector('.found'));
  const status = /** @type {HTMLElement} */ (place.querySelector('.status'));
  /** @type {ReturnType<typeof finder>} */
  let find;
  try {
    find = finder(await (await fetch(new URL('search.json', root))).json());
  } catch {
    status.textContent = 'The index is not on this device yet. Open this page once with a signal.';
    return;
  }

  function show() {
    const { places: found, instead } = find(box.value);
    list.replaceChildren(...found.map(([url, title, kind, text]) => {
      const row = element('li', '');
      const to = /** @type {HTMLAnchorElement} */ (element('a', '', title));
      to.href = new URL(url, root).href;
      row.append(to, element('span', 'known', `${KINDS[kind]}. ${text.length > 120 ? text.slice(0, 118) + '…' : text}`));
      return row;
    }));
    status.textContent = !box.value.trim() ? '' : found.length ? `The best ${found.length} found${instead.length ? ` for “${instead.join(' ')}”` : ''}.` : 'Nothing found. Try another word for it, or fewer words.';
    history.replaceState(history.state, '', box.value.trim() ? `${location.pathname}#q=${encodeURIComponent(box.value.trim())}` : location.pathname);
  }

  const brought = /^#q=(.*)$/.exec(location.hash);
  if (brought) {
    try {
      box.value = decodeURIComponent(brought[1]);
    } catch {
      box.value = brought[1]; // as it stands: half a code, as in “100 %”
    }
  } else box.value = new URLSearchParams(location.search).get('q') ?? '';
  box.addEventListener('input', show);
  place.querySelector('form')?.addEventListener('submit', (event) => {
    event.preventDefault();
    show();
    /** @type {HTMLElement | null} */ (list.querySelector('a'))?.focus();
  });
  show();
  place.dataset.ready = '';
}
