// papers: the trouble sheet: what was measured, the form of the holes, and the causes to go through in order. Formulas
// stay live.

import type { NewSheet, PrintSetup } from "../workbook/workbook.ts";
import { type Forms, formTable, HOLES, type Measured, POSITIONS } from "./hole-forms.ts";
import { DEPTH, type HoleRow, LENGTH } from "./hole-row.ts";
import { COLUMNS, cell, Layout } from "./layout.ts";
import { titleOf } from "./live-papers.ts";
import { fact, typed } from "./set-up-cells.ts";

/** The most rows that a symptom has. */
const MOST_CAUSES = 8;
const CAUSE_LINES = 4;

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

export function troubleSheet(row: HoleRow, paper: PrintSetup["paper"]): NewSheet {
  const { units } = row;
  const layout = new Layout();
  layout.row([cell(titleOf("trouble"), 6, "title"), cell(row.part, 6, "title", "@", "right")], 2);
  layout.row([...typed("Machine"), ...typed("Date, shift")]);
  layout.row([...typed("Tool no."), ...typed("Parts on this edge")]);
  layout.row([...typed("Last measured good"), cell("", 6)]);
  layout.row([
    cell("What changed last (tool, drill, batch, coolant, program, shift)", 6, "label"),
    cell("", 6, "line"),
  ]);
  const [, callout] = layout.row([cell("Hole as drawn", 2, "label"), cell(row.callout, 10, "big", "@")], 2);
  const call = (name: string) => `=REAM.${name}(${callout},"${units}")`;
  const [, lower, , upper] = layout.row([
    ...fact(`Lower limit of size, ${units}`, call("MINSIZE"), LENGTH[units], "strong"),
    ...fact(`Upper limit of size, ${units}`, call("MAXSIZE"), LENGTH[units], "strong"),
  ]);
  const [, , , temperature] = layout.row([
    ...typed("Gauge"),
    ...typed(`Part temperature, ${WARM[units].unit}`, "", "0"),
  ]);
  const measured = measurements(layout, units);
  const forms = formTable(layout, row, { callout, lower, upper }, measured);
  layout.row([
    cell("Largest reading at 20 °C (68 °F)", 5, "label"),
    cell(at20(row, temperature, measured.readings), 7, undefined, LENGTH[units], "left"),
  ]);
  const symptom = symptomBlock(layout, row, callout, forms);
  const header = causeTable(layout, symptom);
  const tail = layout.next - 1;
  layout.row([cell("What helped", 2, "label"), cell("", 10, "line")], 2);
  layout.row([...typed("Size after"), ...typed("Change card or program?")], 2);
  layout.row(
    ["Found by", "Released by", "Date"].flatMap((label) => [cell(label, 2, "label"), cell("", 2, "line")]),
    2,
  );
  return layout.sheet(`Trouble ${row.part}`, {
    paper,
    header: { left: titleOf("trouble"), right: row.part },
    footer: row.drawing,
    repeated: [header, header],
    tail,
  });
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
  layout.list(typedOne, symptoms);
  const [, symptom] = layout.row([
    cell("Causes listed for", 3, "label"),
    cell(`=IF(${typedOne}<>"",${typedOne},${suggestion})`, 9, "strong"),
  ]);
  layout.sentence(`=IF(${symptom}="","One of: ${symptoms.join(", ")}.","")`);
  return symptom;
}

/** Gives the row of its headers, from 0. */
function causeTable(layout: Layout, symptom: string): number {
  layout.row([cell(INSTRUCTIONS, COLUMNS, "wrapped")], 2);
  layout.row([cell(CAUTIONS, COLUMNS, "wrapped")], 3);
  layout.row([
    ...(
      [
        ["☐ Cause", 2],
        ["How to check", 3],
        ["Remedy", 4],
        ["Found", 1],
        ["Reading", 1],
        ["Initials", 1],
      ] as const
    ).map(([name, span]) => cell(`=IF(${symptom}="","","${name}")`, span, "header")),
  ]);
  const header = layout.next - 2;
  const causes = `REAM.REMEDIES(${symptom})`;
  for (let number = 1; number <= MOST_CAUSES; number++) {
    const entry = (column: number, before = "") =>
      `=IF(${symptom}="","",IF(${number}>ROWS(${causes}),"",${before}INDEX(${causes},${number},${column})))`;
    layout.row(
      [
        cell(entry(1, `"☐ ${number}  "&`), 2, "frame"),
        cell(entry(2), 3, "frame"),
        cell(entry(3), 4, "frame"),
        ...[1, 2, 3].map(() => cell("", 1, "frame")),
      ],
      CAUSE_LINES,
    );
  }
  return header;
}
