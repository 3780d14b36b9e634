// taskpane: puts a function into the active cell, for one cell or as one formula that fills a whole column.

import {
  type Area,
  addressOf,
  type Content,
  cellAddress,
  Refusal,
  type Workbook,
} from "../../workbook/workbook.ts";
import { LAST_COLUMN, LAST_ROW } from "../../workbook/xlsx/addresses.ts";
import { tokensOf } from "../../workbook/xlsx/formula-tokens.ts";
import type { HelpArgument, HelpFunction } from "../help.ts";
import { type Reference, readReference, referenceTo } from "./references.ts";

/** What a field of the form holds. */
export interface Entry {
  readonly text: string;
  /** The sheet that a taken selection is on; without it a reference is on the sheet of the formula. */
  readonly sheet?: string;
}

/** One cell, or one formula that fills the column. */
export type Reach = "cell" | "column";

export interface FormulaPlan {
  readonly formula: string;
  readonly target: Area;
}

/** Arguments whose plain words look like addresses: tool steel D2, class H7. A reference is written =D2 there. */
const WORDS = new Set(["class", "grade", "material", "gaugeMaterial"]);

type Part =
  | { readonly kind: "blank" }
  | { readonly kind: "text"; readonly text: string }
  | ({ readonly kind: "reference" } & Reference);

/** The formula as it would stand in the active cell now. @throws Refusal */
export async function planFormula(
  workbook: Workbook,
  described: HelpFunction,
  entries: readonly Entry[],
  reach: Reach,
): Promise<FormulaPlan> {
  const target = await workbook.active();
  const read = described.parameters.map((argument, index) =>
    readEntry(argument, entries[index] ?? { text: "" }, target.sheet),
  );
  described.parameters.forEach(({ name, optional }, index) => {
    if (!optional && read[index].kind === "blank")
      throw new Refusal(`${name} is needed: type a value or take a selection.`);
  });
  const spreads = (index: number) => !described.parameters[index].whole;
  const parts =
    reach === "cell"
      ? read.map((part, index) => (spreads(index) ? inRowOf(target, part) : part))
      : await downFrom(target, read, spreads, workbook);
  const references = parts.filter((part) => part.kind === "reference");
  for (const { area } of references) {
    if (covers(area, target))
      throw new Refusal(
        `${addressOf(target)} lies among the cells that the formula reads: select another cell.`,
      );
  }
  const spreading = parts.filter((part, index) => part.kind === "reference" && spreads(index)) as Reference[];
  const rows = Math.max(1, ...spreading.map(({ area }) => area.rows));
  const columns = Math.max(1, described.row.length, ...spreading.map(({ area }) => area.columns));
  const table = rows * columns > 1 ? await workbook.tableAt(target) : undefined;
  if (table && rows > 1)
    throw new Refusal(
      `${addressOf(target)} lies in the table ${table}, where no formula fills a column. Choose one cell: the table fills the column itself.`,
    );
  const room = table ? target : { ...target, rows, columns };
  await refuseWithoutRoom(workbook, room, references);
  const written = parts.map((part) => writtenPart(part, target.sheet));
  while (written.length > 0 && written[written.length - 1] === "") written.pop();
  const call = `REAM.${described.id}(${written.join(",")})`;
  // In a table a result of several cells cannot spill: its first one is put in, and the numbers at the end pick another.
  return { formula: table ? `=INDEX(${call},1,1)` : `=${call}`, target };
}

/** @throws Refusal, and then nothing is written */
export async function putFormula(workbook: Workbook, { formula, target }: FormulaPlan): Promise<void> {
  await workbook.write([
    { sheet: target.sheet, row: target.row, column: target.column, formulas: [[formula]] },
  ]);
}

function readEntry({ name }: HelpArgument, { text, sheet }: Entry, target: string): Part {
  const plain = text.trim();
  if (plain === "") return { kind: "blank" };
  const isFormula = plain.startsWith("=");
  const body = isFormula ? plain.slice(1).trim() : plain;
  const reference = isFormula || !WORDS.has(name) ? readReference(body, sheet ?? target) : undefined;
  if (reference) return { kind: "reference", ...reference };
  if (isFormula && hasSemicolon(body))
    throw new Refusal(`${name}: write commas between the arguments of a formula here, as in =MAX(A2,B2).`);
  return { kind: "text", text: isFormula ? body : literal(plain) };
}

/** Whether a formula is written as hosts with a decimal comma show it. In an array a semicolon ends a row. */
function hasSemicolon(formula: string): boolean {
  let depth = 0;
  return tokensOf(formula).some(({ kind, text }) => {
    if (kind !== "operator") return false;
    if (text === "{") depth++;
    else if (text === "}") depth--;
    return text === ";" && depth === 0;
  });
}

/** A value as a formula writes it: numbers, TRUE and quoted texts as they are, the rest in quotes. */
export function literal(text: string): string {
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?%?$/i.test(text)) return text;
  if (/^(true|false)$/i.test(text)) return text.toUpperCase();
  if (/^"(?:[^"]|"")*"$/.test(text) && text.length > 1) return text;
  return `"${text.replaceAll('"', '""')}"`;
}

function writtenPart(part: Part, sheet: string): string {
  if (part.kind === "blank") return "";
  return part.kind === "text" ? part.text : referenceTo(part.area, sheet, part.fixed);
}

