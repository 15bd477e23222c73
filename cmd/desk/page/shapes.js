// Shapes of a drawing in millimetres, y up, as SVG elements.

const space = "http://www.w3.org/2000/svg";

/** shape makes an SVG element. Attributes that are null or false are left out. */
export function shape(tag, attrs = {}, ...children) {
  const made = document.createElementNS(space, tag);
  for (const [name, value] of Object.entries(attrs)) put(made, name, value);
  made.append(...children);
  return made;
}

/** put sets an attribute only where it differs, so that what is alike is not painted again. */
export function put(element, name, value) {
  if (value === null || value === undefined || value === false) {
    if (element.hasAttribute(name)) element.removeAttribute(name);
    return;
  }
  const text = String(value);
  if (element.getAttribute(name) !== text) element.setAttribute(name, text);
}

/** keep makes a parent's children one for each of some things, and keeps those that it has. */
export function keep(parent, things, make, update) {
  while (parent.childElementCount > things.length) parent.lastElementChild.remove();
  things.forEach((thing, i) => {
    const child = parent.children[i] ?? parent.appendChild(make(thing, i));
    update(child, thing, i);
  });
}

/** matrix writes a copy, [cos, sin, dx, dy], as a transform. */
export function matrix([cos, sin, dx, dy]) {
  return `matrix(${cos} ${sin} ${-sin} ${cos} ${dx} ${dy})`;
}

/** placed returns where a point lies in a copy. */
export function placed([x, y], [cos, sin, dx, dy]) {
  return [cos * x - sin * y + dx, sin * x + cos * y + dy];
}

/** unplaced returns where a point of a copy lies in repeat 1. */
export function unplaced([x, y], [cos, sin, dx, dy]) {
  const u = x - dx, v = y - dy;
  return [cos * u + sin * v, cos * v - sin * u];
}

/** polygon writes corners as a closed path. */
export function polygon(corners) {
  return corners.length ? "M" + corners.map(([x, y]) => `${round(x)} ${round(y)}`).join("L") + "Z" : "";
}

/** line writes points as an open path. */
export function line(points) {
  return points.length ? "M" + points.map(([x, y]) => `${round(x)} ${round(y)}`).join("L") : "";
}

/** holds reports whether a polygon holds a point. */
export function holds(corners, [x, y]) {
  let inside = false;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    const [xi, yi] = corners[i], [xj, yj] = corners[j];
    if (yi > y !== yj > y && x < xi + ((xj - xi) * (y - yi)) / (yj - yi)) inside = !inside;
  }
  return inside;
}

/** area returns a polygon's area. */
export function area(corners) {
  let sum = 0;
  for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
    sum += corners[j][0] * corners[i][1] - corners[i][0] * corners[j][1];
  }
  return Math.abs(sum) / 2;
}

/** radiusAt returns the radius of a curve of [radius, height], from the foot up, at a height. */
export function radiusAt(curve, z) {
  const i = curve.findIndex(([, height]) => height >= z);
  if (i <= 0) return (i < 0 ? curve.at(-1) : curve[0])[0];
  const [r0, z0] = curve[i - 1], [r1, z1] = curve[i];
  return z1 > z0 ? r0 + ((r1 - r0) * (z - z0)) / (z1 - z0) : r1;
}

export const apart = ([a, b], [c, d]) => Math.hypot(a - c, b - d);
export const between = ([a, b], [c, d], share = 0.5) => [a + (c - a) * share, b + (d - b) * share];

function round(x) {
  return Math.round(x * 1000) / 1000;
}
