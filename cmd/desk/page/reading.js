// The text of a file that was chosen on this machine, or dropped on the page.

/** largest is how much of a file is read, in bytes: no job comes near it, and a drawing is sent with every question. */
const largest = 1 << 20;

/** textOf reads a file. tooLarge and noText are what to say of one that can't be read. */
export async function textOf(file, { tooLarge, noText }) {
  if (file.size > largest) throw new Error(tooLarge);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    throw new Error(noText);
  }
}
