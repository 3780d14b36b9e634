// browser: the workbook that opens: a quote of an invented shop, one spilled formula per computed column, and the same
// holes in both unit systems side by side.

import {
  cells,
  numberFormats,
  type SheetColumn,
  type SheetData,
  sheetOf,
  sheetsWorkbook,
  styles,
} from "../sheet.ts";
import { Looks, sheetOfSteps } from "../sheet-of-steps.ts";
import { handFiguresSheet } from "./hand-figures.ts";
import { type Hole, holes } from "./holes.ts";
import { paperSheets } from "./paper-sheets.ts";

const shop = "Example Reaming Works (an invented shop)";

/** Rows of the sheets, from 1: title, note, settings, groups, headers, then a row per hole. */
const headerRow = 5;
export const firstRow = headerRow + 1;
export const lastRow = headerRow + holes.length;

/** The cells of one column of the quote, `C6:C35`. */
const rows = (column: string) => `${column}${firstRow}:${column}${lastRow}`;

const pastEnd = ({ kind, units }: Hole) => (kind === "blind" ? 0 : units === "mm" ? 3 : 0.12);

/** Inputs stand beside the formulas that they drive. */
const quoteColumns: SheetColumn<Hole>[] = [
  { id: "A", group: "Hole", header: "No.", width: 38, value: (_, index) => index + 1 },
  { id: "B", header: "Part", width: 100, value: ({ part }) => part },
  { id: "C", header: "Callout", width: 234, value: ({ callout }) => callout },
  { id: "D", header: "Units", width: 46, value: ({ units }) => units },
  {
    id: "E",
    group: "Limits of size",
    header: "Nominal",
    width: 72,
    format: "size",
    formula: `=REAM.CALLOUT(${rows("C")},"nominal",${rows("D")})`,
  },
  {
    id: "F",
    header: "Lower limit",
    width: 72,
    format: "size",
    formula: `=REAM.LIMITS(${rows("C")},${rows("D")})`,
  },
  { id: "G", header: "Upper limit", width: 72, format: "size" },
  {
    id: "H",
    group: "Reamer",
    header: "Minimum diameter",
    width: 88,
    format: "fine",
    formula: `=REAM.REAMERLIMITS(${rows("C")},,${rows("D")})`,
  },
  { id: "I", header: "Maximum diameter", width: 88, format: "fine" },
  {
    id: "J",
    header: "Order as",
    width: 72,
    format: "size",
    formula: `=REAM.REAMERSIZE(${rows("C")},,,${rows("D")})`,
  },
  { id: "K", group: "Pre-ream drill", header: "Material", width: 142, value: ({ material }) => material },
  { id: "L", header: "Tool", width: 62, value: ({ tool }) => tool },
  {
    id: "M",
    header: "Drill",
    width: 58,
    align: "center",
    formula: `=REAM.DRILLFOR(${rows("E")},${rows("K")},,${rows("D")})`,
  },
  { id: "N", header: "Drill diameter", width: 72, format: "size" },
  { id: "O", header: "Stock", width: 72, format: "size" },
  {
    id: "P",
    header: "Stock check",
    width: 110,
    formula: `=REAM.STOCKCHECK(${rows("E")},${rows("N")},${rows("K")},,${rows("D")})`,
  },
  {
    id: "Q",
    group: "Starting speed and feed",
    header: "Surface speed",
    width: 72,
    format: "tenth",
    formula: `=REAM.CUTTINGDATA(${rows("K")},${rows("E")},${rows("L")},,$C$3,${rows("D")})`,
  },
  { id: "R", header: "Rev/min", width: 66, format: "whole" },
  { id: "S", header: "Feed per rev", width: 72, format: "fine" },
  { id: "T", header: "Feed rate", width: 72, format: "tenth" },
  { id: "U", group: "Time", header: "Kind", width: 66, value: ({ kind }) => kind },
  { id: "V", header: "Depth", width: 62, format: "size", value: ({ depth }) => depth },
  { id: "W", header: "Run past", width: 62, format: "size", value: pastEnd },
  {
    id: "X",
    header: "Per hole, s",
    width: 66,
    format: "tenth",
    formula: `=REAM.HOLETIME(${rows("V")},${rows("T")},"2 mm",${rows("W")},,${rows("D")})`,
  },
  { id: "Y", header: "Holes per part", width: 70, format: "whole", value: ({ holes: count }) => count },
  {
    id: "Z",
    header: "Per part, s",
    width: 66,
    format: "tenth",
    formula: `=REAM.CYCLETIME(${rows("X")},${rows("Y")},$G$3,$K$3,$O$3)`,
  },
  { id: "AA", header: "Batch", width: 66, format: "whole", value: ({ batch }) => batch },
  { id: "AB", header: "Batch, h", width: 66, format: "tenth", formula: `=${rows("Z")}*${rows("AA")}/3600` },
  {
    id: "AC",
    group: "Price",
    header: "Cost per part",
    width: 78,
    format: "money",
    formula: `=REAM.PARTCOST(${rows("Z")},$U$3)`,
  },
  {
    id: "AD",
    header: "Price per part",
    width: 78,
    format: "money",
    formula: `=REAM.PRICE(${rows("AC")},$Y$3,$AB$3,${rows("AA")},,$AD$3)`,
  },
];

