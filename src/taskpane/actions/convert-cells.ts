// taskpane: converts the selected constants between inch and metric, in place. What is no plain number is left alone
// and counted.

import { convert } from "../../calc/checking/convert.ts";
import {
  addressOf,
  type Cells,
  type Change,
  type Content,
  cellAddress,
  Refusal,
  type Workbook,
} from "../../workbook/workbook.ts";
import {
  type ConversionKind,
  type Direction,
  decimalsOf,
  properDecimals,
  rounded,
} from "./conversion-kinds.ts";
import { formulasReading, type Readers, warningsOf } from "./formulas-reading.ts";
import { changeHeader } from "./header-units.ts";
import {
  formatDecimals,
  formatWords,
  isDateFormat,
  isMoneyFormat,
  isPercentFormat,
} from "./number-formats.ts";

export interface Choice {
  readonly kind: ConversionKind;
  readonly direction: Direction;
  /** As the person wants; the proposed number if undefined. */
  readonly decimals?: number;
  /** Whether figures that a filter hides are converted too. */
  readonly withHidden?: boolean;
}

/** The selected cells with the row above each area, as they were read. */
export interface Gathered {
  readonly areas: readonly Cells[];
  readonly above: readonly (Cells | undefined)[];
  /** What reads the selected cells. */
  readonly readers: Readers;
  /** Whether data validation says what some of them may hold. */
  readonly isRuled: boolean;
}

export interface Shown {
  readonly address: string;
  readonly before: Content;
  readonly after: Content;
}

export interface ConversionPlan {
  readonly choice: Choice;
  readonly decimals: number;
  readonly converted: readonly Shown[];
  readonly headers: readonly Shown[];
  /** What is left alone, in words: "3 formulas". */
  readonly leftAlone: readonly string[];
  readonly notes: readonly string[];
  readonly changes: readonly Change[];
}

interface Figure {
  readonly area: number;
  readonly row: number;
  readonly column: number;
  readonly value: number;
}

/** Reads what is selected. @throws Refusal */
export async function gather(workbook: Workbook): Promise<Gathered> {
  const areas = await workbook.selected();
  return gatherOf(workbook, areas);
}

async function gatherOf(workbook: Workbook, areas: readonly Cells[]): Promise<Gathered> {
  const above = await Promise.all(
    areas.map(async ({ sheet, row, column, columns }) =>
      row === 0 ? undefined : workbook.read({ sheet, row: row - 1, column, rows: 1, columns }),
    ),
  );
  const readers = await formulasReading(workbook, areas);
  const rules = await Promise.all(areas.map((area) => workbook.hasRules(area)));
  return { areas, above, readers, isRuled: rules.includes(true) };
}

/** What a conversion would do. @throws Refusal when there is nothing to convert, or a merged figure */
export function planConversion({ areas, above, readers, isRuled }: Gathered, choice: Choice): ConversionPlan {
  if (areas.length === 0) throw new Refusal("The selected cells are empty: select the figures to convert.");
  const { figures, counts } = sort(areas, choice.withHidden ?? false);
  const leftAlone = Object.entries(counts).map(([what, count]) => counted(count, what));
  if (figures.length === 0)
    throw new Refusal(`Nothing to convert: the selection holds no plain figures (${leftAlone.join(", ")}).`);

  const { kind, direction } = choice;
  const [from, to] = direction === "to metric" ? [kind.inch, kind.metric] : [kind.metric, kind.inch];
  const exact = figures.map(({ value }) => convert(value, from, to));
  const given = figures.map(({ value }) => value);
  const decimals = choice.decimals ?? properDecimals(given, exact, kind, direction);
  const results = exact.map((value) => rounded(value, decimals));

  const contents: (Content | undefined)[][][] = areas.map(({ rows, columns }) =>
    Array.from({ length: rows }, () => new Array(columns).fill(undefined)),
  );
  const converted = figures.map(({ area, row, column, value }, index): Shown => {
    contents[area][row][column] = results[index];
    return { address: addressIn(areas[area], row, column), before: value, after: results[index] };
  });
  const changes: Change[] = areas.map(({ sheet, row, column }, index) => ({
    sheet,
    row,
    column,
    formulas: contents[index],
  }));
  const outOfSight = counts[HIDDEN] ?? 0;
  // A header over figures in both units would be wrong of one of them.
  const headers =
    outOfSight > 0 ? { changes: [], shown: [], notes: [] } : planHeaders({ areas, above }, figures, choice);
  changes.push(...headers.changes);
  const target = direction === "to metric" ? "mm" : "in";
  const notes = [...warningsOf(readers, target), ...headers.notes];
  if (outOfSight > 0)
    notes.unshift(
      `${counted(outOfSight, HIDDEN)} would stay as they are, so the headers stay too. Clear the filter, or convert the hidden rows with them.`,
    );
  if (isRuled)
    notes.push(
      "Some of these cells have data validation. The new figures must keep to it: if one does not, nothing is changed.",
    );
  const zeros = results.filter((value, index) => value === 0 && exact[index] !== 0).length;
  if (zeros > 0) notes.push(`${counted(zeros, "figures")} would become 0: give more decimals.`);
  const hidden = figures.filter(({ area, row, column }, index) => {
    const shown = formatDecimals(areas[area].formats[row][column]);
    return shown !== undefined && shown < decimalsOf(results[index]);
  }).length;
  if (hidden > 0)
    notes.push(
      `Number formats stay as they are: in ${counted(hidden, "cells")} the format shows fewer decimals than the new figure has.`,
    );
  const labeled = figures.filter(({ area, row, column }) => {
    const words = formatWords(areas[area].formats[row][column]);
    return words !== "" && changeHeader(words, kind, direction).after !== undefined;
  });
  if (labeled.length > 0) {
    const [{ area, row, column }] = labeled;
    notes.push(
      `The number format of ${counted(labeled.length, "cells")} still writes the old unit (${addressIn(areas[area], row, column)}: ${formatWords(areas[area].formats[row][column]).trim()}). Change the format too.`,
    );
  }
  return { choice, decimals, converted, headers: headers.shown, leftAlone, notes, changes };
}

