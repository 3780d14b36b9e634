// taskpane: a picture with its figures as a table, and the means to copy it.

import { type Figures, renderScene, type Scene } from "../../papers/pictures/scene.ts";
import { make, tableRows } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";
import { copyPng, copyText } from "../pictures/copy-picture.ts";

export function showPicture(
  place: HTMLElement,
  id: string,
  scene: Scene,
  figures: Figures,
  { run }: PaneContext,
): void {
  const svg = renderScene(scene, `pane-${id}`);
  const source = make("textarea", {
    readonly: "",
    rows: "4",
    "aria-label": "The picture as SVG text",
    hidden: "",
  });
  const button = (text: string, act: () => Promise<string>) => {
    const made = make("button", { type: "button" }, text);
    made.addEventListener("click", () => run(act));
    return made;
  };
  /** What can't be copied for the person is laid open for copying by hand. */
  const byHand = (text: string) => {
    source.hidden = false;
    source.value = text;
    source.focus();
    source.select();
    return "Copying is blocked here: the picture's SVG text is selected below, copy it with Ctrl+C (Cmd+C).";
  };
  const written = () => new XMLSerializer().serializeToString(svg);
  place.replaceChildren(
    make("figure", {}, svg),
    make(
      "div",
      { class: "pane-buttons" },
      button("Copy as picture", async () =>
        (await copyPng(written(), scene)) ? "The picture is copied." : byHand(written()),
      ),
      button("Copy as SVG", async () =>
        (await copyText(written())) ? "The picture's SVG text is copied." : byHand(written()),
      ),
    ),
    source,
    make(
      "table",
      { class: "pane-table" },
      make("caption", {}, figures.caption),
      make("thead", {}, make("tr", {}, ...figures.head.map(headCell))),
      make("tbody", {}, ...tableRows(figures.rows)),
    ),
  );
  place.hidden = false;
  place.scrollIntoView({ block: "start" });
}

function headCell(text: string): HTMLElement {
  return text === "" ? make("td") : make("th", { scope: "col" }, text);
}
