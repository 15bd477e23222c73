// What of a picture of the glass is kept: what lies on the glass.

const grown = 0.3; // mm, for the ink of its outline
const steps = 90;

/**
 * keptOf returns a CSS clip-path of a picture whose box, [x0, y0, x1, y1], is in millimetres, y up.
 * What was dragged over the rim is cut off, and with alone the shadow under the glass too.
 */
export function keptOf(profile, tilt, [x0, y0, x1, y1], alone) {
  const down = Math.tan((tilt * Math.PI) / 180), widest = Math.max(...profile.map(([r]) => r));
  const top = [], foot = [];
  for (let i = 0; i <= steps; i++) {
    const x = -widest * Math.cos((i * Math.PI) / steps);
    const [low, high] = reach(profile, Math.abs(x), down), out = x * (1 + grown / widest);
    top.push([out, high + grown]);
    foot.unshift([out, low - grown]);
  }
  const corners = alone ? [...top, ...foot] : [[x0, top[0][1]], ...top, [x1, top.at(-1)[1]], [x1, y0], [x0, y0]];
  const share = ([x, y]) => `${percent((x - x0) / (x1 - x0))} ${percent((y1 - y) / (y1 - y0))}`;
  return `polygon(${corners.map(share).join(", ")})`;
}

/** reach returns from where to where, upwards, the glass is seen at a distance from its axis. */
function reach(profile, x, down) {
  let low = Infinity, high = -Infinity;
  for (let i = 1; i < profile.length; i++) {
    for (const [r, z] of [beyond(profile[i - 1], profile[i], x), beyond(profile[i], profile[i - 1], x)]) {
      if (r < x - 1e-6) continue;
      const off = down * Math.sqrt(Math.max(r * r - x * x, 0));
      low = Math.min(low, z - off);
      high = Math.max(high, z + off);
    }
  }
  return [low, high];
}

/** beyond returns an end of a piece of the profile, or where the piece comes to lie so far from the axis. */
function beyond([r0, z0], [r1, z1], x) {
  return r0 < x && r1 > x ? [x, z0 + ((z1 - z0) * (x - r0)) / (r1 - r0)] : [r0, z0];
}

const percent = (part) => `${Math.round(part * 1e5) / 1e3}%`;
