// @ts-check
// A job goes out of the page as a file. Nothing is sent: the browser writes it where the reader's files are.

import { download } from './download.mjs';
import { firmName, ofFirm } from './filename.mjs';
import { fileName, write } from './jobfile.mjs';

/** @param {import('./jobfile.mjs').Job} job @returns {string} the name of the file */
export function save(job) {
  const name = ofFirm(fileName(job), firmName());
  download(name, 'application/json', write(job));
  return name;
}
