// papers: the trouble sheet: what was measured, the form of the holes, and the causes to go through in order. Formulas
// stay live.

import type { NewSheet, PrintSetup } from "../workbook/workbook.ts";
import { DEPTH, FINE, type HoleRow, LENGTH } from "./hole-row.ts";
import { COLUMNS, cell, Layout } from "./layout.ts";
import { fact, typed } from "./set-up-cells.ts";

const HOLES = 4;
const POSITIONS = 5;
/** The most rows that a symptom has. */
const MOST_CAUSES = 8;

export const symptoms = [
  "oversize",
  "undersize",
  "bell-mouth",
  "taper",
  "rough",
  "drag line",
  "chatter",
  "out of position",
  "not round",
  "short life",
  "built-up edge",
  "chips jam",
] as const;

const INSTRUCTIONS =
  "Work from the top. Change one thing, then measure again. Two-point gauges miss odd lobes. Check roundness with three points.";
const CAUTIONS =
  "Stop the spindle before you look or touch. Lock out the drive before you turn it by hand. Chips with a hook, never by hand. Hold the batch: mark and separate the parts since the last good measurement. Nothing is switched off: guards and interlocks stay.";

/** Difference from 20 °C (68 °F) from which a size is worth correcting. */
const WARM = { mm: { reference: 20, least: 3, unit: "°C" }, in: { reference: 68, least: 5, unit: "°F" } };

/** A size with its sign; zero too. */
const signed = (format: string) => `"+"${format};"−"${format};${format}`;
const LETTERS = "ABCDEFGHIJKL";

export function troubleSheet(row: HoleRow, paper: PrintSetup["paper"]): NewSheet {
  const { units } = row;
  const layout = new Layout();
  layout.row([cell("Trouble sheet", 6, "title"), cell(row.part, 6, "title", "@", "right")], 2);
  layout.row([...typed("Machine"), ...typed("Date, shift")]);
  layout.row([...typed("Tool no."), ...typed("Parts on this edge")]);
  layout.row([
    cell("What changed last (tool, drill, batch, coolant, program, shift)", 6, "label"),
    cell("", 6, "line"),
  ]);
  const [, callout] = layout.row([cell("Hole as drawn", 2, "label"), cell(row.callout, 10, "big", "@")], 2);
  const call = (name: string) => `=REAM.${name}(${callout},"${units}")`;
  layout.row([
    ...fact(`Lower limit of size, ${units}`, call("MINSIZE"), LENGTH[units], "strong"),
    ...fact(`Upper limit of size, ${units}`, call("MAXSIZE"), LENGTH[units], "strong"),
  ]);
  const [, gauge, , temperature] = layout.row([
    ...typed("Gauge"),
    ...typed(`Part temperature, ${WARM[units].unit}`, "", "0"),
  ]);
  void gauge;
  const measured = measurements(layout, units);
  const forms = formTable(layout, row, callout, measured);
  layout.row([
    cell("Largest reading at 20 °C (68 °F)", 5, "label"),
    cell(at20(row, temperature, measured.readings), 7, undefined, LENGTH[units], "left"),
  ]);
  const symptom = symptomBlock(layout, row, callout, forms);
  causeTable(layout, symptom);
  layout.row([cell("What helped", 2, "label"), cell("", 10, "line")], 2);
  layout.row([...typed("Size after"), ...typed("Change card or program?")], 2);
  layout.row(
    ["Found by", "Released by", "Date"].flatMap((label) => [cell(label, 2, "label"), cell("", 2, "line")]),
    2,
  );
  return layout.sheet(`Trouble ${row.part}`, {
    paper,
    header: { left: "Trouble sheet", right: row.part },
    footer: row.drawing,
  });
}

interface Measured {
  /** The cells of all readings. */
  readonly readings: string;
  readonly positionRow: number;
  /** The row of each hole. */
  readonly rows: readonly number[];
}

