// papers: what a user types for a before and after, beside the page: a row each, with what it rests on.

import type { Content } from "../workbook/workbook.ts";
import type { HoleRow } from "./hole-row.ts";
import { COLUMNS, type Layout } from "./layout.ts";

const OPERATIONS = 10;
const LIVES = 12;
const READINGS = 30;
const INVESTMENTS = 6;

const [LABEL, BASIS, PRESENT, PROPOSED, MARK, OPEN] = [1, 2, 3, 4, 5, 6].map((at) => COLUMNS + at);
/** Widths of the columns beside the page: a gap, label, basis, present, proposed, and two that formulas help with. */
export const BESIDE = [3, 34, 12, 16, 16, 12, 24];

/** The two cells of a row, present and proposed, with `$` signs. */
export interface Pair {
  readonly present: string;
  readonly proposed: string;
  readonly basis: string;
}

export interface ComparisonInputs {
  readonly currency: string;
  readonly partsPerYear: string;
  readonly machineRate: string;
  readonly operations: readonly (Pair & { readonly name: string; readonly mark: string })[];
  readonly tool: Pair;
  readonly speed: Pair;
  readonly feed: Pair;
  readonly price: Pair;
  readonly edges: Pair;
  readonly regrinds: Pair;
  readonly regrindCost: Pair;
  readonly lives: Pair;
  readonly edgeChange: Pair;
  readonly otherCost: Pair;
  readonly scrap: Pair;
  readonly readings: Pair;
  readonly equipment: string;
  readonly appraiser: string;
  readonly consecutive: string;
  readonly investments: string;
  /** The cells of all bases, which are offered the words for them. */
  readonly bases: readonly string[];
  /** Labels of the rows that nobody measured. */
  readonly open: string;
  readonly lastRow: number;
}

/** What a figure can rest on; blank counts as estimated. */
export const BASES = ["measured", "estimated", "quoted", "shop table"] as const;
/** What a pair of cells rests on, as it is printed: nothing where nothing was typed. */
export const printedBasis = ({ present, proposed, basis }: Pair): string =>
  `=IF(AND(${present}="",${proposed}=""),"",IF(${basis}="","estimated",${basis}))`;

const fixed = (address: string) => address.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

/** Where the columns beside the page hold present and proposed, for what is computed below the inputs. */
export const INPUT_COLUMNS = { label: LABEL, present: PRESENT, proposed: PROPOSED } as const;

export function comparisonInputs(layout: Layout, { units }: HoleRow): ComparisonInputs {
  let row = 1;
  const put = (column: number, content: Content, look?: Parameters<Layout["beside"]>[3], format?: string) =>
    fixed(layout.beside(row, column, content, look, format));
  const opens: string[] = [];
  const bases: string[] = [];
  const basisCell = () => {
    const address = put(BASIS, "", "input");
    bases.push(address);
    return address;
  };
  /** A row of two inputs with its basis; it is open while that is not "measured". */
  const pair = (label: string, format?: string, isOpen = true): Pair & { label: string } => {
    const name = put(LABEL, label, "label");
    const basis = basisCell();
    const present = put(PRESENT, "", "input", format);
    const proposed = put(PROPOSED, "", "input", format);
    if (isOpen)
      opens.push(
        put(OPEN, `=IF(AND(${basis}<>"measured",OR(${present}<>"",${proposed}<>"")),${name},"")`, "note"),
      );
    row++;
    return { label: name, basis, present, proposed };
  };
  /** A list down the column: the first row carries its label and basis. */
  const list = (label: string, count: number, format: string): Pair => {
    const first = pair(`${label} 1`, format, false);
    let last = first;
    for (let at = 2; at <= count; at++) last = pair(`${label} ${at}`, format, false);
    return {
      basis: first.basis,
      present: `${first.present}:${last.present}`,
      proposed: `${first.proposed}:${last.proposed}`,
    };
  };
  const single = (label: string, content: Content = "", format?: string, isOpen = false): string => {
    const name = put(LABEL, label, "label");
    const basis = basisCell();
    const address = put(PRESENT, content, "input", format);
    if (isOpen) opens.push(put(OPEN, `=IF(AND(${basis}<>"measured",${address}<>""),${name},"")`, "note"));
    row++;
    return address;
  };
  const heading = (text: string, present = "Present", proposed = "Proposed") => {
    for (const [column, content] of [
      [LABEL, text],
      [BASIS, "Basis"],
      [PRESENT, present],
      [PROPOSED, proposed],
    ] as const)
      put(column, content, "header");
    row++;
  };
  put(
    LABEL,
    "Type here. Basis: measured, estimated, quoted, or shop table; blank counts as estimated.",
    "note",
  );
  row++;
  heading("The year", "Value", "");
  const currency = single("Currency", "USD");
  const partsPerYear = single("Parts per year", "", "#,##0", true);
  const machineRate = single("Machine rate, per hour", "", "0.00", true);
  heading("Operations, s");
  const operations = Array.from({ length: OPERATIONS }, () => {
    const name = put(LABEL, "", "input");
    const basis = basisCell();
    const present = put(PRESENT, "", "input", "0");
    const proposed = put(PROPOSED, "", "input", "0");
    const mark = put(
      MARK,
      `=IF(${name}="","",IF(AND(${present}<>"",${proposed}=""),"removed",IF(AND(${present}="",${proposed}<>""),"new","")))`,
      "note",
    );
    opens.push(put(OPEN, `=IF(AND(${name}<>"",${basis}<>"measured"),${name},"")`, "note"));
    row++;
    return { name, basis, present, proposed, mark };
  });
  heading("Both tools");
  const tool = pair("Tool", undefined, false);
  const speed = pair(`Cutting speed, ${units === "mm" ? "m/min" : "ft/min"}`, "0.0");
  const feed = pair(`Feed per revolution, ${units}`, units === "mm" ? "0.000" : "0.0000");
  const price = pair("Price of the tool", "0.00");
  const edges = pair("Edges", "0");
  const regrinds = pair("Regrinds", "0");
  const regrindCost = pair("Cost of a regrind", "0.00");
  const edgeChange = pair("Edge change, s", "0");
  const otherCost = pair("Other cost per part", "0.00");
  const scrap = pair("Scrap, share of the parts", "0.0 %");
  heading("Lives, parts per edge");
  const lives = list("Edge", LIVES, "0");
  heading(`Measured holes, ${units}`);
  const readings = list("Reading", READINGS, units === "mm" ? "0.000" : "0.0000");
  const equipment = single("Gauge: repeatability EV");
  const appraiser = single("Gauge: reproducibility AV");
  const consecutive = single("Consecutive parts (yes)");
  heading("Investment", "Amount", "");
  const first = row;
  for (let at = 1; at <= INVESTMENTS; at++) {
    const name = put(LABEL, "", "input");
    const basis = basisCell();
    const amount = put(PRESENT, "", "input", "#,##0");
    opens.push(put(OPEN, `=IF(AND(${basis}<>"measured",${amount}<>""),${name},"")`, "note"));
    row++;
  }
  const letter = (column: number) => fixed(layout.beside(first, column, "")).split("$")[1];
  const amounts = letter(PRESENT);
  return {
    currency,
    partsPerYear,
    machineRate,
    operations,
    tool,
    speed,
    feed,
    price,
    edges,
    regrinds,
    regrindCost,
    lives,
    edgeChange,
    otherCost,
    scrap,
    readings,
    equipment,
    appraiser,
    consecutive,
    investments: `$${amounts}$${first}:$${amounts}$${row - 1}`,
    bases,
    open: opens.join(","),
    lastRow: row - 1,
  };
}
