// The engine within the page, where no server answers: it runs in workers, one
// for what is asked at every key, others for slow questions.

/** The engine's file: the document names it where the page is a folder of files. */
const wanted = document.documentElement.dataset.engine;

/** near is whether the engine is in the page, and there is no disk to speak with. */
export const near = Boolean(wanted);

const most = 2; // workers for slow questions
let compiled = null;
let quick = null;
const slow = [];

/**
 * answer asks the engine in the page; what it returns reads as a server's
 * answer. What later answers build on has to be asked of the quick one.
 */
export async function answer(name, body, { signal, fast }) {
  const worker = fast ? (quick ??= new Engine()) : free();
  worker.asked++;
  try {
    const { status, type, file, data } = await worker.ask(name, body, signal);
    const headers = { "Content-Type": type };
    if (file) headers["Content-Disposition"] = "attachment; filename*=UTF-8''" + encodeURIComponent(file);
    return new Response(data, { status, headers });
  } finally {
    worker.asked--;
  }
}

/** free is a worker that does nothing now, or the one that has the least to do. */
function free() {
  if (slow.every((w) => w.asked > 0) && slow.length < most) slow.push(new Engine());
  return slow.reduce((a, b) => (b.asked < a.asked ? b : a));
}

/** Engine is one worker with an engine of its own. */
class Engine {
  asked = 0;
  #number = 0;
  #waiting = new Map(); // a question's number → what takes its answer
  #worker = new Worker("worker.js");
  #up;

  constructor() {
    this.#worker.onmessage = ({ data }) => this.#waiting.get(data.number)?.done(data);
    this.#worker.onerror = (event) => {
      for (const { failed } of this.#waiting.values()) failed(new Error("The engine in this page has stopped: " + event.message));
    };
    compiled ??= fetch(wanted).then((reply) => {
      if (!reply.ok) throw new Error(`The engine (${wanted}) is not beside the page.`);
      return reply.arrayBuffer();
    }).then((bytes) => WebAssembly.compile(bytes));
    this.#up = compiled.then((module) => this.#worker.postMessage({ module }));
  }

  async ask(name, body, signal) {
    await this.#up;
    signal?.throwIfAborted();
    const number = ++this.#number;
    try {
      return await new Promise((done, failed) => {
        this.#waiting.set(number, { done, failed });
        signal?.addEventListener("abort", () => this.#giveUp(failed, signal.reason));
        this.#worker.postMessage({ number, name, body: JSON.stringify(body) });
      });
    } finally {
      this.#waiting.delete(number);
    }
  }

  /** A worker that computes hears nothing. A slow one is ended, and another begun when it is needed. */
  #giveUp(failed, reason) {
    failed(reason);
    if (this === quick || this.asked > 1) return;
    this.#worker.terminate();
    const at = slow.indexOf(this);
    if (at >= 0) slow.splice(at, 1);
  }
}
