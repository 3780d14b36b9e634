// papers: the present process beside a proposal: what changes, what it saves from low to high life, and what nobody has
// measured. Formulas stay live; what is typed stands beside the page.

import type { NewSheet, PrintSetup } from "../workbook/workbook.ts";
import { blankNames, gather, missingCell } from "./comparison-gathered.ts";
import {
  BASES,
  BESIDE,
  type ComparisonInputs,
  comparisonInputs,
  type Pair,
  printedBasis,
} from "./comparison-inputs.ts";
import { costBlock, yearBlock } from "./comparison-money.ts";
import { type Processes, SIDES, sides, tableHead } from "./comparison-table.ts";
import { FINE, type HoleRow, LENGTH } from "./hole-row.ts";
import { COLUMNS, cell, Layout } from "./layout.ts";
import { titleOf } from "./live-papers.ts";
import { fact } from "./set-up-cells.ts";

/** @param today a sheet's number for the day */
export function beforeAndAfter(row: HoleRow, today: number, paper: PrintSetup["paper"]): NewSheet {
  const inputs = new Layout();
  // The inputs are laid out first, on a page of their own, so that the formulas know their cells.
  const typed = comparisonInputs(inputs, row);
  const layout = new Layout();
  layout.row([cell(titleOf("comparison"), 6, "title"), cell(row.part, 6, "title", "@", "right")], 2);
  layout.row([...fact("Material", row.material, "@"), ...fact("Date", today, "yyyy-mm-dd")]);
  const [, callout] = layout.row([cell("Hole as drawn", 4, "label"), cell(row.callout, 8, "big", "@")], 2);
  layout.row([
    ...fact("Lower limit of size", `=REAM.MINSIZE(${callout},"${row.units}")`, LENGTH[row.units]),
    ...fact("Upper limit of size", `=REAM.MAXSIZE(${callout},"${row.units}")`, LENGTH[row.units]),
  ]);
  layout.row([
    ...fact("Parts per year", `=IF(${typed.partsPerYear}="","required",${typed.partsPerYear})`, "#,##0"),
    ...fact("Machine rate, per hour", `=IF(${typed.machineRate}="","required",${typed.machineRate})`, "0.00"),
  ]);
  layout.heading("The answer");
  const answers = layout.next;
  layout.sentence("", "wrapped", 2);
  for (let line = 0; line < 3; line++) layout.row([cell("", COLUMNS, "strong")]);
  const cycle = operationBlock(layout, typed);
  const processes = toolBlock(layout, row, typed, cycle, callout);
  const share = holeBlock(layout, row, typed, callout);
  costBlock(layout, typed, processes);
  const tail = layout.next - 1;
  const answer = yearBlock(layout, typed, processes);
  answer.forEach((formula, at) => {
    layout.beside(answers + at, 0, formula);
  });
  restBlock(layout, typed, processes, share);
  layout.row(
    ["Prepared by", "Agreed by", "Date"].flatMap((label) => [cell(label, 2, "label"), cell("", 2, "line")]),
    2,
  );
  const lastRow = layout.next - 1;
  comparisonInputs(layout, row);
  gather(layout, typed, processes);
  for (const basis of typed.bases) layout.list(basis, BASES);
  return layout.sheet(
    `Before and after ${row.part}`,
    { paper, header: { left: titleOf("comparison"), right: row.part }, footer: row.drawing, tail },
    BESIDE,
    lastRow,
  );
}

function operationBlock(layout: Layout, { operations }: ComparisonInputs): Pair {
  tableHead(layout, "Operations, s", "Basis");
  for (const { name, mark, ...pair } of operations)
    layout.row([
      cell(`=IF(${name}="","",${name})`, 4, "label"),
      ...SIDES.map((side) => cell(`=IF(${pair[side]}="","",${pair[side]})`, 2, undefined, "0", "center")),
      cell(printedBasis(pair), 2),
      cell(`=${mark}`, 2),
    ]);
  const of = (side: (typeof SIDES)[number]) =>
    `${operations[0][side]}:${operations[operations.length - 1][side]}`;
  const removed = `TEXTJOIN(", ",TRUE,${operations.map(({ name, mark }) => `IF(${mark}="removed",${name},"")`).join(",")})`;
  const cycle = sides(
    layout,
    "Cycle time, s",
    (side) => `=IF(SUM(${of(side)})=0,"",SUM(${of(side)}))`,
    "0",
    `="removed: "&IF(${removed}="","none",${removed})`,
    "strong",
  );
  sides(layout, "Parts per hour", (side) => `=IF(${cycle[side]}="","",3600/${cycle[side]})`, "0.0");
  return cycle;
}

