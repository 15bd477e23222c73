// The only place that talks to the engine: over HTTP, or within the page.

import { answer, near } from "./engine.js";

import { filesFor } from "./beside.js";

const running = new Map(); // slot → AbortController of its newest request
const quick = new Set(["lay", "describe"]);
const atOnce = 2; // slow questions at a time: a browser opens few connections, and lay needs one
const line = { busy: 0, waiting: [] };

/** An answer that was not waited for: a newer question took its place. */
class Cancelled extends Error {
  constructor() {
    super("cancelled");
    this.cancelled = true;
  }
}

/**
 * ask puts a question to the engine and returns its answer, read from JSON.
 * A newer question in the same slot gives the older one up.
 */
export async function ask(name, body, options = {}) {
  const reply = await post(name, body, options);
  return reply.json();
}

/** askFile is for answers that are files: {name, blob}. */
export async function askFile(name, body, options = {}) {
  const reply = await post(name, body, options);
  return { name: fileName(reply.headers), blob: await reply.blob() };
}

/** giveUp ends what a slot is waiting for. */
export function giveUp(slot) {
  running.get(slot)?.abort();
  running.delete(slot);
}

/**
 * disk speaks with the job's file; null where there is none to speak with. A
 * 409 that shows what is on disk instead is an answer.
 */
export async function disk(path, body, signal) {
  if (near) return null;
  const sent = body === undefined ? { signal } : { ...posted(body), signal };
  const reply = await fetch(path, sent).catch((err) => {
    throw plain(err);
  });
  if (reply.status === 404) return null;
  const said = await reply.clone().json().catch(() => ({}));
  if (reply.ok || (reply.status === 409 && "stamp" in said)) return { status: reply.status, ...said };
  throw Object.assign(new Error(await words(reply)), { status: reply.status });
}

async function post(name, body, { slot }) {
  const stop = new AbortController();
  if (slot) {
    running.get(slot)?.abort();
    running.set(slot, stop);
  }
  const { signal } = stop;
  const whole = () => ({ ...body, files: filesFor(body) });
  const send = () => (near ? answer(name, whole(), { signal, fast: quick.has(name) || name === "most" }) : fetch("ask/" + name, { ...posted(whole()), signal }));
  try {
    const reply = await (quick.has(name) ? send() : inLine(send, stop.signal));
    if (!reply.ok) throw Object.assign(new Error(await words(reply)), { understood: true });
    return reply;
  } catch (err) {
    throw stop.signal.aborted ? new Cancelled() : plain(err);
  } finally {
    if (running.get(slot) === stop) running.delete(slot);
  }
}

/** inLine sends when fewer than so many slow questions are out. */
async function inLine(send, signal) {
  while (line.busy >= atOnce) await new Promise((go) => line.waiting.push(go));
  line.busy++;
  try {
    signal.throwIfAborted();
    return await send();
  } finally {
    line.busy--;
    line.waiting.pop()?.(); // the newest first: it is what one looks at now
  }
}

/** plain says in words that nothing answered; a browser says only that a fetch failed. */
function plain(err) {
  if (!(err instanceof TypeError)) return err;
  return new Error("roundlay does not answer. Is it still running? What you see here is not lost.");
}

function posted(body) {
  return {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  };
}

async function words(reply) {
  const text = (await reply.text()).trim();
  try {
    return JSON.parse(text).error || text;
  } catch {
    return text || `The engine answered ${reply.status}.`;
  }
}

function fileName(headers) {
  const said = headers.get("Content-Disposition") || "";
  const long = /filename\*=UTF-8''([^;]+)/i.exec(said);
  if (long) return decodeURIComponent(long[1]);
  return /filename="?([^";]+)"?/i.exec(said)?.[1] || "roundlay";
}
