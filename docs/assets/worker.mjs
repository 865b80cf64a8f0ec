// @ts-check
// Both engines behind one call. A message in: {id, engines, engine, calculator, inputs}; out: {id, text} or {id, error,
// kind}, and before it {id, phase, bytes, total} while an engine loads, starts and answers. Messages carry names and
// plain text; no Python ever travels in them.

import { fetchFrom, only, Part, whole } from './parts.mjs';

/** @typedef {Record<'small_module' | 'small_wasm' | 'small_calc' | 'full_folder' | 'full_calc', string> & {full_size: number}} Engines */
/** @typedef {(calculator: string, inputs: string) => string} Answer */
/** @typedef {(phase: string, bytes?: number, total?: number) => void} Tell */

const HEAP_BYTES = 8 * 1024 * 1024;
const FULL_PARTS = ['pyodide-lock.json', 'pyodide.asm.mjs', 'pyodide.asm.wasm', 'pyodide.mjs', 'python_stdlib.zip'];

only(new URL('..', import.meta.url).href);

/** @type {Record<string, Promise<Answer> | undefined>} */
const started = {};
let afterAnswer = () => {};

/** @param {Engines} engines @param {Tell} tell @returns {Promise<Answer>} */
async function startSmall(engines, tell) {
  /** @type {(bytes: number) => void} */
  const came = (bytes) => tell('loading', bytes, 0);
  const folder = engines.small_module.replace(/[^/]+$/, '');
  const [, [bundle]] = await Promise.all([
    whole('the small engine', folder, ['micropython.mjs', 'micropython.wasm'], folder, came),
    whole('the calculators', '', [engines.small_calc], engines.small_calc, came),
  ]);
  tell('starting');
  const { loadMicroPython } = await import(engines.small_module);
  const engine = await loadMicroPython({ url: engines.small_wasm, heapsize: HEAP_BYTES, linebuffer: true });
  engine.FS.mkdir('/calculators');
  for (const [path, bytes] of unpacked(bundle)) {
    const folders = path.split('/').slice(0, -1);
    folders.forEach((_, depth) => {
      const folder = '/calculators/' + folders.slice(0, depth + 1).join('/');
      if (!engine.FS.analyzePath(folder).exists) engine.FS.mkdir(folder);
    });
    engine.FS.writeFile('/calculators/' + path, bytes);
  }
  // One place to look in: each miss on the way costs a slow phone more than the file itself.
  engine.runPython('import gc, sys\nsys.path[:] = ["/calculators"]\nfrom calc.browser import answer');
  const collect = engine.globals.get('gc').collect;
  afterAnswer = () => setTimeout(collect); // garbage is cleared between questions, not in the middle of one
  return engine.globals.get('answer');
}

/**
 * One line of JSON, [[path, size], …], and then the files one after the other.
 * @param {Uint8Array} bundle @returns {[string, Uint8Array][]}
 */
function unpacked(bundle) {
  const end = bundle.indexOf(10);
  let at = end + 1;
  /** @type {[string, number][]} */
  const head = JSON.parse(new TextDecoder().decode(bundle.subarray(0, end)));
  return head.map(([path, size]) => [path, bundle.subarray(at, (at += size))]);
}

/** @param {Engines} engines @param {Tell} tell @returns {Promise<Answer>} */
async function startFull(engines, tell) {
  let bytes = 0;
  /** @type {(more: number) => void} */
  const came = (more) => tell('loading', (bytes += more), engines.full_size);
  const [, [wheel]] = await Promise.all([
    whole('the full engine', engines.full_folder, FULL_PARTS, engines.full_folder, came),
    whole('the calculators of the full engine', '', [engines.full_calc], engines.full_calc, came),
  ]);
  tell('starting');
  const { loadPyodide } = await import(engines.full_folder + 'pyodide.mjs');
  const engine = await loadPyodide({ indexURL: engines.full_folder });
  engine.FS.writeFile('/calculators.whl', wheel);
  engine.runPython('import sys\nsys.path.append("/calculators.whl")\nfrom calc.browser import answer');
  return engine.globals.get('answer');
}

/** An engine that trapped or overran its stack is in no known state; one that raised goes on. @param {unknown} error */
const broken = (error) => error instanceof WebAssembly.RuntimeError || error instanceof RangeError;

self.onmessage = async ({ data }) => {
  const { id, engines, engine, calculator, inputs } = data;
  /** @type {Tell} */
  const tell = (phase, bytes = 0, total = 0) => self.postMessage({ id, phase, bytes, total });
  /** @param {string} kind @param {unknown} error */
  const fail = (kind, error) => self.postMessage({ id, kind, error: String((error instanceof Error && error.message) || error).slice(0, 500) });
  /** @type {Answer} */
  let answer;
  try {
    if (!started[engine]) {
      tell('loading');
      started[engine] = engine === 'full' ? startFull(engines, tell) : startSmall(engines, tell);
    }
    answer = await /** @type {Promise<Answer>} */ (started[engine]);
    fetchFrom.clear();
  } catch (error) {
    started[engine] = undefined; // so that the next question tries again, after a lost signal for one
    return fail(error instanceof Part ? error.kind : 'engine', error);
  }
  try {
    tell('answering');
    self.postMessage({ id, text: calculator ? answer(calculator, inputs) : '' });
    if (engine === 'small' && calculator) afterAnswer();
  } catch (error) {
    if (broken(error)) started[engine] = undefined;
    fail('answer', error);
  }
};
