// Which control goes with which sort of key. A sort that isn't known here is
// a plain box, so that a new one can be typed at once.

import { box, lengths } from "./boxes.js";
import { pair } from "./pairs.js";
import { slider } from "./sliders.js";
import { stepper } from "./steppers.js";
import { kind, motif, onOff, wheel, word } from "./choices.js";
import { order } from "./order.js";
import { repeats } from "./repeats.js";
import { rock } from "./rock.js";
import { swell } from "./swell.js";
import { texts } from "./texts.js";

const controls = {
  text: box, length: box, measure: box, weight: box, time: box,
  lengths, heights: pair, place: pair, wear: pair,
  number: slider, share: slider, degrees: slider,
  whole: stepper, count: stepper,
  word, switch: onOff, wheel, wheels: order, kind, motif, repeats, texts,
  shares: swell, rock,
};

/** Sorts that are tables of their own, and no fields. */
export const isTable = (sort) => sort === "tables";

export function controlFor(desc) {
  return controls[desc.sort] || box;
}
