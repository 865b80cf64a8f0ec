// @ts-check
// Where a page comes alive. Without this script the page is whole: its words, its worked examples, its steps.

import { startForms } from './form.mjs';
import { startOffline } from './offline.mjs';
import { startSteps } from './steps.mjs';

const engines = document.getElementById('engines')?.textContent;
startSteps();
if (engines) startForms(JSON.parse(engines));
if (document.readyState === 'complete') startOffline();
else addEventListener('load', startOffline, { once: true });
