// The depth along a cut as a small curve to drag. The curve and its points are the engine's.

import { el } from "./dom.js";
import { grasp, grasps, handOf, valueOf } from "./grasp.js";
import { keep, put, shape } from "./shapes.js";

const left = 28, wide = 264, top = 18, deep = 84; // where the curve is in the drawing, of 320 by 120
const ways = { ArrowUp: -0.01, ArrowDown: 0.01, PageUp: -0.1, PageDown: 0.1, Home: -1, End: 1 };

export function swell({ desc, store, send, path }) {
  const drawn = drawing(desc);
  const now = { list: [], hand: null };
  const put1 = (i, share) => now.list.map((s, k) => (k === i ? within(share, i, now.list.length) : s));
  const number = (handle) => [...drawn.handles.children].indexOf(handle);
  grasps(drawn.svg, store, path, {
    begin: (handle) => ({ i: number(handle), share: now.list[number(handle)] }),
    to: ({ i, share }, [, y0], [, y]) => put1(i, Math.round((share + (y - y0) / deep) * 20) / 20),
    key(handle, { key, shiftKey }) {
      if (!(key in ways)) return false;
      const i = number(handle);
      now.list = put1(i, now.list[i] + ways[key] * (shiftKey ? 10 : 1));
      send(now.list, { typing: true });
      return true;
    },
  });
  const button = (words, press) => el("button", { type: "button", onclick: () => (store.rest(), press()) }, words);
  const more = button("One point more", () => send(now.hand.swell.more));
  const fewer = button("One point fewer", () => send(now.hand.swell.fewer));
  const even = button("Even", () => send(now.hand.even ? "" : [1]));
  const control = {
    node: el("div", { class: "by-hand" }, drawn.svg, el("div", { class: "buttons" }, more, fewer, even)),
    inputs: [],
    group: "group",
    needed: false,
    show(entry, table, state) {
      const hand = handOf(state, entry.path);
      if (!hand) return;
      now.hand = hand;
      if (state.fresh || now.list.length !== hand.swell.shares.length) now.list = [...hand.swell.shares];
      control.needed = hand.even; // "Even" then takes it away
      drawn.show(hand.swell);
      more.disabled = !hand.swell.more.length;
      fewer.disabled = !hand.swell.fewer.length;
      even.disabled = hand.swell.shares.every((share) => share === 1) && (!entry.given || !hand.even);
    },
  };
  return control;
}

/** within keeps a share where a job may have it: only at its ends may a cut be as shallow as nothing. */
function within(share, i, n) {
  const least = i > 0 && i < n - 1 ? 0.05 : 0;
  return Math.min(1, Math.max(least, Math.round(share * 100) / 100));
}

function drawing({ name }) {
  const glass = shape("path", { class: "hand-glass", d: "M0 0H100" });
  const cut = shape("path", { class: "hand-cut" });
  const curve = shape("path", { class: "hand-curve" });
  const asked = shape("path", { class: "hand-asked", d: "M0 -100H100" });
  const handles = shape("g", {});
  const text = (x, anchor, words) => {
    const node = shape("text", { x, y: top - 6, "text-anchor": anchor, "aria-hidden": "true" });
    node.textContent = words;
    return node;
  };
  const svg = shape("svg", { class: "hand-drawing", viewBox: "0 0 320 120", role: "group", "aria-label": `${name}: the depth along a cut, from root to tip` },
    shape("g", { transform: `translate(${left} ${top}) scale(${wide / 100} ${-deep / 100})` }, cut, asked, curve, glass),
    text(left, "start", "root"), text(left + wide, "end", "tip"), handles);
  return {
    svg, handles,
    show({ curve: d, points, shares }) {
      put(curve, "d", d);
      put(cut, "d", `${d}L100 0L0 0Z`);
      keep(handles, points, () => grasp("", { "aria-orientation": "vertical", "aria-valuemin": 0, "aria-valuemax": 100 }), (node, [x, y], i) => {
        put(node, "transform", `translate(${left + (x * wide) / 100} ${top - (y * deep) / 100})`);
        put(node, "aria-label", `Depth at point ${i + 1} of ${points.length}${i === 0 ? ", the root" : i === points.length - 1 ? ", the tip" : ""}`);
        valueOf(node, 100 * shares[i], `${Math.round(100 * shares[i])} % of the depth`);
      });
    },
  };
}
