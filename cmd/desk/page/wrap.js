// The wrap: seen, and worked on by mouse, finger and keys.

import { motifsIn } from "./added.js";
import { el, say } from "./dom.js";
import { faces } from "./faces.js";
import { Frame } from "./handles.js";
import { copyAt, cutsOf, nearestTo, partAt } from "./hit.js";
import { Late } from "./late.js";
import { Nudge } from "./nudge.js";
import { Pen } from "./pen.js";
import { Pointers } from "./pointers.js";
import { ringKeys, showRings, toggleFinding } from "./rings.js";
import { keep, matrix, placed, polygon, put, shape, unplaced } from "./shapes.js";
import { Sheet, viewOf } from "./sheet.js";
import { Sight } from "./sight.js";

const keys = "Enter chooses a motif. Arrow keys move it by one step of the calipers, with Shift by ten. "
  + "Plus and minus size it, L and R turn it left and right, Escape gives up.";

/** mount fills root and follows the store. */
export function mount(root, store) {
  new Wrap(root, store);
}

class Wrap {
  constructor(root, store) {
    this.store = store;
    this.copies = new Map(); // which copy of a motif was last touched, by the motif's number
    this.places = new Map(); // where a motif was put that is not drawn there yet, by its number
    this.sheet = new Sheet({ role: "group", "aria-describedby": "wrap-keys" });
    this.frames = shape("g", { class: "motifs" });
    this.frame = new Frame();
    this.ghost = shape("path", { class: "ghost" });
    this.rings = shape("g", { class: "rings" });
    this.sight = new Sight(this.sheet.svg, () => this.#overlay());
    this.pen = new Pen(this.sight, store, {
      wrap: () => this.wrap, changed: () => this.#overlay(), tell: (words) => say(this.penWords, words),
      drew: (motif, place) => this.places.set(motif, place),
    });
    this.sheet.above.append(this.frames, this.ghost, this.rings, this.frame.group, this.pen.layer);
    this.nudge = new Nudge(store, (number) => this.#tell(number));
    this.#fill(root);
    this.#listen();
    store.subscribe((state) => this.#show(state));
  }

  #fill(root) {
    const button = (words, press) => el("button", { type: "button", onclick: press }, words);
    this.back = button("Whole", () => this.sight.whole());
    this.draws = button("", () => (this.pen.active ? this.pen.done() : this.pen.begin()));
    this.draws.id = "draw-cuts";
    this.penWords = el("p", { class: "caption small", role: "status" });
    this.caption = el("p", { class: "caption faint small", hidden: true });
    const legend = el("p", { class: "caption faint small" }, "Broken lines: the band. Thin lines: between repeats, which are numbered. Left and right edge: the seam, as on the paper.");
    const note = el("p", { class: "of-before", role: "status", hidden: true });
    this.late = new Late(root, note);
    root.classList.add("wrap");
    this.faces = faces(this.store);
    this.legend = legend;
    root.append(
      this.faces.node,
      this.sheet.svg,
      el("div", { class: "drawn-below" },
        el("div", { class: "drawn-row" }, button("Closer", () => this.sight.magnify(1.6, this.#middle())), this.back, this.draws),
        note),
      this.penWords,
      this.caption, legend,
      el("p", { id: "wrap-keys", class: "unseen" }, keys),
      (this.told = el("p", { class: "unseen", role: "status" })));
  }

  #listen() {
    this.pointers = new Pointers(this.sheet.svg, this.sight, this.store, {
      wrap: () => this.wrap,
      active: () => this.#indexOf(this.store.state.chosen),
      frame: this.frame,
      pen: this.pen,
      choose: (number, copy, place) => this.#choose(number, copy, place),
      finding: (letter) => toggleFinding(this.store, letter),
      ghost: (motif, copy, by) => this.#showGhost(motif, copy, by),
    });
    this.frames.addEventListener("keydown", (event) => this.#key(event));
    this.frames.addEventListener("focusin", (event) => this.#focused(event));
    this.frames.addEventListener("focusout", () => this.nudge.rest());
    ringKeys(this.rings, this.store);
    // Where a drawing is let go becomes its middle.
    this.sheet.svg.addEventListener("drop", (event) => {
      const place = this.sight.at(event.clientX, event.clientY);
      if (!this.wrap) return;
      event.place = unplaced(place, copyAt(this.wrap, place));
      this.places.set(motifsIn(this.store.state) + 1, place);
    });
    // Before the pointers hear of it: the first Escape gives up a stroke, the next ends drawing.
    window.addEventListener("keydown", (event) => event.key === "Escape" && this.pen.active && !this.pen.giveUp() && this.pen.done(), true);
  }

  #show(state) {
    this.late.follow(state);
    const wrap = state.answer?.wrap;
    if (!wrap) return;
    if (wrap !== this.given) {
      this.given = wrap;
      this.wrap = reachable(wrap);
      this.sheet.show(wrap);
      put(this.sheet.svg, "aria-label", wrapWords(wrap));
      this.#turnTo(wrap, state);
      say(this.caption, wrap.caption);
      this.caption.hidden = !wrap.caption;
    }
    if (!state.dragging) this.sight.over(viewOf(wrap.box)); // the paper's ends may give way to what is dragged
    const chosen = this.#motif(state.chosen);
    this.sheet.mark(state.chosen, chosen && state.part ? cutsOf(chosen, state.part) : "");
    const seen = [wrap, state.chosen, state.part, state.letter, state.answer];
    if (seen.some((part, i) => part !== this.seen?.[i])) this.#overlay();
    this.seen = seen;
  }

  /** turnTo says which face is drawn. On the base no cuts are drawn by hand. */
  #turnTo(wrap, state) {
    const base = wrap.flat === "disc";
    this.faces.show(state);
    this.legend.hidden = base;
    if (base && this.pen.active) this.pen.done();
    this.draws.hidden = base;
    say(document.querySelector("#wrap-title"), base ? "The base" : "The wrap");
    if (this.base !== undefined && base !== this.base) this.sight.whole();
    this.base = base;
  }

  /** overlay draws what keeps its size on the screen. */
  #overlay() {
    const { state } = this.store, { wrap } = this;
    if (!wrap) return;
    const per = this.sight.perMillimetre;
    this.sheet.scale(per);
    keep(this.frames, wrap.motifs, () => shape("path", { class: "motif", tabindex: 0, role: "button" }), (path, motif) => {
      put(path, "data-motif", motif.motif);
      put(path, "aria-label", motifWords(motif));
      put(path, "aria-pressed", String(motif.motif === state.chosen));
      put(path, "d", polygon(motif.box));
      put(path, "transform", matrix(this.#copyOf(motif.motif)));
    });
    const chosen = this.#motif(state.chosen);
    if (chosen) this.frame.show(chosen, this.#copyOf(state.chosen), per, (place) => this.sight.sees(place));
    else this.frame.hide();
    say(this.draws, this.pen.active ? "Done drawing" : "Draw cuts");
    this.sheet.svg.classList.toggle("pen", this.pen.active);
    showRings(this.rings, wrap.rings, state, per);
    this.back.disabled = !this.sight.closer;
    this.sheet.svg.classList.toggle("closer", this.sight.closer);
  }

  #motif(number) {
    return this.wrap?.motifs.find((motif) => motif.motif === number);
  }

  #indexOf(number) {
    const motif = this.#motif(number), place = this.places.get(number);
    if (motif && place && this.store.state.fresh) {
      this.copies.set(number, nearestTo(motif, place));
      this.places.delete(number);
    }
    const index = this.copies.get(number);
    return motif && index in motif.copies ? index : 0; // the first
  }

  #copyOf(number) {
    return this.#motif(number).copies[this.#indexOf(number)];
  }

  /** middle is where "closer" goes: to the chosen motif, if there is one. */
  #middle() {
    const chosen = this.#motif(this.store.state.chosen);
    return chosen && placed(chosen.middle, this.#copyOf(chosen.motif));
  }

  #choose(number, copy, place) {
    if (number) this.copies.set(number, copy);
    const motif = this.#motif(number), near = 9 / this.sight.perMillimetre;
    this.store.choose(number, motif && place ? partAt(this.wrap, motif, place, near) : "");
    this.#overlay();
    if (number) this.#pathOf(number)?.focus({ preventScroll: true, focusVisible: false });
  }

  #pathOf(number) {
    return this.frames.querySelector(`[data-motif="${number}"]`);
  }

  #focused(event) {
    const motif = this.#motif(Number(event.target.dataset.motif));
    if (motif && event.target.matches(":focus-visible")) this.sight.reach(placed(motif.middle, this.#copyOf(motif.motif)));
  }

  #key(event) {
    const number = Number(event.target.dataset.motif), motif = this.#motif(number);
    if (!motif) return;
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      this.store.choose(number);
    } else if (event.key === "Escape") {
      if (!this.nudge.giveUp()) this.store.choose(0);
    } else if (this.nudge.key(event, motif)) {
      this.store.choose(number);
    }
  }

