// @ts-check
// The two things that pages make by script: an element with its class and words, and a button that acts.

/** @param {string} tag @param {string} classes @param {string} [text] */
export function element(tag, classes, text) {
  const made = document.createElement(tag);
  if (classes) made.className = classes;
  if (text !== undefined) made.textContent = text;
  return made;
}

/** @param {string} classes @param {string} text @param {() => void} act */
export function button(classes, text, act) {
  const made = /** @type {HTMLButtonElement} */ (element('button', classes, text));
  made.type = 'button';
  made.addEventListener('click', act);
  return made;
}