/** Writes what was shown, unless the cells have changed since. @throws Refusal, and then nothing is written */
export async function applyConversion(
  workbook: Workbook,
  gathered: Gathered,
  plan: ConversionPlan,
): Promise<void> {
  const now = await Promise.all(
    gathered.areas.map(async (area) => ({ ...(await workbook.read(area)), hidden: area.hidden })),
  );
  const again = planConversion(await gatherOf(workbook, now), plan.choice);
  const [shown, known] = [plan, again].map(({ changes, notes }) => JSON.stringify({ changes, notes }));
  if (shown !== known)
    throw new Refusal(
      "The cells, or formulas that read them, have changed since they were shown. Look at the change again. Nothing was changed.",
    );
  await workbook.write(plan.changes);
}

const HIDDEN = "hidden figures";

/** The figures to convert, each once, and how much of what else there is. */
function sort(
  areas: readonly Cells[],
  withHidden: boolean,
): { figures: Figure[]; counts: Record<string, number> } {
  const figures: Figure[] = [];
  const counts: Record<string, number> = {};
  const seen = new Set<string>();
  areas.forEach((cells, area) => {
    cells.formulas.forEach((contents, row) => {
      contents.forEach((content, column) => {
        const address = addressIn(cells, row, column);
        if (seen.has(address)) return;
        seen.add(address);
        const fixed = cells.fixed[row][column];
        const what = whatItIs(content, cells.formats[row][column], fixed === "spilled");
        const isHidden = what === "figures" && !withHidden && cells.hidden?.[row][column];
        if (isHidden) counts[HIDDEN] = (counts[HIDDEN] ?? 0) + 1;
        else if (what !== "figures") counts[what] = (counts[what] ?? 0) + 1;
        else if (fixed === "merged")
          throw new Refusal(
            `${address} is part of merged cells and holds a figure: unmerge them first. Nothing was changed.`,
          );
        else figures.push({ area, row, column, value: content as number });
      });
    });
  });
  return { figures, counts };
}

function whatItIs(content: Content, format: string, spilled: boolean): string {
  if (spilled || (typeof content === "string" && content.startsWith("="))) return "formulas";
  if (content === "") return "blanks";
  if (typeof content !== "number") return "texts";
  if (isDateFormat(format)) return "dates";
  if (isMoneyFormat(format)) return "amounts of money";
  return isPercentFormat(format) ? "percentages" : "figures";
}

/** The header of each column with figures: the nearest text above the first of them, in the area or right above it. */
function planHeaders(
  { areas, above }: Pick<Gathered, "areas" | "above">,
  figures: readonly Figure[],
  { kind, direction }: Choice,
): { changes: Change[]; shown: Shown[]; notes: string[] } {
  const changes: Change[] = [];
  const shown: Shown[] = [];
  const notes: string[] = [];
  const seen = new Set<string>();
  const firsts = new Map<string, Figure>();
  for (const figure of figures) {
    const key = `${figure.area} ${figure.column}`;
    if (!firsts.has(key)) firsts.set(key, figure);
  }
  for (const { area, row, column } of firsts.values()) {
    const found = headerOver(areas[area], above[area], row, column);
    if (!found || seen.has(found.address)) continue;
    seen.add(found.address);
    const { after, namesTarget, otherKind } = changeHeader(found.text, kind, direction);
    if (namesTarget)
      notes.push(`${found.address} already says "${found.text}": is this column converted already?`);
    if (otherKind)
      notes.push(`${found.address} says "${found.text}": is this a column of another kind (${otherKind})?`);
    if (after === undefined) continue;
    if (found.staysAs) {
      notes.push(
        `${found.address} "${found.text}" is ${found.staysAs} and stays as it is: change it yourself.`,
      );
      continue;
    }
    shown.push({ address: found.address, before: found.text, after });
    changes.push({ sheet: found.sheet, row: found.row, column: found.column, formulas: [[after]] });
  }
  return { changes, shown, notes };
}

function headerOver(cells: Cells, above: Cells | undefined, firstRow: number, column: number) {
  const rows = Array.from({ length: firstRow }, (_, index) => ({ from: cells, row: firstRow - 1 - index }));
  if (above) rows.push({ from: above, row: 0 });
  for (const { from, row } of rows) {
    const value = from.values[row][column];
    if (typeof value !== "string" || value.trim() === "") continue;
    const formula = from.formulas[row][column];
    const fixed = from.fixed[row][column];
    const computed = fixed === "spilled" || (typeof formula === "string" && formula.startsWith("="));
    return {
      sheet: from.sheet,
      row: from.row + row,
      column: from.column + column,
      address: addressIn(from, row, column),
      text: value,
      staysAs: computed ? "computed" : fixed,
    };
  }
  return undefined;
}

function addressIn(cells: Cells, row: number, column: number): string {
  return cellAddress(cells.row + row, cells.column + column);
}

/** "1 formula", "3 formulas", "1 amount of money". */
export function counted(count: number, plural: string): string {
  return `${count} ${count === 1 ? plural.replace(/s(?= of |$)/, "") : plural}`;
}

/** Where a plan applies: "C6:C35 and E6:E35 on Quote". */
export function placesOf({ areas }: Gathered): string {
  return `${areas.map(addressOf).join(" and ")} on ${areas[0]?.sheet}`;
}
