// taskpane: the tools that add a sheet: a new quote, the shop's table, and a copy with values.

import { continueQuote } from "../actions/continue-quote.ts";
import { freezeSheet } from "../actions/freeze-sheet.ts";
import { quotingSheet, type Units } from "../actions/quoting-sheet.ts";
import { shopTable, shopTableFaults, shopTableName, shopTablesOf } from "../actions/shop-table.ts";
import { byId, chosen, inputById, listItems } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";

export function quoteView(context: PaneContext): void {
  const { workbook } = context;
  byId<HTMLFormElement>("pane-quote").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      const sheet = quotingSheet(Number(inputById("pane-rows").value), await shopTablesOf(workbook));
      if (!(await context.readCautions())) return "No sheet was added: the cautions were not read.";
      const name = await workbook.addSheet(sheet);
      return `The sheet "${name}" is added. Write over its example.`;
    });
  });
  byId("pane-quote-continue").addEventListener("click", () =>
    context.run(async () => {
      const more = Number(inputById("pane-rows").value);
      const rows = await continueQuote(workbook, more, await shopTablesOf(workbook));
      return `${rows} rows got their formulas.`;
    }),
  );
  byId<HTMLFormElement>("pane-shop").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      const name = await workbook.addSheet(shopTable(chosen("shop-units") as Units));
      return `The sheet "${name}" is added. Write over its invented rows, then make a new quote: it reads this table.`;
    });
  });
  byId("pane-shop-check").addEventListener("click", () =>
    context.run(async () => {
      const tables = await shopTablesOf(workbook);
      const faults: string[] = [];
      for (const units of ["mm", "in"] as const) {
        const used = tables[units] && (await workbook.used(shopTableName(units)));
        if (!used) continue;
        const { values } = await workbook.read({
          ...used,
          row: 3,
          rows: Math.max(1, used.row + used.rows - 3),
        });
        faults.push(...shopTableFaults(values, units).map((fault) => `${shopTableName(units)}: ${fault}`));
      }
      byId("pane-shop-faults").replaceChildren(...listItems(faults));
      if (!tables.mm && !tables.in) return "There is no shop table yet.";
      return faults.length === 0 ? "The table has no problems." : `${faults.length} things to look at.`;
    }),
  );
}

export function freezeView(context: PaneContext): void {
  byId<HTMLFormElement>("pane-freeze").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      const withOwn = inputById("pane-freeze-own").checked;
      const { name, replaced, others, own, asValues } = await freezeSheet(context.workbook, withOwn);
      const rest = others === 0 ? "" : ` ${others} other formulas are still formulas.`;
      if (!withOwn) return `The sheet "${name}" holds ${replaced} values in place of REAM formulas.${rest}`;
      const left = asValues.length === 0 ? "" : ` As values: ${asValues.join(", ")}.`;
      return `The sheet "${name}" computes ${own} cells in the spreadsheet's own functions and holds ${replaced - own} values.${left}${rest}`;
    });
  });
}
