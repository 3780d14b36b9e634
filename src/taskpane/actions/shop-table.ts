// taskpane: the sheet of the shop's own data, which PLAN and the quoting sheet read by its headers, and what is wrong
// with its rows.

import { NUMBER_COLUMNS, namedMaterial, namedTool, ShopTable } from "../../calc/plans/shop-table.ts";
import { Problem, resultOrProblem } from "../../calc/problem.ts";
import { materials } from "../../data/materials/materials.ts";
import {
  type Content,
  cellAddress,
  columnLetters,
  type NewSheet,
  type Workbook,
} from "../../workbook/workbook.ts";
import { TOOLS } from "./quote-columns.ts";
import type { ShopTables, Units } from "./quoting-sheet.ts";

/** The row of the headers, from 1. */
const HEADER_ROW = 4;
const ROWS = 200;

export const shopTableName = (units: Units): string => `Shop table ${units}`;

const columnsOf = (units: Units) => {
  const [speed, length] = units === "mm" ? ["m/min", "0.000"] : ["ft/min", "0.0000"];
  return [
    ["material", "material", 22, ""],
    ["tool", "tool", 15, ""],
    ["over", `over, ${units}`, 9, length],
    ["up to", `up to, ${units}`, 9, length],
    ["speed", `speed, ${speed}`, 9, "0.0"],
    ["feed", `feed, ${units}/rev`, 9, length],
    ["flutes", "flutes", 7, "0"],
    ["stock", `stock, ${units}`, 9, length],
    ["max rpm", "max rpm", 9, "0"],
    ["max depth ratio", "max depth ratio", 9, "0.0"],
    ["price", "price", 9, "0.00"],
    ["edges", "edges", 7, "0"],
    ["regrinds", "regrinds", 9, "0"],
    ["regrind cost", "regrind cost", 9, "0.00"],
    ["parts per edge", "parts per edge", 9, "0"],
    ["note", "note", 40, ""],
  ] as const;
};
/** Headers that the functions read beside those of a new table. */
const OTHERS = ["speed low", "speed high", "feed per tooth"];

/** Invented rows in the order of the columns, to be written over. */
const example: Readonly<Record<Units, readonly (readonly Content[])[]>> = {
  mm: [
    ["medium-carbon steel", "HSS", 5, 20, 12, 0.3, "", "", "", 4, 45, 1, 3, 12, 250, "invented"],
    ["medium-carbon steel", "coated carbide", 8, 20, 80, 1, 6, 0.2, "", 3, 190, 1, 0, "", 1800, "invented"],
    ["gray iron", "", 5, 30, 15, 0.4, "", "", "", 4, 45, 1, 3, 12, 400, "invented: any tool"],
    ["ductile iron", "coated carbide", 10, 20, 90, 1.2, 8, 0.25, 6000, 4, 240, 1, 2, 60, 900, "invented"],
    ["aluminum", "PCD", 6, 25, 200, 0.5, 4, 0.3, 12_000, 5, 620, 1, 2, 140, 20_000, "invented"],
  ],
  in: [
    ["medium-carbon steel", "HSS", 0.1875, 0.75, 40, 0.012, "", "", "", 4, 45, 1, 3, 12, 250, "invented"],
    [
      "medium-carbon steel",
      "coated carbide",
      0.3125,
      0.75,
      260,
      0.04,
      6,
      "",
      "",
      3,
      190,
      1,
      0,
      "",
      1800,
      "invented",
    ],
    ["gray iron", "", 0.1875, 1.25, 50, 0.016, "", "", "", 4, 45, 1, 3, 12, 400, "invented: any tool"],
    ["alloy steel", "HSS", 0.25, 0.75, 30, 0.0132, "", "", "", 4, 38, 1, 2, 10, 400, "invented"],
    ["aluminum", "PCD", 0.25, 1, 650, 0.02, 4, 0.012, 12_000, 5, 620, 1, 2, 140, 20_000, "invented"],
  ],
};

export function shopTable(units: Units): NewSheet {
  const columns = columnsOf(units);
  return {
    name: shopTableName(units),
    top: [
      ["The shop's own data"],
      [
        "Write over the invented rows. PLAN and new quoting sheets read this sheet by its headers; columns may move. Blank tool: any. Blank over or up to: open.",
      ],
      ["A row holds for sizes over `over`, up to and including `up to`. The first row that matches counts."],
    ],
    columns: columns.map(([key, header, width, format]) => ({
      header,
      width,
      isInput: true,
      ...(format === "" ? {} : { format }),
      ...(key === "material" ? { offers: materials.map((material) => material.key) } : {}),
      ...(key === "tool" ? { offers: TOOLS } : {}),
    })),
    data: example[units],
    rows: ROWS,
    frozenColumns: 2,
    painted: [
      { area: "A1", look: "title" },
      { area: "A2:A3", look: "note" },
      { area: `A${HEADER_ROW}:${columnLetters(columns.length - 1)}${HEADER_ROW}`, look: "header" },
    ],
    print: { paper: "A4", landscape: true, repeated: [HEADER_ROW - 1, HEADER_ROW - 1] },
  };
}

