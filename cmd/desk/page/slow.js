// Questions whose answers take their time: cures, fit, a set, a picture.

import { ask, giveUp } from "./ask.js";

const pause = 180; // ms without a change before a slow question is put

/**
 * follow asks a slow question about each text that comes to rest, and hands
 * its answer to show. At the next change the answer is stale: the question is
 * given up and show gets null. body(state) makes the question, or returns null
 * where there is none to ask; show(answer, state, {waiting, trouble}).
 */
export function follow(store, name, body, show) {
  const slot = name + " " + follow.count++;
  let timer = 0;
  let asked = null; // the question answered or being answered, as text

  const put = async (question, text) => {
    try {
      const answer = await ask(name, question, { slot });
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
    giveUp(slot);
    show(null, state, { waiting: question !== null });
    if (question) timer = setTimeout(() => put(question, text), pause);
  };
  return { end: store.subscribe(look), look: () => look(store.state) };
}
follow.count = 0;
