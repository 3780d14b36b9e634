// taskpane: the buttons that make the papers.

import type { PrintSetup } from "../../workbook/workbook.ts";
import { makeCard, makeComparison, makeQuote, makeQuoteFile, makeTrouble } from "../actions/papers.ts";
import { byId, chosen } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

export function papersView(context: PaneContext): void {
  const { workbook } = context;
  const paper = () => chosen("paper") as PrintSetup["paper"];
  const actions: Readonly<Record<string, () => Promise<string>>> = {
    "pane-paper-quote": () => makeQuote(workbook, paper(), new Date()),
    "pane-paper-file": async () => {
      const { told, file } = await makeQuoteFile(workbook, paper(), new Date());
      if (file) download(file.name, file.bytes);
      return told;
    },
    "pane-paper-card": async () =>
      (await context.readCautions())
        ? makeCard(workbook, paper())
        : "No card was made: the cautions were not read.",
    "pane-paper-compare": () => makeComparison(workbook, paper(), new Date()),
    "pane-paper-trouble": () => makeTrouble(workbook, paper()),
  };
  for (const [id, action] of Object.entries(actions))
    byId(id).addEventListener("click", () => void context.run(action));
}

function download(name: string, bytes: Uint8Array<ArrayBuffer>): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: XLSX }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
