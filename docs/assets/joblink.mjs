// @ts-check
// A job's figures in a link that fits a text message: `#j=` and letters, digits, - and _ alone, which no mail program cuts
// or breaks. DEVELOPERS.md, "A job's short link", tells the form; what an edition once wrote is read by all later ones.
//
//   link = `#j=` version, coded figures, four digits of check, `Z`
//
// The figures are coded arithmetically, bit by bit: a model guesses each bit from what stands before it, and a bit that was
// guessed well costs next to nothing. Before the first bit the model is shown the sample jobs of the table. All of it is
// whole numbers, so that every browser guesses the same.

import { FIELDS, SAMPLES } from './link-table.mjs';
import { isShort, LONGEST_LINK, SHORT, wellFormed } from './state.mjs';

const VERSION = '1';
const END = 'Z'; // a letter, as a mail program may take a mark at the end for the sentence's
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const DIGIT_BITS = 6;
const CHECK_DIGITS = 4;
const CHECK_POLYNOMIAL = 0x864cfb; // CRC-24 of RFC 9580, section 6.1: finds every change within 24 bits, and all but one cut in 16 million
const CHECK_START = 0xb704ce;
const MOST_BYTES = 200_000; // of a job's texts

const CUT = 'This link came cut short or changed on its way, so nothing of it was taken. Ask for it again.';
const NEWER = 'This link was made by a newer edition of this book, so nothing of it was taken. Load this page again with a signal.';
const TOO_LONG = 'This link holds more than a link may hold, so nothing of it was taken.';

/** The link of a job; raises RangeError where no link holds it. @param {Iterable<[string, string]>} values texts by the names of their fields */
export function shortLink(values) {
  const rows = [...values].map(([name, text]) => ({ number: FIELDS.indexOf(name) + 1 || NAMED, name: wellFormed(name), text: wellFormed(text) }));
  rows.sort((a, b) => a.number - b.number || (a.name < b.name ? -1 : 1));
  const coder = writer();
  walk(trained(), coder.bit, rows);
  const body = VERSION + coder.done();
  const link = SHORT + body + check(body) + END;
  if (link.length > LONGEST_LINK) throw new RangeError('too long');
  return link;
}

/**
 * Read a job's link. A link with a fault gives nothing; a figure that only a newer edition knows is counted as dropped.
 * @param {string} hash @returns {{values: Map<string, string>, dropped: number, fault: string}}
 */
export function readShortLink(hash) {
  const nothing = (/** @type {string} */ fault) => ({ values: new Map(), dropped: 0, fault });
  if (hash.length > LONGEST_LINK) return nothing(TOO_LONG);
  const told = hash.slice(SHORT.length);
  if (!isShort(hash) || !told.endsWith(END) || told.length < VERSION.length + CHECK_DIGITS + END.length) return nothing(CUT);
  const body = told.slice(0, -CHECK_DIGITS - END.length);
  if (check(body) !== told.slice(body.length, -END.length)) return nothing(CUT);
  if (!body.startsWith(VERSION)) return nothing(NEWER);
  const values = new Map();
  let dropped = 0;
  try {
    for (const { number, name, text } of walk(trained(), reader(body.slice(VERSION.length)))) {
      const known = number === NAMED ? name : FIELDS[number - 1];
      if (known === undefined) dropped += 1;
      else values.set(known, text);
    }
  } catch (error) {
    if (error instanceof RangeError || error instanceof TypeError) return nothing(CUT); // the check agreed by chance
    throw error;
  }
  return { values, dropped, fault: '' };
}

/** The check of what stands before it. @param {string} body */
function check(body) {
  let rest = CHECK_START;
  for (let at = 0; at < body.length; at += 1) {
    rest ^= (body.charCodeAt(at) & 0xff) << 16;
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 0x800000 ? ((rest << 1) ^ CHECK_POLYNOMIAL) & 0xffffff : rest << 1;
  }
  return [18, 12, 6, 0].map((by) => DIGITS[(rest >> by) & 63]).join('');
}

// The walk over a job: figure by figure, the field's number and its text in UTF-8, byte by byte; a zero ends a text, and
// the number zero the job. Writing and reading take the same walk, so that the model learns the same from both.

const NAMED = 1e6; // a field without a number, by its name: the last ones of a job
const NAMED_BYTE = 255;
const FURTHER_BYTE = 254; // stands for 254 more
const ZERO = [0xc0, 0x80]; // what UTF-8 never holds: a zero inside a text

/** @typedef {{number: number, name: string, text: string}} Row */

/**
 * @param {ReturnType<typeof createModel>} model @param {(odds: number, bit?: number) => number} bit
 * @param {Row[]} [rows] to write; none where they are read
 */