function toolBlock(
  layout: Layout,
  { units }: HoleRow,
  typed: ComparisonInputs,
  cycle: Pair,
  callout: string,
): Processes {
  tableHead(layout, "Tool and life", "Basis");
  const copied = (pair: Pair, missing: string) => (side: (typeof SIDES)[number]) =>
    `=IF(${pair[side]}="","${missing}",${pair[side]})`;
  const basis = (pair: Pair) => printedBasis(pair);
  sides(layout, "Tool", copied(typed.tool, "required"));
  const [speedUnit, length] = units === "mm" ? ["m/min", "0.000"] : ["ft/min", "0.0000"];
  sides(
    layout,
    `Cutting speed, ${speedUnit}`,
    copied(typed.speed, ""),
    units === "mm" ? "0.0" : "0",
    basis(typed.speed),
  );
  sides(layout, `Feed per revolution, ${units}`, copied(typed.feed, ""), length, basis(typed.feed));
  const edgeCost = sides(
    layout,
    "Edge cost",
    (side) =>
      `=IF(${typed.price[side]}="","",REAM.EDGECOST(${typed.price[side]},${typed.edges[side]},${typed.regrinds[side]},${typed.regrindCost[side]}))`,
    "0.00",
    basis(typed.price),
  );
  const lives = typed.lives;
  const count = sides(layout, "Edges counted", (side) => `=COUNT(${lives[side]})`, "0");
  // Whole parts, rounded down; the hair keeps a mean of 210 from being 209.
  const whole = (side: (typeof SIDES)[number], formula: string) =>
    `=IF(${count[side]}=0,"required",ROUNDDOWN(${formula}+0.000001,0))`;
  const mean = sides(
    layout,
    "Mean life, parts",
    (side) => whole(side, `AVERAGE(${lives[side]})`),
    "#,##0",
    `=IF(COUNT(${lives.present},${lives.proposed})=0,"",IF(${lives.basis}="","estimated",${lives.basis}))`,
    "strong",
  );
  const range = (part: number) => (side: (typeof SIDES)[number]) =>
    `=IF(${count[side]}=0,"",IF(${count[side]}=1,"one edge, no range",IFNA(IF(INDEX(REAM.LIFERANGE(${lives[side]}),1,2)<1,"no range",ROUNDDOWN(INDEX(REAM.LIFERANGE(${lives[side]}),1,${part})+0.000001,0)),"no range")))`;
  const low = sides(layout, "Range of the mean, 95 %, from", range(2), "#,##0");
  const high = sides(layout, "to", range(3), "#,##0");
  const needed = (part: number) => (side: (typeof SIDES)[number]) =>
    `=IF(OR(${typed.partsPerYear}="",NOT(ISNUMBER(${mean[side]}))),"",INDEX(REAM.TOOLSNEEDED(${typed.partsPerYear},${mean[side]},${typed.edges[side]},${typed.regrinds[side]}),1,${part}))`;
  sides(layout, "Edges per year", needed(1), "#,##0");
  sides(layout, "Tools per year", needed(2), "#,##0");
  sides(layout, "Edge change, s", copied(typed.edgeChange, ""), "0", basis(typed.edgeChange));
  sides(layout, "Other cost per part", copied(typed.otherCost, ""), "0.00", basis(typed.otherCost));
  sides(layout, "Scrap, share of the parts", copied(typed.scrap, ""), "0.0 %", basis(typed.scrap));
  return { cycle, edgeCost, mean, low, high, count, callout, missing: missingCell(typed) };
}