function measurements(layout: Layout, units: HoleRow["units"]): Measured {
  layout.heading("Measured diameters");
  const positionRow = layout.next;
  const pairs = Array.from({ length: POSITIONS }, (_, at) => at);
  layout.row([
    cell("Position", 2, "header"),
    ...pairs.map(() => cell("", 2, "line", DEPTH[units], "center")),
  ]);
  layout.row([
    cell(`from the entry, ${units}`, 2, "note"),
    ...pairs.flatMap(() => [
      cell("0°", 1, "header", undefined, "center"),
      cell("90°", 1, "header", undefined, "center"),
    ]),
  ]);
  const rows = Array.from({ length: HOLES }, (_, hole) => {
    const at = layout.next;
    layout.row([
      cell(`Hole ${hole + 1}`, 2, "label"),
      ...pairs.flatMap(() => [
        cell("", 1, "line", LENGTH[units], "center"),
        cell("", 1, "line", LENGTH[units], "center"),
      ]),
    ]);
    return at;
  });
  return { positionRow, rows, readings: `$C$${rows[0]}:$L$${rows[HOLES - 1]}` };
}

interface Forms {
  readonly names: string;
  readonly verdicts: string;
  readonly smallVerdicts: string;
  readonly differences: string;
}

function formTable(
  layout: Layout,
  { units }: HoleRow,
  callout: string,
  { rows, positionRow }: Measured,
): Forms {
  layout.heading("Form");
  layout.row([
    cell("Mean of the two directions", 2, "header"),
    ...Array.from({ length: POSITIONS }, (_, at) =>
      cell(
        `=IF($${LETTERS[2 + 2 * at]}$${positionRow}="","",$${LETTERS[2 + 2 * at]}$${positionRow})`,
        2,
        "header",
        DEPTH[units],
        "center",
      ),
    ),
  ]);
  const means = rows.map((reading, hole) => {
    const at = layout.next;
    layout.row([
      cell(`Hole ${hole + 1}`, 2, "label"),
      ...Array.from({ length: POSITIONS }, (_, pair) => {
        const two = `$${LETTERS[2 + 2 * pair]}$${reading}:$${LETTERS[3 + 2 * pair]}$${reading}`;
        return cell(`=IF(COUNT(${two})=0,"",AVERAGE(${two}))`, 2, undefined, FINE[units], "center");
      }),
    ]);
    return at;
  });
  layout.row([
    cell("", 1, "header"),
    ...["Taper", "Bell-mouth", "Barrel"].map((name) => cell(name, 1, "header", undefined, "center")),
    cell("Form", 2, "header"),
    cell("Largest", 1, "header", undefined, "center"),
    cell("", 2, "header"),
    cell("Smallest", 1, "header", undefined, "center"),
    cell("", 1, "header"),
    cell("0° − 90°", 1, "header", undefined, "center"),
  ]);
  const decimals = units === "mm" ? 3 : 4;
  const first = layout.next;
  rows.forEach((reading, hole) => {
    const at = layout.next;
    const own = `$C$${reading}:$L$${reading}`;
    const mean = `$C$${means[hole]}:$L$${means[hole]}`;
    const places = `$C$${positionRow}:$L$${positionRow}`;
    const form = (part: number) => `INDEX(REAM.HOLEFORM(${mean},${places},"${units}"),1,${part})`;
    const ifForm = (formula: string) => `=IF(COUNT(${mean})<3,"",${formula})`;
    const inspect = (cellOf: string) =>
      `=IF(COUNT(${own})=0,"",REAM.INSPECT(${cellOf},${callout},"${units}"))`;
    const differences = Array.from({ length: POSITIONS }, (_, pair) => {
      const [one, other] = [`$${LETTERS[2 + 2 * pair]}$${reading}`, `$${LETTERS[3 + 2 * pair]}$${reading}`];
      return `IF(COUNT(${one},${other})=2,ABS(${one}-${other}),0)`;
    });
    layout.row([
      cell(String(hole + 1), 1, "label"),
      ...[1, 2, 3].map((part) =>
        cell(ifForm(`ROUND(${form(part)},${decimals})`), 1, undefined, signed(LENGTH[units]), "center"),
      ),
      cell(`=IF(COUNT(${own})=0,"",IF(COUNT(${mean})<3,"three positions needed",${form(4)}))`, 2, "strong"),
      cell(`=IF(COUNT(${own})=0,"",MAX(${own}))`, 1, undefined, LENGTH[units], "center"),
      cell(inspect(`$G$${at}`), 2),
      cell(`=IF(COUNT(${own})=0,"",MIN(${own}))`, 1, undefined, LENGTH[units], "center"),
      cell(inspect(`$J$${at}`), 1),
      cell(
        `=IF(COUNT(${own})=0,"",IF(COUNT(${[0, 1, 2, 3, 4].map((pair) => `$${LETTERS[3 + 2 * pair]}$${reading}`).join(",")})=0,"one direction",MAX(${differences.join(",")})))`,
        1,
        undefined,
        LENGTH[units],
        "center",
      ),
    ]);
  });
  const down = (letter: string) => `$${letter}$${first}:$${letter}$${first + HOLES - 1}`;
  return { names: down("E"), verdicts: down("H"), smallVerdicts: down("K"), differences: down("L") };
}

