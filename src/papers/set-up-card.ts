// papers: the set-up card for the machine: one hole, in order, with lines for what is read. Formulas stay live.

import { limits } from "../calc/callouts/limits.ts";
import { readCallout } from "../calc/callouts/read-callout.ts";
import { fromTicks } from "../calc/lengths.ts";
import { findMaterial } from "../calc/materials/find-material.ts";
import { findTool, type Tool } from "../calc/tools.ts";
import { columnLetters, type NewSheet, type Picture, type PrintSetup } from "../workbook/workbook.ts";
import { fixed } from "./comparison-table.ts";
import { lengthFigure } from "./figures.ts";
import { DEPTH, FINE, type HoleRow, LENGTH, WORK_TO } from "./hole-row.ts";
import { COLUMNS, cell, Layout } from "./layout.ts";
import { titleOf } from "./live-papers.ts";
import { holeSection, holeSectionFormula } from "./pictures/hole-section.ts";
import { sceneText } from "./pictures/scene.ts";
import { type CardCells, fact, third, typed } from "./set-up-cells.ts";
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
  layout.row([cell(titleOf("card"), 6, "title"), cell(row.part, 6, "title", "@", "right")], 2);
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
    header: { left: titleOf("card"), right: row.part },
    footer: row.drawing,
  });
}

/** Columns left of the picture. */
const BESIDE_PICTURE = 8;