function walk(model, bit, rows) {
  /** @type {Row[]} */
  const found = [];
  let left = MOST_BYTES;
  const count = () => {
    if ((left -= 1) < 0) throw new RangeError('too long');
  };
  const numbers = model.stream(0);
  for (let at = 0; ; at += 1) {
    const row = rows?.[at];
    let number = 0;
    let byte;
    let rest = rows ? row?.number ?? 0 : undefined;
    do {
      count();
      byte = numbers.byte(bit, rest === undefined ? undefined : rest === NAMED ? NAMED_BYTE : Math.min(rest, FURTHER_BYTE));
      number = byte === NAMED_BYTE ? NAMED : number + byte;
      if (rest !== undefined) rest -= byte;
    } while (byte === FURTHER_BYTE);
    if (!number) return found;
    const name = number === NAMED ? text(NAMED, row?.name) : '';
    found.push({ number, name, text: text(Math.min(number, NAMED_BYTE), row?.text) });
  }

  /** @param {number} field @param {string} [given] */
  function text(field, given) {
    const stream = model.stream(field);
    if (given !== undefined) {
      for (const byte of new TextEncoder().encode(given)) for (const one of byte ? [byte] : ZERO) {
        count();
        stream.byte(bit, one);
      }
      stream.byte(bit, 0);
      return given;
    }
    const bytes = [];
    for (let byte = stream.byte(bit); byte; byte = stream.byte(bit)) {
      if (byte === ZERO[1] && bytes.at(-1) === ZERO[0]) bytes[bytes.length - 1] = 0;
      else bytes.push(byte);
      count();
    }
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(Uint8Array.from(bytes));
  }
}

// The model: what came after the same before, looked up in eight ways, and how far each way was right until now.

const WAYS = 8;
const PLACE_BITS = 17;
const PLACES = 2 ** PLACE_BITS;
const HALF = 2 ** 15; // of odds out of 65,536
const SLOWEST = 30; // times after which a guess moves no slower
const WEIGHT_ONE = 2 ** 16;
const FIRST_WEIGHT = 24_000;
const LEARN = 2 ** 10;
// 4096 / (1 + e^(-x/2)) at x = -16 … 16: from a sum of votes to odds out of 4096; steps of 128.
const CURVE = [1, 2, 4, 6, 10, 17, 27, 45, 74, 121, 194, 311, 488, 747, 1102, 1546, 2048, 2550, 2994, 3349, 3608, 3785, 3902, 3975, 4022, 4051, 4069, 4079, 4086, 4090, 4092, 4094, 4095];

/** @param {number} votes @returns {number} odds out of 4096 */
function oddsOf(votes) {
  const held = Math.max(-2047, Math.min(2047, votes)) + 2048;
  const step = held >> 7;
  const over = held & 127;
  return (CURVE[step] * (128 - over) + CURVE[step + 1] * over + 64) >> 7;
}

/** The votes that stand for odds: the same read backwards. */
const VOTES = (() => {
  const found = new Int16Array(4096);
  let at = 0;
  for (let votes = -2047; votes <= 2047; votes += 1) for (const odds = oddsOf(votes); at <= odds; at += 1) found[at] = votes;
  return found.fill(2047, at);
})();

/** @param {number} a @param {number} b */
const mixed = (a, b) => (Math.imul(a ^ (a >>> 15), 0x2c1b3c6d) + Math.imul(b + 1, 0x297a2d39)) | 0;

/** What a model has learned: odds and how often they moved, place by place; weights, a set for each number of ways that know something. */
const blank = () => ({ odds: new Uint16Array(WAYS * PLACES).fill(HALF), times: new Uint8Array(WAYS * PLACES), weights: new Int32Array(WAYS * (WAYS + 1)).fill(FIRST_WEIGHT) });