  /** tell says to who can't see it where a motif has come to. */
  async #tell(number) {
    const { form } = await this.store.settled().catch(() => this.store.state);
    const fields = form?.tables?.find(({ path }) => path === `motif[${number}]`)?.fields ?? [];
    const said = ["at", "width", "height", "turn"].flatMap((key) => {
      const field = fields.find((one) => one.key === key);
      return field ? [`${key} ${field.list?.join(", ") || field.text}`] : [];
    });
    say(this.told, `Motif ${number}: ${said.join(", ")}`);
  }

  #showGhost(motif, copy, by) {
    put(this.ghost, "display", motif ? null : "none");
    if (!motif) return;
    put(this.ghost, "transform", matrix(copy));
    put(this.ghost, "d", polygon(motif.box.map(([x, y]) => [x + by[0], y + by[1]])));
  }
}

function motifWords({ motif, called, inside }) {
  return `Motif ${motif}, ${called}${inside ? `, inside motif ${inside}` : ""}`;
}

/** reachable is a wrap with all of the copies that are seen, that beyond the seam among them. */
function reachable(wrap) {
  return { ...wrap, copies: [...wrap.copies, wrap.before, wrap.after] };
}

function wrapWords({ motifs, repeats, flat }) {
  const motif = motifs.length === 1 ? "1 motif" : `${motifs.length} motifs`;
  if (flat === "disc") return `The base: ${motif}, ${repeats === 1 ? "one sector" : `${repeats} sectors`}`;
  return `The wrap: ${motif}, ${repeats === 1 ? "once" : `${repeats} times`} round the glass`;
}
