// browser: the story of one part of the invented shop, told by the papers: what it costs, the quote, the present process
// beside a proposal, the set-up of the new tool, and what to do when its holes come out bad. All figures are invented.

import { beforeAndAfter } from "../../papers/before-and-after.ts";
import { customerQuote } from "../../papers/customer-quote.ts";
import type { HoleRow } from "../../papers/hole-row.ts";
import { quoteDataSheet, readQuoteData } from "../../papers/quote-data.ts";
import type { QuotedPart } from "../../papers/quoted-part.ts";
import { setUpCard } from "../../papers/set-up-card.ts";
import { troubleSheet } from "../../papers/trouble-sheet.ts";
import { quoteColumns } from "../../taskpane/actions/quote-columns.ts";
import { quotingSheet } from "../../taskpane/actions/quoting-sheet.ts";
import { shopTable, shopTableReach } from "../../taskpane/actions/shop-table.ts";
import { type Content, type NewSheet, sheetReference } from "../../workbook/workbook.ts";
import { filledIn, filledUnder } from "./fill-sheet.ts";

/** 2026-11-26, the day of the invented quote. */
const DAY = 46_352;
const ROWS = 12;

const valveBlock: HoleRow = {
  part: "Valve block",
  drawing: "VB-40 B (invented)",
  callout: "4X ⌀16 H7 THRU",
  units: "mm",
  material: "ductile iron",
  tool: "coated carbide",
  depth: 40,
  holes: 4,
};

type Typed = Partial<Record<(typeof quoteColumns)[number]["key"], Content>>;
/** The tool of the valve block is priced in the shop's table, the others here. */
const parts: readonly Typed[] = [
  {
    part: "Pump body",
    callout: "2X ⌀12 H7 THRU",
    units: "mm",
    drawing: "PB-12 A (invented)",
    material: "gray iron",
    tool: "HSS",
    depth: 30,
    batch: 400,
    toolPrice: 42,
    edges: 1,
    regrinds: 3,
    regrindCost: 11,
    partsPerEdge: 300,
    break1: 100,
    break2: 1000,
  },
  {
    part: valveBlock.part,
    callout: valveBlock.callout,
    units: valveBlock.units,
    drawing: valveBlock.drawing,
    material: valveBlock.material,
    tool: valveBlock.tool,
    depth: valveBlock.depth,
    batch: 250,
    otherCost: 0.2,
    break1: 50,
    break2: 1000,
  },
  {
    part: "Link arm",
    callout: "2X ⌀.5000 +.0005/-.0000 THRU",
    units: "in",
    drawing: "LA-5 C (invented)",
    material: "alloy steel",
    tool: "HSS",
    depth: 1.225,
    batch: 1000,
    toolPrice: 38,
    edges: 1,
    regrinds: 2,
    regrindCost: 10,
    partsPerEdge: 400,
    break1: 250,
  },
];

/** Under a name of its own: what you quote in this workbook must not be computed from invented rows. */
const table = { ...shopTable("mm"), name: "Example shop table mm" };
const reach = shopTableReach("mm");

function costSheet(): NewSheet {
  const sheet = quotingSheet(ROWS, { mm: { sheet: table.name, address: reach } });
  return {
    ...sheet,
    name: "Costs of Q-0147",
    data: parts.map((part) =>
      quoteColumns.filter(({ isInput }) => isInput).map(({ key }) => part[key] ?? ""),
    ),
  };
}

const quoteData = () =>
  readQuoteData(
    filledIn(quoteDataSheet(DAY), [
      ["Shop name", "Example Reaming Works (invented)"],
      ["Address", "1 Example Street, Example Town"],
      ["Mail", "quotes@example.com"],
      ["Quote no.", "Q-0147"],
      ["Customer", "Example Hydraulics (invented)"],
      ["Parts arrive", "drilled"],
      ["Charge 1", "Fixture", 650],
    ]).top,
  );

/** What the quote takes from the sheet of costs, as it does when it is made: as values. */
const quoted: readonly (Pick<QuotedPart, "lower" | "upper" | "cost" | "drill" | "stock"> & {
  holes: number;
})[] = [
  { lower: 12, upper: 12.018, cost: 2.13543, drill: "11.8", stock: 0.2, holes: 2 },
  { lower: 16, upper: 16.018, cost: 1.58859, drill: "15.75", stock: 0.25, holes: 4 },
  { lower: 0.5, upper: 0.5005, cost: 3.33467, drill: "31/64", stock: 0.015625, holes: 2 },
];

