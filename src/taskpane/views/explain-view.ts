// taskpane: explaining the selected cell, and checking its sheet.

import type { Content } from "../../workbook/workbook.ts";
import { checkSheet, type Finding } from "../actions/check-sheet.ts";
import { counted } from "../actions/convert-cells.ts";
import { type ExplainedCall, type Explanation, explainCell } from "../actions/explain-cell.ts";
import { reenterFormulas } from "../actions/reenter-formulas.ts";
import { someOf } from "../actions/references.ts";
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

function showExplanation({ address, formula, value, message, otherwise, calls }: Explanation): void {
  const names = [...new Set(calls.map(({ described }) => `REAM.${described.id}`))];
  byId("pane-explained-title").textContent = `${address}: ${names.join(", ")}`;
  byId("pane-explained-formula").textContent = formula;
  byId("pane-explained-value").textContent = message ? `${value}: ${message}` : shown(value);
  const warning = byId("pane-explained-otherwise");
  warning.hidden = otherwise === undefined;
  warning.textContent = `With the cells as they are now, the result is ${shown(otherwise) || "empty"}. The cell may not be computed yet.`;
  byId("pane-explained-calls").replaceChildren(...calls.map(callShown));
  const isRun = calls.some(({ described }) => RUN_ON_A_MACHINE.has(described.topic));
  byId("pane-explained-caution").textContent = isRun
    ? "A starting value for an estimate. The machine's manual and the tool's own data come first."
    : "";
  byId("pane-explained").hidden = false;
}

function callShown({
  described,
  value,
  args,
  steps,
  note,
  message,
  sources,
}: ExplainedCall): DocumentFragment {
  const { content } = byId<HTMLTemplateElement>("pane-explained-call");
  const call = document.importNode(content, true);
  const part = (name: string) => call.querySelector(`.pane-explained-${name}`)!;
  part("name").textContent = signature(described);
  part("what").textContent = described.description;
  part("gives").textContent = message ? `Result: ${shown(value[0])}: ${message}` : givenText(value);
  part("args").replaceChildren(
    ...tableRows(
      args
        .filter(({ written }) => written !== "")
        .map(({ name, written, cells, value: given, description }) => [
          name,
          cells.length === 0 || cells.join() === written ? written : `${written} (${someOf(cells)})`,
          shown(given),
          description,
        ]),
    ),
  );
  const left = args.filter(({ written }) => written === "").map(({ name }) => name);
  part("left").textContent = left.length > 0 ? `Left out: ${left.join(", ")}.` : "";
  part("steps").replaceChildren(...steps.map((line) => make("li", {}, make("code", {}, line))));
  part("note").textContent = note ?? "";
  part("sources").replaceChildren(
    ...listItems(sources.map(({ kind, text }) => `${text} (${KINDS[kind] ?? kind})`)),
  );
  return call;
}

/** The first few cells that a call gives. */
function givenText(value: readonly Content[]): string {
  if (value.length === 0) return "";
  const rest = value.length - MOST_GIVEN;
  const first = value.slice(0, MOST_GIVEN).map(shown).join(", ");
  return `Result: ${first}${rest > 0 ? ` and ${rest} more` : ""}`;
}

const MOST_GIVEN = 8;
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
      const { formulas, sheets, steps } = await reenterFormulas(
        context.workbook,
        functions.map(({ id }) => id),
      );
      const undo = steps > 1 ? ` To take it back, press Undo ${steps} times.` : "";
      return `${counted(formulas, "formulas")} entered again on ${counted(sheets, "sheets")}.${undo}`;
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
