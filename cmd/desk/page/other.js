// What is asked of the engine about the other design.

const want = ["wrap"];

/** otherQuestion is a question to lay, or null where the choice doesn't say enough. */
export function otherQuestion({ sort, name, wide, high, back, text }, state, history) {
  const asked = { job: state.text, edits: [], blank: state.blank, side: state.side, want };
  if (sort === "blank") return { ...asked, blank: name };
  if (sort === "size") return wide > 0 && high > 0 ? { ...asked, edits: resized(state, wide, high) } : null;
  if (sort === "earlier") return { ...asked, ...history.question(Math.max(history.at - back, 0)) };
  return text.trim() ? { ...asked, job: text, blank: "" } : null;
}

/** resized is the edits that make a blank so many times as wide and as high; its walls stay. */
function resized({ answer, form }, wide, high) {
  const { stations, fill } = answer.profile, millimetres = (x) => `${x.toFixed(3)} mm`;
  const edits = stations.flatMap(({ path, height, radius }) => [
    { op: "set", path: `${path}.height`, value: height ? millimetres(height * high) : 0 },
    byTape(form, path)
      ? { op: "set", path: `${path}.around`, value: millimetres(2 * Math.PI * radius * wide) }
      : { op: "set", path: `${path}.across`, value: millimetres(2 * radius * wide) },
  ]);
  if (fill) edits.push({ op: "set", path: stations[0].path.replace(/station\[\d+\]$/, "fill"), value: millimetres(fill * high) });
  return edits;
}

/** byTape reports whether a station was measured round the glass, and not across it. */
function byTape(form, path) {
  const fields = form?.tables?.find((table) => table.path === path)?.fields ?? [];
  const given = (key) => fields.some((field) => field.key === key && field.given);
  return given("around") && !given("across");
}
