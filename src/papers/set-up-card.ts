// papers: the set-up card for the machine: one hole, in order, with lines for what is read. Formulas stay live.

import { findMaterial } from "../calc/materials/find-material.ts";
import { findTool, type Tool } from "../calc/tools.ts";
import type { NewSheet, PrintSetup } from "../workbook/workbook.ts";
import { DEPTH, FINE, type HoleRow, LENGTH, WORK_TO } from "./hole-row.ts";
import { cell, Layout } from "./layout.ts";
import { type CardCells, fact, typed } from "./set-up-cells.ts";
import { edgeBlock, firstPartBlock, settingBlock } from "./set-up-measuring.ts";
import { BURNING, COBALT, cautions } from "./set-up-steps.ts";

export interface SetUp {
  readonly row: HoleRow;
  /** A reference to the shop's table, such as `'Shop table'!$A$4:$R$60`. */
  readonly table?: string;
  /** Lowest limit of spindle, holder and tool, rev/min. */
  readonly maxRpm?: number;
}

export function setUpCard(setUp: SetUp, paper: PrintSetup["paper"]): NewSheet {
  const { row } = setUp;
  const tool = findTool(row.tool || undefined);
  const layout = new Layout();
  layout.row([cell("Set-up card", 6, "title"), cell(row.part, 6, "title", "@", "right")], 2);
  const cells = holeBlock(layout, setUp);
  programBlock(layout, setUp, cells, tool);
  settingBlock(layout, row, tool);
  firstPartBlock(layout, row, cells);
  edgeBlock(layout, row);
  cautionBlock(layout, row, tool, cells);
  layout.row(
    ["Set by", "Checked by", "Date", "Revision"].flatMap((label) => [
      cell(label, 1, "label"),
      cell("", 2, "line"),
    ]),
    2,
  );
  return layout.sheet(`Set-up ${row.part}`, {
    paper,
    header: { left: "Set-up card", right: row.part },
    footer: row.drawing,
  });
}

function holeBlock(layout: Layout, { row, table = "", maxRpm }: SetUp): CardCells {
  layout.row([...typed("Drawing and revision", row.drawing, "@"), ...typed("Operation no.")]);
  layout.row([...typed("Machine"), ...typed("Program")]);
  layout.heading("Hole and tool");
  const [, callout] = layout.row([cell("Hole as drawn", 4, "label"), cell(row.callout, 8, "big", "@")], 2);
  const [, units, , material] = layout.row([
    ...fact("Units", row.units),
    cell("Material", 2, "label"),
    cell(row.material, 4, undefined, "@"),
  ]);
  const [, lower, , upper] = layout.row([
    ...fact("Lower limit of size", `=REAM.MINSIZE(${callout},${units})`, LENGTH[row.units], "strong"),
    ...fact("Upper limit of size", `=REAM.MAXSIZE(${callout},${units})`, LENGTH[row.units], "strong"),
  ]);
  void lower;
  void upper;
  const workTo = (uncertainty: string, part: number) =>
    `=IF(${uncertainty}="","",IFERROR(INDEX(REAM.ACCEPTLIMITS(${callout},${uncertainty},${units}),1,${part}),"gauge too coarse"))`;
  const uncertainty = `$D$${layout.next}`;
  const addresses = layout.row([
    cell("Gauge uncertainty", 3, "label"),
    cell("", 1, "line", FINE[row.units], "left"),
    cell(`=IF(${uncertainty}="","","Work to, lower")`, 2, "label"),
    cell(workTo(uncertainty, 1), 2, "strong", WORK_TO[row.units], "left"),
    cell(`=IF(${uncertainty}="","","Work to, upper")`, 2, "label"),
    cell(workTo(uncertainty, 2), 2, "strong", WORK_TO[row.units], "left"),
  ]);
  if (`$D$${layout.next - 1}` !== uncertainty || addresses[1] !== uncertainty.replaceAll("$", ""))
    throw new Error("the card reads its uncertainty elsewhere than it is typed");
  const reamer = (part: number) => `=INDEX(REAM.REAMERLIMITS(${callout},,${units}),1,${part})`;
  layout.row([
    ...fact("Reamer minimum, new", reamer(1), LENGTH[row.units]),
    ...fact("Reamer maximum, new", reamer(2), LENGTH[row.units]),
  ]);
  const measured = `$J$${layout.next}`;
  layout.row([
    ...fact(
      "Size to order",
      `=IFERROR(REAM.REAMERSIZE(${callout},,,${units}),"no stepped size: grind to the window")`,
      LENGTH[row.units],
    ),
    cell("Reamer measured", 3, "label"),
    cell("", 3, "line", LENGTH[row.units], "left"),
  ]);
  const wear = `REAM.WEARALLOWANCE(${callout},${measured},,${units})`;
  layout.row([
    ...fact("Wear allowance left", `=IF(${measured}="","",${wear})`, LENGTH[row.units]),
    cell(`=IF(${measured}="","",IF(${wear}<0,"Do not use",""))`, 6, "strong"),
  ]);
  const [, tool, , teeth] = layout.row([
    cell("Tool", 2, "label"),
    cell(row.tool || "HSS", 4, undefined, "@"),
    cell("Teeth", 2, "label"),
    cell(
      `=REAM.FLUTES(REAM.CALLOUT(${callout},"nominal",${units}),$C$${layout.next},${units})`,
      1,
      undefined,
      "0",
      "left",
    ),
    cell("Tool no.", 1, "label"),
    cell("", 2, "line"),
  ]);
  void teeth;
  layout.heading("Data for the program");
  const [, limit] = layout.row([
    cell("Lowest limit of spindle, holder and tool, rev/min", 8, "label"),
    cell(maxRpm ?? "", 4, "line", "0", "left"),
  ]);
  const [, depth] = layout.row([
    ...fact(`Reamed depth, ${row.units}`, depthContent(row, callout, units), DEPTH[row.units], "strong"),
    cell(`=IF(${limit}="","Check the limits","")`, 6, "strong"),
  ]);
  const plan = (part: number) =>
    `INDEX(REAM.PLAN(${callout},${material},${depth},${tool},${limit},${table},${units}),1,${part})`;
  layout.row([...fact("Depth in diameters", `=${plan(14)}`, "0.0"), cell("", 6)]);
  return { callout, units, measured, depth, plan };
}

