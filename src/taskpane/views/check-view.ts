// taskpane: checking hand figures against formulas.

import { addressOf } from "../../workbook/workbook.ts";
import { type CheckSummary, planCheck, twoColumns } from "../actions/check-figures.ts";
import { counted } from "../actions/convert-cells.ts";
import { referenceTo } from "../actions/references.ts";
import { byId, inputById, listItems, tableRows } from "../dom.ts";
import type { PaneContext } from "../pane-context.ts";
import { areaField, areaOf } from "./area-field.ts";

const MOST_ROWS = 20;

export function checkView(context: PaneContext): void {
  const hand = areaField({ id: "pane-hand", label: "Hand figures" }, context);
  const expected = areaField({ id: "pane-expected", label: "Expected figures" }, context);
  byId("pane-check-fields").append(hand.element, expected.element);

  byId("pane-check-both").addEventListener("click", () =>
    context.run(async () => {
      const taken = twoColumns(await context.workbook.selected());
      hand.set(taken.hand);
      expected.set(taken.expected);
      return `Hand figures ${referenceTo(taken.hand, "")}, expected ${referenceTo(taken.expected, "")}.`;
    }),
  );
  byId<HTMLFormElement>("pane-check").addEventListener("submit", (event) => {
    event.preventDefault();
    void context.run(async () => {
      byId("pane-verdict").hidden = true;
      const plan = await planCheck(
        context.workbook,
        await areaOf(hand, "Hand figures", context.workbook),
        await areaOf(expected, "Expected figures", context.workbook),
        Number(inputById("pane-share").value) / 100,
      );
      await context.workbook.write(plan.changes);
      showSummary(plan.summary);
      byId("pane-verdict").scrollIntoView({ block: "start" });
      byId("pane-verdict-title").focus({ preventScroll: true });
      const { ok, off } = plan.summary;
      return `${ok} ok, ${off} off. The verdicts are in ${addressOf(plan.target)}.`;
    });
  });
}

function showSummary({ ok, off, blank, unread, mistakes, rows }: CheckSummary): void {
  const facts = [
    `${ok} ok, ${off} off`,
    ...mistakes.map((mistake) => `${counted(mistake.rows, "rows")}: ${mistake.name}`),
    ...(unread > 0
      ? [`${counted(unread, "rows")} can't be compared: a figure is missing, a text or an error`]
      : []),
    ...(blank > 0 ? [`${counted(blank, "rows")} empty`] : []),
  ];
  byId("pane-verdict-facts").replaceChildren(...listItems(facts));
  byId("pane-verdict-table").hidden = rows.length === 0;
  byId("pane-verdict-rows").replaceChildren(
    ...tableRows(
      rows
        .slice(0, MOST_ROWS)
        .map((row) => [row.address, String(row.hand), shortNumber(row.expected), row.verdict]),
    ),
  );
  byId("pane-verdict").hidden = false;
}

function shortNumber(value: unknown): string {
  return typeof value === "number" ? String(Number(value.toPrecision(7))) : String(value);
}
