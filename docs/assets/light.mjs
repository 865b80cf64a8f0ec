// @ts-check
// Light or dark, as the reader chose it. A plain script that painting waits for, so that no page flashes, and reading does
// not; where nothing was chosen, the device decides.

{
  const page = document.documentElement;
  const place = `light ${new URL(page.dataset.root || '.', location.href).pathname} scheme`;

  /** @returns {string} 'light', 'dark', or nothing where the device decides or keeps nothing */
  const kept = () => {
    try {
      const found = localStorage.getItem(place);
      return found === 'light' || found === 'dark' ? found : '';
    } catch {
      return '';
    }
  };

  /** @param {string} scheme */
  const show = (scheme) => {
    if (scheme) page.dataset.scheme = scheme;
    else delete page.dataset.scheme;
    for (const one of document.querySelectorAll('meta[name="theme-color"]')) {
      const dark = scheme ? scheme === 'dark' : one.getAttribute('media')?.includes('dark');
      one.setAttribute('content', dark ? '#14161a' : '#fbfaf7');
    }
    for (const one of document.querySelectorAll('.light button')) one.setAttribute('aria-pressed', String(one.getAttribute('value') === scheme));
  };

  /** @param {string} scheme */
  const choose = (scheme) => {
    show(scheme);
    try {
      if (scheme) localStorage.setItem(place, scheme);
      else localStorage.removeItem(place);
    } catch {
      // the choice stays with this page
    }
  };

  show(kept());
  const start = () => {
    document.querySelector('.light')?.removeAttribute('hidden');
    for (const one of document.querySelectorAll('.light button')) one.addEventListener('click', () => choose(one.getAttribute('value') || ''));
    show(kept());
  };
  if (document.readyState === 'loading') document.addEventListener('DOMContentLoaded', start);
  else start();
  addEventListener('storage', ({ key }) => (key === null || key === place) && show(kept()));
  addEventListener('pageshow', ({ persisted }) => persisted && show(kept()));
}
