// taskpane: a new sheet to quote reamed holes on, mm and inch rows mixed: inputs on the left, formulas on the right, one
// in each cell, so that rows can be sorted, moved and inserted.

import { materials } from "../../data/materials/materials.ts";
import {
  columnLetters,
  type NewColumn,
  type NewSheet,
  Refusal,
  sheetReference,
} from "../../workbook/workbook.ts";
import { type QuoteColumn, quoteColumns, TOOLS } from "./quote-columns.ts";

export type Units = "mm" | "in";

/** The shop's own tables that the sheet reads, by unit: sheet and address of each. */
export type ShopTables = Partial<
  Readonly<Record<Units, { readonly sheet: string; readonly address: string }>>
>;

const QUOTE_SHEET = "Quote of holes";
const MOST_ROWS = 1000;
/** The row of the headers, from 1. */
export const QUOTE_HEADER_ROW = 8;
const FIRST_ROW = QUOTE_HEADER_ROW + 1;
/** Part and callout stay in sight. */
const FROZEN = 2;
const LAST_COUNTED = FIRST_ROW + MOST_ROWS - 1;

/** Label, value and format of each setting, in the order of the sheet: three columns of four. */
const settings = [
  ["Machine rate, per hour", 72, "0.00", "machineRate"],
  ["Set-up, min", 45, "0", "setupTime"],
  ["Set-up rate, per hour", 60, "0.00", "setupRate"],
  ["Spindle limit, rev/min", "", "0", "maxRpm"],
  ["Overhead, share of the cost", 0.12, "0 %", "overhead"],
  ["Margin, share of the price", 0.2, "0 %", "margin"],
  ["Scrap, share of the parts", 0.01, "0.0 %", "scrap"],
  ["Edge change, s", 240, "0", "edgeChange"],
  ["Move between holes, s", 3, "0", "moveTime"],
  ["Tool change, s", 6, "0", "toolChange"],
  ["Load and unload, s", 40, "0", "loadTime"],
] as const;
export type Setting = (typeof settings)[number][3] | "currency";

/** The columns of labels and of values beside them. */
const LABELS = ["C", "F", "J"];
const VALUES = ["E", "I", "M"];
const place = (index: number) => ({ block: Math.floor(index / 4), row: 3 + (index % 4) });

/** The cell of a setting, `$E$3`. */
export function settingCell(wanted: Setting): string {
  if (wanted === "currency") return "$B$6";
  const { block, row } = place(settings.findIndex(([, , , key]) => key === wanted));
  return `$${VALUES[block]}$${row}`;
}

/** Invented figures of the first row, to be written over. */
const example: Partial<Record<QuoteColumn["key"], string | number>> = {
  part: "Example part",
  callout: "2X ⌀12 H7 x 30 deep",
  units: "mm",
  material: "medium-carbon steel",
  tool: "HSS",
  batch: 250,
  toolPrice: 42,
  regrinds: 3,
  regrindCost: 11,
  partsPerEdge: 300,
};

/** @param rows parts that the table has formulas for @throws Refusal */
export function quotingSheet(rows: number, tables: ShopTables = {}): NewSheet {
  if (!Number.isInteger(rows) || rows < 1 || rows > MOST_ROWS)
    throw new Refusal(`The number of rows must be a whole number from 1 to ${MOST_ROWS}.`);
  const formulas = rowFormulas(tables);
  const columns = quoteColumns.map(({ key, header, width, format, isInput }): NewColumn => {
    return {
      header,
      width,
      format,
      isInput,
      first: example[key],
      each: formulas.get(key),
      ...(key === "units" ? { choices: ["mm", "in"] } : {}),
      ...(key === "material" ? { offers: materials.map((material) => material.key) } : {}),
      ...(key === "tool" ? { offers: TOOLS } : {}),
    };
  });
  return {
    name: QUOTE_SHEET,
    top: topRows(),
    columns,
    rows,
    room: LAST_COUNTED + 1,
    frozenColumns: FROZEN,
    painted: [
      { area: "A1", look: "title" },
      { area: "C1:C2", look: "note" },
      { area: "A3:A6", look: "label" },
      { area: "B3", look: "total", format: "#,##0.00", align: "left" },
      { area: "B4", look: "total", format: "0", align: "left" },
      { area: "B6", look: "input", align: "left" },
      ...settings.map(([, , format], index) => {
        const { block, row } = place(index);
        return { area: `${VALUES[block]}${row}`, look: "input", format, align: "right" } as const;
      }),
      {
        area: `A${QUOTE_HEADER_ROW}:${columnLetters(columns.length - 1)}${QUOTE_HEADER_ROW}`,
        look: "header",
      },
    ],
    print: {
      paper: "A4",
      landscape: true,
      repeated: [QUOTE_HEADER_ROW - 1, QUOTE_HEADER_ROW - 1],
      pagesWide: 4,
      repeatedColumns: FROZEN,
      header: { left: "Cost sheet: not for the customer" },
    },
  };
}

