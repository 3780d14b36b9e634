// papers: the money in a before and after: cost per part item by item, the year from low to high life, the payback.

import type { ComparisonInputs } from "./comparison-inputs.ts";
import { type Processes, SIDES, tableHead } from "./comparison-table.ts";
import { cell, type Layout } from "./layout.ts";

type Side = (typeof SIDES)[number];

/** The seven cells of a side as COMPARE takes them, one above the other in an array. */
const seven = (side: Side, typed: ComparisonInputs, { cycle, edgeCost, mean }: Processes): string[] => [
  cycle[side],
  typed.machineRate,
  edgeCost[side],
  mean[side],
  typed.edgeChange[side],
  typed.otherCost[side],
  typed.scrap[side],
];

const ITEMS = ["Machine time", "Edge", "Edge change", "Other operations", "Scrap", "Cost per part"];

export function costBlock(layout: Layout, typed: ComparisonInputs, processes: Processes): void {
  tableHead(layout, "Cost of a part", "Saving");
  const column = (side: Side) => seven(side, typed, processes);
  // COMPARE wants each side as a column of cells: they are gathered beside one another first.
  const first = layout.next;
  const labels = [
    "Cycle time, s",
    "Machine rate",
    "Edge cost",
    "Parts per edge",
    "Edge change, s",
    "Other cost",
    "Scrap",
  ];
  labels.forEach((label, at) => {
    layout.row([
      cell(label, 4, "note"),
      ...SIDES.map((side) =>
        cell(`=IF(${column(side)[at]}="",0,${column(side)[at]})`, 2, "note", "0.00", "center"),
      ),
      cell("", 4),
    ]);
  });
  const range = (letter: string) => `$${letter}$${first}:$${letter}$${first + labels.length - 1}`;
  const compared = (row: number, part: number) =>
    `=IFERROR(INDEX(REAM.COMPARE(${range("E")},${range("G")},${typed.partsPerYear}),${row},${part}),"not available")`;
  ITEMS.forEach((label, at) => {
    const isSum = at === ITEMS.length - 1;
    layout.row([
      cell(label, 4, isSum ? "strong" : "label"),
      cell(compared(at + 2, 2), 2, isSum ? "strong" : undefined, "0.00", "center"),
      cell(compared(at + 2, 3), 2, isSum ? "strong" : undefined, "0.00", "center"),
      cell(compared(at + 2, 4), 2, isSum ? "strong" : undefined, "0.00", "center"),
      cell("", 2),
    ]);
  });
  layout.row([
    cell("Saving, % of present", 8, "label"),
    cell(compared(8, 4), 2, "strong", "0.0", "center"),
    cell("", 2),
  ]);
  layout.row([
    cell("Cost per year", 4, "label"),
    cell(compared(10, 2), 2, undefined, "#,##0", "center"),
    cell(compared(10, 3), 2, undefined, "#,##0", "center"),
    cell(compared(10, 4), 2, undefined, "#,##0", "center"),
    cell("", 2),
  ]);
}

interface Case {
  readonly title: string;
  readonly present: string;
  readonly proposed: string;
  /** Scrap of the proposal. */
  readonly scrap: string;
  readonly isUnused?: boolean;
  /** A condition under which the column stays empty. */
  readonly without?: string;
}