const other = (column: string) => `Quote!${rows(column)}`;
/** Nominal diameters of the quote, in each system. */
const inMillimetres = `=${other("E")}*IF(${other("D")}="in",25.4,1)`;
const inInches = `=${other("E")}/IF(${other("D")}="in",1,25.4)`;

const bothColumns: SheetColumn<Hole>[] = [
  { id: "A", group: "The holes of the quote", header: "No.", width: 38, value: (_, index) => index + 1 },
  { id: "B", header: "Part", width: 110, formula: `=${other("B")}` },
  { id: "C", header: "Callout", width: 234, formula: `=${other("C")}` },
  { id: "D", header: "Material", width: 140, formula: `=${other("K")}` },
  { id: "E", header: "Tool", width: 62, formula: `=${other("L")}` },
  { id: "F", group: "Metric", header: "Diameter, mm", width: 84, format: "mm", formula: inMillimetres },
  {
    id: "G",
    header: "Speed, m/min",
    width: 84,
    format: "tenth",
    formula: `=REAM.CUTTINGDATA(${rows("D")},${rows("F")},${rows("E")},,Quote!$C$3,"mm")`,
  },
  { id: "H", header: "Rev/min", width: 72, format: "whole" },
  { id: "I", header: "Feed, mm/rev", width: 84, format: "mm" },
  { id: "J", header: "Feed rate, mm/min", width: 84, format: "tenth" },
  { id: "K", group: "Inch", header: "Diameter, in", width: 84, format: "in", formula: inInches },
  {
    id: "L",
    header: "Speed, ft/min",
    width: 84,
    format: "tenth",
    formula: `=REAM.CUTTINGDATA(${rows("D")},${rows("K")},${rows("E")},,Quote!$C$3,"in")`,
  },
  { id: "M", header: "Rev/min", width: 72, format: "whole" },
  { id: "N", header: "Feed, in/rev", width: 84, format: "in" },
  { id: "O", header: "Feed rate, in/min", width: 84, format: "tenth" },
];

function quoteSheet(): SheetData {
  const sheet = sheetOf("Quote", quoteColumns, holes, headerRow);
  Object.assign(
    sheet.cells,
    cells(1, { A: "Quote of reamed holes", D: shop }),
    cells(2, {
      D: "Parts, batches and times are invented. Each computed column is one formula in its first cell. Speeds and feeds are starting values, to be proved on the machine.",
    }),
    cells(3, {
      B: "Spindle limit, rev/min",
      C: "6000",
      D: "Move between holes, s",
      G: "3",
      H: "Tool change, s",
    }),
    cells(3, {
      K: "6",
      L: "Load and unload, s",
      O: "40",
      P: "All batches, h",
      Q: `=SUMIF(${rows("AB")},">0")`,
    }),
  );
  Object.assign(
    sheet.cells,
    cells(3, {
      R: "Machine rate, per hour",
      U: "72",
      V: "Set-up, min",
      Y: "45",
      Z: "Set-up rate, per hour",
      AB: "60",
      AC: "Margin",
      AD: "20%",
    }),
  );
  sheet.merges.push("D3:F3", "H3:J3", "L3:N3", "R3:T3", "V3:X3", "Z3:AA3");
  for (const label of ["B3", "D3", "H3", "L3", "P3", "R3", "V3", "Z3", "AC3"])
    sheet.styles[label] = styles.label;
  for (const setting of ["C3", "G3", "K3", "O3", "U3", "Y3", "AB3", "AD3"])
    sheet.styles[setting] = styles.setting;
  sheet.styles.Q3 = styles.total;
  sheet.formats.Q3 = numberFormats.tenth;
  return sheet;
}

function bothSheet(): SheetData {
  const sheet = sheetOf("Inch and metric", bothColumns, holes, headerRow);
  Object.assign(
    sheet.cells,
    cells(1, { A: "Inch and metric", D: shop }),
    cells(2, {
      D: "Speeds and feeds of the same holes in both systems: one table each, so the two sides differ by the unit alone.",
    }),
  );
  return sheet;
}

/**
 * The workbook as the grid's library reads it, and how its papers are printed, by the ids of their sheets.
 * @param frozen at most so many columns stay in sight
 */
export function quoteWorkbook(frozen = Number.POSITIVE_INFINITY) {
  const looks = new Looks();
  const papers = paperSheets();
  const made = papers.map((paper, at) => sheetOfSteps(paper, `paper-${at + 1}`, looks));
  const sheets = [quoteSheet(), bothSheet(), ...made, handFiguresSheet(shop)];
  for (const { panes } of sheets) panes.xSplit = Math.min(panes.xSplit, frozen);
  const prints = papers.flatMap(({ print }, at) => (print ? [[`paper-${at + 1}`, print] as const] : []));
  return { data: sheetsWorkbook(sheets, looks.all), prints };
}