/** What the functions read of a table with so many columns, as many as a new one has if none are given. */
export const shopTableReach = (units: Units, columns = 0): string =>
  `$A$${HEADER_ROW}:$${columnLetters(Math.max(columns, columnsOf(units).length) - 1)}$${HEADER_ROW + ROWS}`;

/** The shop's tables of a workbook, by unit. */
export async function shopTablesOf(workbook: Workbook): Promise<ShopTables> {
  const tables: { -readonly [unit in Units]?: { sheet: string; address: string } } = {};
  const sheets = await workbook.sheets();
  for (const units of ["mm", "in"] as const) {
    const sheet = shopTableName(units);
    const used = sheets.includes(sheet) ? await workbook.used(sheet) : undefined;
    if (!used) continue;
    tables[units] = { sheet, address: shopTableReach(units, used.column + used.columns) };
  }
  return tables;
}

/** What is wrong with the rows of a table, a sentence each. @param cells headers first */
export function shopTableFaults(
  cells: readonly (readonly Content[])[],
  units: Units = "mm",
  firstRow = HEADER_ROW,
): string[] {
  const [head = [], ...rows] = cells;
  const names = head.map((title) =>
    String(title)
      .replace(/[([,].*$/s, "")
      .trim()
      .toLowerCase(),
  );
  const known = [...columnsOf("mm").map(([key]) => key as string), ...OTHERS];
  const faults = names.flatMap((name, column) =>
    name === "" || known.includes(name)
      ? []
      : [
          `${cellAddress(firstRow - 1, column)}: the functions know no column "${name}"; only DATAFOR reads it.`,
        ],
  );
  const table = resultOrProblem(() => new ShopTable(cells, units));
  if (table instanceof Problem) return [...faults, table.message];
  const at = (row: readonly Content[], name: string): Content => row[names.indexOf(name)] ?? "";
  const ranges = rows.flatMap((row, index) => {
    if (row.every((cell) => cell === "")) return [];
    const number = firstRow + index + 1;
    const material = String(at(row, "material"));
    const tool = String(at(row, "tool"));
    if (material === "") faults.push(`Row ${number} has no material.`);
    const numbers = NUMBER_COLUMNS.map((column) => resultOrProblem(() => table.number(row, column)));
    const problem = numbers.find((one) => one instanceof Problem);
    if (problem instanceof Problem) {
      faults.push(`Row ${number}: ${problem.message}`);
      return [];
    }
    const over = table.number(row, "over") ?? 0;
    const upTo = table.number(row, "up to") ?? Number.POSITIVE_INFINITY;
    if (!(upTo > over)) faults.push(`Row ${number}: no size is over ${over} and up to ${upTo}.`);
    return [{ number, material, tool, over, upTo }];
  });
  for (const [index, row] of ranges.entries()) {
    const earlier = ranges
      .slice(0, index)
      .filter((other) => isSame(other, row) && other.over < row.upTo && row.over < other.upTo);
    if (earlier.length === 0) continue;
    const hides = earlier.find((other) => other.over <= row.over && other.upTo >= row.upTo);
    faults.push(
      hides
        ? `Row ${row.number} is never read: row ${hides.number} covers all its sizes.`
        : `Rows ${earlier[0].number} and ${row.number} overlap: row ${earlier[0].number} counts.`,
    );
  }
  return faults;
}

interface Row {
  readonly material: string;
  readonly tool: string;
}

/** Whether the first row answers where the second one would: the same text, a tool of its own or any. */
function isSame(first: Row, second: Row): boolean {
  const sameText = first.material.trim().toLowerCase() === second.material.trim().toLowerCase();
  const group = namedMaterial(first.material).material;
  const sameMaterial = sameText || (group !== undefined && group === namedMaterial(second.material).material);
  const toolOf = (name: string) => namedTool(name).tool ?? name.trim().toLowerCase();
  const sameTool = first.tool === "" || (second.tool !== "" && toolOf(first.tool) === toolOf(second.tool));
  return sameMaterial && sameTool;
}