/** Gives the three sentences of the answer. */
export function yearBlock(layout: Layout, typed: ComparisonInputs, processes: Processes): string[] {
  const { mean, low, high, edgeCost } = processes;
  const noRange = `NOT(ISNUMBER(${low.proposed}))`;
  const scrap = typed.scrap.proposed;
  const cases: Case[] = [
    { title: "Low life", present: mean.present, proposed: low.proposed, scrap, without: noRange },
    { title: "Mean", present: mean.present, proposed: mean.proposed, scrap },
    { title: "High life", present: mean.present, proposed: high.proposed, scrap, without: noRange },
    {
      title: "Cautious",
      present: high.present,
      proposed: low.proposed,
      scrap,
      without: `OR(${noRange},NOT(ISNUMBER(${high.present})))`,
    },
    {
      title: "Scrap as today",
      present: mean.present,
      proposed: mean.proposed,
      scrap: typed.scrap.present,
      without: `${typed.scrap.basis}="measured"`,
    },
    { title: "Hours unused", present: mean.present, proposed: mean.proposed, scrap, isUnused: true },
  ];
  layout.heading("Per year, from low to high life");
  layout.row(
    [
      cell("", 3, "header"),
      ...cases.flatMap(({ title }, at) => [cell(title, at > 2 ? 2 : 1, "header", undefined, "center")]),
    ],
    2,
  );
  const rowOf = (label: string, format: string, formula: (one: Case, letter: string) => string) => {
    const letters = ["D", "E", "F", "G", "I", "K"];
    const at = layout.next;
    layout.row([
      cell(label, 3, "label"),
      ...cases.map((one, index) => {
        const text = `IFERROR(${formula(one, letters[index])},"not available")`;
        return cell(
          one.without ? `=IF(${one.without},"",${text})` : `=${text}`,
          index > 2 ? 2 : 1,
          undefined,
          format,
          "center",
        );
      }),
    ]);
    return (letter: string) => `${letter}$${at}`;
  };
  const cost = (side: Side, life: string, share: string) => {
    const [cycle, rate, edge, , change, other] = seven(side, typed, processes);
    return `REAM.PARTCOST(${cycle},${rate},${edge},${life},${change},${other},${share})`;
  };
  const unused = (side: Side, share: string) =>
    `(${edgeCost[side]}/${mean[side]}+${typed.otherCost[side]})/(1-${share})`;
  rowOf("Life, present", "#,##0", ({ present }) => present);
  rowOf("Life, proposed", "#,##0", ({ proposed }) => proposed);
  const present = rowOf("Cost per part, present", "0.00", (one) =>
    one.isUnused ? unused("present", typed.scrap.present) : cost("present", one.present, typed.scrap.present),
  );
  const proposed = rowOf("Cost per part, proposed", "0.00", (one) =>
    one.isUnused ? unused("proposed", one.scrap) : cost("proposed", one.proposed, one.scrap),
  );
  const saving = rowOf(
    "Saving per part",
    "0.00",
    (_, letter) => `REAM.SAVING(${present(letter)},${proposed(letter)})`,
  );
  const year = rowOf("Saving per year", "#,##0", (_, letter) => `${saving(letter)}*${typed.partsPerYear}`);
  const investment = `SUM(${typed.investments})`;
  const payback = rowOf(
    "Payback, months",
    "0.0",
    (_, letter) =>
      `IF(${investment}=0,"none stated",IF(${saving(letter)}<=0,"does not pay back",REAM.PAYBACK(${investment},${saving(letter)},${typed.partsPerYear})))`,
  );
  rowOf(
    "Tools per year",
    "0",
    (one) =>
      `INDEX(REAM.TOOLSNEEDED(${typed.partsPerYear},${one.proposed},${typed.edges.proposed},${typed.regrinds.proposed}),1,2)`,
  );
  layout.sentence(
    "Mean life on the present side. Cautious: present at its high life, proposed at its low life. Hours unused: edges and other operations alone are saved.",
    "note",
  );
  layout.row([
    cell("Investment", 2, "label"),
    cell(`=IF(${investment}=0,"none stated",${investment})`, 2, "strong", "#,##0", "left"),
    cell("Break-even, parts", 2, "label"),
    cell(
      `=IF(${investment}=0,"none stated",IF(NOT(ISNUMBER(${saving("E")})),"not available",IF(${saving("E")}<=0,"does not pay back",ROUNDUP(REAM.BREAKEVEN(0,${present("E")},${investment},${proposed("E")})-0.000001,0))))`,
      2,
      "strong",
      "#,##0",
      "left",
    ),
    cell("Machine hours freed per year", 3, "label"),
    cell(
      `=IFERROR(REAM.HOURSSAVED(${processes.cycle.present},${processes.cycle.proposed},${typed.partsPerYear}),"not available")`,
      1,
      "strong",
      "0",
      "left",
    ),
  ]);
  const range = (cells: (letter: string) => string, format: string) =>
    `IF(${noRange},"one edge, no range",TEXT(${cells("D")},"${format}")&" to "&TEXT(${cells("F")},"${format}"))`;
  const months = (letter: string) => payback(letter);
  const known = (formula: string) =>
    `=IF(ISNUMBER(${saving("E")}),${formula},"Type both processes into the columns beside the page.")`;
  return [
    known(
      `"Saving per part: "&TEXT(${saving("E")},"0.00")&" "&${typed.currency}&" ("&${range(saving, "0.00")}&"); hours unused: "&TEXT(${saving("K")},"0.00")`,
    ),
    known(
      `"Saving per year: "&TEXT(${year("E")},"#,##0")&" "&${typed.currency}&" ("&${range(year, "#,##0")}&"); hours unused: "&TEXT(${year("K")},"#,##0")`,
    ),
    known(
      `"Payback, months: "&IF(ISNUMBER(${months("E")}),TEXT(${months("E")},"0.0")&" ("&IF(${noRange},"one edge, no range",TEXT(${months("F")},"0.0")&" to "&TEXT(${months("D")},"0.0"))&"); hours unused: "&IF(ISNUMBER(${months("K")}),TEXT(${months("K")},"0.0"),${months("K")}),${months("E")})`,
    ),
  ];
}
