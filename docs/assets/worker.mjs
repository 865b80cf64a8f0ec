// @ts-check
// Both engines behind one call. A message in: {id, engines, engine, calculator, inputs}; out: {id, text} or {id, error,
// kind}, and before it {id, phase, bytes, total} while an engine loads, starts and answers. Messages carry names and
// plain text; no Python ever travels in them.

import { fetchFrom, only, Part, whole } from './parts.mjs';

/**
 * @typedef {Record<'small_module' | 'small_wasm' | 'full_folder' | 'full_calc', string> & {full_size: number,
 *   small_parts: string[], small_needs: Record<string, number[]>, shown?: number[]}} Engines
 */
/** @typedef {(calculator: string, inputs: string) => string} Answer */
/** @typedef {{answer: Answer, bring?: (calculator: string, tell: Tell) => Promise<void>}} Started */
/** @typedef {(phase: string, bytes?: number, total?: number) => void} Tell */

const HEAP_BYTES = 8 * 1024 * 1024;
const FULL_PARTS = ['pyodide-lock.json', 'pyodide.asm.mjs', 'pyodide.asm.wasm', 'pyodide.mjs', 'python_stdlib.zip'];
const ROOT = new URL('..', import.meta.url).href;

only(ROOT);

/** @type {Record<string, Promise<Started> | undefined>} */
const started = {};
let afterAnswer = () => {};

/**
 * Start the small engine with the calculators that the page shows; `bring` adds the parts that another one needs.
 * @param {Engines} engines @param {string} calculator @param {Tell} tell @returns {Promise<Started>}
 */
async function startSmall(engines, calculator, tell) {
  /** @type {(bytes: number) => void} */
  const came = (bytes) => tell('loading', bytes, 0);
  const folder = engines.small_module.replace(/[^/]+$/, '');
  /** @type {Set<number>} */
  const held = new Set();
  /** @param {string} asked */
  const missing = (asked) => [...new Set([0, ...(engines.shown ?? []), ...(engines.small_needs[asked] ?? [])])].filter((at) => !held.has(at));
  const first = missing(calculator);
  const [, bundles] = await Promise.all([
    whole('the small engine', folder, ['micropython.mjs', 'micropython.wasm'], folder, came),
    fetchParts(engines, first, came),
  ]);
  tell('starting');
  const { loadMicroPython } = await import(engines.small_module);
  const engine = await loadMicroPython({ url: engines.small_wasm, heapsize: HEAP_BYTES, linebuffer: true });
  engine.FS.mkdir('/calculators');
  /** @param {number[]} which @param {Uint8Array[]} bytes */
  const put = (which, bytes) => {
    bytes.forEach((bundle) => write(engine.FS, bundle));
    which.forEach((at) => held.add(at));
  };
  put(first, bundles);
  // One place to look in: each miss on the way costs a slow phone more than the file itself.
  engine.runPython('import gc, sys\nsys.path[:] = ["/calculators"]\nfrom calc.browser import answer');
  const collect = engine.globals.get('gc').collect;
  afterAnswer = () => setTimeout(collect); // garbage is cleared between questions, not in the middle of one
  return {
    answer: engine.globals.get('answer'),
    async bring(asked, tell) {
      const which = missing(asked);
      if (which.length) put(which, await fetchParts(engines, which, (bytes) => tell('loading', bytes, 0)));
    },
  };
}

/** @param {Engines} engines @param {number[]} which @param {(bytes: number) => void} came */
const fetchParts = (engines, which, came) =>
  Promise.all(which.map(async (at) => {
    const url = new URL(engines.small_parts[at], ROOT).href;
    return (await whole('the calculators', '', [url], url, came))[0];
  }));

/** @param {any} files the engine's own @param {Uint8Array} bundle */
function write(files, bundle) {
  for (const [path, bytes] of unpacked(bundle)) {
    const folders = path.split('/').slice(0, -1);
    folders.forEach((_, depth) => {
      const folder = '/calculators/' + folders.slice(0, depth + 1).join('/');
      if (!files.analyzePath(folder).exists) files.mkdir(folder);
    });
    files.writeFile('/calculators/' + path, bytes);
  }
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

/** @param {Engines} engines @param {Tell} tell @returns {Promise<Started>} */
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
  return { answer: engine.globals.get('answer') };
}

/** An engine that trapped or overran its stack is in no known state; one that raised goes on. @param {unknown} error */
const broken = (error) => error instanceof WebAssembly.RuntimeError || error instanceof RangeError;

self.onmessage = async ({ data }) => {
  const { id, engines, engine, calculator, inputs } = data;
  /** @type {Tell} */
  const tell = (phase, bytes = 0, total = 0) => self.postMessage({ id, phase, bytes, total });
  /** @param {string} kind @param {unknown} error */
  const fail = (kind, error) => self.postMessage({ id, kind, error: String((error instanceof Error && error.message) || error).slice(0, 500) });
  /** @type {Started} */
  let one;
  try {
    if (!started[engine]) {
      tell('loading');
      started[engine] = engine === 'full' ? startFull(engines, tell) : startSmall(engines, calculator, tell);
    }
    one = await /** @type {Promise<Started>} */ (started[engine]);
  } catch (error) {
    started[engine] = undefined; // so that the next question tries again, after a lost signal for one
    return fail(error instanceof Part ? error.kind : 'engine', error);
  }
  try {
    await one.bring?.(calculator, tell);
    fetchFrom.clear();
  } catch (error) {
    return fail(error instanceof Part ? error.kind : 'engine', error); // the engine itself goes on
  }
  try {
    tell('answering');
    self.postMessage({ id, text: calculator ? one.answer(calculator, inputs) : '' });
    if (engine === 'small' && calculator) afterAnswer();
  } catch (error) {
    if (broken(error)) started[engine] = undefined;
    fail('answer', error);
  }
};
