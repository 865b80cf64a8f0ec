// @ts-check
// The door to the engines: one worker, one call. The small engine answers first; the full one stands behind it, for
// whoever asks for it and wherever the small one fails.

/** @typedef {{text: string, engine: 'small' | 'full', milliseconds: number}} Answered */

const STUCK_AFTER = { small: 20_000, full: 120_000 }; // milliseconds in which an engine that is alive has answered

/** Thrown where a newer question has taken this one's place. */
export class Superseded extends Error {}
/** Thrown where the full engine is wanted, is not on the device yet, and there is no network. */
export class NotOnDevice extends Error {}

/**
 * @param {string} workerUrl
 * @param {Record<string, string | number>} engines paths made absolute
 */
export function createDoor(workerUrl, engines) {
  /** @type {Worker | null} */
  let worker = null;
  let lastId = 0;
  let busy = false;
  /** @type {Map<string, any>} questions that wait, one for each calculator: a newer one takes the older one's place */
  const waiting = new Map();
  /** @type {any} */
  let asked = null;

  function restart() {
    worker?.terminate();
    worker = null;
  }

  /** Hand the oldest waiting question to the worker. */
  function next() {
    if (busy) return;
    const first = waiting.keys().next();
    if (first.done) return;
    const question = waiting.get(first.value);
    waiting.delete(first.value);
    busy = true;
    asked = question;
    if (!worker) {
      worker = new Worker(workerUrl, { type: 'module' });
      worker.onmessage = ({ data }) => data.id === asked?.id && settle(data);
      worker.onerror = () => asked && settle({ id: asked.id, error: 'the engine could not be started' });
    }
    question.timer = setTimeout(() => {
      restart();
      settle({ id: question.id, error: 'the engine did not answer in time' });
    }, STUCK_AFTER[/** @type {'small' | 'full'} */ (question.engine)]);
    const { id, engine, calculator, inputs } = question;
    worker.postMessage({ id, engines, engine, calculator, inputs });
  }

  /** @param {any} data */
  function settle(data) {
    const question = asked;
    if (data.loading) return question.onLoading?.(data.loading);
    clearTimeout(question.timer);
    busy = false;
    asked = null;
    if ('error' in data) question.reject(new Error(data.error));
    else if (question.superseded) question.reject(new Superseded());
    else question.resolve({ text: data.text, engine: question.engine, milliseconds: performance.now() - question.since });
    next();
  }

  /**
   * @param {'small' | 'full'} engine @param {string} calculator @param {string} inputs
   * @param {((engine: string) => void) | undefined} onLoading @returns {Promise<Answered>}
   */
  function ask(engine, calculator, inputs, onLoading) {
    return new Promise((resolve, reject) => {
      waiting.get(calculator)?.reject(new Superseded());
      if (asked?.calculator === calculator) asked.superseded = true;
      const question = { id: ++lastId, engine, calculator, inputs, onLoading, resolve, reject, since: performance.now() };
      waiting.set(calculator, question);
      next();
    });
  }

  return {
    /** Start the small engine without a question. */
    warm: () => ask('small', '', '', undefined).catch(() => undefined),

    /**
     * Answer one question; inputs are the texts as typed.
     * @param {string} calculator @param {Record<string, string>} inputs
     * @param {{engine?: 'small' | 'full', onLoading?: (engine: string) => void}} [options]
     * @returns {Promise<Answered>}
     */
    async answer(calculator, inputs, { engine = 'small', onLoading } = {}) {
      const clean = Object.fromEntries(Object.entries(inputs).map(([name, text]) => [name, wellFormed(text)]));
      const question = JSON.stringify(clean);
      if (engine === 'small') {
        try {
          return await ask('small', calculator, question, onLoading);
        } catch (error) {
          if (error instanceof Superseded) throw error;
        }
      }
      try {
        return await ask('full', calculator, question, onLoading);
      } catch (error) {
        if (!(error instanceof Superseded) && !navigator.onLine) throw new NotOnDevice();
        throw error;
      }
    },
  };
}

/** A lone half of a letter cannot cross into Python. @param {string} text */
function wellFormed(text) {
  const wide = /** @type {any} */ (text);
  return wide.toWellFormed ? wide.toWellFormed() : text.replace(/[\ud800-\udfff]/gu, '\ufffd');
}
