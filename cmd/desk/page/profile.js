// The glass cut through its middle, with the stations where it was measured: to read, drag and add.

import { el, say } from "./dom.js";
import { calipers, Drag } from "./drag.js";
import { Late } from "./late.js";
import { keep, line, put, radiusAt, shape } from "./shapes.js";
import { Sight } from "./sight.js";
import { apartUp, figuresOf } from "./figures.js";

const pause = 700; // ms without a key after which a run of keys is over
const air = 6;

/** mount fills root and follows the store. */
export function mount(root, store) {
  new Profile(root, store);
}

class Profile {
  constructor(root, store) {
    this.store = store;
    this.parts = {};
    for (const name of ["glass-cut", "inside-line", "outside-line", "band-line", "fill-line", "axis", "tap"]) {
      this.parts[name] = shape("path", { class: name });
    }
    this.figures = shape("g", { class: "figures", "aria-hidden": "true" });
    this.stations = shape("g", { class: "stations" });
    const flat = shape("g", { transform: "scale(1 -1)" }, ...Object.values(this.parts), this.figures, this.stations);
    this.svg = shape("svg", { class: "profile", role: "group", "aria-label": "The glass cut through its middle", "aria-describedby": "profile-keys" }, flat);
    this.sight = new Sight(this.svg, () => this.#draw());
    const note = el("p", { class: "of-before", role: "status", hidden: true });
    this.late = new Late(root, note);
    root.append(this.svg, el("p", { class: "faint small" }, "Drag a point to what you measured. Tap the outline between two for a new one."), note,
      el("p", { id: "profile-keys", class: "unseen" }, "Arrow keys change the width and the height of a station by one step of the calipers, with Shift by ten. Escape gives up."));
    this.#listen();
    store.subscribe((state) => this.#show(state));
  }

  #listen() {
    const { svg } = this;
    svg.addEventListener("pointerdown", (event) => this.#press(event));
    svg.addEventListener("pointermove", (event) => this.#move(event));
    svg.addEventListener("pointerup", (event) => this.#lift(event));
    svg.addEventListener("pointercancel", () => this.giveUp());
    svg.addEventListener("touchstart", (event) => this.act?.path && event.cancelable && event.preventDefault(), { passive: false });
    this.stations.addEventListener("keydown", (event) => this.#key(event));
    this.stations.addEventListener("focusout", () => this.#rest());
    window.addEventListener("keydown", (event) => event.key === "Escape" && this.giveUp());
  }

  giveUp() {
    clearTimeout(this.timer);
    (this.act?.drag ?? this.run?.drag)?.giveUp();
    this.act = this.run = null;
  }

  #show(state) {
    this.late.follow(state);
    const profile = state.answer?.profile;
    if (!profile || profile === this.profile) return;
    this.profile = profile;
    const widest = Math.max(...profile.outside.map(([r]) => r)), rim = profile.outside.at(-1)[1];
    // The figures stand to the right of the glass, a share of its height wide.
    this.side = widest + 0.08 * rim;
    this.sight.over({ x: -widest - air, y: -rim - air, width: 2 * widest + 2 * air + 0.95 * rim, height: rim + 2 * air });
    this.#draw();
  }

  #draw() {
    const { profile, parts } = this;
    if (!profile) return;
    const { outside, inside, band, fill } = profile, mirror = (points) => points.map(([r, z]) => [-r, z]);
    const cut = inside.length ? [...outside, ...inside.slice().reverse(), [0, inside[0][1]], [0, outside[0][1]]] : outside;
    put(parts["glass-cut"], "d", line(cut) + "Z");
    put(parts["outside-line"], "d", line(outside) + line(mirror(outside)) + level(outside[0]) + level(outside.at(-1)));
    put(parts["inside-line"], "d", line(inside) + line(mirror(inside)) + (inside.length ? level(inside[0]) : ""));
    put(parts["band-line"], "d", band.map((z) => level([radiusAt(outside, z), z])).join(""));
    put(parts["fill-line"], "d", fill === null || fill === undefined ? "" : level([radiusAt(inside.length ? inside : outside, fill), fill]));
    put(parts.axis, "d", line([[0, outside[0][1]], [0, outside.at(-1)[1]]]));
    put(parts.tap, "d", line(outside));
    this.#drawStations();
  }

  #drawStations() {
    const { stations } = this.profile, per = this.sight.perMillimetre;
    const spots = apartUp(stations.map(({ height }) => height), 40 / per);
    keep(this.figures, stations, figuresOf.make, (group, station, i) => figuresOf.update(group, station, this.side, spots[i], per));
    keep(this.stations, stations, point, (group, station, i) => {
      put(group, "data-station", i + 1);
      put(group, "class", station.doubt ? "station doubted" : "station");
      put(group, "aria-label", stationWords(station, i));
      put(group, "transform", `translate(${station.radius} ${station.height}) scale(${1 / per} ${-1 / per})`);
      say(group.querySelector("title"), station.doubt || "");
    });
  }

  #press(event) {
    if (event.button > 0 || !this.profile) return;
    const number = Number(event.target.closest("[data-station]")?.dataset.station);
    const place = this.sight.at(event.clientX, event.clientY), station = this.profile.stations[number - 1];
    this.svg.setPointerCapture(event.pointerId);
    this.act = { place, screen: [event.clientX, event.clientY], path: station?.path, from: station && [station.radius, station.height], outline: event.target === this.parts.tap || this.#beside(place, station) };
    if (station) this.stations.children[number - 1].focus({ preventScroll: true });
  }

  #move(event) {
    const { act } = this;
    if (!act?.path) return;
    if (!act.drag && Math.hypot(event.clientX - act.screen[0], event.clientY - act.screen[1]) < 4) return;
    act.drag ??= new Drag(this.store, act.path);
    const per = this.sight.perMillimetre, [x, y] = act.screen;
    act.drag.to({ to: [Math.max(act.from[0] + (event.clientX - x) / per, 0.1), act.from[1] + (y - event.clientY) / per] });
  }

  #lift(event) {
    const { act } = this;
    this.act = null;
    if (!act) return;
    act.drag?.done();
    if (!act.drag && act.outline && Math.hypot(event.clientX - act.screen[0], event.clientY - act.screen[1]) < 9) this.#add(act.place[1]);
  }

  /** beside reports whether a place is within reach of a station, and yet rather one above or below it. */
  #beside([, y], station) {
    return station !== undefined && Math.abs(y - station.height) * this.sight.perMillimetre > 16;
  }

