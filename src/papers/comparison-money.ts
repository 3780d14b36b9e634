// papers: the money in a before and after: cost per part item by item, the year from low to high life, the payback.

import { gatheredColumn, seven } from "./comparison-gathered.ts";
import type { ComparisonInputs } from "./comparison-inputs.ts";
import { type Processes, SIDES } from "./comparison-table.ts";
import { cell, type Layout } from "./layout.ts";
import { costBarsFormula } from "./pictures/cost-bars.ts";

type Side = (typeof SIDES)[number];

const ITEMS = ["Machine time", "Edge", "Edge change", "Other operations", "Scrap"];
const TOTAL = "Cost per part";
/** Columns of the page that the picture beside the table takes. */
const PICTURE = ["G", "L"] as const;

/** A formula, as long as nothing is missing that it needs: the answer at the top of the page says what is. */
const ifKnown = ({ missing }: Processes, formula: string) => `=IF(${missing}<>"","",${formula})`;

export function costBlock(layout: Layout, typed: ComparisonInputs, processes: Processes): void {
  const columns = SIDES.map((side) => gatheredColumn(side, typed));
  const compared = (row: number, part: number) =>
    ifKnown(processes, `INDEX(REAM.COMPARE(${columns.join(",")},${typed.partsPerYear}),${row},${part})`);
  layout.row([
    cell(ifKnown(processes, '"Cost of a part"'), 3, "header"),
    ...["Present", "Proposed", "Saving"].map((name) =>
      cell(ifKnown(processes, `"${name}"`), 1, "header", undefined, "center"),
    ),
    cell("", 6, "header"),
  ]);
  const first = layout.next;
  const line = (label: string, cells: readonly (string | undefined)[], format: string, isStrong = false) =>
    layout.row([
      cell(ifKnown(processes, `"${label}"`), 3, isStrong ? "strong" : "label"),
      ...cells.map((content) => cell(content ?? "", 1, isStrong ? "strong" : undefined, format, "center")),
    ]);
  const items = ITEMS.map((name, at) => {
    const [, present, proposed] = line(
      name,
      [2, 3, 4].map((part) => compared(at + 2, part)),
      "0.00",
    );
    return [name, present, proposed] as const;
  });
  const last = layout.next - 1;
  line(
    TOTAL,
    [2, 3, 4].map((part) => compared(ITEMS.length + 2, part)),
    "0.00",
    true,
  );
  line("Saving, % of present", [undefined, undefined, compared(8, 4)], "0.0", true);
  line(
    "Cost per year",
    [2, 3, 4].map((part) => compared(10, part)),
    "#,##0",
  );
  for (let spare = 0; spare < SPARE_LINES; spare++) layout.row([cell("", COLUMNS_OF_TABLE)]);
  const [left, right] = PICTURE;
  const values = (column: string) => `${column}${first}:${column}${last}`;
  layout.picture(
    {
      area: `${left}${first}:${right}${layout.next - 1}`,
      title: `Cost per part`,
      bars: {
        names: values("A"),
        series: [
          ["present", values("D")],
          ["proposed", values("E")],
        ],
      },
    },
    costBarsFormula(typed.currency, items),
  );
}

/** Rows under the table that the picture needs beside it. */
const SPARE_LINES = 5;
const COLUMNS_OF_TABLE = 6;

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

/** Gives the sentences of the answer: what is missing, then what is saved per part and year, and the payback. */
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
  const words = (text: string) => ifKnown(processes, `"${text}"`);
  layout.heading(words("Per year, from low to high life"));
  layout.row(
    [
      cell("", 3, "header"),
      ...cases.flatMap(({ title }, at) => [
        cell(words(title), at > 2 ? 2 : 1, "header", undefined, "center"),
      ]),
    ],
    2,
  );
  const rowOf = (label: string, format: string, formula: (one: Case, letter: string) => string) => {
    const letters = ["D", "E", "F", "G", "I", "K"];
    const at = layout.next;
    layout.row([
      cell(words(label), 3, "label"),
      ...cases.map((one, index) => {
        const text = ifKnown(processes, formula(one, letters[index]));
        return cell(
          one.without ? `=IF(${one.without},"",${text.slice(1)})` : text,
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
    words(
      "Mean life on the present side. Cautious: present at its high life, proposed at its low life. Hours unused: edges and other operations alone are saved.",
    ),
    "note",
    2,
  );
  layout.row([
    cell("Investment", 2, "label"),
    cell(`=IF(${investment}=0,"none stated",${investment})`, 2, "strong", "#,##0", "left"),
    cell("Break-even, parts", 2, "label"),
    cell(
      `=IF(${investment}=0,"none stated",IF(${processes.missing}<>"","",IF(${saving("E")}<=0,"does not pay back",ROUNDUP(REAM.BREAKEVEN(0,${present("E")},${investment},${proposed("E")})-0.000001,0))))`,
      2,
      "strong",
      "#,##0",
      "left",
    ),
    cell("Machine hours freed per year", 3, "label"),
    cell(
      ifKnown(
        processes,
        `REAM.HOURSSAVED(${processes.cycle.present},${processes.cycle.proposed},${typed.partsPerYear})`,
      ),
      1,
      "strong",
      "0",
      "left",
    ),
  ]);
  const range = (cells: (letter: string) => string, format: string) =>
    `IF(${noRange},"one edge, no range",TEXT(${cells("D")},"${format}")&" to "&TEXT(${cells("F")},"${format}"))`;
  const months = (letter: string) => payback(letter);
  const known = (formula: string, otherwise = '""') => `=IF(${processes.missing}="",${formula},${otherwise})`;
  return [
    `=IF(${processes.missing}="","","Not available yet. Type beside the page: "&${processes.missing}&".")`,
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
