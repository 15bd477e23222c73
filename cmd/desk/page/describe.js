// What the engine says of tables and keys, made ready to look up.

/**
 * describer returns describe(table) → (key) → description. A motif's own
 * parameters come from its kind; a default may depend on neither.
 */
export function describer(about) {
  const tables = new Map(about.tables.map((t) => [t.name, byName(t.name === "part" ? t.keys.map(ofPart) : t.keys)]));
  const kinds = new Map(about.kinds.map((k) => [k.name, byName([...k.parameters.map(parameter), ...(k.contents ?? []).map(content)])]));
  const none = new Map();
  return (table) => {
    const keys = tables.get(table.table) || none;
    const own = table.table === "motif" ? kinds.get(kindOf(table)) || none : none;
    return (key) => own.get(key) || keys.get(key);
  };
}

function kindOf(table) {
  return table.fields.find((f) => f.key === "kind")?.text || "";
}

/** ofPart is a key of a part: without it the part is as the motif. */
function ofPart(key) {
  return { ...key, away: "as the motif" };
}

/** parameter is a kind's parameter in the words of a key. */
function parameter(p) {
  const value = p.sort === "switch" ? String(Boolean(p.default)) : String(p.default);
  return { name: p.name, about: p.about, sort: p.sort, min: p.least, max: p.most, default: value, needed: false, own: true };
}

/** content is what a kind's motif is made of, in the words of a key. */
function content(c) {
  return { name: c.name, about: c.about, sort: c.sort, default: "", needed: false, own: true };
}

function byName(list) {
  return new Map(list.map((item) => [item.name, item]));
}
