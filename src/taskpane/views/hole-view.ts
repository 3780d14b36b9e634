// taskpane: the picture of the hole for a callout.

import type { Units } from "../../calc/lengths.ts";
import { readLengthText } from "../../calc/number-text.ts";
import { addressOf, Refusal } from "../../workbook/workbook.ts";
import { byId, chosen, inputById } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";
import { holeFacts, holeFigures, holePicture } from "../pictures/hole-picture.ts";
import { showPicture } from "./picture.ts";

export function holeView(context: PaneContext): void {
  const callout = inputById("pane-callout");
  const form = byId<HTMLFormElement>("pane-hole");
  const draw = () => {
    byId("pane-hole-picture").hidden = true;
    if (callout.value.trim() === "") throw new Refusal("Write a callout, or take the cell that holds one.");
    const over = inputById("pane-cuts-over").value.trim();
    const units = chosen("hole-units") as Units;
    const facts = holeFacts(callout.value, units, over === "" ? 0 : readLengthText(over, "cutsOver", units));
    showPicture(byId("pane-hole-picture"), "hole", holePicture(facts), holeFigures(facts), context);
    return `${facts.callout} is drawn.`;
  };
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => draw());
  });
  byId("pane-callout-take").addEventListener("click", () =>
    context.run(async () => {
      const active = await context.workbook.active();
      const [[value]] = (await context.workbook.read(active)).values;
      if (String(value).trim() === "")
        throw new Refusal(`${addressOf(active)} is empty: select a cell that holds a callout.`);
      callout.value = String(value);
      return draw();
    }),
  );
}
