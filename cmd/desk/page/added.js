// A motif that is added is chosen.

import { tables } from "./choices.js";

/** addAndChoose makes edits that add a motif, which is the last then, and chooses it. */
export async function addAndChoose(store, edits) {
  const before = motifsIn(store.state);
  store.change(edits);
  const state = await store.settled().catch(() => store.state);
  if (!state.mistake && motifsIn(state) > before) store.choose(motifsIn(state));
}

/** motifsIn is how many motifs the job has, which is also the number of its last. */
export const motifsIn = (state) => tables(state, "motif").length;
