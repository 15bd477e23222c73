// Which motif lies under a place on the wrap.

import { apart, area, holds, placed, unplaced } from "./shapes.js";

/** still is how far a press may go and be a tap, in pixels. */
export const still = { mouse: 3, pen: 4, touch: 9 };

/** under returns the motifs whose frames hold a place, the smallest frame first: {motif, copy}, copy being an index of its copies. */
export function under(wrap, place) {
  const found = [];
  for (const motif of wrap.motifs) {
    motif.copies.forEach((copy, index) => {
      if (motif.box.length && holds(motif.box, unplaced(place, copy))) found.push({ motif, copy: index, size: area(motif.box) });
    });
  }
  return found.sort((a, b) => a.size - b.size);
}

/** next returns what a tap chooses: the topmost, or the one below the one that is chosen already. */
export function next(found, chosen) {
  const at = found.findIndex(({ motif }) => motif.motif === chosen);
  return found.length ? found[(at + 1) % found.length] : null;
}

/** copyAt returns the copy of the first repeats that a place is in or next to. */
export function copyAt({ copies }, place) {
  const off = (copy) => Math.abs(unplaced(place, copy)[0]);
  return copies.reduce((best, copy) => (off(copy) < off(best) ? copy : best));
}

/** nearestTo returns which of a motif's copies has its middle nearest to a place: an index of them. */
export function nearestTo({ copies, middle }, place) {
  const off = copies.map((copy) => apart(placed(middle, copy), place));
  return off.indexOf(Math.min(...off));
}

/** partAt returns the name of the part whose cut lies nearest to a place of the wrap, or "" where none is so near. */
export function partAt({ copies }, { line, parts, part_of: of }, place, within) {
  let name = "", nearest = within;
  const there = copies.map((copy) => unplaced(place, copy));
  pieces(line).forEach((points, i) => {
    for (let k = 1; k < points.length; k++) {
      for (const at of there) {
        const far = off(at, points[k - 1], points[k]);
        if (far <= nearest) [name, nearest] = [parts[of[i]]?.name ?? "", far];
      }
    }
  });
  return name;
}

/** cutsOf returns the pieces of a motif's line that are of a part, as a path. */
export function cutsOf({ line, parts, part_of: of }, part) {
  const number = parts.findIndex(({ name }) => name === part);
  return line.slice(1).split("M").filter((piece, i) => of[i] === number).map((piece) => "M" + piece).join("");
}

function pieces(line) {
  return line.slice(1).split("M").map((piece) => {
    const numbers = piece.split(" ").map(Number);
    return Array.from({ length: numbers.length >> 1 }, (_, i) => [numbers[2 * i], numbers[2 * i + 1]]);
  });
}

/** off is how far a place is from a straight line between two others. */
function off([x, y], [ax, ay], [bx, by]) {
  const dx = bx - ax, dy = by - ay, whole = dx * dx + dy * dy;
  const t = whole ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / whole)) : 0;
  return apart([x, y], [ax + t * dx, ay + t * dy]);
}
