// @ts-check
// The rooms of a page as a list, one card each, with a plan that follows each keystroke. The list writes into the field of
// the page and reads from it; all else (answers, the link, the device, other tabs) goes by that field as ever.

import { door } from './early.mjs';
import { button, element } from './make.mjs';
import { noCut, noRoom, read, readAll, written } from './roomtext.mjs';
import { $, $$, controls } from './section.mjs';

/** @typedef {import('./roomtext.mjs').Room} Room */
/** @typedef {{given: string, name: string, message: string, nearest: string, walls: number[], area: string, plan: string}} Sketch */
/** @typedef {{room: Room, card: HTMLElement, sketch?: Sketch}} Entry */

const WAYS = [['E', '→'], ['N', '↑'], ['W', '←'], ['S', '↓']];
const UNITLESS = /^[\d./ ,½¼¾]*$/;
const AS_TEXT = 'Type them as text';
const AS_LIST = 'Show them as a list';

export function startRooms() {
  const control = /** @type {HTMLTextAreaElement | undefined} */ (controls.get('rooms'));
  const text = /** @type {HTMLDetailsElement | null | undefined} */ (control?.closest('.as-text'));
  if (control && text && $('#content').dataset.kind !== 'screen') startList(control, text);
}

/** @param {HTMLTextAreaElement} control @param {HTMLDetailsElement} text the fold that it stands in */
function startList(control, text) {
  const summary = $('summary', text);
  const list = element('div', 'rooms');
  list.setAttribute('role', 'group');
  list.setAttribute('aria-label', 'Rooms, one by one');
  const cards = element('div', 'room-cards');
  const undo = element('p', 'room-undo');
  undo.setAttribute('role', 'status');
  const plans = element('div', 'room-plans'); // under the text, while that is open
  list.append(cards, undo, button('quiet room-add', 'Add a room', () => add(true)));
  text.before(list);
  text.after(plans);
  /** @type {Entry[]} */
  let entries = [];
  let last = 0; // cards have names of their own, so that labels find their fields
  let own = ''; // what the list wrote itself

  /** @param {string} value */
  function take(value) {
    own = value;
    entries = readAll(value).map(entryOf);
    if (!entries.length) entries = [entryOf(noRoom())];
    undo.replaceChildren();
    place();
    ask();
  }

  /** Put the text of the list into the field, as if it were typed there. */
  function write() {
    control.value = own = entries.map((one) => written(one.room)).filter(Boolean).join('\n');
    ask(); // before the forms do: the plan is what the eye waits for
    control.dispatchEvent(new Event('input', { bubbles: true }));
  }

  async function ask() {
    const shown = controls.get('show_in')?.value ?? '';
    const asked = own;
    /** @type {Sketch[]} */
    let found = [];
    if (asked.trim()) {
      try {
        found = JSON.parse((await door.answer('sketch', { rooms: asked, show_in: shown })).text).sketch;
      } catch {
        return; // a newer question is on its way, or the forms tell that no engine answers
      }
    }
    if (asked !== own) return;
    let at = 0;
    for (const one of entries) {
      one.sketch = written(one.room) ? found[at++] : undefined;
      tell(one);
    }
    plans.replaceChildren(...found.filter((one) => one.plan).map((one) => {
      const figure = element('figure', 'room-plan');
      figure.innerHTML = one.plan.replaceAll('sketch-', 'sketch-text-'); // written and escaped by calc.render; the list has the same
      figure.append(element('figcaption', '', `${one.name}${one.area && ' · ' + one.area}`));
      return figure;
    }));
  }

  /** Show what is known of a room by now. @param {Entry} entry */
  function tell({ room, card, sketch }) {
    const fresh = room.kind === 'sides' && (!room.a || !room.b) && card.contains(document.activeElement); // not yet at fault
    const message = fresh ? '' : withoutName(sketch);
    const fault = $('.fault', card);
    const offer = $('.room-offer', card);
    const figure = $('.room-plan', card);
    if (sketch?.plan) figure.innerHTML = sketch.plan; // written and escaped by calc.render
    else figure.replaceChildren(element('p', '', 'The plan is drawn here while you type.'));
    $('.room-area', card).textContent = sketch?.area ?? '';
    fault.hidden = offer.hidden = !message;
    if (fault.textContent !== message) fault.textContent = message;
    offer.setAttribute('aria-label', `Use it: ${sketch?.nearest}`);
    for (const input of $$('input[data-wall]', card)) {
      const wrong = message && (room.kind === 'sides' ? sketch?.walls.includes(Number(input.dataset.wall)) : true);
      if (wrong) input.setAttribute('aria-invalid', 'true');
      else input.removeAttribute('aria-invalid');
    }
  }

  /** What is wrong, without the name that stands above it. @param {Sketch | undefined} sketch */
  function withoutName(sketch) {
    const name = `${sketch?.name}: `;
    const message = sketch?.message ?? '';
    return message.startsWith(name) ? message.charAt(name.length).toUpperCase() + message.slice(name.length + 1) : message;
  }

  function place() {
    cards.replaceChildren(...entries.map((one) => one.card));
    for (const [at, one] of entries.entries()) {
      $('legend span', one.card).textContent = `Room ${at + 1}`;
      $('.room-remove', one.card).setAttribute('aria-label', `Remove room ${at + 1}`);
      tell(one);
    }
  }

  /** @param {boolean} now go there */
  function add(now) {
    entries.push(entryOf(noRoom()));
    place();
    if (now) $('input[data-wall]', entries.at(-1)?.card).focus();
  }

  /** @param {Entry} entry */
  function remove(entry) {
    const at = entries.indexOf(entry);
    const only = entries.length === 1;
    entries.splice(at, 1, ...(only ? [entryOf(noRoom())] : []));
    place();
    write();
    const back = button('quiet', 'Put it back', () => {
      if (only) entries = [];
      entries.splice(at, 0, entry);
      undo.replaceChildren();
      place();
      write();
      $('input', entry.card).focus();
    });
    undo.replaceChildren(`${entry.room.name || `Room ${at + 1}`} is removed. `, back);
    back.focus();
  }

  /** Another room in a room's place, or the same one in another shape. @param {Entry} entry @param {Room} room */
  function change(entry, room) {
    const made = entryOf(room);
    entries.splice(entries.indexOf(entry), 1, made);
    place();
    write();
    return made;
  }

  /**
   * A field of a card.
   * @param {Entry} entry @param {string} label @param {string} value @param {(text: string) => void} set
   * @param {{unit?: boolean, wall?: number, hint?: string}} [how]
   */
  function field(entry, label, value, set, { unit = false, wall = 0, hint = '' } = {}) {
    const key = `room-${(last += 1)}`;
    const made = element('div', 'room-field');
    const name = /** @type {HTMLLabelElement} */ (element('label', '', label));
    const input = document.createElement('input');
    name.htmlFor = input.id = key;
    input.type = 'text';
    input.autocomplete = 'off';
    input.spellcheck = false;
    input.enterKeyHint = 'next';
    input.placeholder = hint;
    input.value = value;
    if (wall) input.dataset.wall = String(wall);
    input.setAttribute('aria-describedby', entry.card.id + '-fault');
    const box = element('span', 'box');
    box.append(input);
    const suffix = element('span', 'unit', 'ft');
    suffix.setAttribute('aria-hidden', 'true');
    if (unit) box.append(suffix);
    const bare = () => (suffix.hidden = !UNITLESS.test(input.value));
    input.addEventListener('input', () => {
      set(input.value.replace(/[;\n]/g, ' '));
      bare();
      write();
    });
    bare();
    made.append(name, box);
    return made;
  }

  /** @param {Room} room @returns {Entry} */
  function entryOf(room) {
    const card = element('fieldset', 'room');
    card.id = `room-card-${(last += 1)}`;
    /** @type {Entry} */
    const entry = { room, card };
    const legend = element('legend', '');
    legend.append(element('span', ''), ' ', element('b', 'room-area'));
    const fault = element('p', 'fault');
    fault.id = card.id + '-fault';
    const offer = button('quiet room-offer', 'Use it', () => entry.sketch && $('input', change(entry, read(entry.sketch.nearest)).card).focus());
    const plan = element('figure', 'room-plan');
    const tools = element('p', 'room-tools');
    card.append(legend, ...fieldsOf(entry), plan, fault, offer, ...moreOf(entry), tools);
    if (room.kind === 'sides') tools.append(button('quiet', 'Walk round it instead', () => goRound(entry)));
    if (room.kind === 'walk') tools.append(button('quiet', 'Two sides instead', () => change(entry, { ...room, kind: 'sides', walk: '' })));
    tools.append(button('quiet room-remove', 'Remove', () => remove(entry)));
    card.addEventListener('focusout', () => setTimeout(() => tell(entry)));
    return entry;
  }

  /** A rectangle, walked: so that only what differs is left to change. @param {Entry} entry */
  function goRound(entry) {
    const { room } = entry;
    const walk = room.walk || (room.a && room.b ? `E ${room.a} N ${room.b} W ${room.a} S ${room.b}` : '');
    $('input[data-wall]', change(entry, { ...room, kind: 'walk', walk }).card).focus();
  }

  /** @param {Entry} entry @returns {HTMLElement[]} */
  function fieldsOf(entry) {
    const { room } = entry;
    if (room.kind === 'text') return [field(entry, 'As you wrote it', room.text, (value) => (room.text = value.trim()), { wall: 1 })];
    const name = field(entry, 'Name (or leave empty)', room.name, (value) => {
      room.name = value.replace(/:/g, ' ').trim();
      if (!room.after.includes(':')) room.after = ': ';
    });
    if (room.kind === 'walk') {
      const walls = field(entry, 'Walls, one after the other', room.walk, (value) => (room.walk = value.trim()), { wall: 1, hint: "E 14' S 6' W 14' N 6'" });
      const input = $('input', walls);
      const ways = element('p', 'room-ways');
      ways.append(...WAYS.map(([way, arrow]) => {
        const one = button('quiet', `${arrow} ${way}`, () => {
          input.value = `${input.value.trim()} ${way} `.trimStart();
          input.focus();
        });
        one.setAttribute('aria-label', `Next wall runs ${way}`);
        return one;
      }));
      return [name, walls, ways];
    }
    const sides = element('div', 'room-sides');
    sides.append(
      field(entry, 'One side', room.a, (value) => (room.a = value.trim()), { unit: true, wall: 1 }),
      field(entry, 'Other side', room.b, (value) => (room.b = value.trim()), { unit: true, wall: 2 }),
    );
    return [name, sides];
  }

  /** Slope and cut-outs, folded away. @param {Entry} entry @returns {HTMLElement[]} */
  function moreOf(entry) {
    const { room } = entry;
    if (room.kind === 'text') return [];
    const more = /** @type {HTMLDetailsElement} */ (element('details', 'room-more'));
    more.open = Boolean(room.slope || room.cuts.length);
    const slope = field(entry, 'Slope, rise in 12', room.slope, (value) => (room.slope = /^\d+$/.test(value.trim()) ? `${value.trim()}:12` : value.trim()), { hint: '4:12' });
    const ways = element('div', 'room-field');
    addEventListener('hashchange', () => {
    if (location.hash.slice(1).split('?')[0] === control.id) text.open = false;
  });
  const label = /** @type {HTMLLabelElement} */ (element('label', '', 'Rises to the'));
    const select = document.createElement('select');
    label.htmlFor = select.id = `room-${(last += 1)}`;
    for (const [value, words] of [['', 'north, the top'], ['N', 'north (N)'], ['E', 'east (E)'], ['S', 'south (S)'], ['W', 'west (W)']]) select.append(new Option(words, value, false, value === room.toward));
    select.addEventListener('input', (event) => {
      event.stopPropagation();
      room.toward = select.value;
      write();
    });
    ways.append(label, select);
    const row = element('div', 'room-sides');
    row.append(slope, ways);
    const cuts = room.cuts.map((cut, at) => {
      const group = element('fieldset', 'room-cut');
      const rows = element('div', 'room-sides');
      rows.append(
        field(entry, 'One side', cut.a, (value) => (cut.a = value.trim()), { unit: true }),
        field(entry, 'Other side', cut.b, (value) => (cut.b = value.trim()), { unit: true }),
        field(entry, 'From the west wall', cut.east, (value) => (cut.east = value.trim()), { unit: true }),
        field(entry, 'From the south wall', cut.north, (value) => (cut.north = value.trim()), { unit: true }),
      );
      group.append(element('legend', '', `Cut-out ${at + 1}`), rows, button('quiet', 'Remove the cut-out', () => change(entry, { ...room, cuts: room.cuts.filter((one) => one !== cut) })));
      return group;
    });
    const another = button('quiet', 'Add a cut-out', () => {
      const made = change(entry, { ...room, cuts: [...room.cuts, noCut()] });
      $('.room-more', made.card).open = true;
      $('.room-cut:last-of-type input', made.card).focus();
    });
    more.append(element('summary', '', 'Slope and cut-outs'), row, ...cuts, another);
    return [more];
  }

  // Enter goes on to the next field, as the key of a phone says; it never sends the form off half filled in.
  list.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    const stops = $$('input, .room-add', list).filter((one) => one.checkVisibility());
    stops[stops.indexOf(event.target) + 1]?.focus();
  });
  function swap() {
    list.hidden = text.open;
    plans.hidden = !text.open;
    summary.textContent = text.open ? AS_LIST : AS_TEXT;
    if (!text.open && control.value !== own) take(control.value);
  }
  text.addEventListener('toggle', swap);
  control.addEventListener('filled', () => take(control.value));
  control.addEventListener('input', () => control.value !== own && take(control.value));
  controls.get('show_in')?.addEventListener('input', ask);
  // What leads to the field leads to the list, where that is shown.
  control.addEventListener('wanted', (event) => {
    if (text.open) return;
    event.preventDefault();
    (($('[aria-invalid]', list) ?? $('input[data-wall]', list))).focus();
  });
  addEventListener('hashchange', () => {
    if (location.hash.slice(1).split('?')[0] === control.id) text.open = false;
  });
  const label = /** @type {HTMLLabelElement} */ ($(`label[for="${control.id}"]`));
  label.addEventListener('click', () => !text.open && $('input[data-wall]', list).focus());
  text.open = control === document.activeElement;
  swap();
  take(control.value);
}
