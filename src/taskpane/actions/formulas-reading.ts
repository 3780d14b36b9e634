// taskpane: which formulas of ours read some cells, and in which unit they take them. A figure that is converted under
// a units cell which still says the old unit would be computed wrong, silently.

import { type Area, cellAddress, cutTo, type Workbook } from "../../workbook/workbook.ts";
import { areasRead, ourCalls } from "./formula-calls.ts";
import { readReference, referenceTo } from "./references.ts";

export interface ReadingFormula {
  /** Where it stands, as another sheet would write it. */
  readonly address: string;
  readonly reads: readonly Area[];
  /** The unit that it takes plain numbers in, and the cell that says so. */
  readonly units: string;
  readonly unitsCell: string | undefined;
}

const isUnit = (text: string) => /^(?:mm|in|inch|inches|metric|")$/i.test(text.trim());

/** The formulas of ours in the workbook that read any of these cells. */
export async function formulasReading(workbook: Workbook, areas: readonly Area[]): Promise<ReadingFormula[]> {
  const found: ReadingFormula[] = [];
  const used = new Map<string, Area | undefined>();
  for (const sheet of await workbook.sheets()) used.set(sheet, await workbook.used(sheet));
  for (const [sheet, area] of used) {
    if (!area) continue;
    const { formulas } = await workbook.read(area);
    for (const [row, contents] of formulas.entries()) {
      for (const [column, content] of contents.entries()) {
        const formula = String(content);
        const calls = ourCalls(formula);
        if (calls.length === 0) continue;
        const reads = areasRead(formula, sheet, (name) => used.get(name));
        if (!reads.some((one) => areas.some((other) => one.sheet === other.sheet && cutTo(one, other))))
          continue;
        const last = calls[0].args[calls[0].args.length - 1] ?? "";
        const said = await unitsOf(workbook, last, sheet);
        const place = { sheet, row: area.row + row, column: area.column + column, rows: 1, columns: 1 };
        found.push({ address: referenceTo(place, areas[0].sheet), reads, ...said });
      }
    }
  }
  return found;
}

async function unitsOf(workbook: Workbook, text: string, sheet: string) {
  const none = { units: "mm", unitsCell: undefined };
  const quoted = /^"(.*)"$/.exec(text)?.[1];
  if (quoted !== undefined) return isUnit(quoted) ? { units: unitOf(quoted), unitsCell: undefined } : none;
  const reference = readReference(text, sheet);
  if (!reference || reference.area.rows * reference.area.columns > 1) return none;
  const { values } = await workbook.read(reference.area);
  const said = String(values[0][0]);
  if (!isUnit(said)) return none;
  return { units: unitOf(said), unitsCell: cellAddress(reference.area.row, reference.area.column) };
}

const unitOf = (said: string) => (/^(?:mm|metric)$/i.test(said.trim()) ? "mm" : "in");

/** What to say before figures are converted that formulas read, or nothing. */
export function warningOf(formulas: readonly ReadingFormula[], to: "mm" | "in"): string[] {
  const groups = new Map<string, ReadingFormula[]>();
  for (const formula of formulas) {
    if (formula.units === to) continue;
    const key = `${formula.units} ${formula.unitsCell ?? ""}`;
    groups.set(key, [...(groups.get(key) ?? []), formula]);
  }
  return [...groups.values()].map((group) => {
    const [{ units, unitsCell }] = group;
    const names = group.slice(0, 4).map(({ address }) => address);
    const rest = group.length - names.length;
    const who = `${names.join(", ")}${rest > 0 ? ` and ${rest} more` : ""}`;
    const what =
      group.length === 1
        ? `The formula in ${who} reads these figures and takes`
        : `The formulas in ${who} read these figures and take`;
    const instead = unitsCell
      ? `Set ${unitsCell} to "${to}" once all its figures are converted. Until then the results do not fit.`
      : `Give them "${to}" as their units. Until then the results do not fit.`;
    return `${what} them in ${units}. ${instead}`;
  });
}