function customerSheet(): NewSheet {
  const settings = { currency: "USD", setupTime: 45, setupRate: 60, overhead: 0.12, margin: 0.2 };
  const rows = parts.map(
    (part, at): QuotedPart => ({
      ...quoted[at],
      rowNumber: at + 1,
      part: String(part.part),
      drawing: String(part.drawing),
      callout: String(part.callout),
      units: part.units === "in" ? "in" : "mm",
      depth: Number(part.depth),
      material: String(part.material),
      quantity: Number(part.batch),
      breaks: [part.break1, part.break2].flatMap((count) => (count ? [Number(count)] : [])),
    }),
  );
  return customerQuote(quoteData(), rows, settings, "A4");
}

/** Micrometers over 16 mm. */
const readings = [
  [9, 12, 7, 11, 14, 10, 8, 13, 11, 6, 12, 10, 15, 9, 11, 8, 12, 10, 13, 9, 11, 7, 12, 10, 10],
  [10, 12, 9, 11, 13, 10, 8, 11, 12, 10, 9, 11, 13, 10, 11, 12, 9, 10, 11, 12, 8, 10, 11, 12, 10],
];
const lives = [
  [210, 190, 230, 205, 215],
  [940, 1010, 1080, 990, 1030],
];

/** The columns beside the page of a comparison. */
const BESIDE = 12;

function comparison(): NewSheet {
  const measured = "measured";
  const sheet = filledIn(
    beforeAndAfter(valveBlock, DAY, "A4"),
    [
      ["Parts per year", measured, 6000],
      ["Machine rate, per hour", "estimated", 72],
      ["Tool", "", "HSS reamer", "coated carbide head"],
      ["Cutting speed, m/min", measured, 15, 90],
      ["Feed per revolution, mm", measured, 0.4, 1.2],
      ["Price of the tool", "quoted", 118, 240],
      ["Edges", measured, 1, 1],
      ["Regrinds", measured, 4, 2],
      ["Cost of a regrind", "quoted", 26, 60],
      ["Edge change, s", measured, 300, 180],
      ["Other cost per part", measured, 0.55, 0.2],
      ["Scrap, share of the parts", "estimated", 0.015, 0.005],
      ["Edge 1", measured],
      ...lives[0].map((life, at) => [`Edge ${at + 1}`, "", life, lives[1][at]] as const),
      ["Reading 1", measured],
      ...readings[0].map((um, at) => [`Reading ${at + 1}`, "", size(um), size(readings[1][at])] as const),
      ["Gauge: repeatability EV", measured, 0.0005],
      ["Gauge: reproducibility AV", measured, 0.0004],
    ],
    BESIDE,
  );
  const operations = [
    ["load", measured, 40, 40],
    ["drill", measured, 58, 60],
    ["bore", measured, 66, ""],
    ["ream", measured, 54, 24],
  ];
  const investments = [
    ["2 holders", "quoted", 1900],
    ["3 heads", "quoted", 720],
    ["trials (invented)", "estimated", 1280],
    ["program", "estimated", 1300],
  ];
  const withOperations = filledUnder(sheet, "Operations, s", operations, BESIDE);
  return filledUnder(withOperations, "Investment", investments, BESIDE);
}

const size = (um: number) => (16_000 + um) / 1000;

const card = () =>
  filledIn(
    setUpCard({ row: valveBlock, table: `${sheetReference(table.name)}!${reach}`, maxRpm: 6000 }, "A4"),
    [
      ["Operation no.", "30 (invented)"],
      ["Gauge uncertainty", 0.002],
      ["Reamer measured", 16.01],
      ["Coolant bore, mm", 2],
      ["Pressure, bar", 40],
      ["Bores", 1],
      ["Before", 0, 0.003, 0.008, 0.005],
      ["After", 0.001, 0.002, 0.002, 0.001],
      ["Trial holes", 16.012, 16.013, 16.012, 16.011, 16.012],
      ["Lives, parts", ...lives[1]],
    ],
  );

const trouble = () =>
  filledIn(troubleSheet(valveBlock, "A4"), [
    ["What changed last (tool, drill, batch, coolant, program, shift)", "new spindle nose (invented)"],
    ["Position", 3, 20, 37],
    ["Hole 1", 16.025, 16.027, 16.016, 16.016, 16.015, 16.015],
    ["Hole 2", 16.022, 16.024, 16.014, 16.014, 16.013, 16.014],
    ["Hole 3", 16.023, 16.024, 16.015, 16.016, 16.015, 16.014],
    ["Hole 4", 16.019, 16.021, 16.013, 16.013, 16.012, 16.013],
  ]);

export const paperSheets = (): NewSheet[] => [
  costSheet(),
  customerSheet(),
  table,
  comparison(),
  card(),
  trouble(),
];
