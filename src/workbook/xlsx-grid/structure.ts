// workbook: how rows, columns and sheets were inserted, taken out, copied and renamed in the browser workbook, in their order, so
// that the file which it was opened from can follow. What is undone is gone from the list, what is redone is in it again.

import type { Model } from "@odoo/o-spreadsheet";
import type { Box } from "../xlsx/addresses.ts";

export type StructureStep =
  | {
      readonly kind: "insert";
      readonly sheetId: string;
      readonly axis: Axis;
      readonly at: number;
      readonly count: number;
    }
  /** `at`: ascending. */
  | { readonly kind: "remove"; readonly sheetId: string; readonly axis: Axis; readonly at: readonly number[] }
  | { readonly kind: "rename"; readonly sheetId: string; readonly name: string }
  | { readonly kind: "removeSheet"; readonly sheetId: string }
  /** Cells that were cut and pasted: formulas follow them. */
  | { readonly kind: "move"; readonly sheetId: string; readonly from: readonly Box[] }
  /** A new sheet that was made from another. */
  | { readonly kind: "copy"; readonly sheetId: string; readonly to: string; readonly name: string };

/** A step after which sheets that were there have other rows, columns or names, or are gone. */
export type LineStep = Exclude<StructureStep, { readonly kind: "move" | "copy" }>;

export const isOfLines = (step: StructureStep): step is LineStep =>
  step.kind !== "move" && step.kind !== "copy";

export type Axis = "row" | "column";

const PLUGIN = "reamwright_steps";

type PluginLibrary = Pick<typeof import("@odoo/o-spreadsheet"), "CorePlugin" | "registries">;

/** Must run before the Model is made. */
export function watchStructure({ CorePlugin, registries }: PluginLibrary): void {
  class StepsPlugin extends (CorePlugin as any) {
    static getters = ["getStructureSteps"];
    declare steps: readonly StructureStep[];
    declare getters: any;
    declare history: { update(...path: unknown[]): void };
    constructor(config: unknown) {
      super(config);
      this.steps = [];
    }
    getStructureSteps(): readonly StructureStep[] {
      return this.steps;
    }
    import(data: { structureSteps?: readonly StructureStep[] }): void {
      this.steps = data.structureSteps ?? [];
    }
    export(data: { structureSteps?: readonly StructureStep[] }): void {
      if (this.steps.length > 0) data.structureSteps = this.steps;
    }
    handle(command: any): void {
      const step = this.stepOf(command);
      if (step) this.history.update("steps", [...this.steps, step]);
    }
    private stepOf(command: any): StructureStep | undefined {
      const { type, sheetId, dimension } = command;
      const axis = dimension === "ROW" ? "row" : "column";
      if (type === "RENAME_SHEET") return { kind: "rename", sheetId, name: command.newName };
      if (type === "DELETE_SHEET") return { kind: "removeSheet", sheetId };
      if (type === "DUPLICATE_SHEET")
        return { kind: "copy", sheetId, to: command.sheetIdTo, name: command.sheetNameTo };
      if (type === "MOVE_RANGES") return { kind: "move", sheetId, from: command.target };
      if (type === "REMOVE_COLUMNS_ROWS") {
        const at = [...new Set(command.elements as number[])].sort((a, b) => a - b);
        return { kind: "remove", sheetId, axis, at };
      }
      if (type !== "ADD_COLUMNS_ROWS") return undefined;
      const { base, position, quantity: count } = command;
      const at = position === "before" ? base : base + 1;
      const size = axis === "row" ? this.getters.getNumberRows(sheetId) : this.getters.getNumberCols(sheetId);
      // The grid grows at its end; nothing moves.
      if (position === "after" && at + count >= size) return undefined;
      return { kind: "insert", sheetId, axis, at, count };
    }
  }
  if (!registries.corePluginRegistry.contains(PLUGIN))
    registries.corePluginRegistry.add(PLUGIN, StepsPlugin as any);
}

export const structureSteps = (model: Model): readonly StructureStep[] =>
  (model.getters as any).getStructureSteps?.() ?? [];
