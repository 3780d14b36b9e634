// reference: what a page of the reference does by itself: the search of the index, which is the pane's, and buttons
// that copy a formula.

import { functionFinder } from "../taskpane/actions/find-functions.ts";
import { make } from "../taskpane/dom.ts";
import { type HelpFunction, readHelp } from "../taskpane/help.ts";

/** The nearest are enough: the rest only share a word. */
const MOST_FOUND = 12;

function startSearch(box: HTMLInputElement): void {
  const find = functionFinder(readHelp(JSON.parse(document.getElementById("help")!.textContent)));
  const found = document.getElementById("found")!;
  const results = document.getElementById("results")!;
  const all = [...document.querySelectorAll<HTMLElement>("section")];
  const search = () => {
    const isEmpty = box.value.trim() === "";
    for (const section of all) section.hidden = !isEmpty;
    const { functions, fits } = find(box.value);
    const nearest = functions.slice(0, MOST_FOUND);
    results.replaceChildren(...nearest.map(entry));
    found.textContent = isEmpty
      ? ""
      : fits
        ? `${nearest.length} found, the nearest first`
        : "Nothing fits these words. These are used most:";
  };
  box.addEventListener("input", search);
  search();
}

function entry({ id, description }: HelpFunction): HTMLElement {
  return make("li", {}, make("a", { href: `${id}.html` }, id), " ", make("span", {}, description));
}

function startCopying(button: HTMLButtonElement): void {
  button.hidden = false;
  button.addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(button.dataset.copy!);
      button.textContent = "Copied";
    } catch {
      button.textContent = "Not copied: select the formula";
    }
  });
}

const box = document.querySelector<HTMLInputElement>("#search");
if (box) startSearch(box);
if (navigator.clipboard)
  for (const button of document.querySelectorAll<HTMLButtonElement>("button[data-copy]"))
    startCopying(button);
