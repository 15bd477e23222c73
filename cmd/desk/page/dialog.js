// Dialogs: the browser's own, which keep focus in and give it back.

import { el } from "./dom.js";

/** dialog opens one with a heading and what is given; it is gone when closed. */
export function dialog(title, ...content) {
  const heading = el("h2", { id: "dialog-title" }, title);
  const node = el("dialog", { "aria-labelledby": "dialog-title" }, heading, content);
  node.addEventListener("close", () => node.remove());
  document.body.append(node);
  node.showModal();
  return node;
}

/** asked asks for one line of text; it resolves to "" if there is none. */
export function asked({ title, label, value, button }) {
  return new Promise((done) => {
    const input = el("input", { type: "text", value, id: "asked", autocomplete: "off", spellcheck: "false" });
    const answer = (event) => {
      event.preventDefault();
      const text = input.value.trim();
      node.close();
      done(text);
    };
    const form = el("form", { onsubmit: answer }, el("label", { for: "asked", class: "name" }, label), input,
      el("div", { class: "buttons" }, el("button", { class: "main" }, button),
        el("button", { type: "button", onclick: () => node.close() }, "Leave it")));
    const node = dialog(title, form);
    node.addEventListener("close", () => done(""));
    input.select();
  });
}