/** Gives the formula of what the gauge takes of the tolerance. */
function holeBlock(layout: Layout, { units }: HoleRow, typed: ComparisonInputs, callout: string): string {
  const { readings } = typed;
  const share = (part: number) =>
    `INDEX(REAM.GAUGESHARE(${typed.equipment},${typed.appraiser},${callout},"${units}"),1,${part})`;
  const gauge = `IF(OR(${typed.equipment}="",${typed.appraiser}=""),"gauge not checked","gauge share "&TEXT(${share(1)},"0 %")&", "&${share(2)})`;
  tableHead(layout, `Measured holes, ${units}`);
  const count = sides(
    layout,
    "Parts measured",
    (side) => `=IF(COUNT(${readings[side]})=0,"not measured",COUNT(${readings[side]}))`,
    "0",
    `=${gauge}`,
  );
  const of =
    (least: number, formula: (list: string, side: (typeof SIDES)[number]) => string) =>
    (side: (typeof SIDES)[number]) =>
      `=IF(COUNT(${readings[side]})<${least},"",${formula(readings[side], side)})`;
  sides(
    layout,
    "Lowest",
    of(1, (list) => `MIN(${list})`),
    LENGTH[units],
  );
  sides(
    layout,
    "Highest",
    of(1, (list) => `MAX(${list})`),
    LENGTH[units],
  );
  const capability = (part: number) =>
    of(2, (list) => `IFNA(INDEX(REAM.CAPABILITY(${list},${callout},"${units}"),1,${part}),"")`);
  const mean = sides(layout, "Mean", capability(3), FINE[units]);
  const deviation = sides(layout, "Standard deviation", capability(4), FINE[units]);
  sides(layout, "Cp", capability(1), "0.00");
  const cpk = sides(
    layout,
    "Cpk",
    capability(2),
    "0.00",
    `=IF(OR(AND(ISNUMBER(${count.present}),${count.present}<25),AND(ISNUMBER(${count.proposed}),${count.proposed}<25)),"few parts","")`,
  );
  sides(
    layout,
    "Cpk at least (95 %)",
    of(2, (list, side) => `IF(${cpk[side]}="","",REAM.CPKBOUND(${cpk[side]},COUNT(${list})))`),
    "0.00",
  );
  const expected = (side: (typeof SIDES)[number]) =>
    `REAM.INTOLERANCE(${mean[side]},${deviation[side]},${callout},"${units}")`;
  sides(
    layout,
    "Expected in tolerance",
    (side) =>
      `=IF(NOT(ISNUMBER(${deviation[side]})),"",IF(${expected(side)}>0.9999,"over 99.99 %",${expected(side)}))`,
    "0.00 %",
  );
  return gauge;
}

function restBlock(
  layout: Layout,
  typed: ComparisonInputs,
  { count, low, missing }: Processes,
  gauge: string,
): void {
  layout.heading("What it rests on");
  const { readings } = typed;
  const read = (side: (typeof SIDES)[number]) => `COUNT(${readings[side]})`;
  const none = `${read("present")}+${read("proposed")}=0`;
  layout.sentence(
    `=IF(${missing}<>"","",IF(AND(ISNUMBER(${low.present}),ISNUMBER(${low.proposed})),"Life: mean of "&${count.present}&" edges (present) and "&${count.proposed}&" (proposed), range of the mean at 95 %, Student's t.","Life: edges counted "&${count.present}&" (present) and "&${count.proposed}&" (proposed), too few for a range.")&" A single edge can live shorter.")`,
    "wrapped",
    1,
  );
  layout.sentence(
    `=IF(${none},"Holes: not measured.","Holes: "&${read("present")}&" and "&${read("proposed")}&" parts, "&${gauge}&".")`,
    "wrapped",
    1,
  );
  const open = `TEXTJOIN(", ",TRUE,${typed.open},IF(${typed.lives.basis}="measured","","lives"),IF(${none},"holes",IF(${readings.basis}="measured","","readings")))`;
  layout.sentence(`="Not measured: "&IF(${open}="","nothing",${open})&"."`, "wrapped", 2);
  const blank = blankNames(typed);
  layout.sentence(`=IF(${blank}="","","Not stated, counted as 0: "&${blank}&".")`, "wrapped", 2);
  layout.sentence(
    `=IF(${typed.consecutive}="","","Consecutive parts: tool wear over a whole edge is not in this figure.")`,
    "wrapped",
    1,
  );
  for (const text of [
    "Machine hours count as money only where they are used or no longer paid. Sums may differ by 0.01: figures are rounded for print.",
    "Higher speeds hold with guards closed and below the limits of machine, holder and tool. First parts are measured one by one.",
  ])
    layout.sentence(text);
}