function depthContent({ depth }: HoleRow, callout: string, units: string) {
  return depth === "" || depth === 0 ? `=REAM.CALLOUT(${callout},"depth",${units})` : depth;
}

function programBlock(
  layout: Layout,
  { row }: SetUp,
  { callout, units, depth, plan }: CardCells,
  tool: Tool,
): void {
  const isInch = row.units === "in";
  const through = `REAM.CALLOUT(${callout},"through",${units})`;
  layout.row([
    ...fact("Pre-ream drill", `=IFERROR(${plan(6)},"no standard drill in range")`),
    ...fact(`Stock on diameter, ${row.units}`, `=IFERROR(${plan(8)},"")`, LENGTH[row.units]),
  ]);
  const [chamfer, room] = [`$D$${layout.next}`, `$I$${layout.next}`];
  layout.row([
    cell(`Chamfer of the reamer, ${row.units}`, 3, "label"),
    cell("", 2, "line", DEPTH[row.units], "left"),
    cell("Chip room below", 3, "label"),
    cell("", 4, "line", DEPTH[row.units], "left"),
  ]);
  const drillDepth = (part: number) =>
    `=IF(${through}=TRUE,"through",IF(${chamfer}="","",INDEX(REAM.DRILLDEPTH(${depth},${chamfer},${room},${plan(7)},118,${units}),1,${part})))`;
  layout.row([
    ...fact("Drill depth, full diameter", drillDepth(1), DEPTH[row.units]),
    ...fact("Drill depth, to the point", drillDepth(2), DEPTH[row.units]),
  ]);
  layout.row([
    ...fact(`Cutting speed, ${isInch ? "ft/min" : "m/min"}`, `=${plan(9)}`, isInch ? "0" : "0.0", "strong"),
    ...fact("Spindle speed, rev/min", `=${plan(10)}`, "0", "strong"),
  ]);
  layout.row([
    ...fact(`Feed per revolution, ${row.units}`, `=${plan(11)}`, LENGTH[row.units], "strong"),
    ...fact(`Feed rate, ${row.units}/min`, `=${plan(12)}`, isInch ? "0.00" : "0", "strong"),
  ]);
  layout.row([
    ...fact("Time per hole, s", `=IFERROR(${plan(13)},"")`, "0.0"),
    cell("Retract", 1, "label"),
    cell(tool === "HSS" ? "at feed, turning forward" : "at up to 3 × feed, turning forward", 5),
  ]);
  const isMagnesium = findMaterial(row.material).key === "magnesium";
  layout.row([
    cell("Coolant and concentration", 3, "label"),
    cell(isMagnesium ? "" : "emulsion 8–12 %", 3, "line"),
    cell("Blocked? TRUE", 2, "label"),
    cell("", 1, "line"),
    cell("Interrupted?", 2, "label"),
    cell("", 1, "line"),
  ]);
  const at = layout.next - 1;
  layout.row(
    [
      cell("Coolant way", 2, "label"),
      cell(
        `=IF(${through}="","through or blind? Write THRU or the depth into the hole as drawn",REAM.CHIPPATH(IF(${through}=TRUE,"through","blind"),$I$${at},$L$${at}))`,
        10,
        "wrapped",
      ),
    ],
    2,
  );
  const flow = layout.next;
  layout.row([
    cell(`Coolant bore, ${row.units}`, 2, "label"),
    cell("", 1, "line", LENGTH[row.units], "left"),
    cell(`Pressure, ${isInch ? "psi" : "bar"}`, 2, "label"),
    cell("", 1, "line", "0", "left"),
    cell("Bores", 1, "label"),
    cell("", 1, "line", "0", "left"),
    cell(`Flow, ${isInch ? "US gpm" : "L/min"}`, 2, "label"),
    cell(
      `=IF(OR($C$${flow}="",$F$${flow}=""),"",REAM.COOLANTFLOW($C$${flow},$F$${flow},$H$${flow},,${units}))`,
      2,
      undefined,
      "0.0",
      "left",
    ),
  ]);
}

function cautionBlock(layout: Layout, row: HoleRow, tool: Tool, { plan }: CardCells): void {
  const { key } = findMaterial(row.material);
  const burns = key === "magnesium" || key === "titanium" ? [BURNING] : [];
  const cobalt = /carbide/.test(tool) ? [COBALT] : [];
  layout.heading("Cautions");
  const text = [...cautions, ...burns, ...cobalt].join(" ");
  layout.sentence(text, "wrapped", Math.ceil(text.length / 90));
  layout.sentence(`=${plan(15)}`, "strong", 2);
}
