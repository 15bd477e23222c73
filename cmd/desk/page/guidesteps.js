// The questions of the guide, in the order in which one measures: what is
// asked, where to measure, and which edits of the starter job an answer makes.

import { picture } from "./dom.js";
import { measured } from "./guidedrawing.js";

const set = (path, value) => (value ? [{ op: "set", path, value }] : []);
const example = (unit, inches, mm) => (unit === "mm" ? mm : inches);

/** The rim is the last station: the third where a middle one was measured. */
const rim = (answers) => `blank.station[${answers.middleHeight && answers.middleAcross ? 3 : 2}]`;
const hasMiddle = (answers) => Boolean(answers.middleHeight && answers.middleAcross);

export const steps = [
  {
    question: "What do your calipers read?",
    where: "A bare number will be in this unit. You can still write the other one out, as in 79.4 mm or 3 1/8 in.",
    fields: () => [{ name: "unit", label: "Unit", choices: [{ value: "in", label: "inches" }, { value: "mm", label: "millimetres" }] }],
    // the starter's middle station goes: it comes back where one is measured; and
    // of its rack the wheel that is not asked about
    edits: () => [{ op: "drop", path: "blank.station[2]" }, { op: "drop", path: "wheel[2]" }],
  },
  {
    question: "What do you call this glass?",
    where: "The name stands on every sheet and in the names of the files.",
    fields: () => [{ name: "name", label: "Name", words: true }],
    paths: () => ["blank.name", "title"],
    edits: (a) => [...set("title", a.name), ...set("blank.name", a.name)],
  },
  {
    question: "How high is it?",
    where: "Stand it on the table. Measure from the table to the rim.",
    drawing: () => measured("height"),
    fields: (run) => [{ name: "height", label: `Height, as ${example(run.answers.unit, "3 3/4", "95.5")}` }],
    paths: () => ["blank.station[2].height"],
    edits: (a) => set("blank.station[2].height", a.height),
  },
  {
    question: "How wide is it at the foot?",
    where: "The outside diameter just above the table, where the side begins.",
    drawing: () => measured("foot"),
    fields: (run) => [{ name: "foot", label: `Across at the foot, as ${example(run.answers.unit, "2 3/4", "70.2")}` }],
    paths: () => ["blank.station[1].across"],
    edits: (a) => set("blank.station[1].across", a.foot),
  },
  {
    question: "How wide is it at the rim?",
    where: "The outside diameter at the very top.",
    drawing: () => measured("rim"),
    fields: (run) => [{ name: "rim", label: `Across at the rim, as ${example(run.answers.unit, "3 1/8", "79.4")}` }],
    paths: () => ["blank.station[2].across"],
    edits: (a) => set("blank.station[2].across", a.rim),
  },
  {
    question: "Does its side bend?",
    where: "If it bellies or narrows between foot and rim, measure one height where it does so most. If it runs straight, leave both empty.",
    drawing: () => measured("middle"),
    fields: (run) => [
      { name: "middleHeight", label: `Height of that place, as ${example(run.answers.unit, "1 7/8", "48")}`, optional: true },
      { name: "middleAcross", label: "Across there", optional: true },
    ],
    paths: (run) => (hasMiddle(run.answers) ? ["blank.station[2].height", "blank.station[2].across"] : []),
    edits: (a) => (hasMiddle(a)
      ? [{ op: "add", path: "blank.station", at: 2, value: { height: a.middleHeight, across: a.middleAcross } }] : []),
  },
  {
    question: "How thick is the wall?",
    where: (run) => `Square to the glass, where it is thinnest round: low down by the foot, ${hasMiddle(run.answers) ? "at the place between, " : ""}and at the rim.`,
    drawing: (run) => measured(hasMiddle(run.answers) ? "threeWalls" : "walls"),
    fields: (run) => [
      { name: "wallFoot", label: `Wall at the foot, as ${example(run.answers.unit, "5/16", "8")}` },
      ...(hasMiddle(run.answers) ? [{ name: "wallMiddle", label: "Wall at the place between" }] : []),
      { name: "wallRim", label: `Wall at the rim, as ${example(run.answers.unit, "3/32", "2.4")}` },
    ],
    paths: (run) => ["blank.station[1].wall", ...(hasMiddle(run.answers) ? ["blank.station[2].wall"] : []), rim(run.answers) + ".wall"],
    remark: ({ profile }) => (thickRim(profile) ? "The wall is thicker at the rim than at the foot: few glasses are, so measure both again." : ""),
    edits: (a) => [
      ...set("blank.station[1].wall", a.wallFoot),
      ...(hasMiddle(a) ? set("blank.station[2].wall", a.wallMiddle) : []),
      ...set(rim(a) + ".wall", a.wallRim),
    ],
  },
  {
    question: "How thick is the floor?",
    where: "The height of the glass less how deep it is inside. Leave it empty if you can't measure it.",
    drawing: () => measured("floor"),
    fields: (run) => [{ name: "floor", label: `Floor, as ${example(run.answers.unit, "1/2", "12")}`, optional: true }],
    paths: () => ["blank.floor"],
    edits: (a) => (a.floor ? set("blank.floor", a.floor) : [{ op: "remove", path: "blank.floor" }]),
  },
  {
    question: "Which mitre wheel will you use?",
    where: (run) => `Its diameter, the angle of its V (a new one is often 90 degrees), and its thickness from face to face: leave that empty, and ${example(run.answers.unit, "1/4 in", "6 mm")} is taken. Other wheels can be put on the rack later.`,
    drawing: () => measured("wheel"),
    fields: (run) => [
      { name: "wheel", label: `Across the wheel, as ${example(run.answers.unit, "4", "100")}` },
      { name: "angle", label: "Angle of its V, in degrees", whole: true },
      { name: "thick", label: "Its thickness, if you know it", optional: true },
    ],
    paths: () => ["wheel[1].across", "wheel[1].angle", "wheel[1].thick"],
    edits: (a) => [...set("wheel[1].across", a.wheel), ...set("wheel[1].thick", a.thick), ...set("wheel[1].angle", Number(a.angle) || a.angle)],
  },
  {
    question: "How many times does the design go round?",
    where: "The glass is divided into so many equal parts, and each gets the same.",
    fields: () => [{ name: "repeats", label: "Times round, as 3", whole: true }],
    paths: () => ["layout.repeats"],
    edits: (a) => set("layout.repeats", Number(a.repeats) || a.repeats),
  },
  {
    question: "What stands in each part?",
    where: "One to begin with. More can be added, and every one moved and sized.",
    fields: (run) => [{
      name: "kind", label: "Motif",
      choices: run.about.kinds.map((k) => ({ value: k.name, label: k.name, picture: k.swatch ? hidden(k.swatch) : null })),
    }],
    paths: () => ["motif[1].kind"],
    edits: (a) => (a.kind ? [{ op: "add", path: "motif", value: { kind: a.kind } }, { op: "drop", path: "motif[1]" }] : []),
  },
];

/** thickRim is whether the wall at the rim is measured thicker than at the foot. */
function thickRim(profile) {
  const stations = profile?.stations || [];
  return stations.length > 1 && stations.at(-1).wall > stations[0].wall;
}

function hidden(swatch) {
  const drawn = picture(swatch);
  drawn.setAttribute("aria-hidden", "true");
  return drawn;
}
