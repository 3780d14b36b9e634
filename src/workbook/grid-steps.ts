// workbook: several commands of the browser workbook's grid as one step to undo. The grid records what is dispatched
// inside one command as one revision, so a plugin of ours takes a list of commands and dispatches them.

import type { Model } from "@odoo/o-spreadsheet";
import { type Content, Refusal } from "./workbook.ts";

export type GridLibrary = Pick<typeof import("@odoo/o-spreadsheet"), "UIPlugin" | "registries">;

/** A command of the grid with its payload. */
export interface Step {
  readonly type: string;
  readonly [payload: string]: unknown;
}

const RUN = "REAMWRIGHT_RUN_STEPS";
const PLUGIN = "reamwright_steps";

/** Reasons that leave the sheet as it was asked to be. */
const HARMLESS: ReadonlySet<string> = new Set(["NoChanges", "Success"]);

/** Why a step was refused, from the plugin to the caller: what is dispatched is copied, so it can't carry them. */
let refused: string[] = [];

/** Must run before the Model is made. */
export function registerSteps({ UIPlugin, registries }: GridLibrary): void {
  class StepsPlugin extends UIPlugin {
    override handle(command: { type: string; steps?: readonly Step[] }): void {
      if (command.type !== RUN) return;
      for (const { type, ...payload } of command.steps ?? []) {
        const { reasons } = this.dispatch(type as any, payload as any) as unknown as { reasons: string[] };
        refused.push(...reasons.filter((reason) => !HARMLESS.has(reason)));
      }
    }
  }
  if (!registries.featurePluginRegistry.contains(PLUGIN))
    registries.featurePluginRegistry.add(PLUGIN, StepsPlugin as any);
}

/** Runs all the steps or none of them. @throws Refusal */
export function runSteps(model: Model, steps: readonly Step[]): void {
  refused = [];
  const result = model.dispatch(RUN as any, { steps } as any) as unknown as { reasons: string[] };
  const outright = result.reasons.filter((reason) => !HARMLESS.has(reason));
  if (outright.length > 0) throw new Refusal(sentence(outright));
  if (refused.length === 0) return;
  model.dispatch("REQUEST_UNDO");
  throw new Refusal(sentence(refused));
}

function sentence(reasons: readonly string[]): string {
  if (reasons.includes("Readonly")) return "The workbook is open for reading only: nothing was changed.";
  if (reasons.includes("SheetLocked")) return "The sheet is locked: unlock it first. Nothing was changed.";
  return `The workbook did not take the change (${[...new Set(reasons)].join(", ")}): nothing was changed.`;
}

/** A content as it is typed into the grid. */
export function asUserInput(content: Content): string {
  return typeof content === "boolean" ? String(content).toUpperCase() : String(content);
}

/** A value as it is typed so that it stays what it is: a text "31/64" is no date, "007" no number. */
export function asLiteralInput(value: Content): string {
  const mayChange = typeof value === "string" && (/^[='+-]|\d/.test(value) || /^(true|false)$/i.test(value));
  return mayChange && !/^#[A-Z]/.test(value) ? `'${value}` : asUserInput(value);
}

/** Rows and columns that a sheet lacks. */
export function roomFor({ getters }: Model, sheetId: string, rows: number, columns: number): Step[] {
  const { numberOfRows, numberOfCols } = getters.getSheetSize(sheetId);
  const sheetName = getters.getSheetName(sheetId);
  const added = (dimension: string, present: number, needed: number): Step[] =>
    needed <= present
      ? []
      : [
          {
            type: "ADD_COLUMNS_ROWS",
            sheetId,
            sheetName,
            dimension,
            base: present - 1,
            quantity: needed - present,
            position: "after",
          },
        ];
  return [...added("COL", numberOfCols, columns), ...added("ROW", numberOfRows, rows)];
}
