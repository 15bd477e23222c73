// A motif that is added is chosen.

/** addAndChoose makes edits that add a motif, which is the last then, and chooses it. */
export async function addAndChoose(store, edits) {
  const before = count(store.state);
  store.change(edits);
  const state = await store.settled().catch(() => store.state);
  if (!state.mistake && count(state) > before) store.choose(count(state));
}

const count = (state) => state.form?.tables.filter(({ table }) => table === "motif").length ?? 0;