/** @param {ReturnType<typeof blank>} learned that goes on learning */
function createModel({ odds, times, weights }) {
  const places = new Int32Array(WAYS);
  const votes = new Int32Array(WAYS);

  /** Guess one bit, have it coded, and learn from it. @param {(odds: number, bit?: number) => number} code @param {Int32Array} seen @param {number} node @param {number} [given] */
  function one(code, seen, node, given) {
    let knowing = 0;
    for (let way = 0; way < WAYS; way += 1) {
      const place = way * PLACES + (mixed(seen[way], node) >>> (32 - PLACE_BITS));
      places[way] = place;
      if (times[place]) knowing += 1;
      votes[way] = VOTES[odds[place] >> 4];
    }
    const set = knowing * WAYS;
    let sum = 0;
    for (let way = 0; way < WAYS; way += 1) sum += votes[way] * weights[set + way];
    const guess = Math.max(1, Math.min(4095, oddsOf(Math.floor(sum / WEIGHT_ONE))));
    const bit = code(guess, given);
    const missed = (bit ? 4096 : 0) - guess;
    for (let way = 0; way < WAYS; way += 1) {
      const place = places[way];
      weights[set + way] += Math.floor((votes[way] * missed) / LEARN);
      const count = times[place];
      odds[place] += Math.floor((((bit ? 65535 : 0) - odds[place]) * 2) / (2 * count + 3));
      if (count < SLOWEST) times[place] = count + 1;
    }
    return bit;
  }

  return {
    /** What stands in one field, from its beginning. @param {number} field */
    stream(field) {
      const seen = new Int32Array(WAYS);
      let [last, before, third, fourth] = [0, 0, 0, 0];
      let [whole, word, shape, length] = [0, 0, 0, 0];
      const look = () => {
        seen[0] = mixed(field, Math.min(length, 3));
        seen[1] = mixed(mixed(1, field), last);
        seen[2] = mixed(mixed(2, last), before);
        seen[3] = mixed(mixed(mixed(3, last), before), third);
        seen[4] = mixed(mixed(mixed(mixed(4, last), before), third), fourth);
        seen[5] = mixed(mixed(5, field), whole);
        seen[6] = mixed(mixed(6, word), 0);
        seen[7] = mixed(mixed(7, shape), 0);
      };
      return {
        /** @param {(odds: number, bit?: number) => number} code @param {number} [given] */
        byte(code, given) {
          look();
          let node = 1;
          for (let at = 7; at >= 0; at -= 1) node = node * 2 + one(code, seen, node, given === undefined ? undefined : (given >> at) & 1);
          const byte = node - 256;
          [last, before, third, fourth] = [byte, last, before, third];
          const letter = (byte | 32) >= 97 && (byte | 32) <= 122;
          const digit = byte >= 48 && byte <= 57;
          whole = mixed(whole, byte);
          word = letter ? mixed(word, byte | 32) : field ? byte : mixed(word, byte);
          shape = byte === 59 || byte === 10 ? 0 : mixed(shape, letter ? 97 : digit ? 48 : byte);
          length += 1;
          return byte;
        },
      };
    },
  };
}

/** @type {ReturnType<typeof blank> | undefined} */
let schooled;

/** A model that has seen the samples and nothing else. */
function trained() {
  schooled ??= school();
  return createModel({ odds: schooled.odds.slice(), times: schooled.times.slice(), weights: schooled.weights.slice() });
}

function school() {
  const learned = blank();
  const model = createModel(learned);
  for (const sample of SAMPLES) {
    const rows = Object.entries(sample).map(([name, text]) => ({ number: FIELDS.indexOf(name) + 1, name, text }));
    walk(model, (_, bit) => bit ?? 0, rows.sort((a, b) => a.number - b.number));
  }
  return learned;
}

// The coder: the span from `low` to `high` is parted by the odds, bit after bit; the digits that both have in common are sure.

const SPAN_DIGITS = 5;
const TOP = 2 ** (DIGIT_BITS * (SPAN_DIGITS - 1)); // what the first digit counts
const SPAN = TOP * 64;
/** The last place of the part that a 1 takes. @param {number} low @param {number} high @param {number} odds out of 4096 */
const parting = (low, high, odds) => low + Math.floor(((high - low) * odds) / 4096);
const further = (/** @type {number} */ value) => (value % TOP) * 64;

function writer() {
  let [low, high] = [0, SPAN - 1];
  const digits = /** @type {string[]} */ ([]);
  return {
    /** @param {number} odds @param {number} [bit] */
    bit(odds, bit) {
      const middle = parting(low, high, odds);
      if (bit) high = middle;
      else low = middle + 1;
      for (; Math.floor(low / TOP) === Math.floor(high / TOP); low = further(low), high = further(high) + 63) digits.push(DIGITS[Math.floor(low / TOP)]);
      return bit ?? 0;
    },
    /** The fewest digits that lead into the span; what would follow is read as zeros. */
    done() {
      if (low) {
        let unit = TOP;
        while (Math.ceil(low / unit) * unit > high) unit /= 64;
        for (let value = Math.ceil(low / unit) * unit; value; value = further(value)) digits.push(DIGITS[Math.floor(value / TOP)]);
      }
      while (digits.at(-1) === DIGITS[0]) digits.pop();
      return digits.join('');
    },
  };
}

/** @param {string} digits */
function reader(digits) {
  let [low, high, value, at] = [0, SPAN - 1, 0, 0];
  const next = () => Math.max(0, DIGITS.indexOf(digits[at++] ?? DIGITS[0]));
  for (let count = 0; count < SPAN_DIGITS; count += 1) value = value * 64 + next();
  /** @param {number} odds */
  return (odds) => {
    const middle = parting(low, high, odds);
    const bit = value <= middle ? 1 : 0;
    if (bit) high = middle;
    else low = middle + 1;
    for (; Math.floor(low / TOP) === Math.floor(high / TOP); low = further(low), high = further(high) + 63) value = further(value) + next();
    return bit;
  };
}
