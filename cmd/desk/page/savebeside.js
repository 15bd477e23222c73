// Drawings that were brought to the page are put beside the job when that is saved.

import { disk } from "./ask.js";
import { filesFor, leave, bring, numbered } from "./beside.js";
import { near } from "./engine.js";
import { handOver } from "./handover.js";

const tries = 50; // names to try where one is taken

/**
 * saveBeside puts the files that a job names on disk, and returns the job's text. A file
 * never takes another's place: where its name is taken it gets one with a number, and the
 * job names it by that.
 */
export async function saveBeside(store) {
  const { text, form } = await store.settled();
  if (near) return handOverBeside(text);
  const edits = [];
  for (const [name, content] of Object.entries(filesFor({ job: text }) ?? {})) {
    const given = await put(name, content);
    if (given === name) {
      leave(name);
    } else {
      bring(given, content); // under the old name it stays, for whoever undoes this
      edits.push(...renamed(form, name, given));
    }
  }
  if (edits.length === 0) return text;
  store.change(edits);
  return (await store.settled()).text;
}

const handed = new Map(); // name → text of a file that the person has

/**
 * handOverBeside hands over what a job names, where the page has no disk of its own. It
 * stays here too: nothing else can read it.
 */
function handOverBeside(text) {
  for (const [name, content] of Object.entries(filesFor({ job: text }) ?? {})) {
    if (handed.get(name) === content) continue;
    handed.set(name, content);
    handOver({ name, blob: new Blob([content]) });
  }
  return text;
}

async function put(name, text) {
  for (let n = 1; n < tries; n++) {
    try {
      const reply = await disk("file-beside", { name: numbered(name, n), text });
      if (reply) return reply.name;
    } catch (err) {
      if (err.status !== 409) throw err;
    }
  }
  throw new Error(`${name} can't be put beside the job: every name like it is taken.`);
}

/** renamed is the edits by which a job names a file otherwise. */
function renamed(form, from, to) {
  const given = form.tables.flatMap(({ fields }) => fields).filter((field) => field.given);
  const set = (path, value) => ({ op: "set", path, value });
  return given.flatMap(({ key, path, text, list }) => {
    if (key === "file" && text === from) return [set(path, to)];
    return key === "include" && list?.includes(from) ? [set(path, list.map((name) => (name === from ? to : name)))] : [];
  });
}
