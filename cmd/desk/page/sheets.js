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
    const sizes = answer ? sizesOf(answer) : [];
    rules.replaceSync(sizes.length ? rulesFor(sizes) : "");
    root.replaceChildren(...sizes.map(([width, height], i) => sheet(answer.pages[i], width, height)));
  },

  /** small is the pages to look at. */
  small(answer) {
    const sizes = sizesOf(answer);
    return answer.pages.map((page, i) => {
      const drawn = picture(page);
      drawn.removeAttribute("width");
      drawn.removeAttribute("height");
      drawn.setAttribute("role", "img");
      drawn.setAttribute("aria-label", `Page ${i + 1} of ${answer.pages.length}`);
      const frame = el("div", { class: "page" }, drawn);
      frame.style.setProperty("aspect-ratio", sizes[i].join(" / "));
      return frame;
    });
  },
};

/** sizesOf is the width and height of each page in mm: paper lies either way. */
function sizesOf({ pages, sizes, width, height }) {
  return pages.map((_, i) => sizes?.[i] || [width, height]);
}

/** rulesFor gives each size of page a name, which its sheets ask for. */
function rulesFor(sizes) {
  const [width, height] = sizes[0];
  const named = sizes.map(([w, h]) => `@page ${called(w, h)} { size: ${w}mm ${h}mm; margin: 0 }`);
  return [`@page { size: ${width}mm ${height}mm; margin: 0 }`, ...new Set(named)].join("\n");
}

function called(width, height) {
  return `sheet-${width}-${height}`.replaceAll(".", "_");
}

function sheet(page, width, height) {
  const drawn = picture(page);
  const frame = el("div", { class: "printed" }, drawn);
  frame.style.setProperty("page", called(width, height));
  for (const node of [drawn, frame]) {
    node.style.setProperty("width", width + "mm");
    node.style.setProperty("height", height + "mm");
  }
  return frame;
}
