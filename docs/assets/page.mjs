// @ts-check
// Where a page comes alive. Without this script the page is whole: its words, its worked examples, its steps.

import { startForms } from './form.mjs';
import { startOffline } from './offline.mjs';
import { startSteps } from './steps.mjs';

const LONGEST_WAIT = 15_000; // milliseconds after which the book is kept for offline use in any case

startSteps();
if (document.querySelector('.steps')) import('./ladder.mjs').then(({ startLadder }) => startLadder());
if (document.getElementById('find')) import('./search.mjs').then(({ startSearch }) => startSearch());
if (document.getElementById('decision')) import('./guide.mjs').then(({ startGuide }) => startGuide());
// Keeping the whole book would take the line away from the first answer, so it waits for that.
await Promise.race([startForms(), new Promise((resolve) => setTimeout(resolve, LONGEST_WAIT))]);
startOffline();
