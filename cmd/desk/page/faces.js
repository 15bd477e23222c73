// The faces of the glass: its side and its base. One of them is drawn at a time.

import { motifsIn } from "./added.js";
import { tables } from "./choices.js";
import { el, say } from "./dom.js";

/** onFace is what a new motif needs so that it stands on the face that is drawn. */
export const onFace = ({ answer }) => (answer?.face === "base" ? { face: "base" } : {});

/** faces is the buttons for the faces of the job that has a base, or the one that gives it one. */
export function faces(store) {
  const button = (words, press) => el("button", { type: "button", onclick: press }, words);
  const side = button("Side", () => store.setSide("outside"));
  const base = button("Base", () => turnTo(store));
  const node = el("div", { class: "drawn-row faces", role: "group", "aria-label": "The face of the glass" }, side, base);
  return {
    node,
    show({ answer }) {
      const has = answer.faces.includes("base");
      say(base, has ? "Base" : "Add a base");
      side.hidden = !has;
      side.setAttribute("aria-pressed", String(answer.face === "side"));
      if (has) base.setAttribute("aria-pressed", String(answer.face === "base"));
      else base.removeAttribute("aria-pressed");
    },
  };
}

/** turnTo shows the base; a job without one gets one first, with a star over its middle. */
function turnTo(store) {
  const { answer } = store.state;
  if (!answer.faces.includes("base")) {
    const fields = tables(store.state, "layout")[0]?.fields ?? [];
    store.change([
      { op: "set", path: "base.repeats", value: Number(fields.find(({ key }) => key === "repeats")?.text) || 8 },
      { op: "add", path: "motif", value: { kind: "star", face: "base", middle: true, width: 0.8, height: 0.8 } },
      { op: "remove", path: `motif[${motifsIn(store.state) + 1}].at` }, // over the middle it has no other place
    ]);
  }
  store.setSide("base");
}

/** faceOf is the face on which a motif stands, by the form. */
export function faceOf(form, number) {
  const table = form?.tables.find(({ path }) => path === `motif[${number}]`);
  return table?.fields.find(({ key }) => key === "face")?.text === "base" ? "base" : "side";
}
