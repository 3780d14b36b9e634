// taskpane: checks a column of hand figures against a column of formulas. The verdict of each row is a formula beside
// them, one that spills; the summary is counted here.

import { check } from "../../calc/checking/check.ts";
import { readNumberText } from "../../calc/number-text.ts";
import { Problem } from "../../calc/problem.ts";
import {
  type Area,
  addressOf,
  type Cells,
  type Change,
  type Content,
  cellAddress,
  Refusal,
  type Workbook,
} from "../../workbook/workbook.ts";
import { LAST_COLUMN } from "../../workbook/xlsx/addresses.ts";
import { referenceTo } from "./references.ts";

/** How many columns to the right are looked at for an empty one. */
const REACH = 30;
const USUAL_SHARE = 0.01;

export interface CheckPlan {
  readonly formula: string;
  /** The cells that the verdicts fill. */
  readonly target: Area;
  readonly changes: readonly Change[];
  readonly summary: CheckSummary;
}

export interface CheckSummary {
  readonly ok: number;
  readonly off: number;
  readonly blank: number;
  /** Rows that can't be compared: a figure is missing, a text or an error. */
  readonly unread: number;
  /** Rows by mistake, the most frequent first; "no known mistake" among them. */
  readonly mistakes: readonly { readonly name: string; readonly rows: number }[];
  /** The rows that are off. */
  readonly rows: readonly {
    readonly address: string;
    readonly hand: Content;
    readonly expected: Content;
    readonly verdict: string;
  }[];
}

/** Hand figures and what is expected, from two selected columns. @throws Refusal */
export function twoColumns(areas: readonly Area[]): { hand: Area; expected: Area } {
  if (areas.length === 1 && areas[0].columns === 2) {
    const [area] = areas;
    return {
      hand: { ...area, columns: 1 },
      expected: { ...area, column: area.column + 1, columns: 1 },
    };
  }
  if (areas.length === 2 && areas.every(({ columns }) => columns === 1)) {
    const [hand, expected] = areas;
    return { hand, expected };
  }
  throw new Refusal(
    "Select two columns, the hand figures first: side by side, or the second one with Ctrl (Cmd) held down.",
  );
}

/** @throws Refusal */
export async function planCheck(
  workbook: Workbook,
  handArea: Area,
  expectedArea: Area,
  share = USUAL_SHARE,
): Promise<CheckPlan> {
  for (const [what, area] of [
    ["The hand figures", handArea],
    ["The expected figures", expectedArea],
  ] as const) {
    if (area.columns !== 1)
      throw new Refusal(`${what} (${addressOf(area)}) are in several columns: take one column.`);
  }
  if (handArea.rows !== expectedArea.rows)
    throw new Refusal(
      `${addressOf(handArea)} has ${handArea.rows} rows and ${addressOf(expectedArea)} ${expectedArea.rows}: take as many of each.`,
    );
  if (!(share > 0 && share <= 1))
    throw new Refusal("The allowed difference must be over 0 and at most 100 %.");
  const read = await Promise.all([workbook.readComputed(handArea), workbook.readComputed(expectedArea)]);
  const skipped = headerRows(read[0], read[1]);
  const [hand, expected] = read.map((cells) => without(cells, skipped));
  if (hand.rows < 1) throw new Refusal("The columns hold no figures: select the figures to check.");
  const target = await freeColumn(workbook, hand, expected);
  const formula = `=REAM.CHECK(${[
    referenceTo(hand, target.sheet),
    referenceTo(expected, target.sheet),
    ...(share === USUAL_SHARE ? [] : [String(share)]),
  ].join(",")})`;
  const changes: Change[] = [{ ...target, formulas: [[formula]] }];
  if (await wantsHeader(workbook, hand, target))
    changes.push({ sheet: target.sheet, row: target.row - 1, column: target.column, formulas: [["Check"]] });
  return { formula, target, changes, summary: summarise(hand, expected, share) };
}

/** Rows at the top in which neither column has a figure. */
function headerRows(hand: Cells, expected: Cells): number {
  const isFigure = (cell: Content) => figureOf(cell) !== undefined;
  const first = hand.values.findIndex(([value], row) => isFigure(value) || isFigure(expected.values[row][0]));
  return first < 0 ? hand.rows : first;
}

