// "Start from my calipers": a first job, one question at a time. Each answer
// is an edit of the starter job, and the engine says what it understood.

import { ask } from "./ask.js";
import { arrange, el, say } from "./dom.js";
import { dialog } from "./dialog.js";
import { file } from "./disk.js";
import { isAt, wrongWords } from "./field.js";
import { open } from "./headings.js";
import { steps } from "./guidesteps.js";

/** guide opens the questions; the job they make is one undo step. */
export function guide(store, about) {
  const run = { store, about, at: 0, answers: { unit: store.state.answer?.unit || "in", kind: "leaf" }, reply: null };
  const count = el("p", { class: "faint small", id: "guide-count" });
  const question = el("h3", { id: "guide-question", tabindex: "-1" });
  const where = el("p", { id: "guide-where" });
  const drawing = el("div", { class: "guide-drawing" });
  const fields = el("div", { class: "guide-fields" });
  const said = el("p", { class: "said", id: "guide-said", role: "status" });
  const wrong = el("p", { class: "wrong", id: "guide-wrong", role: "alert" });
  const back = el("button", { type: "button", id: "guide-back", onclick: () => move(run, -1) }, "Back");
  const next = el("button", { class: "main", id: "guide-next" }, "Next");
  const leave = el("button", { type: "button", class: "words", onclick: () => run.node.close() }, "Leave it");
  const form = el("form", { onsubmit: (event) => { event.preventDefault(); move(run, 1); } },
    count, question, el("div", { class: "guide-body" }, el("div", {}, where, fields, said, wrong), drawing),
    el("div", { class: "buttons" }, back, next, leave));
  Object.assign(run, { count, question, where, drawing, fields, said, wrong, back, next });
  run.node = dialog("Start from my calipers", form);
  run.node.classList.add("wide", "guide");
  put(run);
}

function put(run) {
  const step = steps[run.at];
  say(run.count, `Question ${run.at + 1} of ${steps.length}`);
  say(run.question, step.question);
  say(run.where, typeof step.where === "function" ? step.where(run) : step.where);
  arrange(run.drawing, step.drawing ? [step.drawing(run)] : []);
  arrange(run.fields, step.fields(run).map((f) => fieldNode(run, step, f)));
  run.back.disabled = run.at === 0;
  say(run.next, run.at === steps.length - 1 ? "Lay it out" : "Next");
  say(run.said, "");
  say(run.wrong, "");
  (run.fields.querySelector("input:checked, input, select") || run.next).focus();
  if (step.fields(run).some((f) => run.answers[f.name])) check(run);
}

function fieldNode(run, step, f) {
  if (f.choices) return choice(run, f);
  const input = el("input", {
    type: "text", id: "guide-" + f.name, value: run.answers[f.name] ?? "", autocomplete: "off", spellcheck: "false",
    inputmode: f.whole ? "numeric" : "text", "aria-describedby": "guide-where guide-said guide-wrong",
    oninput: (event) => answer(run, f, event.target.value),
  });
  const unit = f.whole || f.words ? null : el("span", { class: "unit" }, run.answers.unit);
  return el("div", { class: "guide-field" }, el("label", { for: input.id, class: "name" }, f.label), el("div", { class: "boxed" }, input, unit));
}

function choice(run, f) {
  const options = f.choices.map(({ value, label, picture }) =>
    el("label", { class: picture ? "with-picture" : null },
      el("input", { type: "radio", name: f.name, value, checked: run.answers[f.name] === value, onchange: () => answer(run, f, value) }),
      picture, label));
  return el("fieldset", { class: "radios" }, el("legend", { class: "name" }, f.label), options);
}

function answer(run, f, value) {
  run.answers[f.name] = value.trim();
  check(run);
}

/** check asks the engine what it understood of the answers so far. */
async function check(run) {
  const step = run.at;
  try {
    const reply = await ask("lay", { job: run.about.starters[run.answers.unit], edits: editsTo(run, step), want: ["form", "profile"] }, { slot: "guide" });
    if (run.at !== step) return;
    run.reply = reply;
    tell(run, reply);
  } catch (err) {
    if (!err.cancelled) say(run.wrong, err.message);
  }
}

function tell(run, reply) {
  const { mistake, form } = reply;
  const paths = steps[run.at].paths?.(run) || [];
  const mine = mistake && paths.some((p) => isAt(mistake.path, p));
  const fields = (form?.tables || []).flatMap((t) => t.fields);
  const words = paths.map((p) => fields.find((f) => f.path === p)?.understood).filter(Boolean);
  const remark = mine ? "" : steps[run.at].remark?.(reply) || "";
  say(run.said, mine ? "" : (words.length ? `Understood: ${words.join(", ")}. ` : "") + remark);
  say(run.wrong, mine ? wrongWords(mistake) : "");
}

function editsTo(run, last) {
  return steps.slice(0, last + 1).flatMap((step) => step.edits(run.answers, run.about));
}

async function move(run, by) {
  if (run.busy) return;
  if (by > 0 && !(await answered(run))) return;
  if (run.at + by >= steps.length) return finish(run);
  run.at = Math.max(0, run.at + by);
  put(run);
}

/** answered is whether the question has an answer that the engine takes. */
async function answered(run) {
  const fields = steps[run.at].fields(run);
  const missing = fields.find((f) => !f.optional && !run.answers[f.name]);
  if (missing) {
    say(run.wrong, "Still to answer: " + missing.label + ".");
    run.fields.querySelector("#guide-" + missing.name)?.focus();
    return false;
  }
  say(run.wrong, "");
  run.busy = true;
  await check(run);
  run.busy = false;
  if (run.wrong.textContent) run.fields.querySelector("input")?.focus();
  return run.wrong.textContent === "";
}

/** finish shows the job; where it does not clear, with the change of least loss. */
async function finish(run) {
  if (!run.reply) return;
  run.busy = true;
  say(run.said, "Laying it out…");
  const { job, words } = await clearing(run.reply.job).catch(() => ({ job: run.reply.job, words: "" }));
  run.busy = false;
  if (!run.node.open) return; // it was left meanwhile
  run.node.close();
  file.begin(job, "", words);
  open("design", { focus: true });
}

async function clearing(job) {
  const { clear, offers = [] } = await ask("fit", { job }, { slot: "guide" });
  if (clear || offers.length === 0) return { job, words: "" };
  const changed = await ask("lay", { job, edits: offers[0].edits, want: [] }, { slot: "guide" });
  return { job: changed.job, words: `So that it clears, this was changed: ${offers[0].words.replaceAll(", now ", ", not ")}.` };
}