/** Of a column, the cell in the row of the formula. */
function inRowOf(target: Area, part: Part): Part {
  if (part.kind !== "reference" || part.area.rows === 1) return part;
  const { area } = part;
  if (target.row < area.row || target.row >= area.row + area.rows)
    throw new Refusal(
      `${addressOf(target)} is in no row of ${addressOf(area)}: select a cell beside the row that is meant, or fill the whole column.`,
    );
  return { ...part, area: { ...area, row: target.row, rows: 1 } };
}

/** Single cells in the formula's row become columns down to the last filled row; columns start in that row. */
async function downFrom(
  target: Area,
  given: readonly Part[],
  spreads: (index: number) => boolean,
  workbook: Workbook,
): Promise<readonly Part[]> {
  const parts = given.map((part, index) => (spreads(index) ? fromRowOf(target, part) : part));
  const grows = (part: Part, index: number) =>
    part.kind === "reference" &&
    spreads(index) &&
    !part.fixed &&
    part.area.rows === 1 &&
    part.area.columns === 1 &&
    part.area.row === target.row;
  const columns = parts.filter(
    (part, index): part is { kind: "reference" } & Reference =>
      part.kind === "reference" && spreads(index) && part.area.rows > 1,
  );
  const heights = new Set(columns.map(({ area }) => area.rows));
  if (heights.size > 1) {
    const told = columns.map(({ area }) => `${addressOf(area)} has ${area.rows}`).join(", ");
    throw new Refusal(`The columns differ in rows (${told}): take columns of the same rows.`);
  }
  const [height] = heights;
  const rows = height ?? (await filledRows(parts.filter(grows) as Reference[], workbook));
  if (rows === undefined) {
    const lists = parts.some((part, index) => part.kind === "reference" && !spreads(index));
    if (lists) return parts;
    throw new Refusal(
      `No column is given: take a column, or a cell in row ${target.row + 1}, for at least one argument.`,
    );
  }
  return parts.map((part, index) =>
    grows(part, index) ? { ...part, area: { ...(part as Reference).area, rows } } : part,
  ) as Part[];
}

/** A column from the row of the formula on, so that each result stands beside its input. */
function fromRowOf(target: Area, part: Part): Part {
  if (part.kind !== "reference" || part.area.rows === 1 || part.area.sheet !== target.sheet) return part;
  const { area } = part;
  const above = target.row - area.row;
  if (above < 0 && target.row + area.rows > area.row)
    throw new Refusal(
      `${addressOf(target)} is above ${addressOf(area)}, and the results would be in other rows than what they come from: select a cell in row ${area.row + 1}.`,
    );
  if (above <= 0 || above >= area.rows) return part;
  return { ...part, area: { ...area, row: target.row, rows: area.rows - above } };
}

/** Rows from the first one down to the last before a row that is empty in all the columns. */
async function filledRows(references: readonly Reference[], workbook: Workbook): Promise<number | undefined> {
  if (references.length === 0) return undefined;
  const columns = await Promise.all(
    references.map(async ({ area }) => {
      const used = await workbook.used(area.sheet);
      const last = used ? used.row + used.rows : area.row + 1;
      const rows = Math.max(1, last - area.row);
      return (await workbook.read({ ...area, rows })).values.map(([value]) => value);
    }),
  );
  let rows = 0;
  while (columns.some((values) => !isBlank(values[rows]))) rows++;
  return Math.max(1, rows);
}

const isBlank = (value: Content | undefined) => value === undefined || String(value).trim() === "";

/** The cells that the result fills must be empty; the active cell may hold a formula of ours, which is replaced. */
async function refuseWithoutRoom(
  workbook: Workbook,
  room: Area,
  references: readonly Reference[],
): Promise<void> {
  for (const { area } of references) {
    if (meet(area, room))
      throw new Refusal(
        `The result would fill ${addressOf(room)}, which meets ${addressOf(area)} that the formula reads: select a cell with free cells below and beside it.`,
      );
  }
  if (room.row + room.rows > LAST_ROW + 1 || room.column + room.columns > LAST_COLUMN + 1)
    throw new Refusal(
      `The result of ${room.rows} × ${room.columns} cells would run over the last row or column: select another cell.`,
    );
  const { formulas, fixed, formats } = await workbook.read(room);
  const present = formulas[0][0];
  const replaces = typeof present === "string" && /^=REAM\./i.test(present);
  if (present !== "" && !replaces)
    throw new Refusal(
      `${cellAddress(room.row, room.column)} is filled: empty it first, or select an empty cell.`,
    );
  if (!replaces && (await workbook.hasRules({ ...room, rows: 1, columns: 1 })))
    throw new Refusal(
      `${cellAddress(room.row, room.column)} has data validation, which is not applied to a formula that is put in from here. Select another cell, or clear the rule first.`,
    );
  if (formats[0][0] === "@")
    throw new Refusal(
      `${cellAddress(room.row, room.column)} has the number format Text, so a formula would stay a text. Set it to General first.`,
    );
  for (const [row, cells] of formulas.entries()) {
    for (const [column, cell] of cells.entries()) {
      if (row === 0 && column === 0) continue;
      if (cell !== "" || (fixed[row][column] !== undefined && !replaces))
        throw new Refusal(
          `${cellAddress(room.row + row, room.column + column)} is in the way: the result fills ${addressOf(room)}.`,
        );
    }
  }
}

function covers(area: Area, { sheet, row, column }: Area): boolean {
  return meet(area, { sheet, row, column, rows: 1, columns: 1 });
}

function meet(a: Area, b: Area): boolean {
  return (
    a.sheet === b.sheet &&
    a.row < b.row + b.rows &&
    b.row < a.row + a.rows &&
    a.column < b.column + b.columns &&
    b.column < a.column + a.columns
  );
}
