// Where to put the calipers: one plain glass, cut open down its right half,
// with the measure that is asked for drawn on it.

import { svg } from "./dom.js";

const outside = "M60 40 L76 200 H164 L180 40";
const inside = "M120 40 V180 H156 Q158 180 158.5 174 L173 40 Z";
const wall = "M120 200 V180 H156 Q158 180 158.5 174 L173 40 H180 L164 200 Z";

const measures = {
  height: [line(30, 200, 30, 40), line(20, 200, 60, 200, true), line(20, 40, 60, 40, true)],
  foot: [line(76, 218, 164, 218), line(76, 204, 76, 226, true), line(164, 204, 164, 226, true)],
  rim: [line(60, 22, 180, 22), line(60, 14, 60, 36, true), line(180, 14, 180, 36, true)],
  middle: [line(68, 120, 172, 120), line(30, 200, 30, 120), line(20, 200, 60, 200, true), line(20, 120, 60, 120, true)],
  walls: [onto(206, 58, 180, 56), onto(144, 54, 170.5, 56), onto(194, 166, 169, 164), onto(134, 162, 158.5, 164)],
  threeWalls: [onto(206, 58, 180, 56), onto(144, 54, 170.5, 56), onto(199, 112, 174, 110), onto(139, 108, 164.5, 110), onto(194, 166, 169, 164), onto(134, 162, 158.5, 164)],
  floor: [line(105, 200, 105, 180), line(95, 180, 120, 180, true)],
};

/** measured is the drawing with one measure on it. */
export function measured(what) {
  const shapes = what === "wheel" ? wheel() : [...glass(), ...measures[what].map((m) => m())];
  return svg("svg", { viewBox: "0 0 240 240", class: "guide-picture", "aria-hidden": "true" }, heads(), shapes);
}

function glass() {
  return [
    svg("path", { d: wall, class: "cut-open" }),
    svg("path", { d: inside, class: "hollow" }),
    svg("path", { d: outside, class: "outline" }),
    svg("path", { d: "M60 40 A60 9 0 0 1 180 40 A60 9 0 0 1 60 40", class: "outline" }),
  ];
}

function wheel() {
  return [
    svg("circle", { cx: 80, cy: 120, r: 62, class: "outline" }),
    svg("circle", { cx: 80, cy: 120, r: 8, class: "outline" }),
    svg("path", { d: "M178 58 V168 L193 184 L208 168 V58", class: "outline" }),
    line(18, 205, 142, 205)(),
    line(18, 120, 18, 212, true)(),
    line(142, 120, 142, 212, true)(),
    svg("path", { d: "M184 175 A14 14 0 0 1 202 175", class: "measure thin" }),
    svg("text", { x: 193, y: 212, "text-anchor": "middle", class: "measure-words" }, "angle"),
    svg("text", { x: 80, y: 224, "text-anchor": "middle", class: "measure-words" }, "across"),
  ];
}

function line(x1, y1, x2, y2, thin = false) {
  return () => svg("line", { x1, y1, x2, y2, class: thin ? "measure thin" : "measure" });
}

/** onto is an arrow that ends at the glass, for a wall too thin for a measure. */
function onto(x1, y1, x2, y2) {
  return () => svg("line", { x1, y1, x2, y2, class: "measure onto" });
}

function heads() {
  const mark = (id, d) => svg("marker", {
    id, viewBox: "0 0 10 10", refX: id === "guide-end" ? 9 : 1, refY: 5, markerWidth: 5, markerHeight: 5, orient: "auto",
  }, svg("path", { d, class: "measure-head" }));
  return svg("defs", {}, mark("guide-end", "M0 0 L10 5 L0 10 Z"), mark("guide-start", "M10 0 L0 5 L10 10 Z"));
}