function at20({ units, material }: HoleRow, temperature: string, readings: string): string {
  const { reference, least } = WARM[units];
  const size = `REAM.SIZEAT20(MAX(${readings}),${temperature},"${material.replaceAll('"', '""')}",,,"${units}")`;
  return `=IF(OR(${temperature}="",COUNT(${readings})=0),"",IF(ABS(${temperature}-${reference})>${least},${size},"not corrected: within ${least} ${WARM[units].unit} of ${reference} ${WARM[units].unit}"))`;
}

/** Gives the cell of the symptom that the causes are listed for. */
function symptomBlock(layout: Layout, { units }: HoleRow, callout: string, forms: Forms): string {
  layout.heading("Symptom");
  const has = (range: string, text: string) => `COUNTIF(${range},"${text}")>0`;
  const suggested = [
    [has(forms.names, "bell-mouth"), "bell-mouth"],
    [["taper", "barrel", "waist"].map((form) => has(forms.names, form)), "taper"],
    [has(forms.names, "tight entry"), "undersize"],
    [has(forms.verdicts, "over*"), "oversize"],
    [has(forms.smallVerdicts, "under*"), "undersize"],
    [`MAX(${forms.differences})>REAM.TOLERANCE(${callout},"${units}")/2`, "not round"],
  ] as const;
  const formula = suggested.reduceRight(
    (otherwise, [condition, name]) =>
      `IF(${typeof condition === "string" ? condition : `OR(${condition.join(",")})`},"${name}",${otherwise})`,
    '""',
  );
  const [, suggestion, , typedOne] = layout.row([
    cell("Suggested by the form", 3, "label"),
    cell(`=${formula}`, 3, "strong"),
    cell("Another symptom", 3, "label"),
    cell("", 3, "line"),
  ]);
  layout.sentence(`Symptoms: ${symptoms.join(", ")}.`);
  const [, symptom] = layout.row([
    cell("Causes listed for", 3, "label"),
    cell(`=IF(${typedOne}<>"",${typedOne},${suggestion})`, 9, "strong"),
  ]);
  return symptom;
}

function causeTable(layout: Layout, symptom: string): void {
  layout.row([cell(INSTRUCTIONS, COLUMNS, "wrapped")], 2);
  layout.row([cell(CAUTIONS, COLUMNS, "wrapped")], 3);
  layout.row([
    cell("☐", 1, "header"),
    cell("Cause", 2, "header"),
    cell("How to check", 3, "header"),
    cell("Remedy", 3, "header"),
    cell("Found", 1, "header"),
    cell("Reading", 1, "header"),
    cell("Initials", 1, "header"),
  ]);
  for (let number = 1; number <= MOST_CAUSES; number++) {
    const entry = (column: number) =>
      `=IF(${symptom}="","",IF(${number}>ROWS(REAM.REMEDIES(${symptom})),"",INDEX(REAM.REMEDIES(${symptom}),${number},${column})))`;
    layout.row(
      [
        cell(`=IF($B$${layout.next}="","","☐ ${number}")`, 1, "frame"),
        cell(entry(1), 2, "frame"),
        cell(entry(2), 3, "frame"),
        cell(entry(3), 3, "frame"),
        cell("", 1, "frame"),
        cell("", 1, "frame"),
        cell("", 1, "frame"),
      ],
      4,
    );
  }
}
