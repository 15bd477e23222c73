// Questions whose answers take their time: cures, fit, a set, a picture.

import { ask, giveUp } from "./ask.js";

const pause = 180; // ms without a change before a slow question is put
const out = new Map(); // question → {slot, users, answer} that is being answered

/**
 * follow asks a slow question about each text that comes to rest, and hands
 * its answer to show. At the next change the answer is stale: the question is
 * given up and show gets null. body(state) makes the question, or returns null
 * where there is none to ask; show(answer, state, {waiting, trouble}).
 * Followers with the same question share one answer.
 */
export function follow(store, name, body, show) {
  let timer = 0;
  let asked = null; // the question answered or being answered, as text
  let leave = () => {};

  const put = async (question, text) => {
    const shared = join(name, question, text);
    leave = shared.leave;
    try {
      const answer = await shared.answer;
      if (asked === text) show(answer, store.state, { waiting: false });
    } catch (err) {
      if (asked === text && !err.cancelled) show(null, store.state, { waiting: false, trouble: err.message });
    }
  };

  const look = (state) => {
    const question = state.settled && state.fresh && !state.dragging ? body(state) : null;
    const text = question && JSON.stringify(question);
    if (text === asked) return;
    asked = text;
    clearTimeout(timer);
    leave();
    leave = () => {};
    show(null, state, { waiting: question !== null });
    if (question) timer = setTimeout(() => put(question, text), pause);
  };
  return { end: store.subscribe(look), look: () => look(store.state) };
}

/** join puts a question, or waits with those who have put it already. */
function join(name, question, text) {
  const key = name + " " + text;
  if (!out.has(key)) {
    const answer = ask(name, question, { slot: key });
    out.set(key, { users: 0, answer });
    answer.catch(() => out.get(key)?.answer === answer && out.delete(key));
  }
  const shared = out.get(key);
  shared.users++;
  const leave = () => {
    if (--shared.users > 0) return;
    giveUp(key);
    out.delete(key);
  };
  return { answer: shared.answer, leave };
}
