// taskpane: the cautions, shown once before the first use of speeds.

import { byId, listItems } from "./dom.ts";

const KEY = "reamwright-cautions-read";

/** What is remembered if the browser keeps nothing for this page. */
let readInThisPage = false;

function wasRead(): boolean {
  try {
    return readInThisPage || localStorage.getItem(KEY) === "yes";
  } catch {
    return readInThisPage;
  }
}

function remember(): void {
  readInThisPage = true;
  try {
    localStorage.setItem(KEY, "yes");
  } catch {
    // A browser that blocks its storage asks again in the next session.
  }
}

/** True when the cautions have been read, now or before; false if the person turns away. */
export function readCautions(): Promise<boolean> {
  if (wasRead()) return Promise.resolve(true);
  const dialog = byId<HTMLDialogElement>("pane-first");
  const texts = Array.from(byId("pane-cautions").children, ({ textContent }) => textContent ?? "");
  byId("pane-first-list").replaceChildren(...listItems(texts));
  return new Promise((resolve) => {
    dialog.addEventListener(
      "close",
      () => {
        const isRead = dialog.returnValue === "read";
        if (isRead) remember();
        resolve(isRead);
      },
      { once: true },
    );
    dialog.returnValue = "";
    dialog.showModal();
  });
}
