// @ts-check
// Folds of a page: whoever is led to a place inside one finds it open, and on paper nothing is folded away.

/** Open every fold round a place. @param {Element | null} place */
export function openTo(place) {
  for (let one = place; one; one = one.parentElement) if (one instanceof HTMLDetailsElement) one.open = true;
}

/** The place that an address leads to; names of places hold nothing that an address has to write in code. @param {string} hash */
const placeOf = (hash) => document.getElementById(hash.slice(1).split('?')[0]);

export function startFolds() {
  const lead = (/** @type {string} */ hash) => {
    const place = hash.length > 1 ? placeOf(hash) : null;
    openTo(place);
    return place;
  };
  if (!location.hash.includes('?')) lead(location.hash)?.scrollIntoView({ behavior: 'instant' });
  addEventListener('hashchange', () => lead(location.hash)?.scrollIntoView());
  // A link to where the page already is changes no address.
  addEventListener('click', (event) => {
    const link = /** @type {HTMLAnchorElement | null} */ (/** @type {Element} */ (event.target).closest?.('a[href^="#"]'));
    if (link && !event.defaultPrevented) lead(link.hash);
  });
  /** Folds that stood closed before the print. @type {HTMLDetailsElement[]} */
  let closed = [];
  addEventListener('beforeprint', () => {
    closed = /** @type {HTMLDetailsElement[]} */ ([...document.querySelectorAll('.fold:not([open]), details.calc:not([open])')]);
    for (const one of closed) one.open = true;
  });
  addEventListener('afterprint', () => {
    for (const one of closed) one.open = false;
  });
}
