// fill: what is told of a filled file. Lists are cut, counts are not.

export interface CellFault {
  readonly cell: string;
  /** What the cell shows. */
  readonly error: string;
  readonly message: string;
}

export interface KeptCell {
  readonly cell: string;
  /** What in its formula is not computed here. */
  readonly why: string;
}

export interface SheetReport {
  readonly sheet: string;
  /** Formulas that have a new value. */
  readonly computed: number;
  readonly errors: number;
  readonly firstErrors: readonly CellFault[];
  /** Formulas that depend on our functions and keep the value they had. */
  readonly kept: number;
  readonly firstKept: readonly KeptCell[];
  /** Results that spill over more or fewer cells than they did. */
  readonly resized: readonly { readonly cell: string; readonly rows: number; readonly columns: number }[];
}

/** What became of our functions in a copy that computes without them. */
export interface OwnReport {
  /** Cells that compute with the spreadsheet's own formulas. */
  readonly formulas: number;
  /** Cells that hold values now, by the reason. */
  readonly values: readonly {
    readonly sheet: string;
    readonly why: string;
    readonly cells: number;
    readonly first: string;
  }[];
  /** Formulas with our functions that stay, as their values may no longer hold. */
  readonly left: number;
  /** Names in the workbook that use our functions, and stay. */
  readonly names: readonly string[];
}

export interface WorkbookReport {
  readonly sheets: readonly SheetReport[];
  readonly notes: readonly string[];
  /** In a copy that computes without our functions. */
  readonly own?: OwnReport;
}

/** As many as are listed of each kind. */
const LISTED = 100;

export function newSheetReport(sheet: string) {
  const firstErrors: CellFault[] = [];
  const firstKept: KeptCell[] = [];
  const resized: { cell: string; rows: number; columns: number }[] = [];
  const counts = { computed: 0, errors: 0, kept: 0 };
  return {
    compute(cell: string, error: { readonly code: string; readonly message?: string } | undefined): void {
      counts.computed++;
      if (!error) return;
      counts.errors++;
      if (firstErrors.length < LISTED)
        firstErrors.push({ cell, error: error.code, message: error.message ?? "" });
    },
    keep(cell: string, why: string): void {
      counts.kept++;
      if (firstKept.length < LISTED) firstKept.push({ cell, why });
    },
    spill(cell: string, size: { rows: number; columns: number } | undefined): void {
      if (size && resized.length < LISTED) resized.push({ cell, ...size });
    },
    done: (): SheetReport => ({ sheet, ...counts, firstErrors, firstKept, resized }),
  };
}

/** Whether every formula has its new value, and none is an error. */
export const isAllWell = ({ sheets, own }: WorkbookReport): boolean =>
  sheets.every(({ errors, kept }) => errors + kept === 0) && (own?.names.length ?? 0) === 0;

const count = (number: number, one: string, several = `${one}s`) =>
  `${number.toLocaleString("en-US")} ${number === 1 ? one : several}`;

/** For a user to read, a line each. */
export function workbookLines({ sheets, notes, own }: WorkbookReport, shown = 20): string[] {
  const lines = sheets
    .filter(({ computed, kept }) => computed + kept > 0)
    .flatMap((sheet) => sheetLines(sheet, shown));
  if (lines.length === 0) lines.push("no formula uses the worksheet functions: nothing to fill");
  return [...lines, ...(own ? ownLines(own, shown) : []), ...notes.map((note) => `note: ${note}`)];
}

function ownLines({ formulas, values, left, names }: OwnReport, shown: number): string[] {
  const lines = [`${count(formulas, "cell")} computed by the spreadsheet's own formulas`];
  for (const { sheet, why, cells, first } of values.slice(0, shown))
    lines.push(
      `  ${sheet}!${first}: ${count(cells, "cell")} as ${cells === 1 ? "a value" : "values"}: ${why}`,
    );
  if (values.length > shown) lines.push(`  and ${count(values.length - shown, "more reason")}`);
  if (left > 0)
    lines.push(`  ${count(left, "formula")} with our functions left: without the add-in they show #NAME?`);
  if (names.length > 0)
    lines.push(
      `  ${names.join(", ")}: names with our functions are left, and show #NAME? without the add-in`,
    );
  return lines;
}

function sheetLines(report: SheetReport, shown: number): string[] {
  const { sheet, computed, errors, kept } = report;
  const counts = [`${count(computed, "cell")} computed`];
  if (errors > 0) counts.push(`${errors.toLocaleString("en-US")} in error`);
  if (kept > 0) counts.push(`${count(kept, "cell")} not computed, with the old value kept`);
  const lines = [`${sheet}: ${counts.join(", ")}`];
  for (const { cell, error, message } of report.firstErrors.slice(0, shown))
    lines.push(`  ${cell} ${error}${message ? ` ${message}` : ""}`);
  if (errors > shown) lines.push(`  and ${count(errors - shown, "more error")}`);
  for (const { cell, why } of report.firstKept.slice(0, shown)) lines.push(`  ${cell} kept: ${why}`);
  if (kept > shown) lines.push(`  and ${count(kept - shown, "more cell")} kept`);
  for (const { cell, rows, columns } of report.resized.slice(0, shown))
    lines.push(`  ${cell} now fills ${rows} × ${columns} cells`);
  return lines;
}
