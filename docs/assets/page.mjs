// @ts-check
// Where a page comes alive. Without this script the page is whole: its words, its worked examples, its steps.

import { startAsbestos } from './asbestos.mjs';
import { startBeside } from './beside.mjs';
import { startFolds } from './folds.mjs';
import { startForms } from './form.mjs';
import { startLive } from './live.mjs';
import './newest.mjs'; // hears the first answer, whoever asks for it later
import { startNotYet } from './notyet.mjs';
import { startOffline } from './offline.mjs';
import { startRooms } from './rooms.mjs';
import { startSend } from './send.mjs';
import { startSteps } from './steps.mjs';
import { startWhose } from './whose.mjs';

const LONGEST_WAIT = 15_000; // milliseconds after which the book is kept for offline use in any case

startFolds();
startBeside();
startSteps();
startSend();
startLive();
startAsbestos();
startNotYet();
startWhose();
startRooms();
if (document.querySelector('#content:not([data-kind="paper"]) .steps')) import('./ladder.mjs').then(({ startLadder }) => startLadder());
if (document.getElementById('find')) import('./search.mjs').then(({ startSearch }) => startSearch());
if (document.getElementById('jobs')) import('./myjob.mjs').then(({ startMyJob }) => startMyJob());
if (document.querySelector('#samples, #lead, #decision, [data-review-by]')) import('./review.mjs').then(({ startReview }) => startReview());
if (document.getElementById('plan')) import('./days.mjs').then(({ startDays }) => startDays());
if (document.querySelector('.paper')) import('./papers.mjs').then(({ startPapers }) => startPapers());
if (document.getElementById('shopping')) import('./shopping.mjs').then(({ startShopping }) => startShopping());
if (document.getElementById('decision')) import('./guide.mjs').then(({ startGuide }) => startGuide());
// Keeping the whole book would take the line away from the first answer, so it waits for that.
await Promise.race([startForms(), new Promise((resolve) => setTimeout(resolve, LONGEST_WAIT))]);
startOffline();
