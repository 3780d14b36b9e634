// taskpane: looks through a sheet for what makes a quote wrong without a word: numbers typed over formulas, formulas unlike
// their neighbors, columns of unequal length, units that disagree, errors, and texts that look like numbers. It changes
// nothing.

import {
  type Area,
  type Cells,
  type Content,
  cellAddress,
  Refusal,
  type Workbook,
} from "../../workbook/workbook.ts";
import { sharedFormula } from "../../workbook/xlsx/formula-shift.ts";
import type { Help } from "../help.ts";
import { conversionKinds } from "./conversion-kinds.ts";
import { callsOurs, ourCalls } from "./formula-calls.ts";
import { changeHeader } from "./header-units.ts";
import { readReference } from "./references.ts";

export interface Finding {
  readonly area: Area;
  readonly address: string;
  readonly what: string;
}

const LENGTH = conversionKinds.find(({ key }) => key === "length")!;
const MOST = 200;

/** What is found on the sheet of the active cell, in the order of its cells. @throws Refusal */
export async function checkSheet(workbook: Workbook, help: Help): Promise<readonly Finding[]> {
  const { sheet } = await workbook.active();
  const used = await workbook.used(sheet);
  if (!used) throw new Refusal(`The sheet "${sheet}" is empty. There is nothing to check.`);
  const cells = await workbook.read(used);
  const found = [
    ...overtyped(cells),
    ...differing(cells),
    ...errors(cells),
    ...numbersAsTexts(cells),
    ...callsIn(cells, help),
  ];
  found.sort((a, b) => a.area.row - b.area.row || a.area.column - b.area.column);
  return found.slice(0, MOST);
}

const at = ({ sheet, row, column }: Area, down: number, across: number, what: string): Finding => {
  const area = { sheet, row: row + down, column: column + across, rows: 1, columns: 1 };
  return { area, address: cellAddress(area.row, area.column), what };
};

const isFormula = (content: Content | undefined) => typeof content === "string" && content.startsWith("=");

/** A formula as it would stand so many rows further down. */
const moved = (formula: string, rows: number) => `=${sharedFormula(formula.slice(1)).at(rows, 0)}`;

/** Each column's cells from top to bottom. */
function columnsOf<T>(rows: readonly (readonly T[])[]): T[][] {
  return (rows[0] ?? []).map((_, column) => rows.map((row) => row[column]));
}

/** A number between cells of one formula that is filled down: somebody typed over it. */
function overtyped(cells: Cells): Finding[] {
  return columnsOf(cells.formulas).flatMap((column, across) =>
    column.flatMap((content, row) => {
      if (typeof content !== "number" || cells.holds[row][across]) return [];
      const above = nearest(column, row, -1);
      const below = nearest(column, row, 1);
      const [first, last] = [above ?? below, below ?? above];
      if (first === undefined || last === undefined) return [];
      if (above !== undefined && below !== undefined) {
        if (moved(String(column[above]), below - above) !== column[below]) return [];
      } else {
        // At an end of the column, two formulas in a row must say what belongs here.
        const step = above === undefined ? 1 : -1;
        const next = first + step;
        if (Math.abs(first - row) !== 1 || moved(String(column[first]), step) !== column[next]) return [];
      }
      return [at(cells, row, across, `${content} is typed where the column has a formula.`)];
    }),
  );
}

/** The next formula in a direction, with nothing but numbers on the way. */
function nearest(column: readonly Content[], row: number, step: number): number | undefined {
  for (let next = row + step; next >= 0 && next < column.length; next += step) {
    if (isFormula(column[next])) return next;
    if (typeof column[next] !== "number") return undefined;
  }
  return undefined;
}

/** A formula that differs where those above and below it are the same. */
function differing(cells: Cells): Finding[] {
  return columnsOf(cells.formulas).flatMap((column, across) =>
    column.flatMap((content, row) => {
      const [above, below] = [column[row - 1], column[row + 1]];
      if (!isFormula(content) || !isFormula(above) || !isFormula(below)) return [];
      if (moved(String(above), 2) !== below || moved(String(above), 1) === content) return [];
      return [at(cells, row, across, "The formula differs from those above and below it.")];
    }),
  );
}

