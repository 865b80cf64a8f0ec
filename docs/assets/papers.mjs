// @ts-check
// The papers of a job: what the job holds goes into the lines that a hand would fill, and one paper is printed at a time.

import { about, figures, root, ticks } from './early.mjs';
import { button, element } from './make.mjs';
import { $, $$, controls } from './section.mjs';
import { inOneLine } from './state.mjs';

/** @param {string} moment */
const when = (moment) => new Date(moment).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });

/** A figure as a person reads it: a choice by its words. @param {string} name */
function told(name) {
  const control = controls.get(name);
  const text = figures.read()[name] ?? '';
  if (control instanceof HTMLSelectElement) return [...control.options].find((one) => one.value === text)?.textContent ?? '';
  return inOneLine(text);
}

export function startPapers() {
  const steps = new Set($$('[data-step]').map((box) => box.dataset.step));

  function show() {
    const held = ticks.read();
    const moments = Object.entries(held).filter(([step]) => steps.has(step)).map(([, moment]) => moment).sort();
    const filled = /** @type {Record<string, string>} */ ({
      name: about.read().name ?? '',
      ticked: moments.length ? [...new Set([moments[0], moments[moments.length - 1]])].map(when).join(' to ') : '',
    });
    for (const place of $$('[data-fill]')) {
      const { fill } = place.dataset;
      place.textContent = filled[fill] ?? told(fill);
    }
    for (const place of $$('.sign')) place.textContent = held[place.dataset.of] ? `ticked ${when(held[place.dataset.of])}` : '';
  }

  for (const paper of $$('.paper')) {
    const see = button('quiet', '', () => open(!('open' in paper.dataset)));
    const open = (/** @type {boolean} */ wanted) => {
      paper.toggleAttribute('data-open', wanted);
      see.textContent = wanted ? 'Put it away' : 'See it here';
      see.setAttribute('aria-expanded', String(wanted));
    };
    const tools = element('p', 'tools');
    tools.append(see);
    $('h2', paper).after(tools);
    open(false);
  }
  for (const place of $$('.where-from .address')) place.textContent = new URL(place.dataset.path, root).href;
  for (const act of $$('[data-print]')) {
    act.addEventListener('click', () => {
      document.documentElement.dataset.paper = act.dataset.print;
      print();
    });
  }
  addEventListener('afterprint', () => delete document.documentElement.dataset.paper);
  addEventListener('beforeprint', () => {
    const text = `Printed ${new Date().toLocaleDateString([], { dateStyle: 'medium' })}`;
    for (const place of $$('.sheet-head .when')) place.textContent = text;
  });
  $('.paper-tools .tools').hidden = false;
  for (const changed of ['figures', 'ticks']) document.addEventListener(changed, show);
  figures.watch(show);
  ticks.watch(show);
  show();
}
