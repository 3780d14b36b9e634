// taskpane: the columns of the quoting sheet. Lengths are in the unit of the row.

export interface QuoteColumn {
  readonly key: (typeof list)[number][0];
  readonly header: string;
  readonly width: number;
  readonly format: string | undefined;
  readonly isInput: boolean;
}

const LENGTH = "0.000#";

/** Key, header, width in characters, format; inputs first. */
const list = [
  ["part", "Part", 24, ""],
  ["callout", "Callout", 28, ""],
  ["units", "Units", 8, ""],
  ["drawing", "Drawing and revision", 18, ""],
  ["material", "Material", 20, ""],
  ["tool", "Tool", 15, ""],
  ["depth", "Depth (blank: from the callout)", 11, LENGTH],
  ["holes", "Holes per part (blank: from the callout)", 11, "0"],
  ["batch", "Batch", 9, "#,##0"],
  ["toolPrice", "Tool price", 9, "0.00"],
  ["edges", "Edges", 8, "0"],
  ["regrinds", "Regrinds", 10, "0"],
  ["regrindCost", "Cost of a regrind", 10, "0.00"],
  ["partsPerEdge", "Parts per edge", 9, "0"],
  ["otherCost", "Other cost per part", 10, "0.00"],
  ["break1", "Break 1", 8, "#,##0"],
  ["break2", "Break 2", 8, "#,##0"],
  ["break3", "Break 3", 8, "#,##0"],
  ["nominal", "Nominal size", 10, LENGTH],
  ["lower", "Lower limit of size", 10, LENGTH],
  ["upper", "Upper limit of size", 10, LENGTH],
  ["reamerMin", "Reamer minimum", 10, LENGTH],
  ["reamerMax", "Reamer maximum", 10, LENGTH],
  ["reamerSize", "Reamer to order", 10, LENGTH],
  ["drill", "Drill", 8, ""],
  ["drillDiameter", "Drill diameter", 10, LENGTH],
  ["stock", "Stock on diameter", 10, LENGTH],
  ["depthUsed", "Depth used", 10, LENGTH],
  ["holesUsed", "Holes used", 8, "0"],
  ["speed", "Cutting speed, m/min or ft/min", 12, "0.0"],
  ["rpm", "Spindle speed, rev/min", 10, "0"],
  ["feed", "Feed per revolution", 10, LENGTH],
  ["feedRate", "Feed rate, per min", 10, "0.0#"],
  ["holeTime", "Time per hole, s", 9, "0.0"],
  ["partTime", "Time per part, s", 9, "0.0"],
  ["edgeCost", "Edge cost", 9, "0.00"],
  ["partsUsed", "Parts per edge used", 9, "0"],
  ["notes", "Notes", 40, ""],
  ["cost", "Cost per part", 10, "0.00"],
  ["amount", "Price of the batch", 12, "#,##0.00"],
  ["price", "Price per part", 10, "0.00"],
] as const;

const LAST_INPUT = list.findIndex(([key]) => key === "break3");

export const quoteColumns: readonly QuoteColumn[] = list.map(([key, header, width, format], index) => ({
  key,
  header,
  width,
  format: format === "" ? undefined : format,
  isInput: index <= LAST_INPUT,
}));

/** Kinds of tool that are offered; the functions read others too. */
export const TOOLS = [
  "HSS",
  "carbide",
  "brazed carbide",
  "coated carbide",
  "cermet",
  "PCD",
  "CBN",
  "guided blade",
];
