// @ts-check
// The door to the engines: each has a worker and a queue of its own, so that one that hangs holds up no other. The small
// engine answers first; the full one stands behind it, for whoever asks for it and wherever the small one fails.

/** @typedef {'small' | 'full'} Engine */
/** @typedef {{text: string, engine: Engine, milliseconds: number}} Answered */
/** @typedef {{calculator: string, engine: Engine, bytes: number, total: number}} Waited */
/**
 * @typedef {{id: number, calculator: string, inputs: string, since: number, superseded: boolean, tries: number,
 *   timer: ReturnType<typeof setTimeout> | undefined, onLoading?: (engine: string) => void,
 *   resolve: (answered: Answered) => void, reject: (error: Error) => void}} Question
 */

// Milliseconds without a word after which an engine is taken for dead. While bytes come in, it speaks.
const SILENT_AFTER = {
  loading: { small: 60_000, full: 60_000 },
  starting: { small: 60_000, full: 120_000 },
  answering: { small: 20_000, full: 120_000 },
};
const TRIES = 2; // a worker that dies under a question is started anew once for it

/** Thrown where a newer question has taken this one's place. */
export class Superseded extends Error {}
/** Thrown where the reader stopped the wait. */
export class Stopped extends Superseded {}
/** Thrown where an engine is wanted, is not on the device, and the network does not bring it. */
export class NotOnDevice extends Error {}
/** Thrown where an engine failed; `kind` tells at what: network, host, damaged, engine or answer. */
export class Failed extends Error {
  /** @param {string} kind @param {string} message */
  constructor(kind, message) {
    super(message);
    this.kind = kind;
  }
}

/**
 * @param {string} workerUrl @param {Engine} engine
 * @param {Record<string, any>} engines paths made absolute
 * @param {(waited: Waited | null, calculator: string) => void} tell what is waited for, null once it came
 */
function createLane(workerUrl, engine, engines, tell) {
  /** @type {Worker | null} */
  let worker = null;
  /** @type {Question | null} */
  let asked = null;
  /** @type {Map<string, Question>} questions that wait, one for each calculator: a newer one takes the older one's place */
  const waiting = new Map();
  let lastId = 0;

  function end() {
    worker?.terminate();
    worker = null;
  }

  /** @param {Question} question @param {keyof typeof SILENT_AFTER} phase */
  function watch(question, phase) {
    clearTimeout(question.timer);
    question.timer = setTimeout(() => died(phase === 'loading' ? 'network' : 'engine', 'the engine did not answer in time', TRIES), SILENT_AFTER[phase][engine]);
  }

  /** The worker is gone: start another for the same question, or give the question up. @param {string} kind @param {string} message @param {number} [tries] */
  function died(kind, message, tries = 0) {
    const question = asked;
    end();
    if (!question) return;
    question.tries += 1;
    if (Math.max(question.tries, tries) < TRIES && !question.superseded) return send(question);
    done(question);
    question.reject(question.superseded ? new Superseded() : new Failed(kind, message));
  }

  /** @param {Question} question */
  function done(question) {
    clearTimeout(question.timer);
    asked = null;
    tell(null, question.calculator);
    queueMicrotask(next);
  }

  function next() {
    const first = waiting.values().next();
    if (asked || first.done) return;
    waiting.delete(first.value.calculator);
    asked = first.value;
    send(first.value);
  }

  /** @param {Question} question */
  function send(question) {
    if (!worker) {
      const own = (worker = new Worker(workerUrl, { type: 'module' }));
      own.onmessage = ({ data }) => own === worker && heard(data);
      const gone = async (/** @type {Event} */ event) => {
        event.preventDefault();
        await refreshed(workerUrl); // a host's wrong answer may be kept by the browser
        if (own === worker) died('engine', 'the engine could not be started');
      };
      own.onerror = gone;
      own.onmessageerror = gone;
    }
    const { id, calculator, inputs } = question;
    watch(question, 'loading');
    worker.postMessage({ id, engines, engine, calculator, inputs });
  }

  /** @param {{id: number, phase?: keyof typeof SILENT_AFTER, bytes: number, total: number, text: string, error?: string, kind: string}} data */
  function heard(data) {
    const question = asked;
    if (!question || data.id !== question.id) return;
    if (data.phase) {
      watch(question, data.phase);
      if (data.phase === 'loading') question.onLoading?.(engine);
      tell({ calculator: question.calculator, engine, bytes: data.bytes, total: data.total }, question.calculator);
      return;
    }
    done(question);
    if (question.superseded) question.reject(new Superseded());
    else if (data.error !== undefined) question.reject(new Failed(data.kind, data.error));
    else question.resolve({ text: data.text, engine, milliseconds: performance.now() - question.since });
  }

  return {
    /**
     * @param {string} calculator @param {string} inputs @param {(engine: string) => void} [onLoading] @returns {Promise<Answered>}
     */
    ask(calculator, inputs, onLoading) {
      return new Promise((resolve, reject) => {
        waiting.get(calculator)?.reject(new Superseded());
        if (asked?.calculator === calculator) asked.superseded = true;
        waiting.set(calculator, { id: ++lastId, calculator, inputs, onLoading, resolve, reject, since: performance.now(), superseded: false, tries: 0, timer: undefined });
        next();
      });
    },

    /** Drop what is asked of a calculator; an engine that is at it is ended, as nothing else stops it. @param {string} calculator */
    stop(calculator) {
      waiting.get(calculator)?.reject(new Stopped());
      waiting.delete(calculator);
      if (asked?.calculator !== calculator) return;
      const question = asked;
      end();
      done(question);
      question.reject(new Stopped());
    },
  };
}

