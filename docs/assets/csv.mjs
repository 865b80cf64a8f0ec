// @ts-check
// Rows as a file for a table (CSV, RFC 4180).

const FORMULA = /^\s*[=+\-@\t\r＝＋－＠]/; // what a program for tables would work out instead of showing it

/** A text that is shown as it is: a mark before it keeps a program from taking it for a formula. @param {string} text */
const shown = (text) => (FORMULA.test(text) ? `'${text}` : text);

/** In quotes where it holds a comma, a quote or an end of a line. @param {string} text */
const quoted = (text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** @param {string[][]} rows */
export const csv = (rows) => rows.map((row) => row.map((one) => quoted(shown(one))).join(',') + '\r\n').join('');
