// One of two designs that are seen side by side: its glass, its wrap, and what the check says.

import { el, say } from "./dom.js";
import { put } from "./shapes.js";
import { Sheet, viewOf } from "./sheet.js";

/** Seen shows a design that can't be worked on. */
export class Seen {
  constructor(title) {
    this.sheet = new Sheet({ role: "img" });
    this.glass = el("img", { alt: "" });
    this.words = el("p", { class: "small" });
    this.root = el("figure", { class: "seen" },
      el("figcaption", {}, el("h3", {}, title), this.words), el("div", { class: "seen-glass" }, this.glass), this.sheet.svg);
    this.wrapWidth = this.glassWidth = 0;
  }

  show(answer, fresh) {
    const { wrap, title, blank, verdict } = answer, { x, y, width, height } = viewOf(wrap.box);
    this.sheet.show(wrap);
    put(this.sheet.svg, "viewBox", [x, y, width, height].join(" "));
    put(this.sheet.svg, "aria-label", `The wrap of ${title}, ${blank}`);
    this.sheet.svg.style.setProperty("--shape", `${width} / ${height}`);
    say(this.words, [title, blank, verdict].filter(Boolean).join(" · "));
    this.wrapWidth = width;
    this.root.classList.toggle("late", !fresh);
    this.glass.alt = `The glass ${blank}`;
  }

  /** stale marks it as not of what is asked now. */
  stale() {
    this.root.classList.add("late");
  }

  /** picture shows the engine's picture of the glass, or none. */
  picture(answer) {
    this.glass.hidden = !answer?.svg;
    if (!answer?.svg) return;
    this.glass.src = "data:image/svg+xml," + encodeURIComponent(answer.svg);
    const [x0, , x1] = answer.box;
    this.glassWidth = x1 - x0;
  }

  /** scale sets its parts' widths as shares of the wider one's. */
  scale(wrap, glass) {
    this.sheet.svg.style.setProperty("width", `${wrap ? (100 * this.wrapWidth) / wrap : 100}%`);
    this.glass.style.setProperty("width", `${glass ? (100 * this.glassWidth) / glass : 100}%`);
  }
}
