// @ts-check
// The newest answer of each form, for parts of the page that come later than it.

/** @type {Map<string, Event>} by the form's id */
const newest = new Map();

document.addEventListener('answered', (event) => newest.set(/** @type {HTMLElement} */ (event.target).id, event));
document.addEventListener('emptied', (event) => newest.delete(/** @type {HTMLElement} */ (event.target).id));

/** Hear each answer of a form, and the one that stands there already. @param {HTMLElement} section @param {(event: Event) => void} hear */
export function onAnswer(section, hear) {
  const there = newest.get(section.id);
  if (there) hear(there);
  section.addEventListener('answered', hear);
}
