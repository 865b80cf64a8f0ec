// @ts-check
// A calendar file (iCalendar, RFC 5545) of days or hours, made on the device.
// The name stands as RFC 7986 has it and as programs before it read it. Times have no zone: an hour is the hour on the wall where the job is.

/**
 * @typedef {object} Happening
 * @property {string} uid that stays the same when the calendar is made again, so that the entry is replaced
 * @property {string} start `YYYY-MM-DD` for a whole day, or `YYYY-MM-DDTHH:MM`
 * @property {string} [end] of the same kind: of whole days the last one; without it one day, or a moment
 * @property {string} title
 * @property {string} [text]
 * @property {string} [url] http or https
 */

const LONGEST_LINE = 75; // octets, section 3.1
const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const HOUR = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})$/;
const DAY_MS = 86_400_000;

/**
 * The text of a calendar. Raises RangeError for a day or an hour that no calendar has, or an end before its start.
 * @param {Happening[]} events @param {{name: string, stamp?: Date}} of `name` is what the calendar is called; `stamp` is when it was made
 */
export function calendar(events, { name, stamp = new Date() }) {
  const made = stamp.toISOString().replace(/[-:]|\.\d+/g, '');
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Lidbook//Job plan//EN', 'CALSCALE:GREGORIAN', ...['NAME', 'X-WR-CALNAME'].map((one) => `${one}:${escaped(name)}`)];
  for (const { uid, start, end, title, text, url } of events) {
    const from = momentOf(start);
    const to = end === undefined ? null : momentOf(end);
    if (to && to.whole !== from.whole) throw new RangeError(`${start} and ${end} are not of one kind`);
    if (to && to.at < from.at) throw new RangeError(`${end} is before ${start}`);
    lines.push('BEGIN:VEVENT', `UID:${escaped(uid)}`, `DTSTAMP:${made}`, `DTSTART${written(from, 0)}`);
    if (to && (from.whole || to.at > from.at)) lines.push(`DTEND${written(to, from.whole ? DAY_MS : 0)}`); // the end of whole days is the first one after
    lines.push(`SUMMARY:${escaped(title)}`);
    if (text) lines.push(`DESCRIPTION:${escaped(text)}`);
    if (url) lines.push(`URL:${addressOf(url)}`);
    lines.push('END:VEVENT');
  }
  lines.push('END:VCALENDAR');
  return lines.map(folded).join('\r\n') + '\r\n';
}

/** @param {string} text */
function momentOf(text) {
  const whole = DAY.test(text);
  const at = new Date(whole ? `${text}T00:00Z` : HOUR.test(text) ? `${text}Z` : NaN);
  if (Number.isNaN(at.getTime()) || !at.toISOString().startsWith(text)) throw new RangeError(`${text} is no day and no hour`);
  return { whole, at: at.getTime() };
}

/** @param {{whole: boolean, at: number}} moment @param {number} later milliseconds */
function written({ whole, at }, later) {
  const text = new Date(at + later).toISOString().replace(/[-:]/g, '');
  return whole ? `;VALUE=DATE:${text.slice(0, 8)}` : `:${text.slice(0, 15)}`;
}

/** A text as section 3.3.11 wants it; marks that end a line or steer a device have no place in it. @param {string} text */
const escaped = (text) => text.replace(/[\ud800-\udfff]/gu, '\ufffd').replace(/\r\n?/g, '\n').replace(/[\0-\x08\x0b-\x1f\x7f]/g, '')
  .replace(/[\\;,]/g, '\\$&').replace(/\n/g, '\\n');

/** @param {string} text */
function addressOf(text) {
  const found = new URL(text);
  if (!['http:', 'https:'].includes(found.protocol)) throw new RangeError(`${found.protocol} is no address of a page`);
  return found.href;
}

/** A long line goes on after a break and a blank; no letter is broken. @param {string} line */
function folded(line) {
  const parts = [''];
  let size = 0;
  for (const letter of line) {
    const octets = new TextEncoder().encode(letter).length;
    if (size + octets > LONGEST_LINE) {
      parts.push('');
      size = 1; // the blank
    }
    parts[parts.length - 1] += letter;
    size += octets;
  }
  return parts.join('\r\n ');
}
