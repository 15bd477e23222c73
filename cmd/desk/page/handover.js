// A file handed to the person: the browser keeps it where downloads go.

import { el } from "./dom.js";

/** handOver has the browser keep a file under a name. */
export function handOver({ name, blob }) {
  const url = URL.createObjectURL(blob);
  const link = el("a", { href: url, download: name, hidden: true });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60000);
}
