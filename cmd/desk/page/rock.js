// How far the glass is rolled to the left and to the right of a cut: the wheel's edge over the
// glass, with the groove it leaves. All of what is drawn is the engine's.

import { el } from "./dom.js";
import { typed } from "./boxes.js";
import { grasp, grasps, handOf, valueOf } from "./grasp.js";
import { put, shape } from "./shapes.js";
import { asNumber } from "./sliders.js";

const sides = ["left", "right"];
const wide = 320, high = 170, air = 26; // of the drawing; air round it, for the handles
const ways = [{ ArrowLeft: 1, ArrowRight: -1 }, { ArrowLeft: -1, ArrowRight: 1 }];
const up = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

export function rock({ id, desc, store, send, path }) {
  const most = desc.max;
  const now = { list: [0, 0], hand: null };
  const put1 = (i, angle) => now.list.map((a, k) => (k === i ? within(angle, most) : a));
  const drawn = drawing(desc);
  const number = (handle) => drawn.handles.indexOf(handle);
  const step = (i, by) => {
    now.list = put1(i, now.list[i] + by);
    send(now.list, { typing: true });
  };
  grasps(drawn.svg, store, path, {
    begin: (handle) => ({ i: number(handle), angle: now.list[number(handle)] }),
    to: ({ i, angle }, from, to) => put1(i, Math.round(angle + (i ? 1 : -1) * drawn.turned(from, to))),
    key(handle, { key, shiftKey }) {
      const i = number(handle), by = ways[i][key] ?? up[key];
      if (by) step(i, by * (shiftKey ? 10 : 1));
      return Boolean(by);
    },
  });
  const inputs = sides.map((_, i) => typed({ id: i ? id + "-2" : id, inputmode: "decimal", class: "figure" }, store, (text) => {
    now.list = now.list.map((a, k) => (k === i ? asNumber(text) : a));
    send(now.list, { typing: true });
  }));
  const rows = sides.map((side, i) => row(side, inputs[i], (by) => step(i, by)));
  const upright = el("button", { type: "button", onclick: () => (store.rest(), send(now.hand.upright ? "" : [0, 0])) }, "Upright");
  const control = {
    node: el("div", { class: "by-hand" }, drawn.svg, rows.map(({ node }) => node), el("div", { class: "buttons" }, upright)),
    inputs,
    group: "group",
    needed: false,
    show(entry, table, state) {
      const hand = handOf(state, entry.path);
      if (!hand) return;
      now.hand = hand;
      if (state.fresh) now.list = [...hand.rock];
      control.needed = hand.upright; // "Upright" then takes it away
      drawn.show(hand, most);
      inputs.forEach((input, i) => input.put(entry.list?.[i] ?? String(hand.rock[i]), state));
      rows.forEach((one, i) => one.show(hand.rock[i], most));
      upright.disabled = hand.rock.every((a) => a === 0) && (!entry.given || !hand.upright);
    },
  };
  return control;
}

function row(side, input, step) {
  const button = (words, label, by) => el("button", { type: "button", "aria-label": `${label} to the ${side}`, onclick: () => step(by) }, words);
  const less = button("−", "One degree less", -1), more = button("+", "One degree more", 1);
  const node = el("div", { class: "stepper" }, less, input, more, el("label", { for: input.id }, `° to the ${side}`));
  return {
    node,
    show(angle, most) {
      less.disabled = angle <= 0;
      more.disabled = angle >= most;
    },
  };
}

const within = (angle, most) => (Number.isFinite(angle) ? Math.min(most, Math.max(0, angle)) : 0);

function drawing({ name }) {
  const cut = shape("path", { class: "hand-cut" }), glass = shape("path", { class: "hand-glass" });
  const wheels = sides.map((side) => shape("path", { class: `hand-wheel ${side}` }));
  const handles = sides.map((side) => grasp(`Roll to the ${side}`, { "aria-valuemin": 0 }));
  const drawn = shape("g", {}, cut, glass, ...wheels);
  const svg = shape("svg", { class: "hand-drawing", viewBox: `0 0 ${wide} ${high}`, role: "group", "aria-label": `${name}: the wheel over the glass, seen along the cut` }, drawn, ...handles);
  let about = [0, 0];
  return {
    svg, handles,
    /** turned is by how many degrees a place is turned clockwise about the deepest one. */
    turned(from, to) {
      const angle = ([x, y]) => Math.atan2(y - about[1], x - about[0]);
      const by = ((angle(to) - angle(from)) * 180) / Math.PI;
      return ((by + 540) % 360) - 180;
    },
    show({ rock: angles, section }, most) {
      const [x0, y0, x1, y1] = section.box;
      const scale = Math.min((wide - 2 * air) / (x1 - x0), (high - 2 * air) / (y1 - y0));
      const place = ([x, y]) => [wide / 2 + x * scale, air + (y1 - y) * scale];
      const [left, top] = place([0, 0]);
      about = place(section.about);
      put(drawn, "transform", `translate(${left} ${top}) scale(${scale} ${-scale})`);
      put(cut, "d", section.cut);
      put(glass, "d", `M${-left / scale} 0H${left / scale}`);
      section.wheels.forEach((d, i) => put(wheels[i], "d", d));
      section.ends.forEach((end, i) => put(handles[i], "transform", `translate(${place(end).join(" ")})`));
      angles.forEach((angle, i) => {
        put(handles[i], "aria-valuemax", most);
        valueOf(handles[i], angle, `${angle}° to the ${sides[i]}`);
      });
    },
  };
}