/**
 * @param {string} workerUrl
 * @param {Record<string, any>} engines paths made absolute
 * @param {(waited: Waited | null, calculator: string) => void} [tell] hears what is waited for
 */
export function createDoor(workerUrl, engines, tell = () => undefined) {
  const lanes = {
    small: createLane(workerUrl, 'small', engines, tell),
    full: createLane(workerUrl, 'full', engines, tell),
  };

  return {
    /** Start the small engine without a question. */
    warm: () => lanes.small.ask('', '').catch(() => undefined),

    /** Stop waiting for a calculator's answer. @param {string} calculator */
    stop(calculator) {
      lanes.small.stop(calculator);
      lanes.full.stop(calculator);
    },

    /**
     * Answer one question; inputs are the texts as typed.
     * @param {string} calculator @param {Record<string, string>} inputs
     * @param {{engine?: Engine, onLoading?: (engine: string) => void}} [options]
     * @returns {Promise<Answered>}
     */
    async answer(calculator, inputs, { engine = 'small', onLoading } = {}) {
      const clean = Object.fromEntries(Object.entries(inputs).map(([name, text]) => [name, wellFormed(text)]));
      const question = JSON.stringify(clean);
      if (engine === 'small') {
        try {
          return await lanes.small.ask(calculator, question, onLoading);
        } catch (error) {
          if (error instanceof Superseded) throw error;
        }
      }
      try {
        return await lanes.full.ask(calculator, question, onLoading);
      } catch (error) {
        const kind = error instanceof Failed ? error.kind : '';
        // A worker that never came tells nothing of why; whether its file is in reach does.
        if (kind === 'network' || (kind === 'engine' && !(await refreshed(workerUrl)))) throw new NotOnDevice(String(error));
        throw error;
      }
    },
  };
}

/** Ask for the worker's own files past the browser's cache; tells whether the network brings them. @param {string} workerUrl */
const refreshed = (workerUrl) =>
  Promise.all(['worker.mjs', 'parts.mjs'].map((name) => fetch(new URL(name, workerUrl), { cache: 'reload' }))).then(() => true, () => false);

/** A lone half of a letter cannot cross into Python. @param {string} text */
function wellFormed(text) {
  const wide = /** @type {any} */ (text);
  return wide.toWellFormed ? wide.toWellFormed() : text.replace(/[\ud800-\udfff]/gu, '\ufffd');
}
