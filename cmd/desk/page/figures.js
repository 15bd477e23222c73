// The measured figures beside a profile, each led to its station, none on another.

import { say } from "./dom.js";
import { line, put, shape } from "./shapes.js";

/** apartUp moves heights, from the lowest up, so far apart that words at them don't meet. */
export function apartUp(heights, least) {
  const spots = heights.slice();
  for (let round = 0; round < 40; round++) {
    let met = false;
    for (let i = 1; i < spots.length; i++) {
      const lack = least - (spots[i] - spots[i - 1]);
      if (lack < 1e-6) continue;
      met = true;
      spots[i - 1] -= lack / 2;
      spots[i] += lack / 2;
    }
    if (!met) break;
  }
  return spots;
}

/** figuresOf draws one station's figures in two lines: width and height, then the wall. */
export const figuresOf = {
  make: () => shape("g", {}, shape("path", { class: "lead" }), shape("g", {},
    shape("text", { y: -3 }), shape("text", { y: 13, class: "second" }))),

  update(group, station, side, spot, per) {
    const [lead, words] = group.children, [first, second] = words.children;
    put(group, "class", station.doubt ? "figure doubted" : "figure");
    put(lead, "d", line([[station.radius, station.height], [side - 3, spot], [side - 1, spot]]));
    put(words, "transform", `translate(${side} ${spot}) scale(${1 / per} ${-1 / per})`);
    say(first, `${station.across_words} across`);
    say(second, `at ${station.height_words}, wall ${station.wall_words}${station.doubt ? " – doubted" : ""}`);
  },
};