function topRows(): (string | number)[][] {
  const counted = (key: QuoteColumn["key"]) => {
    const letter = letterOf(key);
    return `${letter}${FIRST_ROW}:${letter}${LAST_COUNTED}`;
  };
  const open = `SUMPRODUCT((${counted("callout")}<>"")*NOT(ISNUMBER(${counted("amount")})))`;
  const top: (string | number)[][] = [
    [
      "Quote of reamed holes",
      "",
      "Blue cells are inputs: write over them. Speeds and feeds are starting values: read the cautions.",
    ],
    [
      "",
      "",
      `Sort the input columns, or sort, move and insert whole rows: each formula reads its own row. New rows below: "Add rows" in the tools continues the formulas.`,
    ],
    ["Total, quoted quantities", `=IF(B4>0,"not all rows have a price",SUM(${counted("amount")}))`],
    ["Rows without a price", `=${open}`],
    ["", ""],
    ["Currency", "USD"],
    [],
  ];
  settings.forEach(([label, value], index) => {
    const { block, row } = place(index);
    const line = top[row - 1];
    for (const [letters, content] of [
      [LABELS[block], label],
      [VALUES[block], value],
    ] as const) {
      const column = letters.charCodeAt(0) - 65;
      while (line.length <= column) line.push("");
      line[column] = content;
    }
  });
  return top;
}

export const letterOf = (key: QuoteColumn["key"]): string =>
  columnLetters(quoteColumns.findIndex((column) => column.key === key));

/** The formulas by column, with `{row}` for the number of the row. */
export function rowFormulas(tables: ShopTables): ReadonlyMap<QuoteColumn["key"], string> {
  const cell = (key: QuoteColumn["key"]) => `${letterOf(key)}{row}`;
  const [callout, units, material, tool] = (["callout", "units", "material", "tool"] as const).map(cell);
  const table = (unit: Units) => {
    const found = tables[unit];
    return found && `${sheetReference(found.sheet)}!${found.address}`;
  };
  /** A call that reads the shop's table of the row's own unit, where there is one. */
  const byTable = (call: (table: string) => string) => {
    const [mm, inch] = [call(table("mm") ?? ""), call(table("in") ?? "")];
    return mm === inch ? mm : `IF(${units}="in",${inch},${mm})`;
  };
  const ifRow = (formula: string) => `=IF(${callout}="","",${formula})`;
  const plan = (part: number) =>
    ifRow(
      byTable(
        (shop) =>
          `INDEX(REAM.PLAN(${callout},${material},${cell("depthUsed")},${tool},${settingCell("maxRpm")},${shop},${units}),1,${part})`,
      ),
    );
  const typedElse = (key: QuoteColumn["key"], part: string) =>
    ifRow(`IF(OR(${cell(key)}="",${cell(key)}=0),REAM.CALLOUT(${callout},"${part}",${units}),${cell(key)})`);
  /** What the shop's table has for the tool of the row, or "". */
  const fromTable = (column: string) =>
    byTable((shop) =>
      shop === ""
        ? '""'
        : `REAM.DATAFOR(${shop},"${column}",${material},${tool},${cell("nominal")},${units})`,
    );
  const hasTable = tables.mm !== undefined || tables.in !== undefined;
  const edgeFromTable = hasTable
    ? `IFERROR(REAM.EDGECOST(${["price", "edges", "regrinds", "regrind cost"].map(fromTable).join(",")}),"")`
    : '""';
  const partsFromTable = hasTable ? `IFERROR(${fromTable("parts per edge")},"")` : '""';
  const edge = ["toolPrice", "edges", "regrinds", "regrindCost"].map((key) =>
    cell(key as QuoteColumn["key"]),
  );
  const noEdge = `AND(${cell("edgeCost")}="",${cell("partsUsed")}="")`;
  return new Map<QuoteColumn["key"], string>([
    ["nominal", ifRow(`REAM.CALLOUT(${callout},"nominal",${units})`)],
    ["lower", ifRow(`REAM.MINSIZE(${callout},${units})`)],
    ["upper", ifRow(`REAM.MAXSIZE(${callout},${units})`)],
    ["reamerMin", plan(3)],
    ["reamerMax", plan(4)],
    ["reamerSize", plan(5)],
    ["drill", plan(6)],
    ["drillDiameter", plan(7)],
    ["stock", plan(8)],
    ["depthUsed", typedElse("depth", "depth")],
    ["holesUsed", typedElse("holes", "count")],
    ["speed", plan(9)],
    ["rpm", plan(10)],
    ["feed", plan(11)],
    ["feedRate", plan(12)],
    ["holeTime", plan(13)],
    [
      "partTime",
      ifRow(
        `REAM.CYCLETIME(${cell("holeTime")},${cell("holesUsed")},${settingCell("moveTime")},${settingCell("toolChange")},${settingCell("loadTime")})`,
      ),
    ],
    ["edgeCost", ifRow(`IF(${edge[0]}<>"",REAM.EDGECOST(${edge.join(",")}),${edgeFromTable})`)],
    ["partsUsed", ifRow(`IF(${cell("partsPerEdge")}<>"",${cell("partsPerEdge")},${partsFromTable})`)],
    [
      "notes",
      ifRow(
        `TRIM(${plan(15).slice(`=IF(${callout}="","",`.length, -1)}&IF(${noEdge}," (tool and edge change are not in the cost)",""))`,
      ),
    ],
    [
      "cost",
      ifRow(
        `REAM.PARTCOST(${cell("partTime")},${settingCell("machineRate")},${cell("edgeCost")},${cell("partsUsed")},IF(${noEdge},0,${settingCell("edgeChange")}),${cell("otherCost")},${settingCell("scrap")})`,
      ),
    ],
    ["amount", ifRow(`ROUND(${cell("price")},2)*${cell("batch")}`)],
    [
      "price",
      ifRow(
        `REAM.PRICE(${cell("cost")},${settingCell("setupTime")},${settingCell("setupRate")},${cell("batch")},${settingCell("overhead")},${settingCell("margin")})`,
      ),
    ],
  ]);
}
