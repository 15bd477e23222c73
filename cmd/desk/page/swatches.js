// Motifs to add, from their swatches; and what can be done with the one that is chosen.

import { el, say } from "./dom.js";
import { addAndChoose } from "./added.js";
import { choose } from "./bring.js";
import { onFace } from "./faces.js";

/** mount fills root and follows the store. */
export function mount(root, store, about) {
  const chosen = new Chosen(store);
  root.append(chosen.root, el("h3", { id: "swatches-title" }, "Add a motif"),
    el("div", { class: "swatches", role: "group", "aria-labelledby": "swatches-title" }, about.kinds.map((kind) => swatch(kind, store))),
    el("div", { class: "drawn-row own-drawing" }, el("button", { type: "button", id: "own-drawing", onclick: () => choose(store) }, "Choose a drawing"),
      el("span", { class: "faint small" }, "or drop one on the page: an SVG file, each stroke a cut")));
  store.subscribe((state) => chosen.show(state));
}

function swatch(kind, store) {
  const picture = el("img", { alt: "", src: "data:image/svg+xml," + encodeURIComponent(kind.swatch ?? ""), draggable: "false" });
  const add = () => addAndChoose(store, [{ op: "add", path: "motif", value: { kind: kind.name, ...onFace(store.state) } }]);
  return el("button", { type: "button", class: "swatch", "data-kind": kind.name, title: kind.about, onclick: add }, picture, el("span", {}, kind.name));
}

/** Chosen has the buttons for the chosen motif. */
class Chosen {
  constructor(store) {
    this.store = store;
    this.title = el("h3", {});
    const button = (words, press) => el("button", { type: "button", onclick: press }, words);
    this.copy = button("Copy", () => addAndChoose(store, [{ op: "copy", path: this.path }]));
    this.takeOut = button("", () => store.change([{ op: "remove", path: `${this.path}.inside` }]));
    this.remove = button("Remove", () => this.#remove());
    this.into = el("select", { onchange: () => this.#putInside() });
    this.inside = el("label", { class: "put-inside" }, "Put inside ", this.into);
    this.root = el("section", { class: "chosen-motif", "aria-label": "The chosen motif" }, this.title,
      el("div", { class: "drawn-row" }, this.copy, this.inside, this.takeOut, this.remove));
  }

  get path() {
    return `motif[${this.store.state.chosen}]`;
  }

  show(state) {
    const motifs = state.answer?.wrap?.motifs ?? [], motif = motifs.find(({ motif: number }) => number === state.chosen);
    this.root.hidden = !motif;
    if (!motif) return;
    say(this.title, `Motif ${motif.motif}, ${motif.called}`);
    this.takeOut.hidden = !motif.inside;
    say(this.takeOut, `Take out of motif ${motif.inside}`);
    const earlier = motifs.filter(({ motif: number }) => number < motif.motif);
    this.inside.hidden = earlier.length === 0;
    this.#offer(earlier, motif.inside);
  }

  #offer(earlier, inside) {
    const words = JSON.stringify([inside, earlier.map(({ motif, called }) => [motif, called])]);
    if (words === this.offered) return;
    this.offered = words;
    const options = earlier.map(({ motif, called }) => el("option", { value: motif, selected: motif === inside }, `${motif}, ${called}`));
    this.into.replaceChildren(el("option", { value: "", selected: !inside }, "no other"), ...options);
  }

  #putInside() {
    const path = `${this.path}.inside`, { value } = this.into;
    this.store.change([value ? { op: "set", path, value: Number(value) } : { op: "remove", path }]);
  }

  #remove() {
    const { path } = this;
    this.store.choose(0);
    this.store.change([{ op: "drop", path }]);
  }
}
