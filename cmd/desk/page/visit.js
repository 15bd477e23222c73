// The server is told that this page is shown, and that it goes: a program that was double-clicked
// ends when its page is closed.

const page = [...crypto.getRandomValues(new Uint8Array(8))].map((byte) => byte.toString(16)).join("-");

/** visit says that the page is here, and once it goes says that. */
export function visit() {
  tell(true);
  addEventListener("pagehide", ({ persisted }) => persisted || tell(false)); // one that is kept may be shown again
}

/** tell outlives the page. */
function tell(here) {
  navigator.sendBeacon("visit", new Blob([JSON.stringify({ page, here })], { type: "application/json" }));
}
