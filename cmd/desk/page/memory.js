// What this browser remembers between visits: which hints are gone, which
// paper is in the printer. A browser that remembers nothing does as well.

const begin = "roundlay ";

export function kept(name, otherwise) {
  try {
    return JSON.parse(localStorage.getItem(begin + name)) ?? otherwise;
  } catch {
    return otherwise;
  }
}

export function keep(name, value) {
  try {
    localStorage.setItem(begin + name, JSON.stringify(value));
  } catch {
    // a private window, or storage that is full: it is asked again next time
  }
}
