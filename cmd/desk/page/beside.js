// Files beside the job that were brought to the page and are not on disk yet. They go with
// every question about a job that names them.

const held = new Map(); // name → text

/** bring keeps a file's text under its name. */
export function bring(name, text) {
  held.set(name, text);
}

/** leave forgets a file: it is on disk now, or was none that can be used. */
export function leave(name) {
  held.delete(name);
}

/** holding is the text of a file that is kept here, or undefined. */
export function holding(name) {
  return held.get(name);
}

/** filesFor returns those files that a question names, or undefined where it names none. */
export function filesFor({ job, edits }) {
  if (held.size === 0 || typeof job !== "string") return undefined;
  const said = job + JSON.stringify(edits ?? []);
  const named = [...held].filter(([name]) => said.includes(name));
  return named.length ? Object.fromEntries(named) : undefined;
}

/** namesIn lists the files beside it that a job names, each once. */
export function namesIn(form) {
  const names = (form?.tables ?? []).flatMap(({ table, fields }) => fields.flatMap(({ key, given, text, list }) => {
    if (given && table === "motif" && key === "file") return [text];
    return given && table === "" && key === "include" ? list ?? [text] : [];
  }));
  return [...new Set(names)].filter((name) => name !== "");
}

/** plainName is a file's name as it can stand beside a job on any system. */
export function plainName(name) {
  const [, stem, ending] = /^(.*?)(\.[A-Za-z0-9]+)?$/s.exec(name.normalize("NFC"));
  const plain = stem.replace(/[^\p{L}\p{N} _-]+/gu, "-").replace(/^[-\s]+|[-\s]+$/g, "").slice(0, 60).trim();
  return (plain || "drawing") + (ending ?? "").toLowerCase();
}

/** numbered is a name with a number before its ending. */
export function numbered(name, n) {
  return n < 2 ? name : name.replace(/(\.[^.]*)?$/, `-${n}$1`);
}
