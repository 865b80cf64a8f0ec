// @ts-check
// Both engines behind one call. A message in: {id, engine, calculator, inputs}; out: {id, text} or {id, error}, and
// {id, loading} while an engine starts. Messages carry names and plain text; no Python ever travels in them.

/** @typedef {{small_module: string, small_wasm: string, small_calc: string, full_folder: string, full_calc: string}} Engines */
/** @typedef {(calculator: string, inputs: string) => string} Answer */

const HEAP_BYTES = 8 * 1024 * 1024;

/** @type {Record<string, Promise<Answer> | undefined>} */
const started = {};
let afterAnswer = () => {};

/** @param {string} url @returns {Promise<Response>} */
async function get(url) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${response.status} for ${url}`);
  return response;
}

/** @param {Engines} engines @returns {Promise<Answer>} */
async function startSmall(engines) {
  const [{ loadMicroPython }, bundle] = await Promise.all([
    import(engines.small_module),
    get(engines.small_calc).then((response) => response.arrayBuffer()),
  ]);
  const engine = await loadMicroPython({ url: engines.small_wasm, heapsize: HEAP_BYTES, linebuffer: true });
  engine.FS.mkdir('/calculators');
  for (const [path, bytes] of unpacked(new Uint8Array(bundle))) {
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
  const head = JSON.parse(new TextDecoder().decode(bundle.subarray(0, end)));
  return head.map(([path, size]) => [path, bundle.subarray(at, (at += size))]);
}

/** @param {Engines} engines @returns {Promise<Answer>} */
async function startFull(engines) {
  const [{ loadPyodide }, wheel] = await Promise.all([
    import(engines.full_folder + 'pyodide.mjs'),
    get(engines.full_calc).then((response) => response.arrayBuffer()),
  ]);
  const engine = await loadPyodide({ indexURL: engines.full_folder });
  engine.FS.writeFile('/calculators.whl', new Uint8Array(wheel));
  engine.runPython('import sys\nsys.path.append("/calculators.whl")\nfrom calc.browser import answer');
  return engine.globals.get('answer');
}

self.onmessage = async ({ data }) => {
  const { id, engines, engine, calculator, inputs } = data;
  try {
    if (!started[engine]) {
      self.postMessage({ id, loading: engine });
      started[engine] = engine === 'full' ? startFull(engines) : startSmall(engines);
    }
    const answer = await started[engine];
    self.postMessage({ id, text: calculator ? answer(calculator, inputs) : '' });
    if (engine === 'small' && calculator) afterAnswer();
  } catch (error) {
    started[engine] = undefined; // so that the next question tries again, after a lost signal for one
    self.postMessage({ id, error: String((error && /** @type {Error} */ (error).message) || error).slice(0, 500) });
  }
};
