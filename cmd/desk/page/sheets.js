// The pages as they are printed: in millimetres, on paper of their own size,
// with nothing else. They stand ready as soon as the pages are known, so that
// the browser's own print command prints them too.

import { el, picture } from "./dom.js";

const rules = new CSSStyleSheet();
document.adoptedStyleSheets = [...document.adoptedStyleSheets, rules];

export const sheets = {
  /** put makes the pages ready to be printed; null takes them away. */
  put(answer) {
    const root = document.querySelector("#sheets");
    root.replaceChildren();
    rules.replaceSync("");
    if (!answer) return;
    const { width, height } = answer;
    rules.insertRule(`@page { size: ${width}mm ${height}mm; margin: 0 }`);
    for (const page of answer.pages) root.append(sheet(page, width, height));
  },

  /** small is the pages to look at. */
  small({ pages, width, height }) {
    return pages.map((page, i) => {
      const drawn = picture(page);
      drawn.removeAttribute("width");
      drawn.removeAttribute("height");
      drawn.setAttribute("role", "img");
      drawn.setAttribute("aria-label", `Page ${i + 1} of ${pages.length}`);
      const frame = el("div", { class: "page" }, drawn);
      frame.style.setProperty("aspect-ratio", `${width} / ${height}`);
      return frame;
    });
  },
};

function sheet(page, width, height) {
  const drawn = picture(page);
  const frame = el("div", { class: "sheet" }, drawn);
  for (const node of [drawn, frame]) {
    node.style.setProperty("width", width + "mm");
    node.style.setProperty("height", height + "mm");
  }
  return frame;
}