function errors(cells: Cells): Finding[] {
  return cells.values.flatMap((row, down) =>
    row.flatMap((value, across) => {
      if (typeof value !== "string" || !/^#(?:N\/A|[A-Z]+(?:\/0)?[!?])$/.test(value)) return [];
      const ours = callsOurs(String(cells.formulas[down][across])) || cells.holds[down][across] === "spilled";
      const why =
        value === "#NAME?" && ours
          ? " The formula came before the add-in. Enter it again."
          : value === "#SPILL!"
            ? " Filled cells are in the way of the result."
            : ours
              ? " Explain this cell says why."
              : "";
      return [at(cells, down, across, `${value}.${why}`)];
    }),
  );
}

/** A text that reads as a number, in a column that is mostly numbers. */
function numbersAsTexts(cells: Cells): Finding[] {
  return columnsOf(cells.formulas).flatMap((column, across) => {
    const numbers = column.filter((content) => typeof content === "number").length;
    return column.flatMap((content, row) => {
      if (typeof content !== "string" || !/^\s*[+-]?(?:\d[\d.,\s]*|[.,]\d+)\s*$/.test(content)) return [];
      return numbers >= 2 ? [at(cells, row, across, `"${content}" is a text that looks like a number.`)] : [];
    });
  });
}

/** Arguments of our functions: columns of unequal length, units that a header contradicts. */
function callsIn(cells: Cells, help: Help): Finding[] {
  return cells.formulas.flatMap((row, down) =>
    row.flatMap((content, across) =>
      ourCalls(String(content)).flatMap(({ id, args }) => {
        const described = help.functions.find((one) => one.id === id);
        if (!described) return [];
        const given = args.map((written, index) => ({
          argument: described.parameters[index],
          area: readReference(written, cells.sheet)?.area,
        }));
        const columns = given.flatMap(({ argument, area }) =>
          area && argument && !argument.whole && area.rows > 1
            ? [{ name: argument.name, rows: area.rows }]
            : [],
        );
        const [first] = columns;
        const other = columns.find(({ rows }) => rows !== first.rows);
        const found: string[] = [];
        if (other) found.push(`${first.name} has ${first.rows} cells and ${other.name} has ${other.rows}.`);
        const units = unitsOf(args, described.parameters, cells);
        for (const { argument, area } of given) {
          if (!units || !area || !argument?.description.includes("mm or in")) continue;
          const said = headerUnit(cells, area);
          if (said && said.unit !== units)
            found.push(`${argument.name} is taken in ${units}, but ${said.address} says "${said.text}".`);
        }
        return found.map((what) => at(cells, down, across, what));
      }),
    ),
  );
}

/** The unit that a call takes its plain numbers in; undefined for a function without units. */
function unitsOf(args: readonly string[], parameters: Help["functions"][number]["parameters"], cells: Cells) {
  const index = parameters.findIndex(({ name }) => name === "units");
  if (index < 0) return undefined;
  const written = args[index] ?? "";
  if (written === "") return "mm";
  const area = readReference(written, cells.sheet)?.area;
  const said = area ? valueAt(cells, area.row, area.column) : written.replace(/"/g, "");
  return /^(?:in|inch|inches)$/i.test(String(said ?? "").trim()) ? "in" : "mm";
}

function valueAt(cells: Cells, row: number, column: number): Content | undefined {
  return cells.values[row - cells.row]?.[column - cells.column];
}

/** The unit in the nearest text above a column. */
function headerUnit(cells: Cells, { sheet, row, column }: Area) {
  if (sheet !== cells.sheet) return undefined;
  for (let above = row; above >= cells.row; above--) {
    const text = valueAt(cells, above, column);
    if (typeof text !== "string" || text.trim() === "" || text.startsWith("#")) continue;
    const isInch = changeHeader(text, LENGTH, "to metric").after !== undefined;
    const isMetric = changeHeader(text, LENGTH, "to inch").after !== undefined;
    if (isInch === isMetric) return undefined;
    return { unit: isInch ? "in" : "mm", text, address: cellAddress(above, column) } as const;
  }
  return undefined;
}