function holeBlock(layout: Layout, { row, table = "", maxRpm }: SetUp): CardCells {
  layout.row([...typed("Drawing and revision", row.drawing, "@"), ...typed("Operation no.")]);
  layout.row([...typed("Machine"), ...typed("Program")]);
  layout.heading("Hole and tool");
  const firstRow = layout.next;
  const [, callout] = layout.row([cell("Hole as drawn", 2, "label"), cell(row.callout, 6, "big", "@")], 2);
  const [, units, , material] = layout.row([
    cell("Units", 2, "label"),
    cell(row.units, 1),
    cell("Material", 2, "label"),
    cell(row.material, 3, undefined, "@"),
  ]);
  const [, lower, , upper] = layout.row([
    ...third("Lower limit of size", `=REAM.MINSIZE(${callout},${units})`, LENGTH[row.units], "strong"),
    ...third("Upper limit of size", `=REAM.MAXSIZE(${callout},${units})`, LENGTH[row.units], "strong"),
  ]);
  const uncertainty = `$D$${layout.next}`;
  // The reamer is measured in the fourth row below.
  const measured = `$D$${layout.next + 4}`;
  const wear = `REAM.WEARALLOWANCE(${callout},${measured},,${units})`;
  layout.row([
    ...third("Gauge uncertainty", "", FINE[row.units], "line"),
    cell(`=IF(${measured}="","",IF(${wear}<0,"Do not use this reamer",""))`, 4, "strong"),
  ]);
  const workTo = (part: number) =>
    `=IF(${uncertainty}="","",IFNA(INDEX(REAM.ACCEPTLIMITS(${callout},${uncertainty},${units}),1,${part}),"gauge too coarse"))`;
  const asFarAs = (label: string) => `=IF(${uncertainty}="","","${label}")`;
  layout.row([
    cell(asFarAs("Work to, lower"), 2, "label"),
    cell(workTo(1), 2, "strong", WORK_TO[row.units], "left"),
    cell(asFarAs("Work to, upper"), 2, "label"),
    cell(workTo(2), 2, "strong", WORK_TO[row.units], "left"),
  ]);
  const reamer = (part: number) => `=INDEX(REAM.REAMERLIMITS(${callout},,${units}),1,${part})`;
  layout.row([
    ...third("Reamer minimum, new", reamer(1), LENGTH[row.units]),
    ...third("Reamer maximum, new", reamer(2), LENGTH[row.units]),
  ]);
  layout.row([
    cell("Size to order", 3, "label"),
    cell(
      `=IFNA(REAM.REAMERSIZE(${callout},,,${units}),"no stepped size: grind to the window")`,
      5,
      undefined,
      LENGTH[row.units],
      "left",
    ),
  ]);
  const [, address] = layout.row([
    ...third("Reamer measured", "", LENGTH[row.units], "line"),
    ...third("Wear allowance left", `=IF(${measured}="","",${wear})`, LENGTH[row.units], "line"),
  ]);
  if (fixed(address) !== measured) throw new Error("the card reads the reamer elsewhere than it is typed");
  const lastRow = layout.next - 1;
  const [, tool] = layout.row([
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
  layout.heading("Data for the program");
  const [, limit] = layout.row([
    cell("Lowest limit of spindle, holder and tool, rev/min", 6, "label"),
    cell(maxRpm ?? "", 2, "line", "0", "left"),
    cell(`=IF($G$${layout.next}="","Check the limits","")`, 4, "strong"),
  ]);
  const at = layout.next;
  const depth = `D${at}`;
  const plan = (part: number) =>
    `INDEX(REAM.PLAN(${callout},${material},${depth},${tool},${limit},${table},${units}),1,${part})`;
  layout.row([
    cell(`Reamed depth, ${row.units}`, 3, "label"),
    cell(depthContent(row, callout, units), 3, "strong", DEPTH[row.units], "left"),
    ...fact("Depth in diameters", `=${plan(14)}`, "0.0"),
  ]);
  const picture = `${columnLetters(BESIDE_PICTURE)}${firstRow}:${columnLetters(COLUMNS - 1)}${lastRow}`;
  return { callout, units, lower, upper, measured, depth, plan, picture };
}

function depthContent({ depth }: HoleRow, callout: string, units: string) {
  return depth === "" || depth === 0 ? `=REAM.CALLOUT(${callout},"depth",${units})` : depth;
}

/** The picture as things are when the card is made: a picture in Excel does not follow its cells. */
function sectionNow({ callout, units, depth }: HoleRow): Picture["svg"] {
  const read = readCallout(callout, "callout", units);
  const [lower, upper] = limits(read, units);
  const deep = Number(depth) || (read.depth === undefined ? 0 : fromTicks(read.depth, units));
  if (!(deep > 0)) return undefined;
  const size = (value: number) => lengthFigure(value, units);
  const scene = holeSection(
    `Cross-section, ${units}: hole ${size(lower)} to ${size(upper)}; reamed ${deep.toFixed(units === "mm" ? 1 : 2)} deep, ${read.through ? "through" : "blind"}.`,
  );
  return scene && { text: sceneText(scene), width: scene.width, height: scene.height };
}

function programBlock(
  layout: Layout,
  { row }: SetUp,
  { callout, units, lower, upper, depth, plan, picture }: CardCells,
  tool: Tool,
): void {
  const isInch = row.units === "in";
  const through = `REAM.CALLOUT(${callout},"through",${units})`;
  const [, drill] = layout.row([
    ...fact("Pre-ream drill", `=IFNA(${plan(6)},"no standard drill in range")`),
    ...fact(`Stock on diameter, ${row.units}`, `=IFNA(${plan(8)},"")`, LENGTH[row.units]),
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
  const [, full, , point] = layout.row([
    ...fact("Drill depth, full diameter", drillDepth(1), DEPTH[row.units], "line"),
    ...fact("Drill depth, to the point", drillDepth(2), DEPTH[row.units], "line"),
  ]);
  layout.picture(
    { area: picture, title: "Cross-section of the hole", svg: sectionNow(row) },
    holeSectionFormula(row.units, { lower, upper, depth, through, full, point, chamfer, drill }),
  );
  layout.row([
    ...fact(`Cutting speed, ${isInch ? "ft/min" : "m/min"}`, `=${plan(9)}`, isInch ? "0" : "0.0", "strong"),
    ...fact("Spindle speed, rev/min", `=${plan(10)}`, "0", "strong"),
  ]);
  layout.row([
    ...fact(`Feed per revolution, ${row.units}`, `=${plan(11)}`, LENGTH[row.units], "strong"),
    ...fact(`Feed rate, ${row.units}/min`, `=${plan(12)}`, isInch ? "0.00" : "0", "strong"),
  ]);
  layout.row([
    ...fact("Time per hole, s", `=IFNA(${plan(13)},"")`, "0.0"),
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
  layout.row([
    cell("Coolant way", 2, "label"),
    cell(
      `=IF(${through}="","through or blind? Write THRU or the depth into the hole as drawn",REAM.CHIPPATH(IF(${through}=TRUE,"through","blind"),$I$${at},$L$${at}))`,
      10,
      "wrapped",
    ),
  ]);
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
  layout.sentence(text);
  layout.sentence(`=${plan(15)}`, "strong", 2);
}
