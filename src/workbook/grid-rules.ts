// workbook: the grid applies data validation only to what a user types. What is written here keeps to it as well.

import type { Model } from "@odoo/o-spreadsheet";
import { runSteps, type Step } from "./grid-steps.ts";
import { cellAddress, Refusal } from "./workbook.ts";

interface Written extends Step {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
  readonly content: string;
}

/** Runs all the steps, or none where a figure or text is one that a rule keeps a user from typing. @throws Refusal */
export function runWithinRules(model: Model, steps: readonly Step[]): void {
  const { getters } = model;
  const typed = steps.filter(
    (step): step is Written => step.type === "UPDATE_CELL" && !String(step.content).startsWith("="),
  );
  const isBroken = (cell: Written) =>
    getters.getValidationRuleForCell(cell)?.isBlocking === true && getters.isDataValidationInvalid(cell);
  const before = new Set(typed.filter(isBroken));
  runSteps(model, steps);
  const broken = typed.find((cell) => !before.has(cell) && isBroken(cell));
  if (!broken) return;
  model.dispatch("REQUEST_UNDO");
  throw new Refusal(
    `The data validation of ${cellAddress(broken.row, broken.col)} does not allow ${broken.content}. Change the rule first. Nothing was changed.`,
  );
}