  /** add adds a station at a height; the engine reads its width off the profile. */
  #add(height) {
    const { stations } = this.profile;
    if (height <= stations[0].height || height >= stations.at(-1).height) return;
    const path = stations[0].path.replace(/\[\d+\]$/, "");
    this.store.change([{ op: "add", path, value: { height: `${height.toFixed(2)} mm` } }]);
  }

  #key(event) {
    const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const way = ways[event.key], station = this.profile.stations[Number(event.target.dataset.station) - 1];
    if (!way || !station || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (this.run?.path !== station.path) {
      this.#rest();
      this.run = { path: station.path, from: [station.radius, station.height], steps: [0, 0], drag: new Drag(this.store, station.path) };
    }
    const { run } = this, times = event.shiftKey ? 10 : 1, step = calipers[this.store.state.answer.unit] ?? calipers.mm;
    run.steps = run.steps.map((n, i) => n + way[i] * times);
    // Calipers show the width, which is twice the radius.
    run.drag.to({ to: [run.from[0] + (run.steps[0] * step) / 2, run.from[1] + run.steps[1] * step] });
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.#rest(), pause);
  }

  #rest() {
    clearTimeout(this.timer);
    this.run?.drag.done();
    this.run = null;
  }
}

const level = ([r, z]) => line([[-r, z], [r, z]]);

function point() {
  return shape("g", { class: "station", tabindex: 0, role: "button" },
    shape("title"), shape("circle", { class: "reach", r: 22 }), shape("circle", { class: "spot", r: 6 }));
}

function stationWords({ height_words: height, across_words: across, wall_words: wall, doubt }, i) {
  return `Station ${i + 1}: ${across} across at ${height}, wall ${wall}${doubt ? ". " + doubt : ""}`;
}
