// The five headings of the work: one is open at a time.

const narrow = matchMedia("(max-width: 599px)"); // there the headings stand below, away from their part
const listeners = new Set();

/** open shows the part under a heading: "glass", "wheels", "design", "check" or "paper". */
export function open(name, { focus = false } = {}) {
  const tab = document.querySelector("#tab-" + name);
  if (!isOpen(name)) document.querySelector("#numbers").scrollTop = 0;
  for (const other of tab.parentNode.querySelectorAll("[role=tab]")) show(other, other === tab);
  if (focus) tab.focus();
  for (const fn of listeners) fn(name);
}

/** isOpen is whether the part under a heading is the one that is shown. */
export function isOpen(name) {
  return !document.querySelector("#panel-" + name).hidden;
}

/** onOpened calls fn(name) whenever a heading is opened. */
export function onOpened(fn) {
  listeners.add(fn);
}

export function mount(root) {
  const tabs = [...root.querySelectorAll("[role=tab]")];
  tabs.forEach((tab, i) => {
    tab.type = "button";
    tab.addEventListener("click", () => {
      open(name(tab));
      if (narrow.matches) document.querySelector("#numbers").scrollIntoView();
    });
    tab.addEventListener("keydown", (event) => {
      const to = next(event.key, i, tabs.length);
      if (to === null) return;
      event.preventDefault();
      open(name(tabs[to]), { focus: true });
    });
  });
  open("glass");
}

function show(tab, on) {
  tab.setAttribute("aria-selected", String(on));
  tab.tabIndex = on ? 0 : -1;
  document.getElementById(tab.getAttribute("aria-controls")).hidden = !on;
}

function next(key, i, n) {
  if (key === "ArrowRight") return (i + 1) % n;
  if (key === "ArrowLeft") return (i + n - 1) % n;
  if (key === "Home") return 0;
  if (key === "End") return n - 1;
  return null;
}

function name(tab) {
  return tab.id.slice("tab-".length);
}
