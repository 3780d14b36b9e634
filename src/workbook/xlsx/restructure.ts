// workbook: a file in which rows or columns of one sheet are inserted or taken out, or a sheet gets another name or is
// deleted: its cells move and all that names them follows, in this sheet and everywhere else; every other byte stays.

import { copiedSheet } from "./copy-sheet.ts";
import { NotCertain } from "./map-elements.ts";
import { over, type PackageParts } from "./package.ts";
import { type Restructuring, Step } from "./restructure-step.ts";
import { readWorkbookParts } from "./workbook-parts.ts";

export interface Restructured {
  readonly parts: Map<string, string>;
  /** Parts that are left out, by their names in small letters. */
  readonly gone: ReadonlySet<string>;
  /** Formulas whose values may be others now, by the places of their sheets and of cells. */
  readonly changed: readonly Set<number>[];
}

/** Undefined if what becomes of some part is not certain. */
export function restructured(file: PackageParts, steps: readonly Restructuring[]): Restructured | undefined {
  const parts = new Map<string, string>();
  const gone = new Set<string>();
  const now = over(file, parts, gone);
  const sheets = readWorkbookParts(file).sheets.map((_, place) => place);
  let count = sheets.length;
  let changed = sheets.map(() => new Set<number>());
  try {
    for (const { sheet, ...step } of steps) {
      const place = sheets.indexOf(sheet);
      if (step.kind === "copy") {
        const copy = copiedSheet(now, readWorkbookParts(now), place, step.name);
        for (const [name, text] of copy.parts) parts.set(name, text);
        changed.push(new Set([...changed[place], ...copy.changed]));
        sheets.push(count++);
        continue;
      }
      const one = new Step(now, readWorkbookParts(now), { ...step, sheet: place });
      changed = one.run(changed);
      for (const [name, text] of one.parts) parts.set(name, text);
      for (const name of one.gone) {
        gone.add(name);
        for (const own of parts.keys()) if (own.toLowerCase() === name) parts.delete(own);
      }
      if (step.kind !== "removeSheet") continue;
      sheets.splice(place, 1);
      changed.splice(place, 1);
    }
  } catch (error) {
    if (error instanceof NotCertain) return undefined;
    throw error;
  }
  return { parts, gone, changed };
}