function without(cells: Cells, rows: number): Cells {
  return {
    ...cells,
    row: cells.row + rows,
    rows: cells.rows - rows,
    formulas: cells.formulas.slice(rows),
    values: cells.values.slice(rows),
    formats: cells.formats.slice(rows),
    fixed: cells.fixed.slice(rows),
  };
}

/** The first column right of both whose cells are empty. @throws Refusal */
async function freeColumn(workbook: Workbook, hand: Area, expected: Area): Promise<Area> {
  const { sheet, row, rows } = hand;
  const after = 1 + Math.max(hand.column, expected.sheet === sheet ? expected.column : 0);
  const columns = Math.min(REACH, LAST_COLUMN + 1 - after);
  const none = `No column is empty in the ${REACH} right of ${addressOf(hand)}: insert one for the verdicts.`;
  if (columns < 1) throw new Refusal(none);
  const cells = await workbook.read({ sheet, row, column: after, rows, columns });
  const isFree = (column: number) =>
    cells.values.every(
      (values, index) => values[column] === "" && cells.fixed[index][column] === undefined,
    ) && cells.formulas.every((formulas) => formulas[column] === "");
  for (let column = 0; column < columns; column++) {
    const place = { sheet, row, column: after + column, rows, columns: 1 };
    // Verdicts are no figures that a rule would allow.
    if (isFree(column) && !(await workbook.hasRules(place))) return place;
  }
  throw new Refusal(none);
}

/** A header is written where the hand figures have one and its place is empty. */
async function wantsHeader(workbook: Workbook, hand: Area, target: Area): Promise<boolean> {
  if (hand.row === 0) return false;
  const above = { row: hand.row - 1, rows: 1 };
  const [header, place] = await Promise.all([
    workbook.read({ ...hand, ...above }),
    workbook.read({ ...target, ...above }),
  ]);
  const [[said]] = header.values;
  return (
    typeof said === "string" &&
    said !== "" &&
    place.values[0][0] === "" &&
    place.formulas[0][0] === "" &&
    place.fixed[0][0] === undefined
  );
}

/** The verdicts, counted; they are the same as those of the formula. */
function summarise(hand: Cells, expected: Cells, share: number): CheckSummary {
  let [ok, blank, unread] = [0, 0, 0];
  const mistakes = new Map<string, number>();
  const rows: CheckSummary["rows"][number][] = [];
  hand.values.forEach(([given], row) => {
    const [wanted] = expected.values[row];
    const verdict = verdictOf(given, wanted, share);
    if (verdict === "ok") ok++;
    else if (verdict === "") blank++;
    else if (verdict === undefined) unread++;
    else {
      const [, mistake = "no known mistake"] = verdict.split(": ");
      mistakes.set(mistake, (mistakes.get(mistake) ?? 0) + 1);
      rows.push({
        address: cellAddress(hand.row + row, hand.column),
        hand: given,
        expected: wanted,
        verdict,
      });
    }
  });
  const byMistake = [...mistakes]
    .map(([name, count]) => ({ name, rows: count }))
    .sort((a, b) => b.rows - a.rows);
  return { ok, off: rows.length, blank, unread, mistakes: byMistake, rows };
}

/** "" for a row without figures, undefined for one that can't be compared. */
function verdictOf(hand: Content, expected: Content, share: number): string | undefined {
  if (isBlank(hand) && isBlank(expected)) return "";
  const [figure, wanted] = [figureOf(hand), figureOf(expected)];
  if (figure === undefined || wanted === undefined) return undefined;
  try {
    return check(figure, wanted, share);
  } catch (thrown) {
    if (thrown instanceof Problem) return undefined;
    throw thrown;
  }
}

const isBlank = (cell: Content) => typeof cell === "string" && cell.trim() === "";

function figureOf(cell: Content): number | undefined {
  if (typeof cell === "number") return cell;
  if (typeof cell !== "string" || isBlank(cell)) return undefined;
  try {
    const { value, units } = readNumberText(cell, "figure");
    return units ? undefined : value;
  } catch (thrown) {
    if (thrown instanceof Problem) return undefined;
    throw thrown;
  }
}
