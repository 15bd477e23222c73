// Which motif lies under a place on the wrap.

import { area, holds, unplaced } from "./shapes.js";

/** still is how far a press may go and be a tap, in pixels. */
export const still = { mouse: 3, pen: 4, touch: 9 };

/** under returns the motifs whose frames hold a place, the smallest frame first: {motif, copy}, copy being an index of wrap.copies. */
export function under(wrap, place) {
  const found = [];
  wrap.copies.forEach((copy, index) => {
    const there = unplaced(place, copy);
    for (const motif of wrap.motifs) {
      if (motif.box.length && holds(motif.box, there)) found.push({ motif, copy: index, size: area(motif.box) });
    }
  });
  return found.sort((a, b) => a.size - b.size);
}

/** next returns what a tap chooses: the topmost, or the one below the one that is chosen already. */
export function next(found, chosen) {
  const at = found.findIndex(({ motif }) => motif.motif === chosen);
  return found.length ? found[(at + 1) % found.length] : null;
}
