// @ts-check
// Rooms as text and as a list. The text is what counts; a room that would not come back letter for letter is no list, and
// stays a line of text. What a text means, and whether it is right, the engines say.

/** @typedef {{a: string, by: string, b: string, at: string, east: string, beside: string, north: string}} Cut */
/**
 * @typedef {{kind: 'sides' | 'walk' | 'text', name: string, after: string, a: string, by: string, b: string, walk: string,
 *   slope: string, toward: string, cuts: Cut[], text: string}} Room
 */

const SIZE = /^(.*?)( *[x×*] *| by )(.*)$/i; // the first x parts the sides; what stands around it is kept
const NAMED = /^([^:]*)(: *)(.*)$/;
const PLAIN_NAME = /^([^\d:;]*[^\d:;\s,=–-])([ ,]+)(\d.*)$/; // no colon: the size begins with the first number
const WALK = /^[NESW] *\d/;
const OVER = /(?:^| )(slope|less|at)(?= |$)/i;

/** @returns {Cut} */
export const noCut = () => ({ a: '', by: ' x ', b: '', at: ' at ', east: '', beside: ' x ', north: '' });
/** @param {Partial<Room>} [what] @returns {Room} */
export const noRoom = (what = {}) => ({ kind: 'sides', name: '', after: ': ', a: '', by: ' x ', b: '', walk: '', slope: '', toward: '', cuts: [], text: '', ...what });

/** Two lengths and what parts them; nothing where both are empty. @param {string} one @param {string} by @param {string} other */
const pair = (one, by, other) => (one || other ? one + by + other : '').trim();

/** @param {Room} room @returns {string} its line, empty where nothing of it is filled in */
export function written(room) {
  if (room.kind === 'text') return room.text;
  const size = room.kind === 'walk' ? room.walk.trim() : pair(room.a, room.by, room.b);
  const slope = room.slope ? ` slope ${room.slope}${room.toward && ' ' + room.toward}` : '';
  const cuts = room.cuts.map((cut) => {
    const place = pair(cut.east, cut.beside, cut.north);
    const hole = pair(cut.a, cut.by, cut.b);
    return hole || place ? ` less ${hole}${place && cut.at + place}` : '';
  });
  const body = size + slope + cuts.join('');
  return (room.name ? room.name + (body ? room.after : ':') + body : body).trim();
}

/** @param {string} line @returns {Room} */
export function read(line) {
  const found = taken(line);
  return found && written(found) === line ? found : noRoom({ kind: 'text', text: line });
}

/** @param {string} text @returns {Room[]} */
export const readAll = (text) => text.split(/[\n;]/).map((line) => line.trim()).filter(Boolean).map(read);

/** @param {string} line @returns {Room | null} */
function taken(line) {
  let [name, after, body] = ['', ': ', line];
  const named = NAMED.exec(line) ?? (isWalk(line) || /^x\b/i.test(line) ? null : PLAIN_NAME.exec(line));
  if (named && !OVER.test(named[1])) [, name, after, body] = named;
  const parts = body.split(OVER); // size, then keyword and value by turns
  const room = noRoom({ name: name.trim(), after });
  const size = parts[0].trim();
  const sides = SIZE.exec(size);
  if (isWalk(size)) Object.assign(room, { kind: 'walk', walk: size });
  else if (sides) [, room.a, room.by, room.b] = spaced(sides);
  else if (/^\d/.test(size) || !size) room.a = size;
  else return null;
  for (let at = 1; at < parts.length; at += 2) {
    const value = parts[at + 1].trim();
    const both = SIZE.exec(value);
    const last = room.cuts.at(-1);
    if (parts[at] === 'slope') [room.slope, room.toward] = [value.replace(/ [NESW]$/, ''), / ([NESW])$/.exec(value)?.[1] ?? ''];
    else if (parts[at] === 'less' && both) room.cuts.push({ ...noCut(), a: spaced(both)[1], by: spaced(both)[2], b: both[3] });
    else if (parts[at] === 'at' && both && last && !last.east && !last.north) [, last.east, last.beside, last.north] = spaced(both);
    else return null;
  }
  return room;
}

/** @param {string} size */
const isWalk = (size) => WALK.test(size) && !/x/i.test(size);

/** A side that is still missing: `20 x` and `x 14` have the usual x between. @param {RegExpExecArray} found @returns {string[]} */
const spaced = ([whole, one, by, other]) => [whole, one, one && other ? by : ' x ', other];
