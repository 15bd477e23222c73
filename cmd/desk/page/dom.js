// Making elements. Text is always put in as text, never as HTML.

const svgSpace = "http://www.w3.org/2000/svg";

/**
 * el makes an element. An attribute whose name begins with "on" is a listener;
 * true and false set and leave out; null and undefined leave out.
 */
export function el(tag, attrs, ...children) {
  return filled(document.createElement(tag), attrs, children);
}

/** svg makes an element of a drawing. */
export function svg(tag, attrs, ...children) {
  return filled(document.createElementNS(svgSpace, tag), attrs, children);
}

/**
 * picture reads a drawing of the engine's: its elements, nothing that runs.
 * Its ids get a beginning of their own, because every drawing names its
 * letters a, b, c; the id it had stays readable as data-id.
 */
export function picture(text) {
  const doc = new DOMParser().parseFromString(text, "image/svg+xml");
  const root = doc.documentElement;
  if (root.localName !== "svg") throw new Error("The engine's drawing can't be read.");
  for (const script of root.querySelectorAll("script, foreignObject")) script.remove();
  rename(root, `p${picture.count++}-`);
  return document.importNode(root, true);
}
picture.count = 0;

function rename(root, begin) {
  for (const node of [root, ...root.querySelectorAll("*")]) {
    for (const { name, value } of [...node.attributes]) {
      if (name === "id") {
        node.setAttribute("data-id", value);
        node.setAttribute(name, begin + value);
      } else if ((name === "href" || name === "xlink:href") && value.startsWith("#")) {
        node.setAttribute(name, "#" + begin + value.slice(1));
      } else if (value.includes("url(#")) {
        node.setAttribute(name, value.replaceAll("url(#", "url(#" + begin));
      }
    }
  }
}

/** say sets an element's text, and leaves it alone where it says so already. */
export function say(node, text) {
  const words = text ?? "";
  if (node.textContent !== words) node.textContent = words;
}

/**
 * arrange makes nodes the children of parent. A child that stays is not
 * touched, so it keeps focus and what is typed in it.
 */
export function arrange(parent, nodes) {
  const wanted = new Set(nodes);
  for (const child of [...parent.childNodes]) if (!wanted.has(child)) child.remove();
  let at = parent.firstChild;
  for (const node of nodes) {
    if (node === at) at = at.nextSibling;
    else parent.insertBefore(node, at);
  }
}

function filled(node, attrs, children) {
  for (const [name, value] of Object.entries(attrs || {})) set(node, name, value);
  node.append(...children.flat(Infinity).filter((c) => c !== null && c !== undefined && c !== false));
  return node;
}

function set(node, name, value) {
  if (value === null || value === undefined || value === false) return;
  if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
  else node.setAttribute(name, value === true ? "" : value);
}
