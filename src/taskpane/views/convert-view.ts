// taskpane: converting the selection: first what would change, then the change.

import type { Content } from "../../workbook/workbook.ts";
import { conversionKinds, type Direction } from "../actions/conversion-kinds.ts";
import {
  applyConversion,
  type ConversionPlan,
  counted,
  type Gathered,
  gather,
  placesOf,
  planConversion,
} from "../actions/convert-cells.ts";
import { byId, chosen, inputById, listItems, make, tableRows } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";

const MOST_ROWS = 8;

export function convertView(context: PaneContext): void {
  const kinds = byId<HTMLSelectElement>("pane-kind");
  kinds.append(...conversionKinds.map(({ key, label }) => make("option", { value: key }, label)));
  let gathered: Gathered | undefined;
  let plan: ConversionPlan | undefined;

  const forget = () => {
    plan = undefined;
    byId("pane-change").hidden = true;
  };
  const look = async () => {
    if (!gathered) return;
    const decimals = inputById("pane-decimals");
    plan = planConversion(gathered, {
      kind: conversionKinds.find(({ key }) => key === kinds.value)!,
      direction: chosen("direction") as Direction,
      withHidden: inputById("pane-hidden").checked,
      decimals:
        decimals.value === "" ? undefined : Math.min(9, Math.max(0, Math.round(Number(decimals.value)))),
    });
    show(plan, gathered, await context.workbook.stepsToUndo(plan.changes));
  };

  const form = byId<HTMLFormElement>("pane-convert");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      forget();
      gathered = await gather(context.workbook);
      await look();
      byId("pane-change").scrollIntoView({ block: "start" });
      byId("pane-change-title").focus({ preventScroll: true });
      return undefined;
    });
  });
  // Another kind, direction or number of decimals is shown for the cells that were looked at.
  form.addEventListener("change", () => {
    if (plan)
      void context.run(async () => {
        await look();
        return undefined;
      });
  });
  byId("pane-apply").addEventListener("click", () =>
    context.run(async () => {
      if (!plan || !gathered) return undefined;
      await applyConversion(context.workbook, gathered, plan);
      const told = `${counted(plan.converted.length, "figures")} converted ${plan.choice.direction} in ${placesOf(gathered)}.`;
      forget();
      byId("pane-convert-title").focus();
      return told;
    }),
  );
}

function show(
  { converted, headers, leftAlone, notes, decimals }: ConversionPlan,
  gathered: Gathered,
  steps: number,
): void {
  const text = (content: Content) => String(content);
  const rows = [
    ...headers.map(({ address, before, after }) => [address, text(before), text(after)]),
    ...converted
      .slice(0, MOST_ROWS)
      .map(({ address, before, after }) => [address, text(before), (after as number).toFixed(decimals)]),
  ];
  byId("pane-change-facts").replaceChildren(
    ...listItems([
      `${counted(converted.length, "figures")} in ${placesOf(gathered)}, to ${counted(decimals, "decimals")}`,
      ...(headers.length > 0 ? [`${counted(headers.length, "headers")} with the new unit`] : []),
      ...(leftAlone.length > 0 ? [`Left as they are: ${leftAlone.join(", ")}`] : []),
    ]),
    ...[...notes, ...(steps > 1 ? [inSteps(steps)] : [])].map((note) =>
      make("li", { class: "pane-warning" }, note),
    ),
  );
  const more = converted.length - MOST_ROWS;
  byId("pane-change-caption").textContent =
    more > 0 ? `The first ${MOST_ROWS} of ${converted.length} figures` : "All that changes";
  byId("pane-change-rows").replaceChildren(...tableRows(rows));
  byId("pane-change").hidden = false;
}

const inSteps = (steps: number) =>
  `So much is written in ${steps} parts: to take it all back, press Undo ${steps} times.`;
