// taskpane: explaining the selected cell, and checking its sheet.

import { addressOf, type Content } from "../../workbook/workbook.ts";
import { checkSheet, type Finding } from "../actions/check-sheet.ts";
import { counted } from "../actions/convert-cells.ts";
import { type Explanation, explainCell } from "../actions/explain-cell.ts";
import { reenterFormulas } from "../actions/reenter-formulas.ts";
import { byId, listItems, make, tableRows } from "../dom.ts";
import { signature } from "../help.ts";
import type { PaneContext } from "../pane-context.ts";

export function explainView(context: PaneContext): void {
  byId<HTMLFormElement>("pane-explain").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      byId("pane-explained").hidden = true;
      showExplanation(await explainCell(context.workbook, await context.help()));
      byId("pane-explained-title").focus();
      return undefined;
    });
  });
}

function showExplanation(told: Explanation): void {
  const { address, formula, described, value, message, args, steps, withoutSteps, sources } = told;
  byId("pane-explained-title").textContent = `${address}: REAM.${described.id}`;
  byId("pane-explained-formula").textContent = formula || signature(described);
  byId("pane-explained-value").textContent = message ? `${value}: ${message}` : String(value);
  byId("pane-explained-what").textContent = described.description;
  byId("pane-explained-args").replaceChildren(
    ...tableRows(
      args
        .filter(({ written }) => written !== "")
        .map(({ name, written, area, value: given, description }) => [
          name,
          area ? addressOf(area) : written,
          shown(given),
          description,
        ]),
    ),
  );
  const left = args.filter(({ written }) => written === "").map(({ name }) => name);
  byId("pane-explained-left").textContent = left.length > 0 ? `Left out: ${left.join(", ")}.` : "";
  byId("pane-explained-steps").replaceChildren(
    ...steps.map((line) => make("li", {}, make("code", {}, line))),
  );
  byId("pane-explained-steps-none").textContent = withoutSteps ?? "";
  byId("pane-explained-sources").replaceChildren(
    ...listItems(sources.map(({ kind, text }) => `${text} (${KINDS[kind] ?? kind})`)),
  );
  const isRun = RUN_ON_A_MACHINE.has(described.topic);
  byId("pane-explained-caution").textContent = isRun
    ? "A starting value for an estimate. The machine's manual and the tool's own data come first."
    : "";
  byId("pane-explained").hidden = false;
}

const RUN_ON_A_MACHINE = new Set(["Speeds and feeds", "Torque and power", "Tool life", "Stock and drills"]);
const KINDS: Readonly<Record<string, string>> = {
  print: "seen in print",
  exact: "a definition",
  derived: "from first principles",
  practice: "common practice, no source",
  memory: "a value from memory",
};

const shown = (value: Content | undefined) =>
  typeof value === "number" ? String(Number(value.toPrecision(9))) : String(value ?? "");

export function checkSheetView(context: PaneContext): void {
  byId<HTMLFormElement>("pane-look").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      const found = await checkSheet(context.workbook, await context.help());
      const shown = found.slice(0, MOST_FINDINGS);
      byId("pane-looked-rows").replaceChildren(...shown.map((finding) => findingItem(finding, context)));
      byId("pane-looked").hidden = found.length === 0;
      if (found.length === 0) return "Nothing was found on this sheet.";
      const rest = shown.length < found.length ? ` The first ${shown.length} are listed.` : "";
      return `${counted(found.length, "findings")} on this sheet.${rest}`;
    });
  });
  byId("pane-reenter").addEventListener("click", () =>
    context.run(async () => {
      const { functions } = await context.help();
      const { formulas, sheets } = await reenterFormulas(
        context.workbook,
        functions.map(({ id }) => id),
      );
      return `${counted(formulas, "formulas")} entered again on ${counted(sheets, "sheets")}.`;
    }),
  );
}

const MOST_FINDINGS = 200;

function findingItem({ area, address, what }: Finding, context: PaneContext): HTMLElement {
  const link = make("button", { type: "button", class: "pane-plain" }, address);
  link.addEventListener("click", () =>
    context.run(async () => {
      await context.workbook.show(area);
      return `${address} is selected.`;
    }),
  );
  return make("li", {}, link, ` ${what}`);
}
