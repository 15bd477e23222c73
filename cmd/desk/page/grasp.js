// Small drawings in a form with handles to drag, or to move by keys.

import { Drag } from "./drag.js";
import { shape } from "./shapes.js";

const still = 3; // pixels that a press may stray before it is a drag

/** grasp makes a handle: a slider for keys and screen readers, and large enough for a finger. */
export function grasp(label, attrs = {}) {
  return shape("g", { class: "grasp", tabindex: 0, role: "slider", "aria-label": label, ...attrs },
    shape("circle", { class: "reach", r: 26 }), shape("circle", { class: "spot", r: 7 }));
}

/** value says what a slider stands at, in whole numbers and in words. */
export function valueOf(node, now, words) {
  node.setAttribute("aria-valuenow", Math.round(now));
  node.setAttribute("aria-valuetext", words);
}

/**
 * grasps follows the pointer on the handles of a drawing. on.begin(handle) returns what to keep of
 * where it begins, on.to(begun, from, to) the value for that place, both in the drawing's own
 * coordinates; a drag is one step to undo.
 */
export function grasps(drawing, store, path, on) {
  let act = null;
  const at = ({ clientX, clientY }) => {
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(drawing.getScreenCTM().inverse());
    return [x, y];
  };
  const end = (how) => {
    act?.drag?.[how]();
    act = null;
  };
  drawing.addEventListener("pointerdown", (event) => {
    const handle = event.target.closest(".grasp");
    if (event.button > 0 || !handle) return;
    drawing.setPointerCapture(event.pointerId);
    handle.focus({ preventScroll: true });
    store.rest();
    act = { begun: on.begin(handle), from: at(event), screen: [event.clientX, event.clientY] };
  });
  drawing.addEventListener("pointermove", (event) => {
    if (!act) return;
    if (!act.drag && Math.hypot(event.clientX - act.screen[0], event.clientY - act.screen[1]) < still) return;
    act.drag ??= new Drag(store, path(), "set");
    const value = on.to(act.begun, act.from, at(event));
    if (String(value) !== String(act.value)) act.drag.to((act.value = value));
  });
  drawing.addEventListener("pointerup", () => end("done"));
  drawing.addEventListener("pointercancel", () => end("giveUp"));
  // What is dragged must not scroll the page.
  drawing.addEventListener("touchstart", (event) => act && event.cancelable && event.preventDefault(), { passive: false });
  drawing.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && act) return end("giveUp");
    const handle = event.target.closest(".grasp");
    if (!handle || event.ctrlKey || event.metaKey || event.altKey) return;
    if (on.key(handle, event)) event.preventDefault();
  });
}

/** handOf is what the engine says of a hand, for the field at a path. */
export function handOf(state, path) {
  return state.answer?.hands?.find((hand) => path.startsWith(hand.path + ".") && !path.slice(hand.path.length + 1).includes("."));
}
