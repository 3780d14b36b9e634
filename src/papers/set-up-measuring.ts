// papers: the part of the set-up card that is written at the machine: runout, first part, change of the edge.

import type { Tool } from "../calc/tools.ts";
import { cellAddress } from "../workbook/workbook.ts";
import { FINE, type HoleRow, LENGTH } from "./hole-row.ts";
import { cell, type Layout } from "./layout.ts";
import { type CardCells, fact } from "./set-up-cells.ts";
import { CHANGE_WHEN, MEASURING, steps } from "./set-up-steps.ts";

const TARGET = { mm: 0.005, in: 0.0002 } as const;
/** Tools without a head to set: a reamer in a collet. */
const IN_A_COLLET: ReadonlySet<Tool> = new Set<Tool>(["HSS", "carbide", "brazed carbide"]);
const LIVES = 10;
const TRIALS = 8;
/** Characters of a step that stand in a line. */
const STEP_LINE = 108;

export function settingBlock(layout: Layout, row: HoleRow, tool: Tool): void {
  const { units } = row;
  const isPlain = IN_A_COLLET.has(tool);
  layout.heading("Setting");
  for (const { number, text } of steps.filter((step) => !isPlain || step.isPlain))
    layout.row(
      [cell(`☐ ${number}`, 1, "wrapped"), cell(text, 11, "wrapped")],
      text.length > STEP_LINE ? 2 : 1,
    );
  const target = `$C$${layout.next}`;
  layout.row([
    cell(`Runout target, ${units}`, 2, "label"),
    cell(TARGET[units], 1, "line", LENGTH[units], "left"),
    cell(`Final torque, ${units === "mm" ? "N·m" : "lbf·in"}: from the shop's own table`, 6, "label"),
    cell("", 3, "line", units === "mm" ? "0.0" : "0"),
  ]);
  layout.row([
    cell(`Readings, ${units}`, 2, "header"),
    ...["0°", "90°", "180°", "270°"].map((angle) => cell(angle, 1, "header", undefined, "center")),
    cell("Runout", 1, "header", undefined, "center"),
    cell("High side", 2, "header", undefined, "center"),
    cell("Verdict", 3, "header"),
  ]);
  const readings = (name: string): string => {
    const at = layout.next;
    const four = `$C$${at},$D$${at},$E$${at},$F$${at}`;
    const runout = (part: number) =>
      `=IF(COUNT($C$${at}:$F$${at})<4,"",IFERROR(INDEX(REAM.RUNOUT(${four},"${units}"),1,${part}),"clean and read again"))`;
    layout.row([
      cell(name, 2, "label"),
      ...Array.from({ length: 4 }, () => cell("", 1, "line", LENGTH[units], "center")),
      cell(runout(1), 1, "line", FINE[units], "center"),
      cell(runout(2), 2, "line", '0"°"', "center"),
      cell(
        `=IF(ISNUMBER($G$${at}),REAM.RUNOUTCHECK($G$${at},${target},"${units}"),"")`,
        3,
        "line",
        undefined,
        "left",
      ),
    ]);
    return four;
  };
  const before = readings("Before");
  const first = layout.next - 1;
  layout.row([
    cell("Screw moves", 2, "label"),
    ...[1, 2, 3, 4].map((screw) =>
      cell(
        `=IF(ISNUMBER($G$${first}),INDEX(REAM.SCREWMOVES(${before},"${units}"),1,${screw}),"")`,
        1,
        "line",
        FINE[units],
        "center",
      ),
    ),
    cell("screws 1 to 4 stand at 0°, 90°, 180°, 270°", 6, "note"),
  ]);
  readings("After");
}

export function firstPartBlock(layout: Layout, row: HoleRow, { callout, units, measured }: CardCells): void {
  layout.heading("First part and measuring");
  const at = layout.next;
  const trials = `$C$${at}:${cellAddress(at - 1, TRIALS + 1).replace(/^([A-Z]+)/, "$$$1$$")}`;
  layout.row([
    cell("Trial holes", 2, "label"),
    ...Array.from({ length: TRIALS }, () => cell("", 1, "line", LENGTH[row.units], "center")),
    cell("", 2),
  ]);
  const has = `OR(COUNT(${trials})=0,${measured}="")`;
  const over = (part: number) =>
    `=IF(${has},"",INDEX(REAM.CUTSOVER(${trials},${measured},${units}),1,${part}))`;
  const [, oversize] = layout.row([
    ...fact("Cutting oversize", over(1), LENGTH[row.units], "line"),
    ...fact("Spread", over(2), LENGTH[row.units], "line"),
  ]);
  const then = (formula: string) => `=IF(${has},"",${formula})`;
  const window = (part: number) =>
    then(`INDEX(REAM.REAMERLIMITS(${callout},${oversize},${units}),1,${part})`);
  layout.row([
    ...fact("Reamer minimum now", window(1), LENGTH[row.units]),
    ...fact("Reamer maximum now", window(2), LENGTH[row.units]),
  ]);
  layout.row([
    ...fact(
      "Next reamer",
      then(`IFNA(REAM.REAMERSIZE(${callout},${oversize},,${units}),"grind to the window")`),
      LENGTH[row.units],
    ),
    ...fact(
      "Wear allowance left now",
      then(`REAM.WEARALLOWANCE(${callout},${measured},${oversize},${units})`),
      LENGTH[row.units],
    ),
  ]);
  layout.row([cell("Measure", 2, "label"), cell(MEASURING, 10, "wrapped")]);
  layout.row([
    cell("Measure every part once a hole is at or below", 8, "label"),
    cell(
      `=REAM.MINSIZE(${callout},${units})+REAM.TOLERANCE(${callout},${units})/4`,
      4,
      "strong",
      FINE[row.units],
      "left",
    ),
  ]);
}

export function edgeBlock(layout: Layout, { holes }: HoleRow): void {
  layout.heading("Change the edge");
  const at = layout.next;
  const lives = `$C$${at}:${cellAddress(at - 1, LIVES + 1).replace(/^([A-Z]+)/, "$$$1$$")}`;
  layout.row([
    cell("Lives, parts", 2, "label"),
    ...Array.from({ length: LIVES }, () => cell("", 1, "line", "0", "center")),
  ]);
  // 80 % of the shortest, rounded down; the hair keeps 752 from being 751.
  const count = `ROUNDDOWN(0.8*MIN(${lives})+0.000001,0)`;
  layout.row([
    cell("Change after, parts", 3, "label"),
    cell(`=IF(COUNT(${lives})=0,"",${count})`, 2, "line", "#,##0", "left"),
    cell("holes", 1, "label"),
    cell(`=IF(COUNT(${lives})=0,"",${count}*${holes})`, 2, "line", "#,##0", "left"),
    cell("80 % of the shortest life", 4, "note"),
  ]);
  layout.sentence(CHANGE_WHEN);
}
