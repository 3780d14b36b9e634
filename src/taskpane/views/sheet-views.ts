// taskpane: the two tools that add a sheet: a new quote, and a copy with values.

import { freezeSheet } from "../actions/freeze-sheet.ts";
import { quotingSheet, type Units } from "../actions/quoting-sheet.ts";
import { byId, chosen, inputById } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";

export function quoteView(context: PaneContext): void {
  byId<HTMLFormElement>("pane-quote").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      const sheet = quotingSheet(chosen("quote-units") as Units, Number(inputById("pane-rows").value));
      if (!(await context.readCautions())) return "No sheet was added: the cautions were not read.";
      const name = await context.workbook.addSheet(sheet);
      return `The sheet "${name}" is added. Write over its example.`;
    });
  });
}

export function freezeView(context: PaneContext): void {
  byId<HTMLFormElement>("pane-freeze").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      const { name, replaced, others } = await freezeSheet(context.workbook);
      const rest = others === 0 ? "" : ` ${others} other formulas are still formulas.`;
      return `The sheet "${name}" holds ${replaced} values in place of REAM formulas.${rest}`;
    });
  });
}
